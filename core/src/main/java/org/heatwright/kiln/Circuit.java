package org.heatwright.kiln;

/**
 * The mains circuit a kiln hangs on.
 *
 * @param name as the studio calls it
 * @param limitAmperes rating of its breaker, A, above zero
 */
public record Circuit(String name, double limitAmperes) {
  public Circuit {
    if (!(limitAmperes > 0)) {
      throw new IllegalArgumentException(
          "The limit of circuit '%s' (%s A) must be above zero.".formatted(name, limitAmperes));
    }
  }
}
