package org.heatwright.work.enamel;

import java.util.Objects;

/**
 * What a person saw of a test tile of their own enamel.
 *
 * @param chamberCelsius the kiln's setting, °C, 500 to 1100
 * @param seconds from the door's shutting until it came out, s, 5 to 3600
 * @param look what it looked like when it had cooled
 */
public record TestTile(double chamberCelsius, double seconds, Look look) {

  public TestTile {
    Objects.requireNonNull(look, "look");
    if (!(chamberCelsius >= 500 && chamberCelsius <= 1100) || !(seconds >= 5 && seconds <= 3600)) {
      throw new IllegalArgumentException(
          "The tile (%s °C, %s s) must be of 500 to 1100 °C and 5 to 3600 s in the kiln."
              .formatted(chamberCelsius, seconds));
    }
  }
}
