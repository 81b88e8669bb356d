package org.heatwright.learn;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.heatwright.kiln.Control;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.FiringConditions.Disturbance;
import org.heatwright.kiln.FiringConditions.Disturbance.Kind;
import org.heatwright.kiln.FiringRun;
import org.heatwright.kiln.FiringSimulation.Checkpoint;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.KilnBeliefs;
import org.heatwright.kiln.KilnQuantity;
import org.heatwright.material.HeatCurves;
import org.heatwright.units.TemperatureChange;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * Looks in one logged firing for something that went wrong: a generalised likelihood ratio over
 * kinds, beginnings, lengths and sizes, each simulated, while what is believed about the kiln moves
 * along (memory: Willsky and Jones 1976, a generalized likelihood ratio approach to the detection
 * of jumps; Basseville and Nikiforov, Detection of Abrupt Changes, 1993).
 *
 * <p>Beginnings are chosen first by plain shapes that any fault leaves, then each kind is simulated
 * there, and the best are fitted together with the kiln.
 */
final class AnomalySearch {

  /** Readings are averaged over this long, s. */
  private static final double SPAN_SECONDS = 60;

  // What separates a display from the simulation of the kiln fitted to it, minute by minute.
  private static final double SLOW_KELVINS = 4;
  private static final double SLOW_SECONDS = 2400;
  private static final double NOISE_KELVINS = 0.6;
  private static final double SETTLED_SLOW_KELVINS = 1.2;
  private static final double SETTLED_NOISE_KELVINS = 0.45;
  private static final double SWITCHED_SLOW_KELVINS = 6;
  private static final double SWITCHED_LAG_SECONDS = 6;
  private static final double SWITCHED_SLOW_LAG_SECONDS = 10;
  private static final double SWITCHED_NOISE_KELVINS = 1.2;
  private static final double LAG_SECONDS = 5;
  private static final double POWER_SLOW_SHARE = 0.03;
  private static final double POWER_NOISE_SHARE = 0.08;

  /** A residual beyond this many of its sizes counts linearly. */
  private static final double HUBER = 2.5;

  private static final double DIFFERENCE = 0.15;

  /** A plain shape must gain this much (twice the logarithm of the likelihood ratio). */
  private static final double SUSPICIOUS = 14;

  private static final double SUSPICIOUS_SWITCHED = 20;

  /** So must a fault, to be told. */
  private static final double CERTAIN = 40;

  /** The same of an on-off kiln, whose switch is known to some seconds only. */
  private static final double CERTAIN_SWITCHED = 70;

  /** A kind whose gain is this near to the best explains the display as well. */
  private static final double ALIKE = 12;

  /** What a gap of the log that fits a mains cut is worth. Our estimate. */
  private static final double GAP_GAIN = 20;

  private static final double APART_SECONDS = 720;
  private static final double LATE_SECONDS = 40;
  private static final double SWITCHED_LATE_SECONDS = 90;

  private static final int MOST_ROUNDS = 6;
  private static final int MOST_PLACES = 4;
  private static final int MOST_FITTED = 7;
  private static final int MOST_FITTED_SWITCHED = 4;
  private static final int MOST_PLACES_SWITCHED = 2;
  private static final int MOST_ROUNDS_SWITCHED = 6;

  /** The same as a share of the best's gain: a model's own errors grow with the fault's mark. */
  private static final double ALIKE_SHARE = 0.2;

  private static final double SHORTEST_SECONDS = 90;

  private final Kiln kiln;
  private final LoggedFiring firing;
  private final Evidence evidence;
  private final double[] believed;
  private final KilnQuantity[] quantities;
  private final int unknowns;
  private final RealMatrix precision;
  private final Readings seen;
  private final double[] spans;
  private final boolean[] settled;
  private final Discrepancy temperature;
  private final int[] powerRows;
  private final Discrepancy power;
  private final double usualStep;
  private Fit base = new Fit(NONE, NONE, NONE, Double.POSITIVE_INFINITY);
  private double[][] sensitivities = {};
  private final boolean switched;
  private final double[] arrivals;
  private final double lateSeconds;

  /**
   * @param kiln the nameplate, with its own control
   * @param raw what was logged
   * @param believed scores believed without this firing, one a quantity
   * @param covariance of the scores of {@code quantities}
   * @param quantities those that may move
   */
  AnomalySearch(
      Kiln kiln,
      LoggedFiring raw,
      HeatCurves curves,
      double[] believed,
      RealMatrix covariance,
      KilnQuantity[] quantities,
      double[] fitted) {
    LoggedFiring firing = raw.with(raw.readings().withoutSlips());
    this.switched = kiln.control().kind() == Control.Kind.ON_OFF;
    this.kiln = kiln;
    this.firing = firing;
    this.evidence = new Evidence(kiln, firing, curves);
    this.believed = believed.clone();
    this.quantities = quantities.clone();
    int segments = firing.schedule().segments().size();
    // Of the day: mains, clock, how late the program is after each arrival and its end.
    this.unknowns = quantities.length + Evidence.DAY + segments + 1;
    this.precision = new Array2DRowRealMatrix(unknowns, unknowns);
    RealMatrix even = covariance.add(covariance.transpose()).scalarMultiply(0.5);
    RealMatrix inverse = new CholeskyDecomposition(even).getSolver().getInverse();
    precision.setSubMatrix(inverse.add(inverse.transpose()).scalarMultiply(0.5).getData(), 0, 0);
    for (int i = quantities.length; i < unknowns; i++) {
      precision.setEntry(i, i, 1);
    }
    Readings readings = firing.readings();
    this.usualStep = usualStep(readings);
    double span = switched ? SWITCHED_SPAN_SECONDS : SPAN_SECONDS;
    this.seen = readings.averaged(span);
    int n = seen.size();
    double[] seconds = new double[n];
    this.spans = new double[n];
    for (int i = 0; i < n; i++) {
      seconds[i] = seen.second(i);
      spans[i] = span;
    }
    double[] moved = Arrays.copyOf(fitted, unknowns);
    FiringRun first = run(moved, conditions(moved));
    this.arrivals = arrivals(first);
    this.settled = settled(first);
    this.lateSeconds = switched ? SWITCHED_LATE_SECONDS : LATE_SECONDS;
    double[] noise = new double[n];
    double[] slow = new double[n];
    for (int i = 0; i < n; i++) {
      if (switched) {
        double course = course(seconds[i]);
        slow[i] = Math.hypot(SWITCHED_SLOW_KELVINS, SWITCHED_SLOW_LAG_SECONDS * course);
        noise[i] =
            Math.hypot(SWITCHED_NOISE_KELVINS, SWITCHED_LAG_SECONDS * course) * known(seconds[i]);
        continue;
      }
      slow[i] = settled[i] ? SETTLED_SLOW_KELVINS : SLOW_KELVINS;
      noise[i] =
          (settled[i] ? SETTLED_NOISE_KELVINS : Math.hypot(NOISE_KELVINS, LAG_SECONDS * rate(i)))
              * known(seconds[i]);
    }
    this.temperature = new Discrepancy(seconds, slow, SLOW_SECONDS, noise);
    this.powerRows = IntStream.range(0, n).filter(i -> !Double.isNaN(seen.watts(i))).toArray();
    double[] powerNoise = new double[powerRows.length];
    Arrays.fill(powerNoise, POWER_NOISE_SHARE);
    this.power =
        new Discrepancy(
            Arrays.stream(powerRows).mapToDouble(i -> seconds[i]).toArray(),
            POWER_SLOW_SHARE,
            SLOW_SECONDS,
            powerNoise);
  }

