package org.heatwright.keypad.keying;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.KeypadFit;
import org.heatwright.keypad.TestKeypads;
import org.heatwright.keypad.machine.KeyJudge;
import org.heatwright.keypad.machine.KeypadMachine;
import org.heatwright.schedule.Schedule;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class RehearsalTest {

  private static Rehearsal.Course play(
      Keypad keypad, FittedProgram program, List<Instruction> keys) {
    KeypadMachine machine = new KeypadMachine(keypad);
    return Rehearsal.play(
        machine, new KeyJudge(machine, program, 2), machine.idle(Map.of(), program.unit()), keys);
  }

  /** Keying only: what a sheet says until the review begins. */
  private static List<Instruction> keys(KeyingSheet sheet) {
    return sheet.steps().stream()
        .takeWhile(step -> !step.prompt().equals("review"))
        .flatMap(step -> Stream.concat(step.make().stream(), step.go().stream()))
        .toList();
  }

  @Tag("property")
  @Test
  void aSheetsOwnKeysAreNeverWrongAndAWrongValueIsMarkedWhereItIsTaken() {
    RandomPrograms programs = new RandomPrograms(8);
    List<Keypad> kinds = TestKeypads.kinds();
    int marked = 0;
    for (int run = 0; run < 400; run++) {
      Keypad keypad = kinds.get(run % kinds.size());
      Schedule wanted = programs.schedule(keypad);
      FittedProgram program = KeypadFit.fit(wanted, keypad);
      List<Instruction> keys = keys(KeyingPlanner.plan(program, keypad, 2, Optional.empty()));
      Rehearsal.Course right = play(keypad, program, keys);
      assertThat(right.firstWrong()).as("run %d: %s", run, right).isEmpty();
      assertThat(right.done()).as("run %d", run).isTrue();
      // Written and read again they are the same keys.
      List<Instruction> again = new ArrayList<>();
      keys.forEach(key -> again.addAll(KeyText.read(KeyText.write(key))));
      assertThat(again).isEqualTo(keys);
      // The keys of another program are wrong at the first value that differs, and not before.
      FittedProgram other = KeypadFit.fit(programs.schedule(keypad), keypad);
      if (other.values().equals(program.values())) {
        continue;
      }
      Rehearsal.Course wrong = play(keypad, other, keys);
      assertThat(wrong.firstWrong()).as("run %d", run).isPresent();
      assertThat(wrong.done()).as("run %d", run).isFalse();
      marked++;
    }
    assertThat(marked).isGreaterThan(300);
  }

  @Test
  void theFirstWrongKeyIsMarkedWithWhy() {
    Keypad keypad = TestKeypads.steps();
    FittedProgram program = KeypadFit.fit(TestKeypads.burnout(), keypad);
    List<Instruction> keys = new ArrayList<>();
    for (String text :
        List.of(
            "next 2 s", "until 2", "next", "until 3.20", "next", "until 130", "next", "start")) {
      keys.addAll(KeyText.read(text));
    }
    Rehearsal.Course course = play(keypad, program, keys);
    assertThat(course.firstWrong()).hasValue(6);
    assertThat(course.played().get(6).wrong()).contains("segment 1 rate took 130; it must be 120.");
    assertThat(course.played().get(7).does()).as("there is no start key here").isFalse();
    assertThat(course.done()).isFalse();
  }

  @Test
  void keysAreReadAsPeopleWriteThem() {
    assertThat(KeyText.read("3 x up")).hasSize(3).allMatch(k -> KeyText.write(k).equals("up"));
    assertThat(KeyText.read("730").stream().map(KeyText::write)).containsExactly("7", "3", "0");
    assertThat(KeyText.read("next 2.5 s").stream().map(KeyText::write))
        .containsExactly("next 2.5 s");
    assertThat(KeyText.read("spin -12").stream().map(KeyText::write)).containsExactly("spin -12");
    assertThatThrownBy(() -> KeyText.read("nxt"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith("\"nxt\" is no key; expected");
  }
}
