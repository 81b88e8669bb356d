package org.heatwright.app.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.heatwright.inspect.TemperatureRange;
import org.heatwright.work.HeatTreatWork;
import org.heatwright.work.HeatTreatWork.Phase;
import org.heatwright.work.HeatTreatWork.Setting;
import org.heatwright.work.Work;
import org.heatwright.work.heattreat.TreatedMetal;
import org.heatwright.work.heattreat.Treatment;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HeatTreatWorkFileTest {

  static final String FULL =
      """
      kind: heat-treat
      treatment: solution-and-age
      phase: age
      metal: sterling-925
      pieces: 6
      thickness-mm: 2.5
      thinnest-mm: 0.8
      mass-g: 7.2
      setting: block
      setting-mm: 20
      target-celsius: 300
      soak: "1:00"
      window: {from-celsius: 290, to-celsius: 310}
      solidus-celsius: 795
      soldered: true
      solder-flow-celsius: 745
      solution-celsius: 700
      wanted-hv: 90
      data-sheet: {max-celsius: 740, dry-celsius: 149, dry-hold: "2:00", top-celsius: 300, top-hold: "1:00", fastest-rise-k-per-h: 200, fastest-wet-rise-k-per-h: 80, pour-soak: "1:00"}
      ready-by: 2026-12-02T18:30
      """;

  private static Work read(String text) {
    return WorkFile.read(text, "work.yaml");
  }

  @Test
  void readsEveryKey() {
    HeatTreatWork work = (HeatTreatWork) read(FULL);
    assertThat(work.treatment()).isEqualTo(Treatment.SOLUTION_AND_AGE);
    assertThat(work.phase()).contains(Phase.AGE);
    assertThat(work.metal()).isEqualTo(TreatedMetal.STERLING_925);
    assertThat(work.pieces()).isEqualTo(6);
    assertThat(work.piece()).isEqualTo(new HeatTreatWork.Piece(0.0025, 0.0008, 0.0072));
    assertThat(work.setting()).isEqualTo(Setting.BLOCK);
    assertThat(work.settingMetres()).hasValue(0.02);
    assertThat(work.own().target().orElseThrow().celsius()).isEqualTo(300);
    assertThat(work.own().soak()).contains(Duration.ofHours(1));
    assertThat(work.own().window()).contains(TemperatureRange.ofCelsius(290, 310));
    assertThat(work.own().solidus().orElseThrow().celsius()).isEqualTo(795);
    assertThat(work.own().soldered()).isTrue();
    assertThat(work.own().solderFlow().orElseThrow().celsius()).isEqualTo(745);
    assertThat(work.own().solution().orElseThrow().celsius()).isEqualTo(700);
    assertThat(work.own().wantedHardness()).hasValue(90);
    assertThat(work.dataSheet().topHold()).contains(Duration.ofHours(1));
    assertThat(work.readyBy()).isPresent();
  }

  @Test
  void whatIsWrittenReadsBackTheSame() {
    assertThat(read(WorkFile.write(read(FULL)))).isEqualTo(read(FULL));
    Work shortest =
        read(
            """
            kind: heat-treat
            treatment: anneal
            metal: copper
            thickness-mm: 1
            mass-g: 10
            """);
    assertThat(((HeatTreatWork) shortest).setting()).isEqualTo(Setting.SHELF);
    assertThat(read(WorkFile.write(shortest))).isEqualTo(shortest);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      textBlock =
          """
          treatment: solution-and-age | treatment: aneal | line 2: treatment is "aneal"; expected anneal, solution-and-age, age, stress-relief, preheat, dry, keum-boo, granulation-preheat or patina-bake (did you mean anneal?).
          treatment: solution-and-age | treatment: anneal | line 1: Only solution and age hardening has two heats; annealing needs no phase.
          phase: age | phase: second | line 3: phase is "second"; expected solution or age.
          metal: sterling-925 | metal: sterling | line 4: metal is "sterling"; expected fine-silver, sterling-925, germanium-silver-925, copper, brass, bronze, yellow-gold-14k, yellow-gold-18k, yellow-gold-22k, red-gold-14k, red-gold-18k, white-gold-nickel-14k, white-gold-nickel-18k, white-gold-palladium-14k, white-gold-palladium-18k, palladium-950 or platinum-950 (did you mean sterling-925?).
          thickness-mm: 2.5 | thickness-mm: 0.5 | line 1: A piece (0.8 to 0.5 mm thick, 7.2 g) must be 0.1 to 50 mm thick, its thinnest not above its thickest, of 0.01 to 5000 g.
          setting: block | setting: shelf | line 1: A block or a carbon box needs its thickness or height, 1 to 150 mm; a mesh or a shelf needs none.
          to-celsius: 310 | to-celsius: 280 | line 13: window: The range (290.0 to 280.0 °C) must not fall.
          soak: "1:00" | soak: "0:00" | line 12: soak is "0:00"; expected hours and minutes such as "0:30", above 0:00, at most 48:00.
          soldered: true | soldered: false | line 1: A solder's flow temperature needs soldered: true.
          wanted-hv: 90 | wanted-hv: 900 | line 18: wanted-hv is 900; expected a number from 20 to 400 (HV).
          thickness-mm: 2.5 | thick-mm: 2.5 | line 6: thick-mm is not known; expected one of kind, treatment, phase, metal, pieces, thickness-mm, thinnest-mm, mass-g, setting, setting-mm, target-celsius, soak, window, solidus-celsius, soldered, solder-flow-celsius, solution-celsius, wanted-hv, data-sheet, ready-by (did you mean thickness-mm?).
          """)
  void refusesWithOneSentence(String part, String replacement, String message) {
    Inputs.refused(HeatTreatWorkFileTest::read, FULL, part, replacement, "work.yaml, " + message);
  }
}
