package org.heatwright.app.describe;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.heatwright.keypad.Entry;
import org.heatwright.keypad.Gesture;
import org.heatwright.keypad.KeyedValue;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.Special;
import org.heatwright.keypad.TimeForm;
import org.heatwright.schedule.AtEnd;
import org.heatwright.schedule.HourMinute;

/**
 * Somebody who stands at a keypad and knows all of it: the answers, from the keypad itself and from
 * what the questions ask in words; nothing of the interview's own code.
 */
public final class Owner {

  private Owner() {}

  /** Question id to answer. */
  public static Map<String, String> answers(Keypad keypad) {
    Map<String, String> a = new LinkedHashMap<>();
    a.put("name", keypad.name());
    a.put(
        "keys",
        keypad.keys().stream().sorted().map(k -> k.word()).collect(Collectors.joining(", ")));
    if (keypad.entry() instanceof Entry.StepKeys steps) {
      a.put("entry", "steps");
      int number = 0;
      for (Entry.RepeatStage stage : steps.repeat()) {
        number++;
        a.put(
            "repeat" + number,
            "%s s, %d steps, %s a second"
                .formatted(
                    plain(stage.afterSeconds()),
                    stage.stepsPerTick(),
                    plain(stage.ticksPerSecond())));
      }
      a.put("repeat" + (number + 1), "no");
      a.put("at-least", low(steps.atLeast()));
      a.put("at-greatest", low(steps.atGreatest()));
    } else if (keypad.entry() instanceof Entry.Knob knob) {
      a.put("entry", "knob");
      a.put("clicks", "" + knob.clicksPerTurn());
      a.put("fast-steps", "" + knob.fastSteps());
      a.put("at-least", low(knob.atLeast()));
      a.put("at-greatest", low(knob.atGreatest()));
    } else {
      a.put("entry", "digits");
      a.put("point-key", ((Entry.DigitKeys) keypad.entry()).pointKey() ? "yes" : "no");
    }
    a.put("accept", keypad.accept().word());
    a.put("starts", low(keypad.starts()));
    a.put("slots", "" + keypad.slots());
    a.put("segments", "" + keypad.segments());
    a.put("display-digits", "" + keypad.displayDigits());
    Keypad.UnitSetting units = keypad.units();
    a.put(
        "unit",
        units.asked().isPresent()
            ? "asked"
            : units.switchable() ? "switchable" : units.rangesIn().letter());
    units
        .asked()
        .ifPresent(
            asked -> {
              a.put("unit-label", asked.label().orElse("none"));
              a.put("unit-shows", asked.celsius() + ", " + asked.fahrenheit());
              a.put("unit-lower", asked.lower().letter());
              a.put("unit-review", low(asked.review()));
            });
    a.put("ranges-in", units.rangesIn().letter());
    a.put(
        "unit-shown",
        units.shownAt().isEmpty()
            ? "none"
            : units.shownAt().stream().map(Owner::low).collect(Collectors.joining(" ")));
    a.put(
        "switching-converts",
        units.switchingConverts() == Keypad.UnitSetting.SwitchingConverts.UNKNOWN
            ? "?"
            : low(units.switchingConverts()));
    a.put("order", kinds(keypad.order()));
    keypad
        .rate()
        .time()
        .ifPresent(
            form -> {
              a.put("time-label", keypad.rate().label().orElse("none"));
              a.put("time-form", form(form));
              a.put("time-range", times(keypad.rate().range().max(), keypad.rate().range().step()));
              a.put(
                  "time-start",
                  keypad.rate().start().map(BigDecimal::toPlainString).orElse("none"));
            });
    a.put("rate-label", keypad.rate().label().orElse("none"));
    a.put("rate-per", low(keypad.rate().per()));
    a.put("rate-range", range(keypad.rate().range()));
    a.put("rate-other", keypad.rate().inOtherUnit().map(Owner::range).orElse("converted"));
    special(a, "fastest", keypad.rate().fastest());
    a.put("cooling", low(keypad.rate().cooling()));
    a.put("rate-start", keypad.rate().start().map(BigDecimal::toPlainString).orElse("none"));
    a.put("target-label", keypad.target().label().orElse("none"));
    a.put("target-range", range(keypad.target().range()));
    a.put("target-other", keypad.target().inOtherUnit().map(Owner::range).orElse("converted"));
    a.put("target-start", keypad.target().start().map(BigDecimal::toPlainString).orElse("none"));
    Keypad.HoldField hold = keypad.hold();
    a.put("hold-label", hold.label().orElse("none"));
    a.put("hold-form", form(hold.form()));
    a.put("hold-range", times(hold.maxMinutes(), hold.stepMinutes()));
    special(a, "endless", hold.endless());
    a.put("hold-start", hold.startMinutes().map(BigDecimal::toPlainString).orElse("none"));
    a.put("delay", keypad.delay().map(d -> low(d.position())).orElse("no"));
    keypad
        .delay()
        .ifPresent(
            delay -> {
              a.put("delay-label", delay.label().orElse("none"));
              a.put("delay-form", form(delay.form()));
              a.put("delay-range", times(delay.maxMinutes(), delay.stepMinutes()));
              a.put(
                  "delay-start",
                  delay.startMinutes().map(BigDecimal::toPlainString).orElse("none"));
            });
    a.put("end-by", low(keypad.end().by()));
    a.put("end-in", low(keypad.end().in().orElse(keypad.order().get(0))));
    special(a, "end", keypad.end().mark());
    a.put("end-afterwards", keypad.end().afterwards() == AtEnd.OFF ? "off" : "keep");
    a.put("navigation", low(keypad.programming().navigation()));
    a.put("commits", low(keypad.programming().commits()));
    a.put("after-last", low(keypad.programming().afterLast()));
    Keypad.Gestures g = keypad.gestures();
    a.put("open", keys(g.open()));
    a.put("commit", keys(g.commit()));
    a.put("committed", g.committed().orElse("none"));
    a.put(
        "discards",
        g.discardsAfterSeconds().isPresent() ? "" + g.discardsAfterSeconds().getAsInt() : "no");
    a.put("leave", keys(g.leave()));
    a.put("previous", keys(g.previous()));
    a.put("review", keys(g.review()));
    a.put("start", keys(g.start()));
    a.put("stop", keys(g.stop()));
    a.put("switch-unit", keys(g.switchUnit()));
    a.put(
        "review-order",
        keypad.review().order().isEmpty() ? "none" : kinds(keypad.review().order()));
    a.put("review-delay", low(keypad.review().delay()));
    a.put("review-unused", keypad.review().unused() ? "shown" : "hidden");
    a.put("review-edits", keypad.review().keysEdit() ? "yes" : "no");
    a.put(
        "after-power-cut",
        keypad.afterPowerCut() == Keypad.PowerCut.UNKNOWN ? "?" : low(keypad.afterPowerCut()));
    return a;
  }

