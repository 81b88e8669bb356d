package org.heatwright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import org.heatwright.app.demo.DemoStudio;
import org.heatwright.app.store.Kind;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Two schedules compared by heat-work on the bench, as the terminal compares them. */
class HeatworkBenchTest extends BenchCase {

  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-12-02T12:00:00Z"), ZoneOffset.UTC);
  private static final String BOTH = "heatwork?a=schedule:hot&b=schedule:mild&activation=";

  @BeforeEach
  void open() {
    open(CLOCK);
    keep("hot", "{rate: 500, target: 900, hold: \"0:00\"}");
    keep("mild", "{rate: 500, target: 860, hold: \"0:10\"}");
  }

  private void keep(String name, String segment) {
    store.keep(Kind.SCHEDULE, name, "name: %s\nunit: C\nsegments: [%s]\n".formatted(name, segment));
  }

  /**
   * CHK-H2: 500 K/h to 900 °C at Q 185 comes to 6.742778 min there; the ratio 1.2384 by a sum of
   * 200,000 midpoints made apart.
   */
  @Test
  void aRampIsToldAsMinutesAtItsTop() throws Exception {
    assertThat(asked.get("heatwork").body())
        .contains("Two schedules for the same work", "value=\"185\"");
    assertThat(asked.get(BOTH + "185").body())
        .contains("A, hot: 6.7 min", "B does 1.24 times", "Q 148 kJ/mol", "Q 222 kJ/mol")
        .contains("Heat-work as time at 900 °C:", "On paper: ramps at their rates");
    assertThat(asked.get(BOTH + "185&unit=F").body())
        .contains("time at 1652 °F", "(1580 °F)")
        .doesNotContain("900 °C", "860 °C");
    assertThat(asked.get(BOTH + "185&at=1652&unit=F").body()).contains("A, hot: 6.7 min");
  }

  @Test
  void aKilnsDisplayIsComparedAndWhatIsWrongIsSaid() throws Exception {
    DemoStudio.fill(store);
    assertThat(asked.get(BOTH + "185&kiln=Buoy").body())
        .contains("Counted to the end of the program")
        .containsPattern(
            "By the display of Buoy, empty: A [\\d.]+ min to [\\d.]+ min, B [\\d.]+ min to")
        .contains("Evening of brooches (invented), Buoy");
    assertThat(asked.get(BOTH + "lots").body())
        .contains("“lots” is no number from 20 to 1000 (kJ/mol).", "value=\"lots\"");
    assertThat(asked.get(BOTH + "NaN").body())
        .contains("“NaN” is no number from 20 to 1000 (kJ/mol).");
    assertThat(asked.get(BOTH + "185&at=NaN").body()).contains("“NaN” is no temperature");
    assertThat(asked.get(BOTH + "185&at=20").body())
        .contains("“20” is no temperature from 100 °C to 1800 °C.");
    assertThat(asked.get("heatwork?a=x&b=y&activation=185").body())
        .contains("Choose two schedules.");
  }

  /** A ramp as fast as the kiln can has no length on paper. */
  @Test
  void onPaperFastestHasNoRate() throws Exception {
    keep("full", "{rate: fastest, target: 900, hold: \"0:10\"}");
    assertThat(asked.get("heatwork?a=schedule:full&b=schedule:mild&activation=185").body())
        .contains("That cannot be compared on paper.", "Choose a kiln");
  }
}
