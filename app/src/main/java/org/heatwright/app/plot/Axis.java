package org.heatwright.app.plot;

import java.time.LocalDate;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.heatwright.app.report.ChartData;
import org.heatwright.app.report.Ticks;
import org.heatwright.units.TemperatureUnit;

/**
 * One axis of a figure.
 *
 * @param low value at its beginning
 * @param high value at its end, above the low one
 * @param ticks labelled places between them, rising
 * @param unit stands at its end; may be empty
 */
record Axis(double low, double high, List<Tick> ticks, String unit) {

  private static final int MOST_TICKS = 6;
  private static final DateTimeFormatter DATE = DateTimeFormatter.ofPattern("d MMM", Locale.UK);
  private static final DateTimeFormatter MONTH = DateTimeFormatter.ofPattern("MMM", Locale.UK);
  private static final int[] DAY_STEPS = {1, 2, 7, 14};
  private static final int[] MONTH_STEPS = {1, 3, 6, 12, 24, 60, 120};
  private static final double DAYS_A_MONTH = 365.25 / 12;

  Axis {
    ticks = List.copyOf(ticks);
    if (!(low < high) || !Double.isFinite(high - low)) {
      throw new IllegalArgumentException(
          "The axis (%s to %s) must rise and be finite.".formatted(low, high));
    }
  }

  /**
   * A labelled place.
   *
   * @param date what stands under the label where a day or a year begins, else empty
   */
  record Tick(double at, String label, String date) {}

  /** How far along the axis a value lies, 0 to 1. */
  double share(double value) {
    return (value - low) / (high - low);
  }

  /** From the program's start; by the clock where the start is known. */
  static Axis time(Optional<ZonedDateTime> start, double lengthSeconds) {
    List<Tick> ticks = new ArrayList<>();
    for (ChartData.TimeTick tick : Ticks.times(start, lengthSeconds)) {
      ticks.add(new Tick(tick.seconds(), tick.label(), tick.date()));
    }
    return new Axis(0, lengthSeconds, ticks, "");
  }

  /** Temperatures, the axis itself in °C, its labels in the unit. */
  static Axis temperature(TemperatureUnit unit, double lowCelsius, double highCelsius) {
    List<Tick> ticks = new ArrayList<>();
    for (ChartData.TemperatureTick tick : Ticks.temperatures(unit, highCelsius)) {
      ticks.add(new Tick(tick.celsius(), tick.label(), ""));
    }
    return new Axis(Math.min(lowCelsius, ticks.get(0).at()), highCelsius, ticks, unit.symbol());
  }

  /**
   * Plain numbers: whole round steps, and an end beyond the outermost value.
   *
   * @param scale what a label shows for 1, e.g. 100 for shares in percent
   */
  static Axis numbers(double low, double high, double scale, String unit) {
    double from = low * scale;
    double to = high * scale;
    double step = roundStep(Math.max(to - from, 1e-9) / (MOST_TICKS - 1));
    long first = (long) Math.floor(from / step);
    long last = (long) Math.ceil(to / step);
    if (first == last) {
      last++;
    }
    int decimals = (int) Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
    List<Tick> ticks = new ArrayList<>();
    for (long i = first; i <= last; i++) {
      String label = String.format(Locale.ROOT, "%." + decimals + "f", i * step);
      ticks.add(new Tick(i * step / scale, label.replace('-', '−'), ""));
    }
    return new Axis(first * step / scale, last * step / scale, ticks, unit);
  }

  /** 1, 2 or 5 times a power of ten, at least {@code wanted}. */
  private static double roundStep(double wanted) {
    double power = Math.pow(10, Math.floor(Math.log10(wanted)));
    for (double step : new double[] {1, 2, 5}) {
      if (step * power >= wanted * (1 - 1e-9)) {
        return step * power;
      }
    }
    return 10 * power;
  }

  /** Days, counted as {@link LocalDate#toEpochDay}, with a little room at both ends. */
  static Axis dates(LocalDate first, LocalDate last) {
    double length = last.toEpochDay() - first.toEpochDay();
    double room = Math.max(2, 0.06 * length);
    double low = first.toEpochDay() - room;
    double high = last.toEpochDay() + room;
    return new Axis(low, high, dateTicks(low, high), "");
  }

  private static List<Tick> dateTicks(double low, double high) {
    for (int step : DAY_STEPS) {
      if ((high - low) / step <= MOST_TICKS) {
        List<Tick> ticks = new ArrayList<>();
        long first = (long) Math.ceil(low);
        for (long day = first; day <= high; day += step) {
          ticks.add(tick(LocalDate.ofEpochDay(day), DATE, ticks));
        }
        return ticks;
      }
    }
    int months = MONTH_STEPS[MONTH_STEPS.length - 1];
    for (int step : MONTH_STEPS) {
      if ((high - low) / (step * DAYS_A_MONTH) <= MOST_TICKS) {
        months = step;
        break;
      }
    }
    List<Tick> ticks = new ArrayList<>();
    LocalDate from = LocalDate.ofEpochDay((long) Math.ceil(low));
    for (LocalDate day = LocalDate.of(from.getYear(), 1, 1);
        day.toEpochDay() <= high;
        day = day.plusMonths(months)) {
      if (day.toEpochDay() >= low) {
        ticks.add(tick(day, MONTH, ticks));
      }
    }
    return ticks;
  }

  /** The year stands under the first label and wherever a new one begins. */
  private static Tick tick(LocalDate day, DateTimeFormatter format, List<Tick> before) {
    boolean told =
        !before.isEmpty()
            && LocalDate.ofEpochDay((long) before.get(before.size() - 1).at()).getYear()
                == day.getYear();
    return new Tick(day.toEpochDay(), format.format(day), told ? "" : day.getYear() + "");
  }
}
