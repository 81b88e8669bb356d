package org.heatwright.work.causes;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * Something that is so of a firing or is not: found in the plan, the register of slots, the display
 * and the log, or told by a person. All of them can be told; {@link #question()} asks for it.
 */
public enum Clue {

  // ---- the keypad

  UNIT_HOT(
      "the numbers fit °F read as °C",
      "the numbers do not fit °F read as °C",
      "Were numbers meant in °F keyed into a keypad that was in °C? A cold kiln shows about 20 in °C and about 68 in °F."),
  UNIT_COLD(
      "the numbers fit °C read as °F",
      "the numbers do not fit °C read as °F",
      "Were numbers meant in °C keyed into a keypad that was in °F? A cold kiln shows about 20 in °C and about 68 in °F."),
  KEYED_HOTTER(
      "the slot held a hotter target than planned",
      "the slot held no hotter target than planned",
      "Does the slot hold a hotter target than was planned? Read it back to see."),
  KEYED_COOLER(
      "the slot held a cooler target than planned",
      "the slot held no cooler target than planned",
      "Does the slot hold a cooler target than was planned? Read it back to see."),
  KEYED_LONGER(
      "the slot held a longer hold than planned",
      "the slot held no longer hold than planned",
      "Does the slot hold a longer hold than was planned? Read it back to see."),
  KEYED_SHORTER(
      "the slot held a shorter hold, or a segment less, than planned",
      "the slot held every hold as long as planned",
      "Does the slot hold a shorter hold, or a segment less, than was planned? Read it back to see."),
  KEYED_FASTER(
      "the slot held a faster rate than planned",
      "the slot held no faster rate than planned",
      "Does the slot hold a faster rate than was planned? Read it back to see."),

  // ---- the display

  PEAK_ABOVE(
      "the display went above what was planned",
      "the display stayed at what was planned, or below",
      "Did the display go well above the planned highest temperature?"),
  PEAK_BELOW(
      "the display never came to what was planned",
      "the display came to what was planned",
      "Did the display stay well below the planned highest temperature?"),
  HOLD_SHORT(
      "the hold at the top was shorter than planned",
      "the hold at the top was as long as planned",
      "Was the hold at the highest temperature cut short?"),
  HOLD_LONG(
      "the kiln stayed at the top for longer than planned",
      "the kiln did not stay at the top for longer than planned",
      "Did the kiln stay at its highest temperature for much longer than planned?"),
  ROSE_FAST(
      "the display rose faster than the work bears",
      "the display rose no faster than the work bears",
      "Did the kiln heat faster than planned at any time?"),
  FELL_FAST(
      "the display fell faster than the work bears",
      "the display fell no faster than the work bears",
      "Did the kiln cool faster than planned?"),
  HEAT_AWAY(
      "the heat was away for a while before the program's end",
      "the heat was never away before the program's end",
      "Was the power off for a while during the firing: a cut, a breaker, a plug?"),
  DOOR_OPENED(
      "the display fell as it does when the door is opened",
      "the display never fell as it does when the door is opened",
      "Was the door, lid or vent opened during the firing when the plan did not say so?"),
  NOT_RECOVERED(
      "the door was opened again before the display had come back",
      "the display came back to its working temperature each time",
      "Was the piece taken out before the display had come back to the working temperature?"),
  BEHIND(
      "the display was behind the forecast",
      "the display kept up with the forecast",
      "Did the kiln take clearly longer to heat than it used to?"),
  AHEAD(
      "the display was ahead of the forecast",
      "the display was not ahead of the forecast",
      "Did the kiln heat clearly faster than it used to?"),
  STAYED_COLD(
      "the display stayed at room temperature",
      "the display rose",
      "Does the display still show room temperature long after start was pressed?"),

  // ---- what the plan and the calculation say

  PLAN_HOT(
      "the inspection already warned that the plan is hot for this work",
      "the inspection found the plan not too hot for this work",
      "Was the plan hotter than the maker's data sheet says?"),
  PLAN_SHORT(
      "the inspection already warned that the plan is short for this work",
      "the inspection found the plan long enough for this work",
      "Was the hold shorter than the maker's data sheet says?"),
  PLAN_FAST(
      "the inspection already warned that the plan heats fast for this work",
      "the inspection found the plan slow enough for this work",
      "Was the plan faster than the maker's data sheet says?"),
  PLAN_COOLS_FAST(
      "the inspection already warned that the plan cools fast for this work",
      "the inspection found the plan's cooling slow enough for this work",
      "Was the cooling faster than the maker's data sheet says?"),
  INSIDE_HOT(
      "the work itself got hotter than it bears, by the calculation with the readings",
      "the work itself got no hotter than it bears, by the calculation with the readings",
      "Is there a sign that the work itself got hotter than the display, such as a witness that melted?"),
  INSIDE_SHORT(
      "the work itself was not hot for long enough, by the calculation with the readings",
      "the work itself was hot for long enough, by the calculation with the readings",
      "Is there a sign that the inside of the work stayed cooler than the display?"),
  INSIDE_STRAINED(
      "the work itself was unevenly hot, by the calculation with the readings",
      "the work itself was evenly hot, by the calculation with the readings",
      "Was any of the work much thicker than the rest, or hot on one side?"),
  OUT_EARLY(
      "the work came out before it was surely ready",
      "the work came out no earlier than it was ready",
      "Was the work taken out, or poured, before the ready time?"),
  OUT_LATE(
      "the work came out long after it was ready",
      "the work came out soon after it was ready",
      "Did the work stay in the kiln long after the ready time?"),

  // ---- the kiln

  READS_LOW(
      "the thermocouple reads low",
      "the thermocouple does not read low",
      "Does a second instrument, or a witness that melts, show that the kiln is hotter than its display?"),
  READS_HIGH(
      "the thermocouple reads high",
      "the thermocouple does not read high",
      "Does a second instrument, or a witness that melts, show that the kiln is cooler than its display?"),
  TIP_MOVED(
      "the thermocouple was moved, changed or touched",
      "the thermocouple was not touched",
      "Was the thermocouple moved, changed or touched since the last good firing?"),
  POWER_WEAK(
      "the kiln has less power than it had",
      "the kiln has the power that it had",
      "Is an element dark, or does the kiln no longer reach what it used to reach?"),
  SHARED_SUPPLY(
      "something else drew on the same supply",
      "nothing else drew on the same supply",
      "Did another kiln or heater run on the same circuit at the time?"),
  SWINGS(
      "the controller switches on and off and swings about its target",
      "the controller holds steadily",
      "Does the display swing up and down by more than ten degrees at a hold?"),
  CLICKS(
      "the controller calls for heat",
      "the controller calls for no heat",
      "Does the controller show that it calls for heat, or does its relay click?"),

  // ---- the load and how it was handled

  CROWDED(
      "the kiln was fuller than planned, or the work stood at an edge",
      "the kiln was loaded as planned",
      "Was the kiln fuller than planned, or did this piece stand near the door, an element or the thermocouple?"),
  AIR_SHUT(
      "little air could get in",
      "air could get in",
      "Was the vent shut, or was there no gap under the work for air?"),
  DAMP(
      "the work was still damp when it was heated",
      "the work was dry when it was heated",
      "Was the work still damp when it was heated?"),
  DRIED_OUT(
      "the mould stood for days and dried half out",
      "the mould was used in time and kept damp",
      "Did the mould stand for more than a day, or dry out, before it went into the kiln?"),
  STOOD_SHORT(
      "the mould stood for less than an hour before the heat",
      "the mould stood for long enough before the heat",
      "Did the mould stand for less than an hour after it was poured?"),
  MIX_OFF(
      "the mix or its handling was not as usual",
      "the mix and its handling were as usual",
      "Was the mix thinner or thicker than weighed, mixed for too long, or not brought under vacuum?"),
  NEW_BATCH(
      "the material is from a new batch or another maker",
      "the material is the usual batch",
      "Is the powder, clay, enamel, glass or metal from a new batch or another maker?"),
  UNCLEAN(
      "the surface was not clean",
      "the surface was clean",
      "May grease, dust, oxide or old flux have been on the work?"),
  REUSED_METAL(
      "much of the metal was used before",
      "the metal was mostly new",
      "Was more than half of the metal used before?"),
  METAL_HOT(
      "the metal was poured hotter than usual",
      "the metal was poured no hotter than usual",
      "Was the metal hotter than usual when it was poured?"),
  METAL_COOL(
      "the metal was poured cooler than usual, or little of it",
      "the metal was hot enough and enough of it",
      "Was the metal sluggish, or hardly enough of it, when it was poured?"),
  POUR_SLOW(
      "the mould waited outside before the pour",
      "the mould was poured at once",
      "Did the mould stand outside the kiln for more than a minute before the pour?"),
  THIN_FEED(
      "the sprue is thinner than the part that it feeds",
      "the sprue is thicker than the part that it feeds",
      "Is the sprue thinner than the thickest part that it feeds?"),
  KNOCKED(
      "the work was knocked or set down hard",
      "the work was not knocked",
      "Was the work knocked, dropped or set down hard?"),
  THICK_LAYER(
      "the layer was thick",
      "the layer was thin",
      "Was the layer thicker than usual, or thicker on one side?"),
  MANY_FIRINGS(
      "the piece has been fired often",
      "the piece has been fired only a few times",
      "Has this piece been fired more than eight times?"),
  NO_COUNTER(
      "there is no counter-enamel, or little",
      "the back carries counter-enamel",
      "Is the back bare, or its enamel much thinner than the front's?"),
  COOLED_HARD(
      "the hot piece was cooled hard",
      "the hot piece was cooled gently",
      "Did the hot piece meet cold steel, stone, water or a draught?"),
  TOUCHING(
      "pieces touched each other, the shelf or a support",
      "nothing touched the piece where it should not",
      "Did the piece touch another one, or lie on a bare or worn shelf, or sag over a support?"),
  THICK(
      "the piece is thicker than the plan took it to be",
      "the piece is as thick as the plan took it to be",
      "Is the thickest part thicker than what the plan was made for?"),
  CARBON_OLD(
      "the carbon was old, little or uncovered",
      "the carbon was fresh and covered all",
      "Was the carbon old, grey at the edges, or was a piece less than a finger from the box's wall?"),
  BINDER_LEFT(
      "the piece was dark inside before the second firing",
      "the piece was clean before the second firing",
      "Was the binder burnt out for a shorter time than planned, or was the piece dark when it was broken?"),
  QUENCH_SLOW(
      "it took long from the kiln to the water, or there was no quench",
      "it was quenched at once",
      "Did it take more than a few seconds from the kiln into the water, or was it not quenched at all?"),
  QUENCHED("it was quenched", "it was not quenched", "Was it quenched from a bright red heat?"),
  AIR_REACHED(
      "air reached the hot metal",
      "the metal was kept from air",
      "Was the metal bare of flux, foil, carbon or other cover?"),
  COLD_WORKED(
      "it was worked hard before the heat",
      "it was hardly worked before the heat",
      "Was it drawn, rolled or bent hard since it was last annealed?"),
  REHEATED(
      "it was soldered or heated again afterwards",
      "it was not heated again afterwards",
      "Was it soldered or heated again after this firing?"),
  SOLDERED(
      "it has solder joints", "it has no solder joints", "Are there solder joints in the piece?"),
  OPENED_EARLY(
      "the kiln was opened while it was still hot",
      "the kiln was opened when it was cold",
      "Was the kiln opened before it had cooled as the plan says?"),
  MIXED_GLASS(
      "two glasses lie in one piece",
      "all of the piece is one glass",
      "Are glasses of two makers or two expansions fused together?"),
  TRAPPED_AIR(
      "the sheets lie so that air is shut in",
      "air can get out between the sheets",
      "Do large sheets lie flat on each other, or on a shelf with a hollow?"),
  RESIN(
      "the pattern is printed resin or unknown",
      "the pattern is wax",
      "Is the pattern a printed resin?"),
  INSET(
      "there is something in the piece that bears less heat",
      "there is nothing in the piece that bears less heat",
      "Is there a stone, glass, cork or finding in the piece?"),
  PROGRAM_WAITS(
      "a delay still runs, or start was not pressed",
      "start was pressed and no delay runs",
      "Is a start delay keyed in, or may start not have been pressed?");

  private final String seen;
  private final String absent;
  private final String question;

  Clue(String seen, String absent, String question) {
    this.seen = seen;
    this.absent = absent;
    this.question = question;
  }

  /** Stable, in kebab-case: for addresses and files. */
  public String code() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  public static Optional<Clue> ofCode(String code) {
    return Arrays.stream(values()).filter(clue -> clue.code().equals(code)).findFirst();
  }

  /** A clause for where it is so, or for where it is not. */
  public String words(boolean isSo) {
    return isSo ? seen : absent;
  }

  /** Asks a person, to be answered by yes where it is so. */
  public String question() {
    return question;
  }
}
