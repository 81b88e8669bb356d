package org.heatwright.learn;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.heatwright.kiln.Control;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.FiringConditions.Disturbance;
import org.heatwright.kiln.FiringRun;
import org.heatwright.kiln.FiringSimulation.Checkpoint;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.KilnQuantity;
import org.heatwright.kiln.SeenDisplay;
import org.heatwright.material.HeatCurves;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * One logged firing, simulated minute by minute with and without a fault while what is believed
 * about the kiln moves along: how far each simulation misses the log, as independent residuals of
 * size one. Immutable; may be used by several threads.
 *
 * <p>The unknowns are scores less those believed, one a quantity, then the day's: mains, the log's
 * clock, the start, how late the program is after each arrival and its end, and, of an on-off kiln,
 * how long after the display its switch turns.
 */
final class SearchedFiring {

  /** Readings are averaged over this long, s. */
  static final double SPAN_SECONDS = 60;

  // What separates a display from the simulation of the kiln fitted to it, minute by minute: our
  // estimates, tried on kilns simulated apart.
  private static final double SLOW_KELVINS = 3;
  private static final double SLOW_SECONDS = 2400;
  private static final double NOISE_KELVINS = 0.6;
  private static final double LAG_SECONDS = 5;
  private static final double SETTLED_SLOW_KELVINS = 1.2;
  private static final double SETTLED_NOISE_KELVINS = 0.45;
  private static final double SWITCHED_SLOW_KELVINS = 6;
  private static final double SWITCHED_SLOW_LAG_SECONDS = 10;
  private static final double SWITCHED_NOISE_KELVINS = 1.2;
  private static final double SWITCHED_LAG_SECONDS = 6;
  private static final double POWER_SLOW_SHARE = 0.03;
  private static final double POWER_NOISE_SHARE = 0.08;

  // Where the controller has kept the display near the setpoint for so long, it is settled. Our
  // estimate.
  private static final double SETTLING_SECONDS = 900;
  private static final double SETTLED_BEYOND_SECONDS = 300;
  private static final double KEPT_KELVINS = 8;

  // Around an event that is known the model is rough: by this factor, from so long before it to so
  // long after its end. Our estimate.
  private static final double KNOWN_FACTOR = 4;
  private static final double KNOWN_BEFORE_SECONDS = 120;
  private static final double KNOWN_AFTER_SECONDS = 900;

  /** At an opening of a session the display is known to this share of its fall. Our estimate. */
  private static final double FALL_SHARE = 0.25;

  // How fast a switched display goes is looked at over so long, in steps that long, s. Our
  // estimate.
  private static final double COURSE_SECONDS = 400;
  private static final double COURSE_STEP_SECONDS = 30;
  private static final double COURSE_QUANTILE = 0.75;

  /** The rate of a display is a median over so many rows to either side. Our estimate. */
  private static final int RATE_ROWS = 4;

  /** The model's first minutes come early or late, and with them all: as the log's clock, s. */
  private static final double CLOCK_SECONDS = 20;

  // How late the program is after an arrival: one standard deviation, s. Our estimate.
  private static final double LATE_SECONDS = 40;
  private static final double SWITCHED_LATE_SECONDS = 90;

  // A switch turns so long after the display passed an edge, and the display turns by 3 K so long
  // after that, s; spreads of the logarithms. Our estimates.
  private static final double DELAY_SECONDS = 8;
  private static final double DELAY_SPREAD = 0.4;
  private static final double ANSWER_SECONDS = 10;
  private static final double ANSWER_SPREAD = 0.6;

  /** What comes after a hold comes late by and by, over this long, s. Our estimate. */
  private static final double LATE_RISE_SECONDS = 240;

  /** It cools at once when the program is over: the end's lateness counts so much sooner, s. */
  private static final double END_SECONDS = 300;

  /** A simulated mean is of points this far apart, s. */
  private static final double POINT_SECONDS = 30;

  private static final int FEWEST_POINTS = 2;

