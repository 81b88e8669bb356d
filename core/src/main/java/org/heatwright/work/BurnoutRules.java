package org.heatwright.work;

import java.time.Duration;
import java.util.Optional;
import org.heatwright.inspect.TemperatureRange;
import org.heatwright.material.Origin;
import org.heatwright.mould.BurnoutMeasures;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.work.casting.AlloyFamily;
import org.heatwright.work.casting.UsualMould;

/**
 * Rules of practice for gypsum-bonded moulds, by the diameter of the thickest one. All of them rise
 * (or stand still) with diameter. Equations and sources in words: {@code docs/models/burnout.md}.
 */
final class BurnoutRules {

  static final Origin CYCLES =
      Origin.read(
          "three cycles of an investment maker by mould size, as quoted by a caster on a bench"
              + " forum");
  static final Origin CYCLES_FITTED =
      Origin.read(CYCLES.text() + "; the line through them is our fit");
  static final Origin MACHINE_MANUAL =
      Origin.read(
          "manual of a small casting machine, 150 °C/h small and 65 to 80 °C/h large; the square law"
              + " between them and the floor of 50 °C/h are our estimate");
  static final Origin CHECKLIST = Origin.read("a supplier's checklist for investment casting");
  static final Origin THERMAL_STRESS =
      Origin.memory(
          "Timoshenko and Goodier, Theory of Elasticity: thermal stress goes with rate times radius"
              + " squared");

  static final Temperature DRY = Temperature.ofCelsius(150);
  static final Temperature WAX_OUT = Temperature.ofCelsius(370);
  static final Temperature WAX_OUT_LARGE = Temperature.ofCelsius(315);
  static final Temperature SETTLE_LARGE = Temperature.ofCelsius(480);
  static final Temperature TOP = Temperature.ofCelsius(730);

  /** Above this, left-over carbon can turn the binder to sulphide. */
  static final Temperature TOP_CAUTION = Temperature.ofCelsius(750);

  /** 1450 °F, the ceiling of the trade. */
  static final Temperature TOP_CEILING = Temperature.ofCelsius(788);

  /** Carbon burns in air from about 600 °C; a burnout below this is not one. */
  static final Temperature TOP_LEAST = Temperature.ofCelsius(680);

  static final TemperatureRange WET = TemperatureRange.ofCelsius(20, 200);
  static final TemperatureRange CRISTOBALITE = TemperatureRange.ofCelsius(220, 280);
  static final TemperatureRange QUARTZ = TemperatureRange.ofCelsius(560, 590);

  static final Duration SETTLE_LARGE_HOLD = Duration.ofHours(2);
  static final Duration EXTRA_FOR_HEAVY_WAX = Duration.ofHours(1);
  static final Duration EXTRA_FOR_RESIN = Duration.ofHours(2);
  static final Duration EXTRA_FOR_TALL = Duration.ofMinutes(30);

  /** Resin goes up slower from the drying hold. {@code practice:}, the share is an estimate. */
  private static final double RESIN_RATE_SHARE = 0.75;

  /** The slow end of practice for large moulds. {@code estimate:} */
  private static final double LEAST_RISE_KELVINS_PER_HOUR = 50;

  /** Catch-up times are known within 40 %. {@code estimate:} */
  private static final double SLOW_END = 1.4;

  private static final double SMALL_MILLIMETRES = 65;
  private static final double LARGE_MILLIMETRES = 100;
  private static final double TALL_METRES = 0.18;
  private static final double HEAVY_PATTERN_KILOGRAMS = 0.1;

  private BurnoutRules() {}

  /** What a core must get as burning of carbon, at {@link BurnoutMeasures#BURN_REFERENCE}. */
  static Duration burn(PatternedMould.Pattern pattern) {
    return pattern == PatternedMould.Pattern.RESIN ? Duration.ofHours(4) : Duration.ofHours(1);
  }

  static final Origin BURN =
      Origin.estimate(
          "an hour of the core at 650 °C for wax, four for printed resin; hotter counts more, by 150"
              + " kJ/mol");

  static boolean isLarge(double diameterMillimetres) {
    return diameterMillimetres >= LARGE_MILLIMETRES;
  }

  static boolean isTall(double heightMetres) {
    return heightMetres >= TALL_METRES;
  }

  static boolean isHeavy(double patternKilograms) {
    return patternKilograms >= HEAVY_PATTERN_KILOGRAMS;
  }

  /** Rise while the mould is wet and through the cristobalite inversion: what we plan. */
  static HeatingRate plannedEarlyRise(double diameterMillimetres) {
    return scaledRise(diameterMillimetres, SMALL_MILLIMETRES, LEAST_RISE_KELVINS_PER_HOUR);
  }

