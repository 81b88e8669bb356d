package org.heatwright.app.files;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import org.heatwright.keypad.Entry;
import org.heatwright.keypad.Gesture;
import org.heatwright.keypad.Key;
import org.heatwright.keypad.KeyedValue;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.Keypad.UnitSetting;
import org.heatwright.keypad.Special;
import org.heatwright.keypad.TimeForm;
import org.heatwright.schedule.AtEnd;
import org.heatwright.schedule.HourMinute;
import org.heatwright.units.TemperatureUnit;

/**
 * {@code keypad.yaml}: keys, ranges, prompts, saving and review of a keypad, as its owner sees it.
 */
public final class KeypadFile {

  private static final List<String> UNIT_LETTERS = List.of("C", "F");
  private static final String SWITCHABLE = "switchable";
  private static final List<KeyedValue.Kind> SEGMENT_FIELDS =
      List.of(
          KeyedValue.Kind.RATE, KeyedValue.Kind.TIME, KeyedValue.Kind.TARGET, KeyedValue.Kind.HOLD);
  private static final double MAX_NUMBER = 100_000;

  private KeypadFile() {}

  public static Keypad read(String text, String fileName) {
    YamlMap file =
        YamlFile.read(text, fileName, FileKind.KEYPAD)
            .only(
                "name",
                "unit",
                "keys",
                "entry",
                "accept",
                "starts",
                "slots",
                "segments",
                "display-digits",
                "order",
                "rate",
                "time",
                "target",
                "hold",
                "delay",
                "end",
                "navigation",
                "after-last",
                "commits",
                "gestures",
                "review",
                "after-power-cut");
    String name = file.required("name").text();
    UnitSetting units = units(file.required("unit"));
    Set<Key> keys = EnumSet.noneOf(Key.class);
    file.required("keys").filledList().forEach(v -> keys.add(v.oneOf(Key.class)));
    Entry entry = entry(file.required("entry"));
    Key accept = file.required("accept").oneOf(Key.class);
    Keypad.FieldStart starts =
        file.optional("starts")
            .map(v -> v.oneOf(Keypad.FieldStart.class))
            .orElse(Keypad.FieldStart.STORED);
    int slots = file.required("slots").whole(1, 999);
    int segments = file.required("segments").whole(1, 99);
    int displayDigits = file.required("display-digits").whole(2, 8);
    List<KeyedValue.Kind> order = kinds(file.required("order"));
    if (file.has("rate") && file.has("time")) {
      throw file.required("time")
          .error("a segment has a rate or a time to get to its target, not both; remove one.");
    }
    Keypad.RateField rate =
        file.optional("time").map(KeypadFile::time).orElseGet(() -> rate(file.required("rate")));
    Keypad.TargetField target = target(file.required("target"));
    Keypad.HoldField hold = hold(file.required("hold"));
    Optional<Keypad.DelayField> delay = file.optional("delay").map(KeypadFile::delay);
    Keypad.EndRule end = end(file.required("end"));
    Keypad.Gestures gestures = gestures(file.required("gestures"));
    Keypad.Programming programming = programming(file, gestures);
    Keypad.Review review = review(file.required("review"));
    Keypad.PowerCut afterPowerCut =
        file.optional("after-power-cut")
            .map(v -> v.oneOf(Keypad.PowerCut.class))
            .orElse(Keypad.PowerCut.UNKNOWN);
    return file.place()
        .build(
            () ->
                new Keypad(
                    name,
                    units,
                    keys,
                    entry,
                    accept,
                    starts,
                    slots,
                    segments,
                    displayDigits,
                    order,
                    rate,
                    target,
                    hold,
                    delay,
                    end,
                    programming,
                    gestures,
                    review,
                    afterPowerCut));
  }

