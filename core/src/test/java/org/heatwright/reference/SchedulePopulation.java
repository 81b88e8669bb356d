package org.heatwright.reference;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;

/**
 * Random firings that suit a kiln. Ranges are our estimate of what studios fire; rates are set by
 * the kiln's measured full-power rate, so that a family does what its name says on every kiln.
 */
public final class SchedulePopulation {

  private SchedulePopulation() {}

  /** What a firing asks of a kiln. */
  public enum Family {
    /** Two to four holds with modest rates: the kiln follows everywhere. */
    HOLD_HEAVY,
    /** Fastest, or ramps too steep: full power most of the way to 0.75 to 0.95 of the limit. */
    SATURATED,
    /** Drying, dewaxing, burning out, then controlled cooling to the casting temperature. */
    BURNOUT
  }

  public static Schedule draw(Family family, RichKiln kiln, long seed) {
    SplittableRandom chance =
        new SplittableRandom(seed * 0x9E3779B97F4A7C15L + family.ordinal() * 31L + 5);
    double limit = kiln.nameplate().limit().celsius();
    double full = kiln.meanFullPowerKelvinsPerHour();
    List<Segment> segments = new ArrayList<>();
    switch (family) {
      case HOLD_HEAVY -> {
        int holds = 2 + chance.nextInt(3);
        double top = limit * between(chance, 0.6, 0.88);
        for (int i = 1; i <= holds; i++) {
          double target = 20 + (top - 20) * Math.pow((double) i / holds, 0.8);
          double rate = Math.min(between(chance, 80, 280), full * 0.35 * (1.3 - 0.5 * i / holds));
          segments.add(ramp(rate, target, minutes(chance, 20, 120)));
        }
      }
      case SATURATED -> {
        double top = limit * between(chance, 0.75, 0.95);
        if (chance.nextBoolean()) {
          double first = top * between(chance, 0.5, 0.75);
          segments.add(
              chance.nextBoolean()
                  ? ramp(full * between(chance, 0.5, 0.8), first, minutes(chance, 10, 40))
                  : fastest(first, minutes(chance, 10, 40)));
        }
        segments.add(
            chance.nextDouble() < 0.6
                ? fastest(top, minutes(chance, 15, 90))
                : ramp(full * between(chance, 1.5, 3), top, minutes(chance, 15, 90)));
        if (chance.nextDouble() < 0.3) {
          segments.add(fastest(top * between(chance, 0.6, 0.8), minutes(chance, 15, 60)));
        }
      }
      case BURNOUT -> {
        double gentle = Math.min(1, full / 500);
        segments.add(
            ramp(
                between(chance, 60, 150) * gentle,
                between(chance, 140, 180),
                minutes(chance, 45, 120)));
        segments.add(
            ramp(
                between(chance, 100, 200) * gentle,
                between(chance, 350, 480),
                minutes(chance, 30, 90)));
        segments.add(
            ramp(
                between(chance, 150, 300) * gentle,
                between(chance, 700, 750),
                minutes(chance, 60, 150)));
        // walls of brick let it down no faster
        segments.add(
            ramp(between(chance, 80, 160), between(chance, 560, 620), minutes(chance, 30, 60)));
        if (chance.nextBoolean()) {
          segments.add(
              ramp(between(chance, 60, 110), between(chance, 450, 520), minutes(chance, 30, 60)));
        }
      }
    }
    return Schedule.of(
        family.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-') + "-" + seed,
        TemperatureUnit.CELSIUS,
        segments);
  }

  /** The day: a room of 12 to 28 °C, sometimes a vent; what the owner would write down. */
  public static FiringConditions conditions(long seed) {
    SplittableRandom chance = new SplittableRandom(seed * 0x9E3779B97F4A7C15L + 99);
    double room = Math.rint(between(chance, 12, 28));
    return new FiringConditions(
        Optional.of(Temperature.ofCelsius(room)),
        Optional.empty(),
        chance.nextDouble() < 0.15,
        Optional.empty(),
        List.of());
  }

  /** Shelves and props of a day: none in half of all firings, else 0.05 to 0.2 kg a litre. */
  public static double furnitureKilograms(RichKiln kiln, long seed) {
    SplittableRandom chance = new SplittableRandom(seed * 0x9E3779B97F4A7C15L + 1234);
    var chamber = kiln.nameplate().chamber();
    double litres = 1000 * chamber.floorSquareMetres() * chamber.heightMetres();
    boolean empty = chance.nextBoolean();
    double each = between(chance, 0.05, 0.2);
    return empty ? 0 : Math.rint(each * litres * 10) / 10;
  }

  /** A time that lets the whole program run and an hour of cooling after it, s. */
  public static double untilSecond(Schedule schedule, RichKiln kiln) {
    double nominal = schedule.nominalTime(Temperature.ofCelsius(20)).total().toSeconds();
    return Math.rint(nominal * 1.15 + 2.5 * kiln.secondsToNinetyPercent() + 3600);
  }

  private static double between(SplittableRandom chance, double low, double high) {
    return low + (high - low) * chance.nextDouble();
  }

  private static int minutes(SplittableRandom chance, int low, int high) {
    return low + 5 * chance.nextInt((high - low) / 5 + 1);
  }

  private static Segment ramp(double kelvinsPerHour, double celsius, int holdMinutes) {
    double rate = Math.max(10, Math.rint(kelvinsPerHour / 5) * 5);
    return new Segment(
        Ramp.at(HeatingRate.ofKelvinsPerHour(rate)),
        target(celsius),
        Duration.ofMinutes(holdMinutes));
  }

  private static Segment fastest(double celsius, int holdMinutes) {
    return new Segment(Ramp.fastest(), target(celsius), Duration.ofMinutes(holdMinutes));
  }

  private static Temperature target(double celsius) {
    return Temperature.ofCelsius(Math.rint(celsius / 5) * 5);
  }
}
