package org.heatwright.app.tonight;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.heatwright.app.files.FiringFile;
import org.heatwright.app.files.KilnFile;
import org.heatwright.app.files.ScheduleFile;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.forecast.Forecaster;
import org.heatwright.forecast.Overshoot;
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

  /**
   * How far the nameplate alone lets a kiln overshoot a hold, against what the log's display did
   * there: a kiln with a proportional controller and one with an on-off switch.
   */
  @Test
  void overshootsAreInsideTheirBands() throws IOException {
    int holds = 0;
    for (String[] firing : new String[][] {{"k1", "f4"}, {"k1", "f5"}, {"k2", "f5"}}) {
      Forecast forecast = forecast(firing[0], firing[1]);
      String folder = firing[0] + "/" + firing[1] + "/";
      Schedule schedule = ScheduleFile.read(text(folder + "schedule.yaml"), "schedule.yaml");
      JsonNode segments = new ObjectMapper().readTree(text(folder + "truth.json")).get("segments");
      for (int s = 0; s < segments.size(); s++) {
        double[] held =
            held(
                text(folder + "log.csv"),
                segments.get(s).get("reached_s").asDouble(),
                segments.get(s).get("end_s").asDouble());
        double target = schedule.segments().get(s).target().celsius();
        double above = Arrays.stream(held).max().orElseThrow() - target;
        double below = target - Arrays.stream(held).min().orElseThrow();
        Overshoot told = forecast.segments().get(s).overshoot().orElseThrow();
        System.out.printf(
            "example kilns, %s hold %d: display %.0f K above, forecast %.1f to %.1f K; %.0f K below, %.1f to %.1f K%n",
            folder,
            s + 1,
            above,
            told.above().low(),
            told.above().high(),
            below,
            told.below().low(),
            told.below().high());
        // The log is in whole degrees and has its noise.
        assertThat(above).isBetween(told.above().low() - 3, told.above().high() + 3);
        assertThat(below).isBetween(told.below().low() - 3, told.below().high() + 3);
        holds++;
      }
    }
    assertThat(holds).isEqualTo(9);
  }

  /** The readings of a hold, °C. */
  private static double[] held(String log, double fromSecond, double toSecond) {
    return log.strip()
        .lines()
        .skip(1)
        .map(row -> row.split(","))
        .filter(cells -> cells.length > 1 && !cells[1].isBlank())
        .filter(
            cells ->
                Double.parseDouble(cells[0]) >= fromSecond
                    && Double.parseDouble(cells[0]) <= toSecond)
        .mapToDouble(cells -> Double.parseDouble(cells[1]))
        .toArray();
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
