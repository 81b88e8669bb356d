package org.heatwright.piece;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.heatwright.material.Material;
import org.heatwright.material.Origin;
import org.heatwright.mould.Surroundings;
import org.heatwright.numerics.LinearTable;
import org.heatwright.units.Temperature;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SlabHistoryTest {

  private static final Temperature ROOM = Temperature.ofCelsius(20);

  private static Material material(double density, double conductivity, double capacity) {
    return new Material(
        "test",
        density,
        LinearTable.constant(conductivity),
        LinearTable.constant(capacity),
        List.of(),
        Origin.estimate("test"));
  }

  private static Slab.Face face(double emissivity, double film) {
    return new Slab.Face(emissivity, film);
  }

  /**
   * Thin plate heated by radiation: computed apart with scipy from the closed form and from its
   * differential equation, implementers' sheet CHK-C6; the form is equation 3.283 of Bejan's Heat
   * Transfer Handbook.
   */
  @ParameterizedTest
  @CsvSource({
    "0.8, 8960, 420, 0.70, 0.70, 20, 800, 850, 28.5251",
    "0.8, 8960, 420, 0.70, 0.70, 20, 840, 850, 39.6605",
    "0.8, 8960, 420, 0.85, 0.70, 20, 700, 800, 23.5434",
    "1.0, 10500, 255, 0.85, 0.05, 20, 700, 780, 40.5264",
    "1.0, 10500, 255, 0.05, 0.05, 20, 700, 780, 364.737",
    "0.6, 7850, 600, 0.85, 0.85, 20, 780, 820, 24.9244",
    "0.8, 8960, 420, 0.70, 0.70, 800, 500, 20, 17.34506"
  })
  void aThinPlateFollowsTheClosedForm(
      double millimetres,
      double density,
      double capacity,
      double front,
      double back,
      double from,
      double to,
      double walls,
      double seconds) {
    Slab plate =
        new Slab(
            List.of(new Slab.Layer(material(density, 390, capacity), millimetres / 1000)),
            face(front, 0),
            Optional.of(face(back, 0)));
    SlabHistory history =
        SlabHistory.of(
            plate, Surroundings.points(0, walls), Temperature.ofCelsius(from), 3 * seconds);
    assertThat(history.firstSecondAt(0, to)).isCloseTo(seconds, within(0.005 * seconds));
  }

  /**
   * Plate with a film on both faces against the exact series (Carslaw and Jaeger, Conduction of
   * Heat in Solids, from memory): roots of z tan z = Bi found here by bisection.
   */
  @ParameterizedTest
  @CsvSource({"0.1, 3", "1, 0.5", "1, 1.5", "10, 0.1", "10, 0.6"})
  void aPlateWithAFilmFollowsTheSeries(double biot, double fourier) {
    double half = 0.02;
    double conductivity = 1.2;
    double diffusivity = 5e-7;
    Slab plate =
        Slab.free(
            material(2500, conductivity, conductivity / 2500 / diffusivity),
            2 * half,
            face(0, biot * conductivity / half));
    double end = fourier * half * half / diffusivity;
    SlabHistory history = SlabHistory.of(plate, Surroundings.points(0, 520), ROOM, end);
    assertThat(history.celsiusAt(half, end))
        .isCloseTo(520 - 500 * series(biot, fourier, 0), within(0.9));
    assertThat(history.celsiusAt(0, end))
        .isCloseTo(520 - 500 * series(biot, fourier, 1), within(0.9));
    assertThat(history.celsiusAt(2 * half, end)).isCloseTo(history.celsiusAt(0, end), within(1e-6));
  }

  private static double series(double biot, double fourier, double place) {
    double sum = 0;
    for (int n = 0; n < 60; n++) {
      double low = n * Math.PI + 1e-12;
      double high = n * Math.PI + Math.PI / 2 - 1e-12;
      for (int i = 0; i < 100; i++) {
        double middle = (low + high) / 2;
        if (middle * Math.tan(middle) < biot) {
          low = middle;
        } else {
          high = middle;
        }
      }
      double z = low;
      sum +=
          4
              * Math.sin(z)
              / (2 * z + Math.sin(2 * z))
              * Math.exp(-z * z * fourier)
              * Math.cos(z * place);
    }
    return sum;
  }

  /** Quasi-steady heating at a rate: surface to middle R L²/(2 kappa) (implementers' sheet E.2). */
  @Test
  void aSteadyRampBendsTheProfileByTheClosedForm() {
    double kappa = 4.2e-7;
    double half = 0.006;
    double perSecond = 100 / 3600.0;
    Slab plate = Slab.free(material(2500, 1, 1 / 2500.0 / kappa), 2 * half, face(0, 1e5));
    double end = 3600;
    SlabHistory history = SlabHistory.of(plate, Surroundings.points(0, 20, end, 120), ROOM, end);
    double across = perSecond * half * half / (2 * kappa);
    assertThat(history.celsiusAt(0, end) - history.celsiusAt(half, end))
        .isCloseTo(across, within(0.01 * across));
    // The parabola's mean is a third of the way down from the faces, from the exact profile.
    assertThat(history.celsiusAt(0, end) - history.meanCelsiusAt(end))
        .isCloseTo(across * 2 / 3, within(0.02 * across));
  }

  /** Layers in series between a hot film and a held face: the steady state of resistances. */
  @Test
  void layersShareTheFallByTheirResistance() {
    Slab wall =
        new Slab(
            List.of(
                new Slab.Layer(material(500, 0.2, 900), 0.05),
                new Slab.Layer(material(200, 0.1, 800), 0.02)),
            face(0, 20),
            Optional.of(face(0, 10)));
    Surroundings around = Surroundings.points(0, 700);
    // Gas is the same on both sides, so only a start that differs moves anything; the steady state
    // of a two-sided film is the gas itself.
    SlabHistory history = SlabHistory.of(wall, around, ROOM, 400_000);
    assertThat(history.celsiusAt(0.03, 400_000)).isCloseTo(700, within(0.01));
    // Early on, heat flows in from both faces: the interface is the coldest region.
    assertThat(history.celsiusAt(0.05, 3000))
        .isLessThan(history.celsiusAt(0, 3000))
        .isLessThan(history.celsiusAt(0.07, 3000));
  }

  /** What came in through the faces is what the slab holds, with a latent heat on the way. */
  @Test
  void aLatentHeatHoldsTheTemperature() {
    Material wet =
        new Material(
            "wet",
            1500,
            LinearTable.constant(200),
            LinearTable.constant(1000),
            List.of(new Material.LatentHeat(95, 105, 400_000, false)),
            Origin.estimate("test"));
    // Nearly lumped, film 50 W/(m² K) on one face: dT/dt = h (Tg - T)/(rho c d).
    Slab slab = Slab.lying(wet, 0.01, face(0, 50));
    SlabHistory history = SlabHistory.of(slab, Surroundings.points(0, 300), ROOM, 8000);
    double tau = 1500 * 1000 * 0.01 / 50;
    double toBoil = tau * Math.log(280 / (300.0 - 95));
    // Through ten kelvins with c + L/10 K.
    double boiling = tau * 41 * Math.log(205 / 195.0);
    assertThat(history.celsiusAt(0.01, toBoil)).isCloseTo(95, within(0.4));
    assertThat(history.celsiusAt(0.01, toBoil + boiling / 2)).isCloseTo(100, within(0.4));
    assertThat(history.celsiusAt(0.01, toBoil + boiling)).isCloseTo(105, within(0.4));
    double later = 300 - 195 * Math.exp(-200 / tau);
    assertThat(history.celsiusAt(0.01, toBoil + boiling + 200)).isCloseTo(later, within(0.8));
  }

  @Test
  void finerStepsAndCellsHardlyChangeTheAnswer() {
    Slab box =
        new Slab(
            List.of(
                new Slab.Layer(material(7900, 17, 460), 0.001),
                new Slab.Layer(material(500, 0.2, 1000), 0.03),
                new Slab.Layer(material(8000, 50, 300), 0.002)),
            face(0.8, 8),
            Optional.empty());
    Surroundings around = Surroundings.points(0, 20, 3600, 850, 14_400, 850, 18_000, 300);
    SlabHistory usual = SlabHistory.of(box, around, ROOM, 20_000);
    SlabHistory fine = SlabHistory.of(box, around, ROOM, 20_000, 4);
    for (int second = 100; second < 20_000; second += 100) {
      assertThat(usual.celsiusAt(0.033, second))
          .isCloseTo(fine.celsiusAt(0.033, second), within(1.0));
    }
    assertThat(usual.seconds().length).isLessThan(1500);
  }

  @Test
  void timeWithinIsCountedOnStraightLines() {
    Slab thin = Slab.free(material(1000, 400, 100), 0.0001, face(0, 1e4));
    SlabHistory history =
        SlabHistory.of(
            thin, Surroundings.points(0, 0, 100, 100, 200, 0), Temperature.ofCelsius(0), 200);
    assertThat(history.secondsWithin(0, 50, 200)).isCloseTo(100, within(0.5));
    assertThat(history.secondsWithin(0, 40, 50)).isCloseTo(20, within(0.5));
    assertThat(history.secondsWithin(0, 150, 200)).isZero();
    assertThat(history.firstSecondAt(0, 150)).isInfinite();
  }

  @Test
  void nonsenseIsRefused() {
    Material any = material(1000, 1, 1000);
    assertThatThrownBy(() -> new Slab.Layer(any, 0))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("0 and up to 1000 mm");
    assertThatThrownBy(() -> face(1.1, 0)).hasMessageContaining("0 to 1");
    Slab slab = Slab.lying(any, 0.01, face(0.8, 8));
    assertThatThrownBy(() -> SlabHistory.of(slab, Surroundings.points(0, 20), ROOM, 0))
        .hasMessageContaining("above zero");
    assertThatThrownBy(
            () ->
                new FollowedPiece(
                    "glass", 1, 0.01, slab, List.of(new FollowedPiece.Place("back", 0.02))))
        .hasMessageContaining("behind its back");
  }
}
