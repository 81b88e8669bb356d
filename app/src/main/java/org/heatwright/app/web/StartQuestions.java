package org.heatwright.app.web;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.heatwright.app.files.YamlText;
import org.heatwright.work.EnamelWork;
import org.heatwright.work.glass.Glass;
import org.heatwright.work.glass.GlassProcess;
import org.heatwright.work.heattreat.TreatedMetal;
import org.heatwright.work.heattreat.Treatment;
import org.heatwright.work.sinter.Clay;

/** What a first run asks, in which words, and what stands there before somebody answers. */
final class StartQuestions {

  private StartQuestions() {}

  /**
   * A question.
   *
   * @param key of a work's file that the answer goes to; empty where it goes nowhere by itself
   * @param kind as in {@link StartPage.Field}
   * @param usual what stands there first; empty where only the person knows
   */
  record Asked(
      String name,
      String key,
      String label,
      String hint,
      String kind,
      String unit,
      List<StartPage.Option> options,
      String usual) {

    StartPage.Field field(Map<String, String> answers, Map<String, String> errors) {
      return new StartPage.Field(
          name,
          label,
          hint,
          kind,
          unit,
          options,
          answers.getOrDefault(name, usual),
          errors.getOrDefault(name, ""));
    }
  }

  private static Asked number(
      String name, String key, String label, String unit, String usual, String hint) {
    return new Asked(name, key, label, hint, "decimal", unit, List.of(), usual);
  }

  private static Asked choice(
      String name, String key, String label, List<StartPage.Option> options, String usual) {
    return new Asked(name, key, label, "", "choice", "", options, usual);
  }

  private static Asked text(String name, String label, String usual, String hint) {
    return new Asked(name, "", label, hint, "text", "", List.of(), usual);
  }

  private static StartPage.Option option(String value, String words) {
    return new StartPage.Option(value, words, "");
  }

  private static <E extends Enum<E>> List<StartPage.Option> options(
      E[] values, Function<E, String> words) {
    return Arrays.stream(values)
        .map(
            value ->
                option(
                    value.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-'),
                    words.apply(value)))
        .toList();
  }

  // ---- what is fired

  static final Asked WHAT =
      new Asked(
          "what",
          "",
          "What do you fire first?",
          "",
          "pick",
          "",
          List.of(
              new StartPage.Option(
                  "enamel", "Enamel", "pieces go in and out of the hot kiln, one after another"),
              new StartPage.Option(
                  "burnout", "Moulds to cast in", "wax or printed resin is burnt out of them"),
              new StartPage.Option("sinter", "Metal clay", "silver, copper or bronze clay"),
              new StartPage.Option("glass", "Glass", "fusing, slumping, annealing"),
              new StartPage.Option(
                  "heat-treat", "Heat treatment", "annealing, hardening, drying, patina")),
          "");

  // ---- the kiln

  static final List<Asked> KILN =
      List.of(
          text("kiln-name", "What you call it", "My kiln", ""),
          number("kiln-power", "", "Power on its plate", "W", "", "2600, 2.6 kW or 11.3 A"),
          number("kiln-volts", "", "Volts on its plate", "V", "", "230, 240, 120, 400"),
          number(
              "kiln-width",
              "",
              "Inside, width",
              "cm",
              "",
              "round: its diameter; 8.7 in for inches"),
          number("kiln-depth", "", "Inside, depth", "cm", "", "round: leave it empty"),
          number("kiln-height", "", "Inside, height", "cm", "", ""),
          number("kiln-top", "", "Hottest it may get", "°C", "", "1100, or 2012 F"),
          choice(
              "kiln-door",
              "",
              "Its door is",
              List.of(option("front", "in front"), option("top", "a lid on top")),
              "front"),
          choice(
              "kiln-wall",
              "",
              "Its walls are",
              List.of(
                  option("brick", "light firebrick"),
                  option("fibre", "white fibre"),
                  option("unknown", "I do not know")),
              "brick"));

  // ---- the work

