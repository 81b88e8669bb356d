package org.heatwright.app.files;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.heatwright.mould.Investment;
import org.heatwright.mould.Mould;
import org.heatwright.schedule.HourMinute;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.work.BurnoutWork;
import org.heatwright.work.DataSheet;
import org.heatwright.work.EnamelWork;
import org.heatwright.work.GlassWork;
import org.heatwright.work.HeatTreatWork;
import org.heatwright.work.PatternedMould;
import org.heatwright.work.PouredMetal;
import org.heatwright.work.SinterWork;
import org.heatwright.work.Work;
import org.heatwright.work.casting.PouringMethod;

/** {@code work.yaml}: what is in the kiln and what is to become of it. */
public final class WorkFile {

  private static final double MILLI = 1000;
  private static final double GRAMS = 1000;

  /** Usual for gypsum-bonded investment (common practice, no source). */
  static final double USUAL_WATER_POWDER = 0.40;

  /** Liquid to powder of phosphate-bonded investment (estimate). */
  static final double USUAL_LIQUID_POWDER = 0.20;

  static final double USUAL_HOURS_SINCE_POURING = 2;

  private static final List<String> KINDS =
      List.of("burnout", "enamel", "heat-treat", "sinter", "glass");

  private WorkFile() {}

  public static Work read(String text, String fileName) {
    YamlMap file = YamlFile.read(text, fileName, FileKind.WORK);
    YamlValue kind = file.required("kind");
    return switch (kind.oneOf(KINDS)) {
      case "burnout" -> burnout(file);
      case "glass" -> GlassWorkFile.read(file);
      case "heat-treat" -> HeatTreatWorkFile.read(file);
      case "sinter" -> SinterWorkFile.read(file);
      default -> EnamelWorkFile.read(file);
    };
  }

  public static String write(Work work) {
    if (work instanceof HeatTreatWork treatment) {
      return HeatTreatWorkFile.write(treatment);
    }
    if (work instanceof SinterWork sinter) {
      return SinterWorkFile.write(sinter);
    }
    if (work instanceof GlassWork glass) {
      return GlassWorkFile.write(glass);
    }
    return work instanceof BurnoutWork burnout
        ? writeBurnout(burnout)
        : EnamelWorkFile.write((EnamelWork) work);
  }

  // ---- burnout

  private static BurnoutWork burnout(YamlMap file) {
    file.only("kind", "moulds", "investment", "metal", "ready-by");
    List<PatternedMould> moulds =
        file.required("moulds").filledList().stream().map(WorkFile::mould).toList();
    YamlMap investment =
        file.required("investment")
            .map("binder", "water-powder", "poured-hours-before", "data-sheet");
    PouredMetal metal = metal(file.required("metal"));
    return file.place()
        .build(
            () ->
                new BurnoutWork(
                    moulds,
                    investment(investment),
                    investment
                        .optional("data-sheet")
                        .map(WorkFile::dataSheet)
                        .orElse(DataSheet.none()),
                    metal,
                    readyBy(file)));
  }

  private static PouredMetal metal(YamlValue value) {
    return metal(
        value.map(
            "alloy",
            "pour-mould-celsius",
            "pour-metal-celsius",
            "least-mould-celsius",
            "thinnest-mm",
            "method"));
  }

  /** Reads what is poured from a mapping that may hold more. */
  static PouredMetal metal(YamlMap map) {
    String alloy = map.required("alloy").text();
    OptionalDouble thinnest =
        map.optional("thinnest-mm")
            .map(v -> OptionalDouble.of(v.between(0.1, 100, "mm") / MILLI))
            .orElse(OptionalDouble.empty());
    return map.place()
        .build(
            () ->
                new PouredMetal(
                    alloy,
                    map.optional("pour-mould-celsius").map(v -> celsius(v, 20, 2000)),
                    map.optional("pour-metal-celsius").map(v -> celsius(v, 20, 2000)),
                    map.optional("least-mould-celsius").map(v -> celsius(v, 20, 2000)),
                    thinnest,
                    map.optional("method").map(v -> v.oneOf(PouringMethod.class))));
  }

  private static PatternedMould mould(YamlValue value) {
    YamlMap map =
        value.map("count", "diameter-mm", "height-mm", "wall-mm", "pattern", "pattern-mass-g");
    Mould mould = MouldField.read(map);
    PatternedMould.Pattern pattern = map.required("pattern").oneOf(PatternedMould.Pattern.class);
    OptionalDouble kilograms =
        map.optional("pattern-mass-g")
            .map(v -> OptionalDouble.of(v.between(0, 5000, "g") / GRAMS))
            .orElse(OptionalDouble.empty());
    return new PatternedMould(mould, pattern, kilograms);
  }

  /** Reads {@code binder}, {@code water-powder} and {@code poured-hours-before}. */
  static Investment investment(YamlMap map) {
    Investment.Binder binder =
        map.optional("binder")
            .map(v -> v.oneOf(Investment.Binder.class))
            .orElse(Investment.Binder.UNKNOWN);
    boolean phosphate = binder == Investment.Binder.PHOSPHATE;
    double waterPowder =
        map.optional("water-powder")
            .map(
                v ->
                    phosphate
                        ? v.between(0.1, 0.4, "kg of liquid to a kg of phosphate-bonded powder")
                        : v.between(0.2, 0.8, "kg of water to a kg of powder"))
            .orElse(phosphate ? USUAL_LIQUID_POWDER : USUAL_WATER_POWDER);
    double hours =
        map.optional("poured-hours-before")
            .map(v -> v.between(0, 1000, "h"))
            .orElse(USUAL_HOURS_SINCE_POURING);
    return new Investment(binder, waterPowder, hours);
  }

