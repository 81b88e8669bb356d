package org.heatwright.learn;

import java.util.ArrayList;
import java.util.List;
import org.heatwright.kiln.Control;
import org.heatwright.kiln.FiringConditions.Disturbance;
import org.heatwright.kiln.FiringRun;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.KilnBeliefs;
import org.heatwright.kiln.KilnQuantity;
import org.heatwright.material.HeatCurves;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;

/**
 * What the logs of a kiln have shown of it: how long at full power, cooling, cold or at rest; and
 * from that, in words, what is still the nameplate's whatever a fit makes of it.
 *
 * @param fullPowerSeconds at full power
 * @param coolingSeconds with the elements off and the display falling
 * @param coldestCoolingCelsius down to where; infinite if no cooling was logged
 * @param coldCoolingSeconds of the cooling, below {@link #COLD_CELSIUS}
 * @param coldRestSeconds holding below that
 * @param restSeconds holding at all
 * @param metered whether a meter told the power
 * @param doorOpened whether an opening of the door is known
 */
public record Coverage(
    double fullPowerSeconds,
    double coolingSeconds,
    double coldestCoolingCelsius,
    double coldCoolingSeconds,
    double coldRestSeconds,
    double restSeconds,
    boolean metered,
    boolean doorOpened) {

  /** Below this leaks and convection count for more than radiation, about, °C. */
  public static final double COLD_CELSIUS = 300;

  private static final double FULL_SHARE = 0.97;
  private static final double OFF_SHARE = 0.02;

  /** A reading counts for the time to the next one, this long at most, s. */
  private static final double LONGEST_SECONDS = 1200;

  private static final double RESTS_WITHIN_KELVINS = 12;
  private static final double FULL_POWER_ENOUGH_SECONDS = 300;
  private static final double COOLING_ENOUGH_SECONDS = 900;
  private static final double REST_ENOUGH_SECONDS = 900;

  /**
   * What firings have covered.
   *
   * @param beliefs of the kiln that ran them; they tell what the elements did
   */
  public static Coverage of(Kiln kiln, KilnBeliefs beliefs, List<LoggedFiring> firings) {
    HeatCurves curves = new HeatCurves();
    double[] scores = new double[KilnQuantity.values().length];
    for (KilnQuantity quantity : KilnQuantity.values()) {
      scores[quantity.ordinal()] = beliefs.score(quantity);
    }
    Sum sum = new Sum();
    for (LoggedFiring firing : firings) {
      Evidence evidence = new Evidence(kiln, firing, curves);
      FiringRun run = evidence.run(scores, new double[Evidence.DAY]);
      sum.add(kiln, evidence, run);
      sum.doorOpened |=
          firing.happenings().stream()
              .anyMatch(event -> event.kind() == Disturbance.Kind.DOOR_OPEN);
    }
    return sum.coverage();
  }

  private static final class Sum {
    private double full;
    private double cooling;
    private double coldest = Double.POSITIVE_INFINITY;
    private double cold;
    private double coldRest;
    private double rest;
    private boolean metered;
    private boolean doorOpened;

    void add(Kiln kiln, Evidence evidence, FiringRun run) {
      metered |= evidence.metered();
      Readings seen = evidence.seen();
      double rated = kiln.element().suppliedWatts();
      double most = 0;
      for (int i = 0; i < seen.size(); i++) {
        most = Math.max(most, run.wattsAt(seen.second(i)));
      }
      double fullWatts = Math.max(0.8 * rated, most);
      for (int i = 0; i + 1 < seen.size(); i++) {
        double from = seen.second(i);
        double to = Math.min(seen.second(i + 1), from + LONGEST_SECONDS);
        double celsius = seen.celsius(i);
        double watts = (run.joulesAt(to) - run.joulesAt(from)) / (to - from);
        double away = run.setpointCelsiusAt(from) - celsius;
        boolean resting =
            Math.abs(away) < RESTS_WITHIN_KELVINS
                && Math.abs(run.setpointCelsiusAt(to) - run.setpointCelsiusAt(from)) < 1
                && watts > OFF_SHARE * rated;
        if (watts > FULL_SHARE * fullWatts
            && (kiln.control().kind() == Control.Kind.PID || away > RESTS_WITHIN_KELVINS)) {
          full += to - from;
        }
        if (watts < OFF_SHARE * rated && seen.celsius(i + 1) < celsius) {
          cooling += to - from;
          coldest = Math.min(coldest, seen.celsius(i + 1));
          cold += celsius < COLD_CELSIUS ? to - from : 0;
        }
        if (resting) {
          rest += to - from;
          coldRest += celsius < COLD_CELSIUS ? to - from : 0;
        }
      }
    }

    Coverage coverage() {
      return new Coverage(full, cooling, coldest, cold, coldRest, rest, metered, doorOpened);
    }
  }

  /**
   * What is still the nameplate's, a sentence each.
   *
   * @param untold the quantities that the fit could not tell
   * @param unit of the temperatures in the sentences
   */
  public List<String> words(List<KilnQuantity> untold, TemperatureUnit unit) {
    List<String> words = new ArrayList<>();
    if (coldCoolingSeconds < COOLING_ENOUGH_SECONDS && coldRestSeconds < REST_ENOUGH_SECONDS) {
      words.add(
          "%s: the loss below %s is still the nameplate's."
              .formatted(
                  coolingSeconds < COOLING_ENOUGH_SECONDS
                      ? "Cooling was never logged"
                      : "Cooling was logged down to %s only"
                          .formatted(degrees(coldestCoolingCelsius, unit)),
                  degrees(COLD_CELSIUS, unit)));
    }
    if (fullPowerSeconds < FULL_POWER_ENOUGH_SECONDS) {
      words.add(
          "The kiln never ran at full power for long: how strong it is, is still the nameplate's.");
    }
    if (!metered) {
      words.add("No meter was logged: energy is as sure as the nameplate's power.");
    }
    boolean settles =
        untold.contains(KilnQuantity.SWITCH)
            && untold.contains(KilnQuantity.GAIN)
            && untold.contains(KilnQuantity.INTEGRAL);
    if (settles || restSeconds < REST_ENOUGH_SECONDS) {
      words.add(
          restSeconds < REST_ENOUGH_SECONDS
              ? "No hold was logged: how the control settles is still the nameplate's."
              : "The holds did not tell how the control settles: that is still the nameplate's.");
    }
    if (!doorOpened) {
      words.add("The door was never opened: what an opening costs is still the nameplate's.");
    } else if (untold.contains(KilnQuantity.DOOR)) {
      words.add(
          "The openings of the door were too short to tell: what one costs is still the"
              + " nameplate's.");
    }
    return words;
  }

  private static String degrees(double celsius, TemperatureUnit unit) {
    double shown = unit.value(Temperature.ofCelsius(celsius));
    return "%d %s".formatted(10 * Math.round(shown / 10), unit.symbol());
  }
}
