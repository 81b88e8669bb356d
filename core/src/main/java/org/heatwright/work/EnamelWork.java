package org.heatwright.work;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.Objects;
import java.util.Optional;
import org.heatwright.schedule.HourMinute;
import org.heatwright.units.Temperature;
import org.heatwright.work.enamel.EnamelMetal;
import org.heatwright.work.enamel.EnamelMetals;
import org.heatwright.work.enamel.FusingClass;

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
 * @param build what is known of the piece beyond that; {@link EnamelBuild#unknown} for nothing
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
    Optional<LocalDateTime> readyBy,
    EnamelBuild build)
    implements Work {

  /** What carries the enamel. */
  public enum Metal {
    COPPER(EnamelMetals.COPPER),
    FINE_SILVER(EnamelMetals.FINE_SILVER),
    STERLING_925(EnamelMetals.STERLING),
    GOLD_22K(EnamelMetals.GOLD_22K),
    GOLD_18K(EnamelMetals.GOLD_18K),
    GOLD_18K_YELLOW(EnamelMetals.GOLD_18K_YELLOW),
    GOLD_18K_RED(EnamelMetals.GOLD_18K_RED),
    GOLD_18K_WHITE(EnamelMetals.GOLD_18K_WHITE),
    GOLD_14K(EnamelMetals.GOLD_14K),
    GOLD_14K_YELLOW(EnamelMetals.GOLD_14K_YELLOW),
    GOLD_14K_RED(EnamelMetals.GOLD_14K_RED),
    GOLD_14K_WHITE(EnamelMetals.GOLD_14K_WHITE),
    STEEL(EnamelMetals.STEEL);

    private final EnamelMetal physical;

    Metal(EnamelMetal physical) {
      this.physical = physical;
    }

    public String words() {
      return physical.name();
    }

    /** What it is made of, as physics. */
    public EnamelMetal physical() {
      return physical;
    }

    /** How many firings a piece of it usually stands. */
    public int usualFirings() {
      return EnamelRules.firingsBudget(this);
    }

    /** Whether it is a gold alloy. */
    public boolean gold() {
      return name().startsWith("GOLD");
    }
  }

  /** How hard the enamel is: harder flows hotter. */
  public enum Hardness {
    SOFT("soft", FusingClass.SOFT),
    MEDIUM("medium", FusingClass.MEDIUM),
    HARD("hard", FusingClass.HARD);

    private final String words;
    private final FusingClass fusing;

    Hardness(String words, FusingClass fusing) {
      this.words = words;
      this.fusing = fusing;
    }

    public FusingClass fusing() {
      return fusing;
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
    Objects.requireNonNull(build, "build");
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

  public EnamelWork withBuild(EnamelBuild newBuild) {
    return new EnamelWork(
        metal,
        sheetMetres,
        pieces,
        pieceMetres,
        hardness,
        working,
        session,
        dataSheet,
        readyBy,
        newBuild);
  }

  @Override
  public String kind() {
    return "enamel";
  }
}
