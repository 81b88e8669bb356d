package org.heatwright.work.enamel;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Collectors;

/** The oxides that the additive model of expansion knows. */
public enum Oxide {
  SIO2("SiO2", 60.0843, Kind.OTHER, Double.NaN),
  TIO2("TiO2", 79.8658, Kind.OTHER, Double.NaN),
  B2O3("B2O3", 69.6202, Kind.OTHER, Double.NaN),
  K2O("K2O", 94.1960, Kind.ALKALI, Double.NaN),
  PBO("PbO", 223.1994, Kind.EARTH, Double.NaN),
  LI2O("Li2O", 29.8814, Kind.ALKALI, 27),
  NA2O("Na2O", 61.9789, Kind.ALKALI, 39.5),
  MGO("MgO", 40.3044, Kind.EARTH, 6),
  CAO("CaO", 56.0774, Kind.EARTH, 13),
  SRO("SrO", 103.6194, Kind.EARTH, 16),
  BAO("BaO", 153.3264, Kind.EARTH, 20),
  ZNO("ZnO", 81.3794, Kind.EARTH, 5),
  AL2O3("Al2O3", 101.9613, Kind.OTHER, -3),
  ZRO2("ZrO2", 123.2228, Kind.OTHER, -6);

  enum Kind {
    /** R2O. */
    ALKALI,
    /** RO. */
    EARTH,
    OTHER
  }

  private final String formula;
  private final double gramsPerMole;
  private final Kind kind;
  private final double factor;

  Oxide(String formula, double gramsPerMole, Kind kind, double factor) {
    this.formula = formula;
    this.gramsPerMole = gramsPerMole;
    this.kind = kind;
    this.factor = factor;
  }

  public String formula() {
    return formula;
  }

  /** Molar mass, g/mol: from the standard atomic weights, memory. */
  double gramsPerMole() {
    return gramsPerMole;
  }

  Kind kind() {
    return kind;
  }

  /** The constant factor of those that have one (memory: Appen, Chemistry of Glass, 1970/74). */
  double factor() {
    return factor;
  }

  /** The oxide of a formula, capitals or not. */
  public static Optional<Oxide> find(String formula) {
    return Arrays.stream(values())
        .filter(oxide -> oxide.formula.equalsIgnoreCase(formula.strip()))
        .findFirst();
  }

  public static String formulas() {
    return Arrays.stream(values()).map(Oxide::formula).collect(Collectors.joining(", "));
  }
}
