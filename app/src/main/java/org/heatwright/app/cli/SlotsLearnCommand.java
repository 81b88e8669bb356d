package org.heatwright.app.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.heatwright.app.api.Answers;
import org.heatwright.app.files.InputException;
import org.heatwright.app.json.SlotsJson;
import org.heatwright.keypad.ReviewReading;
import org.heatwright.keypad.Shown;
import org.heatwright.keypad.register.SlotEvent;
import org.heatwright.units.TemperatureUnit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

@Answers(SlotsJson.class)
@Command(
    name = "learn",
    description = {
      "Keeps what a slot holds that nobody has a plan of, from what its review shows in order: a file like that of readback.",
      "It proves nothing; one reading can be misread."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  heatwright slots learn --shown found.yaml --kiln Anchor --slot 5 \\",
      "      --name \"Old class program\" --by technician"
    })
final class SlotsLearnCommand extends SlotsAction {

  @Option(
      names = "--shown",
      required = true,
      paramLabel = "FILE",
      description = "What the review showed, in display order, to its end.")
  private Path shownPath;

  @Option(names = "--slot", required = true, paramLabel = "N", description = "Program slot.")
  private int slot;

  @Option(names = "--name", paramLabel = "NAME", description = "What to call the program.")
  private Optional<String> name;

  @Option(names = "--by", required = true, paramLabel = "ROLE", description = SlotsCommand.ROLES)
  private String by;

  SlotsLearnCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  List<String> act(Place place) {
    Slots.require(slot, place.keypad());
    Shown shown = Input.shown(shownPath);
    String file = String.valueOf(shownPath.getFileName());
    if (shown.slot().isPresent() && shown.slot().getAsInt() != slot) {
      throw InputException.in(
          "--slot",
          "%d is not the slot that %s names (%d).".formatted(slot, file, shown.slot().getAsInt()));
    }
    Optional<TemperatureUnit> told = ReviewReading.unitShown(place.keypad(), shown).or(shown::unit);
    if (place.keypad().units().switchable() && told.isEmpty()) {
      throw InputException.in(
          file,
          "the unit is missing, and %s can be in either; add a line such as unit: C."
              .formatted(place.name()));
    }
    TemperatureUnit unit = place.keypad().unitFor(told.orElse(TemperatureUnit.CELSIUS));
    String called =
        name.map(String::strip).filter(n -> !n.isEmpty()).orElse("Found in slot " + slot);
    ReviewReading.Result result = ReviewReading.read(place.keypad(), shown, unit, called);
    if (result.program().isEmpty()) {
      throw InputException.in(file, result.problem().orElse("this is no program."));
    }
    place
        .book()
        .tell(
            place.kiln(),
            place.name(),
            new SlotEvent.Learned(
                place.now(), role(by), slot, result.program().get(), result.notShown()));
    return new ArrayList<>(result.notShown());
  }
}
