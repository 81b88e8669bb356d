package org.heatwright.app.files;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The kinds of YAML files, by keys that only they have at the top, and a line of each key that must
 * be there: a person who left it out sees what would be right.
 */
public enum FileKind {
  KILN("a kiln file", List.of("chamber", "element", "walls", "max-celsius", "thermocouple")),
  KEYPAD("a keypad file", List.of("keys", "gestures", "review", "slots", "display-digits")),
  SCHEDULE("a schedule file", List.of("segments", "start-delay", "at-end")),
  WORK(
      "a work file",
      List.of("kind", "moulds", "investment", "enamel", "metal", "treatment", "glass", "process")),
  FIRING(
      "a firing file",
      List.of("start-celsius", "vent", "events", "goes-in-cold", "load", "supply-v")),
  SHOWN("a file of what the keypad shows", List.of("shown")),
  BODY("a body file", List.of("shape", "surface", "surroundings", "probes", "report-every-s")),
  MATERIAL(
      "a material file",
      List.of("density-kg-m3", "conductivity-w-mk", "heat-capacity-j-kgk", "latent", "source")),
  VALUES("a file of your own values", List.of("values-for"));

  private static final Map<String, String> LINES = lines();

  private final String words;
  private final List<String> ownKeys;

  FileKind(String words, List<String> ownKeys) {
    this.words = words;
    this.ownKeys = ownKeys;
  }

  /** "a kiln file". */
  public String words() {
    return words;
  }

  /**
   * Refuses a file that has nothing of this kind and something of another one. A file of own values
   * has a work's keys and one that is its own.
   *
   * @return the same file
   */
  YamlMap require(YamlMap file) {
    boolean others = this != VALUES && VALUES.likeness(file) > 0;
    if (likeness(file) == 0 || others) {
      FileKind likest = others ? VALUES : this;
      for (FileKind other : values()) {
        if (!others && other.likeness(file) > likest.likeness(file)) {
          likest = other;
        }
      }
      if (likest != this) {
        throw InputException.in(
            file.place().fileName(),
            "this looks like %s; %s is expected.".formatted(likest.words, words));
      }
    }
    return file;
  }

  private long likeness(YamlMap file) {
    return ownKeys.stream()
        .flatMap(key -> file.optional(key).stream())
        // A keypad has a number of segments, a schedule a list of them.
        .filter(value -> !(value.path().equals("segments") && value.isNumber()))
        .count();
  }

  /**
   * A line that would be right for a key.
   *
   * @param path of the key, e.g. {@code segments[2].target}
   */
  Optional<String> line(String path) {
    String key = path.substring(path.lastIndexOf('.') + 1);
    return Optional.ofNullable(LINES.get(this + " " + path.replaceAll("\\[\\d+]", "")))
        .or(() -> Optional.ofNullable(LINES.get(this + " " + key)))
        .or(() -> Optional.ofNullable(LINES.get(key)));
  }

