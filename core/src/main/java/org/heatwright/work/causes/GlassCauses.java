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

/** Sheet glass that is fused, tacked or slumped. */
final class GlassCauses {

  private static final Origin PAGES = Origin.read("kiln-forming pages on time and temperature");
  private static final Origin ANNEAL =
      Origin.read(
          "kiln-forming pages on annealing: points by glass, soak and cooling by thickness");
  private static final Origin SQUARE =
      Origin.memory(
          "Adams & Williamson, The Annealing of Glass, 1920: the rate falls with the thickness squared");

  private GlassCauses() {}

  private static final Cause HOLD =
      Cause.of(
              "hold-short",
              Side.SCHEDULE,
              PAGES,
              "The glass had too little time at the top for what it was to do.")
          .by(Clue.INSIDE_SHORT, CLEAR)
          .also(Clue.HOLD_SHORT, CLEAR)
          .also(Clue.PLAN_SHORT, WEAK)
          .trial(
              FIRING,
              "Fire a small test of the same layers for half as long again, and look through the peephole.")
          .change("Hold half as long again at the top.", Edit.times(Edit.What.TOP_HOLD, 1.5));

  private static final Cause SET_COOL =
      Cause.of(
              "target-low",
              Side.SCHEDULE,
              PAGES,
              "The target is low for this glass and this shape.")
          .also(Clue.INSIDE_SHORT, WEAK)
          .also(Clue.NEW_BATCH, WEAK)
          .trial(FIRING, "Fire a small test of the same layers 10 K hotter.")
          .change("Fire 10 K hotter.", Edit.target(Edit.What.TOP_TARGET, 10));

  private static final Cause HOLD_LONG =
      Cause.of(
              "hold-long",
              Side.SCHEDULE,
              PAGES,
              "The glass had more time at the top than it needed.")
          .by(Clue.HOLD_LONG, CLEAR)
          .also(Clue.INSIDE_HOT, CLEAR)
          .trial(FIRING, "Fire a small test of the same layers for two thirds of the time.")
          .change("Hold two thirds as long at the top.", Edit.times(Edit.What.TOP_HOLD, 0.66));

  private static final Cause SET_HOT =
      Cause.of(
              "target-high",
              Side.SCHEDULE,
              PAGES,
              "The target is high for this glass and this shape.")
          .also(Clue.PLAN_HOT, CLEAR)
          .also(Clue.INSIDE_HOT, CLEAR)
          .also(Clue.NEW_BATCH, WEAK)
          .trial(FIRING, "Fire a small test of the same layers 10 K cooler.")
          .change("Fire 10 K cooler.", Edit.target(Edit.What.TOP_TARGET, -10));

  private static final Cause TRAPPED =
      Cause.of(
              "air-trapped",
              Side.HANDLING,
              PAGES,
              "Air was shut in between the sheets or under them when the edges had sealed.")
          .by(Clue.TRAPPED_AIR, CLEAR)
          .also(Clue.ROSE_FAST, CLEAR)
          .also(Clue.PLAN_FAST, WEAK)
          .trial(
              LOOK,
              "See whether the bubbles are large and lie between the layers or over a hollow of the shelf.")
          .change(
              "Rise at half the rate, so that the air is pressed out before the edges seal.",
              Edit.times(Edit.What.RISES, 0.5));

  private static final Cause SHELF_DAMP =
      Cause.of(
              "shelf-damp",
              Side.HANDLING,
              Origin.practice(),
              "Shelf, fibre or separator was damp, or held binder, and its gas came up through the glass.")
          .by(Clue.DAMP, CLEAR)
          .trial(MINUTES, "Fire the bare shelf to 250 °C and see whether it smokes.")
          .change("Dry and burn out shelf and fibre first; leave the schedule.");

  private static final Cause DIRTY =
      Cause.of(
              "dirty-glass",
              Side.HANDLING,
              Origin.practice(),
              "Grease, dust or cutting oil lay on the glass: crystals begin there.")
          .by(Clue.UNCLEAN, CLEAR)
          .trial(LOOK, "See whether the haze follows fingerprints, joints or ground edges.")
          .change(
              "Wash, rinse and dry the glass, and touch it at its edges only; leave the schedule.");

