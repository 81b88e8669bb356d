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

/** Annealed, solution-treated, aged and warmed metal. */
final class HeatTreatCauses {

  private static final Origin STERLING =
      Origin.read("bench-forum threads and a mirror page on hardening sterling");
  private static final Origin GOLD =
      Origin.read("a refiner's page on heat-treating gold and silver");
  private static final Origin RED =
      Origin.read(
          "bench-forum thread on annealing gold: red 18 ct is quenched from above about 427 °C");
  private static final Origin TEXT =
      Origin.memory("ASM Handbook vol. 4, Heat Treating: solution, quench, ageing, overageing");

  private HeatTreatCauses() {}

  private static final Cause SOAK =
      Cause.of(
              "soak-short",
              Side.SCHEDULE,
              GOLD,
              "The piece itself was at its heat for less time than the display was.")
          .by(Clue.INSIDE_SHORT, STRONG)
          .also(Clue.HOLD_SHORT, CLEAR)
          .also(Clue.THICK, WEAK)
          .trial(FIRING, "Treat a scrap of the same thickness for half as long again, and compare.")
          .change("Soak half as long again.", Edit.times(Edit.What.TOP_HOLD, 1.5));

  private static final Cause NO_SOLUTION =
      Cause.of(
              "no-solution",
              Side.HANDLING,
              STERLING,
              "The solution heat was missing, cool, or its quench came late: then ageing has nothing to work on.")
          .by(Clue.QUENCH_SLOW, STRONG)
          .also(Clue.SOLDERED, WEAK)
          .trial(
              LOOK, "Count the seconds from the kiln to the water: a thin piece has two or three.")
          .trial(MINUTES, "File or bend a scrap before and after.")
          .change("Do the solution heat, and quench at once, before the ageing is fired again.");

  private static final Cause OVERAGED =
      Cause.of(
              "overaged",
              Side.SCHEDULE,
              TEXT,
              "It was aged too hot or for too long: it had been hard, and went soft again.")
          .by(Clue.PEAK_ABOVE, CLEAR)
          .also(Clue.HOLD_LONG, CLEAR)
          .also(Clue.OUT_LATE, CLEAR)
          .also(Clue.INSIDE_HOT, CLEAR)
          .trial(
              FIRING,
              "Age three scraps of one solution heat for half the time, the time and twice the time.")
          .change("Age for two thirds of the time.", Edit.times(Edit.What.TOP_HOLD, 0.66));

  private static final Cause UNDERAGED =
      Cause.of("underaged", Side.SCHEDULE, TEXT, "It was aged too cool or for too short a time.")
          .by(Clue.INSIDE_SHORT, CLEAR)
          .also(Clue.HOLD_SHORT, CLEAR)
          .also(Clue.PEAK_BELOW, CLEAR)
          .trial(
              FIRING,
              "Age three scraps of one solution heat for half the time, the time and twice the time.")
          .change("Age half as long again.", Edit.times(Edit.What.TOP_HOLD, 1.5));

  private static final Cause REHEATED =
      Cause.of(
              "heated-again",
              Side.HANDLING,
              STERLING,
              "It was soldered or heated again afterwards: that undoes the hardening.")
          .needs(Clue.REHEATED)
          .trial(LOOK, "Ask what was done to it after the treatment.")
          .change("Harden last, after all soldering.");

  private static final Cause SLOW_COOLED =
      Cause.of(
              "cooled-slowly",
              Side.HANDLING,
              RED,
              "It cooled slowly through the range in which this alloy orders or hardens.")
          .by(Clue.QUENCH_SLOW, CLEAR)
          .trial(
              MINUTES, "Anneal a scrap and quench it, a second one and let it cool, and bend both.")
          .change("Quench as the card says for this alloy; leave the schedule.");

