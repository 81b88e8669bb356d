package org.heatwright.app.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.heatwright.app.api.Answers;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.TextFile;
import org.heatwright.app.json.RehearseJson;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.KeypadFit;
import org.heatwright.keypad.keying.Instruction;
import org.heatwright.keypad.keying.KeyText;
import org.heatwright.keypad.keying.KeyingPlanner;
import org.heatwright.keypad.keying.Rehearsal;
import org.heatwright.keypad.machine.Contents;
import org.heatwright.keypad.machine.Display;
import org.heatwright.keypad.machine.KeyJudge;
import org.heatwright.keypad.machine.KeypadMachine;
import org.heatwright.keypad.machine.MachineState;
import org.heatwright.schedule.Schedule;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Answers(RehearseJson.class)
@Command(
    name = "rehearse",
    description = {
      "Plays keys on a keypad's description and marks the first wrong one.",
      "Without --keys it plays those of the keying sheet.",
      "With --keys: a file, one a line or between commas: up, 3 x down,",
      "next 2 s (kept down), 730 (digits), turn 3, spin -12, until 732."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  heatwright rehearse schedule.yaml --keypad tern.yaml --slot 3",
      "  heatwright rehearse schedule.yaml --keypad tern.yaml --keys pressed.txt"
    })
final class RehearseCommand implements Callable<Integer> {

  @Parameters(paramLabel = "S", description = "Schedule file.")
  private Path schedulePath;

  @Option(names = "--keypad", required = true, paramLabel = "P", description = "Keypad file.")
  private Path keypadPath;

  @Option(
      names = "--slot",
      paramLabel = "N",
      defaultValue = "1",
      description = "Program slot it belongs in; 1 if left out.")
  private int slot;

  @Option(
      names = "--held",
      paramLabel = "HELD",
      description = "Schedule file: what the slot holds now; else it is blank.")
  private Optional<Path> heldPath;

  @Option(names = "--keys", paramLabel = "FILE", description = "What was pressed.")
  private Optional<Path> keysPath;

  @Mixin private Answer answer;

  private final Surroundings surroundings;

  RehearseCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    Keypad keypad = Input.keypad(keypadPath);
    Slots.require(slot, keypad);
    String name = String.valueOf(schedulePath.getFileName());
    FittedProgram program = FiredCard.fitted(Input.schedule(schedulePath), name, keypad);
    Optional<Schedule> held = heldPath.map(Input::schedule);
    KeypadMachine machine = new KeypadMachine(keypad);
    Map<Integer, Contents> slots =
        held.map(h -> KeypadFit.fit(h, keypad))
            .filter(h -> h.fits() && h.unit() == program.unit())
            .map(h -> Map.of(slot, Contents.of(h, keypad, machine.blank(program.unit()))))
            .orElse(Map.of());
    MachineState start = machine.idle(slots, program.unit());
    List<Instruction> keys =
        keysPath.isPresent() ? pressed(keysPath.get(), keypad) : planned(program, keypad, held);
    Rehearsal.Course course = play(machine, program, start, keys);
    answer.give(
        surroundings,
        RehearseJson.of(program.requested().name(), keypad.name(), slot, course),
        page(program, keypad, course));
    return course.done() ? Answer.DONE : Answer.STOP;
  }

  private Rehearsal.Course play(
      KeypadMachine machine, FittedProgram program, MachineState start, List<Instruction> keys) {
    try {
      return Rehearsal.play(machine, new KeyJudge(machine, program, slot), start, keys);
    } catch (IllegalArgumentException e) {
      throw InputException.in(
          keysPath.map(p -> String.valueOf(p.getFileName())).orElse("the sheet"),
          String.valueOf(e.getMessage()));
    }
  }

  private List<Instruction> planned(FittedProgram program, Keypad keypad, Optional<Schedule> held) {
    return KeyingPlanner.plan(program, keypad, slot, held).steps().stream()
        .takeWhile(step -> !step.prompt().equals("review"))
        .flatMap(step -> Stream.concat(step.make().stream(), step.go().stream()))
        .toList();
  }

  private static List<Instruction> pressed(Path path, Keypad keypad) {
    String file = String.valueOf(path.getFileName());
    List<Instruction> keys = new ArrayList<>();
    int number = 0;
    for (String line : TextFile.yaml(path).lines().toList()) {
      number++;
      for (String part : line.replaceFirst("#.*", "").split(",")) {
        if (part.isBlank()) {
          continue;
        }
        String where = "%s, line %d".formatted(file, number);
        try {
          List<Instruction> read = KeyText.read(part);
          read.forEach(key -> requireKey(key, keypad, where));
          keys.addAll(read);
        } catch (IllegalArgumentException e) {
          throw InputException.in(where, String.valueOf(e.getMessage()));
        }
      }
    }
    if (keys.isEmpty()) {
      throw InputException.in(file, "no key is in it; expected one a line, such as next 2 s.");
    }
    return keys;
  }

  private static void requireKey(Instruction instruction, Keypad keypad, String where) {
    if (instruction instanceof Instruction.Press press
        && !keypad.keys().contains(press.action().press().key())) {
      throw InputException.in(
          where,
          "%s has no key for \"%s\"; its keys are %s."
              .formatted(
                  keypad.name(),
                  KeyText.write(instruction),
                  keypad.keys().stream().map(k -> k.word()).sorted().toList()));
    }
  }

  private Page page(FittedProgram program, Keypad keypad, Rehearsal.Course course) {
    Page page = new Page();
    page.line(
        "%s into slot %d of %s, key by key:"
            .formatted(program.requested().name(), slot, keypad.name()));
    page.blank();
    for (int i = 0; i < course.played().size(); i++) {
      Rehearsal.Played played = course.played().get(i);
      String shows = shows(played.display());
      page.hanging(
          "%3d  ".formatted(i + 1),
          "%-14s %s".formatted(KeyText.write(played.instruction()), shows)
              + (played.does() ? "" : "  (does nothing here)"));
      if (course.firstWrong().isPresent() && course.firstWrong().getAsInt() == i) {
        page.hanging("     ", "<- first wrong key: " + played.wrong().orElse(""));
      }
    }
    page.blank();
    page.line(
        course.done()
            ? "Slot %d holds the plan. At the kiln it counts only when it has been read back."
                .formatted(slot)
            : "Slot %d does not hold the plan.".formatted(slot));
    return page;
  }

  private static String shows(Display display) {
    String value = display.value().isEmpty() ? "" : display.value() + "  ";
    String label = display.label().isEmpty() ? "" : display.label() + "  ";
    return label + value + display.words();
  }
}
