package org.heatwright.keypad.keying;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import org.heatwright.keypad.Entry;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.KeyedValue;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.Keypad.UnitSetting.SwitchingConverts;
import org.heatwright.keypad.KeypadFit;
import org.heatwright.keypad.Place;
import org.heatwright.keypad.Readback;
import org.heatwright.keypad.ReadbackReport;
import org.heatwright.keypad.Scale;
import org.heatwright.keypad.Shown;
import org.heatwright.keypad.TestKeypads;
import org.heatwright.keypad.machine.Contents;
import org.heatwright.keypad.machine.Display;
import org.heatwright.keypad.machine.KeyAction;
import org.heatwright.keypad.machine.KeypadMachine;
import org.heatwright.keypad.machine.MachineState;
import org.heatwright.keypad.machine.Where;
import org.heatwright.schedule.Schedule;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Ten thousand sheets over all kinds of keypad, followed on the interpreter. */
@Tag("property")
class SheetPropertyTest {

  private static final int SHEETS = 10_000;
  private static final double KEY = 0.28;
  private static final double READY = 1.35;

  private int lines;

  /**
   * Whatever a slot held, following its sheet shows what each line says and leaves exactly the
   * program in the slot, which its review then proves; and it never takes longer than the plain
   * way: every value in order, held or spun straight to it, corrected, and taken.
   */
  @Test
  void sheetsAndInterpreterAgreeKeyForKeyAndNoSheetIsLongerThanThePlainWay() {
    RandomPrograms programs = new RandomPrograms(20261126);
    lines = 0;
    int savedEarly = 0;
    List<Hand> hands =
        TestKeypads.kinds().stream()
            .map(k -> new Hand(new KeypadMachine(k), KeyingTimes.OCCASIONAL))
            .toList();
    for (int run = 0; run < SHEETS; run++) {
      savedEarly += savedEarly(programs, hands.get(run % hands.size()), run) ? 1 : 0;
    }
    assertThat(lines).isGreaterThan(10 * SHEETS);
    assertThat(savedEarly).as("edits that beat the plain way by 5 s").isGreaterThan(SHEETS / 5);
  }

  /** Whatever becomes of a program's numbers when another unit is chosen for it. */
  @Test
  void aProgramThatAsksItsUnitIsKeyedOverOneInTheOtherUnit() {
    RandomPrograms programs = new RandomPrograms(20261126);
    for (SwitchingConverts converts : SwitchingConverts.values()) {
      for (Keypad.Position shown : Keypad.Position.values()) {
        Hand hand =
            new Hand(new KeypadMachine(TestKeypads.asked(converts, shown)), KeyingTimes.OCCASIONAL);
        for (int run = 0; run < 60; run++) {
          savedEarly(programs, hand, run);
        }
      }
    }
  }

  /** One sheet; whether it beats the plain way by 5 s. */
  private boolean savedEarly(RandomPrograms programs, Hand hand, int run) {
    KeypadMachine machine = hand.machine();
    Keypad keypad = machine.keypad();
    int slot = 1 + programs.random().nextInt(keypad.slots());
    Schedule stored = programs.schedule(keypad);
    Schedule wanted = run % 2 == 0 ? programs.schedule(keypad) : programs.changed(stored, keypad);
    boolean told = run % 3 != 0;
    FittedProgram program = KeypadFit.fit(wanted, keypad);
    KeyingSheet sheet =
        KeyingPlanner.plan(program, hand, slot, told ? Optional.of(stored) : Optional.empty());
    FittedProgram before = KeypadFit.fit(stored, keypad);
    Contents contents = Contents.of(before, keypad, machine.blank(before.unit()));
    MachineState state = machine.idle(Map.of(slot, contents), TemperatureUnit.CELSIUS);
    List<Beat> beats = follow(sheet, hand, state);
    for (Beat beat : beats) {
      lines += agrees(beat, keypad, run);
    }
    MachineState end = keyed(beats);
    assertThat(end.where()).as("run %d", run).isInstanceOf(Where.Idle.class);
    assertThat(machine.contents(end, slot).holds(program, keypad)).as("run %d", run).isTrue();
    proves(program, keypad, machine, end, slot, run);
    double plain =
        plain(program, keypad, machine, told ? Optional.of(before) : Optional.empty(), slot);
    double planned = sheet.keying().toMillis() / 1000.0;
    assertThat(planned).as("run %d on %s", run, keypad.name()).isLessThanOrEqualTo(plain + 0.002);
    return planned < plain - 5;
  }

