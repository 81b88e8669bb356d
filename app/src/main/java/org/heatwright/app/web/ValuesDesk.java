package org.heatwright.app.web;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.heatwright.app.catalogue.Shelf;
import org.heatwright.app.catalogue.ValueWords;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.OwnValues;
import org.heatwright.app.files.ValuesFile;
import org.heatwright.app.files.ValuesOf;
import org.heatwright.app.store.Document;
import org.heatwright.app.store.EarlierText;
import org.heatwright.app.store.Kind;
import org.heatwright.app.store.Store;
import org.heatwright.inspect.Wording;
import org.heatwright.units.TemperatureUnit;

/** A person's own values: typed, kept, put into works, and taken out of them again. */
final class ValuesDesk {

  private static final int LONGEST = 200;
  private static final String SHEET = "data-sheet.";

  /** What messages call the text that is made of a form. */
  private static final String FORM = "values";

  private final Store store;

  ValuesDesk(Store store) {
    this.store = store;
  }

  static String address(String name) {
    return "/materials/own?name=" + URLEncoder.encode(name, StandardCharsets.UTF_8);
  }

  // ---- the form

  /**
   * @param asked fields of the address: of, name, unit
   * @return empty if there are no values of that name
   */
  Optional<ValuesPage> form(String clock, Map<String, String> asked) {
    TemperatureUnit unit = unit(asked);
    String name = asked.getOrDefault("name", "");
    if (name.isEmpty()) {
      ValuesOf of = of(asked.getOrDefault("of", "")).orElse(ValuesOf.ENAMEL);
      return Optional.of(page(clock, of, Map.of(), unit, "", ValuesPage.Wrong.nothing(), Map.of()));
    }
    return kept(name)
        .map(
            values -> {
              Map<String, String> typed = new LinkedHashMap<>();
              typed.put("name", name);
              typed.put("source", values.source());
              values
                  .entries()
                  .forEach((key, yaml) -> typed.put(key, ValueWords.typed(key, yaml, unit)));
              return page(
                  clock, values.of(), typed, unit, name, ValuesPage.Wrong.nothing(), Map.of());
            });
  }

  /**
   * Keeps what was typed.
   *
   * @return the form again, with what is wrong; empty if it is kept
   */
  Optional<ValuesPage> keep(String clock, Map<String, String> typed) {
    TemperatureUnit unit = unit(typed);
    ValuesOf of = of(typed.getOrDefault("of", "")).orElse(ValuesOf.ENAMEL);
    String was = typed.getOrDefault("was", "");
    String name = typed.getOrDefault("name", "").strip();
    String source = typed.getOrDefault("source", "").strip();
    OwnValues values = new OwnValues(of, source.isEmpty() ? "?" : source, entries(of, was, typed));
    Map<String, String> errors = new LinkedHashMap<>();
    String all = values.entries().isEmpty() ? "Tell at least one value." : check(values, errors);
    ValuesPage.Wrong wrong =
        new ValuesPage.Wrong(
            wrongName(name, was),
            source.isEmpty()
                ? "Say where you have them from: a sheet, a test of your own, a person."
                : "",
            all);
    errors.replaceAll((key, sentence) -> said(sentence, key, typed, unit));
    if (errors.isEmpty() && wrong.equals(ValuesPage.Wrong.nothing())) {
      store.keep(Kind.VALUES, name, ValuesFile.write(values));
      if (!was.isEmpty() && !was.equals(name)) {
        store
            .find(Kind.VALUES, was)
            .ifPresent(old -> store.away().putAway(Kind.VALUES.word(), old.id()));
      }
      return Optional.empty();
    }
    return Optional.of(page(clock, of, typed, unit, was, wrong, errors));
  }

