package org.heatwright.inspect;

import java.time.Duration;
import java.util.Objects;
import org.heatwright.material.Origin;
import org.heatwright.units.Temperature;

/**
 * What must happen inside the moulds of one kind, each limit with the place it comes from. The
 * limits of steam and of unevenness are what the fastest schedule of practice does to this very
 * mould, so that they hold for its size and mix.
 *
 * @param mould 1-based position in the list of moulds
 * @param what the mould in a few words, e.g. "the mould of 90 mm"
 * @param melts whether its pattern runs out before it burns, as wax does
 * @param steamKilogramsPerSecond the most steam of one mould, kg/s, above zero
 * @param boilingKelvins the most between two places while the water boils, K, above zero
 * @param cristobaliteKelvins the most between two places while cristobalite turns, K, above zero
 * @param quartzKelvins the most between two places while quartz turns, K, above zero
 * @param tensionPascals the most tension while no silica turns, Pa, zero or more
 * @param burn what the coldest place must get as burning of carbon, as time at {@code burnAt}
 * @param burnAt the temperature for which {@code burn} is stated
 * @param burnOrigin where that comes from
 * @param limit what no place may pass
 * @param limitOrigin where that comes from
 */
public record CoreDemands(
    int mould,
    String what,
    boolean melts,
    double steamKilogramsPerSecond,
    double boilingKelvins,
    double cristobaliteKelvins,
    double quartzKelvins,
    double tensionPascals,
    Duration burn,
    Temperature burnAt,
    Origin burnOrigin,
    Temperature limit,
    Origin limitOrigin) {

  public CoreDemands {
    Objects.requireNonNull(what, "what");
    Objects.requireNonNull(burn, "burn");
    Objects.requireNonNull(burnAt, "burnAt");
    Objects.requireNonNull(burnOrigin, "burnOrigin");
    Objects.requireNonNull(limit, "limit");
    Objects.requireNonNull(limitOrigin, "limitOrigin");
    if (!(steamKilogramsPerSecond > 0)
        || !(boilingKelvins > 0)
        || !(cristobaliteKelvins > 0)
        || !(quartzKelvins > 0)) {
      throw new IllegalArgumentException(
          "The limits of steam (%s kg/s) and unevenness (%s K, %s K, %s K) must be above zero."
              .formatted(
                  steamKilogramsPerSecond, boilingKelvins, cristobaliteKelvins, quartzKelvins));
    }
  }
}
