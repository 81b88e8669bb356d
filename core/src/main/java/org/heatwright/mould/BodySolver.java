package org.heatwright.mould;

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
 * <p>Each step is half a step along all radial lines, a step along all axial lines and half a step
 * along the radial lines again (Strang), each by a two-stage, L-stable, second-order implicit
 * Runge-Kutta method whose stages are tridiagonal systems in the integral of conductivity. A line
 * on which a latent heat begins or ends is iterated until it agrees with the curve; whatever the
 * iterations leave, heat is conserved to rounding.
 */
public final class BodySolver {

  /** W/(m² K⁴), exact since the 2019 SI. Source: memory, CODATA 2018. */
  private static final double STEFAN_BOLTZMANN = 5.670374419e-8;

  /** Makes the method L-stable and of second order. */
  private static final double GAMMA = 1 - Math.sqrt(0.5);

  private static final double SMALLEST_STEP_SECONDS = 1e-3;
  private static final double LONGEST_STEP_SECONDS = 1800;
  private static final double FIRST_STEP_SECONDS = 0.5;

  /** The first step after the surroundings changed their way is no longer, s. */
  private static final double RESTART_SECONDS = 30;

  private static final double LONGER_AT_MOST = 2.5;
  private static final double SHORTER_AT_MOST = 0.1;

  /** A step is thrown away when it should have been shorter than this share of what it was. */
  private static final double THROWN_AWAY_BELOW = 0.6;

  private static final double SAFETY = 0.9;

  /** How much the worst bend at mid height counts beside the mean one of the whole body. */
  private static final double WEIGHT_AT_MID_HEIGHT = 0.3;

  private final Body body;
  private final BodyGrid grid;
  private final Accuracy accuracy;
  private final EnthalpyCurve inside;
  private final EnthalpyCurve ring;
  private final double radiation;
  private final double convection;

  // State and its functions at each node.
  private final double[] heat;
  private final double[] celsius;
  private final double[] theta;
  private final double[] slope;
  private final double[] conductivity;
  private final int[] piece;
  private final double[] peakHeat;
  private final double[] takenUp;

  // At the start of a step that may have to be taken again.
  private final double[] oldHeat;
  private final int[] oldPiece;
  private final double[] bend;

  private final Line line;

  private double seconds;
  private double nextStep = FIRST_STEP_SECONDS;
  private double heatTaken;
  private double oldHeatTaken;
  private long steps;
  private long rejected;
  private long nodeSolves;

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
    public static final Accuracy USUAL = new Accuracy(1, 0.4, 0);

    /** Some times nearer and some times slower. */
    public static final Accuracy FINE = new Accuracy(1.7, 0.15, 0);

    public Accuracy {
      if (!(finenessFactor >= 0.2 && finenessFactor <= 20)
          || !(bendKelvins > 0)
          || !(stepSeconds >= 0)) {
        throw new IllegalArgumentException(
            "The fineness (%s) must be 0.2 to 20, the bend (%s K) above zero, the step (%s s) not negative."
                .formatted(finenessFactor, bendKelvins, stepSeconds));
      }
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
    inside = new EnthalpyCurve(body.material());
    ring = body.shape().ring().map(r -> new EnthalpyCurve(r.material())).orElse(inside);
    radiation = body.emissivity() * STEFAN_BOLTZMANN;
    convection = body.convectionWattsPerSquareMetreKelvin();
    int n = grid.volume.length;
    heat = new double[n];
    celsius = new double[n];
    theta = new double[n];
    slope = new double[n];
    conductivity = new double[n];
    piece = new int[n];
    peakHeat = new double[n];
    takenUp = new double[n];
    oldHeat = new double[n];
    oldPiece = new int[n];
    bend = new double[n];
    int longest = Math.max(grid.nr, grid.nz);
    line = new Line(longest, inside);
    double start = body.start().celsius();
    for (int i = 0; i < grid.nr; i++) {
      EnthalpyCurve curve = curve(i);
      double h = curve.virginAt(start);
      int p = curve.pieceAt(start);
      for (int at = i * grid.nz; at < (i + 1) * grid.nz; at++) {
        heat[at] = h;
        piece[at] = p;
        peakHeat[at] = Double.NEGATIVE_INFINITY;
        evaluate(at, curve);
      }
    }
    rememberPeaks();
  }

  private EnthalpyCurve curve(int i) {
    return i >= grid.ringStart ? ring : inside;
  }

