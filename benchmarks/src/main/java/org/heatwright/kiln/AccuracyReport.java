package org.heatwright.kiln;

import java.util.List;
import org.heatwright.material.HeatCurves;
import org.heatwright.schedule.Schedule;

/** How far both solvers are from their converged run: printed, so that equal accuracy is a fact. */
public final class AccuracyReport {

  private AccuracyReport() {}

  /**
   * Prints the largest error of our solver along the firing, the same on its own grid, and for the
   * explicit one the error of the final reading and how often it evaluated the equations.
   */
  public static void print(Kiln kiln, Schedule schedule) {
    KilnParameters median = KilnBeliefs.prior().median(kiln);
    FiringSimulation.Accuracy usual = FiringSimulation.Accuracy.USUAL;
    FiringRun ours = run(kiln, median, schedule, usual);
    FiringRun sameGrid =
        run(
            kiln,
            median,
            schedule,
            new FiringSimulation.Accuracy(0.001, usual.firstCellMetres(), usual.cellGrowth()));
    FiringRun converged = run(kiln, median, schedule, FiringSimulation.Accuracy.FINE);
    System.out.printf(
        "ours: %d steps, largest error %.3f K (on its own grid %.3f K)%n",
        ours.steps(), largest(ours, converged), largest(ours, sameGrid));
    for (double tolerance : new double[] {0.05, 0.02, 0.005}) {
      ExplicitFiring explicit = new ExplicitFiring(kiln, median, schedule, sameGrid, tolerance);
      double last = explicit.finalReadingCelsius();
      System.out.printf(
          "Dormand-Prince 8(5,3), tolerance %s K: %d evaluations, final reading off by %.4f K%n",
          tolerance,
          explicit.evaluations(),
          Math.abs(last - sameGrid.readingCelsiusAt(sameGrid.endSeconds())));
    }
  }

  private static FiringRun run(
      Kiln kiln, KilnParameters parameters, Schedule schedule, FiringSimulation.Accuracy accuracy) {
    FiringSimulation simulation =
        new FiringSimulation(
            kiln,
            parameters,
            FiringConditions.usual(),
            List.of(),
            schedule,
            accuracy,
            new HeatCurves());
    simulation.runProgram();
    return simulation.run();
  }

  private static double largest(FiringRun a, FiringRun b) {
    double worst = 0;
    for (double t = 0; t < b.endSeconds(); t += 5) {
      worst = Math.max(worst, Math.abs(a.readingCelsiusAt(t) - b.readingCelsiusAt(t)));
    }
    return worst;
  }
}
