package org.heatwright.work;

import java.time.Duration;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.SegmentForecast;
import org.heatwright.forecast.StartPlanner;
import org.heatwright.inspect.Wording;
import org.heatwright.units.TemperatureUnit;

/**
 * A time at which a person must do something or can last change something. It is tied to the
 * schedule, so a forecast turns it into a clock time.
 *
 * @param kind what sort of moment it is
 * @param anchor what it is tied to
 * @param segment 1-based segment for the anchors that need one; 0 otherwise
 * @param after how long after the anchor, zero or more
 * @param what what to do, short: "pour the first mould"
 * @param why why then, one sentence
 * @param deadline whether what is done after it is too late: of a band only the early end is sure
 */
public record Moment(
    Kind kind,
    Anchor anchor,
    int segment,
    Duration after,
    String what,
    String why,
    boolean deadline) {

  /** The sorts of moments. */
  public enum Kind {
    /** The work is ready. */
    READY,
    /** Somebody must be there and act. */
    ACT,
    /** Until then a number can still be changed. */
    LAST_CHANGE
  }

  /** What a moment is tied to. */
  public enum Anchor {
    PROGRAM_START,
    /** The hold of {@code segment} begins. */
    SEGMENT_REACHED,
    SEGMENT_END,
    /** All of the work is ready; for an empty kiln, the last segment is reached. */
    WORK_READY,
    PROGRAM_END
  }

  public Moment {
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(what, "what");
    Objects.requireNonNull(why, "why");
    boolean needsSegment = anchor == Anchor.SEGMENT_REACHED || anchor == Anchor.SEGMENT_END;
    if (needsSegment != (segment > 0) || after.isNegative()) {
      throw new IllegalArgumentException(
          "The moment '%s' (%s, segment %d, %s after) needs a segment only for segment anchors and"
                  .formatted(what, anchor, segment, after)
              + " must not lie before its anchor.");
    }
  }

  /** A deadline where it is the last time for a change. */
  public Moment(Kind kind, Anchor anchor, int segment, Duration after, String what, String why) {
    this(kind, anchor, segment, after, what, why, kind == Kind.LAST_CHANGE);
  }

  /** The same, to be done by then and not only then. */
  Moment asDeadline() {
    return new Moment(kind, anchor, segment, after, what, why, true);
  }

  /**
   * When it comes, s from the program's start. Empty if the work is not ready in every case, if the
   * schedule that was forecast has no such segment, or if in most cases the kiln never gets there;
   * a deadline keeps its early end as long as there is one.
   */
  public Optional<Band> seconds(Forecast forecast) {
    if (segment > forecast.segments().size()) {
      return Optional.empty();
    }
    double share = share(forecast);
    if (!(deadline ? SegmentForecast.hasLow(share) : SegmentForecast.hasMedian(share))) {
      return Optional.empty();
    }
    Optional<Band> anchored =
        switch (anchor) {
          case PROGRAM_START -> Optional.of(Band.exactly(0));
          case SEGMENT_REACHED ->
              Optional.of(forecast.segments().get(segment - 1).reachedSeconds());
          case SEGMENT_END -> Optional.of(forecast.segments().get(segment - 1).endSeconds());
          case WORK_READY -> StartPlanner.readySeconds(forecast);
          case PROGRAM_END -> Optional.of(forecast.endSeconds());
        };
    return anchored.map(band -> band.plus(after.toSeconds()));
  }

  /** Whether it comes in so many cases that its band is one. */
  boolean hasBand(Forecast forecast) {
    return segment <= forecast.segments().size() && SegmentForecast.hasBand(share(forecast));
  }

  /** In how many cases the kiln gets to what it is tied to, 0 to 1. */
  private double share(Forecast forecast) {
    List<SegmentForecast> segments = forecast.segments();
    return switch (anchor) {
      case PROGRAM_START, WORK_READY -> 1;
      case SEGMENT_REACHED, SEGMENT_END -> segments.get(segment - 1).reachedShare();
      case PROGRAM_END -> forecast.endsShare();
    };
  }

  /** The same in another unit. */
  Moment in(TemperatureUnit unit) {
    return new Moment(
        kind, anchor, segment, after, Wording.in(what, unit), Wording.in(why, unit), deadline);
  }
}
