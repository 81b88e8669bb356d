package org.heatwright.kiln;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.heatwright.schedule.TestSchedules.segment;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.heatwright.kiln.FiringConditions.Disturbance;
import org.heatwright.material.HeatCurves;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.TestSchedules;
import org.heatwright.units.Temperature;
import org.junit.jupiter.api.Test;

/** Derivatives of a run, beside central differences of two runs that are solved finely. */
class KilnTangentsTest {

  private static final Kiln KILN = TestKilns.brickMuffle(1800);
  private static final HeatCurves CURVES = new HeatCurves();
  private static final double END_SECONDS = 26_000;
  private static final double POINT_SECONDS = 37;

  private static final FiringSimulation.Accuracy FINE =
      new FiringSimulation.Accuracy(0.0005, 0.0008, 1.4);
  private static final FiringSimulation.Accuracy USUAL =
      new FiringSimulation.Accuracy(0.15, 0.0008, 1.4);

  /** A ramp, full power, cooling on its own. */
  private static final Schedule SCHEDULE =
      TestSchedules.of(segment(300, 400, 30), segment(0, 850, 60), segment(0, 500, 30));

  private static final double[] TOLD = {4600, 8300, 14_500};
  private static final double[] UNTOLD = {Double.NaN, Double.NaN, Double.NaN};

  private static final KilnQuantity[] QUANTITIES =
      Arrays.stream(KilnQuantity.values())
          .filter(KilnQuantity::learnable)
          .filter(quantity -> quantity != KilnQuantity.SWITCH && quantity != KilnQuantity.DOOR)
          .toArray(KilnQuantity[]::new);
  private static final int START = QUANTITIES.length;
  private static final int HOLDS = START + 1;

  /** Somewhere aside of the medians. */
  private static double[] scores() {
    return IntStream.range(0, KilnQuantity.values().length)
        .mapToDouble(i -> 0.6 * Math.sin(2 * i + 1))
        .toArray();
  }

  /** What is fired on a day. */
  private record Firing(Schedule schedule, FiringConditions day, double[] holds) {

    FiringSimulation simulation(
        FiringSimulation.Accuracy accuracy, double[] scores, double start, double later) {
      FiringSimulation simulation =
          new FiringSimulation(
              KILN,
              KilnBeliefs.at(KILN, scores),
              day.starting(Temperature.ofCelsius(start)),
              List.of(),
              schedule,
              accuracy,
              CURVES);
      simulation.holdFrom(Arrays.stream(holds).map(second -> second + later).toArray());
      return simulation;
    }

    FiringRun run(FiringSimulation simulation) {
      simulation.runProgram();
      simulation.coastUntil(END_SECONDS);
      return simulation.run();
    }

    /** The derivative by one place as a difference. */
    Difference difference(int place) {
      double step = place < START ? 0.01 : place == START ? 0.5 : 2;
      FiringRun[] runs = new FiringRun[2];
      for (int side = 0; side < 2; side++) {
        double by = side == 0 ? -step : step;
        double[] scores = scores();
        if (place < START) {
          scores[QUANTITIES[place].ordinal()] += by;
        }
        runs[side] =
            run(simulation(FINE, scores, 20 + (place == START ? by : 0), place == HOLDS ? by : 0));
      }
      return new Difference(runs[0], runs[1], 2 * step);
    }

    Compared compared(FiringSimulation.Accuracy accuracy, int place) {
      FiringSimulation simulation = simulation(accuracy, scores(), 20, 0);
      simulation.differentiate(QUANTITIES, scores(), 1, 1);
      FiringRun run = run(simulation);
      FiringRun near = simulation.runNearby(run, place, 1);
      Difference difference = difference(place);
      double squares = 0;
      double off = 0;
      int points = 0;
      for (double t = POINT_SECONDS; t < END_SECONDS; t += POINT_SECONDS) {
        double found = near.readingCelsiusAt(t) - run.readingCelsiusAt(t);
        squares += Math.pow(difference.reading(t), 2);
        off += Math.pow(found - difference.reading(t), 2);
        points++;
      }
      return new Compared(
          Math.sqrt(squares / points),
          Math.sqrt(off / points),
          difference.joules(END_SECONDS),
          near.joulesAt(END_SECONDS) - run.joulesAt(END_SECONDS),
          difference.end(),
          near.endSeconds() - run.endSeconds());
    }
  }

