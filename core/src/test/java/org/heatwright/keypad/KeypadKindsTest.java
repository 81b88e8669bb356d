package org.heatwright.keypad;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.heatwright.keypad.TestKeypads.celsius;
import static org.heatwright.keypad.TestKeypads.fastest;
import static org.heatwright.keypad.TestKeypads.schedule;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.heatwright.keypad.Keypad.UnitSetting.SwitchingConverts;
import org.heatwright.keypad.machine.Contents;
import org.heatwright.keypad.machine.KeyAction;
import org.heatwright.keypad.machine.KeypadMachine;
import org.heatwright.keypad.machine.MachineState;
import org.heatwright.keypad.register.Evidence;
import org.heatwright.keypad.register.Proof;
import org.heatwright.keypad.register.Role;
import org.heatwright.keypad.register.UnitGround;
import org.heatwright.schedule.AtEnd;
import org.heatwright.schedule.Schedule;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Test;

/**
 * Times instead of rates, a unit that each program asks, an end that is a zero in a later field.
 * Every number is worked out by hand from {@link TestKeypads}.
 */
class KeypadKindsTest {

  private static final Schedule BURNOUT =
      schedule(
          celsius(120, 150, 150), celsius(150, 370, 90), fastest(730, 240), celsius(180, 500, 105));

  @Test
  void aRateIsKeyedAsTheTimeThatItTakesRoundedUp() {
    FittedProgram program = KeypadFit.fit(BURNOUT, TestKeypads.timed());
    // 130 K at 120 K/h is 65 min, 220 K at 150 K/h 88 min, 230 K at 180 K/h 76.67 min.
    assertThat(program.values().stream().map(v -> v.place() + " " + v.digits()))
        .containsExactly(
            "segment 1 target 150",
            "segment 1 time 1.05",
            "segment 1 hold 2.30",
            "segment 2 target 370",
            "segment 2 time 1.28",
            "segment 2 hold 1.30",
            "segment 3 target 730",
            "segment 3 time 0.00",
            "segment 3 hold 4.00",
            "segment 4 target 500",
            "segment 4 time 1.17",
            "segment 4 hold 1.45",
            "segment 5 (unused) 0.00",
            "start delay 0.00");
    assertThat(program.expressible().segments().get(1).ramp())
        .isEqualTo(BURNOUT.segments().get(1).ramp());
    // 230 K in 77 min.
    assertThat(program.expressible().segments().get(3).ramp().rate().orElseThrow().kelvinsPerHour())
        .isEqualTo(230 * 60 / 77.0);
    assertThat(program.notes().stream().map(FitNote::message))
        .contains(
            "Segment 4: a rate of 180 °C/h is keyed as a time of 1 h 17 min, which is 179.22 °C/h, slower; its ramp takes 0.33 min longer.")
        .anyMatch(note -> note.startsWith("Segment 1: its time is counted from a cold kiln"));
    assertThat(program.checkFigures().firstUnused()).isEqualTo("hold 0.00");
    // What was rounded once stays as it is.
    FittedProgram again = KeypadFit.fit(program.expressible(), TestKeypads.timed());
    assertThat(again.values()).isEqualTo(program.values());
  }

  @Test
  void aRampThatTakesLongerThanTheKeypadsLongestTimeIsRefused() {
    FittedProgram program = KeypadFit.fit(schedule(celsius(5, 1000, 60)), TestKeypads.timed());
    // 980 K at 5 K/h are 196 h.
    assertThat(program.refusals().get(0).message())
        .isEqualTo(
            "Segment 1: 5 °C/h takes 196 h, longer than the 99 h 59 min that the keypad takes for a ramp. A shorter time would be faster. Maybe climb in two segments.");
  }

  @Test
  void whereAHoldOfZeroEndsTheProgramTheLeastHoldStandsForNone() {
    FittedProgram program =
        KeypadFit.fit(schedule(celsius(60, 200, 0), celsius(60, 300, 30)), TestKeypads.timed());
    assertThat(program.values().get(2).digits()).isEqualTo("0.01");
    assertThat(program.notes().stream().map(FitNote::message))
        .anyMatch(note -> note.startsWith("Segment 1: the hold of") && note.contains("longer"));
  }

  @Test
  void theReviewShowsWhatStandsBeforeTheMarkAndTheReadBackDoesNotMind() {
    Keypad keypad = TestKeypads.timed();
    FittedProgram program = KeypadFit.fit(BURNOUT, keypad);
    KeypadMachine machine = new KeypadMachine(keypad);
    Contents contents =
        Contents.of(program, keypad, machine.blank(TemperatureUnit.CELSIUS)).with(12, "777");
    MachineState state = machine.idle(Map.of(1, contents), TemperatureUnit.CELSIUS);
    List<Shown.Value> values = new ArrayList<>();
    machine
        .items(state)
        .forEach(i -> values.add(new Shown.Value(String.valueOf(values.size() + 1), i.text())));
    assertThat(values.stream().skip(12).map(Shown.Value::text))
        .containsExactly("777", "0.01", "0.00", "0.00");
    ReadbackReport report = report(program, keypad, values, Optional.empty());
    assertThat(report.outcome()).isEqualTo(ReadbackReport.Outcome.PROVEN);
    assertThat(report.figures()).allMatch(ReadbackReport.Figure::agrees);
    // Without the zero the fifth segment would run.
    values.set(14, new Shown.Value("15", "0.30"));
    assertThat(report(program, keypad, values, Optional.empty()).correction())
        .hasValueSatisfying(c -> assertThat(c).startsWith("Key 0.00 at segment 5 (unused)."));
  }

