package org.heatwright.work.causes;

import static org.heatwright.work.causes.Cause.Weight.CLEAR;
import static org.heatwright.work.causes.Cause.Weight.STRONG;
import static org.heatwright.work.causes.Cause.Weight.WEAK;
import static org.heatwright.work.causes.Trial.Effort.CRAFTSMAN;
import static org.heatwright.work.causes.Trial.Effort.FIRING;
import static org.heatwright.work.causes.Trial.Effort.LOOK;
import static org.heatwright.work.causes.Trial.Effort.MINUTES;

import java.util.List;
import org.heatwright.material.Origin;
import org.heatwright.work.causes.Cause.Side;

/** What can be behind a fault in every kind of work: keypad, kiln, supply. */
final class CommonCauses {

  /** How usual a cause is behind a fault, before anything is known. {@code estimate:} */
  static final double OFTEN = Math.log(2);

  static final double FAIR = 0;
  static final double RARE = -Math.log(2);

  private static final Origin ARITHMETIC = Origin.derived("conversion between °C and °F");

  private static final Origin POTTERS =
      Origin.read(
          "threads on a potters' mailing list on where a thermocouple sits and how far it is out");

  private static final Origin OHM =
      Origin.derived("power at a fixed voltage falls as the elements' resistance rises");

  private CommonCauses() {}

  static final Cause UNIT_HOT =
      Cause.of(
              "unit-hot",
              Side.KEYPAD,
              ARITHMETIC,
              "Numbers meant in °F stood in a keypad that was in °C, so the kiln went hotter than meant.")
          .needs(Clue.UNIT_HOT)
          .wants(Clue.PEAK_ABOVE, CLEAR)
          .also(Clue.KEYED_HOTTER, WEAK)
          .trial(
              LOOK,
              "Look at the display of the cold kiln: about 20 means °C, about 68 means °F. Compare with the unit on the card.")
          .change("Settle the unit, key the plan again and read it back; change nothing else.");

  static final Cause UNIT_COLD =
      Cause.of(
              "unit-cold",
              Side.KEYPAD,
              ARITHMETIC,
              "Numbers meant in °C stood in a keypad that was in °F, so the kiln stayed cooler than meant.")
          .needs(Clue.UNIT_COLD)
          .wants(Clue.PEAK_BELOW, CLEAR)
          .also(Clue.KEYED_COOLER, WEAK)
          .trial(
              LOOK,
              "Look at the display of the cold kiln: about 20 means °C, about 68 means °F. Compare with the unit on the card.")
          .change("Settle the unit, key the plan again and read it back; change nothing else.");

  static final Cause KEYED_HOT =
      Cause.of(
              "keyed-hotter",
              Side.KEYPAD,
              Origin.practice(),
              "The slot held a hotter target than the plan, or the wrong slot ran.")
          .needs(Clue.KEYED_HOTTER)
          .wants(Clue.PEAK_ABOVE, CLEAR)
          .unless(Clue.UNIT_HOT, WEAK)
          .trial(MINUTES, "Read the slot back, blind, and let it be compared with the plan.")
          .change("Key the plan again and read it back; change nothing else.");

  static final Cause KEYED_COOL =
      Cause.of(
              "keyed-cooler",
              Side.KEYPAD,
              Origin.practice(),
              "The slot held a cooler target than the plan, or the wrong slot ran.")
          .needs(Clue.KEYED_COOLER)
          .wants(Clue.PEAK_BELOW, CLEAR)
          .unless(Clue.UNIT_COLD, WEAK)
          .trial(MINUTES, "Read the slot back, blind, and let it be compared with the plan.")
          .change("Key the plan again and read it back; change nothing else.");

  static final Cause KEYED_SHORT =
      Cause.of(
              "keyed-shorter",
              Side.KEYPAD,
              Origin.practice(),
              "A hold was keyed too short or a segment was left out: minutes and hours are easily mixed up.")
          .needs(Clue.KEYED_SHORTER)
          .by(Clue.HOLD_SHORT, CLEAR)
          .unless(Clue.HEAT_AWAY, CLEAR)
          .trial(MINUTES, "Read the slot back, blind: each hold and the number of segments.")
          .change("Key the plan again and read it back; change nothing else.");

  static final Cause KEYED_LONG =
      Cause.of(
              "keyed-longer",
              Side.KEYPAD,
              Origin.read("a potter's report of 20 minutes that were keyed as 20 hours"),
              "A hold was keyed too long, or old segments stood behind the plan's last one and ran on.")
          .needs(Clue.KEYED_LONGER)
          .by(Clue.HOLD_LONG, CLEAR)
          .trial(
              MINUTES,
              "Read the slot back, blind, with the first segment after the last: it must be empty.")
          .change("Key the plan again and read it back to its end; change nothing else.");

