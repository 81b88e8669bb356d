package org.heatwright.mould;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.FiringRun;
import org.heatwright.kiln.FiringSimulation;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.KilnParameters;
import org.heatwright.kiln.Load;
import org.heatwright.kiln.TestKilns;
import org.heatwright.material.HeatCurves;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.TestSchedules;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a kiln feels of its moulds, against the moulds solved in their section. */
class MouldLoadTest {

  /** Strong enough to follow with and without moulds: the difference is what the moulds take. */
  private static final Kiln KILN = TestKilns.brickMuffle(4000);

  private static final Schedule BURNOUT = TestSchedules.burnout();

  @ParameterizedTest(name = "{0} of {1} x {2} mm, ring {3} mm")
  @CsvSource({"1, 50, 60, 0", "1, 90, 150, 0", "3, 90, 150, 3", "1, 125, 100, 2"})
  void theKilnGivesTheMouldsTheHeatThatTheirSectionTakes(
      int count, double diameter, double height, double ring) {
    Mould mould = new Mould(count, diameter / 1000, height / 1000, ring / 1000);
    Investment investment = Investment.gypsum(0.40);
    KilnParameters parameters = KILN.beliefs().median(KILN);
    FiringRun full = run(parameters, List.of(new MouldLoad(mould, investment)));
    FiringRun empty = run(parameters, List.of());
    double end = Math.min(full.endSeconds(), empty.endSeconds());
    Surroundings around = Surroundings.sampled(end, 60, full::airCelsiusAt, full::radiantCelsiusAt);
    double most = count * taken(mould, investment, parameters, around, end * 0.75);
    for (double share = 0.1; share <= 1; share += 0.1) {
      double second = share * end;
      double section = count * taken(mould, investment, parameters, around, second);
      double load = full.joulesAt(second) - empty.joulesAt(second);
      assertThat(load - section)
          .as("heat beyond the section's after %.0f s, of %.0f kJ", second, section / 1000)
          .isBetween(-0.05 * most, 0.05 * most);
    }
  }

  private static double taken(
      Mould mould,
      Investment investment,
      KilnParameters parameters,
      Surroundings around,
      double second) {
    BodySolver section =
        new BodySolver(
            MouldFiring.Setting.of(mould, investment, parameters, 0).body(KILN.room()),
            MouldFiring.QUICK);
    around.drive(section, second, step -> {});
    return section.heatTakenJoules();
  }

  private static FiringRun run(KilnParameters parameters, List<Load> loads) {
    FiringSimulation simulation =
        new FiringSimulation(
            KILN,
            parameters,
            FiringConditions.usual(),
            loads,
            BURNOUT,
            FiringSimulation.Accuracy.USUAL,
            new HeatCurves());
    simulation.runProgram();
    return simulation.run();
  }
}