  /** One step of a sheet, followed: the display before it, once the value is made, and after it. */
  private record Beat(
      KeyingStep step, Display before, Display made, Display after, MachineState state) {}

  private static List<Beat> follow(KeyingSheet sheet, Hand hand, MachineState from) {
    KeypadMachine machine = hand.machine();
    List<Beat> beats = new ArrayList<>();
    MachineState state = from;
    for (KeyingStep step : sheet.steps()) {
      MachineState made = pressed(hand, state, step.make());
      MachineState after = pressed(hand, made, step.go());
      beats.add(
          new Beat(
              step, machine.display(state), machine.display(made), machine.display(after), after));
      state = after;
    }
    return beats;
  }

  private static MachineState pressed(
      Hand hand, MachineState from, List<Instruction> instructions) {
    MachineState state = from;
    for (Instruction instruction : instructions) {
      for (KeyAction key : Rehearsal.keys(hand, state, instruction)) {
        state = hand.machine().press(state, key);
      }
    }
    return state;
  }

  /** The keypad after everything but the review. */
  private static MachineState keyed(List<Beat> beats) {
    int review = 0;
    while (!beats.get(review).step().prompt().equals("review")) {
      review++;
    }
    return beats.get(review - 1).state();
  }

  private static int agrees(Beat beat, Keypad keypad, int run) {
    KeyingStep step = beat.step();
    if (step.kind() != KeyingStep.Kind.VALUE) {
      if (step.showsAfter().equals(KeypadMachine.IDLE_WORDS)
          || step.showsAfter().equals(KeypadMachine.SLOT_WORDS)) {
        assertThat(beat.after().words()).as("run %d: %s", run, step).isEqualTo(step.showsAfter());
        return 1;
      }
      return 0;
    }
    assertThat(beat.made().value()).as("run %d: %s", run, step).isEqualTo(step.showsAfter());
    boolean walks =
        step.make().size() > 1 && keypad.programming().navigation() == Keypad.Navigation.LIST;
    if (!step.showsBefore().equals("what was stored")
        && !step.showsBefore().equals(KeypadMachine.SLOT_WORDS)
        && !walks) {
      assertThat(beat.before().value()).as("run %d: %s", run, step).isEqualTo(step.showsBefore());
    }
    return 1;
  }

  private static void proves(
      FittedProgram program,
      Keypad keypad,
      KeypadMachine machine,
      MachineState end,
      int slot,
      int run) {
    List<Shown.Value> values = new ArrayList<>();
    for (KeypadMachine.Item item : machine.items(end)) {
      values.add(new Shown.Value(Integer.toString(values.size() + 1), item.text()));
    }
    ReadbackReport report =
        Readback.compare(
            program,
            keypad,
            new Shown(OptionalInt.of(slot), Optional.of(program.unit()), values),
            OptionalInt.of(slot),
            Optional.empty());
    assertThat(report.findings()).as("run %d", run).isEmpty();
  }

  /**
   * A person who knows no tricks: open, choose, every value in turn by one straight run and taps
   * (or typed), taken; then saved and left. Computed here from the description alone.
   */
  private static double plain(
      FittedProgram program,
      Keypad keypad,
      KeypadMachine machine,
      Optional<FittedProgram> held,
      int slot) {
    List<Place> places = keypad.places();
    boolean list = keypad.programming().navigation() == Keypad.Navigation.LIST;
    double seconds = gesture(keypad.gestures().open());
    seconds += straight(keypad, Scale.numbers(keypad.slots()), keypad.slots() / 2, slot - 1);
    seconds += KEY + READY;
    int last = 0;
    for (KeyedValue value : program.values()) {
      int place = places.indexOf(Place.of(value, keypad));
      Scale scale = machine.scale(places.get(place), program.unit());
      int to = scale.positionOf(value.digits()).orElseThrow();
      int from =
          held.flatMap(h -> heldText(h, places.get(place), keypad, program.unit()))
              .map(text -> scale.positionOf(text).orElse(scale.size() / 2))
              .orElse(scale.size() / 2);
      double making =
          keypad.entry() instanceof Entry.DigitKeys
              ? value.digits().length() * KEY
              : straight(keypad, scale, from, to);
      seconds += making + (KEY + READY) * (list ? 2 : 1);
      if (list) {
        seconds += Math.abs(place - last) * KEY;
        last = place;
      } else if (value.kind() == KeyedValue.Kind.END && value.segment() > 0) {
        // Past what stands before the mark in a segment that is not run.
        seconds += keypad.order().indexOf(keypad.markField()) * (KEY + READY);
      }
    }
    seconds += gesture(keypad.gestures().commit());
    if (keypad.programming().commits() == Keypad.Commits.START) {
      seconds += gesture(keypad.gestures().start()) + gesture(keypad.gestures().stop());
    } else {
      seconds += gesture(keypad.gestures().leave());
    }
    return seconds;
  }