  /** Steps of the sensitivities, in spreads. */
  private static final double DIFFERENCE = 0.15;

  /** A residual beyond this many of its sizes counts linearly. Our estimate. */
  static final Huber HUBER = new Huber(2.5);

  private final LoggedFiring firing;
  private final Evidence evidence;
  private final double[] believed;
  private final KilnQuantity[] quantities;
  private final int unknowns;
  private final RealMatrix precision;
  private final Readings seen;
  private final Discrepancy temperature;
  private final MeteredPower power;
  private final boolean switched;
  private final Optional<SeenDisplay> display;
  private final double[] arrivals;
  private final double lateSeconds;

  /**
   * @param kiln the nameplate, with its own control
   * @param raw what was logged
   * @param believed scores believed without this firing, one a quantity
   * @param covariance of the scores of {@code quantities}
   * @param quantities those that may move
   * @param fitted scores of {@code quantities} less those believed, and the day's, as fitted
   */
  SearchedFiring(
      Kiln kiln,
      LoggedFiring raw,
      HeatCurves curves,
      double[] believed,
      RealMatrix covariance,
      KilnQuantity[] quantities,
      double[] fitted) {
    this.firing = raw.with(raw.slipless());
    this.switched = kiln.control().kind() == Control.Kind.ON_OFF;
    Readings all = firing.readings();
    this.display =
        switched ? Optional.of(new SeenDisplay(all.seconds(), all.celsius())) : Optional.empty();
    this.evidence = Evidence.byItself(kiln, firing, curves);
    this.believed = believed.clone();
    this.quantities = quantities.clone();
    int segments = firing.schedule().segments().size();
    this.unknowns = quantities.length + Evidence.DAY + segments + 1 + (switched ? 2 : 0);
    this.precision = precision(covariance, unknowns);
    this.seen = firing.readings().averaged(second -> SPAN_SECONDS, firing.session()::touches);
    this.lateSeconds = switched ? SWITCHED_LATE_SECONDS : LATE_SECONDS;
    double[] moved = Arrays.copyOf(fitted, unknowns);
    FiringRun first = run(moved, Optional.empty());
    this.arrivals = arrivals(first);
    int n = seen.size();
    double[] noise = new double[n];
    double[] slow = new double[n];
    for (int i = 0; i < n; i++) {
      double second = seen.second(i);
      if (switched) {
        double course = course(second);
        slow[i] = Math.hypot(SWITCHED_SLOW_KELVINS, SWITCHED_SLOW_LAG_SECONDS * course);
        noise[i] = Math.hypot(SWITCHED_NOISE_KELVINS, SWITCHED_LAG_SECONDS * course);
      } else if (settled(first, second)) {
        slow[i] = SETTLED_SLOW_KELVINS;
        noise[i] = SETTLED_NOISE_KELVINS;
      } else {
        slow[i] = SLOW_KELVINS;
        noise[i] = Math.hypot(NOISE_KELVINS, LAG_SECONDS * rate(i));
      }
      noise[i] =
          Math.hypot(noise[i] * known(second), FALL_SHARE * firing.session().fallKelvins(second));
    }
    this.temperature = new Discrepancy(seen.seconds(), slow, SLOW_SECONDS, noise);
    this.power =
        new MeteredPower(
            seen,
            kiln.element().suppliedWatts(),
            POWER_SLOW_SHARE,
            SLOW_SECONDS,
            row -> POWER_NOISE_SHARE);
  }

  private static RealMatrix precision(RealMatrix covariance, int unknowns) {
    RealMatrix precision = new Array2DRowRealMatrix(unknowns, unknowns);
    RealMatrix even = covariance.add(covariance.transpose()).scalarMultiply(0.5);
    RealMatrix inverse = new CholeskyDecomposition(even).getSolver().getInverse();
    precision.setSubMatrix(inverse.add(inverse.transpose()).scalarMultiply(0.5).getData(), 0, 0);
    for (int i = covariance.getRowDimension(); i < unknowns; i++) {
      precision.setEntry(i, i, 1);
    }
    return precision;
  }