  /** A quarter slower, but not slower than practice goes for the largest moulds. */
  static HeatingRate slowedForResin(HeatingRate early) {
    double least = Math.min(LEAST_RISE_KELVINS_PER_HOUR, early.kelvinsPerHour());
    return HeatingRate.ofKelvinsPerHour(Math.max(least, RESIN_RATE_SHARE * early.kelvinsPerHour()));
  }

  /** Rise while the mould is wet: the fast end of practice, where we warn. */
  static HeatingRate fastestWetRise(double diameterMillimetres) {
    return scaledRise(diameterMillimetres, 90, 65);
  }

  /** Rise through the cristobalite inversion: the fast end of practice, where we warn. */
  static HeatingRate fastestCristobaliteRise(double diameterMillimetres) {
    return scaledRise(diameterMillimetres, 90, 100);
  }

  /** 150 K/h up to a diameter, falling with its square beyond, never below a least rise. */
  private static HeatingRate scaledRise(
      double diameterMillimetres, double fullUpToMillimetres, double leastKelvinsPerHour) {
    double ratio = fullUpToMillimetres / diameterMillimetres;
    return HeatingRate.ofKelvinsPerHour(
        Math.max(leastKelvinsPerHour, 150 * Math.min(1, ratio * ratio)));
  }

  /** Rise above the inversion of cristobalite, through that of quartz. */
  static HeatingRate plannedLateRise(double diameterMillimetres) {
    return HeatingRate.ofKelvinsPerHour(diameterMillimetres <= 75 ? 200 : 150);
  }

  static final HeatingRate FASTEST_QUARTZ_RISE = HeatingRate.ofKelvinsPerHour(200);

  static HeatingRate plannedFall(double diameterMillimetres) {
    return HeatingRate.ofKelvinsPerHour(isLarge(diameterMillimetres) ? 150 : 200);
  }

  static Duration dryHold(double diameterMillimetres, double kilnFactor) {
    return Duration.ofHours(diameterMillimetres > 102 || kilnFactor > 1 ? 3 : 2);
  }

  /** The least time between boiling and 200 °C, ramps counted, before we warn. */
  static Duration leastDryTime(double diameterMillimetres) {
    return Duration.ofHours(diameterMillimetres <= SMALL_MILLIMETRES ? 1 : 2);
  }

  /** 1 h at 63 mm, 2 h at 89 mm and beyond, straight between. */
  static Duration waxHold(double diameterMillimetres) {
    double hours = 1 + (diameterMillimetres - 63) / 26;
    return RoundNumbers.nearestQuarter(Math.max(1, Math.min(2, hours)));
  }

  /**
   * Top hold of practice, D/30 in hours and 2 h at least; never under the time the core needs to
   * catch up plus an hour.
   */
  static Duration topHold(double diameterMillimetres) {
    double hours = Math.max(2, diameterMillimetres / 30);
    double catchUpHours = catchUpHours(diameterMillimetres, 115) + 1;
    return RoundNumbers.nearestQuarter(Math.max(hours, catchUpHours));
  }

  static Duration pourSoak(double diameterMillimetres) {
    if (!isLarge(diameterMillimetres)) {
      return Duration.ofHours(1);
    }
    return RoundNumbers.quarterUp(Math.max(2, catchUpHours(diameterMillimetres, 90) + 0.5));
  }

  /**
   * Core catch-up goes with the diameter squared; the minutes are those of 125 x 200 mm, taken at
   * the slow end of their uncertainty.
   */
  private static double catchUpHours(double diameterMillimetres, double minutesAt125) {
    double ratio = diameterMillimetres / 125;
    return SLOW_END * minutesAt125 / 60 * ratio * ratio;
  }

  /** Time to draw and pour all moulds, on top of the soak: 5 min each, half an hour at least. */
  static Duration pouringTime(int moulds) {
    return RoundNumbers.quarterUp(Math.max(0.5, moulds * 5 / 60.0));
  }

  /**
   * By how much a crowded kiln lengthens the top hold.
   *
   * @param footprintShare sum of the moulds' diameters squared over the floor's area
   */
  static double kilnFactor(double footprintShare) {
    if (footprintShare > 1) {
      return 2;
    }
    if (footprintShare > 0.6) {
      return 1.5;
    }
    return footprintShare > 0.4 ? 1.25 : 1;
  }

  /** Mould temperature of practice for an alloy whose name tells what it is. */
  static Optional<UsualMould> pourOf(String alloy) {
    return AlloyFamily.ofName(alloy).flatMap(UsualMould::of);
  }

  /** Metals too hot for a gypsum-bonded mould. */
  static boolean needsPhosphate(String alloy) {
    return AlloyFamily.ofName(alloy).map(AlloyFamily::needsPhosphate).orElse(false);
  }
}
