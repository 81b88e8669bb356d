package org.heatwright.app.report;

import java.nio.file.Files;
import java.nio.file.Path;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Test;

class CardPdfTest {
  @Test
  void look() throws Exception {
    Path to = Path.of(System.getProperty("user.dir"), "target", "cards");
    Files.createDirectories(to);
    Files.write(to.resolve("burnout-a4.pdf"), CardPdf.render(TestFirings.burnoutCard(), PageSize.A4));
    Files.write(to.resolve("burnout-letter.pdf"), CardPdf.render(TestFirings.burnoutCard(), PageSize.LETTER));
    Files.write(to.resolve("crowded-4-a4.pdf"), CardPdf.render(TestFirings.crowdedCard(4), PageSize.A4));
    Files.write(to.resolve("crowded-8-letter.pdf"), CardPdf.render(TestFirings.crowdedCard(8), PageSize.LETTER));
    for (int n : new int[] {1, 8, 16}) {
      Card card = TestFirings.bareCard(TestFirings.stairs(n, TemperatureUnit.FAHRENHEIT));
      Files.write(to.resolve("bare-" + n + "-a4.pdf"), CardPdf.render(card, PageSize.A4));
      Files.write(to.resolve("bare-" + n + "-letter.pdf"), CardPdf.render(card, PageSize.LETTER));
    }
    Files.write(to.resolve("crowded-16-a4.pdf"), CardPdf.render(TestFirings.crowdedCard(16), PageSize.A4));
    Files.write(to.resolve("crowded-16-letter.pdf"), CardPdf.render(TestFirings.crowdedCard(16), PageSize.LETTER));
  }
}