  public static String write(Keypad keypad) {
    StringBuilder out = new StringBuilder();
    line(out, "name", YamlText.text(keypad.name()));
    line(out, "unit", units(keypad.units()));
    line(out, "keys", list(keypad.keys().stream().sorted().map(YamlValue::word).toList()));
    line(out, "entry", entry(keypad.entry()));
    line(out, "accept", YamlValue.word(keypad.accept()));
    line(out, "starts", YamlValue.word(keypad.starts()));
    line(out, "slots", String.valueOf(keypad.slots()));
    line(out, "segments", String.valueOf(keypad.segments()));
    line(out, "display-digits", String.valueOf(keypad.displayDigits()));
    line(out, "order", kinds(keypad.order()));
    if (keypad.rate().time().isPresent()) {
      line(out, "time", time(keypad.rate()));
    } else {
      line(out, "rate", rate(keypad.rate()));
    }
    line(out, "target", target(keypad.target()));
    line(out, "hold", hold(keypad.hold()));
    keypad.delay().ifPresent(delay -> line(out, "delay", delay(delay)));
    line(out, "end", end(keypad.end()));
    line(out, "navigation", YamlValue.word(keypad.programming().navigation()));
    line(out, "after-last", YamlValue.word(keypad.programming().afterLast()));
    line(out, "commits", YamlValue.word(keypad.programming().commits()));
    out.append("gestures:\n").append(gestures(keypad.gestures()));
    line(out, "review", review(keypad.review()));
    line(out, "after-power-cut", YamlValue.word(keypad.afterPowerCut()));
    return out.toString();
  }

  // ---- unit

  /** C, F, or a mapping that says more. */
  private static UnitSetting units(YamlValue value) {
    if (!value.isMap()) {
      return UnitSetting.fixed(unit(value));
    }
    YamlMap map = value.map("setting", "ranges-in", "shown", "switching-converts", "asked");
    String setting = map.required("setting").oneOf(List.of("C", "F", SWITCHABLE));
    Set<UnitSetting.ShownAt> shown = EnumSet.noneOf(UnitSetting.ShownAt.class);
    map.optional("shown")
        .ifPresent(v -> v.list().forEach(s -> shown.add(s.oneOf(UnitSetting.ShownAt.class))));
    if (setting.equals(SWITCHABLE)) {
      TemperatureUnit rangesIn = unit(map.required("ranges-in"));
      UnitSetting.SwitchingConverts converts =
          map.optional("switching-converts")
              .map(v -> v.oneOf(UnitSetting.SwitchingConverts.class))
              .orElse(UnitSetting.SwitchingConverts.UNKNOWN);
      Optional<Keypad.UnitPrompt> asked = map.optional("asked").map(KeypadFile::unitPrompt);
      return new UnitSetting(UnitSetting.Setting.SWITCHABLE, rangesIn, shown, converts, asked);
    }
    for (String key : List.of("ranges-in", "switching-converts", "asked")) {
      if (map.has(key)) {
        throw map.required(key).error("only a switchable keypad has it; remove it.");
      }
    }
    return UnitSetting.fixed(
        TemperatureUnit.ofLetter(setting).orElseThrow(), shown.toArray(new UnitSetting.ShownAt[0]));
  }

  private static Keypad.UnitPrompt unitPrompt(YamlValue value) {
    YamlMap map = value.map("label", "celsius", "fahrenheit", "lower", "review");
    Optional<String> label = label(map);
    String celsius = map.required("celsius").asWritten();
    String fahrenheit = map.required("fahrenheit").asWritten();
    TemperatureUnit lower =
        map.optional("lower").map(KeypadFile::unit).orElse(TemperatureUnit.CELSIUS);
    Keypad.Position review = map.required("review").oneOf(Keypad.Position.class);
    return value.build(() -> new Keypad.UnitPrompt(label, celsius, fahrenheit, lower, review));
  }

  private static String unitPrompt(Keypad.UnitPrompt asked) {
    Map<String, String> entries = new LinkedHashMap<>();
    label(entries, asked.label());
    entries.put("celsius", YamlText.quoted(asked.celsius()));
    entries.put("fahrenheit", YamlText.quoted(asked.fahrenheit()));
    entries.put("lower", asked.lower().letter());
    entries.put("review", YamlValue.word(asked.review()));
    return YamlText.flow(entries);
  }

  private static TemperatureUnit unit(YamlValue value) {
    return TemperatureUnit.ofLetter(value.oneOf(UNIT_LETTERS)).orElseThrow();
  }

