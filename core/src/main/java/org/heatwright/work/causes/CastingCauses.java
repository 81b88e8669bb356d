package org.heatwright.work.causes;

import static org.heatwright.work.causes.Cause.Weight.CLEAR;
import static org.heatwright.work.causes.Cause.Weight.STRONG;
import static org.heatwright.work.causes.Cause.Weight.WEAK;
import static org.heatwright.work.causes.CommonCauses.fair;
import static org.heatwright.work.causes.CommonCauses.often;
import static org.heatwright.work.causes.CommonCauses.rare;
import static org.heatwright.work.causes.CommonCauses.together;
import static org.heatwright.work.causes.CommonCauses.tooCool;
import static org.heatwright.work.causes.CommonCauses.tooHot;
import static org.heatwright.work.causes.Trial.Effort.FIRING;
import static org.heatwright.work.causes.Trial.Effort.LOOK;
import static org.heatwright.work.causes.Trial.Effort.MINUTES;

import java.util.List;
import org.heatwright.material.Origin;
import org.heatwright.work.casting.PouringMethod;
import org.heatwright.work.causes.Cause.Side;

/** Moulds that were burnt out and poured. */
final class CastingCauses {

  private static final Origin CHECKLIST =
      Origin.read("a supplier's checklist for investment casting");
  private static final Origin FORUM = Origin.read("bench-forum threads on burnout and casting");
  private static final Origin CYCLES =
      Origin.read("three cycles of an investment maker by mould size, as quoted on a bench forum");
  private static final Origin GOLDS =
      Origin.read("a jewellery supplier's article on casting karat golds");
  private static final Origin SUPERHEAT =
      Origin.read(
          "a bench-forum thread on casting temperatures: 50 to 100 K over melting; a jewellery"
              + " supplier's article on casting karat golds: 56 to 111 K for vacuum, 28 to 69 K for"
              + " centrifugal casting");
  private static final Origin SUPERHEAT_AND_BUTTON =
      Origin.read(
          SUPERHEAT.text()
              + "; the button as in cast metal: a supplier's article on metal weights, forum and"
              + " trade pages on wax to metal weight");

  private CastingCauses() {}

  /** Little is less than the least that we plan. */
  private static String weighButton() {
    return "Weigh the button: less than %.0f %% of the tree is little, less than %.0f %% where gravity alone fills the mould."
        .formatted(
            100 * PouringMethod.VACUUM.buttonShare().low(),
            100 * PouringMethod.GRAVITY.buttonShare().low());
  }

  private static final Cause TOP_HOLD =
      Cause.of(
              "top-hold-short",
              Side.SCHEDULE,
              CYCLES,
              "The hold at the top was short for the thickest mould: carbon had not burnt out of its core.")
          .by(Clue.INSIDE_SHORT, CLEAR)
          .also(Clue.PLAN_SHORT, CLEAR)
          .also(Clue.HOLD_SHORT, CLEAR)
          .unless(Clue.HEAT_AWAY, CLEAR)
          .unless(Clue.PEAK_BELOW, WEAK)
          .trial(LOOK, "Break a mould: white to the core is burnt out, grey or black is not.")
          .change("Hold a quarter longer at the top.", Edit.times(Edit.What.TOP_HOLD, 1.25));

  private static final Cause AIR =
      Cause.of(
              "little-air",
              Side.HANDLING,
              CHECKLIST,
              "Little air came to the moulds: a shut vent, moulds flat on the floor, or too many of them.")
          .by(Clue.AIR_SHUT, CLEAR)
          .also(Clue.CROWDED, CLEAR)
          .trial(
              LOOK,
              "See whether soot hangs on the door and the vent, and whether the moulds stood on props.")
          .change(
              "Stand the moulds on props, leave the vent open until the top hold has begun, and load fewer.");

  private static final Cause RESIN =
      Cause.of(
              "resin-pattern",
              Side.MATERIAL,
              Origin.read(
                  "a symposium paper on casting printed resin: ash from incomplete burning"),
              "Printed resin burns later and leaves more than wax does.")
          .wants(Clue.RESIN, CLEAR)
          .trial(LOOK, "See whether wax patterns of the same firing came out clean.")
          .trial(FIRING, "Burn out one resin and one wax pattern in the same kiln.")
          .change(
              "Hold half as long again at the top, with more air and smaller moulds.",
              Edit.times(Edit.What.TOP_HOLD, 1.5));

