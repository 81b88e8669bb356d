package org.heatwright.work.casting;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.heatwright.material.Origin;
import org.heatwright.units.Temperature;

/**
 * A metal or alloy for casting, with what the sources say of it, disagreement and all.
 *
 * @param name in kebab-case, e.g. "yellow-gold-14k"
 * @param family which rules of pouring it follows
 * @param benchDensities densities that bench tables print
 * @param mixes example compositions; the first is the usual one, if we know any
 * @param meltings melting ranges, the first is the one used where one is needed
 */
public record CastingAlloy(
    String name,
    AlloyFamily family,
    List<QuotedDensity> benchDensities,
    List<Mix> mixes,
    List<Melting> meltings) {

  public CastingAlloy {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(family, "family");
    benchDensities = List.copyOf(benchDensities);
    mixes = List.copyOf(mixes);
    meltings = List.copyOf(meltings);
    if (benchDensities.isEmpty() && mixes.isEmpty()) {
      throw new IllegalArgumentException("An alloy needs a density or a composition.");
    }
  }

  /** An alloy the person mixed. */
  public static CastingAlloy ownMix(Mix mix) {
    return new CastingAlloy(
        mix.words(), AlloyFamily.ofMix(mix), List.of(), List.of(mix), List.of());
  }

  /** Every density, those of bench tables first, then those computed from compositions. */
  public List<QuotedDensity> densities() {
    List<QuotedDensity> all = new ArrayList<>(benchDensities);
    for (Mix mix : mixes) {
      if (mix.shares().size() == 1) {
        all.addAll(mix.shares().keySet().iterator().next().densities());
      } else {
        all.add(
            new QuotedDensity(
                "computed, volumes added: " + mix.words(),
                mix.kilogramsPerCubicMetre(),
                Origin.derived("composition " + mix.origin().words())));
      }
    }
    return List.copyOf(all);
  }

  /** The first density, between the lowest and the highest of all sources, kg/m³. */
  public Spread kilogramsPerCubicMetre() {
    List<QuotedDensity> all = densities();
    return new Spread(
        all.stream().mapToDouble(QuotedDensity::kilogramsPerCubicMetre).min().orElseThrow(),
        all.get(0).kilogramsPerCubicMetre(),
        all.stream().mapToDouble(QuotedDensity::kilogramsPerCubicMetre).max().orElseThrow());
  }

  /** The highest liquidus of the sources: what is hot enough by all of them. */
  public Optional<Temperature> liquidus() {
    return meltings.stream().flatMap(m -> m.liquidus().stream()).max(Temperature::compareTo);
  }
}