  /** What the held program says of a place; the rest is no more known than to the sheet. */
  private static Optional<String> heldText(
      FittedProgram held, Place place, Keypad keypad, TemperatureUnit unit) {
    return held.values().stream()
        .filter(v -> Place.of(v, keypad).equals(place))
        .filter(v -> held.unit() == unit || !isInDegrees(v) || unitLeavesNumbers(keypad))
        .map(KeyedValue::digits)
        .findFirst();
  }

  private static boolean isInDegrees(KeyedValue value) {
    return value.kind() == KeyedValue.Kind.RATE || value.kind() == KeyedValue.Kind.TARGET;
  }

  private static boolean unitLeavesNumbers(Keypad keypad) {
    return keypad.units().switchingConverts() == SwitchingConverts.NO;
  }

  private static double gesture(org.heatwright.keypad.Gesture gesture) {
    return gesture.isEmpty()
        ? 0
        : gesture.presses().size() * KEY
            + READY
            + gesture.presses().stream().mapToDouble(p -> p.holdSeconds()).sum();
  }

  /** Straight towards it, without going around an end. */
  private static double straight(Keypad keypad, Scale scale, int from, int to) {
    if (keypad.entry() instanceof Entry.DigitKeys) {
      return scale.text(to).length() * KEY;
    }
    int steps = Math.abs(to - from);
    if (keypad.entry() instanceof Entry.Knob knob) {
      double clicking = steps * 0.2;
      int quarter = knob.clicksPerTurn() / 4;
      int spun = steps / knob.fastSteps() / quarter * quarter;
      if (spun == 0) {
        return clicking;
      }
      int left = steps - spun * knob.fastSteps();
      double spinning =
          READY + spun * 0.6 / knob.clicksPerTurn() + 2 * knob.fastSteps() * 0.2 + left * 0.2;
      return Math.min(clicking, spinning);
    }
    List<Entry.RepeatStage> stages = ((Entry.StepKeys) keypad.entry()).repeat();
    int moved = 1;
    int stage = 0;
    double seconds = stages.get(0).afterSeconds();
    double best = steps * KEY;
    while (moved + stages.get(stage).stepsPerTick() <= steps && seconds < 55) {
      Entry.RepeatStage now = stages.get(stage);
      moved += now.stepsPerTick();
      double scatter = now.stepsPerTick() * now.ticksPerSecond() * 0.15;
      best = Math.min(best, READY + seconds + scatter * KEY + (steps - moved) * KEY);
      seconds += 1 / now.ticksPerSecond();
      if (stage + 1 < stages.size() && seconds >= stages.get(stage + 1).afterSeconds()) {
        stage++;
        seconds = stages.get(stage).afterSeconds();
      }
    }
    return best;
  }

  @Test
  void aSheetNamesItsKeysInFull() {
    Keypad keypad = TestKeypads.list();
    KeyingSheet sheet =
        KeyingPlanner.plan(
            KeypadFit.fit(TestKeypads.burnout(), keypad), keypad, 2, Optional.empty());
    assertThat(sheet.steps().stream().map(KeyingStep::press).collect(Collectors.joining("\n")))
        .contains(
            "press confirm", "press down twice to b1", "hold or tap up or down until it shows");
  }
}
