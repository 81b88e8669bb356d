package org.heatwright.work.casting;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.heatwright.material.Origin;
import org.heatwright.mould.Investment.Binder;
import org.heatwright.units.Temperature;

/**
 * What is to be poured into what.
 *
 * @param alloy its name
 * @param family which rules it follows
 * @param meltings melting ranges; the person's own alone where there is one
 * @param section class of the thinnest section, if known; on a mixed tree that of the lightest
 *     piece
 * @param method what drives the metal
 * @param binder what binds the mould
 * @param ownMould the studio's own temperature of the mould
 * @param ownMetal the studio's own temperature of the metal
 */
public record PouringQuestion(
    String alloy,
    AlloyFamily family,
    List<Melting> meltings,
    Optional<SectionClass> section,
    PouringMethod method,
    Binder binder,
    Optional<Temperature> ownMould,
    Optional<Temperature> ownMetal) {

  public PouringQuestion {
    Objects.requireNonNull(alloy, "alloy");
    Objects.requireNonNull(family, "family");
    Objects.requireNonNull(method, "method");
    Objects.requireNonNull(binder, "binder");
    meltings = List.copyOf(meltings);
    if (family.needsPhosphate() && binder != Binder.PHOSPHATE) {
      throw new IllegalArgumentException(
          "%s is too hot for a gypsum-bonded mould; it takes a phosphate-bonded one."
              .formatted(alloy));
    }
  }

  /** A known alloy, nothing else known. */
  public static PouringQuestion of(CastingAlloy alloy, PouringMethod method) {
    return new PouringQuestion(
        alloy.name(),
        alloy.family(),
        alloy.meltings(),
        Optional.empty(),
        method,
        alloy.family().needsPhosphate() ? Binder.PHOSPHATE : Binder.GYPSUM,
        Optional.empty(),
        Optional.empty());
  }

  /**
   * An alloy by its name: a known one, else one whose name tells the family, else another metal.
   *
   * @param binder taken as phosphate where it is not known and the metal needs that
   */
  public static PouringQuestion named(String alloy, PouringMethod method, Binder binder) {
    Optional<CastingAlloy> known = CastingAlloys.find(alloy);
    AlloyFamily family =
        known
            .map(CastingAlloy::family)
            .or(() -> AlloyFamily.ofName(alloy))
            .orElse(AlloyFamily.OTHER);
    return new PouringQuestion(
        known.map(CastingAlloy::name).orElse(alloy),
        family,
        known.map(CastingAlloy::meltings).orElse(List.of()),
        Optional.empty(),
        method,
        family.needsPhosphate() && binder == Binder.UNKNOWN ? Binder.PHOSPHATE : binder,
        Optional.empty(),
        Optional.empty());
  }

  public PouringQuestion withSection(SectionClass newSection) {
    return new PouringQuestion(
        alloy, family, meltings, Optional.of(newSection), method, binder, ownMould, ownMetal);
  }

  public PouringQuestion withOwn(Optional<Temperature> mould, Optional<Temperature> metal) {
    return new PouringQuestion(alloy, family, meltings, section, method, binder, mould, metal);
  }

  /** The liquidus the person knows, in place of every source's. */
  public PouringQuestion withLiquidus(Temperature liquidus) {
    return new PouringQuestion(
        alloy,
        family,
        List.of(new Melting(Optional.empty(), Optional.of(liquidus), Origin.own(""))),
        section,
        method,
        binder,
        ownMould,
        ownMetal);
  }

  /** The highest liquidus that is told. */
  public Optional<Temperature> liquidus() {
    return meltings.stream().flatMap(m -> m.liquidus().stream()).max(Temperature::compareTo);
  }
}