  private static final Cause SLOW_FALL =
      Cause.of(
              "slow-through-devit",
              Side.SCHEDULE,
              PAGES,
              "It spent long in the range in which crystals grow, on the way up or down.")
          .by(Clue.HOLD_LONG, CLEAR)
          .also(Clue.BEHIND, WEAK)
          .also(Clue.INSIDE_HOT, WEAK)
          .trial(LOOK, "Look in the log for the minutes between 700 and 780 °C on the way down.")
          .change("Hold two thirds as long at the top.", Edit.times(Edit.What.TOP_HOLD, 0.66));

  private static final Cause USED_GLASS =
      Cause.of(
              "glass-that-crystallises",
              Side.MATERIAL,
              Origin.practice(),
              "This glass crystallises easily: window and bottle glass do, and glass that was fired before.")
          .by(Clue.NEW_BATCH, CLEAR)
          .trial(FIRING, "Fire a fresh piece of fusing glass beside it.")
          .change("Use glass made for fusing, or a clear overspray; leave the schedule.");

  private static final Cause RISE =
      Cause.of(
              "rise-fast",
              Side.SCHEDULE,
              PAGES,
              "It was heated faster than its thickness bears, and broke on the way up: then the edges of the break are round.")
          .by(Clue.ROSE_FAST, STRONG)
          .also(Clue.PLAN_FAST, CLEAR)
          .by(Clue.INSIDE_STRAINED, CLEAR)
          .also(Clue.THICK, CLEAR)
          .unless(Clue.KEYED_FASTER, WEAK)
          .trial(LOOK, "Feel the edges of the break: round means that it broke before the top.")
          .change("Heat the first ramp at half its rate.", Edit.times(Edit.What.FIRST_RISE, 0.5));

  private static final Cause UNEVEN =
      Cause.of(
              "uneven-heat",
              Side.HANDLING,
              Origin.practice(),
              "One part was hotter than the other: a side near an element, a thick shelf under half of it, a stacked middle.")
          .by(Clue.CROWDED, CLEAR)
          .also(Clue.THICK, WEAK)
          .also(Clue.INSIDE_STRAINED, WEAK)
          .trial(
              LOOK,
              "See whether the crack goes from the thick part to the thin one, or towards an element.")
          .change(
              "Put it in the middle on an even shelf, and heat the first ramp at two thirds of its rate.",
              Edit.times(Edit.What.FIRST_RISE, 0.66));

  private static final Cause SOAK =
      Cause.of(
              "anneal-soak-short",
              Side.SCHEDULE,
              ANNEAL,
              "The annealing soak was short for its thickest part, or not at this glass's own point.")
          .by(Clue.PLAN_COOLS_FAST, CLEAR)
          .also(Clue.PLAN_SHORT, CLEAR)
          .also(Clue.THICK, CLEAR)
          .also(Clue.INSIDE_STRAINED, CLEAR)
          .trial(
              MINUTES, "Look at it between two crossed polarising sheets: bright bands are stress.")
          .change(
              "Soak half as long again at the annealing point.",
              Edit.times(Edit.What.HOLD_AFTER_TOP, 1.5));

  private static final Cause FALL =
      Cause.of(
              "cooled-fast",
              Side.SCHEDULE,
              SQUARE,
              "It was cooled faster than its thickness bears: then the edges of the break are sharp.")
          .by(Clue.FELL_FAST, STRONG)
          .also(Clue.PLAN_COOLS_FAST, CLEAR)
          .also(Clue.THICK, CLEAR)
          .trial(
              LOOK,
              "Feel the edges of the break: sharp means that it broke on the way down or later.")
          .change("Cool at half the rate.", Edit.times(Edit.What.FALLS, 0.5));

  private static final Cause OPENED =
      Cause.of(
              "opened-early",
              Side.HANDLING,
              ANNEAL,
              "The kiln was opened while the glass was still warm.")
          .by(Clue.OPENED_EARLY, STRONG)
          .also(Clue.OUT_EARLY, CLEAR)
          .trial(
              LOOK,
              "Ask what the display said when it was opened: 40 to 50 °C is early enough for thick glass.")
          .change("Leave it shut to room temperature; leave the schedule.");

  private static final Cause POWER_CUT_COLD =
      Cause.of(
              "fell-without-anneal",
              Side.KILN,
              Origin.practice(),
              "The heat was away while it should have been annealed, and it cooled as fast as the kiln can.")
          .needs(Clue.HEAT_AWAY)
          .trial(LOOK, "Look in the log at the hour below 550 °C.")
          .change("Find out what cut the power, and anneal the piece again before it is handled.");

