package org.heatwright.work.sinter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.heatwright.mould.Surroundings;
import org.heatwright.piece.Slab;
import org.heatwright.piece.SlabHistory;
import org.heatwright.units.Temperature;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PieceLagTest {

  /** The closed formula against the slab's own solver: never shorter, not twice as long. */
  @ParameterizedTest
  @CsvSource({
    "COPPER, STEEL, 1, 60, 3, 930, 1000, 10",
    "COPPER, STEEL, 1, 90, 8, 930, 1000, 10",
    "BRONZE, CERAMIC, 8, 60, 3, 830, 500, 10",
    "BRONZE, STEEL, 1, 60, 6, 830, 140, 10",
    "STERLING, STEEL, 1.5, 40, 2, 770, 1500, 10",
    "COPPER, CERAMIC, 5, 60, 4, 290, 270, 10"
  })
  void theLagInABoxIsOnTheSafeSideOfTheSolver(
      Clay clay,
      CarbonBox.Wall wall,
      double wallMm,
      double heightMm,
      double pieceMm,
      double top,
      double rate,
      double within) {
    CarbonBox box = new CarbonBox(wall, wallMm / 1000, 0.1, 0.1, heightMm / 1000);
    Slab slab = box.slab(Clays.of(clay), pieceMm / 1000);
    double closed = PieceLag.seconds(slab, 20, top, rate, within);
    double solved = solved(slab, top, rate, within);
    assertThat(closed).isGreaterThanOrEqualTo(solved).isLessThan(1.7 * solved + 300);
  }

  @ParameterizedTest
  @CsvSource({"1, 900, 1000", "6, 900, 1000", "8, 650, 400", "3, 500, 3000"})
  void theLagOfAPieceOnTheShelfIsOnTheSafeSide(double pieceMm, double top, double rate) {
    ClayFacts facts = Clays.of(Clay.FINE_SILVER);
    Slab slab = Slab.lying(facts.dense(), pieceMm / 1000, new Slab.Face(facts.emissivity(), 8));
    double closed = PieceLag.seconds(slab, 20, top, rate, 10);
    double solved = solved(slab, top, rate, 10);
    assertThat(closed).isGreaterThanOrEqualTo(0.98 * solved).isLessThan(2 * solved + 60);
  }

  /** For one layer with a film the delay is {@code L²/(2 alpha) + L rho c/h}: exact. */
  @Test
  void theDelayOfOneLayerIsTheTextbooks() {
    Slab slab = Slab.lying(CarbonBox.CARBON, 0.03, new Slab.Face(0, 20));
    double k = CarbonBox.CARBON.conductivityWattsPerMetreKelvin().at(720);
    double heat = 500 * CarbonBox.CARBON.heatCapacityJoulesPerKilogramKelvin().at(720);
    assertThat(PieceLag.delaySeconds(slab, 900))
        .isCloseTo(0.03 * 0.03 * heat / (2 * k) + 0.03 * heat / 20, within(1e-6));
  }

  private static double solved(Slab slab, double top, double rate, double within) {
    double up = (top - 20) / rate * 3600;
    double end = up + 6 * 3600;
    SlabHistory history =
        SlabHistory.of(
            slab, Surroundings.points(0, 20, up, top, end, top), Temperature.ofCelsius(20), end);
    return Math.max(0, history.firstSecondAt(slab.thicknessMetres(), top - within) - up);
  }
}