  private static final double SWITCHED_SPAN_SECONDS = 60;

  /** A switch in the mean: a band of ten kelvins. */
  private static final double SMOOTH_GAIN = 0.1;

  private static final double SMOOTH_SECONDS = 400;

  /** When exactly a switch turns is chance, and slow to simulate: the mean of its swing does. */
  static Kiln smoothed(Kiln kiln) {
    Control control = kiln.control();
    if (control.kind() != Control.Kind.ON_OFF) {
      return kiln;
    }
    return kiln.withControl(
        new Control(
            Control.Kind.PID,
            0,
            TemperatureChange.ofKelvins(0),
            control.holdWaitsWithin(),
            control.afterPowerCut()));
  }

  /** What is believed, for the {@link #smoothed} kiln. */
  static KilnBeliefs smoothed(Kiln kiln, KilnBeliefs beliefs) {
    if (kiln.control().kind() != Control.Kind.ON_OFF) {
      return beliefs;
    }
    KilnQuantity[] all = KilnQuantity.values();
    double[] mean = new double[all.length];
    double[][] covariance = new double[all.length][all.length];
    for (KilnQuantity a : all) {
      mean[a.ordinal()] =
          switch (a) {
            case GAIN -> a.score(SMOOTH_GAIN);
            case INTEGRAL -> a.score(SMOOTH_SECONDS);
            default -> beliefs.score(a);
          };
      for (KilnQuantity b : all) {
        covariance[a.ordinal()][b.ordinal()] = beliefs.covarianceFactor(a, b);
      }
    }
    return KilnBeliefs.of(mean, covariance);
  }

  /** Readings further apart than this on the whole tell too little, s. */
  private static final double SPARSE_SECONDS = 150;

  private static final int FEWEST_READINGS = 20;

  /** A cost a row above which a log is not explained, and one below which it is well explained. */
  private static final double UNEXPLAINED = 2.5;

  private static final double UNEXPLAINED_SWITCHED = 6;

  private static final double EXPLAINED = 1.2;

  /** How far beyond a suspicious place a log is looked at before all of it is, s. */
  private static final double[] HORIZON_SECONDS = {2400, 6000};

  private static final double[] HORIZON_SECONDS_SWITCHED = {2400};

  /** Whether a log is dense enough to be searched. */
  static boolean searchable(Readings readings) {
    return readings.size() >= FEWEST_READINGS && usualStep(readings) <= SPARSE_SECONDS;
  }

  /** A log that a fault leaves missed by more than this was another schedule or another kiln, K. */
  private static final double UNEXPLAINED_KELVINS = 30;

  /** The same where the switch goes by the log: no controller puts the simulation right. */
  private static final double UNEXPLAINED_SWITCHED_KELVINS = 100;

  /** What was wrong this soon cannot be told from another kiln or another schedule, s. */
  private static final double SOONEST_SECONDS = 540;

  /** A place may be so much later or sooner than the beginning, s. */
  private static final double SOONER_SECONDS = 120;

  /** Whether the whole log is explained with the fault, if there is one. */
  private boolean explains(Result found) {
    if (found.anomaly().isEmpty()) {
      return false;
    }
    Anomaly fault = found.anomaly().get();
    FiringRun run = run(found.moved(), conditions(found.moved(), Optional.of(fault.likeliest())));
    double sum = 0;
    for (int i = 0; i < seen.size(); i++) {
      double second = seen.second(i) + shift(found.moved(), seen.second(i));
      double miss = mean(run, second, spans[i]) - seen.celsius(i);
      sum += miss * miss;
    }
    return Math.sqrt(sum / seen.size())
            <= (switched ? UNEXPLAINED_SWITCHED_KELVINS : UNEXPLAINED_KELVINS)
        && (!switched || found.left() < UNEXPLAINED_SWITCHED)
        && fault.beganSeconds() >= SOONEST_SECONDS;
  }

