package org.heatwright.keypad;

import static org.heatwright.keypad.KeyedValue.Kind.HOLD;
import static org.heatwright.keypad.KeyedValue.Kind.RATE;
import static org.heatwright.keypad.KeyedValue.Kind.TARGET;
import static org.heatwright.keypad.KeyedValue.Kind.TIME;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.heatwright.keypad.Keypad.UnitSetting;
import org.heatwright.schedule.AtEnd;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.TemperatureUnit;

/** Invented keypads that differ in as much as they can, and schedules for them. */
public final class TestKeypads {

  private TestKeypads() {}

  /** Up, down, next; the hold as h.mm; ends by a mark; in either unit, which its review hides. */
  public static Keypad steps() {
    return new Keypad(
        "Steps",
        new UnitSetting(
            UnitSetting.Setting.SWITCHABLE,
            TemperatureUnit.CELSIUS,
            Set.of(UnitSetting.ShownAt.SETTINGS),
            UnitSetting.SwitchingConverts.UNKNOWN),
        Set.of(Key.UP, Key.DOWN, Key.NEXT),
        new Entry.StepKeys(
            List.of(new Entry.RepeatStage(0.6, 1, 6), new Entry.RepeatStage(3, 10, 5)),
            Entry.AtLimit.WRAP,
            Entry.AtLimit.STOP),
        Key.NEXT,
        Keypad.FieldStart.STORED,
        4,
        8,
        4,
        List.of(RATE, TARGET, HOLD),
        new Keypad.RateField(
            Optional.of("r#"),
            Keypad.RateField.Per.HOUR,
            Keypad.Range.of(5, 995, 5),
            Optional.empty(),
            Optional.of(Special.above("FULL")),
            Keypad.Cooling.IMPLIED,
            Optional.empty()),
        new Keypad.TargetField(
            Optional.of("t#"), Keypad.Range.of(20, 1100, 1), Optional.empty(), Optional.empty()),
        new Keypad.HoldField(
            Optional.of("h#"),
            TimeForm.HOURS_DOT_MINUTES,
            BigDecimal.valueOf(599),
            BigDecimal.ONE,
            Optional.empty(),
            Optional.empty()),
        Optional.of(
            new Keypad.DelayField(
                Optional.of("dL"),
                TimeForm.HOURS_DOT_MINUTES,
                BigDecimal.valueOf(1439),
                BigDecimal.ONE,
                Keypad.Position.FIRST,
                Optional.empty())),
        new Keypad.EndRule(Keypad.EndRule.By.MARK, Optional.of(Special.below("End")), AtEnd.OFF),
        programming(Keypad.Commits.GESTURE),
        new Keypad.Gestures(
            Gesture.holding(Key.NEXT, 2),
            Gesture.holding(Key.NEXT, 3),
            Optional.of("StO"),
            OptionalInt.of(60),
            Gesture.of(),
            Gesture.of(),
            Gesture.of(Key.NEXT),
            Gesture.holding(Key.UP, 3),
            Gesture.holding(Key.DOWN, 3),
            Gesture.of()),
        new Keypad.Review(List.of(RATE, TARGET, HOLD), Keypad.Position.FIRST, true, true),
        Keypad.PowerCut.UNKNOWN);
  }

