package org.heatwright.pocket;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import org.heatwright.app.demo.DemoStudio;
import org.heatwright.app.files.KeypadFile;
import org.heatwright.app.store.Kind;
import org.heatwright.app.store.Store;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.Key;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.KeypadFit;
import org.heatwright.keypad.keying.Instruction;
import org.heatwright.keypad.keying.KeyingPlanner;
import org.heatwright.keypad.keying.KeyingStep;
import org.heatwright.keypad.machine.KeyAction;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Sheet and rehearsal agree, and what is keyed wrong is named where it is taken. */
class RehearsalTest {

  private static final int RUNS = 60;

  static List<Keypad> keypads() {
    try (Store store = Store.temporary(Clock.systemUTC())) {
      DemoStudio.fill(store);
      return store.all(Kind.KEYPAD).stream().map(d -> KeypadFile.read(d.text(), d.name())).toList();
    }
  }

  /** One rehearsal of one sheet. */
  private static final class Rehearsal {
    final Keypad keypad;
    final Pocket pocket;
    final List<KeyingStep> steps;
    Fields last;

    Rehearsal(Keypad keypad, Schedule schedule, Optional<Schedule> held) {
      this.keypad = keypad;
      FittedProgram program = KeypadFit.fit(schedule, keypad);
      this.pocket =
          Pocket.openPocket(
              Pocket.data(keypad, program, 1, held.map(h -> KeypadFit.fit(h, keypad))));
      this.steps = KeyingPlanner.plan(program, keypad, 1, held).steps();
      this.last = Fields.read(pocket.restart());
    }

    void press(KeyAction action) {
      last = Fields.read(pocket.press(JsonText.write(RehearsalTalk.written(action))));
    }

    String shows() {
      return last.map("display").text("value");
    }

    /** As a person does: the keys of the sheet, or the keys that make values until it shows. */
    void follow(Instruction instruction) {
      if (instruction instanceof Instruction.Press press) {
        press(press.action());
        return;
      }
      String wanted = ((Instruction.Until) instruction).shows();
      for (int direction : new int[] {1, -1}) {
        for (String before = ""; !shows().equals(wanted) && !before.equals(shows()); ) {
          before = shows();
          press(step(direction));
        }
      }
      assertThat(shows()).isEqualTo(wanted);
    }

    KeyAction step(int direction) {
      return keypad.keys().contains(Key.TURN)
          ? new KeyAction.Turn(direction, false)
          : new KeyAction.Tap(direction > 0 ? Key.UP : Key.DOWN);
    }
  }

  @ParameterizedTest
  @MethodSource("keypads")
  void whoFollowsTheSheetHearsOfNoWrongKeyAndIsDone(Keypad keypad) {
    Random random = new Random(11);
    for (int run = 0; run < RUNS; run++) {
      Rehearsal rehearsal =
          new Rehearsal(
              keypad,
              schedule(keypad, random),
              random.nextBoolean() ? Optional.of(schedule(keypad, random)) : Optional.empty());
      boolean done = false;
      for (KeyingStep step : rehearsal.steps) {
        List<Instruction> all = new ArrayList<>(step.make());
        all.addAll(step.go());
        for (Instruction instruction : all) {
          rehearsal.follow(instruction);
          assertThat(rehearsal.last.text("kind"))
              .as("%s: %s, at %s", keypad.name(), rehearsal.last.text("says"), step)
              .isNotIn(
                  // Who looks for a value with the keys may come to the end of the scale.
                  instruction instanceof Instruction.Press
                      ? List.of("wrong", "nothing")
                      : List.of("wrong"));
          done |= rehearsal.last.text("kind").equals("done");
        }
      }
      assertThat(done).as(keypad.name()).isTrue();
    }
  }

  @ParameterizedTest
  @MethodSource("keypads")
  void oneSlipIsNamedWhenItsValueIsTakenAndCanBeTakenBack(Keypad keypad) {
    Random random = new Random(12);
    int slips = 0;
    for (int run = 0; run < RUNS; run++) {
      Rehearsal rehearsal = new Rehearsal(keypad, schedule(keypad, random), Optional.empty());
      List<KeyingStep> made =
          rehearsal.steps.stream()
              .filter(s -> s.kind() == KeyingStep.Kind.VALUE)
              .filter(s -> s.prompt().matches(".*segment \\d+ (rate|target|hold).*"))
              .filter(s -> !s.make().isEmpty() && !s.go().isEmpty())
              .toList();
      KeyingStep slip = made.get(random.nextInt(made.size()));
      for (KeyingStep step : rehearsal.steps.subList(0, rehearsal.steps.indexOf(slip))) {
        Stream.concat(step.make().stream(), step.go().stream()).forEach(rehearsal::follow);
      }
      slip.make().forEach(rehearsal::follow);
      rehearsal.press(
          keypad.keys().contains(Key.DIGITS)
              ? new KeyAction.Digit(random.nextInt(10))
              : rehearsal.step(random.nextBoolean() ? 1 : -1));
      assertThat(rehearsal.last.text("kind")).isNotEqualTo("wrong"); // not taken yet
      if (rehearsal.shows().equals(slip.showsAfter())) {
        continue; // at the end of its scale the key changed nothing
      }
      int keys = rehearsal.last.whole("keys");
      rehearsal.follow(slip.go().get(0));
      assertThat(rehearsal.last.text("kind"))
          .as("%s, %s after %s", keypad.name(), slip, rehearsal.last.text("says"))
          .isEqualTo("wrong");
      assertThat(rehearsal.last.text("says")).contains("key " + (keys + 1));
      assertThat(Fields.read(rehearsal.pocket.back()).text("kind")).isNotEqualTo("wrong");
      slips++;
    }
    assertThat(slips).isGreaterThan(RUNS / 2);
  }

  private static Schedule schedule(Keypad keypad, Random random) {
    while (true) {
      List<Segment> segments = new ArrayList<>();
      for (int i = 1 + random.nextInt(4); i > 0; i--) {
        segments.add(
            new Segment(
                random.nextInt(5) == 0
                    ? Ramp.fastest()
                    : Ramp.at(TemperatureUnit.CELSIUS.rate(60 + random.nextInt(200))),
                TemperatureUnit.CELSIUS.temperature(100 + random.nextInt(700)),
                Duration.ofMinutes(random.nextInt(240))));
      }
      Schedule schedule = Schedule.of("random", TemperatureUnit.CELSIUS, segments);
      if (KeypadFit.fit(schedule, keypad).fits()) {
        return schedule;
      }
    }
  }
}
