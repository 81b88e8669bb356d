package org.heatwright.app.web;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.heatwright.app.describe.Described;
import org.heatwright.app.describe.Interview;
import org.heatwright.app.describe.KeypadWords;

/** Asks about a keypad. The page carries its answers along, so that each page stands by itself. */
final class DescribeDesk {

  private static final String GIVEN = "a-";
  private static final int MOST_ANSWERS = 120;
  private static final int LONGEST_ANSWER = 300;

  private DescribeDesk() {}

  /** What a form says: the answers before, and the one just given or taken back. */
  record Told(Map<String, String> answers, Interview interview) {}

  /**
   * @param form field name to values: {@code a-ID} an answer given before; {@code id} and {@code
   *     answer} a new one; {@code unknown} nobody knows; {@code undo} the id of one taken back
   */
  static Told told(Map<String, List<String>> form) {
    Map<String, String> answers = new LinkedHashMap<>();
    form.forEach(
        (name, values) -> {
          if (name.startsWith(GIVEN) && answers.size() < MOST_ANSWERS) {
            answers.put(name.substring(GIVEN.length()), shortened(values.get(0)));
          }
        });
    Optional<String> undo = first(form, "undo");
    Optional<String> id = first(form, "id");
    if (undo.isPresent()) {
      answers.remove(undo.get());
    } else if (id.isPresent() && !first(form, "unknown").isEmpty()) {
      answers.put(id.get(), Interview.UNKNOWN);
    } else if (id.isPresent()) {
      String answer =
          form.getOrDefault("answer", List.of()).stream().collect(Collectors.joining(", "));
      if (id.get().equals(Interview.MEND)) {
        answers.remove(answer);
      } else {
        boolean several = form.containsKey("several");
        answers.put(id.get(), answer.isBlank() && several ? "none" : shortened(answer));
      }
    }
    return new Told(answers, Interview.of(answers));
  }

  /** What was answered before the page was left. */
  static Told resumed(Map<String, String> answers) {
    return new Told(answers, Interview.of(answers));
  }

  static DescribePage page(Told told, String clock) {
    Interview interview = told.interview();
    List<DescribePage.Given> given = new ArrayList<>();
    String pending = interview.pending().map(q -> q.id()).orElse("");
    told.answers()
        .forEach(
            (id, answer) -> {
              if (!id.equals(pending)) {
                given.add(new DescribePage.Given(id, answer));
              }
            });
    return new DescribePage(
        clock,
        given,
        interview.answered(),
        interview.pending(),
        interview.error(),
        told.answers().getOrDefault(pending, ""),
        interview.described().map(DescribeDesk::done));
  }

  private static DescribePage.Done done(Described described) {
    return new DescribePage.Done(
        KeypadWords.facts(described.keypad()),
        KeypadWords.keys(described.keypad()),
        described.unsure().stream().map(Described.Unsure::sentence).toList(),
        described.yaml());
  }

  private static Optional<String> first(Map<String, List<String>> form, String name) {
    return form.getOrDefault(name, List.of()).stream().filter(v -> !v.isBlank()).findFirst();
  }

  private static String shortened(String text) {
    String line = text.strip().replaceAll("[\\r\\n]+", " ");
    return line.length() > LONGEST_ANSWER ? line.substring(0, LONGEST_ANSWER) : line;
  }
}