  /** Digit keys; the hold in minutes; ends by a count; °C only. */
  public static Keypad digits() {
    return new Keypad(
        "Digits",
        UnitSetting.fixed(TemperatureUnit.CELSIUS, UnitSetting.ShownAt.IDLE),
        Set.of(Key.DIGITS, Key.CONFIRM, Key.CLEAR, Key.PROGRAM, Key.START),
        new Entry.DigitKeys(false),
        Key.CONFIRM,
        Keypad.FieldStart.STORED,
        9,
        12,
        4,
        List.of(TARGET, RATE, HOLD),
        new Keypad.RateField(
            Optional.empty(),
            Keypad.RateField.Per.HOUR,
            Keypad.Range.of(1, 998, 1),
            Optional.empty(),
            Optional.of(Special.above("999")),
            Keypad.Cooling.IMPLIED,
            Optional.empty()),
        new Keypad.TargetField(
            Optional.empty(), Keypad.Range.of(0, 1200, 1), Optional.empty(), Optional.empty()),
        new Keypad.HoldField(
            Optional.empty(),
            TimeForm.MINUTES,
            BigDecimal.valueOf(999),
            BigDecimal.ONE,
            Optional.empty(),
            Optional.empty()),
        Optional.of(
            new Keypad.DelayField(
                Optional.empty(),
                TimeForm.HOURS_COLON_MINUTES,
                BigDecimal.valueOf(5999),
                BigDecimal.ONE,
                Keypad.Position.LAST,
                Optional.empty())),
        new Keypad.EndRule(Keypad.EndRule.By.COUNT, Optional.empty(), AtEnd.OFF),
        programming(Keypad.Commits.ACCEPTING),
        new Keypad.Gestures(
            Gesture.of(Key.PROGRAM),
            Gesture.of(),
            Optional.empty(),
            OptionalInt.empty(),
            Gesture.of(Key.PROGRAM),
            Gesture.of(),
            Gesture.of(Key.CONFIRM, Key.PROGRAM),
            Gesture.of(Key.START),
            Gesture.of(Key.START),
            Gesture.of()),
        new Keypad.Review(List.of(TARGET, RATE, HOLD), Keypad.Position.LAST, false, false),
        Keypad.PowerCut.STOPS);
  }

  /**
   * A knob; rates a minute; the hold as hh:mm; every unused segment must be empty; the review hides
   * the delay.
   */
  public static Keypad knob() {
    return new Keypad(
        "Knob",
        new UnitSetting(
            UnitSetting.Setting.SWITCHABLE,
            TemperatureUnit.CELSIUS,
            Set.of(UnitSetting.ShownAt.REVIEW),
            UnitSetting.SwitchingConverts.NO),
        Set.of(Key.TURN, Key.PUSH, Key.BACK),
        new Entry.Knob(24, 10, Entry.AtLimit.STOP, Entry.AtLimit.STOP),
        Key.PUSH,
        Keypad.FieldStart.STORED,
        6,
        6,
        4,
        List.of(RATE, TARGET, HOLD),
        new Keypad.RateField(
            Optional.of("P#.r"),
            Keypad.RateField.Per.MINUTE,
            new Keypad.Range(new BigDecimal("0.1"), new BigDecimal("30.0"), new BigDecimal("0.1")),
            Optional.empty(),
            Optional.of(Special.below("0.0")),
            Keypad.Cooling.NEGATIVE,
            Optional.empty()),
        new Keypad.TargetField(
            Optional.of("P#.t"), Keypad.Range.of(20, 1150, 5), Optional.empty(), Optional.empty()),
        new Keypad.HoldField(
            Optional.of("P#.h"),
            TimeForm.HOURS_COLON_MINUTES,
            BigDecimal.valueOf(5995),
            BigDecimal.valueOf(5),
            Optional.of(Special.above("cont")),
            Optional.empty()),
        Optional.of(
            new Keypad.DelayField(
                Optional.of("dEL"),
                TimeForm.HOURS_COLON_MINUTES,
                BigDecimal.valueOf(1430),
                BigDecimal.TEN,
                Keypad.Position.FIRST,
                Optional.empty())),
        new Keypad.EndRule(
            Keypad.EndRule.By.EVERY_UNUSED, Optional.of(Special.above("----")), AtEnd.OFF),
        programming(Keypad.Commits.GESTURE),
        new Keypad.Gestures(
            Gesture.holding(Key.PUSH, 2),
            Gesture.of(Key.BACK),
            Optional.of("donE"),
            OptionalInt.of(120),
            Gesture.of(Key.BACK),
            Gesture.of(),
            Gesture.of(Key.PUSH),
            Gesture.holding(Key.BACK, 2),
            Gesture.holding(Key.BACK, 2),
            Gesture.of()),
        new Keypad.Review(List.of(TARGET, HOLD, RATE), Keypad.Position.HIDDEN, true, false),
        Keypad.PowerCut.RESUMES);
  }