  private static final Cause CORE_HOT =
      Cause.of(
              "core-still-hot",
              Side.SCHEDULE,
              CHECKLIST,
              "The mould's core was hotter than the display when it was poured: it had not had time to come down.")
          .by(Clue.OUT_EARLY, STRONG)
          .by(Clue.INSIDE_HOT, CLEAR)
          .also(Clue.PLAN_SHORT, WEAK)
          .trial(
              LOOK,
              "Look at the core's curve for the minute of the pour on the page of what happens inside.")
          .change(
              "Hold longer at the pour temperature before the first mould is drawn.",
              Edit.times(Edit.What.LAST_HOLD, 1.5));

  private static final Cause MOULD_HOT =
      Cause.of(
              "mould-hot",
              Side.SCHEDULE,
              GOLDS,
              "The pour temperature of the mould is high for this section.")
          .also(Clue.INSIDE_HOT, WEAK)
          .also(Clue.METAL_HOT, WEAK)
          .unless(Clue.OUT_EARLY, WEAK)
          .trial(FIRING, "Pour two of the same tree, one 25 K cooler.")
          .change("Pour into a mould about 25 K cooler.", Edit.target(Edit.What.LAST_TARGET, -25));

  private static final Cause MOULD_COOL =
      Cause.of(
              "mould-cool",
              Side.SCHEDULE,
              GOLDS,
              "The mould was cool for so thin a section: the metal froze on the way.")
          .by(Clue.POUR_SLOW, CLEAR)
          .unless(Clue.METAL_COOL, WEAK)
          .trial(
              LOOK,
              "See where it stops: rounded edges far from the sprue speak for cold metal or a cold mould.")
          .trial(FIRING, "Pour two of the same tree, one 25 K hotter.")
          .change("Pour into a mould about 25 K hotter.", Edit.target(Edit.What.LAST_TARGET, 25));

  private static final Cause POUR_SLOW =
      Cause.of(
              "pour-slow",
              Side.HANDLING,
              Origin.estimate("the cooling of moulds in open air by our conduction model"),
              "The mould lost heat between the kiln and the pour: a small one has about two minutes.")
          .needs(Clue.POUR_SLOW)
          .trial(LOOK, "Compare the seconds outside with the pour window on the card.")
          .change(
              "Have the metal ready before the mould is drawn; change nothing in the schedule.");

  private static final Cause METAL_COOL =
      Cause.of(
              "metal-cool",
              Side.HANDLING,
              SUPERHEAT_AND_BUTTON,
              "The metal was too cool, or too little to press itself into the thin parts.")
          .needs(Clue.METAL_COOL)
          .trial(LOOK, weighButton())
          .change(
              "Weigh more metal and give it 50 to 100 K above its melting; leave the mould as it is.");

  private static final Cause METAL_HOT =
      Cause.of(
              "metal-hot",
              Side.HANDLING,
              SUPERHEAT,
              "The metal was overheated: it takes up gas, and attacks the mould.")
          .needs(Clue.METAL_HOT)
          .trial(
              LOOK,
              "See whether the metal smoked or boiled before the pour; measure it with an immersed tip if there is one.")
          .caution(
              "Metal that fumes is to be kept away from: zinc and cadmium fume harms. Extraction on, nothing breathed over the crucible.")
          .change(
              "Pour the metal cooler, 50 to 100 K above its melting; leave the mould as it is.");

  private static final Cause REUSED =
      Cause.of(
              "reused-metal",
              Side.MATERIAL,
              Origin.practice(),
              "Metal that was cast before brings oxide and gas with it.")
          .needs(Clue.REUSED_METAL)
          .trial(FIRING, "Pour one tree of new metal into a mould of the same firing.")
          .change("Use half new metal at least, cleaned and cut small.");

  private static final Cause BINDER =
      Cause.of(
              "binder-broke-down",
              Side.SCHEDULE,
              Origin.read(
                  "abstract of a thermal analysis of gypsum-bonded investments; a supplier's checklist"),
              "The mould got too hot: gypsum breaks down there, the sooner where carbon is left, and its sulphur gas spoils the metal.")
          .by(Clue.PEAK_ABOVE, CLEAR)
          .by(Clue.INSIDE_HOT, CLEAR)
          .also(Clue.PLAN_HOT, CLEAR)
          .trial(LOOK, "Smell a broken mould: sulphur speaks for it. A dark, rough skin does too.")
          .caution("Sulphur gas harms lungs: open the kiln under extraction.")
          .change("Fire the top 20 K cooler.", Edit.target(Edit.What.TOP_TARGET, -20));

