package org.heatwright.kiln;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.heatwright.kiln.KilnNetwork.Drive;
import org.heatwright.material.HeatCurves;
import org.heatwright.numerics.NumericsException;
import org.heatwright.numerics.RosenbrockStepper;
import org.heatwright.schedule.AtEnd;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;

/**
 * Runs one kiln through one schedule. One object, one firing, one thread.
 *
 * <p>The program: a ramp with a rate moves the setpoint at that rate and never waits for the
 * reading; <i>fastest</i> puts the setpoint at the target at once. When the setpoint is there, the
 * hold's clock starts as soon as the reading is as near the target as the controller asks, or at
 * once if it does not ask. Door openings and mains cuts begin and end exactly where they are
 * stated. While the mains are off the program's clock stands still; what follows is the
 * controller's {@link Control.AfterPowerCut}, and an unknown one is taken to continue.
 */
public final class FiringSimulation {

  /** How the controller's power reaches the elements. */
  public enum Relay {
    /**
     * As the mean of the relay's cycle; with an on-off controller as the mean of its swing, as soon
     * as that repeats.
     */
    MEAN,
    /** As on and off, every time: slow, for a close look. */
    RESOLVED
  }

  /**
   * How exactly to solve.
   *
   * @param toleranceKelvins local error of a step, K
   * @param firstCellMetres thickness of the wall's first cell, m
   * @param cellGrowth growth of the wall's cells inward, above 1
   * @param relay whether every switch is resolved
   */
  public record Accuracy(
      double toleranceKelvins, double firstCellMetres, double cellGrowth, Relay relay) {
    /** Within half a kelvin of the converged answer (tested). */
    public static final Accuracy USUAL = new Accuracy(0.15, 0.0006, 1.35);

    /**
     * For one of many draws: half of 18 random kilns within half a kelvin of the converged answer
     * wherever they were, and times within half a minute. A band adds a noise of 0.8 K and 12 s.
     */
    public static final Accuracy DRAW = new Accuracy(0.3, 0.0008, 1.45);

    /** For convergence checks. */
    public static final Accuracy FINE = new Accuracy(0.002, 0.0003, 1.15);

    /** The mean of the relay's cycle. */
    public Accuracy(double toleranceKelvins, double firstCellMetres, double cellGrowth) {
      this(toleranceKelvins, firstCellMetres, cellGrowth, Relay.MEAN);
    }

    /** The same with every switch of the relay. */
    public Accuracy withRelay() {
      return new Accuracy(toleranceKelvins, firstCellMetres, cellGrowth, Relay.RESOLVED);
    }
  }

  /** A target not reached after this long is never reached, s. */
  private static final double GIVE_UP_SECONDS = 12 * 3600;

  private static final double FIRST_STEP_SECONDS = 2;

  /** The first step after a switch that is told, s. */
  private static final double FOLLOWING_STEP_SECONDS = 12;

  private static final double SMALLEST_STEP_SECONDS = 1e-4;
  private static final double LARGEST_STEP_SECONDS = 900;
  private static final double EVENT_KELVINS = 0.02;

  /** What a controller's smoothing takes off a crest, K. Our estimate. */
  private static final double SMOOTHED_KELVINS = 1.2;

  /** No display is asked to come nearer to a target than its last digit, K. */
  private static final double NEAREST_KELVINS = 0.5;

  /** How exactly the edge of the hysteresis is met, K: a tenth of what displays show. */
  private static final double SWITCH_KELVINS = 0.1;

  /**
   * A reading so far beyond an edge of the hysteresis did not come there by itself, K. Estimate.
   */
  private static final double LEAP_KELVINS = 5;

  /**
   * So many swings before a setpoint comes to its target a mean swing is taken up again: by then it
   * is as wide as it will be. Our estimate.
   */
  private static final int SWINGS_BEFORE_ARRIVAL = 3;

  private final Kiln kiln;
  private final Schedule schedule;
  private final KilnNetwork network;
  private final RosenbrockStepper stepper;
  private final List<Edge> edges;
  private final double hysteresisKelvins;
  private final double switchSeconds;
  private final double crestKelvins;
  private final int loads;
  private double loadChangesAt = Double.POSITIVE_INFINITY;
  private final List<FiringConditions.ColdPieces.Change> changes;
  private int change;
  private double relayCycleSeconds;

  private double now;
  private double[] y;
  private double[] yNew;
  private double[] rates;
  private final double[] scratch;
  private double step = FIRST_STEP_SECONDS;
  private int edge;
  private int inForce;
  private boolean mainsOn = true;
  private boolean doorOpen;
  private double stuckDuty = Double.NaN;
  private double cycleDuty = Double.NaN;
  private double cycleEnds = Double.NEGATIVE_INFINITY;
  private double cycleTurnsOff = Double.POSITIVE_INFINITY;
  private boolean switchedOn;
  private double switchAt = Double.POSITIVE_INFINITY;
  private final SwitchCycles cycles = new SwitchCycles();
  private boolean mayAverage;
  private boolean averaging;
  private Optional<FollowedDisplay> followed = Optional.empty();
  private double followingSeconds;
  private boolean blind;
  private double[] holdMoreSeconds = {};
  private double[] holdFromSeconds = {};
  private double[] soonerKelvins = {};
  private double[] swingShares = {};
  private double arrivesInSeconds = Double.POSITIVE_INFINITY;
  private double rests = Double.NEGATIVE_INFINITY;
  private boolean awaiting;
  private boolean powered;
  private boolean restart;
  private boolean stopped;
  private int index;
  private Phase phase = Phase.RAMP;
  private double reached;
  private double saturatedUntilReached;
  private double holdLeft;
  private boolean resumed;
  private Optional<Checkpoint> checkpoint = Optional.empty();
  private double endsAt = Double.POSITIVE_INFINITY;
  private double pausedSetpointRate;
  private double saturatedSeconds;
  private double rawDuty;
  private double wattsNow;
  private int rejected;
  private boolean lossWanted;
  private double lostJoules;
  private Optional<KilnTangents> tangents = Optional.empty();
  private final List<double[]> laterSeconds = new ArrayList<>();

