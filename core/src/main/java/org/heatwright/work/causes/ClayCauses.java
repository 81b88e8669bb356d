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

/** Pieces of metal clay. */
final class ClayCauses {

  private static final Origin SILVER =
      Origin.read(
          "a supplier-teacher's page on firing silver metal clay: temperatures, times, strength");
  private static final Origin BRONZE =
      Origin.read("a supplier's bronze-clay firing guide with its thickness table");
  private static final Origin BOX =
      Origin.read("a supplier's instructions for firing copper clay in carbon");
  private static final Origin MAKERS =
      Origin.read(
          "makers' blogs on bronze clay: a kiln set to 466 °C (870 °F) was 538 °C (1000 °F) beside"
              + " a second instrument");

  private ClayCauses() {}

  private static final Cause HOLD =
      Cause.of(
              "hold-short-for-piece",
              Side.SCHEDULE,
              SILVER,
              "The thickest piece, or the box around it, came to the heat late, so its hold was shorter than the display's.")
          .by(Clue.INSIDE_SHORT, STRONG)
          .also(Clue.PLAN_SHORT, CLEAR)
          .also(Clue.HOLD_SHORT, CLEAR)
          .also(Clue.THICK, WEAK)
          .trial(
              LOOK,
              "Drop it from a hand's breadth on a hard table: it rings when it is metal, it clacks when it is not.")
          .trial(
              FIRING,
              "Fire a strip of the same thickness with it, measure its shrinkage and bend it.")
          .change("Hold half as long again at the top.", Edit.times(Edit.What.TOP_HOLD, 1.5));

  private static final Cause COOL =
      Cause.of("target-low-for-clay", Side.SCHEDULE, BRONZE, "The target is low for this clay.")
          .also(Clue.PLAN_SHORT, WEAK)
          .also(Clue.NEW_BATCH, WEAK)
          .unless(Clue.INSIDE_HOT, CLEAR)
          .trial(
              FIRING,
              "Fire two strips, one at this target and one 10 K hotter; change nothing else.")
          .change("Fire 10 K hotter.", Edit.target(Edit.What.TOP_TARGET, 10));

  private static final Cause BINDER =
      Cause.of(
              "binder-left",
              Side.SCHEDULE,
              BOX,
              "Binder was left in the piece when it went on to the high heat.")
          .by(Clue.BINDER_LEFT, CLEAR)
          .also(Clue.ROSE_FAST, CLEAR)
          .also(Clue.PLAN_FAST, WEAK)
          .also(Clue.THICK, WEAK)
          .trial(LOOK, "Break a test strip after the first firing: it must be one colour through.")
          .change(
              "Give the binder a quarter of the time more at its own heat, in this firing or in the one before it.",
              Edit.times(Edit.What.BINDER_HOLD, 1.25));

  private static final Cause CARBON_OLD =
      Cause.of(
              "carbon-used-up",
              Side.HANDLING,
              BOX,
              "Air came to the metal in the box: carbon that is old, thin or burnt at its edge.")
          .by(Clue.CARBON_OLD, CLEAR)
          .also(Clue.HOLD_LONG, WEAK)
          .trial(
              LOOK,
              "Look at the carbon: ash-grey grains have done their work; 25 mm under and over the pieces is usual.")
          .caution(
              "Carbon in a hot box makes carbon monoxide: fire it under extraction and open it in the open air.")
          .change(
              "Fill fresh carbon, 25 mm below and above, and leave the lid on until it is cold.");

  private static final Cause RISE =
      Cause.of(
              "rise-fast",
              Side.SCHEDULE,
              BRONZE,
              "The piece was heated faster than its thickness bears: binder and water had to leave too quickly.")
          .by(Clue.ROSE_FAST, STRONG)
          .also(Clue.PLAN_FAST, CLEAR)
          .also(Clue.THICK, CLEAR)
          .unless(Clue.KEYED_FASTER, WEAK)
          .trial(LOOK, "See whether the thickest pieces are worst.")
          .change("Heat at half the rate.", Edit.times(Edit.What.RISES, 0.5));

  private static final Cause DAMP =
      Cause.of("not-dry", Side.HANDLING, Origin.practice(), "The piece was not dry to its core.")
          .by(Clue.DAMP, CLEAR)
          .trial(
              MINUTES,
              "Weigh the next piece twice, ten minutes apart on a warm plate: its weight must stand.")
          .change("Dry until the weight stands; leave the schedule.");

  private static final Cause JOINT =
      Cause.of(
              "weak-joint",
              Side.HANDLING,
              Origin.practice(),
              "It shrank unevenly: a joint, a core or a stone held it where the rest moved.")
          .by(Clue.INSET, WEAK)
          .also(Clue.TOUCHING, CLEAR)
          .also(Clue.THICK, WEAK)
          .trial(
              LOOK,
              "See whether the crack lies at a joint, or round something that does not shrink.")
          .change("Give it room to shrink, and let it lie loose on a bed; leave the schedule.");

