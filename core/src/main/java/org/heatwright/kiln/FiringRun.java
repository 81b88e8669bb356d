package org.heatwright.kiln;

import java.util.Arrays;
import java.util.List;

/**
 * What one simulated kiln did: columns over the solver's own steps, and what happened when.
 * Immutable; read-outs are copies or single values.
 */
public final class FiringRun {

  /**
   * When one segment was reached and ended.
   *
   * @param reachedSeconds start of its hold, s from the program's start; infinite if never
   * @param endSeconds its end, s; infinite if never
   * @param saturatedSeconds time at full power on the way to its target, s
   * @param energyJoules energy from the program's start to its end, J
   */
  public record SegmentRun(
      double reachedSeconds, double endSeconds, double saturatedSeconds, double energyJoules) {}

  private final double[] seconds;
  private final double[] setpoint;
  private final double[] reading;
  private final double[] readingRate;
  private final double[] watts;
  private final double[] joules;

  /** Three a row: deviation of a switch's swing about its mean, most above it, most below it, K. */
  private final double[] swing;

  private final double[] air;
  private final double[] radiant;
  private final List<SegmentRun> segments;
  private final int rejectedSteps;

  /** Where to look for a second: the time in as many equal parts as there are steps. */
  private final int[] near;

  private final double partsPerSecond;

  FiringRun(
      double[] seconds,
      double[] setpoint,
      double[] reading,
      double[] readingRate,
      double[] watts,
      double[] joules,
      double[] swing,
      double[] air,
      double[] radiant,
      List<SegmentRun> segments,
      int rejectedSteps) {
    this.seconds = seconds;
    this.setpoint = setpoint;
    this.reading = reading;
    this.readingRate = readingRate;
    this.watts = watts;
    this.joules = joules;
    this.swing = swing;
    this.air = air;
    this.radiant = radiant;
    this.segments = List.copyOf(segments);
    this.rejectedSteps = rejectedSteps;
    double length = seconds[seconds.length - 1] - seconds[0];
    this.partsPerSecond = length > 0 ? seconds.length / length : 0;
    this.near = near(seconds, partsPerSecond);
  }

  private FiringRun(
      FiringRun like,
      double[] reading,
      double[] readingRate,
      double[] watts,
      double[] joules,
      List<SegmentRun> segments) {
    this.seconds = like.seconds;
    this.setpoint = like.setpoint;
    this.reading = reading;
    this.readingRate = readingRate;
    this.watts = watts;
    this.joules = joules;
    this.swing = like.swing;
    this.air = like.air;
    this.radiant = like.radiant;
    this.segments = List.copyOf(segments);
    this.rejectedSteps = like.rejectedSteps;
    this.near = like.near;
    this.partsPerSecond = like.partsPerSecond;
  }

  /** A run of the same steps that showed and took something else. */
  FiringRun with(
      double[] otherReading,
      double[] otherReadingRate,
      double[] otherWatts,
      double[] otherJoules,
      List<SegmentRun> otherSegments) {
    return new FiringRun(
        this, otherReading, otherReadingRate, otherWatts, otherJoules, otherSegments);
  }

  /** The columns themselves, for a simulation that goes on from here; not to be written to. */
  @SuppressWarnings("ArrayRecordComponent")
  record Columns(
      int rows,
      double[] seconds,
      double[] setpoint,
      double[] reading,
      double[] readingRate,
      double[] watts,
      double[] joules,
      double[] swing,
      double[] air,
      double[] radiant) {}

  Columns columns() {
    return new Columns(
        seconds.length,
        seconds,
        setpoint,
        reading,
        readingRate,
        watts,
        joules,
        swing,
        air,
        radiant);
  }

  /** One entry a segment, in order. */
  public List<SegmentRun> segments() {
    return segments;
  }

  /** When the program ended, s from its start; infinite if it never did. */
  public double endSeconds() {
    return segments.get(segments.size() - 1).endSeconds();
  }

  /** Whether every target was reached. */
  public boolean complete() {
    return Double.isFinite(endSeconds());
  }

  /** Steps the solver took. */
  public int steps() {
    return seconds.length;
  }

