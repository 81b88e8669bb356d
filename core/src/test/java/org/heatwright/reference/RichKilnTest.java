package org.heatwright.reference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.heatwright.kiln.Control;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.FiringConditions.Disturbance;
import org.heatwright.kiln.Layer;
import org.heatwright.kiln.TestKilns;
import org.heatwright.material.WallMaterials;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Does the reference obey physics, and does a fault do what it says? */
class RichKilnTest {

  private static Layer layer(String name, double metres) {
    return new Layer(WallMaterials.named(name).orElseThrow(), metres);
  }

  static Schedule straightTo(double celsius, int minutes) {
    return Schedule.of(
        "straight",
        TemperatureUnit.CELSIUS,
        List.of(
            new Segment(
                Ramp.fastest(), Temperature.ofCelsius(celsius), Duration.ofMinutes(minutes))));
  }

  private static Schedule ramp(double rate, double celsius, int minutes) {
    return Schedule.of(
        "ramp",
        TemperatureUnit.CELSIUS,
        List.of(
            new Segment(
                Ramp.at(HeatingRate.ofKelvinsPerHour(rate)),
                Temperature.ofCelsius(celsius),
                Duration.ofMinutes(minutes))));
  }

  /** The first kiln from a seed on with that control. */
  private static RichKiln kiln(Control.Kind kind, long fromSeed) {
    for (long seed = fromSeed; ; seed++) {
      RichKiln kiln = KilnPopulation.draw(seed);
      if (kiln.nameplate().control().kind() == kind
          && kiln.nameplate().control().holdWaitsWithin().isPresent()) {
        return kiln;
      }
    }
  }

  private static double steadyFlow(RichWall wall, double hot, double room) {
    wall.fill(room);
    double flow = 0;
    for (int i = 0; i < 40_000; i++) {
      wall.refresh(30, room);
      wall.prepare();
      flow = wall.finish(hot);
    }
    return flow;
  }

  @Test
  void aLayerBetweenTwoHeldFacesConductsAsComputedApart() {
    // k = 0.10 + 1e-4 T, 0.114 m, 1000 and 100 °C, exact: implementers' sheet CHK-A1
    List<Layer> layers = List.of(layer("insulating-brick-23", 0.114));
    RichWall.Truth held =
        new RichWall.Truth(new double[] {1}, new double[] {1}, 0, 0.001, 0, 1e7, 1);
    RichWall wall = new RichWall(1, 0, 0, layers, held, RichWall.Outside.PLATE, 0.35, 0.0025);
    wall.fill(99);
    double flow = 0;
    for (int i = 0; i < 20_000; i++) {
      wall.refresh(30, 100);
      wall.prepare();
      flow = wall.finish(1000);
    }
    assertThat(flow).isCloseTo(1223.6842, within(0.005 * 1223.6842));
    assertThat(wall.celsiusAt(wall.cellAbove(0.057), 0.057)).isCloseTo(614.00124, within(0.5));
  }

  @ParameterizedTest
  @CsvSource({
    "500, 336.4147, 54.0194",
    "700, 545.8920, 70.4790",
    "900, 795.8568, 87.9117",
    "1000, 935.4472, 96.8631"
  })
  void twoLayersWithARealFilmLoseAsComputedApart(double hot, double flow, double shell) {
    // implementers' sheet CHK-A3, computed apart with scipy
    List<Layer> layers =
        List.of(layer("insulating-brick-23", 0.100), layer("fibre-blanket-128", 0.025));
    RichWall wall =
        new RichWall(
            1, 0, 0, layers, RichWall.Truth.plain(2, 0.8), RichWall.Outside.PLATE, 0.35, 0.0025);
    assertThat(steadyFlow(wall, hot, 20)).isCloseTo(flow, within(0.005 * flow));
    assertThat(wall.celsius[wall.cells]).isCloseTo(shell, within(0.5));
  }

