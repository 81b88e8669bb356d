package org.heatwright.reference;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.Charge;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.forecast.Forecaster;
import org.heatwright.kiln.Control;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.Learned;
import org.heatwright.learn.KilnLearner;
import org.heatwright.learn.Lesson;
import org.heatwright.learn.LoggedFiring;
import org.heatwright.learn.Readings;
import org.heatwright.schedule.Schedule;

/**
 * Forecasts of random firings of random kilns that the product does not know, beside what happened:
 * once from the nameplate, once after one firing at full power was seen.
 */
final class ForecastStudy {

  /** What the display was doing at a row. */
  enum Mode {
    /** The controller keeps the display near the setpoint. */
    TRACKED,
    /** Full power, and not there yet. */
    SATURATED,
    /** Hotter than asked: cooling on its own. */
    COOLING
  }

  private static final double AWAY_KELVINS = 8;
  private static final int REPEATS = 3;

  private ForecastStudy() {}

  /** How often a display was inside its band, in one mode. */
  static final class Cover {
    int rows;
    int inside;
    double score;
    double width;

    void add(Band band, double shown) {
      double low = band.low();
      double high = band.high();
      rows++;
      if (shown >= low && shown <= high) {
        inside++;
      }
      width += high - low;
      score += high - low + 20 * Math.max(0, Math.max(low - shown, shown - high));
    }

    double share() {
      return rows == 0 ? Double.NaN : inside / (double) rows;
    }
  }

  /**
   * One firing and its forecast.
   *
   * @param learned whether a log was seen before
   * @param arrivals of segments in which the kiln was at full power: truth and band, s
   * @param ends of every segment, s
   */
  record Outcome(
      long seed,
      boolean onOff,
      boolean fibre,
      SchedulePopulation.Family family,
      boolean learned,
      double endSeconds,
      Band end,
      double energyKilowattHours,
      Band energy,
      double rmseKelvins,
      double floorRmseKelvins,
      double floorSeconds,
      Cover[] covers,
      List<Timed> arrivals,
      List<Timed> ends) {}

  /** A time and its band, s. */
  record Timed(double truth, Band band, double floor) {
    boolean inside() {
      // A display row is ten seconds.
      return truth >= band.low() - 10 && truth <= band.high() + 10;
    }
  }

  /** Everything of one seed: a kiln, one firing to learn from, one to forecast twice. */
  static List<Outcome> of(long seed) {
    return of(
        seed,
        SchedulePopulation.Family.SATURATED,
        SchedulePopulation.Family.values()[
            (int) (seed % SchedulePopulation.Family.values().length)]);
  }

  /**
   * The same.
   *
   * @param learned what kind of firing is learned from
   * @param family what kind is forecast
   */
  static List<Outcome> of(
      long seed, SchedulePopulation.Family learned, SchedulePopulation.Family family) {
    RichKiln rich = KilnPopulation.draw(seed);
    Kiln kiln = rich.nameplate();
    Schedule seen = SchedulePopulation.draw(learned, rich, seed + 1000);
    Schedule next = SchedulePopulation.draw(family, rich, seed + 2000);
    FiringConditions seenDay = SchedulePopulation.conditions(seed + 1000);
    FiringConditions nextDay = SchedulePopulation.conditions(seed + 2000);
    Kiln known = kiln.withLearned(learned(learn(rich, seen, seenDay, seed)));
    List<Outcome> outcomes = new ArrayList<>();
    double until =
        1.2
                * Forecaster.forecast(
                        ForecastRequest.of(next, kiln, Charge.empty())
                            .withConditions(nextDay)
                            .withDraws(16))
                    .endSeconds()
                    .high()
            + 3600;
    RichFiring truth = rich.fire(next, nextDay, 0, Optional.empty(), seed + 7, until);
    if (!Double.isFinite(truth.programEndSeconds())) {
      return outcomes; // a target the kiln never reaches
    }
    List<RichFiring> repeats =
        IntStream.range(0, REPEATS)
            .mapToObj(i -> rich.fire(next, nextDay, 0, Optional.empty(), seed + 100 + i, until))
            .toList();
    for (boolean withLog : new boolean[] {false, true}) {
      outcomes.add(
          outcome(seed, withLog ? known : kiln, withLog, family, next, nextDay, truth, repeats));
    }
    return outcomes;
  }