  // The record.
  private int rows;
  private double[] seconds = new double[512];
  private double[] setpoint = new double[512];
  private double[] reading = new double[512];
  private double[] readingRate = new double[1024];
  private double[] watts = new double[512];
  private double[] joules = new double[512];
  private double[] swing = new double[3 * 512];
  private double averagingSince;
  private double[] air = new double[512];
  private double[] radiant = new double[512];
  private final List<FiringRun.SegmentRun> segmentRuns = new ArrayList<>();

  /** One end of a disturbance. */
  private record Edge(double atSeconds, boolean begins, FiringConditions.Disturbance of) {}

  /**
   * @param kiln the nameplate
   * @param parameters this draw
   * @param conditions the day
   * @param loads what stands inside
   * @param schedule the program
   * @param accuracy how exactly
   * @param curves the materials' heat curves, shared by the simulations of one forecast
   */
  public FiringSimulation(
      Kiln kiln,
      KilnParameters parameters,
      FiringConditions conditions,
      List<? extends Load> loads,
      Schedule schedule,
      Accuracy accuracy,
      HeatCurves curves) {
    this.kiln = kiln;
    this.schedule = schedule;
    List<ThermalBody> walls =
        new WallBuilder(
                kiln,
                new WallBuilder.Grid(accuracy.firstCellMetres(), accuracy.cellGrowth()),
                curves)
            .build(parameters.conductivityFactor(), parameters.capacityFactor());
    this.loads = loads.size();
    List<ThermalBody> bodies = new ArrayList<>();
    for (Load load : loads) {
      bodies.add(
          load.body(curves, parameters.loadConductivityFactor(), parameters.loadHeatFactor()));
    }
    Optional<FiringConditions.ColdPieces> pieces =
        conditions.pieces().filter(cold -> !cold.changes().isEmpty());
    pieces.ifPresent(
        cold ->
            bodies.add(
                LumpedLoad.ofHeat("piece", cold.joulesPerKelvin(), cold.squareMetres())
                    .body(curves, 1, 1)));
    this.changes = pieces.map(FiringConditions.ColdPieces::changes).orElse(List.of());
    bodies.add(LumpedLoad.fittings(kiln).body(curves, 1, parameters.fittingsJoulesPerKelvin()));
    this.network =
        new KilnNetwork(kiln, parameters, conditions, walls, bodies, accuracy.toleranceKelvins());
    this.stepper = new RosenbrockStepper(network);
    this.edges = edgesOf(conditions);
    this.switchSeconds = parameters.switchSeconds();
    this.crestKelvins = parameters.crestKelvins();
    this.hysteresisKelvins = kiln.control().hysteresis().kelvins();
    this.mayAverage = accuracy.relay() == Relay.MEAN;
    this.relayCycleSeconds =
        accuracy.relay() == Relay.RESOLVED && kiln.control().kind() == Control.Kind.PID
            ? kiln.control().cycleSeconds()
            : 0;
    this.y =
        network.stateAt(conditions.start().map(t -> t.celsius()).orElse(network.roomCelsius()));
    if (pieces.isPresent()) {
      network.bring(y, this.loads, false);
    }
    this.yNew = new double[y.length];
    this.rates = new double[y.length];
    this.scratch = new double[y.length];
    evaluate();
    record();
  }

  /**
   * An on-off controller is given what the real one saw: it switches, and the program goes on, when
   * these readings say so and not when the simulated ones do. What the kiln makes of the same
   * switching is then simulated in the open, and a simulation that goes wrong is not put right by
   * its own controller. Call before the program runs.
   *
   * @param seen what the display said
   * @param delaySeconds from where a reading passes an edge of the hysteresis to the switch: a
   *     controller smooths what it sees, s
   * @param answerSeconds from the switch to where the display has turned by 3 K, s
   * @param lateSeconds by how much each hold is longer than the schedule says, one a segment, s
   * @throws IllegalStateException if the controller is no on-off controller
   */
  public void follow(
      SeenDisplay seen, double delaySeconds, double answerSeconds, double[] lateSeconds) {
    if (kiln.control().kind() != Control.Kind.ON_OFF) {
      throw new IllegalStateException("Only an on-off controller can follow a display.");
    }
    followed = Optional.of(new FollowedDisplay(seen, delaySeconds + answerSeconds));
    followingSeconds = delaySeconds;
    holdMoreSeconds = lateSeconds.clone();
    mayAverage = false;
  }

  /**
   * The program goes on when it is known to have gone on, whatever the simulated display does: the
   * clocks of its holds begin at these times. Call before the program runs.
   *
   * @param seconds one a segment, s from the program's start; not a number where a hold's clock
   *     waits for the display as usual
   */
  public void holdFrom(double[] seconds) {
    holdFromSeconds = seconds.clone();
  }

  /**
   * The display is off its line by some kelvins when it arrives, so that a hold's clock begins
   * sooner or later. Call before the program runs.
   *
   * @param kelvins one a segment: by so much sooner it is near enough; below zero later
   */
  public void arriveSooner(double[] kelvins) {
    soonerKelvins = kelvins.clone();
  }

  /**
   * An on-off kiln's display swings, and where in its swing it is when the setpoint comes to a
   * target is chance: a hold's clock that waits for it begins at once or most of a swing later.
   * Where the swing has been simulated in the mean, it is taken up again in time before that.
   * Without this it arrives in the mean. Call before the program runs.
   *
   * @param shares one a segment: the swing is taken up by this share of itself sooner, 0 to 1
   */
  public void arriveInSwing(double[] shares) {
    swingShares = shares.clone();
  }

