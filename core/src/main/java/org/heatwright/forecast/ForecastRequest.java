package org.heatwright.forecast;

import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.Kiln;
import org.heatwright.schedule.Schedule;

/**
 * Everything a forecast depends on. The same request gives the same forecast, bit for bit.
 *
 * @param schedule what to run; its start delay is not part of the forecast's clock
 * @param kiln where
 * @param conditions what is so on that day
 * @param charge what stands in the kiln
 * @param draws size of the ensemble, 1 to 4096; 1 means the median kiln alone, without a band
 * @param seed seed of the ensemble
 */
public record ForecastRequest(
    Schedule schedule,
    Kiln kiln,
    FiringConditions conditions,
    Charge charge,
    int draws,
    long seed) {

  /** Draws of a usual forecast. */
  public static final int USUAL_DRAWS = 64;

  public ForecastRequest {
    if (draws < 1 || draws > 4096) {
      throw new IllegalArgumentException(
          "The number of draws (%d) must be 1 to 4096.".formatted(draws));
    }
  }

  /** A usual forecast on a usual day. */
  public static ForecastRequest of(Schedule schedule, Kiln kiln, Charge charge) {
    return new ForecastRequest(schedule, kiln, FiringConditions.usual(), charge, USUAL_DRAWS, 1L);
  }

  public ForecastRequest withConditions(FiringConditions newConditions) {
    return new ForecastRequest(schedule, kiln, newConditions, charge, draws, seed);
  }

  public ForecastRequest withSchedule(Schedule newSchedule) {
    return new ForecastRequest(newSchedule, kiln, conditions, charge, draws, seed);
  }

  public ForecastRequest withKiln(Kiln newKiln) {
    return new ForecastRequest(schedule, newKiln, conditions, charge, draws, seed);
  }

  public ForecastRequest withDraws(int newDraws) {
    return new ForecastRequest(schedule, kiln, conditions, charge, newDraws, seed);
  }
}
