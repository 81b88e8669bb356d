package org.heatwright.app.report;

import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.heatwright.app.files.YamlText;
import org.heatwright.inspect.Wording;
import org.heatwright.material.HeatWork;
import org.heatwright.material.HeatWork.Weighting;
import org.heatwright.schedule.HourMinute;
import org.heatwright.schedule.Schedule;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.heatwork.Equivalence;
import org.heatwright.work.heatwork.HeatWorkComparison;

/** Two schedules compared by heat-work, in words. */
public final class HeatworkWords {

  /** What the comparison rests on beyond its law. */
  public static final String ONE_LAW =
      "One law holds over a narrow range: it knows nothing of melting, of gas that must leave, of a second process that takes over. Test pieces fired both ways decide.";

  private static final String IN_THE_KILN =
      "Counted to the end of the program; work that lags the display gets less.";

  private static final String ON_PAPER =
      "On paper: ramps at their rates, nothing after the last segment; work that lags the kiln gets less.";

  /** Activation energies from the literature disagree by so much and more. */
  private static final double SPREAD = 0.2;

  private HeatworkWords() {}

  /**
   * What is asked first, then how far it may be off, each by its name.
   *
   * @param kilojoules activation energy, kJ/mol
   */
  public static Map<String, Equivalence> laws(
      double kilojoules, Temperature reference, Weighting weighting) {
    Map<String, Equivalence> laws = new LinkedHashMap<>();
    for (double share : new double[] {1, 1 - SPREAD, 1 + SPREAD}) {
      laws.put(
          "Q %s kJ/mol".formatted(Wording.number(kilojoules * share)),
          Equivalence.arrhenius(new HeatWork(kilojoules * share * 1000, reference, weighting)));
    }
    return laws;
  }

  /** What was counted, by a kiln's display or on paper. */
  public static String counted(boolean inKiln) {
    return inKiln ? IN_THE_KILN : ON_PAPER;
  }

  /** How far the kiln's forecast leaves it open; empty on paper. */
  public static Optional<String> byDisplay(
      String kiln, Equivalence law, HeatworkCurves first, HeatworkCurves second) {
    return first
        .span(law)
        .flatMap(
            a ->
                second
                    .span(law)
                    .map(
                        b ->
                            "By the display of %s, empty: A %s, B %s from the low to the high edge of the forecast."
                                .formatted(kiln, a, b)));
  }

  /** "hot: 6.7 min": what a schedule comes to. */
  public static String line(Schedule schedule, double seconds) {
    return "%s: %s".formatted(schedule.name(), time(seconds));
  }

  /** "B does 0.62 times what A does." */
  public static String verdict(HeatWorkComparison comparison) {
    double ratio = comparison.secondToFirstRatio();
    if (!Double.isFinite(ratio)) {
      return "A does nothing that counts.";
    }
    if (ratio > 0.99 && ratio < 1.01) {
      return "B does the same as A.";
    }
    return "B does %s times what A does.".formatted(figure(ratio));
  }

  /**
   * Which hold makes the second even.
   *
   * @param unit of its target
   */
  public static String hold(HeatWorkComparison comparison, Schedule second, TemperatureUnit unit) {
    String segment =
        "segment %d (%s)"
            .formatted(
                comparison.holdSegment(),
                Wording.of(second.segments().get(comparison.holdSegment() - 1).target(), unit));
    Duration now = second.segments().get(comparison.holdSegment() - 1).hold();
    return comparison.holdSeconds().isPresent()
        ? "Even with a hold of %s in %s instead of %s."
            .formatted(time(comparison.holdSeconds().getAsDouble()), segment, HourMinute.words(now))
        : "No hold in %s makes it even: B does more without any.".formatted(segment);
  }

  /** One line an assumption. */
  public static List<String> cases(
      Map<String, HeatWorkComparison> cases, Schedule second, TemperatureUnit unit) {
    return cases.entrySet().stream()
        .map(
            e ->
                "%s: %s %s"
                    .formatted(e.getKey(), verdict(e.getValue()), hold(e.getValue(), second, unit)))
        .toList();
  }

  /** Three figures, never more. */
  private static String figure(double value) {
    if (value >= 100) {
      return value < 1e5 ? String.valueOf(Math.round(value)) : "%.2g".formatted(value);
    }
    return value >= 10
        ? "%.1f".formatted(value)
        : value >= 0.01 ? "%.2f".formatted(value) : "%.2g".formatted(value);
  }

  /** "6.7 min", "2 h 10 min", "12 s". */
  public static String time(double seconds) {
    if (seconds < 0.5) {
      return "nothing that counts";
    }
    if (seconds < 60) {
      return Math.round(seconds) + " s";
    }
    if (seconds < 3600) {
      return YamlText.number(Math.rint(seconds / 6) / 10) + " min";
    }
    if (seconds < 999 * 3600.0) {
      return HourMinute.words(Duration.ofMinutes(Math.round(seconds / 60)));
    }
    return "%s h".formatted(figure(seconds / 3600));
  }
}
