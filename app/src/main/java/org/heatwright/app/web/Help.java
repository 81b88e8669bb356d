package org.heatwright.app.web;

import java.util.List;

/** What the help page says. */
final class Help {

  private Help() {}

  static HelpPage page(String clock) {
    return new HelpPage(clock, WORDS, CAUTIONS);
  }

  private static HelpPage.Word word(String word, String meaning) {
    return new HelpPage.Word(word, meaning);
  }

  /** Common practice, no source; the compositions state their own with sources. */
  private static final List<String> CAUTIONS =
      List.of(
          "A controller can fail with the elements on. Keep someone in reach, clear space around the"
              + " kiln and a high-limit cut-out of its own; Heatwright is not a safety device.",
          "Wax, resin and binders smoke: fire them under extraction or with the room aired, never in"
              + " a room where people sleep.",
          "Investment, enamel powder and fibre make dust that harms lungs: wet work, a fitted mask,"
              + " no dry sweeping. Some enamels and glazes hold lead: wash hands, nothing to eat"
              + " nearby.",
          "Above 700 °C the open door glares and burns: glasses made for it, gloves to the elbow,"
              + " natural fibres, hair tied back.",
          "Molten metal and hot flasks: a dry floor, dry tools, a clear way to the pour. Water under"
              + " hot metal becomes steam at once.",
          "Switch the kiln off before the door opens where elements lie bare, and whenever a tool of"
              + " metal goes in.",
          "Quench only what may be quenched; hot work in water spits. Pickle is acid: put work in,"
              + " not water on it.",
          "The makers' data sheets, the kiln's manual and local codes go before anything said here.");

  private static final List<HelpPage.Word> WORDS =
      List.of(
          word("Schedule", "Ramps and holds in order: what the firing is meant to do."),
          word("Segment", "One ramp to a target and the hold there."),
          word(
              "Ramp",
              "The way to a target, at a rate such as 150 °C/h or as fast as the kiln can."),
          word("Hold, soak", "Time at a target. Its clock may start when the display gets there."),
          word("Setpoint", "What the controller wants at this moment; the display may lag behind."),
          word("Program, slot", "A schedule as a controller stores it, under a number."),
          word("Start delay", "Time that the controller waits after start is pressed."),
          word("Band", "Where nine firings in ten should lie; the line in it is the middle one."),
          word("Full power", "The elements on without a pause: the kiln cannot follow any faster."),
          word(
              "Flask, mould",
              "Investment round a wax, in its ring; the metal goes where the wax was."),
          word("Investment", "The powder a mould is made of: gypsum-bonded or phosphate-bonded."),
          word("Burnout", "Drying a mould and burning out its wax or resin, before the pour."),
          word("Core", "The innermost of a mould: the last place to get hot."),
          word("Solidus", "Where an alloy begins to melt. No work goes near it."),
          word("Counter-enamel", "Enamel on the back, so that the piece neither bows nor cracks."),
          word(
              "Sintering", "Metal powder growing together below its melting point, and shrinking."),
          word("Annealing", "Softening metal, or letting stress out of glass, by time at heat."),
          word("Strain point", "Below it glass keeps the stress it has; above, stress flows away."),
          word("Heat-work", "Temperature and time together, told as minutes at one temperature."),
          word("Read-back", "The review of a stored program, typed here without seeing the plan."),
          word("Learned kiln", "A kiln whose power, losses and lag were fitted to its own logs."));
}
