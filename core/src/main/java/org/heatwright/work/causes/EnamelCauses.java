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
import org.heatwright.work.causes.Cause.Side;

/** Enamelled pieces. */
final class EnamelCauses {

  private static final Origin STEEL =
      Origin.read(
          "a blog on steel enamel samples: 826 °C set, 750 °C on opening, about 5 min to recover");
  private static final Origin TEACHING =
      Origin.read("an enamel teaching site's first steps and samples");
  private static final Origin HARDNESS =
      Origin.read("tests of hard and soft enamels in a guild of enamellers' journal");
  private static final Origin SCHOOLS =
      Origin.read("bench-forum thread on watching an enamel firing: steps of 10 to 15 s");
  private static final Origin EGG = Origin.read("an enameller's page on a sterling egg");
  private static final Origin STRIP =
      Origin.derived("stress of a two-layer strip by the expansions of enamel and metal");

  private EnamelCauses() {}

  private static final Cause PULLED =
      Cause.of(
              "pulled-before-recovery",
              Side.HANDLING,
              STEEL,
              "The piece came out before the kiln had come back to its heat after the door: the seconds were counted in a cooler chamber.")
          .by(Clue.NOT_RECOVERED, STRONG)
          .by(Clue.OUT_EARLY, CLEAR)
          .trial(
              LOOK,
              "Look in the log, or at the display: how many seconds until it is back after the door was shut?")
          .change(
              "Count from the moment at which the display is back, or leave it 15 s longer; leave the target as it is.");

  private static final Cause TIME_SHORT =
      Cause.of(
              "time-short",
              Side.HANDLING,
              SCHOOLS,
              "The piece is heavier, or its trivet is, than the seconds allowed for.")
          .by(Clue.THICK, CLEAR)
          .also(Clue.INSIDE_SHORT, CLEAR)
          .unless(Clue.NOT_RECOVERED, WEAK)
          .trial(FIRING, "Fire it again and look through the door each 15 s.")
          .change("Leave it 15 s longer, and look; leave the target as it is.");

  private static final Cause SET_COOL =
      Cause.of(
              "working-heat-low",
              Side.SCHEDULE,
              HARDNESS,
              "The working heat is low for so hard an enamel.")
          .also(Clue.NEW_BATCH, WEAK)
          .also(Clue.INSIDE_SHORT, WEAK)
          .trial(
              FIRING,
              "Fire test tiles of this enamel for the usual time at this heat and 20 K above.")
          .change("Work 20 K hotter.", Edit.target(Edit.What.TOP_TARGET, 20));

  private static final Cause TIME_LONG =
      Cause.of(
              "time-long",
              Side.HANDLING,
              SCHOOLS,
              "The piece stayed in for longer than its enamel needs.")
          .by(Clue.OUT_LATE, CLEAR)
          .also(Clue.INSIDE_HOT, CLEAR)
          .trial(FIRING, "Fire a test tile and take it out 15 s sooner.")
          .change("Take it out 15 s sooner; leave the target as it is.");

  private static final Cause SET_HOT =
      Cause.of(
              "working-heat-high",
              Side.SCHEDULE,
              HARDNESS,
              "The working heat is high for so soft an enamel or so thin a sheet.")
          .also(Clue.PLAN_HOT, CLEAR)
          .also(Clue.INSIDE_HOT, CLEAR)
          .also(Clue.NEW_BATCH, WEAK)
          .trial(
              FIRING,
              "Fire test tiles of this enamel for the usual time at this heat and 20 K below.")
          .change("Work 20 K cooler.", Edit.target(Edit.What.TOP_TARGET, -20));

  private static final Cause SOFT_BELOW =
      Cause.of(
              "soft-below-hard",
              Side.MATERIAL,
              HARDNESS,
              "A softer enamel lies below a harder one and moves when the upper one fuses.")
          .also(Clue.NEW_BATCH, CLEAR)
          .trial(LOOK, "Compare the hardness of the layers on the makers' sheets.")
          .trial(FIRING, "Fire both on one test tile, once in each order.")
          .change("Put the harder enamel below, and fire each later coat as hot or cooler.");

  private static final Cause SCALE =
      Cause.of(
              "scale-under-enamel",
              Side.HANDLING,
              TEACHING,
              "Scale formed under the first coat, or the metal was greasy: the enamel has nothing to hold to.")
          .by(Clue.UNCLEAN, CLEAR)
          .also(Clue.NOT_RECOVERED, WEAK)
          .trial(LOOK, "Look at the bare patch: dark scale, or bright metal that beads water?")
          .change(
              "Clean until water spreads, and let the first coat fuse in one go; leave the schedule.");

  private static final Cause THICK =
      Cause.of("coat-thick", Side.HANDLING, Origin.practice(), "The coat was thick or uneven.")
          .by(Clue.THICK_LAYER, CLEAR)
          .trial(MINUTES, "Weigh the next piece before and after the coat, and divide by its area.")
          .change("Lay thinner coats, and one more of them.");

  private static final Cause DAMP =
      Cause.of(
              "put-in-damp",
              Side.HANDLING,
              Origin.practice(),
              "The enamel was still damp or held its binder when it met the heat, and steam broke through.")
          .by(Clue.DAMP, CLEAR)
          .trial(LOOK, "Hold the next piece before the open kiln: no vapour may rise from it.")
          .change(
              "Let it dry at the kiln's mouth until nothing rises any more; leave the schedule.");

