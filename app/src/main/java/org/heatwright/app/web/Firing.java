package org.heatwright.app.web;

import java.time.ZonedDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.heatwright.app.report.Card;
import org.heatwright.forecast.CostEstimate;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.StartPlan;
import org.heatwright.inspect.Finding;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.Keypad;
import org.heatwright.kiln.Kiln;
import org.heatwright.work.Composition;
import org.heatwright.work.Outcome;
import org.heatwright.work.PourSheet;
import org.heatwright.work.Work;

/**
 * One planned firing, in the core's own values.
 *
 * @param choices what was chosen, with what was left open filled in
 * @param kiln where
 * @param keypad on what it is keyed in
 * @param slot the program slot
 * @param work what is in it
 * @param composition what the rules gave, settled for the program
 * @param kept field name to text of the edits that differ from it
 * @param program what will be keyed, the delay included
 * @param forecast of the program
 * @param press when a person presses start
 * @param start when what happens
 * @param inTime false if it cannot be ready by the time asked for
 * @param timeNotes what to know about these times
 * @param cost where the kiln has a tariff
 * @param outcomes what it does to the pieces
 * @param findings gravest first
 * @param pour what follows the firing, where moulds are poured
 * @param card everything a card prints
 * @param sketch true if one draw stands behind the forecast
 */
record Firing(
    Choices choices,
    Kiln kiln,
    Keypad keypad,
    int slot,
    Work work,
    Composition composition,
    Map<String, String> kept,
    FittedProgram program,
    Forecast forecast,
    ZonedDateTime press,
    StartPlan start,
    boolean inTime,
    List<String> timeNotes,
    Optional<CostEstimate> cost,
    List<Outcome> outcomes,
    List<Finding> findings,
    Optional<PourSheet> pour,
    Card card,
    boolean sketch) {}
