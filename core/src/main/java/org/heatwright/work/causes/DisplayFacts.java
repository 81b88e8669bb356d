package org.heatwright.work.causes;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.SegmentForecast;
import org.heatwright.inspect.Demands;
import org.heatwright.inspect.Wording;
import org.heatwright.learn.Readings;
import org.heatwright.schedule.HourMinute;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.enamel.DoorDips;

/**
 * What a display showed, beside what it should have. A few readings by hand say little, and then
 * little is said: a clue that they do not touch stays unknown.
 *
 * @param planned what was meant to run
 * @param readings what the display showed, s from the program's start
 * @param forecast what the display of this kiln should show if the plan runs, where it was made
 * @param demands what the work bears, where it is known
 * @param switching whether the controller switches on and off and swings
 * @param doors whether the door is opened on purpose at the top: enamel
 */
public record DisplayFacts(
    Schedule planned,
    Readings readings,
    Optional<Forecast> forecast,
    Optional<Demands> demands,
    boolean switching,
    boolean doors) {

  /** Beyond the plan by more than this is not the usual overshoot, K. {@code estimate:} */
  private static final double ABOVE_KELVINS = 15;

  /** Below it by more than this is not there, K. {@code estimate:} */
  private static final double BELOW_KELVINS = 10;

  /** A controller that switches swings by so much more, K. {@code estimate:} */
  private static final double SWING_KELVINS = 12;

  /** A log in which a row comes at least as often as this tells what lay between, s. */
  private static final double DENSE_SECONDS = 600;

  private static final int DENSE_ROWS = 20;

  /** A fall that counts, K. {@code estimate:} */
  private static final double FALL_KELVINS = 25;

  /** A door makes the display fall at least so fast, K/min. {@code estimate:} */
  private static final double DOOR_KELVINS_PER_MINUTE = 20;

  /** A door is open no longer than this, s; what falls for longer has no heat. {@code estimate:} */
  private static final double DOOR_SECONDS = 360;

  /** Outside the forecast's band by more than this, K. {@code estimate:} */
  private static final double OUT_OF_BAND_KELVINS = 20;

  /** Rates are taken over so long, s. */
  private static final double SLOPE_SECONDS = 1200;

  private static final double SHORT_SHARE = 0.8;
  private static final double LONG_SHARE = 1.3;
  private static final double LEAST_HOLD_SECONDS = 600;
  private static final double COLD_CELSIUS = 60;
  private static final double COLD_AFTER_SECONDS = 1800;

  /** The highest that was seen, where nothing else was: by a person at the display. */
  public static Facts highest(Schedule planned, double celsius, boolean switching) {
    DisplayFacts one =
        new DisplayFacts(
            planned,
            Readings.of(new double[] {0}, new double[] {celsius}),
            Optional.empty(),
            Optional.empty(),
            switching,
            false);
    return one.peak(Facts.none(), celsius, true);
  }

  /** Everything that it tells. */
  public Facts find() {
    double most = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < readings.size(); i++) {
      most = Math.max(most, readings.celsius(i));
    }
    boolean whole = whole();
    Facts facts = peak(Facts.none(), most, whole || seenAtTop());
    facts = cold(facts, most);
    facts = pace(facts);
    if (dense()) {
      facts = falls(facts);
      facts = rates(facts);
    }
    return whole ? hold(facts) : facts;
  }

  private TemperatureUnit unit() {
    return planned.unit();
  }

  private double topCelsius() {
    return planned.peak().celsius();
  }

  private double above() {
    return ABOVE_KELVINS + (switching ? SWING_KELVINS : 0);
  }

  private double below() {
    return BELOW_KELVINS + (switching ? SWING_KELVINS : 0);
  }

  // ---- how much is known

  private boolean dense() {
    if (readings.size() < DENSE_ROWS) {
      return false;
    }
    double[] seconds = readings.seconds();
    List<Double> steps = new ArrayList<>();
    for (int i = 1; i < seconds.length; i++) {
      steps.add(seconds[i] - seconds[i - 1]);
    }
    Collections.sort(steps);
    return steps.get(steps.size() / 2) <= DENSE_SECONDS;
  }

  /** Dense, and past the top: it has fallen from its highest, or the forecast's top is over. */
  private boolean whole() {
    if (!dense()) {
      return false;
    }
    double most = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < readings.size(); i++) {
      most = Math.max(most, readings.celsius(i));
    }
    double last = readings.celsius(readings.size() - 1);
    return last < most - 2 * FALL_KELVINS
        || topEnds().map(end -> readings.lastSecond() >= end).orElse(false);
  }

  private Optional<Double> topEnds() {
    return top().map(segment -> segment.endSeconds().median());
  }

  /** The last segment at the highest target. */
  private Optional<SegmentForecast> top() {
    if (forecast.isEmpty() || forecast.get().segments().size() != planned.segments().size()) {
      return Optional.empty();
    }
    SegmentForecast found = null;
    for (int i = 0; i < planned.segments().size(); i++) {
      if (planned.segments().get(i).target().equals(planned.peak())) {
        found = forecast.get().segments().get(i);
      }
    }
    return Optional.ofNullable(found);
  }

  /** Whether somebody looked while it should have been at the top. */
  private boolean seenAtTop() {
    if (top().isEmpty()) {
      return false;
    }
    double from = top().get().arrivedSeconds().orElse(top().get().reachedSeconds()).high();
    double to = top().get().endSeconds().low();
    for (int i = 0; i < readings.size(); i++) {
      if (readings.second(i) >= from && readings.second(i) <= to) {
        return true;
      }
    }
    return false;
  }

  // ---- clues

  private Facts peak(Facts known, double most, boolean sure) {
    Facts facts = known;
    String both =
        "The display's highest was %s, planned %s."
            .formatted(Wording.whole(most, unit()), Wording.whole(topCelsius(), unit()));
    boolean high = most > topCelsius() + above();
    boolean low = most < topCelsius() - below();
    if (high || sure) {
      facts = facts.with(Clue.PEAK_ABOVE, high, both);
    }
    if (sure || !low) {
      facts = facts.with(Clue.PEAK_BELOW, sure && low, both);
    }
    return high || sure ? unitSlip(facts, most, high, low && sure) : facts;
  }

  private Facts unitSlip(Facts known, double most, boolean high, boolean low) {
    Facts facts = known;
    facts = slip(facts, Clue.UNIT_HOT, most, TemperatureUnit.FAHRENHEIT, high);
    return slip(facts, Clue.UNIT_COLD, most, TemperatureUnit.CELSIUS, low);
  }

  private Facts slip(Facts facts, Clue clue, double most, TemperatureUnit meant, boolean apart) {
    boolean fits =
        apart
            && KeyedFacts.slipped(planned.peak(), meant)
                .filter(read -> Math.abs(read.celsius() - most) < above())
                .isPresent();
    String number = Wording.number(Math.rint(meant.value(planned.peak())));
    return facts.with(
        clue,
        fits,
        fits
            ? "The display's highest, %s, is what %s %s becomes if it is read as %s."
                .formatted(
                    Wording.whole(most, unit()), number, meant.symbol(), meant.other().symbol())
            : "The display's highest, %s, is not the plan's number in the other unit."
                .formatted(Wording.whole(most, unit())));
  }

  private Facts cold(Facts facts, double most) {
    if (most >= COLD_CELSIUS) {
      return facts.with(Clue.STAYED_COLD, false, "The display rose.");
    }
    return readings.lastSecond() > COLD_AFTER_SECONDS
        ? facts.with(
            Clue.STAYED_COLD,
            true,
            "The display still showed %s after %s."
                .formatted(Wording.whole(most, unit()), after(readings.lastSecond())))
        : facts;
  }

  private static String after(double seconds) {
    return HourMinute.words(java.time.Duration.ofMinutes(Math.round(seconds / 60)));
  }

  /** On the way to the top, against the forecast. */
  private Facts pace(Facts facts) {
    if (top().isEmpty()) {
      return facts;
    }
    double until = Math.min(top().get().reachedSeconds().low(), firstFallSeconds());
    int seen = 0;
    double behind = 0;
    double ahead = 0;
    double behindAt = 0;
    double aheadAt = 0;
    for (int i = 0; i < readings.size() && readings.second(i) < until; i++) {
      if (readings.second(i) < LEAST_HOLD_SECONDS) {
        continue;
      }
      seen++;
      Band band = forecast.orElseThrow().trace().displayCelsiusAt(readings.second(i));
      if (band.low() - readings.celsius(i) > behind) {
        behind = band.low() - readings.celsius(i);
        behindAt = readings.second(i);
      }
      if (readings.celsius(i) - band.high() > ahead) {
        ahead = readings.celsius(i) - band.high();
        aheadAt = readings.second(i);
      }
    }
    if (seen == 0) {
      return facts;
    }
    Facts told = pace(facts, Clue.BEHIND, behind, behindAt, seen, "below");
    return pace(told, Clue.AHEAD, ahead, aheadAt, seen, "above");
  }

  /** When a display that should rise began to fall: what comes after is late for that reason. */
  private double firstFallSeconds() {
    int high = 0;
    for (int i = 1; i < readings.size(); i++) {
      if (readings.celsius(i) >= readings.celsius(high)) {
        high = i;
      } else if (readings.celsius(high) - readings.celsius(i) > FALL_KELVINS + SWING_KELVINS) {
        return readings.second(high);
      }
    }
    return Double.POSITIVE_INFINITY;
  }

  private Facts pace(Facts facts, Clue clue, double by, double at, int seen, String side) {
    boolean out = by > OUT_OF_BAND_KELVINS;
    if (!out && seen < 3) {
      return facts;
    }
    return facts.with(
        clue,
        out,
        out
            ? "After %s the display was %s %s the forecast's band."
                .formatted(after(at), Wording.differenceUp(by, unit()), side)
            : Wording.capital(clue.words(false)) + ".");
  }

  /** The heat went away and came back, or the door stood open; and what was taken out too soon. */
  private Facts falls(Facts known) {
    if (rests()) {
      return known;
    }
    double[] seconds = readings.seconds();
    double[] celsius = readings.celsius();
    double until =
        lastNearTop(celsius) >= 0 ? seconds[lastNearTop(celsius)] : seconds[seconds.length - 1];
    double worstAway = 0;
    double worstDoor = 0;
    double awayAt = 0;
    double doorAt = 0;
    int high = 0;
    for (int i = 1; i < seconds.length && seconds[i] <= until; i++) {
      if (celsius[i] >= celsius[high]) {
        high = i;
        continue;
      }
      double fall = celsius[high] - celsius[i];
      if (fall < FALL_KELVINS + (switching ? SWING_KELVINS : 0)) {
        continue;
      }
      int low = i;
      while (i < seconds.length && seconds[i] <= until && celsius[i] <= celsius[low] + 3) {
        low = celsius[i] < celsius[low] ? i : low;
        i++;
      }
      double deep = celsius[high] - celsius[low];
      boolean door =
          seconds[low] - seconds[high] <= DOOR_SECONDS
              && fastest(seconds, celsius, high, low) >= DOOR_KELVINS_PER_MINUTE;
      if (door) {
        doorAt = deep > worstDoor ? seconds[high] : doorAt;
        worstDoor = Math.max(worstDoor, deep);
      } else {
        awayAt = deep > worstAway ? seconds[high] : awayAt;
        worstAway = Math.max(worstAway, deep);
      }
      high = low;
    }
    Facts facts = fell(known, Clue.HEAT_AWAY, worstAway, awayAt);
    return doors
        ? recovery(facts, seconds, celsius)
        : fell(facts, Clue.DOOR_OPENED, worstDoor, doorAt);
  }

  private Facts fell(Facts facts, Clue clue, double deep, double at) {
    return facts.with(
        clue,
        deep > 0,
        deep > 0
            ? "From %s on the display fell by %s and rose again%s."
                .formatted(
                    "+" + HourMinute.format(java.time.Duration.ofMinutes(Math.round(at / 60))),
                    Wording.differenceUp(deep, unit()),
                    clue == Clue.DOOR_OPENED ? ", as fast as an open door makes it" : "")
            : "The log shows no fall and rise before the top was over.");
  }

  private int lastNearTop(double[] celsius) {
    double near = Math.min(topCelsius(), max(celsius)) - below();
    for (int i = celsius.length - 1; i >= 0; i--) {
      if (celsius[i] >= near) {
        return i;
      }
    }
    return -1;
  }

  private static double max(double[] values) {
    double most = Double.NEGATIVE_INFINITY;
    for (double value : values) {
      most = Math.max(most, value);
    }
    return most;
  }

  /** Over at least a minute, K/min. */
  private static double fastest(double[] seconds, double[] celsius, int from, int to) {
    double most = 0;
    for (int i = from; i < to; i++) {
      int j = i + 1;
      while (j < to && seconds[j] - seconds[i] < 60) {
        j++;
      }
      most = Math.max(most, (celsius[i] - celsius[j]) / (seconds[j] - seconds[i]) * 60);
    }
    return most;
  }

  /** Whether the plan itself goes down before it has come to its top. */
  private boolean rests() {
    List<Segment> segments = planned.segments();
    for (int i = 1; i < segments.size(); i++) {
      if (segments.get(i).target().compareTo(segments.get(i - 1).target()) < 0
          && segments.subList(i, segments.size()).stream()
              .anyMatch(
                  s ->
                      s.target().compareTo(segments.get(0).target()) > 0
                          && s.target().equals(planned.peak()))) {
        return true;
      }
    }
    return false;
  }

  private static Facts recovery(Facts facts, double[] seconds, double[] celsius) {
    double[] unknown = new double[seconds.length];
    java.util.Arrays.fill(unknown, Double.NaN);
    List<Optional<String>> silent = Collections.nCopies(seconds.length, Optional.empty());
    DoorDips dips = DoorDips.find(seconds, celsius, unknown, silent);
    if (dips.dips().isEmpty()) {
      return facts;
    }
    long soon = dips.dips().stream().filter(dip -> dip.backSeconds().isEmpty()).count();
    return facts.with(
        Clue.NOT_RECOVERED,
        soon > 0,
        String.format(
            Locale.ROOT,
            "Of %d door openings in the log, the display had not come back after %d before the next.",
            dips.dips().size(),
            soon));
  }

  private Facts hold(Facts known) {
    double meant =
        planned.segments().stream()
            .filter(segment -> segment.target().equals(planned.peak()))
            .mapToDouble(segment -> segment.hold().toSeconds())
            .sum();
    if (meant < LEAST_HOLD_SECONDS) {
      return known;
    }
    double near = topCelsius() - below();
    double there = 0;
    for (int i = 1; i < readings.size(); i++) {
      if (Math.min(readings.celsius(i - 1), readings.celsius(i)) >= near) {
        there += readings.second(i) - readings.second(i - 1);
      }
    }
    String words =
        "The display stood at the top for %s, planned %s.".formatted(after(there), after(meant));
    return known
        .with(Clue.HOLD_SHORT, there < SHORT_SHARE * meant - 120, words)
        .with(Clue.HOLD_LONG, there > LONG_SHARE * meant + 1200, words);
  }

  private Facts rates(Facts known) {
    if (demands.isEmpty()) {
      return known;
    }
    Facts facts = limit(known, Clue.ROSE_FAST, demands.get().rateLimits(), 1);
    return limit(facts, Clue.FELL_FAST, demands.get().coolingLimits(), -1);
  }

  private Facts limit(Facts facts, Clue clue, List<Demands.RateLimit> limits, int sign) {
    if (limits.isEmpty()) {
      return facts;
    }
    for (Demands.RateLimit limit : limits) {
      double most = limit.most().kelvinsPerHour();
      double fastest = fastest(limit, sign);
      if (fastest > 1.2 * most + 10) {
        return facts.with(
            clue,
            true,
            "Between %s and %s the display %s at %s an hour; at most %s is borne."
                .formatted(
                    Wording.whole(limit.range().from().celsius(), unit()),
                    Wording.whole(limit.range().to().celsius(), unit()),
                    sign > 0 ? "rose" : "fell",
                    Wording.differenceUp(fastest, unit()),
                    Wording.of(limit.most(), unit())));
      }
    }
    return facts.with(clue, false, Wording.capital(clue.words(false)) + ".");
  }

  /** The fastest change over twenty minutes that lie wholly in a range, K/h; 0 without any. */
  private double fastest(Demands.RateLimit limit, int sign) {
    double most = 0;
    for (int i = 0; i < readings.size(); i++) {
      int j = i;
      while (j + 1 < readings.size()
          && readings.second(j) - readings.second(i) < SLOPE_SECONDS
          && inside(limit, readings.celsius(j + 1))) {
        j++;
      }
      double span = readings.second(j) - readings.second(i);
      if (inside(limit, readings.celsius(i)) && span >= SLOPE_SECONDS / 3) {
        most = Math.max(most, sign * (readings.celsius(j) - readings.celsius(i)) / span * 3600);
      }
    }
    return most;
  }

  private static boolean inside(Demands.RateLimit limit, double celsius) {
    return celsius >= limit.range().from().celsius() && celsius <= limit.range().to().celsius();
  }
}
