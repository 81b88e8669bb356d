package org.heatwright.work.enamel;

import java.util.Arrays;
import org.heatwright.material.Viscosity;

/**
 * How far a coat has flowed: the dose {@code ∫ dt/η} against the dose at which it is glossy.
 *
 * <p>Needed for gloss: ripples of wavelength λ on a coat of thickness h level with the time {@code
 * 3 η λ⁴/(16 π⁴ γ h³)} (memory: Orchard 1962); three such times with λ 2 mm, γ 0.3 N/m, h 0.3 mm
 * are 1e-2 for each pascal. That is a minute at log η 4.8 (poise), which agrees with the trade's
 * "glossy at log 4 to 5". Both the dose and the enamel's viscosity are known to a factor of some
 * three; only their product shows, so one number in decades stands for both, and test tiles find
 * it.
 */
public final class Fusing {

  /** log10 of the flow for each pascal at which gloss begins. Estimate. */
  public static final double GLOSS_LOG_FLOW = -2.0;

  /** Standard deviation of an enamel within its class, decades of viscosity. Estimate. */
  static final double CLASS_DECADES = 0.35;

  /** Standard deviation of the dose that gloss needs, decades. Estimate. */
  static final double DOSE_DECADES = 0.25;

  /** What is believed of an enamel's class before any tile: decades more that it needs. */
  public static final Range PRIOR_DECADES = prior(Math.hypot(CLASS_DECADES, DOSE_DECADES));

  /** The same where the maker tells the enamel's softening point. */
  public static final Range KNOWN_POINT_DECADES = prior(Math.hypot(0.2, DOSE_DECADES));

  private Fusing() {}

  private static Range prior(double deviation) {
    return Range.of(-Range.DEVIATIONS * deviation, 0, Range.DEVIATIONS * deviation);
  }

  /**
   * log10 of the flow so far over the flow that gloss needs, at each time of a curve; below zero
   * the coat is not glossy yet.
   *
   * @param decades how much more than usual for its class this enamel needs, decades
   */
  static double[] decadesFromGloss(PieceCurve curve, Viscosity viscosity, double decades) {
    double[] logs = curve.logFlow(viscosity);
    double[] from = Arrays.copyOf(logs, logs.length);
    for (int i = 0; i < from.length; i++) {
      from[i] -= GLOSS_LOG_FLOW + decades;
    }
    return from;
  }

  /** log10 of the flow of a piece that comes out at a time, over the flow that gloss needs. */
  public static double decadesFromGlossAt(PieceCurve curve, Viscosity viscosity, double second) {
    return curve.logFlowAt(viscosity, second) - GLOSS_LOG_FLOW;
  }
}
