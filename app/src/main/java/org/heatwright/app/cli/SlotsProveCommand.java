package org.heatwright.app.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.heatwright.app.api.Answers;
import org.heatwright.app.files.InputException;
import org.heatwright.app.json.SlotsJson;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.ReadbackReport.Outcome;
import org.heatwright.keypad.Shown;
import org.heatwright.keypad.register.Evidence;
import org.heatwright.keypad.register.SlotEvent;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Answers(SlotsJson.class)
@Command(
    name = "prove",
    description = {
      "Keeps a blind read-back with its slot, whatever came of it; exit code 0 only if it is proven.",
      "The file of what the display showed comes from heatwright readback --questions and names the slot."
    },
    footerHeading = "%nExamples:%n",
    footer = "  heatwright slots prove burnout.yaml --shown shown.yaml --kiln Anchor --by student")
final class SlotsProveCommand extends SlotsAction {

  @Parameters(paramLabel = "S", description = "Schedule file: what should be in the slot.")
  private Path schedulePath;

  @Option(
      names = "--shown",
      required = true,
      paramLabel = "FILE",
      description = "What the review showed.")
  private Path shownPath;

  @Option(names = "--by", required = true, paramLabel = "ROLE", description = SlotsCommand.ROLES)
  private String by;

  @Mixin private ColdKiln coldKiln;

  SlotsProveCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  List<String> act(Place place) {
    FittedProgram program = SlotsPutCommand.fitted(schedulePath, place);
    Shown shown = Input.shown(shownPath);
    OptionalInt slot =
        place.keypad().slots() == 1 && shown.slot().isEmpty() ? OptionalInt.of(1) : shown.slot();
    if (slot.isEmpty()) {
      throw InputException.in(
          String.valueOf(shownPath.getFileName()),
          "the slot is missing, and a read-back of an unknown slot proves nothing; add a line such as slot: 3.");
    }
    Slots.require(slot.getAsInt(), place.keypad());
    Evidence evidence =
        new Evidence(
            program.expressible(), place.keypad(), slot.getAsInt(), shown, coldKiln.check());
    place
        .book()
        .tell(place.kiln(), place.name(), new SlotEvent.ReadBack(place.now(), role(by), evidence));
    code = evidence.report().outcome() == Outcome.PROVEN ? Answer.DONE : Answer.STOP;
    Optional<String> finding = evidence.report().findings().stream().findFirst();
    return List.of(
        finding.orElseGet(
            () ->
                place
                    .register()
                    .standing(slot.getAsInt(), place.now())
                    .sentence(place.now(), place.zone())));
  }
}
