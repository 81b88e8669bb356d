package org.heatwright.work.sinter;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.heatwright.material.Material;
import org.heatwright.material.Origin;
import org.heatwright.mould.BodyMaterials;
import org.heatwright.numerics.LinearTable;
import org.heatwright.piece.FollowedPiece;
import org.heatwright.piece.Slab;

/**
 * A box full of carbon granules with the pieces in its middle. Sizes are inside.
 *
 * @param wall what it is made of
 * @param wallMetres thickness of its walls, m, 0.3 mm to 25 mm
 * @param widthMetres m, 30 mm to 0.5 m
 * @param depthMetres m, likewise
 * @param heightMetres m, 20 mm to 0.3 m
 */
public record CarbonBox(
    Wall wall, double wallMetres, double widthMetres, double depthMetres, double heightMetres) {

  /** What a box is made of. */
  public enum Wall {
    STEEL,
    CERAMIC
  }

  /** Carbon under and over base-metal pieces, m (read: a supplier's copper-clay instructions). */
  public static final double COVER_METRES = 0.025;

  /** Carbon between pieces, m (the same). */
  public static final double BETWEEN_METRES = 0.013;

  /** Carbon about sterling, m (read: a blog's sterling-clay test, 6 to 13 mm). */
  public static final double STERLING_COVER_METRES = 0.013;

  /** Where a box's own numbers are told from. */
  public static final Origin COVER_ORIGIN =
      Origin.read("a supplier's copper-clay instructions, 25 mm under and over, 13 mm between");

  private static final double STEEL_METRES = 0.001;

  private static final double EMISSIVITY = 0.8;
  private static final double FILM = 8;

  /** How uncertain the carbon's conductivity is, standard deviation of its logarithm. */
  public static final double CARBON_SPREAD = 0.35;

  /** Granules of 1 to 3 mm, loosely filled. */
  public static final Material CARBON =
      new Material(
          "carbon-granules",
          500,
          LinearTable.points(20, 0.15, 300, 0.25, 600, 0.42, 900, 0.70),
          LinearTable.points(20, 850, 400, 1350, 900, 1700),
          List.of(),
          Origin.estimate(
              "bulk density of coconut carbon and heat of carbon from memory; conduction through"
                  + " grains with radiation between them, a third more or less"));

  private static final Material CERAMIC =
      new Material(
          "fired clay",
          2000,
          LinearTable.points(20, 1.2, 900, 1.3),
          LinearTable.points(20, 800, 900, 1100),
          List.of(),
          Origin.estimate("between stoneware and firebrick"));

  public CarbonBox {
    Objects.requireNonNull(wall, "wall");
    if (!(wallMetres >= 0.0003 && wallMetres <= 0.025)) {
      throw new IllegalArgumentException(
          "The box's wall (%s mm) must be 0.3 to 25 mm.".formatted(wallMetres * 1000));
    }
    if (!(widthMetres >= 0.03 && widthMetres <= 0.5)
        || !(depthMetres >= 0.03 && depthMetres <= 0.5)
        || !(heightMetres >= 0.02 && heightMetres <= 0.3)) {
      throw new IllegalArgumentException(
          "The box's inside (%s by %s by %s mm) must be 30 to 500 mm wide and deep and 20 to 300 mm high."
              .formatted(widthMetres * 1000, depthMetres * 1000, heightMetres * 1000));
    }
  }

  /** A sheet-steel box with carbon as practice wants it, in whole centimetres. */
  public static CarbonBox usualFor(ClayFacts facts, double thickestMetres, double longestMetres) {
    double side = up(Math.max(0.08, longestMetres + 2 * BETWEEN_METRES));
    return new CarbonBox(
        Wall.STEEL,
        STEEL_METRES,
        Math.min(0.5, side),
        Math.min(0.5, side),
        up(2 * cover(facts) + thickestMetres));
  }

  /** Carbon that practice wants under and over a piece. */
  public static double cover(ClayFacts facts) {
    return facts.clay() == Clay.STERLING ? STERLING_COVER_METRES : COVER_METRES;
  }

  private static double up(double metres) {
    return Math.ceil(metres * 100 - 1e-9) / 100;
  }

  /** Carbon over a piece in the middle, m; may be below zero: then it does not fit. */
  public double coverMetres(double pieceMetres) {
    return (heightMetres - pieceMetres) / 2;
  }

  /** Longest line across the box's floor, outside, m. */
  public double acrossMetres() {
    return Math.hypot(widthMetres + 2 * wallMetres, depthMetres + 2 * wallMetres);
  }

  public double outerHeightMetres() {
    return heightMetres + 2 * wallMetres;
  }

  /**
   * From the lid to the middle of the piece, as a slab. What comes in through the box's sides is
   * left out and the piece is taken as wide as the box, so that its middle is reckoned late rather
   * than early.
   */
  public Slab slab(ClayFacts facts, double pieceMetres) {
    return new Slab(
        List.of(
            new Slab.Layer(wallMaterial(), wallMetres),
            new Slab.Layer(CARBON, Math.max(1e-4, coverMetres(pieceMetres)), CARBON_SPREAD),
            new Slab.Layer(facts.dense(), pieceMetres / 2)),
        new Slab.Face(EMISSIVITY, FILM),
        Optional.empty());
  }

  /** The box in the kiln; its lid and its floor are heated alike. */
  public FollowedPiece followed(ClayFacts facts, double pieceMetres) {
    Slab slab = slab(facts, pieceMetres);
    return new FollowedPiece(
        "carbon box",
        1,
        2 * (widthMetres + 2 * wallMetres) * (depthMetres + 2 * wallMetres),
        slab,
        List.of(new FollowedPiece.Place("middle", slab.thicknessMetres())));
  }

  /** What its upright walls weigh, kg: they load the kiln besides. */
  public double sideKilograms() {
    return 2
        * (widthMetres + depthMetres)
        * heightMetres
        * wallMetres
        * wallMaterial().densityKilogramsPerCubicMetre();
  }

  /** The upright walls' heat capacity, J/(kg K), at 500 °C. */
  public double sideJoulesPerKilogramKelvin() {
    return wallMaterial().heatCapacityJoulesPerKilogramKelvin().at(500);
  }

  private Material wallMaterial() {
    return wall == Wall.STEEL
        ? BodyMaterials.named("stainless-steel").orElseThrow().material()
        : CERAMIC;
  }
}
