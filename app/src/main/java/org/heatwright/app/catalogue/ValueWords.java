package org.heatwright.app.catalogue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import org.heatwright.app.files.OwnValues;
import org.heatwright.app.files.TypedNumber;
import org.heatwright.app.files.ValuesOf;
import org.heatwright.app.files.YamlText;
import org.heatwright.app.files.YamlValue;
import org.heatwright.inspect.Wording;
import org.heatwright.material.Origin;
import org.heatwright.mould.Investment;
import org.heatwright.schedule.HourMinute;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.EnamelWork;
import org.heatwright.work.glass.Glass;
import org.heatwright.work.heattreat.TreatedMetal;
import org.heatwright.work.sinter.Clay;

/** A person's own values in words, and as they are typed. */
public final class ValueWords {

  /** How a value is written. */
  public enum Measure {
    TEMPERATURE,
    RATE,
    DURATION,
    OTHER
  }

  private static final Map<String, String> LABELS = labels();

  private ValueWords() {}

  private static Map<String, String> labels() {
    Map<String, String> labels = new LinkedHashMap<>();
    labels.put("enamel", "how hard to fuse");
    labels.put("oxides-mol-percent", "oxides, mol per cent");
    labels.put("oxides-mass-percent", "oxides, per cent by mass");
    labels.put("softening-celsius", "softens at");
    labels.put("expansion-ppm-k", "expansion, millionths a kelvin");
    labels.put("coat-mm", "a coat's thickness, mm");
    labels.put("working-celsius", "kiln to work at");
    labels.put("glass", "kind of glass");
    labels.put("anneal-celsius", "annealing point");
    labels.put("strain-celsius", "strain point");
    labels.put("expansion", "expansion as the trade tells it, such as 90");
    labels.put("anneal-soak", "annealing soak");
    labels.put("binder", "bonded by");
    labels.put("water-powder", "water or liquid to a kg of powder, kg");
    labels.put("alloy", "alloy");
    labels.put("pour-mould-celsius", "mould at the pour");
    labels.put("pour-metal-celsius", "metal at the pour");
    labels.put("least-mould-celsius", "mould never cooler than");
    labels.put("clay", "clay");
    labels.put("metal", "metal");
    labels.put("solidus-celsius", "begins to melt at");
    labels.put("solution-celsius", "solution treated at");
    labels.put("target-celsius", "heated to");
    labels.put("soak", "soaked for");
    labels.put("data-sheet.max-celsius", "never above");
    labels.put("data-sheet.dry-celsius", "dries at");
    labels.put("data-sheet.dry-hold", "dries for");
    labels.put("data-sheet.top-celsius", "fired at");
    labels.put("data-sheet.top-hold", "held for");
    labels.put("data-sheet.fastest-rise-k-per-h", "rises at most");
    labels.put("data-sheet.fastest-wet-rise-k-per-h", "rises wet at most");
    labels.put("data-sheet.pour-soak", "soaks before the pour");
    return labels;
  }

  /** What they are of, in words. */
  public static String of(ValuesOf of) {
    return switch (of) {
      case ENAMEL -> "Enamel";
      case GLASS -> "Glass";
      case INVESTMENT -> "Investment";
      case ALLOY -> "Casting alloy";
      case CLAY -> "Metal clay";
      case METAL -> "Metal to heat-treat";
    };
  }

  /** Every key that may be told, those of a data sheet behind the others. */
  public static List<String> keys(ValuesOf of) {
    List<String> keys = new ArrayList<>(of.keys());
    if (of.hasDataSheet()) {
      LABELS.keySet().stream().filter(key -> key.startsWith("data-sheet.")).forEach(keys::add);
    }
    return keys;
  }

  /** What a value is; its key where it has no name in words. */
  public static String label(String key) {
    return LABELS.getOrDefault(key, key);
  }

  /** The words a value is chosen from, as files write them, with what people call them. */
  public static Map<String, String> choices(String key) {
    Map<String, String> choices = new LinkedHashMap<>();
    switch (key) {
      case "enamel" -> add(choices, EnamelWork.Hardness.values());
      case "glass" -> {
        for (Glass.Family family : Glass.Family.values()) {
          choices.put(YamlValue.word(family), family.words());
        }
      }
      case "binder" -> add(choices, Investment.Binder.values());
      case "clay" -> {
        for (Clay clay : Clay.values()) {
          choices.put(YamlValue.word(clay), clay.words());
        }
      }
      case "metal" -> {
        for (TreatedMetal metal : TreatedMetal.values()) {
          choices.put(YamlValue.word(metal), metal.words());
        }
      }
      default -> {
        // written, not chosen
      }
    }
    return choices;
  }