  @Test
  void aPlainKilnInALongHoldTakesWhatItsWallsLose() {
    RichKiln kiln = KilnPopulation.plain(TestKilns.brickMuffle(2000));
    RichFiring run = kiln.fire(straightTo(800, 24 * 60), 1, 20 * 3600.0);
    int last = run.rows() - 1;
    double power = RichFiring.mean(run.powerWatts(), last - 360, last);
    double layers = 0;
    for (int f = 0; f < HiddenTruth.FACES; f++) {
      RichWall wall = kiln.wall(f);
      layers += steadyFlow(wall, run.radiantCelsius()[last], 20);
    }
    // the faces stand a little under the radiant mean
    assertThat(power).isCloseTo(layers, within(0.02 * layers));
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 5, 8, 13})
  void heatIsKept(long seed) {
    RichKiln kiln = KilnPopulation.draw(seed);
    for (SchedulePopulation.Family family : SchedulePopulation.Family.values()) {
      Schedule schedule = SchedulePopulation.draw(family, kiln, seed);
      RichFiring run =
          kiln.fire(
              schedule,
              new FiringConditions(
                  Optional.of(Temperature.ofCelsius(15)),
                  Optional.of(Temperature.ofCelsius(120)),
                  true,
                  Optional.empty(),
                  List.of(
                      new Disturbance(Disturbance.Kind.DOOR_OPEN, 4000, 20),
                      new Disturbance(Disturbance.Kind.MAINS_OFF, 6000, 300))),
              0.6,
              Optional.of(Fault.doorAjar(7000, 1000, 0.5)),
              seed,
              SchedulePopulation.untilSecond(schedule, kiln));
      assertThat(run.audit().errorShare()).isCloseTo(0, within(0.002));
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 20, 40})
  void halfTheCellsAndHalfTheStepHardlyMoveTheReading(long seed) {
    RichKiln kiln = kiln(Control.Kind.PID, seed);
    Schedule schedule = straightTo(0.8 * kiln.nameplate().limit().celsius(), 120);
    double until = kiln.secondsToNinetyPercent() + 4000;
    RichFiring coarse = kiln.fire(schedule, 5, until);
    kiln.truth().cellMetres /= 2;
    kiln.truth().stepSeconds /= 2;
    RichFiring fine = kiln.fire(schedule, 5, until);
    double most = 0;
    for (int row = 0; row < coarse.rows(); row++) {
      most = Math.max(most, Math.abs(coarse.sensorCelsius()[row] - fine.sensorCelsius()[row]));
    }
    System.out.printf(
        "refined %s: reading moves by at most %.2f K%n", kiln.nameplate().name(), most);
    assertThat(most).isLessThan(1.5);
  }

  @Test
  void theSameSeedIsTheSameFiringAndAnotherOneIsNot() {
    RichKiln kiln = kiln(Control.Kind.PID, 1);
    Schedule schedule = straightTo(700, 30);
    RichFiring first = kiln.fire(schedule, 1, 6000);
    assertThat(kiln.fire(schedule, 1, 6000).displayCelsius()).isEqualTo(first.displayCelsius());
    RichFiring other = kiln.fire(schedule, 2, 6000);
    assertThat(other.displayCelsius()).isNotEqualTo(first.displayCelsius());
    assertThat(other.reachedSeconds()[0])
        .isCloseTo(first.reachedSeconds()[0], within(0.08 * first.reachedSeconds()[0]));
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 20})
  void aRampIsFollowedAndAHoldIsHeld(long seed) {
    RichKiln kiln = kiln(Control.Kind.PID, seed);
    RichFiring run = kiln.fire(ramp(120, 500, 60), seed, 24_000);
    double within = kiln.nameplate().control().holdWaitsWithin().orElseThrow().kelvins();
    int row = run.rowAt(run.reachedSeconds()[0]);
    assertThat(run.displayCelsius()[row]).isCloseTo(500, within(within + 3));
    assertThat(run.endSeconds()[0] - run.reachedSeconds()[0]).isCloseTo(3600, within(4.0));
    assertThat(run.setpointCelsius()[run.rowAt(run.endSeconds()[0]) + 2]).isNaN();
    assertThat(run.powerWatts()[run.rowAt(run.endSeconds()[0]) + 3]).isZero();
  }

  // faults

  private static RichFiring hold(RichKiln kiln, Optional<Fault> fault) {
    return kiln.fire(straightTo(700, 360), FiringConditions.usual(), 0, fault, 9, 16_000);
  }

  @Test
  void anOpenElementHalvesThePower() {
    RichKiln kiln = kiln(Control.Kind.PID, 1);
    RichFiring sound = kiln.fire(straightTo(900, 60), 9, 900);
    RichFiring run =
        kiln.fire(
            straightTo(900, 60),
            FiringConditions.usual(),
            0,
            Optional.of(Fault.elementOpen(300)),
            9,
            900);
    assertThat(run.powerWatts()[20]).isEqualTo(sound.powerWatts()[20]);
    assertThat(run.powerWatts()[60] / sound.powerWatts()[60]).isCloseTo(0.5, within(0.01));
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 10, 20, 30, 40, 50})
  void aTipPulledOutReadsLow(long seed) {
    RichKiln kiln = kiln(Control.Kind.PID, seed);
    RichFiring run = hold(kiln, Optional.of(Fault.tipOut(10_000)));
    // before the control answers by heating: what the tip would show in this chamber
    int late = run.rows() - 1;
    double before = run.sensorCelsius()[999] - run.radiantCelsius()[999];
    double after = run.sensorCelsius()[late] - run.radiantCelsius()[late];
    double share = (before - after) / (run.radiantCelsius()[late] - 20);
    assertThat(share).isBetween(0.03, 0.12);
    assertThat(run.radiantCelsius()[late]).isGreaterThan(run.radiantCelsius()[999] + 15);
  }

  @Test
  void aStuckRelayHeatsOrLetsCool() {
    RichKiln kiln = kiln(Control.Kind.PID, 1);
    RichFiring sound = hold(kiln, Optional.empty());
    RichFiring on = hold(kiln, Optional.of(Fault.relayStuckOn(10_000)));
    assertThat(on.powerWatts()[1020]).isGreaterThan(0.93 * kiln.nameplate().element().ratedWatts());
    assertThat(on.sensorCelsius()[1030]).isGreaterThan(sound.sensorCelsius()[1030] + 15);
    RichFiring off = hold(kiln, Optional.of(Fault.relayStuckOff(10_000)));
    assertThat(off.powerWatts()[1020]).isZero();
    assertThat(off.sensorCelsius()[1030]).isLessThan(sound.sensorCelsius()[1030] - 10);
    assertThat(off.setpointCelsius()[1020]).isEqualTo(700);
  }

  @Test
  void aDoorAjarCostsPower() {
    RichKiln kiln = kiln(Control.Kind.PID, 1);
    RichFiring sound = hold(kiln, Optional.empty());
    RichFiring run = hold(kiln, Optional.of(Fault.doorAjar(10_000, 1e9, 0.5)));
    double more =
        RichFiring.mean(run.powerWatts(), 1200, 1600)
            / RichFiring.mean(sound.powerWatts(), 1200, 1600);
    System.out.printf("door ajar by half its edge: power x %.2f%n", more);
    assertThat(more).isBetween(1.15, 3.0);
  }

  @Test
  void aMainsCutStopsPowerAndTheProgramsClock() {
    RichKiln kiln = kiln(Control.Kind.PID, 1);
    Schedule schedule = ramp(120, 300, 120);
    RichFiring sound = kiln.fire(schedule, 9, 20_000);
    RichFiring run =
        kiln.fire(
            schedule,
            FiringConditions.usual(),
            0,
            Optional.of(Fault.mainsCut(10_000, 600)),
            9,
            20_000);
    assertThat(run.powered()[1030]).isFalse();
    assertThat(run.powerWatts()[1030]).isZero();
    assertThat(run.sensorCelsius()[1060]).isLessThan(sound.sensorCelsius()[1060] - 5);
    assertThat(run.programEndSeconds() - sound.programEndSeconds()).isCloseTo(600, within(10.0));
  }

  @Test
  void anOpenDoorCoolsForAMoment() {
    RichKiln kiln = kiln(Control.Kind.PID, 1);
    RichFiring run =
        kiln.fire(
            straightTo(800, 360),
            new FiringConditions(
                Optional.empty(),
                Optional.empty(),
                false,
                Optional.empty(),
                List.of(new Disturbance(Disturbance.Kind.DOOR_OPEN, 10_000, 15))),
            0,
            Optional.empty(),
            9,
            12_000);
    assertThat(run.radiantCelsius()[1001]).isLessThan(run.radiantCelsius()[999] - 40);
    assertThat(run.sensorCelsius()[1100]).isCloseTo(run.sensorCelsius()[999], within(15.0));
  }
}
