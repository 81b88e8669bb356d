package org.heatwright.keypad.keying;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.heatwright.keypad.Scale;
import org.heatwright.keypad.machine.Display;
import org.heatwright.keypad.machine.KeyAction;
import org.heatwright.keypad.machine.KeyJudge;
import org.heatwright.keypad.machine.KeypadMachine;
import org.heatwright.keypad.machine.MachineState;
import org.heatwright.keypad.machine.Where;

/** Plays keys on the interpreter and marks the first wrong one. */
public final class Rehearsal {

  private Rehearsal() {}

  /**
   * One instruction, played.
   *
   * @param instruction which
   * @param display what the display shows after it
   * @param does whether it did anything
   * @param wrong why it was wrong; empty if it was not
   */
  public record Played(
      Instruction instruction, Display display, boolean does, Optional<String> wrong) {}

  /**
   * What came of it.
   *
   * @param played in order
   * @param firstWrong index of the first wrong instruction, if there is one
   * @param end the keypad at the end
   * @param done whether the slot holds the plan then, and nothing is under way
   */
  public record Course(
      List<Played> played, OptionalInt firstWrong, MachineState end, boolean done) {

    public Course {
      played = List.copyOf(played);
    }
  }

  /**
   * @param machine the keypad
   * @param judge says what is wrong
   * @param from where the keypad stands
   * @param instructions what to press
   * @throws IllegalArgumentException if a display can never come to show what it should
   */
  public static Course play(
      KeypadMachine machine, KeyJudge judge, MachineState from, List<Instruction> instructions) {
    Hand hand = new Hand(machine, KeyingTimes.OCCASIONAL);
    List<Played> played = new ArrayList<>();
    OptionalInt firstWrong = OptionalInt.empty();
    MachineState state = from;
    for (Instruction instruction : instructions) {
      MachineState before = state;
      Optional<String> wrong = Optional.empty();
      for (KeyAction key : keys(hand, state, instruction)) {
        MachineState after = machine.press(state, key);
        MachineState pressed = state;
        wrong = wrong.or(() -> judge.wrong(pressed, key, after));
        state = after;
      }
      if (firstWrong.isEmpty() && wrong.isPresent()) {
        firstWrong = OptionalInt.of(played.size());
      }
      // Nothing need be pressed where the display shows it already.
      boolean does = instruction instanceof Instruction.Until || !state.equals(before);
      played.add(new Played(instruction, machine.display(state), does, wrong));
    }
    return new Course(played, firstWrong, state, judge.isDone(state));
  }

  /** An instruction in keys, from where the keypad stands. */
  public static List<KeyAction> keys(
      KeypadMachine machine, MachineState state, Instruction instruction) {
    return keys(new Hand(machine, KeyingTimes.OCCASIONAL), state, instruction);
  }

  static List<KeyAction> keys(Hand hand, MachineState state, Instruction instruction) {
    if (instruction instanceof Instruction.Press press) {
      return List.of(press.action());
    }
    KeypadMachine machine = hand.machine();
    String shows = ((Instruction.Until) instruction).shows();
    Moves moves = moves(hand, state);
    Scale scale = moves.scale();
    int from = scale.positionOf(machine.display(state).value()).orElse(scale.leastNumber());
    int to =
        scale
            .positionOf(shows)
            .orElseThrow(
                () ->
                    new IllegalArgumentException(
                        "The display cannot come to show %s here.".formatted(shows)));
    return moves.between(from, to).actions();
  }

  private static Moves moves(Hand hand, MachineState state) {
    KeypadMachine machine = hand.machine();
    if (state.where() instanceof Where.Value value) {
      return hand.at(machine.keypad().places().get(value.place()), state.unit());
    }
    if (state.where() instanceof Where.Choosing) {
      return hand.atSlots();
    }
    throw new IllegalArgumentException(
        "There is no value to make while the display shows %s."
            .formatted(machine.display(state).words()));
  }
}
