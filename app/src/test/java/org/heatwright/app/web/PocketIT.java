package org.heatwright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.heatwright.app.demo.DemoStudio;
import org.heatwright.app.report.PocketPage;
import org.heatwright.app.store.Store;
import org.heatwright.keypad.KeyedValue;
import org.heatwright.keypad.Readback;
import org.heatwright.keypad.ReadbackQuestion;
import org.heatwright.keypad.keying.Instruction;
import org.heatwright.keypad.keying.KeyingPlanner;
import org.heatwright.keypad.keying.KeyingSheet;
import org.heatwright.keypad.keying.KeyingStep;
import org.heatwright.keypad.machine.KeyAction;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.support.ui.Select;

/** Opens the file that is sent, with the network off, and does what a person does with it. */
class PocketIT {

  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-12-02T15:00:00Z"), ZoneOffset.UTC);

  /** What a mail and a phone take without a thought; the issue's own figure. */
  private static final long MOST_BYTES = 400_000;

  private static final int SLOT = 3;

  @TempDir static Path folder;
  private static Store store;
  private static Browser browser;

  @BeforeAll
  static void open() throws IOException {
    store = Store.temporary(CLOCK);
    DemoStudio.fill(store);
    browser = new Browser(folder);
    browser.chrome.executeCdpCommand("Network.enable", Map.of());
    browser.chrome.executeCdpCommand(
        "Network.emulateNetworkConditions",
        Map.of("offline", true, "latency", 0, "downloadThroughput", 0, "uploadThroughput", 0));
  }

  @AfterAll
  static void close() {
    if (browser != null) {
      browser.close();
    }
    store.close();
  }

  @BeforeEach
  void start() {
    browser.size(390, 844);
    browser.scheme("light");
  }

  @AfterEach
  void nothingToComplainAbout() {
    assertThat(browser.complaints()).isEmpty();
    assertThat(browser.script("return performance.getEntriesByType('resource').length"))
        .as("things loaded beside the file")
        .isEqualTo(0L);
  }

  @ParameterizedTest
  @ValueSource(strings = {"Tern", "Gull", "Heron"})
  void theFileIsSmallAndWhole(String keypad) throws IOException {
    Firing firing = firing(keypad);
    Path file = written(firing);
    assertThat(Files.size(file)).isLessThan(MOST_BYTES);
    assertThat(Files.readString(file))
        .doesNotContain("src=", "http://", "https://", "url(", "@import");
    browser.driver.get(file.toUri() + "#card");
    assertThat(browser.text("#card")).contains(firing.kiln().name(), "display should read");
    assertThat(browser.all(".screen"))
        .filteredOn(WebElement::isDisplayed)
        .extracting(screen -> screen.getAttribute("id"))
        .containsExactly("card");
    firing.program().values().stream()
        .filter(v -> v.segment() == 1)
        .forEach(v -> assertThat(browser.text("#card .segments")).contains(v.digits()));
  }

  @Test
  void theSheetTicksForwardByTheKeyboardAndRemembersWhereOneWas() throws IOException {
    Firing firing = firing("Gull");
    List<String> presses = sheet(firing).steps().stream().map(s -> s.press()).toList();
    browser.driver.get(written(firing).toUri() + "#keyin");
    for (int i = 0; i < presses.size(); i++) {
      List<WebElement> shown =
          browser.all("#keyin .keys > li").stream().filter(WebElement::isDisplayed).toList();
      assertThat(shown).hasSize(1);
      assertThat(shown.get(0).getText()).containsIgnoringCase(presses.get(i));
      if (i == 0) {
        tabTo("Done, next");
      }
      if (i == 2) {
        assertThat(browser.text("#keyin [role=status]")).contains("Step 3 of " + presses.size());
        browser.driver.navigate().refresh();
        assertThat(browser.text("#step-count")).isEqualTo("Step 3 of " + presses.size());
        tabTo("Done, next");
        browser.view("pocket-1-keying-phone");
      }
      browser.focused().sendKeys(Keys.ENTER);
    }
    assertThat(browser.text("#keyin .keys")).contains("All steps are done");
    assertThat(browser.focused().getText()).isEqualTo("Read it back, blind");
    browser.focused().sendKeys(Keys.ENTER);
    browser.until("the read-back", () -> browser.find("#readback").isDisplayed());
  }

