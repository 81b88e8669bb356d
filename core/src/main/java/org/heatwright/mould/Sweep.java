package org.heatwright.mould;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Conduction along all grid lines of one direction at once, implicit: each line is a tridiagonal
 * system in the integral of conductivity, and the loops run across lines, so that they are plain
 * loops over arrays. Lines on which a latent heat begins or ends are iterated until they agree with
 * the curve; whatever the iterations leave, heat is conserved to rounding.
 */
final class Sweep {

  private static final double ZERO_CELSIUS_KELVIN = 273.15;
  private static final int MOST_ITERATIONS = 8;

  private final Nodes nodes;
  private final BodyGrid grid;
  private final boolean radial;
  private final double convection;
  private final double radiation;

  /** From a node to the next on its line. */
  private final int stride;

  private final int lines;
  private final int longest;
  private final int count;

  // By node: area over distance to the next one, m; the sum of both sides.
  private final double[] conductance;
  private final double[] both;
  private final double[] flux;
  private final double[] diagonal;
  private final double[] right;
  private final double[] change;

  // By place on the line, then by line; the same arrays where nodes are stored so.
  private final double[] next;
  private final double[] before;
  private final double[] lineDiagonal;
  private final double[] lineRight;
  private final double[] lineChange;
  private final double[] swept;

  // Faces: their node, line and area; the temperature about which radiation is made linear, how
  // fast it last changed, and the watts that came in by the linear law.
  private final int[] faceNode;
  private final int[] faceLine;
  private final double[] faceArea;
  private final double[] faceAbout;
  private final double[] faceRate;
  private final double[] faceWatts;

  Sweep(Nodes nodes, BodyGrid grid, boolean radial, double convection, double radiation) {
    this.nodes = nodes;
    this.grid = grid;
    this.radial = radial;
    this.convection = convection;
    this.radiation = radiation;
    count = grid.volume.length;
    stride = radial ? grid.nz : 1;
    lines = radial ? grid.nz : grid.nr;
    longest = radial ? grid.nr : grid.nz;
    conductance = (radial ? grid.outward : grid.upward).clone();
    both = new double[count];
    for (int n = 0; n < count; n++) {
      double inner = n >= stride ? conductance[n - stride] : 0;
      both[n] = grid.volume[n] > 0 ? inner + conductance[n] : 1; // in a cavity nothing happens
    }
    flux = new double[count + stride];
    diagonal = new double[count];
    right = new double[count];
    change = new double[count];
    next = new double[count];
    before = new double[count];
    for (int n = 0; n < count; n++) {
      next[lineIndex(n)] = conductance[n];
      before[lineIndex(n)] = n >= stride ? conductance[n - stride] : 0;
    }
    lineDiagonal = radial ? diagonal : new double[count];
    lineRight = radial ? right : new double[count];
    lineChange = radial ? change : new double[count];
    swept = new double[count];
    double[] facing = radial ? grid.facingRadially : grid.facingAxially;
    faceNode = IntStream.range(0, count).filter(n -> facing[n] > 0).toArray();
    faceLine = Arrays.stream(faceNode).map(n -> radial ? n % grid.nz : n / grid.nz).toArray();
    faceArea = Arrays.stream(faceNode).mapToDouble(n -> facing[n]).toArray();
    faceAbout = new double[faceNode.length];
    faceRate = new double[faceNode.length];
    faceWatts = new double[faceNode.length];
  }

  private int lineIndex(int n) {
    return radial ? n : n % grid.nz * grid.nr + n / grid.nz;
  }

  /** What comes along axial lines to each node now, W/m³; nothing in a cavity. */
  void rate(double[] wattsPerCubicMetre, double gas, double wall) {
    conduct(0, count);
    for (int n = 0; n < count; n++) {
      right[n] = flux[n] - flux[n + stride];
    }
    for (int f = 0; f < faceNode.length; f++) {
      right[faceNode[f]] += faceArea[f] * law(nodes.celsius[faceNode[f]], gas, wallPower(wall));
    }
    for (int n = 0; n < count; n++) {
      wattsPerCubicMetre[n] = grid.volume[n] > 0 ? right[n] / grid.volume[n] : 0;
    }
  }

