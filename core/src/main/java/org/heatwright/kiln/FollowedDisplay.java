package org.heatwright.kiln;

/**
 * A simulation's way along a logged display: when the controller must have switched. Where the
 * display comes to an edge of the hysteresis quickly, it switched there. Where it comes slowly, one
 * noisy reading decides and no log tells which: but the display turns soon after, and that does. A
 * display that turns close to an edge without passing it was switched too, because readings are
 * rounded and a log has gaps; one that grazes an edge, while the setpoint runs on ahead and it goes
 * on as before, was not.
 *
 * <p>The constants are our estimates, tried on kilns simulated apart.
 */
final class FollowedDisplay {

  /** Beyond an edge by so much, and so many seconds of its own rate, it was switched for sure. */
  private static final double SURE_KELVINS = 4;

  private static final double SURE_SECONDS = 10;

  /** A display that turns so soon after it passed an edge was switched there, s. */
  private static final double TURN_SECONDS = 180;

  /** A display that turns this near to an edge was switched without passing it. */
  private static final double NEAR_KELVINS = 4;

  /** What comes to an edge as fast as this is there when it seems to be, K/s. */
  private static final double QUICK = 0.15;

  /** A switch that was ordered so lately is ordered now, s. */
  private static final double JUST_NOW_SECONDS = 0.01;

  /** Nearer than this is now, s. */
  private static final double SLIVER_SECONDS = 1e-6;

  /** What is further ahead is looked at later, s. */
  private static final double AHEAD_SECONDS = 900;

  private final double[] seconds;
  private final double[] celsius;
  private final int[] turns;
  private final double[] back;
  private final int[] gaps;
  private final double aheadSeconds;
  private int from;

  /**
   * @param seen what the display said
   * @param aheadSeconds how long before it has gone back a switch was ordered, s
   */
  FollowedDisplay(SeenDisplay seen, double aheadSeconds) {
    this.seconds = seen.seconds;
    this.celsius = seen.celsius;
    this.turns = seen.turns;
    this.back = seen.back;
    this.gaps = seen.gaps;
    this.aheadSeconds = aheadSeconds;
  }

  /** The last row at or before a time; times asked for may not fall. */
  private int row(double second) {
    int last = seconds.length - 1;
    while (from < last && seconds[from + 1] <= second) {
      from++;
    }
    return from;
  }

  private double at(int row, double second) {
    if (row == seconds.length - 1 || second <= seconds[row]) {
      return celsius[row];
    }
    double share = (second - seconds[row]) / (seconds[row + 1] - seconds[row]);
    return celsius[row] + share * (celsius[row + 1] - celsius[row]);
  }

  /** Whether a time lies in a gap without readings. */
  boolean blind(double second) {
    for (int row : gaps) {
      if (second > seconds[row] - SLIVER_SECONDS && second < seconds[row + 1] - SLIVER_SECONDS) {
        return true;
      }
    }
    return false;
  }

  /**
   * How long until a gap without readings begins or is over, s.
   *
   * @param most how far to look, s
   */
  double untilGapChanges(double second, double most) {
    for (int row : gaps) {
      for (int end = row; end <= row + 1; end++) {
        if (seconds[end] > second + SLIVER_SECONDS) {
          return Math.min(most, seconds[end] - second);
        }
      }
    }
    return most;
  }

  /** What its next turn tells: 1 where it rises until then, -1 where it falls; 0: no turn. */
  int headed(double second) {
    for (int i = row(second); i < seconds.length; i++) {
      if (turns[i] != 0 && back[i] - aheadSeconds > second) {
        return turns[i];
      }
    }
    return 0;
  }

  /** What it says, °C; times asked for may not fall. */
  double at(double second) {
    return at(row(second), second);
  }

  /**
   * Whether it came near a level a short while ago, or passed it: a controller that smooths sees it
   * there now.
   *
   * @param now s
   * @param before how long ago, s
   * @param level °C
   * @param near K
   */
  boolean met(double now, double before, double level, double near) {
    int row = row(now);
    int first = row;
    while (first > 0 && seconds[first] > now - before) {
      first--;
    }
    double then = at(first, Math.max(seconds[first], now - before)) - level;
    double is = at(row, now) - level;
    return Math.abs(then) <= near || then * is <= 0;
  }

