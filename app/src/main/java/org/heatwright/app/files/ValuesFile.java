package org.heatwright.app.files;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.heatwright.work.EnamelWork;
import org.heatwright.work.heattreat.TreatedMetal;
import org.heatwright.work.sinter.Clay;

/** {@code values.yaml}: what a person knows of a material of their own, and its way into works. */
public final class ValuesFile {

  private static final String FOR = "values-for";
  private static final String SOURCE = "source";
  private static final String SHEET = "data-sheet";

  private ValuesFile() {}

  /**
   * Reads own values; each is refused here as it would be in a work.
   *
   * @throws InputException saying what is wrong and where
   */
  public static OwnValues read(String text, String fileName) {
    YamlMap file = YamlFile.read(text, fileName, FileKind.VALUES);
    ValuesOf of = file.required(FOR).oneOf(ValuesOf.class);
    List<String> known = new ArrayList<>(List.of(FOR, SOURCE));
    known.addAll(of.keys());
    if (of.hasDataSheet()) {
      known.add(SHEET);
    }
    file.only(known);
    String source = file.required(SOURCE).text();
    file.optional(SHEET).ifPresent(WorkFile::dataSheet);
    check(of, file);
    Map<String, String> entries = new LinkedHashMap<>();
    file.ordered()
        .forEach(
            (key, value) -> {
              if (key.equals(SHEET)) {
                value.map().ordered().forEach((k, v) -> put(entries, key + "." + k, v));
              } else if (!key.equals(FOR) && !key.equals(SOURCE)) {
                put(entries, key, value);
              }
            });
    if (entries.isEmpty()) {
      throw InputException.in(
          fileName,
          "no value is told; expected at least one of %s."
              .formatted(String.join(", ", known.subList(2, known.size()))));
    }
    return new OwnValues(of, source, entries);
  }

  private static void put(Map<String, String> entries, String key, YamlValue value) {
    if (!key.substring(key.lastIndexOf('.') + 1).equals(YamlMap.NOTES)) {
      entries.put(key, value.asFlow());
    }
  }

  /** The readers of works say what a value may be. */
  private static void check(ValuesOf of, YamlMap file) {
    switch (of) {
      case ENAMEL -> {
        file.optional("enamel").ifPresent(v -> v.oneOf(EnamelWork.Hardness.class));
        file.optional("working-celsius").ifPresent(EnamelWorkFile::working);
        EnamelWorkFile.build(file);
      }
      case GLASS -> {
        GlassWorkFile.glass(file);
        file.optional("anneal-soak").ifPresent(GlassWorkFile::hold);
      }
      case INVESTMENT -> WorkFile.investment(file);
      case ALLOY -> WorkFile.metal(file);
      case CLAY -> file.required("clay").oneOf(Clay.class);
      case METAL -> {
        file.required("metal").oneOf(TreatedMetal.class);
        HeatTreatWorkFile.own(file);
      }
    }
  }

  /** The file of them. */
  public static String write(OwnValues values) {
    StringBuilder out = new StringBuilder();
    WorkFile.line(out, FOR, values.of().word());
    WorkFile.line(out, SOURCE, YamlText.text(values.source()));
    StringBuilder sheet = new StringBuilder();
    values
        .entries()
        .forEach(
            (key, value) -> {
              if (key.startsWith(SHEET + ".")) {
                WorkFile.line(sheet, "  " + key.substring(SHEET.length() + 1), value);
              } else {
                WorkFile.line(out, key, value);
              }
            });
    if (!sheet.isEmpty()) {
      out.append(SHEET).append(":\n").append(sheet);
    }
    return out.toString();
  }

  /**
   * Puts them into a work, in place of what it says of the same; the work's notes say whose they
   * are.
   *
   * @param name what they are called
   * @param work the text of a work file
   * @param workName what a message calls the work
   * @return the changed text, which {@link WorkFile} reads
   * @throws InputException if the work is of another kind, or would not be readable with them
   */
  public static String into(OwnValues values, String name, String work, String workName) {
    requireKind(values.of(), work, workName);
    String changed = work;
    for (Map.Entry<String, String> entry : values.entries().entrySet()) {
      List<String> path = new ArrayList<>(values.of().place());
      path.addAll(Arrays.asList(entry.getKey().split("\\.")));
      changed = YamlEdit.put(changed, workName, path, entry.getValue());
    }
    if (notesAreOurs(changed, workName)) {
      changed =
          YamlEdit.put(
              changed,
              workName,
              List.of(YamlMap.NOTES, note(values.of())),
              YamlText.quoted(name + ": " + values.source()));
    }
    WorkFile.read(changed, workName);
    return changed;
  }

  private static void requireKind(ValuesOf of, String work, String workName) {
    YamlMap file = YamlFile.read(work, workName, FileKind.WORK);
    YamlValue kind = file.required("kind");
    if (!kind.isWord(of.work())) {
      throw InputException.in(
          workName,
          "it takes no values of %s; they go into a work of kind %s."
              .formatted(of.word(), of.work()));
    }
  }

  /** A person's notes may be a sentence; then they stay as they are. */
  private static boolean notesAreOurs(String work, String workName) {
    return YamlFile.read(work, workName, FileKind.WORK)
        .optional(YamlMap.NOTES)
        .map(YamlValue::isMap)
        .orElse(true);
  }

  private static String note(ValuesOf of) {
    return of.word() + "-values";
  }

  /**
   * What a work's notes say of values that were put into it: name and source, as {@link #into}
   * wrote them.
   *
   * @throws InputException if the work is no YAML
   */
  public static Optional<String> noted(ValuesOf of, String work, String workName) {
    return YamlFile.read(work, workName, FileKind.WORK)
        .optional(YamlMap.NOTES)
        .filter(YamlValue::isMap)
        .flatMap(notes -> notes.map().optional(note(of)))
        .filter(YamlValue::isText)
        .map(YamlValue::text);
  }
}