  private static String units(UnitSetting units) {
    Map<String, String> entries = new LinkedHashMap<>();
    entries.put("setting", units.switchable() ? SWITCHABLE : units.rangesIn().letter());
    if (units.switchable()) {
      entries.put("ranges-in", units.rangesIn().letter());
    }
    entries.put("shown", list(units.shownAt().stream().sorted().map(YamlValue::word).toList()));
    if (units.switchable()) {
      entries.put("switching-converts", quotedWord(units.switchingConverts()));
    }
    units.asked().ifPresent(asked -> entries.put("asked", unitPrompt(asked)));
    return YamlText.flow(entries);
  }

  /** yes and no are quoted, because older readers take them for true and false. */
  private static String quotedWord(Enum<?> value) {
    return YamlText.text(YamlValue.word(value));
  }

  // ---- entry

  private static Entry entry(YamlValue value) {
    String kind = value.map().required("kind").oneOf(List.of("steps", "digits", "knob"));
    return switch (kind) {
      case "steps" -> {
        YamlMap map = value.map("kind", "repeat", "at-least", "at-greatest");
        List<Entry.RepeatStage> repeat =
            map.optional("repeat").map(v -> v.listOf(KeypadFile::stage)).orElse(List.of());
        Entry.AtLimit least = limit(map, "at-least");
        Entry.AtLimit greatest = limit(map, "at-greatest");
        yield value.build(() -> new Entry.StepKeys(repeat, least, greatest));
      }
      case "digits" ->
          new Entry.DigitKeys(
              value
                  .map("kind", "point-key")
                  .optional("point-key")
                  .map(YamlValue::bool)
                  .orElse(false));
      default -> {
        YamlMap map = value.map("kind", "clicks-per-turn", "fast-steps", "at-least", "at-greatest");
        yield new Entry.Knob(
            map.required("clicks-per-turn").whole(4, 100),
            map.optional("fast-steps").map(v -> v.whole(1, 1000)).orElse(1),
            limit(map, "at-least"),
            limit(map, "at-greatest"));
      }
    };
  }

  private static Entry.RepeatStage stage(YamlValue value) {
    YamlMap map = value.map("after-s", "steps", "ticks-per-s");
    double afterSeconds = map.required("after-s").above0("s");
    int steps = map.required("steps").whole(1, 1000);
    double ticks = map.required("ticks-per-s").above0("a second");
    return value.build(() -> new Entry.RepeatStage(afterSeconds, steps, ticks));
  }

  private static Entry.AtLimit limit(YamlMap map, String key) {
    return map.optional(key).map(v -> v.oneOf(Entry.AtLimit.class)).orElse(Entry.AtLimit.STOP);
  }

  private static String entry(Entry entry) {
    Map<String, String> entries = new LinkedHashMap<>();
    if (entry instanceof Entry.StepKeys keys) {
      entries.put("kind", "steps");
      entries.put(
          "repeat",
          list(
              keys.repeat().stream()
                  .map(
                      stage ->
                          flow(
                              "after-s", YamlText.number(stage.afterSeconds()),
                              "steps", String.valueOf(stage.stepsPerTick()),
                              "ticks-per-s", YamlText.number(stage.ticksPerSecond())))
                  .toList()));
      entries.put("at-least", YamlValue.word(keys.atLeast()));
      entries.put("at-greatest", YamlValue.word(keys.atGreatest()));
    } else if (entry instanceof Entry.Knob knob) {
      entries.put("kind", "knob");
      entries.put("clicks-per-turn", String.valueOf(knob.clicksPerTurn()));
      entries.put("fast-steps", String.valueOf(knob.fastSteps()));
      entries.put("at-least", YamlValue.word(knob.atLeast()));
      entries.put("at-greatest", YamlValue.word(knob.atGreatest()));
    } else {
      entries.put("kind", "digits");
      entries.put("point-key", String.valueOf(((Entry.DigitKeys) entry).pointKey()));
    }
    return YamlText.flow(entries);
  }

  // ---- fields

