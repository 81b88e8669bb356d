package org.heatwright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import org.heatwright.app.store.Kind;
import org.heatwright.app.store.Store;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;

/** The first five minutes of somebody new, from an empty store to a first plan and its card. */
class StartIT {

  /** What a person types; everything else stands there already. */
  private static final List<Map.Entry<String, String>> PLATE =
      List.of(
          Map.entry("kiln-power", "2600"),
          Map.entry("kiln-volts", "230"),
          Map.entry("kiln-width", "22"),
          Map.entry("kiln-depth", "26"),
          Map.entry("kiln-height", "21"),
          Map.entry("kiln-top", "1100"));

  /**
   * To read a question and find its answer, s: a look at the plate, a ruler held inside. Estimate.
   */
  private static final double QUESTION_SECONDS = 12;

  /** A key of a slow typist, s. Memory: Card, Moran and Newell, keystroke-level model, 1980. */
  private static final double KEY_SECONDS = 0.5;

  @TempDir Path folder;
  private Store store;
  private Bench bench;
  private Browser browser;
  private int keys;

  @BeforeEach
  void open() {
    Clock clock = Clock.system(ZoneId.of("Europe/Lisbon"));
    store = Store.temporary(clock);
    bench = Bench.start(new BenchSettings(store, clock, OptionalInt.of(0)));
    browser = new Browser(folder);
    browser.size(1280, 900);
    browser.scheme("light");
  }

  @AfterEach
  void close() {
    browser.close();
    bench.close();
    store.close();
  }

  /** No pointer; every page for everybody, by day and by night, on a desk and on a phone. */
  @Test
  void aNewPersonHasAKilnAKeypadAndACardInFiveMinutesWithTheKeyboardAlone() throws Exception {
    long began = System.nanoTime();
    browser.driver.get(bench.address().toString());
    assertThat(browser.text("main")).contains("A new bench");
    browser.usable("40-start-now");
    browser.tabUntil("the beginning", e -> e.getText().equals("Begin here"));
    press(Keys.ENTER);
    browser.until("what", () -> browser.text("h1").equals("What do you fire?"));
    browser.usable("41-start-what");
    browser.tabUntil("the kinds", e -> "what".equals(e.getAttribute("name")));
    press(Keys.SPACE);
    // Kept as it is answered: the page is left and found again as it was.
    browser.until("kept", () -> store.start().answers().containsKey("what"));
    press(Keys.ENTER);
    browser.until("the kiln", () -> browser.text("h1").equals("Which kiln?"));
    browser.usable("42-start-kiln");
    // Wrong first: said beside its field, which has the keys then.
    browser.tabUntil("the button", e -> e.getText().equals("Next"));
    press(Keys.ENTER);
    browser.until("what is wrong", () -> !browser.text("#kiln-power-error").isEmpty());
    assertThat(browser.focused().getAttribute("id")).isEqualTo("kiln-power");
    browser.usable("43-start-kiln-wrong");
    for (Map.Entry<String, String> told : PLATE) {
      browser.tabUntil(told.getKey(), e -> told.getKey().equals(e.getAttribute("id")));
      for (char key : told.getValue().toCharArray()) {
        press(Character.toString(key));
      }
    }
    browser.until(
        "all of it is kept",
        () -> store.start().answers().getOrDefault("kiln-top", "").equals("1100"));
    // The browser is shut and another day it goes on where it was; back goes back.
    browser.driver.get("about:blank");
    browser.driver.get(bench.address() + "start");
    browser.until("the keypad", () -> browser.text("h1").equals("What is it keyed in on?"));
    browser.driver.get(bench.address() + "start?step=kiln");
    assertThat(browser.find("#kiln-power").getAttribute("value")).isEqualTo("2600");
    browser.tabUntil("the button", e -> e.getText().equals("Next"));
    press(Keys.ENTER);
    browser.until("the keypad", () -> browser.text("h1").equals("What is it keyed in on?"));
    browser.driver.navigate().back();
    browser.until("the kiln", () -> browser.text("h1").equals("Which kiln?"));
    browser.driver.navigate().forward();
    browser.until("the keypad", () -> browser.text("h1").equals("What is it keyed in on?"));
    browser.usable("44-start-keypad");
    browser.tabUntil("the looks", e -> "pad".equals(e.getAttribute("name")));
    press(Keys.SPACE);
    press(Keys.ENTER);
    browser.until("the work", () -> browser.text("h1").equals("The first work"));
    browser.usable("45-start-work");
    int fields = browser.all(".question input, .question select").size();
    browser.tabUntil("the plan", e -> e.getText().equals("Make the first plan"));
    press(Keys.ENTER);
    browser.until("the plan", () -> browser.maybe("#keying .keys li").isPresent());
    assertThat(browser.driver.getCurrentUrl()).contains("/plan?work=First+enamel&kiln=My+kiln");
    browser.picture("46-start-plan"); // for everybody: that is the bench's own walk
    browser.tabUntil("the card", e -> e.getText().equals("Card, A4"));
    press(Keys.ENTER);
    assertThat(browser.downloaded(".pdf")).isNotEmptyFile();
    double machine = (System.nanoTime() - began) / 1e9;
    assertThat(store.all(Kind.KILN)).hasSize(1);
    assertThat(store.all(Kind.KEYPAD)).hasSize(1);
    assertThat(store.all(Kind.WORK)).hasSize(1);
    assertThat(store.newestCards(9)).hasSize(1);

    int asked = 2 + StartQuestions.KILN.size() + fields;
    double person = asked * QUESTION_SECONDS + keys * KEY_SECONDS;
    System.out.printf(
        "First run: %d questions, of which %d must be typed; %d keys; a person about %.0f s; this walk"
            + " with all its checks %.0f s%n",
        asked, PLATE.size(), keys, person, machine);
    assertThat(PLATE.size()).isLessThanOrEqualTo(7);
    assertThat(asked).isLessThanOrEqualTo(20);
    assertThat(person).isLessThan(300);
    assertThat(browser.complaints())
        .allMatch(line -> line.contains("422")); // the answer with what is wrong
  }