  /**
   * What went wrong, if anything did. Where the whole log does not tell, it is searched as it grew,
   * because a fault early on spoils the fit of all that follows.
   *
   * @param believed scores believed without this firing, one a quantity
   * @param covariance of those of {@code quantities}
   * @param fitted scores of {@code quantities} less those believed, and the day's, as fitted
   */
  static Optional<Anomaly> search(
      Kiln kiln,
      LoggedFiring firing,
      double[] believed,
      RealMatrix covariance,
      KilnQuantity[] quantities,
      double[] fitted) {
    Readings readings = firing.readings();
    HeatCurves curves = new HeatCurves();
    if (!searchable(readings)) {
      return Optional.empty();
    }
    AnomalySearch all =
        new AnomalySearch(kiln, firing, curves, believed, covariance, quantities, fitted);
    Result whole = all.search(fitted);
    boolean explained = all.explains(whole);
    if (whole.places().length == 0 || (explained && whole.left() < EXPLAINED)) {
      return explained ? whole.anomaly() : Optional.empty();
    }
    Result best = whole;
    for (double place : whole.places()) {
      for (double horizon : all.switched ? HORIZON_SECONDS_SWITCHED : HORIZON_SECONDS) {
        Readings sofar = readings.before(place + horizon);
        if (sofar.size() < FEWEST_READINGS || sofar.size() == readings.size()) {
          continue;
        }
        Result early =
            new AnomalySearch(
                    kiln, firing.with(sofar), curves, believed, covariance, quantities, fitted)
                .search(fitted);
        if (early.anomaly().isEmpty()
            || early.left() >= (all.switched ? UNEXPLAINED_SWITCHED : UNEXPLAINED)) {
          continue;
        }
        Result refined = all.refined(early);
        if (all.explains(refined)) {
          if (!explained || refined.left() < best.left()) {
            return refined.anomaly();
          }
        } else if (!explained && all.explains(early)) {
          return early.anomaly();
        }
      }
    }
    return explained ? best.anomaly() : Optional.empty();
  }

  /** After a fault is over the kiln is not at once where the simulation has it, s. */
  private static final double RECOVERY_SECONDS = 1200;

  /**
   * The firing with a fault among its conditions, and without the readings that it touched: those
   * to the end where it stays or where it is not certain what it was.
   */
  static LoggedFiring without(LoggedFiring firing, Anomaly fault) {
    Disturbance likeliest = fault.likeliest();
    double recovered =
        fault.alternatives().isEmpty() && fault.lengthSeconds().isPresent()
            ? likeliest.atSeconds() + likeliest.lengthSeconds() + RECOVERY_SECONDS
            : Double.POSITIVE_INFINITY;
    return firing
        .with(firing.conditions().with(likeliest))
        .with(firing.readings().without(likeliest.atSeconds() - SPAN_SECONDS, recovered));
  }

  private static double usualStep(Readings readings) {
    double[] steps = new double[Math.max(1, readings.size() - 1)];
    for (int i = 1; i < readings.size(); i++) {
      steps[i - 1] = readings.second(i) - readings.second(i - 1);
    }
    Arrays.sort(steps);
    return steps[steps.length / 2];
  }