  private static final Cause MISMATCH =
      Cause.of(
              "glasses-do-not-fit",
              Side.MATERIAL,
              Origin.practice(),
              "Two glasses that shrink by different amounts are fused together: no annealing takes that away.")
          .by(Clue.MIXED_GLASS, STRONG)
          .also(Clue.NEW_BATCH, WEAK)
          .trial(
              MINUTES, "Look between crossed polarising sheets: a halo along the join is misfit.")
          .trial(
              FIRING,
              "Fuse a chip of one on a strip of the other, anneal it, and look at its halo.")
          .change("Use glass of one maker and one expansion; leave the schedule.");

  private static final Cause STUCK_TOUCH =
      Cause.of(
              "pulled-at-edge",
              Side.HANDLING,
              Origin.practice(),
              "The edge stuck to the shelf and was pulled into points as the glass drew together.")
          .by(Clue.TOUCHING, CLEAR)
          .also(Clue.INSIDE_HOT, CLEAR)
          .trial(LOOK, "See whether the points end where separator is missing on the shelf.")
          .change("Renew the separator; then fire 10 K cooler if points are left.");

  private static final Cause VOLUME =
      Cause.of(
              "thinner-than-six",
              Side.MATERIAL,
              PAGES,
              "The sheet is thinner than about 6 mm: it draws in at the edge until it is that thick.")
          .unless(Clue.THICK, WEAK)
          .also(Clue.HOLD_LONG, CLEAR)
          .trial(LOOK, "Measure the edge: drawn-in glass is thicker there than before.")
          .change("Fire 10 K cooler.", Edit.target(Edit.What.TOP_TARGET, -10));

  private static final Cause SEPARATOR =
      Cause.of(
              "separator-worn",
              Side.HANDLING,
              Origin.practice(),
              "The separator was worn, thin or fired once too often.")
          .by(Clue.TOUCHING, CLEAR)
          .trial(LOOK, "See whether it sticks where the coat was scratched or grey.")
          .caution("Separator and fibre make dust that harms lungs: a mask, a wet cloth, no brush.")
          .change(
              "Scrape the shelf under a mask and coat it anew, four thin coats crosswise; leave the schedule.");

  static List<Suspect> of(String found) {
    return switch (found) {
      case "under-fired" ->
          together(
              List.of(
                  often(HOLD),
                  fair(SET_COOL),
                  fair(CommonCauses.KEYED_SHORT),
                  rare(CommonCauses.CROWDED)),
              tooCool());
      case "over-fired" ->
          together(
              List.of(often(SET_HOT), fair(HOLD_LONG), fair(CommonCauses.KEYED_LONG)), tooHot());
      case "bubbles" ->
          together(List.of(often(TRAPPED), fair(SHELF_DAMP), fair(SET_HOT)), tooHot());
      case "devit" ->
          List.of(
              often(DIRTY),
              fair(SLOW_FALL),
              fair(USED_GLASS),
              fair(CommonCauses.KEYED_LONG),
              rare(CommonCauses.POWER_DOWN));
      case "crack-round" ->
          List.of(
              often(RISE),
              fair(UNEVEN),
              fair(CommonCauses.KEYED_FAST),
              rare(CommonCauses.DOOR_OPENED),
              rare(MISMATCH));
      case "crack" ->
          List.of(
              often(SOAK),
              fair(FALL),
              fair(OPENED),
              fair(MISMATCH),
              fair(POWER_CUT_COLD),
              fair(CommonCauses.KEYED_SHORT),
              rare(CommonCauses.READS_LOW),
              rare(CommonCauses.READS_HIGH));
      case "stress" ->
          List.of(
              often(SOAK),
              fair(FALL),
              fair(MISMATCH),
              fair(OPENED),
              fair(POWER_CUT_COLD),
              fair(CommonCauses.READS_LOW),
              fair(CommonCauses.READS_HIGH),
              fair(CommonCauses.KEYED_SHORT));
      case "spikes" -> together(List.of(often(STUCK_TOUCH), fair(VOLUME), fair(SET_HOT)), tooHot());
      case "shelf-stuck" ->
          together(List.of(often(SEPARATOR), fair(SET_HOT), fair(HOLD_LONG)), tooHot());
      case "other" -> CommonCauses.ofAnything();
      default -> List.of();
    };
  }
}
