package org.heatwright.keypad.keying;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.UnitTrap;
import org.heatwright.keypad.machine.KeypadMachine;
import org.heatwright.schedule.Schedule;
import org.heatwright.units.TemperatureUnit;

/**
 * How to key a program: one line a prompt, with what the display shows before, what to press and
 * what it must show after, in the least time that the keypad allows.
 *
 * <p>The way is a shortest path over the interpreter's states ({@link KeyingSearch}), each value by
 * the quickest way that forgives a late release ({@link Moves}). What a slot holds already is left
 * standing, and where the keypad lets one save before the last value, one does.
 */
public final class KeyingPlanner {

  private KeyingPlanner() {}

  /**
   * @param program what to key; must fit
   * @param keypad the keypad it was fitted to
   * @param slot 1 to the keypad's slots
   * @param held what the slot holds now, if that is known: values that stand there are left
   * @throws IllegalArgumentException if the program does not fit or there is no such slot
   */
  public static KeyingSheet plan(
      FittedProgram program, Keypad keypad, int slot, Optional<Schedule> held) {
    return plan(program, new Hand(new KeypadMachine(keypad), KeyingTimes.OCCASIONAL), slot, held);
  }

  /** As above, by a hand that may have keyed other programs on this keypad before. */
  static KeyingSheet plan(FittedProgram program, Hand hand, int slot, Optional<Schedule> held) {
    Keypad keypad = hand.machine().keypad();
    program.requireFits();
    if (slot < 1 || slot > keypad.slots()) {
      throw new IllegalArgumentException(
          "There is no slot %d: the keypad has slots 1 to %d.".formatted(slot, keypad.slots()));
    }
    SheetWriter sheet = new SheetWriter(program, slot, hand);
    unit(program, keypad, sheet);
    KeyingSearch search = new KeyingSearch(program, hand, Known.of(program, hand.machine(), held));
    sheet.keyed(search.quickest());
    sheet.review();
    return sheet.sheet();
  }

  private static void unit(FittedProgram program, Keypad keypad, SheetWriter sheet) {
    TemperatureUnit unit = program.unit();
    UnitTrap trap = UnitTrap.of(program, keypad);
    String worst =
        trap.worst().map(t -> " Segment %d: %s".formatted(t.segment(), t.meaning())).orElse("");
    if (!keypad.units().switchable()) {
      if (trap.springs()) {
        sheet.tell(
            "unit in force",
            "nothing; key the numbers of this sheet, not those of the schedule",
            unit.symbol(),
            "The keypad would take the schedule's numbers as well." + worst);
      }
      return;
    }
    if (keypad.units().asked().isPresent()) {
      if (trap.springs()) {
        sheet.tell(
            "unit",
            "nothing yet: it is the first value of the program",
            unit.symbol(),
            "The keypad would take these numbers in the other unit as well." + worst);
      }
      return;
    }
    String where =
        keypad.units().shownAt().stream()
            .sorted()
            .map(p -> p.name().toLowerCase(Locale.ROOT))
            .collect(Collectors.joining(" or "));
    String look = where.isEmpty() ? "" : "look at the unit (" + where + " display); ";
    String settle =
        trap.needsUnitCheck()
            ? "settle the unit by the cold kiln's reading against a thermometer; "
            : "";
    String how =
        keypad.gestures().switchUnit().isEmpty()
            ? ""
            : " (" + keypad.gestures().switchUnit().words() + ")";
    sheet.look(
        "unit in force",
        look + settle + "if it is " + unit.other().symbol() + ", switch it first" + how,
        unit.symbol(),
        trap.springs()
            ? "The keypad would take these numbers in the other unit as well." + worst
            : "every number of this sheet is in it");
  }
}
