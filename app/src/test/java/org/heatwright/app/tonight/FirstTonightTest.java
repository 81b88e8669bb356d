package org.heatwright.app.tonight;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Random;
import org.heatwright.app.files.KilnFile;
import org.heatwright.app.files.WorkFile;
import org.heatwright.app.report.Card;
import org.heatwright.app.report.CardBuilder;
import org.heatwright.forecast.Charge;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.forecast.Forecaster;
import org.heatwright.kiln.Kiln;
import org.heatwright.schedule.Schedule;
import org.heatwright.work.Composer;
import org.heatwright.work.Composition;
import org.heatwright.work.WorkRefusedException;
import org.junit.jupiter.api.Test;

/**
 * One prediction that a person can check tonight: what a card says the display will read at clock
 * times, against kilns simulated apart from the product (see {@link IndependentKiln}).
 */
class FirstTonightTest {

  private static final int KILNS_EACH = 12;
  private static final ZonedDateTime EVENING =
      ZonedDateTime.parse("2026-12-02T18:40:00+00:00[Europe/Lisbon]");

  @Test
  void whatTheCardSaysTheDisplayWillReadIsInsideItsBandNineTimesInTen()
      throws IOException, WorkRefusedException {
    List<String> outside = new ArrayList<>();
    List<Double> widthsKelvins = new ArrayList<>();
    int rows = 0;
    long seed = 20261202;
    for (String[] pair :
        new String[][] {
          {"capstan", "harbour-burnout"},
          {"anchor", "mixed-moulds"},
          {"anchor", "evening-enamel"},
          {"buoy", "evening-enamel"},
        }) {
      Kiln kiln = KilnFile.read(resource("kilns", pair[0]), pair[0] + ".yaml");
      var work = WorkFile.read(resource("works", pair[1]), pair[1] + ".yaml");
      Composition composition = Composer.compose(work, kiln, Optional.empty());
      Schedule schedule = composition.schedule();
      Charge charge = composition.charge();
      Forecast forecast = Forecaster.forecast(ForecastRequest.of(schedule, kiln, charge));
      Card card = CardBuilder.of(schedule, kiln, forecast).start(EVENING, List.of()).build();
      assertThat(card.display()).hasSizeBetween(6, 8);
      card.display()
          .forEach(
              row -> widthsKelvins.add(row.displayCelsius().high() - row.displayCelsius().low()));
      double last = card.display().get(card.display().size() - 1).seconds();
      for (int i = 0; i < KILNS_EACH; i++) {
        Random random = new Random(seed++);
        double room = kiln.room().celsius() + 2 * random.nextGaussian();
        double[] display =
            new IndependentKiln(kiln, charge, room, random)
                .displayEveryTenSeconds(schedule, last + 20);
        for (Card.DisplayRow row : card.display()) {
          rows++;
          double shown = display[(int) Math.round(row.seconds() / 10)];
          // The card prints whole degrees, rounded outward.
          if (shown < Math.floor(row.displayCelsius().low())
              || shown > Math.ceil(row.displayCelsius().high())) {
            outside.add(
                "%s, %s, kiln %d: %.0f s shows %.0f, card says %.0f to %.0f"
                    .formatted(
                        pair[0],
                        pair[1],
                        i,
                        row.seconds(),
                        shown,
                        row.displayCelsius().low(),
                        row.displayCelsius().high()));
          }
        }
      }
    }
    double inside = 1 - outside.size() / (double) rows;
    widthsKelvins.sort(null);
    double middleWidth = widthsKelvins.get(widthsKelvins.size() / 2);
    System.out.printf(
        "first-tonight rows inside their bands: %.1f %% of %d; half of the bands are %.0f K wide or"
            + " less, the widest %.0f K%n",
        100 * inside, rows, middleWidth, widthsKelvins.get(widthsKelvins.size() - 1));
    assertThat(inside).as(() -> String.join("\n", outside)).isGreaterThanOrEqualTo(0.9);
    // A band that says nothing would pass the line above.
    assertThat(middleWidth).isLessThan(40);
  }

  private static String resource(String folder, String name) throws IOException {
    try (InputStream in =
        Objects.requireNonNull(
            FirstTonightTest.class.getResourceAsStream("/demo/" + folder + "/" + name + ".yaml"))) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }
}