  private static List<KeyedValue.Kind> kinds(YamlValue value) {
    return value.listOf(KeypadFile::kind);
  }

  private static KeyedValue.Kind kind(YamlValue value) {
    List<String> words = SEGMENT_FIELDS.stream().map(YamlValue::word).toList();
    return SEGMENT_FIELDS.get(words.indexOf(value.oneOf(words)));
  }

  private static String kinds(List<KeyedValue.Kind> kinds) {
    return list(kinds.stream().map(YamlValue::word).toList());
  }

  private static Keypad.RateField rate(YamlValue value) {
    YamlMap map =
        value.map(
            "label", "per", "min", "max", "step", "in-other-unit", "fastest", "cooling", "start");
    Optional<String> label = label(map);
    Keypad.RateField.Per per = map.required("per").oneOf(Keypad.RateField.Per.class);
    Keypad.Range range = range(value, map);
    Optional<Keypad.Range> other = otherRange(map);
    Optional<Special> fastest = map.optional("fastest").map(KeypadFile::special);
    Keypad.Cooling cooling =
        map.optional("cooling")
            .map(v -> v.oneOf(Keypad.Cooling.class))
            .orElse(Keypad.Cooling.IMPLIED);
    Optional<BigDecimal> start = map.optional("start").map(KeypadFile::decimal);
    return value.build(
        () -> new Keypad.RateField(label, per, range, other, fastest, cooling, start));
  }

  private static String rate(Keypad.RateField rate) {
    Map<String, String> entries = new LinkedHashMap<>();
    label(entries, rate.label());
    entries.put("per", YamlValue.word(rate.per()));
    range(entries, rate.range(), rate.inOtherUnit());
    rate.fastest().ifPresent(fastest -> entries.put("fastest", special(fastest)));
    entries.put("cooling", YamlValue.word(rate.cooling()));
    rate.start().ifPresent(start -> entries.put("start", start.toPlainString()));
    return YamlText.flow(entries);
  }

  private static Keypad.RateField time(YamlValue value) {
    YamlMap map =
        value.map(
            "label", "form", "least-min", "max", "step-min", "fastest", "cooling", "start-min");
    Optional<String> label = label(map);
    TimeForm form = form(map.required("form"));
    BigDecimal max = minutes(map.required("max").hourMinute());
    BigDecimal step = map.optional("step-min").map(KeypadFile::decimal).orElse(BigDecimal.ONE);
    BigDecimal least = map.optional("least-min").map(KeypadFile::decimal).orElse(step);
    Optional<Special> fastest = map.optional("fastest").map(KeypadFile::special);
    Keypad.Cooling cooling =
        map.optional("cooling")
            .map(v -> v.oneOf(Keypad.Cooling.class))
            .orElse(Keypad.Cooling.IMPLIED);
    Optional<BigDecimal> start = map.optional("start-min").map(KeypadFile::decimal);
    return value.build(
        () ->
            Keypad.RateField.time(
                label, form, new Keypad.Range(least, max, step), fastest, cooling, start));
  }

  private static String time(Keypad.RateField time) {
    Map<String, String> entries = new LinkedHashMap<>();
    label(entries, time.label());
    time(entries, time.time().orElseThrow(), time.range().max(), time.range().step());
    entries.put("least-min", time.range().min().toPlainString());
    time.fastest().ifPresent(fastest -> entries.put("fastest", special(fastest)));
    entries.put("cooling", YamlValue.word(time.cooling()));
    time.start().ifPresent(start -> entries.put("start-min", start.toPlainString()));
    return YamlText.flow(entries);
  }

  private static Keypad.TargetField target(YamlValue value) {
    YamlMap map = value.map("label", "min", "max", "step", "in-other-unit", "start");
    Optional<String> label = label(map);
    Keypad.Range range = range(value, map);
    Optional<Keypad.Range> other = otherRange(map);
    Optional<BigDecimal> start = map.optional("start").map(KeypadFile::decimal);
    return value.build(() -> new Keypad.TargetField(label, range, other, start));
  }

