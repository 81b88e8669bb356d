package org.heatwright.learn;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.heatwright.schedule.TestSchedules.segment;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.Charge;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.forecast.Forecaster;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.FiringConditions.Disturbance;
import org.heatwright.kiln.FiringRun;
import org.heatwright.kiln.FiringSimulation;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.KilnBeliefs;
import org.heatwright.kiln.KilnQuantity;
import org.heatwright.kiln.Learned;
import org.heatwright.kiln.TestKilns;
import org.heatwright.material.HeatCurves;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Test;

/** Twin experiments: the model's own kilns, with known scores, noise and whole degrees. */
class KilnLearnerTest {

  private static final ZonedDateTime NINE =
      ZonedDateTime.of(2026, 5, 2, 9, 0, 0, 0, ZoneOffset.UTC);
  private static final Kiln MUFFLE = TestKilns.brickMuffle(2200);

  private static final Schedule QUICK = schedule(segment(0, 900, 60));
  private static final Schedule STEPS =
      schedule(segment(250, 500, 20), segment(0, 950, 30), segment(0, 650, 20));

  private static Schedule schedule(Segment... segments) {
    return Schedule.of("test", TemperatureUnit.CELSIUS, List.of(segments));
  }

  /** A kiln unlike the median in what matters. */
  private static double[] unusual() {
    double[] scores = new double[KilnQuantity.values().length];
    scores[KilnQuantity.CONDUCTIVITY.ordinal()] = 1.0;
    scores[KilnQuantity.LEAK.ordinal()] = 0.8;
    scores[KilnQuantity.FITTINGS.ordinal()] = 0.7;
    scores[KilnQuantity.CAPACITY.ordinal()] = 0.5;
    return scores;
  }

  private static FiringRun run(
      double[] scores, Schedule schedule, double until, Disturbance... hidden) {
    FiringSimulation simulation =
        new FiringSimulation(
            MUFFLE,
            KilnBeliefs.at(MUFFLE, scores),
            new FiringConditions(
                Optional.empty(), Optional.empty(), false, Optional.empty(), List.of(hidden)),
            List.of(),
            schedule,
            FiringSimulation.Accuracy.USUAL,
            new HeatCurves());
    simulation.runProgram();
    simulation.coastUntil(Math.max(until, simulation.elapsedSeconds()));
    return simulation.run();
  }

  private static LoggedFiring logged(
      String name, FiringRun run, Schedule schedule, double everySeconds) {
    Random random = new Random(7);
    List<double[]> rows = new ArrayList<>();
    for (double t = 0; t <= run.lastSecond(); t += everySeconds) {
      rows.add(new double[] {t, Math.rint(run.readingCelsiusAt(t) + 0.8 * random.nextGaussian())});
    }
    return new LoggedFiring(
        name,
        schedule,
        FiringConditions.usual(),
        Charge.empty(),
        Readings.of(
            rows.stream().mapToDouble(row -> row[0]).toArray(),
            rows.stream().mapToDouble(row -> row[1]).toArray()));
  }

  private static Kiln known(Lesson lesson) {
    return MUFFLE.withLearned(
        new Learned(LocalDate.of(2026, 11, 1), 1, Learned.ENGINE, lesson.beliefs()));
  }

  private static Band end(Kiln kiln) {
    return Forecaster.forecast(ForecastRequest.of(STEPS, kiln, Charge.empty())).endSeconds();
  }

  @Test
  void oneFiringAtFullPowerTellsWhenAnotherWillEnd() {
    LoggedFiring seen = logged("seen", run(unusual(), QUICK, 14_000), QUICK, 10);
    double truth = run(unusual(), STEPS, 0).endSeconds();

    Lesson lesson = KilnLearner.learn(MUFFLE, List.of(seen));

    Band before = end(MUFFLE);
    Band after = end(known(lesson));
    assertThat(lesson.misfitKelvins(0)).isLessThan(5);
    assertThat(after.median()).isCloseTo(truth, within(Math.max(180, 0.02 * truth)));
    assertThat(after.contains(truth)).isTrue();
    assertThat(after.high() - after.low()).isLessThan(0.5 * (before.high() - before.low()));
  }