  /** Whether the setpoint comes to a target so soon that each switch counts. */
  private boolean arrives() {
    return Double.isFinite(arrivesInSeconds) && arrivesInSeconds <= swingsBeforeArrival() + 1e-9;
  }

  private double swingsBeforeArrival() {
    return (SWINGS_BEFORE_ARRIVAL + swingShares[index]) * cycles.cycleSeconds();
  }

  /**
   * How near its target the line of a display is when a hold's clock begins, K.
   *
   * @param asked by the controller, K
   * @param crest how far the crests that the controller sees stand above the line, K
   * @param sooner by how much the display is off the line when it arrives, K
   */
  public static double nearKelvins(double asked, double crest, double sooner) {
    return Math.max(NEAREST_KELVINS, asked + crest - SMOOTHED_KELVINS + sooner);
  }

  private double sooner() {
    return index < soonerKelvins.length ? soonerKelvins[index] : 0;
  }

  /** When the hold of the segment that runs is known to have begun; not a number if it is not. */
  private double knownHold() {
    return index < holdFromSeconds.length ? holdFromSeconds[index] : Double.NaN;
  }

  /**
   * What stands inside is taken out at a time, and the same goes in as cold as the room, both at
   * once. Call before the program comes there.
   *
   * @param second s from the program's start
   */
  public void changeLoadAt(double second) {
    loadChangesAt = second;
  }

  /** What the controller sees, °C. */
  private double display() {
    return display(y);
  }

  private double display(double[] state) {
    return follows() ? followed.get().at(now) : network.reading(state);
  }

  /** Whether the controller goes by readings that were logged: not where there are none. */
  private boolean follows() {
    return followed.isPresent() && !blind;
  }

  /** Begins or ends to go by itself where the log has a gap. */
  private void lookAtGap(FollowedDisplay seen) {
    boolean was = blind;
    blind = seen.blind(now);
    if (was != blind) {
      switchAt = Double.POSITIVE_INFINITY;
      int headed = was ? seen.headed(now) : 0;
      switchedOn = headed == 0 ? switchedOn : headed > 0;
      changeDrive();
    }
  }

  private static List<Edge> edgesOf(FiringConditions conditions) {
    List<Edge> list = new ArrayList<>();
    for (FiringConditions.Disturbance disturbance : conditions.disturbances()) {
      list.add(new Edge(disturbance.atSeconds(), true, disturbance));
      list.add(new Edge(disturbance.atSeconds() + disturbance.lengthSeconds(), false, disturbance));
    }
    list.sort(Comparator.comparingDouble(Edge::atSeconds).thenComparing(Edge::begins));
    return list;
  }

  /**
   * Runs the program to its end.
   *
   * @return false if a target was never reached
   */
  public boolean runProgram() {
    return runProgram(Double.POSITIVE_INFINITY);
  }

  /**
   * Runs the program to its end, or to a time if that comes first: what is not reached by then
   * counts as never reached.
   *
   * @param until s from the program's start, above zero
   * @return false if a target was not reached
   */
  public boolean runProgram(double until) {
    endsAt = until;
    powered = true;
    applyDrive();
    while (index < schedule.segments().size() && !stopped) {
      if (!runSegment(schedule.segments().get(index))) {
        break;
      }
      phase = Phase.RAMP;
      index++;
      if (restart) {
        restart = false;
        segmentRuns.clear();
        laterSeconds.clear();
        tangents.ifPresent(KilnTangents::goesOnOnTime);
        index = 0;
        phase = Phase.RAMP;
      }
    }
    if (stopped && now >= endsAt - 1e-9 && forkable()) {
      checkpoint = Optional.of(here());
    }
    boolean complete = segmentRuns.size() == schedule.segments().size();
    while (segmentRuns.size() < schedule.segments().size()) {
      segmentRuns.add(
          new FiringRun.SegmentRun(
              Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, saturatedSeconds, joulesNow()));
    }
    switchByItself();
    if (schedule.atEnd() == AtEnd.OFF || stopped) {
      powered = false;
    }
    tangents.ifPresent(t -> t.leave(rates));
    network.moveSetpoint(0);
    applyDrive();
    goesOn(false);
    endsAt = Double.POSITIVE_INFINITY;
    return complete;
  }

  /** Goes on after the program's end until {@code second}: cooling, or keeping the last target. */
  public void coastUntil(double second) {
    if (second > now) {
      advance(second - now, Optional.empty());
    }
  }

  /** What has happened so far. */
  public FiringRun run() {
    return new FiringRun(
        Arrays.copyOf(seconds, rows),
        Arrays.copyOf(setpoint, rows),
        Arrays.copyOf(reading, rows),
        Arrays.copyOf(readingRate, 2 * rows),
        Arrays.copyOf(watts, rows),
        Arrays.copyOf(joules, rows),
        Arrays.copyOf(swing, 3 * rows),
        Arrays.copyOf(air, rows),
        Arrays.copyOf(radiant, rows),
        segmentRuns,
        rejected);
  }

  // ------------------------------------------------------------------ derivatives

  private int holdsPlace;
  private double holdSeconds;

  /**
   * Whether a run's derivatives are written out: with a proportional controller, whose holds are
   * told or wait for a display without ripple, and nothing but the mains, a relay or an element
   * that goes wrong.
   *
   * @param told whether {@link #holdFrom} tells of every hold
   */
  public static boolean mayDifferentiate(Kiln kiln, FiringConditions day, boolean told) {
    Control control = kiln.control();
    return control.kind() == Control.Kind.PID
        && day.pieces().filter(pieces -> !pieces.changes().isEmpty()).isEmpty()
        && day.disturbances().stream()
            .allMatch(
                event ->
                    switch (event.kind()) {
                      case MAINS_OFF, RELAY_ON, RELAY_OFF, ELEMENT_OPEN -> true;
                      case DOOR_OPEN, DOOR_AJAR, TIP_OUT -> false;
                    });
  }

