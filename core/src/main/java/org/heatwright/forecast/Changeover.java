package org.heatwright.forecast;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;

/**
 * How long a kiln and the moulds in it take from one temperature to another.
 *
 * @param kilnMinutes until the display has arrived, zero or more
 * @param settleMinutes from then until every core is there too, zero or more
 */
public record Changeover(double kilnMinutes, double settleMinutes) {

  /** The moulds have stood at the first temperature for so long. Our choice. */
  private static final Duration STOOD = Duration.ofHours(2);

  /** Cores are not waited for longer than this. Our choice. */
  private static final Duration LONGEST = Duration.ofHours(8);

  private static final int DRAWS = 16;

  public Changeover {
    if (!(kilnMinutes >= 0 && kilnMinutes < Double.POSITIVE_INFINITY)
        || !(settleMinutes >= 0 && settleMinutes < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException(
          "A kiln's and its cores' time between temperatures must be zero or more minutes (%s, %s)."
              .formatted(kilnMinutes, settleMinutes));
    }
  }

  /** At a plain rate, with a plain time to settle. */
  public static Changeover atRate(
      Temperature from, Temperature to, HeatingRate rate, double settleMinutes) {
    return new Changeover(
        60 * Math.abs(from.minus(to).kelvins()) / rate.kelvinsPerHour(), settleMinutes);
  }

  /**
   * By forecast: after the firing up to its hottest target the kiln goes to the first temperature
   * and stands there, then to the second. Both times are such that nine in ten likely kilns and
   * cores, or more, are there by then.
   *
   * @param firing a firing with moulds
   * @param rate how fast the program lets the kiln fall or rise; empty: as it will
   * @return empty if the kiln or some core does not get there within eight hours in every draw
   */
  public static Optional<Changeover> forecast(
      ForecastRequest firing, Temperature from, Temperature to, Optional<HeatingRate> rate) {
    Ramp ramp = rate.map(Ramp::at).orElseGet(Ramp::fastest);
    List<Segment> segments = new ArrayList<>(upToTheTop(firing.schedule()));
    segments.add(new Segment(ramp, from, STOOD));
    segments.add(new Segment(ramp, to, LONGEST));
    Forecast forecast =
        Forecaster.forecast(
            firing
                .withSchedule(
                    Schedule.of(firing.schedule().name(), firing.schedule().unit(), segments))
                .withDraws(Math.min(DRAWS, firing.draws())));
    int last = segments.size() - 1;
    double leaves = forecast.segments().get(last - 1).endSeconds().median();
    return forecast
        .segments()
        .get(last)
        .arrivedSeconds()
        .flatMap(
            arrived ->
                forecast
                    .workReadySeconds()
                    .map(
                        ready ->
                            new Changeover(
                                Math.max(0, arrived.high() - leaves) / 60,
                                Math.max(0, ready.high() - arrived.high()) / 60)));
  }

  private static List<Segment> upToTheTop(Schedule schedule) {
    List<Segment> segments = schedule.segments();
    int top = 0;
    for (int i = 1; i < segments.size(); i++) {
      if (segments.get(i).target().compareTo(segments.get(top).target()) > 0) {
        top = i;
      }
    }
    return segments.subList(0, top + 1);
  }
}
