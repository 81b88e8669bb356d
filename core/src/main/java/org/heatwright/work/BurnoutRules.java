package org.heatwright.work;

import java.time.Duration;
import org.heatwright.inspect.TemperatureRange;
import org.heatwright.material.Origin;
import org.heatwright.mould.BurnoutMeasures;
import org.heatwright.units.HeatingRate;
import org.heatwright.work.casting.AlloyFamily;

/**
 * Rules of practice for moulds of any binder, by the diameter of the thickest one. All of them rise
 * (or stand still) with diameter. Equations and sources in words: {@code docs/models/burnout.md}.
 */
final class BurnoutRules {

  static final TemperatureRange CRISTOBALITE = TemperatureRange.ofCelsius(220, 280);
  static final TemperatureRange QUARTZ = TemperatureRange.ofCelsius(560, 590);

  static final Duration EXTRA_FOR_HEAVY_WAX = Duration.ofHours(1);
  static final Duration EXTRA_FOR_RESIN = Duration.ofHours(2);
  static final Duration EXTRA_FOR_TALL = Duration.ofMinutes(30);

  /** Resin goes up slower from the drying hold. {@code practice:}, the share is an estimate. */
  private static final double RESIN_RATE_SHARE = 0.75;

  /** Catch-up times are known within 40 %. {@code estimate:} */
  private static final double SLOW_END = 1.4;

  static final double SMALL_MILLIMETRES = 65;
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

  /** A quarter slower, but not slower than practice goes for the largest moulds. */
  static HeatingRate slowedForResin(HeatingRate early) {
    double least = Math.min(GypsumRules.LEAST_RISE_KELVINS_PER_HOUR, early.kelvinsPerHour());
    return HeatingRate.ofKelvinsPerHour(Math.max(least, RESIN_RATE_SHARE * early.kelvinsPerHour()));
  }

  /** Full up to a diameter, falling with its square beyond, never below a least rise. */
  static HeatingRate scaledRise(
      double fullKelvinsPerHour,
      double diameterMillimetres,
      double fullUpToMillimetres,
      double leastKelvinsPerHour) {
    double ratio = fullUpToMillimetres / diameterMillimetres;
    return HeatingRate.ofKelvinsPerHour(
        Math.max(leastKelvinsPerHour, fullKelvinsPerHour * Math.min(1, ratio * ratio)));
  }

  static HeatingRate plannedFall(double diameterMillimetres) {
    return HeatingRate.ofKelvinsPerHour(isLarge(diameterMillimetres) ? 150 : 200);
  }

  /** 1 h at 63 mm, 2 h at 89 mm and beyond, straight between. */
  static Duration waxHold(double diameterMillimetres) {
    double hours = 1 + (diameterMillimetres - 63) / 26;
    return RoundNumbers.nearestQuarter(Math.max(1, Math.min(2, hours)));
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
  static double catchUpHours(double diameterMillimetres, double minutesAt125) {
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

  /** Metals too hot for a gypsum-bonded mould. */
  static boolean needsPhosphate(String alloy) {
    return AlloyFamily.ofName(alloy).map(AlloyFamily::needsPhosphate).orElse(false);
  }
}
