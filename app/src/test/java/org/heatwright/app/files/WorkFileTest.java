package org.heatwright.app.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.LocalDateTime;
import org.heatwright.mould.Investment;
import org.heatwright.mould.Mould;
import org.heatwright.work.BurnoutWork;
import org.heatwright.work.EnamelBuild;
import org.heatwright.work.EnamelWork;
import org.heatwright.work.PatternedMould;
import org.heatwright.work.Work;
import org.heatwright.work.casting.PouringMethod;
import org.heatwright.work.enamel.Look;
import org.heatwright.work.enamel.TestTile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WorkFileTest {

  static final String BURNOUT =
      """
      kind: burnout
      moulds:
        - {count: 3, diameter-mm: 90, height-mm: 150, wall-mm: 3, pattern: wax, pattern-mass-g: 14}
        - {diameter-mm: 63.5, height-mm: 63.5, wall-mm: 0, pattern: resin}
      investment:
        binder: gypsum
        water-powder: 0.38
        poured-hours-before: 1.5
        data-sheet: {max-celsius: 730, dry-celsius: 149, dry-hold: "2:00", top-celsius: 725, top-hold: "3:00", fastest-rise-k-per-h: 200, fastest-wet-rise-k-per-h: 80, pour-soak: "1:00"}
      metal: {alloy: sterling-925, pour-mould-celsius: 500, pour-metal-celsius: 985, least-mould-celsius: 470, thinnest-mm: 1.2, method: centrifugal}
      ready-by: 2026-12-03T10:00
      """;

  static final String ENAMEL =
      """
      kind: enamel
      metal: gold-18k
      sheet-mm: 0.8
      pieces: 6
      piece-mm: 45
      enamel: soft
      working-celsius: 780
      session: "2:30"
      data-sheet: {max-celsius: 820, dry-celsius: 149, dry-hold: "2:00", top-celsius: 725, top-hold: "3:00", fastest-rise-k-per-h: 200, fastest-wet-rise-k-per-h: 80, pour-soak: "1:00"}
      ready-by: 2026-12-02T18:30
      """;

  static final String ENAMEL_FULL =
      """
      kind: enamel
      metal: gold-14k-red
      sheet-mm: 0.8
      pieces: 6
      piece-mm: 45
      enamel: medium
      coat-mm: 0.35
      counter-enamel: {coat-mm: 0.25, expansion-ppm-k: 10.2}
      oxides-mol-percent: {SiO2: 60, Na2O: 5, K2O: 10, PbO: 25}
      softening-celsius: 605
      solidus-celsius: 912
      trivet-g: 62.5
      coats:
        - {coat: counter, enamel: hard}
        - {coat: ground, times: 2}
        - {coat: overglaze, enamel: soft, times: 1}
      tiles:
        - {at-celsius: 800, seconds: 75, look: orange-peel}
        - {at-celsius: 800, seconds: 120, look: glossy}
      session: "2:30"
      """;

  static final String EVERY_OXIDE =
      "{SiO2: 60, TiO2: 1, B2O3: 5, K2O: 5, PbO: 3, Li2O: 3, Na2O: 10, MgO: 1, CaO: 5, SrO: 1,"
          + " BaO: 1, ZnO: 2, Al2O3: 2, ZrO2: 1}";

  /** The same with expansions told in the other ways, and every oxide. */
  static final String ENAMEL_BY_MOL =
      ENAMEL_FULL.replaceAll("oxides-mol-percent: .*", "oxides-mol-percent: " + EVERY_OXIDE);

  static final String ENAMEL_BY_MASS =
      ENAMEL_FULL
          .replaceAll("oxides-mol-percent: .*", "oxides-mass-percent: " + EVERY_OXIDE)
          .replace("expansion-ppm-k: 10.2", "oxides-mol-percent: " + EVERY_OXIDE);

  static final String ENAMEL_BY_SHEET =
      ENAMEL_FULL
          .replaceAll("oxides-mol-percent: .*", "expansion-ppm-k: 9.8")
          .replace("expansion-ppm-k: 10.2", "oxides-mass-percent: " + EVERY_OXIDE);

  private static Work read(String text) {
    return WorkFile.read(text, "work.yaml");
  }

  @Test
  void readsABurnout() {
    BurnoutWork work = (BurnoutWork) read(BURNOUT);

    assertThat(work.moulds().get(0).mould()).isEqualTo(new Mould(3, 0.09, 0.15, 0.003));
    assertThat(work.moulds().get(0).patternKilograms()).hasValue(0.014);
    assertThat(work.moulds().get(1).mould().count()).isEqualTo(1);
    assertThat(work.moulds().get(1).pattern()).isEqualTo(PatternedMould.Pattern.RESIN);
    assertThat(work.investment()).isEqualTo(new Investment(Investment.Binder.GYPSUM, 0.38, 1.5));
    assertThat(work.dataSheet().max().orElseThrow().celsius()).isEqualTo(730);
    assertThat(work.dataSheet().topHold()).contains(Duration.ofHours(3));
    assertThat(work.dataSheet().fastestWetRise().orElseThrow().kelvinsPerHour()).isEqualTo(80);
    assertThat(work.metal().alloy()).isEqualTo("sterling-925");
    assertThat(work.metal().pourMetal().orElseThrow().celsius()).isEqualTo(985);
    assertThat(work.metal().leastMould().orElseThrow().celsius()).isEqualTo(470);
    assertThat(work.metal().thinnestMetres()).hasValue(0.0012);
    assertThat(work.metal().method()).contains(PouringMethod.CENTRIFUGAL);
    assertThat(work.readyBy()).contains(LocalDateTime.parse("2026-12-03T10:00"));
  }

  @Test
  void readsEnamel() {
    EnamelWork work = (EnamelWork) read(ENAMEL);

    assertThat(work.metal()).isEqualTo(EnamelWork.Metal.GOLD_18K);
    assertThat(work.sheetMetres()).isEqualTo(0.0008);
    assertThat(work.pieceMetres()).isEqualTo(0.045);
    assertThat(work.working().orElseThrow().celsius()).isEqualTo(780);
    assertThat(work.session()).hasMinutes(150);
  }

  @Test
  void readsWhatIsKnownOfAnEnamel() {
    EnamelBuild build = ((EnamelWork) read(ENAMEL_FULL)).build();

    assertThat(build.coatMetres()).hasValue(0.00035);
    assertThat(
            ((EnamelBuild.Expansion.OfSheet)
                    build.counter().orElseThrow().expansion().orElseThrow())
                .perKelvin())
        .isCloseTo(10.2e-6, within(1e-15));
    assertThat(((EnamelBuild.Expansion.OfOxides) build.expansion().orElseThrow()).oxides())
        .satisfies(glass -> assertThat(glass.perKelvin()).isCloseTo(1.2155e-5, within(1e-11)));
    assertThat(build.softening().orElseThrow().celsius()).isEqualTo(605);
    assertThat(build.solidus().orElseThrow().celsius()).isEqualTo(912);
    assertThat(build.firings()).isEqualTo(4);
    assertThat(build.coats().get(0).hardness()).contains(EnamelWork.Hardness.HARD);
    assertThat(build.tiles().get(1)).isEqualTo(new TestTile(800, 120, Look.GLOSSY));
    assertThat(((EnamelWork) read(ENAMEL)).build()).isEqualTo(EnamelBuild.unknown());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          SiO2: 60   | SnO2: 60   | SnO2
          SiO2: 60   | SiO2: 50   | sum up to 90.0 mol %
          coat-mm: 0.35 | expansion-ppm-k: 9 | told once
          look: glossy | look: shiny | orange-peel
          coat: ground | coat: base | counter, ground, colour or overglaze
          solidus-celsius: 912 | solidus-celsius: 9120 | 600 to 1600
          """)
  void whatIsWrongWithAnEnamelIsTold(String right, String wrong, String told) {
    assertThatThrownBy(() -> read(ENAMEL_FULL.replace(right, wrong)))
        .isInstanceOf(InputException.class)
        .hasMessageContaining(told)
        .hasMessageStartingWith("work.yaml");
  }

  @Test
  void whatIsWrittenReadsBackTheSame() {
    for (String text :
        new String[] {
          BURNOUT,
          ENAMEL,
          ENAMEL_FULL,
          ENAMEL_BY_MOL,
          ENAMEL_BY_MASS,
          ENAMEL_BY_SHEET,
          GlassWorkFileTest.FUSE,
          GlassWorkFileTest.BOWL
        }) {
      Work work = read(text);
      assertThat(read(WorkFile.write(work))).isEqualTo(work);
    }
    BurnoutWork shortest =
        (BurnoutWork)
            read(
                """
                kind: burnout
                moulds: [{diameter-mm: 50, height-mm: 60, wall-mm: 2, pattern: unknown}]
                investment: {}
                metal: {alloy: bronze-90-10}
                """);
    assertThat(shortest.investment().binder()).isEqualTo(Investment.Binder.UNKNOWN);
    assertThat(read(WorkFile.write(shortest))).isEqualTo(shortest);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      textBlock =
          """
          kind: burnout | kind: burnuot | line 1: kind is "burnuot"; expected burnout, enamel, heat-treat, sinter or glass (did you mean burnout?).
          kind: burnout | kind: pottery | line 1: kind is "pottery"; expected burnout, enamel, heat-treat, sinter or glass.
          count: 3 | count: 2.5 | line 3: moulds[1].count is 2.5; expected a whole number from 1 to 200.
          diameter-mm: 90 | diameter-mm: 9 | line 3: moulds[1].diameter-mm is 9; expected a number from 10 to 500 (mm).
          wall-mm: 3 | wall-mm: 30 | line 3: moulds[1]: The mould (90.0 mm across, 150.0 mm high, wall 30.0 mm) must be 10 to 500 mm across, 10 to 600 mm high, with a wall under a quarter of its diameter.
          wall-mm: 3 | wall: 3 | line 3: moulds[1].wall is not known; expected one of count, diameter-mm, height-mm, wall-mm, pattern, pattern-mass-g (did you mean wall-mm?).
          pattern: wax | pattern: wacks | line 3: moulds[1].pattern is "wacks"; expected wax, resin or unknown.
          water-powder: 0.38 | water-powder: 38 | line 7: investment.water-powder is 38; expected a number from 0.2 to 0.8 (kg of water to a kg of powder).
          binder: gypsum | binder: gipsum | line 6: investment.binder is "gipsum"; expected gypsum, phosphate or unknown (did you mean gypsum?).
          max-celsius: 730 | max-celsius: 1346.5f | line 9: investment.data-sheet.max-celsius is "1346.5f"; expected a number from 100 to 1400 (°C).
          top-hold: "3:00" | top-hold: "72:00" | line 9: investment.data-sheet: The data sheet's top hold (PT72H) must be whole minutes, 0:00 to 48:00.
          method: centrifugal | method: spoon | line 10: metal.method is "spoon"; expected vacuum, centrifugal or gravity.
          thinnest-mm: 1.2 | thinnest-mm: 0 | line 10: metal.thinnest-mm is 0; expected a number from 0.1 to 100 (mm).
          least-mould-celsius: 470 | least-mould-celsius: 510 | line 10: metal: The mould's least temperature at the pour (510.0 °C) must be below the one it leaves the kiln with (500.0 °C).
          least-mould-celsius: 470 | least-celsius: 470 | line 10: metal.least-celsius is not known; expected one of alloy, pour-mould-celsius, pour-metal-celsius, least-mould-celsius, thinnest-mm, method (did you mean least-mould-celsius?).
          ready-by: 2026-12-03T10:00 | ready-by: 10:00 | line 11: ready-by is "10:00"; expected a date and time such as 2026-12-03T10:00.
          ready-by: 2026-12-03T10:00 | ready-by: 2026-12-03T10:00Z | line 11: ready-by is "2026-12-03T10:00Z"; expected a date and time such as 2026-12-03T10:00.
          """)
  void refusesWithOneSentence(String part, String replacement, String message) {
    Inputs.refused(WorkFileTest::read, BURNOUT, part, replacement, "work.yaml, " + message);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      textBlock =
          """
          metal: gold-18k | metal: tin | line 2: metal is "tin"; expected copper, fine-silver, sterling-925, gold-22k, gold-18k, gold-18k-yellow, gold-18k-red, gold-18k-white, gold-14k, gold-14k-yellow, gold-14k-red, gold-14k-white or steel.
          session: "2:30" | session: "30:00" | line 8: session is "30:00"; expected hours and minutes such as "2:30", above 0:00, at most 24:00.
          pieces: 6 | moulds: 6 | line 4: moulds is not known; expected one of kind, metal, sheet-mm, pieces, piece-mm, enamel, coat-mm, counter-enamel, expansion-ppm-k, oxides-mol-percent, oxides-mass-percent, softening-celsius, solidus-celsius, trivet-g, coats, tiles, working-celsius, session, data-sheet, ready-by.
          """)
  void refusesWrongEnamelWithOneSentence(String part, String replacement, String message) {
    Inputs.refused(WorkFileTest::read, ENAMEL, part, replacement, "work.yaml, " + message);
  }
}