  /** Rows where the controller has long kept the display at the setpoint. */
  private boolean[] settled(FiringRun run) {
    boolean[] all = new boolean[seen.size()];
    for (int i = 0; i < all.length; i++) {
      double second = seen.second(i);
      boolean kept = second > SETTLING_SECONDS;
      for (double t = second - SETTLING_SECONDS; kept && t <= second + 300; t += 30) {
        kept = Math.abs(run.readingCelsiusAt(t) - run.setpointCelsiusAt(t)) < KEPT_KELVINS;
      }
      all[i] = kept;
    }
    return all;
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

  private static final double SETTLING_SECONDS = 900;
  private static final double KEPT_KELVINS = 8;

  /** Around an event that is known the model is rough. */
  private double known(double second) {
    for (Disturbance event : firing.conditions().disturbances()) {
      if (second > event.atSeconds() - 120
          && second < event.atSeconds() + event.lengthSeconds() + 900) {
        return 4;
      }
    }
    return 1;
  }

  private double rate(int row) {
    int before = Math.max(0, row - 1);
    int after = Math.min(seen.size() - 1, row + 1);
    double between = seen.second(after) - seen.second(before);
    return between > 0 ? Math.abs(seen.celsius(after) - seen.celsius(before)) / between : 0;
  }

  /**
   * How fast the display of a switched kiln goes at most about a time, up or down, K/s: when
   * exactly a switch turns is known to some seconds only.
   */
  private double course(double second) {
    Readings all = firing.readings();
    double most = 0;
    int last = all.firstFrom(second - COURSE_SECONDS);
    for (int i = last + 1; i < all.size() && all.second(i) <= second + COURSE_SECONDS; i++) {
      double between = all.second(i) - all.second(last);
      if (between >= COURSE_STEP_SECONDS) {
        most = Math.max(most, Math.abs(all.celsius(i) - all.celsius(last)) / between);
        last = i;
      }
    }
    return most;
  }

  private static final double COURSE_SECONDS = 400;
  private static final double COURSE_STEP_SECONDS = 30;

  private int rows() {
    return temperature.size() + power.size();
  }

  /** The kiln's unknowns and, where there is one, the fault's: scores, in spreads. */
  private record Point(double[] moved, double[] fault) {}

  /** What a kind of fault may be. */
  private record Shape(
      Kind kind, boolean ends, double usualSeconds, double lengthSpread, double usualSize) {
    Shape(Kind kind, boolean ends, double usualSeconds, double lengthSpread) {
      this(kind, ends, usualSeconds, lengthSpread, new Disturbance(kind, 0, 1).sizeShare());
    }

    double sizeSpread() {
      return switch (kind) {
        case ELEMENT_OPEN -> 0.15;
        case TIP_OUT -> 0.5;
        case DOOR_AJAR -> 0.7;
        case DOOR_OPEN, MAINS_OFF, RELAY_ON, RELAY_OFF -> 0;
      };
    }

    int unknowns() {
      return 1 + (ends ? 1 : 0) + (sizeSpread() > 0 ? 1 : 0);
    }

    /**
     * @param onset the first guess, s
     * @param fault scores: beginning in minutes, length, size
     */
    Disturbance at(double onset, double[] fault) {
      double length =
          ends ? usualSeconds * Math.exp(lengthSpread * fault[1]) : Double.POSITIVE_INFINITY;
      double size =
          sizeSpread() > 0 ? usualSize * Math.exp(sizeSpread() * fault[ends ? 2 : 1]) : usualSize;
      return new Disturbance(
          kind,
          Math.max(0, onset + 60 * fault[0]),
          Math.max(30, length),
          Math.min(kind == Kind.ELEMENT_OPEN ? 0.7 : 1, size));
    }
  }

  /** A controller that goes on as if nothing had been. */
  private static final double REMEMBERED = 0.01;

  private List<Shape> shapes() {
    List<Shape> all = new ArrayList<>();
    all.add(new Shape(Kind.ELEMENT_OPEN, false, 0, 0));
    all.add(new Shape(Kind.TIP_OUT, false, 0, 0));
    all.add(new Shape(Kind.RELAY_OFF, true, 300, 0.6));
    all.add(new Shape(Kind.RELAY_ON, true, 300, 0.6));
    all.add(new Shape(Kind.DOOR_AJAR, false, 0, 0));
    all.add(new Shape(Kind.MAINS_OFF, true, 600, 0.9));
    if (!switched) {
      all.add(new Shape(Kind.MAINS_OFF, true, 600, 0.9, REMEMBERED));
    }
    return all;
  }

  private double[] scores(double[] moved) {
    double[] scores = believed.clone();
    for (int i = 0; i < quantities.length; i++) {
      scores[quantities[i].ordinal()] += moved[i];
    }
    return scores;
  }

  private double[] residuals(double[] moved, Optional<Disturbance> fault) {
    return residuals(moved, run(moved, conditions(moved, fault)));
  }

  private FiringConditions conditions(double[] moved) {
    return evidence.conditions(moved[quantities.length + Evidence.START]);
  }

  private FiringConditions conditions(double[] moved, Optional<Disturbance> fault) {
    FiringConditions day = conditions(moved);
    return fault.map(day::with).orElse(day);
  }

  private FiringRun run(double[] moved, FiringConditions conditions) {
    return evidence.run(scores(moved), moved[quantities.length], conditions, following(moved));
  }

  private Evidence.Following following(double[] moved) {
    if (!switched) {
      return Evidence.Following.NONE;
    }
    double[] late = new double[firing.schedule().segments().size()];
    for (int i = 0; i < late.length; i++) {
      late[i] = lateSeconds * moved[quantities.length + Evidence.DAY + i];
    }
    return new Evidence.Following(true, late);
  }

  private double[] residuals(double[] moved, FiringRun run) {
    double[] all = new double[rows()];
    double[] miss = new double[seen.size()];
    for (int i = 0; i < miss.length; i++) {
      double second = seen.second(i);
      miss[i] = mean(run, second + shift(moved, second), spans[i]) - seen.celsius(i);
    }
    temperature.whiten(miss, all, 0);
    if (powerRows.length > 0) {
      double rated = kiln.element().suppliedWatts();
      double[] short_ = new double[powerRows.length];
      for (int i = 0; i < short_.length; i++) {
        int row = powerRows[i];
        double second = seen.second(row) + shift(moved, seen.second(row));
        double from = Math.max(0, second - spans[row] / 2);
        double to = Math.max(from + 1, second + spans[row] / 2);
        double watts = (run.joulesAt(to) - run.joulesAt(from)) / (to - from);
        short_[i] = (watts - seen.watts(row)) / rated;
      }
      power.whiten(short_, all, temperature.size());
    }
    return all;
  }

  /** By how much the simulation's clock is ahead of the log's, s. */
  private double shift(double[] moved, double second) {
    int n = quantities.length;
    double sum = firing.clockSeconds() * moved[n + 1];
    // Where the log tells the switch, the simulated program itself comes late.
    for (int i = switched ? arrivals.length - 1 : 0; i < arrivals.length; i++) {
      // What comes after a hold comes late; it cools at once when the program is over.
      double since = second - arrivals[i] + (i == arrivals.length - 1 ? END_SECONDS : 0);
      if (since > 0) {
        sum -= lateSeconds * Math.min(1, since / LATE_RISE_SECONDS) * moved[n + Evidence.DAY + i];
      }
    }
    return sum;
  }

  private static final double LATE_RISE_SECONDS = 240;
  private static final double END_SECONDS = 300;

  private static double mean(FiringRun run, double second, double span) {
    int points = (int) Math.max(2, Math.ceil(span / 30));
    double sum = 0;
    for (int i = 0; i < points; i++) {
      sum += run.readingCelsiusAt(second + span * ((i + 0.5) / points - 0.5));
    }
    return sum / points;
  }

  private double cost(double[] moved, double[] fault, double[] residual) {
    RealVector vector = new ArrayRealVector(moved);
    double sum = vector.dotProduct(precision.operate(vector));
    for (int i = 1; i < fault.length; i++) {
      sum += fault[i] * fault[i];
    }
    for (double r : residual) {
      double size = Math.abs(r);
      sum += size <= HUBER ? size * size : HUBER * (2 * size - HUBER);
    }
    return sum;
  }

  private double[] weighted(double[] residual) {
    double[] all = new double[residual.length];
    for (int i = 0; i < all.length; i++) {
      double size = Math.abs(residual[i]);
      all[i] = size <= HUBER ? residual[i] : residual[i] * Math.sqrt(HUBER / size);
    }
    return all;
  }

  /** A fit: where, its residuals and its cost. */
  private record Fit(double[] moved, double[] fault, double[] residual, double cost) {}

  /** Rows: an unknown of the kiln or the day each. */
  private double[][] jacobian(double[] moved, double[] residual, Optional<Disturbance> fault) {
    int n = quantities.length;
    FiringRun same = run(moved, conditions(moved, fault));
    return IntStream.range(0, unknowns)
        .parallel()
        .mapToObj(
            i -> {
              double[] tried = moved.clone();
              tried[i] += DIFFERENCE;
              boolean simulated =
                  i <= n
                      || (i == n + Evidence.START && evidence.startOpen())
                      || (switched && i >= n + Evidence.DAY);
              double[] row =
                  residuals(tried, simulated ? run(tried, conditions(tried, fault)) : same);
              for (int r = 0; r < row.length; r++) {
                row[r] = (row[r] - residual[r]) / DIFFERENCE;
              }
              return row;
            })
        .toArray(double[][]::new);
  }

  private static final double[] NONE = {};

  /**
   * What a search found.
   *
   * @param moved scores with the fault, or without where there is none
   * @param left cost a row
   * @param places suspicious beginnings, s
   */
  @SuppressWarnings("ArrayRecordComponent") // read, never written
  record Result(Optional<Anomaly> anomaly, double[] moved, double left, double[] places) {}

  /**
   * @param moved scores fitted to the firing, less those believed; then the day's
   */
  Result search(double[] moved) {
    prepare(moved);
    List<Place> places = places(new Projection(sensitivities, base.residual()));
    return conclude(guesses(places), places);
  }

  /** Fits the kiln as if nothing had gone wrong. */
  private void prepare(double[] moved) {
    base = descend(Arrays.copyOf(moved, unknowns), true);
  }

  /**
   * A fit without a fault.
   *
   * @param kept whether its sensitivities are those to go on with
   */
  private Fit descend(double[] start, boolean kept) {
    double[] residual = residuals(start, Optional.empty());
    Fit best = new Fit(start, NONE, residual, cost(start, NONE, residual));
    for (int round = 0; round < (switched ? MOST_ROUNDS_SWITCHED : MOST_ROUNDS); round++) {
      double[][] jacobian = jacobian(best.moved(), best.residual(), Optional.empty());
      if (kept) {
        sensitivities = jacobian;
      }
      Fit next = polish(best, jacobian);
      double gained = best.cost() - next.cost();
      best = next;
      if (gained < 1 + 0.01 * best.cost()) {
        break;
      }
    }
    return best;
  }

  /** Whether a kiln that the faults led to needs none of them. */
  private Fit withoutAny(List<Found> found) {
    Fit best = base;
    for (Found one : found.subList(0, Math.min(MOST_DOUBTED, found.size()))) {
      Fit fit = descend(one.fit().moved(), false);
      if (fit.cost() < best.cost()) {
        best = fit;
      }
    }
    return best;
  }

  private static final int MOST_DOUBTED = 2;

  /** Fits the whole log with a fault that a part of it gave away. */
  private Result refined(Result early) {
    List<Guess> guesses = new ArrayList<>();
    List<double[]> kilns = List.of(early.moved(), base.moved(), new double[unknowns]);
    for (Anomaly fault : early.anomaly().stream().toList()) {
      for (Shape shape : shapes()) {
        if (!fault.names(shape.kind())) {
          continue;
        }
        double[] lengths = shape.ends() ? new double[] {-1.2, -0.4, 0.4, 1, 1.6} : new double[1];
        for (double length : lengths) {
          double[] scores = new double[shape.unknowns()];
          if (shape.ends()) {
            scores[1] = length;
          }
          for (double[] moved : kilns) {
            guesses.add(new Guess(shape, moved, fault.beganSeconds(), scores, 0));
          }
        }
      }
    }
    return conclude(guesses, List.of());
  }

  /** Weighs guesses, fits the best, and decides. */
  private Result conclude(List<Guess> raw, List<Place> places) {
    List<Guess> guesses = weighed(raw);
    // The best place of each kind.
    Map<Shape, Integer> taken = new HashMap<>();
    List<Guess> worth = new ArrayList<>(guesses.stream().filter(Guess::told).limit(3).toList());
    int most = worth.size() + (switched ? MOST_FITTED_SWITCHED : MOST_FITTED);
    for (Guess guess : guesses) {
      int before = taken.getOrDefault(guess.shape(), 0);
      if (guess.gain() > 0
          && !guess.told()
          && before < 2
          && worth.size() < most
          && worth.stream().noneMatch(guess::same)) {
        taken.put(guess.shape(), before + 1);
        worth.add(guess);
      }
    }
    List<Found> found =
        worth.stream().map(this::fit).sorted(Comparator.comparingDouble(Found::cost)).toList();
    double[] where = places.stream().mapToDouble(Place::second).sorted().distinct().toArray();
    double certain = switched ? CERTAIN_SWITCHED : CERTAIN;
    if (found.isEmpty() || base.cost() - found.get(0).cost() < certain) {
      return new Result(Optional.empty(), base.moved(), base.cost() / rows(), where);
    }
    Found first = found.get(0);
    Fit none = withoutAny(found);
    double gain = none.cost() - first.cost();
    if (gain < certain) {
      return new Result(Optional.empty(), none.moved(), none.cost() / rows(), where);
    }
    List<Kind> others = new ArrayList<>();
    for (Found other : found) {
      Kind kind = other.guess().shape().kind();
      if (kind != first.guess().shape().kind()
          && !others.contains(kind)
          && other.cost() - first.cost() < Math.max(ALIKE, ALIKE_SHARE * gain)) {
        others.add(kind);
      }
    }
    return new Result(
        Optional.of(new Anomaly(first.disturbance(), others, gain / 2, first.onsetSpread())),
        first.fit().moved(),
        first.fit().cost() / rows(),
        where);
  }

  /** A few more steps with sensitivities at hand. */
  private Fit polish(Fit from, double[][] jacobian) {
    Fit best = from;
    for (int round = 0; round < 2; round++) {
      Fit next = step(best, jacobian, Optional.empty(), 0);
      if (next.cost() > best.cost() - 0.5) {
        break;
      }
      best = next;
    }
    return best;
  }

  /** One damped Gauss-Newton step; the fault's sensitivities are the last rows. */
  private Fit step(Fit from, double[][] jacobian, Optional<Shape> shape, double onset) {
    int m = jacobian.length;
    double[] weight = weights(from.residual());
    RealMatrix normal = normal(jacobian, weight);
    RealVector right = new ArrayRealVector(m);
    for (int i = 0; i < m; i++) {
      double sum = 0;
      for (int r = 0; r < weight.length; r++) {
        sum -= weight[r] * jacobian[i][r] * from.residual()[r];
      }
      if (i < unknowns) {
        for (int j = 0; j < unknowns; j++) {
          sum -= precision.getEntry(i, j) * from.moved()[j];
        }
      } else if (i > unknowns) {
        normal.addToEntry(i, i, 1);
        sum -= from.fault()[i - unknowns];
      }
      right.setEntry(i, sum);
    }
    double damping = 0.01;
    Fit best = from;
    for (int tries = 0; tries < 3; tries++, damping = damping * 20) {
      RealMatrix damped = normal.copy();
      for (int i = 0; i < m; i++) {
        damped.addToEntry(i, i, damping * normal.getEntry(i, i) + 1e-6);
      }
      RealVector change = new CholeskyDecomposition(damped).getSolver().solve(right);
      double[] moved = from.moved().clone();
      double[] fault = from.fault().clone();
      for (int i = 0; i < m; i++) {
        if (i < unknowns) {
          moved[i] += Math.max(-2, Math.min(2, change.getEntry(i)));
        } else {
          double most = i == unknowns ? 6 : 1.5;
          fault[i - unknowns] += Math.max(-most, Math.min(most, change.getEntry(i)));
        }
      }
      double[] residual = residuals(moved, shape.map(one -> one.at(onset, fault)));
      double cost = cost(moved, fault, residual);
      if (cost < best.cost()) {
        best = new Fit(moved, fault, residual, cost);
        break;
      }
    }
    return best;
  }

  // ------------------------------------------------------------------ where to look

  private record Place(double second, double gain) {}

  /** What is left of a vector in the residuals when the kiln may move: (1 + J S J')^-1. */
  private final class Projection {
    private final double[][] jacobian;
    private final CholeskyDecomposition middle;
    private final double[] left;
    private final double leftSquare;

    Projection(double[][] jacobian, double[] residual) {
      this.jacobian = jacobian;
      RealMatrix sum = precision.copy();
      for (int i = 0; i < unknowns; i++) {
        for (int j = 0; j <= i; j++) {
          double dot = dot(jacobian[i], jacobian[j]);
          sum.addToEntry(i, j, dot);
          if (i != j) {
            sum.addToEntry(j, i, dot);
          }
        }
      }
      this.middle = new CholeskyDecomposition(sum);
      this.left = weighted(residual);
      this.leftSquare = square(left);
    }

    /** v' (1 + J S J')^-1 v. */
    double square(double[] v) {
      RealVector along = new ArrayRealVector(unknowns);
      for (int i = 0; i < unknowns; i++) {
        along.setEntry(i, dot(jacobian[i], v));
      }
      return dot(v, v) - along.dotProduct(middle.getSolver().solve(along));
    }
  }

  private static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }

  private static final double[] SHAPE_SECONDS = {120, 400, 1200, 4000};

  /** Beginnings after which the display departs as nothing but a fault would make it. */
  private List<Place> places(Projection projection) {
    int n = seen.size();
    List<Place> all = new ArrayList<>();
    for (int row = 1; row < n; row++) {
      double onset = seen.second(row) - spans[row] / 2;
      double most = 0;
      for (double scale : SHAPE_SECONDS) {
        double[] miss = new double[n];
        for (int i = row; i < n; i++) {
          double u = (seen.second(i) - onset) / scale;
          miss[i] = u * Math.exp(1 - u);
        }
        double[] shape = new double[rows()];
        temperature.whiten(miss, shape, 0);
        double with = dot(shape, projection.left);
        double square = projection.square(shape);
        most = Math.max(most, with * with / (square + 0.02));
      }
      all.add(new Place(onset, most));
    }
    if (powerRows.length > 0) {
      for (int from = 1; from < powerRows.length; from++) {
        double most = 0;
        for (int length : new int[] {5, 1000}) {
          double[] miss = new double[powerRows.length];
          Arrays.fill(miss, from, Math.min(powerRows.length, from + length), 1);
          double[] shape = new double[rows()];
          power.whiten(miss, shape, temperature.size());
          double with = dot(shape, projection.left);
          most = Math.max(most, with * with / (projection.square(shape) + 0.02));
        }
        all.add(new Place(seen.second(powerRows[from]) - spans[powerRows[from]] / 2, most));
      }
    }
    List<Place> chosen = new ArrayList<>();
    all.sort(Comparator.comparingDouble(Place::gain).reversed());
    for (Place place : all) {
      if (place.gain() < (switched ? SUSPICIOUS_SWITCHED : SUSPICIOUS)
          || chosen.size() == (switched ? MOST_PLACES_SWITCHED : MOST_PLACES)) {
        break;
      }
      if (place.second() < SOONEST_SECONDS - SOONER_SECONDS) {
        continue;
      }
      if (chosen.stream().noneMatch(c -> Math.abs(c.second() - place.second()) < APART_SECONDS)) {
        chosen.add(place);
      }
    }
    for (double[] gap : gaps()) {
      chosen.add(new Place(gap[0], 0));
    }
    return chosen;
  }

