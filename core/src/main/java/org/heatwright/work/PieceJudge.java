package org.heatwright.work;

import java.util.List;
import java.util.Optional;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.PieceForecast;
import org.heatwright.schedule.Schedule;

/** Tells what a firing does to the pieces, by their own curves. */
@FunctionalInterface
public interface PieceJudge {

  /**
   * What happens.
   *
   * @param schedule what is run
   * @param pieces what the pieces do, in the order of the charge; by a forecast or by a log
   * @return in the order in which a person wants to know; empty where nothing can be told
   */
  List<Outcome> outcomes(Schedule schedule, List<PieceForecast> pieces);

  /**
   * The judge for one schedule: what takes long and needs no forecast is worked out here, once, and
   * is then at hand for whoever asks about that schedule.
   */
  default PieceJudge settledFor(Schedule schedule) {
    return this;
  }

  /**
   * When the work is ready, s from the program's start.
   *
   * @param forecast of what is run; without its pieces while it is only sketched
   * @param reached when the program is that far
   * @return empty where it cannot be told
   */
  default Optional<Band> ready(Forecast forecast, Optional<Band> reached) {
    return reached;
  }

  /** For work that is judged elsewhere. */
  static PieceJudge none() {
    return (schedule, pieces) -> List.of();
  }
}
