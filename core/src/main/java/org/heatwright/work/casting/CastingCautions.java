package org.heatwright.work.casting;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.heatwright.material.Origin;
import org.heatwright.mould.Investment.Binder;

/** What can hurt around investment and molten metal. */
public final class CastingCautions {

  private CastingCautions() {}

  /** Powder and breaking out. */
  public static Remark silicaDust() {
    return new Remark(
        "silica-dust",
        "Investment is crystalline silica, which scars the lungs: mix under extraction with a fitted"
            + " respirator, break out wet, wipe wet, never sweep. The US limit is 50 µg/m³ of"
            + " respirable dust over 8 h, less than you can see.",
        Origin.read("pages on the US rule for respirable crystalline silica, 2016"));
  }

  /** Water and metal. */
  public static Remark steamAndMetal() {
    return new Remark(
        "steam-and-metal",
        "Water under molten metal explodes: mould hot and dry all through, tools, moulds for ingots and"
            + " floor dry; face shield, gloves, natural-fibre clothes, nobody opposite the pour.",
        Origin.practice());
  }

  static Remark quench() {
    return new Remark(
        "quench-splash",
        "A quenched mould throws steam and hot slurry: long tongs, face shield, a deep bucket; never"
            + " with metal that is still liquid.",
        Origin.practice());
  }

  static Remark fume(AlloyFamily family, List<String> why) {
    return new Remark(
        "fume",
        "Burnout gives smoke and carbon monoxide, overheated gypsum sulphur dioxide%s: extraction to"
                .formatted(why.isEmpty() ? "" : ", " + String.join(", ", why))
            + " the outdoors, an alarm for carbon monoxide.",
        Origin.practice());
  }

  static List<Remark> of(
      PouringQuestion question, Optional<Proposal> mould, Optional<Proposal> metal) {
    List<Remark> cautions = new ArrayList<>();
    cautions.add(steamAndMetal());
    List<String> fumes = new ArrayList<>();
    if (question.family() == AlloyFamily.BRASS) {
      fumes.add("brass the white fume of zinc (metal-fume fever)");
    } else if (question.family() == AlloyFamily.WHITE_GOLD) {
      fumes.add("alloys with zinc its white fume (metal-fume fever)");
    }
    cautions.add(fume(question.family(), fumes));
    cautions.add(quench());
    cautions.add(silicaDust());
    if (question.binder() == Binder.UNKNOWN) {
      cautions.add(
          new Remark(
              "binder-unknown",
              "The binder is not known; gypsum is taken, which bears less heat. Find out before you pour.",
              Origin.practice()));
    }
    return List.copyOf(cautions);
  }
}
