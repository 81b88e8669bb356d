package org.heatwright.app.tonight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import org.heatwright.app.files.KilnFile;
import org.heatwright.app.files.LogFile;
import org.heatwright.app.files.ScheduleFile;
import org.heatwright.app.plot.LogAgainstForecast;
import org.heatwright.app.plot.WatchedFiring;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.Charge;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.forecast.Forecaster;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.KilnQuantity;
import org.heatwright.kiln.Learned;
import org.heatwright.learn.KilnLearner;
import org.heatwright.learn.Lesson;
import org.heatwright.learn.LogAlignment;
import org.heatwright.learn.LoggedFiring;
import org.heatwright.learn.Readings;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * What the demo's evening of enamel teaches of kiln Buoy, beside the kiln that made the log (see
 * {@link IndependentKiln} and {@link DemoLogsTest}).
 */
class EveningLessonTest {

  private static final Schedule NEXT =
      Schedule.of(
          "next",
          TemperatureUnit.CELSIUS,
          List.of(
              new Segment(
                  Ramp.at(HeatingRate.ofKelvinsPerHour(300)),
                  Temperature.ofCelsius(500),
                  Duration.ofMinutes(30)),
              new Segment(Ramp.fastest(), Temperature.ofCelsius(900), Duration.ofMinutes(20))));

  private static final double WATCHED_SECONDS = 7800;

  private static Kiln buoy;
  private static LoggedFiring evening;
  private static LoggedFiring unwritten;
  private static Lesson told;
  private static Lesson read;

  @BeforeAll
  static void learn() throws IOException {
    buoy = KilnFile.read(text("kilns/buoy.yaml"), "buoy.yaml");
    String csv = text("logs/2026-11-20.csv");
    evening = logged(csv);
    unwritten = logged(csv.replaceAll("(?m),\"?door.*$", ","));
    told = KilnLearner.learn(buoy, List.of(evening));
    read = KilnLearner.learn(buoy, List.of(unwritten));
  }

  private static LoggedFiring logged(String csv) throws IOException {
    return logged(csv, FiringConditions.usual());
  }

  private static LoggedFiring logged(String csv, FiringConditions day) throws IOException {
    LogFile.Log log = LogFile.read(csv, "evening");
    LoggedFiring firing =
        WatchedFiring.opened(
            new LoggedFiring(
                "evening",
                ScheduleFile.read(text("logs/enamel-evening.yaml"), "schedule"),
                day,
                Charge.empty(),
                WatchedFiring.readings(log)),
            log);
    return LogAlignment.of(buoy, firing).firing();
  }

  /** The same kiln and program, and nobody opened it. */
  private static Lesson calm() throws IOException {
    Schedule schedule = ScheduleFile.read(text("logs/enamel-evening.yaml"), "schedule");
    double[] display = kiln().displayEveryTenSeconds(schedule, WATCHED_SECONDS);
    int n = (int) (WATCHED_SECONDS / 10);
    return KilnLearner.learn(
        buoy,
        List.of(
            new LoggedFiring(
                "calm",
                schedule,
                FiringConditions.usual(),
                Charge.empty(),
                Readings.of(
                    IntStream.range(0, n).mapToDouble(i -> 10 * i).toArray(),
                    Arrays.copyOf(display, n)))));
  }

  @Test
  void theEveningTeachesAndItsOpeningsAreNoFaults() {
    for (Lesson lesson : List.of(told, read)) {
      assertThat(lesson.firings()).hasSize(1);
      assertThat(lesson.happened()).isEmpty();
      assertThat(lesson.openings()).hasSize(1);
      assertThat(lesson.openings().get(0).count()).isEqualTo(13);
      assertThat(lesson.untold()).doesNotContain(KilnQuantity.LEAK, KilnQuantity.FITTINGS);
    }
    assertThat(told.openings().get(0).words())
        .startsWith("13 openings of the door, told by the log, were taken into account.");
    assertThat(read.openings().get(0).words())
        .startsWith("13 openings of the door, shown by the display, were taken into account.");
  }

  /** Somebody wrote the openings down elsewhere: the log's display need not show each of them. */
  @Test
  void openingsThatAreStatedForTheDayAreTheLogs() throws IOException {
    FiringConditions day =
        FiringConditions.usual().with(evening.asItWas().disturbances(), Optional.empty());
    String csv = text("logs/2026-11-20.csv").replaceAll("(?m),\"?door.*$", ",");
    Lesson stated = KilnLearner.learn(buoy, List.of(logged(csv, day)));
    assertThat(stated.openings().get(0).count()).isEqualTo(13);
    assertThat(stated.openings().get(0).words())
        .startsWith("13 openings of the door, stated for that day, were taken into account.");
    for (KilnQuantity quantity : List.of(KilnQuantity.LEAK, KilnQuantity.FITTINGS)) {
      assertThat(stated.beliefs().score(quantity))
          .isCloseTo(
              told.beliefs().score(quantity), within(told.beliefs().ignoranceFactor(quantity)));
    }
  }

