package org.heatwright.app.report;

import java.util.Optional;
import org.heatwright.forecast.Charge;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.forecast.ForecastTrace;
import org.heatwright.forecast.Forecaster;
import org.heatwright.kiln.Kiln;
import org.heatwright.schedule.Schedule;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.work.heatwork.Equivalence;
import org.heatwright.work.heatwork.FiringCurve;

/**
 * What a schedule's heat-work is counted over.
 *
 * @param likely curve
 * @param edges the low and the high one of a kiln's forecast; empty on paper
 */
public record HeatworkCurves(FiringCurve likely, Optional<Edges> edges) {

  /** The edges of a forecast's band. */
  public record Edges(FiringCurve low, FiringCurve high) {}

  /** What the display of a kiln, empty, will do. */
  public static HeatworkCurves inKiln(Schedule schedule, Kiln kiln) {
    ForecastTrace trace =
        Forecaster.forecast(ForecastRequest.of(schedule, kiln, Charge.empty())).trace();
    return new HeatworkCurves(
        FiringCurve.of(trace.seconds(), trace.medianCelsius()),
        Optional.of(
            new Edges(
                FiringCurve.of(trace.seconds(), trace.lowCelsius()),
                FiringCurve.of(trace.seconds(), trace.highCelsius()))));
  }

  /**
   * Ramps at their rates.
   *
   * @param from where it begins
   * @param fastest what <em>fastest</em> comes to
   * @throws IllegalArgumentException if a ramp is <em>fastest</em> and nobody says what that is
   */
  public static HeatworkCurves onPaper(
      Schedule schedule, Temperature from, Optional<HeatingRate> fastest) {
    return new HeatworkCurves(FiringCurve.onPaper(schedule, from, fastest), Optional.empty());
  }

  /** "9.1 min to 10.2 min" from edge to edge; empty on paper. */
  Optional<String> span(Equivalence law) {
    return edges.map(
        e ->
            "%s to %s"
                .formatted(
                    HeatworkWords.time(law.secondsOf(e.low())),
                    HeatworkWords.time(law.secondsOf(e.high()))));
  }
}
