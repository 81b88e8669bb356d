package org.heatwright.work;

import java.util.Optional;
import org.heatwright.inspect.Wording;
import org.heatwright.keypad.Keypad;
import org.heatwright.kiln.Kiln;
import org.heatwright.schedule.ProgramLimits;
import org.heatwright.schedule.Schedule;
import org.heatwright.units.TemperatureUnit;

/** Makes a schedule for a piece of work, by rules of practice and the maker's data sheet. */
public final class Composer {

  private Composer() {}

  /**
   * A schedule for the work, in round numbers, for this kiln and keypad.
   *
   * @param work what is to be fired
   * @param kiln where; its limit is never passed
   * @param keypad on what it will be keyed in, if known: its unit and its limits are kept to
   * @throws WorkRefusedException if Heatwright will not plan this work
   */
  public static Composition compose(Work work, Kiln kiln, Optional<Keypad> keypad) {
    TemperatureUnit unit =
        keypad.map(k -> k.unitFor(TemperatureUnit.CELSIUS)).orElse(TemperatureUnit.CELSIUS);
    try {
      Composition composition = compose(work, kiln, unit, keypad);
      requireShort(composition.schedule());
      return composition;
    } catch (WorkRefusedException refused) {
      throw new WorkRefusedException(Wording.in(String.valueOf(refused.getMessage()), unit));
    }
  }

  private static void requireShort(Schedule schedule) {
    ProgramLimits.beyond(schedule.segments())
        .ifPresent(
            beyond -> {
              throw new WorkRefusedException(
                  "With segment %d the program for this work comes to %s; a program is %s. Look for a slip in the work's holds, rates and sizes."
                      .formatted(beyond.segment(), beyond.what(), beyond.expected()));
            });
  }

  private static Composition compose(
      Work work, Kiln kiln, TemperatureUnit unit, Optional<Keypad> keypad) {
    if (work instanceof BurnoutWork burnout) {
      return BurnoutComposer.compose(burnout, kiln, unit, keypad);
    }
    if (work instanceof GlassWork glass) {
      return GlassComposer.compose(glass, kiln, unit, keypad);
    }
    if (work instanceof HeatTreatWork treatment) {
      return HeatTreatComposer.compose(treatment, kiln, unit, keypad);
    }
    if (work instanceof SinterWork sinter) {
      return SinterComposer.compose(sinter, kiln, unit, keypad);
    }
    return EnamelComposer.compose((EnamelWork) work, kiln, unit, keypad);
  }
}