  /** Stretches without readings where a logger had been regular: beginning and length, s. */
  private List<double[]> gaps() {
    List<double[]> gaps = new ArrayList<>();
    Readings readings = firing.readings();
    double least = Math.max(SHORTEST_SECONDS, 5 * usualStep);
    for (int i = 1; i < readings.size(); i++) {
      double length = readings.second(i) - readings.second(i - 1);
      if (length > least) {
        gaps.add(new double[] {readings.second(i - 1) + usualStep / 2, length - usualStep});
      }
    }
    return gaps;
  }

  // ------------------------------------------------------------------ what it may have been

  /** A fault to begin a fit with. */
  private record Guess(Shape shape, double[] moved, double onset, double[] fault, double gain) {
    /** Whether a gap of the log tells when and how long. */
    boolean told() {
      return shape.kind() == Kind.MAINS_OFF && shape.lengthSpread() < 0.1;
    }

    /** Whether another guess is about the same fault. */
    boolean same(Guess other) {
      return shape.equals(other.shape) && Math.abs(onset - other.onset) < APART_SECONDS;
    }
  }

  private static final double[] FEW_EARLIER = {0, 90};

  private List<Guess> guesses(List<Place> places) {
    List<Guess> all = new ArrayList<>();
    double[] unmoved = new double[unknowns];
    for (Place place : places) {
      double[] prefix = before(place.second() - 240);
      if (place.gain() == 0) {
        continue;
      }
      for (Shape shape : shapes()) {
        double[] earlier =
            switch (shape.kind()) {
              case TIP_OUT -> switched ? FEW_EARLIER : new double[] {-40, 0, 60, 150};
              case ELEMENT_OPEN, DOOR_AJAR ->
                  switched
                      ? new double[] {0, 120, 360, 900}
                      : new double[] {0, 120, 360, 900, 1800};
              default -> switched ? FEW_EARLIER : new double[] {0, 120, 360};
            };
        double[] lengths =
            shape.kind() != Kind.MAINS_OFF
                ? new double[] {0}
                : switched ? new double[] {-0.5, 0.6} : new double[] {-1.5, -0.3, 0.7, 1.5};
        for (double before : earlier) {
          for (double length : lengths) {
            double[] fault = new double[shape.unknowns()];
            if (shape.ends()) {
              fault[1] = length;
            }
            double onset = Math.max(0, place.second() - before);
            all.add(new Guess(shape, base.moved(), onset, fault, 0));
            all.add(new Guess(shape, prefix, onset, fault, 0));
            if (!switched) {
              all.add(new Guess(shape, unmoved, onset, fault, 0));
            }
          }
        }
      }
    }
    for (double[] gap : gaps()) {
      double[] prefix = before(gap[0]);
      for (double forgotten : new double[] {1, REMEMBERED}) {
        Shape shape = new Shape(Kind.MAINS_OFF, true, gap[1], 0.05, forgotten);
        all.add(new Guess(shape, base.moved(), gap[0], new double[2], 0));
        all.add(new Guess(shape, prefix, gap[0], new double[2], 0));
        all.add(new Guess(shape, unmoved, gap[0], new double[2], 0));
      }
    }
    return all;
  }

