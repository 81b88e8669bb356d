package org.heatwright.mould;

import static org.heatwright.kiln.HeatTransfer.STEFAN_BOLTZMANN;

import java.util.Arrays;
import java.util.Objects;
import org.heatwright.units.Temperature;

/**
 * Heat inside a {@link Body} while its surroundings change: finite volumes in the enthalpy form,
 * implicit, step by step. Not for use by two threads at once.
 *
 * <pre>
 * dH/dt = (1/r) d/dr (r k dT/dr) + d/dz (k dT/dz)          H(T) with the latent heats, J/m³
 * at a face: q = h (T_gas - T) + eps sigma (T_wall⁴ - T⁴)
 * </pre>
 *
 * <p>Each step goes along all radial lines with what axial ones bring as an even source, then from
 * the same start along all axial lines with what radial ones brought; each by a two-stage,
 * L-stable, second-order implicit Runge-Kutta method whose stages are tridiagonal systems in the
 * integral of conductivity ({@link Sweep}). The whole is of second order (the source is right to
 * first order, so what the lines bring is right to second), does not grow at any length of step,
 * and leaves a body in balance as it is.
 */
public final class BodySolver {

  /** Makes the method L-stable and of second order. */
  private static final double GAMMA = 1 - Math.sqrt(0.5);

  private static final double SMALLEST_STEP_SECONDS = 1e-3;
  private static final double LONGEST_STEP_SECONDS = 1800;
  private static final double FIRST_STEP_SECONDS = 0.5;

  /** The first step after the surroundings changed their way is no longer, s. */
  private static final double RESTART_SECONDS = 30;

  private static final double LONGER_AT_MOST = 2.5;

  /** The next step is as long as the surface would change by so much: readers look at each. */
  private static final double MOST_KELVINS = 15;

  private static final double SHORTER_AT_MOST = 0.1;

  /** A step is thrown away when it should have been shorter than this share of what it was. */
  private static final double THROWN_AWAY_BELOW = 0.6;

  private static final double SAFETY = 0.9;

  /** Each long step of a body in a ring ends with one of this length, s. */
  private static final double SETTLING_SECONDS = 2;

  /** Of the bend that is allowed. */
  private static final double AGREES_SHARE = 0.15;

  private static final double EVEN_AGREES_KELVINS = 0.01;

  /** How much the worst bend at mid height counts beside the mean one of the whole body. */
  private static final double WEIGHT_AT_MID_HEIGHT = 0.1;

  /** The same with a cavity, under whose floor a front closes on the axis near mid height. */
  private static final double WEIGHT_WITH_CAVITY = 0.4;

  private final Body body;
  private final BodyGrid grid;
  private final Accuracy accuracy;
  private final Nodes nodes;
  private final Sweep radial;
  private final Sweep axial;
  private final double[] celsius;

  // During a step, by node: what the other direction brings, W/m³; what heat is to come from,
  // J/m³; the temperature after the first stage, °C; the bend, K.
  private final double[] brought;
  private final double[] goal;
  private final double[] first;
  private final double[] bend;

  private double seconds;
  private double nextStep = FIRST_STEP_SECONDS;
  private double heatTaken;
  private long steps;

  /**
   * How fine space and time are cut.
   *
   * @param finenessFactor 1 is usual; 2 has twice the lines in each direction
   * @param bendKelvins how much the curve of temperature may bend in one step, K; the error of a
   *     step is a small part of it
   * @param stepSeconds s, steps of one length, for studies of the method; 0: as long as the bend
   *     allows
   */
  public record Accuracy(double finenessFactor, double bendKelvins, double stepSeconds) {

    /** Within about 0.5 K in moulds that dry and burn out (tested). */
    public static final Accuracy USUAL = new Accuracy(1, 0.3, 0);

    /** Some times nearer and some times slower. */
    public static final Accuracy FINE = new Accuracy(2, 0.1, 0);

    public Accuracy {
      if (!(finenessFactor >= 0.2 && finenessFactor <= 20)
          || !(bendKelvins > 0)
          || !(stepSeconds >= 0)) {
        throw new IllegalArgumentException(
            "The fineness (%s) must be 0.2 to 20, the bend (%s K) above zero, the step (%s s) not negative."
                .formatted(finenessFactor, bendKelvins, stepSeconds));
      }
    }

