package org.heatwright.keypad.keying;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.PriorityQueue;
import java.util.Random;
import java.util.Set;
import org.heatwright.keypad.Entry;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.Gesture;
import org.heatwright.keypad.Key;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.KeypadFit;
import org.heatwright.keypad.Special;
import org.heatwright.keypad.TestKeypads;
import org.heatwright.keypad.TimeForm;
import org.heatwright.keypad.machine.Contents;
import org.heatwright.keypad.machine.KeyAction;
import org.heatwright.keypad.machine.KeypadMachine;
import org.heatwright.keypad.machine.MachineState;
import org.heatwright.keypad.machine.Motion;
import org.heatwright.keypad.machine.Where;
import org.heatwright.schedule.AtEnd;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The planned way against an exhaustive search: every key of a small keypad, in every state that
 * its interpreter can come to, by the same times. The search knows nothing of places, of values
 * that are wanted or of what to leave alone; it is the reference.
 */
@Tag("property")
class KeyingSearchTest {

  private static final double KEY = 0.28;
  private static final double READY = 1.35;

  /** Keypads with two segments and few values, of all kinds. */
  static List<Keypad> small() {
    List<Keypad> all = new ArrayList<>();
    for (Keypad.AfterLast after : List.of(Keypad.AfterLast.FIRST, Keypad.AfterLast.STAYS)) {
      all.add(small(TestKeypads.steps(), after, Gesture.of(), steps(Entry.AtLimit.WRAP)));
      all.add(small(TestKeypads.awkward(), after, Gesture.of(), steps(Entry.AtLimit.WRAP)));
      all.add(small(TestKeypads.list(), after, Gesture.of(Key.BACK), steps(Entry.AtLimit.STOP)));
    }
    all.add(
        small(
            TestKeypads.digits(),
            Keypad.AfterLast.FIRST,
            Gesture.of(),
            new Entry.DigitKeys(false)));
    all.add(
        small(
            TestKeypads.knob(),
            Keypad.AfterLast.FIRST,
            Gesture.of(),
            new Entry.Knob(8, 3, Entry.AtLimit.STOP, Entry.AtLimit.WRAP)));
    all.add(
        small(
            TestKeypads.list(),
            Keypad.AfterLast.STAYS,
            Gesture.of(Key.BACK),
            new Entry.Knob(8, 3, Entry.AtLimit.STOP, Entry.AtLimit.STOP)));
    all.add(
        small(
            TestKeypads.timed(), Keypad.AfterLast.FIRST, Gesture.of(), new Entry.DigitKeys(false)));
    for (Entry.AtLimit least : Entry.AtLimit.values()) {
      all.add(
          small(
              TestKeypads.asked(Keypad.UnitSetting.SwitchingConverts.NO, Keypad.Position.FIRST),
              Keypad.AfterLast.FIRST,
              Gesture.of(),
              new Entry.Knob(8, 3, Entry.AtLimit.STOP, least)));
    }
    // A key that leads back, so that the way need not go around.
    all.add(
        small(
            TestKeypads.steps(),
            Keypad.AfterLast.FIRST,
            Gesture.of(Key.BACK),
            steps(Entry.AtLimit.STOP)));
    return all;
  }

  private static Entry.StepKeys steps(Entry.AtLimit least) {
    return new Entry.StepKeys(
        List.of(new Entry.RepeatStage(0.4, 1, 10), new Entry.RepeatStage(1, 4, 10)),
        least,
        Entry.AtLimit.STOP);
  }

  private static Keypad small(Keypad k, Keypad.AfterLast after, Gesture previous, Entry entry) {
    Set<Key> keys = new HashSet<>(k.keys());
    previous.presses().forEach(p -> keys.add(p.key()));
    if (entry instanceof Entry.Knob) {
      keys.add(Key.TURN);
    }
    Keypad.Gestures g = k.gestures();
    boolean digits = entry instanceof Entry.DigitKeys;
    return new Keypad(
        k.name() + " " + after,
        k.units().asked().isPresent()
            ? k.units()
            : Keypad.UnitSetting.fixed(TemperatureUnit.CELSIUS),
        keys,
        entry,
        k.accept(),
        k.starts(),
        1,
        2,
        4,
        k.order(),
        k.rate().time().isPresent()
            ? Keypad.RateField.time(
                Optional.empty(),
                TimeForm.MINUTES,
                Keypad.Range.of(1, 2, 1),
                Optional.empty(),
                Keypad.Cooling.IMPLIED,
                Optional.empty())
            : new Keypad.RateField(
                Optional.empty(),
                Keypad.RateField.Per.HOUR,
                digits ? Keypad.Range.of(1, 2, 1) : Keypad.Range.of(100, 200, 100),
                k.units().asked().map(a -> Keypad.Range.of(100, 200, 100)),
                Optional.empty(),
                Keypad.Cooling.IMPLIED,
                Optional.empty()),
        new Keypad.TargetField(
            Optional.empty(),
            digits ? Keypad.Range.of(1, 3, 1) : Keypad.Range.of(100, 300, 50),
            k.units().asked().map(a -> Keypad.Range.of(100, 300, 50)),
            Optional.empty()),
        new Keypad.HoldField(
            Optional.empty(),
            TimeForm.MINUTES,
            BigDecimal.valueOf(k.end().in().isPresent() && digits ? 2 : digits ? 1 : 20),
            BigDecimal.valueOf(digits ? 1 : 20),
            Optional.empty(),
            Optional.empty()),
        Optional.empty(),
        digits && k.end().in().isEmpty()
            ? k.end()
            : new Keypad.EndRule(
                k.end().by(),
                Optional.of(Special.below(digits ? "0" : "End")),
                k.end().in(),
                AtEnd.OFF),
        new Keypad.Programming(k.programming().navigation(), after, k.programming().commits()),
        new Keypad.Gestures(
            g.open(),
            g.commit(),
            g.committed(),
            g.discardsAfterSeconds(),
            g.leave(),
            previous,
            g.review(),
            g.start(),
            g.stop(),
            Gesture.of()),
        new Keypad.Review(k.review().order(), Keypad.Position.HIDDEN, k.review().unused(), false),
        k.afterPowerCut());
  }

