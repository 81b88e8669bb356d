package org.heatwright.learn;

import static org.heatwright.numerics.NormalSteps.NINE_IN_TEN;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.SessionPieces;
import org.heatwright.kiln.Control;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.FiringConditions.ColdPieces;
import org.heatwright.kiln.FiringConditions.Disturbance;
import org.heatwright.kiln.FiringRun;
import org.heatwright.kiln.FiringSimulation;
import org.heatwright.kiln.FiringSimulation.Checkpoint;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.KilnBeliefs;
import org.heatwright.kiln.KilnQuantity;
import org.heatwright.kiln.Load;
import org.heatwright.kiln.SeenDisplay;
import org.heatwright.material.HeatCurves;
import org.heatwright.schedule.Segment;
import org.heatwright.units.Temperature;

/**
 * What one firing says about a kiln: how far a simulation of it misses its readings, as independent
 * residuals of size one. Immutable; may be used by several threads.
 */
final class Evidence {

  /**
   * Nuisances of a day: mains, the log's clock, the start where it is not known, and of a session
   * the heat of its cold pieces and the length of openings that were read off the display.
   */
  static final int DAY = 5;

  /** Place of the log's clock among them. */
  static final int CLOCK = 1;

  /** Place of the start. */
  static final int START = 2;

  /** Place of the pieces' heat. */
  static final int PIECE = 3;

  /** Place of the openings' length. */
  static final int OPENING = 4;

  /**
   * What pieces that differ, and the model's door, leave open of the heat's logarithm. Estimate.
   */
  private static final double PIECE_REMAINING = 0.3;

  // A door was shut before the display was at its bottom: so much of the way there. Our estimate.
  private static final double READ_SHARE = 0.6;
  private static final double READ_SPREAD = 0.4;

  // A person opens wider or longer, a piece is bigger: a fall is known to a share. Our estimate.
  private static final double TOLD_FALL_SHARE = 0.12;
  private static final double READ_FALL_SHARE = 0.2;

  private static final FiringSimulation.Accuracy ACCURACY =
      new FiringSimulation.Accuracy(0.15, 0.0008, 1.4);

  /** For a switch that goes by the log: many short steps. */
  private static final FiringSimulation.Accuracy ROUGH =
      new FiringSimulation.Accuracy(0.5, 0.0015, 1.6);

  /** How far beyond the last reading is simulated, because clocks differ, s. */
  private static final double SIMULATED_BEYOND_SECONDS = 1200;

  /** A first reading this early tells the temperature at the start, s. */
  static final double FIRST_READING_SECONDS = 60;

  // An unknown start is the room's and a little, or much more after a firing. Our estimate.
  private static final double WARMER_KELVINS = 10;
  private static final double WARMER_SPREAD = 1.6;
  private static final double WARMEST_KELVINS = 900;

  /** Times that a person wrote to the minute, standard deviation, s. */
  private static final double MINUTE_SECONDS = 60 / Math.sqrt(12);

  // The discrepancy of model and kiln: estimates, fitted to kilns simulated apart;
  // docs/models/learning.md.
  private static final double SLOW_KELVINS = 5;

  /** The same where the log tells when its holds began, so that they do not move what follows. */
  private static final double TOLD_SLOW_KELVINS = 2;

  /** The same of a display that swings: how a switch swings it is known less. */
  private static final double SWINGING_SLOW_KELVINS = 8;

  /** How an on-off kiln cools on its own is known to this share of the fall. */
  private static final double COOLING_SHARE = 0.04;

  /** A display so far from the last target has left it, K. */
  private static final double LEFT_KELVINS = 25;

  private static final double SLOW_SECONDS = 1500;
  private static final double NOISE_KELVINS = 1.2;
  private static final double SWITCHED_NOISE_KELVINS = 3.5;

  /** Lags that the model does not have, s: what they are worth grows with the rate. */
  private static final double LAG_SECONDS = 8;

  /** The same where the display is followed closely. */
  private static final double CLOSE_LAG_SECONDS = 2;

  private static final double POWER_SLOW_SHARE = 0.02;
  private static final double POWER_NOISE_SHARE = 0.05;

  /** A swing is known this well, relative. */
  private static final double SWING_SHARE = 0.08;

  /** Points of a simulated mean, s apart. */
  private static final double MEAN_SECONDS = 15;

