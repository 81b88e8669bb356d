package org.heatwright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import org.heatwright.app.firings.FiringBook;
import org.heatwright.app.firings.FiringRecord;
import org.heatwright.app.firings.MovingClock;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** From a fault to a cause and back to the plan in a browser, by keyboard alone. */
class AskIT {

  private static final Instant AFTERNOON = Instant.parse("2026-12-02T15:00:00Z");

  @TempDir static Path folder;
  private static MovingClock clock;
  private static DemoBench walk;
  private static Browser browser;

  @BeforeAll
  static void open() {
    clock = new MovingClock(AFTERNOON, ZoneId.of("Europe/Lisbon"));
    walk = DemoBench.open(folder, clock);
    browser = walk.browser();
  }

  @AfterAll
  static void close() {
    walk.close();
  }

  @AfterEach
  void nothingToComplainAbout() {
    assertThat(browser.complaints()).isEmpty();
  }

  @Test
  void fiveQuestionsAreAnsweredWithTheKeyboardAlone() throws Exception {
    browser.size(390, 844);
    browser.driver.get(walk.bench().address() + "help");
    browser.tabUntil("the questions", e -> e.getText().equals("Five questions"));
    browser.focused().sendKeys(Keys.ENTER);
    browser.until("the questions", () -> browser.text("h1").equals("Five questions"));
    browser.usable("40-ask");
    browser.size(390, 844);
    browser.tabUntil("what came out", e -> "came".equals(e.getAttribute("id")));
    browser.focused().sendKeys("carbon");
    browser.focused().sendKeys(Keys.ENTER);
    WebElement answer = browser.find(".intake .go button");
    if (browser.maybe("#behind").isEmpty()) {
      answer.sendKeys(Keys.ENTER);
    }
    browser.until("causes", () -> browser.maybe("#behind .cause").isPresent());
    assertThat(browser.text("h1")).startsWith("Carbon: ").endsWith("the likeliest first");
    assertThat(browser.driver.getCurrentUrl()).contains("came=burnout%2Fcarbon");
    browser.tabUntil("a yes", e -> e.getText().equals("yes") && e.getTagName().equals("a"));
    browser.focused().sendKeys(Keys.ENTER);
    browser.until("what was told", () -> browser.text("#behind").contains("You say that"));
    assertThat(browser.all(".intake input[type=radio][value=yes]:checked")).hasSize(1);
    browser.usable("41-ask-causes");
  }

  @Test
  void aFiringsFaultLeadsToThePlanWithOneChange() throws Exception {
    for (String outcome : List.of("good", "carbon")) {
      browser.size(1280, 900);
      browser.driver.get(
          walk.bench().address()
              + "plan?work=Harbour+burnout&kiln=Capstan&keypad=Gull&slot=3&by=start");
      browser.until("the plan", () -> browser.maybe("#taking .pressing").isPresent());
      browser.find("#taking .pressing button[name=pressed]").sendKeys(Keys.ENTER);
      browser.until("what is hot", () -> browser.maybe(".hot:not([data-later])").isPresent());
      clock.move(Duration.ofHours(22));
      FiringRecord firing = new FiringBook(walk.store(), clock).all().get(0);
      browser.driver.get(walk.bench().address() + "firing?id=" + firing.id());
      browser.find("#result button[value=" + outcome + "]").sendKeys(Keys.ENTER);
      browser.until("the result", () -> browser.maybe("#result [aria-pressed=true]").isPresent());
      clock.move(Duration.ofHours(2));
    }
    assertThat(browser.text("#behind")).contains("One change to try", "Hold a quarter longer");
    assertThat(browser.text("#before")).contains("this one", "hold at the top, planned");
    browser.usable("42-firing-causes");
    browser.size(1280, 900);
    browser.driver.findElement(By.linkText("Open the plan with this change")).sendKeys(Keys.ENTER);
    browser.until("the plan", () -> browser.maybe("#schedule .field.edited").isPresent());
    assertThat(browser.all("#schedule .field.edited")).hasSize(1);
  }
}
