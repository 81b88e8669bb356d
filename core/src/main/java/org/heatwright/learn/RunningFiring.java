package org.heatwright.learn;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.forecast.Forecaster;
import org.heatwright.forecast.SegmentForecast;
import org.heatwright.kiln.Learned;
import org.heatwright.units.Temperature;

/**
 * A firing that is under way, watched by hand: what the display says at clock times moves the
 * forecast, and is judged.
 */
public final class RunningFiring {

  /** A display that has climbed less than this has not begun to heat, K. */
  private static final double NOT_BEGUN_KELVINS = 15;

  /** Where it should have climbed by this at least, K. */
  private static final double SHOULD_HAVE_KELVINS = 40;

  /** A fit that misses the readings by more than this explains nothing, K. */
  private static final double UNEXPLAINED_KELVINS = 20;

  // A reading so far above its band, or below it, and so many of its widths, is of no likely kiln,
  // K. A weak kiln that no longer follows falls back further than a controller lets one run ahead.
  private static final double FAR_ABOVE_KELVINS = 40;
  private static final double FAR_BELOW_KELVINS = 150;
  private static final double FAR_WIDTHS = 2;

  /** What a display shows this early is about what the kiln started at, s. Our estimate. */
  private static final double HOT_START_SECONDS = 300;

  /** A reading may be out of its band by a digit and still be inside, K. */
  private static final double LAST_DIGIT_KELVINS = 1;

  private RunningFiring() {}

  /** What the last reading means. */
  public enum Verdict {
    /** Inside the band. */
    NORMAL,
    /** Colder than the band. */
    BEHIND,
    /** Hotter than the band. */
    AHEAD,
    /** As cold as at the start: the delay still runs, it was not started, or the sensor is out. */
    NOT_HEATING,
    /** Unlike any likely kiln: another program, a door, the mains, the sensor. */
    ODD
  }

  /**
   * A reading and what was expected.
   *
   * @param seconds s from the program's start
   * @param celsius what the display said, °C
   * @param expectedCelsius what the forecast before said it would
   */
  public record Judged(double seconds, double celsius, Band expectedCelsius) {
    /** Whether it is inside what was expected. */
    public boolean inside() {
      return celsius >= expectedCelsius.low() - LAST_DIGIT_KELVINS
          && celsius <= expectedCelsius.high() + LAST_DIGIT_KELVINS;
    }

    /** Whether it is hotter than any likely kiln shows: a relay that sticks may be behind it. */
    public boolean farAbove() {
      return celsius > expectedCelsius.high() + Math.max(FAR_ABOVE_KELVINS, widths());
    }

    private boolean likely() {
      return !farAbove()
          && celsius >= expectedCelsius.low() - Math.max(FAR_BELOW_KELVINS, widths());
    }

    private double widths() {
      return FAR_WIDTHS * (expectedCelsius.high() - expectedCelsius.low());
    }
  }

  /**
   * @param forecast with the readings; the one before where they cannot be believed
   * @param before without them
   * @param readings each judged
   * @param verdict on the last one
   */
  public record Update(Forecast forecast, Forecast before, List<Judged> readings, Verdict verdict) {
    public Update {
      readings = List.copyOf(readings);
    }

    /** The last reading. */
    public Judged last() {
      return readings.get(readings.size() - 1);
    }

    /** Whether the readings have moved the forecast. */
    public boolean believed() {
      return verdict != Verdict.NOT_HEATING && verdict != Verdict.ODD;
    }
  }

  /**
   * Updates a forecast by what the display said. Readings far outside their bands move nothing:
   * neither a slip of the pen nor a kiln that runs away is a kiln to forecast. Where nobody stated
   * the start, the first of several readings may tell that the kiln was hot: the rest is judged
   * from there.
   *
   * @param request the firing; what was learned of its kiln before counts
   * @param seen one reading or more, s from the program's start
   */
  public static Update update(ForecastRequest request, Readings seen) {
    Forecast before = Forecaster.forecast(request);
    List<Judged> judged = new ArrayList<>();
    for (int i = 0; i < seen.size(); i++) {
      judged.add(
          new Judged(
              seen.second(i), seen.celsius(i), before.trace().displayCelsiusAt(seen.second(i))));
    }
    Judged last = judged.get(judged.size() - 1);
    double room = request.conditions().room().orElse(request.kiln().room()).celsius();
    double coldest =
        judged.stream().mapToDouble(Judged::celsius).min().orElse(Double.POSITIVE_INFINITY);
    // Of several readings the coldest tells where a warm kiln began, if nobody stated it.
    double start =
        request
            .conditions()
            .start()
            .map(Temperature::celsius)
            .orElse(judged.size() > 1 ? Math.max(room, coldest) : room);
    if (Math.abs(last.celsius() - start) < NOT_BEGUN_KELVINS
        && last.expectedCelsius().low() > start + SHOULD_HAVE_KELVINS) {
      return new Update(before, before, judged, Verdict.NOT_HEATING);
    }
    Judged first = judged.get(0);
    if (request.conditions().start().isEmpty()
        && judged.size() > 1
        && first.seconds() <= HOT_START_SECONDS
        && first.farAbove()) {
      Temperature hot = Temperature.ofCelsius(first.celsius());
      Update update = update(request.withConditions(request.conditions().starting(hot)), seen);
      Forecast after = update.believed() ? update.forecast() : before;
      return new Update(after, before, update.readings(), update.verdict());
    }
    if (!last.likely()) {
      return new Update(before, before, judged, Verdict.ODD);
    }
    Lesson lesson =
        KilnLearner.update(
            request.kiln(),
            new LoggedFiring(
                "now", request.schedule(), request.conditions(), request.charge(), likely(judged)));
    if (lesson.misfitKelvins(0) > UNEXPLAINED_KELVINS) {
      return new Update(before, before, judged, Verdict.ODD);
    }
    Learned learned =
        new Learned(
            request.kiln().learned().map(Learned::date).orElse(LocalDate.EPOCH),
            request.kiln().learned().map(Learned::firings).orElse(0) + 1,
            Learned.ENGINE,
            lesson.beliefs());
    Forecast after = Forecaster.forecast(request.withKiln(request.kiln().withLearned(learned)));
    Verdict verdict =
        last.inside()
            ? Verdict.NORMAL
            : last.celsius() < last.expectedCelsius().low() ? Verdict.BEHIND : Verdict.AHEAD;
    return new Update(after, before, judged, verdict);
  }

  private static Readings likely(List<Judged> judged) {
    List<Judged> likely = judged.stream().filter(Judged::likely).toList();
    return Readings.of(
        likely.stream().mapToDouble(Judged::seconds).toArray(),
        likely.stream().mapToDouble(Judged::celsius).toArray());
  }

  /** When the work, or the program where there is none, is later or earlier than before, s. */
  public static Optional<Double> movedSeconds(Update update) {
    Optional<Band> now = update.forecast().workReadySeconds();
    Optional<Band> then = update.before().workReadySeconds();
    if (update.forecast().work().isEmpty()) {
      return likelyEnds(update.forecast()) && likelyEnds(update.before())
          ? Optional.of(
              update.forecast().endSeconds().median() - update.before().endSeconds().median())
          : Optional.empty();
    }
    return now.flatMap(n -> then.map(t -> n.median() - t.median()));
  }

  /** Where in most cases the program never ends, its end is only when the simulation gave up. */
  private static boolean likelyEnds(Forecast forecast) {
    return SegmentForecast.hasMedian(forecast.endsShare());
  }
}