  /** A person looks round first: nothing of it is in their own bench, and back is one click. */
  @Test
  void theDemoIsOneClickAwayAndBackAgain() throws Exception {
    browser.size(360, 800);
    browser.driver.get(bench.address() + "start");
    browser.driver.findElement(By.partialLinkText("Look round")).click();
    browser.until("the demo", () -> browser.maybe(".demo-banner").isPresent());
    assertThat(browser.driver.getCurrentUrl()).doesNotStartWith(bench.address().toString());
    browser.usable("47-demo");
    browser.find(".places").findElement(By.linkText("Plan")).click();
    browser.until("its plan", () -> browser.maybe("#keying .keys li").isPresent());
    assertThat(browser.text(".demo-banner")).contains("Demo studio");
    browser.driver.findElement(By.linkText("Back to your own bench")).click();
    browser.until("the own bench", () -> browser.text("h1").equals("What do you fire?"));
    assertThat(browser.maybe(".demo-banner")).isEmpty();
    assertThat(store.all(Kind.KILN)).isEmpty();

    // Put away and put back, on the demo's own shelf.
    browser.driver.findElement(By.partialLinkText("Look round")).click();
    browser.until("the demo", () -> browser.maybe(".demo-banner").isPresent());
    String demo = browser.driver.getCurrentUrl();
    browser.driver.get(demo + "shelf");
    browser.usable("48-shelf");
    browser.find("[aria-label^='Put away: Buoy']").click();
    browser.until("undo", () -> browser.maybe(".undo button").isPresent());
    assertThat(browser.text("#away")).contains("Buoy");
    browser.usable("49-shelf-away");
    browser.find(".undo button").click();
    browser.until("back", () -> browser.maybe("[aria-label^='Put away: Buoy']").isPresent());

    // The plan that was edited last is where the word Plan leads, until it is begun afresh.
    browser.driver.get(demo + "plan?work=Silver+class&kiln=Anchor&keypad=Gull");
    browser.driver.get(demo);
    browser.find(".places").findElement(By.linkText("Plan")).click();
    browser.until("the plan of before", () -> browser.driver.getCurrentUrl().contains("Silver"));
    browser.find(".afresh").click();
    browser.until("afresh", () -> !browser.driver.getCurrentUrl().contains("Silver"));
    assertThat(browser.complaints()).isEmpty();
  }

  private void press(CharSequence key) {
    keys++;
    browser.focused().sendKeys(key);
  }
}
