package org.heatwright.pocket;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.heatwright.keypad.Entry;
import org.heatwright.keypad.Gesture;
import org.heatwright.keypad.Key;
import org.heatwright.keypad.KeyedValue;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.Special;
import org.heatwright.keypad.TimeForm;
import org.heatwright.schedule.AtEnd;
import org.heatwright.units.TemperatureUnit;

/** A keypad's description on its way into the page and back. Nothing of it is left out. */
final class KeypadText {

  private KeypadText() {}

  static Map<String, Object> write(Keypad keypad) {
    Map<String, Object> out = new LinkedHashMap<>();
    out.put("name", keypad.name());
    out.put("units", units(keypad.units()));
    out.put("keys", names(EnumSet.copyOf(keypad.keys())));
    out.put("entry", entry(keypad.entry()));
    out.put("accept", keypad.accept().name());
    out.put("starts", keypad.starts().name());
    out.put("slots", keypad.slots());
    out.put("segments", keypad.segments());
    out.put("displayDigits", keypad.displayDigits());
    out.put("order", names(keypad.order()));
    Keypad.RateField rate = keypad.rate();
    out.put(
        "rate",
        map(
            "label", rate.label(),
            "per", rate.per().name(),
            "time", rate.time().map(TimeForm::name),
            "range", range(rate.range()),
            "other", rate.inOtherUnit().map(KeypadText::range),
            "fastest", rate.fastest().map(KeypadText::special),
            "cooling", rate.cooling().name(),
            "start", rate.start().map(BigDecimal::toPlainString)));
    Keypad.TargetField target = keypad.target();
    out.put(
        "target",
        map(
            "label", target.label(),
            "range", range(target.range()),
            "other", target.inOtherUnit().map(KeypadText::range),
            "start", target.start().map(BigDecimal::toPlainString)));
    Keypad.HoldField hold = keypad.hold();
    out.put(
        "hold",
        map(
            "label", hold.label(),
            "form", hold.form().name(),
            "max", hold.maxMinutes().toPlainString(),
            "step", hold.stepMinutes().toPlainString(),
            "endless", hold.endless().map(KeypadText::special),
            "start", hold.startMinutes().map(BigDecimal::toPlainString)));
    out.put(
        "delay",
        keypad
            .delay()
            .map(
                delay ->
                    map(
                        "label", delay.label(),
                        "form", delay.form().name(),
                        "max", delay.maxMinutes().toPlainString(),
                        "step", delay.stepMinutes().toPlainString(),
                        "position", delay.position().name(),
                        "start", delay.startMinutes().map(BigDecimal::toPlainString))));
    out.put(
        "end",
        map(
            "by", keypad.end().by().name(),
            "mark", keypad.end().mark().map(KeypadText::special),
            "in", keypad.end().in().map(KeyedValue.Kind::name),
            "afterwards", keypad.end().afterwards().name()));
    Keypad.Programming programming = keypad.programming();
    out.put(
        "programming",
        map(
            "navigation", programming.navigation().name(),
            "afterLast", programming.afterLast().name(),
            "commits", programming.commits().name()));
    Keypad.Gestures gestures = keypad.gestures();
    out.put(
        "gestures",
        map(
            "open", gesture(gestures.open()),
            "commit", gesture(gestures.commit()),
            "committed", gestures.committed(),
            "discards", whole(gestures.discardsAfterSeconds()),
            "leave", gesture(gestures.leave()),
            "previous", gesture(gestures.previous()),
            "review", gesture(gestures.review()),
            "start", gesture(gestures.start()),
            "stop", gesture(gestures.stop()),
            "switchUnit", gesture(gestures.switchUnit())));
    Keypad.Review review = keypad.review();
    out.put(
        "review",
        map(
            "order", names(review.order()),
            "delay", review.delay().name(),
            "unused", review.unused(),
            "keysEdit", review.keysEdit()));
    out.put("afterPowerCut", keypad.afterPowerCut().name());
    return out;
  }