  /**
   * Radiation is made linear about where temperatures are going: they go on as in the last step.
   */
  void expect(double seconds) {
    for (int f = 0; f < faceNode.length; f++) {
      faceAbout[f] = nodes.celsius[faceNode[f]] + seconds * faceRate[f];
    }
  }

  /** The same, from a first stage that went this share of the step. */
  void expectFrom(double share) {
    for (int f = 0; f < faceNode.length; f++) {
      double old = nodes.oldCelsius[faceNode[f]];
      faceAbout[f] = old + (nodes.celsius[faceNode[f]] - old) / share;
    }
  }

  /** Remembers how fast faces changed in a step of so many seconds. */
  void rememberRates(double seconds) {
    for (int f = 0; f < faceNode.length; f++) {
      int n = faceNode[f];
      faceRate[f] = (nodes.celsius[n] - nodes.oldCelsius[n]) / seconds;
    }
  }

  /**
   * Solves heat = goal + seconds * what comes along the lines.
   *
   * @return watts through the faces
   */
  double stage(double[] goal, double seconds, double gas, double wall) {
    int from = 0;
    int to = lines;
    for (int iteration = 1; ; iteration++) {
      assemble(goal, 1 / seconds, from, to);
      face(gas, wallPower(wall), from, to);
      eliminate(from, to);
      enter(gas, wallPower(wall), from, to);
      settle(from, to);
      int first = to;
      int last = from - 1;
      for (int line = from; line < to; line++) {
        if (disagrees(line)) {
          first = Math.min(first, line);
          last = line;
        }
      }
      if (last < first || iteration >= MOST_ITERATIONS) {
        break;
      }
      from = first;
      to = last + 1;
      for (int f = 0; f < faceNode.length; f++) {
        faceAbout[f] = nodes.celsius[faceNode[f]];
      }
    }
    double watts = 0;
    for (double w : faceWatts) {
      watts += w;
    }
    return watts;
  }

  private double wallPower(double wall) {
    double kelvin = wall + ZERO_CELSIUS_KELVIN;
    return radiation * kelvin * kelvin * kelvin * kelvin;
  }

  /** W/m² into a face at a temperature. */
  private double law(double celsius, double gas, double wallPower) {
    double kelvin = celsius + ZERO_CELSIUS_KELVIN;
    return convection * (gas - celsius) + wallPower - radiation * kelvin * kelvin * kelvin * kelvin;
  }

  /** W/(m² K), how the law falls with the temperature of the face. */
  private double film(double celsius) {
    double kelvin = celsius + ZERO_CELSIUS_KELVIN;
    return convection + 4 * radiation * kelvin * kelvin * kelvin;
  }

  /** Watts from each node to the next on its line; node n at {@code n + stride}. */
  private void conduct(int from, int to) {
    if (!radial && grid.ringSquareMetres > 0 && to == count) {
      ring();
    }
    double[] theta = nodes.theta;
    for (int n = from; n < to; n++) {
      flux[n + stride] = conductance[n] * (theta[n] - theta[n + stride]);
    }
  }

  private void assemble(double[] goal, double perSecond, int from, int to) {
    if (radial) {
      if (to - from == lines) {
        assembleNodes(goal, perSecond, 0, count);
      } else {
        for (int i = 0; i < grid.nr; i++) {
          assembleNodes(goal, perSecond, i * grid.nz + from, i * grid.nz + to);
        }
      }
      return;
    }
    assembleNodes(goal, perSecond, from * grid.nz, to * grid.nz);
    for (int i = from; i < to; i++) {
      for (int j = 0; j < grid.nz; j++) {
        lineDiagonal[j * grid.nr + i] = diagonal[i * grid.nz + j];
        lineRight[j * grid.nr + i] = right[i * grid.nz + j];
      }
    }
  }

