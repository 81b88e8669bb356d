package org.heatwright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import biweekly.Biweekly;
import biweekly.ICalendar;
import java.net.URI;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.heatwright.app.describe.Owner;
import org.heatwright.app.files.KeypadFile;
import org.heatwright.app.store.Kind;
import org.heatwright.app.store.Store;
import org.heatwright.keypad.KeyedValue;
import org.heatwright.keypad.Readback;
import org.heatwright.keypad.ReadbackQuestion;
import org.heatwright.keypad.keying.Instruction;
import org.heatwright.keypad.keying.KeyingPlanner;
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
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.support.ui.Select;

/** Walks the bench in a browser, from the work to the card. */
class BenchIT {

  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-12-02T15:00:00Z"), ZoneOffset.UTC);
  private static final int PHONE = 390;
  private static final int DESKTOP = 1280;

  @TempDir static Path folder;
  private static DemoBench walk;
  private static Store store;
  private static Bench bench;
  private static Browser browser;

  @BeforeAll
  static void open() {
    walk = DemoBench.open(folder, CLOCK);
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
    browser.driver.get(bench.address() + "plan");
    browser.settled();
  }

  @AfterEach
  void nothingToComplainAbout() {
    assertThat(browser.complaints()).isEmpty();
  }

  @Test
  void fromTheWorkToTheCard() throws Exception {
    choose("work", "Harbour burnout");
    choose("kiln", "Capstan");
    choose("keypad", "Gull");
    browser.type("#slot", "3");
    browser.settled();
    assertThat(browser.text("#answer .figure")).matches("\\d\\d:\\d\\d to .*\\d\\d:\\d\\d");
    assertThat(browser.text("#answer .day")).isEqualTo("Thursday 3 December");
    assertThat(browser.text("#answer")).contains("Press start Wed 2 Dec 15:15", "kWh", "EUR");
    browser.picture("1-plan-phone");

    browser.find("#why1 summary").click();
    assertThat(browser.text("#why1")).contains("Source:");
    assertThat(browser.all("#schedule .why")).isNotEmpty();
    browser.picture("2-reasons-phone");

    assertThat(browser.all("#keying .keys li")).hasSizeGreaterThan(10);
    browser.find("#keying a.button").click();
    browser.until("the read-back page", () -> browser.maybe(".reading").isPresent());
    assertThat(browser.all("#schedule, #curve, #keying")).isEmpty();
    browser.picture("3-blind-phone");

    Map<String, String> right = whatTheDisplayShows();
    String wrongField = "shown4";
    fill(right);
    browser.type("#" + wrongField, slipOf(right.get(wrongField)));
    browser.find(".reading button").click();
    browser.until("the verdict", () -> browser.maybe("#verdict").isPresent());
    assertThat(browser.find("#verdict").getAttribute("class")).contains("wrong");
    assertThat(browser.text("#verdict .correction")).contains(right.get(wrongField));
    assertThat(browser.all("li.ask.wrong")).hasSize(1);
    assertThat(browser.find("li.ask.wrong input").getAttribute("id")).isEqualTo(wrongField);
    browser.picture("4-slip-phone");

    browser.type("#" + wrongField, right.get(wrongField));
    browser.find(".reading button").click();
    browser.until("the right verdict", () -> browser.maybe("#verdict.right").isPresent());
    assertThat(browser.all("li.ask.wrong")).isEmpty();
    assertThat(browser.all("li.ask.right")).hasSizeGreaterThanOrEqualTo(right.size() - 4);
    browser.picture("5-proven-phone");

    browser.driver.findElement(By.linkText("Back to the plan")).click();
    browser.settled();
    assertThat(browser.find("#slot").getAttribute("value")).isEqualTo("3");
    browser.find("#taking button[value=a4]").click();
    try (PDDocument card = Loader.loadPDF(Files.readAllBytes(browser.downloaded(".pdf")))) {
      assertThat(card.getNumberOfPages()).isEqualTo(1);
      assertThat(new PDFTextStripper().getText(card)).contains("Capstan", "Gull");
    }
    browser.driver.findElement(By.linkText("Calendar file")).click();
    ICalendar calendar =
        Biweekly.parse(Files.readString(browser.downloaded(".ics"), StandardCharsets.UTF_8))
            .first();
    assertThat(calendar.getEvents()).isNotEmpty();
    assertThat(calendar.getEvents())
        .allSatisfy(e -> assertThat(e.getDateStart().getValue()).isAfter(CLOCK.instant()));
    assertThat(store.newestCards(1)).isNotEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"Tern", "Gull", "Heron"})
  void aRightReadBackIsProvenOnEveryKeypad(String keypad) throws Exception {
    choose("keypad", keypad);
    browser.find("#keying a.button").click();
    browser.until("the read-back page", () -> browser.maybe(".reading").isPresent());
    fill(whatTheDisplayShows());
    browser.find(".reading button").click();
    browser.until("the verdict", () -> browser.maybe("#verdict").isPresent());
    assertThat(browser.text("#verdict")).contains("Keyed as planned");
  }

  @Test
  void theCurveAndTheReadyTimeFollowAnEdit() throws Exception {
    choose("work", "Harbour burnout");
    choose("kiln", "Capstan");
    browser.find("input[name=by][value=start]").click();
    browser.settled();
    String before = browser.text("#answer .figure");
    String curve = browser.find("#curve path.display").getAttribute("d");
    String composed = browser.find("#hold2").getAttribute("value");

    browser.type("#hold2", "6:45");
    browser.until("the ready time follows", () -> !browser.text("#answer .figure").equals(before));
    browser.settled();
    assertThat(browser.find("#curve path.display").getAttribute("d")).isNotEqualTo(curve);
    assertThat(browser.driver.getCurrentUrl()).contains("hold2=6%3A45");
    assertThat(browser.driver.switchTo().activeElement().getAttribute("id")).isEqualTo("hold2");
    browser.view("6-edit-phone");

    browser.driver.navigate().refresh();
    browser.settled();
    assertThat(browser.find("#hold2").getAttribute("value")).isEqualTo("6:45");

    browser.find("[data-back=hold2]").click();
    browser.until(
        "the composed time is back", () -> browser.text("#answer .figure").equals(before));
    assertThat(browser.find("#hold2").getAttribute("value")).isEqualTo(composed);
  }

  @Test
  void aWrongValueIsToldBesideItsFieldAndNothingIsLost() throws Exception {
    String before = browser.text("#answer .figure");
    browser.type("#hold1", "90");
    browser.until("the sentence", () -> !browser.text("#hold1-error").isEmpty());
    assertThat(browser.text("#hold1-error")).contains("1:30 or 90:00");
    assertThat(browser.find("#hold1").getAttribute("value")).isEqualTo("90");
    assertThat(browser.find("#hold1").getAttribute("aria-invalid")).isEqualTo("true");
    assertThat(browser.text("#answer .figure")).isEqualTo(before);
    browser.picture("7-wrong-value-phone");
    browser.type("#hold1", "1:30");
    browser.until("the sentence goes", () -> browser.text("#hold1-error").isEmpty());
    browser.settled();
  }

  @Test
  void theCurveCanBeLookedAlongWithTheKeysAlone() {
    WebElement slider = browser.find("#firing-look");
    slider.sendKeys(Keys.END);
    String end = browser.text("#firing-seen");
    slider.sendKeys(Keys.HOME);
    assertThat(browser.text("#firing-seen")).contains("the display should say").isNotEqualTo(end);
    assertThat(slider.getAttribute("aria-valuetext")).isEqualTo(browser.text("#firing-seen"));
  }

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

  @ParameterizedTest
  @CsvSource({"light, 360", "dark, 390", "light, 1280", "dark, 1280"})
  void everybodyCanUseIt(String scheme, int width) throws Exception {
    browser.size(width, 900);
    browser.scheme(scheme);
    browser.all("summary").forEach(WebElement::click);
    assertThat(browser.tooWide()).isZero();
    browser.picture("8-all-open-%s-%d".formatted(scheme, width));
    assertThat(browser.violations()).isEmpty();

    browser.find("#keying a.button").click();
    browser.until("the read-back page", () -> browser.maybe(".reading").isPresent());
    browser.find(".reading button").click();
    browser.until("the verdict", () -> browser.maybe("#verdict").isPresent());
    assertThat(browser.tooWide()).isZero();
    browser.picture("9-readback-%s-%d".formatted(scheme, width));
    assertThat(browser.violations()).isEmpty();
  }

  @Test
  void aKilnIsLearnedFromItsLogs() throws Exception {
    choose("kiln", "Anchor");
    browser.driver.findElement(By.linkText("What is known of Anchor")).click();
    browser.until("the kiln's page", () -> browser.maybe("#watched").isPresent());
    assertThat(browser.all("#learned")).isEmpty();
    assertKnownPage("nameplate");
    assertThat(browser.text("#watched-firing .legend"))
        .contains("what the display said", "nine times in ten inside");
    browser.find("#watched figure.plotted .take a").click();
    assertThat(Files.readString(browser.downloaded(".svg")))
        .contains("plot-title")
        .contains("forecast");

    browser.find("form.learn button").click();
    browser.until("what was learned", () -> browser.maybe("#learned").isPresent());
    assertThat(browser.text(".answer .figure")).isEqualTo("4 firings");
    assertKnownPage("learned");

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
    assertUsable("14-inside");

    browser.driver.findElement(By.linkText("Back to the plan")).click();
    browser.settled();
  }

  @Test
  void thePourIsAskedForFromThePlanAndByItself() throws Exception {
    choose("work", "Harbour burnout");
    choose("kiln", "Capstan");
    browser.driver.findElement(By.linkText("The pour")).click();
    browser.until("the pour", () -> browser.maybe(".tabs").isPresent());
    assertThat(browser.all(".answer .figure").get(0).getText()).isEqualTo("500 °C");
    assertThat(browser.text("main")).contains("your own value", "cores there", "503.8 g");
    assertUsable("15-pour-temperatures");

    browser.type("#my-mould", "");
    browser.find("#asked button").click();
    browser.until(
        "the sources' value",
        () -> !browser.all(".answer .figure").get(0).getText().equals("500 °C"));
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
      assertUsable("15-pour-" + tab.toLowerCase(java.util.Locale.ROOT));
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
    assertUsable("16-slot-unknown");
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
    assertUsable("17-slots");
    browser.find("#happened button[value=power-cut]").click();
    browser.until("the history", () -> browser.text("#happened").contains("the power was cut"));
    assertThat(browser.text("#slot4")).contains("may hold something else now");
  }

  private static void assertUsable(String name) throws Exception {
    for (String scheme : List.of("light", "dark")) {
      for (int width : new int[] {360, PHONE, DESKTOP}) {
        browser.size(width, 900);
        browser.scheme(scheme);
        assertThat(browser.tooWide()).isZero();
        browser.picture("%s-%s-%d".formatted(name, scheme, width));
        assertThat(browser.violations()).isEmpty();
      }
    }
    browser.scheme("light");
  }

  private static void assertKnownPage(String state) throws Exception {
    assertUsable("12-known-" + state);
  }

  @Test
  void theTimesThatNobodyTouchedFollowTheWork() throws Exception {
    String press = browser.find("#press").getAttribute("value");
    choose("work", "Mixed moulds");
    assertThat(browser.find("#at").getAttribute("value")).isEqualTo("2026-12-05T14:00");
    assertThat(browser.find("#press").getAttribute("value")).isGreaterThan(press);
    assertThat(browser.driver.getTitle()).contains(browser.text("#answer .figure"));
    browser.find("input[name=by][value=start]").click();
    browser.until("the time of heat", () -> browser.text("label[for=at]").equals("Heat begins"));
    browser.settled();
    assertThat(browser.find("#at").getAttribute("value")).isEqualTo("2026-12-02T15:15");
  }

  @Test
  void onADesktopThePhonePageHasRoom() throws Exception {
    browser.size(DESKTOP, 900);
    choose("work", "Harbour burnout");
    choose("kiln", "Capstan");
    browser.picture("10-plan-desktop");
    int answer = browser.find("#answer").getRect().getX();
    int curve = browser.find("#curve").getRect().getX();
    assertThat(curve).isGreaterThan(answer + 300);
  }

  /** No pointer from the plan to the proof: the drawn keypad, then what its review shows. */
  @Test
  void aProgramIsRehearsedAndReadBackWithTheKeyboardAlone() throws Exception {
    choose("work", "Harbour burnout");
    choose("kiln", "Capstan");
    choose("keypad", "Gull");
    Firing firing = planned();
    browser.find("#keying a[href^='/rehearse']").sendKeys(Keys.ENTER);
    browser.until("the drawn keypad", () -> browser.maybe("#rehearse .padkeys").isPresent());
    for (KeyingStep step :
        KeyingPlanner.plan(firing.program(), firing.keypad(), firing.slot(), Optional.empty())
            .steps()) {
      for (Instruction instruction : step.make()) {
        key(instruction);
      }
      for (Instruction instruction : step.go()) {
        key(instruction);
      }
      if (browser.find("#rehearse .say").getAttribute("class").contains("done")) {
        break;
      }
    }
    assertThat(browser.text("#rehearse .say"))
        .contains("Keyed: slot %d holds the plan".formatted(firing.slot()));
    browser.picture("11-rehearsed-with-the-keyboard");
    browser.tabUntil("the tab of the read-back", e -> e.getText().equals("Read back"));
    browser.focused().sendKeys(Keys.ENTER);
    browser.until("the read-back", () -> browser.find("#readback").isDisplayed());
    assertThat(browser.focused().getAttribute("id")).isEqualTo("readback-head");
    browser.tabUntil("the slot", e -> "shown-slot".equals(e.getAttribute("id")));
    browser.focused().sendKeys(Integer.toString(firing.slot()));
    for (ReadbackQuestion question : Readback.questions(firing.program(), firing.keypad())) {
      browser.focused().sendKeys(Keys.TAB);
      assertThat(browser.focused().getAttribute("id")).isEqualTo("shown" + question.position());
      browser
          .focused()
          .sendKeys(
              firing.program().values().stream()
                  .filter(v -> v.place().equals(question.words()))
                  .findFirst()
                  .orElseThrow()
                  .digits());
    }
    browser.focused().sendKeys(Keys.ENTER);
    assertThat(browser.focused().getText()).contains("Keyed as planned");
  }

  private static void key(Instruction instruction) {
    KeyAction action = ((Instruction.Press) instruction).action();
    if (action instanceof KeyAction.Digit digit) {
      browser.focused().sendKeys(Integer.toString(digit.digit()));
      return;
    }
    String word = action.press().key().word();
    browser.tabUntil("the key " + word, e -> e.getText().equals(word));
    browser.focused().sendKeys(Keys.ENTER);
  }

  private static Firing planned() {
    return new FiringPlanner(store, CLOCK)
        .plan(Choices.of(query(browser.driver.getCurrentUrl())), 64)
        .firing()
        .orElseThrow();
  }

  private static void choose(String list, String name) {
    Select select = new Select(browser.find("#" + list));
    if (!select.getFirstSelectedOption().getText().equals(name)) {
      String before = browser.driver.getCurrentUrl();
      select.selectByVisibleText(name);
      browser.until("the choice is taken", () -> !browser.driver.getCurrentUrl().equals(before));
    }
    browser.settled();
  }

  /**
   * What a keypad that was keyed right shows, by form field, read from the plan behind the page.
   */
  private static Map<String, String> whatTheDisplayShows() {
    Firing firing = planned();
    Map<String, String> shown = new LinkedHashMap<>();
    shown.put("shown-slot", Integer.toString(firing.slot()));
    for (Page.Ask ask : ReadbackDesk.ask(firing).shown()) {
      firing.program().values().stream()
          .filter(v -> ask.label().endsWith(v.place()) || isEnd(v, ask))
          .findFirst()
          .ifPresent(v -> shown.put(ask.name(), v.digits()));
    }
    return shown;
  }

  private static boolean isEnd(KeyedValue value, Page.Ask ask) {
    return value.kind() == KeyedValue.Kind.END
        && ask.label().endsWith("segment %d, first value".formatted(value.segment()));
  }

  private static void fill(Map<String, String> shown) {
    shown.forEach((field, text) -> browser.type("#" + field, text));
    if (browser.maybe("#cold-display").isPresent()) {
      WebElement overnight = browser.find("input[name=overnight]");
      if (!overnight.isSelected()) {
        overnight.click();
      }
      browser.type("#cold-display", "19");
      browser.type("#cold-thermometer", "19");
    }
    browser.maybe("#shown-sign").ifPresent(sign -> new Select(sign).selectByVisibleText("°C"));
  }

  /** The last digit one up: the slip of one key press. */
  private static String slipOf(String digits) {
    char last = digits.charAt(digits.length() - 1);
    char slipped = last == '0' ? '5' : (char) (last - 1);
    return digits.substring(0, digits.length() - 1) + slipped;
  }

  private static Map<String, String> query(String url) {
    Map<String, String> fields = new LinkedHashMap<>();
    for (String pair : URI.create(url).getRawQuery().split("&")) {
      String[] parts = pair.split("=", 2);
      fields.put(parts[0], URLDecoder.decode(parts[1], StandardCharsets.UTF_8));
    }
    return fields;
  }
}
