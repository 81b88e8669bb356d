package org.heatwright.reference;

import java.util.Optional;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.schedule.Schedule;

/**
 * A random firing of a random kiln in which nothing goes wrong.
 *
 * @param schedule of one family after another, as seeds go
 * @param until end of what was simulated, s
 * @param clean what the kiln did
 * @param chance seed of its noise and its mains, for the same firing with a fault
 */
public record DrawnFiring(
    RichKiln rich,
    Schedule schedule,
    FiringConditions day,
    double until,
    RichFiring clean,
    long chance) {

  public static DrawnFiring of(long seed) {
    RichKiln rich = KilnPopulation.draw(seed);
    SchedulePopulation.Family[] families = SchedulePopulation.Family.values();
    Schedule schedule =
        SchedulePopulation.draw(families[(int) (seed % families.length)], rich, seed + 20_000);
    FiringConditions day = SchedulePopulation.conditions(seed + 20_000);
    double until = SchedulePopulation.untilSecond(schedule, rich);
    long chance = seed + 7;
    return new DrawnFiring(
        rich,
        schedule,
        day,
        until,
        rich.fire(schedule, day, 0, Optional.empty(), chance, until),
        chance);
  }

  /** The same firing, by the same chance, with a fault. */
  public RichFiring with(Fault fault) {
    return rich.fire(schedule, day, 0, Optional.of(fault), chance, until);
  }
}
