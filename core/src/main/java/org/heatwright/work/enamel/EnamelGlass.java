package org.heatwright.work.enamel;

import java.util.Objects;
import org.heatwright.material.Origin;

/**
 * A fired enamel as a solid.
 *
 * @param perKelvin mean linear expansion from 20 °C to where it sets, 1/K
 * @param setsCelsius below this it cannot follow the metal any more, °C
 * @param expansionOrigin where the expansion comes from
 */
public record EnamelGlass(Range perKelvin, Range setsCelsius, Origin expansionOrigin) {

  /** Young's modulus, Pa; float glass 72 GPa (read, a maker's bulletin), with lead less. */
  static final Range YOUNG_PASCALS = Range.of(58e9, 68e9, 75e9);

  /** Estimate: a little under the 0.23 of float glass (read, a maker's bulletin). */
  static final double POISSON_RATIO = 0.22;

  public EnamelGlass {
    Objects.requireNonNull(perKelvin, "perKelvin");
    Objects.requireNonNull(setsCelsius, "setsCelsius");
    Objects.requireNonNull(expansionOrigin, "expansionOrigin");
    if (!(perKelvin.low() > 0 && perKelvin.high() < 30e-6)) {
      throw new IllegalArgumentException(
          "The enamel's expansion (%s 1/K) must be above zero and below 30e-6."
              .formatted(perKelvin.median()));
    }
  }

  /**
   * Enamel that is sold for a metal, where nobody said its expansion: 8 to 10 for steel, 9.5 to 12
   * for copper, silver and gold, 1e-6/K (common practice, no source).
   */
  public static EnamelGlass soldFor(EnamelMetal metal, FusingClass fusing) {
    Range usual =
        metal.equals(EnamelMetals.STEEL)
            ? Range.of(8.0e-6, 9.2e-6, 10.0e-6)
            : Range.of(9.5e-6, 10.8e-6, 12.0e-6);
    return new EnamelGlass(usual, fusing.setsCelsius(), Origin.practice());
  }

  /** By its maker's number: 3 % to either side for the range it is counted over. */
  public static EnamelGlass ofSheet(double perKelvin, FusingClass fusing) {
    return new EnamelGlass(
        Range.about(perKelvin, 0.03), fusing.setsCelsius(), Origin.own("data sheet of the enamel"));
  }

  /** By its oxides. */
  public static EnamelGlass of(OxideGlass oxides, FusingClass fusing) {
    return new EnamelGlass(oxides.range(), fusing.setsCelsius(), OxideGlass.origin());
  }

  Layer layer(double thicknessMetres) {
    return new Layer(thicknessMetres, YOUNG_PASCALS.median(), POISSON_RATIO, perKelvin.median());
  }
}