  /**
   * A list of values, walked with up and down, opened and closed with confirm; each is stored as it
   * is closed.
   */
  public static Keypad list() {
    return new Keypad(
        "List",
        UnitSetting.fixed(TemperatureUnit.CELSIUS, UnitSetting.ShownAt.IDLE),
        Set.of(Key.UP, Key.DOWN, Key.CONFIRM, Key.BACK, Key.START, Key.STOP),
        new Entry.StepKeys(
            List.of(new Entry.RepeatStage(0.5, 1, 8), new Entry.RepeatStage(2.5, 10, 8)),
            Entry.AtLimit.STOP,
            Entry.AtLimit.STOP),
        Key.CONFIRM,
        Keypad.FieldStart.STORED,
        6,
        6,
        4,
        List.of(RATE, TARGET, HOLD),
        new Keypad.RateField(
            Optional.of("A#"),
            Keypad.RateField.Per.HOUR,
            Keypad.Range.of(1, 800, 1),
            Optional.empty(),
            Optional.of(Special.above("SPd")),
            Keypad.Cooling.IMPLIED,
            Optional.empty()),
        new Keypad.TargetField(
            Optional.of("b#"), Keypad.Range.of(10, 1150, 1), Optional.empty(), Optional.empty()),
        new Keypad.HoldField(
            Optional.of("C#"),
            TimeForm.MINUTES,
            BigDecimal.valueOf(900),
            BigDecimal.ONE,
            Optional.of(Special.above("InF")),
            Optional.empty()),
        Optional.of(
            new Keypad.DelayField(
                Optional.of("dLY"),
                TimeForm.MINUTES,
                BigDecimal.valueOf(960),
                BigDecimal.valueOf(5),
                Keypad.Position.LAST,
                Optional.empty())),
        new Keypad.EndRule(Keypad.EndRule.By.MARK, Optional.of(Special.below("OFF")), AtEnd.OFF),
        new Keypad.Programming(
            Keypad.Navigation.LIST, Keypad.AfterLast.FIRST, Keypad.Commits.ACCEPTING),
        new Keypad.Gestures(
            Gesture.of(Key.CONFIRM),
            Gesture.of(),
            Optional.empty(),
            OptionalInt.empty(),
            Gesture.holding(Key.BACK, 1.5),
            Gesture.of(Key.BACK),
            Gesture.holding(Key.CONFIRM, 2),
            Gesture.of(Key.START),
            Gesture.of(Key.STOP),
            Gesture.of()),
        new Keypad.Review(List.of(RATE, TARGET, HOLD), Keypad.Position.LAST, true, false),
        Keypad.PowerCut.RESUMES);
  }

  /**
   * The awkward one: stores only when it is started, goes around only downward, fastest is a zero,
   * and its review hides the delay and is edited by the keys that make values.
   */
  public static Keypad awkward() {
    return new Keypad(
        "Awkward",
        new UnitSetting(
            UnitSetting.Setting.SWITCHABLE,
            TemperatureUnit.FAHRENHEIT,
            Set.of(UnitSetting.ShownAt.IDLE),
            UnitSetting.SwitchingConverts.UNKNOWN),
        Set.of(Key.UP, Key.DOWN, Key.NEXT, Key.START),
        new Entry.StepKeys(
            List.of(new Entry.RepeatStage(1, 1, 5), new Entry.RepeatStage(4, 25, 4)),
            Entry.AtLimit.WRAP,
            Entry.AtLimit.STOP),
        Key.NEXT,
        Keypad.FieldStart.STORED,
        4,
        6,
        4,
        List.of(TARGET, RATE, HOLD),
        new Keypad.RateField(
            Optional.of("rA#"),
            Keypad.RateField.Per.HOUR,
            Keypad.Range.of(10, 1800, 10),
            Optional.empty(),
            Optional.of(Special.below("0")),
            Keypad.Cooling.IMPLIED,
            Optional.empty()),
        new Keypad.TargetField(
            Optional.of("St#"), Keypad.Range.of(100, 2000, 1), Optional.empty(), Optional.empty()),
        new Keypad.HoldField(
            Optional.of("Ho#"),
            TimeForm.HOURS_DOT_MINUTES,
            BigDecimal.valueOf(599),
            BigDecimal.ONE,
            Optional.empty(),
            Optional.empty()),
        Optional.of(
            new Keypad.DelayField(
                Optional.of("dEL"),
                TimeForm.HOURS_DOT_MINUTES,
                BigDecimal.valueOf(1439),
                BigDecimal.ONE,
                Keypad.Position.LAST,
                Optional.empty())),
        new Keypad.EndRule(Keypad.EndRule.By.MARK, Optional.of(Special.below("----")), AtEnd.OFF),
        new Keypad.Programming(
            Keypad.Navigation.SEQUENCE, Keypad.AfterLast.STAYS, Keypad.Commits.START),
        new Keypad.Gestures(
            Gesture.of(Key.NEXT),
            Gesture.of(),
            Optional.empty(),
            OptionalInt.of(90),
            Gesture.holding(Key.NEXT, 4),
            Gesture.of(),
            Gesture.of(Key.UP),
            Gesture.of(Key.START),
            Gesture.holding(Key.START, 2),
            Gesture.holding(Key.DOWN, 4)),
        new Keypad.Review(List.of(TARGET, RATE, HOLD), Keypad.Position.HIDDEN, true, true),
        Keypad.PowerCut.STOPS);
  }

