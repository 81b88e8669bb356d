package org.heatwright.work.sinter;

/**
 * One powder's density as a function of the work of sintering alone: {@code D = D0 + (1 - D0)/(1 +
 * exp(-(log10 Theta - x0)/b))}. Immutable.
 *
 * <p>It holds for one powder, one green density and one mechanism; where liquid forms, or where
 * carbon or oxygen are in the way, it does not.
 *
 * @param activationJoulesPerMole Q, J/mol, 40e3 to 600e3
 * @param middleLogSecondsPerKelvin x0: log10 of Theta in s/K where half of the way is done
 * @param decadesFactor b, decades of Theta for a factor of e, above zero
 * @param greenShare D0: density before sintering over full density, above 0 and below 1
 * @see "memory: Su and Johnson, J. Am. Ceram. Soc. 79 (1996) 3211; sigmoid and its line: abstract
 *     of Linearization of Master Sintering Curve, J. Am. Ceram. Soc. 92 (2009) 1403, read"
 */
public record MasterSinteringCurve(
    double activationJoulesPerMole,
    double middleLogSecondsPerKelvin,
    double decadesFactor,
    double greenShare) {

  public MasterSinteringCurve {
    if (!(activationJoulesPerMole >= 40e3 && activationJoulesPerMole <= 600e3)) {
      throw new IllegalArgumentException(
          "The activation energy (%s kJ/mol) must be 40 to 600 kJ/mol."
              .formatted(activationJoulesPerMole / 1000));
    }
    if (!(decadesFactor > 0 && Double.isFinite(decadesFactor))
        || !Double.isFinite(middleLogSecondsPerKelvin)
        || !(greenShare > 0 && greenShare < 1)) {
      throw new IllegalArgumentException(
          "The sintering curve (middle %s, width %s, green density %s) needs finite values, a width above zero and a green density between 0 and 1."
              .formatted(middleLogSecondsPerKelvin, decadesFactor, greenShare));
    }
  }

  /**
   * The curve of a powder that has two densities after two firings.
   *
   * @throws IllegalArgumentException unless the second firing is the stronger and its density is
   *     the greater, all between the green density and full
   */
  static MasterSinteringCurve through(
      double activationJoulesPerMole,
      double greenShare,
      SinterHeat weak,
      double weakShare,
      SinterHeat strong,
      double strongShare) {
    double weakLog = weak.logTheta(activationJoulesPerMole);
    double strongLog = strong.logTheta(activationJoulesPerMole);
    double weakLine = line(weakShare, greenShare);
    double strongLine = line(strongShare, greenShare);
    if (!(strongLog > weakLog) || !(strongLine > weakLine)) {
      throw new IllegalArgumentException(
          "The second of two firings must be the stronger and leave the denser piece.");
    }
    double width = (strongLog - weakLog) / (strongLine - weakLine);
    return new MasterSinteringCurve(
        activationJoulesPerMole, weakLog - width * weakLine, width, greenShare);
  }

  /** Density over full density after a firing. */
  public double densityShare(SinterHeat heat) {
    return densityShareAt(heat.logTheta(activationJoulesPerMole));
  }

  /** Density over full density at log10 of Theta in s/K. */
  public double densityShareAt(double logSecondsPerKelvin) {
    return greenShare
        + (1 - greenShare)
            / (1 + Math.exp(-(logSecondsPerKelvin - middleLogSecondsPerKelvin) / decadesFactor));
  }

  /**
   * {@code ln((D - D0)/(1 - D))}: a straight line over log10 Theta, zero at x0, slope 1/b.
   *
   * @param densityShare above the green density and below 1
   */
  static double line(double densityShare, double greenShare) {
    if (!(densityShare > greenShare && densityShare < 1)) {
      throw new IllegalArgumentException(
          "The density (%s of full) must be above the green density (%s) and below 1."
              .formatted(densityShare, greenShare));
    }
    return Math.log((densityShare - greenShare) / (1 - densityShare));
  }
}
