package org.heatwright.work;

import java.util.ArrayList;
import java.util.List;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.FiringSimulation;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.KilnParameters;
import org.heatwright.kiln.Load;
import org.heatwright.material.HeatCurves;
import org.heatwright.schedule.Schedule;

/** How a shut kiln cools by itself after a program, in some likely kilns. */
final class KilnCoasting {

  private static final int DRAWS = 5;
  private static final double DAY_SECONDS = 86_400;

  private KilnCoasting() {}

  /**
   * What the display shows from the program's end on, until it shows less than asked or a day is
   * over.
   *
   * @param loads what is in the kiln; an empty one cools faster
   * @param stepSeconds from one reading to the next, s, above zero
   * @param untilCelsius cool enough, °C
   * @return for each likely kiln its readings, the first at the end of the program, °C
   */
  static List<double[]> readings(
      Schedule schedule, Kiln kiln, List<Load> loads, double stepSeconds, double untilCelsius) {
    HeatCurves curves = new HeatCurves();
    List<double[]> readings = new ArrayList<>();
    for (KilnParameters draw : kiln.beliefs().ensemble(kiln, DRAWS, 1)) {
      FiringSimulation simulation =
          new FiringSimulation(
              kiln,
              draw,
              FiringConditions.usual(),
              loads,
              schedule,
              FiringSimulation.Accuracy.USUAL,
              curves);
      simulation.runProgram();
      double end = simulation.elapsedSeconds();
      List<Double> shown = new ArrayList<>();
      shown.add(simulation.run().readingCelsiusAt(end));
      double after = 0;
      do {
        after += stepSeconds;
        simulation.coastUntil(end + after);
        shown.add(simulation.run().readingCelsiusAt(end + after));
      } while (after < DAY_SECONDS && shown.get(shown.size() - 1) > untilCelsius);
      readings.add(shown.stream().mapToDouble(Double::doubleValue).toArray());
    }
    return readings;
  }
}
