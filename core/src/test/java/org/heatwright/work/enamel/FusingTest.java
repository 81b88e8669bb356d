package org.heatwright.work.enamel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.heatwright.material.Viscosity;
import org.heatwright.mould.Surroundings;
import org.junit.jupiter.api.Test;

/** When a piece is glossy, and what tiles say about it. */
class FusingTest {

  private static List<PieceCurve> curves(double chamber, double sheetMetres) {
    Surroundings around =
        Surroundings.points(
            0, chamber - 75, 30, chamber - 55, 60, chamber - 40, 120, chamber - 20, 300, chamber);
    List<PieceCurve> curves = new ArrayList<>();
    for (double deviations : new double[] {-1.2, 0, 1.2}) {
      curves.add(
          PieceBody.of(EnamelMetals.COPPER, sheetMetres, 0.0006, PieceBody.Underside.COUNTER_ENAMEL)
              .follow(around, 20, 1200, deviations));
    }
    return curves;
  }

  private static PullWindow window(double chamber, double sheetMetres, FusingClass fusing) {
    return PullWindow.of(curves(chamber, sheetMetres), fusing.viscosity(), Fusing.PRIOR_DECADES);
  }

  /**
   * Read, two beginners' and supplier pages: 1.5 to 3 min for thin copper jewellery; a page on
   * enamels: copper at 788 °C 1 to 5 min, with soft enamels. The window overlaps each.
   */
  @Test
  void theUsualPieceIsGlossyInTheUsualTime() {
    PullWindow medium = window(820, 0.001, FusingClass.MEDIUM);
    assertThat(medium.likelySeconds()).isBetween(80.0, 180.0);
    assertThat(medium.earliestSeconds()).isLessThan(90);
    assertThat(medium.latestSeconds()).isGreaterThan(120);
    PullWindow soft = window(788, 0.001, FusingClass.SOFT);
    assertThat(soft.likelySeconds()).isBetween(60.0, 300.0);
  }

  /** Hotter is sooner, thicker is later, harder is later; stages come in their order. */
  @Test
  void everythingMovesTheRightWay() {
    SplittableRandom random = new SplittableRandom(3);
    for (int n = 0; n < 60; n++) {
      double chamber = random.nextDouble(760, 900);
      double sheet = random.nextDouble(0.0004, 0.003);
      PullWindow usual = window(chamber, sheet, FusingClass.MEDIUM);
      assertThat(window(chamber + 20, sheet, FusingClass.MEDIUM).likelySeconds())
          .isLessThan(usual.likelySeconds());
      assertThat(window(chamber, sheet * 1.3, FusingClass.MEDIUM).likelySeconds())
          .isGreaterThan(usual.likelySeconds());
      assertThat(window(chamber, sheet, FusingClass.HARD).likelySeconds())
          .isGreaterThan(usual.likelySeconds());
      assertThat(window(chamber, sheet, FusingClass.SOFT).likelySeconds())
          .isLessThan(usual.likelySeconds());
      assertThat(usual.fusedSeconds()).isLessThan(usual.likelySeconds());
      assertThat(usual.earliestSeconds()).isLessThanOrEqualTo(usual.likelySeconds());
      assertThat(usual.likelySeconds()).isLessThanOrEqualTo(usual.latestSeconds());
      assertThat(usual.overFiredSeconds()).isGreaterThan(usual.earliestSeconds());
      assertThat(usual.hottestCelsius().high()).isLessThan(chamber + 1e-6);
    }
  }

  @Test
  void tooColdIsNeverGlossy() {
    PullWindow cold = window(640, 0.001, FusingClass.HARD);

    assertThat(cold.glosses()).isFalse();
    assertThat(cold.likelySeconds()).isInfinite();
    assertThat(cold.overFiredSeconds()).isInfinite();
  }

  /** The time at heat that gives gloss is the flow over the dose, on a level curve. */
  @Test
  void aLevelCurveIsGlossyWhenTheFlowIsThere() {
    Viscosity glass = FusingClass.MEDIUM.viscosity();
    PieceCurve level = PieceCurve.follow(1, 1.8, 100, Surroundings.points(0, 800), 800, 1200, 1);
    double needs =
        Math.pow(10, Fusing.GLOSS_LOG_FLOW)
            * glass.pascalSecondsAt(org.heatwright.units.Temperature.ofCelsius(800));

    PullWindow window = PullWindow.of(List.of(level), glass, Range.exactly(0));

    assertThat(window.likelySeconds()).isCloseTo(needs, within(0.02 * needs + 0.1));
    assertThat(window.earliestSeconds()).isCloseTo(window.latestSeconds(), within(1e-9));
    assertThat(level.equivalentSeconds(glass, 800, 100)).isCloseTo(100, within(0.01));
    assertThat(level.equivalentSeconds(glass, 780, 100)).isGreaterThan(120);
  }

