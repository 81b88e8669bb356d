package org.heatwright.work;

import java.util.List;
import java.util.Optional;
import org.heatwright.material.KnownMaterial;
import org.heatwright.material.Material;
import org.heatwright.material.Origin;
import org.heatwright.material.SolidMaterials;
import org.heatwright.numerics.LinearTable;
import org.heatwright.piece.FollowedPiece;
import org.heatwright.piece.FollowedPiece.Place;
import org.heatwright.piece.Slab;
import org.heatwright.piece.Slab.Face;
import org.heatwright.piece.Slab.Layer;
import org.heatwright.work.heattreat.TreatedMetal;
import org.heatwright.work.sinter.CarbonBox;

/** The pieces of a heat treatment, with what they lie on or in, as slabs to be followed. */
final class HeatTreatPieces {

  private static final Material STEEL = known("mild-steel");

  private HeatTreatPieces() {}

  static FollowedPiece of(HeatTreatWork work) {
    double thick = work.piece().thickestMetres();
    Layer metal = new Layer(material(work.metal()), thick);
    Face face = new Face(emissivity(work.metal()), HeatTreatRules.KILN_FILM);
    double area = work.piece().massKilograms() / work.metal().kilogramsPerCubicMetre() / thick;
    return switch (work.setting()) {
      case MESH ->
          piece(work, area, new Slab(List.of(metal), face, Optional.of(face)), "middle", thick / 2);
      case SHELF ->
          piece(work, area, new Slab(List.of(metal), face, Optional.empty()), "middle", thick / 2);
      case BLOCK ->
          piece(
              work,
              area,
              new Slab(
                  List.of(metal, new Layer(steel(), work.settingMetres().orElseThrow())),
                  new Face(HeatTreatRules.BLOCK_EMISSIVITY, HeatTreatRules.KILN_FILM),
                  Optional.empty()),
              "on its block",
              thick / 2);
      case CARBON_BOX -> boxed(work, area, metal);
    };
  }

  private static FollowedPiece boxed(HeatTreatWork work, double area, Layer metal) {
    double half = work.settingMetres().orElseThrow() / 2;
    Layer carbon = new Layer(CarbonBox.CARBON, half, CarbonBox.CARBON_SPREAD);
    Face face = new Face(HeatTreatRules.BOX_EMISSIVITY, HeatTreatRules.KILN_FILM);
    return piece(
        work,
        area,
        new Slab(List.of(carbon, metal, carbon), face, Optional.of(face)),
        "in its box",
        half + metal.thicknessMetres() / 2);
  }

  private static FollowedPiece piece(
      HeatTreatWork work, double area, Slab slab, String place, double depth) {
    return new FollowedPiece("piece", work.pieces(), area, slab, List.of(new Place(place, depth)));
  }

  /** Neither as clean as when it goes in nor as scaled as it may come out: their mean. */
  private static double emissivity(TreatedMetal metal) {
    return Math.sqrt(metal.cleanEmissivity() * metal.scaledEmissivity());
  }

  private static Material material(TreatedMetal metal) {
    return new Material(
        metal.words(),
        metal.kilogramsPerCubicMetre(),
        known(metal.material()).conductivityWattsPerMetreKelvin(),
        LinearTable.constant(metal.joulesPerKilogramKelvin()),
        List.of(),
        Origin.estimate("density of bench tables, conduction of the nearest metal of the library"));
  }

  /** What a block is of. */
  static Material steel() {
    return STEEL;
  }

  private static Material known(String name) {
    return SolidMaterials.known().stream()
        .filter(known -> known.name().equals(name))
        .map(KnownMaterial::material)
        .findFirst()
        .orElseThrow();
  }
}
