package org.heatwright.kiln;

import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * The mains circuit a kiln hangs on.
 *
 * <p>The rules for continuous loads here are US-style practice, to be shown as a note: the local
 * code decides.
 *
 * @param name as the studio calls it
 * @param limitAmperes rating of its breaker, A, above zero
 */
public record Circuit(String name, double limitAmperes) {

  /**
   * A circuit carries this times its continuous load, of three hours or more. Source: read on
   * electrical pages about NEC 210.19 and 210.20.
   */
  private static final double CONTINUOUS_FACTOR = 1.25;

  /** Breakers of small circuits, A. Source: memory, NEC 240.6(A), standard ampere ratings. */
  private static final double[] US_STYLE_BREAKERS = {
    15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200
  };

  public Circuit {
    if (!(limitAmperes > 0)) {
      throw new IllegalArgumentException(
          "The limit of circuit '%s' (%s A) must be above zero.".formatted(name, limitAmperes));
    }
  }

  /** The largest continuous load for this circuit, US-style: 80 % of its breaker, A. */
  public double continuousAmperes() {
    return limitAmperes / CONTINUOUS_FACTOR;
  }

  /** What a circuit must carry for a continuous load, US-style: 125 % of it, A. */
  public static double forContinuousLoadAmperes(double loadAmperes) {
    return CONTINUOUS_FACTOR * loadAmperes;
  }

  /** The smallest US-style breaker for a continuous load, A; empty beyond 200 A. */
  public static OptionalDouble breakerForContinuousLoadAmperes(double loadAmperes) {
    double least = forContinuousLoadAmperes(loadAmperes);
    // A hair of rounding must not cost a size.
    return Arrays.stream(US_STYLE_BREAKERS).filter(size -> size >= least - 1e-9).findFirst();
  }
}