  static Keypad read(Fields from) {
    Fields rate = from.map("rate");
    Fields target = from.map("target");
    Fields hold = from.map("hold");
    Fields end = from.map("end");
    Fields programming = from.map("programming");
    Fields gestures = from.map("gestures");
    Fields review = from.map("review");
    return new Keypad(
        from.text("name"),
        units(from.map("units")),
        Set.copyOf(keys(from.texts("keys"))),
        entry(from.map("entry")),
        from.word("accept", Key.values()),
        from.word("starts", Keypad.FieldStart.values()),
        from.whole("slots"),
        from.whole("segments"),
        from.whole("displayDigits"),
        kinds(from.texts("order")),
        new Keypad.RateField(
            rate.optional("label"),
            rate.word("per", Keypad.RateField.Per.values()),
            rate.optional("time").map(name -> Fields.named(name, TimeForm.values())),
            range(rate.map("range")),
            rate.optionalMap("other").map(KeypadText::range),
            rate.optionalMap("fastest").map(KeypadText::special),
            rate.word("cooling", Keypad.Cooling.values()),
            rate.optionalDecimal("start")),
        new Keypad.TargetField(
            target.optional("label"),
            range(target.map("range")),
            target.optionalMap("other").map(KeypadText::range),
            target.optionalDecimal("start")),
        new Keypad.HoldField(
            hold.optional("label"),
            hold.word("form", TimeForm.values()),
            hold.decimal("max"),
            hold.decimal("step"),
            hold.optionalMap("endless").map(KeypadText::special),
            hold.optionalDecimal("start")),
        from.optionalMap("delay")
            .map(
                delay ->
                    new Keypad.DelayField(
                        delay.optional("label"),
                        delay.word("form", TimeForm.values()),
                        delay.decimal("max"),
                        delay.decimal("step"),
                        delay.word("position", Keypad.Position.values()),
                        delay.optionalDecimal("start"))),
        new Keypad.EndRule(
            end.word("by", Keypad.EndRule.By.values()),
            end.optionalMap("mark").map(KeypadText::special),
            end.optional("in").map(name -> Fields.named(name, KeyedValue.Kind.values())),
            end.word("afterwards", AtEnd.values())),
        new Keypad.Programming(
            programming.word("navigation", Keypad.Navigation.values()),
            programming.word("afterLast", Keypad.AfterLast.values()),
            programming.word("commits", Keypad.Commits.values())),
        new Keypad.Gestures(
            gesture(gestures.maps("open")),
            gesture(gestures.maps("commit")),
            gestures.optional("committed"),
            whole(gestures.optional("discards")),
            gesture(gestures.maps("leave")),
            gesture(gestures.maps("previous")),
            gesture(gestures.maps("review")),
            gesture(gestures.maps("start")),
            gesture(gestures.maps("stop")),
            gesture(gestures.maps("switchUnit"))),
        new Keypad.Review(
            kinds(review.texts("order")),
            review.word("delay", Keypad.Position.values()),
            review.flag("unused"),
            review.flag("keysEdit")),
        from.word("afterPowerCut", Keypad.PowerCut.values()));
  }

  private static Map<String, Object> units(Keypad.UnitSetting units) {
    return map(
        "setting",
        units.setting().name(),
        "rangesIn",
        units.rangesIn().name(),
        "shownAt",
        units.shownAt().stream().sorted().map(Enum::name).toList(),
        "converts",
        units.switchingConverts().name(),
        "asked",
        units
            .asked()
            .map(
                asked ->
                    map(
                        "label", asked.label(),
                        "celsius", asked.celsius(),
                        "fahrenheit", asked.fahrenheit(),
                        "lower", asked.lower().name(),
                        "review", asked.review().name())));
  }

  private static Keypad.UnitSetting units(Fields from) {
    List<Keypad.UnitSetting.ShownAt> shownAt = new ArrayList<>();
    for (String place : from.texts("shownAt")) {
      shownAt.add(Fields.named(place, Keypad.UnitSetting.ShownAt.values()));
    }
    return new Keypad.UnitSetting(
        from.word("setting", Keypad.UnitSetting.Setting.values()),
        from.word("rangesIn", TemperatureUnit.values()),
        Set.copyOf(shownAt),
        from.word("converts", Keypad.UnitSetting.SwitchingConverts.values()),
        from.optionalMap("asked")
            .map(
                asked ->
                    new Keypad.UnitPrompt(
                        asked.optional("label"),
                        asked.text("celsius"),
                        asked.text("fahrenheit"),
                        asked.word("lower", TemperatureUnit.values()),
                        asked.word("review", Keypad.Position.values()))));
  }

