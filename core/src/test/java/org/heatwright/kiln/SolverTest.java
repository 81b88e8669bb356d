package org.heatwright.kiln;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.heatwright.kiln.FiringConditions.Disturbance;
import org.heatwright.material.HeatCurves;
import org.heatwright.material.Material;
import org.heatwright.mould.Investment;
import org.heatwright.mould.Mould;
import org.heatwright.mould.MouldLoad;
import org.heatwright.numerics.LinearTable;
import org.heatwright.numerics.RosenbrockStepper;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** What the solver costs and how far its answers are from settled, on whole kilns. */
class SolverTest {

  private static final Kiln MUFFLE = TestKilns.brickMuffle(2200);
  private static final Kiln FIBRE = TestKilns.fibreMuffle();
  private static final FiringSimulation.Accuracy USUAL = FiringSimulation.Accuracy.USUAL;

  private static final Schedule TRACKED =
      schedule(150, 150, 120, 150, 370, 120, 200, 732, 120, 200, 500, 60);
  private static final Schedule FASTEST = schedule(0, 900, 30);
  private static final Schedule TOO_FAST = schedule(2500, 900, 10);
  private static final Schedule HOLD = schedule(400, 800, 120);

  /** Segments as rate (0: fastest), target, hold in minutes. */
  private static Schedule schedule(double... triples) {
    List<Segment> segments = new ArrayList<>();
    for (int i = 0; i < triples.length; i += 3) {
      Ramp ramp =
          triples[i] == 0 ? Ramp.fastest() : Ramp.at(HeatingRate.ofKelvinsPerHour(triples[i]));
      segments.add(
          new Segment(
              ramp,
              Temperature.ofCelsius(triples[i + 1]),
              Duration.ofMinutes((long) triples[i + 2])));
    }
    return Schedule.of("test", TemperatureUnit.CELSIUS, segments);
  }

  private static FiringSimulation simulation(
      Kiln kiln,
      double elementFactor,
      Schedule schedule,
      FiringSimulation.Accuracy accuracy,
      List<? extends Load> loads,
      Disturbance... disturbances) {
    KilnParameters median = KilnBeliefs.prior().median(kiln);
    KilnParameters parameters =
        new KilnParameters(
            median.powerFactor(),
            median.conductivityFactor(),
            median.conductivitySteepnessFactor(),
            median.capacityFactor(),
            median.leakWattsPerKelvin(),
            median.fittingsJoulesPerKelvin(),
            median.sensorFactor(),
            median.convectionFactor(),
            median.sensorViewShare(),
            median.offsetKelvinsAt1000(),
            median.gainPerKelvin(),
            median.integralSeconds(),
            median.derivativeSeconds(),
            median.crestKelvins(),
            median.switchSeconds(),
            median.doorFactor(),
            elementFactor * median.elementFactor(),
            median.roomShiftKelvins(),
            median.loadConductivityFactor(),
            median.loadHeatFactor());
    FiringConditions conditions =
        new FiringConditions(
            Optional.empty(), Optional.empty(), false, Optional.empty(), List.of(disturbances));
    return new FiringSimulation(
        kiln, parameters, conditions, loads, schedule, accuracy, new HeatCurves());
  }

  private static FiringRun run(
      Kiln kiln, double elementFactor, Schedule schedule, FiringSimulation.Accuracy accuracy) {
    FiringSimulation simulation = simulation(kiln, elementFactor, schedule, accuracy, List.of());
    simulation.runProgram();
    return simulation.run();
  }

  // ---- a light element

  static Stream<Schedule> firings() {
    return Stream.of(TRACKED, FASTEST, TOO_FAST, HOLD);
  }

  /** An implicit solver does not follow what is over in a moment: measured -16 to +17 %. */
  @ParameterizedTest
  @MethodSource("firings")
  void anElementOfAHundredthOfTheMassAddsUnderAFifthOfTheSteps(Schedule schedule) {
    int usual = run(MUFFLE, 1, schedule, USUAL).steps();
    int light = run(MUFFLE, 0.01, schedule, USUAL).steps();
    assertThat(light).isLessThan((int) (1.2 * usual));
  }