  @ParameterizedTest
  @MethodSource("small")
  void theWayIsAsShortAsAnExhaustiveSearchFinds(Keypad keypad) {
    Random random = new Random(20261126);
    for (int run = 0; run < 3; run++) {
      Schedule held = random(keypad, random);
      Schedule wanted = run % 2 == 0 ? random(keypad, random) : changed(keypad, held, random);
      FittedProgram program = KeypadFit.fit(wanted, keypad);
      FittedProgram before = KeypadFit.fit(held, keypad);
      assertThat(program.fits() && before.fits()).as("%s %s", program, before).isTrue();
      KeypadMachine machine = new KeypadMachine(keypad);
      // The planner may rely on the values of the program that is held, and on nothing else.
      Contents contents =
          Contents.of(before, keypad, Known.of(before, machine, Optional.of(held)).contents());
      double planned =
          new KeyingSearch(
                  program,
                  new Hand(machine, KeyingTimes.OCCASIONAL),
                  new Known(contents, all(keypad)))
              .quickest().stream().mapToDouble(KeyingSearch.Edge::seconds).sum();
      assertThat(planned)
          .as("%s: %s over %s", keypad.name(), program.values(), before.values())
          .isCloseTo(exhaustive(machine, contents, program), within(1e-6));
    }
  }

  private static Set<Integer> all(Keypad keypad) {
    Set<Integer> all = new HashSet<>();
    for (int i = 0; i < keypad.places().size(); i++) {
      all.add(i);
    }
    return all;
  }

  private static Schedule random(Keypad keypad, Random random) {
    List<Segment> segments = new ArrayList<>();
    int count = 1 + random.nextInt(2);
    TemperatureUnit unit =
        keypad.units().asked().isPresent() && random.nextBoolean()
            ? TemperatureUnit.FAHRENHEIT
            : TemperatureUnit.CELSIUS;
    for (int i = 0; i < count; i++) {
      segments.add(segment(keypad, unit, random));
    }
    return Schedule.of("small", unit, segments);
  }

  private static Segment segment(Keypad keypad, TemperatureUnit unit, Random random) {
    Keypad.Range rate = keypad.rate().range();
    Keypad.Range target = keypad.target().range();
    return new Segment(
        Ramp.at(
            unit.rate(
                // From 20 °C to 1 °C at most: 19 K in one minute, or in two.
                keypad.rate().time().isPresent()
                    ? 19 * 60.0 / (1 + random.nextInt(2))
                    : rate.value(random.nextInt(rate.count())).doubleValue()
                        * (keypad.rate().per() == Keypad.RateField.Per.HOUR ? 1 : 60))),
        unit.temperature(target.value(random.nextInt(target.count())).doubleValue()),
        Duration.ofMinutes(
            keypad
                .hold()
                .range()
                .value(random.nextInt(keypad.hold().range().count()))
                .longValue()));
  }

  private static Schedule changed(Keypad keypad, Schedule held, Random random) {
    List<Segment> segments = new ArrayList<>(held.segments());
    segments.set(random.nextInt(segments.size()), segment(keypad, held.unit(), random));
    return held.withSegments(segments);
  }

  // ---- the reference

  private record Reached(MachineState state, double seconds) {}

  private static double exhaustive(
      KeypadMachine machine, Contents contents, FittedProgram program) {
    MachineState idle = machine.idle(Map.of(1, contents), TemperatureUnit.CELSIUS);
    MachineState start = idle;
    for (Gesture.Press press : machine.keypad().gestures().open().presses()) {
      start = machine.press(start, action(press));
    }
    Map<MachineState, Double> best = new HashMap<>();
    PriorityQueue<Reached> open =
        new PriorityQueue<>((a, b) -> Double.compare(a.seconds(), b.seconds()));
    Set<MachineState> settled = new HashSet<>();
    best.put(start, 0.0);
    open.add(new Reached(start, 0));
    while (!open.isEmpty()) {
      Reached reached = open.poll();
      if (!settled.add(reached.state())) {
        continue;
      }
      if (isDone(machine, reached.state(), program)) {
        return reached.seconds();
      }
      if (reached.state().where() instanceof Where.Idle) {
        continue; // Out without the program: no way to it is shorter through here.
      }
      for (Map.Entry<KeyAction, Double> key : keys(machine, reached.state()).entrySet()) {
        MachineState next = machine.press(reached.state(), key.getKey());
        double seconds = reached.seconds() + key.getValue();
        if (seconds < best.getOrDefault(next, Double.POSITIVE_INFINITY)) {
          best.put(next, seconds);
          open.add(new Reached(next, seconds));
        }
      }
    }
    throw new AssertionError("the program cannot be keyed at all");
  }

