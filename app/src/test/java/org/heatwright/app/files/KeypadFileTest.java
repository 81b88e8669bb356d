package org.heatwright.app.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.regex.Pattern;
import org.heatwright.keypad.Entry;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.Key;
import org.heatwright.keypad.KeyedValue;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.Keypad.UnitSetting;
import org.heatwright.keypad.KeypadFit;
import org.heatwright.keypad.Special;
import org.heatwright.keypad.TimeForm;
import org.heatwright.keypad.keying.KeyingPlanner;
import org.heatwright.schedule.AtEnd;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class KeypadFileTest {

  static final String STEPS =
      """
      name: Three keys
      unit: {setting: switchable, ranges-in: C, shown: [idle, settings], switching-converts: "yes"}
      keys: [up, down, next, back]
      entry:
        kind: steps
        repeat: [{after-s: 0.6, steps: 1, ticks-per-s: 6}, {after-s: 3, steps: 10, ticks-per-s: 5}]
        at-least: wrap
        at-greatest: stop
      accept: next
      starts: default
      slots: 4
      segments: 8
      display-digits: 4
      order: [rate, target, hold]
      rate:
        label: r#
        per: hour
        min: 5
        max: 995
        step: 5
        in-other-unit: {min: 10, max: 1790, step: 10}
        fastest: {shows: FULL, at: above-greatest, typed: "9999"}
        cooling: negative
        start: 100
      target: {label: t#, min: 20, max: 1100, step: 1, in-other-unit: {min: 70, max: 2010, step: 1}, start: 100}
      hold: {label: h#, form: h.mm, max: "23:59", step-min: 1, endless: {shows: con, at: above-greatest, typed: "99"}, start-min: 30}
      delay: {label: dL, form: hh:mm, max: "47:59", step-min: 1, position: first, start-min: 0}
      end: {by: mark, shows: End, at: below-least, typed: "0", afterwards: off}
      navigation: list
      after-last: stays
      commits: gesture
      gestures:
        open: [{hold: next, s: 2}]
        commit: [{hold: next, s: 3}]
        committed: StO
        discards-after-s: 60
        leave: [back, back]
        previous: [{hold: back, s: 2}]
        review: [next]
        start: [{hold: up, s: 3}]
        stop: [{hold: down, s: 3}]
        switch-unit: [{hold: down, s: 5}]
      review: {order: [rate, target, hold], delay: first, unused: shown, keys-edit: true}
      after-power-cut: restarts
      """;

  private static final String DIGITS =
      """
      name: Digits
      unit: F
      keys: [digits, point, confirm, program]
      entry: {kind: digits, point-key: true}
      accept: confirm
      starts: stored
      slots: 1
      segments: 4
      display-digits: 4
      order: [target, rate, hold]
      rate: {per: minute, min: 0.1, max: 30, step: 0.1}
      target: {min: 32, max: 2000, step: 1}
      hold: {form: decimal-hours, max: "99:54", step-min: 6}
      end: {by: count, afterwards: keep}
      gestures: {open: [program], review: [confirm]}
      review: {order: [target], unused: hidden}
      """;

  private static final String KNOB =
      """
      name: Knob
      unit: {setting: C, shown: [review]}
      keys: [turn, push]
      entry: {kind: knob, clicks-per-turn: 24, fast-steps: 10, at-least: stop, at-greatest: stop}
      accept: push
      slots: 2
      segments: 4
      display-digits: 4
      order: [rate, target, hold]
      rate: {per: hour, min: 1, max: 998, step: 1, fastest: {shows: 999, at: above-greatest}}
      target: {min: 0, max: 1200, step: 5}
      hold: {form: minutes, max: "16:39"}
      end: {by: every-unused, shows: "----", at: below-least}
      gestures: {open: [push], commit: [{hold: push, s: 2}], review: [{hold: push, s: 1.5}]}
      review: {order: [hold, rate], unused: shown}
      """;

  private static final String TIMED =
      """
      name: Timed
      unit: {setting: switchable, ranges-in: C, shown: [entry], asked: {label: Unit, celsius: 0, fahrenheit: 1, lower: F, review: last}}
      keys: [digits, confirm, program]
      entry: {kind: digits}
      accept: confirm
      starts: default
      slots: 3
      segments: 5
      display-digits: 4
      order: [target, time, hold]
      time: {label: t#, form: h.mm, least-min: 2, max: "19:59", step-min: 1, fastest: {shows: "0.00", at: below-least, typed: "0"}, cooling: not-controlled, start-min: 60}
      target: {min: 20, max: 1150, step: 1}
      hold: {form: h.mm, max: "19:59"}
      end: {by: mark, shows: "0.00", at: below-least, typed: "0", in: hold}
      gestures: {open: [program], review: [confirm]}
      review: {order: [target, time, hold], unused: shown}
      """;

  /** Texts that together use every key. */
  static final List<String> FULL = List.of(STEPS, DIGITS, KNOB, TIMED);

  private static Keypad read(String text) {
    return KeypadFile.read(text, "keypad.yaml");
  }

  static List<String> full() {
    return FULL;
  }

  @Test
  void readsEveryField() {
    Keypad keypad = read(STEPS);

    assertThat(keypad.units())
        .isEqualTo(
            new UnitSetting(
                UnitSetting.Setting.SWITCHABLE,
                TemperatureUnit.CELSIUS,
                Set.of(UnitSetting.ShownAt.IDLE, UnitSetting.ShownAt.SETTINGS),
                UnitSetting.SwitchingConverts.YES));
    assertThat(keypad.keys()).containsExactlyInAnyOrder(Key.UP, Key.DOWN, Key.NEXT, Key.BACK);
    assertThat(keypad.entry())
        .isEqualTo(
            new Entry.StepKeys(
                List.of(new Entry.RepeatStage(0.6, 1, 6), new Entry.RepeatStage(3, 10, 5)),
                Entry.AtLimit.WRAP,
                Entry.AtLimit.STOP));
    assertThat(keypad.starts()).isEqualTo(Keypad.FieldStart.DEFAULT);
    assertThat(keypad.rate().range()).isEqualTo(Keypad.Range.of(5, 995, 5));
    assertThat(keypad.rate().fastest())
        .contains(new Special("FULL", Special.Place.ABOVE_GREATEST, Optional.of("9999")));
    assertThat(keypad.rate().cooling()).isEqualTo(Keypad.Cooling.NEGATIVE);
    assertThat(keypad.target().inOtherUnit()).contains(Keypad.Range.of(70, 2010, 1));
    assertThat(keypad.hold().form()).isEqualTo(TimeForm.HOURS_DOT_MINUTES);
    assertThat(keypad.hold().max()).isEqualTo(Duration.ofMinutes(1439));
    assertThat(keypad.delay().orElseThrow().position()).isEqualTo(Keypad.Position.FIRST);
    assertThat(keypad.end().mark())
        .contains(new Special("End", Special.Place.BELOW_LEAST, Optional.of("0")));
    assertThat(keypad.gestures().commit().words()).isEqualTo("hold next 3 s");
    assertThat(keypad.gestures().discardsAfterSeconds()).isEqualTo(OptionalInt.of(60));
    assertThat(keypad.review().keysEdit()).isTrue();
    assertThat(keypad.programming())
        .isEqualTo(
            new Keypad.Programming(
                Keypad.Navigation.LIST, Keypad.AfterLast.STAYS, Keypad.Commits.GESTURE));
    assertThat(keypad.gestures().previous().words()).isEqualTo("hold back 2 s");
    assertThat(keypad.gestures().start().words()).isEqualTo("hold up 3 s");
    assertThat(keypad.gestures().stop().words()).isEqualTo("hold down 3 s");
    assertThat(keypad.gestures().switchUnit().words()).isEqualTo("hold down 5 s");
    assertThat(keypad.afterPowerCut()).isEqualTo(Keypad.PowerCut.RESTARTS);
  }

  @Test
  void readsTimesAnAskedUnitAndAnEndInALaterField() {
    Keypad keypad = read(TIMED);

    assertThat(keypad.units().asked())
        .contains(
            new Keypad.UnitPrompt(
                Optional.of("Unit"), "0", "1", TemperatureUnit.FAHRENHEIT, Keypad.Position.LAST));
    assertThat(keypad.rate())
        .isEqualTo(
            Keypad.RateField.time(
                Optional.of("t#"),
                TimeForm.HOURS_DOT_MINUTES,
                Keypad.Range.of(2, 1199, 1),
                Optional.of(new Special("0.00", Special.Place.BELOW_LEAST, Optional.of("0"))),
                Keypad.Cooling.NOT_CONTROLLED,
                Optional.of(BigDecimal.valueOf(60))));
    assertThat(keypad.end().in()).contains(KeyedValue.Kind.HOLD);
    assertThat(keypad.holdRange().min()).isEqualTo(BigDecimal.ONE);
    assertThatThrownBy(
            () ->
                read(
                    TIMED.replace(
                        "target: {", "rate: {per: hour, min: 1, max: 9, step: 1}\ntarget: {")))
        .hasMessageContaining("not both; remove one");
  }

  @Test
  void whatIsLeftOutHasAStatedMeaning() {
    Keypad keypad = read(DIGITS);

    assertThat(keypad.programming())
        .isEqualTo(
            new Keypad.Programming(
                Keypad.Navigation.SEQUENCE, Keypad.AfterLast.IDLE, Keypad.Commits.ACCEPTING));
    assertThat(keypad.gestures().start().isEmpty()).isTrue();
    assertThat(keypad.afterPowerCut()).isEqualTo(Keypad.PowerCut.UNKNOWN);
    assertThat(keypad.units().setting()).isEqualTo(UnitSetting.Setting.FAHRENHEIT);
    assertThat(keypad.rate().fastest()).isEmpty();
    assertThat(keypad.rate().cooling()).isEqualTo(Keypad.Cooling.IMPLIED);
    assertThat(keypad.rate().range().step()).isEqualTo(new BigDecimal("0.1"));
    assertThat(keypad.delay()).isEmpty();
    assertThat(keypad.end().afterwards()).isEqualTo(AtEnd.KEEP);
    assertThat(keypad.gestures().commit().isEmpty()).isTrue();
    assertThat(keypad.hiddenInReview())
        .containsExactlyInAnyOrder(KeyedValue.Kind.RATE, KeyedValue.Kind.HOLD);
    // A number where a text is displayed is a text.
    assertThat(read(KNOB).rate().fastest().orElseThrow().shows()).isEqualTo("999");
  }

  @ParameterizedTest
  @MethodSource("full")
  void whatIsWrittenReadsBackTheSame(String text) {
    Keypad keypad = read(text);
    assertThat(read(KeypadFile.write(keypad))).isEqualTo(keypad);
    assertThat(KeypadFile.write(read(KeypadFile.write(keypad))))
        .isEqualTo(KeypadFile.write(keypad));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "commits: accepting | commits: gesture | keypad.yaml, line 1: Values that are stored as they are accepted need no keys that save: .*",
        "review: [{hold: next, s: 4}] | review: [next] | keypad.yaml, line 1: On the idle display, open and review cannot be told apart \\(hold next 2 s; hold next 4 s\\): change one of them\\.",
        "acept: next | accept: next | keypad.yaml, line 9: acept is not known; expected one of .* \\(did you mean accept\\?\\)\\.",
        "slots: 0 | slots: 4 | keypad.yaml, line 11: slots is 0; expected a whole number from 1 to 999\\.",
        "keys: [up, down, nxt, back] | keys: [up, down, next, back] | keypad.yaml, line 3: keys\\[3\\] is \"nxt\"; expected .* \\(did you mean next\\?\\)\\.",
        "per: day | per: hour | keypad.yaml, line 17: rate.per is \"day\"; expected hour or minute\\.",
        "max: 1 | max: 995 | keypad.yaml, line 16: rate: A range \\(5 to 1, step 5\\) goes up .*",
        "max: \"24 h\" | max: \"23:59\" | keypad.yaml, line 26: hold.max is \"24 h\"; expected hours and minutes .*",
        "accept: confirm | accept: next | keypad.yaml, line 1: The accepting key 'confirm' is not among the keypad's keys\\.",
        "after-s: 0.5 | after-s: 3 | keypad.yaml, line 5: entry: Repeat stage 2 begins after 0.5 s.*",
        "shows: \"50\" | shows: FULL | keypad.yaml, line 1: The rate '50' means fastest, but it is also an ordinary rate between 5 and 995\\.",
        "shows: \"20\" | shows: End | keypad.yaml, line 1: The rate '20' marks the end of the program, but it is also an ordinary rate\\.",
        "order: [rate, target] | order: [rate, target, hold] | keypad.yaml, line 1: The order of a segment names rate, target and hold once each, not \\[rate, target\\]\\.",
        "step-min: 0.5 | step-min: 1 | keypad.yaml, line 26: hold: The hold's step \\(0.5 min\\) must be a multiple of 1 min in the form h.mm\\.",
        "label: t# | label: r# | keypad.yaml, line 1: Two fields have the same label: \\[t#, t#, h#, dL\\]\\."
      })
  void whatIsWrongIsNamedWithItsPlace(String bad, String good, String message) {
    assertThat(STEPS).contains(good);
    assertThatThrownBy(() -> read(STEPS.replaceFirst(Pattern.quote(good), bad)))
        .isInstanceOf(InputException.class)
        .hasMessageMatching(message);
  }

  @ParameterizedTest
  @ValueSource(strings = {"tern", "gull", "heron", "petrel", "skua", "dunlin"})
  void theDemoKeypadsTakeTheDemoBurnout(String name) throws IOException {
    Keypad keypad =
        KeypadFile.read(
            Files.readString(Path.of("src/main/resources/demo/keypads/" + name + ".yaml")), name);
    FittedProgram program =
        KeypadFit.fit(
            ScheduleFile.read(
                Files.readString(Path.of("src/main/resources/demo/schedules/harbour-burnout.yaml")),
                "harbour-burnout"),
            keypad);
    assertThat(program.fits()).as("%s", program.notes()).isTrue();
    assertThat(KeyingPlanner.plan(program, keypad, 1, Optional.empty()).steps())
        .hasSizeGreaterThan(program.values().size());
    assertThat(keypad.name()).isEqualToIgnoringCase(name);
    assertThat(keypad.hiddenInReview().contains(KeyedValue.Kind.DELAY))
        .isEqualTo(List.of("heron", "skua").contains(name));
  }
}