  /**
   * Where an on-off kiln's cycles are taken as their mean, the first ones still cost: measured +27
   * %, more than the fifth that we aimed at.
   */
  @Test
  void anOnOffKilnsFirstCyclesCostALightElementMore() {
    int usual = run(FIBRE, 1, HOLD, USUAL).steps();
    int light = run(FIBRE, 0.01, HOLD, USUAL).steps();
    assertThat(light).isLessThan((int) (1.4 * usual));
  }

  /**
   * An on-off kiln switch by switch is another matter, and this test says how much: a light element
   * makes it switch more often, and behind every switch the element's own swing is followed to its
   * tolerance, at twice the steps. Measured 11 and 21 steps a switch.
   */
  @Test
  void anOnOffKilnPaysForEverySwitch() {
    FiringRun usual = run(FIBRE, 1, HOLD, USUAL.withRelay());
    FiringRun light = run(FIBRE, 0.01, HOLD, USUAL.withRelay());
    assertThat(switches(light)).isGreaterThan(switches(usual));
    assertThat(usual.steps() / (double) switches(usual)).isLessThan(13);
    assertThat(light.steps() / (double) switches(light)).isLessThan(24);
  }

  private static int switches(FiringRun run) {
    int count = 0;
    for (double t = 0; t + 1 < run.lastSecond(); t++) {
      if ((run.wattsAt(t) > 650) != (run.wattsAt(t + 1) > 650)) {
        count++;
      }
    }
    return count;
  }

  // ---- order

  /** A muffle whose walls have constant properties: the network without the kinks of tables. */
  private static KilnNetwork smooth() {
    Material brick = Bench.solid("brick", 490, LinearTable.constant(0.17), 950);
    Material board = Bench.solid("board", 250, LinearTable.constant(0.08), 1000);
    Map<Face, List<Layer>> walls = new EnumMap<>(Face.class);
    for (Face face : Face.values()) {
      walls.put(face, List.of(new Layer(brick, 0.064), new Layer(board, 0.025)));
    }
    Kiln kiln =
        new Kiln(
            "smooth",
            MUFFLE.chamber(),
            MUFFLE.element(),
            walls,
            MUFFLE.door(),
            MUFFLE.limit(),
            MUFFLE.thermocouple(),
            MUFFLE.control(),
            MUFFLE.room(),
            MUFFLE.timeZone(),
            MUFFLE.tariff(),
            MUFFLE.circuit(),
            MUFFLE.history());
    return network(kiln);
  }

  private static KilnNetwork network(Kiln kiln) {
    return new KilnNetwork(
        kiln,
        KilnBeliefs.prior().median(kiln),
        FiringConditions.usual(),
        new WallBuilder(kiln, WallBuilder.Grid.USUAL, new HeatCurves()).build(1, 1),
        List.of(LumpedLoad.furniture(1).body(new HeatCurves(), 1, 1)),
        1);
  }

  private static double[] fixedSteps(
      KilnNetwork network, double[] from, double seconds, int steps) {
    RosenbrockStepper stepper = new RosenbrockStepper(network);
    double[] y = from.clone();
    double[] next = new double[y.length];
    double[] rates = new double[y.length];
    for (int i = 0; i < steps; i++) {
      network.rates(y, rates);
      stepper.step(y, rates, seconds / steps, next);
      double[] swap = y;
      y = next;
      next = swap;
    }
    return y;
  }

  private static double worstKelvins(KilnNetwork network, double[] a, double[] b) {
    double worst =
        Math.max(
            Math.abs(a[KilnNetwork.SENSOR] - b[KilnNetwork.SENSOR]),
            Math.abs(a[KilnNetwork.ELEMENT] - b[KilnNetwork.ELEMENT]));
    for (int i = 0; i < 6; i++) {
      worst =
          Math.max(worst, Math.abs(network.cellCelsius(a, 0, i) - network.cellCelsius(b, 0, i)));
    }
    return worst;
  }

