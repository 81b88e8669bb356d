package org.heatwright.app.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import org.heatwright.app.report.DemoCardTest.Planned;
import org.heatwright.keypad.KeyedValue;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The demo's heat treatments and low heats, from the work file through the chain to a card. */
class HeatTreatCardTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          rivet-anneal | anchor | gull | 2 | 620 | let the red go, then into water
          spring-clasps-solution | anchor | gull | 4 | 740 | out of the kiln and into water within 3
          spring-clasps-age | anchor | heron | 7 | 300 | 100 to 140 HV
          soldered-catches | anchor | gull | 4 | 700 | soldered joints
          red-gold-bangle | anchor | tern | 3 | 670 | let the red go, into water within
          keum-boo-pendants | anchor | heron | 6 | 320 | burnish the foil at once
          granulation-preheat | anchor | gull | 8 | 780 | the torch does the fusing
          patina-bake | anchor | gull | 3 | 120 | fumes
          """)
  void aDemoHeatTreatmentComesToACard(
      String work, String kiln, String keypad, int hoursBefore, String digits, String told)
      throws IOException {
    Planned planned = DemoCardTest.plan(work, kiln, keypad, TemperatureUnit.CELSIUS, hoursBefore);
    assertThat(planned.forecast().pieces()).hasSize(1);
    assertThat(planned.program().values())
        .anyMatch(v -> v.kind() == KeyedValue.Kind.TARGET && v.digits().endsWith(digits));
    for (PageSize size : PageSize.values()) {
      byte[] pdf = CardPdf.render(planned.card(), size);
      DemoCardTest.keepForLooking(pdf, work + "-" + keypad + "-" + size);
      String text = PrintedPage.text(pdf).replaceAll("\\s+", " ");
      assertThat(text).containsIgnoringCase(told).contains("hottest in the piece");
    }
  }

  /** An on-off kiln at a wax's 120 °C: the card says that it is not fit for it. */
  @Test
  void anOnOffKilnIsToldToBeUnfitForALowBake() throws IOException {
    Planned planned = DemoCardTest.plan("patina-bake", "buoy", "heron", TemperatureUnit.CELSIUS, 3);
    byte[] pdf = CardPdf.render(planned.card(), PageSize.A4);
    DemoCardTest.keepForLooking(pdf, "patina-bake-buoy");
    assertThat(PrintedPage.text(pdf).replaceAll("\\s+", " "))
        .contains("may overshoot 120 °C", "not fit for so low a heat");
  }
}