  /**
   * Has the run tell how it changes with scores of its kiln and its day, to first order. Call after
   * {@link #holdFrom} and before the program runs; see {@link #mayDifferentiate}.
   *
   * @param quantities whose scores
   * @param scores of the kiln, one a {@link KilnQuantity}
   * @param startKelvins by how much the start is warmer a score of its own, K
   * @param holdSeconds by how much holds that are told begin later a score of their own, s
   */
  public void differentiate(
      KilnQuantity[] quantities, double[] scores, double startKelvins, double holdSeconds) {
    double[] perScore = new double[quantities.length];
    for (int i = 0; i < perScore.length; i++) {
      perScore[i] = KilnParameters.perScore(quantities[i], scores[quantities[i].ordinal()]);
    }
    KilnTangents all = new KilnTangents(network, quantities, perScore, 2);
    all.warmer(quantities.length, startKelvins, network.perKelvinAt(y[KilnNetwork.SENSOR]));
    this.holdsPlace = quantities.length + 1;
    this.holdSeconds = holdSeconds;
    this.tangents = Optional.of(all);
    rows = 0;
    evaluate();
    record();
  }

  /**
   * A run with one of its scores moved, to first order.
   *
   * @param run what {@link #run} gave
   * @param place of the quantities that were given to {@link #differentiate}; one beyond them is
   *     the start, the next the holds that are told
   * @param by so many scores
   * @throws java.util.NoSuchElementException without {@link #differentiate}
   */
  public FiringRun runNearby(FiringRun run, int place, double by) {
    KilnTangents all = tangents.orElseThrow();
    List<FiringRun.SegmentRun> moved = new ArrayList<>();
    for (int i = 0; i < segmentRuns.size(); i++) {
      FiringRun.SegmentRun segment = segmentRuns.get(i);
      double begins = 2 * i < laterSeconds.size() ? by * laterSeconds.get(2 * i)[place] : 0;
      double ends = 2 * i + 1 < laterSeconds.size() ? by * laterSeconds.get(2 * i + 1)[place] : 0;
      moved.add(
          new FiringRun.SegmentRun(
              segment.reachedSeconds() + begins,
              segment.endSeconds() + ends,
              segment.saturatedSeconds(),
              segment.energyJoules()));
    }
    return all.moved(run, place, by, moved);
  }

  /** Writes down by how much later a hold begins or ends, s a score. */
  private void laterSeconds(boolean begins) {
    if (tangents.isPresent() && (begins == (laterSeconds.size() % 2 == 0))) {
      laterSeconds.add(tangents.get().laterSeconds());
    }
  }

  /** Heat stored now, J, from an arbitrary zero; for energy balances. */
  double storedJoules() {
    return network.storedJoules(y);
  }

  /** Runs the program and adds up the heat that leaves meanwhile, J; for energy balances. */
  double lostJoulesOfProgram() {
    lossWanted = true;
    runProgram();
    return lostJoules;
  }

  /** How far the simulation has come, s from the program's start. */
  public double elapsedSeconds() {
    return now;
  }

  /** Where in a segment the program is. */
  private enum Phase {
    RAMP,
    ARRIVAL,
    HOLD
  }

  /**
   * A program halted on its way, from where simulations that are alike up to then may go on.
   *
   * <p>Only {@link #resume} reads it.
   */
  @SuppressWarnings("ArrayRecordComponent") // never written
  public record Checkpoint(
      double nowSeconds,
      double[] state,
      double stepSeconds,
      int index,
      Phase phase,
      double reachedSeconds,
      double saturatedUntilReachedSeconds,
      double holdLeftSeconds,
      double saturatedSeconds,
      boolean switchedOn,
      double switchAtSeconds,
      double restsUntilSeconds,
      FiringRun sofar) {}

  /** Nothing is in force that the state does not hold. */
  private boolean forkable() {
    return inForce == 0 && !restart && relayCycleSeconds == 0 && !averaging && loadChangesAt > now;
  }

  private Checkpoint here() {
    return new Checkpoint(
        now,
        y.clone(),
        step,
        index,
        phase,
        reached,
        saturatedUntilReached,
        holdLeft,
        saturatedSeconds,
        switchedOn,
        switchAt,
        rests,
        run());
  }

  /**
   * Where {@link #runProgram(double)} halted; empty if it came to the program's end, or where
   * something is in force there that cannot be taken up again.
   */
  public Optional<Checkpoint> checkpoint() {
    return checkpoint;
  }

  /**
   * Goes on from where another simulation of the same kiln, draw, schedule and load halted, with a
   * day that is the same up to there. Call before the program runs.
   */
  public void resume(Checkpoint from) {
    now = from.nowSeconds();
    y = from.state().clone();
    step = from.stepSeconds();
    index = from.index();
    phase = from.phase();
    reached = from.reachedSeconds();
    saturatedUntilReached = from.saturatedUntilReachedSeconds();
    holdLeft = from.holdLeftSeconds();
    saturatedSeconds = from.saturatedSeconds();
    switchedOn = from.switchedOn();
    switchAt = from.switchAtSeconds();
    rests = from.restsUntilSeconds();
    resumed = true;
    blind = followed.map(seen -> seen.blind(now)).orElse(false);
    // What has passed by then is over, and in the state.
    while (edge < edges.size() && edges.get(edge).atSeconds() <= now + 1e-9) {
      edge++;
    }
    while (change < changes.size() && changes.get(change).atSeconds() <= now + 1e-9) {
      network.stand(loads, changes.get(change).goesIn());
      change++;
    }
    segmentRuns.clear();
    segmentRuns.addAll(from.sofar().segments());
    FiringRun.Columns columns = from.sofar().columns();
    rows = columns.rows();
    int room = Math.max(512, 2 * rows);
    seconds = Arrays.copyOf(columns.seconds(), room);
    setpoint = Arrays.copyOf(columns.setpoint(), room);
    reading = Arrays.copyOf(columns.reading(), room);
    readingRate = Arrays.copyOf(columns.readingRate(), 2 * room);
    watts = Arrays.copyOf(columns.watts(), room);
    joules = Arrays.copyOf(columns.joules(), room);
    swing = Arrays.copyOf(columns.swing(), 3 * room);
    air = Arrays.copyOf(columns.air(), room);
    radiant = Arrays.copyOf(columns.radiant(), room);
  }

