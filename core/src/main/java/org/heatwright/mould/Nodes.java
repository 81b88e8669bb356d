package org.heatwright.mould;

import java.util.Optional;
import org.heatwright.material.Material;
import org.heatwright.numerics.LinearTable;

/**
 * The state of all nodes of a {@link BodyGrid}: heat, and what follows from it by the node's {@link
 * EnthalpyCurve}. Arrays with one entry a node, so that loops over many nodes are plain.
 *
 * <p>Each node keeps the piece of the curve that it is on and the heat at which it leaves it; only
 * nodes that leave are looked up.
 */
final class Nodes {

  private final BodyGrid grid;

  /** A node agrees with its curve when the linear law is no further off, K. */
  private final double agreesKelvins;

  private final EnthalpyCurve inside;
  private final int count;

  /** First node on the joint to the ring, if there is one: {@link #count} without it. */
  private final int jointNode;

  /** Of those nodes. */
  private final EnthalpyCurve joint;

  private final LinearTable ringConductivity;

  /** J/m³. */
  final double[] heat;

  final double[] celsius;

  /** Integral of conductivity, W/m; longer than the others, so that a next node is always there. */
  final double[] theta;

  /** Change of heat with theta, J/(m² W). */
  final double[] slope;

  /** One over the conductivity, m K/W. */
  final double[] perConductivity;

  // At the start of the step.
  final double[] oldHeat;
  final double[] oldCelsius;
  private final double[] oldTheta;
  private final double[] oldSlope;
  private final double[] oldPerConductivity;

  // The piece of the curve, and the heats between which it holds.
  private final int[] piece;
  private final double[] low;
  private final double[] high;
  private final double[] base;
  private final double[] capacity;
  private final double[] capacitySlope;
  private final double[] conductivity;
  private final double[] conductivitySlope;
  private final double[] integral;
  private final double[] pieceCelsius;

  // What was taken up once.
  private final double[] peakHeat;
  private final double[] takenUp;

  // While a line is solved for.
  private final double[] guess;
  private final double[] wanted;
  private final double[] off;
  private final double[] above;
  private final double[] capacityHere;
  private final double[] perCapacity;

  Nodes(Body body, BodyGrid grid, double agreesKelvins) {
    this.agreesKelvins = agreesKelvins;
    this.grid = grid;
    inside = new EnthalpyCurve(body.material());
    count = grid.volume.length;
    Optional<Material> ring = body.shape().ring().map(BodyShape.Ring::material);
    jointNode = ring.isPresent() ? count - grid.nz : count;
    joint = ring.map(r -> new EnthalpyCurve(body.material(), grid.besideRing, r)).orElse(inside);
    ringConductivity = ring.orElse(body.material()).conductivityWattsPerMetreKelvin();
    heat = new double[count];
    celsius = new double[count];
    theta = new double[count + grid.nz];
    slope = new double[count];
    perConductivity = new double[count];
    oldHeat = new double[count];
    oldCelsius = new double[count];
    oldTheta = new double[count];
    oldSlope = new double[count];
    oldPerConductivity = new double[count];
    piece = new int[count];
    low = new double[count];
    high = new double[count];
    base = new double[count];
    capacity = new double[count];
    capacitySlope = new double[count];
    conductivity = new double[count];
    conductivitySlope = new double[count];
    integral = new double[count];
    pieceCelsius = new double[count];
    peakHeat = new double[count];
    takenUp = new double[count];
    guess = new double[count];
    wanted = new double[count];
    off = new double[count];
    above = new double[count];
    capacityHere = new double[count];
    perCapacity = new double[count];
    for (int n = 0; n < count; n++) {
      peakHeat[n] = Double.NEGATIVE_INFINITY;
      heat[n] = curve(n).virginAt(body.start().celsius());
      guess[n] = locate(n);
    }
    evaluate(0, count);
    rememberPeaks();
  }

  private EnthalpyCurve curve(int node) {
    return node >= jointNode ? joint : inside;
  }

  /** How many times better the ring conducts than what it touches, at a node on the joint. */
  double ringRatio(int node) {
    return ringConductivity.at(celsius[node]) * perConductivity[node];
  }

  /** Makes now the start of a step. */
  void keep() {
    System.arraycopy(heat, 0, oldHeat, 0, count);
    System.arraycopy(celsius, 0, oldCelsius, 0, count);
    System.arraycopy(theta, 0, oldTheta, 0, count);
    System.arraycopy(slope, 0, oldSlope, 0, count);
    System.arraycopy(perConductivity, 0, oldPerConductivity, 0, count);
  }

  /** Goes back to the start of the step. */
  void restore() {
    System.arraycopy(oldHeat, 0, heat, 0, count);
    System.arraycopy(oldCelsius, 0, celsius, 0, count);
    System.arraycopy(oldTheta, 0, theta, 0, count);
    System.arraycopy(oldSlope, 0, slope, 0, count);
    System.arraycopy(oldPerConductivity, 0, perConductivity, 0, count);
    for (int n = 0; n < count; n++) {
      if (heat[n] < low[n] || heat[n] >= high[n]) {
        locate(n);
      }
    }
  }

