package org.heatwright.work.heatwork;

import java.util.OptionalDouble;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;

/**
 * Two firings of the same work compared by one equivalence.
 *
 * @param activationJoulesPerMole Q at the reference, J/mol
 * @param firstSeconds what the first comes to at the reference, s
 * @param secondSeconds what the second comes to, s
 * @param holdSegment the second's hold that would make it even, 1-based: the one at its highest
 *     target
 * @param holdSeconds how long that hold would have to be, s; empty where even without it the second
 *     does more
 */
public record HeatWorkComparison(
    double activationJoulesPerMole,
    double firstSeconds,
    double secondSeconds,
    int holdSegment,
    OptionalDouble holdSeconds) {

  /**
   * Compares.
   *
   * @param equivalence how the change goes with temperature
   * @param first a curve
   * @param second another
   * @param secondSchedule the schedule of the second, whose hold may be changed
   */
  public static HeatWorkComparison of(
      Equivalence equivalence, FiringCurve first, FiringCurve second, Schedule secondSchedule) {
    double one = equivalence.secondsOf(first);
    double two = equivalence.secondsOf(second);
    int at = hottest(secondSchedule);
    Segment segment = secondSchedule.segments().get(at);
    double worth = equivalence.worthOfSecondAt(segment.target());
    double hold = segment.hold().toSeconds() + (one - two) / worth;
    return new HeatWorkComparison(
        equivalence.activationJoulesPerMole(),
        one,
        two,
        at + 1,
        hold >= 0 && hold < Double.POSITIVE_INFINITY
            ? OptionalDouble.of(hold)
            : OptionalDouble.empty());
  }

  /** The last segment at the highest target. */
  private static int hottest(Schedule schedule) {
    int hottest = 0;
    for (int i = 1; i < schedule.segments().size(); i++) {
      if (schedule.segments().get(i).target().compareTo(schedule.segments().get(hottest).target())
          >= 0) {
        hottest = i;
      }
    }
    return hottest;
  }

  /** How many times as much the second does; not a number if neither does anything. */
  public double secondToFirstRatio() {
    return secondSeconds / firstSeconds;
  }
}
