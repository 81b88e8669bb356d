package org.heatwright.learn;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.FiringConditions.Disturbance;

/**
 * The openings of the door that a log tells or shows: a hot kiln is opened, a cold piece goes in or
 * a hot one comes out, and the door is shut again. Times count like the readings'.
 *
 * @param openings in order
 */
public record DoorSession(List<Opening> openings) {

  /** No opening. */
  public static final DoorSession NONE = new DoorSession(List.of());

  /** A reading so long before an opening, or after one, may be the opening's, s. Our estimate. */
  private static final double BEFORE_SECONDS = 60;

  private static final double AFTER_SECONDS = 300;

  /** What the day states is the opening that the log tells if it begins within this, s. */
  private static final double SAME_SECONDS = 60;

  public DoorSession {
    openings = List.copyOf(openings);
  }

  /**
   * One opening.
   *
   * @param atSeconds when it began, s
   * @param seconds how long, s: as the log says, or from the display's fall to its bottom
   * @param told whether the log says so itself
   * @param goesIn whether something cold went in, as far as is known
   * @param fallKelvins how far the display fell, K
   */
  public record Opening(
      double atSeconds, double seconds, boolean told, boolean goesIn, double fallKelvins) {

    public Opening {
      if (!Double.isFinite(atSeconds) || !(seconds > 0) || !(fallKelvins >= 0)) {
        throw new IllegalArgumentException(
            "The opening (at %s s for %s s, %s K) must last a while and have a fall of zero or more."
                .formatted(atSeconds, seconds, fallKelvins));
      }
    }
  }

  public boolean isEmpty() {
    return openings.isEmpty();
  }

  /** Whether something cold went in at one of them. */
  boolean cold() {
    return openings.stream().anyMatch(Opening::goesIn);
  }

  /** Whether the log says of all of them how long they were; else lengths are guesses. */
  public boolean told() {
    return openings.stream().allMatch(Opening::told);
  }

  /** Whether a reading is so near to an opening that a leap of it is no slip. */
  boolean touches(double second) {
    return near(second).findAny().isPresent();
  }

  /** The most that the display fell at an opening that a reading is near to, K; else zero. */
  double fallKelvins(double second) {
    return near(second).mapToDouble(Opening::fallKelvins).max().orElse(0);
  }

  private Stream<Opening> near(double second) {
    return openings.stream()
        .filter(
            o ->
                second > o.atSeconds() - BEFORE_SECONDS
                    && second < o.atSeconds() + o.seconds() + AFTER_SECONDS);
  }

  /**
   * An opening as it is simulated.
   *
   * @param as what happens to the kiln
   * @param stated whether the day's conditions state it already
   * @param goesIn whether something cold goes in
   */
  record Simulated(Disturbance as, boolean stated, boolean goesIn) {
    double shutSeconds() {
      return as.atSeconds() + as.lengthSeconds();
    }
  }

  /**
   * The openings of a program as they are simulated.
   *
   * @param day what the day's conditions state goes before what the log says
   * @param readFactor how long an opening lasted whose length is a guess, over that
   */
  List<Simulated> on(FiringConditions day, double readFactor) {
    List<Disturbance> stated = new ArrayList<>(day.disturbances());
    List<Simulated> all = new ArrayList<>();
    for (Opening opening : openings) {
      if (opening.atSeconds() < 0) {
        continue;
      }
      Optional<Disturbance> same =
          stated.stream()
              .filter(d -> d.kind() == Disturbance.Kind.DOOR_OPEN)
              .filter(d -> Math.abs(d.atSeconds() - opening.atSeconds()) <= SAME_SECONDS)
              .min(Comparator.comparingDouble(d -> Math.abs(d.atSeconds() - opening.atSeconds())));
      same.ifPresent(stated::remove);
      double length = opening.told() ? 1 : Math.min(1, readFactor);
      all.add(
          new Simulated(
              same.orElse(
                  new Disturbance(
                      Disturbance.Kind.DOOR_OPEN, opening.atSeconds(), opening.seconds() * length)),
              same.isPresent(),
              opening.goesIn()));
    }
    return all;
  }

  /** What these openings add to a day that states some of them. */
  List<Disturbance> more(FiringConditions day, double readFactor) {
    return on(day, readFactor).stream().filter(o -> !o.stated()).map(Simulated::as).toList();
  }

  /** The same with every time from a second on later by {@code later} s. */
  DoorSession shiftedFrom(double second, double later) {
    return new DoorSession(
        openings.stream()
            .map(
                o ->
                    o.atSeconds() < second
                        ? o
                        : new Opening(
                            o.atSeconds() + later,
                            o.seconds(),
                            o.told(),
                            o.goesIn(),
                            o.fallKelvins()))
            .toList());
  }

  /** The same with every time later by {@code later} s. */
  DoorSession shifted(double later) {
    return shiftedFrom(Double.NEGATIVE_INFINITY, later);
  }
}
