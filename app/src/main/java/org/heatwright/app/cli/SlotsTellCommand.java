package org.heatwright.app.cli;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.heatwright.app.api.Answers;
import org.heatwright.app.files.InputException;
import org.heatwright.app.json.SlotsJson;
import org.heatwright.keypad.register.Role;
import org.heatwright.keypad.register.Rules;
import org.heatwright.keypad.register.SlotEvent;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Answers(SlotsJson.class)
@Command(
    name = "tell",
    description = {
      "Notes what happened.",
      "Of the whole keypad: power-cut, fired-by-other, unit-switched, reset, rules (--good-for, --keeps-programs). Of one slot (--slot): edited, ran, needed (--what, --until), released. Nothing is ever deleted."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  heatwright slots tell power-cut --kiln Anchor --by maker",
      "  heatwright slots tell needed --slot 3 --what \"Thursday class\" \\",
      "      --until 2026-12-10 --kiln Anchor --by teacher",
      "  heatwright slots tell rules --good-for 14 --kiln Anchor --by technician"
    })
final class SlotsTellCommand extends SlotsAction {

  private static final String EVENTS =
      "power-cut, fired-by-other, unit-switched, reset, rules, edited, ran, needed or released";

  @Parameters(paramLabel = "EVENT", description = "What happened.")
  private String event;

  @Option(names = "--slot", paramLabel = "N", description = "Program slot.")
  private Optional<Integer> slot;

  @Option(names = "--by", required = true, paramLabel = "ROLE", description = SlotsCommand.ROLES)
  private String by;

  @Option(names = "--what", paramLabel = "TEXT", description = "What the program is needed for.")
  private Optional<String> what;

  @Option(
      names = "--until",
      paramLabel = "DATE",
      description = "Last day it is needed, such as 2026-12-10; for good without it.")
  private Optional<String> until;

  @Option(
      names = "--good-for",
      paramLabel = "DAYS",
      description = "A proof is good for so many days, 1 to 366.")
  private Optional<Integer> goodForDays;

  @Option(
      names = "--keeps-programs",
      description = "You tried it: programs read the same after the power was off.")
  private boolean keepsPrograms;

  SlotsTellCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  List<String> act(Place place) {
    place.book().tell(place.kiln(), place.name(), event(place, role(by), place.now()));
    return List.of();
  }

  private SlotEvent event(Place place, Role role, Instant now) {
    return switch (event) {
      case "power-cut" -> new SlotEvent.PowerCut(now, role);
      case "fired-by-other" -> new SlotEvent.FiredByOther(now, role);
      case "unit-switched" -> new SlotEvent.UnitSwitched(now, role);
      case "reset" -> new SlotEvent.Reset(now, role);
      case "rules" -> new SlotEvent.RulesSet(now, role, rules());
      case "edited" -> new SlotEvent.Edited(now, role, slot(place));
      case "ran" -> new SlotEvent.Ran(now, role, slot(place));
      case "needed" -> new SlotEvent.Protected(now, role, slot(place), what(), until());
      case "released" -> new SlotEvent.Released(now, role, slot(place));
      default ->
          throw InputException.in(
              "EVENT", "\"%s\" is no event; expected %s.".formatted(event, EVENTS));
    };
  }

  private int slot(Place place) {
    int number =
        slot.orElseThrow(
            () ->
                InputException.in("--slot", "\"%s\" is of one slot; say which.".formatted(event)));
    Slots.require(number, place.keypad());
    return number;
  }

  private Rules rules() {
    int days = goodForDays.orElse(Rules.USUAL.goodForDays());
    if (days < 1 || days > 366) {
      throw InputException.in("--good-for", "%d is not 1 to 366 days.".formatted(days));
    }
    return new Rules(days, keepsPrograms);
  }

  private String what() {
    return what.map(String::strip)
        .filter(w -> !w.isEmpty())
        .orElseThrow(() -> InputException.in("--what", "say what the program is needed for."));
  }

  private Optional<LocalDate> until() {
    return until.map(
        text -> {
          try {
            return LocalDate.parse(text.strip());
          } catch (java.time.DateTimeException e) {
            throw InputException.in(
                "--until", "\"%s\" is no date; expected one like 2026-12-10.".formatted(text));
          }
        });
  }
}