  /** How a relay's power scatters is taken from readings this near, s. Our estimate. */
  private static final double SCATTER_SECONDS = 900;

  private static final double SWING_WINDOW_SECONDS = 300;
  private static final double SWING_SETTLED_SECONDS = 600;
  private static final int SWING_FEWEST = 20;

  private final Kiln kiln;
  private final LoggedFiring firing;
  private final FiringConditions conditions;
  private final List<Load> loads;
  private final HeatCurves curves;
  private final Spans spans;
  private final Readings seen;

  // Of each row of them: the mean over swings, and the length of the span.
  private final List<Optional<SwingMeans.Mean>> swings = new ArrayList<>();
  private final double[] span;

  private final Discrepancy temperature;
  private final MeteredPower power;
  private final Optional<Swing> swing;
  private final HoldStarts starts;
  private final HoldWaits waits;

  Evidence(Kiln kiln, LoggedFiring raw, HeatCurves curves) {
    this(kiln, raw, curves, HoldStarts.of(kiln, raw.with(raw.slipless())));
  }

  /** The same of a program that goes on when the simulated display lets it. */
  static Evidence byItself(Kiln kiln, LoggedFiring raw, HeatCurves curves) {
    return new Evidence(kiln, raw, curves, HoldStarts.untold(raw.schedule()));
  }

  private Evidence(Kiln kiln, LoggedFiring raw, HeatCurves curves, HoldStarts starts) {
    LoggedFiring firing = raw.with(raw.slipless());
    this.kiln = kiln;
    this.firing = firing;
    this.curves = curves;
    this.loads = firing.charge().loads();
    this.conditions = startKnown(firing);
    this.starts = starts;
    boolean closely = starts.waited();
    this.spans = Spans.of(kiln, firing, closely);
    this.seen = spans.average(firing);
    int n = seen.size();
    double[] seconds = new double[n];
    double[] noise = new double[n];
    double still =
        kiln.control().kind() == Control.Kind.ON_OFF ? SWITCHED_NOISE_KELVINS : NOISE_KELVINS;
    double lag = closely ? CLOSE_LAG_SECONDS : LAG_SECONDS;
    double late = firing.readings().toTheMinute() ? Math.hypot(lag, MINUTE_SECONDS) : lag;
    double steady = starts.any() ? TOLD_SLOW_KELVINS : SLOW_KELVINS;
    double[] slow = new double[n];
    this.span = new double[n];
    for (int i = 0; i < n; i++) {
      seconds[i] = seen.second(i);
      span[i] = spans.at(seconds[i]);
      swings.add(spans.swings(seconds[i]));
      slow[i] = spans.swings(seconds[i]).isPresent() ? SWINGING_SLOW_KELVINS : steady;
      double shifted = Math.hypot(late, spans.firstSwitchSeconds(seconds[i]));
      noise[i] =
          Math.hypot(
              Math.hypot(still, shifted * seen.rate(i)),
              fallShare(firing.session()) * firing.session().fallKelvins(seconds[i]));
    }
    cooling(kiln, firing, slow);
    this.temperature = new Discrepancy(seconds, slow, SLOW_SECONDS, noise);
    double rated = kiln.element().suppliedWatts();
    this.power =
        new MeteredPower(
            seen,
            rated,
            POWER_SLOW_SHARE,
            SLOW_SECONDS,
            row -> Math.hypot(POWER_NOISE_SHARE, sampled(seen.second(row)) / rated));
    this.waits = HoldWaits.of(kiln, firing, spans.swinging(), starts);
    this.swing = kiln.control().kind() == Control.Kind.ON_OFF ? Swing.of(firing) : Optional.empty();
  }

  /** What an on-off kiln's cooling on its own is known less by, after the last target. */
  private void cooling(Kiln kiln, LoggedFiring firing, double[] slow) {
    List<Segment> segments = firing.schedule().segments();
    double target = segments.get(segments.size() - 1).target().celsius();
    if (kiln.control().kind() != Control.Kind.ON_OFF) {
      return;
    }
    for (int i = seen.size() - 1; i >= 0; i--) {
      if (Math.abs(seen.celsius(i) - target) < LEFT_KELVINS) {
        break;
      }
      slow[i] = Math.hypot(slow[i], COOLING_SHARE * (target - seen.celsius(i)));
    }
  }