  private static double[] half(KilnNetwork network, KilnNetwork.Drive drive) {
    network.drive(drive);
    network.moveSetpoint(drive == KilnNetwork.Drive.PROPORTIONAL ? 200 / 3600.0 : 0);
    double start = drive == KilnNetwork.Drive.NONE ? 800 : 20;
    return fixedSteps(network, network.stateAt(start), 1800, 7200);
  }

  /** Half an hour into heating at full power, cooling and tracking, an hour in ever more steps. */
  @ParameterizedTest
  @CsvSource({"FULL", "NONE", "PROPORTIONAL"})
  void theKilnsNetworkConvergesAtThirdOrder(KilnNetwork.Drive drive) {
    KilnNetwork network = smooth();
    double[] from = half(network, drive);
    double[] exact = fixedSteps(network, from, 3600, 20_000);
    for (int steps = 16; steps <= 128; steps *= 2) {
      double coarse = worstKelvins(network, fixedSteps(network, from, 3600, steps), exact);
      double fine = worstKelvins(network, fixedSteps(network, from, 3600, 2 * steps), exact);
      assertThat(Math.log(coarse / fine) / Math.log(2)).isBetween(2.8, 3.2);
    }
  }

  /**
   * With real materials the tables' kinks end that at some thousandths of a kelvin: their
   * properties are straight between points three quarters of a kelvin apart.
   */
  @ParameterizedTest
  @CsvSource({"FULL", "NONE", "PROPORTIONAL"})
  void withRealMaterialsAMinutesStepIsWithinAHundredthOfAKelvin(KilnNetwork.Drive drive) {
    KilnNetwork network = network(MUFFLE);
    double[] from = half(network, drive);
    double[] exact = fixedSteps(network, from, 3600, 20_000);
    double found = worstKelvins(network, fixedSteps(network, from, 3600, 60), exact);
    assertThat(found).isLessThan(0.01);
  }

  // ---- energy

  static Stream<Arguments> balances() {
    Disturbance[] none = {};
    Disturbance[] doors = {
      new Disturbance(Disturbance.Kind.DOOR_OPEN, 9_000, 30),
      new Disturbance(Disturbance.Kind.DOOR_OPEN, 10_000, 60)
    };
    Disturbance[] cut = {new Disturbance(Disturbance.Kind.MAINS_OFF, 9_000, 1_200)};
    return Stream.of(
        Arguments.of("saturated", MUFFLE, FASTEST, none),
        Arguments.of("tracked", MUFFLE, TRACKED, none),
        Arguments.of("on-off", FIBRE, TRACKED, none),
        Arguments.of("on-off, saturated", FIBRE, FASTEST, none),
        Arguments.of("doors", MUFFLE, HOLD, doors),
        Arguments.of("doors, on-off", FIBRE, HOLD, doors),
        Arguments.of("mains cut", MUFFLE, HOLD, cut),
        Arguments.of("mains cut, on-off", FIBRE, HOLD, cut));
  }

  private static final List<MouldLoad> WET_MOULD =
      List.of(new MouldLoad(new Mould(1, 0.05, 0.06, 0.0015), Investment.gypsum(0.4)));

  /** What goes in is stored or lost: closed to a thousandth; measured within 0.01 %. */
  @ParameterizedTest(name = "{0}")
  @MethodSource("balances")
  void energyIsNeitherMadeNorLost(
      String name, Kiln kiln, Schedule schedule, Disturbance... disturbances) {
    List<LumpedLoad> shelves = List.of(LumpedLoad.furniture(1));
    assertThat(imbalance(kiln, schedule, shelves, disturbances)).isCloseTo(0, within(1e-3));
  }

  /** All but a wet mould at full power in a small fibre kiln, for which see the next test. */
  static Stream<Arguments> usualBalances() {
    return balances().filter(row -> row.get()[1] != FIBRE || row.get()[2] != FASTEST);
  }

  /** With a wet mould: measured within 0.06 %. */
  @ParameterizedTest(name = "{0}")
  @MethodSource("usualBalances")
  void energyIsNeitherMadeNorLostInAWetMould(
      String name, Kiln kiln, Schedule schedule, Disturbance... disturbances) {
    assertThat(imbalance(kiln, schedule, WET_MOULD, disturbances)).isCloseTo(0, within(1e-3));
  }

