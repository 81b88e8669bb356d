package org.heatwright.work.sinter;

import java.time.Duration;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.heatwright.material.Material;
import org.heatwright.material.Origin;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;

/**
 * What practice and sources say of a clay; {@link Clays} holds them.
 *
 * @param clay which one
 * @param fullKilogramsPerCubicMetre density of its metal without pores, kg/m³
 * @param limit the hottest the chamber may be
 * @param limitBecause what would happen beyond, a clause
 * @param limitOrigin where the limit comes from
 * @param spareKelvins less than that by so much where nobody has checked the display, K
 * @param meltsCelsius where its metal begins to melt, °C
 * @param rows firings of sources and practice, coolest first
 * @param binder how the binder leaves
 * @param shrinkage linear, of the dry length, at the strongest of the rows
 * @param curve what may be believed of its master sintering curve; empty where none holds
 * @param dense its metal, for the flow of heat
 * @param emissivity of the piece in the kiln (estimate)
 */
public record ClayFacts(
    Clay clay,
    double fullKilogramsPerCubicMetre,
    Temperature limit,
    String limitBecause,
    Origin limitOrigin,
    double spareKelvins,
    double meltsCelsius,
    List<Row> rows,
    Binder binder,
    ShrinkageRange shrinkage,
    Optional<CurvePrior> curve,
    Material dense,
    double emissivity) {

  public ClayFacts {
    Objects.requireNonNull(clay, "clay");
    Objects.requireNonNull(limit, "limit");
    rows = List.copyOf(rows);
    Objects.requireNonNull(binder, "binder");
    Objects.requireNonNull(curve, "curve");
  }

  /** How strong a firing leaves the piece. */
  public enum Strength {
    /** Just enough for what is not worn hard. */
    LEAST,
    GOOD,
    /** As strong as this clay gets. */
    BEST
  }

  /**
   * A firing that a source or practice names.
   *
   * @param at temperature of the piece
   * @param hold there
   * @param strength what it is good for
   * @param origin where it comes from
   */
  public record Row(Temperature at, Duration hold, Strength strength, Origin origin) {

    /** The piece at its temperature for its time, after a usual way up. */
    public SinterHeat heat() {
      return SinterHeat.rampAndHold(Clays.USUAL_RATE, at, hold);
    }
  }

  /**
   * How the binder leaves.
   *
   * @param at temperature of the hold on an open shelf
   * @param hold of a piece of up to 3 mm
   * @param rate fastest rise up to it; empty where thin pieces stand any
   * @param from the binder of a piece goes from here, °C
   * @param to to here, °C
   * @param origin where it comes from
   */
  public record Binder(
      Temperature at,
      Duration hold,
      Optional<HeatingRate> rate,
      double fromCelsius,
      double toCelsius,
      Origin origin) {}

  /**
   * Linear shrinkage.
   *
   * @param lowShare of the dry length, above 0
   * @param highShare below 0.5
   * @param origin where it comes from
   */
  public record ShrinkageRange(double lowShare, double highShare, Origin origin) {}

  /**
   * What may be believed of a master sintering curve before anything is measured: every value
   * anywhere in its range.
   *
   * @param lowJoulesPerMole activation energy from here, J/mol
   * @param highJoulesPerMole to here, J/mol
   * @param weak a firing
   * @param weakLowShare after it the density is from here, over full density
   * @param weakHighShare to here
   * @param strong a stronger firing
   * @param strongLowShare after it the density is from here
   * @param strongHighShare to here
   * @param strengthKnown whether the source's strength after 30 min against 2 h at 899 °C is its
   * @param origin where the range of Q comes from
   * @param densityOrigin where the densities come from
   */
  public record CurvePrior(
      double lowJoulesPerMole,
      double highJoulesPerMole,
      SinterHeat weak,
      double weakLowShare,
      double weakHighShare,
      SinterHeat strong,
      double strongLowShare,
      double strongHighShare,
      boolean strengthKnown,
      Origin origin,
      Origin densityOrigin) {}

  /** The strongest firing. */
  public Row best() {
    return rows.stream()
        .max(
            (a, b) ->
                a.strength() != b.strength()
                    ? a.strength().compareTo(b.strength())
                    : Double.compare(a.at().celsius(), b.at().celsius()))
        .orElseThrow();
  }

  /** The least temperature at which the pieces come out sound at all. */
  public Temperature coolest() {
    return rows.get(0).at();
  }
}
