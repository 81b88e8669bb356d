package org.heatwright.work.causes;

import static org.heatwright.work.causes.Cause.Weight.CLEAR;
import static org.heatwright.work.causes.Cause.Weight.STRONG;
import static org.heatwright.work.causes.Cause.Weight.WEAK;
import static org.heatwright.work.causes.CommonCauses.fair;
import static org.heatwright.work.causes.CommonCauses.often;
import static org.heatwright.work.causes.CommonCauses.rare;
import static org.heatwright.work.causes.CommonCauses.together;
import static org.heatwright.work.causes.CommonCauses.tooHot;
import static org.heatwright.work.causes.Trial.Effort.COLD_KILN;
import static org.heatwright.work.causes.Trial.Effort.CRAFTSMAN;
import static org.heatwright.work.causes.Trial.Effort.LOOK;
import static org.heatwright.work.causes.Trial.Effort.MINUTES;

import java.util.List;
import org.heatwright.material.Origin;
import org.heatwright.work.Found;
import org.heatwright.work.causes.Cause.Side;

/** What a kiln does that it should not, whatever is in it; and work of which nothing is known. */
final class KilnCauses {

  private static final String MAINS =
      "Behind the covers is mains voltage: switch off at the wall and pull the plug first, and leave the rest to a licensed person.";

  static final List<Found> SIGNS =
      List.of(
          new Found("stays-cold", "stays cold"),
          new Found("never-there", "never gets there"),
          new Found("stopped", "stopped on the way"),
          new Found("too-hot", "went too hot"),
          new Found("reads-odd", "display reads odd"),
          new Found("other", "other"));

  private KilnCauses() {}

  private static final Cause WAITING =
      Cause.of(
              "waiting",
              Side.KEYPAD,
              Origin.practice(),
              "A start delay still runs, or start was not taken: the kiln is waiting, not heating.")
          .by(Clue.PROGRAM_WAITS, STRONG)
          .unless(Clue.CLICKS, STRONG)
          .trial(
              LOOK, "Look whether the display counts down, or shows a time instead of a segment.")
          .change(
              "Start the program again without a delay, and see the display rise within ten minutes.");

  private static final Cause WRONG_SLOT =
      Cause.of(
              "empty-slot",
              Side.KEYPAD,
              Origin.practice(),
              "Another slot was started, or one that is empty or was never kept.")
          .also(Clue.KEYED_COOLER, CLEAR)
          .also(Clue.KEYED_SHORTER, CLEAR)
          .trial(MINUTES, "Read the started slot back, and compare it with the plan.")
          .change("Key the plan again, leave the edit as the card says, and read it back.");

  private static final Cause NO_POWER =
      Cause.of(
              "no-power",
              Side.KILN,
              Origin.practice(),
              "The controller calls for heat and none comes: a door or lid switch, a breaker of the power circuit, an open element or a relay that does not close.")
          .by(Clue.CLICKS, CLEAR)
          .also(Clue.POWER_WEAK, CLEAR)
          .also(Clue.SHARED_SUPPLY, WEAK)
          .trial(
              LOOK,
              "Shut door and lid until their switch is made, and see whether the breaker has fallen.")
          .trial(COLD_KILN, "Watch for ten minutes whether an element warms at all.")
          .trial(CRAFTSMAN, "Have element, relay and switch tested.")
          .caution(MAINS)
          .change("Mend what interrupts the power; then start the same program again.");

  private static final Cause SENSOR_SHORT =
      Cause.of(
              "sensor-shorted",
              Side.KILN,
              Origin.practice(),
              "The thermocouple or its cable is shorted outside the chamber: the display tells the temperature of that place, while the chamber may be hot.")
          .also(Clue.TIP_MOVED, CLEAR)
          .also(Clue.READS_LOW, STRONG)
          .trial(
              LOOK,
              "Hold a hand near the outside: a warm kiln with a cold display has a wrong sensor.")
          .trial(COLD_KILN, "With the plug pulled, see where its two wires could touch.")
          .caution(
              "A display that stays low while the kiln heats is a runaway: switch off at the wall at once.")
          .change("Have thermocouple and cable replaced; then fire the empty kiln and watch it.");