  static final Cause KEYED_FAST =
      Cause.of(
              "keyed-faster",
              Side.KEYPAD,
              Origin.practice(),
              "A rate was keyed faster than the plan's: °F an hour as °C an hour is 1.8 times as fast.")
          .needs(Clue.KEYED_FASTER)
          .by(Clue.ROSE_FAST, CLEAR)
          .trial(
              MINUTES, "Read the slot back, blind, and look at the minutes that each ramp takes.")
          .change("Key the plan again and read it back; change nothing else.");

  static final Cause READS_LOW =
      Cause.of(
              "reads-low",
              Side.KILN,
              POTTERS,
              "The thermocouple reads low: the kiln was hotter than its display said.")
          .needs(Clue.READS_LOW)
          .unless(Clue.PEAK_ABOVE, STRONG)
          .also(Clue.TIP_MOVED, CLEAR)
          .also(Clue.BEHIND, WEAK)
          .trial(
              LOOK,
              "With the kiln cold, see whether the tip stands as far into the chamber as it did and touches nothing.")
          .trial(
              FIRING,
              "Hold at a known temperature beside a second instrument, or melt a wire of known metal at the tip, and tell the kiln's page the difference.")
          .change(
              "Measure how far the thermocouple is out, put it into the kiln's file, and fire the same plan again.");

  static final Cause READS_HIGH =
      Cause.of(
              "reads-high",
              Side.KILN,
              POTTERS,
              "The thermocouple reads high: the kiln was cooler than its display said.")
          .needs(Clue.READS_HIGH)
          .unless(Clue.PEAK_BELOW, STRONG)
          .also(Clue.TIP_MOVED, CLEAR)
          .also(Clue.AHEAD, WEAK)
          .trial(
              LOOK,
              "With the kiln cold, see whether the tip stands near an element or the load, which warm it more than the rest.")
          .trial(
              FIRING,
              "Hold at a known temperature beside a second instrument, or melt a wire of known metal at the tip, and tell the kiln's page the difference.")
          .change(
              "Measure how far the thermocouple is out, put it into the kiln's file, and fire the same plan again.");

  static final Cause RELAY_ON =
      Cause.of(
              "relay-stuck",
              Side.KILN,
              Origin.practice(),
              "The elements stayed on although the controller had switched them off: a relay that sticks.")
          .needs(Clue.PEAK_ABOVE)
          .never(Clue.KEYED_HOTTER)
          .unless(Clue.UNIT_HOT, STRONG)
          .by(Clue.HOLD_LONG, WEAK)
          .trial(
              LOOK,
              "Stand by the next time it reaches a target: the display must stop rising and the relay fall off within a minute or two.")
          .trial(CRAFTSMAN, "Have the relay and its contacts tested.")
          .caution(
              "A relay that sticks can overheat the kiln with nobody at the keypad: switch off at the wall, and have it mended by a licensed person before the kiln is left alone again.")
          .change("Have the relay replaced first; then fire the same plan again.");

  static final Cause OVERSHOOT =
      Cause.of(
              "overshoot",
              Side.KILN,
              Origin.practice(),
              "The kiln overshoots: it comes to its target fast and swings beyond it.")
          .needs(Clue.PEAK_ABOVE)
          .unless(Clue.KEYED_HOTTER, STRONG)
          .unless(Clue.UNIT_HOT, STRONG)
          .by(Clue.SWINGS, CLEAR)
          .trial(
              FIRING,
              "Fire the empty kiln to this target and write down the highest that its display shows.")
          .change(
              "Come to the top more slowly, so that the kiln does not swing beyond it.",
              Edit.times(Edit.What.RISES, 0.7));

  static final Cause POWER_DOWN =
      Cause.of(
              "power-down",
              Side.KILN,
              OHM,
              "The kiln has less power than it had: worn or open elements, or a low supply.")
          .by(Clue.BEHIND, STRONG)
          .by(Clue.PEAK_BELOW, CLEAR)
          .also(Clue.POWER_WEAK, STRONG)
          .also(Clue.SHARED_SUPPLY, CLEAR)
          .unless(Clue.UNIT_COLD, STRONG)
          .unless(Clue.KEYED_COOLER, STRONG)
          .trial(
              LOOK, "See whether every element glows, from outside and with glasses made for it.")
          .trial(
              FIRING,
              "Fire the empty kiln at full power and compare its minutes to 600 °C with an earlier log: the kiln's page tells it.")
          .trial(CRAFTSMAN, "Have the current and the supply measured.")
          .caution(
              "Elements and terminals are at mains voltage: pull the plug before anything is opened, and leave measuring under power to a licensed person.")
          .change("Have elements and supply measured first; then fire the same plan again.");

