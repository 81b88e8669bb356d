package org.heatwright.app.tonight;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.heatwright.app.files.FiringFile;
import org.heatwright.app.files.KilnFile;
import org.heatwright.app.files.ScheduleFile;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.forecast.Forecaster;
import org.heatwright.kiln.Kiln;
import org.heatwright.schedule.Schedule;
import org.junit.jupiter.api.Test;

/**
 * Forecasts from the nameplate alone against kilns simulated by others (see the provenance note
 * beside the data): nothing was learned from their logs.
 */
class ExampleKilnsTest {

  private static final String[][] FIRINGS = {
    {"k1", "f3"}, {"k1", "f4"}, {"k1", "f5"}, {"k2", "f2"}, {"k2", "f4"}, {"k2", "f5"}
  };

  @Test
  void endTimesAndEnergiesAreInsideTheirBands() throws IOException {
    List<String> outside = new ArrayList<>();
    for (String[] firing : FIRINGS) {
      Forecast forecast = forecast(firing[0], firing[1]);
      JsonNode truth =
          new ObjectMapper().readTree(text(firing[0] + "/" + firing[1] + "/truth.json"));
      // A few seconds are chance even between two firings of the same kiln.
      Band end = forecast.endSeconds();
      double ended = truth.get("programEnd_s").asDouble();
      if (ended < end.low() - 60 || ended > end.high() + 60) {
        outside.add(firing[0] + " " + firing[1] + " ends at " + ended + ", forecast " + end);
      }
      double energy = truth.get("energy_kwh").asDouble();
      if (!forecast.energyKilowattHours().contains(energy)) {
        outside.add(
            firing[0]
                + " "
                + firing[1]
                + " takes "
                + energy
                + " kWh, forecast "
                + forecast.energyKilowattHours());
      }
    }
    assertThat(outside).isEmpty();
  }

  @Test
  void displaysAreInsideTheirBandsNineTimesInTen() throws IOException {
    int inside = 0;
    int all = 0;
    for (String[] firing : FIRINGS) {
      Forecast forecast = forecast(firing[0], firing[1]);
      String[] rows = text(firing[0] + "/" + firing[1] + "/log.csv").strip().split("\n");
      for (int i = 1; i < rows.length; i++) {
        String[] cells = rows[i].split(",");
        if (cells.length < 2 || cells[1].isBlank()) {
          continue;
        }
        Band band = forecast.trace().displayCelsiusAt(Double.parseDouble(cells[0]));
        double shown = Double.parseDouble(cells[1]);
        all++;
        // Bands are read in whole degrees, rounded outward.
        if (shown >= Math.floor(band.low()) && shown <= Math.ceil(band.high())) {
          inside++;
        }
      }
    }
    System.out.printf(
        "example kilns, display inside its band: %.1f %% of %d%n", 100.0 * inside / all, all);
    assertThat(inside / (double) all).isGreaterThanOrEqualTo(0.9);
  }

  private static Forecast forecast(String kilnName, String firingName) throws IOException {
    Kiln kiln = KilnFile.read(text(kilnName + "/kiln.yaml"), "kiln.yaml");
    String folder = kilnName + "/" + firingName + "/";
    Schedule schedule = ScheduleFile.read(text(folder + "schedule.yaml"), "schedule.yaml");
    var firing = FiringFile.read(text(folder + "firing.yaml"), "firing.yaml");
    return Forecaster.forecast(
        ForecastRequest.of(schedule, kiln, firing.load().orElseThrow())
            .withConditions(firing.conditions()));
  }

  private static String text(String path) throws IOException {
    try (InputStream in =
        Objects.requireNonNull(
            ExampleKilnsTest.class.getResourceAsStream("/example-kilns/" + path), path)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }
}
