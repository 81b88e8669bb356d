package org.heatwright.keypad.keying;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.KeyedValue;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.KeypadFit;
import org.heatwright.keypad.Place;
import org.heatwright.keypad.Scale;
import org.heatwright.keypad.machine.Contents;
import org.heatwright.keypad.machine.KeypadMachine;
import org.heatwright.schedule.Schedule;

/**
 * What is known of a slot before keying.
 *
 * @param contents what is taken to stand there; where nothing is known the middle of the scale
 * @param places indices of the places that are known
 */
record Known(Contents contents, Set<Integer> places) {

  Known {
    places = Set.copyOf(places);
  }

  /**
   * A slot that was keyed in the other unit may or may not have been converted: not known. Where a
   * program asks its own unit, its times and its unit are known all the same, and its numbers too
   * if choosing another unit leaves them.
   */
  static Known of(FittedProgram program, KeypadMachine machine, Optional<Schedule> held) {
    Keypad keypad = machine.keypad();
    List<Place> places = keypad.places();
    Contents contents = machine.blank(program.unit());
    for (int i = 0; i < places.size(); i++) {
      Scale scale = machine.scale(places.get(i), program.unit());
      contents = contents.with(i, scale.text(scale.size() / 2));
    }
    boolean asked = keypad.units().asked().isPresent();
    Optional<FittedProgram> fitted =
        held.filter(h -> asked || keypad.unitFor(h.unit()) == program.unit())
            .map(h -> KeypadFit.fit(h, keypad))
            .filter(FittedProgram::fits);
    if (fitted.isEmpty()) {
      return new Known(contents, Set.of());
    }
    Set<Integer> known = new HashSet<>();
    boolean other =
        fitted.get().unit() != program.unit()
            && keypad.units().switchingConverts() != Keypad.UnitSetting.SwitchingConverts.NO;
    for (KeyedValue value : fitted.get().values()) {
      boolean degrees =
          value.kind() == KeyedValue.Kind.RATE || value.kind() == KeyedValue.Kind.TARGET;
      if (!(other && degrees)) {
        known.add(places.indexOf(Place.of(value, keypad)));
      }
    }
    return new Known(Contents.of(fitted.get(), keypad, contents), known);
  }
}
