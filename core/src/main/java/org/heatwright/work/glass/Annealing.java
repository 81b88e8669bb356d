package org.heatwright.work.glass;

import java.time.Duration;
import org.heatwright.units.HeatingRate;
import org.heatwright.work.glass.Glass.Elastic;

/**
 * The closed forms of annealing a plate, for a depth: half the thickness where both faces cool, the
 * whole where it lies on a shelf and cools from one face.
 *
 * <p>In a plate whose temperature falls steadily at R the difference from middle (or back) to
 * surface is {@code R L²/(2 kappa)}; frozen in and then evened out it leaves tension in the middle
 * of {@code E alpha R L²/(6 kappa (1 - nu))} and twice that pressure at the surface.
 *
 * @see "derived; the law with the square of the thickness is classical (memory: Adams and
 *     Williamson, The Annealing of Glass, J. Franklin Institute 1920; Shand, Glass Engineering
 *     Handbook, 1958)"
 */
public final class Annealing {

  /** Tension left in the middle that the trade's careful schedules come to, Pa. */
  public static final double USUAL_TENSION_PASCALS = 0.3e6;

  /** Design stress of annealed float, 8 in 1000 break (read: a float-glass bulletin), Pa. */
  public static final double DESIGN_PASCALS = 19e6;

  /** Of the design stress, how much a firing may use: edges are cut and seen by nobody. */
  public static final double SHARE_OF_DESIGN = 0.25;

  private static final double EQUALISE_FACTOR = 1.3;
  private static final double PRACTICE_SECONDS_A_METRE = 30 * 60 / 0.006;

  private Annealing() {}

  /** The fastest steady cooling that leaves no more tension in the middle. */
  public static HeatingRate coolingRate(Elastic glass, double depthMetres, double tensionPascals) {
    return HeatingRate.ofKelvinsPerHour(
        3600
            * 6
            * glass.diffusivitySquareMetresPerSecond()
            * tensionPascals
            / (glass.pascalsPerKelvin() * depthMetres * depthMetres));
  }

  /** The tension that steady cooling leaves in the middle, Pa. */
  public static double tensionPascals(Elastic glass, double depthMetres, HeatingRate rate) {
    return glass.pascalsPerKelvin()
        * rate.kelvinsPerHour()
        / 3600
        * depthMetres
        * depthMetres
        / (6 * glass.diffusivitySquareMetresPerSecond());
  }

  /** Middle (or back) to surface while it cools or warms steadily, K. */
  public static double differenceKelvins(Elastic glass, double depthMetres, HeatingRate rate) {
    return rate.kelvinsPerHour()
        / 3600
        * depthMetres
        * depthMetres
        / (2 * glass.diffusivitySquareMetresPerSecond());
  }

  /**
   * The fastest steady heating whose tension in the middle stays at a stress: the same form, but it
   * goes away with the heating.
   */
  public static HeatingRate heatingRate(Elastic glass, double depthMetres, double tensionPascals) {
    return coolingRate(glass, depthMetres, tensionPascals);
  }

  /** The fastest steady cooling whose tension at the surface, twice the middle's, stays under. */
  public static HeatingRate coldCoolingRate(
      Elastic glass, double depthMetres, double tensionPascals) {
    return coolingRate(glass, depthMetres, tensionPascals / 2);
  }

  /**
   * How much of a sudden drop of the kiln shows as the difference between the mean of a plate and
   * its face, at most, 0 to 0.67: {@code 1/(1.5 + 3.25/Bi - 0.5 exp(-16/Bi))}.
   *
   * @param biot what the face takes over what the glass leads to it: {@code h L/k}, above zero
   * @see "memory: Manson, Behavior of Materials under Conditions of Thermal Stress, NACA TN 2933,
   *     1953; held against our own solution of the plate in a test"
   */
  public static double shareOfDrop(double biot) {
    return 1 / (1.5 + 3.25 / biot - 0.5 * Math.exp(-16 / biot));
  }

  /**
   * From 20 K uneven to 1 K uneven: {@code 1.3 L²/kappa}, the first term of Fourier's series, s.
   */
  public static double equaliseSeconds(Elastic glass, double depthMetres) {
    return EQUALISE_FACTOR * depthMetres * depthMetres / glass.diffusivitySquareMetresPerSecond();
  }

  /**
   * The soak: evened out, and then half an hour for each 6 mm (common practice, no source).
   *
   * @param thicknessMetres what counts as the piece's thickness, m
   * @param depthMetres the depth that goes with it, m
   */
  public static Duration soak(Elastic glass, double thicknessMetres, double depthMetres) {
    double seconds =
        equaliseSeconds(glass, depthMetres) + thicknessMetres * PRACTICE_SECONDS_A_METRE;
    return Duration.ofSeconds(Math.round(seconds));
  }
}