  private static double fallShare(DoorSession session) {
    return session.told() ? TOLD_FALL_SHARE : READ_FALL_SHARE;
  }

  private static FiringConditions startKnown(LoggedFiring firing) {
    FiringConditions day = firing.conditions();
    Readings readings = firing.readings();
    if (day.start().isPresent() || readings.second(0) > FIRST_READING_SECONDS) {
      return day;
    }
    return day.starting(Temperature.ofCelsius(readings.celsius(0)));
  }

  /**
   * How far the mean power of a span may be off because it was read at moments: a relay is off or
   * on at each. How much the readings scatter is taken from many about the span, so that a span
   * does not count for more because it happened to catch the relay off.
   *
   * @return standard error, W
   */
  private double sampled(double second) {
    Readings readings = firing.readings();
    double half = spans.at(second) / 2;
    int own = 0;
    int count = 0;
    double sum = 0;
    double squares = 0;
    for (int i = readings.firstFrom(second - SCATTER_SECONDS);
        i < readings.size() && readings.second(i) <= second + SCATTER_SECONDS;
        i++) {
      double watts = readings.watts(i);
      if (!Double.isNaN(watts)) {
        count++;
        sum += watts;
        squares += watts * watts;
        own += Math.abs(readings.second(i) - second) <= half ? 1 : 0;
      }
    }
    double mean = sum / count;
    return Math.sqrt(Math.max(0, squares / count - mean * mean) / Math.max(1, own));
  }

  /** How many residuals there are. */
  int size() {
    return temperature.size()
        + power.size()
        + (swing.isPresent() ? 1 : 0)
        + waits.size()
        + starts.size();
  }

  /** Whether a meter told the power. */
  boolean metered() {
    return power.size() > 0;
  }

  /** Readings after averaging. */
  Readings seen() {
    return seen;
  }

  /**
   * The firing as the kiln of these scores would run it, its program going on when the log's did.
   *
   * @param day scores of its nuisances
   */
  FiringRun run(double[] scores, double[] day) {
    FiringSimulation simulation = simulation(scores, day[0], conditions(day), Optional.empty());
    simulation.holdFrom(starts.seconds(firing.clockAheadSeconds(day[CLOCK])));
    return whole(simulation);
  }

  /** A step along a derivative, scores: short, because residuals bend with their run. */
  private static final double NEARBY = 0.01;

  /**
   * How residuals change with scores: by the derivatives of one run, where those are not written
   * out by differences of runs.
   *
   * @param quantities whose scores, the first rows; those of the day's nuisances follow
   * @param moves which quantities are worth a run
   */
  double[][] slopes(
      double[] scores, double[] day, KilnQuantity[] quantities, Predicate<KilnQuantity> moves) {
    return derivatives(scores, day, quantities)
        .orElseGet(() -> differences(scores, day, quantities, moves));
  }

  /**
   * How far such runs lie aside, scores: to either side and twice, because where a switch turns is
   * chance and so is what two runs differ by; what chance adds to a slope passes for something that
   * the log tells. Our estimate, tried on kilns simulated apart.
   */
  private static final double[] DIFFERENCES = {-0.5, -0.2, 0.2, 0.5};

  /** The line of least squares through runs that lie aside. */
  private double[][] differences(
      double[] scores, double[] day, KilnQuantity[] quantities, Predicate<KilnQuantity> moves) {
    int n = quantities.length;
    double squares = Arrays.stream(DIFFERENCES).map(difference -> difference * difference).sum();
    double[][] slopes = new double[n + DAY][size()];
    IntStream.range(0, n + DAY)
        .parallel()
        .filter(i -> i < n ? moves.test(quantities[i]) : i > n && open(i - n))
        .forEach(
            i -> {
              double[] aside = new double[size()];
              for (double difference : DIFFERENCES) {
                double[] tried = scores.clone();
                double[] triedDay = day.clone();
                if (i < n) {
                  tried[quantities[i].ordinal()] += difference;
                } else {
                  triedDay[i - n] += difference;
                }
                residuals(tried, triedDay, aside, 0);
                for (int r = 0; r < aside.length; r++) {
                  slopes[i][r] += difference / squares * aside[r];
                }
              }
            });
    slopes[n] = ofMains(slopes[Arrays.asList(quantities).indexOf(KilnQuantity.POWER)]);
    return slopes;
  }

