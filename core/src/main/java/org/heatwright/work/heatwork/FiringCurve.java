package org.heatwright.work.heatwork;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;

/** A temperature over time, straight between points. Immutable; what is read out is a copy. */
public final class FiringCurve {

  private final double[] seconds;
  private final double[] celsius;

  private FiringCurve(double[] seconds, double[] celsius) {
    this.seconds = seconds;
    this.celsius = celsius;
  }

  /**
   * By points.
   *
   * @param seconds never falling, s, at least one
   * @param celsius at each, °C
   */
  public static FiringCurve of(double[] seconds, double[] celsius) {
    if (seconds.length == 0 || seconds.length != celsius.length) {
      throw new IllegalArgumentException(
          "A curve needs one temperature a time, not %d times and %d temperatures."
              .formatted(seconds.length, celsius.length));
    }
    for (int i = 1; i < seconds.length; i++) {
      if (!(seconds[i] >= seconds[i - 1])) {
        throw new IllegalArgumentException(
            "The curve's times must not fall (%s s, then %s s)."
                .formatted(seconds[i - 1], seconds[i]));
      }
    }
    return new FiringCurve(seconds.clone(), celsius.clone());
  }

  /**
   * A schedule on paper: every ramp at its rate, every hold as written, nothing after the end.
   *
   * @param start where it begins
   * @param fastest what <i>fastest</i> comes to
   * @throws IllegalArgumentException where the schedule says <i>fastest</i> and nobody says what
   *     that is
   */
  public static FiringCurve onPaper(
      Schedule schedule, Temperature start, Optional<HeatingRate> fastest) {
    List<double[]> points = new ArrayList<>();
    points.add(new double[] {0, start.celsius()});
    double second = 0;
    Temperature at = start;
    int number = 0;
    for (Segment segment : schedule.segments()) {
      number++;
      int here = number;
      TemperatureChange way = segment.target().minus(at);
      if (way.kelvins() != 0) {
        HeatingRate rate =
            segment
                .ramp()
                .rate()
                .or(() -> fastest)
                .orElseThrow(
                    () ->
                        new IllegalArgumentException(
                            "Segment %d of %s goes as fast as the kiln can, which paper cannot know."
                                .formatted(here, schedule.name())));
        second += Math.abs(way.kelvins()) / rate.kelvinsPerHour() * 3600;
        points.add(new double[] {second, segment.target().celsius()});
      }
      second += segment.hold().toSeconds();
      points.add(new double[] {second, segment.target().celsius()});
      at = segment.target();
    }
    return new FiringCurve(
        points.stream().mapToDouble(p -> p[0]).toArray(),
        points.stream().mapToDouble(p -> p[1]).toArray());
  }

  public double[] seconds() {
    return seconds.clone();
  }

  public double[] celsius() {
    return celsius.clone();
  }
}
