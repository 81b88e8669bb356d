package org.heatwright.app.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.heatwright.app.api.Answers;
import org.heatwright.app.describe.KeypadWords;
import org.heatwright.app.json.KeypadJson;
import org.heatwright.keypad.Keypad;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

@Answers(KeypadJson.class)
@Command(
    name = "check",
    description = {
      "Reads a keypad's description back in words: what it holds, and what each key does in each state.",
      "Stand at the controller and compare."
    },
    footerHeading = "%nExamples:%n",
    footer = {"  heatwright keypad check keypad.yaml"})
final class KeypadCheckCommand implements Callable<Integer> {

  @Parameters(paramLabel = "P", description = "Keypad file.")
  private Path path;

  @Mixin private Answer answer;

  private final Surroundings surroundings;

  KeypadCheckCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    Keypad keypad = Input.keypad(path);
    Page page = new Page();
    facts(keypad, page);
    keys(keypad, page);
    answer.give(surroundings, KeypadJson.of(keypad), page);
    return Answer.DONE;
  }

  static void facts(Keypad keypad, Page page) {
    KeypadWords.facts(keypad).forEach(fact -> page.hanging("  - ", fact));
  }

  static void keys(Keypad keypad, Page page) {
    for (KeypadWords.Section section : KeypadWords.keys(keypad)) {
      page.blank().line(section.state() + ":");
      for (KeypadWords.Line line : section.keys()) {
        page.hanging("  %-16s ".formatted(line.key()), line.does());
      }
    }
    page.blank()
        .line(
            "Compare key by key with the controller, on a cold kiln. What differs, correct in the"
                + " file.");
  }
}