  private static Map<String, Object> entry(Entry entry) {
    if (entry instanceof Entry.StepKeys steps) {
      List<Object> repeat = new ArrayList<>();
      for (Entry.RepeatStage stage : steps.repeat()) {
        repeat.add(
            map(
                "after", stage.afterSeconds(),
                "steps", stage.stepsPerTick(),
                "ticks", stage.ticksPerSecond()));
      }
      return map(
          "kind",
          "steps",
          "repeat",
          repeat,
          "atLeast",
          steps.atLeast().name(),
          "atGreatest",
          steps.atGreatest().name());
    }
    if (entry instanceof Entry.Knob knob) {
      return map(
          "kind", "knob",
          "clicks", knob.clicksPerTurn(),
          "fast", knob.fastSteps(),
          "atLeast", knob.atLeast().name(),
          "atGreatest", knob.atGreatest().name());
    }
    return map("kind", "digits", "point", ((Entry.DigitKeys) entry).pointKey());
  }

  private static Entry entry(Fields from) {
    switch (from.text("kind")) {
      case "steps" -> {
        List<Entry.RepeatStage> repeat = new ArrayList<>();
        for (Fields stage : from.maps("repeat")) {
          repeat.add(
              new Entry.RepeatStage(
                  stage.number("after"), stage.whole("steps"), stage.number("ticks")));
        }
        return new Entry.StepKeys(
            repeat,
            from.word("atLeast", Entry.AtLimit.values()),
            from.word("atGreatest", Entry.AtLimit.values()));
      }
      case "knob" -> {
        return new Entry.Knob(
            from.whole("clicks"),
            from.whole("fast"),
            from.word("atLeast", Entry.AtLimit.values()),
            from.word("atGreatest", Entry.AtLimit.values()));
      }
      default -> {
        return new Entry.DigitKeys(from.flag("point"));
      }
    }
  }

  private static Map<String, Object> range(Keypad.Range range) {
    return map(
        "min", range.min().toPlainString(),
        "max", range.max().toPlainString(),
        "step", range.step().toPlainString());
  }

  private static Keypad.Range range(Fields from) {
    return new Keypad.Range(from.decimal("min"), from.decimal("max"), from.decimal("step"));
  }

  private static Map<String, Object> special(Special special) {
    return map("shows", special.shows(), "place", special.place().name(), "typed", special.typed());
  }

  private static Special special(Fields from) {
    return new Special(
        from.text("shows"), from.word("place", Special.Place.values()), from.optional("typed"));
  }

  private static List<Object> gesture(Gesture gesture) {
    List<Object> presses = new ArrayList<>();
    for (Gesture.Press press : gesture.presses()) {
      presses.add(map("key", press.key().name(), "hold", press.holdSeconds()));
    }
    return presses;
  }

  private static Gesture gesture(List<Fields> from) {
    List<Gesture.Press> presses = new ArrayList<>();
    for (Fields press : from) {
      presses.add(new Gesture.Press(press.word("key", Key.values()), press.number("hold")));
    }
    return new Gesture(presses);
  }

  private static List<Key> keys(List<String> names) {
    List<Key> keys = new ArrayList<>();
    for (String name : names) {
      keys.add(Fields.named(name, Key.values()));
    }
    return keys;
  }

  private static List<KeyedValue.Kind> kinds(List<String> names) {
    List<KeyedValue.Kind> kinds = new ArrayList<>();
    for (String name : names) {
      kinds.add(Fields.named(name, KeyedValue.Kind.values()));
    }
    return kinds;
  }

  private static List<String> names(Iterable<? extends Enum<?>> values) {
    List<String> names = new ArrayList<>();
    for (Enum<?> value : values) {
      names.add(value.name());
    }
    return names;
  }

  private static Optional<Integer> whole(OptionalInt value) {
    return value.isPresent() ? Optional.of(value.getAsInt()) : Optional.empty();
  }

  private static OptionalInt whole(Optional<String> text) {
    return text.isPresent()
        ? OptionalInt.of(Integer.parseInt(text.orElseThrow()))
        : OptionalInt.empty();
  }

  /** Names and values in turn, kept in this order. */
  static Map<String, Object> map(Object... namesAndValues) {
    Map<String, Object> map = new LinkedHashMap<>();
    for (int i = 0; i < namesAndValues.length; i += 2) {
      map.put((String) namesAndValues[i], namesAndValues[i + 1]);
    }
    return map;
  }
}
