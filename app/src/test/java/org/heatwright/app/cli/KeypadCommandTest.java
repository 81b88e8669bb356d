package org.heatwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.heatwright.app.describe.Interview;
import org.heatwright.app.describe.Owner;
import org.heatwright.app.files.KeypadFile;
import org.heatwright.keypad.Keypad;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class KeypadCommandTest {

  @TempDir private Path dir;

  private static Run typing(List<String> lines, Object... args) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    String[] words = new String[args.length];
    for (int i = 0; i < args.length; i++) {
      words[i] = args[i].toString();
    }
    int code =
        Cli.run(
            new Surroundings(
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8),
                Clock.fixed(Run.NOON, ZoneOffset.UTC),
                Map.of(),
                Path.of("no-home"),
                () -> {},
                new ByteArrayInputStream(String.join("\n", lines).getBytes(StandardCharsets.UTF_8)),
                Optional.empty()),
            words);
    return new Run(
        code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }

  private static Keypad demo(String name) throws IOException {
    return KeypadFile.read(Files.readString(Studio.keypad(name)), name);
  }

  /** Its owner types, question by question, with slips on the way. */
  @Test
  void anUnknownKeypadIsDescribedAtTheTerminal() throws IOException {
    Map<String, String> knows = Owner.answers(demo("tern"));
    List<String> lines = new ArrayList<>();
    for (Interview.Answered one : Interview.of(knows).answered()) {
      String id = one.question().id();
      if (id.equals("slots")) {
        lines.addAll(List.of("many", "7", "list", "undo"));
      } else if (id.equals("rate-range")) {
        lines.addAll(List.of("undo display-digits", "4"));
      }
      lines.add(one.answer());
    }
    lines.add("yes");
    Path file = dir.resolve("keypad.yaml");
    Run run = typing(lines, "keypad", "new", "-o", file);
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
    assertThat(KeypadFile.read(Files.readString(file), "keypad.yaml")).isEqualTo(demo("tern"));
    assertThat(run.out())
        .contains("! \"many\"; expected a whole number from 1 to 999.", "Why: ", "Try: ")
        .contains("THE RATE", "This is how it is described:", "Written to " + file)
        .contains("While a value is keyed:", "Compare key by key");
    assertThat(run.out().lines())
        .allMatch(line -> line.length() <= 80 + "display-digits> ".length());
    assertThat(Files.readString(file)).contains("# unsure: whether switching converts");

    lines.set(0, "Another");
    Run again = typing(lines, "keypad", "new", "-o", file);
    assertThat(again.out().replaceAll("\\s+", " "))
        .contains("What was there is kept as " + file + "~");
  }

  @Test
  void answersComeFromAFileAndTheRestIsAsked() throws IOException {
    StringBuilder file = new StringBuilder("# the grey one\n");
    Owner.answers(demo("heron"))
        .forEach(
            (id, answer) -> {
              if (!id.equals("slots")) {
                file.append(id).append(": ").append(answer).append('\n');
              }
            });
    Path answers = Files.writeString(dir.resolve("answers.txt"), file);
    Path out = dir.resolve("heron.yaml");
    Run run = typing(List.of("6"), "keypad", "new", "--answers", answers, "-o", out);
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(KeypadFile.read(Files.readString(out), "heron")).isEqualTo(demo("heron"));

    Run ended = typing(List.of(), "keypad", "new", "--answers", answers);
    assertThat(ended.code()).isEqualTo(2);
    assertThat(ended.err())
        .isEqualToIgnoringNewLines(
            "answers: they end before the question \"slots\" (How many programs can it store?).");
    Path wrong = Files.writeString(dir.resolve("wrong.txt"), "name: x\nslots 4\n");
    assertThat(typing(List.of(), "keypad", "new", "--answers", wrong).err())
        .isEqualToIgnoringNewLines(
            "wrong.txt, line 2: \"slots 4\" is no answer; expected a line such as slots: 4.");
  }

  @Test
  void aClashIsMendedByChangingOneAnswer() throws IOException {
    Map<String, String> knows = Owner.answers(demo("gull"));
    knows.put("review", "program");
    StringBuilder file = new StringBuilder();
    knows.forEach((id, answer) -> file.append(id).append(": ").append(answer).append('\n'));
    Path answers = Files.writeString(dir.resolve("answers.txt"), file);
    Path out = dir.resolve("gull.yaml");
    Run run =
        typing(List.of("review", "confirm"), "keypad", "new", "--answers", answers, "-o", out);
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(run.out()).contains("cannot be told apart");
    assertThat(KeypadFile.read(Files.readString(out), "gull")).isEqualTo(demo("gull"));
  }

  @Test
  void aDescriptionIsReadBackInWords() {
    Run run = Run.of("keypad", "check", Studio.keypad("petrel"));
    assertThat(run.code()).isZero();
    assertThat(run.out())
        .contains(
            "Each value is kept as it is taken.", "In the list of values:", "opens the value");
    assertThat(run.out().lines()).allMatch(line -> line.length() <= 80);
    assertThat(Run.of("keypad", "check", Studio.keypad("petrel"), "--json").out())
        .contains("\"state\" : \"On the idle display\"");
    assertThat(Run.of("keypad", "check", Studio.kiln("anchor")).err())
        .contains("this looks like a kiln file; a keypad file is expected.");
  }
}