  private void assembleNodes(double[] goal, double perSecond, int from, int to) {
    conduct(from, to);
    double[] volume = grid.volume;
    double[] heat = nodes.heat;
    double[] slope = nodes.slope;
    for (int n = from; n < to; n++) {
      double v = volume[n] * perSecond;
      diagonal[n] = v * slope[n] + both[n];
      right[n] = v * (goal[n] - heat[n]) + flux[n] - flux[n + stride];
    }
  }

  /** The ring conducts along it, beside what it touches. */
  private void ring() {
    int first = count - grid.nz;
    double here = nodes.ringRatio(first);
    for (int n = first; n + 1 < count; n++) {
      double above = nodes.ringRatio(n + 1);
      double distance = grid.height[n - first + 1] - grid.height[n - first];
      double ring = grid.ringSquareMetres * (here + above) / 2 / distance;
      conductance[n] = grid.upward[n] + ring;
      next[lineIndex(n)] = conductance[n];
      before[lineIndex(n + 1)] = conductance[n];
      both[n] = conductance[n] + (n > first ? conductance[n - 1] : 0);
      here = above;
    }
    both[count - 1] = conductance[count - 2];
  }

  private void face(double gas, double wallPower, int from, int to) {
    for (int f = 0; f < faceNode.length; f++) {
      if (faceLine[f] >= from && faceLine[f] < to) {
        int n = faceNode[f];
        double film = film(faceAbout[f]);
        double in = law(faceAbout[f], gas, wallPower) - film * (nodes.celsius[n] - faceAbout[f]);
        int at = lineIndex(n);
        lineRight[at] += faceArea[f] * in;
        lineDiagonal[at] += faceArea[f] * film * nodes.perConductivity[n];
      }
    }
  }

  private void eliminate(int from, int to) {
    for (int n = from; n < to; n++) {
      double pivot = 1 / lineDiagonal[n];
      swept[n] = next[n] * pivot;
      lineChange[n] = lineRight[n] * pivot;
    }
    for (int place = 1; place < longest; place++) {
      down(place * lines + from, place * lines + to);
    }
    for (int place = longest - 2; place >= 0; place--) {
      up(place * lines + from, place * lines + to);
    }
    if (!radial) {
      for (int i = from; i < to; i++) {
        for (int j = 0; j < grid.nz; j++) {
          change[i * grid.nz + j] = lineChange[j * grid.nr + i];
        }
      }
    }
  }

  private void down(int from, int to) {
    int width = lines;
    for (int n = from; n < to; n++) {
      double b = before[n];
      double pivot = 1 / (lineDiagonal[n] - b * swept[n - width]);
      swept[n] = next[n] * pivot;
      lineChange[n] = (lineRight[n] + b * lineChange[n - width]) * pivot;
    }
  }

  private void up(int from, int to) {
    int width = lines;
    for (int n = from; n < to; n++) {
      lineChange[n] = lineChange[n] + swept[n] * lineChange[n + width];
    }
  }

  /** The watts that faces let in by the same linear law. */
  private void enter(double gas, double wallPower, int from, int to) {
    for (int f = 0; f < faceNode.length; f++) {
      if (faceLine[f] >= from && faceLine[f] < to) {
        int n = faceNode[f];
        double celsius = nodes.celsius[n] + change[n] * nodes.perConductivity[n];
        faceWatts[f] =
            faceArea[f]
                * (law(faceAbout[f], gas, wallPower)
                    - film(faceAbout[f]) * (celsius - faceAbout[f]));
      }
    }
  }

  private void settle(int from, int to) {
    if (!radial) {
      nodes.settle(change, from * grid.nz, to * grid.nz);
    } else if (to - from == lines) {
      nodes.settle(change, 0, count);
    } else {
      for (int i = 0; i < grid.nr; i++) {
        nodes.settle(change, i * grid.nz + from, i * grid.nz + to);
      }
    }
  }

  private boolean disagrees(int line) {
    int n = radial ? line : line * grid.nz;
    for (int place = 0; place < longest; place++, n += stride) {
      if (nodes.disagrees(n)) {
        return true;
      }
    }
    return false;
  }
}
