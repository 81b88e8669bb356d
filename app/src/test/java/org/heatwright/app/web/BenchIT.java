package org.heatwright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import biweekly.Biweekly;
import biweekly.ICalendar;
import java.net.URI;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.keypad.KeyedValue;
import org.heatwright.keypad.Readback;
import org.heatwright.keypad.ReadbackQuestion;
import org.heatwright.keypad.keying.Instruction;
import org.heatwright.keypad.keying.KeyingPlanner;
import org.heatwright.keypad.keying.KeyingStep;
import org.heatwright.keypad.machine.KeyAction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.support.ui.Select;

/** Walks the bench in a browser, from the work to the card. */
class BenchIT extends PlanWalk {

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

  /** The curve stays beside the schedule; what to key lies below it and can be read. */
  @Test
  void theCurveNeverLiesOverWhatToKey() throws Exception {
    browser.size(DESKTOP, 900);
    choose("work", "Harbour burnout");
    choose("kiln", "Capstan");
    Number length = (Number) browser.script("return document.documentElement.scrollHeight");
    for (int down = 0; down < length.intValue(); down += 150) {
      assertThat(
              browser.script(
                  """
                  window.scrollTo(0, arguments[0]);
                  return [...document.querySelectorAll('#keying li, #keying a')].filter((line) => {
                    const box = line.getBoundingClientRect();
                    const at = document.elementFromPoint(box.x + box.width / 2, box.y + 4);
                    return at && at.closest('#curve');
                  }).map((line) => line.textContent);""",
                  down))
          .as("what the curve lies over after %d px", down)
          .isEqualTo(List.of());
    }
    Number top =
        (Number)
            browser.script(
                """
                const curve = document.querySelector('#curve');
                window.scrollTo(0, curve.parentElement.getBoundingClientRect().top + window.scrollY + 60);
                return curve.getBoundingClientRect().top;""");
    assertThat(top.doubleValue()).isBetween(-1.0, 1.0);
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
        .plan(Choices.of(query(browser.driver.getCurrentUrl())), ForecastRequest.USUAL_DRAWS)
        .firing()
        .orElseThrow();
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