  static final Cause HEAT_AWAY =
      Cause.of(
              "mains-cut",
              Side.KILN,
              Origin.practice(),
              "The heat was away for a while: a mains cut, a breaker, a loose plug, or a controller that stopped.")
          .needs(Clue.HEAT_AWAY)
          .by(Clue.HOLD_SHORT, WEAK)
          .also(Clue.SHARED_SUPPLY, CLEAR)
          .trial(
              LOOK,
              "See whether clocks in the room blink, the breaker fell or the plug sits loose.")
          .trial(
              MINUTES,
              "Read in the controller's manual whether it goes on, starts again or stops after a cut, and tell the kiln's page.")
          .change(
              "Find out what cut the power, give the kiln a circuit of its own, and fire the same plan again.");

  static final Cause DOOR_OPENED =
      Cause.of(
              "door-opened",
              Side.HANDLING,
              Origin.practice(),
              "The door, lid or vent was opened on the way: the work met cold air, and the hold lost time.")
          .needs(Clue.DOOR_OPENED)
          .trial(
              LOOK,
              "Ask who was in the room; see in the log whether the display fell within a minute.")
          .change("Leave the door shut until the plan says so, and fire the same plan again.");

  static final Cause NEW_BATCH =
      Cause.of(
              "new-batch",
              Side.MATERIAL,
              Origin.practice(),
              "The material behaves otherwise than the one the plan was made for.")
          .by(Clue.NEW_BATCH, CLEAR)
          .trial(
              LOOK,
              "Compare the maker's data sheet and the batch number with those of the last good firing.")
          .trial(FIRING, "Fire a test piece of the old and the new batch side by side.")
          .change(
              "Put the new material's data sheet into the work, and let the plan be composed anew.");

  static final Cause CROWDED =
      Cause.of(
              "crowded",
              Side.HANDLING,
              Origin.practice(),
              "The kiln was fuller than planned or the piece stood in a cold or hot place, so it did not see what the display saw.")
          .by(Clue.CROWDED, CLEAR)
          .trial(
              LOOK,
              "Compare where it stood with those that came out well: near the door it is coolest, near an element hottest.")
          .trial(FIRING, "Fire test pieces at the door, in the middle and at the back at once.")
          .change(
              "Load as the plan says, away from door, elements and thermocouple; change nothing else.");

  static final Cause OUT_OF_ORDER =
      Cause.of(
              "other-program",
              Side.KEYPAD,
              Origin.practice(),
              "Something else ran than was planned: another slot, old segments, an edit that was never kept.")
          .by(Clue.KEYED_HOTTER, CLEAR)
          .also(Clue.KEYED_COOLER, CLEAR)
          .also(Clue.KEYED_LONGER, CLEAR)
          .also(Clue.KEYED_SHORTER, CLEAR)
          .also(Clue.KEYED_FASTER, CLEAR)
          .trial(MINUTES, "Read the slot back, blind, and let it be compared with the plan.")
          .change("Key the plan again and read it back; change nothing else.");

  static final Cause READS_WRONG =
      Cause.of(
              "reads-wrong",
              Side.KILN,
              POTTERS,
              "The thermocouple does not tell what the chamber is: it aged, slipped or is of another type than the controller takes it for.")
          .also(Clue.READS_LOW, STRONG)
          .also(Clue.READS_HIGH, STRONG)
          .also(Clue.TIP_MOVED, CLEAR)
          .trial(
              LOOK,
              "With the kiln cold, see where the tip stands and what type its wires and the controller name.")
          .trial(FIRING, "Hold at a known temperature beside a second instrument.")
          .change(
              "Measure how far the thermocouple is out, put it into the kiln's file, and fire the same plan again.");

  /** What fits every fault a person cannot name, and every kind. */
  static List<Suspect> ofAnything() {
    return List.of(
        often(OUT_OF_ORDER),
        fair(READS_WRONG),
        fair(CROWDED),
        fair(NEW_BATCH),
        fair(HEAT_AWAY),
        rare(UNIT_HOT),
        rare(UNIT_COLD),
        rare(DOOR_OPENED),
        fair(POWER_DOWN),
        rare(RELAY_ON));
  }

  /** What makes a kiln hotter than planned. */
  static List<Suspect> tooHot() {
    return List.of(
        rare(UNIT_HOT), fair(KEYED_HOT), fair(READS_LOW), fair(OVERSHOOT), rare(RELAY_ON));
  }

  /** What makes a kiln cooler than planned. */
  static List<Suspect> tooCool() {
    return List.of(
        rare(UNIT_COLD), fair(KEYED_COOL), fair(READS_HIGH), fair(POWER_DOWN), fair(HEAT_AWAY));
  }

  static Suspect often(Cause cause) {
    return new Suspect(cause, OFTEN);
  }

  static Suspect fair(Cause cause) {
    return new Suspect(cause, FAIR);
  }

  static Suspect rare(Cause cause) {
    return new Suspect(cause, RARE);
  }

  @SafeVarargs
  static List<Suspect> together(List<Suspect>... lists) {
    return java.util.Arrays.stream(lists).flatMap(List::stream).toList();
  }
}