  static Map<String, String> entries(Investment investment) {
    Map<String, String> entries = new LinkedHashMap<>();
    entries.put("binder", YamlValue.word(investment.binder()));
    entries.put("water-powder", YamlText.number(investment.waterPowder()));
    entries.put("poured-hours-before", YamlText.number(investment.pouredHoursBefore()));
    return entries;
  }

  private static String writeBurnout(BurnoutWork work) {
    StringBuilder out = new StringBuilder("kind: burnout\nmoulds:\n");
    for (PatternedMould mould : work.moulds()) {
      Map<String, String> entries = MouldField.entries(mould.mould());
      entries.put("pattern", YamlValue.word(mould.pattern()));
      mould
          .patternKilograms()
          .ifPresent(kg -> entries.put("pattern-mass-g", YamlText.number(kg * GRAMS)));
      out.append("  - ").append(YamlText.flow(entries)).append('\n');
    }
    Map<String, String> investment = entries(work.investment());
    putSheet(investment, work.dataSheet());
    out.append("investment: ").append(YamlText.flow(investment)).append('\n');
    Map<String, String> metal = new LinkedHashMap<>();
    metal.put("alloy", YamlText.text(work.metal().alloy()));
    PouredMetal poured = work.metal();
    put(metal, "pour-mould-celsius", poured.pourMould(), WorkFile::celsius);
    put(metal, "pour-metal-celsius", poured.pourMetal(), WorkFile::celsius);
    put(metal, "least-mould-celsius", poured.leastMould(), WorkFile::celsius);
    poured
        .thinnestMetres()
        .ifPresent(metres -> metal.put("thinnest-mm", YamlText.number(metres * MILLI)));
    put(metal, "method", poured.method(), PouringMethod::word);
    out.append("metal: ").append(YamlText.flow(metal)).append('\n');
    appendReadyBy(out, work);
    return out.toString();
  }

  // ---- data sheet and times

  static DataSheet dataSheet(YamlValue value) {
    YamlMap map =
        value.map(
            "max-celsius",
            "dry-celsius",
            "dry-hold",
            "top-celsius",
            "top-hold",
            "fastest-rise-k-per-h",
            "fastest-wet-rise-k-per-h",
            "pour-soak");
    return value.build(
        () ->
            new DataSheet(
                map.optional("max-celsius").map(v -> celsius(v, 100, 1400)),
                map.optional("dry-celsius").map(v -> celsius(v, 60, 350)),
                map.optional("dry-hold").map(YamlValue::hourMinute),
                map.optional("top-celsius").map(v -> celsius(v, 100, 1400)),
                map.optional("top-hold").map(YamlValue::hourMinute),
                map.optional("fastest-rise-k-per-h").map(WorkFile::rate),
                map.optional("fastest-wet-rise-k-per-h").map(WorkFile::rate),
                map.optional("pour-soak").map(YamlValue::hourMinute)));
  }

  static void putSheet(Map<String, String> holder, DataSheet sheet) {
    Map<String, String> entries = new LinkedHashMap<>();
    put(entries, "max-celsius", sheet.max(), WorkFile::celsius);
    put(entries, "dry-celsius", sheet.dry(), WorkFile::celsius);
    put(entries, "dry-hold", sheet.dryHold(), WorkFile::duration);
    put(entries, "top-celsius", sheet.top(), WorkFile::celsius);
    put(entries, "top-hold", sheet.topHold(), WorkFile::duration);
    put(entries, "fastest-rise-k-per-h", sheet.fastestRise(), WorkFile::rate);
    put(entries, "fastest-wet-rise-k-per-h", sheet.fastestWetRise(), WorkFile::rate);
    put(entries, "pour-soak", sheet.pourSoak(), WorkFile::duration);
    if (!entries.isEmpty()) {
      holder.put("data-sheet", YamlText.flow(entries));
    }
  }

  static Optional<LocalDateTime> readyBy(YamlMap file) {
    return file.optional("ready-by").map(YamlValue::dateTime);
  }

  static void appendReadyBy(StringBuilder out, Work work) {
    work.readyBy().ifPresent(time -> line(out, "ready-by", time.toString()));
  }

  // ---- small helpers

  static Temperature celsius(YamlValue value, double low, double high) {
    return Temperature.ofCelsius(value.between(low, high, "°C"));
  }

  static String celsius(Temperature temperature) {
    return YamlText.number(temperature.celsius());
  }

  private static HeatingRate rate(YamlValue value) {
    return HeatingRate.ofKelvinsPerHour(value.between(1, 100_000, "K/h"));
  }

  private static String rate(HeatingRate rate) {
    return YamlText.number(rate.kelvinsPerHour());
  }

  static String duration(Duration duration) {
    return YamlText.quoted(HourMinute.format(duration));
  }

  private static <T> void put(
      Map<String, String> entries, String key, Optional<T> value, Function<T, String> write) {
    value.ifPresent(v -> entries.put(key, write.apply(v)));
  }

  static void line(StringBuilder out, String key, String value) {
    out.append(key).append(": ").append(value).append('\n');
  }
}