  @ParameterizedTest
  @ValueSource(strings = {"Tern", "Gull", "Heron"})
  void aRightReadBackIsProvenAndAWrongOneNamesItsPlace(String keypad) throws IOException {
    Firing firing = firing(keypad);
    browser.driver.get(written(firing).toUri() + "#readback");
    String asked = browser.text("body");
    firing.program().values().stream()
        .filter(v -> v.kind() == KeyedValue.Kind.TARGET || v.kind() == KeyedValue.Kind.RATE)
        .forEach(v -> assertThat(asked).as("blind").doesNotContainPattern("\\b" + v.digits()));
    List<String> right = whatTheDisplayShows(firing);
    int wrong = 3;
    String slip = right.get(wrong).replaceFirst("\\d$", right.get(wrong).endsWith("7") ? "8" : "7");
    for (int i = 0; i < right.size(); i++) {
      browser.type("#shown" + (i + 1), i == wrong ? slip : right.get(i));
    }
    browser.type("#shown-slot", Integer.toString(SLOT));
    settleTheUnit();
    compare();
    assertThat(browser.text(".verdict")).contains("Not yet", right.get(wrong));
    assertThat(browser.all("li.ask.wrong")).hasSize(1);
    assertThat(browser.find("li.ask.wrong input").getAttribute("id"))
        .isEqualTo("shown" + (wrong + 1));
    browser.picture("pocket-2-slip-phone-" + keypad);

    browser.type("#shown" + (wrong + 1), right.get(wrong));
    browser.type("#shown-slot", "");
    compare();
    assertThat(browser.text(".verdict")).contains("slot open").doesNotContain("Keyed as planned");
    browser.type("#shown-slot", Integer.toString(SLOT));
    compare();
    assertThat(browser.text(".verdict")).contains("Keyed as planned");
    assertThat(browser.all("li.ask.wrong")).isEmpty();
    for (String unproven :
        Readback.compare(
                firing.program(),
                firing.keypad(),
                new org.heatwright.keypad.Shown(OptionalInt.of(SLOT), Optional.empty(), List.of()))
            .unproven()) {
      if (unproven.contains("does not show")) {
        assertThat(browser.text(".verdict")).contains(unproven);
      }
    }
  }

  @Test
  void theProgramIsRehearsedOnTheDrawnKeypadAndTheFirstWrongKeyIsNamed() throws IOException {
    Firing firing = firing("Gull");
    browser.driver.get(written(firing).toUri() + "#rehearse");
    List<KeyAction> actions = new ArrayList<>();
    for (KeyingStep step : sheet(firing).steps()) {
      Stream.concat(step.make().stream(), step.go().stream())
          .forEach(i -> actions.add(((Instruction.Press) i).action()));
    }
    int digit = 0;
    while (!(actions.get(digit) instanceof KeyAction.Digit)
        || actions.subList(0, digit).stream().filter(KeyAction.Digit.class::isInstance).count()
            < 3) {
      digit++;
    }
    actions.subList(0, digit).forEach(PocketIT::tap);
    KeyAction.Digit right = (KeyAction.Digit) actions.get(digit);
    tap(new KeyAction.Digit((right.digit() + 1) % 10));
    assertThat(browser.find(".say").getAttribute("class")).doesNotContain("wrong");
    int taken = digit + 1;
    while (actions.get(taken) instanceof KeyAction.Digit) {
      tap(actions.get(taken++));
    }
    tap(actions.get(taken));
    assertThat(browser.find(".say").getAttribute("class")).contains("wrong");
    assertThat(browser.text(".say")).contains("Wrong:", "key " + (taken + 1), "must be");
    browser.picture("pocket-3-wrong-key-phone");
    for (int back = taken; back >= digit; back--) {
      press("Take the last key back");
    }
    assertThat(browser.find(".say").getAttribute("class")).doesNotContain("wrong");
    for (int i = digit; i < actions.size(); i++) {
      tap(actions.get(i));
      if (browser.find(".say").getAttribute("class").contains("done")) {
        assertThat(browser.text(".say")).contains("Keyed: slot 3 holds the plan");
        return;
      }
    }
    throw new AssertionError("The sheet was followed and the page said: " + browser.text(".say"));
  }