  private static String target(Keypad.TargetField target) {
    Map<String, String> entries = new LinkedHashMap<>();
    label(entries, target.label());
    range(entries, target.range(), target.inOtherUnit());
    target.start().ifPresent(start -> entries.put("start", start.toPlainString()));
    return YamlText.flow(entries);
  }

  private static Keypad.HoldField hold(YamlValue value) {
    YamlMap map = value.map("label", "form", "max", "step-min", "endless", "start-min");
    Optional<String> label = label(map);
    TimeForm form = form(map.required("form"));
    BigDecimal max = minutes(map.required("max").hourMinute());
    BigDecimal step = map.optional("step-min").map(KeypadFile::decimal).orElse(BigDecimal.ONE);
    Optional<Special> endless = map.optional("endless").map(KeypadFile::special);
    Optional<BigDecimal> start = map.optional("start-min").map(KeypadFile::decimal);
    return value.build(() -> new Keypad.HoldField(label, form, max, step, endless, start));
  }

  private static String hold(Keypad.HoldField hold) {
    Map<String, String> entries = new LinkedHashMap<>();
    label(entries, hold.label());
    time(entries, hold.form(), hold.maxMinutes(), hold.stepMinutes());
    hold.endless().ifPresent(endless -> entries.put("endless", special(endless)));
    hold.startMinutes().ifPresent(start -> entries.put("start-min", start.toPlainString()));
    return YamlText.flow(entries);
  }

  private static Keypad.DelayField delay(YamlValue value) {
    YamlMap map = value.map("label", "form", "max", "step-min", "position", "start-min");
    Optional<String> label = label(map);
    TimeForm form = form(map.required("form"));
    BigDecimal max = minutes(map.required("max").hourMinute());
    BigDecimal step = map.optional("step-min").map(KeypadFile::decimal).orElse(BigDecimal.ONE);
    Keypad.Position position =
        map.required("position").oneOf(List.of("first", "last")).equals("first")
            ? Keypad.Position.FIRST
            : Keypad.Position.LAST;
    Optional<BigDecimal> start = map.optional("start-min").map(KeypadFile::decimal);
    return value.build(() -> new Keypad.DelayField(label, form, max, step, position, start));
  }

  private static String delay(Keypad.DelayField delay) {
    Map<String, String> entries = new LinkedHashMap<>();
    label(entries, delay.label());
    time(entries, delay.form(), delay.maxMinutes(), delay.stepMinutes());
    entries.put("position", YamlValue.word(delay.position()));
    delay.startMinutes().ifPresent(start -> entries.put("start-min", start.toPlainString()));
    return YamlText.flow(entries);
  }

  private static TimeForm form(YamlValue value) {
    List<String> words = Arrays.stream(TimeForm.values()).map(TimeForm::word).toList();
    return TimeForm.ofWord(value.oneOf(words)).orElseThrow();
  }

  private static BigDecimal minutes(Duration duration) {
    return BigDecimal.valueOf(duration.toMinutes());
  }

  private static void time(
      Map<String, String> entries, TimeForm form, BigDecimal maxMinutes, BigDecimal stepMinutes) {
    entries.put("form", YamlText.text(form.word()));
    entries.put(
        "max", YamlText.quoted(HourMinute.format(Duration.ofMinutes(maxMinutes.longValue()))));
    entries.put("step-min", stepMinutes.toPlainString());
  }

  private static Optional<String> label(YamlMap map) {
    return map.optional("label").map(YamlValue::text);
  }

  private static void label(Map<String, String> entries, Optional<String> label) {
    label.ifPresent(text -> entries.put("label", YamlText.text(text)));
  }

  private static Keypad.Range range(YamlValue value, YamlMap map) {
    BigDecimal min = decimal(map.required("min"));
    BigDecimal max = decimal(map.required("max"));
    BigDecimal step = decimal(map.required("step"));
    return value.build(() -> new Keypad.Range(min, max, step));
  }

  private static Optional<Keypad.Range> otherRange(YamlMap map) {
    return map.optional("in-other-unit").map(v -> range(v, v.map("min", "max", "step")));
  }