  /**
   * Heat by the linear law, then temperature by the curve.
   *
   * @param change of theta, by node
   * @param from first node
   * @param to after the last node
   */
  void settle(double[] change, int from, int to) {
    for (int n = from; n < to; n++) {
      heat[n] = heat[n] + slope[n] * change[n];
    }
    for (int n = from; n < to; n++) {
      guess[n] = celsius[n] + perConductivity[n] * change[n];
      wanted[n] = theta[n] + change[n];
    }
    for (int n = from; n < to; n++) {
      if (heat[n] < low[n] || heat[n] >= high[n]) {
        guess[n] = locate(n);
      }
    }
    evaluate(from, to);
    for (int n = from; n < to; n++) {
      off[n] = Math.abs(theta[n] - wanted[n]) * perConductivity[n] - agreesKelvins;
    }
  }

  /** Whether a node is off its curve after {@link #settle}. */
  boolean disagrees(int node) {
    return off[node] > 0;
  }

  /**
   * All that follows from heat, on the pieces that nodes are on: temperature by one Newton step
   * from the guess (good to the square of how far the guess is off; a line whose guess was off is
   * solved again). One division a node, and loops short enough for the compiler to take several
   * nodes at once.
   */
  private void evaluate(int from, int to) {
    for (int n = from; n < to; n++) {
      double x = guess[n] - pieceCelsius[n];
      above[n] = x;
      capacityHere[n] = capacity[n] + capacitySlope[n] * x;
    }
    for (int n = from; n < to; n++) {
      double k = conductivity[n] + conductivitySlope[n] * above[n];
      double a = capacityHere[n];
      double per = 1 / (a * k);
      double perK = per * a;
      perCapacity[n] = per * k;
      perConductivity[n] = perK;
      slope[n] = a * perK;
    }
    for (int n = from; n < to; n++) {
      double x = above[n];
      double rest = heat[n] - base[n] - 0.5 * x * (capacity[n] + capacityHere[n]);
      double at = x + rest * perCapacity[n];
      above[n] = at;
      celsius[n] = pieceCelsius[n] + at;
    }
    for (int n = from; n < to; n++) {
      double x = above[n];
      theta[n] = integral[n] + x * (conductivity[n] + 0.5 * conductivitySlope[n] * x);
    }
  }

  /** Puts a node on the piece of its curve where its heat lies; returns its temperature, °C. */
  private double locate(int n) {
    EnthalpyCurve curve = curve(n);
    double h = heat[n];
    double taken = 0;
    double[] table = curve.virgin;
    boolean below = h < peakHeat[n];
    if (below) {
      taken = takenUp[n];
      table = curve.sensible;
    }
    int p = EnthalpyCurve.find(table, h - taken, piece[n]);
    piece[n] = p;
    double once = below ? 0 : curve.once[p];
    double from = table[p] + taken;
    double a = curve.capacity[p] + once;
    double b = curve.capacitySlope[p];
    base[n] = from;
    // Where nothing is taken up once in the piece, both laws are the same.
    double leaves = once > 0 ? Math.max(from, peakHeat[n]) : from;
    low[n] = p == 0 ? Double.NEGATIVE_INFINITY : leaves;
    high[n] = below ? Math.min(table[p + 1] + taken, peakHeat[n]) : table[p + 1];
    capacity[n] = a;
    capacitySlope[n] = b;
    conductivity[n] = curve.conductivity[p];
    conductivitySlope[n] = curve.conductivitySlope[p];
    integral[n] = curve.integral[p];
    pieceCelsius[n] = curve.celsius[p];
    double y = h - from;
    return curve.celsius[p] + 2 * y / (a + Math.sqrt(a * a + 2 * b * y));
  }

  /** Nodes that are hotter than ever have taken up what the curve takes up once below that. */
  void rememberPeaks() {
    if (inside.takesHeatOnce()) {
      rememberPeaks(inside, 0, jointNode);
    }
    if (joint.takesHeatOnce()) {
      rememberPeaks(joint, jointNode, count);
    }
  }

  private void rememberPeaks(EnthalpyCurve curve, int from, int to) {
    for (int n = from; n < to; n++) {
      if (heat[n] > peakHeat[n]) {
        peakHeat[n] = heat[n];
        int p = piece[n];
        double once = curve.once[p];
        takenUp[n] = curve.onceBelow[p] + once * (celsius[n] - curve.celsius[p]);
        if (once > 0) {
          low[n] = heat[n];
        }
      }
    }
  }

  /** Heat content of the part that is solved, J. */
  double joules() {
    double sum = 0;
    for (int n = 0; n < count; n++) {
      sum += grid.volume[n] * heat[n];
    }
    return sum;
  }
}
