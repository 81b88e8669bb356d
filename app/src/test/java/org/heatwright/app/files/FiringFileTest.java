package org.heatwright.app.files;

import static org.assertj.core.api.Assertions.assertThat;

import org.heatwright.forecast.Charge;
import org.heatwright.kiln.FiringConditions.ColdPieces;
import org.heatwright.kiln.FiringConditions.Disturbance;
import org.heatwright.mould.Investment;
import org.heatwright.mould.Mould;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FiringFileTest {

  static final String FULL =
      """
      room-celsius: 17
      start-celsius: 42
      vent: open
      events: [{at-s: 1670, door-open-s: 10}, {at-s: 5400, mains-off-s: 1500}, {at-s: 6000, element-open-s: 600}, {at-s: 6100, tip-out-s: 600}, {at-s: 6200, relay-on-s: 300}, {at-s: 6300, relay-off-s: 300}, {at-s: 6400, door-ajar-s: 600}, {at-s: 9000, door-open-s: 12}]
      goes-in-cold: {j-per-k: 38}
      load: {furniture-kg: 1.1, moulds: [{count: 3, diameter-mm: 76, height-mm: 115, wall-mm: 1.5}], binder: gypsum, water-powder: 0.40, poured-hours-before: 2, pieces: [{material: copper, mass-kg: 0.2}, {material: cuttlebone, mass-kg: 0.1, heat-capacity-j-kgk: 800}]}
      supply-v: 232
      """;

  private static Firing read(String text) {
    return FiringFile.read(text, "firing.yaml");
  }

  @Test
  void readsEveryField() {
    Firing firing = read(FULL);

    assertThat(firing.conditions().room().orElseThrow().celsius()).isEqualTo(17);
    assertThat(firing.conditions().start().orElseThrow().celsius()).isEqualTo(42);
    assertThat(firing.conditions().ventOpen()).isTrue();
    assertThat(firing.conditions().supplyVolts()).contains(232.0);
    assertThat(firing.conditions().disturbances())
        .containsExactly(
            new Disturbance(Disturbance.Kind.DOOR_OPEN, 1670, 10),
            new Disturbance(Disturbance.Kind.MAINS_OFF, 5400, 1500),
            new Disturbance(Disturbance.Kind.ELEMENT_OPEN, 6000, 600),
            new Disturbance(Disturbance.Kind.TIP_OUT, 6100, 600),
            new Disturbance(Disturbance.Kind.RELAY_ON, 6200, 300),
            new Disturbance(Disturbance.Kind.RELAY_OFF, 6300, 300),
            new Disturbance(Disturbance.Kind.DOOR_AJAR, 6400, 600),
            new Disturbance(Disturbance.Kind.DOOR_OPEN, 9000, 12));
    assertThat(firing.conditions().pieces().orElseThrow().joulesPerKelvin()).isEqualTo(38);
    Charge load = firing.load().orElseThrow();
    assertThat(load.furnitureKilograms()).isEqualTo(1.1);
    assertThat(load.moulds()).containsExactly(new Mould(3, 0.076, 0.115, 0.0015));
    assertThat(load.investment()).contains(Investment.gypsum(0.40));
    assertThat(load.pieces()).hasSize(2);
    assertThat(read(FiringFile.write(firing))).isEqualTo(firing);
  }

  @Test
  void everyPartIsOptional() {
    assertThat(read("{}")).isEqualTo(Firing.usual());
    assertThat(read("load: {}").load()).contains(Charge.empty());
    Firing moulds = read("load: {moulds: [{diameter-mm: 76, height-mm: 115, wall-mm: 0}]}");
    assertThat(moulds.load().orElseThrow().investment()).contains(Investment.gypsum(0.40));
  }

  @Test
  void whatGoesInColdIsNothingOrOfAKnownHeatOrNotKnown() {
    String openings =
        "events: [{at-s: 600, door-open-s: 10}, {at-s: 900, door-open-s: 20}, {at-s: 1300, door-open-s: 15}]\n";
    assertThat(read(openings).conditions().pieces()).isEmpty();
    Firing nothing = read(openings + "goes-in-cold: none\n");
    assertThat(nothing.conditions().pieces()).contains(ColdPieces.NONE);
    assertThat(read(FiringFile.write(nothing))).isEqualTo(nothing);
    Firing known = read(openings + "goes-in-cold: {j-per-k: 38}\n");
    ColdPieces pieces = known.conditions().pieces().orElseThrow();
    assertThat(pieces.joulesPerKelvin()).isEqualTo(38);
    // The last opening lets the last piece out.
    assertThat(pieces.changes())
        .containsExactly(
            new ColdPieces.Change(610, true),
            new ColdPieces.Change(920, true),
            new ColdPieces.Change(1315, false));
    assertThat(read(FiringFile.write(known))).isEqualTo(known);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      textBlock =
          """
          vent: open | vent: ajar | line 3: vent is "ajar"; expected open or shut.
          door-open-s: 10 | door-opn-s: 10 | line 4: events[1].door-opn-s is not known; expected one of at-s, door-open-s, mains-off-s, element-open-s, tip-out-s, relay-on-s, relay-off-s, door-ajar-s (did you mean door-open-s?).
          door-open-s: 10 | door-open-s: 10, mains-off-s: 1 | line 4: events[1]: expected one of door-open-s, mains-off-s, element-open-s, tip-out-s, relay-on-s, relay-off-s, door-ajar-s.
          at-s: 1670 | at-s: -1 | line 4: events[1].at-s is -1; expected a number from 0 to 10000000 (s).
          material: copper | material: coper | line 6: load.pieces[1].material is "coper"; expected copper, silver, gold, brass, bronze, steel, stainless-steel, glass or ceramic (did you mean copper?).
          {j-per-k: 38} | {j-per-k: 0} | line 5: goes-in-cold.j-per-k is 0; expected a number from 1 to 5000 (J/K).
          goes-in-cold: {j-per-k: 38} | goes-in-cold: a brooch | line 5: goes-in-cold is "a brooch"; expected none or a heat such as {j-per-k: 45}.
          at-s: 9000, door-open-s | at-s: 9000, door-ajar-s | line 5: goes-in-cold: expected two openings of the door or more among the events, because the last lets the last piece out.
          supply-v: 232 | supply-v: 23200 | line 7: supply-v is 23200; expected a number from 1 to 999 (V).
          """)
  void refusesWithOneSentence(String part, String replacement, String message) {
    Inputs.refused(FiringFileTest::read, FULL, part, replacement, "firing.yaml, " + message);
  }
}