  private static boolean isDone(KeypadMachine machine, MachineState state, FittedProgram program) {
    return state.where() instanceof Where.Idle
        && machine.contents(state, 1).holds(program, machine.keypad());
  }

  private static KeyAction action(Gesture.Press press) {
    return press.holdSeconds() > 0
        ? new KeyAction.Hold(press.key(), press.holdSeconds())
        : new KeyAction.Tap(press.key());
  }

  /** Every key that there is, with its time. */
  private static Map<KeyAction, Double> keys(KeypadMachine machine, MachineState state) {
    Keypad keypad = machine.keypad();
    Map<KeyAction, Double> keys = new HashMap<>();
    boolean begun = !state.begun().isEmpty();
    for (Gesture gesture :
        List.of(
            Gesture.of(keypad.accept()),
            keypad.gestures().commit(),
            keypad.gestures().leave(),
            keypad.gestures().previous(),
            keypad.gestures().start(),
            keypad.gestures().stop())) {
      for (Gesture.Press press : gesture.presses()) {
        keys.put(action(press), KEY + (begun ? 0 : READY) + press.holdSeconds());
      }
    }
    boolean walking = state.where() instanceof Where.Value value && !value.open();
    Entry entry = keypad.entry();
    if (entry instanceof Entry.DigitKeys) {
      for (int digit = 0; digit < 10; digit++) {
        keys.put(new KeyAction.Digit(digit), KEY);
      }
    } else if (entry instanceof Entry.Knob knob) {
      for (int direction : new int[] {1, -1}) {
        keys.put(new KeyAction.Turn(direction, false), 0.2);
        for (int clicks = knob.clicksPerTurn() / 4; clicks <= 16 && !walking; clicks++) {
          spin(machine, state, knob, direction * clicks)
              .ifPresent(s -> keys.put(s.getKey(), s.getValue()));
        }
      }
    } else {
      keys.put(new KeyAction.Tap(Key.UP), KEY);
      keys.put(new KeyAction.Tap(Key.DOWN), KEY);
      if (!walking) {
        held(machine, state, keys);
      }
    }
    return keys;
  }

  private static OptionalInt position(KeypadMachine machine, MachineState state) {
    return state.where() instanceof Where.Value value
        ? machine
            .scale(machine.keypad().places().get(value.place()), state.unit())
            .positionOf(value.text())
        : OptionalInt.empty();
  }

  private static int size(KeypadMachine machine, MachineState state) {
    Where.Value value = (Where.Value) state.where();
    return machine.scale(machine.keypad().places().get(value.place()), state.unit()).size();
  }

  private static void held(KeypadMachine machine, MachineState state, Map<KeyAction, Double> keys) {
    OptionalInt from = position(machine, state);
    if (from.isEmpty()) {
      return;
    }
    Motion motion = new Motion(machine.keypad().entry(), size(machine, state));
    for (int direction : new int[] {1, -1}) {
      for (Motion.Tick tick : motion.held(from.getAsInt(), direction, 4)) {
        double scatter =
            tick.stopped() ? 0 : 0.15 * tick.stepsPerTick() * tick.ticksPerSecond() * KEY;
        keys.put(
            new KeyAction.Hold(
                direction > 0 ? Key.UP : Key.DOWN, tick.seconds() + 0.5 / tick.ticksPerSecond()),
            READY + tick.seconds() + scatter);
      }
    }
  }

  /** Quarter turns, or into an end: finer than that nobody turns. */
  private static Optional<Map.Entry<KeyAction, Double>> spin(
      KeypadMachine machine, MachineState state, Entry.Knob knob, int clicks) {
    OptionalInt from = position(machine, state);
    if (from.isEmpty()) {
      return Optional.empty();
    }
    int size = size(machine, state);
    Motion motion = new Motion(knob, size);
    int to = motion.afterTurning(from.getAsInt(), clicks, true);
    boolean end = to == (clicks > 0 ? size - 1 : 0) && !motion.wraps(clicks > 0);
    if (!end && Math.abs(clicks) % (knob.clicksPerTurn() / 4) != 0) {
      return Optional.empty();
    }
    double scatter = end ? 0 : 2 * knob.fastSteps() * 0.2;
    double seconds = Math.abs(clicks) * 0.6 / knob.clicksPerTurn();
    return Optional.of(Map.entry(new KeyAction.Turn(clicks, true), READY + seconds + scatter));
  }
}
