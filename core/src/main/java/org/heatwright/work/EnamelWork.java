package org.heatwright.work;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.Objects;
import java.util.Optional;
import org.heatwright.schedule.HourMinute;
import org.heatwright.units.Temperature;

/**
 * An enamelling session: the kiln waits at its working temperature, pieces go in and out.
 *
 * @param metal what carries the enamel
 * @param sheetMetres thickness of the metal, m, 0.1 mm to 10 mm
 * @param pieces how many pieces, 1 to 500
 * @param pieceMetres longest side of a piece, m, 5 mm to 0.5 m
 * @param hardness how hard the enamel is
 * @param working chamber temperature, where the studio has its own value
 * @param session how long the kiln is needed at its working temperature, whole minutes, above zero,
 *     up to 24 h
 * @param dataSheet what the maker of the enamel says
 * @param readyBy when the kiln must be ready for the first piece
 */
public record EnamelWork(
    Metal metal,
    double sheetMetres,
    int pieces,
    double pieceMetres,
    Hardness hardness,
    Optional<Temperature> working,
    Duration session,
    DataSheet dataSheet,
    Optional<LocalDateTime> readyBy)
    implements Work {

  /** What carries the enamel. */
  public enum Metal {
    COPPER("copper"),
    FINE_SILVER("fine silver"),
    STERLING_925("sterling silver"),
    GOLD_18K("18 k gold"),
    STEEL("steel");

    private final String words;

    Metal(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  /** How hard the enamel is: harder flows hotter. */
  public enum Hardness {
    SOFT("soft"),
    MEDIUM("medium"),
    HARD("hard");

    private final String words;

    Hardness(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  public EnamelWork {
    Objects.requireNonNull(metal, "metal");
    Objects.requireNonNull(hardness, "hardness");
    Objects.requireNonNull(working, "working");
    Objects.requireNonNull(dataSheet, "dataSheet");
    Objects.requireNonNull(readyBy, "readyBy");
    if (!(sheetMetres >= 1e-4 && sheetMetres <= 0.01)) {
      throw new IllegalArgumentException(
          "The metal's thickness (%s mm) must be 0.1 to 10 mm.".formatted(sheetMetres * 1000));
    }
    if (pieces < 1 || pieces > 500 || !(pieceMetres >= 0.005 && pieceMetres <= 0.5)) {
      throw new IllegalArgumentException(
          "The pieces (%d of %s mm) must be 1 to 500 of 5 to 500 mm."
              .formatted(pieces, pieceMetres * 1000));
    }
    if (session.isNegative()
        || session.isZero()
        || session.compareTo(Duration.ofHours(24)) > 0
        || !session.equals(Duration.ofMinutes(session.toMinutes()))) {
      throw new IllegalArgumentException(
          "The session (%s) must be whole minutes, above zero, up to 24 h."
              .formatted(HourMinute.words(session)));
    }
    working.ifPresent(
        t -> {
          if (!(t.celsius() >= 100 && t.celsius() <= 2000)) {
            throw new IllegalArgumentException(
                "The working temperature (%s °C) must be 100 to 2000 °C.".formatted(t.celsius()));
          }
        });
  }

  @Override
  public String kind() {
    return "enamel";
  }
}