  /** Steps it tried and threw away. */
  public int rejectedSteps() {
    return rejectedSteps;
  }

  /** End of the simulated time, s. */
  public double lastSecond() {
    return seconds[seconds.length - 1];
  }

  /** What the display showed, °C: cubic between steps. */
  public double readingCelsiusAt(double second) {
    return readingCelsius(interval(second), second);
  }

  /** Reads off the display at one second after the other, quickly where they lie near. */
  public Reader reader() {
    return new Reader();
  }

  /** Where in the run it was read last. One thread at a time. */
  public final class Reader {
    private int at;

    private Reader() {}

    /** As {@link FiringRun#readingCelsiusAt}. */
    public double celsiusAt(double second) {
      while (at + 1 < seconds.length && seconds[at + 1] <= second) {
        at++;
      }
      while (at >= 0 && seconds[at] > second) {
        at--;
      }
      return readingCelsius(at, second);
    }
  }

  private double readingCelsius(int i, double second) {
    if (i < 0) {
      return reading[0];
    }
    if (i >= seconds.length - 1) {
      return reading[seconds.length - 1];
    }
    double h = seconds[i + 1] - seconds[i];
    if (h == 0) {
      return reading[i + 1];
    }
    double s = (second - seconds[i]) / h;
    double r = 1 - s;
    return r * r * (1 + 2 * s) * reading[i]
        + s * s * (3 - 2 * s) * reading[i + 1]
        + h * s * r * (r * readingRate[2 * i] - s * readingRate[2 * i + 1]);
  }

  /**
   * When the display first comes as near a segment's target as stated, whatever the hold's clock
   * does.
   *
   * @param segment 0-based
   * @param targetCelsius its target, °C
   * @param withinKelvins how near, K
   * @param untilSecond when to stop looking, s from the program's start
   * @return s from the program's start; infinite if it does not by then
   */
  public double arrivalSeconds(
      int segment, double targetCelsius, double withinKelvins, double untilSecond) {
    double from = segment == 0 ? 0 : segments.get(segment - 1).endSeconds();
    double to = Math.min(lastSecond(), untilSecond);
    if (!(from <= to)) {
      return Double.POSITIVE_INFINITY;
    }
    double before = readingCelsiusAt(from) - targetCelsius;
    if (Math.abs(before) <= withinKelvins) {
      return from;
    }
    double second = from;
    for (int i = Math.max(0, interval(from) + 1); i < seconds.length; i++) {
      double next = Math.min(seconds[i], to);
      double after = readingCelsiusAt(next) - targetCelsius;
      // Within reach, or past it: it came by between the two.
      if (Math.abs(after) <= withinKelvins || after * before < 0) {
        return crossing(second, next, targetCelsius + Math.signum(before) * withinKelvins);
      }
      if (seconds[i] >= to) {
        break;
      }
      second = next;
      before = after;
    }
    return Double.POSITIVE_INFINITY;
  }

