package org.heatwright.learn;

import java.util.Optional;
import java.util.TreeMap;
import org.heatwright.kiln.Control;
import org.heatwright.kiln.Kiln;
import org.heatwright.units.HeatingRate;

/**
 * Over what spans readings are averaged: short ones everywhere, except where an on-off kiln has
 * come near its first target and may swing: longer ones there, and where it does means over whole
 * swings.
 *
 * @param steadySeconds how long they are while nothing swings, s
 * @param changesAt from when on spans are longer, s; not a number where they never are
 * @param firstSwitchSeconds how uncertain the first switching on is, s
 * @param swinging where the display swings
 */
record Spans(
    double steadySeconds, double changesAt, double firstSwitchSeconds, SwingMeans swinging) {

  /** The usual span, s. */
  static final double USUAL_SECONDS = 120;

  /** The same where a display is followed closely, s. Our estimate. */
  private static final double CLOSE_SECONDS = 40;

  private static final double SWITCHED_RAMP_SECONDS = 60;
  private static final double SWITCHED_SECONDS = 300;

  /** A display this near its target may be cut off, K. */
  private static final double NEAR_KELVINS = 20;

  /**
   * The setpoint of a first ramp begins at what the display says, so that when it is so far above
   * the display that the switch turns is uncertain by this: noise and rounding, K. Estimate.
   */
  private static final double START_KELVINS = 1;

  /**
   * The spans of a firing in a kiln.
   *
   * @param closely whether a proportional kiln's display is followed closely: its log tells of a
   *     hold that waited long
   */
  static Spans of(Kiln kiln, LoggedFiring firing, boolean closely) {
    return kiln.control().kind() == Control.Kind.ON_OFF
        ? new Spans(
            USUAL_SECONDS, firstNear(firing), firstSwitchSeconds(firing), SwingMeans.of(firing))
        : new Spans(closely ? CLOSE_SECONDS : USUAL_SECONDS, Double.NaN, 0, SwingMeans.none());
  }

  private static double firstSwitchSeconds(LoggedFiring firing) {
    return firing
        .schedule()
        .segments()
        .get(0)
        .ramp()
        .rate()
        .map(rate -> START_KELVINS * 3600 / Math.abs(rate.kelvinsPerHour()))
        .orElse(0.0);
  }

  private static double firstNear(LoggedFiring firing) {
    Readings readings = firing.readings();
    double target = firing.schedule().segments().get(0).target().celsius();
    for (int i = 0; i < readings.size(); i++) {
      if (Math.abs(readings.celsius(i) - target) < NEAR_KELVINS) {
        return Math.ceil(readings.second(sinceNear(firing, i)) / SWITCHED_SECONDS)
            * SWITCHED_SECONDS;
      }
    }
    return readings.lastSecond();
  }

  /** A ramp that the kiln follows swings from the time on at which it began to follow. */
  private static int sinceNear(LoggedFiring firing, int arrived) {
    Readings readings = firing.readings();
    Optional<HeatingRate> rate = firing.schedule().segments().get(0).ramp().rate();
    double target = firing.schedule().segments().get(0).target().celsius();
    int since = arrived;
    while (since > 0 && rate.isPresent()) {
      double gone = readings.second(since - 1) / 3600 * rate.get().kelvinsPerHour();
      double setpoint = Math.min(target, readings.celsius(0) + gone);
      if (Math.abs(setpoint - readings.celsius(since - 1)) >= NEAR_KELVINS) {
        break;
      }
      since--;
    }
    return since;
  }

  /** How uncertain it is at a second when the switch turned, because the program just began, s. */
  double firstSwitchSeconds(double second) {
    return second < changesAt ? firstSwitchSeconds : 0;
  }

  /** The mean over swings that is about a second, if one is. */
  Optional<SwingMeans.Mean> swings(double second) {
    return swinging.about(second);
  }

  /** The length of the span about a second, s. */
  double at(double second) {
    if (Double.isNaN(changesAt)) {
      return steadySeconds;
    }
    return swings(second)
        .map(SwingMeans.Mean::lengthSeconds)
        .orElse(second < changesAt ? SWITCHED_RAMP_SECONDS : SWITCHED_SECONDS);
  }

  /** The means of a firing's readings. */
  Readings average(LoggedFiring firing) {
    Readings plain = firing.readings().averaged(this::at, firing.session()::touches);
    if (swinging.means().isEmpty()) {
      return plain;
    }
    TreeMap<Double, double[]> rows = new TreeMap<>();
    for (int i = 0; i < plain.size(); i++) {
      if (!swinging.covers(plain.second(i))) {
        rows.put(plain.second(i), new double[] {plain.celsius(i), plain.watts(i)});
      }
    }
    for (SwingMeans.Mean mean : swinging.means()) {
      rows.put(mean.second(), new double[] {mean.celsius(), mean.watts()});
    }
    return Readings.of(
        rows.keySet().stream().mapToDouble(Double::doubleValue).toArray(),
        rows.values().stream().mapToDouble(row -> row[0]).toArray(),
        rows.values().stream().mapToDouble(row -> row[1]).toArray());
  }
}