  private static ReadbackReport report(
      FittedProgram program,
      Keypad keypad,
      List<Shown.Value> values,
      Optional<TemperatureUnit> sign) {
    return Readback.compare(
        program,
        keypad,
        new Shown(OptionalInt.of(1), sign, values),
        OptionalInt.of(1),
        Optional.of(UnitCheck.judge(20, 20, TemperatureUnit.CELSIUS, true)));
  }

  private static List<Shown.Value> shown(FittedProgram program, Keypad keypad) {
    KeypadMachine machine = new KeypadMachine(keypad);
    Contents contents = Contents.of(program, keypad, machine.blank(program.unit()));
    List<Shown.Value> values = new ArrayList<>();
    machine
        .items(machine.idle(Map.of(1, contents), program.unit()))
        .forEach(i -> values.add(new Shown.Value(String.valueOf(values.size() + 1), i.text())));
    return values;
  }

  @Test
  void aProgramThatAsksItsUnitIsProvenInItByItsReview() {
    Keypad keypad = TestKeypads.asked();
    Schedule fahrenheit = BURNOUT.withUnit(TemperatureUnit.FAHRENHEIT);
    FittedProgram program = KeypadFit.fit(fahrenheit, keypad);
    assertThat(program.values().get(0))
        .isEqualTo(new KeyedValue(0, KeyedValue.Kind.UNIT, "F", "°F for the whole program"));
    assertThat(program.notes()).noneMatch(n -> n.message().contains("Set the keypad to"));
    List<Shown.Value> values = shown(program, keypad);
    assertThat(values.get(0).text()).isEqualTo("F");
    // The kiln's own display, cold and in °C, says nothing of the program's unit.
    assertThat(report(program, keypad, values, Optional.empty()).outcome())
        .isEqualTo(ReadbackReport.Outcome.PROVEN);
    assertThat(
            Proof.of(
                    new Evidence(
                        fahrenheit,
                        keypad,
                        1,
                        new Shown(OptionalInt.of(1), Optional.empty(), values),
                        Optional.empty()),
                    Instant.EPOCH,
                    Role.values()[0])
                .orElseThrow()
                .unitGround())
        .isEqualTo(UnitGround.PROGRAM);
    values.set(0, new Shown.Value("1", "°C"));
    ReadbackReport wrong = report(program, keypad, values, Optional.empty());
    assertThat(wrong.outcome()).isEqualTo(ReadbackReport.Outcome.NOT_PROVEN);
    assertThat(wrong.verdicts().get(0).kind()).isEqualTo(ReadbackReport.VerdictKind.WRONG_UNIT);
    assertThat(wrong.correction()).hasValue("Key F at unit. Then read back again.");
  }

  @Test
  void aUnitThatTheReviewHidesStaysOpenWhateverAColdKilnReads() {
    Keypad keypad = TestKeypads.asked(SwitchingConverts.UNKNOWN, Keypad.Position.HIDDEN);
    FittedProgram program = KeypadFit.fit(BURNOUT, keypad);
    List<Shown.Value> values = shown(program, keypad);
    ReadbackReport open = report(program, keypad, values, Optional.empty());
    assertThat(open.outcome()).isEqualTo(ReadbackReport.Outcome.UNIT_OPEN);
    assertThat(open.unproven())
        .anyMatch(u -> u.startsWith("That the program is in °C: this review does not show"));
    ReadbackReport seen = report(program, keypad, values, Optional.of(TemperatureUnit.CELSIUS));
    assertThat(seen.outcome()).isEqualTo(ReadbackReport.Outcome.PROVEN);
    assertThat(seen.unproven()).anyMatch(u -> u.contains("seen while it was open"));
    assertThat(
            report(program, keypad, values, Optional.of(TemperatureUnit.FAHRENHEIT)).correction())
        .hasValue("Key C at the unit, then look at every value again. Then read back again.");
  }

