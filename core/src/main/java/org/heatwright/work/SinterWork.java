package org.heatwright.work;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.heatwright.piece.Slab;
import org.heatwright.work.sinter.CarbonBox;
import org.heatwright.work.sinter.Clay;
import org.heatwright.work.sinter.ClayFacts;
import org.heatwright.work.sinter.Clays;
import org.heatwright.work.sinter.CurveBelief;
import org.heatwright.work.sinter.TestFiring;

/**
 * Metal clay to be fired: the binder burns away and the metal sinters.
 *
 * @param clay all pieces of one firing are of the same
 * @param phase which part of the firing this is
 * @param pieces one entry for each kind of piece, not empty
 * @param box the box of carbon, where the pieces lie in one and its size is known
 * @param aim what to look for where several firings are possible
 * @param dryAt when the pieces are dry and may go in, where that is told; before {@code readyBy}
 * @param tests strips of this clay that were measured
 * @param dataSheet what the maker of the clay says
 * @param readyBy when the pieces must be in their owners' hands
 */
public record SinterWork(
    Clay clay,
    Phase phase,
    List<Piece> pieces,
    Optional<CarbonBox> box,
    Aim aim,
    Optional<LocalDateTime> dryAt,
    List<TestFiring> tests,
    DataSheet dataSheet,
    Optional<LocalDateTime> readyBy)
    implements Work {

  /** A measured strip is about so thick. {@code estimate:} */
  private static final double STRIP_METRES = 0.002;

  /** About a piece on the shelf, W/(m² K). {@code estimate:} */
  static final double FILM = 8;

  /** Which part of the firing. */
  public enum Phase {
    /** The binder alone, on an open shelf, in air. */
    BINDER,
    /** The metal alone; the binder has gone before. */
    SINTER,
    BOTH_IN_ONE
  }

  /** What to look for. */
  public enum Aim {
    STRONGEST,
    QUICKEST
  }

  /** What a piece holds that limits the heat. */
  public enum Embedded {
    NONE,
    GLASS,
    /** Any stone of nature, or one that nobody knows. */
    STONE,
    /** A stone grown in a laboratory: ruby, sapphire, spinel, zirconia. */
    LAB_STONE,
    /** A core of cork or cork clay. */
    CORK
  }

  /**
   * Equal pieces.
   *
   * @param count 1 to 200
   * @param thicknessMetres the thickest part, m, 0.3 mm to 30 mm
   * @param lengthMetres longest side, m, 3 mm to 0.3 m
   * @param embedded what is in it
   */
  public record Piece(int count, double thicknessMetres, double lengthMetres, Embedded embedded) {
    public Piece {
      Objects.requireNonNull(embedded, "embedded");
      if (count < 1 || count > 200) {
        throw new IllegalArgumentException("The count (%d) must be 1 to 200.".formatted(count));
      }
      if (!(thicknessMetres >= 0.0003 && thicknessMetres <= 0.03)
          || !(lengthMetres >= 0.003 && lengthMetres <= 0.3)) {
        throw new IllegalArgumentException(
            "The piece (%s mm thick, %s mm long) must be 0.3 to 30 mm thick and 3 to 300 mm long."
                .formatted(thicknessMetres * 1000, lengthMetres * 1000));
      }
    }
  }

  public SinterWork {
    Objects.requireNonNull(clay, "clay");
    Objects.requireNonNull(phase, "phase");
    pieces = List.copyOf(pieces);
    Objects.requireNonNull(box, "box");
    Objects.requireNonNull(aim, "aim");
    Objects.requireNonNull(dryAt, "dryAt");
    tests = List.copyOf(tests);
    Objects.requireNonNull(dataSheet, "dataSheet");
    Objects.requireNonNull(readyBy, "readyBy");
    if (pieces.isEmpty()) {
      throw new IllegalArgumentException("A firing of metal clay needs at least one piece.");
    }
    if (box.isPresent() && clay.isFineSilver()) {
      throw new IllegalArgumentException(
          "Fine silver fires on an open shelf: leave the box of carbon away.");
    }
    if (dryAt.isPresent() && readyBy.isPresent() && !dryAt.get().isBefore(readyBy.get())) {
      throw new IllegalArgumentException(
          "The pieces are dry at %s, which is not before they must be ready at %s."
              .formatted(dryAt.get(), readyBy.get()));
    }
  }

  /** Where nothing is said: fine silver in one go, what has copper in it the binder first. */
  public static Phase usualPhase(Clay clay) {
    return clay.isFineSilver() ? Phase.BOTH_IN_ONE : Phase.BINDER;
  }

  @Override
  public String kind() {
    return "sinter";
  }

  /** How many pieces there are in all. */
  public int count() {
    return pieces.stream().mapToInt(Piece::count).sum();
  }

  /** The thickest: it rules the times. */
  public Piece thickest() {
    return pieces.stream().max(Comparator.comparingDouble(Piece::thicknessMetres)).orElseThrow();
  }

  /** Longest side of any, m. */
  public double longestMetres() {
    return pieces.stream().mapToDouble(Piece::lengthMetres).max().orElseThrow();
  }

  /** Whether some piece holds this. */
  public boolean holds(Embedded embedded) {
    return pieces.stream().anyMatch(piece -> piece.embedded() == embedded);
  }

  /** Whether some piece holds glass or a stone: no quick heat, no water, a shut kiln. */
  public boolean holdsWhatCracks() {
    return holds(Embedded.GLASS) || holds(Embedded.STONE) || holds(Embedded.LAB_STONE);
  }

  /** Whether the pieces lie in carbon. */
  public boolean inCarbon() {
    return !clay.isFineSilver() && phase != Phase.BINDER;
  }

  /** The box, where the pieces lie in carbon: the stated one, else the usual one for them. */
  public Optional<CarbonBox> carbonBox() {
    return inCarbon()
        ? box.or(
            () ->
                Optional.of(
                    CarbonBox.usualFor(
                        Clays.of(clay), thickest().thicknessMetres(), longestMetres())))
        : Optional.empty();
  }

  /**
   * What is believed of the clay's sintering curve, by the literature's ranges and the measured
   * strips; those were fired as these pieces are, in the box or on a shelf.
   *
   * @return empty for a clay that has no such curve
   */
  public Optional<CurveBelief> belief() {
    ClayFacts facts = Clays.of(clay);
    Slab strip =
        carbonBox()
            .map(carbon -> carbon.slab(facts, STRIP_METRES))
            .orElseGet(
                () ->
                    Slab.lying(
                        facts.dense(), STRIP_METRES, new Slab.Face(facts.emissivity(), FILM)));
    return CurveBelief.of(facts, tests.stream().map(test -> test.in(strip)).toList());
  }

  /** How long there is from dry pieces to pieces in the hand, where both are told. */
  public Optional<Duration> window() {
    return dryAt.flatMap(dry -> readyBy.map(ready -> Duration.between(dry, ready)));
  }
}
