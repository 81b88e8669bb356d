package org.heatwright.schedule;

import java.time.Duration;
import java.util.List;
import java.util.Optional;

/**
 * How long a program may be. What is beyond is a slip of the hand, and no forecast of it would come
 * to an end. Both limits are our estimate.
 */
public final class ProgramLimits {

  public static final int MOST_SEGMENTS = 200;

  /** Its time on paper, {@code fastest} ramps counted as nothing, the start delay left out, h. */
  public static final double MOST_HOURS = 240;

  private static final double ROOM_CELSIUS = 20;
  private static final double HOURS_OF_A_DAY = 24;
  private static final double MOST_DAYS_TOLD = 1000;
  private static final double SECONDS_OF_AN_HOUR = 3600;

  /**
   * Where a program passes a limit.
   *
   * @param segment that passes it, 1-based
   * @param what it comes to, such as "42 days on paper"
   * @param expected what would be right
   */
  public record Beyond(int segment, String what, String expected) {}

  private ProgramLimits() {}

  /** The first limit that is passed; empty if none is. */
  public static Optional<Beyond> beyond(List<Segment> segments) {
    if (segments.size() > MOST_SEGMENTS) {
      return Optional.of(
          new Beyond(
              MOST_SEGMENTS + 1,
              "%d segments".formatted(segments.size()),
              "at most %d segments".formatted(MOST_SEGMENTS)));
    }
    double hours = 0;
    double celsius = ROOM_CELSIUS;
    int passes = 0;
    for (int i = 0; i < segments.size(); i++) {
      Segment segment = segments.get(i);
      double kelvins = Math.abs(segment.target().celsius() - celsius);
      hours += segment.ramp().rate().map(r -> kelvins / r.kelvinsPerHour()).orElse(0.0);
      hours += segment.hold().toSeconds() / SECONDS_OF_AN_HOUR;
      celsius = segment.target().celsius();
      if (passes == 0 && hours > MOST_HOURS) {
        passes = i + 1;
      }
    }
    return passes == 0
        ? Optional.empty()
        : Optional.of(
            new Beyond(
                passes,
                words(hours) + " on paper",
                "at most %.0f days in all".formatted(MOST_HOURS / HOURS_OF_A_DAY)));
  }

  private static String words(double hours) {
    if (hours >= MOST_DAYS_TOLD * HOURS_OF_A_DAY) {
      return "more than %.0f days".formatted(MOST_DAYS_TOLD);
    }
    long minutes = Math.round(hours * 60);
    long days = minutes / (24 * 60);
    Duration rest = Duration.ofMinutes(minutes % (24 * 60));
    return days + " days" + (rest.isZero() ? "" : " " + HourMinute.words(rest));
  }
}