  @Test
  void anUnknownSlotIsReadInTheUnitThatItsReviewShows() {
    Keypad keypad = TestKeypads.asked();
    FittedProgram program = KeypadFit.fit(BURNOUT, keypad);
    Shown shown = new Shown(OptionalInt.of(1), Optional.empty(), shown(program, keypad));
    assertThat(ReviewReading.unitShown(keypad, shown)).hasValue(TemperatureUnit.CELSIUS);
    assertThat(
            ReviewReading.read(keypad, shown, TemperatureUnit.CELSIUS, "found")
                .program()
                .orElseThrow()
                .segments())
        .isEqualTo(program.expressible().segments());
    assertThat(ReviewReading.read(keypad, shown, TemperatureUnit.FAHRENHEIT, "found").problem())
        .hasValue("The program itself says °C, not °F: read its numbers in that unit.");
  }

  @Test
  void choosingTheUnitConvertsNumbersOnlyWhereItIsSaidAndNeverTheEnd() {
    for (SwitchingConverts converts : SwitchingConverts.values()) {
      Keypad keypad = TestKeypads.asked(converts, Keypad.Position.FIRST);
      KeypadMachine machine = new KeypadMachine(keypad);
      FittedProgram program = KeypadFit.fit(schedule(celsius(100, 500, 60)), keypad);
      Contents contents = Contents.of(program, keypad, machine.blank(TemperatureUnit.CELSIUS));
      MachineState state = machine.idle(Map.of(1, contents), TemperatureUnit.CELSIUS);
      state = press(machine, state, Gesture.holding(Key.PUSH, 2));
      state = press(machine, state, Gesture.of(Key.PUSH)); // slot 1
      assertThat(machine.display(state).value()).isEqualTo("C");
      state = machine.press(state, new KeyAction.Turn(1, false));
      assertThat(state.unit()).as("not taken yet").isEqualTo(TemperatureUnit.CELSIUS);
      state = press(machine, state, Gesture.of(Key.PUSH));
      assertThat(state.unit()).isEqualTo(TemperatureUnit.FAHRENHEIT);
      boolean converted = converts == SwitchingConverts.YES;
      // 100 K/h are 180 °F/h, 500 °C are 932 °F.
      List<String> texts = state.draft().orElseThrow().texts();
      assertThat(texts.subList(2, 5))
          .containsExactly(converted ? "180" : "100", converted ? "932" : "500", "01:00");
      assertThat(texts.get(6)).as("the target that ends it").isEqualTo("0");
      state = machine.untouched(state, 200); // thrown away, unsaved
      assertThat(state.slots().get(1)).isEqualTo(contents);
      assertThat(state.unit()).isEqualTo(TemperatureUnit.CELSIUS);
    }
  }

  private static MachineState press(KeypadMachine machine, MachineState from, Gesture gesture) {
    MachineState state = from;
    for (Gesture.Press press : gesture.presses()) {
      state =
          machine.press(
              state,
              press.holdSeconds() > 0
                  ? new KeyAction.Hold(press.key(), press.holdSeconds())
                  : new KeyAction.Tap(press.key()));
    }
    return state;
  }

  @Test
  void mistakesInADescriptionAreToldInOneSentenceEach() {
    Keypad timed = TestKeypads.timed();
    assertThatThrownBy(
            () ->
                Keypad.RateField.time(
                    Optional.empty(),
                    TimeForm.MINUTES,
                    Keypad.Range.of(1, 99, 1),
                    Optional.empty(),
                    Keypad.Cooling.NEGATIVE,
                    Optional.empty()))
        .hasMessage("A time to get to the target has no sign: down follows from a lower target.");
    assertThatThrownBy(
            () ->
                new Keypad.EndRule(
                    Keypad.EndRule.By.COUNT,
                    Optional.empty(),
                    Optional.of(KeyedValue.Kind.HOLD),
                    AtEnd.OFF))
        .hasMessage("With a segment count no field of a segment marks the end.");
    assertThatThrownBy(
            () ->
                TestKeypads.with(
                    timed,
                    timed.rate(),
                    new Keypad.HoldField(
                        Optional.empty(),
                        TimeForm.HOURS_DOT_MINUTES,
                        BigDecimal.valueOf(600),
                        BigDecimal.ONE,
                        Optional.of(
                            new Special("0.00", Special.Place.BELOW_LEAST, Optional.of("0"))),
                        Optional.empty())))
        .hasMessage("The hold '0.00' means both endless and the end of the program.");
    assertThatThrownBy(() -> TestKeypads.with(timed, TestKeypads.digits().rate(), timed.hold()))
        .hasMessage(
            "The order of a segment names rate, target and hold once each, not [target, time, hold].");
    assertThatThrownBy(
            () ->
                new Keypad.UnitPrompt(
                    Optional.empty(), "1", "1", TemperatureUnit.CELSIUS, Keypad.Position.FIRST))
        .hasMessage("The unit must show something else for °C than for °F.");
    assertThatThrownBy(
            () ->
                new Keypad.UnitSetting(
                    Keypad.UnitSetting.Setting.CELSIUS,
                    TemperatureUnit.CELSIUS,
                    Set.of(),
                    SwitchingConverts.NO,
                    TestKeypads.asked().units().asked()))
        .hasMessage(
            "A keypad whose programs ask their unit can be in either unit: its setting is switchable.");
  }
}