  /** Whether the controller has long kept the display at the setpoint. */
  private static boolean settled(FiringRun run, double second) {
    boolean kept = second > SETTLING_SECONDS;
    for (double t = second - SETTLING_SECONDS; kept && t <= second + SETTLED_BEYOND_SECONDS; ) {
      kept = Math.abs(run.readingCelsiusAt(t) - run.setpointCelsiusAt(t)) < KEPT_KELVINS;
      t += POINT_SECONDS;
    }
    return kept;
  }

  /** When each segment's target is reached, and the program's end, s. */
  private static double[] arrivals(FiringRun run) {
    int n = run.segments().size();
    double[] all = new double[n + 1];
    for (int i = 0; i < n; i++) {
      all[i] = run.segments().get(i).reachedSeconds();
    }
    all[n] = run.endSeconds();
    return all;
  }

  /** How much rougher the model is at a time. */
  private double known(double second) {
    for (Disturbance event : firing.conditions().disturbances()) {
      if (event.kind() == Disturbance.Kind.DOOR_OPEN
          && firing.session().touches(event.atSeconds())) {
        continue; // known better
      }
      if (second > event.atSeconds() - KNOWN_BEFORE_SECONDS
          && second < event.atSeconds() + event.lengthSeconds() + KNOWN_AFTER_SECONDS) {
        return KNOWN_FACTOR;
      }
    }
    return 1;
  }

  /**
   * How fast the display of a switched kiln goes about a time, up or down, K/s: when exactly a
   * switch turns is known to some seconds only. A quarter of the steps may be faster: the jump of a
   * fault must not count as the kiln's own way.
   */
  private double course(double second) {
    Readings all = firing.readings();
    List<Double> rates = new ArrayList<>();
    int last = all.firstFrom(second - COURSE_SECONDS);
    for (int i = last + 1; i < all.size() && all.second(i) <= second + COURSE_SECONDS; i++) {
      double between = all.second(i) - all.second(last);
      if (between >= COURSE_STEP_SECONDS) {
        rates.add(Math.abs(all.celsius(i) - all.celsius(last)) / between);
        last = i;
      }
    }
    Collections.sort(rates);
    return rates.isEmpty() ? 0 : rates.get((int) (COURSE_QUANTILE * (rates.size() - 1)));
  }

  /** The usual rate of the display about a row, K/s: a jump does not count. */
  private double rate(int row) {
    int from = Math.max(0, row - RATE_ROWS);
    int to = Math.min(seen.size() - 1, row + RATE_ROWS);
    double[] rates = IntStream.rangeClosed(from, to).mapToDouble(seen::rate).sorted().toArray();
    return rates[rates.length / 2];
  }

  // ------------------------------------------------------------------ what it is made of

  /** The readings, without slips. */
  Readings readings() {
    return firing.readings();
  }

  /** The readings' means. */
  Readings seen() {
    return seen;
  }

  /** Whether the kiln is an on-off kiln, whose switch goes by the log. */
  boolean switched() {
    return switched;
  }

  /** Whether the door was opened for a session's pieces. */
  boolean opened() {
    return !firing.session().isEmpty();
  }

  /** How many unknowns there are without a fault. */
  int unknowns() {
    return unknowns;
  }

  RealMatrix precision() {
    return precision;
  }

  /** The residuals of the display come first. */
  Discrepancy temperature() {
    return temperature;
  }

  /** Those of the power follow. */
  MeteredPower power() {
    return power;
  }

  /** How many residuals there are. */
  int rows() {
    return temperature.size() + power.size();
  }

  // ------------------------------------------------------------------ simulations

  private double[] scores(double[] moved) {
    double[] scores = believed.clone();
    for (int i = 0; i < quantities.length; i++) {
      scores[quantities[i].ordinal()] += moved[i];
    }
    return scores;
  }

  private double mains(double[] moved) {
    return moved[quantities.length];
  }