  private static final Cause DUST =
      Cause.of(
              "dirty-enamel",
              Side.MATERIAL,
              Origin.practice(),
              "Dust, fine powder or fibres in the enamel burned and left gas.")
          .by(Clue.UNCLEAN, CLEAR)
          .also(Clue.NEW_BATCH, WEAK)
          .trial(FIRING, "Fire one tile of washed and one of unwashed enamel.")
          .change("Wash the enamel until the water stays clear; leave the schedule.");

  private static final Cause FIRED_OFTEN =
      Cause.of(
              "fired-often",
              Side.MATERIAL,
              EGG,
              "The piece has been fired often: the pure skin of sterling is used up, and gas comes out of the metal.")
          .by(Clue.MANY_FIRINGS, CLEAR)
          .also(Clue.PEAK_ABOVE, WEAK)
          .trial(
              LOOK,
              "Count the firings of this piece: eight to ten are much for sterling, twelve for copper.")
          .change("Stop re-firing this piece; plan the next one in fewer coats.");

  private static final Cause MISFIT =
      Cause.of(
              "expansion-misfit",
              Side.MATERIAL,
              STRIP,
              "Enamel and metal shrink by different amounts, so the enamel stands under tension or too much pressure.")
          .by(Clue.NEW_BATCH, CLEAR)
          .also(Clue.PLAN_HOT, WEAK)
          .trial(
              LOOK,
              "See which way it broke: fine lines mean tension, chips that jump off mean pressure.")
          .trial(FIRING, "Enamel a thin strip on one side and see which way it bows.")
          .change("Choose an enamel whose expansion fits this metal; leave the schedule.");

  private static final Cause NO_COUNTER =
      Cause.of(
              "no-counter-enamel",
              Side.HANDLING,
              TEACHING,
              "The back carries no enamel, or much less than the front, so the piece is pulled to one side.")
          .wants(Clue.NO_COUNTER, CLEAR)
          .trial(LOOK, "Measure the enamel front and back.")
          .change(
              "Give the back as much enamel as the front, before the first coat of the front is finished.");

  private static final Cause COOLED_HARD =
      Cause.of(
              "cooled-hard",
              Side.HANDLING,
              TEACHING,
              "The hot piece met cold steel, a draught or water.")
          .by(Clue.COOLED_HARD, CLEAR)
          .trial(LOOK, "See where the crack begins: at the point that touched something cold?")
          .change("Let it cool on its trivet in a warm, still place; leave the schedule.");

  private static final Cause BENT =
      Cause.of(
              "bent-or-knocked",
              Side.HANDLING,
              Origin.practice(),
              "The cold piece was bent, clamped or knocked.")
          .by(Clue.KNOCKED, CLEAR)
          .trial(
              LOOK,
              "See whether the chip lies at an edge that a setting, a file or a clamp touched.")
          .change("Finish edges before the last firing, and clamp nothing enamelled.");

  private static final Cause UNSUPPORTED =
      Cause.of(
              "badly-supported",
              Side.HANDLING,
              Origin.practice(),
              "The hot sheet sagged over its support.")
          .by(Clue.TOUCHING, CLEAR)
          .also(Clue.INSIDE_HOT, WEAK)
          .trial(LOOK, "Lay it on its trivet: does the bow follow the points?")
          .change("Support it near its edge and its middle; leave the schedule.");

  private static final Cause CONTACT =
      Cause.of(
              "copper-meets-silver",
              Side.MATERIAL,
              Origin.memory(
                  "Massalski, Binary Alloy Phase Diagrams: silver and copper melt together at 779 °C"),
              "Copper and silver, or a solder, touched each other: they melt together below either one.")
          .by(Clue.SOLDERED, CLEAR)
          .trial(LOOK, "Look where it melted: at a joint, a wire or a foil?")
          .change("Stay below 770 °C where copper meets silver or solder.");

  static List<Suspect> of(String found) {
    return switch (found) {
      case "under-fired", "orange-peel" ->
          together(
              List.of(
                  often(PULLED),
                  fair(TIME_SHORT),
                  fair(SET_COOL),
                  rare(THICK),
                  rare(CommonCauses.CROWDED)),
              tooCool());
      case "over-fired" ->
          together(
              List.of(often(TIME_LONG), fair(SET_HOT), rare(CommonCauses.NEW_BATCH)), tooHot());
      case "pulled-through" ->
          together(
              List.of(often(SOFT_BELOW), fair(SET_HOT), fair(TIME_LONG), fair(SCALE)), tooHot());
      case "pits" ->
          List.of(
              fair(DAMP),
              fair(DUST),
              fair(FIRED_OFTEN),
              fair(THICK),
              fair(SCALE),
              rare(SET_HOT),
              rare(CommonCauses.READS_LOW));
      case "crack" ->
          List.of(often(NO_COUNTER), fair(MISFIT), fair(COOLED_HARD), fair(THICK), fair(BENT));
      case "chip" ->
          List.of(
              fair(MISFIT),
              fair(SCALE),
              fair(THICK),
              fair(BENT),
              fair(COOLED_HARD),
              fair(NO_COUNTER),
              rare(PULLED));
      case "warped" ->
          List.of(
              often(NO_COUNTER),
              fair(UNSUPPORTED),
              fair(MISFIT),
              fair(SET_HOT),
              rare(CommonCauses.READS_LOW));
      case "melted" -> together(List.of(fair(CONTACT), fair(SET_HOT), fair(TIME_LONG)), tooHot());
      case "other" -> CommonCauses.ofAnything();
      default -> List.of();
    };
  }
}