  private boolean runSegment(Segment segment) {
    double target = segment.target().celsius();
    boolean again = resumed;
    resumed = false;
    if (again) {
      evaluate();
    } else {
      saturatedSeconds = 0;
    }
    var rate = segment.ramp().rate();
    if (rate.isPresent() && phase == Phase.RAMP) {
      double way = target - y[KilnNetwork.SETPOINT];
      double kelvinsPerSecond = rate.get().kelvinsPerHour() / 3600;
      tangents.ifPresent(t -> t.leave(rates));
      network.moveSetpoint(Math.signum(way) * kelvinsPerSecond);
      if (again) {
        evaluate();
      } else {
        switchByItself();
        goesOn(false);
      }
      double length = Math.abs(way) / kelvinsPerSecond;
      boolean swings = index < swingShares.length && kiln.control().holdWaitsWithin().isPresent();
      arrivesInSeconds = swings ? length : Double.POSITIVE_INFINITY;
      advance(length, Optional.empty());
      arrivesInSeconds = Double.POSITIVE_INFINITY;
      if (interrupted()) {
        return restart;
      }
      tangents.ifPresent(t -> t.goesOnBySetpoint(network.setpointPerSecond()));
    }
    if (phase == Phase.RAMP) {
      tangents.ifPresent(t -> t.leave(rates));
      network.moveSetpoint(0);
      y[KilnNetwork.SETPOINT] = target;
      switchByItself();
      goesOn(true);
      phase = Phase.ARRIVAL;
    }
    var waits = kiln.control().holdWaitsWithin();
    boolean told = !Double.isNaN(knownHold());
    if (waits.isPresent() && phase == Phase.ARRIVAL && !told) {
      double near = nearKelvins(waits.get().kelvins(), crestKelvins, sooner());
      double distance = display() - target;
      boolean met = follows() && followed.get().met(now, followingSeconds, target, near);
      if (Math.abs(distance) > near && !met) {
        boolean arrived = await(GIVE_UP_SECONDS, target + Math.signum(distance) * near);
        if (interrupted()) {
          return restart;
        }
        if (!arrived) {
          return false;
        }
        double outward = near > NEAREST_KELVINS ? Math.signum(distance) : 0;
        tangents.ifPresent(t -> t.goesOnByReading(network.readingRate(rates), outward));
      }
    }
    if (phase == Phase.ARRIVAL && knownHold() > now) {
      advance(knownHold() - now, Optional.empty());
      if (interrupted()) {
        return restart;
      }
    }
    if (phase != Phase.HOLD) {
      reached = now;
      saturatedUntilReached = saturatedSeconds;
      double more = followed.isPresent() ? holdMoreSeconds[index] : 0;
      double begunSeconds = knownHold() < now ? now - knownHold() : 0;
      holdLeft = Math.max(0, segment.hold().toSeconds() + more - begunSeconds);
      phase = Phase.HOLD;
      if (told && holdLeft > 0) {
        tangents.ifPresent(t -> t.goesOnBy(holdsPlace, holdSeconds));
      }
    }
    laterSeconds(true);
    advance(holdLeft, Optional.empty());
    if (interrupted()) {
      return restart;
    }
    laterSeconds(false);
    segmentRuns.add(new FiringRun.SegmentRun(reached, now, saturatedUntilReached, joulesNow()));
    return true;
  }

  /** Advances until the display crosses a level; a switch is resolved meanwhile. */
  private boolean await(double length, double level) {
    awaiting = true;
    switchByItself();
    boolean crossed = advance(length, Optional.of(level));
    awaiting = false;
    return crossed;
  }

  /** Goes on like the mean of the cycles that the switch repeats. */
  private void average() {
    averaging = true;
    averagingSince = now;
    y[KilnNetwork.INTEGRAL] = network.average(cycles);
    changeDrive();
  }

  /** Switches one by one again, and watches anew. */
  private void switchByItself() {
    cycles.forget();
    if (averaging) {
      averaging = false;
      network.noAverage();
      y[KilnNetwork.INTEGRAL] = 0;
      switchAt = Double.POSITIVE_INFINITY;
      switchedOn = error(y) > 0;
      changeDrive();
    }
  }

  /** Setpoint minus display, K. */
  private double error(double[] state) {
    return state[KilnNetwork.SETPOINT] - display(state);
  }

  private boolean interrupted() {
    return restart || stopped;
  }

  private double joulesNow() {
    return y[KilnNetwork.ENERGY];
  }

  /** The setpoint or the power has jumped: the next step starts small. */
  private void restartSteps() {
    startSmall();
    record();
  }

  private void startSmall() {
    step = Math.min(step, followed.isPresent() ? FOLLOWING_STEP_SECONDS : FIRST_STEP_SECONDS);
    evaluate();
  }

  /**
   * The program has gone on.
   *
   * @param set whether the setpoint was put to where it is
   */
  private void goesOn(boolean set) {
    startSmall();
    tangents.ifPresent(t -> t.enter(rates, set));
    record();
  }