  /** By a score, root mean squares of the reading's: as differences, and how far these are off. */
  private record Compared(
      double kelvins,
      double offKelvins,
      double joules,
      double foundJoules,
      double endSeconds,
      double foundEndSeconds) {}

  private record Difference(FiringRun less, FiringRun more, double by) {
    double reading(double second) {
      return (more.readingCelsiusAt(second) - less.readingCelsiusAt(second)) / by;
    }

    double joules(double second) {
      return (more.joulesAt(second) - less.joulesAt(second)) / by;
    }

    double end() {
      return (more.endSeconds() - less.endSeconds()) / by;
    }
  }

  private static String name(int place) {
    return place < START ? QUANTITIES[place].name() : place == START ? "start" : "holds";
  }

  /**
   * Differences of two runs a fiftieth of a score apart that are solved to 0.0005 K are good to
   * 0.025 K a score, and to 250 J in a kiln of 10 kJ/K.
   */
  private static void agree(Firing firing, int places) {
    for (int place = 0; place < places; place++) {
      Compared c = firing.compared(FINE, place);
      assertThat(c.offKelvins()).as(name(place)).isLessThan(0.01 * c.kelvins() + 0.025);
      assertThat(c.foundJoules())
          .as("energy by %s", name(place))
          .isCloseTo(c.joules(), within(250 + 0.001 * Math.abs(c.joules())));
    }
  }

  @Test
  void theyAreThoseOfRunsWhereHoldsAreTold() {
    agree(new Firing(SCHEDULE, FiringConditions.usual(), TOLD), HOLDS + 1);
  }

  /** What a fit uses: as exact as its runs are, which are solved to 0.15 K. */
  @Test
  void theyAreNearThatInRunsAsUsual() {
    Firing firing = new Firing(SCHEDULE, FiringConditions.usual(), TOLD);
    for (int place = 0; place <= HOLDS; place++) {
      Compared c = firing.compared(USUAL, place);
      assertThat(c.offKelvins()).as(name(place)).isLessThan(0.02 * c.kelvins() + 0.1);
    }
  }

  /** A cut forgets a half of the integral; a relay sticks on; a part of the elements opens. */
  @Test
  void theyAreThoseOfRunsInWhichSomethingGoesWrong() {
    FiringConditions day =
        FiringConditions.usual()
            .with(new Disturbance(Disturbance.Kind.MAINS_OFF, 2500, 600, 0.5))
            .with(new Disturbance(Disturbance.Kind.RELAY_ON, 10_000, 300))
            .with(new Disturbance(Disturbance.Kind.ELEMENT_OPEN, 6000, 4000, 0.3));
    agree(new Firing(SCHEDULE, day, TOLD), START);
  }

  /**
   * Each hold waits for the display, which comes late by the controller's own lag. Nothing meets a
   * limit, so that differences are good to four digits.
   */
  @Test
  void theyAreThoseOfRunsWhoseHoldsWait() {
    Schedule ramps = TestSchedules.of(segment(900, 500, 30), segment(600, 800, 20));
    Firing firing = new Firing(ramps, FiringConditions.usual(), UNTOLD);
    double moved = 0;
    for (int place = 0; place < START; place++) {
      Compared c = firing.compared(FINE, place);
      moved = Math.max(moved, Math.abs(c.endSeconds()));
      assertThat(c.offKelvins()).as(name(place)).isLessThan(0.001 * c.kelvins() + 0.001);
      assertThat(c.foundEndSeconds())
          .as("end by %s", name(place))
          .isCloseTo(c.endSeconds(), within(0.05));
    }
    assertThat(moved).as("by how much an end depends on the kiln").isGreaterThan(5);
  }

  @Test
  void theyAreToldOnlyWhereTheyAreWrittenOut() {
    FiringConditions day = FiringConditions.usual();
    assertThat(FiringSimulation.mayDifferentiate(KILN, day, false)).isTrue();
    assertThat(FiringSimulation.mayDifferentiate(TestKilns.fibreMuffle(), day, true)).isFalse();
    assertThat(
            FiringSimulation.mayDifferentiate(
                KILN, day.with(new Disturbance(Disturbance.Kind.DOOR_OPEN, 100, 20)), true))
        .isFalse();
  }
}
