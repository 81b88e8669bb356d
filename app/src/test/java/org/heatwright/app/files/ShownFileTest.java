package org.heatwright.app.files;

import static org.assertj.core.api.Assertions.assertThat;

import org.heatwright.keypad.Shown;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Test;

class ShownFileTest {

  static final String FULL =
      """
      slot: 3
      unit: F
      shown:
        - [r1, "216"]
        - [2, 2.30]
        - [h1, 2:00]
        - ["", ""]
        - [t2, " 0900"]
      """;

  @Test
  void textIsKeptExactlyAsDisplayed() {
    Shown shown = ShownFile.read(FULL, "shown.yaml");

    assertThat(shown.slot()).hasValue(3);
    assertThat(shown.unit()).contains(TemperatureUnit.FAHRENHEIT);
    assertThat(shown.values())
        .containsExactly(
            new Shown.Value("r1", "216"),
            new Shown.Value("2", "2.30"),
            new Shown.Value("h1", "2:00"),
            new Shown.Value("", ""),
            new Shown.Value("t2", " 0900"));
    assertThat(ShownFile.read(ShownFile.write(shown), "again.yaml")).isEqualTo(shown);
  }

  @Test
  void refusesWithOneSentence() {
    Inputs.refused(
        () -> ShownFile.read("shown: [[a]]", "shown.yaml"),
        "shown.yaml, line 1: shown[1]: expected two things: [label or position, text as"
            + " displayed].");
    Inputs.refused(
        () -> ShownFile.read("shown:\n- [a, ~]\n", "shown.yaml"),
        "shown.yaml, line 2: shown[1][2] is \"~\"; expected text or a number.");
    Inputs.refused(
        () -> ShownFile.read("shown: []\nslot: one", "shown.yaml"),
        "shown.yaml, line 2: slot is \"one\"; expected a whole number from 0 to 999.");
    Inputs.refused(
        () -> ShownFile.read("slot: 1", "shown.yaml"),
        "shown.yaml, line 1: shown is missing; expected a line such as shown: [[rate 1, \"150\"]].");
  }
}