  static Lesson learn(RichKiln rich, Schedule schedule, FiringConditions day, long seed) {
    RichFiring log =
        rich.fire(
            schedule,
            day,
            0,
            Optional.empty(),
            seed + 3,
            Math.max(24_000, SchedulePopulation.untilSecond(schedule, rich)));
    double end = log.programEndSeconds();
    double until = Double.isFinite(end) ? end + 5400 : 30_000;
    return KilnLearner.learn(
        rich.nameplate(),
        List.of(new LoggedFiring("seen", schedule, day, Charge.empty(), readings(log, until))));
  }

  static Learned learned(Lesson lesson) {
    return new Learned(LocalDate.of(2026, 11, 1), 1, Learned.ENGINE, lesson.beliefs());
  }

  /** The display every ten seconds until a time; no rows while the mains were off. */
  static Readings readings(RichFiring firing, double until) {
    int n = Math.min(firing.rows(), firing.rowAt(until) + 1);
    int[] rows = IntStream.range(0, n).filter(i -> firing.powered()[i]).toArray();
    double[] seconds = IntStream.of(rows).mapToDouble(firing::secondsAt).toArray();
    double[] celsius = IntStream.of(rows).mapToDouble(i -> firing.displayCelsius()[i]).toArray();
    return Readings.of(seconds, celsius);
  }

  static Outcome outcome(
      long seed,
      Kiln kiln,
      boolean learned,
      SchedulePopulation.Family family,
      Schedule schedule,
      FiringConditions day,
      RichFiring truth,
      List<RichFiring> repeats) {
    Forecast forecast =
        Forecaster.forecast(ForecastRequest.of(schedule, kiln, Charge.empty()).withConditions(day));
    int last = truth.rowAt(truth.programEndSeconds());
    Cover[] covers = new Cover[Mode.values().length];
    for (int i = 0; i < covers.length; i++) {
      covers[i] = new Cover();
    }
    for (int row = 0; row <= last; row++) {
      double away = truth.setpointCelsius()[row] - truth.sensorCelsius()[row];
      Mode mode =
          away > AWAY_KELVINS
              ? Mode.SATURATED
              : away < -AWAY_KELVINS && kiln.control().kind() == Control.Kind.PID
                  ? Mode.COOLING
                  : Mode.TRACKED;
      if (kiln.control().kind() == Control.Kind.ON_OFF && Math.abs(away) < 45) {
        mode = Mode.TRACKED;
      }
      covers[mode.ordinal()].add(
          forecast.trace().displayCelsiusAt(truth.secondsAt(row)), truth.displayCelsius()[row]);
    }
    double[] mean = new double[last + 1];
    for (int row = 0; row <= last; row++) {
      mean[row] = forecast.trace().displayCelsiusAt(truth.secondsAt(row)).median();
    }
    double floorSum = 0;
    for (RichFiring repeat : repeats) {
      double one = fiveMinuteRmse(repeat.displayCelsius(), truth.displayCelsius(), last);
      floorSum += one * one / repeats.size();
    }
    List<Timed> arrivals = new ArrayList<>();
    List<Timed> ends = new ArrayList<>();
    for (int s = 0; s < schedule.segments().size(); s++) {
      int segment = s;
      double from = s == 0 ? 0 : truth.endSeconds()[s - 1];
      double paper =
          schedule.segments().get(s).ramp().rate().isPresent()
              ? Math.abs(
                      schedule.segments().get(s).target().celsius()
                          - (s == 0
                              ? truth.displayCelsius()[0]
                              : schedule.segments().get(s - 1).target().celsius()))
                  / schedule.segments().get(s).ramp().rate().get().kelvinsPerHour()
                  * 3600
              : 0;
      ends.add(
          new Timed(
              truth.endSeconds()[s],
              forecast.segments().get(s).endSeconds(),
              deviation(repeats.stream().mapToDouble(r -> r.endSeconds()[segment]).toArray())));
      boolean heats =
          schedule.segments().get(s).target().celsius() > truth.displayCelsius()[truth.rowAt(from)];
      if (truth.reachedSeconds()[s] - from > paper + 120 && heats) {
        arrivals.add(
            new Timed(
                truth.reachedSeconds()[s],
                forecast.segments().get(s).reachedSeconds(),
                deviation(
                    repeats.stream().mapToDouble(r -> r.reachedSeconds()[segment]).toArray())));
      }
    }
    return new Outcome(
        seed,
        kiln.control().kind() == Control.Kind.ON_OFF,
        kiln.layers(org.heatwright.kiln.Face.WALLS).get(0).material().name().contains("fibre"),
        family,
        learned,
        truth.programEndSeconds(),
        forecast.endSeconds(),
        truth.energyJoules() / 3.6e6,
        forecast.energyKilowattHours(),
        fiveMinuteRmse(mean, truth.displayCelsius(), last),
        Math.sqrt(floorSum),
        deviation(repeats.stream().mapToDouble(RichFiring::programEndSeconds).toArray()),
        covers,
        arrivals,
        ends);
  }