  private static final Cause COOL_ANNEAL =
      Cause.of(
              "anneal-cool",
              Side.SCHEDULE,
              GOLD,
              "The heat is low for this alloy and how hard it was worked.")
          .also(Clue.INSIDE_SHORT, CLEAR)
          .unless(Clue.COLD_WORKED, WEAK)
          .trial(FIRING, "Anneal a scrap 25 K hotter and bend both.")
          .change("Anneal 25 K hotter.", Edit.target(Edit.What.TOP_TARGET, 25));

  private static final Cause GRAIN =
      Cause.of(
              "grain-grown",
              Side.SCHEDULE,
              Origin.memory(
                  "Untracht, Jewelry Concepts and Technology: overheated metal shows orange peel when it is bent"),
              "It was hot for too long, and its grain grew.")
          .by(Clue.PEAK_ABOVE, CLEAR)
          .also(Clue.HOLD_LONG, CLEAR)
          .also(Clue.OUT_LATE, CLEAR)
          .also(Clue.INSIDE_HOT, CLEAR)
          .also(Clue.PLAN_HOT, WEAK)
          .trial(FIRING, "Anneal a scrap for half the time and bend both.")
          .change("Anneal 25 K cooler.", Edit.target(Edit.What.TOP_TARGET, -25));

  private static final Cause LITTLE_WORK =
      Cause.of(
              "little-cold-work",
              Side.HANDLING,
              TEXT,
              "It was bent or rolled only a little before the heat: then few, large grains grow.")
          .unless(Clue.COLD_WORKED, CLEAR)
          .trial(
              LOOK,
              "Ask by how much it was thinned since the last annealing: under about a tenth is little.")
          .change("Work it by a third or more between two annealings; leave the schedule.");

  private static final Cause AIR =
      Cause.of(
              "air-reached",
              Side.HANDLING,
              Origin.practice(),
              "Air reached the hot metal: copper in the alloy oxidises, in the skin and below it.")
          .by(Clue.AIR_REACHED, CLEAR)
          .also(Clue.HOLD_LONG, WEAK)
          .also(Clue.PEAK_ABOVE, WEAK)
          .trial(FIRING, "Heat a bare scrap and one in flux or a foil bag, side by side.")
          .change("Cover it with flux, foil or carbon; leave the schedule.");

  private static final Cause LONG_HOT =
      Cause.of(
              "long-hot",
              Side.SCHEDULE,
              Origin.practice(),
              "It was hot for longer than needed, and the oxide grew with the time.")
          .by(Clue.HOLD_LONG, CLEAR)
          .also(Clue.OUT_LATE, CLEAR)
          .trial(FIRING, "Treat a scrap for half the time, and compare skin and softness.")
          .change("Soak for half the time.", Edit.times(Edit.What.TOP_HOLD, 0.5));

  private static final Cause UNCLEAN =
      Cause.of(
              "unclean",
              Side.HANDLING,
              Origin.practice(),
              "Grease, old flux or pickle on the surface coloured it.")
          .by(Clue.UNCLEAN, CLEAR)
          .trial(LOOK, "See whether the colour follows fingers, drops or edges.")
          .change("Clean and dry it before the heat; leave the schedule.");

  private static final Cause QUENCHED_HOT =
      Cause.of(
              "quenched-hot",
              Side.HANDLING,
              Origin.read("bench-forum threads on annealing gold and white gold"),
              "It was quenched from too bright a heat for this alloy.")
          .by(Clue.QUENCHED, CLEAR)
          .trial(LOOK, "See whether the cracks run through thick and thin, and begin at edges.")
          .caution(
              "Hot metal in water spits and steams: tongs, glasses, the piece slid in edge first.")
          .change(
              "Let it fall below visible red, or cool it in air, as the card says for this alloy.");

  private static final Cause NOT_QUENCHED =
      Cause.of(
              "not-quenched",
              Side.HANDLING,
              RED,
              "It cooled slowly although this alloy has to be quenched: red gold cracks then.")
          .by(Clue.QUENCH_SLOW, CLEAR)
          .trial(LOOK, "Look up on the card whether the alloy is to be quenched.")
          .change("Quench it from above 430 °C as the card says.");

