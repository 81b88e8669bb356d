package org.heatwright.kiln;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.heatwright.kiln.FiringConditions.ColdPieces;
import org.heatwright.kiln.FiringConditions.Disturbance;
import org.heatwright.material.HeatCurves;
import org.heatwright.mould.Investment;
import org.heatwright.mould.Mould;
import org.heatwright.mould.MouldLoad;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.schedule.TestSchedules;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Test;

class FiringSimulationTest {

  private static final Kiln MUFFLE = TestKilns.brickMuffle(2200);

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
      Kiln kiln, Schedule schedule, FiringConditions conditions, List<? extends Load> loads) {
    return new FiringSimulation(
        kiln,
        KilnBeliefs.prior().median(kiln),
        conditions,
        loads,
        schedule,
        FiringSimulation.Accuracy.USUAL,
        new HeatCurves());
  }

  private static FiringRun run(Kiln kiln, Schedule schedule, Disturbance... disturbances) {
    FiringConditions conditions =
        new FiringConditions(
            Optional.of(Temperature.ofCelsius(20)),
            Optional.empty(),
            false,
            Optional.empty(),
            List.of(disturbances));
    FiringSimulation simulation = simulation(kiln, schedule, conditions, List.of());
    simulation.runProgram();
    return simulation.run();
  }

  /** The curve is cubic between steps: its extremes against a dense look at the same curve. */
  @Test
  void aReaderReadsWhatTheRunSaysForthAndBack() {
    FiringSimulation simulation =
        new FiringSimulation(
            TestKilns.brickMuffle(1800),
            KilnBeliefs.at(TestKilns.brickMuffle(1800), new double[KilnQuantity.values().length]),
            FiringConditions.usual(),
            List.of(),
            TestSchedules.burnout(),
            FiringSimulation.Accuracy.USUAL,
            new HeatCurves());
    simulation.runProgram();
    FiringRun run = simulation.run();
    FiringRun.Reader reader = run.reader();
    for (double second : new double[] {-5, 0, 7, 8, 3000, 2000, -1, 12_345.6, 1e6, 100, 1e6}) {
      assertThat(reader.celsiusAt(second)).isEqualTo(run.readingCelsiusAt(second));
    }
  }

  @Test
  void theExtremesOfTheDisplayAreThoseOfItsCurve() {
    for (Kiln kiln : List.of(MUFFLE, TestKilns.fibreMuffle())) {
      FiringRun run =
          run(
              kiln,
              schedule(0, 600, 40, 200, 450, 60),
              new Disturbance(Disturbance.Kind.DOOR_OPEN, 9000, 60));
      for (double[] span : new double[][] {{0, 3000}, {3000, 9500}, {7000, run.lastSecond()}}) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (double at = span[0]; at < span[1] + 0.25; at += 0.25) {
          double second = Math.min(at, span[1]);
          double reading = run.readingCelsiusAt(second);
          low = Math.min(low, reading - run.swingKelvinsAt(second, -1));
          high = Math.max(high, reading + run.swingKelvinsAt(second, 1));
        }
        assertThat(run.highestReadingCelsius(span[0], span[1])).isCloseTo(high, within(0.05));
        assertThat(run.lowestReadingCelsius(span[0], span[1])).isCloseTo(low, within(0.05));
      }
    }
  }

  @Test
  void followsARampThatTheKilnCanFollow() {
    FiringRun run = run(MUFFLE, schedule(200, 600, 30));
    // 580 K at 200 K/h is 10,440 s; the hold is 1,800 s.
    assertThat(run.segments().get(0).reachedSeconds()).isCloseTo(10_440, within(15.0));
    assertThat(run.endSeconds() - run.segments().get(0).reachedSeconds())
        .isCloseTo(1800, within(1e-6));
    assertThat(run.readingCelsiusAt(7200)).isCloseTo(420, within(3.0));
    assertThat(run.readingCelsiusAt(run.endSeconds())).isCloseTo(600, within(2.0));
    assertThat(run.segments().get(0).saturatedSeconds()).isZero();
  }

  @Test
  void fallsBehindARampItCannotFollowAndSaysSo() {
    FiringRun run = run(MUFFLE, schedule(2500, 900, 10));
    double paper = 880 / 2500.0 * 3600;
    assertThat(run.segments().get(0).reachedSeconds()).isGreaterThan(paper + 300);
    assertThat(run.segments().get(0).saturatedSeconds()).isGreaterThan(600);
  }

  @Test
  void coolsFreelyWhenToldToCoolFastest() {
    FiringRun run = run(MUFFLE, schedule(400, 700, 10, 0, 400, 10));
    double ended = run.segments().get(0).endSeconds();
    double reached = run.segments().get(1).reachedSeconds();
    double crest = KilnBeliefs.prior().median(MUFFLE).crestKelvins();
    assertThat(run.wattsAt((ended + reached) / 2)).isLessThan(50);
    assertThat(run.readingCelsiusAt(reached))
        .isCloseTo(400 + FiringSimulation.nearKelvins(3, crest, 0), within(0.2));
    assertThat(reached - ended).isGreaterThan(900);
  }

  @Test
  void startsTheHoldWithTheSetpointWhereTheControllerDoesNotWait() {
    Control waits = MUFFLE.control();
    Control doesNot =
        new Control(
            waits.kind(),
            waits.cycleSeconds(),
            waits.hysteresis(),
            Optional.empty(),
            waits.afterPowerCut());
    FiringRun run = run(MUFFLE.withControl(doesNot), schedule(2500, 900, 10));
    assertThat(run.segments().get(0).reachedSeconds()).isCloseTo(880 / 2500.0 * 3600, within(1e-6));
  }

  @Test
  void neverReachesWhatIsBeyondItsPower() {
    FiringRun run = run(TestKilns.brickMuffle(300), schedule(0, 1000, 10));
    assertThat(run.complete()).isFalse();
    assertThat(run.segments().get(0).reachedSeconds()).isInfinite();
  }

  /**
   * A tip in its hole sees the wall, which has little of the chamber's temperature after a quick
   * rise and most of it after hours.
   */
  @Test
  void aTipPulledBackShowsLessOfAWallThatHasSoaked() {
    Schedule schedule = schedule(0, 800, 240);
    FiringRun clean = run(MUFFLE, schedule);
    double arrival = clean.segments().get(0).reachedSeconds();
    double[] missing = new double[2];
    double[] when = {arrival + 60, arrival + 4 * 3600 - 600};
    for (int i = 0; i < 2; i++) {
      FiringRun pulled =
          run(
              MUFFLE,
              schedule,
              new Disturbance(Disturbance.Kind.TIP_OUT, when[i], Double.POSITIVE_INFINITY));
      assertThat(pulled.readingCelsiusAt(when[i] - 1))
          .isCloseTo(clean.readingCelsiusAt(when[i] - 1), within(0.1));
      missing[i] = 800 - pulled.lowestReadingCelsius(when[i], when[i] + 300);
    }
    assertThat(missing[0]).isGreaterThan(20);
    assertThat(missing[1]).isBetween(3.0, 0.7 * missing[0]);
  }

  @Test
  void standsStillWhileTheMainsAreOffAndGoesOn() {
    Disturbance cut = new Disturbance(Disturbance.Kind.MAINS_OFF, 12_000, 900);
    Schedule schedule = schedule(200, 600, 60);
    FiringRun whole = run(MUFFLE, schedule);
    FiringRun cutShort = run(MUFFLE, schedule, cut);
    assertThat(cutShort.endSeconds()).isCloseTo(whole.endSeconds() + 900, within(1e-6));
    assertThat(cutShort.readingCelsiusAt(12_900)).isLessThan(560);
    assertThat(cutShort.wattsAt(12_500)).isZero();
  }

  @Test
  void doesAfterAPowerCutWhatTheControllerDoes() {
    Disturbance cut = new Disturbance(Disturbance.Kind.MAINS_OFF, 5_000, 900);
    Schedule schedule = schedule(200, 600, 60);
    Control control = MUFFLE.control();
    Control restarts =
        new Control(
            control.kind(),
            control.cycleSeconds(),
            control.hysteresis(),
            control.holdWaitsWithin(),
            Control.AfterPowerCut.RESTART);
    Control stops =
        new Control(
            control.kind(),
            control.cycleSeconds(),
            control.hysteresis(),
            control.holdWaitsWithin(),
            Control.AfterPowerCut.STOP);
    FiringRun restarted = run(MUFFLE.withControl(restarts), schedule, cut);
    // It starts again from where the reading is then, above room: sooner than 5,900 s more.
    assertThat(restarted.endSeconds())
        .isBetween(5_900 + 3_600.0, run(MUFFLE, schedule).endSeconds() + 5_900);
    assertThat(restarted.setpointCelsiusAt(5_901)).isLessThan(300);
    FiringRun stopped = run(MUFFLE.withControl(stops), schedule, cut);
    assertThat(stopped.complete()).isFalse();
    assertThat(stopped.lastSecond()).isCloseTo(5_900, within(1.0));
  }

  @Test
  void dipsWhileTheDoorIsOpenAndRecovers() {
    Disturbance open = new Disturbance(Disturbance.Kind.DOOR_OPEN, 7_000, 15);
    Kiln fibre = TestKilns.fibreMuffle();
    FiringRun run = run(fibre, schedule(0, 800, 150), open);
    FiringRun shut = run(fibre, schedule(0, 800, 150));
    double[] range = TestKilns.displayRange(run, 7_000, 7_120);
    double[] undisturbed = TestKilns.displayRange(shut, 6_800, 7_120);
    assertThat(range[0]).isLessThan(undisturbed[0] - 10);
    assertThat(TestKilns.displayRange(run, 8_000, 8_600)[1]).isGreaterThan(795);
  }

  /** A load that is changed for a cold one takes its heat with it, and the balance lacks that. */
  @Test
  void aChangedLoadTakesItsHeatWithIt() {
    LumpedLoad load = LumpedLoad.ofHeat("trivet", 1000, 0.3);
    FiringConditions day =
        new FiringConditions(
            Optional.of(Temperature.ofCelsius(20)),
            Optional.empty(),
            false,
            Optional.empty(),
            List.of());
    FiringSimulation changed = simulation(MUFFLE, schedule(400, 600, 60), day, List.of(load));
    changed.changeLoadAt(8000);
    double before = changed.storedJoules();
    double lost = changed.lostJoulesOfProgram();
    FiringRun run = changed.run();
    assertThat(run.complete()).isTrue();
    double used = run.joulesAt(run.lastSecond());
    double missing = used - lost - (changed.storedJoules() - before);
    assertThat(missing).isCloseTo(1000 * (600 - 20), within(0.05 * 1000 * 580));
    assertThat(run.readingCelsiusAt(8060)).isLessThan(run.readingCelsiusAt(7990) - 5);
    assertThat(run.readingCelsiusAt(run.endSeconds())).isCloseTo(600, within(5.0));
  }

  private static FiringConditions withPieces(
      double joulesPerKelvin, double squareMetres, ColdPieces.Change... changes) {
    return FiringConditions.usual()
        .with(
            List.of(
                new Disturbance(Disturbance.Kind.DOOR_OPEN, 7980, 20),
                new Disturbance(Disturbance.Kind.DOOR_OPEN, 9180, 20)),
            Optional.of(new ColdPieces(joulesPerKelvin, squareMetres, List.of(changes))));
  }

  /** Two pieces go in cold and come out as hot as the chamber; before, nothing is inside. */
  @Test
  void coldPiecesTakeTheirHeatWithThemWhenTheyComeOut() {
    FiringConditions day =
        withPieces(
            300,
            0.1,
            new ColdPieces.Change(8000, true),
            new ColdPieces.Change(9200, true),
            new ColdPieces.Change(9900, false));
    FiringSimulation simulation = simulation(MUFFLE, schedule(400, 600, 120), day, List.of());
    double before = simulation.storedJoules();
    double lost = simulation.lostJoulesOfProgram();
    FiringRun run = simulation.run();
    double used = run.joulesAt(run.lastSecond());
    double missing = used - lost - (simulation.storedJoules() - before);
    assertThat(missing).isCloseTo(2 * 300 * (600 - 20), within(0.05 * 600 * 580));
    FiringSimulation doors =
        simulation(MUFFLE, schedule(400, 600, 120), withPieces(300, 0.1), List.of());
    doors.runProgram();
    // Up to the first piece it is the same kiln, and colder after it.
    assertThat(run.readingCelsiusAt(7990))
        .isCloseTo(doors.run().readingCelsiusAt(7990), within(0.3));
    assertThat(run.readingCelsiusAt(8100)).isLessThan(doors.run().readingCelsiusAt(8100) - 3);
  }

  @Test
  void aSimulationGoesOnBetweenTwoOpeningsAsIfItHadNotHalted() {
    FiringConditions day =
        withPieces(300, 0.1, new ColdPieces.Change(8000, true), new ColdPieces.Change(9200, false));
    for (Kiln kiln : List.of(MUFFLE, TestKilns.brickMuffle(3000))) {
      FiringSimulation whole = simulation(kiln, schedule(400, 600, 120), day, List.of());
      whole.runProgram();
      FiringSimulation first = simulation(kiln, schedule(400, 600, 120), day, List.of());
      first.runProgram(8600);
      FiringSimulation second = simulation(kiln, schedule(400, 600, 120), day, List.of());
      second.resume(first.checkpoint().orElseThrow());
      second.runProgram();
      for (double t = 7000; t < 11_000; t += 50) {
        assertThat(second.run().readingCelsiusAt(t))
            .isCloseTo(whole.run().readingCelsiusAt(t), within(0.3));
      }
    }
  }

  /** While the door is open nothing can go on from there. */
  @Test
  void anOpenDoorIsNoPlaceToHalt() {
    FiringSimulation simulation =
        simulation(MUFFLE, schedule(400, 600, 120), withPieces(300, 0.1), List.of());
    simulation.runProgram(7990);
    assertThat(simulation.checkpoint()).isEmpty();
  }

  @Test
  void switchesAnOnOffKilnAroundItsSetpoint() {
    Kiln kiln = TestKilns.fibreMuffle();
    FiringSimulation simulation =
        new FiringSimulation(
            kiln,
            KilnBeliefs.prior().median(kiln),
            FiringConditions.usual(),
            List.of(),
            schedule(0, 800, 120),
            FiringSimulation.Accuracy.USUAL.withRelay(),
            new HeatCurves());
    simulation.runProgram();
    FiringRun run = simulation.run();
    double[] range = TestKilns.displayRange(run, 5_000, 7_000);
    assertThat(range[0]).isBetween(750.0, 799.0);
    assertThat(range[1]).isBetween(801.0, 850.0);
    int powered = 0;
    for (int t = 5_000; t < 7_000; t++) {
      double watts = run.wattsAt(t + 0.5);
      if (watts > 650) {
        powered++;
      }
    }
    assertThat(powered).isBetween(400, 1600);
  }

  /** Energy in equals heat stored and heat lost, to a thousandth. */
  @Test
  void keepsItsEnergyBalance() {
    FiringConditions conditions = FiringConditions.usual();
    List<MouldLoad> moulds =
        List.of(new MouldLoad(new Mould(2, 0.063, 0.09, 0.0015), Investment.gypsum(0.4)));
    FiringSimulation simulation =
        simulation(MUFFLE, schedule(150, 200, 60, 200, 700, 60), conditions, moulds);
    double storedBefore = simulation.storedJoules();
    simulation.runProgram();
    double end = simulation.elapsedSeconds();
    double joules = simulation.run().joulesAt(end);
    // The loss along the way: integrate it over a second run that is stopped at many instants.
    FiringSimulation again =
        simulation(MUFFLE, schedule(150, 200, 60, 200, 700, 60), conditions, moulds);
    double lost = again.lostJoulesOfProgram();
    assertThat(simulation.storedJoules() - storedBefore + lost)
        .isCloseTo(joules, within(joules * 1e-3));
  }

  /** The solver and the grid of use against one much finer, over a 12 h firing. */
  @Test
  void isWithinHalfAKelvinOfItsConvergedRun() {
    Schedule burnout = schedule(150, 150, 120, 150, 370, 120, 200, 732, 120, 200, 500, 60);
    FiringRun usual = run(MUFFLE, burnout);
    FiringSimulation fine =
        new FiringSimulation(
            MUFFLE,
            KilnBeliefs.prior().median(MUFFLE),
            FiringConditions.usual(),
            List.of(),
            burnout,
            FiringSimulation.Accuracy.FINE,
            new HeatCurves());
    fine.runProgram();
    FiringRun converged = fine.run();
    assertThat(converged.endSeconds()).isGreaterThan(12 * 3600);
    double worst = 0;
    for (double t = 0; t <= converged.endSeconds(); t += 5) {
      worst = Math.max(worst, Math.abs(usual.readingCelsiusAt(t) - converged.readingCelsiusAt(t)));
    }
    assertThat(worst).isLessThan(0.5);
    assertThat(usual.endSeconds()).isCloseTo(converged.endSeconds(), within(2.0));
    assertThat(usual.joulesAt(usual.endSeconds()))
        .isCloseTo(
            converged.joulesAt(converged.endSeconds()),
            within(0.01 * converged.joulesAt(converged.endSeconds())));
    assertThat(usual.steps()).isLessThan(600);
  }

  @Test
  void aSaturatedRampConvergesToo() {
    Schedule quick = schedule(0, 900, 30);
    FiringRun usual = run(MUFFLE, quick);
    FiringSimulation fine =
        new FiringSimulation(
            MUFFLE,
            KilnBeliefs.prior().median(MUFFLE),
            FiringConditions.usual(),
            List.of(),
            quick,
            FiringSimulation.Accuracy.FINE,
            new HeatCurves());
    fine.runProgram();
    assertThat(usual.endSeconds())
        .isCloseTo(fine.run().endSeconds(), within(0.01 * usual.endSeconds()));
  }

  @Test
  void moreOfAnythingThatCostsHeatTakesLonger() {
    double empty = run(MUFFLE, schedule(0, 900, 10)).endSeconds();
    FiringSimulation loaded =
        simulation(
            MUFFLE,
            schedule(0, 900, 10),
            FiringConditions.usual(),
            List.of(LumpedLoad.furniture(2)));
    loaded.runProgram();
    assertThat(loaded.run().endSeconds()).isGreaterThan(empty + 60);
    assertThat(run(MUFFLE, schedule(0, 950, 10)).endSeconds()).isGreaterThan(empty);
    assertThat(run(TestKilns.brickMuffle(1800), schedule(0, 900, 10)).endSeconds())
        .isGreaterThan(empty);
  }

  @Test
  void startsWarmWhereTheKilnIsWarm() {
    FiringConditions warm =
        new FiringConditions(
            Optional.of(Temperature.ofCelsius(20)),
            Optional.of(Temperature.ofCelsius(180)),
            false,
            Optional.empty(),
            List.of());
    FiringSimulation simulation = simulation(MUFFLE, schedule(200, 600, 30), warm, List.of());
    simulation.runProgram();
    assertThat(simulation.run().segments().get(0).reachedSeconds())
        .isCloseTo(420 / 200.0 * 3600, within(30.0));
    assertThat(MUFFLE.control().holdWaitsWithin()).contains(TemperatureChange.ofKelvins(3));
  }

  @Test
  void goesOnFromWhereItWasHaltedAsIfItHadNotBeen() {
    Schedule schedule = schedule(600, 500, 20, 0, 800, 30);
    for (double halt : new double[] {900, 3_600, 4_500}) {
      Disturbance fault = new Disturbance(Disturbance.Kind.ELEMENT_OPEN, halt + 30, 2_000);
      FiringSimulation first = simulation(MUFFLE, schedule, FiringConditions.usual(), List.of());
      first.runProgram(halt);
      assertThat(first.elapsedSeconds()).isCloseTo(halt, within(1e-6));
      FiringSimulation rest =
          simulation(MUFFLE, schedule, FiringConditions.usual().with(fault), List.of());
      rest.resume(first.checkpoint().orElseThrow());
      rest.runProgram();
      FiringSimulation whole =
          simulation(MUFFLE, schedule, FiringConditions.usual().with(fault), List.of());
      whole.runProgram();
      assertThat(rest.run().endSeconds()).isCloseTo(whole.run().endSeconds(), within(5.0));
      for (double t = 0; t < whole.run().endSeconds(); t += 300) {
        assertThat(rest.run().readingCelsiusAt(t))
            .isCloseTo(whole.run().readingCelsiusAt(t), within(0.5));
      }
    }
  }

  /** What a controller waits for is a reading that it smooths, and none is needed here. */
  @Test
  void anOnOffKilnHeatsAtOnceWhereTheSetpointLeaps() {
    Kiln kiln = TestKilns.fibreMuffle();
    double watts = kiln.element().suppliedWatts();
    FiringRun leap = run(kiln, schedule(0, 500, 20, 0, 800, 5));
    assertThat(leap.wattsAt(1)).isGreaterThan(0.9 * watts);
    assertThat(leap.wattsAt(leap.segments().get(0).endSeconds() + 1)).isGreaterThan(0.9 * watts);
    // At 200 K/h the edge of the hysteresis is 2 K on, after 36 s; the switch comes 9 s later.
    FiringRun ramp = run(kiln, schedule(200, 500, 20));
    assertThat(ramp.wattsAt(40)).isZero();
    assertThat(ramp.wattsAt(50)).isGreaterThan(0.9 * watts);
  }

  @Test
  void anOnOffControllerThatFollowsItsOwnDisplayDoesTheSame() {
    Kiln kiln = TestKilns.fibreMuffle();
    Schedule schedule = schedule(500, 500, 60);
    FiringSimulation own =
        new FiringSimulation(
            kiln,
            KilnBeliefs.prior().median(kiln),
            FiringConditions.usual(),
            List.of(),
            schedule,
            FiringSimulation.Accuracy.USUAL.withRelay(),
            new HeatCurves());
    own.runProgram();
    FiringRun run = own.run();
    double[] seconds = java.util.stream.IntStream.range(0, 700).mapToDouble(i -> 10 * i).toArray();
    double[] celsius = java.util.Arrays.stream(seconds).map(run::readingCelsiusAt).toArray();
    SeenDisplay seen = new SeenDisplay(seconds, celsius);
    double delay = KilnBeliefs.prior().median(kiln).switchSeconds();
    double answer = 20; // of this muffle's thermocouple
    FiringSimulation following = simulation(kiln, schedule, FiringConditions.usual(), List.of());
    following.follow(seen, delay, answer, new double[1]);
    following.runProgram();
    double sum = 0;
    int n = 0;
    for (double t = 0; t < run.endSeconds(); t += 60, n++) {
      double miss = following.run().readingCelsiusAt(t) - run.readingCelsiusAt(t);
      sum += miss * miss;
    }
    // Each switch is told by readings 10 s apart and some of them by a turn: 2 % of the rise.
    assertThat(Math.sqrt(sum / n)).isLessThan(0.02 * 480);
    // Half the power with the same switching is another display.
    FiringSimulation weak =
        simulation(
            kiln,
            schedule,
            FiringConditions.usual()
                .with(new Disturbance(Disturbance.Kind.ELEMENT_OPEN, 3_600, 9e9)),
            List.of());
    weak.follow(seen, delay, answer, new double[1]);
    weak.runProgram();
    assertThat(run.readingCelsiusAt(5_400) - weak.run().readingCelsiusAt(5_400)).isGreaterThan(40);
  }
}
