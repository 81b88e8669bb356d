package org.heatwright.sensing;

import java.util.List;
import java.util.OptionalDouble;

/**
 * One type's emf over temperature, in pieces: a polynomial each, for type K with a bump on top.
 * Immutable.
 */
final class ReferenceFunction {

  private static final double PRINTED_DIGITS_PER_MILLIVOLT = 1000;
  private static final double SETTLED_KELVINS = 1e-10;
  private static final int MOST_STEPS = 200;

  private final List<Range> ranges;

  private ReferenceFunction(List<Range> ranges) {
    this.ranges = ranges;
  }

  /** Ranges in rising order; each begins where the one before it ends. */
  static ReferenceFunction of(Range... ranges) {
    return new ReferenceFunction(List.of(ranges));
  }

  static Range range(double fromCelsius, double toCelsius, double... coefficients) {
    return rangeWithBump(fromCelsius, toCelsius, 0.0, 0.0, 0.0, coefficients);
  }

  /** A polynomial plus {@code a0 exp(a1 (t - a2)²)}. */
  static Range rangeWithBump(
      double fromCelsius,
      double toCelsius,
      double a0,
      double a1,
      double a2,
      double... coefficients) {
    return new Range(fromCelsius, toCelsius, a0, a1, a2, coefficients);
  }

  double lowestCelsius() {
    return ranges.get(0).fromCelsius;
  }

  double highestCelsius() {
    return ranges.get(ranges.size() - 1).toCelsius;
  }

  boolean reaches(double celsius) {
    return celsius >= lowestCelsius() && celsius <= highestCelsius();
  }

  /** The emf at a temperature that the function reaches. */
  double millivolts(double celsius) {
    return rangeAt(celsius).millivolts(celsius);
  }

  /** dE/dt; at a join that of the range below. */
  double millivoltsPerKelvin(double celsius) {
    return rangeAt(celsius).millivoltsPerKelvin(celsius);
  }

  /**
   * The temperature that gives this emf, sought from {@code lowestCelsius} up, where the function
   * must rise; empty outside. The emf that a table prints for an end, rounded as it is, counts as
   * the end.
   */
  OptionalDouble celsius(double millivolts, double lowestCelsius) {
    double least = millivolts(lowestCelsius);
    double most = millivolts(highestCelsius());
    if (!(millivolts >= Math.min(least, printed(least))
        && millivolts <= Math.max(most, printed(most)))) {
      return OptionalDouble.empty();
    }
    double inside = Math.max(least, Math.min(most, millivolts));
    for (Range range : ranges) {
      if (range.toCelsius > lowestCelsius && inside <= range.millivolts(range.toCelsius)) {
        return OptionalDouble.of(range.celsius(inside, Math.max(lowestCelsius, range.fromCelsius)));
      }
    }
    return OptionalDouble.of(highestCelsius());
  }

  private static double printed(double millivolts) {
    return Math.rint(millivolts * PRINTED_DIGITS_PER_MILLIVOLT) / PRINTED_DIGITS_PER_MILLIVOLT;
  }

  private Range rangeAt(double celsius) {
    for (Range range : ranges) {
      if (celsius <= range.toCelsius) {
        return range;
      }
    }
    return ranges.get(ranges.size() - 1);
  }

  /** A piece of the function. */
  static final class Range {
    private final double fromCelsius;
    private final double toCelsius;
    private final double a0;
    private final double a1;
    private final double a2;
    private final double[] coefficients;

    private Range(
        double fromCelsius,
        double toCelsius,
        double a0,
        double a1,
        double a2,
        double[] coefficients) {
      this.fromCelsius = fromCelsius;
      this.toCelsius = toCelsius;
      this.a0 = a0;
      this.a1 = a1;
      this.a2 = a2;
      this.coefficients = coefficients;
    }

    private double millivolts(double celsius) {
      double sum = 0.0;
      for (int i = coefficients.length - 1; i >= 0; i--) {
        sum = sum * celsius + coefficients[i];
      }
      return sum + bump(celsius);
    }

    private double millivoltsPerKelvin(double celsius) {
      double sum = 0.0;
      for (int i = coefficients.length - 1; i >= 1; i--) {
        sum = sum * celsius + i * coefficients[i];
      }
      return sum + 2.0 * a1 * (celsius - a2) * bump(celsius);
    }

    private double bump(double celsius) {
      return a0 == 0.0 ? 0.0 : a0 * Math.exp(a1 * (celsius - a2) * (celsius - a2));
    }

    /**
     * Newton's method, kept inside a bracket that shrinks; a step that would leave it halves it.
     */
    private double celsius(double millivolts, double lowestCelsius) {
      double low = lowestCelsius;
      double high = toCelsius;
      double celsius = 0.5 * (low + high);
      for (int step = 0; step < MOST_STEPS; step++) {
        double excess = millivolts(celsius) - millivolts;
        if (excess > 0) {
          high = celsius;
        } else {
          low = celsius;
        }
        double next = celsius - excess / millivoltsPerKelvin(celsius);
        if (!(next >= low && next <= high)) {
          next = 0.5 * (low + high);
        }
        if (Math.abs(next - celsius) <= SETTLED_KELVINS) {
          return next;
        }
        celsius = next;
      }
      return celsius;
    }
  }
}