  /**
   * Digit keys; a time to get to the target instead of a rate, zero for as fast as it goes; a hold
   * of zero ends the program, so there is no other hold of zero.
   */
  public static Keypad timed() {
    return new Keypad(
        "Timed",
        UnitSetting.fixed(TemperatureUnit.CELSIUS, UnitSetting.ShownAt.IDLE),
        Set.of(Key.DIGITS, Key.CONFIRM, Key.CLEAR, Key.PROGRAM, Key.START),
        new Entry.DigitKeys(false),
        Key.CONFIRM,
        Keypad.FieldStart.STORED,
        9,
        9,
        4,
        List.of(TARGET, TIME, HOLD),
        Keypad.RateField.time(
            Optional.of("t#"),
            TimeForm.HOURS_DOT_MINUTES,
            Keypad.Range.of(1, 5999, 1),
            Optional.of(new Special("0.00", Special.Place.BELOW_LEAST, Optional.of("0"))),
            Keypad.Cooling.IMPLIED,
            Optional.empty()),
        new Keypad.TargetField(
            Optional.of("d#"), Keypad.Range.of(0, 1200, 1), Optional.empty(), Optional.empty()),
        new Keypad.HoldField(
            Optional.of("h#"),
            TimeForm.HOURS_DOT_MINUTES,
            BigDecimal.valueOf(5999),
            BigDecimal.ONE,
            Optional.empty(),
            Optional.empty()),
        Optional.of(
            new Keypad.DelayField(
                Optional.of("dEL"),
                TimeForm.HOURS_DOT_MINUTES,
                BigDecimal.valueOf(5999),
                BigDecimal.ONE,
                Keypad.Position.LAST,
                Optional.empty())),
        new Keypad.EndRule(
            Keypad.EndRule.By.MARK,
            Optional.of(new Special("0.00", Special.Place.BELOW_LEAST, Optional.of("0"))),
            Optional.of(HOLD),
            AtEnd.OFF),
        programming(Keypad.Commits.ACCEPTING),
        new Keypad.Gestures(
            Gesture.of(Key.PROGRAM),
            Gesture.of(),
            Optional.empty(),
            OptionalInt.empty(),
            Gesture.of(Key.PROGRAM),
            Gesture.of(),
            Gesture.of(Key.CONFIRM, Key.PROGRAM),
            Gesture.of(Key.START),
            Gesture.of(Key.START),
            Gesture.of()),
        new Keypad.Review(List.of(TARGET, TIME, HOLD), Keypad.Position.LAST, true, false),
        Keypad.PowerCut.STOPS);
  }

  /** Each program asks its unit first; a target of zero, the second value, ends it. */
  public static Keypad asked() {
    return asked(UnitSetting.SwitchingConverts.UNKNOWN, Keypad.Position.FIRST);
  }