  private static final Cause CARBON_GAS =
      Cause.of(
              "carbon-left",
              Side.SCHEDULE,
              FORUM,
              "Carbon was left in the mould: it shuts the pores through which the air should leave, and makes gas.")
          .by(Clue.INSIDE_SHORT, CLEAR)
          .also(Clue.HOLD_SHORT, CLEAR)
          .also(Clue.HEAT_AWAY, CLEAR)
          .also(Clue.RESIN, WEAK)
          .also(Clue.AIR_SHUT, CLEAR)
          .trial(LOOK, "Break a mould: white to the core is burnt out, grey or black is not.")
          .change("Hold a quarter longer at the top.", Edit.times(Edit.What.TOP_HOLD, 1.25));

  private static final Cause FEED =
      Cause.of(
              "thin-feed",
              Side.HANDLING,
              Origin.practice(),
              "The sprue froze before the part that it feeds, which then shrank with nothing to fill it.")
          .by(Clue.THIN_FEED, CLEAR)
          .trial(
              LOOK,
              "Look where the holes are: near the sprue or in the thickest part, with a ragged face, is shrinkage.")
          .change(
              "Feed the thickest part, with a sprue thicker than it; leave the schedule as it is.");

  private static final Cause RISE =
      Cause.of(
              "rise-fast",
              Side.SCHEDULE,
              Origin.read(
                  "manual of a small casting machine; bench reports of moulds that blew out"),
              "The mould was heated faster than its water and its silica bear.")
          .by(Clue.ROSE_FAST, STRONG)
          .also(Clue.PLAN_FAST, CLEAR)
          .by(Clue.INSIDE_STRAINED, CLEAR)
          .unless(Clue.KEYED_FASTER, WEAK)
          .trial(LOOK, "Look at the log below 300 °C, and at 573 °C, for the fastest hour.")
          .change("Heat at two thirds of the rate.", Edit.times(Edit.What.RISES, 0.66));

  private static final Cause DRIED =
      Cause.of(
              "dried-out",
              Side.HANDLING,
              Origin.read(
                  "a bench blog on fast burnout; bench-forum threads on damp and dry moulds"),
              "The mould had dried half out before the heat: such moulds crack.")
          .needs(Clue.DRIED_OUT)
          .trial(LOOK, "Ask how many hours it stood, and whether it was kept in a bag.")
          .change(
              "Keep moulds in a bag, and wet one that has stood for days for about ten seconds; leave the schedule.");

  private static final Cause GREEN =
      Cause.of(
              "stood-short",
              Side.HANDLING,
              FORUM,
              "The mould went into the heat before it had set hard.")
          .needs(Clue.STOOD_SHORT)
          .trial(
              LOOK, "Ask when it was poured: one to two hours is the least, more in damp weather.")
          .change("Let it stand for two hours before the heat; leave the schedule.");

  private static final Cause COOLED_AGAIN =
      Cause.of(
              "cooled-and-reheated",
              Side.KILN,
              FORUM,
              "The mould cooled on the way and was heated again: silica turns at 573 °C and near 250 °C, and shakes it each time.")
          .needs(Clue.HEAT_AWAY)
          .trial(LOOK, "Look in the log how far the display fell, and whether it crossed 573 °C.")
          .change("Find out what cut the power; leave the schedule as it is.");

  private static final Cause KNOCKED =
      Cause.of(
              "knocked",
              Side.HANDLING,
              Origin.practice(),
              "The mould was knocked, or set down hard on steel.")
          .needs(Clue.KNOCKED)
          .trial(LOOK, "Look for a crack that begins at a dent of the flask or at its foot.")
          .change("Carry the mould with both jaws under it; leave the schedule as it is.");

  private static final Cause MIX =
      Cause.of(
              "mix-off",
              Side.HANDLING,
              Origin.practice(),
              "The slurry held air, was thin, or had begun to set: bubbles cling to the pattern, and the face is weak.")
          .by(Clue.MIX_OFF, CLEAR)
          .trial(LOOK, "Look at the pattern side of a broken mould for round hollows.")
          .trial(
              MINUTES,
              "Weigh powder and water of the next mix, and time it from first water to the end of the vacuum.")
          .change(
              "Weigh powder and water, keep to the working time and pull vacuum twice; leave the schedule.");

  private static final Cause WETTING =
      Cause.of(
              "unwetted-pattern",
              Side.HANDLING,
              Origin.practice(),
              "The slurry did not wet the pattern: grease or powder on it holds air.")
          .by(Clue.UNCLEAN, CLEAR)
          .trial(
              LOOK,
              "Let water run over a pattern of the same batch: drops that stand speak for grease.")
          .change("Wash patterns and let them dry before they are invested; leave the schedule.");