  /** The same by derivatives alone; nothing where those are not written out. */
  Optional<double[][]> derivatives(double[] scores, double[] day, KilnQuantity[] quantities) {
    FiringConditions today = conditions(day);
    if (!FiringSimulation.mayDifferentiate(kiln, today, starts.all())) {
      return Optional.empty();
    }
    double[] all = scores.clone();
    all[KilnQuantity.MAINS.ordinal()] = day[0];
    FiringSimulation simulation = simulation(scores, day[0], today, Optional.empty());
    simulation.holdFrom(starts.seconds(firing.clockAheadSeconds(day[CLOCK])));
    double more =
        firing.clockAheadSeconds(day[CLOCK] + NEARBY)
            - firing.clockAheadSeconds(day[CLOCK] - NEARBY);
    simulation.differentiate(quantities, all, warmerKelvins(day), more / (2 * NEARBY));
    double crest = crestKelvins(scores);
    Nearby nearby = new Nearby(whole(simulation), day[CLOCK], crest);
    int n = quantities.length;
    double[][] slopes = new double[n + DAY][size()];
    IntStream.range(0, n + DAY)
        .parallel()
        .filter(i -> i < n || i == n + CLOCK || (i == n + START && startOpen()))
        .forEach(
            i -> {
              int place = i < n ? i : i == n + START ? n : n + 1;
              double clock = day[CLOCK] + (i == n + CLOCK ? NEARBY : 0);
              boolean ofCrest = i < n && quantities[i] == KilnQuantity.CREST;
              double moved =
                  ofCrest
                      ? KilnQuantity.CREST.value(KilnQuantity.CREST.score(crest) + NEARBY)
                      : crest;
              nearby.slope(
                  simulation.runNearby(nearby.run, place, NEARBY), clock, moved, slopes[i]);
            });
    slopes[n] = ofMains(slopes[Arrays.asList(quantities).indexOf(KilnQuantity.POWER)]);
    return Optional.of(slopes);
  }

  /** What runs that lie near to one are compared with. */
  private final class Nearby {
    final FiringRun run;
    private final HoldWaits.Fitted fitted;
    private final double[] miss;
    private final double[] residual = new double[size()];

    Nearby(FiringRun run, double clock, double crest) {
      this.run = run;
      this.fitted = waits(run, clock);
      this.miss = missKelvins(run, programClock(run, fitted.seconds(), clock));
      more(run, fitted.seconds(), clock, crest, residual, 0);
    }

    /** How residuals change from the run to one that lies near by. */
    void slope(FiringRun near, double clock, double crest, double[] into) {
      double[] late = fitted.seconds();
      double[] misses = missKelvins(near, programClock(near, late, clock));
      for (int i = 0; i < misses.length; i++) {
        misses[i] = (misses[i] - miss[i]) / NEARBY;
      }
      double[] ofDisplay = new double[misses.length];
      temperature.whiten(misses, ofDisplay, 0);
      double[] later = waits.seconds(waits.follow(fitted, ofDisplay));
      for (int s = 0; s < later.length; s++) {
        later[s] = late[s] + NEARBY * later[s];
      }
      more(near, later, clock, crest, into, 0);
      System.arraycopy(ofDisplay, 0, into, 0, ofDisplay.length);
      for (int r = ofDisplay.length; r < into.length; r++) {
        into[r] = (into[r] - residual[r]) / NEARBY;
      }
    }
  }

  /** What the mains do, where elements do that: they multiply to one power. */
  private static double[] ofMains(double[] ofPower) {
    double share = KilnQuantity.MAINS.logarithmPerScore() / KilnQuantity.POWER.logarithmPerScore();
    return Arrays.stream(ofPower).map(slope -> share * slope).toArray();
  }

  /** By how much a score makes the start warmer, K; zero where it is known. */
  private double warmerKelvins(double[] day) {
    double warmer = WARMER_KELVINS * Math.exp(WARMER_SPREAD * day[START]);
    return startOpen() && warmer < WARMEST_KELVINS ? WARMER_SPREAD * warmer : 0;
  }

  /** The firing as the kiln of these scores would run it on a day. */
  FiringRun run(double[] scores, double mains, FiringConditions day) {
    return whole(simulation(scores, mains, day, Optional.empty()));
  }

