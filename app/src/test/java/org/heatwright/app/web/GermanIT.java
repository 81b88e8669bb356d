package org.heatwright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import org.heatwright.app.firings.MovingClock;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;

/** The bench in German in a browser: chosen by keys, for phone and desktop, scripts included. */
class GermanIT {

  private static final Instant AFTERNOON = Instant.parse("2026-12-02T15:00:00Z");
  private static final List<String> PAGES =
      List.of(
          "",
          "plan",
          "kilns",
          "kiln?name=Anchor",
          "firings",
          "materials",
          "help",
          "pour?asked=1&alloy=sterling-925",
          "slots?kiln=Capstan&keypad=Tern",
          "keypad/new");

  @TempDir static Path folder;
  private static DemoBench walk;
  private static Browser browser;

  @BeforeAll
  static void open() {
    walk = DemoBench.open(folder, new MovingClock(AFTERNOON, ZoneId.of("Europe/Lisbon")));
    browser = walk.browser();
  }

  @AfterAll
  static void close() {
    walk.close();
  }

  @Test
  void theSwitchIsReachedByKeysAndEveryPageIsGermanForAll() {
    browser.size(1280, 900);
    browser.driver.get(walk.bench().address() + "plan");
    assertThat(lang()).isEqualTo("en");
    browser.script("document.querySelector('.tongues a[hreflang=en]').focus()");
    browser.driver.switchTo().activeElement().sendKeys(Keys.TAB);
    assertThat(browser.driver.switchTo().activeElement().getText()).isEqualTo("Deutsch");
    browser.driver.switchTo().activeElement().sendKeys(Keys.ENTER);
    browser.until("the page is German", () -> lang().equals("de"));
    assertThat(browser.driver.getCurrentUrl()).endsWith("/plan");
    assertThat(browser.text("#answer")).containsPattern("\\d,\\d bis \\d+,\\d kWh").contains("Dez");
    browser.settled();
    assertThat(browser.script("return document.querySelector('.tools button[aria-label]').ariaLabel"))
        .isEqualTo("Verkleinern");

    for (int width : List.of(390, 1280)) {
      browser.size(width, 900);
      for (String page : PAGES) {
        browser.driver.get(walk.bench().address() + page);
        assertThat(lang()).as(page).isEqualTo("de");
        assertThat(browser.tooWide()).as("%s at %d", page, width).isZero();
        assertThat(browser.violations()).as("%s, %d", page, width).isEmpty();
        browser.picture("german-" + width + "-" + page.replaceAll("\\W.*", ""));
      }
    }
  }

  /** What a script fills in is German too, and a comma is a decimal point. */
  @Test
  void aValueIsTypedWithACommaAndThePlanFollows() {
    browser.size(1280, 900);
    browser.driver.get(walk.bench().address() + "language/de");
    browser.driver.get(walk.bench().address() + "plan?work=Harbour+burnout&kiln=Capstan&keypad=Heron");
    browser.settled();
    browser.type("#rate1", "62,5");
    browser.until("it says whose the value is", () -> browser.all(".yours").size() == 1);
    assertThat(browser.text(".yours")).contains("eigener Wert");
    assertThat(browser.find("#rate1").getAttribute("value")).isEqualTo("62,5");
    assertThat(browser.text("#rate1-error")).isEmpty();
  }

  private static String lang() {
    return (String) browser.script("return document.documentElement.lang");
  }
}
