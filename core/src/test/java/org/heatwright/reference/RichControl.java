package org.heatwright.reference;

import org.heatwright.kiln.Control;
import org.heatwright.schedule.AtEnd;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;

/**
 * The program and the control law. Rate ramps never wait; a fastest ramp puts the setpoint at the
 * target at once; a hold's clock starts when the reading is within the kiln's distance of the
 * target (at once where it has none). Called every {@link #SAMPLE_SECONDS} s while the mains are
 * on; while they are off nothing here moves.
 */
final class RichControl {
  static final double SAMPLE_SECONDS = 2;

  private final double[] target;
  private final double[] ratePerSecond;
  private final double[] holdSeconds;
  private final boolean keep;
  private final boolean proportional;
  private final double halfHysteresis;
  private final double within;
  private final HiddenTruth truth;

  final double[] reached;
  final double[] ended;
  final double[] energyAtEnd;

  int segment;
  private boolean holding;
  private double holdLeft;
  private double filtered;
  private double slope;
  private double integral;
  private boolean on;
  private double lastSwitch = Double.NEGATIVE_INFINITY;

  double setpoint;
  double saturatedSeconds;
  boolean over;

  RichControl(Schedule schedule, Control control, HiddenTruth truth, double startReading) {
    int n = schedule.segments().size();
    target = new double[n];
    ratePerSecond = new double[n];
    holdSeconds = new double[n];
    reached = new double[n];
    ended = new double[n];
    energyAtEnd = new double[n];
    for (int i = 0; i < n; i++) {
      Segment s = schedule.segments().get(i);
      target[i] = s.target().celsius();
      ratePerSecond[i] =
          s.ramp().rate().map(r -> r.kelvinsPerHour() / 3600).orElse(Double.POSITIVE_INFINITY);
      holdSeconds[i] = s.hold().toSeconds();
      reached[i] = Double.NaN;
      ended[i] = Double.NaN;
      energyAtEnd[i] = Double.NaN;
    }
    keep = schedule.atEnd() == AtEnd.KEEP;
    proportional = control.kind() == Control.Kind.PID;
    halfHysteresis = control.hysteresis().kelvins() / 2;
    within = control.holdWaitsWithin().map(w -> w.kelvins()).orElse(Double.POSITIVE_INFINITY);
    this.truth = truth;
    filtered = startReading;
    setpoint = startReading;
  }

  /** One sample. Returns the output wanted, 0 to 1. */
  double sample(double second, double reading, double energyJoules) {
    double weight = SAMPLE_SECONDS / (truth.filterSeconds + SAMPLE_SECONDS);
    double last = filtered;
    filtered += weight * (reading - filtered);
    slope += 0.1 * ((filtered - last) / SAMPLE_SECONDS - slope);
    advanceProgram(second, energyJoules);
    if (over && !keep) {
      on = false;
      return 0;
    }
    return proportional ? proportional() : onOff(second);
  }

  private void advanceProgram(double second, double energyJoules) {
    if (over) {
      return;
    }
    if (!holding) {
      double way = target[segment] - setpoint;
      double most = ratePerSecond[segment] * SAMPLE_SECONDS;
      setpoint = Math.abs(way) <= most ? target[segment] : setpoint + Math.copySign(most, way);
      if (setpoint == target[segment] && Math.abs(filtered - setpoint) <= within) {
        holding = true;
        holdLeft = holdSeconds[segment];
        reached[segment] = second;
      }
    } else {
      holdLeft -= SAMPLE_SECONDS;
    }
    if (holding && holdLeft <= 0) {
      ended[segment] = second;
      energyAtEnd[segment] = energyJoules;
      holding = false;
      if (segment == target.length - 1) {
        over = true;
      } else {
        segment++;
      }
    }
  }

  private double proportional() {
    double error = setpoint - filtered;
    double fixed = error / truth.bandKelvins - truth.derivativeSeconds / truth.bandKelvins * slope;
    double next = integral + error / (truth.bandKelvins * truth.integralSeconds) * SAMPLE_SECONDS;
    double u = fixed + next;
    if (!(u > 1 && error > 0) && !(u < 0 && error < 0)) {
      integral = Math.max(0, Math.min(1, next));
    }
    u = fixed + integral;
    if (u >= 1 && !over) {
      saturatedSeconds += SAMPLE_SECONDS;
    }
    return Math.max(0, Math.min(1, u));
  }

  private double onOff(double second) {
    boolean want = on;
    if (filtered > setpoint + halfHysteresis) {
      want = false;
    } else if (filtered < setpoint - halfHysteresis) {
      want = true;
    }
    if (want != on && second - lastSwitch >= truth.minimumSwitchSeconds) {
      on = want;
      lastSwitch = second;
    }
    if (on && !over && filtered < setpoint - halfHysteresis - 5) {
      saturatedSeconds += SAMPLE_SECONDS;
    }
    return on ? 1 : 0;
  }
}