  private FiringRun whole(FiringSimulation simulation) {
    simulation.runProgram();
    simulation.coastUntil(lastSecond() + 2 * Spans.USUAL_SECONDS);
    return simulation.run();
  }

  /**
   * The same for as long as there are readings.
   *
   * @param follows how the switch of an on-off kiln goes by the log, if it does
   */
  FiringRun run(double[] scores, double mains, FiringConditions day, Optional<Following> follows) {
    return run(simulation(scores, mains, day, follows));
  }

  /**
   * How a simulated switch goes by the log.
   *
   * @param seen what the display said
   * @param delaySeconds how long after a reading passed an edge it turns, s
   * @param answerSeconds from there to where the display has turned by 3 K, s
   * @param lateSeconds by how much each hold is longer than the schedule says, because the display
   *     swung in and out of reach of the target; negative: shorter, s
   */
  @SuppressWarnings("ArrayRecordComponent") // read, never written
  record Following(
      SeenDisplay seen, double delaySeconds, double answerSeconds, double[] lateSeconds) {}

  private FiringSimulation simulation(
      double[] scores, double mains, FiringConditions day, Optional<Following> follows) {
    double[] all = scores.clone();
    all[KilnQuantity.MAINS.ordinal()] = mains;
    FiringSimulation simulation =
        new FiringSimulation(
            kiln,
            KilnBeliefs.at(kiln, all),
            day,
            loads,
            firing.schedule(),
            follows.isPresent() ? ROUGH : ACCURACY,
            curves);
    follows.ifPresent(
        how ->
            simulation.follow(
                how.seen(), how.delaySeconds(), how.answerSeconds(), how.lateSeconds()));
    return simulation;
  }

  /** When the last reading was taken, s: long after the middle of a last span of an hour. */
  double lastSecond() {
    return firing.readings().lastSecond();
  }

  private FiringRun run(FiringSimulation simulation) {
    double last = lastSecond() + SIMULATED_BEYOND_SECONDS;
    simulation.runProgram(last);
    simulation.coastUntil(last);
    return simulation.run();
  }

  /**
   * A run of the same scores on a day that is the same up to a checkpoint.
   *
   * @param from from where it goes on
   */
  FiringRun resume(
      double[] scores,
      double mains,
      FiringConditions day,
      Optional<Following> follows,
      Checkpoint from) {
    FiringSimulation simulation = simulation(scores, mains, day, follows);
    simulation.resume(from);
    return run(simulation);
  }

  /** Goes on to a time, s: from where, if it is known, else from the start. */
  Optional<Checkpoint> halted(
      double[] scores,
      double mains,
      FiringConditions day,
      Optional<Following> follows,
      Optional<Checkpoint> from,
      double second) {
    FiringSimulation simulation = simulation(scores, mains, day, follows);
    from.ifPresent(simulation::resume);
    simulation.runProgram(second);
    return simulation.checkpoint();
  }

  FiringConditions conditions() {
    return conditions;
  }

  /** Whether the temperature at the start is one of the day's unknowns. */
  boolean startOpen() {
    return conditions.start().isEmpty();
  }

  /** Whether a nuisance makes any difference to this firing. */
  boolean open(int ofDay) {
    return switch (ofDay) {
      case START -> startOpen();
      case PIECE ->
          conditions.pieces().isEmpty()
              && (firing.session().cold()
                  || (firing.session().isEmpty()
                      && SessionPieces.likely(conditions, firing.charge())));
      case OPENING -> !firing.session().told();
      default -> true;
    };
  }

  /** The day of these scores. */
  FiringConditions conditions(double[] day) {
    FiringConditions known = startOpen() ? warmer(kiln, conditions, day[START]) : conditions;
    return opened(firing, known, day[OPENING], day[PIECE]);
  }

