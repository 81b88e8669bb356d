package org.heatwright.keypad;

import java.util.Objects;
import java.util.Optional;

/**
 * A value that is no ordinary number: full power, endless hold, end of the program.
 *
 * @param shows what the display reads, e.g. "FULL" or "0"; not blank
 * @param place where the up and down keys or the knob meet it
 * @param typed the digits that make it on digit keys; empty if they are the ones it shows
 */
public record Special(String shows, Place place, Optional<String> typed) {

  public Special {
    Objects.requireNonNull(place, "place");
    Objects.requireNonNull(typed, "typed");
    if (shows.isBlank()) {
      throw new IllegalArgumentException("A special value needs the text that the display shows.");
    }
    typed.ifPresent(
        digits -> {
          if (!digits.matches("\\d+")) {
            throw new IllegalArgumentException(
                "The special value '%s' is typed as '%s': only digits can be typed."
                    .formatted(shows, digits));
          }
        });
  }

  public static Special below(String shows) {
    return new Special(shows, Place.BELOW_LEAST, Optional.empty());
  }

  public static Special above(String shows) {
    return new Special(shows, Place.ABOVE_GREATEST, Optional.empty());
  }

  /** Beside which end of the ordinary numbers a special value stands. */
  public enum Place {
    BELOW_LEAST,
    ABOVE_GREATEST
  }
}
