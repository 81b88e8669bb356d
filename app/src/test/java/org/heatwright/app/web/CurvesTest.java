package org.heatwright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.time.Clock;
import java.time.Duration;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.heatwright.app.demo.DemoStudio;
import org.heatwright.app.plot.WatchedFiring;
import org.heatwright.app.store.Store;
import org.heatwright.forecast.Forecast;
import org.heatwright.learn.Readings;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Test;

/** What the pages' curves are given to show. */
class CurvesTest {

  private static final ZonedDateTime EVENING =
      ZonedDateTime.of(2026, 12, 2, 20, 30, 0, 0, ZoneId.of("Europe/Lisbon"));
  private static final Forecast FORECAST = forecast();
  private static final List<CurveData.Limit> KILN = List.of(new CurveData.Limit(1100, "the kiln"));

  private static Forecast forecast() {
    Clock clock = Clock.fixed(EVENING.toInstant(), EVENING.getZone());
    try (Store store = Store.temporary(clock)) {
      DemoStudio.fill(store);
      return new FiringPlanner(store, clock)
          .plan(Choices.of(DemoStudio.OPENING), 8)
          .firing()
          .orElseThrow()
          .forecast();
    }
  }

  private static CurveData watched(Optional<Readings> seen, Optional<ZonedDateTime> now) {
    return Curves.watched(
        new WatchedFiring(
            FORECAST,
            "",
            seen,
            TemperatureUnit.CELSIUS,
            Optional.of(EVENING),
            List.of(new WatchedFiring.Happening(600, 1200, "door open"))),
        KILN,
        now);
  }

  @Test
  void aHandfulOfReadingsIsDotsAndALogIsALineWithItsGaps() {
    CurveData byHand =
        watched(
            Optional.of(Readings.of(new double[] {600, 4000}, new double[] {90, 301})),
            Optional.of(EVENING.plusMinutes(90)));
    CurveData.Line dots = byHand.lines().get(byHand.lines().size() - 1);
    assertThat(dots.role()).isEqualTo(CurveData.Role.READINGS);
    assertThat(dots.seconds()).containsExactly(600.0, 4000.0);
    assertThat(dots.celsius()).containsExactly(90.0, 301.0);
    assertThat(byHand.nowSeconds()).contains(5400.0);
    assertThat(byHand.stretches())
        .anyMatch(s -> s.during() == CurveData.During.EVENT && s.label().equals("door open"));
    CurveFigure figure = CurveFigure.of("running", byHand, "", "A firing.");
    assertThat(figure.dots()).hasSize(2);
    assertThat(figure.now()).isPresent();
    assertThat(figure.rows()).anyMatch(row -> row.stream().anyMatch(c -> c.startsWith("301 (")));

    double[] seconds =
        IntStream.range(0, 200).mapToDouble(i -> i * 30 + (i < 100 ? 0 : 3600)).toArray();
    double[] celsius = IntStream.range(0, 200).mapToDouble(i -> 20 + i).toArray();
    CurveData logged = watched(Optional.of(Readings.of(seconds, celsius)), Optional.empty());
    List<CurveData.Line> runs =
        logged.lines().stream().filter(l -> l.role() == CurveData.Role.MEASURED).toList();
    assertThat(runs).hasSize(2);
    assertThat(runs.get(0).seconds()).endsWith(99 * 30.0);
    assertThat(runs.get(1).seconds()).startsWith(100 * 30.0 + 3600);
    assertThat(CurveFigure.of("log", logged, "", "").legend())
        .filteredOn(k -> k.look().equals("measured"))
        .hasSize(1);
  }

  /** Clocks go back at 01:00 UTC on 25 October 2026: 02:00 comes twice (European rule). */
  @Test
  void theClocksOffsetsComeAlong() throws Exception {
    ZonedDateTime start = ZonedDateTime.of(2026, 10, 24, 22, 0, 0, 0, ZoneId.of("Europe/Berlin"));
    CurveJson.Clock clock = CurveJson.Clock.of(start, Duration.ofHours(12).toSeconds());
    assertThat(clock.startMillis()).isEqualTo(start.toInstant().toEpochMilli());
    assertThat(clock.offsets())
        .containsExactly(new CurveJson.Offset(-86_400, 7200), new CurveJson.Offset(5 * 3600, 3600));
    ZonedDateTime summer = ZonedDateTime.of(2026, 6, 1, 8, 0, 0, 0, ZoneId.of("UTC"));
    assertThat(CurveJson.Clock.of(summer, 3600).offsets())
        .containsExactly(new CurveJson.Offset(-86_400, 0));
  }

  @Test
  void whatStandsInThePageIsOneJsonRecordThatEndsNoScript() throws Exception {
    CurveData data = watched(Optional.empty(), Optional.empty());
    CurveFigure figure = CurveFigure.of("x", data, "", "Up </script> and down.");
    assertThat(figure.json()).doesNotContain("<");
    JsonNode json = new ObjectMapper().readTree(figure.json());
    assertThat(json.path("summary").asText()).isEqualTo("Up </script> and down.");
    assertThat(json.path("unit").asText()).isEqualTo("C");
    assertThat(json.path("nowSeconds").isNull()).isTrue();
    assertThat(json.path("lines").findValuesAsText("role")).contains("setpoint", "display");
    assertThat(json.path("band").path("seconds"))
        .hasSameSizeAs(json.path("band").path("highCelsius"));
  }

  /** Thinned: far fewer points than the forecast has, and none off by a display's last digit. */
  @Test
  void theDrawnCurveIsTheForecast() {
    CurveData data = watched(Optional.empty(), Optional.empty());
    double[] seconds = FORECAST.trace().seconds();
    double[] median = FORECAST.trace().medianCelsius();
    CurveData.Line line =
        data.lines().stream()
            .filter(l -> l.role() == CurveData.Role.DISPLAY)
            .findFirst()
            .orElseThrow();
    assertThat(line.seconds().size()).isLessThan(seconds.length / 2);
    int next = 1;
    for (int i = 0; i < seconds.length; i++) {
      while (next < line.seconds().size() - 1 && line.seconds().get(next) < seconds[i]) {
        next++;
      }
      double from = line.seconds().get(next - 1);
      double share = (seconds[i] - from) / (line.seconds().get(next) - from);
      double drawn =
          line.celsius().get(next - 1)
              + share * (line.celsius().get(next) - line.celsius().get(next - 1));
      assertThat(drawn).isBetween(median[i] - 0.5, median[i] + 0.5);
    }
  }
}