  public static Keypad asked(UnitSetting.SwitchingConverts converts, Keypad.Position unitInReview) {
    return new Keypad(
        "Asked",
        new UnitSetting(
            UnitSetting.Setting.SWITCHABLE,
            TemperatureUnit.CELSIUS,
            Set.of(UnitSetting.ShownAt.ENTRY),
            converts,
            Optional.of(
                new Keypad.UnitPrompt(
                    Optional.of("Unit"), "C", "F", TemperatureUnit.CELSIUS, unitInReview))),
        Set.of(Key.TURN, Key.PUSH, Key.BACK),
        new Entry.Knob(20, 5, Entry.AtLimit.STOP, Entry.AtLimit.STOP),
        Key.PUSH,
        Keypad.FieldStart.STORED,
        5,
        8,
        4,
        List.of(RATE, TARGET, HOLD),
        new Keypad.RateField(
            Optional.of("r#"),
            Keypad.RateField.Per.HOUR,
            Keypad.Range.of(5, 995, 5),
            Optional.of(Keypad.Range.of(10, 1790, 10)),
            Optional.of(Special.above("FAST")),
            Keypad.Cooling.IMPLIED,
            Optional.empty()),
        new Keypad.TargetField(
            Optional.of("t#"),
            Keypad.Range.of(20, 1150, 1),
            Optional.of(Keypad.Range.of(70, 2100, 1)),
            Optional.empty()),
        new Keypad.HoldField(
            Optional.of("h#"),
            TimeForm.HOURS_COLON_MINUTES,
            BigDecimal.valueOf(1439),
            BigDecimal.ONE,
            Optional.empty(),
            Optional.empty()),
        Optional.of(
            new Keypad.DelayField(
                Optional.of("dEL"),
                TimeForm.HOURS_COLON_MINUTES,
                BigDecimal.valueOf(1430),
                BigDecimal.TEN,
                Keypad.Position.FIRST,
                Optional.empty())),
        new Keypad.EndRule(
            Keypad.EndRule.By.MARK,
            Optional.of(Special.below("0")),
            Optional.of(TARGET),
            AtEnd.OFF),
        programming(Keypad.Commits.GESTURE),
        new Keypad.Gestures(
            Gesture.holding(Key.PUSH, 2),
            Gesture.of(Key.BACK),
            Optional.of("donE"),
            OptionalInt.of(120),
            Gesture.of(Key.BACK),
            Gesture.of(),
            Gesture.of(Key.PUSH),
            Gesture.holding(Key.BACK, 2),
            Gesture.holding(Key.BACK, 2),
            Gesture.of()),
        new Keypad.Review(List.of(RATE, TARGET, HOLD), Keypad.Position.FIRST, true, false),
        Keypad.PowerCut.RESUMES);
  }

  /** All kinds. */
  public static List<Keypad> kinds() {
    return List.of(steps(), digits(), knob(), list(), awkward(), timed(), asked());
  }

  /** What a review shows of an unused segment before the mark that ends the program. */
  static List<KeyedValue.Kind> beforeMark(Keypad keypad) {
    List<KeyedValue.Kind> before = new ArrayList<>();
    if (keypad.end().in().isPresent() && keypad.review().unused()) {
      for (KeyedValue.Kind kind : keypad.review().order()) {
        if (kind == keypad.end().in().get()) {
          return before;
        }
        before.add(kind);
      }
    }
    return before;
  }

  private static Keypad.Programming programming(Keypad.Commits commits) {
    return new Keypad.Programming(Keypad.Navigation.SEQUENCE, Keypad.AfterLast.FIRST, commits);
  }

  public static List<Keypad> all() {
    return List.of(steps(), digits(), knob());
  }

  /** The same keypad with another way to write a hold. */
  public static Keypad withHold(
      Keypad keypad, TimeForm form, String maxMinutes, String stepMinutes) {
    return with(
        keypad,
        keypad.rate(),
        new Keypad.HoldField(
            keypad.hold().label(),
            form,
            new BigDecimal(maxMinutes),
            new BigDecimal(stepMinutes),
            keypad.hold().endless(),
            Optional.empty()));
  }

  public static Keypad withRate(Keypad keypad, Optional<Special> fastest, Keypad.Cooling cooling) {
    Keypad.RateField rate = keypad.rate();
    return with(
        keypad,
        new Keypad.RateField(
            rate.label(),
            rate.per(),
            rate.range(),
            rate.inOtherUnit(),
            fastest,
            cooling,
            rate.start()),
        keypad.hold());
  }