  // ---- tiles

  /** Tiles of an enamel whose need is known: the estimate comes to it, the spread shrinks. */
  @Test
  void tilesFindTheEnamel() {
    SplittableRandom random = new SplittableRandom(8);
    int held = 0;
    for (int n = 0; n < 60; n++) {
      double truth = 0.43 * random.nextGaussian();
      List<TileCalibration.Seen> seen = new ArrayList<>();
      double last = TileCalibration.of(Fusing.PRIOR_DECADES, seen).deviationDecades();
      assertThat(last).isCloseTo(Math.hypot(0.35, 0.25), within(0.01));
      for (int tile = 0; tile < 6; tile++) {
        double flow = truth + random.nextDouble(-1.8, 1.8);
        double looked = flow - truth + TileCalibration.READING_DECADES * random.nextGaussian();
        seen.add(new TileCalibration.Seen(flow, Look.at(looked)));
      }
      TileCalibration after = TileCalibration.of(Fusing.PRIOR_DECADES, seen);
      assertThat(after.deviationDecades()).isLessThan(last);
      held += after.decades().low() <= truth && truth <= after.decades().high() ? 1 : 0;
    }
    // Nine in ten, and 60 of them: 48 are four standard deviations low.
    assertThat(held).isGreaterThanOrEqualTo(48);
  }

  /** Between a tile that was orange peel and one that was glossy lies the answer. */
  @Test
  void twoTilesBracketIt() {
    TileCalibration two =
        TileCalibration.of(
            Fusing.PRIOR_DECADES,
            List.of(
                new TileCalibration.Seen(0.2, Look.ORANGE_PEEL),
                new TileCalibration.Seen(0.5, Look.GLOSSY)));

    assertThat(two.decades().median()).isBetween(0.2, 0.5);
    assertThat(two.deviationDecades()).isLessThan(0.16);
    assertThat(two.odd()).isEmpty();
    // The window of such an enamel lies inside the one before and is narrower.
    PullWindow before =
        PullWindow.of(curves(820, 0.001), FusingClass.MEDIUM.viscosity(), Fusing.PRIOR_DECADES);
    PullWindow after =
        PullWindow.of(curves(820, 0.001), FusingClass.MEDIUM.viscosity(), two.decades());
    assertThat(after.latestSeconds() - after.earliestSeconds())
        .isLessThan(0.6 * (before.latestSeconds() - before.earliestSeconds()));
  }

  @Test
  void aTileThatContradictsIsTold() {
    TileCalibration odd =
        TileCalibration.of(
            Fusing.PRIOR_DECADES,
            List.of(
                new TileCalibration.Seen(0.0, Look.GLOSSY),
                new TileCalibration.Seen(0.1, Look.GLOSSY),
                new TileCalibration.Seen(0.9, Look.SUGARY)));

    assertThat(odd.odd()).contains(2);
  }

  /** The best next tile sits where the answer is open, and its promise is kept on average. */
  @Test
  void theNextTileNarrowsAsItSays() {
    TileCalibration none = TileCalibration.of(Fusing.PRIOR_DECADES, List.of());
    double atGloss = none.deviationAfter(0);
    assertThat(atGloss).isLessThan(none.deviationAfter(-2.6)).isLessThan(none.deviationDecades());

    SplittableRandom random = new SplittableRandom(21);
    double variance = 0;
    int tries = 400;
    for (int n = 0; n < tries; n++) {
      double truth = Math.hypot(0.35, 0.25) * random.nextGaussian();
      double looked = -truth + TileCalibration.READING_DECADES * random.nextGaussian();
      double after =
          TileCalibration.of(
                  Fusing.PRIOR_DECADES, List.of(new TileCalibration.Seen(0, Look.at(looked))))
              .deviationDecades();
      variance += after * after / tries;
    }
    assertThat(Math.sqrt(variance)).isCloseTo(atGloss, within(0.02));
  }
}