    /** How far a node may be off its curve after a stage, K. */
    double agreesKelvins() {
      return even() ? EVEN_AGREES_KELVINS : AGREES_SHARE * bendKelvins;
    }

    boolean even() {
      return stepSeconds > 0;
    }
  }

  /** Is told of every step. */
  public interface Watcher {
    void step(BodySolver solver);
  }

  public BodySolver(Body body) {
    this(body, Accuracy.USUAL);
  }

  public BodySolver(Body body, Accuracy accuracy) {
    this(
        body,
        accuracy,
        new BodyGrid(body.shape(), accuracy.finenessFactor(), accuracy.finenessFactor(), false));
  }

  BodySolver(Body body, Accuracy accuracy, BodyGrid grid) {
    this.body = Objects.requireNonNull(body, "body");
    this.accuracy = accuracy;
    this.grid = grid;
    nodes = new Nodes(body, grid, accuracy.agreesKelvins());
    celsius = nodes.celsius;
    double radiation = body.emissivity() * STEFAN_BOLTZMANN;
    double convection = body.convectionWattsPerSquareMetreKelvin();
    radial = new Sweep(nodes, grid, true, convection, radiation);
    axial = new Sweep(nodes, grid, false, convection, radiation);
    int n = grid.volume.length;
    brought = new double[n];
    goal = new double[n];
    first = new double[n];
    bend = new double[n];
  }

  // ---- reading

  /** Since the start, s. */
  public double seconds() {
    return seconds;
  }

  public long steps() {
    return steps;
  }

  public int cells() {
    return grid.volume.length;
  }

  /** Heat that came in through all faces since the start, J, of the whole body. */
  public double heatTakenJoules() {
    return heatTaken * (grid.half ? 2 : 1);
  }

  /** Heat content of the whole body above {@value EnthalpyCurve#LOWEST_CELSIUS} °C, J. */
  public double heatContentJoules() {
    return nodes.joules() * (grid.half ? 2 : 1);
  }

  /** At mid height on the axis, or on the wall of a cavity that is there, °C. */
  public double centreCelsius() {
    return celsius[grid.firstSolid[grid.middle] * grid.nz + grid.middle];
  }

  /** At mid height, half the outer radius from the axis, °C. */
  public double midRadiusCelsius() {
    double radius = body.shape().diameterMetres() / 4;
    double wall = grid.radius[grid.firstSolid[grid.middle]];
    return celsiusAt(Math.max(radius, wall), body.shape().heightMetres() / 2);
  }

  /** At mid height on the outer face, °C. */
  public double surfaceCelsius() {
    return celsius[(grid.nr - 1) * grid.nz + grid.middle];
  }

  /** Volume mean of the whole body, °C. */
  public double meanCelsius() {
    double sum = 0;
    for (int n = 0; n < celsius.length; n++) {
      sum += grid.volume[n] * celsius[n];
    }
    return sum / grid.totalVolume;
  }

  /** The coldest place of the whole body, °C. */
  public double coldestCelsius() {
    double coldest = Double.POSITIVE_INFINITY;
    for (int n = 0; n < celsius.length; n++) {
      if (grid.volume[n] > 0 && celsius[n] < coldest) {
        coldest = celsius[n];
      }
    }
    return coldest;
  }

  /** The hottest place of the whole body, °C. */
  public double hottestCelsius() {
    double hottest = Double.NEGATIVE_INFINITY;
    for (int n = 0; n < celsius.length; n++) {
      if (grid.volume[n] > 0 && celsius[n] > hottest) {
        hottest = celsius[n];
      }
    }
    return hottest;
  }

