package org.heatwright.app.plot;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.heatwright.app.report.WhenWords;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.ForecastTrace;
import org.heatwright.learn.Readings;
import org.heatwright.units.TemperatureChange;
import org.heatwright.units.TemperatureUnit;

/**
 * What a display said minus what was forecast of it, reading by reading, as far as the forecast
 * goes.
 *
 * @param differences in order of time; empty if no reading falls into the forecast
 */
public record LogAgainstForecast(List<Difference> differences) {

  public LogAgainstForecast {
    differences = List.copyOf(differences);
  }

  /**
   * One reading.
   *
   * @param seconds s from the program's start
   * @param kelvins seen minus the forecast's median, K
   * @param lowKelvins the band's lower end minus its median, K, zero or less
   * @param highKelvins the band's upper end minus its median, K, zero or more
   */
  public record Difference(double seconds, double kelvins, double lowKelvins, double highKelvins) {

    /** How far outside the band, K: below zero colder, above zero hotter, zero inside. */
    public double outsideKelvins() {
      return kelvins > highKelvins ? kelvins - highKelvins : Math.min(0, kelvins - lowKelvins);
    }
  }

  public static LogAgainstForecast of(ForecastTrace trace, Readings seen) {
    double[] grid = trace.seconds();
    List<Difference> differences = new ArrayList<>();
    for (int i = 0; i < seen.size(); i++) {
      double second = seen.second(i);
      if (second >= grid[0] && second <= grid[grid.length - 1]) {
        Band band = trace.displayCelsiusAt(second);
        differences.add(
            new Difference(
                second,
                seen.celsius(i) - band.median(),
                band.low() - band.median(),
                band.high() - band.median()));
      }
    }
    return new LogAgainstForecast(differences);
  }

  /** Share of the readings inside the band, 0 to 1. */
  public double insideShare() {
    return differences.stream().filter(d -> d.outsideKelvins() == 0).count()
        / (double) Math.max(1, differences.size());
  }

  /** Root mean square of seen minus the median, K. */
  public double rootMeanSquareKelvins() {
    return Math.sqrt(
        differences.stream().mapToDouble(d -> d.kelvins() * d.kelvins()).average().orElse(0));
  }

  /** The reading furthest outside the band; empty if none is outside. */
  public Optional<Difference> furthest() {
    return differences.stream()
        .filter(d -> d.outsideKelvins() != 0)
        .max(Comparator.comparingDouble(d -> Math.abs(d.outsideKelvins())));
  }

  /** How much of it lies inside the band, in a sentence. */
  public String words(TemperatureUnit unit, WhenWords when) {
    if (differences.isEmpty()) {
      return "No reading of the log falls into the forecast.";
    }
    Optional<Difference> furthest = furthest();
    if (furthest.isEmpty()) {
      return "Every reading lies inside the band.";
    }
    long percent = Math.round(100 * insideShare());
    return "%s of the readings lie inside the band; the furthest is %s, %s."
        .formatted(
            percent == 100 ? "Nearly all" : percent + " %",
            outside(furthest.get().outsideKelvins(), unit),
            moment(furthest.get().seconds(), when));
  }

  /** How far the display was from the forecast's middle, in a sentence; empty if none fell in. */
  public String missed(TemperatureUnit unit) {
    if (differences.isEmpty()) {
      return "";
    }
    return "On average the display was %s from the forecast’s middle."
        .formatted(degrees(rootMeanSquareKelvins(), unit));
  }

  private static String moment(double seconds, WhenWords when) {
    return when.start().isPresent() ? when.full(seconds) : "at " + when.full(seconds);
  }

  private static String outside(double kelvins, TemperatureUnit unit) {
    return "%s %s it".formatted(degrees(kelvins, unit), kelvins > 0 ? "above" : "below");
  }

  private static String degrees(double kelvins, TemperatureUnit unit) {
    double size = unit.value(TemperatureChange.ofKelvins(Math.abs(kelvins)));
    return size < 1
        ? "less than 1 " + unit.differenceSymbol()
        : "%d %s".formatted(Math.round(size), unit.differenceSymbol());
  }
}
