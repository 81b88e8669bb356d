package org.heatwright.mould;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.heatwright.units.Temperature;
import org.junit.jupiter.api.Test;

class MouldFiringTest {

  private static final BodySolver.Accuracy CONVERGED = new BodySolver.Accuracy(1.5, 0.1, 0);

  private static final Temperature ROOM = Temperature.ofCelsius(20);

  /** A burnout: 2 h at 150 °C, 2 h at 370 °C, 3 h at 730 °C, then 500 °C. */
  private static final Surroundings BURNOUT =
      Surroundings.points(
          0, 20, 3120, 150, 10_320, 150, 15_600, 370, 22_800, 370, 31_440, 730, 42_240, 730, 46_380,
          500, 52_000, 500);

  private static MouldFiring fired(Mould mould, BodySolver.Accuracy accuracy) {
    return MouldFiring.of(
        MouldFiring.Setting.of(mould, Investment.gypsum(0.40)), ROOM, BURNOUT, accuracy);
  }

  /**
   * What forecasts use is near a solution with almost four times the lines and a ninth of the
   * steps' bend.
   */
  @Test
  void theQuickSolutionIsNearTheFineOne() {
    for (Mould mould :
        new Mould[] {
          new Mould(1, 0.063, 0.09, 0.0015),
          new Mould(1, 0.09, 0.15, 0),
          new Mould(1, 0.127, 0.2, 0.003)
        }) {
      BurnoutMeasures fine = BurnoutMeasures.of(fired(mould, CONVERGED));
      MouldFiring quick = fired(mould, MouldFiring.QUICK);
      BurnoutMeasures near = BurnoutMeasures.of(quick);
      double plateau = fine.boilEndsSeconds() - fine.boilBeginsSeconds();
      assertThat(near.boilEndsSeconds()).isCloseTo(fine.boilEndsSeconds(), within(0.02 * plateau));
      assertThat(near.steamKilogramsPerSecond())
          .isCloseTo(fine.steamKilogramsPerSecond(), within(0.04 * fine.steamKilogramsPerSecond()));
      assertThat(near.burnSeconds())
          .isCloseTo(fine.burnSeconds(), within(0.02 * fine.burnSeconds()));
      assertThat(near.cristobaliteKelvins())
          .isCloseTo(fine.cristobaliteKelvins(), within(0.03 * fine.cristobaliteKelvins()));
    }
  }

  /** A sketch may be half again as far off. */
  @Test
  void itsCoreIsWithinTwoKelvinsInAlmostEveryMinute() {
    int minutes = 0;
    int quickOff = 0;
    int sketchOff = 0;
    for (Mould mould :
        new Mould[] {
          new Mould(1, 0.04, 0.05, 0.0015),
          new Mould(1, 0.063, 0.09, 0.0015),
          new Mould(1, 0.09, 0.15, 0),
          new Mould(1, 0.127, 0.2, 0.003)
        }) {
      MouldFiring converged = fired(mould, CONVERGED);
      MouldFiring quick = fired(mould, MouldFiring.QUICK);
      MouldFiring sketch = fired(mould, MouldFiring.SKETCH);
      double end = BURNOUT.lastSecond();
      for (double second = 60; second < end; second += 60) {
        double core = converged.centreCelsiusAt(second);
        minutes++;
        quickOff += Math.abs(quick.centreCelsiusAt(second) - core) > 2 ? 1 : 0;
        sketchOff += Math.abs(sketch.centreCelsiusAt(second) - core) > 2 ? 1 : 0;
      }
    }
    assertThat(quickOff).isLessThanOrEqualTo(minutes / 100);
    assertThat(sketchOff).isLessThanOrEqualTo(minutes / 50);
  }

  /** Bench rule and sheet CHK-B10: two hours at 150 °C leave a mould of 90 mm wet. */
  @Test
  void twoHoursAt150DoNotDryAMouldOf90() {
    MouldFiring firing = fired(new Mould(1, 0.09, 0.15, 0.003), MouldFiring.QUICK);
    assertThat(firing.waterShareAt(10_320)).isBetween(0.4, 0.8);
    assertThat(firing.centreCelsiusAt(10_320)).isLessThan(100);
    BurnoutMeasures measures = BurnoutMeasures.of(firing);
    assertThat(measures.boilEndsSeconds()).isGreaterThan(12_000).isLessThan(22_800);
    assertThat(firing.waterShareAt(measures.boilEndsSeconds())).isLessThan(0.01);
  }

  /** All water that was there has left as steam. */
  @Test
  void theSteamIsTheWater() {
    Mould mould = new Mould(1, 0.075, 0.10, 0);
    MouldFiring firing = fired(mould, MouldFiring.QUICK);
    double steam = 0;
    for (int i = 1; i < firing.rows(); i++) {
      steam += firing.steamKilogramsPerSecond(i) * (firing.second(i) - firing.second(i - 1));
    }
    double water =
        mould.investmentCubicMetres()
            * (GypsumInvestment.freeWaterDensity(0.40) * MouldLoad.wetShare(Investment.gypsum(0.40))
                + GypsumInvestment.boundWaterDensity(0.40));
    assertThat(steam).isCloseTo(water, within(0.002 * water));
  }

