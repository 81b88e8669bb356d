package org.heatwright.forecast;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.time.zone.ZoneRulesProvider;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

class StartPlannerTest {

  private static final ZoneId LISBON = ZoneId.of("Europe/Lisbon");

  private static ZonedDateTime lisbon(String local) {
    return LocalDateTime.parse(local).atZone(LISBON);
  }

  private static Forecast ending(Duration end) {
    return Forecasts.empty(
        Band.exactly(end.toSeconds()), Band.exactly(end.toSeconds()), 1000, Band.exactly(1));
  }

  /** Cases computed with the IANA time-zone data 2026f (provenance in the file). */
  @ParameterizedTest
  @CsvFileSource(resources = "dst_delayed_start.csv", useHeadersInDisplayName = true)
  void aFiringOverTheChangeEndsAtTheTrueLocalTime(
      String zone, LocalDateTime start, int elapsedHours, LocalDateTime end, LocalDateTime naive) {
    StartPlan plan =
        StartPlanner.startingAt(
            ending(Duration.ofHours(elapsedHours)), start.atZone(ZoneId.of(zone)));

    assertThat(plan.end().until().toLocalDateTime()).isEqualTo(end).isNotEqualTo(naive);
    assertThat(plan.notes()).hasSize(1);
    assertThat(plan.notes().get(0)).startsWith("The clocks go ");
  }

  /** Cases computed with the IANA time-zone data 2026f (provenance in the file). */
  @ParameterizedTest
  @CsvFileSource(resources = "dst_local_times.csv", useHeadersInDisplayName = true)
  void localTimesThatAreMissingOrDoubledAreTold(
      String zone, LocalDateTime local, String kind, String validOffsetsMinutes) {
    ZoneId id = ZoneId.of(zone);
    Assumptions.assumeTrue(
        !List.of("America/Vancouver", "Africa/Casablanca").contains(zone)
            || ZoneRulesProvider.getVersions(zone).lastKey().compareTo("2026f") >= 0,
        "This Java's time-zone data is older than the zone's new law.");
    List<Integer> offsets =
        validOffsetsMinutes == null
            ? List.of()
            : java.util.Arrays.stream(validOffsetsMinutes.split(";"))
                .map(Integer::parseInt)
                .toList();

    StartPlanner.LocalChoice choice = StartPlanner.atLocal(local, id);

    int chosen = choice.time().getOffset().getTotalSeconds() / 60;
    switch (kind) {
      case "plain" -> {
        assertThat(choice.notes()).isEmpty();
        assertThat(choice.time().toLocalDateTime()).isEqualTo(local);
        assertThat(offsets).containsExactly(chosen);
      }
      case "overlap" -> {
        assertThat(choice.notes()).singleElement().asString().contains("comes twice");
        assertThat(choice.time().toLocalDateTime()).isEqualTo(local);
        assertThat(chosen).isEqualTo(offsets.stream().max(Integer::compare).orElseThrow());
      }
      default -> {
        assertThat(choice.notes()).singleElement().asString().contains("does not exist");
        assertThat(offsets).isEmpty();
        assertThat(choice.time().toLocalDateTime()).isAfter(local);
        ZonedDateTime before = choice.time().minusSeconds(1);
        assertThat(before.toLocalDateTime()).isBefore(local);
      }
    }
  }

  /** A 12 h delay set in the evening, over the night when the clocks change. */
  @ParameterizedTest
  @CsvSource({
    "Europe/London, 2026-10-24T20:00, 2026-10-25T07:00",
    "America/New_York, 2026-10-31T20:00, 2026-11-01T07:00",
    "Europe/London, 2027-03-27T20:00, 2027-03-28T09:00",
    "Europe/London, 2026-11-14T20:00, 2026-11-15T08:00"
  })
  void twelveHoursOfDelayAreTwelveElapsedHours(
      String zone, LocalDateTime now, LocalDateTime startLocal) {
    ZoneId id = ZoneId.of(zone);

    StartPlan plan =
        StartPlanner.startingAt(ending(Duration.ofHours(2)), startLocal.atZone(id), now.atZone(id));

    assertThat(plan.delayToSet()).contains(Duration.ofHours(12));
    assertThat(plan.start().toLocalDateTime()).isEqualTo(startLocal);
  }