  /** What people really have: the display read every quarter of an hour. */
  @Test
  void aFewReadingsWithTheirTimesHelpAlready() {
    LoggedFiring seen = logged("by hand", run(unusual(), QUICK, 9_000), QUICK, 900);
    double truth = run(unusual(), STEPS, 0).endSeconds();

    Band before = end(MUFFLE);
    Band after = end(known(KilnLearner.learn(MUFFLE, List.of(seen))));

    assertThat(seen.readings().size()).isLessThan(20);
    assertThat(Math.abs(after.median() - truth)).isLessThan(Math.abs(before.median() - truth));
    assertThat(after.high() - after.low()).isLessThan(before.high() - before.low());
  }

  /** Far off is rare, and not out of the question. */
  @Test
  void aClockIsTrustedToTheBreathAndANoteToTheMinute() {
    FiringRun run = run(unusual(), QUICK, 9_000);
    LoggedFiring logger = logged("logger", run, QUICK, 10);
    LoggedFiring notes =
        new LoggedFiring(
            "notes",
            QUICK,
            FiringConditions.usual(),
            Charge.empty(),
            Readings.of(new double[] {0, 600, 1500, 3600}, new double[] {20, 250, 520, 880}));

    assertThat(logger.clockAheadSeconds(1)).isBetween(2.0, 6.0);
    assertThat(notes.clockAheadSeconds(1)).isBetween(15.0, 30.0);
    assertThat(logger.clockAheadSeconds(-3)).isEqualTo(-logger.clockAheadSeconds(3));
    assertThat(logger.clockAheadSeconds(5)).isGreaterThan(120);
  }

  @Test
  void saysWhatTheFiringsCouldNotTell() {
    Lesson lesson =
        KilnLearner.learn(MUFFLE, List.of(logged("a", run(unusual(), QUICK, 9_000), QUICK, 10)));
    // A proportional controller says nothing about a switch.
    assertThat(lesson.untold()).contains(KilnQuantity.SWITCH);
    assertThat(lesson.untold()).doesNotContain(KilnQuantity.LEAK, KilnQuantity.FITTINGS);
    assertThat(lesson.beliefs().score(KilnQuantity.OFFSET)).isZero();
    assertThat(lesson.beliefs().ignoranceFactor(KilnQuantity.OFFSET)).isEqualTo(1);
  }

  /** A cut of the mains is recognised, and the rest of the firing teaches. */
  @Test
  void keepsAMainsCutOutOfWhatIsLearned() {
    Disturbance cut = new Disturbance(Disturbance.Kind.MAINS_OFF, 4_000, 2_400);
    LoggedFiring good = logged("good", run(unusual(), QUICK, 9_000), QUICK, 10);
    LoggedFiring other = logged("other", run(unusual(), STEPS, 14_000), STEPS, 10);
    LoggedFiring odd = logged("odd", run(unusual(), QUICK, 12_000, cut), QUICK, 10);

    Lesson lesson = KilnLearner.learn(MUFFLE, List.of(good, odd, other));

    assertThat(lesson.firings()).containsExactly("good", "odd", "other");
    assertThat(lesson.leftOut()).isEmpty();
    assertThat(lesson.happened())
        .singleElement()
        .satisfies(
            happened -> {
              assertThat(happened.firing()).isEqualTo("odd");
              assertThat(happened.what().names(Disturbance.Kind.MAINS_OFF)).isTrue();
              assertThat(happened.what().beganSeconds()).isCloseTo(4_000, within(120.0));
              assertThat(happened.what().happened(Optional.empty()))
                  .matches("At \\+1:0\\d the display .*");
              assertThat(happened.what().happened(Optional.of(NINE)))
                  .matches("At 10:0\\d \\(\\+1:0\\d\\) the display .*");
            });
    Lesson clean = KilnLearner.learn(MUFFLE, List.of(good, other));
    assertThat(end(known(lesson)).median())
        .isCloseTo(end(known(clean)).median(), within(0.01 * end(known(clean)).median()));
  }