  /**
   * The day of a firing with its session's openings and the cold pieces that went in at them.
   *
   * @param day without them
   * @param opening score of the length of those that were read off the display
   * @param piece score of the pieces' heat
   */
  static FiringConditions opened(
      LoggedFiring firing, FiringConditions day, double opening, double piece) {
    DoorSession session = firing.session();
    if (session.isEmpty()) {
      return SessionPieces.on(day, firing.charge(), piece);
    }
    double factor = READ_SHARE * Math.exp(READ_SPREAD * opening);
    List<ColdPieces.Change> changes =
        session.on(day, factor).stream()
            .map(o -> new ColdPieces.Change(o.shutSeconds(), o.goesIn()))
            .sorted(Comparator.comparingDouble(ColdPieces.Change::atSeconds))
            .toList();
    return day.with(
        session.more(day, factor),
        session.cold() && day.pieces().isEmpty()
            ? Optional.of(SessionPieces.of(SessionPieces.joulesPerKelvin(piece), changes))
            : day.pieces().or(() -> Optional.of(ColdPieces.NONE)));
  }

  /**
   * What is told of the session's openings.
   *
   * @param score of the pieces' heat
   * @param fitted its standard deviation by the fit
   */
  Optional<Lesson.Openings> openings(double score, double fitted) {
    DoorSession session = firing.session();
    if (session.isEmpty()) {
      return Optional.empty();
    }
    // What is stated of the pieces need not be told.
    boolean cold = open(PIECE);
    double spread = Math.hypot(fitted, PIECE_REMAINING / SessionPieces.SPREAD);
    Readings readings = firing.readings();
    int row =
        Math.min(readings.size() - 1, readings.firstFrom(session.openings().get(0).atSeconds()));
    double above = (readings.celsius(row) - conditions.room().orElse(kiln.room()).celsius()) / 1000;
    return Optional.of(
        new Lesson.Openings(
            firing.name(),
            session.openings().size(),
            by(session),
            cold,
            cold && spread < Lesson.UNKNOWN_SHARE
                ? Optional.of(
                    new Band(
                        above * SessionPieces.joulesPerKelvin(score - NINE_IN_TEN * spread),
                        above * SessionPieces.joulesPerKelvin(score),
                        above * SessionPieces.joulesPerKelvin(score + NINE_IN_TEN * spread)))
                : Optional.empty()));
  }

  private Lesson.Openings.By by(DoorSession session) {
    if (session.more(conditions, 1).isEmpty()) {
      return Lesson.Openings.By.DAY;
    }
    return session.told() ? Lesson.Openings.By.LOG : Lesson.Openings.By.DISPLAY;
  }

  /** A day that starts above the room by what a score says. */
  static FiringConditions warmer(Kiln kiln, FiringConditions day, double startScore) {
    double warmer =
        Math.min(WARMEST_KELVINS, WARMER_KELVINS * Math.exp(WARMER_SPREAD * startScore));
    double room = day.room().orElse(kiln.room()).celsius();
    return day.starting(Temperature.ofCelsius(room + warmer));
  }

  /** The score of a start at a temperature, °C; zero where it is no warmer than usual. */
  static double startScore(Kiln kiln, FiringConditions day, double celsius) {
    double warmer = celsius - day.room().orElse(kiln.room()).celsius();
    return Math.log(Math.max(1, warmer / WARMER_KELVINS)) / WARMER_SPREAD;
  }

  /** Simulated minus seen, K, one a row of {@link #seen}. */
  double[] missKelvins(FiringRun run, double clock) {
    return missKelvins(run, programClock(run, waits(run, clock).seconds(), clock));
  }

  /** When the simulated program was where the logged one was. */
  private DoubleUnaryOperator programClock(FiringRun run, double[] late, double clock) {
    return waits.clock(run, late, firing.clockAheadSeconds(clock));
  }

  private HoldWaits.Fitted waits(FiringRun run, double clock) {
    return waits.fitted(
        run,
        firing.clockAheadSeconds(clock),
        when -> missKelvins(run, when),
        seen.seconds(),
        temperature);
  }

  private double[] missKelvins(FiringRun run, DoubleUnaryOperator clock) {
    double[] miss = new double[seen.size()];
    FiringRun.Reader reader = run.reader();
    for (int i = 0; i < miss.length; i++) {
      double simulated =
          swings.get(i).isPresent()
              ? swings.get(i).get().of(run, clock)
              : mean(reader, clock.applyAsDouble(seen.second(i)), span[i], MEAN_SECONDS, 1);
      miss[i] = simulated - seen.celsius(i);
    }
    return miss;
  }