  private void evaluate() {
    network.rates(y, rates);
    rawDuty = network.rawDuty();
    wattsNow = network.duty() * network.fullWatts();
  }

  private void changeDrive() {
    applyDrive();
    restartSteps();
  }

  private void applyDrive() {
    Drive drive;
    if (!powered || !mainsOn || doorOpen) {
      drive = Drive.NONE;
    } else if (kiln.control().kind() == Control.Kind.ON_OFF) {
      drive = averaging ? Drive.PROPORTIONAL : switchedOn ? Drive.FULL : Drive.NONE;
    } else {
      drive = Drive.PROPORTIONAL;
    }
    network.drive(drive);
    boolean supplied = mainsOn && !doorOpen;
    double relay = drive == Drive.PROPORTIONAL ? cycleDuty : Double.NaN;
    network.forceDuty(!supplied ? Double.NaN : Double.isNaN(stuckDuty) ? relay : stuckDuty);
  }

  /**
   * Advances the program's clock, which stands still while the mains are off.
   *
   * @param length s of the program's clock
   * @param level stop early where the reading crosses this, °C
   * @return whether it stopped at the level
   */
  private boolean advance(double length, Optional<Double> level) {
    double left = length;
    double levelSide = level.isPresent() ? Math.signum(level.get() - display()) : 0;
    while (left > 1e-9) {
      if (now >= endsAt - 1e-9) {
        stopped = true;
        holdLeft = left;
        return false;
      }
      if (edge < edges.size() && edges.get(edge).atSeconds() <= now + 1e-9) {
        passEdge(edges.get(edge));
        edge++;
        if (interrupted()) {
          return false;
        }
        continue;
      }
      if (loadChangesAt <= now + 1e-9) {
        loadChangesAt = Double.POSITIVE_INFINITY;
        switchByItself();
        network.changeLoads(y, loads);
        restartSteps();
        continue;
      }
      if (change < changes.size() && changes.get(change).atSeconds() <= now + 1e-9) {
        switchByItself();
        network.bring(y, loads, changes.get(change).goesIn());
        change++;
        restartSteps();
        continue;
      }
      if (averaging && arrives()) {
        switchByItself();
      }
      double toEdge = edge < edges.size() ? edges.get(edge).atSeconds() - now : Double.MAX_VALUE;
      if (averaging && Double.isFinite(arrivesInSeconds)) {
        toEdge = Math.min(toEdge, arrivesInSeconds - swingsBeforeArrival());
      }
      if (change < changes.size()) {
        toEdge = Math.min(toEdge, changes.get(change).atSeconds() - now);
      }
      toEdge = Math.min(toEdge, loadChangesAt - now);
      double stop = Math.min(endsAt - now, mainsOn ? Math.min(left, toEdge) : toEdge);
      if (stop >= Double.MAX_VALUE) {
        throw new NumericsException("The mains stay off for ever at %s s.".formatted(now));
      }
      double taken = takeStep(stop, level, levelSide);
      if (mainsOn) {
        left -= taken;
        arrivesInSeconds -= taken;
      }
      if (levelSide != 0 && (level.orElse(0.0) - display()) * levelSide <= EVENT_KELVINS) {
        return true;
      }
    }
    return false;
  }

  /** Takes one accepted step of at most {@code limit}; returns its length. */
  private double takeStep(double stop, Optional<Double> level, double levelSide) {
    followed.ifPresent(this::lookAtGap);
    applySwitch();
    applyRelay();
    double limit = switches() ? Math.min(stop, switchAt - now) : stop;
    if (followed.isPresent()) {
      limit = Math.max(SMALLEST_STEP_SECONDS, followed.get().untilGapChanges(now, limit));
    }
    if (follows()) {
      limit = untilSeen(followed.get(), limit, level, levelSide);
    }
    if (relayCycleSeconds > 0) {
      limit = Math.min(limit, Math.min(cycleTurnsOff, cycleEnds) - now);
    }
    boolean retried = false;
    while (true) {
      double length = Math.min(step, limit);
      // Do not leave a sliver behind.
      if (length < limit && limit - length < 0.2 * length) {
        length = limit / 2;
      }
      double norm = stepper.step(y, rates, length, yNew);
      if (!(norm <= 1)) {
        rejected++;
        retried = true;
        if (!(length > SMALLEST_STEP_SECONDS)) {
          throw new NumericsException(
              "The simulation of kiln '%s' does not converge at %.0f s, where the display reads"
                      .formatted(kiln.name(), now)
                  + " %.1f °C.".formatted(network.reading(y)));
        }
        step = Double.isNaN(norm) ? length / 10 : RosenbrockStepper.nextStep(length, norm);
        continue;
      }
      double crossing = firstCrossing(length, level, levelSide);
      if (crossing < length) {
        length = Math.max(crossing, SMALLEST_STEP_SECONDS);
        stepper.step(y, rates, length, yNew);
      } else if (length >= step) {
        // After a failure do not grow at once: what made it fail is still near.
        double most = retried ? length : LARGEST_STEP_SECONDS;
        step = Math.min(most, RosenbrockStepper.nextStep(length, norm));
      }
      if (tangents.isPresent()) {
        length = meetLimit(length);
      }
      accept(length);
      return length;
    }
  }

  /**
   * Shortens a tried step so that it ends where what the controller asks for meets one of its
   * limits: from there on the equations are others.
   *
   * @return its length
   */
  private double meetLimit(double length) {
    network.rates(yNew, scratch);
    double after = network.rawDuty();
    double limit = firstLimit(rawDuty, after);
    double low = 0;
    double lowOff = rawDuty - limit;
    double high = length;
    double highOff = after - limit;
    double tried = length;
    for (int i = 0; i < LIMIT_TRIES && Math.abs(highOff) > LIMIT_DUTY; i++) {
      tried = Math.max(low + (high - low) * lowOff / (lowOff - highOff), SMALLEST_STEP_SECONDS);
      stepper.step(y, rates, tried, yNew);
      network.rates(yNew, scratch);
      double off = network.rawDuty() - limit;
      if (Math.abs(off) <= LIMIT_DUTY) {
        break;
      }
      if (off * lowOff > 0) {
        low = tried;
        lowOff = off;
      } else {
        high = tried;
        highOff = off;
      }
    }
    return tried;
  }

