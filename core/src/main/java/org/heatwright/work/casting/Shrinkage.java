package org.heatwright.work.casting;

import java.util.Locale;
import org.heatwright.material.Origin;

/**
 * From pattern to casting, linear and net: wax, investment and metal together.
 *
 * @param linearShare how much smaller the casting is than the pattern, 0 to 0.2 of the pattern
 */
public record Shrinkage(Spread linearShare) {

  /** Usual net shrinkage of a lost-wax casting. {@code practice:} */
  public static final Shrinkage USUAL = new Shrinkage(new Spread(0.010, 0.015, 0.020));

  public static final Origin USUAL_ORIGIN = Origin.practice();

  /** Loss of volume while silver, gold and copper solidify, as a share of the liquid. */
  public static final Spread SOLIDIFICATION_SHARE = new Spread(0.04, 0.05, 0.06);

  public static final Origin SOLIDIFICATION_ORIGIN = Origin.memory("ASM Handbook vol. 15, Casting");

  public Shrinkage {
    if (!(linearShare.high() <= 0.2)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "The shrinkage (%.4g %%) must be 0 to 20 %%.",
              linearShare.high() * 100));
    }
  }

  /** A shrinkage that was measured. */
  public static Shrinkage of(double linearShare) {
    return new Shrinkage(Spread.exactly(linearShare));
  }

  /** What a wanted size is multiplied with: {@code 1/(1 - s)}. */
  public Spread factor() {
    return new Spread(
        1 / (1 - linearShare.low()), 1 / (1 - linearShare.usual()), 1 / (1 - linearShare.high()));
  }

  /** Size of the pattern for a casting of a wanted size, in any unit of length. */
  public Spread patternMetres(double castMetres) {
    requireLength(castMetres);
    return factor().times(castMetres);
  }

  /** Size of the casting from a pattern of a known size. */
  public Spread castMetres(double patternMetres) {
    requireLength(patternMetres);
    return new Spread(
        patternMetres * (1 - linearShare.high()),
        patternMetres * (1 - linearShare.usual()),
        patternMetres * (1 - linearShare.low()));
  }

  /**
   * Liquid that sprue and button must feed into a casting while it solidifies, m³: {@code V s/(1 -
   * s)} for a solid volume V.
   */
  public static Spread feedCubicMetres(double castCubicMetres) {
    Spread s = SOLIDIFICATION_SHARE;
    return new Spread(
            s.low() / (1 - s.low()), s.usual() / (1 - s.usual()), s.high() / (1 - s.high()))
        .times(castCubicMetres);
  }

  private static void requireLength(double metres) {
    if (!(metres > 0 && metres <= 10)) {
      throw new IllegalArgumentException(
          "The size (%s mm) must be above 0 and not over 10 000 mm.".formatted(metres * 1000));
    }
  }
}