  @Test
  void theLatestSafeStartCountsWithTheHighEndOfReady() {
    Forecast forecast =
        Forecasts.withWork(Optional.of(new Band(50_000, 51_000, 52_000)), Band.exactly(60_000));

    StartPlan plan =
        StartPlanner.readyBy(forecast, lisbon("2026-12-03T10:00"), lisbon("2026-12-02T12:00"))
            .orElseThrow();

    assertThat(plan.inTime()).isTrue();
    assertThat(plan.start()).isEqualTo(lisbon("2026-12-02T19:33")); // 14 h 26 min 40 s before
    assertThat(plan.delayToSet()).contains(Duration.ofMinutes(453));
    assertThat(plan.ready().orElseThrow().words()).isEqualTo("09:26 to 10:00 Thursday 3 December");
    assertThat(plan.notes()).isEmpty();
  }

  @Test
  void readyByOnTheNightWhenTheClocksGoForwardStartsAnHourEarlierOnTheClock() {
    Forecast forecast = Forecasts.withWork(Optional.of(Band.exactly(36_000)), Band.exactly(40_000));

    StartPlan plan =
        StartPlanner.readyBy(forecast, lisbon("2027-03-28T08:00"), lisbon("2027-03-27T12:00"))
            .orElseThrow();

    assertThat(plan.start()).isEqualTo(lisbon("2027-03-27T21:00"));
    assertThat(plan.delayToSet()).contains(Duration.ofHours(9));
    assertThat(plan.notes())
        .containsExactly(
            "The clocks go forward from 01:00 to 02:00 on Sunday 28 March. The times here allow for"
                + " it, a delay is elapsed time; a controller with a clock of its own may not"
                + " follow.");
  }

  @Test
  void whatCannotBeReadyInTimeIsTold() {
    Forecast forecast =
        Forecasts.withWork(Optional.of(new Band(30_000, 33_000, 36_000)), Band.exactly(40_000));

    StartPlan plan =
        StartPlanner.readyBy(forecast, lisbon("2026-12-03T10:00"), lisbon("2026-12-03T03:00"))
            .orElseThrow();

    assertThat(plan.inTime()).isFalse();
    assertThat(plan.delayToSet()).contains(Duration.ZERO);
    assertThat(plan.start()).isEqualTo(lisbon("2026-12-03T03:00"));
    assertThat(plan.notes())
        .containsExactly(
            "Ready by 10:00 Thursday 3 December cannot be promised: started now it is ready by"
                + " 13:00 Thursday 3 December, 3 h later.");
  }

  @Test
  void workThatIsNotReadyInEveryCasePromisesNothing() {
    Forecast forecast = Forecasts.withWork(Optional.empty(), Band.exactly(36_000));

    StartPlan plan =
        StartPlanner.readyBy(forecast, lisbon("2026-12-03T10:00"), lisbon("2026-12-02T12:00"))
            .orElseThrow();

    assertThat(plan.inTime()).isFalse();
    assertThat(plan.ready()).isEmpty();
    assertThat(plan.notes())
        .singleElement()
        .asString()
        .contains("the work is still more than 10 °C from the last target");
  }

  /** When a simulation gave up is no time to count back from; what is ready before it is one. */
  @Test
  void whereTheProgramMayNeverEndNoStartIsReckoned() {
    ZonedDateTime by = lisbon("2026-12-03T10:00");
    ZonedDateTime now = lisbon("2026-12-02T12:00");
    for (double share : new double[] {0, 0.3, 0.94}) {
      Forecast forecast = reachedIn(share);
      assertThat(StartPlanner.readyBy(forecast, by, now)).isEmpty();
      StartPlanner.Ready early =
          new StartPlanner.Ready("the first piece", Optional.of(Band.exactly(3600)));
      assertThat(StartPlanner.readyBy(forecast, early, by, now).orElseThrow().start())
          .isEqualTo(lisbon("2026-12-03T09:00"));
    }
    assertThat(StartPlanner.readyBy(reachedIn(0.95), by, now).orElseThrow().start())
        .isEqualTo(lisbon("2026-12-03T08:00"));
  }

  private static Forecast reachedIn(double share) {
    return Forecasts.forecast(
        Band.exactly(3600), share, Band.exactly(7200), 1000, Band.exactly(1), List.of());
  }

  @Test
  void aStartThatHasPassedIsTold() {
    StartPlan plan =
        StartPlanner.startingAt(
            ending(Duration.ofHours(1)), lisbon("2026-12-02T11:15"), lisbon("2026-12-02T12:00"));

    assertThat(plan.delayToSet()).isEmpty();
    assertThat(plan.notes()).containsExactly("That start is 45 min ago.");
  }