  /**
   * Temperature at a place, °C.
   *
   * @param radiusMetres from the axis, m
   * @param heightMetres up from the bottom, m
   */
  public double celsiusAt(double radiusMetres, double heightMetres) {
    double up = heightMetres - grid.baseMetres;
    double z = Math.min(grid.half ? Math.abs(up) : up, grid.height[grid.nz - 1]);
    int j = lower(grid.height, z);
    int i = lower(grid.radius, radiusMetres);
    double a = share(grid.radius, i, radiusMetres);
    double b = share(grid.height, j, z);
    int n = i * grid.nz + j;
    double sum = 0;
    double weights = 0;
    for (int corner = 0; corner < 4; corner++) {
      int at = n + (corner & 1) + (corner >> 1) * grid.nz;
      double weight = ((corner & 1) == 0 ? 1 - b : b) * ((corner >> 1) == 0 ? 1 - a : a);
      if (weight > 0 && grid.volume[at] > 0) {
        sum += weight * celsius[at];
        weights += weight;
      }
    }
    return sum / weights;
  }

  private static int lower(double[] lines, double metres) {
    int i = 0;
    while (i + 2 < lines.length && lines[i + 1] <= metres) {
      i++;
    }
    return i;
  }

  private static double share(double[] lines, int i, double metres) {
    double share = (metres - lines[i]) / (lines[i + 1] - lines[i]);
    return Math.max(0, Math.min(1, share));
  }

  // ---- nodes, for those who look at all of them

  double celsiusOfNode(int node) {
    return celsius[node];
  }

  /** Volume of a node that is not ring, m³ of the part that is solved; zero in a cavity. */
  double insideCubicMetres(int node) {
    return grid.volume[node] * (node / grid.nz == grid.nr - 1 ? grid.besideRing : 1);
  }

  /** What the part that is solved stands for, of the whole body. */
  double wholeOf(double ofPart) {
    return grid.half ? 2 * ofPart : ofPart;
  }

  /** The temperatures of the whole section now. */
  Section section() {
    int nz = grid.nz;
    int heights = grid.half ? 2 * nz - 1 : nz;
    double[] height = new double[heights];
    boolean ring = grid.ringSquareMetres > 0; // as hot as what it touches
    int nr = grid.nr + (ring ? 1 : 0);
    double[] radius = Arrays.copyOf(grid.radius, nr);
    radius[nr - 1] = body.shape().diameterMetres() / 2;
    double[] all = new double[nr * heights];
    for (int j = 0; j < heights; j++) {
      int from = grid.half ? Math.abs(j - (nz - 1)) : j;
      double up = grid.half && j < nz - 1 ? -grid.height[from] : grid.height[from];
      height[j] = grid.baseMetres + up;
      for (int i = 0; i < nr; i++) {
        int node = Math.min(i, grid.nr - 1) * nz + from;
        all[i * heights + j] = grid.volume[node] > 0 ? celsius[node] : Double.NaN;
      }
    }
    return new Section(seconds, radius, height, all);
  }

  // ---- going on

