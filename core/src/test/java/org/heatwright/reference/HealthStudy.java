package org.heatwright.reference;

import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.heatwright.forecast.Charge;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.Kiln;
import org.heatwright.learn.DatedFiring;
import org.heatwright.learn.KilnHealth;
import org.heatwright.learn.LoggedFiring;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;

/**
 * Random kilns that the product does not know, fired twelve times within half a year while
 * something in them changes or nothing does, and what {@link KilnHealth} makes of it.
 */
final class HealthStudy {

  /** What happens to a kiln. */
  enum Life {
    NOTHING,
    /** Power falls evenly, by 9 % at the last firing. */
    ELEMENTS_AGE,
    /** The leak doubles before the seventh firing. */
    SEAL_FAILS,
    /** The sensor's heat capacity grows evenly, by 80 % at the last firing. */
    SENSOR_SLOWS
  }

  static final int FIRINGS = 12;
  private static final LocalDate FIRST = LocalDate.of(2026, 5, 5);
  private static final int DAYS_BETWEEN = 17;

  private HealthStudy() {}

  /** True power, leak (of which the loss is a part) and lag at a firing, over the first. */
  static double truth(Life life, KilnHealth.Aspect aspect, int firing, int firings) {
    double share = firings < 2 ? 0 : firing / (double) (firings - 1);
    return switch (aspect) {
      case POWER -> life == Life.ELEMENTS_AGE ? 1 - 0.09 * share : 1;
      case LOSS -> life == Life.SEAL_FAILS && firing >= firings / 2 ? 2 : 1;
      case LAG -> life == Life.SENSOR_SLOWS ? 1 + 0.8 * share : 1;
    };
  }

  /** Firings of one kiln over its life; mains and room are of each day. */
  static List<DatedFiring> lived(long seed, Life life, int firings) {
    RichKiln rich = KilnPopulation.draw(seed);
    HiddenTruth truth = rich.truth();
    double power = truth.powerFactor;
    double leak = truth.leakSquareMetres;
    double steadyLeak = truth.steadyLeakKilogramsPerSecond;
    double lag = truth.lagFactor;
    SplittableRandom chance = new SplittableRandom(seed * 0x9E3779B97F4A7C15L + 31);
    List<DatedFiring> lived = new ArrayList<>();
    for (int i = 0; i < firings; i++) {
      truth.powerFactor = power * truth(life, KilnHealth.Aspect.POWER, i, firings);
      truth.leakSquareMetres = leak * truth(life, KilnHealth.Aspect.LOSS, i, firings);
      truth.steadyLeakKilogramsPerSecond =
          steadyLeak * truth(life, KilnHealth.Aspect.LOSS, i, firings);
      truth.lagFactor = lag * truth(life, KilnHealth.Aspect.LAG, i, firings);
      // power goes with the square: 1.2 % from day to day
      truth.mainsOffsetShare = 0.006 * chance.nextGaussian();
      Schedule schedule = schedule(rich, chance);
      FiringConditions day = SchedulePopulation.conditions(seed * 100 + i);
      RichFiring log = rich.fire(schedule, day, 0, Optional.empty(), seed * 1000 + i, 30_000);
      double end = log.programEndSeconds();
      double until = Double.isFinite(end) ? end + 3600 : 30_000;
      lived.add(
          new DatedFiring(
              FIRST.plusDays((long) i * DAYS_BETWEEN),
              new LoggedFiring(
                  "firing " + (i + 1),
                  schedule,
                  day,
                  Charge.empty(),
                  ForecastStudy.readings(log, until))));
    }
    return lived;
  }

  /** Mostly a straight rise, to somewhere; now and then a slow one that asks little. */
  private static Schedule schedule(RichKiln rich, SplittableRandom chance) {
    double limit = rich.nameplate().limit().celsius();
    double top = Math.rint(limit * (0.7 + 0.2 * chance.nextDouble()) / 5) * 5;
    int minutes = 15 + 5 * chance.nextInt(7);
    double full = rich.meanFullPowerKelvinsPerHour();
    Ramp ramp =
        chance.nextDouble() < 0.75
            ? Ramp.fastest()
            : Ramp.at(
                org.heatwright.units.HeatingRate.ofKelvinsPerHour(Math.rint(0.35 * full / 5) * 5));
    return Schedule.of(
        "life",
        TemperatureUnit.CELSIUS,
        List.of(new Segment(ramp, Temperature.ofCelsius(top), Duration.ofMinutes(minutes))));
  }

  static double held(List<DatedFiring> lived) {
    Schedule last = lived.get(lived.size() - 1).firing().schedule();
    return last.segments().get(0).target().celsius();
  }

  /** All the heat lost at a temperature, long held, with a larger leak over that with its own. */
  static double lossRatio(long seed, double celsius, double leakRatio) {
    RichKiln rich = KilnPopulation.draw(seed);
    HiddenTruth truth = rich.truth();
    truth.powerFactor *= 2;
    double own = heldWatts(rich, celsius);
    truth.leakSquareMetres *= leakRatio;
    truth.steadyLeakKilogramsPerSecond *= leakRatio;
    return heldWatts(rich, celsius) / own;
  }

  private static double heldWatts(RichKiln rich, double celsius) {
    Schedule hold =
        Schedule.of(
            "hold",
            TemperatureUnit.CELSIUS,
            List.of(
                new Segment(Ramp.fastest(), Temperature.ofCelsius(celsius), Duration.ofHours(12))));
    RichFiring run = rich.fire(hold, 1, 10 * 3600);
    int rows = run.rows();
    return RichFiring.mean(run.powerWatts(), rows - 360, rows);
  }

  /** Prints one line a firing and quantity, and each kiln's findings. */
  public static void main(String[] arguments) {
    long from = Long.parseLong(arguments[0]);
    long to = Long.parseLong(arguments[1]);
    int firings = Integer.parseInt(arguments[2]);
    long began = System.nanoTime();
    LongStream.range(from, to)
        .parallel()
        .forEach(
            seed -> {
              StringBuilder out = new StringBuilder();
              Kiln nameplate = KilnPopulation.draw(seed).nameplate();
              for (Life life : Life.values()) {
                List<DatedFiring> lived = lived(seed, life, firings);
                KilnHealth health = KilnHealth.of(nameplate, lived);
                int n = health.points().size() / KilnHealth.Aspect.values().length;
                for (int p = 0; p < health.points().size(); p++) {
                  KilnHealth.Point point = health.points().get(p);
                  int firing = Integer.parseInt(point.firing().substring(7)) - 1;
                  double truth = truth(life, point.aspect(), firing, firings);
                  if (point.aspect() == KilnHealth.Aspect.LOSS && truth != 1) {
                    truth = lossRatio(seed, held(lived), truth);
                  }
                  out.append(
                      "P,%d,%s,%s,%d,%b,%.4f,%.4f,%.4f,%.4f,%.4f%n"
                          .formatted(
                              seed,
                              life,
                              point.aspect(),
                              firing,
                              p % n == n - 1,
                              truth,
                              point.relative().low(),
                              point.relative().median(),
                              point.relative().high(),
                              point.told() ? 1.0 : 0.0));
                }
                for (KilnHealth.Finding finding : health.findings()) {
                  out.append(
                      "F,%d,%s,%s,%s,%s%n"
                          .formatted(
                              seed, life, finding.aspect(), finding.concern(), finding.sentence()));
                }
                health.notes().forEach(note -> out.append("N,%d,%s%n".formatted(seed, note)));
              }
              System.out.print(out);
            });
    System.out.printf("# %.0f s%n", (System.nanoTime() - began) / 1e9);
  }
}