  /**
   * Reads them as a file of values is read, again without each that is refused, so that all that is
   * wrong is told at once.
   *
   * @param errors takes the reader's sentence for each key
   * @return what belongs to no key; may be empty
   */
  private static String check(OwnValues values, Map<String, String> errors) {
    Map<String, String> entries = new LinkedHashMap<>(values.entries());
    while (true) {
      try {
        ValuesFile.read(
            ValuesFile.write(new OwnValues(values.of(), values.source(), entries)), FORM);
        return "";
      } catch (InputException e) {
        String sentence = sentence(e);
        Optional<String> key =
            ValueWords.keys(values.of()).stream()
                .filter(k -> sentence.startsWith(k + " ") || sentence.startsWith(k + ":"))
                .findFirst();
        if (key.isEmpty()) {
          return errors.isEmpty() ? capital(sentence) : "";
        }
        errors.put(key.get(), sentence);
        if (entries.remove(key.get()) == null) { // it is missing
          return "";
        }
      }
    }
  }

  /** Values on the shelf, if they can be read. */
  private Optional<OwnValues> kept(String name) {
    try {
      return store.find(Kind.VALUES, name).map(d -> ValuesFile.read(d.text(), name));
    } catch (InputException notReadable) {
      return Optional.empty();
    }
  }

  private String wrongName(String name, String was) {
    if (name.isEmpty() || name.length() > LONGEST) {
      return "Give them a name to find them by, at most %d characters.".formatted(LONGEST);
    }
    boolean taken = !name.equals(was) && store.find(Kind.VALUES, name).isPresent();
    return taken ? "There are values of that name; choose another." : "";
  }

  /** What was typed; what the form does not ask stays as it was. */
  private Map<String, String> entries(ValuesOf of, String was, Map<String, String> typed) {
    TemperatureUnit unit = unit(typed);
    Map<String, String> before =
        kept(was).filter(values -> values.of() == of).map(OwnValues::entries).orElse(Map.of());
    Map<String, String> entries = new LinkedHashMap<>();
    for (String key : ValueWords.keys(of)) {
      Optional<String> old = Optional.ofNullable(before.get(key));
      String value = typed.getOrDefault(key, "").strip();
      if (!isAsked(key)) {
        old.ifPresent(yaml -> entries.put(key, yaml));
      } else if (!value.isEmpty()) {
        // What a person did not touch keeps its digits in either unit.
        entries.put(
            key,
            old.filter(yaml -> value.equals(ValueWords.typed(key, yaml, unit)))
                .orElseGet(() -> ValueWords.yaml(key, value, unit)));
      }
    }
    return entries;
  }

  /** Compositions are written in files; no form of ours asks fourteen oxides. */
  private static boolean isAsked(String key) {
    return !key.startsWith("oxides-");
  }

  private static String sentence(InputException e) {
    return Objects.requireNonNull(e.getMessage()).replaceFirst("^" + FORM + "(, line \\d+)?: ", "");
  }

  /** A reader's sentence in the words and the unit of the form. */
  private static String said(
      String sentence, String key, Map<String, String> typed, TemperatureUnit unit) {
    int expected = sentence.indexOf("expected ");
    if (sentence.startsWith(key + " is missing")) {
      return ValueWords.choices(key).isEmpty() ? "This is needed." : "Choose one.";
    } else if (expected < 0) {
      return capital(sentence.substring(key.length()).replaceFirst("^: ", ""));
    }
    String value = typed.getOrDefault(key, "").strip();
    String wanted = sentence.substring(expected).replace("(°C)", "°C");
    return Wording.in(
        value.isEmpty() ? capital(wanted) : "“%s”: %s".formatted(value, wanted), unit);
  }

  private static String capital(String sentence) {
    return sentence.isEmpty()
        ? sentence
        : Character.toUpperCase(sentence.charAt(0)) + sentence.substring(1);
  }

  private static ValuesPage page(
      String clock,
      ValuesOf of,
      Map<String, String> typed,
      TemperatureUnit unit,
      String was,
      ValuesPage.Wrong wrong,
      Map<String, String> errors) {
    List<ValuesPage.Field> fields = new ArrayList<>();
    List<ValuesPage.Field> sheet = new ArrayList<>();
    for (String key : ValueWords.keys(of)) {
      if (isAsked(key)) {
        (key.startsWith(SHEET) ? sheet : fields)
            .add(
                field(
                    key, typed.getOrDefault(key, "").strip(), unit, errors.getOrDefault(key, "")));
      }
    }
    return new ValuesPage(
        clock,
        Arrays.stream(ValuesOf.values())
            .map(k -> new ValuesPage.Kind(k.word(), ValueWords.of(k), k == of))
            .toList(),
        of.word(),
        was,
        typed.getOrDefault("name", ""),
        typed.getOrDefault("source", ""),
        unit.letter(),
        fields,
        sheet,
        wrong);
  }