  /**
   * How long until it passes a level, s.
   *
   * @param now s
   * @param level °C
   * @param side 1 where it comes from below, -1 from above
   * @param most how far to look, s
   * @return at most {@code most}
   */
  double untilPasses(double now, double level, double side, double most) {
    int row = row(now);
    double since = 0;
    double before = (level - at(row, now)) * side;
    for (int i = row; since < most && before > 0 && i + 1 < seconds.length; i++) {
      double next = Math.min(most, seconds[i + 1] - now);
      double after = (level - at(i, now + next)) * side;
      if (after <= 0) {
        return since + (next - since) * before / (before - after);
      }
      before = after;
      since = next;
    }
    return before > 0 ? most : since;
  }

  /**
   * How long until the controller orders its switch to turn, s.
   *
   * @param now s
   * @param edge where the edge of the hysteresis is now, °C
   * @param slope its rise, K/s
   * @param side 1 where it switches off above the edge, -1 where it switches on below
   * @param most how far to look, s
   * @return at most {@code most}
   */
  double untilSwitches(double now, double edge, double slope, double side, double most) {
    int row = row(now);
    double turning = untilTurning(row, now, edge, slope, side);
    if (turning < Double.POSITIVE_INFINITY) {
      return Math.min(most, turning);
    }
    // Where the setpoint runs on ahead, a kiln at full power (or none) may touch the edge in
    // passing.
    boolean grazes = slope * side > 0;
    double horizon = Math.min(most, AHEAD_SECONDS) + aheadSeconds;
    double before = (at(row, now) - edge) * side;
    double last = 0;
    double passed = before >= 0 ? 0 : Double.NaN;
    double rate = rate(row, slope, side);
    for (int i = row + 1; i < seconds.length; i++) {
      double since = seconds[i] - now;
      double beyond = (celsius[i] - edge - slope * since) * side;
      if (beyond >= 0 && Double.isNaN(passed)) {
        passed = last + (since - last) * -before / (beyond - before);
        rate = rate(i - 1, slope, side);
        if (rate >= QUICK && !grazes) {
          return Math.min(most, passed);
        }
      }
      if (turns[i] == side && beyond > -NEAR_KELVINS) {
        double ordered = Math.max(0, back[i] - aheadSeconds - now);
        if (Double.isNaN(passed)) {
          return Math.min(most, ordered);
        }
        if (since <= passed + TURN_SECONDS) {
          return Math.min(most, rate >= QUICK ? passed : ordered);
        }
      }
      if (!Double.isNaN(passed)) {
        if (beyond >= SURE_KELVINS + SURE_SECONDS * rate
            || (!grazes && since > passed + TURN_SECONDS)) {
          return Math.min(most, passed);
        }
        if (beyond < 0 && grazes) {
          passed = Double.NaN;
        }
      } else if (since > horizon) {
        break;
      }
      before = beyond;
      last = since;
    }
    return Double.isNaN(passed) || grazes ? most : Math.min(most, passed);
  }

  /** Until a switch is ordered whose answer, a turn, has begun already; infinite: none, s. */
  private double untilTurning(int row, double now, double edge, double slope, double side) {
    for (int i = row; i >= 0 && seconds[i] > now - aheadSeconds - TURN_SECONDS; i--) {
      double beyond = (celsius[i] - edge - slope * (seconds[i] - now)) * side;
      double ordered = back[i] - aheadSeconds - now;
      if (turns[i] == side && beyond > -NEAR_KELVINS && ordered > -JUST_NOW_SECONDS) {
        return Math.max(0, ordered);
      }
    }
    return Double.POSITIVE_INFINITY;
  }

  /** How fast it goes beyond an edge after a row, K/s; 0: it does not. */
  private double rate(int row, double slope, double side) {
    int i = Math.min(row, seconds.length - 2);
    if (i < 0) {
      return 0;
    }
    double rate = (celsius[i + 1] - celsius[i]) / (seconds[i + 1] - seconds[i]) - slope;
    return Math.max(0, rate * side);
  }
}
