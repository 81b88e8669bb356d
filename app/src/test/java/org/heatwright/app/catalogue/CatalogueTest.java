package org.heatwright.app.catalogue;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.heatwright.app.files.WorkFile;
import org.heatwright.inspect.Wording;
import org.heatwright.material.Origin;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.Work;
import org.heatwright.work.enamel.EnamelMetal;
import org.heatwright.work.enamel.EnamelMetals;
import org.junit.jupiter.api.Test;

class CatalogueTest {

  private static final List<Shelf> ALL = new Catalogue(TemperatureUnit.CELSIUS).shelves();

  @Test
  void everyValueSaysWhatItIsAndWhereItIsFrom() {
    Set<String> codes = new HashSet<>();
    for (Shelf shelf : ALL) {
      assertThat(codes.add(shelf.code())).as(shelf.code()).isTrue();
      assertThat(shelf.items()).as(shelf.name()).isNotEmpty();
      for (Shelf.Item item : shelf.items()) {
        assertThat(item.values()).as(item.name()).isNotEmpty();
        for (Shelf.Value value : item.values()) {
          assertThat(value.what() + value.value())
              .as(item.name())
              .doesNotContain("null", "NaN", "Infinity", "Optional", "_");
          assertThat(value.value())
              .as(item.name() + ", " + value.what())
              .containsPattern("\\d|told");
          assertThat(value.origin().kind()).as(item.name()).isNotEqualTo(Origin.Kind.OWN);
        }
      }
    }
  }

  /** The rows are the core's own values, not a copy of them. */
  @Test
  void theValuesAreThoseThatSchedulesRestOn() {
    for (EnamelMetal metal : EnamelMetals.all()) {
      Shelf.Item item =
          ALL.get(0).items().stream()
              .filter(i -> i.name().equals(metal.name()))
              .findFirst()
              .orElseThrow();
      assertThat(item.values().get(1).value())
          .isEqualTo(
              Wording.of(Temperature.ofCelsius(metal.solidusCelsius()), TemperatureUnit.CELSIUS));
    }
  }

  @Test
  void inFahrenheitNoCelsiusIsLeft() {
    for (Shelf shelf : new Catalogue(TemperatureUnit.FAHRENHEIT).shelves()) {
      for (Shelf.Item item : shelf.items()) {
        for (Shelf.Value value : item.values()) {
          assertThat(value.what() + value.value()).as(item.name()).doesNotContain("°C");
        }
      }
    }
  }

  @Test
  void wordsFindWhatHoldsAllOfThem() {
    Shelf clays = ALL.stream().filter(s -> s.code().equals("metal-clay")).findFirst().orElseThrow();
    assertThat(clays.matching("bronze").items())
        .hasSizeBetween(1, clays.items().size() - 1)
        .allMatch(item -> item.name().contains("bronze"));
    assertThat(clays.matching("Bronze strongest").items()).isNotEmpty();
    assertThat(clays.matching("bronze unobtainable").items()).isEmpty();
  }

  @Test
  void aDataSheetStandsAsAnOwnValue() {
    Work slab =
        WorkFile.read(
            "{kind: glass, glass: float, process: slump, sheet-mm: 6, piece-mm: 160,"
                + " data-sheet: {top-celsius: 804, top-hold: '0:15'}}",
            "slab");
    Shelf own = new Catalogue(TemperatureUnit.CELSIUS).own(Map.of("Slab", slab));
    assertThat(own.items()).hasSize(1);
    assertThat(own.items().get(0).values())
        .extracting(Shelf.Value::value)
        .containsExactly("804 °C", "15 min");
    assertThat(own.items().get(0).values().get(0).origin().kind()).isEqualTo(Origin.Kind.OWN);
  }
}