  private static final Cause STRESSED =
      Cause.of(
              "worked-hard",
              Side.HANDLING,
              Origin.practice(),
              "It was full of stress from bending or drawing, and the heat let it go all at once.")
          .by(Clue.COLD_WORKED, CLEAR)
          .also(Clue.ROSE_FAST, CLEAR)
          .trial(LOOK, "See whether it cracked or moved where it had been bent most.")
          .change("Heat at half the rate.", Edit.times(Edit.What.RISES, 0.5));

  private static final Cause SUPPORT =
      Cause.of(
              "badly-supported",
              Side.HANDLING,
              Origin.practice(),
              "It lay hollow, and sagged while it was soft.")
          .by(Clue.TOUCHING, CLEAR)
          .also(Clue.INSIDE_HOT, WEAK)
          .trial(LOOK, "See whether it bent where it had no support.")
          .change("Lay it flat on a block or mesh; leave the schedule.");

  private static final Cause SOLDER =
      Cause.of(
              "solder-flowed",
              Side.SCHEDULE,
              STERLING,
              "Solder, or an alloy with less silver or gold than named, melts below the metal itself.")
          .by(Clue.SOLDERED, CLEAR)
          .trial(LOOK, "See whether only the joints have flowed.")
          .change("Name the solder in the work's file, so that the plan stays below its flow.");

  private static final Cause SET_HOT =
      Cause.of(
              "target-high",
              Side.SCHEDULE,
              Origin.practice(),
              "The target is near the melting of this alloy.")
          .also(Clue.PLAN_HOT, CLEAR)
          .also(Clue.INSIDE_HOT, CLEAR)
          .also(Clue.NEW_BATCH, WEAK)
          .trial(LOOK, "Ask the supplier for the solidus of this alloy and compare.")
          .change("Fire 25 K cooler.", Edit.target(Edit.What.TOP_TARGET, -25));

  static List<Suspect> of(String found) {
    return switch (found) {
      case "too-hard" ->
          together(List.of(often(SOAK), fair(COOL_ANNEAL), fair(SLOW_COOLED)), tooCool());
      case "too-soft" ->
          together(
              List.of(often(NO_SOLUTION), fair(UNDERAGED), fair(OVERAGED), fair(REHEATED)),
              List.of(
                  rare(CommonCauses.UNIT_COLD),
                  fair(CommonCauses.KEYED_COOL),
                  fair(CommonCauses.READS_LOW),
                  fair(CommonCauses.READS_HIGH),
                  rare(CommonCauses.HEAT_AWAY)));
      case "coarse-grain" -> together(List.of(often(GRAIN), fair(LITTLE_WORK)), tooHot());
      case "fire-stain", "scale" ->
          List.of(
              often(AIR),
              fair(LONG_HOT),
              rare(UNCLEAN),
              fair(CommonCauses.KEYED_LONG),
              fair(CommonCauses.READS_LOW),
              rare(CommonCauses.UNIT_HOT));
      case "colour-off" ->
          List.of(
              often(UNCLEAN),
              fair(AIR),
              fair(CommonCauses.KEYED_HOT),
              fair(CommonCauses.KEYED_COOL),
              fair(CommonCauses.OVERSHOOT),
              rare(CommonCauses.READS_LOW),
              rare(CommonCauses.READS_HIGH));
      case "crack" ->
          List.of(
              fair(QUENCHED_HOT),
              fair(NOT_QUENCHED),
              fair(STRESSED),
              fair(SOLDER),
              rare(CommonCauses.KEYED_FAST));
      case "warped" ->
          List.of(
              often(SUPPORT),
              fair(STRESSED),
              fair(QUENCHED_HOT),
              rare(SET_HOT),
              rare(CommonCauses.READS_LOW));
      case "melted" -> together(List.of(fair(SOLDER), fair(SET_HOT)), tooHot());
      case "other" -> CommonCauses.ofAnything();
      default -> List.of();
    };
  }
}
