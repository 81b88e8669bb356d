package org.heatwright.kiln;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.heatwright.material.HeatCurve;
import org.heatwright.material.HeatCurves;
import org.heatwright.material.Material;
import org.heatwright.material.Origin;
import org.heatwright.mould.MouldLoad;
import org.heatwright.numerics.LinearTable;
import org.heatwright.numerics.RosenbrockStepper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class KilnNetworkTest {

  private static Material solid(
      String name, double density, LinearTable conductivity, double capacity) {
    return new Material(
        name,
        density,
        conductivity,
        LinearTable.constant(capacity),
        List.of(),
        Origin.estimate("made for this test"));
  }

  /** A flat wall of one square metre, in cells that grow from both sides of each layer. */
  private static ThermalBody flatWall(double firstMetres, Layer... layers) {
    ThermalBody.Builder builder = ThermalBody.builder("wall", 1, 0.8);
    for (Layer layer : layers) {
      HeatCurve curve = HeatCurve.of(layer.material());
      List<Double> half = WallBuilder.cut(layer.thicknessMetres() / 2, firstMetres, 1.15, 1);
      List<Double> cells = new ArrayList<>(half);
      for (int i = half.size() - 1; i >= 0; i--) {
        cells.add(half.get(i));
      }
      for (double cell : cells) {
        builder.cell(curve, 1, 1, cell, cell, 1);
      }
    }
    return builder.shell(1);
  }

  /**
   * A kiln whose elements give exactly {@code watts} and which loses heat through its wall only.
   */
  private static KilnNetwork network(double watts, ThermalBody... walls) {
    Kiln kiln = TestKilns.brickMuffle(watts);
    KilnParameters bare =
        new KilnParameters(
            1, 1, 1, 1, 1e-9, 1e-9, 1, 1, 0, 0, 0.02, 300, 0, 1, 1, 1, 1e-3, 0, 1, 1);
    return new KilnNetwork(kiln, bare, FiringConditions.usual(), List.of(walls), List.of(), 0.002);
  }

  /** A kiln with its own walls, empty. */
  private static KilnNetwork network(Kiln kiln, KilnParameters parameters) {
    return new KilnNetwork(
        kiln,
        parameters,
        FiringConditions.usual(),
        new WallBuilder(kiln, WallBuilder.Grid.USUAL, new HeatCurves()).build(1, 1),
        List.of(),
        0.1);
  }

  private static double[] run(KilnNetwork network, double[] start, double seconds) {
    RosenbrockStepper stepper = new RosenbrockStepper(network);
    double[] y = start;
    double[] next = new double[y.length];
    double[] rates = new double[y.length];
    double t = 0;
    double step = 0.01;
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
    return y;
  }

  /**
   * CHK-A3: brick k = 0.10 + 1e-4 T, 100 mm, and fibre blanket, 25 mm, with a real outer film;
   * computed apart from this code by quadrature and root finding. Film: Holman, Heat Transfer,
   * table 7-2 (from memory); fibre data read from a fire laboratory's open material database.
   */
  @ParameterizedTest
  @CsvSource({
    "500, 336.4147, 255.8546, 54.0194",
    "700, 545.8920, 340.9758, 70.4790",
    "900, 795.8568, 420.6641, 87.9117",
    "1000, 935.4472, 459.1455, 96.8631"
  })
  void losesSteadyHeatThroughALayeredWall(
      double hotCelsius, double watts, double interfaceCelsius, double shellCelsius) {
    Material brick = solid("brick", 490, LinearTable.points(0, 0.10, 1400, 0.24), 1000);
    Material fibre =
        solid(
            "fibre",
            128,
            LinearTable.points(144.166666667, 0.035, 260, 0.06, 538, 0.12, 816, 0.21, 1093, 0.30),
            1000);
    Layer hot = new Layer(brick, 0.100);
    Layer cold = new Layer(fibre, 0.025);
    KilnNetwork network = network(watts, flatWall(0.0004, hot, cold));
    network.drive(KilnNetwork.Drive.FULL);
    double[] y = run(network, network.stateAt(300), 400 * 3600.0);
    int cells = flatWall(0.0004, hot, cold).cells();
    int brickCells = 2 * WallBuilder.cut(0.05, 0.0004, 1.15, 1).size();
    assertThat(network.cellCelsius(y, 0, 0)).isCloseTo(hotCelsius, within(0.5));
    assertThat(network.cellCelsius(y, 0, cells - 1)).isCloseTo(shellCelsius, within(0.1));
    double beforeInterface = network.cellCelsius(y, 0, brickCells - 1);
    double behindInterface = network.cellCelsius(y, 0, brickCells);
    assertThat(interfaceCelsius).isBetween(behindInterface, beforeInterface);
    assertThat(beforeInterface - behindInterface).isLessThan(4);
    assertThat(network.lostWatts(y)).isCloseTo(watts, within(watts * 1e-4));
  }

  /**
   * CHK-A9, semi-infinite solid under a constant flux of 1000 W/m²: rise of the face after 600 s,
   * {@code 2 q sqrt(alpha t / pi) / k} = 99.714798 K. Carslaw and Jaeger, Conduction of Heat in
   * Solids (from memory).
   */
  @Test
  void heatsAThickWallLikeTheSemiInfiniteSolid() {
    Material brick = solid("brick", 490, LinearTable.constant(0.16), 980);
    KilnNetwork network = network(1000, flatWall(0.0003, new Layer(brick, 0.3)));
    network.drive(KilnNetwork.Drive.FULL);
    double[] y = run(network, network.stateAt(20), 600);
    assertThat(network.cellCelsius(y, 0, 0) - 20).isCloseTo(99.714798, within(0.4));
  }

  /** The first cell of use, on the same problem, and one twice as coarse. */
  @ParameterizedTest
  @CsvSource({"0.001", "0.002"})
  void isNearThatAnswerOnTheGridOfUse(double firstMetres) {
    Material brick = solid("brick", 490, LinearTable.constant(0.16), 980);
    KilnNetwork network = network(1000, flatWall(firstMetres, new Layer(brick, 0.3)));
    network.drive(KilnNetwork.Drive.FULL);
    double[] y = run(network, network.stateAt(20), 600);
    assertThat(network.cellCelsius(y, 0, 0) - 20).isCloseTo(99.714798, within(1.0));
  }

  /**
   * Sensor lag {@code tau = rho c D / (4 h)}, h = 15 + 4 eps sigma T^3: the table of time constants
   * of bare sheaths, computed from the same estimates apart from this code.
   */
  @ParameterizedTest
  @CsvSource({
    "1.5, 500, 13.7",
    "1.5, 900, 4.4",
    "3, 20, 138",
    "3, 500, 27.3",
    "3, 750, 12.9",
    "6, 900, 17.5"
  })
  void sensorLagsAsItsSheathSays(double sheathMillimetres, double celsius, double tauSeconds) {
    Kiln kiln = TestKilns.brickMuffle(2200, sheathMillimetres);
    KilnParameters plain =
        new KilnParameters(1, 1, 1, 1, 1e-9, 1e-9, 1, 1, 0, 0, 0.02, 300, 0, 1, 1, 1, 1, 0, 1, 1);
    KilnNetwork network = network(kiln, plain);
    network.drive(KilnNetwork.Drive.NONE);
    double[] y = network.stateAt(celsius);
    double[] rates = new double[y.length];
    y[KilnNetwork.SENSOR] = celsius - 0.01;
    network.rates(y, rates);
    assertThat(0.01 / rates[KilnNetwork.SENSOR]).isCloseTo(tauSeconds, within(0.008 * tauSeconds));
  }

  /** Step response of a first-order lag: 1 - 1/e of the step after one time constant. */
  @Test
  void sensorFollowsAStepToSixtyThreePercentInOneTimeConstant() {
    Material mass = solid("mass", 8000, LinearTable.constant(50), 500);
    ThermalBody chamber =
        ThermalBody.lumped("mass", 100, 1, HeatCurve.of(mass), 10); // stays where it is
    KilnNetwork network = network(1e-9 + 1, chamber);
    network.drive(KilnNetwork.Drive.NONE);
    double[] y = network.stateAt(500);
    y[KilnNetwork.SENSOR] = 495;
    double h = 15 + 0.8 * HeatTransfer.emissionSlope(497.5);
    double tau = 3.6e6 * 0.0045 / (4 * h);
    y = run(network, y, tau);
    assertThat((y[KilnNetwork.SENSOR] - 495) / 5).isCloseTo(1 - Math.exp(-1), within(0.004));
  }

  /** A brick muffle on its way, its controller looking so many seconds ahead. */
  private static KilnNetwork controlled(double derivativeSeconds) {
    Kiln kiln = TestKilns.brickMuffle(2200);
    KilnParameters plain =
        new KilnParameters(
            1,
            1,
            1,
            1,
            0.5,
            300,
            1,
            1,
            0.05,
            4,
            0.02,
            300,
            derivativeSeconds,
            1.2,
            1,
            1,
            1,
            0,
            1,
            1);
    KilnNetwork network = network(kiln, plain);
    network.drive(KilnNetwork.Drive.PROPORTIONAL);
    return network;
  }

  /** Warming, 12 K below its setpoint, with the output free. */
  private static double[] warming(KilnNetwork network) {
    double[] y = network.stateAt(600);
    y[KilnNetwork.ELEMENT] = 640;
    y[KilnNetwork.SENSOR] = 597;
    y[KilnNetwork.SETPOINT] = network.reading(y) + 12;
    y[KilnNetwork.INTEGRAL] = 15;
    return y;
  }

  /**
   * The law of a controller with proportional, integral and derivative action, the last on the
   * reading alone: {@code u = K (e + I - T_d dR/dt)} (memory: Åström and Hägglund, PID Controllers,
   * 1995). The reading's slope is taken from the sensor's own rate.
   */
  @ParameterizedTest
  @CsvSource({"0", "10", "40"})
  void theControllerFollowsItsLaw(double derivativeSeconds) {
    KilnNetwork network = controlled(derivativeSeconds);
    double[] y = warming(network);
    double[] rates = new double[y.length];
    network.rates(y, rates);
    double law = 0.02 * (12 + 15 - derivativeSeconds * 1.004 * rates[KilnNetwork.SENSOR]);
    assertThat(rates[KilnNetwork.SENSOR]).isGreaterThan(0.1);
    assertThat(law).isBetween(0.05, 0.95);
    assertThat(network.duty()).isCloseTo(law, within(1e-9));
  }

  /** The linear problem of a step, {@code (s - J) x = b}, against differences of the rates. */
  @ParameterizedTest
  @CsvSource({"0", "10", "40"})
  void theStepsLinearProblemIsThatOfTheRates(double derivativeSeconds) {
    KilnNetwork network = controlled(derivativeSeconds);
    double[] y = warming(network);
    int n = y.length;
    double shift = 0.05;
    double[] right = new double[n];
    right[KilnNetwork.SETPOINT] = 0.1;
    right[KilnNetwork.INTEGRAL] = -0.02;
    right[KilnNetwork.SENSOR] = 0.03;
    right[KilnNetwork.ELEMENT] = 0.5;
    double[] x = new double[n];
    double[] rates = new double[n];
    network.rates(y, rates);
    network.factor(y, shift);
    network.solve(right, x);
    double small = 1e-4;
    double[] above = new double[n];
    double[] below = new double[n];
    double[] up = y.clone();
    double[] down = y.clone();
    for (int i = 0; i < n; i++) {
      up[i] += small * x[i];
      down[i] -= small * x[i];
    }
    network.rates(up, above);
    network.rates(down, below);
    for (int i : new int[] {KilnNetwork.SETPOINT, KilnNetwork.INTEGRAL, KilnNetwork.SENSOR}) {
      double slope = (above[i] - below[i]) / (2 * small);
      assertThat(shift * x[i] - slope).isCloseTo(right[i], within(1e-4));
    }
    int element = KilnNetwork.ELEMENT;
    double slope = (above[element] - below[element]) / (2 * small);
    assertThat(shift * x[element] - slope).isCloseTo(right[element], within(2e-3));
  }

  /** CHK-A6, black-body emission through an opening to 20 °C, kW/m²; Stefan-Boltzmann law. */
  @ParameterizedTest
  @CsvSource({"500, 19.8425", "650, 40.7626", "850, 89.8137", "1000, 148.5619"})
  void emitsAsABlackBody(double celsius, double kilowatts) {
    assertThat((HeatTransfer.emission(celsius) - HeatTransfer.emission(20)) / 1000)
        .isCloseTo(kilowatts, within(5e-5));
  }

  /** CHK-A7, two-way exchange through a door; Prahl and Emmons 1975 (from memory). */
  @Test
  void exchangesAirThroughAnOpenDoor() {
    assertThat(HeatTransfer.doorKilogramsPerSecond(0.20, 0.20, 850, 20))
        .isCloseTo(0.00798627, within(5e-9));
  }

  /** CHK-A4, conduction shape factor of a box: 1.69 times the inner area. */
  @Test
  void conductsThroughEdgesAndCorners() {
    Chamber box = new Chamber.Box(0.22, 0.22, 0.21);
    double inner = 2 * box.floorSquareMetres() + box.uprightSquareMetres();
    double ratio = WallBuilder.areaRatio(box, 0.125);
    // S L = 0.475850 m² with the twelve edges and eight corners of the box.
    assertThat(inner * ratio).isCloseTo(0.475850, within(5e-7));
    double growth = WallBuilder.areaGrowthPerMetre(ratio, 0.125);
    assertThat(0.125 * growth / Math.log1p(0.125 * growth)).isCloseTo(ratio, within(1e-9));
  }

  /**
   * The one-path mould against the exact finite cylinder (product of the series solutions; Carslaw
   * and Jaeger, from memory), CHK-B7: 75 mm by 100 mm, film 60 W/(m² K), 20 °C into 730 °C.
   */
  @ParameterizedTest
  @CsvSource({"900, 356.062", "1800, 616.714", "3600, 720.309"})
  void mouldCoreFollowsTheExactFiniteCylinder(double seconds, double exactCelsius) {
    Material investment = solid("investment", 1234, LinearTable.constant(0.45), 950);
    double radius = 0.0375;
    double height = 0.1;
    double surface = 2 * Math.PI * radius * (height + radius);
    ThermalBody body =
        MouldLoad.shortCylinders(
            "mould", 1, new HeatCurves(), investment, radius, height, surface, 0, 1, 1);
    double[] heat = new double[body.cells];
    java.util.Arrays.fill(heat, body.curve[0].heatAt(20));
    double step = 0.25;
    for (double t = 0; t < seconds; t += step) {
      double[] celsius = new double[body.cells];
      for (int i = 0; i < body.cells; i++) {
        celsius[i] = body.curve[i].celsius(body.curve[i].interval(heat[i]), heat[i]);
      }
      double flow = 60 * body.faceSquareMetres * (730 - celsius[0]);
      for (int i = 0; i < body.cells; i++) {
        double next =
            i + 1 < body.cells
                ? 0.45
                    * body.area[i]
                    / (body.pathOut[i] + body.pathIn[i])
                    * (celsius[i] - celsius[i + 1])
                : 0;
        heat[i] += step * (flow - next) / body.volume[i];
        flow = next;
      }
    }
    int core = body.cells - 1;
    double celsius = body.curve[core].celsius(body.curve[core].interval(heat[core]), heat[core]);
    // A thin model: it may be off by 4 % of the step, no more.
    assertThat(celsius).isCloseTo(exactCelsius, within(0.04 * 710));
  }
}