  /**
   * A known limit: where a mould boils at the full power of a small kiln, errors of its surface
   * reach the leak's loss, and the balance closes to 0.17 % only (nobody should fire so).
   */
  @Test
  void aMouldThatBoilsAtFullPowerClosesToTwoThousandthsOnly() {
    assertThat(imbalance(FIBRE, FASTEST, WET_MOULD)).isCloseTo(0, within(2e-3));
  }

  private static double imbalance(
      Kiln kiln, Schedule schedule, List<? extends Load> loads, Disturbance... disturbances) {
    FiringSimulation simulation = simulation(kiln, 1, schedule, USUAL, loads, disturbances);
    double before = simulation.storedJoules();
    double lost = simulation.lostJoulesOfProgram();
    FiringRun run = simulation.run();
    double used = run.joulesAt(simulation.elapsedSeconds());
    assertThat(run.complete()).isTrue();
    for (Disturbance disturbance : disturbances) {
      assertThat(disturbance.atSeconds()).isLessThan(run.endSeconds());
    }
    return (simulation.storedJoules() - before + lost) / used - 1;
  }

  // ---- cells

  private static final FiringSimulation.Accuracy HALF_CELLS =
      new FiringSimulation.Accuracy(
          USUAL.toleranceKelvins(), USUAL.firstCellMetres() / 2, Math.sqrt(USUAL.cellGrowth()));

  /** Wall cells of half the size: display within half a kelvin all along, measured 0.04. */
  @Test
  void halfTheCellSizeChangesATrackedFiringByUnderHalfAKelvin() {
    FiringRun usual = run(MUFFLE, 1, TRACKED, USUAL);
    FiringRun finer = run(MUFFLE, 1, TRACKED, HALF_CELLS);
    for (double t = 0; t <= finer.endSeconds(); t += 5) {
      assertThat(usual.readingCelsiusAt(t)).isCloseTo(finer.readingCelsiusAt(t), within(0.5));
    }
    assertThat(usual.endSeconds()).isCloseTo(finer.endSeconds(), within(1.0));
  }

  /**
   * At full power the temperature itself is the answer, and half the cell size moves the ramp by
   * half a hundredth of its time: 3.2 K on the way, 16 s at the end. Half again moves it by 0.8 K.
   */
  @Test
  void halfTheCellSizeMovesASaturatedRampByHalfAHundredthOfItsTime() {
    FiringRun usual = run(MUFFLE, 1, FASTEST, USUAL);
    FiringRun finer = run(MUFFLE, 1, FASTEST, HALF_CELLS);
    double worst = 0;
    for (double t = 0; t <= usual.endSeconds(); t += 5) {
      worst = Math.max(worst, Math.abs(usual.readingCelsiusAt(t) - finer.readingCelsiusAt(t)));
    }
    assertThat(worst).isLessThan(3.5);
    assertThat(usual.endSeconds())
        .isCloseTo(finer.endSeconds(), within(0.005 * finer.endSeconds()));
  }

  /** An on-off display swings in another phase, but over the same range on average. */
  @Test
  void halfTheCellSizeLeavesAnOnOffKilnsSwingWhereItIs() {
    FiringRun usual = run(FIBRE, 1, HOLD, USUAL);
    FiringRun finer = run(FIBRE, 1, HOLD, HALF_CELLS);
    double from = 10_000;
    double to = Math.min(usual.endSeconds(), finer.endSeconds());
    double mean = 0;
    double finerMean = 0;
    int count = 0;
    for (double t = from; t < to; t++, count++) {
      mean += usual.readingCelsiusAt(t);
      finerMean += finer.readingCelsiusAt(t);
    }
    assertThat(mean / count).isCloseTo(finerMean / count, within(0.5));
    assertThat(usual.joulesAt(to)).isCloseTo(finer.joulesAt(to), within(0.01 * finer.joulesAt(to)));
  }
}