  private static void special(Map<String, String> a, String id, Optional<Special> special) {
    a.put(id, special.map(Special::shows).orElse("none"));
    special.ifPresent(
        s -> {
          a.put(id + "-at", low(s.place()));
          s.typed().ifPresent(typed -> a.put(id + "-typed", typed));
        });
  }

  private static String form(TimeForm form) {
    return form == TimeForm.HOURS_UNSURE ? "?" : form.word();
  }

  private static String range(Keypad.Range range) {
    return "%s to %s by %s"
        .formatted(
            range.min().toPlainString(), range.max().toPlainString(), range.step().toPlainString());
  }

  private static String times(BigDecimal max, BigDecimal step) {
    return HourMinute.format(java.time.Duration.ofMinutes(max.longValue()))
        + ", "
        + step.toPlainString()
        + " min";
  }

  private static String keys(Gesture gesture) {
    return gesture.isEmpty()
        ? "none"
        : gesture.presses().stream()
            .map(
                p ->
                    p.holdSeconds() > 0
                        ? "hold %s %s".formatted(p.key().word(), plain(p.holdSeconds()))
                        : p.key().word())
            .collect(Collectors.joining(", "));
  }

  private static String kinds(List<KeyedValue.Kind> kinds) {
    return kinds.stream().map(Owner::low).collect(Collectors.joining(", "));
  }

  private static String plain(double number) {
    return BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
  }

  private static String low(Enum<?> constant) {
    return constant.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
  }
}