  /** Runs of one kiln that go on from where they part. */
  private final class Fork {
    private final double[] moved;
    private final NavigableMap<Double, Optional<Checkpoint>> halts = new TreeMap<>();
    private final double[] without;

    Fork(double[] moved, double[] onsets) {
      this.moved = moved;
      this.without = residuals(moved, Optional.empty());
      Optional<Checkpoint> last = Optional.empty();
      for (double onset : onsets) {
        double halt = onset - 1;
        if (halt > 0) {
          last =
              evidence.halted(
                  scores(moved),
                  moved[quantities.length],
                  conditions(moved),
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

    double[] residuals(Disturbance fault) {
      var halt = halts.lowerEntry(fault.atSeconds());
      if (halt == null || halt.getValue().isEmpty()) {
        return AnomalySearch.this.residuals(moved, Optional.of(fault));
      }
      return AnomalySearch.this.residuals(
          moved,
          evidence.resume(
              scores(moved),
              moved[quantities.length],
              conditions(moved, Optional.of(fault)),
              following(moved),
              halt.getValue().get()));
    }

    private double[] residuals(double[] at, Optional<Disturbance> none) {
      return AnomalySearch.this.residuals(at, none);
    }
  }

  private List<Guess> weighed(List<Guess> raw) {
    Map<double[], List<Guess>> byKiln = new IdentityHashMap<>();
    for (Guess guess : raw) {
      byKiln.computeIfAbsent(guess.moved(), key -> new ArrayList<>()).add(guess);
    }
    return byKiln.entrySet().parallelStream()
        .flatMap(
            entry -> {
              List<Guess> guesses = entry.getValue();
              double[] onsets =
                  guesses.stream().mapToDouble(Guess::onset).sorted().distinct().toArray();
              Fork fork = new Fork(entry.getKey(), onsets);
              return guesses.stream().map(guess -> weigh(guess, fork)).toList().stream();
            })
        .sorted(Comparator.comparingDouble(Guess::gain).reversed())
        .toList();
  }

  /** What a fault would gain if the kiln, and the fault's size, answered linearly. */
  private Guess weigh(Guess guess, Fork fork) {
    double[] with = fork.residuals(guess.shape().at(guess.onset(), guess.fault()));
    double[][] rows = sensitivities;
    if (guess.shape().sizeSpread() > 0) {
      double[] without = fork.without;
      rows = Arrays.copyOf(sensitivities, unknowns + 1);
      double[] more = new double[with.length];
      for (int r = 0; r < more.length; r++) {
        more[r] = with[r] - without[r];
      }
      rows[unknowns] = more;
    }
    double[] residual = with;
    double[] change = new double[rows.length];
    double least = cost(guess.moved(), guess.fault(), with);
    for (int round = 0; round < 4; round++) {
      double[] weight = weights(residual);
      RealMatrix normal = normal(rows, weight);
      RealVector right = new ArrayRealVector(rows.length);
      for (int i = 0; i < rows.length; i++) {
        double sum = 0;
        for (int r = 0; r < with.length; r++) {
          sum -= weight[r] * rows[i][r] * with[r];
        }
        for (int j = 0; i < unknowns && j < unknowns; j++) {
          sum -= precision.getEntry(i, j) * guess.moved()[j];
        }
        right.setEntry(i, sum);
        normal.addToEntry(i, i, i < unknowns ? 1e-6 : 4);
      }
      change = new CholeskyDecomposition(normal).getSolver().solve(right).toArray();
      if (rows.length > unknowns) {
        // A fault fitted away is none.
        change[unknowns] = Math.max(-0.6, Math.min(2, change[unknowns]));
      }
      double[] moved = guess.moved().clone();
      residual = with.clone();
      for (int i = 0; i < rows.length; i++) {
        if (i < unknowns) {
          moved[i] += change[i];
        }
        for (int r = 0; r < residual.length; r++) {
          residual[r] += rows[i][r] * change[i];
        }
      }
      double size = rows.length > unknowns ? 4 * change[unknowns] * change[unknowns] : 0;
      least = Math.min(least, cost(moved, guess.fault(), residual) + size);
    }
    return new Guess(
        guess.shape(), guess.moved(), guess.onset(), guess.fault(), base.cost() - least);
  }

  private static double[] weights(double[] residual) {
    double[] weight = new double[residual.length];
    for (int r = 0; r < weight.length; r++) {
      double size = Math.abs(residual[r]);
      weight[r] = size <= HUBER ? 1 : HUBER / size;
    }
    return weight;
  }

  /** Precision of the unknowns with these sensitivities. */
  private RealMatrix normal(double[][] jacobian, double[] weight) {
    int m = jacobian.length;
    RealMatrix normal = new Array2DRowRealMatrix(m, m);
    double[] weighed = new double[weight.length];
    for (int i = 0; i < m; i++) {
      for (int r = 0; r < weight.length; r++) {
        weighed[r] = weight[r] * jacobian[i][r];
      }
      for (int j = 0; j <= i; j++) {
        double sum = (i < unknowns ? precision.getEntry(i, j) : 0) + dot(weighed, jacobian[j]);
        normal.setEntry(i, j, sum);
        normal.setEntry(j, i, sum);
      }
    }
    return normal;
  }

  /** The kiln fitted to what the log says before a time. */
  private double[] before(double second) {
    double[][] jacobian = sensitivities;
    int rows = (int) IntStream.range(0, seen.size()).filter(i -> seen.second(i) < second).count();
    double[] moved = base.moved();
    double[] residual = base.residual();
    for (int round = 0; round < 3; round++) {
      double[] weight = weights(residual);
      Arrays.fill(weight, rows, temperature.size(), 0);
      for (int i = 0; i < powerRows.length; i++) {
        if (powerRows[i] >= rows) {
          weight[temperature.size() + i] = 0;
        }
      }
      RealMatrix normal = normal(jacobian, weight);
      RealVector right = new ArrayRealVector(unknowns);
      for (int i = 0; i < unknowns; i++) {
        double sum = 0;
        for (int r = 0; r < residual.length; r++) {
          sum -= weight[r] * jacobian[i][r] * residual[r];
        }
        for (int j = 0; j < unknowns; j++) {
          sum -= precision.getEntry(i, j) * moved[j];
        }
        right.setEntry(i, sum);
        normal.addToEntry(i, i, 0.01 * normal.getEntry(i, i));
      }
      RealVector change = new CholeskyDecomposition(normal).getSolver().solve(right);
      double[] next = moved.clone();
      for (int i = 0; i < unknowns; i++) {
        next[i] += Math.max(-3, Math.min(3, change.getEntry(i)));
      }
      moved = next;
      residual = residuals(moved, Optional.empty());
    }
    return moved;
  }

  private record Found(Guess guess, Fit fit, double onset, double onsetSpread) {
    /** A log that stops with the mains is no chance. */
    double cost() {
      return fit.cost() - (guess.told() ? GAP_GAIN : 0);
    }

    Disturbance disturbance() {
      return guess.shape().at(onset, fit.fault());
    }
  }

  private static final double[] ONSETS = {-8, -4, -2, -1, 1, 2, 4};
  private static final double[] LENGTHS = {-1.2, -0.5, 0.5, 1.2};

  /** The best of a few faults that differ in one of their scores. */
  private Fit moved(Guess guess, Fit from, int score, double[] by) {
    Fit best = from;
    for (double more : by) {
      double[] fault = from.fault().clone();
      fault[score] += more;
      double[] residual =
          residuals(from.moved(), Optional.of(guess.shape().at(guess.onset(), fault)));
      double cost = cost(from.moved(), fault, residual);
      if (cost < best.cost()) {
        best = new Fit(from.moved(), fault, residual, cost);
      }
    }
    return best;
  }

  /** Fits the fault and the kiln together. */
  private Found fit(Guess guess) {
    double[][] ofKiln = sensitivities;
    Shape shape = guess.shape();
    double[] fault = guess.fault().clone();
    double[] residual = residuals(guess.moved(), Optional.of(shape.at(guess.onset(), fault)));
    Fit best = new Fit(guess.moved(), fault, residual, cost(guess.moved(), fault, residual));
    best = moved(guess, best, 0, ONSETS);
    if (shape.ends()) {
      best = moved(guess, best, 1, LENGTHS);
      best = moved(guess, best, 0, ONSETS);
    }
    double spread = 60;
    for (int round = 0; round < 6; round++) {
      double[][] jacobian = Arrays.copyOf(ofKiln, unknowns + fault.length);
      if (round == 3) {
        Fit at = best;
        double[][] fresh =
            jacobian(at.moved(), at.residual(), Optional.of(shape.at(guess.onset(), at.fault())));
        System.arraycopy(fresh, 0, ofKiln = ofKiln.clone(), 0, unknowns);
        System.arraycopy(fresh, 0, jacobian, 0, unknowns);
      }
      for (int i = 0; i < fault.length; i++) {
        double difference = i == 0 ? 0.5 : 0.2;
        double[] tried = best.fault().clone();
        tried[i] += difference;
        double[] row = residuals(best.moved(), Optional.of(shape.at(guess.onset(), tried)));
        for (int r = 0; r < row.length; r++) {
          row[r] = (row[r] - best.residual()[r]) / difference;
        }
        jacobian[unknowns + i] = row;
      }
      double square = dot(jacobian[unknowns], jacobian[unknowns]);
      spread = 60 / Math.sqrt(square + 0.01);
      Fit next = step(best, jacobian, Optional.of(shape), guess.onset());
      double gained = best.cost() - next.cost();
      best = next;
      if (gained < 0.5 && round >= 1) {
        break;
      }
    }
    return new Found(guess, best, guess.onset(), spread);
  }
}
