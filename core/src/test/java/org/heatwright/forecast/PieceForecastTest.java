package org.heatwright.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.heatwright.schedule.TestSchedules.segment;

import java.util.List;
import java.util.Optional;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.TestKilns;
import org.heatwright.kiln.ThermalBody;
import org.heatwright.material.HeatCurves;
import org.heatwright.material.Material;
import org.heatwright.material.Origin;
import org.heatwright.numerics.LinearTable;
import org.heatwright.piece.FollowedPiece;
import org.heatwright.piece.Slab;
import org.heatwright.piece.SlabLoad;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.TestSchedules;
import org.junit.jupiter.api.Test;

class PieceForecastTest {

  private static final Kiln MUFFLE = TestKilns.brickMuffle(2200);

  private static final Material CARBON =
      new Material(
          "packed carbon",
          500,
          LinearTable.constant(0.2),
          LinearTable.constant(1000),
          List.of(),
          Origin.estimate("test"));

  /** Half of a box 80 mm high, heated alike from above and below. */
  private static final FollowedPiece BOX =
      new FollowedPiece(
          "box",
          1,
          0.03,
          new Slab(List.of(new Slab.Layer(CARBON, 0.04)), new Slab.Face(0.8, 8), Optional.empty()),
          List.of(new FollowedPiece.Place("middle", 0.04), new FollowedPiece.Place("wall", 0)));

  private static final Schedule SCHEDULE = TestSchedules.of(segment(500, 800, 180));

  @Test
  void theMiddleLagsAndCatchesUp() {
    Forecast forecast =
        Forecaster.forecast(
            ForecastRequest.of(SCHEDULE, MUFFLE, Charge.followed(List.of(BOX))).withDraws(16));
    assertThat(forecast.trace().workNames()).containsExactly("box middle", "box wall");
    PieceForecast box = forecast.pieces().get(0);
    double reached = forecast.segments().get(0).reachedSeconds().median();
    Band middle = box.celsiusAt(BOX.judged(), reached);
    Band wall = box.celsiusAt(BOX.places().get(1), reached);
    assertThat(middle.median()).isLessThan(wall.median() - 100);
    assertThat(middle.low()).isLessThan(middle.median());
    assertThat(box.atEndCelsius().median()).isCloseTo(800, within(25.0));
    assertThat(box.draws()).allMatch(draw -> Double.isFinite(draw.firstSecondAt(0.04, 700)));
    assertThat(box.draws()).allMatch(draw -> Double.isInfinite(draw.firstSecondAt(0.04, 1200)));
    assertThat(forecast.work()).isEmpty();
  }

  @Test
  void whatStandsInTheKilnCostsHeat() {
    Forecast empty =
        Forecaster.forecast(ForecastRequest.of(SCHEDULE, MUFFLE, Charge.empty()).withDraws(1));
    Forecast loaded =
        Forecaster.forecast(
            ForecastRequest.of(SCHEDULE, MUFFLE, Charge.followed(List.of(BOX))).withDraws(1));
    // 0.03 m² of 20 kg/m² warmed by some 750 K at 1000 J/(kg K): 0.125 kWh.
    assertThat(loaded.energyKilowattHours().median() - empty.energyKilowattHours().median())
        .isCloseTo(0.125, within(0.03));
  }

  /** The path that the kiln sees holds the heat of the whole slab, two faces or one. */
  @Test
  void thePathHoldsAllOfTheHeat() {
    Material metal =
        new Material(
            "metal",
            8960,
            LinearTable.constant(390),
            LinearTable.constant(420),
            List.of(),
            Origin.estimate("test"));
    Slab enamelled =
        new Slab(
            List.of(new Slab.Layer(CARBON, 0.0005), new Slab.Layer(metal, 0.001)),
            new Slab.Face(0.85, 8),
            Optional.of(new Slab.Face(0.6, 8)));
    FollowedPiece plate =
        new FollowedPiece(
            "plate", 3, 0.002, enamelled, List.of(new FollowedPiece.Place("metal", 0.001)));
    ThermalBody body = new SlabLoad(plate).body(new HeatCurves(), 1, 1);
    assertThat(body.faceSquareMetres()).isCloseTo(3 * 2 * 0.002, within(1e-12));
    assertThat(body.joulesPerKelvin(400))
        .isCloseTo(3 * 0.002 * (0.0005 * 500 * 1000 + 0.001 * 8960 * 420), within(1e-6));
    assertThat(plate.slab().joulesPerSquareMetreKelvin(400))
        .isCloseTo(0.0005 * 500 * 1000 + 0.001 * 8960 * 420, within(1e-9));
  }

  @Test
  void aLogTellsWhatThePieceDid() {
    ForecastRequest request =
        ForecastRequest.of(SCHEDULE, MUFFLE, Charge.followed(List.of(BOX))).withDraws(16);
    Forecast forecast = Forecaster.forecast(request);
    double[] seconds = forecast.trace().seconds();
    double[] celsius = forecast.trace().medianCelsius();
    PieceForecast told = InsideFromLog.pieces(request, seconds, celsius).get(0);
    double late = forecast.endSeconds().median();
    assertThat(told.celsiusAt(BOX.judged(), late).median())
        .isCloseTo(forecast.pieces().get(0).celsiusAt(BOX.judged(), late).median(), within(6.0));
    // Forty kelvins hotter on the display all along is some forty hotter inside at the end.
    double[] hotter = java.util.Arrays.stream(celsius).map(c -> c + 40).toArray();
    assertThat(
            InsideFromLog.pieces(request, seconds, hotter)
                    .get(0)
                    .celsiusAt(BOX.judged(), late)
                    .median()
                - told.celsiusAt(BOX.judged(), late).median())
        .isCloseTo(40, within(6.0));
  }
}
