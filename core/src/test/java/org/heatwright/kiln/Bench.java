package org.heatwright.kiln;

import java.util.ArrayList;
import java.util.List;
import org.heatwright.material.HeatCurve;
import org.heatwright.material.Material;
import org.heatwright.material.Origin;
import org.heatwright.numerics.LinearTable;
import org.heatwright.numerics.RosenbrockStepper;

/**
 * Bodies and networks with closed answers. A body here is a row of cells; a bath is a cell so heavy
 * that it keeps its temperature, and a film is one that conducts and stores nothing.
 */
final class Bench {

  /** Elements, sensor and leak that are as good as not there, in a kiln of 20 °C. */
  static final double ALMOST_NOTHING = 1e-9;

  private static final HeatCurve BATH =
      HeatCurve.of(solid("bath", 8000, LinearTable.constant(1e12), 500));

  private final List<HeatCurve> curves = new ArrayList<>();
  private final List<Double> starts = new ArrayList<>();
  private final ThermalBody.Builder builder = ThermalBody.builder("body", 1, 0.8);

  static Material solid(String name, double density, LinearTable conductivity, double capacity) {
    return new Material(
        name,
        density,
        conductivity,
        LinearTable.constant(capacity),
        List.of(),
        Origin.estimate("made for this test"));
  }

  Bench bath(double celsius, double areaSquareMetres) {
    return cell(BATH, celsius, 1, 1e6, areaSquareMetres);
  }

  /** A film of {@code h} W/(m² K), as thick as it matters to nothing. */
  Bench film(double h, double celsius, double areaSquareMetres) {
    double thickness = 1e-3;
    Material film = solid("film", 1e-3, LinearTable.constant(h * thickness), 1);
    return cell(
        HeatCurve.of(film), celsius, thickness, thickness * areaSquareMetres, areaSquareMetres);
  }

  /** A flat layer of one square metre in equal cells. */
  Bench layer(Material material, double thickness, int cells, double celsius) {
    HeatCurve curve = HeatCurve.of(material);
    for (int i = 0; i < cells; i++) {
      cell(curve, celsius, thickness / cells, thickness / cells, 1);
    }
    return this;
  }

  /** A joint behind what was laid last, m² K/W. */
  Bench joint(double squareMetreKelvinsPerWatt) {
    builder.joint(squareMetreKelvinsPerWatt);
    return this;
  }

  Bench cell(
      HeatCurve curve, double celsius, double thickness, double volume, double innerSquareMetres) {
    curves.add(curve);
    starts.add(celsius);
    builder.cell(curve, 1, 1, thickness, volume, innerSquareMetres);
    return this;
  }

  /** The row's network at its start, with the power off. */
  Running start(double toleranceKelvins) {
    ThermalBody body = builder.core();
    KilnNetwork network = network(1, parameters(ALMOST_NOTHING, 1, 1), toleranceKelvins, body);
    network.drive(KilnNetwork.Drive.NONE);
    double[] y = network.stateAt(starts.get(0));
    for (int i = 0; i < starts.size(); i++) {
      y[KilnNetwork.FIRST_CELL + i] = curves.get(i).heatAt(starts.get(i));
    }
    return new Running(network, body, y);
  }

  /** A chamber that is one mass of {@code joulesPerKelvin} and a linear leak. */
  static Running lump(
      double joulesPerKelvin, double leakWattsPerKelvin, double watts, double celsius) {
    // So large a face that chamber, air and lump are one.
    ThermalBody lump =
        ThermalBody.lumped(
            "lump",
            1e7,
            0.8,
            HeatCurve.of(solid("lump", 1000, LinearTable.constant(1), 1000)),
            joulesPerKelvin / 1e6);
    KilnNetwork network =
        network(watts, parameters(leakWattsPerKelvin, ALMOST_NOTHING, ALMOST_NOTHING), 1e-6, lump);
    return new Running(network, lump, network.stateAt(celsius));
  }

  static KilnParameters parameters(double leak, double sensorFactor, double elementFactor) {
    return new KilnParameters(
        1,
        1,
        1,
        1,
        leak,
        1e-9,
        sensorFactor,
        1,
        0,
        0,
        0.02,
        300,
        0,
        1,
        1,
        1,
        elementFactor,
        0,
        1,
        1);
  }

  static KilnNetwork network(
      double watts, KilnParameters parameters, double toleranceKelvins, ThermalBody... bodies) {
    return new KilnNetwork(
        TestKilns.brickMuffle(watts),
        parameters,
        FiringConditions.usual(),
        List.of(bodies),
        List.of(),
        toleranceKelvins);
  }

  /** A network on its way. */
  static final class Running {
    final KilnNetwork network;
    final ThermalBody body;
    double[] y;

    Running(KilnNetwork network, ThermalBody body, double[] y) {
      this.network = network;
      this.body = body;
      this.y = y;
    }

    Running after(double seconds) {
      RosenbrockStepper stepper = new RosenbrockStepper(network);
      double[] next = new double[y.length];
      double[] rates = new double[y.length];
      double t = 0;
      double step = 1e-3;
      while (t < seconds) {
        step = Math.min(step, seconds - t);
        network.rates(y, rates);
        double norm = stepper.step(y, rates, step, next);
        if (norm <= 1) {
          t += step;
          double[] swap = y;
          y = next;
          next = swap;
        }
        step = RosenbrockStepper.nextStep(step, norm);
      }
      return this;
    }

    double celsius(int cell) {
      return network.cellCelsius(y, 0, cell);
    }

    /** Heat content of a row of cells above a temperature, J. */
    double joulesAbove(double celsius, int from, int to) {
      double sum = 0;
      for (int i = from; i < to; i++) {
        sum += (y[KilnNetwork.FIRST_CELL + i] - body.curve[i].heatAt(celsius)) * body.volume[i];
      }
      return sum;
    }

    /** Heat that flows into a cell, W. */
    double wattsInto(int cell) {
      double[] rates = new double[y.length];
      network.rates(y, rates);
      return rates[KilnNetwork.FIRST_CELL + cell] * body.volume[cell];
    }
  }
}
