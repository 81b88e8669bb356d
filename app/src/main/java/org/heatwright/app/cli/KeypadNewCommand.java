package org.heatwright.app.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.heatwright.app.describe.Described;
import org.heatwright.app.describe.Interview;
import org.heatwright.app.describe.Question;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.TextFile;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

@Command(
    name = "new",
    description = {
      "Describes an unknown keypad: asks what to try at the controller, and writes the keypad file from the answers.",
      "Some fifty short questions, ten minutes."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  heatwright keypad new -o keypad.yaml",
      "  heatwright keypad new --answers answers.txt -o keypad.yaml",
      "",
      "Answer ? where nobody knows; undo takes the last answer back, undo NAME that one,",
      "list shows all. A file of answers has lines such as  slots: 4"
    })
final class KeypadNewCommand implements Callable<Integer> {

  private static final String UNDO = "undo";

  @Option(
      names = "--answers",
      paramLabel = "FILE",
      description = "Answers given before: a name and an answer a line; the rest is asked.")
  private Optional<Path> answersPath;

  @Option(
      names = {"-o", "--output"},
      paramLabel = "P",
      description =
          "Write the keypad there. A keypad that is there already is kept under its name with ~ at"
              + " the end; any other file is left alone.")
  private Optional<Path> output;

  @Option(names = "--help", usageHelp = true, description = "Show this help.")
  private boolean help;

  private final Surroundings surroundings;

  KeypadNewCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    output.ifPresent(path -> Output.requireReplaceable(path, Output.Kind.KEYPAD));
    Map<String, String> answers =
        answersPath.map(KeypadNewCommand::given).orElseGet(LinkedHashMap::new);
    BufferedReader in =
        new BufferedReader(new InputStreamReader(surroundings.in(), StandardCharsets.UTF_8));
    PrintStream out = surroundings.out();
    Interview interview = Interview.of(answers);
    String about = "";
    while (interview.pending().isPresent()) {
      Question question = interview.pending().get();
      Page page = new Page();
      if (!question.about().equals(about)) {
        about = question.about();
        page.blank().line(about.toUpperCase(java.util.Locale.ROOT));
      }
      out.print(asked(question, interview, page));
      out.print(question.id() + "> ");
      out.flush();
      take(line(in, interview, question), question, interview, answers);
      interview = Interview.of(answers);
    }
    finish(interview.described().orElseThrow(), in);
    return Answer.DONE;
  }

  private static Page asked(Question question, Interview interview, Page page) {
    page.blank();
    if (!interview.error().isEmpty()) {
      page.hanging("! ", interview.error());
    }
    page.hanging("%d. ".formatted(interview.answered().size() + 1), question.ask());
    int number = 0;
    for (Question.Option option : question.options()) {
      number++;
      String meaning = option.meaning().isEmpty() ? "" : ": " + option.meaning();
      page.hanging("   %2d  ".formatted(number), option.word() + meaning);
    }
    if (question.kind() == Question.Kind.SEVERAL) {
      page.hanging("   ", "Several, with commas between them; none if none.");
    }
    if (!question.look().isEmpty()) {
      page.hanging("   Try: ", question.look());
    }
    page.hanging("   Why: ", question.why());
    if (!question.example().isEmpty()) {
      page.hanging("   For example: ", question.example());
    }
    question.unknown().ifPresent(unsure -> page.hanging("   ?  ", "nobody knows: " + unsure));
    return page;
  }

  private void take(
      String line, Question question, Interview interview, Map<String, String> answers) {
    String typed = line.strip();
    String[] words = typed.split("\\s+", 2);
    if (typed.equals("list")) {
      Page page = new Page();
      for (Interview.Answered one : interview.answered()) {
        page.hanging("  %-20s ".formatted(one.question().id()), one.answer());
      }
      surroundings.out().print(page);
    } else if (words[0].equals(UNDO) || question.id().equals(Interview.MEND)) {
      List<Interview.Answered> before = interview.answered();
      String which =
          words[0].equals(UNDO)
              ? words.length > 1
                  ? words[1]
                  : before.isEmpty() ? "" : before.get(before.size() - 1).question().id()
              : option(question, typed);
      if (answers.remove(which) == null) {
        surroundings
            .out()
            .println("There is no answer \"%s\" to take back; list shows them.".formatted(which));
      }
    } else {
      answers.put(question.id(), typed);
    }
  }

  private static String option(Question question, String typed) {
    boolean number = typed.matches("\\d{1,3}");
    int index = number ? Integer.parseInt(typed) : 0;
    return index >= 1 && index <= question.options().size()
        ? question.options().get(index - 1).word()
        : typed;
  }

  private void finish(Described described, BufferedReader in) {
    Page page = new Page();
    page.blank().line("This is how it is described:").blank();
    KeypadCheckCommand.facts(described.keypad(), page);
    if (!described.unsure().isEmpty()) {
      page.blank().line("Not known yet:");
      described.unsure().forEach(u -> page.hanging("  - ", u.sentence()));
    }
    page.blank();
    if (output.isPresent()) {
      page.line(Output.write(output.get(), Output.Kind.KEYPAD, described.yaml()));
      page.line("To check it again at any time: heatwright keypad check " + output.get());
      page.line("To rehearse on it: heatwright send, or choose it on the bench.");
    } else {
      page.raw(described.yaml());
    }
    surroundings.out().print(page);
    surroundings.out().print("\nCheck it now, key by key, against the controller? yes or no> ");
    surroundings.out().flush();
    String wanted = next(in).orElse("no").strip();
    surroundings.out().println();
    if (wanted.equalsIgnoreCase("yes")) {
      Page keys = new Page();
      KeypadCheckCommand.keys(described.keypad(), keys);
      surroundings.out().print(keys);
    }
    surroundings.out().flush();
  }

  private static String line(BufferedReader in, Interview interview, Question question) {
    return next(in)
        .orElseThrow(
            () ->
                InputException.in(
                    "answers",
                    "%sthey end before the question \"%s\" (%s)."
                        .formatted(
                            interview.error().isEmpty() ? "" : interview.error() + " And ",
                            question.id(),
                            question.ask())));
  }

  private static Optional<String> next(BufferedReader in) {
    try {
      return Optional.ofNullable(in.readLine());
    } catch (IOException e) {
      throw InputException.in(
          "answers", "they cannot be read (%s).".formatted(e.getClass().getSimpleName()));
    }
  }

  private static Map<String, String> given(Path path) {
    String name = String.valueOf(path.getFileName());
    Map<String, String> answers = new LinkedHashMap<>();
    int number = 0;
    for (String line : TextFile.yaml(path).lines().toList()) {
      number++;
      int colon = line.indexOf(':');
      if (line.isBlank() || line.startsWith("#")) {
        continue;
      }
      if (colon < 1) {
        throw InputException.at(
            name, number, "\"%s\" is no answer; expected a line such as slots: 4.".formatted(line));
      }
      answers.put(line.substring(0, colon).strip(), line.substring(colon + 1).strip());
    }
    return Objects.requireNonNull(answers);
  }
}
