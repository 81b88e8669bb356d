package org.heatwright.app.json;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.heatwright.app.enamel.KeptPiece;
import org.heatwright.app.store.PieceEntry;

/** What {@code pieces --kept --json} prints; times are ISO 8601 in UTC. */
public record KeptPiecesJson(List<PieceJson> pieces) {

  /**
   * One piece over all logs that were kept; {@code heatSeconds} is null unless all count at the
   * same temperature.
   */
  public record PieceJson(
      String name, Optional<Double> heatSeconds, int usualMostFirings, List<FiringJson> firings) {}

  /** One firing; {@code fired} is null where its log tells no clock times. */
  public record FiringJson(
      Optional<String> fired,
      String log,
      int number,
      String kiln,
      String metal,
      Optional<Integer> coat,
      String place,
      double inSeconds,
      double staySeconds,
      double workingCelsius,
      double heatSeconds,
      double hottestCelsius,
      String look) {}

  /** The record. */
  public static KeptPiecesJson of(List<KeptPiece> pieces) {
    return new KeptPiecesJson(
        pieces.stream()
            .map(
                piece ->
                    new PieceJson(
                        piece.name(),
                        piece.heatSeconds().isPresent()
                            ? Optional.of(piece.heatSeconds().getAsDouble())
                            : Optional.empty(),
                        piece.usualMost(),
                        piece.firings().stream().map(KeptPiecesJson::firing).toList()))
            .toList());
  }

  private static FiringJson firing(PieceEntry row) {
    return new FiringJson(
        row.fired().map(Instant::toString),
        row.log(),
        row.number(),
        row.kiln(),
        row.metal(),
        row.coat().isPresent() ? Optional.of(row.coat().getAsInt()) : Optional.empty(),
        row.place(),
        row.inSeconds(),
        row.staySeconds(),
        row.workingCelsius(),
        row.heatSeconds(),
        row.hottestCelsius(),
        row.look());
  }
}
