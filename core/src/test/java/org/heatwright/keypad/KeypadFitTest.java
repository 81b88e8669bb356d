package org.heatwright.keypad;

import static org.assertj.core.api.Assertions.assertThat;
import static org.heatwright.keypad.TestKeypads.burnout;
import static org.heatwright.keypad.TestKeypads.celsius;
import static org.heatwright.keypad.TestKeypads.fastest;
import static org.heatwright.keypad.TestKeypads.schedule;
import static org.heatwright.keypad.TestKeypads.segment;

import java.time.Duration;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.LongStream;
import org.heatwright.schedule.AtEnd;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class KeypadFitTest {

  private static List<String> digits(FittedProgram program) {
    return program.values().stream().map(KeyedValue::digits).toList();
  }

  private static List<String> messages(FittedProgram program, FitNote.Kind kind) {
    return program.notes().stream().filter(n -> n.kind() == kind).map(FitNote::message).toList();
  }

  @Test
  void digitsStandInKeyingOrderInThisKeypadsForm() {
    assertThat(digits(KeypadFit.fit(burnout(), TestKeypads.steps())))
        .containsExactly(
            "3.20", "120", "150", "2.30", "150", "370", "1.30", "FULL", "730", "4.00", "180", "500",
            "1.45", "End");
    assertThat(digits(KeypadFit.fit(burnout(), TestKeypads.digits())))
        .containsExactly(
            "4", "150", "120", "150", "370", "150", "90", "730", "999", "240", "500", "180", "105",
            "03:20");
    assertThat(digits(KeypadFit.fit(burnout(), TestKeypads.knob())))
        .containsExactly(
            "03:20", "2.0", "150", "02:30", "2.5", "370", "01:30", "0.0", "730", "04:00", "-3.0",
            "500", "01:45", "----", "----");
  }

  @Test
  void meaningsAreInWords() {
    assertThat(KeypadFit.fit(burnout(), TestKeypads.knob()).values())
        .extracting(KeyedValue::meaning)
        .contains(
            "2 h 30 min",
            "full power up",
            "3 °C/min down (180 °C/h)",
            "730 °C",
            "waits 3 h 20 min before it heats",
            "the program ends here");
  }

  @Test
  void checkFiguresAreThoseOfWhatIsShown() {
    CheckFigures figures = KeypadFit.fit(burnout(), TestKeypads.steps()).checkFigures();
    assertThat(figures.segments()).isEqualTo(4);
    assertThat(figures.sumOfTargets()).isEqualTo(150.0 + 370 + 730 + 500);
    assertThat(figures.totalMinutes()).isEqualTo(150 + 90 + 240 + 105);
    assertThat(figures.firstUnused()).isEqualTo("End");
    // 130 K at 120 K/h, 220 K at 150 K/h, full power nothing, 230 K at 180 K/h.
    assertThat(figures.minutesOnPaper()).isEqualTo(Math.round(585 + 65 + 88 + 230 / 180.0 * 60));
  }

  @Test
  void whatFitsExactlyIsLeftAlone() {
    FittedProgram program = KeypadFit.fit(burnout(), TestKeypads.digits());
    assertThat(program.fits()).isTrue();
    assertThat(program.notes()).isEmpty();
    assertThat(program.expressible()).isEqualTo(burnout());
  }

  @Test
  void roundingIsTowardSafeAndTold() {
    FittedProgram program =
        KeypadFit.fit(
            schedule(celsius(133, 151.7, 61)).withStartDelay(Duration.ofMinutes(125)),
            TestKeypads.knob());
    assertThat(program.fits()).isTrue();
    Segment keyed = program.expressible().segments().get(0);
    assertThat(keyed.ramp().rate().orElseThrow().kelvinsPerHour()).isEqualTo(132.0);
    assertThat(keyed.target().celsius()).isEqualTo(150.0);
    assertThat(keyed.hold()).isEqualTo(Duration.ofMinutes(65));
    assertThat(program.expressible().startDelay()).isEqualTo(Duration.ofMinutes(120));
    assertThat(messages(program, FitNote.Kind.ROUNDED))
        .containsExactlyInAnyOrder(
            "The start delay of 2 h 5 min is keyed as 2 h: it starts 5 min earlier, so that the work is not late.",
            "Segment 1: the target of 151.7 °C is keyed as 150 °C, 1.7 °C lower.",
            "Segment 1: a rate of 133 °C/h (2.22 °C/min) is keyed as 2.2 °C/min, slower.",
            "Segment 1: the hold of 1 h 1 min is keyed as 1 h 5 min, 4 min longer.");
  }

  @Test
  void aRateAboveTheRangeBecomesTheGreatestAndIsTold() {
    FittedProgram program = KeypadFit.fit(schedule(celsius(1200, 620, 0)), TestKeypads.steps());
    assertThat(program.fits()).isTrue();
    assertThat(messages(program, FitNote.Kind.LIMITED).get(0))
        .contains("1200 °C/h", "995 °C/h", "greatest", "slower", "6 min longer from a cold kiln");
  }

  @Test
  void fahrenheitScheduleOnACelsiusKeypadIsConvertedWithNotes() {
    Schedule schedule =
        Schedule.of(
            "old-card",
            TemperatureUnit.FAHRENHEIT,
            List.of(
                segment(TemperatureUnit.FAHRENHEIT, 180, 1112, 60),
                segment(TemperatureUnit.FAHRENHEIT, 300, 1350, 60)));
    FittedProgram program = KeypadFit.fit(schedule, TestKeypads.digits());
    assertThat(program.unit()).isEqualTo(TemperatureUnit.CELSIUS);
    // 1112 °F is 600 °C and 180 °F/h is 100 K/h, exactly; 1350 °F is 732.2 °C; 300 °F/h is 166.7.
    assertThat(digits(program))
        .containsExactly("2", "600", "100", "60", "732", "166", "60", "00:00");
    assertThat(messages(program, FitNote.Kind.CONVERTED)).hasSize(1);
    assertThat(messages(program, FitNote.Kind.ROUNDED))
        .contains(
            "Segment 2: the target of 1350 °F (732.22 °C) is keyed as 732 °C, 0.22 °C lower.");
  }

  @Test
  void celsiusScheduleOnASwitchableKeypadStaysAndTheUnitIsTold() {
    FittedProgram program = KeypadFit.fit(burnout(), TestKeypads.steps());
    assertThat(program.unit()).isEqualTo(TemperatureUnit.CELSIUS);
    assertThat(messages(program, FitNote.Kind.TOLD).get(0))
        .contains("Set the keypad to °C before keying", "nobody knows");
  }

  @Test
  void tooManySegmentsAreRefused() {
    Schedule seven =
        schedule(Collections.nCopies(7, celsius(100, 500, 10)).toArray(Segment[]::new));
    FittedProgram program = KeypadFit.fit(seven, TestKeypads.knob());
    assertThat(program.fits()).isFalse();
    assertThat(program.values()).isEmpty();
    assertThat(program.refusals().get(0).message())
        .contains("7 segments", "holds 6", "two programs");
  }

  @Test
  void aTargetOutsideTheRangeIsRefusedNotCut() {
    assertThat(
            KeypadFit.fit(schedule(celsius(100, 1100.5, 10)), TestKeypads.steps())
                .refusals()
                .get(0)
                .message())
        .contains("1100.5 °C", "20 to 1100 °C");
    assertThat(KeypadFit.fit(schedule(celsius(100, 15, 10)), TestKeypads.steps()).fits()).isFalse();
  }

  @Test
  void aRateBelowTheLeastIsRefusedBecauseFasterIsNotSafe() {
    assertThat(
            KeypadFit.fit(schedule(celsius(4, 600, 10)), TestKeypads.steps())
                .refusals()
                .get(0)
                .message())
        .contains("4 °C/h", "least", "5 °C/h");
  }

  @Test
  void aHoldTooLongSuggestsSplittingAndNeverDoesItSilently() {
    Schedule schedule = schedule(celsius(100, 600, 1500));
    FittedProgram program = KeypadFit.fit(schedule, TestKeypads.steps());
    assertThat(program.fits()).isFalse();
    assertThat(program.expressible().segments()).hasSize(1);
    assertThat(program.refusals().get(0).message())
        .contains("25 h", "9 h 59 min", "split it into 3 holds", "2 more segments", "7 are free");
    Schedule split = KeypadFit.withHoldsSplit(schedule, TestKeypads.steps()).orElseThrow();
    assertThat(split.segments()).hasSize(3);
    assertThat(split.segments()).extracting(Segment::target).containsOnly(schedule.peak());
    assertThat(
            LongStream.of(split.segments().stream().mapToLong(s -> s.hold().toMinutes()).toArray())
                .sum())
        .isEqualTo(1500);
    assertThat(KeypadFit.fit(split, TestKeypads.steps()).fits()).isTrue();
  }

  @Test
  void aHoldTooLongWithNoSegmentFreeSaysSo() {
    Schedule full =
        schedule(Collections.nCopies(8, celsius(100, 600, 1500)).toArray(Segment[]::new));
    assertThat(KeypadFit.fit(full, TestKeypads.steps()).refusals().get(0).message())
        .contains("only 0 are free");
    assertThat(KeypadFit.withHoldsSplit(full, TestKeypads.steps())).isEmpty();
  }

  @Test
  void anAmbiguousHoldIsRefused() {
    Keypad unsure = TestKeypads.withHold(TestKeypads.steps(), TimeForm.HOURS_UNSURE, "5999", "1");
    assertThat(KeypadFit.fit(schedule(celsius(100, 600, 110)), unsure).refusals().get(0).message())
        .contains("minutes or hundredths");
    FittedProgram whole = KeypadFit.fit(schedule(celsius(100, 600, 120)), unsure);
    assertThat(whole.fits()).isTrue();
    assertThat(digits(whole)).contains("2.00");
  }

  @Test
  void aValueThatTheDisplayCannotShowIsRefused() {
    Keypad steps = TestKeypads.steps();
    Keypad three =
        new Keypad(
            steps.name(),
            steps.units(),
            steps.keys(),
            steps.entry(),
            steps.accept(),
            steps.starts(),
            steps.slots(),
            steps.segments(),
            3,
            steps.order(),
            steps.rate(),
            steps.target(),
            steps.hold(),
            steps.delay(),
            steps.end(),
            steps.programming(),
            steps.gestures(),
            steps.review(),
            steps.afterPowerCut());
    assertThat(KeypadFit.fit(schedule(celsius(100, 1050, 10)), three).refusals().get(0).message())
        .contains("1050", "4 digits", "has 3");
  }

  @ParameterizedTest
  @CsvSource({
    "6, 135, 2.3, 138",
    "0.6, 140, 2.35, 141",
    "0.6, 150, 2.50, 150",
    "3, 150, 2.50, 150"
  })
  void decimalHoursAreRoundedUpToWholeMinutes(
      String step, long asked, String text, long keyedMinutes) {
    Keypad keypad = TestKeypads.withHold(TestKeypads.steps(), TimeForm.DECIMAL_HOURS, "5994", step);
    FittedProgram program = KeypadFit.fit(schedule(celsius(100, 600, asked)), keypad);
    assertThat(digits(program)).contains(text);
    assertThat(program.expressible().segments().get(0).hold().toMinutes()).isEqualTo(keyedMinutes);
  }

  @Test
  void coolingThatCannotBeControlledIsRefusedAtARateAndFreeAtFastest() {
    Keypad keypad =
        TestKeypads.withRate(
            TestKeypads.steps(), Optional.of(Special.above("FULL")), Keypad.Cooling.NOT_CONTROLLED);
    assertThat(
            KeypadFit.fit(schedule(celsius(100, 730, 10), celsius(100, 500, 10)), keypad)
                .refusals()
                .get(0)
                .message())
        .contains("Segment 2", "cannot slow the cooling");
    assertThat(KeypadFit.fit(schedule(celsius(100, 730, 10), fastest(500, 10)), keypad).fits())
        .isTrue();
  }

  @Test
  void withoutFastestTheGreatestRateIsKeyedAndTold() {
    Keypad keypad =
        TestKeypads.withRate(TestKeypads.steps(), Optional.empty(), Keypad.Cooling.IMPLIED);
    FittedProgram program = KeypadFit.fit(schedule(fastest(730, 10)), keypad);
    assertThat(digits(program)).contains("995");
    assertThat(messages(program, FitNote.Kind.LIMITED).get(0)).contains("no 'fastest'", "995 °C/h");
    assertThat(program.expressible().segments().get(0).ramp().rate()).isPresent();
  }

  @Test
  void keepingTheLastTargetIsKeyedAsAnEndlessHoldOrRefused() {
    Schedule keep =
        new Schedule(
            "session",
            TemperatureUnit.CELSIUS,
            List.of(fastest(800, 60)),
            Duration.ZERO,
            AtEnd.KEEP);
    assertThat(digits(KeypadFit.fit(keep, TestKeypads.knob()))).contains("cont");
    assertThat(KeypadFit.fit(keep, TestKeypads.steps()).refusals().get(0).message())
        .contains("switches off");
  }

  @Test
  void allSegmentsUsedNeedNoMark() {
    Schedule six = schedule(Collections.nCopies(6, celsius(60, 500, 10)).toArray(Segment[]::new));
    FittedProgram program = KeypadFit.fit(six, TestKeypads.knob());
    assertThat(program.values()).noneMatch(v -> v.kind() == KeyedValue.Kind.END);
    assertThat(program.checkFigures().firstUnused()).isEqualTo("none: all 6 segments are used");
  }

  static List<Keypad> keypads() {
    return List.of(
        TestKeypads.steps(),
        TestKeypads.digits(),
        TestKeypads.knob(),
        TestKeypads.withHold(TestKeypads.steps(), TimeForm.DECIMAL_HOURS, "5994", "0.6"),
        TestKeypads.withHold(TestKeypads.digits(), TimeForm.MINUTES, "990", "5"));
  }

  /**
   * Never hotter, never faster, never shorter, never later. Numbers of a schedule carry at most six
   * decimals ({@link TemperatureUnit}), so that is how exactly a rate in the other unit comes back.
   */
  @Tag("property")
  @ParameterizedTest
  @MethodSource("keypads")
  void roundingIsTowardSafeForEverySchedule(Keypad keypad) {
    Random random = new Random(20261125);
    int fitting = 0;
    for (int run = 0; run < 4000; run++) {
      TemperatureUnit unit = TemperatureUnit.values()[random.nextInt(2)];
      Segment[] segments = new Segment[1 + random.nextInt(5)];
      for (int i = 0; i < segments.length; i++) {
        segments[i] =
            new Segment(
                random.nextInt(6) == 0
                    ? Ramp.fastest()
                    : Ramp.at(unit.rate(Math.round(random.nextDouble(10, 1500) * 100) / 100.0)),
                unit.temperature(Math.round(random.nextDouble(80, 1000) * 10) / 10.0),
                Duration.ofMinutes(random.nextInt(560)));
      }
      Schedule asked =
          Schedule.of("generated", unit, List.of(segments))
              .withStartDelay(Duration.ofMinutes(random.nextInt(1400)));
      FittedProgram program = KeypadFit.fit(asked, keypad);
      if (!program.fits()) {
        continue;
      }
      fitting++;
      boolean differs = false;
      for (int i = 0; i < segments.length; i++) {
        Segment keyed = program.expressible().segments().get(i);
        assertThat(keyed.target()).isLessThanOrEqualTo(segments[i].target());
        assertThat(keyed.hold()).isGreaterThanOrEqualTo(segments[i].hold());
        if (segments[i].ramp().rate().isPresent()) {
          assertThat(keyed.ramp().rate().orElseThrow().kelvinsPerHour())
              .isLessThanOrEqualTo(segments[i].ramp().rate().orElseThrow().kelvinsPerHour() + 1e-6);
        }
        differs |= !keyed.equals(segments[i]);
      }
      assertThat(program.expressible().startDelay()).isLessThanOrEqualTo(asked.startDelay());
      if (differs) {
        assertThat(program.notes())
            .anyMatch(n -> n.kind() == FitNote.Kind.ROUNDED || n.kind() == FitNote.Kind.LIMITED);
      }
      // What a keypad can express is expressed unchanged the second time.
      FittedProgram again = KeypadFit.fit(program.expressible(), keypad);
      assertThat(again.values()).isEqualTo(program.values());
      assertThat(messages(again, FitNote.Kind.ROUNDED)).isEmpty();
    }
    assertThat(fitting).isGreaterThan(1000);
  }
}
