package org.heatwright.keypad.keying;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.KeypadFit;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.TemperatureUnit;

/** Schedules of up to eight segments that a keypad can express. */
final class RandomPrograms {

  private final Random random;

  RandomPrograms(long seed) {
    random = new Random(seed);
  }

  Random random() {
    return random;
  }

  Schedule schedule(Keypad keypad) {
    while (true) {
      List<Segment> segments = new ArrayList<>();
      int count = 1 + random.nextInt(Math.min(8, keypad.segments()));
      TemperatureUnit unit =
          keypad.units().asked().isPresent() && random.nextBoolean()
              ? TemperatureUnit.FAHRENHEIT
              : TemperatureUnit.CELSIUS;
      for (int i = 0; i < count; i++) {
        segments.add(segment(unit));
      }
      Schedule schedule = Schedule.of("random", unit, segments);
      if (random.nextBoolean()) {
        schedule = schedule.withStartDelay(Duration.ofMinutes(10L * random.nextInt(90)));
      }
      FittedProgram fitted = KeypadFit.fit(schedule, keypad);
      if (fitted.fits()) {
        return fitted.expressible();
      }
    }
  }

  private Segment segment(TemperatureUnit unit) {
    Ramp ramp =
        random.nextInt(4) == 0 ? Ramp.fastest() : Ramp.at(unit.rate(60 * (1 + random.nextInt(9))));
    return new Segment(
        ramp,
        unit.temperature(100 + 5 * random.nextInt(180)),
        Duration.ofMinutes(5L * random.nextInt(100)));
  }

  /** The same schedule with one or two segments changed. */
  Schedule changed(Schedule schedule, Keypad keypad) {
    while (true) {
      List<Segment> segments = new ArrayList<>(schedule.segments());
      for (int i = random.nextInt(2); i >= 0; i--) {
        segments.set(random.nextInt(segments.size()), segment(schedule.unit()));
      }
      FittedProgram fitted = KeypadFit.fit(schedule.withSegments(segments), keypad);
      if (fitted.fits()) {
        return fitted.expressible();
      }
    }
  }
}
