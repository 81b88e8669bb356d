package org.heatwright.keypad.keying;

import java.time.Duration;
import org.heatwright.keypad.Words;
import org.heatwright.material.Origin;

/**
 * How long keying takes a person, after the keystroke-level model.
 *
 * @param keySeconds one key, s: 0.20 average skilled, 0.28 average non-secretary, 0.50 random
 *     letters, 0.75 complex codes, 1.20 unfamiliar with the keys
 * @param mentalSeconds getting ready for one prompt, s
 */
record KeyingTimes(double keySeconds, double mentalSeconds) {

  /**
   * Somebody who uses keys but is no typist.
   *
   * <p>Source: Card, Moran and Newell (1980, 1983), operators K and M, read in a university page's
   * table of them.
   */
  static final KeyingTimes OCCASIONAL = new KeyingTimes(0.28, 1.35);

  /** How exactly a person lets go of a repeating key at a number seen on the display, s: ours. */
  static final double RELEASE_SCATTER_SECONDS = 0.15;

  /** One turn of a knob that is spun, s: ours. */
  static final double SPUN_TURN_SECONDS = 0.6;

  /** One click of a knob turned with care, s: ours. */
  static final double CLICK_SECONDS = 0.2;

  /** Clicks by which a spun knob misses: ours. */
  static final int SPIN_SCATTER_CLICKS = 2;

  static final Origin ORIGIN =
      Origin.read(
          "keys %s s and prompts %s s by the keystroke-level figures of Card, Moran and Newell (1980, 1983); the times of repeating keys and of knobs are our estimate, from this keypad's description and %s s scatter in letting go"
              .formatted(
                  Words.number(0.28), Words.number(1.35), Words.number(RELEASE_SCATTER_SECONDS)));

  KeyingTimes {
    if (!(keySeconds > 0 && keySeconds <= 5 && mentalSeconds >= 0 && mentalSeconds <= 10)) {
      throw new IllegalArgumentException(
          "A key takes 0 to 5 s (%s) and a prompt 0 to 10 s (%s)."
              .formatted(keySeconds, mentalSeconds));
    }
  }

  double seconds(int keys, int prompts) {
    return keys * keySeconds + prompts * mentalSeconds;
  }

  static Duration duration(double seconds) {
    return Duration.ofMillis(Math.round(seconds * 1000));
  }
}