  /** How near to a limit of its output a controller has met it, of full power. */
  private static final double LIMIT_DUTY = 0.002;

  private static final int LIMIT_TRIES = 8;

  /** The first limit between two outputs; the second where there is none. */
  private static double firstLimit(double before, double after) {
    double first = after;
    for (double limit : LIMITS) {
      boolean between = (limit - before) * (after - limit) > 0;
      if (between
          && Math.abs(limit - before) > LIMIT_DUTY
          && Math.abs(limit - before) < Math.abs(first - before)) {
        first = limit;
      }
    }
    return first;
  }

  private static final double[] LIMITS = {
    -KilnNetwork.INTEGRAL_PASSAGE, 0, 1, 1 + KilnNetwork.INTEGRAL_PASSAGE
  };

  /** Until the readings that are followed tell the controller something, s. */
  private double untilSeen(
      FollowedDisplay seen, double most, Optional<Double> level, double levelSide) {
    double limit = most;
    if (levelSide != 0) {
      limit = seen.untilPasses(now, level.orElse(0.0), levelSide, limit);
    }
    if (switches() && Double.isInfinite(switchAt)) {
      limit = Math.min(limit, now < rests ? rests - now : untilOrdered(seen, limit));
    }
    return Math.max(SMALLEST_STEP_SECONDS, limit);
  }

  /** Until the readings that are followed order the switch to turn, s. */
  private double untilOrdered(FollowedDisplay seen, double most) {
    double side = switchedOn ? 1 : -1;
    double edgeCelsius = y[KilnNetwork.SETPOINT] + side * 0.5 * hysteresisKelvins;
    return seen.untilSwitches(now, edgeCelsius, network.setpointPerSecond(), side, most);
  }

  private void accept(double length) {
    double before = rawDuty;
    if (lossWanted) {
      lostJoules += 0.5 * length * (network.lostWatts(y) + network.lostWatts(yNew));
    }
    readingRate[2 * rows - 2] = network.readingRate(rates);
    if (switches()) {
      cycles.step(length, switchedOn, error(y), error(yNew));
    }
    double[] swap = y;
    y = yNew;
    yNew = swap;
    now += length;
    evaluate();
    if (tangents.isPresent()) {
      tangents.get().step(length, (before + rawDuty) / 2);
    }
    saturatedSeconds += length * shareAbove(before, rawDuty);
    record();
    readingRate[2 * rows - 3] = network.readingRate(rates);
    if (averaging && !(rawDuty > LEAST_DUTY && rawDuty < 1 - LEAST_DUTY)) {
      switchByItself();
    }
  }

  /** Nearer to no or full power than this an on-off controller has no steady cycle. */
  private static final double LEAST_DUTY = 0.02;

  /** Share of a step, taken as linear, in which the output is at its upper limit. */
  private double shareAbove(double before, double after) {
    if (!mainsOn || !powered) {
      return 0;
    }
    boolean was = before >= 1;
    boolean is = after >= 1;
    if (was == is) {
      return is ? 1 : 0;
    }
    double crossing = (1 - before) / (after - before);
    return is ? 1 - crossing : crossing;
  }

  /** First time within the tried step where the reading crosses a level that matters. */
  private double firstCrossing(double length, Optional<Double> level, double levelSide) {
    double first = length;
    if (follows()) {
      return first;
    }
    if (levelSide != 0) {
      first = Math.min(first, crossing(length, level.orElse(0.0), levelSide));
    }
    if (switches() && Double.isInfinite(switchAt)) {
      double before = marginToSwitch(y);
      double after = marginToSwitch(yNew);
      if (before > SWITCH_KELVINS && after < -SWITCH_KELVINS) {
        network.rates(yNew, scratch);
        double slope = switchedOn ? 1 : -1;
        double setpointRate = network.setpointPerSecond();
        first =
            Math.min(
                first,
                zero(
                    length,
                    before,
                    after,
                    slope * (setpointRate - network.readingRate(rates)),
                    slope * (setpointRate - network.readingRate(scratch))));
      }
    }
    return first;
  }

  private double crossing(double length, double level, double side) {
    double r0 = network.reading(y);
    double r1 = network.reading(yNew);
    if ((level - r1) * side >= 0) {
      return length;
    }
    network.rates(yNew, scratch);
    return zero(
        length,
        (level - r0) * side,
        (level - r1) * side,
        -side * network.readingRate(rates),
        -side * network.readingRate(scratch));
  }

  /** When a cubic with these values and slopes at the ends of a step falls through zero, s. */
  private static double zero(
      double length, double from, double to, double fromRate, double toRate) {
    double d0 = fromRate * length;
    double d1 = toRate * length;
    double low = 0;
    double high = 1;
    for (int i = 0; i < 40; i++) {
      double s = (low + high) / 2;
      double r = 1 - s;
      double value =
          r * r * (1 + 2 * s) * from + s * s * (3 - 2 * s) * to + s * r * (r * d0 - s * d1);
      if (value > 0) {
        low = s;
      } else {
        high = s;
      }
    }
    return high * length;
  }

