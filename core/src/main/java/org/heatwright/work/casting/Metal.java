package org.heatwright.work.casting;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.heatwright.material.FixedPoints;
import org.heatwright.material.Origin;
import org.heatwright.units.Temperature;

/**
 * Metals that casting alloys are made of: density at room temperature and melting point. Alloys are
 * computed with the first density; a second one is another table's, shown beside it.
 */
public enum Metal {
  GOLD(
      "Au", FixedPoints.ORIGIN, FixedPoints.GOLD_CELSIUS, Sources.bench(19320), Sources.crc(19300)),
  SILVER(
      "Ag",
      FixedPoints.ORIGIN,
      FixedPoints.SILVER_CELSIUS,
      Sources.bench(10490),
      Sources.crc(10500)),
  COPPER(
      "Cu", FixedPoints.ORIGIN, FixedPoints.COPPER_CELSIUS, Sources.bench(8960), Sources.crc(8960)),
  ZINC("Zn", FixedPoints.ORIGIN, FixedPoints.ZINC_CELSIUS, Sources.handbook(7140)),
  TIN("Sn", FixedPoints.ORIGIN, FixedPoints.TIN_CELSIUS, Sources.handbook(7290)),
  NICKEL("Ni", Sources.HANDBOOK, 1455, Sources.handbook(8910)),
  PALLADIUM("Pd", Sources.HANDBOOK, 1554.8, Sources.handbook(12020)),
  PLATINUM("Pt", Sources.HANDBOOK, 1768.2, Sources.bench(21450), Sources.bench(21540));

  private final String symbol;
  private final List<QuotedDensity> densities;
  private final Melting melting;

  Metal(String symbol, Origin meltingOrigin, double meltsAtCelsius, QuotedDensity... densities) {
    this.symbol = symbol;
    this.densities = List.of(densities);
    this.melting = Melting.at(Temperature.ofCelsius(meltsAtCelsius), meltingOrigin);
  }

  /** The metal of a chemical symbol ("Au") or a name ("gold"), in any case. */
  public static Optional<Metal> of(String symbolOrName) {
    return Arrays.stream(values())
        .filter(
            m -> m.symbol.equalsIgnoreCase(symbolOrName) || m.name().equalsIgnoreCase(symbolOrName))
        .findFirst();
  }

  public String symbol() {
    return symbol;
  }

  public String words() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** What alloys are computed with, kg/m³. */
  public double kilogramsPerCubicMetre() {
    return densities.get(0).kilogramsPerCubicMetre();
  }

  /** Every table's density. */
  public List<QuotedDensity> densities() {
    return densities;
  }

  /** Melting point of the pure metal. */
  public Melting melting() {
    return melting;
  }
}