  private static void add(Map<String, String> choices, Enum<?>... words) {
    for (Enum<?> word : words) {
      choices.put(YamlValue.word(word), YamlValue.word(word).replace('-', ' '));
    }
  }

  public static Measure measure(String key) {
    if (key.endsWith("-celsius")) {
      return Measure.TEMPERATURE;
    } else if (key.endsWith("-k-per-h")) {
      return Measure.RATE;
    }
    return key.endsWith("hold") || key.endsWith("soak") ? Measure.DURATION : Measure.OTHER;
  }

  /** Every value with its source. */
  public static Shelf.Item item(String name, OwnValues values, TemperatureUnit unit) {
    List<Shelf.Value> told = new ArrayList<>();
    values
        .entries()
        .forEach(
            (key, yaml) ->
                told.add(
                    new Shelf.Value(
                        label(key), words(key, yaml, unit), Origin.own(values.source()))));
    return new Shelf.Item(name, told);
  }

  private static String words(String key, String yaml, TemperatureUnit unit) {
    String plain = plain(yaml);
    return switch (measure(key)) {
      case TEMPERATURE -> Wording.of(Temperature.ofCelsius(Double.parseDouble(plain)), unit);
      case RATE -> Wording.of(HeatingRate.ofKelvinsPerHour(Double.parseDouble(plain)), unit);
      case DURATION -> HourMinute.parse(plain).map(HourMinute::words).orElse(plain);
      case OTHER -> choices(key).getOrDefault(plain, plain);
    };
  }

  private static String plain(String yaml) {
    boolean quoted = yaml.length() > 1 && yaml.startsWith("\"") && yaml.endsWith("\"");
    return quoted ? yaml.substring(1, yaml.length() - 1).replaceAll("\\\\(.)", "$1") : yaml;
  }

  // ---- as typed

  /** A value as it stands in a field of a form. */
  public static String typed(String key, String yaml, TemperatureUnit unit) {
    String plain = plain(yaml);
    return switch (measure(key)) {
      case TEMPERATURE -> number(unit.value(Temperature.ofCelsius(Double.parseDouble(plain))));
      case RATE -> number(unit.value(HeatingRate.ofKelvinsPerHour(Double.parseDouble(plain))));
      case DURATION, OTHER -> plain;
    };
  }

  /** A tenth is more than any of these is known to. */
  private static String number(double value) {
    return YamlText.number(Math.rint(value * 10) / 10);
  }

  /**
   * What was typed as YAML, temperatures and rates in °C; what is no number stays as it is, to be
   * refused where files are.
   */
  public static String yaml(String key, String typed, TemperatureUnit unit) {
    return switch (measure(key)) {
      case TEMPERATURE -> converted(typed, unit, (v, u) -> u.temperature(v).celsius());
      case RATE -> converted(typed, unit, (v, u) -> u.rate(v).kelvinsPerHour());
      case DURATION -> YamlText.quoted(typed);
      case OTHER ->
          typed.startsWith("{") ? typed : parsed(typed).map(YamlText::number).orElse(text(typed));
    };
  }

  /** By its own letter if it has one, else by the unit that was asked for. */
  private static String converted(
      String typed, TemperatureUnit unit, BiFunction<Double, TemperatureUnit, Double> convert) {
    try {
      return TypedNumber.of(typed)
          .map(number -> convert.apply(number.value(), number.unit().orElse(unit)))
          .map(ValueWords::number)
          .orElse(text(typed));
    } catch (IllegalArgumentException impossible) { // below absolute zero
      return text(typed);
    }
  }

  private static Optional<Double> parsed(String typed) {
    return TypedNumber.bare(typed).stream().boxed().findFirst();
  }

  /** Words stand bare in files, so that a list of them can be held against them. */
  private static String text(String typed) {
    return typed.matches("[a-z0-9-]+") ? typed : YamlText.quoted(typed);
  }
}
