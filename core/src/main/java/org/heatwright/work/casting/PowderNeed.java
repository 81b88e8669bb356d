package org.heatwright.work.casting;

import java.util.List;
import org.heatwright.material.Origin;
import org.heatwright.mould.GypsumInvestment;

/**
 * Powder and water for moulds: slurry volume over what a kilogram of powder makes, {@code v = 1/rho
 * + w}; water is w times the powder.
 *
 * @param slurryCubicMetres of all moulds with the waste, m³
 * @param powderKilograms the range is that of powders
 * @param waterPowder kg of water to a kg of powder
 */
public record PowderNeed(double slurryCubicMetres, Spread powderKilograms, double waterPowder) {

  /** Left in the bowl and on the wall. {@code practice:} */
  public static final double USUAL_WASTE_SHARE = 0.05;

  /** Usual ratio of gypsum-bonded powder, and what is usual at all. {@code practice:} */
  public static final Spread USUAL_WATER_POWDER = new Spread(0.36, 0.40, 0.45);

  public static final Origin WATER_POWDER_ORIGIN = Origin.practice();

  /** Tables of the trade differ from the default mix by a few percent. {@code estimate:} */
  private static final Spread POWDERS = new Spread(0.97, 1, 1.03);

  /**
   * Gypsum-bonded powder of the default mix.
   *
   * @param moulds at least one
   * @param waterPowder kg of water to a kg of powder, 0.2 to 0.8
   * @param wasteShare 0 to 1
   */
  public static PowderNeed gypsum(List<MouldFill> moulds, double waterPowder, double wasteShare) {
    requireRatio(waterPowder);
    double slurry = slurry(moulds, wasteShare);
    double powder = slurry / GypsumInvestment.cubicMetresPerPowder(waterPowder);
    return new PowderNeed(slurry, POWDERS.times(powder), waterPowder);
  }

  /**
   * A powder whose data sheet says what it makes.
   *
   * @param cubicMetresPerKilogram slurry from a kilogram of powder at this ratio, m³/kg; at least
   *     the water's own volume
   */
  public static PowderNeed ofYield(
      List<MouldFill> moulds,
      double waterPowder,
      double wasteShare,
      double cubicMetresPerKilogram) {
    requireRatio(waterPowder);
    if (!(cubicMetresPerKilogram * 1000 > waterPowder && cubicMetresPerKilogram * 1000 <= 3)) {
      throw new IllegalArgumentException(
          "The slurry from a kilogram of powder (%s L) must be more than its water (%s L) and not over 3 L."
              .formatted(cubicMetresPerKilogram * 1000, waterPowder));
    }
    double slurry = slurry(moulds, wasteShare);
    return new PowderNeed(slurry, Spread.exactly(slurry / cubicMetresPerKilogram), waterPowder);
  }

  /** Water, kg; a kilogram is a litre. */
  public Spread waterKilograms() {
    return powderKilograms.times(waterPowder);
  }

  /**
   * What a scale of a certain step can weigh: powder rounded up, water to the nearest step of what
   * that powder takes.
   *
   * @param stepKilograms step of the scale, above zero
   */
  public Weighed weighed(double stepKilograms) {
    if (!(stepKilograms > 0 && stepKilograms <= 1)) {
      throw new IllegalArgumentException(
          "The scale's step (%s g) must be above 0 and not over 1000 g."
              .formatted(stepKilograms * 1000));
    }
    double powder = Math.ceil(powderKilograms.usual() / stepKilograms - 1e-9) * stepKilograms;
    double water = Math.rint(powder * waterPowder / stepKilograms) * stepKilograms;
    return new Weighed(powder, water);
  }

  /**
   * Numbers for the scale.
   *
   * @param powderKilograms never less than needed
   * @param waterKilograms for that powder
   */
  public record Weighed(double powderKilograms, double waterKilograms) {

    /** The ratio that comes of the rounding. */
    public double waterPowder() {
      return waterKilograms / powderKilograms;
    }
  }

  private static void requireRatio(double waterPowder) {
    if (!(waterPowder >= 0.2 && waterPowder <= 0.8)) {
      throw new IllegalArgumentException(
          "The water to powder ratio (%s) must be 0.2 to 0.8; 0.40 means 40 g to 100 g."
              .formatted(waterPowder));
    }
  }

  private static double slurry(List<MouldFill> moulds, double wasteShare) {
    if (moulds.isEmpty()) {
      throw new IllegalArgumentException("There must be at least one mould.");
    }
    if (!(wasteShare >= 0 && wasteShare <= 1)) {
      throw new IllegalArgumentException(
          "The waste (%s %%) must be 0 to 100 %%.".formatted(wasteShare * 100));
    }
    return moulds.stream().mapToDouble(m -> m.slurryCubicMetres(wasteShare)).sum();
  }
}
