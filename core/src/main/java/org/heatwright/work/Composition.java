package org.heatwright.work;

import java.util.List;
import java.util.Objects;
import org.heatwright.forecast.Charge;
import org.heatwright.inspect.Demands;
import org.heatwright.schedule.Schedule;

/**
 * A schedule made for a piece of work, with all that belongs to it.
 *
 * @param schedule what to fire
 * @param reasons why each number is what it is, by segment
 * @param demands what the work asks of any schedule
 * @param charge what will stand in the kiln
 * @param cautions what to know before the heat
 * @param moments when to act and what can be changed until when
 */
public record Composition(
    Schedule schedule,
    List<Reason> reasons,
    Demands demands,
    Charge charge,
    List<Caution> cautions,
    List<Moment> moments) {

  public Composition {
    Objects.requireNonNull(schedule, "schedule");
    reasons = List.copyOf(reasons);
    Objects.requireNonNull(demands, "demands");
    Objects.requireNonNull(charge, "charge");
    cautions = List.copyOf(cautions);
    moments = List.copyOf(moments);
  }
}
