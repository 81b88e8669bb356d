package org.heatwright.work;

import java.util.Optional;
import org.heatwright.units.Temperature;

/**
 * What will be poured into the moulds.
 *
 * @param alloy name of the alloy, e.g. "sterling-925", not blank
 * @param pourMould temperature of the mould at the pour, where the studio has its own value
 */
public record PouredMetal(String alloy, Optional<Temperature> pourMould) {

  public PouredMetal {
    if (alloy.isBlank()) {
      throw new IllegalArgumentException("The alloy needs a name, e.g. sterling-925.");
    }
    pourMould.ifPresent(
        t -> {
          if (!(t.celsius() >= 20 && t.celsius() <= 2000)) {
            throw new IllegalArgumentException(
                "The mould's temperature at the pour (%s °C) must be 20 to 2000 °C."
                    .formatted(t.celsius()));
          }
        });
  }

  /** An alloy at the mould temperature of practice. */
  public static PouredMetal of(String alloy) {
    return new PouredMetal(alloy, Optional.empty());
  }
}
