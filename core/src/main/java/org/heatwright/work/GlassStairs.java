package org.heatwright.work;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.heatwright.inspect.Wording;
import org.heatwright.keypad.Keypad;
import org.heatwright.material.Origin;
import org.heatwright.schedule.Ramp;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;
import org.heatwright.units.TemperatureUnit;

/**
 * Annealing down in drops with a hold after each, for a keypad that cannot slow a fall. Each hold
 * lasts as long as the slow fall it stands for; below the slow range the kiln falls freely as soon
 * as it does so no faster than the glass stands.
 *
 * @param fall what the slowed fall would be
 * @param steadyKelvins back to face while it falls steadily at the slow rate, K
 * @param aloneKelvins a sudden drop of the kiln after which the face is pulled with a quarter of
 *     the design stress, K
 * @param dropShare how much of a sudden drop shows between mean and face, 0 to 0.67
 * @param grid the targets that the keypad takes
 * @param unit its unit
 */
record GlassStairs(
    Fall fall,
    double steadyKelvins,
    double aloneKelvins,
    double dropShare,
    Keypad.Range grid,
    TemperatureUnit unit) {

  /**
   * The slowed fall.
   *
   * @param soak from there
   * @param slowEnd so far at the slow rate
   * @param secondEnd so far at the second rate
   * @param openAt so far at all
   * @param slow while it sets
   * @param second just below
   * @param cold the fastest at which cold glass may fall steadily
   */
  record Fall(
      Temperature soak,
      Temperature slowEnd,
      Temperature secondEnd,
      Temperature openAt,
      HeatingRate slow,
      HeatingRate second,
      HeatingRate cold) {}

  /**
   * How far the drops go.
   *
   * @param slowKelvins at most, while it sets, K
   * @param coldKelvins at most, below, K
   * @param secondStage whether the second rate has its own
   */
  record Size(double slowKelvins, double coldKelvins, boolean secondStage) {}

  /** What the slow range is called on the card. */
  static final String COOL_SLOWLY = "cool slowly";

  static final Origin STRESS =
      Origin.derived("the plate's stress through such drops, against that of the slow ramp");

  /** A free fall shorter than this is no step of its own, K. */
  private static final double LEAST_FREE_KELVINS = 20;

  private static final Draft.Why FREE =
      new Draft.Why(
          "The keypad cannot slow a fall; the kiln drops as it likes.",
          "",
          Origin.own("keypad file"));

  /** What the stress allows: no more uneven than the slow range may be, and a quarter of design. */
  Size fine() {
    // Back to face is one and a half times mean to face in a plate whose temperature bends evenly.
    double even =
        (GlassRules.SPREAD_KELVINS - steadyKelvins) / (1.5 * dropShare) - GlassRules.BELOW_KELVINS;
    return new Size(
        Math.max(2, Math.min(GlassRules.DROP_KELVINS, even)),
        // What the drop before left has not quite gone.
        Math.min(GlassRules.MOST_COLD_DROP_KELVINS, 2.0 / 3 * aloneKelvins),
        true);
  }

  /** Below the slow range by larger drops, where a keypad has few segments: nothing stays there. */
  Size fewer() {
    return new Size(fine().slowKelvins(), coarse().coldKelvins(), false);
  }

  /** The most that can still be answered for. */
  Size coarse() {
    return new Size(
        Math.min(GlassRules.COARSE_DROP_KELVINS, aloneKelvins),
        Math.min(GlassRules.MOST_COLD_DROP_KELVINS, aloneKelvins),
        false);
  }

  /**
   * From where the kiln by itself falls no faster than the cold glass stands.
   *
   * @param readings of some likely kilns, °C
   * @param stepSeconds from one to the next
   * @return not above the slow range's end
   */
  Temperature freeFrom(List<double[]> readings, double stepSeconds) {
    double most =
        fall.cold().kelvinsPerHour() / GlassRules.COOLS_FASTER_FACTOR * stepSeconds / 3600;
    double from = fall.slowEnd().celsius();
    for (double[] shown : readings) {
      for (int i = 0; i + 1 < shown.length; i++) {
        if (shown[i] - shown[i + 1] > most) {
          from = Math.min(from, shown[i + 1]);
        }
      }
    }
    return Temperature.ofCelsius(from);
  }

  /** The steps; empty where the keypad's targets lie too far apart for such drops. */
  List<Draft.Step> steps(Size size, Temperature freeFrom) {
    List<Draft.Step> steps = new ArrayList<>();
    if (!stairs(COOL_SLOWLY, fall.soak(), fall.slowEnd(), size.slowKelvins(), fall.slow(), steps)) {
      return List.of();
    }
    Temperature from = fall.slowEnd();
    if (size.secondStage() && freeFrom.compareTo(fall.slowEnd()) < 0) {
      double half = Math.min(size.coldKelvins(), GlassRules.SECOND_KELVINS / 2);
      if (!stairs("cool further", from, fall.secondEnd(), half, fall.second(), steps)) {
        return List.of();
      }
      from = fall.secondEnd();
    }
    boolean neverFree = freeFrom.celsius() - fall.openAt().celsius() < LEAST_FREE_KELVINS;
    Temperature to = neverFree ? fall.openAt() : freeFrom;
    if (to.compareTo(from) < 0
        && !stairs("cool further", from, to, size.coldKelvins(), fall.cold(), steps)) {
      return List.of();
    }
    if (neverFree) {
      return steps;
    }
    steps.add(
        new Draft.Step(
            "cool to the door",
            Ramp.fastest(),
            new Draft.Why(
                "From here on the kiln falls no faster by itself than cold glass stands, %s."
                    .formatted(Wording.of(fall.cold(), unit)),
                "",
                Origin.derived("this kiln's model, empty, and a quarter faster")),
            fall.openAt(),
            new Draft.Why(
                "Cool enough to open.",
                "thick pieces 40 to 50 °C; one expert waits a day above 15 mm",
                GlassRules.BLOG),
            Duration.ZERO,
            new Draft.Why("Nothing to wait for.", "", Origin.derived("the fall itself"))));
    return steps;
  }

  private boolean stairs(
      String purpose,
      Temperature from,
      Temperature to,
      double mostKelvins,
      HeatingRate rate,
      List<Draft.Step> steps) {
    double step = grid.step().doubleValue();
    double most =
        Math.floor(unit.value(TemperatureChange.ofKelvins(mostKelvins)) / step + 1e-9) * step;
    if (most <= 0) {
      return false;
    }
    double high = onGrid(unit.value(from));
    double low = onGrid(unit.value(to));
    int count = (int) Math.ceil((high - low) / most - 1e-9);
    double above = high;
    for (int k = 1; k <= count; k++) {
      double target = onGrid(high - (high - low) * k / count);
      double kelvins = unit.temperature(above).celsius() - unit.temperature(target).celsius();
      long minutes = (long) Math.ceil(kelvins / rate.kelvinsPerHour() * 60 - 1e-6);
      steps.add(
          new Draft.Step(
              purpose,
              Ramp.fastest(),
              FREE,
              unit.temperature(target),
              new Draft.Why(
                  "Drop %d of %d, at most %.0f %s each: so small that the glass feels their mean."
                      .formatted(k, count, most, unit.differenceSymbol()),
                  "",
                  STRESS),
              Duration.ofMinutes(minutes),
              new Draft.Why(
                  "As long as the drop takes at %s, the fall it stands for."
                      .formatted(Wording.of(rate, unit)),
                  "",
                  STRESS)));
      above = target;
    }
    return true;
  }

  private double onGrid(double value) {
    return grid.floor(BigDecimal.valueOf(value)).doubleValue();
  }
}
