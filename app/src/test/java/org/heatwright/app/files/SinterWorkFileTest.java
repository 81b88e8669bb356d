package org.heatwright.app.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.LocalDateTime;
import org.heatwright.work.SinterWork;
import org.heatwright.work.SinterWork.Aim;
import org.heatwright.work.SinterWork.Embedded;
import org.heatwright.work.SinterWork.Phase;
import org.heatwright.work.sinter.CarbonBox;
import org.heatwright.work.sinter.Clay;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SinterWorkFileTest {

  static final String FULL =
      """
      kind: sinter
      clay: copper
      phase: sinter
      pieces:
        - {count: 4, thickness-mm: 2.5, length-mm: 30}
        - {count: 1, thickness-mm: 5, length-mm: 25, holds: lab-stone, notes: inset}
      box: {wall: steel, wall-mm: 1, width-mm: 110, depth-mm: 90, height-mm: 60, notes: tin}
      aim: quickest
      dry-at: 2026-12-02T09:00
      tests:
        - {before-mm: 50, after-mm: 43.5, celsius: 930, hold: "3:00", rate-k-per-h: 800, notes: x}
      data-sheet: {max-celsius: 980, fastest-rise-k-per-h: 900}
      ready-by: 2026-12-03T16:30
      notes: four leaves
      """;

  @Test
  void readsAll() {
    SinterWork work = (SinterWork) WorkFile.read(FULL, "work.yaml");
    assertThat(work.clay()).isEqualTo(Clay.COPPER);
    assertThat(work.phase()).isEqualTo(Phase.SINTER);
    assertThat(work.count()).isEqualTo(5);
    assertThat(work.thickest())
        .isEqualTo(new SinterWork.Piece(1, 0.005, 0.025, Embedded.LAB_STONE));
    assertThat(work.box()).contains(new CarbonBox(CarbonBox.Wall.STEEL, 0.001, 0.11, 0.09, 0.06));
    assertThat(work.aim()).isEqualTo(Aim.QUICKEST);
    assertThat(work.tests()).hasSize(1);
    assertThat(work.tests().get(0).hold()).isEqualTo(Duration.ofHours(3));
    assertThat(work.tests().get(0).rate().kelvinsPerHour()).isEqualTo(800);
    assertThat(work.dataSheet().max().orElseThrow().celsius()).isEqualTo(980);
    assertThat(work.dryAt()).contains(LocalDateTime.parse("2026-12-02T09:00"));
    assertThat(work.readyBy()).contains(LocalDateTime.parse("2026-12-03T16:30"));
  }

  @Test
  void whatIsLeftOutIsUsualAndWhatIsWrittenReadsBack() {
    String shortest = "kind: sinter\nclay: %s\npieces: [{thickness-mm: 2, length-mm: 20}]\n";
    SinterWork silver = (SinterWork) WorkFile.read(shortest.formatted("fine-silver"), "work.yaml");
    SinterWork bronze = (SinterWork) WorkFile.read(shortest.formatted("bronze"), "work.yaml");
    assertThat(silver.phase()).isEqualTo(Phase.BOTH_IN_ONE);
    assertThat(bronze.phase()).isEqualTo(Phase.BINDER);
    SinterWork full = (SinterWork) WorkFile.read(FULL, "work.yaml");
    for (SinterWork work : new SinterWork[] {silver, bronze, full}) {
      assertThat(WorkFile.read(WorkFile.write(work), "work.yaml")).isEqualTo(work);
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      textBlock =
          """
          clay: copper | clay: coper | line 2: clay is "coper"; expected fine-silver-low-fire, fine-silver, fine-silver-older, sterling, copper, bronze or bronze-low-fire (did you mean copper?).
          phase: sinter | phase: two | line 3: phase is "two"; expected binder, sinter or both-in-one.
          thickness-mm: 5 | thickness-mm: 50 | line 6: pieces[2].thickness-mm is 50; expected a number from 0.3 to 30 (mm).
          holds: lab-stone | holds: pearl | line 6: pieces[2].holds is "pearl"; expected none, glass, stone, lab-stone or cork.
          height-mm: 60 | height-mm: 6 | line 7: box.height-mm is 6; expected a number from 20 to 300 (mm).
          after-mm: 43.5 | after-mm: 53.5 | line 11: tests[1]: The length after the firing (53.5 mm) must be half to all of the length before (50.0 mm).
          clay: copper | clay: fine-silver | line 1: Fine silver fires on an open shelf: leave the box of carbon away.
          dry-at: 2026-12-02T09:00 | dry-at: 2026-12-04T09:00 | line 1: The pieces are dry at 2026-12-04T09:00, which is not before they must be ready at 2026-12-03T16:30.
          """)
  void refusesWithOneSentence(String part, String replacement, String message) {
    Inputs.refused(
        text -> WorkFile.read(text, "work.yaml"), FULL, part, replacement, "work.yaml, " + message);
  }
}
