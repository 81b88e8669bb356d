package org.heatwright.work.casting;

/**
 * A usual value between the lowest and the highest that sources or practice give; its unit is that
 * of the field that holds it. Not a confidence band.
 *
 * @param low zero or more
 * @param usual between the two
 * @param high finite
 */
public record Spread(double low, double usual, double high) {

  public Spread {
    if (!(low >= 0 && low <= usual && usual <= high && high < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException(
          "The values (%s, %s, %s) must be zero or more and must not fall."
              .formatted(low, usual, high));
    }
  }

  /** A value that is taken as it is. */
  public static Spread exactly(double value) {
    return new Spread(value, value, value);
  }

  public Spread times(double ratio) {
    return new Spread(low * ratio, usual * ratio, high * ratio);
  }

  public Spread times(Spread other) {
    return new Spread(low * other.low, usual * other.usual, high * other.high);
  }

  /** This over a divisor above zero: the lowest over the highest, and so on. */
  public Spread over(Spread divisor) {
    return new Spread(low / divisor.high, usual / divisor.usual, high / divisor.low);
  }

  public Spread plus(Spread other) {
    return new Spread(low + other.low, usual + other.usual, high + other.high);
  }

  public boolean contains(double value) {
    return value >= low && value <= high;
  }
}
