package org.heatwright.app.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.heatwright.app.api.Answers;
import org.heatwright.app.files.InputException;
import org.heatwright.app.json.SlotsJson;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.KeypadFit;
import org.heatwright.keypad.register.SlotEvent;
import org.heatwright.keypad.register.SlotWarning;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Answers(SlotsJson.class)
@Command(
    name = "put",
    description = {
      "Notes that a schedule was keyed into a slot.",
      "It is not proven by that: read it back (slots prove). A slot that somebody needs is not overwritten without --anyway."
    },
    footerHeading = "%nExamples:%n",
    footer = "  heatwright slots put burnout.yaml --kiln Anchor --slot 3 --by maker")
final class SlotsPutCommand extends SlotsAction {

  @Parameters(paramLabel = "S", description = "Schedule file.")
  private Path schedulePath;

  @Option(names = "--slot", required = true, paramLabel = "N", description = "Program slot.")
  private int slot;

  @Option(names = "--by", required = true, paramLabel = "ROLE", description = SlotsCommand.ROLES)
  private String by;

  @Option(names = "--anyway", description = "Even if the slot's program is needed.")
  private boolean anyway;

  SlotsPutCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  List<String> act(Place place) {
    Slots.require(slot, place.keypad());
    FittedProgram program = fitted(schedulePath, place);
    List<String> said = new ArrayList<>();
    for (SlotWarning warning :
        place
            .register()
            .beforeKeying(slot, program, program.requested().name(), place.now(), place.zone())) {
      if (warning.level() == SlotWarning.Level.STOP && !anyway) {
        throw InputException.in("--slot", warning.message() + " If it was, add --anyway.");
      }
      said.add(warning.message());
    }
    place
        .book()
        .tell(
            place.kiln(),
            place.name(),
            new SlotEvent.Keyed(place.now(), role(by), slot, program.expressible()));
    return said;
  }

  /** The schedule as the place's keypad expresses it. */
  static FittedProgram fitted(Path schedule, Place place) {
    FittedProgram program = KeypadFit.fit(Input.schedule(schedule), place.keypad());
    if (!program.fits()) {
      throw InputException.in(
          String.valueOf(schedule.getFileName()),
          "the schedule does not fit %s: %s"
              .formatted(place.name(), program.refusals().get(0).message()));
    }
    return program;
  }
}