  private FiringConditions conditions(double[] moved, Optional<Disturbance> fault) {
    int n = quantities.length;
    FiringConditions day = evidence.conditions(Arrays.copyOfRange(moved, n, n + Evidence.DAY));
    return fault.map(day::with).orElse(day);
  }

  private FiringRun run(double[] moved, Optional<Disturbance> fault) {
    return evidence.run(scores(moved), mains(moved), conditions(moved, fault), following(moved));
  }

  private Optional<Evidence.Following> following(double[] moved) {
    return display.map(seen -> following(seen, moved));
  }

  private Evidence.Following following(SeenDisplay seen, double[] moved) {
    double[] late = new double[firing.schedule().segments().size()];
    for (int i = 0; i < late.length; i++) {
      late[i] = lateSeconds * moved[quantities.length + Evidence.DAY + i];
    }
    double delay = DELAY_SECONDS * Math.exp(DELAY_SPREAD * moved[unknowns - 2]);
    double answer = ANSWER_SECONDS * Math.exp(ANSWER_SPREAD * moved[unknowns - 1]);
    return new Evidence.Following(seen, delay, answer, late);
  }

  /** The unknowns that tell when the switch turned, the most telling first. */
  int[] switching() {
    return switched ? new int[] {unknowns - 1, unknowns - 2, unknowns - 1} : new int[0];
  }

  double[] residuals(double[] moved, Optional<Disturbance> fault) {
    return residuals(moved, run(moved, fault));
  }

  private double[] residuals(double[] moved, FiringRun run) {
    double[] all = new double[rows()];
    temperature.whiten(missKelvins(moved, run), all, 0);
    power.residuals(
        run, second -> shift(moved, second), second -> SPAN_SECONDS, all, temperature.size());
    return all;
  }

  /** Simulated minus seen, K. */
  private double[] missKelvins(double[] moved, FiringRun run) {
    double[] miss = new double[seen.size()];
    FiringRun.Reader reader = run.reader();
    for (int i = 0; i < miss.length; i++) {
      double second = seen.second(i) + shift(moved, seen.second(i));
      miss[i] =
          Evidence.mean(reader, second, SPAN_SECONDS, POINT_SECONDS, FEWEST_POINTS)
              - seen.celsius(i);
    }
    return miss;
  }

  /** By how much the display is missed, root mean square, K. */
  double rmsKelvins(double[] moved, Disturbance fault) {
    double[] miss = missKelvins(moved, run(moved, Optional.of(fault)));
    return Math.sqrt(Arrays.stream(miss).map(m -> m * m).sum() / miss.length);
  }

  /** The size of a score of the clock in a search, s. */
  private static double clockSeconds(LoggedFiring firing) {
    return Math.max(CLOCK_SECONDS, firing.clockSeconds());
  }

  /** A day as a fit found it, as a search counts it. */
  static double[] day(LoggedFiring firing, double[] fitted) {
    double[] day = fitted.clone();
    day[Evidence.CLOCK] = firing.clockAheadSeconds(fitted[Evidence.CLOCK]) / clockSeconds(firing);
    return day;
  }

  /** By how much the simulation's clock is ahead of the log's, s. */
  private double shift(double[] moved, double second) {
    int n = quantities.length;
    double sum = clockSeconds(firing) * moved[n + 1];
    // Where the log tells the switch, the simulated program itself comes late.
    for (int i = switched ? arrivals.length - 1 : 0; i < arrivals.length; i++) {
      double since = second - arrivals[i] + (i == arrivals.length - 1 ? END_SECONDS : 0);
      if (since > 0) {
        sum -= lateSeconds * Math.min(1, since / LATE_RISE_SECONDS) * moved[n + Evidence.DAY + i];
      }
    }
    return sum;
  }

