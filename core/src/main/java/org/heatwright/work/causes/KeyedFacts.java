package org.heatwright.work.causes;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.heatwright.inspect.Wording;
import org.heatwright.schedule.HourMinute;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;

/** What a keyed program says beside the plan. */
public final class KeyedFacts {

  /** Two targets nearer than this are one, K: a keypad rounds to whole degrees. */
  private static final double SAME_KELVINS = 3;

  /** Holds nearer than this are one. */
  private static final long SAME_MINUTES = 2;

  /** Rates nearer than this are one. */
  private static final double SAME_RATE_FACTOR = 1.05;

  private KeyedFacts() {}

  /** Compares segment by segment. */
  public static Facts of(Schedule planned, Schedule keyed) {
    TemperatureUnit unit = planned.unit();
    Differences found = new Differences();
    int count = Math.min(planned.segments().size(), keyed.segments().size());
    for (int i = 0; i < count; i++) {
      found.compare(i + 1, planned.segments().get(i), keyed.segments().get(i), unit);
    }
    for (int i = count; i < keyed.segments().size(); i++) {
      found.longer.add("segment %d was not in the plan".formatted(i + 1));
    }
    for (int i = count; i < planned.segments().size(); i++) {
      found.shorter.add("segment %d of the plan was missing".formatted(i + 1));
    }
    Facts facts = Facts.none();
    facts = told(facts, Clue.KEYED_HOTTER, found.hotter);
    facts = told(facts, Clue.KEYED_COOLER, found.cooler);
    facts = told(facts, Clue.KEYED_LONGER, found.longer);
    facts = told(facts, Clue.KEYED_SHORTER, found.shorter);
    facts = told(facts, Clue.KEYED_FASTER, found.faster);
    facts = unit(facts, Clue.UNIT_HOT, planned, keyed, TemperatureUnit.FAHRENHEIT);
    return unit(facts, Clue.UNIT_COLD, planned, keyed, TemperatureUnit.CELSIUS);
  }

  private static final class Differences {
    private final List<String> hotter = new ArrayList<>();
    private final List<String> cooler = new ArrayList<>();
    private final List<String> longer = new ArrayList<>();
    private final List<String> shorter = new ArrayList<>();
    private final List<String> faster = new ArrayList<>();

    void compare(int number, Segment plan, Segment keyed, TemperatureUnit unit) {
      double more = keyed.target().celsius() - plan.target().celsius();
      String targets =
          "segment %d went to %s, planned %s"
              .formatted(
                  number,
                  Wording.whole(keyed.target().celsius(), unit),
                  Wording.whole(plan.target().celsius(), unit));
      if (more > SAME_KELVINS) {
        hotter.add(targets);
      } else if (more < -SAME_KELVINS) {
        cooler.add(targets);
      }
      long minutes = keyed.hold().toMinutes() - plan.hold().toMinutes();
      String holds =
          "segment %d held %s, planned %s"
              .formatted(number, HourMinute.words(keyed.hold()), HourMinute.words(plan.hold()));
      if (minutes > SAME_MINUTES) {
        longer.add(holds);
      } else if (minutes < -SAME_MINUTES) {
        shorter.add(holds);
      }
      double now = rate(keyed);
      if (now > rate(plan) * SAME_RATE_FACTOR) {
        faster.add(
            "segment %d went at %s, planned %s"
                .formatted(number, Wording.of(keyed.ramp(), unit), Wording.of(plan.ramp(), unit)));
      }
    }

    private static double rate(Segment segment) {
      return segment.ramp().rate().map(r -> r.kelvinsPerHour()).orElse(1e6);
    }
  }

  private static Facts told(Facts facts, Clue clue, List<String> what) {
    return what.isEmpty()
        ? facts.with(clue, false, Wording.capital(clue.words(false)) + ".")
        : facts.with(clue, true, Wording.capital(String.join("; ", what)) + ".");
  }

  /** At least half of the targets, and the highest, are the plan's numbers in the other unit. */
  private static Facts unit(
      Facts facts, Clue clue, Schedule planned, Schedule keyed, TemperatureUnit meant) {
    int fits = 0;
    int count = Math.min(planned.segments().size(), keyed.segments().size());
    for (int i = 0; i < count; i++) {
      Optional<Temperature> slip = slipped(planned.segments().get(i).target(), meant);
      double celsius = keyed.segments().get(i).target().celsius();
      if (slip.isPresent() && Math.abs(slip.get().celsius() - celsius) < SAME_KELVINS) {
        fits++;
      }
    }
    if (2 * fits < count || fits == 0) {
      return facts.with(clue, false, Wording.capital(clue.words(false)) + ".");
    }
    return facts.with(
        clue,
        true,
        "%d of %d targets in the slot are the plan's numbers in %s, read as %s."
            .formatted(fits, count, meant.symbol(), meant.other().symbol()));
  }

  /**
   * What a target becomes if its number in one unit is read in the other; empty where that is no
   * temperature to fire at.
   */
  static Optional<Temperature> slipped(Temperature target, TemperatureUnit meant) {
    double number = meant.value(target);
    Temperature read = meant.other().temperature(Math.max(number, -100));
    return Math.abs(read.celsius() - target.celsius()) > 4 * SAME_KELVINS
        ? Optional.of(read)
        : Optional.empty();
  }
}
