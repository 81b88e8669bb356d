package org.heatwright.work;

import java.time.Duration;
import org.heatwright.material.Origin;
import org.heatwright.units.HeatingRate;
import org.heatwright.work.glass.Annealing;
import org.heatwright.work.glass.Glass;
import org.heatwright.work.glass.GlassProcess;

/** Rules of practice for glass, in words in {@code docs/models/glass.md}. */
final class GlassRules {

  static final Origin BLOG = Origin.read("kiln-forming pages on time and temperature");

  /** Sheets that only lie on one another heat less evenly than one. Our estimate. */
  static final double STACK_FACTOR = 1.5;

  /** Thin sheet rises so fast in practice (150 to 250 K/h is common, no source), K/h. */
  private static final double THIN_RISE = 200;

  private static final double THIN_METRES = 0.006;

  /** A stack treated as 21 mm: 120 K/h, and 139 K/h where one split (read: a kiln-forming blog). */
  private static final double THICK_RISE = 130;

  private static final double THICK_METRES = 0.021;

  /** Above the slow range of heating: past the devitrifying range without delay. Our estimate. */
  static final double TOP_RISE = 300;

  /** Between sheets air goes out while they soften: hold here (common practice, 600 to 670 °C). */
  static final double SQUEEZE_CELSIUS = 640;

  static final Duration SQUEEZE = Duration.ofMinutes(30);

  /** Closer to the top it is no hold of its own, K. Our estimate. */
  static final double SQUEEZE_UNDER_TOP_KELVINS = 5;

  /**
   * Below the soak's temperature by no more than this, above by no more, counts as soaked, K. Our
   * estimate.
   */
  static final double SOAK_BELOW_KELVINS = 12;

  static final double SOAK_ABOVE_KELVINS = 40;

  /** From the soak down to so far under the strain point it cools at the slow rate. */
  static final double UNDER_STRAIN_KELVINS = 20;

  /** A published schedule keeps its first rate for 55 K and goes 1.8 times as fast after. */
  static final double SECOND_KELVINS = 55;

  /** Twice as fast under the slow range, then five times (common practice, no source). */
  static final double SECOND_FACTOR = 2;

  static final double THIRD_FACTOR = 5;

  /** Faster than this no thin sheet is sent down, K/h: the kiln is not as even as the formula. */
  static final double[] MOST_FALL = {120, 150, 200};

  /**
   * Without a slowed fall the slow range is gone down in drops of so much, K, each held as long as
   * the slow fall would take: a glass's stress flows away over some ten kelvins, so it feels their
   * mean. Derived: the plate's stress by such drops is that of the ramp within a tenth.
   */
  static final double DROP_KELVINS = 10;

  /** Where a keypad has too few segments for that, K: up to half as much again (derived, so). */
  static final double COARSE_DROP_KELVINS = 20;

  /** A published schedule's goal between hottest and coolest place while glass sets, K. */
  static final double SPREAD_KELVINS = 5;

  /** A kiln swings a little below a setpoint it fell to, K. Our estimate. */
  static final double BELOW_KELVINS = 3;

  /** Below the slow range no drop is more, K. Our estimate: people look at round numbers. */
  static final double MOST_COLD_DROP_KELVINS = 55;

  /** A kiln may cool so many times as fast as its model says. Our estimate. */
  static final double COOLS_FASTER_FACTOR = 1.25;

  /** Thick pieces are opened at 40 to 50 °C (read: a glass workshop's page). */
  static final double OPEN_THICK_CELSIUS = 50;

  /** Thin ones sooner. Our estimate. */
  static final double OPEN_THIN_CELSIUS = 80;

  static final double THICK_FROM_METRES = 0.012;

  /** A slow range longer than this is no longer a plan for one firing. */
  static final Duration LONGEST_SLOW = Duration.ofHours(240);

  /** Where devitrification is quick in soft art glass. Our estimate; visible in an hour (read). */
  static final double DEVITRIFY_FROM_CELSIUS = 690;

  static final double DEVITRIFY_TO_CELSIUS = 785;

  static final Duration DEVITRIFIED = Duration.ofHours(1);

  private GlassRules() {}

  /** Never hotter: it boils, blisters and eats its shelf. Our estimate. */
  static double firmCelsius(Glass.Family family) {
    return family == Glass.Family.FLOAT ? 920 : 880;
  }

  static Duration usualHold(GlassProcess process) {
    return switch (process) {
      case SLUMP, SHARP_TACK, TACK, CONTOUR -> Duration.ofMinutes(10);
      case FULL_FUSE -> Duration.ofMinutes(15);
      case ANNEAL -> Duration.ZERO;
    };
  }

  /**
   * Practice's rise by thickness: level up to 6 mm, through the point that was read at 21 mm, and
   * with the square of the thickness beyond.
   */
  static HeatingRate practiceRise(double metres) {
    if (metres <= THIN_METRES) {
      return HeatingRate.ofKelvinsPerHour(THIN_RISE);
    }
    if (metres <= THICK_METRES) {
      double power = Math.log(THIN_RISE / THICK_RISE) / Math.log(THICK_METRES / THIN_METRES);
      return HeatingRate.ofKelvinsPerHour(THIN_RISE * Math.pow(THIN_METRES / metres, power));
    }
    double ratio = THICK_METRES / metres;
    return HeatingRate.ofKelvinsPerHour(THICK_RISE * ratio * ratio);
  }

  /** The rise whose tension in the middle stays at a quarter of the design stress. */
  static HeatingRate stressRise(Glass glass, double depthMetres) {
    return Annealing.heatingRate(
        glass.elastic(), depthMetres, Annealing.SHARE_OF_DESIGN * Annealing.DESIGN_PASCALS);
  }
}
