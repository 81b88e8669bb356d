package org.heatwright.work;

import java.time.LocalDateTime;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.heatwright.mould.Investment;

/**
 * Moulds to be dried, cleared of their patterns and brought to the temperature of the pour.
 *
 * @param moulds one entry for each kind of mould, not empty
 * @param investment the mix; all moulds of one firing are of the same
 * @param dataSheet what the maker of the investment says
 * @param metal what will be poured
 * @param readyBy when the first mould must be ready
 */
public record BurnoutWork(
    List<PatternedMould> moulds,
    Investment investment,
    DataSheet dataSheet,
    PouredMetal metal,
    Optional<LocalDateTime> readyBy)
    implements Work {

  public BurnoutWork {
    moulds = List.copyOf(moulds);
    Objects.requireNonNull(investment, "investment");
    Objects.requireNonNull(dataSheet, "dataSheet");
    Objects.requireNonNull(metal, "metal");
    Objects.requireNonNull(readyBy, "readyBy");
    if (moulds.isEmpty()) {
      throw new IllegalArgumentException("A burnout needs at least one mould.");
    }
  }

  @Override
  public String kind() {
    return "burnout";
  }

  /** How many moulds there are in all. */
  public int count() {
    return moulds.stream().mapToInt(m -> m.mould().count()).sum();
  }

  /** The thickest mould: it rules the schedule. */
  public PatternedMould largest() {
    return moulds.stream()
        .max(Comparator.comparingDouble(m -> m.mould().diameterMetres()))
        .orElseThrow();
  }
}
