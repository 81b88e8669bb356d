package org.heatwright.app.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.heatwright.app.api.Answers;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.KeypadFile;
import org.heatwright.app.files.YamlText;
import org.heatwright.app.files.YamlValue;
import org.heatwright.app.json.KeyingJson;
import org.heatwright.app.store.Document;
import org.heatwright.app.store.Kind;
import org.heatwright.app.store.Store;
import org.heatwright.keypad.CheckFigures;
import org.heatwright.keypad.FitNote;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.KeypadFit;
import org.heatwright.keypad.human.SlipEstimate;
import org.heatwright.keypad.keying.KeyingPlanner;
import org.heatwright.keypad.keying.KeyingSheet;
import org.heatwright.keypad.keying.KeyingStep;
import org.heatwright.keypad.register.SlotRegister;
import org.heatwright.schedule.HourMinute;
import org.heatwright.schedule.Schedule;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Answers(KeyingJson.class)
@Command(
    name = "keying",
    description = {
      "Says what to press, prompt by prompt, to put a schedule into a keypad's slot.",
      "What the keypad cannot express is rounded toward safe and told, or refused (exit code 1)."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  heatwright keying schedule.yaml --keypad gull.yaml --slot 3",
      "  heatwright keying schedule.yaml --keypad tern.yaml --slot 1 --held before.yaml",
      "  heatwright keying schedule.yaml --keypad tern.yaml --slot 1 --kiln Capstan"
    })
final class KeyingCommand implements Callable<Integer> {

  @Parameters(paramLabel = "S", description = "Schedule file.")
  private Path schedulePath;

  @Option(names = "--keypad", required = true, paramLabel = "P", description = "Keypad file.")
  private Path keypadPath;

  @Option(
      names = "--slot",
      required = true,
      paramLabel = "N",
      description = "Program slot to key it into.")
  private int slot;

  @Option(
      names = "--held",
      paramLabel = "HELD",
      description = "Schedule file: what the slot holds now, for fewer presses.")
  private Optional<Path> heldPath;

  @Option(
      names = "--kiln",
      paramLabel = "NAME",
      description =
          "Kiln on the shelf whose slot register is asked what the slot holds; it warns before a needed or unknown program is overwritten.")
  private Optional<String> kiln;

  @Mixin private OwnStore ownStore;

  @Mixin private Answer answer;

  private final Surroundings surroundings;

  KeyingCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    Keypad keypad = Input.keypad(keypadPath);
    Slots.require(slot, keypad);
    FittedProgram program = KeypadFit.fit(Input.schedule(schedulePath), keypad);
    Optional<Schedule> held = heldPath.map(Input::schedule);
    List<String> warnings = new ArrayList<>();
    if (kiln.isPresent()) {
      held = fromRegister(program, keypad, held, warnings);
    } else if (ownStore.isNamed()) {
      throw InputException.in("--kiln", "say which kiln's register in that store.");
    }
    Optional<KeyingSheet> sheet =
        program.fits()
            ? Optional.of(KeyingPlanner.plan(program, keypad, slot, held))
            : Optional.empty();
    answer.give(
        surroundings,
        KeyingJson.of(
            program,
            keypad.name(),
            slot,
            sheet,
            program.fits() ? Optional.of(SlipEstimate.of(program, keypad)) : Optional.empty(),
            warnings),
        page(program, keypad, slot, sheet, warnings));
    return program.fits() ? Answer.DONE : Answer.STOP;
  }

  /** What the kiln's register says of the slot; a file given by the person counts more. */
  private Optional<Schedule> fromRegister(
      FittedProgram program, Keypad keypad, Optional<Schedule> held, List<String> warnings) {
    try (Store store = ownStore.open(surroundings)) {
      String shelved =
          store.all(Kind.KEYPAD).stream()
              .filter(d -> KeypadFile.read(d.text(), d.name()).equals(keypad))
              .map(Document::name)
              .findFirst()
              .orElseThrow(
                  () ->
                      InputException.in(
                          String.valueOf(keypadPath.getFileName()),
                          "no keypad on the shelf is described like this one, so it has no register there."));
      SlotsAction.Place place =
          SlotsAction.place(store, surroundings, kiln.orElseThrow(), Optional.of(shelved));
      SlotRegister register = place.register();
      if (program.fits()) {
        register
            .beforeKeying(slot, program, program.requested().name(), place.now(), place.zone())
            .forEach(w -> warnings.add(w.message()));
      }
      return held.isPresent() ? held : register.held(slot);
    }
  }

  private static Page page(
      FittedProgram program,
      Keypad keypad,
      int slot,
      Optional<KeyingSheet> sheet,
      List<String> warnings) {
    Page page = new Page();
    warnings.forEach(warning -> page.hanging("register  ", warning));
    if (sheet.isEmpty()) {
      page.line(
          "%s does not fit %s: do not key it."
              .formatted(program.requested().name(), keypad.name()));
      notes(program.notes(), page);
      return page;
    }
    page.line(
        "%s into slot %d of %s, in %s: %d steps, about %s by hand."
            .formatted(
                program.requested().name(),
                slot,
                keypad.name(),
                program.unit().symbol(),
                sheet.get().steps().size(),
                HourMinute.words(sheet.get().byHand())));
    notes(program.notes(), page);
    page.blank();
    for (KeyingStep step : sheet.get().steps()) {
      page.hanging("%3d  ".formatted(step.number()), step.prompt() + ": " + step.press());
      page.hanging("     ", display(step));
    }
    CheckFigures figures = program.checkFigures();
    page.blank()
        .line(
            "Check figures: %d segments; targets add up to %s; holds add up to %d min; first unused: %s."
                .formatted(
                    figures.segments(),
                    YamlText.number(figures.sumOfTargets()),
                    figures.totalMinutes(),
                    figures.firstUnused()))
        .line("Times: " + sheet.get().timesOrigin())
        .blank()
        .line(SlipEstimate.of(program, keypad).words())
        .line("Rates: " + SlipEstimate.ORIGIN.words() + ".");
    return page;
  }

  private static void notes(List<FitNote> notes, Page page) {
    for (FitNote note : notes) {
      page.hanging("%-9s ".formatted(YamlValue.word(note.kind())), note.message());
    }
  }

  /** "before: what was stored; after: 150 (150 °C)". */
  private static String display(KeyingStep step) {
    String before = step.showsBefore().isEmpty() ? "" : "before: " + step.showsBefore();
    String after = step.showsAfter().isEmpty() ? "" : "after: " + step.showsAfter();
    String meaning = step.meaning().isEmpty() ? "" : " (" + step.meaning() + ")";
    return before + (before.isEmpty() || after.isEmpty() ? "" : "; ") + after + meaning;
  }
}