  /** Digits that can only stop heating, with so many segments and targets in such steps. */
  public static Keypad cannotSlowAFall(int segments, UnitSetting units, Keypad.TargetField target) {
    Keypad k = withRate(digits(), digits().rate().fastest(), Keypad.Cooling.NOT_CONTROLLED);
    return new Keypad(
        k.name(),
        units,
        k.keys(),
        k.entry(),
        k.accept(),
        k.starts(),
        k.slots(),
        segments,
        k.displayDigits(),
        k.order(),
        k.rate(),
        target,
        k.hold(),
        k.delay(),
        k.end(),
        k.programming(),
        k.gestures(),
        k.review(),
        k.afterPowerCut());
  }

  static Keypad withUnits(Keypad keypad, Set<UnitSetting.ShownAt> shownAt) {
    return with(
        keypad,
        new UnitSetting(
            keypad.units().setting(),
            keypad.units().rangesIn(),
            shownAt,
            keypad.units().switchingConverts()),
        keypad.rate(),
        keypad.hold());
  }

  public static Keypad with(Keypad k, Keypad.RateField rate, Keypad.HoldField hold) {
    return with(k, k.units(), rate, hold);
  }

  private static Keypad with(
      Keypad k, UnitSetting units, Keypad.RateField rate, Keypad.HoldField hold) {
    return new Keypad(
        k.name(),
        units,
        k.keys(),
        k.entry(),
        k.accept(),
        k.starts(),
        k.slots(),
        k.segments(),
        k.displayDigits(),
        k.order(),
        rate,
        k.target(),
        hold,
        k.delay(),
        k.end(),
        k.programming(),
        k.gestures(),
        k.review(),
        k.afterPowerCut());
  }

  public static Segment celsius(double perHour, double target, long holdMinutes) {
    return segment(TemperatureUnit.CELSIUS, perHour, target, holdMinutes);
  }

  public static Segment segment(
      TemperatureUnit unit, double perHour, double target, long holdMinutes) {
    return new Segment(
        Ramp.at(unit.rate(perHour)), unit.temperature(target), Duration.ofMinutes(holdMinutes));
  }

  public static Segment fastest(double targetCelsius, long holdMinutes) {
    return new Segment(
        Ramp.fastest(),
        TemperatureUnit.CELSIUS.temperature(targetCelsius),
        Duration.ofMinutes(holdMinutes));
  }

  public static Schedule schedule(Segment... segments) {
    return Schedule.of("harbour-burnout", TemperatureUnit.CELSIUS, List.of(segments));
  }

  /** Four segments whose values all differ, up, full power and down. */
  public static Schedule burnout() {
    return schedule(
            celsius(120, 150, 150),
            celsius(150, 370, 90),
            fastest(730, 240),
            celsius(180, 500, 105))
        .withStartDelay(Duration.ofMinutes(200));
  }

  /** What a keypad that runs {@code program} shows in its review. */
  static Shown review(FittedProgram program, Keypad keypad) {
    List<Shown.Value> values = new ArrayList<>();
    if (keypad.review().delay() == Keypad.Position.FIRST) {
      add(values, program, 0, KeyedValue.Kind.DELAY);
    }
    add(values, program, 0, KeyedValue.Kind.END);
    int segments = program.expressible().segments().size();
    for (int segment = 1; segment <= segments; segment++) {
      for (KeyedValue.Kind kind : keypad.review().order()) {
        add(values, program, segment, kind);
      }
    }
    if (keypad.review().unused()) {
      for (int segment = segments + 1; segment <= keypad.segments(); segment++) {
        add(values, program, segment, KeyedValue.Kind.END);
      }
    }
    if (keypad.review().delay() == Keypad.Position.LAST) {
      add(values, program, 0, KeyedValue.Kind.DELAY);
    }
    Optional<TemperatureUnit> unit =
        keypad.units().shownAt().contains(UnitSetting.ShownAt.REVIEW)
            ? Optional.of(program.unit())
            : Optional.empty();
    return new Shown(OptionalInt.of(1), unit, values);
  }

  private static void add(
      List<Shown.Value> values, FittedProgram program, int segment, KeyedValue.Kind kind) {
    program.values().stream()
        .filter(v -> v.segment() == segment && v.kind() == kind)
        .forEach(v -> values.add(new Shown.Value(String.valueOf(values.size() + 1), v.digits())));
  }
}
