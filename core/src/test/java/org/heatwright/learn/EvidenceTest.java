package org.heatwright.learn;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.heatwright.forecast.Charge;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.KilnQuantity;
import org.heatwright.kiln.TestKilns;
import org.heatwright.material.HeatCurves;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Test;

class EvidenceTest {

  /**
   * A log that ends in a long hold of an on-off kiln: the last of the means that are fitted is of
   * an hour, and its middle long before the last reading.
   */
  @Test
  void aRunLastsAsLongAsTheReadingsDo() {
    Kiln kiln = TestKilns.fibreMuffle();
    Schedule schedule =
        Schedule.of(
            "hold",
            TemperatureUnit.CELSIUS,
            List.of(new Segment(Ramp.fastest(), Temperature.ofCelsius(700), Duration.ofHours(4))));
    double[] seconds = IntStream.range(0, 3 * 360).mapToDouble(i -> 10 * i).toArray();
    double[] celsius = new double[seconds.length];
    for (int i = 0; i < seconds.length; i++) {
      double swing = 8 * Math.sin(2 * Math.PI * seconds[i] / 300);
      celsius[i] = seconds[i] < 1200 ? 20 + 680 * seconds[i] / 1200 : 700 + swing;
    }
    LoggedFiring firing =
        new LoggedFiring(
            "log",
            schedule,
            FiringConditions.usual(),
            Charge.empty(),
            Readings.of(seconds, celsius));
    Evidence evidence = Evidence.byItself(kiln, firing, new HeatCurves());
    double[] scores = new double[KilnQuantity.values().length];
    double last = firing.readings().lastSecond();
    assertThat(evidence.seen().lastSecond()).isLessThan(last - 1200);
    assertThat(evidence.run(scores, 0, FiringConditions.usual(), Optional.empty()).lastSecond())
        .isGreaterThanOrEqualTo(last);
  }
}