  /**
   * An on-off controller: where the reading has crossed the edge of its hysteresis the switch is
   * ordered, and it follows a while later whatever the reading does in between.
   */
  private void applySwitch() {
    if (!switches()) {
      return;
    }
    if (switchAt <= now + 1e-9) {
      switchAt = Double.POSITIVE_INFINITY;
      switchedOn = !switchedOn;
      changeDrive();
      if (switchedOn) {
        cycles.turnsOn();
        if (mayAverage && !awaiting && !arrives() && cycles.repeat()) {
          average();
          return;
        }
      }
    }
    if (Double.isInfinite(switchAt) && now >= rests - 1e-9 && ordered()) {
      if (leapt()) {
        switchedOn = !switchedOn;
        changeDrive();
        return;
      }
      switchAt = now + (follows() ? followingSeconds : switchSeconds);
      rests = follows() ? now + switchSeconds : rests;
    }
  }

  /**
   * Whether the setpoint has gone far beyond the reading at once, as at a program's start and where
   * a segment is as fast as can be: no controller waits then for a reading that it smooths.
   */
  private boolean leapt() {
    return marginToSwitch(y) < -LEAP_KELVINS;
  }

  private boolean ordered() {
    return follows()
        ? untilOrdered(followed.get(), FIRST_STEP_SECONDS) <= SMALLEST_STEP_SECONDS
        : marginToSwitch(y) <= SWITCH_KELVINS;
  }

  /** Where the relay is resolved: on for its share of the cycle, then off. */
  private void applyRelay() {
    if (relayCycleSeconds <= 0) {
      return;
    }
    if (cycleEnds <= now + 1e-9) {
      cycleDuty = Double.NaN;
      applyDrive();
      evaluate();
      double share = Math.max(0, Math.min(1, rawDuty));
      cycleEnds = now + relayCycleSeconds;
      cycleTurnsOff =
          share > 0 && share < 1 ? now + share * relayCycleSeconds : Double.POSITIVE_INFINITY;
      cycleDuty = share > 0 ? 1 : 0;
      changeDrive();
    } else if (cycleTurnsOff <= now + 1e-9) {
      cycleTurnsOff = Double.POSITIVE_INFINITY;
      cycleDuty = 0;
      changeDrive();
    }
  }

  private boolean switches() {
    return kiln.control().kind() == Control.Kind.ON_OFF && powered && mainsOn && !averaging;
  }

  /** How far the reading is from ordering a switch, K; zero or less: ordered. */
  private double marginToSwitch(double[] state) {
    double error = error(state);
    return 0.5 * hysteresisKelvins + (switchedOn ? error : -error);
  }

  private void passEdge(Edge passed) {
    switchByItself();
    boolean begins = passed.begins();
    inForce += begins ? 1 : -1;
    double size = passed.of().sizeShare();
    switch (passed.of().kind()) {
      case DOOR_OPEN -> {
        doorOpen = begins;
        openDoor(begins ? 1 : 0);
      }
      case DOOR_AJAR -> openDoor(begins ? size : 0);
      case ELEMENT_OPEN -> network.loseElements(begins ? size : 0);
      case TIP_OUT -> network.pullTip(begins ? size : 0);
      case RELAY_ON -> stuckDuty = begins ? 1 : Double.NaN;
      case RELAY_OFF -> stuckDuty = begins ? 0 : Double.NaN;
      case MAINS_OFF -> {
        if (begins) {
          loseMains();
        } else {
          regainMains(size);
        }
      }
    }
    changeDrive();
  }

  private void openDoor(double share) {
    if (share > 0) {
      network.openDoor(share, network.reading(y));
    } else {
      network.shutDoor();
    }
  }

  private void loseMains() {
    mainsOn = false;
    pausedSetpointRate = network.setpointPerSecond();
    network.moveSetpoint(0);
  }

  private void regainMains(double forgotten) {
    mainsOn = true;
    switchAt = Double.POSITIVE_INFINITY;
    network.moveSetpoint(pausedSetpointRate);
    y[KilnNetwork.INTEGRAL] *= 1 - forgotten;
    tangents.ifPresent(t -> t.keepIntegral(1 - forgotten));
    if (powered) {
      switch (kiln.control().afterPowerCut()) {
        case RESTART -> {
          restart = true;
          y[KilnNetwork.SETPOINT] = display();
          tangents.ifPresent(KilnTangents::setToReading);
        }
        case STOP -> {
          stopped = true;
          tangents.ifPresent(KilnTangents::goesOnOnTime);
        }
        case CONTINUE, UNKNOWN -> {}
      }
    }
  }

  private void record() {
    if (rows == seconds.length) {
      int more = 2 * rows;
      seconds = Arrays.copyOf(seconds, more);
      setpoint = Arrays.copyOf(setpoint, more);
      reading = Arrays.copyOf(reading, more);
      readingRate = Arrays.copyOf(readingRate, 2 * more);
      watts = Arrays.copyOf(watts, more);
      joules = Arrays.copyOf(joules, more);
      swing = Arrays.copyOf(swing, 3 * more);
      air = Arrays.copyOf(air, more);
      radiant = Arrays.copyOf(radiant, more);
    }
    seconds[rows] = now;
    setpoint[rows] = y[KilnNetwork.SETPOINT];
    reading[rows] = network.reading(y);
    watts[rows] = wattsNow;
    joules[rows] = y[KilnNetwork.ENERGY];
    swing[3 * rows] = averaging ? cycles.swingKelvins() : 0;
    // It begins where a cycle does, at the bottom of the swing; a cycle later the curve is its
    // mean.
    boolean mean = averaging && now >= averagingSince + cycles.cycleSeconds();
    swing[3 * rows + 1] = mean ? cycles.aboveKelvins() : 0;
    swing[3 * rows + 2] = mean ? cycles.belowKelvins() : 0;
    air[rows] = network.airCelsius(y);
    radiant[rows] = network.radiantCelsius(y);
    if (tangents.isPresent()) {
      tangents.get().record(rows, y, rates);
    }
    rows++;
  }
}
