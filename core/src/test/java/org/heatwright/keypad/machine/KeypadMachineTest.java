package org.heatwright.keypad.machine;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.Key;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.KeypadFit;
import org.heatwright.keypad.Readback;
import org.heatwright.keypad.ReadbackReport;
import org.heatwright.keypad.Shown;
import org.heatwright.keypad.TestKeypads;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Expected displays follow from the descriptions in {@link TestKeypads}, worked out by hand. */
class KeypadMachineTest {

  static List<Keypad> keypads() {
    return TestKeypads.kinds();
  }

  private KeypadMachine machine;
  private MachineState state;

  private void on(Keypad keypad) {
    machine = new KeypadMachine(keypad);
    state = machine.idle(Map.of(), TemperatureUnit.CELSIUS);
  }

  private void tap(Key... keys) {
    for (Key key : keys) {
      state = machine.press(state, new KeyAction.Tap(key));
    }
  }

  private void hold(Key key, double seconds) {
    state = machine.press(state, new KeyAction.Hold(key, seconds));
  }

  private void type(String digits) {
    for (char c : digits.toCharArray()) {
      state = machine.press(state, new KeyAction.Digit(c - '0'));
    }
  }

  private String shows() {
    Display display = machine.display(state);
    return display.label().isEmpty() ? display.value() : display.label() + " " + display.value();
  }

  @Test
  void oneKeyMeansDifferentThingsInDifferentStates() {
    on(TestKeypads.steps());
    assertThat(machine.display(state).words()).isEqualTo(KeypadMachine.IDLE_WORDS);
    hold(Key.NEXT, 2.2); // opens programming
    assertThat(shows()).isEqualTo("1");
    tap(Key.UP, Key.NEXT); // takes slot 2
    assertThat(shows()).isEqualTo("dL 0.00");
    tap(Key.NEXT); // takes the delay; an empty slot begins with its mark
    assertThat(shows()).isEqualTo("r1 End");
    tap(Key.UP, Key.UP);
    assertThat(shows()).isEqualTo("r1 10");
    tap(Key.NEXT);
    assertThat(shows()).isEqualTo("t1 20");
    hold(Key.NEXT, 3); // saves
    assertThat(shows()).isEqualTo("StO");
    assertThat(machine.contents(state, 2).texts().get(1)).isEqualTo("10");
    tap(Key.NEXT); // from idle: review
    assertThat(machine.display(state).words()).isEqualTo(KeypadMachine.SLOT_WORDS);
  }

  @Test
  void aKeyKeptDownRunsByItsStagesAndOnlyDownwardGoesAround() {
    on(TestKeypads.steps());
    hold(Key.NEXT, 2);
    tap(Key.NEXT, Key.NEXT);
    // From End: one step at once, then 1 step 6 times a second from 0.6 s on: at 1.5 s six ticks.
    hold(Key.UP, 1.5);
    assertThat(shows()).isEqualTo("r1 35");
    on(TestKeypads.steps());
    hold(Key.NEXT, 2);
    tap(Key.NEXT, Key.NEXT, Key.DOWN);
    assertThat(shows()).isEqualTo("r1 FULL");
    tap(Key.UP);
    assertThat(shows()).isEqualTo("r1 FULL");
  }

  @Test
  void typedDigitsFillUpFromTheRightAndWhatIsNoValueIsRefused() {
    on(TestKeypads.digits());
    tap(Key.PROGRAM);
    type("3");
    tap(Key.CONFIRM);
    assertThat(machine.display(state).words()).isEqualTo("number of segments");
    type("1");
    tap(Key.CONFIRM);
    type("1300");
    tap(Key.CONFIRM);
    assertThat(shows()).as("1300 is above 1200").isEqualTo("0");
    type("73");
    tap(Key.CLEAR);
    type("730");
    tap(Key.CONFIRM);
    type("999");
    tap(Key.CONFIRM);
    type("240");
    tap(Key.CONFIRM);
    type("3");
    assertThat(shows()).isEqualTo("00:03");
    type("20");
    assertThat(shows()).isEqualTo("03:20");
    tap(Key.CONFIRM, Key.PROGRAM);
    assertThat(state.where()).isInstanceOf(Where.Idle.class);
    assertThat(machine.items(state.withSlot(3)).stream().map(KeypadMachine.Item::text))
        .containsExactly("1", "730", "999", "240", "03:20");
  }

  @Test
  void aListIsWalkedAndAValueMustBeOpened() {
    on(TestKeypads.list());
    tap(Key.CONFIRM, Key.CONFIRM);
    assertThat(shows()).isEqualTo("A1 OFF");
    tap(Key.UP); // walks, around to the last
    assertThat(shows()).isEqualTo("dLY 0");
    tap(Key.DOWN, Key.DOWN);
    assertThat(shows()).isEqualTo("b1 10");
    tap(Key.CONFIRM, Key.UP, Key.UP);
    assertThat(shows()).isEqualTo("b1 12");
    tap(Key.BACK);
    assertThat(shows()).as("left unchanged").isEqualTo("b1 10");
    tap(Key.CONFIRM, Key.UP, Key.CONFIRM);
    hold(Key.BACK, 1.5);
    assertThat(state.where()).isInstanceOf(Where.Idle.class);
    assertThat(machine.contents(state, 1).texts().get(1)).isEqualTo("11");
  }

