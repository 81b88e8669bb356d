package org.heatwright.work.causes;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.heatwright.inspect.TemperatureRange;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;

/**
 * A change of one kind of number in a schedule. It rounds to what a person would key: whole degrees
 * in fives, holds in fives of minutes, rates in whole degrees an hour.
 *
 * @param what which numbers
 * @param byKelvins what is added to a target, K; 0 for holds and rates
 * @param factor by what a hold or a rate is multiplied; 1 for targets
 */
public record Edit(What what, double byKelvins, double factor) {

  private static final int STEP = 5;
  private static final long STEP_MINUTES = 5;

  /** Holds at 250 to 560 °C burn binder: about the 290 to 540 °C of practice. Our choice. */
  private static final TemperatureRange BINDER = TemperatureRange.ofCelsius(250, 560);

  /** Which numbers of a schedule. */
  public enum What {
    /** Targets as high as the highest. */
    TOP_TARGET,
    /** Holds at the highest target. */
    TOP_HOLD,
    /** The last target, where it is not the highest. */
    LAST_TARGET,
    /** The last hold, where it is not at the highest target. */
    LAST_HOLD,
    /** Rates of ramps that rise; a fastest ramp stays. */
    RISES,
    /** The rate of the first ramp; a fastest one stays. */
    FIRST_RISE,
    /** Rates of ramps that fall; a fastest one stays. */
    FALLS,
    /** The hold that follows the first fall from the top: where glass is annealed. */
    HOLD_AFTER_TOP,
    /** Holds on the way up, or at the top, where the binder of metal clay burns. */
    BINDER_HOLD
  }

  public Edit {
    Objects.requireNonNull(what, "what");
    if (!(factor > 0.1 && factor < 10) || !(Math.abs(byKelvins) <= 100)) {
      throw new IllegalArgumentException(
          "An edit (%s K, factor %s) must be a moderate one.".formatted(byKelvins, factor));
    }
  }

  static Edit target(What what, double kelvins) {
    return new Edit(what, kelvins, 1);
  }

  static Edit times(What what, double factor) {
    return new Edit(what, 0, factor);
  }

  /** The schedule with it; empty where nothing of it is there to be changed. */
  public Optional<Schedule> apply(Schedule schedule) {
    List<Segment> segments = schedule.segments();
    Temperature peak = schedule.peak();
    int last = segments.size() - 1;
    int afterTop = afterTop(segments, peak);
    List<Segment> edited = new ArrayList<>();
    for (int i = 0; i <= last; i++) {
      Segment segment = segments.get(i);
      boolean top = segment.target().equals(peak);
      boolean falls = i > 0 && segment.target().compareTo(segments.get(i - 1).target()) < 0;
      TemperatureUnit unit = schedule.unit();
      edited.add(
          switch (what) {
            case TOP_TARGET -> top ? moved(segment, unit) : segment;
            case TOP_HOLD -> top ? held(segment) : segment;
            case LAST_TARGET -> i == last && !top ? moved(segment, unit) : segment;
            case LAST_HOLD -> i == last && !top ? held(segment) : segment;
            case RISES -> falls ? segment : ramped(segment, unit);
            case FIRST_RISE -> i == 0 ? ramped(segment, unit) : segment;
            case FALLS -> falls ? ramped(segment, unit) : segment;
            case HOLD_AFTER_TOP -> i == afterTop ? held(segment) : segment;
            case BINDER_HOLD ->
                !falls && BINDER.contains(segment.target()) ? held(segment) : segment;
          });
    }
    return edited.equals(segments) ? Optional.empty() : Optional.of(schedule.withSegments(edited));
  }

  private static int afterTop(List<Segment> segments, Temperature peak) {
    boolean seen = false;
    for (int i = 0; i < segments.size(); i++) {
      boolean top = segments.get(i).target().equals(peak);
      if (seen && !top && !segments.get(i).hold().isZero()) {
        return i;
      }
      seen |= top;
    }
    return -1;
  }

  /** Never hotter than asked: a hotter target is rounded down, a cooler one too. */
  private Segment moved(Segment segment, TemperatureUnit unit) {
    double value = unit.value(Temperature.ofCelsius(segment.target().celsius() + byKelvins)) / STEP;
    return segment.withTarget(unit.temperature(STEP * Math.floor(value + 1e-9)));
  }

  private Segment held(Segment segment) {
    double minutes = segment.hold().toMinutes() * factor / STEP_MINUTES;
    long rounded =
        STEP_MINUTES * (long) (factor > 1 ? Math.ceil(minutes - 1e-9) : Math.floor(minutes + 1e-9));
    return segment.withHold(Duration.ofMinutes(rounded));
  }

  private Segment ramped(Segment segment, TemperatureUnit unit) {
    Optional<HeatingRate> rate = segment.ramp().rate();
    if (rate.isEmpty()) {
      return segment;
    }
    double value = Math.max(1, Math.floor(unit.value(rate.get()) * factor + 1e-9));
    return segment.withRamp(Ramp.at(unit.rate(value)));
  }
}