  private static final Cause SENSOR_OPEN =
      Cause.of(
              "sensor-open",
              Side.KILN,
              Origin.practice(),
              "The thermocouple is broken or loose at a terminal: the display jumps, or shows a fault sign.")
          .by(Clue.TIP_MOVED, CLEAR)
          .trial(
              LOOK,
              "See whether the number jumps when somebody walks by or the cable is touched from outside.")
          .trial(
              COLD_KILN,
              "With the plug pulled, see whether both wires sit firmly and in the right colours.")
          .caution(MAINS)
          .change(
              "Replace the thermocouple with one of the same type; then check it against a known temperature.");

  private static final Cause SENSOR_CROSSED =
      Cause.of(
              "sensor-crossed",
              Side.KILN,
              Origin.practice(),
              "The thermocouple's wires are crossed, or the controller is set to another type: it reads ever further off as the kiln heats.")
          .by(Clue.TIP_MOVED, STRONG)
          .also(Clue.READS_LOW, CLEAR)
          .also(Clue.READS_HIGH, CLEAR)
          .trial(
              LOOK,
              "See whether the display falls while the kiln heats: then two wires are crossed.")
          .trial(MINUTES, "Compare the type on the thermocouple with the controller's setting.")
          .change("Put wires and type right, and check the display against a known temperature.");

  private static final Cause UNIT_SHOWN =
      Cause.of(
              "unit-shown",
              Side.KEYPAD,
              Origin.derived("conversion between °C and °F"),
              "The display is in the other unit: 20 °C is 68 °F.")
          .also(Clue.UNIT_HOT, CLEAR)
          .also(Clue.UNIT_COLD, CLEAR)
          .trial(LOOK, "Read the cold kiln against a room thermometer.")
          .change("Settle the unit, and tell it in the keypad's file.");

  private static final Cause LOSS =
      Cause.of(
              "losing-heat",
              Side.KILN,
              Origin.practice(),
              "It loses more heat than it did: a door that does not shut, a vent left open, a worn seal.")
          .by(Clue.DOOR_OPENED, CLEAR)
          .also(Clue.BEHIND, CLEAR)
          .trial(LOOK, "In the dark, see whether light comes out round the door.")
          .change("Shut the vent, mend the seal; then fire the same plan again.");

  private static final Cause LOAD =
      Cause.of(
              "load-heavier",
              Side.HANDLING,
              Origin.practice(),
              "There is more, or wetter, in it than the plan took it to be.")
          .by(Clue.CROWDED, CLEAR)
          .also(Clue.DAMP, CLEAR)
          .trial(LOOK, "Compare load and shelves with the plan's.")
          .change("Tell the load as it is, and let the plan be made anew.");

  private static final Cause TARGET_BEYOND =
      Cause.of(
              "target-beyond-kiln",
              Side.SCHEDULE,
              Origin.practice(),
              "The target, or its rate, is beyond what this kiln can do.")
          .by(Clue.UNIT_HOT, CLEAR)
          .also(Clue.KEYED_HOTTER, CLEAR)
          .also(Clue.PLAN_HOT, WEAK)
          .trial(LOOK, "Compare the target with the kiln's plate.")
          .change("Let the plan be made for this kiln.");

  private static final Cause STOPPED_ITSELF =
      Cause.of(
              "controller-stopped",
              Side.KILN,
              Origin.practice(),
              "The controller stopped by itself: an alarm, a limit, or its rule after a cut.")
          .also(Clue.HEAT_AWAY, CLEAR)
          .also(Clue.PEAK_ABOVE, WEAK)
          .trial(
              LOOK, "Write down what the display shows, and look it up in the controller's manual.")
          .change("Mend what it names; then fire the same plan again.");

  private static final Cause SHORT_PROGRAM =
      Cause.of(
              "program-ended",
              Side.KEYPAD,
              Origin.practice(),
              "The program simply ended: a segment or a hold is missing in the slot.")
          .by(Clue.KEYED_SHORTER, STRONG)
          .trial(MINUTES, "Read the slot back, blind: the number of segments and each hold.")
          .change("Key the plan again and read it back; change nothing else.");

