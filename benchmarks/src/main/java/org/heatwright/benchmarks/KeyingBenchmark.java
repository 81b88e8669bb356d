package org.heatwright.benchmarks;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import org.heatwright.keypad.Entry;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.Gesture;
import org.heatwright.keypad.Key;
import org.heatwright.keypad.KeyedValue;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.KeypadFit;
import org.heatwright.keypad.Special;
import org.heatwright.keypad.TimeForm;
import org.heatwright.keypad.keying.KeyingPlanner;
import org.heatwright.keypad.keying.KeyingSheet;
import org.heatwright.schedule.AtEnd;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.TemperatureUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * Planning the keys of an eight-segment program on step keys; the reference is fitting the same
 * program to the keypad, which must be done anyway.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class KeyingBenchmark {

  private final Keypad keypad = keypad();
  private final Schedule held = schedule(0);
  private final Schedule wanted = schedule(7);

  /** The reference: the program as the keypad can express it. */
  @Benchmark
  public FittedProgram fit() {
    return KeypadFit.fit(wanted, keypad);
  }

  /** Every value anew. */
  @Benchmark
  public KeyingSheet planAnew() {
    return KeyingPlanner.plan(KeypadFit.fit(wanted, keypad), keypad, 3, Optional.empty());
  }

  /** From what the slot holds: every value by its quickest way. */
  @Benchmark
  public KeyingSheet planFromHeld() {
    return KeyingPlanner.plan(KeypadFit.fit(wanted, keypad), keypad, 3, Optional.of(held));
  }

  private static Schedule schedule(int shift) {
    List<Segment> segments = new ArrayList<>();
    for (int i = 0; i < 8; i++) {
      segments.add(
          new Segment(
              Ramp.at(TemperatureUnit.CELSIUS.rate(100 + 55 * i + 5 * shift)),
              TemperatureUnit.CELSIUS.temperature(150 + 97 * i + 13 * shift),
              Duration.ofMinutes(20 + 37L * i + 11L * shift)));
    }
    return Schedule.of("eight", TemperatureUnit.CELSIUS, segments)
        .withStartDelay(Duration.ofMinutes(200 + 45L * shift));
  }

  private static Keypad keypad() {
    return new Keypad(
        "Bench",
        Keypad.UnitSetting.fixed(TemperatureUnit.CELSIUS),
        Set.of(Key.UP, Key.DOWN, Key.NEXT),
        new Entry.StepKeys(
            List.of(
                new Entry.RepeatStage(0.6, 1, 6),
                new Entry.RepeatStage(3, 10, 5),
                new Entry.RepeatStage(8, 50, 4)),
            Entry.AtLimit.WRAP,
            Entry.AtLimit.STOP),
        Key.NEXT,
        Keypad.FieldStart.STORED,
        4,
        8,
        4,
        List.of(KeyedValue.Kind.RATE, KeyedValue.Kind.TARGET, KeyedValue.Kind.HOLD),
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
            BigDecimal.valueOf(1439),
            BigDecimal.ONE,
            Optional.empty(),
            Optional.empty()),
        Optional.of(
            new Keypad.DelayField(
                Optional.of("dL"),
                TimeForm.HOURS_DOT_MINUTES,
                BigDecimal.valueOf(2879),
                BigDecimal.ONE,
                Keypad.Position.FIRST,
                Optional.empty())),
        new Keypad.EndRule(Keypad.EndRule.By.MARK, Optional.of(Special.below("End")), AtEnd.OFF),
        new Keypad.Programming(
            Keypad.Navigation.SEQUENCE, Keypad.AfterLast.FIRST, Keypad.Commits.GESTURE),
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
        new Keypad.Review(
            List.of(KeyedValue.Kind.RATE, KeyedValue.Kind.TARGET, KeyedValue.Kind.HOLD),
            Keypad.Position.FIRST,
            true,
            true),
        Keypad.PowerCut.STOPS);
  }
}
