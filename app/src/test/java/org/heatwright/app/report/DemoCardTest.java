package org.heatwright.app.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.heatwright.app.files.KeypadFile;
import org.heatwright.app.files.KilnFile;
import org.heatwright.app.files.ScheduleCode;
import org.heatwright.app.files.WorkFile;
import org.heatwright.app.qr.QrFinder;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.forecast.Forecaster;
import org.heatwright.forecast.StartPlan;
import org.heatwright.forecast.StartPlanner;
import org.heatwright.inspect.Inspection;
import org.heatwright.inspect.Inspector;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.KeyedValue;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.KeypadFit;
import org.heatwright.kiln.Kiln;
import org.heatwright.schedule.Schedule;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.Composer;
import org.heatwright.work.Composition;
import org.heatwright.work.PourSheet;
import org.heatwright.work.Work;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Cards of the demo studio, through the real chain. */
class DemoCardTest {

  private static String text(String path) throws IOException {
    try (InputStream in = DemoCardTest.class.getResourceAsStream("/demo/" + path)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  /** A demo firing, planned to be ready in time on a demo keypad. */
  record Planned(FittedProgram program, Forecast forecast, Card card) {}

  static Planned plan(
      String workName, String kilnName, String keypadName, TemperatureUnit unit, int hoursBefore)
      throws IOException {
    Work work = WorkFile.read(text("works/" + workName + ".yaml"), workName);
    return plan(work, kilnName, keypadName, unit, hoursBefore);
  }

  private static Planned plan(
      Work work, String kilnName, String keypadName, TemperatureUnit unit, int hoursBefore)
      throws IOException {
    Kiln kiln = KilnFile.read(text("kilns/" + kilnName + ".yaml"), kilnName);
    Keypad keypad = KeypadFile.read(text("keypads/" + keypadName + ".yaml"), keypadName);
    Composition composition = Composer.compose(work, kiln, Optional.of(keypad));
    Schedule asked = composition.schedule().withUnit(unit);
    Forecast forecast =
        Forecaster.forecast(
            ForecastRequest.of(
                KeypadFit.fit(asked, keypad).expressible(), kiln, composition.charge()));
    ZonedDateTime by = work.readyBy().orElseThrow().atZone(kiln.timeZone().orElseThrow());
    ZonedDateTime press = by.minusHours(hoursBefore);
    StartPlan wanted = StartPlanner.readyBy(forecast, by, press).orElseThrow();
    FittedProgram program =
        KeypadFit.fit(asked.withStartDelay(wanted.delayToSet().orElseThrow()), keypad);
    ZonedDateTime start = press.plus(program.expressible().startDelay());
    CardBuilder builder = CardBuilder.of(program, keypad, kiln, forecast);
    PourSheet.of(work, program.expressible(), kiln.room()).ifPresent(builder::pour);
    Card card =
        builder
            .composition(composition, composition.outcomes(program.expressible(), forecast))
            .slot(2)
            .start(start, wanted.notes())
            .findings(
                Inspector.inspect(
                    Inspection.of(program.expressible())
                        .in(kiln)
                        .on(keypad)
                        .forWork(composition.demands())
                        .with(forecast)))
            .build();
    return new Planned(program, forecast, card);
  }

  @ParameterizedTest
  @CsvSource({
    "harbour-burnout, capstan, tern, CELSIUS, 18",
    "harbour-burnout, capstan, tern, FAHRENHEIT, 18",
    "harbour-burnout, capstan, gull, CELSIUS, 18",
    "harbour-burnout, anchor, heron, CELSIUS, 18",
    "mixed-moulds, capstan, gull, CELSIUS, 30",
    "mixed-moulds, capstan, gull, CELSIUS, 10",
    "evening-enamel, buoy, heron, CELSIUS, 2",
    "silver-class, buoy, tern, CELSIUS, 6",
    "glass-charms, anchor, gull, CELSIUS, 20",
    "copper-leaves-1, buoy, tern, CELSIUS, 6",
    "copper-leaves-2, anchor, heron, CELSIUS, 24",
    "silver-cloisonne, buoy, tern, CELSIUS, 4",
    "steel-numbers, buoy, gull, CELSIUS, 4",
    "gold-studs, buoy, heron, FAHRENHEIT, 4",
  })
  void thePrintedDigitsAreThoseOfTheFittedProgramInKeyingOrder(
      String work, String kiln, String keypad, TemperatureUnit unit, int hoursBefore)
      throws IOException {
    Planned planned = plan(work, kiln, keypad, unit, hoursBefore);
    for (PageSize size : PageSize.values()) {
      byte[] pdf = CardPdf.render(planned.card(), size);
      keepForLooking(pdf, work + "-" + keypad + "-" + unit + "-" + hoursBefore + "-" + size);
      List<String> large = PrintedPage.large(pdf);
      int from = large.indexOf(planned.program().values().get(0).digits());
      assertThat(from).isNotNegative();
      List<String> keyed =
          planned.program().values().stream()
              .filter(v -> v.kind() != KeyedValue.Kind.END || v.segment() <= firstUnused(planned))
              .map(KeyedValue::digits)
              .toList();
      assertThat(large).containsSequence(keyed);
      String code = QrFinder.text(pdf, "card", ScheduleCode::isOurs);
      assertThat(ScheduleCode.read(code, "card"))
          .isEqualTo(planned.program().expressible().withUnit(planned.program().unit()));
    }
  }

  /** One moment has one time: on the card, on the phone's card and in the calendar. */
  @ParameterizedTest
  @CsvSource({
    "harbour-burnout, capstan, tern, 18",
    "mixed-moulds, capstan, gull, 30",
    "evening-enamel, buoy, heron, 2",
  })
  void everyDeadlineIsToldByItsEarlyEndAndNoneIsLeftOut(
      String work, String kiln, String keypad, int hoursBefore) throws IOException {
    Planned planned = plan(work, kiln, keypad, TemperatureUnit.CELSIUS, hoursBefore);
    Card card = planned.card();
    WhenWords when = new WhenWords(card.timing().start());
    String pdf = PrintedPage.text(CardPdf.render(card, PageSize.A4)).replaceAll("\\s+", " ");
    String phone =
        PocketPage.file(
            PocketPage.Content.of(
                Optional.of(card),
                planned.program(),
                KeypadFile.read(text("keypads/" + keypad + ".yaml"), keypad),
                2,
                Optional.empty()));
    List<CalendarFile.Event> events = CalendarFile.events(card, "a@b");
    assertThat(card.moments()).filteredOn(Card.Act::deadline).hasSizeGreaterThanOrEqualTo(2);
    for (Card.Act act : card.moments()) {
      assertThat(pdf).contains(act.what());
      if (!act.deadline()) {
        continue;
      }
      double whole = when.minuteBefore(act.seconds().low());
      assertThat(whole).isBetween(act.seconds().low() - 60, act.seconds().low());
      assertThat(act.at(when)).isEqualTo(when.full(whole));
      assertThat(pdf).contains(when.full(whole));
      assertThat(phone).contains(when.full(whole) + ": " + act.what());
      if (act.actNow()) {
        assertThat(events)
            .filteredOn(event -> event.summary().equals("Act now: " + act.what()))
            .extracting(CalendarFile.Event::start)
            .containsExactly(when.at(whole).orElseThrow().toInstant());
      }
    }
  }

  /** The pour stands on the card, with the metal for three patterns of 14 g. */
  @Test
  void theCardSaysHowTheMouldsArePoured() throws IOException {
    Planned planned = plan("harbour-burnout", "capstan", "gull", TemperatureUnit.CELSIUS, 18);
    for (PageSize size : PageSize.values()) {
      String text = PrintedPage.text(CardPdf.render(planned.card(), size)).replaceAll("\\s+", " ");
      assertThat(text)
          .contains("Pour", "melt first, then draw the moulds")
          .contains("500 °C all through, your own value; sources")
          .contains("cores there", "Thu 3 Dec")
          .contains("the wall by the pattern is under 475 °C after", "in a cradle")
          .contains("metal to melt 3 × 167.9 g = 503.8 g")
          .contains("a filled mould stands 1 to 2 h, unmoved")
          .contains("5 to 20 min after the pour", "it throws steam and slurry");
    }
    Planned enamel = plan("evening-enamel", "buoy", "heron", TemperatureUnit.CELSIUS, 2);
    assertThat(enamel.card().pour()).isEmpty();
  }

  /** The chain ends in what happens in the piece; what is ready after the end is told as an act. */
  @Test
  void cardsOfMetalClayTellThePieceAndTheHandBack() throws IOException {
    Planned planned = plan("silver-class", "buoy", "tern", TemperatureUnit.CELSIUS, 6);
    String text =
        PrintedPage.text(CardPdf.render(planned.card(), PageSize.A4)).replaceAll("\\s+", " ");
    assertThat(text)
        .contains(
            "What happens in the piece", "time at heat in the piece", "density when it is done")
        .contains("latest load, all dry", "hand back");
    assertThat(planned.card().findings())
        .noneMatch(finding -> finding.severity() == org.heatwright.inspect.Severity.STOP);
  }

  /**
   * A firing where all is well never shows what the card calls a reason to switch off; with glass
   * or a stone in the clay that reason lies no higher than what these stand.
   */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          clay: fine-silver, pieces: [{thickness-mm: 2, length-mm: 25, holds: glass}] | 640 | 650
          clay: fine-silver-low-fire, pieces: [{thickness-mm: 2, length-mm: 25, holds: stone}] | 590 | 600
          clay: fine-silver-low-fire, data-sheet: {top-celsius: 700}, pieces: [{thickness-mm: 2, length-mm: 25, holds: glass}] | 640 | 650
          clay: bronze, phase: sinter, pieces: [{thickness-mm: 2, length-mm: 25}] | 830 | 840
          """)
  void theAlarmLiesAboveWhatTheDisplaySwingsThrough(String keys, int target, int alarm)
      throws IOException {
    Work work = WorkFile.read("{kind: sinter, " + keys + ", ready-by: 2026-12-07T10:00}\n", "clay");
    Planned planned = plan(work, "anchor", "gull", TemperatureUnit.CELSIUS, 36);
    assertThat(planned.program().expressible().peak().celsius()).isEqualTo(target);
    assertThat(planned.card().alarms().get(0).sign()).startsWith("Display above " + alarm + " °C");
    double highest =
        planned.forecast().segments().stream()
            .flatMap(segment -> segment.overshoot().stream())
            .mapToDouble(overshoot -> target + overshoot.above().median())
            .max()
            .orElseThrow();
    assertThat(highest).isLessThan(alarm);
  }

  /** A piece that goes into the hot kiln is drawn on its own clock, on the same one page. */
  @Test
  void anEnamelCardShowsThePieceOnItsOwnClock() throws IOException {
    Planned planned = plan("silver-cloisonne", "buoy", "tern", TemperatureUnit.CELSIUS, 4);
    PieceChart chart = planned.card().pieceChart().orElseThrow();
    assertThat(chart.fromSeconds()).isBetween(20.0, chart.untilSeconds());
    assertThat(chart.rows().get(0).medianCelsius()).isEqualTo(20);
    for (PageSize size : PageSize.values()) {
      byte[] pdf = CardPdf.render(planned.card(), size);
      try (PDDocument document = Loader.loadPDF(pdf)) {
        assertThat(document.getNumberOfPages()).isEqualTo(1);
      }
      assertThat(PrintedPage.text(pdf).replaceAll("\\s+", " "))
          .contains("counted from the door's shutting", "the piece, 9 in 10", "take it out")
          .contains("time in the kiln");
    }
    assertThat(plan("silver-class", "buoy", "tern", TemperatureUnit.CELSIUS, 6).card().pieceChart())
        .isEmpty();
  }

  /** Where the page has room, it says what the display is worth. */
  @Test
  void aCardWithRoomSaysWhatTheDisplayIsWorth() throws IOException {
    Planned planned = plan("evening-enamel", "buoy", "heron", TemperatureUnit.CELSIUS, 2);
    byte[] pdf = CardPdf.render(planned.card(), PageSize.LETTER);
    try (PDDocument document = Loader.loadPDF(pdf)) {
      assertThat(new PDFTextStripper().getText(document).replaceAll("\\s+", " "))
          .contains("display a class 2 type K couple may be 7 K off at 820 °C");
    }
  }

  private static int firstUnused(Planned planned) {
    return planned.program().expressible().segments().size() + 1;
  }

  /** Under target/cards, for a person to look at. */
  static void keepForLooking(byte[] pdf, String name) throws IOException {
    Path folder = Path.of("target", "cards");
    Files.createDirectories(folder);
    Files.write(folder.resolve(name + ".pdf"), pdf);
  }

  @Test
  void aCardTellsTheSameTimesAsTheForecast() throws IOException {
    Planned planned = plan("harbour-burnout", "capstan", "tern", TemperatureUnit.CELSIUS, 18);
    Card card = planned.card();
    assertThat(card.timing().ready().orElseThrow().fromSeconds())
        .isEqualTo(planned.forecast().workReadySeconds().orElseThrow());
    assertThat(card.timing().ending().seconds()).isEqualTo(planned.forecast().endSeconds());
    for (Card.Entry entry : card.entries()) {
      assertThat(entry.reachedSeconds())
          .contains(planned.forecast().segments().get(entry.segment() - 1).reachedSeconds());
    }
    for (Card.DisplayRow row : card.display()) {
      assertThat(row.displayCelsius())
          .isEqualTo(planned.forecast().trace().displayCelsiusAt(row.seconds()));
    }
  }

  @Test
  void theCalendarRingsForThePour() throws IOException {
    Card card = plan("harbour-burnout", "capstan", "tern", TemperatureUnit.CELSIUS, 18).card();
    assertThat(CalendarFile.events(card, "harbour@heatwright"))
        .extracting(CalendarFile.Event::summary)
        .anyMatch(s -> s.startsWith("Work ready"))
        .anyMatch(s -> s.startsWith("Act now: melt ready"));
  }

  @Test
  void aProgramThatDoesNotFitHasNoCard() throws IOException {
    Kiln kiln = KilnFile.read(text("kilns/capstan.yaml"), "capstan");
    Keypad keypad = KeypadFile.read(text("keypads/tern.yaml"), "tern");
    Schedule tooMany = TestFirings.stairs(keypad.segments() + 1, TemperatureUnit.CELSIUS);
    FittedProgram program = KeypadFit.fit(tooMany, keypad);
    Forecast forecast = TestFirings.forecast(tooMany, kiln, false);
    assertThatThrownBy(() -> CardBuilder.of(program, keypad, kiln, forecast))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("does not fit the keypad");
  }
}
