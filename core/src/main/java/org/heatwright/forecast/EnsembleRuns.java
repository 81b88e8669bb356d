package org.heatwright.forecast;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.heatwright.kiln.FiringSimulation;
import org.heatwright.kiln.KilnParameters;
import org.heatwright.kiln.Load;
import org.heatwright.material.HeatCurves;
import org.heatwright.numerics.NormalSteps;

/** The kilns of an ensemble, each through the same program, side by side. */
final class EnsembleRuns {

  private EnsembleRuns() {}

  /**
   * Runs the program to its end in each of the kilns; what comes after it is the caller's. Where
   * the day states a session's openings and nothing of pieces, each kiln has pieces of its own
   * heat.
   *
   * @param progress is told of each
   * @return one simulation a kiln, in order
   * @throws org.heatwright.numerics.NumericsException if a simulation does not converge
   */
  static List<FiringSimulation> through(
      ForecastRequest request, List<KilnParameters> kilns, EnsembleProgress progress) {
    return through(request, kilns, Optional.empty(), progress);
  }

  /**
   * The same with displays that are off the model's when they arrive.
   *
   * @param errors of as many draws
   */
  static List<FiringSimulation> through(
      ForecastRequest request,
      List<KilnParameters> kilns,
      Optional<ArrivalErrors> errors,
      EnsembleProgress progress) {
    List<Load> loads = request.charge().loads();
    EnsembleCount count = new EnsembleCount(progress, EnsembleProgress.Part.KILNS, kilns.size());
    return IntStream.range(0, kilns.size())
        .parallel()
        .mapToObj(
            draw -> {
              FiringSimulation simulation =
                  new FiringSimulation(
                      request.kiln(),
                      kilns.get(draw),
                      SessionPieces.on(
                          request.conditions(),
                          request.charge(),
                          NormalSteps.score(draw, NormalSteps.GOLDEN)),
                      loads,
                      request.schedule(),
                      FiringSimulation.Accuracy.DRAW,
                      HeatCurves.SHARED);
              errors.ifPresent(
                  off -> {
                    simulation.arriveSooner(off.soonerKelvins(draw));
                    simulation.arriveInSwing(off.swingShares(draw));
                  });
              simulation.runProgram();
              return count.one(simulation);
            })
        .toList();
  }
}
