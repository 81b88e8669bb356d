package org.heatwright.keypad.keying;

import java.util.ArrayList;
import java.util.List;
import org.heatwright.keypad.Scale;
import org.heatwright.keypad.machine.Display;
import org.heatwright.keypad.machine.KeyAction;
import org.heatwright.keypad.machine.KeypadMachine;
import org.heatwright.keypad.machine.MachineState;
import org.heatwright.keypad.machine.Where;

/** Follows a keying sheet on the interpreter, key by key. */
public final class SheetPlayer {

  private SheetPlayer() {}

  /**
   * One step of a sheet, followed.
   *
   * @param step which
   * @param before the display when it begins
   * @param made the display once the value is made, before it is taken
   * @param after the display when the step is done
   * @param keys the keys that were pressed
   * @param state the keypad when the step is done
   */
  public record Beat(
      KeyingStep step,
      Display before,
      Display made,
      Display after,
      List<KeyAction> keys,
      MachineState state) {

    public Beat {
      keys = List.copyOf(keys);
    }
  }

  /**
   * @param sheet what to follow
   * @param machine the keypad it was written for
   * @param from where the keypad stands, idle
   * @return one beat a step, in order; steps that press nothing leave the keypad as it is
   * @throws IllegalArgumentException if a value cannot be made from where the keypad stands
   */
  public static List<Beat> follow(KeyingSheet sheet, KeypadMachine machine, MachineState from) {
    List<Beat> beats = new ArrayList<>();
    MachineState state = from;
    for (KeyingStep step : sheet.steps()) {
      List<KeyAction> keys = new ArrayList<>();
      MachineState made = press(machine, state, step.make(), keys);
      MachineState after = press(machine, made, step.go(), keys);
      beats.add(
          new Beat(
              step,
              machine.display(state),
              machine.display(made),
              machine.display(after),
              keys,
              after));
      state = after;
    }
    return beats;
  }

  private static MachineState press(
      KeypadMachine machine,
      MachineState from,
      List<Instruction> instructions,
      List<KeyAction> pressed) {
    MachineState state = from;
    for (Instruction instruction : instructions) {
      for (KeyAction key : keys(machine, state, instruction)) {
        state = machine.press(state, key);
        pressed.add(key);
      }
    }
    return state;
  }

  /** An instruction in keys, from where the keypad stands. */
  private static List<KeyAction> keys(
      KeypadMachine machine, MachineState state, Instruction instruction) {
    if (instruction instanceof Instruction.Press press) {
      return List.of(press.action());
    }
    String shows = ((Instruction.Until) instruction).shows();
    Scale scale = scale(machine, state);
    int from = scale.positionOf(machine.display(state).value()).orElse(scale.leastNumber());
    int to =
        scale
            .positionOf(shows)
            .orElseThrow(
                () ->
                    new IllegalArgumentException(
                        "The display cannot come to show %s here.".formatted(shows)));
    return new Moves(machine.keypad().entry(), scale, KeyingTimes.OCCASIONAL)
        .between(from, to)
        .actions();
  }

  private static Scale scale(KeypadMachine machine, MachineState state) {
    if (state.where() instanceof Where.Value value) {
      return machine.scale(machine.keypad().places().get(value.place()), state.unit());
    }
    if (state.where() instanceof Where.Choosing) {
      return Scale.numbers(machine.keypad().slots());
    }
    throw new IllegalArgumentException(
        "There is no value to make while the display shows %s."
            .formatted(machine.display(state).words()));
  }
}