  /** Forecast again with what is known now, the evening's openings and pieces in it. */
  @Test
  void theForecastOfTheEveningItselfTakesItsOpeningsIntoAccount() {
    LogAgainstForecast calm = against(told, evening, evening.conditions());
    LogAgainstForecast asTold = against(told, evening, evening.asItWas());
    LogAgainstForecast asRead = against(read, unwritten, unwritten.asItWas());
    for (LogAgainstForecast opened : List.of(asTold, asRead)) {
      assertThat(opened.rootMeanSquareKelvins()).isLessThan(0.75 * calm.rootMeanSquareKelvins());
      assertThat(opened.insideShare()).isGreaterThan(calm.insideShare() + 0.05);
    }
  }

  private static LogAgainstForecast against(
      Lesson lesson, LoggedFiring firing, FiringConditions day) {
    return LogAgainstForecast.of(
        Forecaster.forecast(
                ForecastRequest.of(firing.schedule(), known(lesson), firing.charge())
                    .withConditions(day))
            .trace(),
        firing.readings());
  }

  /** 38 J/K from the room to some 820 °C: 30 kJ a piece, where the log parts it from the door's. */
  @Test
  void theHeatOfThePiecesIsToldRightOrNotAtAll() {
    for (Lesson lesson : List.of(told, read)) {
      Lesson.Openings openings = lesson.openings().get(0);
      if (openings.coldKilojoules().isPresent()) {
        assertThat(openings.coldKilojoules().get().contains(30)).isTrue();
      } else {
        assertThat(openings.words()).endsWith("how much the door's is not told.");
      }
    }
  }

  /** What means the same in both kilns is within two of the spreads that are left. */
  @Test
  void whatItTeachesIsNearTheKilnThatMadeTheLog() {
    for (Lesson lesson : List.of(told, read)) {
      kiln()
          .hidden()
          .forEach(
              (quantity, value) ->
                  assertThat(lesson.beliefs().score(quantity))
                      .as(quantity.fileName())
                      .isCloseTo(
                          quantity.score(value),
                          within(2 * lesson.beliefs().ignoranceFactor(quantity))));
    }
  }

  /** Openings that the log tells leave what the evening teaches as it would be without them. */
  @Test
  void itTeachesWhatACalmEveningDoes() throws IOException {
    Lesson calm = calm();
    for (KilnQuantity quantity : KilnQuantity.values()) {
      if (quantity.learnable() && quantity != KilnQuantity.DOOR) {
        assertThat(told.beliefs().score(quantity))
            .as(quantity.fileName())
            .isCloseTo(
                calm.beliefs().score(quantity), within(calm.beliefs().ignoranceFactor(quantity)));
      }
    }
  }

  @Test
  void anotherFiringIsForecastNarrowerAndTrue() {
    double[] display = kiln().displayEveryTenSeconds(NEXT, 12_000);
    double truth =
        10.0
            * IntStream.range(0, display.length)
                .filter(i -> display[i] >= 897)
                .findFirst()
                .orElseThrow();
    Band before = arrival(buoy);
    for (Lesson lesson : List.of(told, read)) {
      Band after = arrival(known(lesson));
      assertThat(after.contains(truth)).isTrue();
      assertThat(after.high() - after.low()).isLessThan(0.5 * (before.high() - before.low()));
      assertThat(Math.abs(after.median() - truth)).isLessThan(Math.abs(before.median() - truth));
    }
  }

  private static Band arrival(Kiln kiln) {
    return Forecaster.forecast(ForecastRequest.of(NEXT, kiln, Charge.empty()))
        .segments()
        .get(1)
        .arrivedSeconds()
        .orElseThrow();
  }

  private static Kiln known(Lesson lesson) {
    return buoy.withLearned(
        new Learned(LocalDate.of(2026, 11, 21), 1, Learned.ENGINE, lesson.beliefs()));
  }

  private static IndependentKiln kiln() {
    return new IndependentKiln(
        buoy, Charge.empty(), buoy.room().celsius(), new Random(DemoLogsTest.SEED));
  }

  private static String text(String name) throws IOException {
    try (InputStream in =
        Objects.requireNonNull(
            EveningLessonTest.class.getResourceAsStream("/demo/" + name), name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }
}