  /**
   * Goes on while gas and walls change evenly.
   *
   * @return heat taken up by the whole body, J
   */
  public double advance(
      double lengthSeconds,
      Temperature gasAtStart,
      Temperature gasAtEnd,
      Temperature wallsAtStart,
      Temperature wallsAtEnd,
      Watcher watcher) {
    double begin = seconds;
    double taken = heatTaken;
    double end = begin + lengthSeconds;
    double gas = gasAtStart.celsius();
    double gasRate = (gasAtEnd.celsius() - gas) / lengthSeconds;
    double wall = wallsAtStart.celsius();
    nextStep = Math.min(nextStep, RESTART_SECONDS);
    double wallRate = (wallsAtEnd.celsius() - wall) / lengthSeconds;
    while (seconds < end) {
      double left = end - seconds;
      double wanted = accuracy.even() ? accuracy.stepSeconds() : nextStep;
      double dt = Math.min(wanted, LONGEST_STEP_SECONDS);
      boolean last = dt >= left * (1 - 1e-9);
      if (last) {
        dt = left;
      } else if (!accuracy.even() && dt > left / 2) {
        dt = left / 2; // rather two like steps than a long one and a splinter
      }
      double into = seconds - begin;
      // What is stiff both ways, a ring's ends, hardly settles in a long step but does in a short
      // one.
      double settling =
          grid.ringSquareMetres > 0 && dt > 10 * SETTLING_SECONDS ? SETTLING_SECONDS : 0;
      double most = dt - settling;
      double before = surfaceCelsius();
      double joules = step(most, gas + gasRate * into, gasRate, wall + wallRate * into, wallRate);
      double bent = bent();
      double fit = SAFETY * Math.sqrt(accuracy.bendKelvins() / Math.max(bent, 1e-12));
      if (fit < THROWN_AWAY_BELOW && dt > SMALLEST_STEP_SECONDS && !accuracy.even()) {
        nodes.restore();
        nextStep = dt * Math.max(SHORTER_AT_MOST, fit);
        continue;
      }
      heatTaken += joules;
      nodes.rememberPeaks();
      radial.rememberRates(most);
      axial.rememberRates(most);
      if (settling > 0) {
        into += most;
        heatTaken +=
            step(settling, gas + gasRate * into, gasRate, wall + wallRate * into, wallRate);
        nodes.rememberPeaks();
      }
      double change = Math.abs(surfaceCelsius() - before);
      nextStep = dt * Math.min(LONGER_AT_MOST, Math.min(fit, MOST_KELVINS / change));
      if (fit > 1 && change < MOST_KELVINS) {
        nextStep = Math.max(nextStep, wanted); // a step cut short says nothing against longer ones
      }
      seconds = last ? end : seconds + dt;
      steps++;
      watcher.step(this);
    }
    return (heatTaken - taken) * (grid.half ? 2 : 1);
  }

  /**
   * One step: radial lines, then axial ones, each over the whole length and from the same start.
   *
   * @return what came in through the faces, J of the part that is solved
   */
  private double step(double dt, double gas, double gasRate, double wall, double wallRate) {
    nodes.keep();
    axial.rate(brought, gas, wall);
    double joules = stages(radial, dt, gas, gasRate, wall, wallRate);
    for (int n = 0; n < bend.length; n++) {
      bend[n] = bendOf(n);
      brought[n] = (nodes.heat[n] - nodes.oldHeat[n]) / dt - brought[n];
    }
    nodes.restore();
    joules += stages(axial, dt, gas, gasRate, wall, wallRate);
    for (int n = 0; n < bend.length; n++) {
      bend[n] = 0.5 * (bend[n] + bendOf(n));
    }
    return joules;
  }

  private double bendOf(int n) {
    double start = nodes.oldCelsius[n];
    return celsius[n] - start - (first[n] - start) / GAMMA;
  }

  /** Both stages along all lines of a direction. */
  private double stages(
      Sweep sweep, double dt, double gas, double gasRate, double wall, double wallRate) {
    double part = GAMMA * dt;
    double[] heat = nodes.heat;
    double[] oldHeat = nodes.oldHeat;
    for (int n = 0; n < goal.length; n++) {
      goal[n] = oldHeat[n] + part * brought[n];
    }
    sweep.expect(part);
    double watts = sweep.stage(goal, part, gas + gasRate * part, wall + wallRate * part);
    System.arraycopy(celsius, 0, first, 0, first.length);
    double rest = (1 - GAMMA) / GAMMA;
    for (int n = 0; n < goal.length; n++) {
      goal[n] = oldHeat[n] + rest * (heat[n] - oldHeat[n]) + part * brought[n];
    }
    sweep.expectFrom(GAMMA);
    double last = sweep.stage(goal, part, gas + gasRate * dt, wall + wallRate * dt);
    return (1 - GAMMA) * dt * watts + part * last;
  }

  /** Root mean square over the volume, with the worst place at mid height, K. */
  private double bent() {
    double sum = 0;
    for (int n = 0; n < bend.length; n++) {
      sum += grid.volume[n] * bend[n] * bend[n];
    }
    double weight = body.shape().cavity().isPresent() ? WEIGHT_WITH_CAVITY : WEIGHT_AT_MID_HEIGHT;
    double worst = 0;
    for (int n = grid.middle; n < bend.length; n += grid.nz) {
      worst = Math.max(worst, Math.abs(bend[n]));
    }
    return Math.hypot(Math.sqrt(sum / grid.totalVolume), weight * worst);
  }
}