  @Test
  void aKeyThatIsKeptDownRepeatsAndArrowsWorkToo() throws IOException {
    browser.driver.get(written(firing("Tern")).toUri() + "#rehearse");
    press("next");
    List<WebElement> hold =
        browser.all(".padkeys button").stream().filter(b -> b.getText().equals("next")).toList();
    new Actions(browser.driver).clickAndHold(hold.get(0)).pause(2300).release().perform();
    String first = browser.text(".window .value");
    assertThat(first).matches("[\\d.]+");
    browser.focused().sendKeys(Keys.ARROW_UP);
    assertThat(browser.text(".window .value")).isNotEqualTo(first);
  }

  private static void tap(KeyAction action) {
    press(
        action instanceof KeyAction.Digit digit
            ? Integer.toString(digit.digit())
            : action.press().key().word());
  }

  private static void press(String name) {
    browser.all("#rehearse button").stream()
        .filter(b -> b.getText().equals(name))
        .findFirst()
        .orElseThrow(() -> new AssertionError("There is no key " + name + "."))
        .click();
  }

  @Test
  void whoLooksAtThePlanWhileTypingStartsAgain() throws IOException {
    browser.driver.get(written(firing("Gull")).toUri() + "#readback");
    browser.type("#shown2", "150");
    browser.find(".tabs a[href='#card']").click();
    browser.find(".tabs a[href='#readback']").click();
    assertThat(browser.find("#shown2").getAttribute("value")).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "card,light",
    "card,dark",
    "keyin,dark",
    "rehearse,light",
    "rehearse,dark",
    "readback,light"
  })
  void everyScreenIsThereForEverybody(String screen, String scheme) throws IOException {
    browser.scheme(scheme);
    browser.driver.get(written(firing("Heron")).toUri() + "#" + screen);
    browser.picture("pocket-" + screen + "-phone-" + scheme);
    assertThat(browser.violations()).isEmpty();
    assertThat(browser.tooWide()).isZero();
    browser.size(1280, 900);
    browser.picture("pocket-" + screen + "-desktop-" + scheme);
    assertThat(browser.violations()).isEmpty();
  }

  // ---------------------------------------------------------------- what is behind it

  private static Firing firing(String keypad) {
    return new FiringPlanner(store, CLOCK)
        .plan(
            Choices.of(
                Map.of(
                    "work",
                    "Harbour burnout",
                    "kiln",
                    "Capstan",
                    "keypad",
                    keypad,
                    "slot",
                    Integer.toString(SLOT))),
            8)
        .firing()
        .orElseThrow();
  }

  private static KeyingSheet sheet(Firing firing) {
    return KeyingPlanner.plan(firing.program(), firing.keypad(), SLOT, Optional.empty());
  }

  private static Path written(Firing firing) throws IOException {
    Path file = folder.resolve(firing.keypad().name() + ".html");
    return Files.writeString(
        file,
        PocketPage.file(
            PocketPage.Content.of(
                Optional.of(firing.card()),
                firing.program(),
                firing.keypad(),
                SLOT,
                Optional.empty())));
  }

  /** What a keypad that was keyed right shows, in the order of the questions. */
  private static List<String> whatTheDisplayShows(Firing firing) {
    List<String> shown = new ArrayList<>();
    for (ReadbackQuestion question : Readback.questions(firing.program(), firing.keypad())) {
      shown.add(
          firing.program().values().stream()
              .filter(
                  v ->
                      question.words().equals(v.place())
                          || question
                              .words()
                              .equals("segment %d, first value".formatted(v.segment())))
              .findFirst()
              .orElseThrow()
              .digits());
    }
    return shown;
  }

  private static void settleTheUnit() {
    if (browser.maybe("#cold-display").isPresent()) {
      browser.find("#overnight").click();
      browser.type("#cold-display", "19");
      browser.type("#cold-thermometer", "19");
    }
    browser.maybe("#shown-sign").ifPresent(sign -> new Select(sign).selectByVisibleText("°C"));
  }

  private static void compare() {
    browser.find("#readback button.main").click();
  }

  private static void tabTo(String name) {
    for (int i = 0; i < 30 && !browser.focused().getText().equals(name); i++) {
      browser.focused().sendKeys(Keys.TAB);
    }
    assertThat(browser.focused().getText()).isEqualTo(name);
  }
}