  private static ValuesPage.Field field(
      String key, String value, TemperatureUnit unit, String error) {
    String hint =
        switch (ValueWords.measure(key)) {
          case TEMPERATURE -> unit.symbol();
          case RATE -> unit.symbol() + "/h";
          case DURATION -> "h:mm";
          case OTHER -> "";
        };
    List<ValuesPage.Option> options = new ArrayList<>();
    ValueWords.choices(key)
        .forEach(
            (code, name) -> options.add(new ValuesPage.Option(code, name, code.equals(value))));
    return new ValuesPage.Field(
        key,
        capital(ValueWords.label(key)),
        hint,
        !hint.equals("h:mm") && !key.equals("alloy"),
        value,
        options,
        error);
  }

  private static Optional<ValuesOf> of(String word) {
    return Arrays.stream(ValuesOf.values()).filter(of -> of.word().equals(word)).findFirst();
  }

  private static TemperatureUnit unit(Map<String, String> typed) {
    return TemperatureUnit.ofLetter(typed.getOrDefault("unit", "C"))
        .orElse(TemperatureUnit.CELSIUS);
  }

  // ---- what is kept

  /** All of them, those that can be read. */
  List<MaterialsPage.Own> all(String words, TemperatureUnit unit) {
    List<Document> works = store.all(Kind.WORK);
    List<MaterialsPage.Own> all = new ArrayList<>();
    for (Document document : store.all(Kind.VALUES)) {
      try {
        OwnValues values = ValuesFile.read(document.text(), document.name());
        Shelf.Item item = ValueWords.item(document.name(), values, unit);
        Shelf shelf = new Shelf("own", ValueWords.of(values.of()), "", List.of(item));
        if (words.isBlank() || !shelf.matching(words).items().isEmpty()) {
          all.add(own(document, values, item, works));
        }
      } catch (InputException notReadable) {
        continue;
      }
    }
    return all;
  }

  private static MaterialsPage.Own own(
      Document document, OwnValues values, Shelf.Item item, List<Document> works) {
    List<MaterialsPage.Where> same = new ArrayList<>();
    List<MaterialsPage.Where> other = new ArrayList<>();
    List<String> fitting = new ArrayList<>();
    for (Document work : works) {
      try {
        String with = ValuesFile.into(values, document.name(), work.text(), work.name());
        fitting.add(work.name());
        boolean theirs =
            ValuesFile.noted(values.of(), work.text(), work.name())
                .filter(note -> note.startsWith(document.name() + ": "))
                .isPresent();
        if (theirs) {
          (with.equals(work.text()) ? same : other).add(MaterialsPage.Where.of(work.name()));
        }
      } catch (InputException ofAnotherKind) {
        continue;
      }
    }
    return new MaterialsPage.Own(
        document.id(),
        document.name(),
        ValueWords.of(values.of()),
        values.source(),
        address(document.name()),
        item.values().stream()
            .map(v -> new MaterialsPage.Value(capital(v.what()), v.value(), ""))
            .toList(),
        same,
        other,
        fitting);
  }

  // ---- into works

  /**
   * Puts values into a work on the shelf; what it said before is kept as its earlier text.
   *
   * @throws InputException if the work does not take them
   */
  void put(String name, String work) {
    Document values =
        store
            .find(Kind.VALUES, name)
            .orElseThrow(() -> InputException.in(name, "there are no such values on the shelf."));
    Document taker =
        store
            .find(Kind.WORK, work)
            .orElseThrow(() -> InputException.in(work, "there is no such work on the shelf."));
    store.keep(
        Kind.WORK,
        work,
        ValuesFile.into(ValuesFile.read(values.text(), name), name, taker.text(), work));
  }

  /** Gives a work the text that it had before the last change. */
  void back(String work) {
    store.earlier(Kind.WORK, work).stream()
        .findFirst()
        .map(EarlierText::text)
        .ifPresent(text -> store.keep(Kind.WORK, work, text));
  }
}
