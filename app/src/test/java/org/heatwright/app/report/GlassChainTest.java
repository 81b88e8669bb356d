package org.heatwright.app.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.heatwright.app.files.KeypadFile;
import org.heatwright.app.files.KilnFile;
import org.heatwright.app.files.ScheduleCode;
import org.heatwright.app.files.ScheduleFile;
import org.heatwright.app.files.WorkFile;
import org.heatwright.app.qr.QrFinder;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.forecast.Forecaster;
import org.heatwright.forecast.StartPlan;
import org.heatwright.forecast.StartPlanner;
import org.heatwright.inspect.Finding;
import org.heatwright.inspect.Inspection;
import org.heatwright.inspect.Inspector;
import org.heatwright.inspect.Severity;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.KeypadFit;
import org.heatwright.kiln.Kiln;
import org.heatwright.schedule.Schedule;
import org.heatwright.work.Composer;
import org.heatwright.work.Composition;
import org.heatwright.work.GlassWork;
import org.heatwright.work.Outcome;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The demo studio's glass through the whole chain: compose, inspect, forecast, judge, card. */
class GlassChainTest {

  private static String text(String path) throws IOException {
    try (InputStream in = GlassChainTest.class.getResourceAsStream("/demo/" + path)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  /** Nobody is told to open a kiln in which the glass is still too hot to open it. */
  @ParameterizedTest
  @CsvSource({
    "glass-bowl, buoy, tern",
    "glass-disc, buoy, gull",
    "glass-tack, buoy, heron",
  })
  void glassIsReadyOnlyWhenTheShutKilnHasCooledIt(
      String workName, String kilnName, String keypadName) throws IOException {
    Kiln kiln = KilnFile.read(text("kilns/" + kilnName + ".yaml"), kilnName);
    Keypad keypad = KeypadFile.read(text("keypads/" + keypadName + ".yaml"), keypadName);
    GlassWork work = (GlassWork) WorkFile.read(text("works/" + workName + ".yaml"), workName);
    Composition composition = Composer.compose(work, kiln, Optional.of(keypad));
    FittedProgram program = KeypadFit.fit(composition.schedule(), keypad);
    ForecastRequest request = ForecastRequest.of(program.expressible(), kiln, composition.charge());
    Forecast forecast = Forecaster.forecast(request);
    List<Outcome> outcomes = composition.outcomes(program.expressible(), forecast);
    assertThat(outcomes)
        .filteredOn(o -> o.code().equals("opening"))
        .allMatch(o -> o.meaning().startsWith("Too hot to open"));
    Band ready = composition.ready(forecast).seconds().orElseThrow();
    assertThat(ready.low()).isGreaterThanOrEqualTo(forecast.endSeconds().low());
    assertThat(ready.high()).isGreaterThan(forecast.endSeconds().high() + 600);
    Card card =
        CardBuilder.of(program, keypad, kiln, forecast).composition(composition, outcomes).build();
    assertThat(card.timing().ready().orElseThrow().fromSeconds()).isEqualTo(ready);
    assertThat(card.moments())
        .filteredOn(act -> act.what().equals("kiln may be opened"))
        .extracting(Card.Act::seconds)
        .containsExactly(ready);
    Forecast sketch = Forecaster.forecastDisplay(request.withDraws(1));
    assertThat(composition.ready(sketch).seconds().orElseThrow().median())
        .isGreaterThanOrEqualTo(sketch.endSeconds().median() - 1);
  }

  @ParameterizedTest
  @CsvSource({
    "glass-disc, anchor, gull, 36",
    "glass-bowl, anchor, tern, 22",
    "glass-tack, capstan, heron, 36",
    "glass-slab, capstan, gull, 36",
  })
  void glassBecomesACard(String workName, String kilnName, String keypadName, int hoursBefore)
      throws IOException {
    Kiln kiln = KilnFile.read(text("kilns/" + kilnName + ".yaml"), kilnName);
    Keypad keypad = KeypadFile.read(text("keypads/" + keypadName + ".yaml"), keypadName);
    GlassWork work = (GlassWork) WorkFile.read(text("works/" + workName + ".yaml"), workName);
    Composition composition = Composer.compose(work, kiln, Optional.of(keypad));
    Schedule asked = ScheduleFile.read(ScheduleFile.write(composition.schedule()), "schedule.yaml");
    assertThat(asked).isEqualTo(composition.schedule());
    assertThat(KeypadFit.fit(asked, keypad).fits()).isTrue();
    Forecast forecast =
        Forecaster.forecast(
            ForecastRequest.of(
                KeypadFit.fit(asked, keypad).expressible(), kiln, composition.charge()));
    StartPlanner.Ready ready = composition.ready(forecast);
    ZonedDateTime by = work.readyBy().orElseThrow().atZone(kiln.timeZone().orElseThrow());
    ZonedDateTime press = by.minusHours(hoursBefore);
    StartPlan wanted = StartPlanner.readyBy(forecast, ready, by, press).orElseThrow();
    FittedProgram program =
        KeypadFit.fit(asked.withStartDelay(wanted.delayToSet().orElseThrow()), keypad);
    ZonedDateTime start = press.plus(program.expressible().startDelay());
    List<Finding> findings =
        Inspector.inspect(
            Inspection.of(program.expressible())
                .in(kiln)
                .on(keypad)
                .forWork(composition.demands())
                .with(forecast));
    assertThat(findings).noneMatch(f -> f.severity() == Severity.STOP);
    List<Outcome> outcomes = composition.outcomes(program.expressible(), forecast);
    assertThat(outcomes)
        .extracting(Outcome::code)
        .contains("hottest", "heating-tension", "anneal-soak", "left-stress", "opening");
    assertThat(outcomes).filteredOn(o -> o.severity().isPresent()).isEmpty();
    Card card =
        CardBuilder.of(program, keypad, kiln, forecast)
            .composition(composition, outcomes)
            .slot(2)
            .start(start, wanted.notes())
            .findings(findings)
            .build();
    for (PageSize size : PageSize.values()) {
      byte[] pdf = CardPdf.render(card, size);
      Path folder = Path.of("target", "cards");
      Files.createDirectories(folder);
      Files.write(folder.resolve(workName + "-" + size + ".pdf"), pdf);
      String code = QrFinder.text(pdf, "card", ScheduleCode::isOurs);
      assertThat(ScheduleCode.read(code, "card"))
          .isEqualTo(program.expressible().withUnit(program.unit()));
      String printed = PrintedPage.text(pdf).replaceAll("\\s+", " ");
      assertThat(Stream.of("anneal soak", "cool slowly", "Work ready from", "and it keeps"))
          .allMatch(printed::contains);
    }
    CalendarFile.Event told =
        CalendarFile.events(card, "a@b").stream()
            .filter(event -> event.uid().equals("a-ready@b"))
            .findFirst()
            .orElseThrow();
    assertThat(told.description())
        .contains("nine in ten), cold, and it keeps.")
        .doesNotContain("a person ends");
    assertThat(told.end()).isAfter(told.start());
  }
}
