package org.heatwright.keypad;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import org.heatwright.schedule.AtEnd;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class ReviewReadingTest {

  private static final TemperatureUnit C = TemperatureUnit.CELSIUS;

  @Test
  void aSlotThatNobodyKnowsIsReadIntoASchedule() {
    ReviewReading.Result result =
        read(TestKeypads.steps(), C, "0.00", "100", "150", "2.00", "FULL", "732", "2.30", "End");
    assertThat(result.problem()).isEmpty();
    assertThat(result.program())
        .contains(
            Schedule.of(
                "Slot 2",
                C,
                List.of(
                    new Segment(Ramp.at(C.rate(100)), C.temperature(150), Duration.ofMinutes(120)),
                    new Segment(Ramp.fastest(), C.temperature(732), Duration.ofMinutes(150)))));
  }

  @Test
  void aCountIsReadFirst() {
    ReviewReading.Result result = read(TestKeypads.digits(), C, "1", "732", "100", "90", "00:30");
    assertThat(result.problem()).isEmpty();
    assertThat(result.program().orElseThrow().startDelay()).isEqualTo(Duration.ofMinutes(30));
    assertThat(result.program().orElseThrow().segments().get(0).hold())
        .isEqualTo(Duration.ofMinutes(90));
  }

  @Test
  void whatCannotBeAProgramIsToldInASentence() {
    Keypad steps = TestKeypads.steps();
    assertThat(read(steps, C, "0.00", "End").problem())
        .hasValueSatisfying(p -> assertThat(p).contains("empty"));
    assertProblem(read(steps, C, "0.00", "100", "150"), "The values end before segment 1 hold");
    assertProblem(
        read(steps, C, "0.00", "100", "1500", "2.00", "End"), "The target of segment 1 is none");
    assertProblem(
        read(steps, C, "0.00", "100", "150", "2.60", "End"),
        "segment 1 hold: “2.60” means nothing");
    assertProblem(
        read(steps, C, "0.00", "101", "150", "2.00", "End"), "segment 1 rate: “101” is no value");
    assertProblem(
        read(steps, C, "0.00", "100", "150", "2.00", "End", "3"), "something after the end");
    assertProblem(
        read(TestKeypads.knob(), C, "150", "02:00", "1.5", "----"),
        "The values end before segment 3, first value");
    assertProblem(read(TestKeypads.digits(), C, "40"), "“40” is no number of segments");
    assertProblem(
        read(TestKeypads.digits(), TemperatureUnit.FAHRENHEIT, "1", "732", "100", "90", "00:30"),
        "Digits works in °C only");
    Shown wrongLabel =
        new Shown(
            OptionalInt.of(2),
            Optional.empty(),
            List.of(new Shown.Value("dL", "0.00"), new Shown.Value("t1", "150")));
    assertProblem(ReviewReading.read(steps, wrongLabel, C, "x"), "“t1” comes where r1 should");
  }

  private static void assertProblem(ReviewReading.Result result, String words) {
    assertThat(result.program()).isEmpty();
    assertThat(result.problem()).hasValueSatisfying(p -> assertThat(p).contains(words));
  }

  private static ReviewReading.Result read(Keypad keypad, TemperatureUnit unit, String... texts) {
    List<Shown.Value> values = new ArrayList<>();
    for (String text : texts) {
      values.add(new Shown.Value(Integer.toString(values.size() + 1), text));
    }
    return ReviewReading.read(
        keypad, new Shown(OptionalInt.of(2), Optional.empty(), values), unit, "Slot 2");
  }

  @Test
  @Tag("property")
  void everyProgramIsReadAsItsOwnKeyedValues() {
    Random random = new Random(5);
    List<Keypad> kinds =
        List.of(
            TestKeypads.steps(),
            TestKeypads.digits(),
            TestKeypads.knob(),
            TestKeypads.timed(),
            TestKeypads.asked());
    int read = 0;
    int endless = 0;
    for (int run = 0; run < 6_500; run++) {
      Keypad keypad = kinds.get(run % kinds.size());
      FittedProgram program = KeypadFit.fit(generated(random), keypad);
      if (!program.fits()) {
        continue;
      }
      ReviewReading.Result result =
          ReviewReading.read(keypad, review(keypad, program), program.unit(), "Slot 1");
      assertThat(result.problem()).as("run %d: %s", run, program).isEmpty();
      FittedProgram again = KeypadFit.fit(result.program().orElseThrow(), keypad);
      assertThat(shown(again, keypad))
          .as("run %d on %s", run, keypad.name())
          .isEqualTo(shown(program, keypad));
      read++;
      endless += program.expressible().atEnd() == AtEnd.KEEP ? 1 : 0;
    }
    assertThat(read).isGreaterThan(1500);
    assertThat(endless).isGreaterThan(20);
  }

  /** The values of a program that a review can show. */
  private static List<String> shown(FittedProgram program, Keypad keypad) {
    return program.values().stream()
        .filter(v -> !keypad.hiddenInReview().contains(v.kind()))
        .map(v -> v.place() + " " + v.digits())
        .toList();
  }

  private static Schedule generated(Random random) {
    TemperatureUnit unit = TemperatureUnit.values()[random.nextInt(2)];
    List<Segment> segments = new ArrayList<>();
    int count = 1 + random.nextInt(8);
    for (int i = 0; i < count; i++) {
      segments.add(
          new Segment(
              random.nextInt(5) == 0
                  ? Ramp.fastest()
                  : Ramp.at(unit.rate(20 + random.nextInt(600))),
              unit.temperature(100 + random.nextInt(850)),
              Duration.ofMinutes(random.nextInt(500))));
    }
    return new Schedule(
        "generated",
        unit,
        segments,
        Duration.ofMinutes(random.nextInt(1400)),
        random.nextInt(6) == 0 ? AtEnd.KEEP : AtEnd.OFF);
  }

  /** Walked in the keypad's display order, apart from the code under test. */
  private static Shown review(Keypad keypad, FittedProgram program) {
    List<Shown.Value> values = new ArrayList<>();
    show(values, program, 0, KeyedValue.Kind.UNIT);
    if (keypad.review().delay() == Keypad.Position.FIRST) {
      show(values, program, 0, KeyedValue.Kind.DELAY);
    }
    show(values, program, 0, KeyedValue.Kind.END);
    for (int segment = 1; segment <= keypad.segments(); segment++) {
      for (KeyedValue.Kind kind : keypad.review().order()) {
        show(values, program, segment, kind);
      }
      int number = segment;
      if (keypad.review().unused()
          && program.values().stream()
              .anyMatch(v -> v.segment() == number && v.kind() == KeyedValue.Kind.END)) {
        TestKeypads.beforeMark(keypad)
            .forEach(k -> values.add(new Shown.Value(String.valueOf(values.size() + 1), "95")));
        show(values, program, segment, KeyedValue.Kind.END);
      }
    }
    if (keypad.review().delay() == Keypad.Position.LAST) {
      show(values, program, 0, KeyedValue.Kind.DELAY);
    }
    return new Shown(OptionalInt.of(1), Optional.empty(), values);
  }

  private static void show(
      List<Shown.Value> values, FittedProgram program, int segment, KeyedValue.Kind kind) {
    program.values().stream()
        .filter(v -> v.segment() == segment && v.kind() == kind)
        .forEach(v -> values.add(new Shown.Value(String.valueOf(values.size() + 1), v.digits())));
  }
}