  private static Map<String, String> lines() {
    Map<String, String> lines = new HashMap<>();
    // name in files, and where two kinds of files mean different things by a key, whose it is
    lines.put("name", "name: Anchor");
    lines.put("SCHEDULE name", "name: harbour-burnout");
    lines.put("KILN circuit.name", "name: workshop");
    lines.put("unit", "unit: C");
    lines.put("KEYPAD unit", "unit: {setting: C, shown: [idle]}");
    lines.put("SCHEDULE segments", "segments: [{rate: 150, target: 730, hold: \"2:00\"}]");
    lines.put("KEYPAD segments", "segments: 12");
    lines.put("SCHEDULE rate", "rate: 150, or rate: fastest");
    lines.put("SCHEDULE target", "target: 730");
    lines.put("KEYPAD rate", "rate: {per: hour, min: 1, max: 999, step: 1}");
    lines.put("KEYPAD time", "time: {form: \"hh:mm\", max: \"19:59\", step-min: 1}");
    lines.put("KEYPAD celsius", "celsius: \"C\"");
    lines.put("KEYPAD fahrenheit", "fahrenheit: \"F\"");
    lines.put("KEYPAD target", "target: {min: 0, max: 1200, step: 1}");
    lines.put("KEYPAD hold", "hold: {form: \"hh:mm\", max: \"99:59\", step-min: 1}");
    lines.put("KEYPAD end", "end: {by: count, afterwards: off}");
    lines.put("KILN kind", "kind: pid");
    lines.put("WORK kind", "kind: burnout");
    lines.put("WORK metal", "metal: {alloy: sterling-925}");
    lines.put("KEYPAD kind", "kind: digits");
    // keypad
    lines.put("keys", "keys: [digits, confirm, clear, program, start, stop]");
    lines.put("entry", "entry: {kind: digits, point-key: false}");
    lines.put("accept", "accept: confirm");
    lines.put("slots", "slots: 9");
    lines.put("display-digits", "display-digits: 4");
    lines.put("order", "order: [rate, target, hold]");
    lines.put("gestures", "gestures: {open: [program], leave: [program], review: [confirm]}");
    lines.put("open", "open: [program]");
    lines.put("KEYPAD gestures.review", "review: [confirm]");
    lines.put("KEYPAD gestures.open.hold", "hold: program");
    lines.put("KEYPAD gestures.commit.hold", "hold: program");
    lines.put("s", "s: 2");
    lines.put("review", "review: {order: [rate, target, hold], unused: hidden, keys-edit: false}");
    lines.put("unused", "unused: hidden");
    lines.put("setting", "setting: C");
    lines.put("ranges-in", "ranges-in: C");
    lines.put("clicks-per-turn", "clicks-per-turn: 24");
    lines.put("after-s", "after-s: 0.6");
    lines.put("steps", "steps: 1");
    lines.put("ticks-per-s", "ticks-per-s: 6");
    lines.put("per", "per: hour");
    lines.put("form", "form: \"hh:mm\"");
    lines.put("min", "min: 1");
    lines.put("max", "max: 999");
    lines.put("KEYPAD hold.max", "max: \"99:59\"");
    lines.put("KEYPAD delay.max", "max: \"99:59\"");
    lines.put("step", "step: 1");
    lines.put("shows", "shows: \"999\"");
    lines.put("at", "at: above-greatest");
    lines.put("position", "position: first");
    lines.put("by", "by: count");
    // kiln
    lines.put("chamber", "chamber: {width-mm: 220, depth-mm: 240, height-mm: 180}");
    lines.put("width-mm", "width-mm: 220");
    lines.put("KILN height-mm", "height-mm: 180");
    lines.put("KILN diameter-mm", "diameter-mm: 280");
    lines.put("element", "element: {rated-w: 2200, rated-v: 230}");
    lines.put("rated-w", "rated-w: 2200");
    lines.put("rated-v", "rated-v: 230");
    lines.put("walls", "walls: [{material: insulating-brick-23, thickness-mm: 64}]");
    lines.put("material", "material: insulating-brick-23");
    lines.put("FIRING material", "material: copper");
    lines.put("thickness-mm", "thickness-mm: 64");
    lines.put("density-kg-m3", "density-kg-m3: 300");
    lines.put("conductivity-w-mk", "conductivity-w-mk: [[20, 0.05], [800, 0.2]]");
    lines.put("heat-capacity-j-kgk", "heat-capacity-j-kgk: 1000");
    lines.put("from-celsius", "from-celsius: 95");
    lines.put("to-celsius", "to-celsius: 115");
    lines.put("j-kg", "j-kg: 50000");
    lines.put("max-celsius", "max-celsius: 1100");
    lines.put("hysteresis-k", "hysteresis-k: 5");
    lines.put("currency", "currency: EUR");
    lines.put("flat", "flat: 0.25");
    lines.put("bands", "bands: [{from: \"07:00\", to: \"07:00\", price: 0.25}]");
    lines.put("from", "from: \"22:00\"");
    lines.put("to", "to: \"07:00\"");
    lines.put("price", "price: 0.25");
    lines.put("limit-a", "limit-a: 16");
    lines.put("date", "date: 2026-12-03");
    lines.put("what", "what: elements-replaced");
    // work and firing
    lines.put(
        "moulds",
        "moulds: [{count: 3, diameter-mm: 90, height-mm: 150, wall-mm: 3, pattern: wax}]");
    lines.put("diameter-mm", "diameter-mm: 75");
    lines.put("height-mm", "height-mm: 100");
    lines.put("wall-mm", "wall-mm: 3");
    lines.put("pattern", "pattern: wax");
    lines.put("investment", "investment: {binder: gypsum, water-powder: 0.4}");
    lines.put("alloy", "alloy: sterling-925");
    lines.put("sheet-mm", "sheet-mm: 0.8");
    lines.put("piece-mm", "piece-mm: 40");
    lines.put("enamel", "enamel: medium");
    lines.put("glass", "glass: soft-art");
    lines.put("process", "process: full-fuse");
    lines.put("span-mm", "span-mm: 180");
    lines.put("WORK depth-mm", "depth-mm: 25");
    lines.put("session", "session: \"2:30\"");
    lines.put("clay", "clay: copper");
    lines.put("WORK pieces", "pieces: [{thickness-mm: 2.5, length-mm: 30}]");
    lines.put("length-mm", "length-mm: 30");
    lines.put("wall", "wall: steel");
    lines.put("before-mm", "before-mm: 50");
    lines.put("after-mm", "after-mm: 43.5");
    lines.put("celsius", "celsius: 930");
    lines.put("WORK hold", "hold: \"3:00\"");
    lines.put("coat", "coat: ground");
    lines.put("at-celsius", "at-celsius: 780");
    lines.put("seconds", "seconds: 95");
    lines.put("look", "look: glossy");
    lines.put("treatment", "treatment: anneal");
    lines.put("WORK thickness-mm", "thickness-mm: 1.2");
    lines.put("mass-g", "mass-g: 8");
    lines.put("at-s", "at-s: 7200");
    lines.put("j-per-k", "j-per-k: 45");
    lines.put("mass-kg", "mass-kg: 0.5");
    // body
    lines.put("shape", "shape: {diameter-mm: 90, height-mm: 150, bottom: insulated}");
    lines.put("BODY material", "material: gypsum-investment-40");
    lines.put("BODY ring.material", "material: stainless-steel");
    lines.put("surface", "surface: {emissivity: 0.9, convection-w-m2k: 8}");
    lines.put("emissivity", "emissivity: 0.9");
    lines.put("convection-w-m2k", "convection-w-m2k: 8");
    lines.put("BODY start-celsius", "start-celsius: 20");
    lines.put("surroundings", "surroundings: [[0, 20], [3600, 150], [10800, 150]]");
    lines.put("depth-mm", "depth-mm: 60");
    lines.put("KILN depth-mm", "depth-mm: 240");
    lines.put("BODY cavity.diameter-mm", "diameter-mm: 10");
    lines.put("BODY ring.thickness-mm", "thickness-mm: 1.5");
    lines.put("report-every-s", "report-every-s: 60");
    lines.put("r-mm", "r-mm: 12.5");
    lines.put("z-mm", "z-mm: 75");
    lines.put("values-for", "values-for: enamel");
    lines.put("VALUES source", "source: \"maker's sheet of March\"");
    lines.put("VALUES metal", "metal: sterling-925");
    lines.put("shown", "shown: [[rate 1, \"150\"]]");
    return Map.copyOf(lines);
  }
}