  @Test
  void leavesOutAFiringOfAnotherSchedule() {
    LoggedFiring good = logged("good", run(unusual(), QUICK, 9_000), QUICK, 10);
    LoggedFiring other = logged("other", run(unusual(), STEPS, 14_000), STEPS, 10);
    LoggedFiring odd = logged("odd", run(unusual(), STEPS, 14_000), QUICK, 10);

    Lesson lesson = KilnLearner.learn(MUFFLE, List.of(good, odd, other));

    assertThat(lesson.firings()).containsExactly("good", "other");
    assertThat(lesson.leftOut())
        .singleElement()
        .satisfies(left -> assertThat(left.firing()).isEqualTo("odd"));
  }

  @Test
  void givesTheSameLessonTwice() {
    List<LoggedFiring> seen = List.of(logged("a", run(unusual(), QUICK, 9_000), QUICK, 10));
    Lesson first = KilnLearner.learn(MUFFLE, seen);
    Lesson second = KilnLearner.learn(MUFFLE, seen);
    for (KilnQuantity quantity : KilnQuantity.values()) {
      assertThat(second.beliefs().score(quantity)).isEqualTo(first.beliefs().score(quantity));
    }
  }

  @Test
  void refusesReadingsThatCannotBe() {
    assertThatThrownBy(() -> Readings.of(new double[] {0, 0}, new double[] {20, 21}))
        .hasMessageContaining("Reading 2");
    assertThatThrownBy(() -> Readings.of(new double[] {0}, new double[] {Double.NaN}))
        .hasMessageContaining("finite");
    assertThatThrownBy(() -> KilnLearner.learn(MUFFLE, List.of()))
        .hasMessageContaining("no firing");
  }

  @Test
  void averagesOverEqualSpansAndSkipsGaps() {
    Readings averaged =
        Readings.of(new double[] {0, 10, 20, 300, 310}, new double[] {1, 2, 3, 10, 20})
            .averaged(60);
    assertThat(averaged.size()).isEqualTo(2);
    assertThat(averaged.second(0)).isEqualTo(10);
    assertThat(averaged.celsius(0)).isEqualTo(2);
    assertThat(averaged.celsius(1)).isEqualTo(15);
  }

  @Test
  void saysWhatADisplayCouldNotHaveShown() {
    LoggedFiring firing = logged("quick", run(unusual(), QUICK, 9_000), QUICK, 10);
    Kiln kiln = known(KilnLearner.learn(MUFFLE, List.of(firing)));

    List<Unseen> unseen = Unseen.in(kiln, firing);

    // A relay that sticks on while full power is asked for changes nothing, whatever the kiln.
    Unseen relayOn =
        unseen.stream()
            .filter(one -> one.kind() == Disturbance.Kind.RELAY_ON)
            .findFirst()
            .orElseThrow();
    Unseen.Stretch first = relayOn.stretches().get(0);
    assertThat(first.power()).isEqualTo(Unseen.Power.FULL);
    assertThat(first.fromSeconds()).isZero();
    assertThat(relayOn.words())
        .startsWith("A relay stuck on for 5 min would not have shown on this display from +0:00")
        .contains("full power was asked for anyway")
        .endsWith("a current meter tells.");
    // Half the power missing on the way up at full power does show.
    assertThat(unseen)
        .filteredOn(one -> one.kind() == Disturbance.Kind.ELEMENT_OPEN)
        .flatExtracting(Unseen::stretches)
        .noneMatch(s -> ((Unseen.Stretch) s).power() == Unseen.Power.FULL);
  }
}