  private static void range(
      Map<String, String> entries, Keypad.Range range, Optional<Keypad.Range> other) {
    entries.put("min", range.min().toPlainString());
    entries.put("max", range.max().toPlainString());
    entries.put("step", range.step().toPlainString());
    other.ifPresent(
        r ->
            entries.put(
                "in-other-unit",
                flow(
                    "min", r.min().toPlainString(),
                    "max", r.max().toPlainString(),
                    "step", r.step().toPlainString())));
  }

  private static BigDecimal decimal(YamlValue value) {
    return BigDecimal.valueOf(value.between(0, MAX_NUMBER, ""));
  }

  private static Special special(YamlValue value) {
    YamlMap map = value.map("shows", "at", "typed");
    String shows = map.required("shows").asWritten();
    Special.Place place = map.required("at").oneOf(Special.Place.class);
    Optional<String> typed = map.optional("typed").map(YamlValue::asWritten);
    return value.build(() -> new Special(shows, place, typed));
  }

  private static Map<String, String> specialEntries(Special special) {
    Map<String, String> entries = new LinkedHashMap<>();
    entries.put("shows", YamlText.quoted(special.shows()));
    entries.put("at", YamlValue.word(special.place()));
    special.typed().ifPresent(typed -> entries.put("typed", YamlText.quoted(typed)));
    return entries;
  }

  private static String special(Special special) {
    return YamlText.flow(specialEntries(special));
  }

  // ---- end, gestures, review

  private static Keypad.EndRule end(YamlValue value) {
    YamlMap map = value.map("by", "shows", "at", "typed", "in", "afterwards");
    Keypad.EndRule.By by = map.required("by").oneOf(Keypad.EndRule.By.class);
    AtEnd afterwards = map.optional("afterwards").map(v -> v.oneOf(AtEnd.class)).orElse(AtEnd.OFF);
    if (by == Keypad.EndRule.By.COUNT) {
      for (String key : List.of("shows", "at", "typed", "in")) {
        if (map.has(key)) {
          throw map.required(key).error("an end by count shows no mark; remove it.");
        }
      }
      return new Keypad.EndRule(by, Optional.empty(), afterwards);
    }
    String shows = map.required("shows").asWritten();
    Special.Place place = map.required("at").oneOf(Special.Place.class);
    Optional<String> typed = map.optional("typed").map(YamlValue::asWritten);
    Optional<KeyedValue.Kind> in = map.optional("in").map(KeypadFile::kind);
    return value.build(
        () ->
            new Keypad.EndRule(by, Optional.of(new Special(shows, place, typed)), in, afterwards));
  }

  private static String end(Keypad.EndRule end) {
    Map<String, String> entries = new LinkedHashMap<>();
    entries.put("by", YamlValue.word(end.by()));
    end.mark().ifPresent(mark -> entries.putAll(specialEntries(mark)));
    end.in().ifPresent(in -> entries.put("in", YamlValue.word(in)));
    entries.put("afterwards", YamlValue.word(end.afterwards()));
    return YamlText.flow(entries);
  }

  /** What is left out follows from the gestures. */
  private static Keypad.Programming programming(YamlMap file, Keypad.Gestures gestures) {
    Keypad.Commits commits =
        file.optional("commits")
            .map(v -> v.oneOf(Keypad.Commits.class))
            .orElse(
                gestures.commit().isEmpty() ? Keypad.Commits.ACCEPTING : Keypad.Commits.GESTURE);
    return new Keypad.Programming(
        file.optional("navigation")
            .map(v -> v.oneOf(Keypad.Navigation.class))
            .orElse(Keypad.Navigation.SEQUENCE),
        file.optional("after-last")
            .map(v -> v.oneOf(Keypad.AfterLast.class))
            .orElse(
                commits == Keypad.Commits.ACCEPTING && gestures.leave().isEmpty()
                    ? Keypad.AfterLast.IDLE
                    : Keypad.AfterLast.FIRST),
        commits);
  }

