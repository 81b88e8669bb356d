package org.heatwright.app.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZonedDateTime;
import java.util.Optional;
import org.heatwright.app.files.KilnFile;
import org.heatwright.app.files.WorkFile;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.forecast.Forecaster;
import org.heatwright.forecast.StartPlan;
import org.heatwright.forecast.StartPlanner;
import org.heatwright.inspect.Inspection;
import org.heatwright.inspect.Inspector;
import org.heatwright.kiln.Kiln;
import org.heatwright.work.Composer;
import org.heatwright.work.Composition;
import org.heatwright.work.Work;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Cards of the demo studio, through the real chain. */
class DemoCardTest {

  private static String text(String path) throws IOException {
    try (InputStream in = DemoCardTest.class.getResourceAsStream("/demo/" + path)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  @ParameterizedTest
  @CsvSource({"harbour-burnout, capstan", "mixed-moulds, capstan", "evening-enamel, buoy"})
  void fromTheWorkToTheCard(String workName, String kilnName) throws IOException {
    Kiln kiln = KilnFile.read(text("kilns/" + kilnName + ".yaml"), kilnName);
    Work work = WorkFile.read(text("works/" + workName + ".yaml"), workName);
    Composition composition = Composer.compose(work, kiln, Optional.empty());
    Forecast forecast =
        Forecaster.forecast(ForecastRequest.of(composition.schedule(), kiln, composition.charge()));
    ZonedDateTime by = work.readyBy().orElseThrow().atZone(kiln.timeZone().orElseThrow());
    StartPlan start = StartPlanner.readyBy(forecast, by, by.minusHours(18));
    Card card =
        CardBuilder.of(
                composition.schedule().withStartDelay(start.delayToSet().orElseThrow()),
                kiln,
                forecast)
            .composition(composition)
            .start(start.start(), start.notes())
            .findings(
                Inspector.inspect(
                    Inspection.of(composition.schedule())
                        .in(kiln)
                        .forWork(composition.demands())
                        .with(forecast)))
            .build();
    Path to = Path.of(System.getProperty("user.dir"), "target", "cards");
    Files.createDirectories(to);
    Files.write(to.resolve("demo-" + workName + ".pdf"), CardPdf.render(card, PageSize.A4));
    assertThat(card.entries()).isNotEmpty();
  }
}
