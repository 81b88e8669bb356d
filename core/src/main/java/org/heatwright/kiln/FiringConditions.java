package org.heatwright.kiln;

import java.util.List;
import java.util.Optional;
import org.heatwright.units.Temperature;

/**
 * What is so on the day of a firing, apart from the load.
 *
 * @param room room temperature; empty: the kiln's usual one, less certain
 * @param start temperature inside the kiln at the start; empty: the room's
 * @param ventOpen whether a vent stands open
 * @param supplyVolts measured supply, V; empty: the nameplate's
 * @param disturbances known door openings and mains cuts, seconds from the program's start
 * @param pieces what went in cold and came out while the kiln was hot; empty: not known, {@link
 *     ColdPieces#NONE}: nothing
 */
public record FiringConditions(
    Optional<Temperature> room,
    Optional<Temperature> start,
    boolean ventOpen,
    Optional<Double> supplyVolts,
    List<Disturbance> disturbances,
    Optional<ColdPieces> pieces) {

  public FiringConditions {
    disturbances = List.copyOf(disturbances);
  }

  /** A day of which nothing is said of pieces. */
  public FiringConditions(
      Optional<Temperature> room,
      Optional<Temperature> start,
      boolean ventOpen,
      Optional<Double> supplyVolts,
      List<Disturbance> disturbances) {
    this(room, start, ventOpen, supplyVolts, disturbances, Optional.empty());
  }

  /** Nothing known beyond the kiln's nameplate. */
  public static FiringConditions usual() {
    return new FiringConditions(
        Optional.empty(), Optional.empty(), false, Optional.empty(), List.of());
  }

  /** The same day with something more that happened. */
  public FiringConditions with(Disturbance more) {
    List<Disturbance> all = new java.util.ArrayList<>(disturbances);
    all.add(more);
    return new FiringConditions(room, start, ventOpen, supplyVolts, all, pieces);
  }

  /** The same day with another temperature at the start. */
  public FiringConditions starting(Temperature inside) {
    return new FiringConditions(
        room, Optional.of(inside), ventOpen, supplyVolts, disturbances, pieces);
  }

  /** The same day with more that happened, and with pieces that went in cold. */
  public FiringConditions with(List<Disturbance> more, Optional<ColdPieces> cold) {
    List<Disturbance> all = new java.util.ArrayList<>(disturbances);
    all.addAll(more);
    return new FiringConditions(room, start, ventOpen, supplyVolts, all, cold);
  }

  /**
   * Pieces of one kind, with what carries them, that go in as cold as the room and come out again,
   * one after the other. The kiln is without one until the first goes in.
   *
   * @param joulesPerKelvin heat of one, J/K, above zero
   * @param squareMetres its surface, m², above zero
   * @param changes when what was inside came out, in order
   */
  public record ColdPieces(double joulesPerKelvin, double squareMetres, List<Change> changes) {

    /** Nothing went in, however often the door was opened. */
    public static final ColdPieces NONE = new ColdPieces(1, 1, List.of());

    public ColdPieces {
      if (!(joulesPerKelvin > 0) || !(squareMetres > 0)) {
        throw new IllegalArgumentException(
            "The piece (%s J/K, %s m²) must have heat and a surface above zero."
                .formatted(joulesPerKelvin, squareMetres));
      }
      changes = List.copyOf(changes);
    }

    /**
     * What was inside, if anything, is out.
     *
     * @param atSeconds s from the program's start
     * @param goesIn whether a cold one is in its place
     */
    public record Change(double atSeconds, boolean goesIn) {}
  }

  /**
   * Something that happens to the kiln for a while.
   *
   * @param kind what happens
   * @param atSeconds when it begins, s from the program's start, zero or more
   * @param lengthSeconds how long it lasts, s, above zero; infinite: for good
   * @param sizeShare how much of it, in the kind's own measure, 0 to 1
   */
  public record Disturbance(Kind kind, double atSeconds, double lengthSeconds, double sizeShare) {
    /** The kinds of disturbance. */
    public enum Kind {
      /** A person opens the door; the elements are taken to be cut meanwhile. */
      DOOR_OPEN("door open", 1),
      /**
       * The mains are off and the program's clock stands; size: the share that a proportional
       * controller forgets of its integral.
       */
      MAINS_OFF("mains off", 1),
      /** Some of the elements give no heat; size: the share of the power that is gone. */
      ELEMENT_OPEN("element open", 0.5),
      /** The thermocouple's tip is pulled back; size: the share that it sees of its hole. */
      TIP_OUT("tip out", 0.4),
      /** The elements stay on whatever the controller says. */
      RELAY_ON("relay stuck on", 1),
      /** The elements stay off whatever the controller says; the program runs on. */
      RELAY_OFF("relay stuck off", 1),
      /** The door does not shut; size: the gap as a share of the whole opening. */
      DOOR_AJAR("door ajar", 0.04);

      private final String words;
      private final double usualShare;

      Kind(String words, double usualShare) {
        this.words = words;
        this.usualShare = usualShare;
      }

      /** What to call it in a sentence, e.g. "door open". */
      public String words() {
        return words;
      }
    }

    /** A disturbance of its kind's usual size (our estimates). */
    public Disturbance(Kind kind, double atSeconds, double lengthSeconds) {
      this(kind, atSeconds, lengthSeconds, kind.usualShare);
    }

    public Disturbance {
      if (!(atSeconds >= 0) || !(lengthSeconds > 0) || !(sizeShare > 0 && sizeShare <= 1)) {
        throw new IllegalArgumentException(
            ("The disturbance (at %s s for %s s, size %s) must begin at zero or later, last a while"
                    + " and have a size above 0 and at most 1.")
                .formatted(atSeconds, lengthSeconds, sizeShare));
      }
    }
  }
}
