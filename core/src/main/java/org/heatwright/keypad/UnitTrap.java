package org.heatwright.keypad;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.heatwright.schedule.Segment;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;
import org.heatwright.units.TemperatureUnit;

/**
 * Numbers that the keypad would take just as well if the other unit were in force or meant: nothing
 * on the display would look wrong, and the kiln would go somewhere else.
 *
 * @param targets one for each segment, in order
 * @param needsUnitCheck whether the unit in force must be settled before the program can count as
 *     proven: the keypad can be in either unit and would take at least one target in both
 */
public record UnitTrap(List<Target> targets, boolean needsUnitCheck) {

  private static final TemperatureChange NOWHERE = TemperatureChange.ofKelvins(0);

  public UnitTrap {
    targets = List.copyOf(targets);
  }

  /**
   * Looks for the trap in a program: for a keypad that can be in either unit, its own numbers in
   * the other one; for a fixed keypad with a schedule in the other unit, the schedule's numbers
   * keyed without converting them.
   */
  public static UnitTrap of(FittedProgram program, Keypad keypad) {
    List<Target> targets = new ArrayList<>();
    boolean switchable = keypad.units().switchable();
    TemperatureUnit written = program.requested().unit();
    for (int i = 0; i < program.expressible().segments().size(); i++) {
      Segment keyed = program.expressible().segments().get(i);
      if (switchable) {
        targets.add(target(i + 1, keyed.target(), program.unit(), program.unit().other(), keypad));
      } else if (written != program.unit()) {
        Segment asked = program.requested().segments().get(i);
        targets.add(target(i + 1, asked.target(), written, program.unit(), keypad));
      } else {
        targets.add(
            new Target(
                i + 1,
                Words.number(program.unit().value(keyed.target())),
                false,
                NOWHERE,
                "The keypad works in %s only.".formatted(program.unit().symbol())));
      }
    }
    return new UnitTrap(targets, switchable && targets.stream().anyMatch(Target::accepted));
  }

  /** The accepted target by which the kiln would go farthest wrong, if any is accepted. */
  public Optional<Target> worst() {
    return targets.stream()
        .filter(Target::accepted)
        .max(Comparator.comparingDouble(t -> Math.abs(t.off().kelvins())));
  }

  /** Whether anything is keyed that the keypad would take in the wrong unit. */
  public boolean springs() {
    return targets.stream().anyMatch(Target::accepted);
  }

  private static Target target(
      int segment, Temperature meant, TemperatureUnit in, TemperatureUnit taken, Keypad keypad) {
    BigDecimal number = BigDecimal.valueOf(in.value(meant));
    Keypad.Range range = keypad.targetRange(taken);
    String digits = Words.number(number);
    // A number off the range's grid would be keyed as the nearest one, so only the bounds count.
    BigDecimal nearest = number.setScale(range.decimals(), RoundingMode.HALF_UP);
    if (nearest.compareTo(range.min()) < 0 || nearest.compareTo(range.greatest()) > 0) {
      return new Target(
          segment,
          digits,
          false,
          NOWHERE,
          "%s %s meant: keyed in %s it is refused, because the keypad takes %s to %s %s."
              .formatted(
                  digits,
                  in.symbol(),
                  taken.symbol(),
                  Words.number(range.min()),
                  Words.number(range.greatest()),
                  taken.symbol()));
    }
    Temperature goesTo = taken.temperature(number.doubleValue());
    double apart = in.value(goesTo.minus(meant));
    return new Target(
        segment,
        digits,
        true,
        goesTo.minus(meant),
        "%s %s meant (%s): keyed in %s it is taken, and the kiln goes to %s, which is %s %s too %s."
            .formatted(
                digits,
                in.symbol(),
                Words.temperature(meant, in.other()),
                taken.symbol(),
                Words.temperature(goesTo, in),
                Math.round(Math.abs(apart)),
                in.symbol(),
                apart > 0 ? "hot" : "cold"));
  }

  /**
   * @param segment 1-based
   * @param digits the number
   * @param accepted whether the keypad would take it in the wrong unit
   * @param off how far from what was meant the kiln would go; nothing if it is not accepted
   * @param meaning what would happen, in words
   */
  public record Target(
      int segment, String digits, boolean accepted, TemperatureChange off, String meaning) {}
}
