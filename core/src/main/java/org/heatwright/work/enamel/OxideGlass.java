package org.heatwright.work.enamel;

import java.util.EnumMap;
import java.util.Map;
import org.heatwright.material.Origin;

/**
 * A glass by its oxides, and the linear expansion that Appen's additive model gives it: {@code α(20
 * to 400 °C) = 1e-8 Σ a p}, p in mol %. Immutable.
 *
 * <p>It is for silicate glasses within {@link #LEAST_SILICA_PERCENT} and the other limits here; a
 * glass outside, or with an oxide that has no factor, is refused, because a sum that leaves a part
 * out is no answer.
 *
 * @see "read: Ceramic Industry, Understanding Glass Formation, notes on Appen's factors (the rules
 *     for SiO2, TiO2, K2O, B2O3, PbO); memory: Appen, Chemistry of Glass, 1970/74 (the constant
 *     factors)"
 */
public final class OxideGlass {

  /** Least silica, mol %. Estimate: below it the glass is no silicate glass of practice. */
  public static final double LEAST_SILICA_PERCENT = 40;

  /** Most boron oxide, lead oxide, titania, alumina, zirconia, mol %. Estimates. */
  private static final Map<Oxide, Double> MOST_PERCENT =
      new EnumMap<>(
          Map.of(
              Oxide.B2O3,
              30.0,
              Oxide.PBO,
              50.0,
              Oxide.TIO2,
              25.0,
              Oxide.AL2O3,
              15.0,
              Oxide.ZRO2,
              10.0));

  /** The oxides must sum up to 100 % within so much; they are then taken to 100. */
  public static final double SUM_TOLERANCE_PERCENT = 3;

  /** How far the sum is off, half the width of nine in ten, as a share: two glasses, tested. */
  public static final double ERROR_SHARE = 0.05;

  private final Map<Oxide, Double> molPercent;

  private OxideGlass(Map<Oxide, Double> parts, String unit) {
    double sum = 0;
    for (Map.Entry<Oxide, Double> part : parts.entrySet()) {
      if (!(part.getValue() >= 0 && part.getValue() <= 100)) {
        throw new IllegalArgumentException(
            "%s is %s %% and must be 0 to 100 %%."
                .formatted(part.getKey().formula(), part.getValue()));
      }
      sum += part.getValue();
    }
    if (!(Math.abs(sum - 100) <= SUM_TOLERANCE_PERCENT)) {
      throw new IllegalArgumentException(
          "The oxides sum up to %.1f %s and must come within %.0f of 100: an oxide left out would be wrong."
              .formatted(sum, unit, SUM_TOLERANCE_PERCENT));
    }
    boolean mass = unit.startsWith("mass");
    Map<Oxide, Double> moles = new EnumMap<>(Oxide.class);
    double all = 0;
    for (Map.Entry<Oxide, Double> part : parts.entrySet()) {
      double mole = mass ? part.getValue() / part.getKey().gramsPerMole() : part.getValue();
      moles.put(part.getKey(), mole);
      all += mole;
    }
    double total = all;
    moles.replaceAll((oxide, mole) -> 100 * mole / total);
    molPercent = moles;
    refuseOutsideTheModel();
  }

  /** By mol %. */
  public static OxideGlass ofMolPercent(Map<Oxide, Double> parts) {
    return new OxideGlass(parts, "mol %");
  }

  /** By mass %. */
  public static OxideGlass ofMassPercent(Map<Oxide, Double> parts) {
    return new OxideGlass(parts, "mass %");
  }

  private void refuseOutsideTheModel() {
    if (molPercent(Oxide.SIO2) < LEAST_SILICA_PERCENT) {
      throw new IllegalArgumentException(
          "SiO2 is %.1f mol %%; the additive model holds from %.0f up: use the maker's expansion."
              .formatted(molPercent(Oxide.SIO2), LEAST_SILICA_PERCENT));
    }
    MOST_PERCENT.forEach(
        (oxide, most) -> {
          if (molPercent(oxide) > most) {
            throw new IllegalArgumentException(
                "%s is %.1f mol %%; the additive model holds up to %.0f: use the maker's expansion."
                    .formatted(oxide.formula(), molPercent(oxide), most));
          }
        });
    double silica = molPercent(Oxide.SIO2);
    if (molPercent(Oxide.TIO2) > 0 && !(silica >= 50 && silica <= 80)) {
      throw new IllegalArgumentException(
          "With TiO2 the additive model holds for 50 to 80 mol %% SiO2, not %.1f: use the maker's expansion."
              .formatted(silica));
    }
    if (molPercent(Oxide.B2O3) > 0 && boronShare() < 0) {
      throw new IllegalArgumentException(
          "There is more Al2O3 than alkalis and earths, where boron has no factor: use the maker's expansion.");
    }
  }

  /** Its share of an oxide, mol %. */
  public double molPercent(Oxide oxide) {
    return molPercent.getOrDefault(oxide, 0.0);
  }

  /** Linear expansion, mean of 20 to 400 °C, 1/K. */
  public double perKelvin() {
    double sum = 0;
    for (Map.Entry<Oxide, Double> part : molPercent.entrySet()) {
      sum += part.getValue() * factor(part.getKey());
    }
    return 1e-8 * sum;
  }

  /** The same with its error. */
  public Range range() {
    return Range.about(perKelvin(), ERROR_SHARE);
  }

  public static Origin origin() {
    return Origin.derived(
        "Appen's additive factors over the oxides, constant factors from memory; good to 5 % on two"
            + " published glasses");
  }

  private double factor(Oxide oxide) {
    double silica = molPercent(Oxide.SIO2);
    return switch (oxide) {
      case SIO2 -> silica >= 67 ? 10.5 - 0.1 * silica : 3.8;
      case TIO2 -> 10.5 - 0.15 * silica;
      case K2O -> molPercent(Oxide.NA2O) > 1 ? 46.5 : 42.5;
      case B2O3 -> boronShare() > 4 ? -5.0 : -1.25 * boronShare();
      case PBO -> leadFactor();
      default -> oxide.factor();
    };
  }

  /** Oxygen that alkalis and earths have over for boron, for each boron oxide. */
  private double boronShare() {
    return (sum(Oxide.Kind.ALKALI) + sum(Oxide.Kind.EARTH) - molPercent(Oxide.AL2O3))
        / molPercent(Oxide.B2O3);
  }

  private double leadFactor() {
    double alkali = sum(Oxide.Kind.ALKALI);
    double others = sum(Oxide.Kind.EARTH) + sum(Oxide.Kind.OTHER) - molPercent(Oxide.SIO2);
    return alkali < 3 || others / alkali > 0.33 ? 13 : 11.5 + 0.5 * alkali;
  }

  private double sum(Oxide.Kind kind) {
    return molPercent.entrySet().stream()
        .filter(part -> part.getKey().kind() == kind)
        .mapToDouble(Map.Entry::getValue)
        .sum();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof OxideGlass glass && glass.molPercent.equals(molPercent);
  }

  @Override
  public int hashCode() {
    return molPercent.hashCode();
  }

  @Override
  public String toString() {
    return molPercent.toString();
  }
}