  private static final Cause WATER_BOILED =
      Cause.of(
              "boiling-steam",
              Side.SCHEDULE,
              FORUM,
              "Water boiled hard in the mould and roughened its face.")
          .by(Clue.ROSE_FAST, CLEAR)
          .by(Clue.INSIDE_STRAINED, CLEAR)
          .also(Clue.PLAN_FAST, CLEAR)
          .trial(LOOK, "Look for a rough skin all over the deep parts, with no grit in the metal.")
          .change(
              "Heat the first ramp at two thirds of its rate.",
              Edit.times(Edit.What.FIRST_RISE, 0.66));

  private static final Cause CRUMBS =
      Cause.of(
              "mould-crumbs",
              Side.HANDLING,
              Origin.practice(),
              "Crumbs of the mould came loose: sharp corners at the sprue, a crack, or a rough hand.")
          .by(Clue.KNOCKED, CLEAR)
          .also(Clue.ROSE_FAST, WEAK)
          .also(Clue.DRIED_OUT, WEAK)
          .trial(
              LOOK,
              "Look for white grit in the metal and for the hollow where it is missing in the mould.")
          .change(
              "Round the corner where the sprue meets the button, and turn the mould over gently before the pour.");

  private static final Cause ASH =
      Cause.of(
              "ash-left",
              Side.MATERIAL,
              FORUM,
              "The pattern left ash: printed resin and leaves, twigs and the like do.")
          .by(Clue.RESIN, CLEAR)
          .also(Clue.AIR_SHUT, WEAK)
          .trial(
              LOOK,
              "Burn a little of the pattern on a spoon under extraction, and see what is left.")
          .change(
              "Hold half as long again at the top, with more air.",
              Edit.times(Edit.What.TOP_HOLD, 1.5));

  private static final Cause DIRT =
      Cause.of(
              "dirty-melt",
              Side.HANDLING,
              Origin.practice(),
              "Flux, slag or crucible grit went in with the metal.")
          .by(Clue.REUSED_METAL, WEAK)
          .also(Clue.UNCLEAN, CLEAR)
          .trial(LOOK, "Look for glassy or dark specks, and at the crucible's lip.")
          .change("Skim the melt and pour from a clean lip; leave the schedule.");

  static List<Suspect> of(String found) {
    return switch (found) {
      case "incomplete" ->
          together(
              List.of(
                  often(MOULD_COOL),
                  fair(METAL_COOL),
                  fair(POUR_SLOW),
                  fair(CARBON_GAS),
                  rare(FEED),
                  fair(CommonCauses.KEYED_SHORT)),
              tooCool());
      case "porous" ->
          together(
              List.of(
                  often(CORE_HOT),
                  fair(BINDER),
                  fair(CARBON_GAS),
                  fair(METAL_HOT),
                  fair(REUSED),
                  fair(MOULD_HOT)),
              tooHot());
      case "shrinkage" ->
          List.of(
              often(FEED),
              fair(MOULD_HOT),
              fair(CORE_HOT),
              fair(METAL_HOT),
              fair(CommonCauses.READS_LOW),
              rare(CommonCauses.UNIT_HOT),
              fair(CommonCauses.KEYED_HOT));
      case "flash" ->
          List.of(
              often(RISE),
              fair(DRIED),
              fair(GREEN),
              fair(COOLED_AGAIN),
              fair(KNOCKED),
              fair(MIX),
              fair(CommonCauses.KEYED_FAST));
      case "bubbles" -> List.of(often(MIX), fair(WETTING), rare(CommonCauses.NEW_BATCH));
      case "rough" ->
          List.of(
              fair(BINDER),
              fair(WATER_BOILED),
              fair(MIX),
              fair(METAL_HOT),
              fair(CARBON_GAS),
              fair(CORE_HOT),
              rare(CommonCauses.UNIT_HOT),
              fair(CommonCauses.KEYED_HOT),
              fair(CommonCauses.READS_LOW));
      case "inclusions" ->
          List.of(fair(CRUMBS), fair(ASH), fair(DIRT), fair(RISE), rare(DRIED), rare(MIX));
      case "carbon" ->
          together(
              List.of(
                  often(TOP_HOLD),
                  fair(AIR),
                  fair(RESIN),
                  fair(CommonCauses.KEYED_SHORT),
                  rare(CommonCauses.DOOR_OPENED)),
              tooCool());
      case "crack" ->
          List.of(
              often(RISE),
              fair(DRIED),
              fair(GREEN),
              fair(COOLED_AGAIN),
              fair(KNOCKED),
              fair(MIX),
              fair(CommonCauses.KEYED_FAST),
              rare(CommonCauses.DOOR_OPENED),
              rare(CommonCauses.POWER_DOWN));
      case "other" -> CommonCauses.ofAnything();
      default -> List.of();
    };
  }
}