  /** The small form of a kind of work; its name first. */
  static List<Asked> work(String kind) {
    List<Asked> asked = new ArrayList<>();
    switch (kind) {
      case "enamel" -> {
        asked.add(text("work-name", "What you call it", "First enamel", ""));
        asked.add(
            choice(
                "work-metal",
                "metal",
                "Metal",
                options(EnamelWork.Metal.values(), EnamelWork.Metal::words),
                "copper"));
        asked.add(
            choice(
                "work-enamel",
                "enamel",
                "Enamel flows",
                List.of(
                    option("soft", "early (soft)"),
                    option("medium", "as most do (medium)"),
                    option("hard", "late (hard)")),
                "medium"));
        asked.add(number("work-sheet", "sheet-mm", "Metal, thick", "mm", "0.8", ""));
        asked.add(number("work-piece", "piece-mm", "Piece, longest side", "mm", "40", ""));
        asked.add(number("work-pieces", "pieces", "How many pieces", "", "4", ""));
        asked.add(text("work-session", "How long you fire", "2:00", "hours and minutes: 2:00"));
      }
      case "burnout" -> {
        asked.add(text("work-name", "What you call it", "First burnout", ""));
        asked.add(
            choice(
                "work-alloy",
                "alloy",
                "Metal to pour",
                List.of(
                    option("sterling-925", "sterling silver"),
                    option("fine-silver", "fine silver"),
                    option("gold-14k", "gold, 14 k"),
                    option("gold-18k", "gold, 18 k"),
                    option("bronze", "bronze"),
                    option("brass", "brass")),
                "sterling-925"));
        asked.add(
            choice(
                "work-pattern",
                "pattern",
                "The model is of",
                List.of(
                    option("wax", "wax"),
                    option("resin", "printed resin"),
                    option("unknown", "I do not know")),
                "wax"));
        asked.add(
            choice(
                "work-binder",
                "binder",
                "The investment is",
                List.of(
                    option("gypsum", "the usual one (gypsum)"),
                    option("phosphate", "phosphate-bonded"),
                    option("unknown", "I do not know")),
                "gypsum"));
        asked.add(number("work-count", "count", "How many moulds", "", "1", ""));
        asked.add(number("work-diameter", "diameter-mm", "Mould, across", "mm", "75", ""));
        asked.add(number("work-height", "height-mm", "Mould, high", "mm", "100", ""));
        asked.add(number("work-ring", "wall-mm", "Steel ring, thick", "mm", "3", "no ring: 0"));
      }
      case "sinter" -> {
        asked.add(text("work-name", "What you call it", "First metal clay", ""));
        asked.add(
            choice(
                "work-clay", "clay", "Clay", options(Clay.values(), Clay::words), "fine-silver"));
        asked.add(number("work-count", "count", "How many pieces", "", "4", ""));
        asked.add(
            number("work-thickness", "thickness-mm", "Thickest place", "mm", "2", "measure it"));
        asked.add(number("work-length", "length-mm", "Longest side", "mm", "30", ""));
      }
      case "glass" -> {
        asked.add(text("work-name", "What you call it", "First glass", ""));
        asked.add(
            choice(
                "work-glass",
                "glass",
                "Glass",
                options(Glass.Family.values(), Glass.Family::words),
                "soft-art"));
        asked.add(
            choice(
                "work-process",
                "process",
                "To",
                options(GlassProcess.values(), GlassProcess::words),
                "full-fuse"));
        asked.add(number("work-sheet", "sheet-mm", "One sheet, thick", "mm", "3", ""));
        asked.add(number("work-layers", "layers", "Layers", "", "2", ""));
        asked.add(number("work-piece", "piece-mm", "Piece, longest side", "mm", "120", ""));
      }
      default -> {
        asked.add(text("work-name", "What you call it", "First heat treatment", ""));
        asked.add(
            choice(
                "work-treatment",
                "treatment",
                "Treatment",
                options(
                    new Treatment[] {
                      Treatment.ANNEAL,
                      Treatment.STRESS_RELIEF,
                      Treatment.AGE,
                      Treatment.DRY,
                      Treatment.PATINA_BAKE
                    },
                    Treatment::words),
                "anneal"));
        asked.add(
            choice(
                "work-metal",
                "metal",
                "Metal",
                options(TreatedMetal.values(), TreatedMetal::words),
                "sterling-925"));
        asked.add(number("work-pieces", "pieces", "How many pieces", "", "4", ""));
        asked.add(number("work-thickness", "thickness-mm", "Thickest place", "mm", "1.5", ""));
        asked.add(number("work-mass", "mass-g", "One piece weighs", "g", "12", ""));
        asked.add(
            choice(
                "work-setting",
                "setting",
                "It lies on",
                List.of(
                    option("mesh", "a mesh, open below"),
                    option("shelf", "the kiln's shelf"),
                    option("block", "a heavy steel block"),
                    option("carbon-box", "a box of charcoal")),
                "mesh"));
      }
    }
    return asked;
  }

  /**
   * The work as a file; numbers as they were checked.
   *
   * @param values field to its text
   */
  static String file(String kind, Map<String, String> values) {
    StringBuilder out = new StringBuilder("kind: " + kind + "\n");
    Map<String, String> lines = new LinkedHashMap<>();
    for (Asked asked : work(kind)) {
      if (!asked.key().isEmpty()) {
        lines.put(asked.key(), values.getOrDefault(asked.name(), asked.usual()));
      }
    }
    switch (kind) {
      case "burnout" -> {
        out.append("moulds:\n  - ")
            .append(flow(lines, "count", "diameter-mm", "height-mm", "wall-mm", "pattern"))
            .append("\ninvestment: ")
            .append(flow(lines, "binder"))
            .append("\nmetal: ")
            .append(flow(lines, "alloy"))
            .append('\n');
      }
      case "sinter" ->
          out.append("clay: ")
              .append(lines.get("clay"))
              .append("\npieces:\n  - ")
              .append(flow(lines, "count", "thickness-mm", "length-mm"))
              .append('\n');
      default -> {
        lines.forEach((key, value) -> out.append(key).append(": ").append(value).append('\n'));
        if (kind.equals("enamel")) {
          out.append("session: ")
              .append(YamlText.quoted(values.getOrDefault("work-session", "2:00")))
              .append('\n');
        }
      }
    }
    return out.toString();
  }

  private static String flow(Map<String, String> lines, String... keys) {
    Map<String, String> entries = new LinkedHashMap<>();
    for (String key : keys) {
      entries.put(key, String.valueOf(lines.get(key)));
    }
    return YamlText.flow(entries);
  }
}