  /**
   * What a fit costs, chi-squared.
   *
   * @param fault its scores; the beginning's is free
   */
  double cost(double[] moved, double[] fault, double[] residual) {
    RealVector vector = new ArrayRealVector(moved);
    double sum = vector.dotProduct(precision.operate(vector));
    for (int i = 1; i < fault.length; i++) {
      sum += fault[i] * fault[i];
    }
    return sum + HUBER.cost(residual);
  }

  /** Sensitivities, a row an unknown of the kiln or the day. */
  double[][] jacobian(double[] moved, double[] residual, Optional<Disturbance> fault) {
    int n = quantities.length;
    FiringRun same = run(moved, fault);
    return IntStream.range(0, unknowns)
        .parallel()
        .mapToObj(
            i -> {
              double[] tried = moved.clone();
              tried[i] += DIFFERENCE;
              int ofDay = i - n;
              boolean simulated =
                  ofDay <= 0
                      || (ofDay >= Evidence.START && ofDay < Evidence.DAY && evidence.open(ofDay))
                      || (switched && ofDay >= Evidence.DAY);
              double[] row = residuals(tried, simulated ? run(tried, fault) : same);
              for (int r = 0; r < row.length; r++) {
                row[r] = (row[r] - residual[r]) / DIFFERENCE;
              }
              return row;
            })
        .toArray(double[][]::new);
  }

  /** Stretches without readings where a logger had been regular: beginning and length, s. */
  List<double[]> gaps() {
    List<double[]> gaps = new ArrayList<>();
    Readings readings = firing.readings();
    double step = readings.usualStepSeconds();
    double least = SeenDisplay.shortestGapSeconds(step);
    for (int i = 1; i < readings.size(); i++) {
      double length = readings.second(i) - readings.second(i - 1);
      if (length > least) {
        gaps.add(new double[] {readings.second(i - 1) + step / 2, length - step});
      }
    }
    return gaps;
  }

  /**
   * Runs of one kiln with faults that begin at different times, each of which goes on from where it
   * parts from the run without one.
   */
  final class Fork {

    /** A run without a fault halts so long before one begins, s. */
    private static final double HALT_SECONDS = 1;

    private final double[] moved;
    private final NavigableMap<Double, Optional<Checkpoint>> halts = new TreeMap<>();
    private final double[] without;

    /**
     * @param moved the kiln
     * @param onsets when faults may begin, s, rising
     */
    Fork(double[] moved, double[] onsets) {
      this.moved = moved;
      this.without = SearchedFiring.this.residuals(moved, Optional.empty());
      Optional<Checkpoint> last = Optional.empty();
      for (double onset : onsets) {
        double halt = halt(onset);
        if (halt > 0 && !halts.containsKey(halt)) {
          last =
              evidence.halted(
                  scores(moved),
                  mains(moved),
                  conditions(moved, Optional.empty()),
                  following(moved),
                  last,
                  halt);
          halts.put(halt, last);
          if (last.isEmpty()) {
            break;
          }
        }
      }
    }

    /** Before a time, and not while the door is open. */
    private double halt(double onset) {
      double halt = onset - HALT_SECONDS;
      List<Disturbance> known = conditions(moved, Optional.empty()).disturbances();
      for (int i = known.size() - 1; i >= 0; i--) {
        Disturbance event = known.get(i);
        if (halt > event.atSeconds() - HALT_SECONDS
            && halt < event.atSeconds() + event.lengthSeconds() + HALT_SECONDS) {
          halt = event.atSeconds() - HALT_SECONDS;
        }
      }
      return halt;
    }

    /** Residuals without a fault; not to be written to. */
    double[] without() {
      return without;
    }

    double[] residuals(Disturbance fault) {
      var halt = halts.lowerEntry(fault.atSeconds());
      if (halt == null || halt.getValue().isEmpty()) {
        return SearchedFiring.this.residuals(moved, Optional.of(fault));
      }
      return SearchedFiring.this.residuals(
          moved,
          evidence.resume(
              scores(moved),
              mains(moved),
              conditions(moved, Optional.of(fault)),
              following(moved),
              halt.getValue().get()));
    }
  }
}
