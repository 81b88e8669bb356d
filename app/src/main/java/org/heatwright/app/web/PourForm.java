package org.heatwright.app.web;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.heatwright.app.casting.CastInput;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.TypedNumber;
import org.heatwright.units.TemperatureUnit;

/**
 * The fields of one page about the pour: what was typed, what each is called, what is wrong. A
 * field's name is the command line's option without its dashes, and a row's number behind it.
 * Belongs to one thread.
 */
final class PourForm {

  private static final int MOST = 1000;
  private static final Pattern OPTION = Pattern.compile("--([a-z0-9]+(?:-[a-z0-9]+)*)");
  private static final int LONGEST = 60;

  private final Map<String, String> typed;
  private final Map<String, String> usual;
  private final boolean asked;
  private final Map<String, String> labels = new LinkedHashMap<>();
  private final Map<String, String> errors = new LinkedHashMap<>();
  private final List<Draft> drafts = new ArrayList<>();

  private record Draft(String title, boolean folded, List<DraftField> fields) {}

  private record DraftField(String name, String label, List<String> options, boolean alloy) {}

  /**
   * @param typed the address's fields
   * @param usual what stands in a field that nobody has touched
   */
  PourForm(Map<String, String> typed, Map<String, String> usual) {
    this.typed = typed;
    this.usual = usual;
    this.asked = typed.containsKey("asked");
  }

  // ---- laying out

  PourForm group(String title, boolean folded) {
    drafts.add(new Draft(title, folded, new ArrayList<>()));
    return this;
  }

  PourForm text(String name, String label) {
    return add(new DraftField(name, label, List.of(), false));
  }

  PourForm alloy(String name, String label) {
    return add(new DraftField(name, label, List.of(), true));
  }

  PourForm choice(String name, String label, String... words) {
    return add(new DraftField(name, label, List.of(words), false));
  }

  /** What sentences call a field, where that is not its label. */
  PourForm called(String name, String spoken) {
    labels.put(name, spoken);
    return this;
  }

  private PourForm add(DraftField field) {
    drafts.get(drafts.size() - 1).fields().add(field);
    labels.put(field.name(), field.label());
    return this;
  }

  // ---- reading

  /** As typed; what is usual where nobody has touched the form. */
  String value(String name) {
    String value =
        asked || typed.containsKey(name)
            ? typed.getOrDefault(name, "").strip()
            : usual.getOrDefault(name, "");
    return value.length() > LONGEST ? value.substring(0, LONGEST) : value;
  }

  Optional<String> word(String name) {
    return Optional.of(value(name)).filter(v -> !v.isEmpty());
  }

  Optional<Double> number(String name) {
    return word(name)
        .map(
            text ->
                TypedNumber.bare(text)
                    .orElseThrow(
                        () ->
                            InputException.in(
                                "--" + name,
                                "“%s” is no number; write it like 1.2.".formatted(text))));
  }

  double number(String name, double otherwise) {
    return number(name).orElse(otherwise);
  }

  double required(String name) {
    return number(name)
        .orElseThrow(() -> InputException.in("--" + name, "is needed: write a number."));
  }

  /** A whole number as it was typed; what it counts says whether it is enough. */
  int count(String name) {
    double count = number(name, 1);
    if (count == Math.rint(count) && count > MOST) {
      throw InputException.in(
          "--" + name,
          "“%s” is too many; write a whole number up to %d.".formatted(value(name), MOST));
    }
    if (count != Math.rint(count) || count < -MOST) {
      throw InputException.in(
          "--" + name, "“%s” is no count; write a whole number.".formatted(value(name)));
    }
    return (int) count;
  }

  TemperatureUnit unit() {
    return CastInput.unit("--unit", value("unit").isEmpty() ? "C" : value("unit"));
  }

  // ---- what is wrong

  /** Puts a sentence beside the field it blames. */
  void blame(InputException e) {
    blame(e, "");
  }

  /**
   * The same for a row.
   *
   * @param row its number
   */
  void blame(InputException e, String row) {
    String sentence = Objects.requireNonNull(e.getMessage());
    String place = e.fileName();
    if (sentence.startsWith(place + ": ")) {
      sentence = sentence.substring(place.length() + 2);
    }
    String name = place.replaceFirst("^--", "");
    String field = labels.containsKey(name + row) ? name + row : name;
    errors.putIfAbsent(labels.containsKey(field) ? field : "", said(sentence));
  }

  /** Words in which options are called what the page calls them. */
  String said(String words) {
    Matcher option = OPTION.matcher(words);
    StringBuilder out = new StringBuilder();
    while (option.find()) {
      String label =
          Optional.ofNullable(labels.get(option.group(1)))
              .or(() -> Optional.ofNullable(labels.get(option.group(1) + "1")))
              .map(l -> "“" + l + "”")
              .orElse(option.group());
      option.appendReplacement(out, Matcher.quoteReplacement(label));
    }
    return option.appendTail(out).toString();
  }

  String alarm() {
    return errors.getOrDefault("", "");
  }

  // ---- for the page

  List<PourPage.Group> groups() {
    List<PourPage.Group> groups = new ArrayList<>();
    for (Draft draft : drafts) {
      boolean used =
          draft.fields().stream()
              .anyMatch(f -> !value(f.name()).isEmpty() || errors.containsKey(f.name()));
      groups.add(
          new PourPage.Group(
              draft.title(),
              draft.folded() && !used,
              draft.fields().stream().map(this::field).toList()));
    }
    return groups;
  }

  private PourPage.Field field(DraftField field) {
    String value = value(field.name());
    return new PourPage.Field(
        field.name(),
        field.label(),
        value,
        field.options().stream()
            .map(
                word ->
                    new PourPage.Option(
                        word.equals("not told") ? "" : word,
                        switch (word) {
                          case "C" -> "°C";
                          case "F" -> "°F";
                          default -> word;
                        },
                        word.equals(value) || value.isEmpty() && word.equals("not told")))
            .toList(),
        field.alloy(),
        errors.getOrDefault(field.name(), ""));
  }
}
