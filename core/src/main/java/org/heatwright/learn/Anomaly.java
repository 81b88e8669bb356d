package org.heatwright.learn;

import java.time.Duration;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.heatwright.forecast.ClockWords;
import org.heatwright.kiln.FiringConditions.Disturbance;
import org.heatwright.schedule.HourMinute;

/**
 * Something that went wrong while a firing was logged.
 *
 * @param likeliest what it was: the kind, the beginning, the length and the size that explain the
 *     display best
 * @param alternatives other kinds that explain the display as well, likeliest first: the display
 *     alone cannot tell them apart
 * @param logOddsFactor by how much the log is likelier with it than without, natural logarithm
 * @param onsetSpreadSeconds standard deviation of the beginning, s
 */
public record Anomaly(
    Disturbance likeliest,
    List<Disturbance.Kind> alternatives,
    double logOddsFactor,
    double onsetSpreadSeconds) {

  public Anomaly {
    alternatives = List.copyOf(alternatives);
  }

  /** What it was, or one of {@link #alternatives}. */
  public Disturbance.Kind kind() {
    return likeliest.kind();
  }

  /** When it began, s from the program's start. */
  public double beganSeconds() {
    return likeliest.atSeconds();
  }

  /** How long it lasted, s; empty: to the end of the log. */
  public OptionalDouble lengthSeconds() {
    return Double.isInfinite(likeliest.lengthSeconds())
        ? OptionalDouble.empty()
        : OptionalDouble.of(likeliest.lengthSeconds());
  }

  /** Whether a kind is named, as the likeliest or as one that would explain it as well. */
  public boolean names(Disturbance.Kind asked) {
    return asked == kind() || alternatives.contains(asked);
  }

  /** When it began after the program's start, e.g. "+2:14" (hours and minutes). */
  public String beganWords() {
    return "+" + HourMinute.format(Duration.ofSeconds(Math.round(beganSeconds())));
  }

  /**
   * What happened, in a sentence or two, e.g. "At 14:32 (+1:46) the display began to move as if the
   * mains were off; it lasted 5 min."
   *
   * @param started when the program started, by the clock where the kiln stands, where it is known
   */
  public String happened(Optional<ZonedDateTime> started) {
    String clock =
        started
            .map(time -> ClockWords.time(time.plusSeconds(Math.round(beganSeconds()))) + " (%s)")
            .orElse("%s");
    return happened("At " + clock.formatted(beganWords()));
  }

  private String happened(String when) {
    String lasted =
        lengthSeconds().isPresent()
            ? "; it lasted "
                + HourMinute.words(Duration.ofSeconds(Math.round(lengthSeconds().getAsDouble())))
            : "";
    String first =
        "%s the display began to move as if %s%s."
            .formatted(when, clause(kind(), likeliest.sizeShare()), lasted);
    if (alternatives.isEmpty()) {
      return first;
    }
    return first
        + " The display alone cannot tell this from %s."
            .formatted(String.join(" or ", alternatives.stream().map(Anomaly::noun).toList()));
  }

  private static String clause(Disturbance.Kind kind, double size) {
    return switch (kind) {
      case DOOR_OPEN -> "the door were open";
      case MAINS_OFF -> "the mains were off";
      case ELEMENT_OPEN ->
          "an element had failed (about %d %% of the power gone)"
              .formatted(10 * Math.round(10 * size));
      case TIP_OUT -> "the thermocouple had slipped out";
      case RELAY_ON -> "the relay were stuck on";
      case RELAY_OFF -> "the relay were stuck off";
      case DOOR_AJAR -> "the door stood ajar";
    };
  }

  private static String noun(Disturbance.Kind kind) {
    return switch (kind) {
      case DOOR_OPEN -> "an open door";
      case MAINS_OFF -> "a mains cut";
      case ELEMENT_OPEN -> "a failed element";
      case TIP_OUT -> "a slipped thermocouple";
      case RELAY_ON -> "a relay stuck on";
      case RELAY_OFF -> "a relay stuck off";
      case DOOR_AJAR -> "a door ajar";
    };
  }

  /** What to look at before the next firing, a sentence for each kind that it may have been. */
  public String check() {
    Stream<Disturbance.Kind> all = Stream.concat(Stream.of(kind()), alternatives.stream());
    return String.join(" ", all.map(Anomaly::check).toList());
  }

  private static String check(Disturbance.Kind kind) {
    return switch (kind) {
      case DOOR_OPEN -> "Ask whether somebody opened the door.";
      case MAINS_OFF -> "Ask whether the supply failed, a breaker fell or a plug sat loose.";
      case ELEMENT_OPEN ->
          "See whether every element glows, or have the current measured; have an element that is"
              + " open replaced with the plug pulled.";
      case TIP_OUT ->
          "With the kiln cold, see whether the thermocouple sits as deep as it did: while it is out"
              + " the kiln is hotter than the display says.";
      case RELAY_ON ->
          "A relay that sticks on can overheat the kiln: have it replaced, and do not leave the kiln"
              + " alone until then.";
      case RELAY_OFF ->
          "Have the relay and its contacts looked at; one that sticks often sticks on next.";
      case DOOR_AJAR -> "See whether the door shuts all round and its latch holds.";
    };
  }

  /**
   * What a log of display readings does not show, whatever is made of it; found by simulation, see
   * {@code docs/models/anomalies.md}.
   */
  public static String hidden(Disturbance.Kind kind) {
    return switch (kind) {
      case RELAY_ON -> "A relay stuck on shows only where the kiln is not at full power anyway.";
      case RELAY_OFF -> "A relay stuck off shows only where the elements would have been on.";
      case ELEMENT_OPEN ->
          "An element that fails while the kiln holds with power to spare moves the display by a few"
              + " kelvins for some minutes; in a kiln that cools, not at all.";
      case DOOR_AJAR ->
          "A door ajar while the kiln holds with power to spare hardly moves the display.";
      case TIP_OUT ->
          "A thermocouple that was out from the start, or slips slowly, looks like another kiln.";
      case MAINS_OFF, DOOR_OPEN -> "One shorter than two minutes may pass unseen.";
    };
  }
}