  private static Keypad.Gestures gestures(YamlValue value) {
    YamlMap map =
        value.map(
            "open",
            "commit",
            "committed",
            "discards-after-s",
            "leave",
            "previous",
            "review",
            "start",
            "stop",
            "switch-unit");
    Gesture open = gesture(map.required("open"));
    Gesture commit = gesture(map, "commit");
    Optional<String> committed = map.optional("committed").map(YamlValue::asWritten);
    OptionalInt discards =
        map.optional("discards-after-s")
            .map(v -> OptionalInt.of(v.whole(1, 86_400)))
            .orElse(OptionalInt.empty());
    Gesture review = gesture(map.required("review"));
    return value.build(
        () ->
            new Keypad.Gestures(
                open,
                commit,
                committed,
                discards,
                gesture(map, "leave"),
                gesture(map, "previous"),
                review,
                gesture(map, "start"),
                gesture(map, "stop"),
                gesture(map, "switch-unit")));
  }

  private static String gestures(Keypad.Gestures gestures) {
    StringBuilder out = new StringBuilder();
    line(out, "  open", gesture(gestures.open()));
    line(out, "  commit", gesture(gestures.commit()));
    gestures.committed().ifPresent(shows -> line(out, "  committed", YamlText.quoted(shows)));
    gestures
        .discardsAfterSeconds()
        .ifPresent(seconds -> line(out, "  discards-after-s", String.valueOf(seconds)));
    line(out, "  leave", gesture(gestures.leave()));
    line(out, "  previous", gesture(gestures.previous()));
    line(out, "  review", gesture(gestures.review()));
    line(out, "  start", gesture(gestures.start()));
    line(out, "  stop", gesture(gestures.stop()));
    line(out, "  switch-unit", gesture(gestures.switchUnit()));
    return out.toString();
  }

  /** Empty if it is left out. */
  private static Gesture gesture(YamlMap map, String key) {
    return map.optional(key).map(KeypadFile::gesture).orElse(Gesture.of());
  }

  private static Gesture gesture(YamlValue value) {
    List<Gesture.Press> presses = new ArrayList<>();
    for (YamlValue item : value.list()) {
      if (item.isMap()) {
        YamlMap map = item.map("hold", "s");
        Key key = map.required("hold").oneOf(Key.class);
        double seconds = map.required("s").between(0.1, 60, "s");
        presses.add(new Gesture.Press(key, seconds));
      } else {
        presses.add(new Gesture.Press(item.oneOf(Key.class), 0));
      }
    }
    return new Gesture(presses);
  }

  private static String gesture(Gesture gesture) {
    return list(
        gesture.presses().stream()
            .map(
                press ->
                    press.holdSeconds() == 0
                        ? YamlValue.word(press.key())
                        : flow(
                            "hold", YamlValue.word(press.key()),
                            "s", YamlText.number(press.holdSeconds())))
            .toList());
  }

  private static Keypad.Review review(YamlValue value) {
    YamlMap map = value.map("order", "delay", "unused", "keys-edit");
    List<KeyedValue.Kind> order = kinds(map.required("order"));
    Keypad.Position delay =
        map.optional("delay")
            .map(v -> v.oneOf(Keypad.Position.class))
            .orElse(Keypad.Position.HIDDEN);
    boolean unused = map.required("unused").oneOf(List.of("shown", "hidden")).equals("shown");
    boolean keysEdit = map.optional("keys-edit").map(YamlValue::bool).orElse(false);
    return new Keypad.Review(order, delay, unused, keysEdit);
  }

  private static String review(Keypad.Review review) {
    return flow(
        "order", kinds(review.order()),
        "delay", YamlValue.word(review.delay()),
        "unused", review.unused() ? "shown" : "hidden",
        "keys-edit", String.valueOf(review.keysEdit()));
  }

  // ---- writing

  private static String list(List<String> items) {
    return items.stream().collect(Collectors.joining(", ", "[", "]"));
  }

  private static String flow(String... keysAndValues) {
    Map<String, String> entries = new LinkedHashMap<>();
    for (int i = 0; i < keysAndValues.length; i += 2) {
      entries.put(keysAndValues[i], keysAndValues[i + 1]);
    }
    return YamlText.flow(entries);
  }

  private static void line(StringBuilder out, String key, String value) {
    out.append(key).append(": ").append(value).append('\n');
  }
}
