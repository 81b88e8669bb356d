package org.heatwright.work;

import java.util.Optional;
import java.util.OptionalDouble;
import org.heatwright.mould.Investment.Binder;
import org.heatwright.units.Temperature;
import org.heatwright.work.casting.PouringMethod;
import org.heatwright.work.casting.PouringQuestion;
import org.heatwright.work.casting.SectionClass;

/**
 * What will be poured into the moulds, and how.
 *
 * @param alloy name of the alloy, e.g. "sterling-925", not blank
 * @param pourMould temperature of the mould at the pour, where the studio has its own value
 * @param pourMetal temperature of the metal at the pour, likewise
 * @param leastMould the outermost pattern's place must not be cooler at the pour, where the studio
 *     says so
 * @param thinnestMetres the thinnest section of all pieces, m, where it is known
 * @param method what drives the metal into the mould, where it is known
 */
public record PouredMetal(
    String alloy,
    Optional<Temperature> pourMould,
    Optional<Temperature> pourMetal,
    Optional<Temperature> leastMould,
    OptionalDouble thinnestMetres,
    Optional<PouringMethod> method) {

  public PouredMetal {
    if (alloy.isBlank()) {
      throw new IllegalArgumentException("The alloy needs a name, e.g. sterling-925.");
    }
    require("mould's temperature at the pour", pourMould);
    require("metal's temperature at the pour", pourMetal);
    require("mould's least temperature at the pour", leastMould);
    thinnestMetres.ifPresent(SectionClass::ofMetres);
    if (pourMould.isPresent()
        && leastMould.isPresent()
        && leastMould.get().compareTo(pourMould.get()) >= 0) {
      throw new IllegalArgumentException(
          "The mould's least temperature at the pour (%s °C) must be below the one it leaves the kiln with (%s °C)."
              .formatted(leastMould.get().celsius(), pourMould.get().celsius()));
    }
  }

  private static void require(String what, Optional<Temperature> temperature) {
    temperature.ifPresent(
        t -> {
          if (!(t.celsius() >= 20 && t.celsius() <= 2000)) {
            throw new IllegalArgumentException(
                "The %s (%s °C) must be 20 to 2000 °C.".formatted(what, t.celsius()));
          }
        });
  }

  /** Nothing known but the alloy and, maybe, the mould. */
  public PouredMetal(String alloy, Optional<Temperature> pourMould) {
    this(
        alloy,
        pourMould,
        Optional.empty(),
        Optional.empty(),
        OptionalDouble.empty(),
        Optional.empty());
  }

  /** An alloy at the mould temperature of practice. */
  public static PouredMetal of(String alloy) {
    return new PouredMetal(alloy, Optional.empty());
  }

  /** What is asked of the sources; vacuum where no method is known. */
  public PouringQuestion question(Binder binder) {
    PouringQuestion asked =
        PouringQuestion.named(alloy, method.orElse(PouringMethod.VACUUM), binder)
            .withOwn(pourMould, pourMetal);
    return thinnestMetres.isPresent()
        ? asked.withSection(SectionClass.ofMetres(thinnestMetres.getAsDouble()))
        : asked;
  }
}