  @Test
  void largerMouldsBoilLongerAndBurnLess() {
    BurnoutMeasures small =
        BurnoutMeasures.of(fired(new Mould(1, 0.06, 0.1, 0), MouldFiring.QUICK));
    BurnoutMeasures large =
        BurnoutMeasures.of(fired(new Mould(1, 0.12, 0.2, 0), MouldFiring.QUICK));
    assertThat(large.boilEndsSeconds()).isGreaterThan(small.boilEndsSeconds() + 3600);
    assertThat(large.burnSeconds()).isLessThan(small.burnSeconds());
    assertThat(large.quartzKelvins()).isGreaterThan(small.quartzKelvins());
    assertThat(small.hottestPeakCelsius()).isCloseTo(730, within(1.0));
    assertThat(small.coldestPeakCelsius()).isCloseTo(730, within(1.0));
  }

  @Test
  void aSectionIsWhole() {
    MouldFiring firing = fired(new Mould(1, 0.075, 0.10, 0.002), MouldFiring.QUICK);
    Section some = firing.sectionAt(12_000);
    assertThat(some.second()).isCloseTo(12_000, within(1e-6));
    assertThat(some.heightMetres(0)).isCloseTo(0, within(1e-9));
    assertThat(some.heightMetres(some.heights() - 1)).isCloseTo(0.10, within(1e-9));
    assertThat(some.radiusMetres(some.radii() - 1)).isCloseTo(0.0375, within(1e-9));
    assertThat(some.celsius(0, some.heights() / 2))
        .isCloseTo(firing.centreCelsiusAt(12_000), within(3.0));
    // The same above and below.
    for (int i = 0; i < some.radii(); i++) {
      assertThat(some.celsius(i, 0)).isCloseTo(some.celsius(i, some.heights() - 1), within(1e-9));
    }
    assertThat(firing.sectionAt(0).celsius(0, 0)).isCloseTo(20, within(1e-9));
  }

  @Test
  void thinnedSurroundingsStayNear() {
    Surroundings all =
        Surroundings.sampled(
            20_000, 60, s -> 20 + 300 * (1 - Math.exp(-s / 4000)), s -> 20 + 0.03 * s);
    Surroundings thin = all.thinned(0.4);
    assertThat(thin.size()).isLessThan(all.size() / 6);
    for (double s = 0; s <= 20_000; s += 37) {
      assertThat(thin.gasCelsiusAt(s)).isCloseTo(all.gasCelsiusAt(s), within(0.45));
      assertThat(thin.wallsCelsiusAt(s)).isCloseTo(all.wallsCelsiusAt(s), within(0.45));
    }
  }

  /** Sheet CHK-B13, a grid solution computed apart with scipy, within a kelvin there. */
  @Test
  void aMouldOutOfTheKilnLosesItsOutermostPatternFirst() {
    // The sheet's body: k 0.45, rho c 1234 * 1100, all faces in air of 20 °C, from 600 °C.
    PourWindow window =
        PourWindow.of(
            new PourWindow.Setting(
                new Mould(1, 0.075, 0.10, 0),
                Investment.gypsum(0.40),
                Temperature.ofCelsius(600),
                ROOM,
                PourWindow.Place.AIR,
                0.0125));
    // c and k of the fired mix differ a little from the sheet's constants: c 1129, k 0.45.
    assertThat(window.patternFallsBelowSeconds(Temperature.ofCelsius(590))).isBetween(66.0, 78.0);
    assertThat(window.patternFallsBelowSeconds(Temperature.ofCelsius(575))).isBetween(100.0, 116.0);
    // 491.5 °C after 300 s on the sheet, within 8 K
    assertThat(window.patternFallsBelowSeconds(Temperature.ofCelsius(499.5))).isLessThan(300);
    assertThat(window.patternFallsBelowSeconds(Temperature.ofCelsius(483.5))).isGreaterThan(300);
    assertThat(window.centreCelsiusAt(60)).isCloseTo(600, within(0.5));
    PourWindow held =
        PourWindow.of(
            new PourWindow.Setting(
                new Mould(1, 0.075, 0.10, 0),
                Investment.gypsum(0.40),
                Temperature.ofCelsius(600),
                ROOM,
                PourWindow.Place.CRADLE,
                0.0125));
    assertThat(held.patternFallsBelowSeconds(Temperature.ofCelsius(575)))
        .isGreaterThan(window.patternFallsBelowSeconds(Temperature.ofCelsius(575)));
  }
}
