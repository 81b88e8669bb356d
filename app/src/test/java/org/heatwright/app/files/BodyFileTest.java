package org.heatwright.app.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.heatwright.material.KnownMaterial;
import org.heatwright.mould.BodyMaterials;
import org.heatwright.mould.BodyProbe;
import org.heatwright.mould.BodyShape;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BodyFileTest {

  static final String FULL =
      """
      name: large mould
      shape:
        diameter-mm: 90
        height-mm: 150
        bottom: insulated
        cavity: {diameter-mm: 10, depth-mm: 60}
        ring: {material: stainless-steel, thickness-mm: 1.5}
      material:
        name: my powder
        density-kg-m3: 1200
        conductivity-w-mk: [[20, 0.6], [800, 0.4]]
        heat-capacity-j-kgk: [[20, 900], [800, 1100]]
        latent: [{from-celsius: 95, to-celsius: 115, j-kg: 400000, once: true}]
        source: maker's data sheet
      surface: {emissivity: 0.9, convection-w-m2k: 8}
      start-celsius: 20
      surroundings: [[0, 20], [3600, 150], [10800, 150]]
      end-s: 14400
      probes: [centre, mid-radius, surface, mean, {r-mm: 12.5, z-mm: 75}]
      report-every-s: 60
      """;

  static final String MATERIAL =
      """
      name: my powder
      density-kg-m3: 1200
      conductivity-w-mk: [[20, 0.6], [800, 0.4]]
      heat-capacity-j-kgk: 1000
      latent: [{from-celsius: 95, to-celsius: 115, j-kg: 400000, once: true}]
      source: maker's data sheet
      """;

  @Test
  void everyFieldIsRead() {
    BodyFile.Content content = BodyFile.read(FULL, "b");
    BodyShape shape = content.body().shape();

    assertThat(shape.diameterMetres()).isEqualTo(0.09);
    assertThat(shape.heightMetres()).isEqualTo(0.15);
    assertThat(shape.bottom()).isEqualTo(BodyShape.Bottom.INSULATED);
    assertThat(shape.cavity()).contains(new BodyShape.Cavity(0.01, 0.06));
    assertThat(shape.ring().orElseThrow().thicknessMetres()).isEqualTo(0.0015);
    assertThat(shape.ring().orElseThrow().material().name()).isEqualTo("stainless-steel");
    assertThat(content.body().material().latentHeats().get(0).once()).isTrue();
    assertThat(content.body().emissivity()).isEqualTo(0.9);
    assertThat(content.body().convectionWattsPerSquareMetreKelvin()).isEqualTo(8);
    assertThat(content.body().start().celsius()).isEqualTo(20);
    assertThat(content.surroundings().at(1800)).isEqualTo(85);
    assertThat(content.lastPointSeconds()).isEqualTo(10_800);
    assertThat(content.endSeconds()).hasValue(14_400);
    assertThat(content.everySeconds()).isEqualTo(60);
    assertThat(content.probes())
        .startsWith(BodyProbe.USUAL.toArray(BodyProbe[]::new))
        .endsWith(BodyProbe.point("r12.5-z75", 0.0125, 0.075));
  }

  @Test
  void whatMayBeLeftOutHasItsUsualValue() {
    BodyFile.Content content =
        BodyFile.read(
            """
            shape: {diameter-mm: 80, height-mm: 110}
            material: gypsum-investment-40
            surface: {emissivity: 0, convection-w-m2k: 25}
            start-celsius: 20
            surroundings: [[0, 500], [1, 500]]
            """,
            "b");

    assertThat(content.body().shape().bottom()).isEqualTo(BodyShape.Bottom.EXPOSED);
    assertThat(content.probes()).isEqualTo(BodyProbe.USUAL);
    assertThat(content.everySeconds()).isEqualTo(60);
    assertThat(content.endSeconds()).isEmpty();
  }

  @Test
  void aMaterialFileStandsInForTheBodysOwn() {
    var material = MaterialFile.read(MATERIAL, "m");
    String without = FULL.replaceFirst("(?s)material:\\n  name.*?sheet\\n", "");

    assertThat(BodyFile.read(without, "b", Optional.of(material)).body().material())
        .isEqualTo(material);
    assertThat(BodyFile.read(FULL, "b", Optional.of(material)).body().material())
        .isEqualTo(material);
    assertThatThrownBy(() -> BodyFile.read(without, "b")).hasMessageContaining("material");
  }

  @Test
  void everyMaterialOfTheLibraryHasSourceRangeAndUncertainty() {
    assertThat(BodyMaterials.names())
        .doesNotHaveDuplicates()
        .contains(
            "gypsum-investment-38",
            "gypsum-investment-42-fired",
            "phosphate-investment-20",
            "stainless-steel",
            "dense-firebrick",
            "fibre-blanket-96",
            "silver",
            "pattern-wax",
            "casting-resin",
            "soda-lime-glass");
    for (KnownMaterial known : BodyMaterials.known()) {
      assertThat(known.material().origin().text()).as(known.name()).isNotBlank();
      assertThat(known.conductivityShare()).as(known.name()).isBetween(0.01, 0.5);
      assertThat(known.toCelsius()).as(known.name()).isGreaterThan(100);
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '"',
      textBlock =
          """
          bottom: insulated | bottom: insulatd | line 5: shape.bottom is 'insulatd'; expected exposed or insulated (did you mean insulated?).
          diameter-mm: 90 | diameter-mm: 2 | line 3: shape.diameter-mm is 2; expected a number from 5 to 1000 (mm).
          depth-mm: 60 | depth-mm: 160 | line 3: shape: The cavity (160.0 mm deep) cannot be deeper than the body (150.0 mm high).
          {r-mm: 12.5, z-mm: 75} | {r-mm: 2, z-mm: 120} | line 19: probes[5]: there is no solid at r-mm 2, z-mm 120; expected r-mm from 0 to 45, z-mm from 0 to 150, outside the cavity.
          [3600, 150], [10800 | [3600, 150], [1800 | line 17: surroundings[3][1] is 1800; expected a time after the one before it.
          start-celsius | start-celcius | line 16: start-celcius is not known; expected one of
          mid-radius | mid | line 19: probes[2] is 'mid'; expected centre, mid-radius, surface or mean
          """)
  void whatIsWrongIsTold(String part, String wrong, String told) {
    String text = FULL.replaceFirst(Pattern.quote(part), Matcher.quoteReplacement(wrong));
    assertThat(text).isNotEqualTo(FULL);

    assertThatThrownBy(() -> BodyFile.read(text, "b.yaml"))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("b.yaml, " + told.replace('\'', '"'));
  }

  /** The names of the published schema are those the reader knows. */
  @Test
  void theSchemaListsEveryMaterial() throws java.io.IOException {
    String schema = Files.readString(Path.of("..", "docs", "schema", "body.schema.json"));
    List<String> missing =
        BodyMaterials.names().stream().filter(n -> !schema.contains("\"" + n + "\"")).toList();

    assertThat(missing).isEmpty();
  }
}
