package org.heatwright.learn;

/**
 * Display readings over time; gaps allowed. Immutable; read-outs are copies or single values.
 *
 * <p>Times rise strictly and count from the program's start; readings are finite, in °C.
 */
public final class Readings {

  private final double[] seconds;
  private final double[] celsius;

  private Readings(double[] seconds, double[] celsius) {
    this.seconds = seconds;
    this.celsius = celsius;
  }

  /**
   * @throws IllegalArgumentException if the columns differ in length, are empty, do not rise or
   *     hold something that is not a number
   */
  public static Readings of(double[] seconds, double[] celsius) {
    if (seconds.length != celsius.length || seconds.length == 0) {
      throw new IllegalArgumentException(
          "Readings need as many temperatures (%d) as times (%d), one at least."
              .formatted(celsius.length, seconds.length));
    }
    for (int i = 0; i < seconds.length; i++) {
      if (!Double.isFinite(seconds[i])
          || !Double.isFinite(celsius[i])
          || (i > 0 && !(seconds[i] > seconds[i - 1]))) {
        throw new IllegalArgumentException(
            "Reading %d (%s s, %s °C) must be finite and later than the one before."
                .formatted(i + 1, seconds[i], celsius[i]));
      }
    }
    return new Readings(seconds.clone(), celsius.clone());
  }

  public int size() {
    return seconds.length;
  }

  public double second(int index) {
    return seconds[index];
  }

  public double celsius(int index) {
    return celsius[index];
  }

  public double lastSecond() {
    return seconds[seconds.length - 1];
  }

  /**
   * Means over equal spans, each at the middle of its readings: noise and the swing of a switch
   * shrink, and no reading counts for more because the logger was quick. A span without readings is
   * left out.
   *
   * @param spanSeconds s, above zero
   */
  public Readings averaged(double spanSeconds) {
    double[] t = new double[seconds.length];
    double[] c = new double[seconds.length];
    int n = 0;
    int i = 0;
    while (i < seconds.length) {
      double end = (Math.floor(seconds[i] / spanSeconds) + 1) * spanSeconds;
      double sumSeconds = 0;
      double sumCelsius = 0;
      int count = 0;
      while (i < seconds.length && seconds[i] < end) {
        sumSeconds += seconds[i];
        sumCelsius += celsius[i];
        count++;
        i++;
      }
      t[n] = sumSeconds / count;
      c[n] = sumCelsius / count;
      n++;
    }
    return new Readings(java.util.Arrays.copyOf(t, n), java.util.Arrays.copyOf(c, n));
  }
}