  /** Where the reading crosses a level between two seconds on different sides of it. */
  private double crossing(double fromSecond, double toSecond, double levelCelsius) {
    double low = fromSecond;
    double high = toSecond;
    double side = Math.signum(readingCelsiusAt(low) - levelCelsius);
    for (int i = 0; i < 40; i++) {
      double middle = (low + high) / 2;
      if ((readingCelsiusAt(middle) - levelCelsius) * side > 0) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high;
  }

  /**
   * How far the display swings about {@link #readingCelsiusAt} with a switch that is simulated as
   * its mean: standard deviation, K; 0 where every switch is in the curve itself.
   */
  public double swingKelvinsAt(double second) {
    int i = interval(second);
    return i < 0 ? 0 : swing[3 * Math.min(i, seconds.length - 1)];
  }

  /** How far it then goes above the mean (sign 1) or below (sign -1), K. */
  double swingKelvinsAt(double second, int sign) {
    int i = interval(second);
    return i < 0 ? 0 : swing[3 * Math.min(i, seconds.length - 1) + (sign > 0 ? 1 : 2)];
  }

  /**
   * The highest the display shows between two seconds, °C, with the swing of a switch that is
   * simulated as its mean.
   *
   * @param fromSecond s from the program's start
   * @param toSecond not before it
   */
  public double highestReadingCelsius(double fromSecond, double toSecond) {
    return extreme(fromSecond, toSecond, 1);
  }

  /** The lowest, likewise. */
  public double lowestReadingCelsius(double fromSecond, double toSecond) {
    return -extreme(fromSecond, toSecond, -1);
  }

  /** The greatest of the display's curve times a sign: at the ends, at steps, where it is level. */
  private double extreme(double from, double to, int sign) {
    double most = Math.max(swung(from, sign), swung(to, sign));
    for (int i = Math.max(0, interval(from)); i + 1 < seconds.length && seconds[i] < to; i++) {
      double h = seconds[i + 1] - seconds[i];
      if (seconds[i] > from) {
        most = Math.max(most, swung(seconds[i], sign));
      }
      double fall = reading[i] - reading[i + 1];
      double begins = h * readingRate[2 * i];
      double ends = h * readingRate[2 * i + 1];
      // The slope of the cubic through both ends is a s² + b s + begins.
      double a = 6 * fall + 3 * (begins + ends);
      double b = -6 * fall - 4 * begins - 2 * ends;
      double root = Math.sqrt(Math.max(0, b * b - 4 * a * begins));
      for (double level : new double[] {(-b + root) / (2 * a), (-b - root) / (2 * a)}) {
        double second = seconds[i] + level * h;
        if (level > 0 && level < 1 && second > from && second < to) {
          most = Math.max(most, swung(second, sign));
        }
      }
    }
    return most;
  }

  private double swung(double second, int sign) {
    return sign * readingCelsiusAt(second) + swingKelvinsAt(second, sign);
  }

  /** Setpoint, °C; a jump shows its later value. */
  public double setpointCelsiusAt(double second) {
    return linear(setpoint, second);
  }

  /** Power, W: linear between steps. */
  public double wattsAt(double second) {
    return linear(watts, second);
  }

  /** Energy since the program's start, J. */
  public double joulesAt(double second) {
    return linear(joules, second);
  }

  /** The air about the load, °C: linear between steps. */
  public double airCelsiusAt(double second) {
    return linear(air, second);
  }

  /**
   * A black surrounding that radiates like the chamber about the load, °C: linear between steps.
   */
  public double radiantCelsiusAt(double second) {
    return linear(radiant, second);
  }

  /** Index of the step at or before a second; -1 before the first. */
  private int interval(double second) {
    int last = near.length - 2;
    int part = (int) Math.max(0, Math.min(last, (second - seconds[0]) * partsPerSecond));
    int from = near[part];
    // A second at a border of two parts may round to either.
    if (from > 0 && seconds[from] > second) {
      from--;
    }
    int to = part == last ? seconds.length : Math.min(seconds.length, near[part + 1] + 2);
    int found = Arrays.binarySearch(seconds, from, to, second);
    if (found >= 0) {
      // The last of equal times: what holds after a jump.
      while (found + 1 < seconds.length && seconds[found + 1] == seconds[found]) {
        found++;
      }
      return found;
    }
    return -found - 2;
  }

  /** The last step at or before the beginning of each part of the time, and the last of all. */
  private static int[] near(double[] seconds, double partsPerSecond) {
    int[] near = new int[seconds.length + 1];
    int step = 0;
    for (int part = 0; part < seconds.length; part++) {
      while (step + 1 < seconds.length
          && (seconds[step + 1] - seconds[0]) * partsPerSecond <= part) {
        step++;
      }
      near[part] = step;
    }
    near[seconds.length] = seconds.length - 1;
    return near;
  }

  private double linear(double[] column, double second) {
    int i = interval(second);
    if (i < 0) {
      return column[0];
    }
    if (i >= seconds.length - 1) {
      return column[seconds.length - 1];
    }
    double h = seconds[i + 1] - seconds[i];
    double share = h > 0 ? (second - seconds[i]) / h : 1;
    return column[i] + share * (column[i + 1] - column[i]);
  }
}
