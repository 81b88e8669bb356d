package org.heatwright.app.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.entry;

import java.time.Duration;
import java.util.List;
import org.heatwright.mould.Investment;
import org.heatwright.work.BurnoutWork;
import org.heatwright.work.EnamelWork;
import org.heatwright.work.GlassWork;
import org.heatwright.work.HeatTreatWork;
import org.heatwright.work.SinterWork;
import org.heatwright.work.Work;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ValuesFileTest {

  private static final String SHEET =
      """
      data-sheet:
        max-celsius: 820
        dry-celsius: 149
        dry-hold: "2:00"
        top-celsius: 725
        top-hold: "3:00"
        fastest-rise-k-per-h: 200
        fastest-wet-rise-k-per-h: 80
        pour-soak: "1:00"
      """;

  static final String ENAMEL =
      """
      values-for: enamel
      source: "tiles of 3 November"
      enamel: medium
      softening-celsius: 640
      expansion-ppm-k: 9.8
      coat-mm: 0.25
      working-celsius: 800
      """
          + SHEET;

  static final String GLASS =
      """
      values-for: glass
      source: maker's sheet
      glass: float
      anneal-celsius: 540
      strain-celsius: 505
      softening-celsius: 715
      expansion: 86
      anneal-soak: "1:15"
      """
          + SHEET;

  private static final String INVESTMENT =
      """
      values-for: investment
      source: maker's sheet
      binder: gypsum
      water-powder: 0.39
      """
          + SHEET;

  private static final String ALLOY =
      """
      values-for: alloy
      source: maker's sheet
      alloy: sterling-925
      pour-mould-celsius: 520
      pour-metal-celsius: 990
      least-mould-celsius: 480
      """;

  private static final String CLAY =
      "values-for: clay\nsource: maker's sheet\nclay: copper\n" + SHEET;

  private static final String METAL =
      """
      values-for: metal
      source: maker's sheet
      metal: sterling-925
      solidus-celsius: 802
      solution-celsius: 745
      target-celsius: 300
      soak: "1:00"
      """
          + SHEET;

  /** Together they use every key. */
  static final List<String> FULL =
      List.of(
          ENAMEL,
          ENAMEL.replace("expansion-ppm-k: 9.8", "oxides-mol-percent: " + WorkFileTest.EVERY_OXIDE),
          ENAMEL.replace(
              "expansion-ppm-k: 9.8", "oxides-mass-percent: " + WorkFileTest.EVERY_OXIDE),
          GLASS,
          INVESTMENT,
          ALLOY,
          CLAY,
          METAL);

  @Test
  void valuesAreReadByTheirKeys() {
    OwnValues values = ValuesFile.read(ENAMEL, "v");

    assertThat(values.of()).isEqualTo(ValuesOf.ENAMEL);
    assertThat(values.source()).isEqualTo("tiles of 3 November");
    assertThat(values.entries())
        .contains(
            entry("enamel", "medium"),
            entry("softening-celsius", "640"),
            entry("expansion-ppm-k", "9.8"))
        .contains(entry("data-sheet.top-celsius", "725"), entry("data-sheet.top-hold", "\"3:00\""));
  }

  static List<String> full() {
    return FULL;
  }

  @ParameterizedTest
  @MethodSource("full")
  void whatIsWrittenIsReadTheSame(String text) {
    OwnValues values = ValuesFile.read(text, "v");

    assertThat(ValuesFile.read(ValuesFile.write(values), "w")).isEqualTo(values);
  }

  @Test
  void aValueIsRefusedAsInAWork() {
    Inputs.refused(
        text -> ValuesFile.read(text, "v"),
        ENAMEL,
        "softening-celsius: 640",
        "softening-celsius: 90",
        "v, line 4: softening-celsius is 90; expected a number from 450 to 800 (°C).");
    Inputs.refused(
        text -> ValuesFile.read(text, "v"),
        ENAMEL,
        "top-celsius: 725",
        "top-celsius: hot",
        "v, line 12: data-sheet.top-celsius is \"hot\"; expected a number from 100 to 1400 (°C).");
    Inputs.refused(
        () -> ValuesFile.read("values-for: clay\nsource: x\n", "v"),
        "v, line 1: clay is missing; expected a line such as clay: copper.");
    Inputs.refused(
        () -> ValuesFile.read("values-for: enamel\nenamel: soft\n", "v"),
        "v, line 1: source is missing; expected a line such as source: \"maker's sheet of March\".");
    Inputs.refused(
        () -> ValuesFile.read("values-for: investment\nsource: x\n", "v"),
        "v: no value is told; expected at least one of binder, water-powder, data-sheet.");
  }

  // ---- into works

  private static <T extends Work> T put(String values, String work, Class<T> type) {
    String text = ValuesFile.into(ValuesFile.read(values, "v"), "Mine", work, "w");
    return type.cast(WorkFile.read(text, "w"));
  }

  @Test
  void anEnamelsValuesGoBeforeTheWorksOwn() {
    EnamelWork work = put(ENAMEL, WorkFileTest.ENAMEL, EnamelWork.class);

    assertThat(work.hardness()).isEqualTo(EnamelWork.Hardness.MEDIUM);
    assertThat(work.build().softening().orElseThrow().celsius()).isEqualTo(640);
    assertThat(work.working().orElseThrow().celsius()).isEqualTo(800);
    assertThat(work.dataSheet().max().orElseThrow().celsius()).isEqualTo(820);
    assertThat(work.metal()).isEqualTo(((EnamelWork) read(WorkFileTest.ENAMEL)).metal());
  }

  @Test
  void aPowdersAndAnAlloysGoWhereABurnoutHasThem() {
    BurnoutWork work = put(INVESTMENT, WorkFileTest.BURNOUT, BurnoutWork.class);
    assertThat(work.investment().binder()).isEqualTo(Investment.Binder.GYPSUM);
    assertThat(work.investment().waterPowder()).isEqualTo(0.39);
    assertThat(work.investment().pouredHoursBefore()).isEqualTo(1.5);
    assertThat(work.dataSheet().max().orElseThrow().celsius()).isEqualTo(820);

    work = put(ALLOY, WorkFileTest.BURNOUT, BurnoutWork.class);
    assertThat(work.metal().pourMould().orElseThrow().celsius()).isEqualTo(520);
    assertThat(work.metal().thinnestMetres()).hasValue(0.0012);
    assertThat(work.dataSheet().max().orElseThrow().celsius()).isEqualTo(730);
  }

  @Test
  void aGlassAClayAndAMetalGoIntoTheirWorks() {
    GlassWork glass = put(GLASS, GlassWorkFileTest.FUSE, GlassWork.class);
    assertThat(glass.glass().annealPoint().orElseThrow().celsius()).isEqualTo(540);
    assertThat(glass.annealSoak()).contains(Duration.ofMinutes(75));

    HeatTreatWork treated = put(METAL, HeatTreatWorkFileTest.FULL, HeatTreatWork.class);
    assertThat(treated.own().solidus().orElseThrow().celsius()).isEqualTo(802);

    SinterWork clay = put(CLAY, SinterWorkFileTest.FULL, SinterWork.class);
    assertThat(clay.dataSheet().topHold()).contains(Duration.ofHours(3));
  }

  private static Work read(String work) {
    return WorkFile.read(work, "w");
  }

  @Test
  void theWorkSaysWhoseTheyAreAndIsElseLeftAlone() {
    String work =
        """
        # For the fair
        kind: enamel
        metal: copper # the blue tin
        sheet-mm: 0.8
        piece-mm: 45
        enamel: soft # bought in May
        session: "2:30"
        """;

    String changed =
        ValuesFile.into(
            ValuesFile.read(
                "values-for: enamel\nsource: 'a \"good\" sheet'\nenamel: hard\nsoftening-celsius: 660\n",
                "v"),
            "Clear",
            work,
            "w");

    assertThat(changed)
        .isEqualTo(
            """
            # For the fair
            kind: enamel
            metal: copper # the blue tin
            sheet-mm: 0.8
            piece-mm: 45
            enamel: hard # bought in May
            session: "2:30"
            softening-celsius: 660
            notes: {enamel-values: "Clear: a \\"good\\" sheet"}
            """);
    assertThat(ValuesFile.noted(ValuesOf.ENAMEL, changed, "w")).contains("Clear: a \"good\" sheet");
    assertThat(ValuesFile.noted(ValuesOf.GLASS, changed, "w")).isEmpty();
    assertThat(ValuesFile.noted(ValuesOf.ENAMEL, work, "w")).isEmpty();
  }

  @Test
  void puttingThemInAgainChangesNothing() {
    OwnValues values = ValuesFile.read(INVESTMENT, "v");
    String once = ValuesFile.into(values, "Mine", WorkFileTest.BURNOUT, "w");

    assertThat(ValuesFile.into(values, "Mine", once, "w")).isEqualTo(once);
  }

  @Test
  void aNoteThatIsASentenceStays() {
    String work = WorkFileTest.ENAMEL + "notes: mind the pin\n";

    String changed = ValuesFile.into(ValuesFile.read(ENAMEL, "v"), "Mine", work, "w");

    assertThat(changed).contains("notes: mind the pin\n").contains("softening-celsius: 640");
  }

  @Test
  void anotherKindOfWorkIsRefused() {
    Inputs.refused(
        () -> ValuesFile.into(ValuesFile.read(GLASS, "v"), "Mine", WorkFileTest.BURNOUT, "w"),
        "w: it takes no values of glass; they go into a work of kind glass.");
  }

  @Test
  void aWorkThatWouldContradictItselfIsRefused() {
    Inputs.refused(
        () ->
            ValuesFile.into(
                ValuesFile.read(ENAMEL, "v"),
                "Mine",
                WorkFileTest.ENAMEL + "oxides-mol-percent: {SiO2: 60, PbO: 40}\n",
                "w"),
        "w, line 1: The expansion of an enamel is told once: by expansion-ppm-k, by"
            + " oxides-mol-percent or by oxides-mass-percent.");
  }
}