  @Test
  void whatIsNotSavedIsLost() {
    on(TestKeypads.steps());
    hold(Key.NEXT, 2);
    tap(Key.NEXT, Key.NEXT, Key.UP, Key.NEXT);
    assertThat(machine.untouched(state, 59)).isEqualTo(state);
    assertThat(machine.contents(machine.untouched(state, 60), 1).texts().get(1)).isEqualTo("End");
    assertThat(machine.powerCut(state).where()).isInstanceOf(Where.Idle.class);
    assertThat(machine.contents(machine.powerCut(state), 1).texts().get(1)).isEqualTo("End");
  }

  @Test
  void theAwkwardOneStoresOnlyWhenItIsStarted() {
    on(TestKeypads.awkward());
    tap(Key.NEXT, Key.NEXT, Key.UP, Key.NEXT);
    assertThat(shows()).isEqualTo("rA1 10");
    hold(Key.NEXT, 4);
    assertThat(machine.contents(state, 1).texts().get(0)).as("left").isEqualTo("----");
    tap(Key.NEXT, Key.NEXT, Key.UP, Key.NEXT, Key.START);
    assertThat(state.where()).isEqualTo(new Where.Running());
    assertThat(machine.powerCut(state).where()).as("stops").isInstanceOf(Where.Idle.class);
    hold(Key.START, 2);
    assertThat(machine.contents(state, 1).texts().get(0)).isNotEqualTo("----");
    // Its review is edited by a nudge.
    tap(Key.UP, Key.NEXT, Key.UP);
    assertThat(machine.display(state).value())
        .isNotEqualTo(machine.contents(machine.idle(Map.of(), state.unit()), 1).texts().get(0));
    // 0.5 s more on the key than a press and the unit is the other one.
    on(TestKeypads.awkward());
    hold(Key.DOWN, 4.5);
    assertThat(machine.display(state).sign()).contains(TemperatureUnit.FAHRENHEIT);
  }

  @Test
  void aSwitchedUnitConvertsWhereTheDescriptionSaysSo() {
    Keypad.Range range = Keypad.Range.of(68, 2012, 1);
    assertThat(ConvertedText.of("730", true, TemperatureUnit.CELSIUS, range)).contains("1346");
    assertThat(ConvertedText.of("100", false, TemperatureUnit.CELSIUS, range)).contains("180");
    assertThat(ConvertedText.of("FULL", false, TemperatureUnit.CELSIUS, range)).isEmpty();
  }

  /**
   * What the machine's review shows of a program is what the read-back expects, value for value.
   */
  @ParameterizedTest
  @MethodSource("keypads")
  void theReviewOfAKeyedProgramIsProven(Keypad keypad) {
    FittedProgram program =
        KeypadFit.fit(
            TestKeypads.schedule(
                TestKeypads.celsius(100, 150, 150), TestKeypads.celsius(100, 730, 240)),
            keypad);
    on(keypad);
    Contents contents = Contents.of(program, keypad, machine.blank(TemperatureUnit.CELSIUS));
    assertThat(contents.holds(program, keypad)).isTrue();
    state = machine.idle(Map.of(1, contents), TemperatureUnit.CELSIUS);
    List<Shown.Value> values = new ArrayList<>();
    machine
        .items(state)
        .forEach(i -> values.add(new Shown.Value("" + (values.size() + 1), i.text())));
    ReadbackReport report =
        Readback.compare(
            program,
            keypad,
            new Shown(OptionalInt.of(1), Optional.of(TemperatureUnit.CELSIUS), values));
    assertThat(report.findings()).isEmpty();
    assertThat(report.outcome()).isNotEqualTo(ReadbackReport.Outcome.NOT_PROVEN);
    assertThat(values).hasSize(Readback.questions(program, keypad).size());
  }

  /** No key sequence breaks it, and every text it stores is one that its field can read. */
  @Tag("property")
  @ParameterizedTest
  @MethodSource("keypads")
  void anyKeysLeadToAStateThatCanBeShown(Keypad keypad) {
    Random random = new Random(5);
    List<Key> keys = new ArrayList<>(keypad.keys());
    on(keypad);
    int stored = 0;
    for (int i = 0; i < 20_000; i++) {
      Key key = keys.get(random.nextInt(keys.size()));
      KeyAction action =
          switch (key) {
            case DIGITS -> new KeyAction.Digit(random.nextInt(10));
            case TURN -> new KeyAction.Turn(random.nextInt(41) - 20, random.nextBoolean());
            default ->
                random.nextInt(4) == 0
                    ? new KeyAction.Hold(key, 0.1 + random.nextDouble() * 6)
                    : new KeyAction.Tap(key);
          };
      state = machine.press(state, action);
      assertThat(machine.display(state).words()).isNotEmpty();
      if (keypad.units().switchable() && state.unit() != TemperatureUnit.CELSIUS) {
        // Numbers left standing in the other unit may be ones it does not take.
        on(keypad);
        continue;
      }
      Contents contents = machine.contents(state, state.slot());
      for (int place = 0; place < contents.texts().size(); place++) {
        assertThat(
                machine
                    .scale(keypad.places().get(place), state.unit())
                    .positionOf(contents.texts().get(place)))
            .isPresent();
      }
      stored += state.slots().size();
    }
    assertThat(stored).isPositive();
  }
}
