package org.heatwright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.heatwright.app.describe.Owner;
import org.heatwright.app.files.KeypadFile;
import org.heatwright.app.store.Kind;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.support.ui.Select;

/** The desks beside the plan: keypads described, kilns learned, moulds inside, the pour, slots. */
class DesksIT extends PlanWalk {

  /** Typed and ticked by somebody who knows the keypad; every page for everybody, no script. */
  @Test
  void aKeypadIsDescribedAtTheBench() throws Exception {
    Map<String, String> knows =
        Owner.answers(
            KeypadFile.read(store.find(Kind.KEYPAD, "Heron").orElseThrow().text(), "heron"));
    knows.put("name", "The one with the knob");
    browser.driver.get(bench.address().resolve("/keypad/new").toString());
    Set<String> looks = new HashSet<>();
    for (int asked = 0; asked < 80 && browser.maybe("input[name=id]").isPresent(); asked++) {
      String id = browser.find("input[name=id]").getAttribute("value");
      String kind =
          browser.maybe("input[type=checkbox]").isPresent()
              ? "several"
              : browser.maybe("input[type=radio]").isPresent() ? "one" : "text";
      if (looks.add(kind)) {
        assertThat(browser.violations()).isEmpty();
        assertThat(browser.tooWide()).isZero();
        browser.picture("10-describe-" + kind);
      }
      String answer = knows.get(id);
      if (answer.equals("?")) {
        browser.find("button[name=unknown]").click();
        continue;
      }
      if (kind.equals("text")) {
        browser.find("#answer").clear();
        browser.find("#answer").sendKeys(answer + Keys.ENTER);
      } else {
        for (String word : answer.split("[, ]+")) {
          browser.find("input[name=answer][value='" + word + "']").click();
        }
        browser.find("main form button").click();
      }
      int before = asked + 1;
      browser.until("the next", () -> browser.all("button[name=undo]").size() >= before);
    }
    assertThat(looks).hasSize(3);
    assertThat(browser.text("main")).contains("Check it, key by key", "Nothing is kept until");
    assertThat(browser.violations()).isEmpty();
    assertThat(browser.tooWide()).isZero();
    browser.picture("11-described");
    browser.find("button[name=keep]").click();
    browser.until("the plan", () -> browser.maybe("#shelf").isPresent());
    assertThat(store.find(Kind.KEYPAD, "The one with the knob")).isPresent();
  }

  @Test
  void aKilnIsLearnedFromItsLogs() throws Exception {
    choose("kiln", "Anchor");
    browser.driver.findElement(By.linkText("What is known of Anchor")).click();
    browser.until("the kiln's page", () -> browser.maybe("#watched").isPresent());
    assertThat(browser.all("#learned")).isEmpty();
    browser.usable("12-known-nameplate");
    assertThat(browser.text("#watched-firing .legend"))
        .contains("what the display said", "nine times in ten inside");
    browser.find("#watched figure.plotted .take a").click();
    assertThat(Files.readString(browser.downloaded(".svg")))
        .contains("plot-title")
        .contains("forecast");

    browser.find("form.learn button").click();
    browser.until("what was learned", () -> browser.maybe("#learned").isPresent());
    assertThat(browser.text(".answer .figure")).isEqualTo("4 firings");
    browser.usable("12-known-learned");

    browser.size(PHONE, 844);
    browser.driver.findElements(By.linkText("Show it")).get(0).click();
    browser.until("the first log", () -> browser.text("#watched h2").contains("5 September 2026"));
    browser.find("#bring summary").click();
    browser.find("#bring button").click();
    browser.until("the sentence", () -> !browser.text("#csv-error").isEmpty());
    assertThat(browser.text("#csv-error")).contains("choose its file or paste its rows");
    browser.picture("13-bring-phone");
    assertThat(browser.violations()).isEmpty();
    // The browser tells of every answer that is not a page found.
    assertThat(browser.complaints()).allMatch(line -> line.contains("422"));
  }

  @Test
  void theInsideOfTheMouldsFollowsTheSlider() throws Exception {
    choose("work", "Harbour burnout");
    choose("kiln", "Capstan");
    browser.driver.findElement(By.linkText("Inside the moulds")).click();
    browser.until("the inside", () -> browser.maybe("#cut svg").isPresent());
    assertThat(browser.text("h1")).isEqualTo("Inside the moulds");
    WebElement slide = browser.find("#slide");
    String end = browser.text("#moment");
    String drawn = browser.find("#cut").getAttribute("innerHTML");

    slide.sendKeys(Keys.HOME);
    browser.until("the start", () -> !browser.text("#moment").equals(end));
    assertThat(browser.find("#cut").getAttribute("innerHTML")).contains("all through");
    browser.script(
        "const s=document.getElementById('slide');s.value=300;s.dispatchEvent(new Event('input'))");
    browser.until(
        "the fifth hour",
        () -> browser.find("#cut").getAttribute("innerHTML").contains("a line each"));
    assertThat(browser.find("#cut").getAttribute("innerHTML")).isNotEqualTo(drawn);
    assertThat(slide.getAttribute("aria-valuetext")).isEqualTo(browser.text("#moment"));
    assertThat(browser.text("#alarm")).isEmpty();
    browser.usable("14-inside");

    browser.driver.findElement(By.linkText("Back to the plan")).click();
    browser.settled();
  }

