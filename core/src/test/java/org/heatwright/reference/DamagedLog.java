package org.heatwright.reference;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.heatwright.learn.Readings;
import org.heatwright.learn.RowOrder;

/** What loggers and people do to a log, done to the display of a {@link RichFiring}. */
enum DamagedLog {
  /** As it was: whole degrees, every ten seconds. */
  CLEAN,
  /** Every 7th row lost, and two gaps of 20 minutes. */
  GAPS,
  /** Whole degrees Fahrenheit. */
  FAHRENHEIT,
  /** One row in a hundred off by 200 K, and three runs of three identical slips. */
  SLIPS,
  /** A warm kiln (180 °C), which nobody states. */
  WARM,
  /** The same, and the first half hour missing. */
  WARM_AND_LATE,
  /** The log begins 3 h 20 min before the program. */
  EARLY,
  /** The clock runs from the keying, 3 h 20 min before; the log begins with the program. */
  KEYED,
  /** The clock is 45 min late: the log's zero is 45 min into the program. */
  LATE,
  /** The clock is 45 min early: the log's first row, at 0, is 45 min before the program. */
  EARLY_45,
  /** The first 45 min are missing; the clock is right. */
  CUT,
  /** The clock is put forward by an hour in the middle. */
  FORWARD,
  /** The clock is put back by an hour in the middle. */
  BACK,
  /** The logger starts its time at 0 again in the middle. */
  RESTART,
  /** A row a minute. */
  MINUTES,
  /** Eight readings by hand, times to the minute. */
  BY_HAND,
  /** With power, as a relay's 0 or full at the moment of the row. */
  RELAY,
  /** With power, as means of ten seconds. */
  POWER;

  static final double WARM_CELSIUS = 180;
  private static final double EARLY_SECONDS = 12_000;

  /** Rows as a file would have them: times may go back. */
  record Rows(double[] seconds, double[] celsius, double[] watts) {
    /** What the product makes of them. */
    Readings readings() {
      RowOrder order = RowOrder.of(seconds);
      int[] rows = order.rows();
      double[] c = new double[rows.length];
      double[] w = new double[rows.length];
      for (int i = 0; i < rows.length; i++) {
        c[i] = celsius[rows[i]];
        w[i] = watts[rows[i]];
      }
      return Readings.of(order.seconds(), c, w);
    }
  }

  boolean warm() {
    return this == WARM || this == WARM_AND_LATE;
  }

  /**
   * The rows of a firing.
   *
   * @param firing what happened
   * @param until the log's end, s from the program's start
   */
  Rows of(RichFiring firing, double until, long seed) {
    Random random = new Random(seed * 31 + ordinal());
    List<double[]> rows = new ArrayList<>();
    // what a meter shows while the relay is on
    double fullWatts = java.util.Arrays.stream(firing.powerWatts()).max().orElseThrow();
    double end = Math.min(until, firing.secondsAt(firing.rows() - 1));
    if (this == EARLY || this == EARLY_45) {
      double before = this == EARLY ? EARLY_SECONDS : 2700;
      for (double t = -before; t < 0; t += 10) {
        double shown = Math.rint(firing.displayCelsius()[0] + 0.4 * random.nextGaussian());
        rows.add(new double[] {t, shown, Double.NaN});
      }
    }
    for (int i = 0; i < firing.rows() && firing.secondsAt(i) <= end; i++) {
      double watts =
          switch (this) {
            case POWER -> firing.powerWatts()[i];
            case RELAY -> random.nextDouble() < firing.powerWatts()[i] / fullWatts ? fullWatts : 0;
            default -> Double.NaN;
          };
      rows.add(new double[] {firing.secondsAt(i), firing.displayCelsius()[i], watts});
    }
    double gap1 = 0.25 * end;
    double gap2 = 0.6 * end;
    double middle = 10 * Math.rint(0.055 * end);
    int slip = 0;
    double slipped = 0;
    List<double[]> kept = new ArrayList<>();
    for (int i = 0; i < rows.size(); i++) {
      double t = rows.get(i)[0];
      double c = rows.get(i)[1];
      double w = rows.get(i)[2];
      boolean keep = true;
      switch (this) {
        case GAPS ->
            keep = i % 7 != 6 && !(t > gap1 && t < gap1 + 1200) && !(t > gap2 && t < gap2 + 1200);
        case FAHRENHEIT -> c = (Math.rint(c * 1.8 + 32) - 32) / 1.8;
        case SLIPS -> {
          if (slip == 0
              && (i == rows.size() / 5 || i == rows.size() / 2 || i == rows.size() - 40)) {
            slip = 3;
            slipped = c + (random.nextBoolean() ? 200 : -200);
          }
          if (slip > 0) {
            slip--;
            c = slipped;
          } else if (i == 0 || random.nextDouble() < 0.01) {
            c += random.nextBoolean() ? 200 : -200;
          }
        }
        case WARM_AND_LATE -> keep = t >= 1800;
        case CUT -> keep = t >= 2700;
        case EARLY, KEYED -> t += EARLY_SECONDS;
        case EARLY_45 -> t += 2700;
        case LATE -> {
          keep = t >= 2700;
          t -= 2700;
        }
        case FORWARD -> t += t > middle ? 3600 : 0;
        case BACK -> t -= t > middle ? 3600 : 0;
        case RESTART -> t -= t > middle ? middle + 10 : 0;
        case MINUTES -> keep = i % 6 == 0;
        default -> {}
      }
      if (keep) {
        kept.add(new double[] {t, c, w});
      }
    }
    if (this == BY_HAND) {
      List<double[]> all = kept;
      kept = new ArrayList<>();
      for (int i = 0; i < 8; i++) {
        // now and then, seldom at the start
        double share = Math.min(0.99, (i + 0.2 + 0.6 * random.nextDouble()) / 8);
        double[] row = all.get((int) (share * all.size()));
        kept.add(new double[] {60 * Math.rint(row[0] / 60), row[1], Double.NaN});
      }
    }
    return new Rows(
        kept.stream().mapToDouble(row -> row[0]).toArray(),
        kept.stream().mapToDouble(row -> row[1]).toArray(),
        kept.stream().mapToDouble(row -> row[2]).toArray());
  }
}