  /**
   * Writes independent residuals.
   *
   * @param scores of the kiln
   * @param day scores of its nuisances
   */
  void residuals(double[] scores, double[] day, double[] into, int at) {
    FiringRun run = run(scores, day);
    double clock = day[CLOCK];
    double[] late = waits(run, clock).seconds();
    temperature.whiten(missKelvins(run, programClock(run, late, clock)), into, at);
    more(run, late, clock, crestKelvins(scores), into, at);
  }

  private static double crestKelvins(double[] scores) {
    return KilnQuantity.CREST.value(scores[KilnQuantity.CREST.ordinal()]);
  }

  /**
   * Residuals of everything but the display's means, in their places.
   *
   * @param crest how far the crests that the controller sees stand above the display's line, K
   */
  private void more(
      FiringRun run, double[] late, double clock, double crest, double[] into, int at) {
    DoubleUnaryOperator when = programClock(run, late, clock);
    int next = at + temperature.size();
    power.residuals(run, second -> when.applyAsDouble(second) - second, spans::at, into, next);
    next += power.size();
    if (swing.isPresent()) {
      Swing one = swing.get();
      into[next++] = (one.in(run) - one.kelvins) / (1 + SWING_SHARE * one.kelvins);
    }
    waits.residuals(late, into, next);
    starts.residuals(run, firing.clockAheadSeconds(clock), crest, into, next + waits.size());
  }

  /**
   * Mean of the simulated display about a second, °C.
   *
   * @param span over how long, s
   * @param pointSeconds its points are at most so far apart, s
   * @param fewest and at least so many
   */
  static double mean(
      FiringRun.Reader run, double second, double span, double pointSeconds, int fewest) {
    int points = (int) Math.max(fewest, Math.ceil(span / pointSeconds));
    double sum = 0;
    for (int i = 0; i < points; i++) {
      sum += run.celsiusAt(second + span * ((i + 0.5) / points - 0.5));
    }
    return sum / points;
  }

  /** How far the display of an on-off kiln swings while it holds: standard deviation, K. */
  private record Swing(List<double[]> windows, double kelvins) {

    /** Windows of a few minutes in which the display stays about a target; none: nothing to say. */
    static Optional<Swing> of(LoggedFiring firing) {
      Readings readings = firing.readings();
      List<double[]> windows = new ArrayList<>();
      double sum = 0;
      int i = 0;
      while (i < readings.size()) {
        double end =
            (Math.floor(readings.second(i) / SWING_WINDOW_SECONDS) + 1) * SWING_WINDOW_SECONDS;
        int from = i;
        while (i < readings.size() && readings.second(i) < end) {
          i++;
        }
        double[] seconds = new double[i - from];
        double[] celsius = new double[i - from];
        for (int r = from; r < i; r++) {
          seconds[r - from] = readings.second(r);
          celsius[r - from] = readings.celsius(r);
        }
        double mean = Arrays.stream(celsius).average().orElseThrow();
        if (i - from >= SWING_FEWEST && holds(firing, mean, end)) {
          windows.add(seconds);
          sum += variance(celsius);
        }
      }
      return windows.isEmpty()
          ? Optional.empty()
          : Optional.of(new Swing(windows, Math.sqrt(sum / windows.size())));
    }

    double in(FiringRun run) {
      double sum = 0;
      for (double[] seconds : windows) {
        double mean = run.swingKelvinsAt(seconds[seconds.length / 2]);
        sum += variance(Arrays.stream(seconds).map(run::readingCelsiusAt).toArray()) + mean * mean;
      }
      return Math.sqrt(sum / windows.size());
    }

    private static double variance(double[] celsius) {
      double mean = Arrays.stream(celsius).average().orElseThrow();
      return Arrays.stream(celsius).map(c -> (c - mean) * (c - mean)).average().orElseThrow();
    }

    private static boolean holds(LoggedFiring firing, double mean, double end) {
      if (end < SWING_SETTLED_SECONDS + SWING_WINDOW_SECONDS) {
        return false;
      }
      for (Disturbance event : firing.happenings()) {
        if (event.atSeconds() < end
            && event.atSeconds() + event.lengthSeconds() + 180 > end - SWING_WINDOW_SECONDS) {
          return false;
        }
      }
      return firing.schedule().segments().stream()
          .anyMatch(
              segment ->
                  Math.abs(segment.target().celsius() - mean) < 15
                      && segment.hold().toSeconds() > SWING_SETTLED_SECONDS);
    }
  }
}