  private static final Cause HANDLED =
      Cause.of(
              "handled-fragile",
              Side.HANDLING,
              Origin.read("a metal-clay blog on how fragile pieces are between the two firings"),
              "It was moved while it was fragile, between the two firings.")
          .by(Clue.KNOCKED, CLEAR)
          .trial(LOOK, "See whether the break is clean and lies where it was held.")
          .change("Leave it where it lies between the firings, and lay the carbon around it.");

  private static final Cause TOO_HOT =
      Cause.of(
              "target-high-for-clay",
              Side.SCHEDULE,
              MAKERS,
              "The target is near the melting of this clay; between too little and too much lie 30 to 60 K.")
          .also(Clue.PLAN_HOT, CLEAR)
          .also(Clue.INSIDE_HOT, CLEAR)
          .also(Clue.NEW_BATCH, WEAK)
          .trial(
              FIRING,
              "Fire two strips, one at this target and one 15 K cooler; change nothing else.")
          .change("Fire 15 K cooler.", Edit.target(Edit.What.TOP_TARGET, -15));

  private static final Cause UNSUPPORTED =
      Cause.of(
              "unsupported",
              Side.HANDLING,
              Origin.practice(),
              "A hollow or wide form had nothing below it.")
          .by(Clue.TOUCHING, CLEAR)
          .trial(LOOK, "See whether it sagged where it lay hollow.")
          .change("Bed it in fibre or carbon; leave the schedule.");

  private static final Cause INSET_LIMIT =
      Cause.of(
              "inset-limit",
              Side.SCHEDULE,
              Origin.read(
                  "a supplier's silver-clay firing guide: glass and some stones, 600 to 650 °C"),
              "What is set in the piece bears less heat than the clay was given.")
          .by(Clue.INSET, CLEAR)
          .also(Clue.PEAK_ABOVE, CLEAR)
          .also(Clue.PLAN_HOT, CLEAR)
          .trial(
              LOOK,
              "Look up what the stone or glass bears, and compare with the highest that the display showed.")
          .change(
              "Name what is set in the piece in the work's file, and let the plan be composed anew.");

  private static final Cause SHOCK =
      Cause.of(
              "inset-shock",
              Side.HANDLING,
              Origin.practice(),
              "The stone or glass was heated or cooled too fast: it cracks where metal does not.")
          .by(Clue.COOLED_HARD, CLEAR)
          .also(Clue.ROSE_FAST, CLEAR)
          .also(Clue.OPENED_EARLY, CLEAR)
          .trial(
              LOOK, "See whether it is cracked through with clean faces: that is shock, not heat.")
          .change(
              "Let it cool in the shut kiln, and heat at half the rate.",
              Edit.times(Edit.What.RISES, 0.5));

  private static final Cause UNEVEN_BOX =
      Cause.of(
              "box-cool-side",
              Side.HANDLING,
              BOX,
              "The box stood with a side to the door, and that side stayed cooler.")
          .by(Clue.CROWDED, CLEAR)
          .trial(LOOK, "See whether the pieces at one side of the box are worse.")
          .change(
              "Put the box in the middle, and the pieces away from the door; leave the schedule.");

  static List<Suspect> of(String found) {
    return switch (found) {
      case "brittle", "unsintered" ->
          together(
              List.of(
                  often(HOLD),
                  fair(COOL),
                  fair(BINDER),
                  fair(CARBON_OLD),
                  rare(UNEVEN_BOX),
                  fair(CommonCauses.KEYED_SHORT)),
              tooCool());
      case "crack" ->
          List.of(
              fair(RISE), fair(JOINT), fair(HANDLED), fair(DAMP), fair(CommonCauses.KEYED_FAST));
      case "blisters" ->
          together(
              List.of(
                  often(BINDER),
                  fair(RISE),
                  fair(TOO_HOT),
                  fair(DAMP),
                  fair(CommonCauses.KEYED_FAST)),
              tooHot());
      case "slumped", "melted" ->
          together(
              List.of(fair(TOO_HOT), rare(UNSUPPORTED), fair(CommonCauses.KEYED_LONG)), tooHot());
      case "oxidised" -> List.of(often(CARBON_OLD), fair(BINDER), rare(CommonCauses.DOOR_OPENED));
      case "inset-hurt" -> together(List.of(often(INSET_LIMIT), fair(SHOCK)), tooHot());
      case "other" -> CommonCauses.ofAnything();
      default -> List.of();
    };
  }
}