  /** What a kiln does. */
  static List<Suspect> of(String sign) {
    return switch (sign) {
      case "stays-cold" ->
          List.of(
              often(WAITING),
              fair(WRONG_SLOT),
              often(NO_POWER),
              rare(SENSOR_SHORT),
              rare(CommonCauses.HEAT_AWAY));
      case "never-there" ->
          List.of(
              often(CommonCauses.POWER_DOWN),
              fair(LOSS),
              fair(LOAD),
              fair(TARGET_BEYOND),
              rare(CommonCauses.UNIT_COLD),
              fair(CommonCauses.KEYED_COOL),
              rare(CommonCauses.HEAT_AWAY),
              rare(CommonCauses.READS_LOW));
      case "stopped" ->
          List.of(
              often(CommonCauses.HEAT_AWAY),
              fair(STOPPED_ITSELF),
              fair(SHORT_PROGRAM),
              fair(CommonCauses.POWER_DOWN),
              rare(SENSOR_OPEN));
      case "too-hot" -> together(List.of(rare(SENSOR_SHORT), rare(SENSOR_CROSSED)), tooHot());
      case "reads-odd" ->
          List.of(fair(SENSOR_OPEN), fair(SENSOR_CROSSED), fair(UNIT_SHOWN), rare(SENSOR_SHORT));
      case "other" -> CommonCauses.ofAnything();
      default -> List.of();
    };
  }

  private static final Cause COOLED =
      Cause.of(
              "heated-or-cooled-fast",
              Side.SCHEDULE,
              Origin.practice(),
              "It was heated or cooled faster than it bears.")
          .by(Clue.ROSE_FAST, CLEAR)
          .also(Clue.FELL_FAST, CLEAR)
          .also(Clue.OPENED_EARLY, CLEAR)
          .also(Clue.PLAN_FAST, WEAK)
          .trial(LOOK, "Look in the log for the fastest quarter of an hour.")
          .change("Heat at two thirds of the rate.", Edit.times(Edit.What.RISES, 0.66));

  private static final Cause SHORT =
      Cause.of(
              "hold-short",
              Side.SCHEDULE,
              Origin.practice(),
              "The hold at the top was short for this work.")
          .by(Clue.HOLD_SHORT, CLEAR)
          .also(Clue.INSIDE_SHORT, CLEAR)
          .trial(Trial.Effort.FIRING, "Fire a test piece for half as long again.")
          .change("Hold a quarter longer at the top.", Edit.times(Edit.What.TOP_HOLD, 1.25));

  private static final Cause HOT =
      Cause.of("target-high", Side.SCHEDULE, Origin.practice(), "The target is high for this work.")
          .also(Clue.PLAN_HOT, CLEAR)
          .also(Clue.INSIDE_HOT, CLEAR)
          .trial(Trial.Effort.FIRING, "Fire a test piece 20 K cooler.")
          .change("Fire 20 K cooler.", Edit.target(Edit.What.TOP_TARGET, -20));

  private static final Cause SUPPORT =
      Cause.of(
              "badly-supported",
              Side.HANDLING,
              Origin.practice(),
              "It lay hollow, and sagged while it was soft.")
          .by(Clue.TOUCHING, CLEAR)
          .trial(LOOK, "See whether it bent where it had no support.")
          .change("Support it better; leave the schedule.");

  /** Work of which only the schedule is known. */
  static List<Suspect> ofAny(String found) {
    return switch (found) {
      case "under-fired" ->
          together(List.of(fair(SHORT), fair(CommonCauses.KEYED_SHORT)), CommonCauses.tooCool());
      case "over-fired" -> together(List.of(fair(HOT), fair(CommonCauses.KEYED_LONG)), tooHot());
      case "crack" ->
          List.of(fair(COOLED), fair(CommonCauses.KEYED_FAST), rare(CommonCauses.DOOR_OPENED));
      case "warped" -> together(List.of(fair(SUPPORT), fair(HOT)), tooHot());
      case "other" -> CommonCauses.ofAnything();
      default -> List.of();
    };
  }
}
