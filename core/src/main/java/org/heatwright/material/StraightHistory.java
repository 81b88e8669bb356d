package org.heatwright.material;

import java.util.function.DoubleBinaryOperator;
import java.util.function.DoubleUnaryOperator;

/** Integrals of something steep in temperature over histories that are straight between points. */
final class StraightHistory {

  /** Nodes and weights of Gauss and Legendre with five points on [-1, 1], the half from 0 on. */
  private static final double[] NODES = {0, 0.5384693101056831, 0.9061798459386640};

  private static final double[] WEIGHTS = {
    0.5688888888888889, 0.4786286704993665, 0.2369268850561891
  };

  private StraightHistory() {}

  /**
   * The integral over time.
   *
   * @param seconds times, s, never falling
   * @param celsius temperature at each, °C
   * @param mean of what is integrated, between two temperatures (°C) that follow each other
   */
  static double integral(double[] seconds, double[] celsius, DoubleBinaryOperator mean) {
    if (seconds.length != celsius.length) {
      throw new IllegalArgumentException(
          "The history needs one temperature a time, not %d times and %d temperatures."
              .formatted(seconds.length, celsius.length));
    }
    double sum = 0;
    for (int i = 0; i + 1 < seconds.length; i++) {
      double length = seconds[i + 1] - seconds[i];
      if (!(length >= 0)) {
        throw new IllegalArgumentException(
            "The history's times must not fall (%s s, then %s s)."
                .formatted(seconds[i], seconds[i + 1]));
      }
      if (length > 0) {
        sum += length * mean.applyAsDouble(celsius[i], celsius[i + 1]);
      }
    }
    return sum;
  }

  /**
   * The integral over a stretch of temperature, in panels from its hot end down.
   *
   * @param cold where it ends, with nothing below that counts
   * @param hot where it begins
   * @param panelEnd lower end of a panel by its upper one, such that five points are enough for it
   * @param value what is integrated
   */
  static double overStretch(
      double cold, double hot, DoubleUnaryOperator panelEnd, DoubleUnaryOperator value) {
    double sum = 0;
    double top = hot;
    while (top > cold) {
      double bottom = Math.max(cold, panelEnd.applyAsDouble(top));
      double middle = (top + bottom) / 2;
      double half = (top - bottom) / 2;
      double panel = WEIGHTS[0] * value.applyAsDouble(middle);
      for (int i = 1; i < NODES.length; i++) {
        panel +=
            WEIGHTS[i]
                * (value.applyAsDouble(middle - NODES[i] * half)
                    + value.applyAsDouble(middle + NODES[i] * half));
      }
      sum += panel * half;
      top = bottom;
    }
    return sum;
  }
}