  @Test
  void theDelayIsNeverLate() {
    Random random = new Random(31);
    List<ZoneId> zones =
        java.util.stream.Stream.of(
                "Europe/Lisbon", "America/New_York", "Australia/Lord_Howe", "Asia/Kathmandu")
            .map(ZoneId::of)
            .collect(Collectors.toList());
    for (int i = 0; i < 5000; i++) {
      double high = 3600 + random.nextDouble() * 80_000;
      Forecast forecast =
          Forecasts.withWork(
              Optional.of(new Band(high * 0.9, high * 0.95, high)), Band.exactly(high + 7200));
      ZonedDateTime now =
          LocalDateTime.of(2026, 10, 1, 0, 0)
              .plusSeconds(random.nextInt(86_400 * 220))
              .atZone(zones.get(random.nextInt(zones.size())));
      ZonedDateTime readyBy = now.plusSeconds(random.nextInt(200_000));

      StartPlan plan = StartPlanner.readyBy(forecast, readyBy, now).orElseThrow();

      Duration spare = Duration.between(plan.ready().orElseThrow().until(), readyBy);
      assertThat(plan.inTime()).isEqualTo(!spare.isNegative());
      Duration delay = plan.delayToSet().orElseThrow();
      assertThat(delay).isEqualTo(Duration.ofMinutes(delay.toMinutes()));
      assertThat(now.plus(delay)).isEqualTo(plan.start());
      if (plan.inTime()) {
        assertThat(spare).isLessThan(Duration.ofSeconds(61));
      }
    }
  }

  @Test
  void anEmptyKilnIsReadyWhenItsLastTargetIsReached() {
    Forecast forecast =
        Forecasts.empty(new Band(3000, 3600, 4000), Band.exactly(10_000), 1000, Band.exactly(1));

    StartPlan plan = StartPlanner.startingAt(forecast, lisbon("2026-12-02T18:00"));

    assertThat(plan.readyWhat()).isEqualTo("the kiln at its last target");
    assertThat(plan.ready().orElseThrow().words()).isEqualTo("18:50 to 19:07 Wednesday 2 December");
    assertThat(plan.start().getOffset()).isEqualTo(ZoneOffset.UTC);
  }

  /**
   * The hold's clock runs from the setpoint: reached says 0 s, but the display needs 20 minutes.
   */
  @Test
  void aHoldThatDoesNotWaitDoesNotMakeAColdKilnReady() {
    Band arrived = new Band(1080, 1200, 1800);
    Forecast forecast = oneSegment(Band.exactly(0), Optional.of(arrived));

    assertThat(StartPlanner.readySeconds(forecast)).contains(arrived);
    assertThat(StartPlanner.readySeconds(oneSegment(Band.exactly(0), Optional.empty()))).isEmpty();
  }

  /** Near the target a little before its hold starts: the hold decides. */
  @Test
  void isNotReadyBeforeTheHoldStarts() {
    Forecast forecast =
        oneSegment(new Band(900, 1000, 1100), Optional.of(new Band(890, 980, 1120)));

    assertThat(StartPlanner.readySeconds(forecast)).contains(new Band(900, 1000, 1120));
  }

  private static Forecast oneSegment(Band reached, Optional<Band> arrived) {
    double[] two = {0, 5400};
    return new Forecast(
        "s",
        "k",
        List.of(new SegmentForecast(1, reached, arrived, Band.exactly(5400), 0, 0, 1)),
        Band.exactly(5400),
        Band.exactly(1),
        1000,
        List.of(),
        new ForecastTrace(two, two, two, two, two, two, java.util.Map.of()),
        List.of(),
        List.of());
  }

  @Test
  void whatCountsAsReadyMayBeTold() {
    StartPlanner.Ready warm =
        new StartPlanner.Ready("the first piece", Optional.of(new Band(6000, 6600, 7200)));

    StartPlan plan =
        StartPlanner.readyBy(
                ending(Duration.ofHours(5)),
                warm,
                lisbon("2026-12-02T18:30"),
                lisbon("2026-12-02T12:00"))
            .orElseThrow();

    assertThat(plan.start()).isEqualTo(lisbon("2026-12-02T16:30"));
    assertThat(plan.readyWhat()).isEqualTo("the first piece");
  }
}