  // ---- reading

  public Body body() {
    return body;
  }

  /** Since the start, s. */
  public double seconds() {
    return seconds;
  }

  public long steps() {
    return steps;
  }

  public long rejectedSteps() {
    return rejected;
  }

  long nodeSolves() {
    return nodeSolves;
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
    double sum = 0;
    for (int n = 0; n < heat.length; n++) {
      sum += grid.volume[n] * heat[n];
    }
    return sum * (grid.half ? 2 : 1);
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
    return node / grid.nz >= grid.ringStart ? 0 : grid.volume[node];
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
    double[] all = new double[grid.nr * heights];
    for (int j = 0; j < heights; j++) {
      int from = grid.half ? Math.abs(j - (nz - 1)) : j;
      double up = grid.half && j < nz - 1 ? -grid.height[from] : grid.height[from];
      height[j] = grid.baseMetres + up;
      for (int i = 0; i < grid.nr; i++) {
        int node = i * nz + from;
        all[i * heights + j] = grid.volume[node] > 0 ? celsius[node] : Double.NaN;
      }
    }
    return new Section(seconds, grid.radius.clone(), height, all);
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
      double bent = step(dt, gas + gasRate * into, gasRate, wall + wallRate * into, wallRate);
      double fit = SAFETY * Math.sqrt(accuracy.bendKelvins() / Math.max(bent, 1e-12));
      if (fit < THROWN_AWAY_BELOW && dt > SMALLEST_STEP_SECONDS && !accuracy.even()) {
        restore();
        rejected++;
        nextStep = dt * Math.max(SHORTER_AT_MOST, fit);
        continue;
      }
      if (inside.takesHeatOnce() || ring.takesHeatOnce()) {
        rememberPeaks();
      }
      nextStep = dt * Math.min(LONGER_AT_MOST, fit);
      if (fit > 1) {
        nextStep = Math.max(nextStep, wanted); // a step cut short says nothing against longer ones
      }
      seconds = last ? end : seconds + dt;
      steps++;
      watcher.step(this);
    }
    return (heatTaken - taken) * (grid.half ? 2 : 1);
  }

  private void restore() {
    heatTaken = oldHeatTaken;
    System.arraycopy(oldHeat, 0, heat, 0, heat.length);
    System.arraycopy(oldPiece, 0, piece, 0, heat.length);
    for (int i = 0; i < grid.nr; i++) {
      EnthalpyCurve curve = curve(i);
      for (int n = i * grid.nz; n < (i + 1) * grid.nz; n++) {
        evaluate(n, curve);
      }
    }
  }

  /** One step; returns how much temperatures bent in it, K. */
  private double step(double dt, double gas, double gasRate, double wall, double wallRate) {
    oldHeatTaken = heatTaken;
    System.arraycopy(heat, 0, oldHeat, 0, heat.length);
    System.arraycopy(piece, 0, oldPiece, 0, heat.length);
    Arrays.fill(bend, 0);
    double half = dt / 2;
    radial(half, gas, gasRate, wall, wallRate);
    axial(dt, gas, gasRate, wall, wallRate);
    radial(half, gas + gasRate * half, gasRate, wall + wallRate * half, wallRate);
    return bent();
  }

  /** Root mean square over the volume, with the worst place at mid height, K. */
  private double bent() {
    double sum = 0;
    for (int n = 0; n < bend.length; n++) {
      sum += grid.volume[n] * bend[n] * bend[n];
    }
    double worst = 0;
    for (int n = grid.middle; n < bend.length; n += grid.nz) {
      worst = Math.max(worst, Math.abs(bend[n]));
    }
    return Math.hypot(Math.sqrt(sum / grid.totalVolume), WEIGHT_AT_MID_HEIGHT * worst);
  }

  private void rememberPeaks() {
    for (int i = 0; i < grid.nr; i++) {
      EnthalpyCurve curve = curve(i);
      if (!curve.takesHeatOnce()) {
        continue;
      }
      for (int n = i * grid.nz; n < (i + 1) * grid.nz; n++) {
        if (heat[n] > peakHeat[n]) {
          peakHeat[n] = heat[n];
          int p = piece[n];
          takenUp[n] = curve.onceBelow[p] + curve.once[p] * (celsius[n] - curve.celsius[p]);
        }
      }
    }
  }

  private void radial(double dt, double gas, double gasRate, double wall, double wallRate) {
    for (int j = 0; j < grid.nz; j++) {
      int first = grid.firstSolid[j];
      line(
          first,
          first * grid.nz + j,
          grid.nz,
          grid.nr - first,
          grid.outward,
          grid.facingRadially,
          true,
          grid.joint[j],
          dt,
          gas,
          gasRate,
          wall,
          wallRate);
    }
  }

  private void axial(double dt, double gas, double gasRate, double wall, double wallRate) {
    for (int i = 0; i < grid.nr; i++) {
      if (grid.solidHeight[i] > 0) {
        line(
            i,
            i * grid.nz,
            1,
            grid.solidHeight[i],
            grid.upward,
            grid.facingAxially,
            false,
            0,
            dt,
            gas,
            gasRate,
            wall,
            wallRate);
      }
    }
  }

  /** Both stages along one line. */
  private void line(
      int firstIndex,
      int start,
      int stride,
      int count,
      double[] conductance,
      double[] facing,
      boolean radial,
      double joint,
      double dt,
      double gas,
      double gasRate,
      double wall,
      double wallRate) {
    Line l = line;
    int n = start;
    for (int m = 0; m < count; m++, n += stride) {
      double h = heat[n];
      l.before[m] = h;
      l.goal[m] = h;
      l.heat[m] = h;
      l.beforeCelsius[m] = celsius[n];
      l.celsius[m] = celsius[n];
      l.theta[m] = theta[n];
      l.slope[m] = slope[n];
      l.conductivity[m] = conductivity[n];
      l.piece[m] = piece[n];
      l.volume[m] = grid.volume[n];
      l.conductance[m] = conductance[n];
      l.facing[m] = facing[n];
      l.peakHeat[m] = peakHeat[n];
      l.takenUp[m] = takenUp[n];
    }
    l.count = count;
    l.joint = radial ? grid.ringStart - firstIndex - 1 : Integer.MAX_VALUE;
    l.jointArea = joint;
    l.ringMetres = grid.ringMetres;
    l.gasConvection = convection;
    l.radiation = radiation;
    l.inside = radial ? inside : curve(firstIndex);
    l.ring = ring;
    double part = GAMMA * dt;
    double joules = (1 - GAMMA) * dt * l.stage(part, gas + gasRate * part, wall + wallRate * part);
    double rest = (1 - GAMMA) / GAMMA;
    for (int m = 0; m < count; m++) {
      l.goal[m] = l.before[m] + rest * (l.heat[m] - l.before[m]);
      l.firstCelsius[m] = l.celsius[m];
    }
    joules += part * l.stage(part, gas + gasRate * dt, wall + wallRate * dt);
    heatTaken += joules;
    n = start;
    for (int m = 0; m < count; m++, n += stride) {
      heat[n] = l.heat[m];
      celsius[n] = l.celsius[m];
      theta[n] = l.theta[m];
      slope[n] = l.slope[m];
      conductivity[n] = l.conductivity[m];
      piece[n] = l.piece[m];
      bend[n] +=
          l.celsius[m] - l.beforeCelsius[m] - (l.firstCelsius[m] - l.beforeCelsius[m]) / GAMMA;
    }
    nodeSolves += l.solved;
    l.solved = 0;
  }

  /** Temperature and what follows from it at a node's heat. */
  private void evaluate(int n, EnthalpyCurve curve) {
    double h = heat[n];
    int p = piece[n];
    double[] table = curve.virgin;
    double once = 1;
    if (h < peakHeat[n]) {
      h -= takenUp[n];
      table = curve.sensible;
      once = 0;
    }
    while (p > 0 && h < table[p]) {
      p--;
    }
    while (h >= table[p + 1]) {
      p++;
    }
    double a = curve.capacity[p] + once * curve.once[p];
    double b = curve.capacitySlope[p];
    double y = h - table[p];
    double x = b == 0 ? y / a : 2 * y / (a + Math.sqrt(a * a + 2 * b * y));
    double k0 = curve.conductivity[p];
    double ks = curve.conductivitySlope[p];
    double k = k0 + ks * x;
    piece[n] = p;
    celsius[n] = curve.celsius[p] + x;
    theta[n] = curve.integral[p] + x * (k0 + 0.5 * ks * x);
    conductivity[n] = k;
    slope[n] = (a + b * x) / k;
  }
}
