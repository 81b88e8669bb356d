package org.heatwright.app.json;

import java.util.List;
import java.util.Optional;
import org.heatwright.work.casting.Lot;

/**
 * What {@code cast fineness --json} prints: the lots melted together, and what to add, both null
 * where no fineness was asked for.
 */
public record CastFinenessJson(
    MeltJson together, Optional<MeltJson> add, Optional<MeltJson> result, List<String> notes) {

  /** Metal of one fineness; thousandths of the precious metal. */
  public record MeltJson(double grams, double fineness, double karats) {
    static MeltJson of(Lot lot) {
      return new MeltJson(
          lot.kilograms() * 1000, lot.fineness().thousandths(), lot.fineness().karats());
    }
  }

  public static CastFinenessJson of(Lot together, Optional<Lot> add, List<String> notes) {
    return new CastFinenessJson(
        MeltJson.of(together),
        add.map(MeltJson::of),
        add.map(a -> MeltJson.of(together.and(a))),
        notes);
  }
}
