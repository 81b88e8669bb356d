package org.heatwright.app.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import org.heatwright.work.GlassWork;
import org.heatwright.work.glass.Glass;
import org.heatwright.work.glass.GlassProcess;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GlassWorkFileTest {

  static final String FUSE =
      """
      kind: glass
      glass: soft-art
      process: full-fuse
      sheet-mm: 3
      layers: 4
      thinnest-mm: 6
      piece-mm: 160
      pieces: 2
      faces: both
      expansion: 90
      accent-expansion: 96.5
      anneal-celsius: 516
      strain-celsius: 480
      softening-celsius: 680
      anneal-soak: "1:30"
      top-celsius: 802
      top-hold: "0:12"
      tension-mpa: 0.5
      data-sheet: {max-celsius: 840, dry-celsius: 149, dry-hold: "2:00", top-celsius: 804, top-hold: "0:10", fastest-rise-k-per-h: 220, fastest-wet-rise-k-per-h: 80, pour-soak: "1:00"}
      ready-by: 2026-12-06T18:00
      """;

  static final String BOWL =
      """
      kind: glass
      glass: float
      process: slump
      sheet-mm: 6
      piece-mm: 190
      form: {span-mm: 180, depth-mm: 25}
      """;

  private static GlassWork read(String text) {
    return (GlassWork) WorkFile.read(text, "work.yaml");
  }

  @Test
  void readsGlass() {
    GlassWork fuse = read(FUSE);
    assertThat(fuse.process()).isEqualTo(GlassProcess.FULL_FUSE);
    assertThat(fuse.wholeMetres()).isCloseTo(0.012, within(1e-12));
    assertThat(fuse.effectiveMetres()).isCloseTo(0.018, within(1e-12));
    assertThat(fuse.depthMetres()).isCloseTo(0.009, within(1e-12));
    assertThat(fuse.glass().family()).isEqualTo(Glass.Family.SOFT_ART);
    assertThat(fuse.glass().expansion().orElseThrow().perKelvin()).isCloseTo(9e-6, within(1e-15));
    assertThat(fuse.accent().orElseThrow().perKelvin()).isCloseTo(9.65e-6, within(1e-15));
    assertThat(fuse.glass().annealPoint().orElseThrow().celsius()).isEqualTo(516);
    assertThat(fuse.annealSoak()).contains(Duration.ofMinutes(90));
    assertThat(fuse.own().hold()).contains(Duration.ofMinutes(12));
    assertThat(fuse.tensionPascals()).hasValue(0.5e6);
    GlassWork bowl = read(BOWL);
    assertThat(bowl.layers()).isEqualTo(1);
    assertThat(bowl.faces()).isEqualTo(GlassWork.Faces.ONE);
    assertThat(bowl.form().orElseThrow().spanMetres()).isEqualTo(0.18);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      textBlock =
          """
          glass: soft-art | glass: borosilicate | line 2: glass is "borosilicate"; expected float, soft-art or unknown.
          process: full-fuse | process: fullfuse | line 3: process is "fullfuse"; expected slump, sharp-tack, tack, contour, full-fuse or anneal (did you mean full-fuse?).
          sheet-mm: 3 | sheet-mm: 0.3 | line 4: sheet-mm is 0.3; expected a number from 1 to 40 (mm).
          layers: 4 | layers: 2.5 | line 5: layers is 2.5; expected a whole number from 1 to 20.
          thinnest-mm: 6 | thinnest-mm: 13 | line 1: The thinnest place (13.0 mm) must be at least 0.5 mm and no thicker than the thickest, 12.0 mm.
          expansion: 90 | expansion: 9e-6 | line 10: expansion is 9e-6; expected a number from 20 to 160 (ten-millionths a kelvin, as the trade tells it: 90 is 9e-6).
          strain-celsius: 480 | strain-celsius: 520 | line 1: The strain point must lie 10 to 80 K under the annealing point, not -4 K.
          anneal-celsius: 516 | anneal-celsius: 960 | line 12: anneal-celsius is 960; expected a number from 380 to 720 (°C).
          top-hold: "0:12" | top-hold: 12 | line 17: top-hold is 12; expected hours and minutes such as "1:30", at most 999:59.
          faces: both | side: both | line 9: side is not known; expected one of kind, glass, process, sheet-mm, layers, thinnest-mm, piece-mm, pieces, faces, form, expansion, accent-expansion, anneal-celsius, strain-celsius, softening-celsius, anneal-soak, top-celsius, top-hold, tension-mpa, data-sheet, ready-by.
          """)
  void whatIsWrongIsToldInASentence(String good, String bad, String sentence) {
    assertThat(FUSE).contains(good);
    assertThatThrownBy(() -> read(FUSE.replace(good, bad)))
        .isInstanceOf(InputException.class)
        .hasMessage("work.yaml, " + sentence);
  }

  @Test
  void aFormIsForASlump() {
    assertThatThrownBy(() -> read(BOWL.replace("slump", "tack")))
        .hasMessage("work.yaml, line 1: A form belongs to a slump, not to a tack fuse.");
    assertThatThrownBy(() -> read(BOWL.replace("depth-mm: 25", "depth-mm: 100")))
        .hasMessageContaining("at most half as deep");
  }
}
