package org.heatwright.app.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalTime;
import java.time.ZoneId;
import org.heatwright.kiln.Chamber;
import org.heatwright.kiln.Control;
import org.heatwright.kiln.Face;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.LifeEvent;
import org.heatwright.sensing.ToleranceClass;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class KilnFileTest {

  static final String FULL =
      """
      name: Anchor
      chamber: {width-mm: 200, depth-mm: 250, height-mm: 180}
      element: {rated-w: 2200, rated-v: 230, supply-v: 225}
      walls:
        - {material: insulating-brick-23, thickness-mm: 64, joint-m2k-w: 0.02}
        - {material: fibre-blanket-96, thickness-mm: 25}
      door: front
      max-celsius: 1100
      thermocouple: {type: K, class: 1, sheath-mm: 4.5, offset-k: -2.5}
      control: {kind: pid, cycle-s: 2, hold-waits-within-k: 3, after-power-cut: continue}
      room-celsius: 18
      time-zone: Europe/Lisbon
      tariff: {currency: EUR, bands: [{from: "22:00", to: "08:00", price: 0.14}, {from: 08:00, to: 22:00, price: 0.3}]}
      circuit: {name: workshop-ring, limit-a: 16}
      history: [{date: 2026-09-02, what: elements-replaced}]
      learned: {loss-factor: {median: 1.4, sd: 0.1}, logs: [a.csv], engine: "0.1"}
      notes: {bought: "from a school", anything: [1, 2]}
      """;

  private static Kiln read(String text) {
    return KilnFile.read(text, "kiln.yaml");
  }

  @Test
  void readsEveryField() {
    Kiln kiln = read(FULL);

    assertThat(kiln.chamber()).isEqualTo(new Chamber.Box(0.2, 0.25, 0.18));
    assertThat(kiln.element().supplyVolts()).isEqualTo(225);
    assertThat(kiln.layers(Face.FLOOR)).hasSize(2);
    assertThat(kiln.layers(Face.DOOR).get(1).thicknessMetres()).isEqualTo(0.025);
    assertThat(kiln.limit().celsius()).isEqualTo(1100);
    assertThat(kiln.thermocouple().sheathMetres()).isEqualTo(0.0045);
    assertThat(kiln.thermocouple().offset().kelvins()).isEqualTo(-2.5);
    assertThat(kiln.thermocouple().toleranceClass()).contains(ToleranceClass.CLASS_1);
    assertThat(kiln.control().holdWaitsWithin().orElseThrow().kelvins()).isEqualTo(3);
    assertThat(kiln.control().afterPowerCut()).isEqualTo(Control.AfterPowerCut.CONTINUE);
    assertThat(kiln.timeZone()).contains(ZoneId.of("Europe/Lisbon"));
    assertThat(kiln.tariff().orElseThrow().priceAt(LocalTime.of(23, 0))).isEqualTo(0.14);
    assertThat(kiln.tariff().orElseThrow().priceAt(LocalTime.of(8, 0))).isEqualTo(0.3);
    assertThat(kiln.circuit().orElseThrow().limitAmperes()).isEqualTo(16);
    assertThat(kiln.history().get(0).what()).isEqualTo(LifeEvent.What.ELEMENTS_REPLACED);
  }

  @Test
  void whatALogTaughtIsKept() {
    KilnFile.Content content = KilnFile.readContent(FULL, "kiln.yaml");

    assertThat(content.learned()).hasValueSatisfying(l -> assertThat(l).contains("median: 1.4"));
    assertThat(KilnFile.readContent(KilnFile.write(content), "again.yaml")).isEqualTo(content);
  }

  @Test
  void aShortNameplateIsEnough() {
    Kiln kiln =
        read(
            """
            name: Short
            chamber: {diameter-mm: 300, height-mm: 350}
            element: {rated-w: 3000, rated-v: 240}
            walls: [{material: insulating-brick-23, thickness-mm: 76}]
            max-celsius: 1200
            """);

    assertThat(kiln.chamber()).isEqualTo(new Chamber.Drum(0.3, 0.35));
    assertThat(kiln.element().supplyVolts()).isEqualTo(240);
    assertThat(kiln.control().afterPowerCut()).isEqualTo(Control.AfterPowerCut.UNKNOWN);
    assertThat(kiln.timeZone()).isEmpty();
    assertThat(read(KilnFile.write(kiln))).isEqualTo(kiln);
  }

  @Test
  void facesMayDifferAndALidIsADoor() {
    Kiln kiln =
        read(
            """
            name: Capstan
            chamber: {diameter-mm: 330, height-mm: 350}
            element: {rated-w: 3600, rated-v: 230}
            door: top
            walls:
              walls: [{material: insulating-brick-23, thickness-mm: 64}]
              roof:
                - material:
                    density-kg-m3: 300
                    conductivity-w-mk: [[20, 0.05], [800, 0.2]]
                    heat-capacity-j-kgk: 1000
                    latent: [{from-celsius: 95, to-celsius: 115, j-kg: 50000, once: true}]
                    source: maker's data sheet
                  thickness-mm: 50.8
            max-celsius: 1000
            control: {kind: on-off, hysteresis-k: 6, hold-waits-within-k: none}
            """);

    assertThat(kiln.layers(Face.DOOR)).isEqualTo(kiln.layers(Face.ROOF));
    assertThat(kiln.layers(Face.FLOOR)).isEqualTo(kiln.layers(Face.WALLS));
    assertThat(kiln.layers(Face.DOOR).get(0).material().latentHeats().get(0).once()).isTrue();
    assertThat(kiln.control().hysteresis().kelvins()).isEqualTo(6);
    assertThat(read(KilnFile.write(kiln))).isEqualTo(kiln);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      textBlock =
          """
          kind: pid | kind: pdi | line 10: control.kind is "pdi"; expected pid or on-off (did you mean pid?).
          kind: pid | kind: on-off | line 10: control.hysteresis-k is missing; expected a line such as hysteresis-k: 5.
          cycle-s: 2 | cycle-s: -2 | line 10: control.cycle-s is -2; expected a number from 0 to 600 (s).
          cycle-s: 2 | hysteresis-k: 2 | line 10: control.hysteresis-k: only an on-off control has it; remove it.
          hold-waits-within-k: 3 | hold-waits-within-k: no | line 10: control.hold-waits-within-k is "no"; expected a number from 0.1 to 500 (K, or none).
          width-mm: 200 | width-mm: -200 | line 2: chamber.width-mm is -200; expected a number from 30 to 4999 (mm).
          width-mm: 200 | width-mm: 9000 | line 2: chamber.width-mm is 9000; expected a number from 30 to 4999 (mm).
          width-mm: 200 | diameter-mm: 200 | line 2: chamber: a drum has diameter-mm and height-mm, a box width-mm, depth-mm and height-mm; keep one kind.
          rated-w: 2200 | rated-w: .inf | line 3: element.rated-w is ".inf"; expected a number above zero (W).
          rated-w: 2200 | watts: 2200 | line 3: element.watts is not known; expected one of rated-w, rated-v, supply-v.
          insulating-brick-23 | insulating-brick-24 | line 5: walls[1].material is "insulating-brick-24"; expected insulating-brick-20, insulating-brick-23, insulating-brick-26, insulating-brick-28, dense-firebrick, fibre-blanket-64, fibre-blanket-96, fibre-blanket-128, fibre-board-280, vacuum-formed-fibre-220, vermiculite-board or calcium-silicate-board (did you mean insulating-brick-20?).
          thickness-mm: 64, | thickness-mm: 640, | line 5: walls[1].thickness-mm is 640; expected a number from 0.5 to 499 (mm).
          max-celsius: 1100 | max-celsius: 2012 | line 8: max-celsius is 2012; expected a number from 101 to 1800 (°C).
          class: 1 | class: 4 | line 9: thermocouple.class is 4; expected 1, 2, 3, standard or special.
          type: K | type: Z | line 9: thermocouple.type is "Z"; expected B, E, J, K, N, R, S or T.
          Europe/Lisbon | Europe/Lisbonn | line 12: time-zone: the time zone "Europe/Lisbonn" is not known; expected an IANA name such as Europe/Lisbon (did you mean Europe/Lisbon?).
          currency: EUR | currency: Euro | line 13: tariff.currency is "Euro"; expected three capital letters such as EUR.
          from: 08:00 | from: 09:00 | line 13: tariff.bands: The tariff's bands must cover the day once (1380 of 1440 minutes are covered).
          limit-a: 16 | limit-a: 0 | line 14: circuit.limit-a is 0; expected a number from 1 to 1000 (A).
          2026-09-02 | 2026-13-02 | line 15: history[1].date is "2026-13-02"; expected a date such as 2026-12-03.
          what: elements-replaced | what: elements-replacd | line 15: history[1].what is "elements-replacd"; expected elements-replaced, thermocouple-replaced, offset-changed, door-resealed or note (did you mean elements-replaced?).
          """)
  void refusesWithOneSentence(String part, String replacement, String message) {
    Inputs.refused(KilnFileTest::read, FULL, part, replacement, "kiln.yaml, " + message);
  }

  @Test
  void aTableMustRise() {
    String wall =
        "material: {density-kg-m3: 300, conductivity-w-mk: [[20, 0.1], [20, 0.2]],"
            + " heat-capacity-j-kgk: 900}";
    Inputs.refused(
        KilnFileTest::read,
        FULL,
        "material: insulating-brick-23",
        wall,
        "kiln.yaml, line 5: walls[1].material.conductivity-w-mk[2][1] is 20; expected a"
            + " temperature above the one before it.");
  }
}