  @Test
  void thePourIsAskedForFromThePlanAndByItself() throws Exception {
    choose("work", "Harbour burnout");
    choose("kiln", "Capstan");
    browser.driver.findElement(By.linkText("The pour")).click();
    browser.until("the pour", () -> browser.maybe(".tabs").isPresent());
    assertThat(browser.text(".answer .figure")).isEqualTo("500 °C");
    assertThat(browser.text("main")).contains("your own value", "cores there", "503.8 g");
    browser.usable("15-pour-temperatures");

    browser.type("#my-mould", "");
    browser.find("#asked button").click();
    browser.until("the sources' value", () -> !browser.text(".answer .figure").equals("500 °C"));
    assertThat(browser.text(".rows")).doesNotContain("your own value");
    assertThat(browser.driver.getCurrentUrl()).contains("plan=", "my-mould=&");

    for (String tab : List.of("Metal", "Powder", "Size", "Order")) {
      browser.driver.findElement(By.linkText(tab)).click();
      browser.until("the page " + tab, () -> browser.text(".tabs [aria-current]").equals(tab));
      if (tab.equals("Size")) {
        browser.type("#wanted-mm", "18.2");
        browser.find("#asked button").click();
        browser.until("the size", () -> browser.text(".answer").contains("18.48 mm"));
      }
      if (tab.equals("Order")) {
        browser.type("#mould2", "lace");
        browser.type("#wants2", "630");
        browser.find("#asked button").click();
        browser.until("the order by forecast", () -> browser.text("main").contains("lace"));
        assertThat(browser.text(".answer")).contains("All poured", "minutes from now");
        browser.type("#fall-per-hour", "150");
        browser.find("#asked button").click();
        browser.until(
            "the order by a plain rate", () -> browser.text("main").contains("settling 60"));
      }
      browser.usable("15-pour-" + tab.toLowerCase(java.util.Locale.ROOT));
    }

    browser.type("#wants1", "much");
    browser.find("#asked button").click();
    browser.until("the sentence", () -> !browser.text("#wants1-error").isEmpty());
    assertThat(browser.text("#wants1-error")).contains("“much” is no number");
    assertThat(browser.find("#wants1").getAttribute("value")).isEqualTo("much");
    assertThat(browser.violations()).isEmpty();
    browser.driver.findElement(By.linkText("Back to the plan")).click();
    browser.settled();
  }

  @Test
  void theSlotsOfAKeypadAreToldAndReadWithoutAPlan() throws Exception {
    browser.driver.get(bench.address() + "slots?kiln=Buoy&keypad=Heron");
    browser.find("#slot2 details.telling summary").click();
    browser.type("#what2", "Thursday class");
    browser.find("#slot2 button[value=needed]").click();
    browser.until("the need", () -> browser.text("#slot2").contains("Thursday class"));
    browser.driver.findElement(By.linkText("Read slot 4 without a plan")).click();
    browser.until("the reading", () -> browser.maybe("#shown1").isPresent());
    browser.usable("16-slot-unknown");
    String[] shown = {"150", "02:00", "1.5", "730", "02:30", "0.0"};
    for (int i = 0; i < shown.length; i++) {
      browser.type("#shown" + (i + 1), shown[i]);
    }
    for (int segment = 3; segment <= 10; segment++) {
      browser.type("#shown" + (3 * segment - 2), "----");
    }
    new Select(browser.find("#shown-sign")).selectByVisibleText("°C");
    browser.type("#name", "Old class program");
    browser.find(".reading button").click();
    browser.until("the slot", () -> browser.maybe("#slot4").isPresent());
    assertThat(browser.text("#slot4")).contains("Old class program", "top 730 °C", "Never proven");
    for (WebElement summary : browser.all("summary")) {
      summary.click();
    }
    browser.usable("17-slots");
    browser.find("#happened button[value=power-cut]").click();
    browser.until("the history", () -> browser.text("#happened").contains("the power was cut"));
    assertThat(browser.text("#slot4")).contains("may hold something else now");
  }
}
