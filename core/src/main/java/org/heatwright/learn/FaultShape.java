package org.heatwright.learn;

import java.util.ArrayList;
import java.util.List;
import org.heatwright.kiln.FiringConditions.Disturbance;
import org.heatwright.kiln.FiringConditions.Disturbance.Kind;

/**
 * What a kind of fault may be: its length and size have a middle and a spread of their logarithms.
 *
 * @param kind what happens
 * @param ends whether it is over some time
 * @param usualSeconds its usual length, s, where it ends
 * @param lengthSpread standard deviation of the logarithm of its length
 * @param usualSize in the kind's own measure, a share
 */
record FaultShape(
    Kind kind, boolean ends, double usualSeconds, double lengthSpread, double usualSize) {

  // Usual lengths and sizes with their spreads (of logarithms): our estimates.
  private static final double STUCK_SECONDS = 300;
  private static final double STUCK_SPREAD = 0.6;
  private static final double CUT_SECONDS = 600;
  private static final double CUT_SPREAD = 0.9;
  private static final double GAP_SPREAD = 0.05;
  private static final double ELEMENT_SPREAD = 0.15;
  private static final double TIP_SPREAD = 0.5;
  private static final double DOOR_SPREAD = 0.5;

  /** More of the elements than this cannot open while the kiln goes on, a share. Our estimate. */
  private static final double MOST_ELEMENTS = 0.7;

  /** A controller that goes on as if nothing had been. */
  static final double REMEMBERED = 0.01;

  /** A gap of the log tells a beginning to so many minutes. */
  private static final double GAP_MINUTES = 1;

  /** Shorter than this nothing is simulated, s. */
  private static final double SHORTEST_SECONDS = 30;

  /** A kind that stays to the end of the firing. */
  static FaultShape forGood(Kind kind) {
    return new FaultShape(kind, false, 0, 0, new Disturbance(kind, 0, 1).sizeShare());
  }

  private static FaultShape stuck(Kind kind) {
    return new FaultShape(kind, true, STUCK_SECONDS, STUCK_SPREAD, 1);
  }

  private static FaultShape cut(double forgotten) {
    return new FaultShape(Kind.MAINS_OFF, true, CUT_SECONDS, CUT_SPREAD, forgotten);
  }

  /** A mains cut that a gap of the log tells. */
  static FaultShape gap(double seconds, double forgotten) {
    return new FaultShape(Kind.MAINS_OFF, true, seconds, GAP_SPREAD, forgotten);
  }

  /** Every kind that is looked for. */
  static List<FaultShape> all(boolean switched) {
    List<FaultShape> all = new ArrayList<>();
    all.add(forGood(Kind.ELEMENT_OPEN));
    all.add(forGood(Kind.TIP_OUT));
    all.add(stuck(Kind.RELAY_OFF));
    all.add(stuck(Kind.RELAY_ON));
    all.add(forGood(Kind.DOOR_AJAR));
    all.add(cut(1));
    if (!switched) {
      all.add(cut(REMEMBERED));
    }
    return all;
  }

  /** Whether a gap of the log tells when and how long. */
  boolean told() {
    return kind == Kind.MAINS_OFF && lengthSpread <= GAP_SPREAD;
  }

  /** Standard deviation of the logarithm of its size; 0: it has one size. */
  double sizeSpread() {
    return switch (kind) {
      case ELEMENT_OPEN -> ELEMENT_SPREAD;
      case TIP_OUT -> TIP_SPREAD;
      case DOOR_AJAR -> DOOR_SPREAD;
      case DOOR_OPEN, MAINS_OFF, RELAY_ON, RELAY_OFF -> 0;
    };
  }

  /** Beginning and, where it has them, length and size. */
  int unknowns() {
    return 1 + (ends ? 1 : 0) + (sizeSpread() > 0 ? 1 : 0);
  }

  /** The score of a length, s, of one that ends. */
  double lengthScore(double seconds) {
    return Math.log(seconds / usualSeconds) / lengthSpread;
  }

  private double later(double minutes) {
    return told() ? NormalEquations.clamp(minutes, GAP_MINUTES) : minutes;
  }

  /**
   * @param onset the first guess, s
   * @param fault scores: beginning in minutes, length, size
   */
  Disturbance at(double onset, double[] fault) {
    double length =
        ends ? usualSeconds * Math.exp(lengthSpread * fault[1]) : Double.POSITIVE_INFINITY;
    double size =
        sizeSpread() > 0 ? usualSize * Math.exp(sizeSpread() * fault[ends ? 2 : 1]) : usualSize;
    return new Disturbance(
        kind,
        Math.max(0, onset + 60 * later(fault[0])),
        Math.max(SHORTEST_SECONDS, length),
        Math.min(kind == Kind.ELEMENT_OPEN ? MOST_ELEMENTS : 1, size));
  }
}
