package org.heatwright.app.logs;

import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.Nearest;

/**
 * What a person said about a file, decision by decision. It goes before everything that is
 * recognised.
 */
public record Corrections(Map<Topic, String> words) {

  public Corrections {
    Map<Topic, String> copy = new EnumMap<>(Topic.class);
    copy.putAll(words);
    words = Collections.unmodifiableMap(copy);
  }

  public static Corrections none() {
    return new Corrections(Map.of());
  }

  /**
   * Reads what was typed, e.g. {@code unit=fahrenheit}.
   *
   * @param field who asks, for the sentence about a mistake
   * @throws InputException if a topic or a word is not known
   */
  public static Corrections of(List<String> typed, String field) {
    Map<Topic, String> words = new EnumMap<>(Topic.class);
    for (String each : typed) {
      int equals = each.indexOf('=');
      String name = equals < 0 ? each : each.substring(0, equals).strip();
      List<String> names = Arrays.stream(Topic.values()).map(Topic::word).toList();
      Topic topic =
          Topic.of(name)
              .orElseThrow(
                  () ->
                      InputException.in(
                          field,
                          "\"%s\" is nothing that is decided about a log%s; expected one of %s."
                              .formatted(
                                  name, Nearest.hint(name, names), String.join(", ", names))));
      String word = equals < 0 ? "" : each.substring(equals + 1).strip();
      if (word.isEmpty()) {
        throw InputException.in(
            field, "\"%s\" says nothing; expected %s=…: %s.".formatted(each, name, topic.words()));
      }
      if (!topic.choices().isEmpty() && !topic.choices().contains(word)) {
        throw InputException.in(
            field,
            "\"%s\" is not possible for %s%s; expected one of %s."
                .formatted(
                    word,
                    name,
                    Nearest.hint(word, topic.choices()),
                    String.join(", ", topic.choices())));
      }
      words.put(topic, word);
    }
    return new Corrections(words);
  }

  /** As they are kept: a line each, as they are typed. */
  public String text() {
    return words.entrySet().stream()
        .map(e -> e.getKey().word() + "=" + e.getValue())
        .collect(Collectors.joining("\n"));
  }

  /** What was kept. */
  public static Corrections read(String text) {
    return of(text.lines().filter(line -> !line.isBlank()).toList(), "remembered");
  }

  /** These, and of others what these leave open. */
  public Corrections over(Corrections others) {
    Map<Topic, String> all = new EnumMap<>(Topic.class);
    all.putAll(others.words);
    all.putAll(words);
    return new Corrections(all);
  }

  public Corrections with(Topic topic, String word) {
    return new Corrections(Map.of(topic, word)).over(this);
  }

  Optional<String> of(Topic topic) {
    return Optional.ofNullable(words.get(topic));
  }

  /** Whether they change how the file is cut into rows and columns. */
  boolean changeLayout() {
    return words.keySet().stream().anyMatch(topic -> topic.compareTo(Topic.HEADER) <= 0);
  }
}