  private static double deviation(double[] values) {
    double mean = java.util.Arrays.stream(values).average().orElse(0);
    return Math.sqrt(
        java.util.Arrays.stream(values).map(v -> (v - mean) * (v - mean)).sum()
            / (values.length - 1));
  }

  private static double fiveMinuteRmse(double[] a, double[] b, int lastRow) {
    double sum = 0;
    int n = 0;
    for (int from = 0; from + 30 <= lastRow + 1; from += 30) {
      double difference = RichFiring.mean(a, from, from + 30) - RichFiring.mean(b, from, from + 30);
      sum += difference * difference;
      n++;
    }
    return Math.sqrt(sum / n);
  }

  /** All rows of a mode together. */
  static Cover cover(List<Outcome> outcomes, Mode mode) {
    Cover all = new Cover();
    for (Outcome outcome : outcomes) {
      Cover one = outcome.covers()[mode.ordinal()];
      all.rows += one.rows;
      all.inside += one.inside;
      all.width += one.width;
      all.score += one.score;
    }
    return all;
  }

  static double coverage(List<Outcome> outcomes, Mode mode) {
    return cover(outcomes, mode).share();
  }

  /** What came out, for people. */
  static String summary(List<Outcome> all, boolean learned) {
    StringBuilder text = new StringBuilder(learned ? "after one firing" : "nameplate only");
    for (Boolean onOff : new Boolean[] {null, false, true}) {
      List<Outcome> some =
          all.stream()
              .filter(o -> o.learned() == learned && (onOff == null || o.onOff() == onOff))
              .toList();
      if (some.isEmpty()) {
        continue;
      }
      List<Timed> arrivals = some.stream().flatMap(o -> o.arrivals().stream()).toList();
      text.append(
          "%n  %s, %d firings: ends in band %.0f %%, median width %.0f s, median miss %.2f %%, near enough %.0f %%; "
              .formatted(
                  onOff == null ? "all" : onOff ? "on-off" : "proportional",
                  some.size(),
                  percent(some, o -> new Timed(o.endSeconds(), o.end(), 0).inside()),
                  middle(some, o -> o.end().high() - o.end().low()),
                  100 * middle(some, o -> Math.abs(o.end().median() / o.endSeconds() - 1)),
                  percent(
                      some,
                      o ->
                          Math.abs(o.end().median() - o.endSeconds())
                              <= Math.max(
                                  Math.max(0.02 * o.endSeconds(), 180), 2 * o.floorSeconds()))));
      text.append(
          "arrivals at full power (%d) in band %.0f %%; five-minute means: median error %.1f K, near enough %.0f %%; "
              .formatted(
                  arrivals.size(),
                  100.0 * arrivals.stream().filter(Timed::inside).count() / arrivals.size(),
                  middle(some, Outcome::rmseKelvins),
                  percent(some, o -> o.rmseKelvins() <= Math.max(4, 1.3 * o.floorRmseKelvins()))));
      text.append(
          "energy in band %.0f %%, median miss %.1f %%, within 4 %% %.0f %%"
              .formatted(
                  percent(some, o -> o.energy().contains(o.energyKilowattHours())),
                  100
                      * middle(
                          some, o -> Math.abs(o.energy().median() / o.energyKilowattHours() - 1)),
                  percent(
                      some,
                      o -> Math.abs(o.energy().median() / o.energyKilowattHours() - 1) < 0.04)));
      for (Mode mode : Mode.values()) {
        Cover cover = cover(some, mode);
        if (cover.rows > 0) {
          text.append(
              "; display %s: in band %.1f %%, width %.1f K, interval score %.1f K"
                  .formatted(
                      mode.name().toLowerCase(java.util.Locale.ROOT),
                      100 * cover.share(),
                      cover.width / cover.rows,
                      cover.score / cover.rows));
        }
      }
    }
    return text.toString();
  }

