package org.heatwright.keypad.machine;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.KeyedValue;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.Place;

/**
 * Says of a key in the rehearsal whether it was wrong, and why. It judges what a key did, not
 * whether the sheet has the same one: every way that leads to the plan is right, and a value is
 * judged when it is taken, not while it is made.
 */
public final class KeyJudge {

  private final KeypadMachine machine;
  private final Keypad keypad;
  private final FittedProgram program;
  private final int slot;
  private final Map<Integer, KeyedValue> planned = new HashMap<>();

  /**
   * @param program what is to be keyed; must fit the machine's keypad
   * @param slot where
   */
  public KeyJudge(KeypadMachine machine, FittedProgram program, int slot) {
    this.machine = machine;
    this.keypad = machine.keypad();
    this.program = program;
    this.slot = slot;
    List<Place> places = keypad.places();
    for (KeyedValue value : program.values()) {
      planned.put(places.indexOf(Place.of(value, keypad)), value);
    }
  }

  /** Whether the slot holds the plan and nothing is under way any more. */
  public boolean isDone(MachineState state) {
    boolean atRest = state.where() instanceof Where.Idle || state.where() instanceof Where.Running;
    return atRest && machine.contents(state, slot).holds(program, keypad);
  }

  /** Why a key was wrong; empty if it was not. */
  public Optional<String> wrong(MachineState before, KeyAction action, MachineState after) {
    if (after.unit() != program.unit() && keypad.units().asked().isEmpty()) {
      return Optional.of("that switched the unit; it must be " + program.unit().symbol() + ".");
    }
    if (before.where() instanceof Where.Choosing choosing) {
      return choosing(choosing, after);
    }
    if (after.where() instanceof Where.Choosing choosing
        && choosing.then() == Where.Then.START
        && !isDone(before)) {
      return Optional.of("that starts a program, and yours is not in slot " + slot + " yet.");
    }
    if (before.where() instanceof Where.Review && !before.slots().equals(after.slots())) {
      return Optional.of("during the review that key changes what is stored.");
    }
    if (before.where() instanceof Where.Value value) {
      return value(before, value, action, after);
    }
    return Optional.empty();
  }

  private Optional<String> choosing(Where.Choosing choosing, MachineState after) {
    boolean chosen =
        !(after.where() instanceof Where.Choosing || after.where() instanceof Where.Idle);
    if (chosen && after.slot() != slot) {
      return Optional.of(
          "that chose slot " + after.slot() + "; the program belongs in slot " + slot + ".");
    }
    boolean refused =
        !choosing.typed().isEmpty()
            && after.where() instanceof Where.Choosing now
            && now.typed().isEmpty()
            && now.number() == choosing.number();
    return refused ? Optional.of("there is no slot " + choosing.typed() + ".") : Optional.empty();
  }

  private Optional<String> value(
      MachineState before, Where.Value value, KeyAction action, MachineState after) {
    Contents draft = before.draft().orElseThrow();
    Optional<Contents> next = after.draft();
    if (next.isPresent()) {
      Optional<String> taken = taken(draft, next.orElseThrow());
      if (taken.isPresent()) {
        return taken;
      }
      Optional<String> passed = passed(before, value, action, after);
      if (passed.isPresent()) {
        return passed;
      }
    }
    if (keypad.programming().commits() == Keypad.Commits.ACCEPTING) {
      return next.isEmpty() && !isDone(after) ? early("left programming", after) : Optional.empty();
    }
    boolean saved = !before.slots().equals(after.slots());
    if (saved && !machine.contents(after, slot).holds(program, keypad)) {
      return early(after.where() instanceof Where.Running ? "started the kiln" : "saved", after);
    }
    if (!saved && next.isEmpty() && !before.saved() && !isDone(after)) {
      return Optional.of("that left programming without saving; what was keyed is lost.");
    }
    return Optional.empty();
  }

  /** A value that was taken and is not the plan's. */
  private Optional<String> taken(Contents before, Contents after) {
    for (int i = 0; i < after.texts().size(); i++) {
      String text = after.texts().get(i);
      if (!text.equals(before.texts().get(i)) && differs(i, text)) {
        return Optional.of("%s took %s; it must be %s.".formatted(words(i), text, digits(i)));
      }
    }
    return Optional.empty();
  }

  /** A value that was passed over as it stood, or one that was typed and refused. */
  private Optional<String> passed(
      MachineState before, Where.Value value, KeyAction action, MachineState after) {
    boolean accepts = action.press().key() == keypad.accept() && value.open();
    if (!accepts || !(after.where() instanceof Where.Value now)) {
      return Optional.empty();
    }
    boolean refused =
        !value.typed().isEmpty() && now.place() == value.place() && now.typed().isEmpty();
    String kept = after.draft().orElseThrow().texts().get(value.place());
    if (refused
        && kept.equals(before.draft().orElseThrow().texts().get(value.place()))
        && differs(value.place(), kept)) {
      return Optional.of("the keypad does not take " + value.typed() + " here.");
    }
    boolean onward =
        now.place() > value.place()
            && keypad.programming().navigation() == Keypad.Navigation.SEQUENCE;
    return onward && differs(value.place(), kept)
        ? Optional.of(
            "%s still reads %s; it must be %s."
                .formatted(words(value.place()), kept, digits(value.place())))
        : Optional.empty();
  }

  private Optional<String> early(String did, MachineState after) {
    Contents contents = machine.contents(after, slot);
    for (int i = 0; i < contents.texts().size(); i++) {
      if (differs(i, contents.texts().get(i))) {
        return Optional.of(
            "that %s too early: %s reads %s; it must be %s."
                .formatted(did, words(i), contents.texts().get(i), digits(i)));
      }
    }
    return Optional.empty();
  }

  private boolean differs(int place, String text) {
    KeyedValue value = planned.get(place);
    return value != null && !value.digits().equals(text);
  }

  private String digits(int place) {
    KeyedValue value = planned.get(place);
    return value == null ? "" : value.digits();
  }

  private String words(int place) {
    return keypad.places().get(place).words();
  }
}
