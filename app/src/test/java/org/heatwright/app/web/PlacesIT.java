package org.heatwright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import org.heatwright.app.firings.FiringBook;
import org.heatwright.app.firings.FiringRecord;
import org.heatwright.app.firings.Happening;
import org.heatwright.app.firings.MovingClock;
import org.heatwright.app.store.Kind;
import org.heatwright.app.store.Store;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** The places of the bench in a browser: a firing from start to result, and every page for all. */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class PlacesIT {

  private static final Instant AFTERNOON = Instant.parse("2026-12-02T15:00:00Z");
  private static final int PHONE = 390;

  @TempDir static Path folder;
  private static MovingClock clock;
  private static DemoBench walk;
  private static Store store;
  private static Bench bench;
  private static Browser browser;

  @BeforeAll
  static void open() {
    clock = new MovingClock(AFTERNOON, ZoneId.of("Europe/Lisbon"));
    walk = DemoBench.open(folder, clock);
    store = walk.store();
    bench = walk.bench();
    browser = walk.browser();
  }

  @AfterAll
  static void close() {
    walk.close();
  }

  @BeforeEach
  void start() {
    browser.size(PHONE, 844);
    browser.scheme("light");
    browser.driver.get(bench.address().toString());
  }

  @AfterEach
  void nothingToComplainAbout() {
    assertThat(browser.complaints()).isEmpty();
  }

  /** No pointer from the plan's last step to the result. */
  @Test
  @Order(1)
  void aFiringIsStartedWatchedAndJudgedWithTheKeyboardAlone() throws Exception {
    assertThat(browser.text("h1")).isEqualTo("Nothing is hot.");
    browser.picture("20-now-nothing-phone");
    browser.tabUntil("the plan", e -> e.getText().equals("Plan a firing"));
    browser.focused().sendKeys(Keys.ENTER);
    browser.until("the plan", () -> browser.maybe("#taking .pressing").isPresent());
    WebElement pressed = browser.find("#taking .pressing button[name=pressed]");
    pressed.sendKeys(Keys.ENTER);
    browser.until("what is hot", () -> browser.maybe(".hot:not([data-later])").isPresent());
    assertThat(browser.text("h1")).isEqualTo("One kiln is hot.");
    assertThat(browser.text(".hot")).contains("Harbour burnout in Capstan", "Waiting: heat begins");

    clock.move(Duration.ofMinutes(210)); // past the delay that was keyed
    browser.driver.navigate().refresh();
    assertThat(browser.text(".hot")).contains("Segment 1 of 4: on the way to 150 °C");
    String should = browser.text(".hot .facts strong");
    browser.tabUntil("the field", e -> "shows".equals(e.getAttribute("name")));
    browser.focused().sendKeys(should.split(" ")[0] + Keys.ENTER);
    browser.until("the verdict", () -> browser.maybe(".says").isPresent());
    assertThat(browser.text(".says")).startsWith("Normal: ");
    browser.usable("21-now-hot");

    browser.size(PHONE, 844);
    clock.move(Duration.ofHours(15));
    browser.driver.navigate().refresh();
    assertThat(browser.text(".hot")).contains("How did it come out?");
    browser.picture("22-now-result-phone");
    browser.tabUntil("good", e -> "good".equals(e.getAttribute("value")));
    browser.focused().sendKeys(Keys.ENTER);
    // Its page is where a few words and a photo can follow.
    browser.until("its page", () -> browser.maybe("#result [aria-pressed=true]").isPresent());
    assertThat(browser.text(".answer .figure")).isEqualTo("good");
    browser.driver.get(bench.address().toString());
    assertThat(browser.text("h1")).isEqualTo("Nothing is hot.");
    FiringRecord done = new FiringBook(store, clock).all().get(0);
    assertThat(done.result().orElseThrow().outcome()).isEqualTo("good");
    assertThat(done.all(Happening.SHOWN)).hasSize(1);
  }

  @Test
  @Order(2)
  void aLineIsTakenBackAndPutBackOnTheFiringsPage() throws Exception {
    browser.driver.findElement(By.linkText("Firings")).click();
    browser.driver.findElement(By.linkText("Harbour burnout")).click();
    browser.until("its page", () -> browser.maybe("#happened").isPresent());
    browser.type("#happened textarea", "The vent stood open a finger.");
    browser.find("#happened .bring button").click();
    browser.until("the note", () -> browser.text(".happened").contains("open a finger"));
    int lines = browser.all(".happened li").size();
    browser.find(".happened li:last-child button").click();
    browser.until("fewer lines", () -> browser.all(".happened li").size() == lines - 1);
    browser.find(".undo button").click();
    browser.until("the line again", () -> browser.all(".happened li").size() == lines);
    browser.usable("23-firing");
  }

  @Test
  @Order(3)
  void everyPlaceIsForEverybodyByDayAndByNight() throws Exception {
    Map<String, String> places =
        Map.of("", "24-now", "kilns", "25-kilns", "firings", "26-firings", "help", "28-help");
    for (Map.Entry<String, String> place : places.entrySet()) {
      browser.driver.get(bench.address() + place.getKey());
      browser.usable(place.getValue());
    }
    browser.driver.get(bench.address() + "materials?q=sterling");
    assertThat(browser.text("main")).contains("begins to melt", "788 °C");
    browser.usable("27-materials");
  }

  /** Typed, kept, put into a work and taken out again: no pointer. */
  @Test
  @Order(4)
  void ownValuesAreTypedAndPutIntoAWorkWithTheKeyboardAlone() throws Exception {
    browser.driver.get(bench.address() + "materials/own?of=enamel");
    browser.type("#name", "Flux of ours");
    browser.type("#softening-celsius", "9");
    browser.find("#softening-celsius").sendKeys(Keys.ENTER);
    // The browser itself keeps the form back until it says where the values are from.
    browser.type("#source", "three tiles");
    browser.find("#source").sendKeys(Keys.ENTER);
    browser.until(
        "what is wrong", () -> browser.text("#softening-celsius-error").contains("450 to 800 °C"));
    assertThat(browser.complaints()).singleElement().asString().contains("422"); // as it should be
    browser.usable("29-own-values");
    browser.find("#softening-celsius").clear();
    browser.type("#softening-celsius", "655");
    browser.find("#softening-celsius").sendKeys(Keys.ENTER);
    browser.until("it is kept", () -> browser.maybe("#mine [role=status]").isPresent());
    assertThat(browser.text("#mine [role=status]")).isEqualTo("Kept: Flux of ours.");
    browser.usable("29-own-values-kept");
    browser.tabUntil("the button", e -> e.getText().equals("Put them in"));
    browser.focused().sendKeys(Keys.ENTER);
    browser.until("it is in", () -> browser.maybe("#mine .undo").isPresent());
    assertThat(browser.text("#mine .undo")).contains("Flux of ours stands in the work");
    String before = store.find(Kind.WORK, "Evening enamel").orElseThrow().text();
    browser.tabUntil("the way back", e -> e.getText().equals("Take it out again"));
    browser.focused().sendKeys(Keys.ENTER);
    browser.until("it is out", () -> browser.text("#mine").contains("As it was before"));
    assertThat(before).contains("softening-celsius: 655");
    assertThat(store.find(Kind.WORK, "Evening enamel").orElseThrow().text())
        .doesNotContain("softening-celsius: 655");
  }

  /** Back and forward lead where they led. */
  @Test
  @Order(5)
  void everyPlaceHasItsAddress() {
    for (String word : List.of("Plan", "Kilns", "Firings", "Materials", "Help", "Now")) {
      browser.find(".places").findElement(By.linkText(word)).click();
      browser.until("the place " + word, () -> browser.text(".places [aria-current]").equals(word));
    }
    browser.driver.navigate().back();
    browser.until("help", () -> browser.text(".places [aria-current]").equals("Help"));
  }
}