  private static double percent(List<Outcome> some, java.util.function.Predicate<Outcome> holds) {
    return 100.0 * some.stream().filter(holds).count() / some.size();
  }

  private static double middle(
      List<Outcome> some, java.util.function.ToDoubleFunction<Outcome> value) {
    double[] sorted = some.stream().mapToDouble(value).sorted().toArray();
    return sorted[sorted.length / 2];
  }

  /**
   * Prints one line an outcome, for a look at many.
   *
   * @param arguments first seed, seed after the last one, and where wished the family that is
   *     learned from and the one that is forecast
   */
  public static void main(String[] arguments) {
    long from = Long.parseLong(arguments[0]);
    long to = Long.parseLong(arguments[1]);
    long began = System.nanoTime();
    IntStream.range((int) from, (int) to)
        .parallel()
        .mapToObj(
            seed ->
                arguments.length < 4
                    ? of(seed)
                    : of(
                        seed,
                        SchedulePopulation.Family.valueOf(arguments[2]),
                        SchedulePopulation.Family.valueOf(arguments[3])))
        .forEach(
            outcomes -> {
              StringBuilder out = new StringBuilder();
              for (Outcome o : outcomes) {
                out.append(
                    "O,%d,%b,%b,%s,%b,%.0f,%.0f,%.0f,%.0f,%.4f,%.4f,%.4f,%.4f,%.2f,%.2f,%.1f"
                        .formatted(
                            o.seed,
                            o.onOff,
                            o.fibre,
                            o.family,
                            o.learned,
                            o.endSeconds,
                            o.end.low(),
                            o.end.median(),
                            o.end.high(),
                            o.energyKilowattHours,
                            o.energy.low(),
                            o.energy.median(),
                            o.energy.high(),
                            o.rmseKelvins,
                            o.floorRmseKelvins,
                            o.floorSeconds));
                for (Cover c : o.covers) {
                  out.append(",%d,%d,%.0f,%.0f".formatted(c.rows, c.inside, c.width, c.score));
                }
                out.append("\n");
                for (Timed t : o.arrivals) {
                  out.append(
                      "A,%d,%b,%b,%.0f,%.0f,%.0f,%.0f,%.1f%n"
                          .formatted(
                              o.seed,
                              o.onOff,
                              o.learned,
                              t.truth,
                              t.band.low(),
                              t.band.median(),
                              t.band.high(),
                              t.floor));
                }
              }
              System.out.print(out);
            });
    System.out.printf("# %.0f s%n", (System.nanoTime() - began) / 1e9);
  }
}
