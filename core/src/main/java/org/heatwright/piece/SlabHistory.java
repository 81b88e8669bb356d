package org.heatwright.piece;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.heatwright.kiln.HeatTransfer;
import org.heatwright.material.HeatCurve;
import org.heatwright.material.HeatWork;
import org.heatwright.mould.Surroundings;
import org.heatwright.numerics.NumericsException;
import org.heatwright.numerics.Samples;
import org.heatwright.units.Temperature;

/**
 * What a slab does while its surroundings change. Immutable.
 *
 * <p>Finite volumes in the heat content, so that latent heats fit in; two implicit stages a step
 * that damp whatever is stiff (<i>memory</i>: Alexander, SIAM J. Numer. Anal. 14, 1977, the
 * diagonally implicit method of order two), the step's length by the difference to first order. A
 * step never passes a corner of the surroundings. Between steps the history is straight.
 *
 * <p>A latent heat marked {@code once} is treated as reversible, as in {@link HeatCurve}.
 */
public final class SlabHistory {

  /** Difference between second and first order that a step may have, K. */
  private static final double STEP_KELVINS = 0.2;

  private static final double SHORTEST_SECONDS = 1e-6;
  private static final double FIRST_SECONDS = 0.05;
  private static final double LONGEST_SECONDS = 1800;
  private static final double GAMMA = 1 - Math.sqrt(0.5);
  private static final int MOST_ITERATIONS = 25;
  private static final double SOLVED_KELVINS = 1e-6;

  /** Film and radiation that a cell is fine enough for, W/(m² K). */
  private static final double STRONG_FILM = 250;

  private static final int MOST_CELLS = 24;

  /** The front face, the middle of each cell, the back face. */
  private final double[] depthMetres;

  /** Of each cell. */
  private final double[] widthMetres;

  private final double[] seconds;

  /** By step, then by depth. */
  private final double[][] celsius;

  private final double hottestCelsius;

  private SlabHistory(
      double[] depthMetres, double[] widthMetres, List<double[]> rows, double hottestCelsius) {
    this.depthMetres = depthMetres;
    this.widthMetres = widthMetres;
    this.hottestCelsius = hottestCelsius;
    seconds = new double[rows.size()];
    celsius = new double[rows.size()][];
    for (int i = 0; i < seconds.length; i++) {
      seconds[i] = rows.get(i)[0];
      celsius[i] = Arrays.copyOfRange(rows.get(i), 1, rows.get(i).length);
    }
  }

  /**
   * Follows a slab through its surroundings.
   *
   * @param slab what it is
   * @param around gas and walls over time, from the slab's 0 s; what is constant before its first
   *     point and after its last
   * @param start its temperature at 0 s, the same all through
   * @param endSeconds how long, s, above zero
   * @throws NumericsException if a step cannot be solved
   */
  public static SlabHistory of(
      Slab slab, Surroundings around, Temperature start, double endSeconds) {
    return of(slab, around, start, endSeconds, 1);
  }

  /**
   * As the other, finer.
   *
   * @param finer cells and tolerance are so many times as fine, 1 or more
   */
  static SlabHistory of(
      Slab slab, Surroundings around, Temperature start, double endSeconds, int finer) {
    if (!(endSeconds > 0 && Double.isFinite(endSeconds))) {
      throw new IllegalArgumentException(
          "The end (%s s) must be finite and above zero.".formatted(endSeconds));
    }
    return new Solver(slab, around, start.celsius(), finer).run(endSeconds);
  }

  /** How many cells a layer needs: by its resistance, m² K/W, against that of the face. */
  static int cells(double resistance, int most) {
    return Math.max(1, Math.min(most, (int) Math.ceil(8 * Math.sqrt(resistance * STRONG_FILM))));
  }

  // ---- reading

  /** Temperature at a depth from the front, °C. */
  public double celsiusAt(double atMetres, double second) {
    return celsiusAt(second, new double[] {atMetres})[0];
  }

  /** Temperatures at some depths from the front, °C: one search for the time. */
  public double[] celsiusAt(double second, double[] atMetres) {
    int last = seconds.length - 1;
    if (second <= seconds[0] || second >= seconds[last]) {
      return at(atMetres, celsius[second <= seconds[0] ? 0 : last]);
    }
    int found = Arrays.binarySearch(seconds, second);
    int i = found >= 0 ? found : -found - 2;
    double share =
        i + 1 < seconds.length ? (second - seconds[i]) / (seconds[i + 1] - seconds[i]) : 0;
    double[] from = at(atMetres, celsius[i]);
    if (share == 0) {
      return from;
    }
    double[] to = at(atMetres, celsius[i + 1]);
    for (int d = 0; d < from.length; d++) {
      from[d] += share * (to[d] - from[d]);
    }
    return from;
  }

  private double[] at(double[] atMetres, double[] profile) {
    double[] values = new double[atMetres.length];
    for (int d = 0; d < values.length; d++) {
      values[d] = at(atMetres[d], profile);
    }
    return values;
  }

  private double at(double atMetres, double[] profile) {
    return Samples.linear(depthMetres, profile, atMetres);
  }

  /** Mean over the thickness, °C. */
  public double meanCelsiusAt(double second) {
    double[] now = celsiusAt(second, depthMetres);
    double sum = 0;
    double width = 0;
    for (int i = 0; i < widthMetres.length; i++) {
      sum += widthMetres[i] * now[i + 1];
      width += widthMetres[i];
    }
    return sum / width;
  }

  /** Times of the solver's own steps, s from the start; between them everything is straight. */
  public double[] seconds() {
    return seconds.clone();
  }

  /** Temperature at a depth at each of {@link #seconds}, °C. */
  public double[] celsiusOf(double atMetres) {
    return Arrays.stream(celsius).mapToDouble(profile -> at(atMetres, profile)).toArray();
  }

  /** How far it is followed, s. */
  public double endSecond() {
    return seconds[seconds.length - 1];
  }

  /** The hottest anywhere in the slab at the end of any step, °C. */
  public double hottestCelsius() {
    return hottestCelsius;
  }

  /** The hottest at a depth, °C. */
  public double hottestCelsius(double atMetres) {
    return Arrays.stream(celsiusOf(atMetres)).max().orElseThrow();
  }

  /** How long a depth is between two temperatures, both counted in, s in all. */
  public double secondsWithin(double atMetres, double lowCelsius, double highCelsius) {
    double[] curve = celsiusOf(atMetres);
    double sum = 0;
    for (int i = 0; i + 1 < curve.length; i++) {
      double length = seconds[i + 1] - seconds[i];
      double a = curve[i];
      double b = curve[i + 1];
      if (a == b) {
        sum += a >= lowCelsius && a <= highCelsius ? length : 0;
      } else {
        double enters = (lowCelsius - a) / (b - a);
        double leaves = (highCelsius - a) / (b - a);
        double from = Math.max(0, Math.min(enters, leaves));
        double to = Math.min(1, Math.max(enters, leaves));
        sum += Math.max(0, to - from) * length;
      }
    }
    return sum;
  }

  /**
   * When a depth first reaches a temperature, s.
   *
   * @return infinite if it does not
   */
  public double firstSecondAt(double atMetres, double reachedCelsius) {
    double[] curve = celsiusOf(atMetres);
    boolean below = curve[0] < reachedCelsius;
    for (int i = 0; i < curve.length; i++) {
      if ((curve[i] < reachedCelsius) != below || curve[i] == reachedCelsius) {
        return i == 0
            ? seconds[0]
            : seconds[i - 1]
                + (reachedCelsius - curve[i - 1])
                    / (curve[i] - curve[i - 1])
                    * (seconds[i] - seconds[i - 1]);
      }
    }
    return Double.POSITIVE_INFINITY;
  }

  /** Heat-work at a depth, equivalent seconds at the reference. */
  public double heatWorkSeconds(HeatWork work, double atMetres) {
    return work.secondsOf(seconds, celsiusOf(atMetres));
  }

  // ---- solving

  private static final class Solver {
    private final Surroundings around;
    private final Slab.Face front;
    private final Slab.Face back;
    private final boolean open;
    private final double tolerance;
    private final int n;
    private final HeatCurve[] curve;
    private final double[] width;
    private final double[] depths;

    /** Heat content of each cell, J/m³. */
    private double[] heat;

    // State of the last evaluation.
    private final double[] t;
    private final double[] k;
    private final double[] slope;
    private double frontCelsius;
    private double backCelsius;

    Solver(Slab slab, Surroundings around, double startCelsius, int finer) {
      this.around = around;
      front = slab.front();
      open = slab.back().isPresent();
      back = slab.back().orElse(front);
      tolerance = STEP_KELVINS / finer / finer;
      List<HeatCurve> curves = new ArrayList<>();
      List<Double> widths = new ArrayList<>();
      for (Slab.Layer layer : slab.layers()) {
        double resistance =
            layer.thicknessMetres() / layer.material().conductivityWattsPerMetreKelvin().smallest();
        int cells = finer * cells(resistance, MOST_CELLS);
        HeatCurve one = HeatCurve.of(layer.material());
        for (int i = 0; i < cells; i++) {
          curves.add(one);
          widths.add(layer.thicknessMetres() / cells);
        }
      }
      n = curves.size();
      curve = curves.toArray(HeatCurve[]::new);
      width = widths.stream().mapToDouble(Double::doubleValue).toArray();
      depths = new double[n + 2];
      double depth = 0;
      for (int i = 0; i < n; i++) {
        depths[i + 1] = depth + width[i] / 2;
        depth += width[i];
      }
      depths[n + 1] = depth;
      heat = new double[n];
      for (int i = 0; i < n; i++) {
        heat[i] = curve[i].heatAt(startCelsius);
      }
      t = new double[n];
      k = new double[n];
      slope = new double[n];
      frontCelsius = startCelsius;
      backCelsius = startCelsius;
    }

    SlabHistory run(double endSeconds) {
      List<double[]> rows = new ArrayList<>();
      look(heat);
      double hottest = row(rows, 0);
      double at = 0;
      double step = FIRST_SECONDS;
      while (at < endSeconds * (1 - 1e-12)) {
        double stop = Math.min(endSeconds, around.nextPointAfter(at));
        double tried = Math.min(step, stop - at);
        // Rather two equal steps than one long and a crumb.
        if (stop - at < 2 * tried && stop - at > tried) {
          tried = (stop - at) / 2;
        }
        double[] before = heat.clone();
        double frontBefore = frontCelsius;
        double backBefore = backCelsius;
        double off = tryStep(at, tried);
        if (off > tolerance && tried > SHORTEST_SECONDS) {
          heat = before;
          frontCelsius = frontBefore;
          backCelsius = backBefore;
          step = tried * Math.max(0.2, 0.9 * Math.sqrt(tolerance / off));
          if (step < SHORTEST_SECONDS) {
            throw new NumericsException(
                "The slab's step at %s s became shorter than %s s."
                    .formatted(at, SHORTEST_SECONDS));
          }
          continue;
        }
        at = tried == stop - at ? stop : at + tried;
        hottest = Math.max(hottest, row(rows, at));
        double grow = off > 0 ? 0.9 * Math.sqrt(tolerance / off) : 4;
        double longer = tried * Math.max(0.3, Math.min(4, grow));
        // A step cut short by a corner says nothing against the longer one planned before.
        step =
            Math.min(LONGEST_SECONDS, tried < step && grow > 1 ? Math.max(step, longer) : longer);
      }
      return new SlabHistory(depths, width, rows, hottest);
    }

    private double row(List<double[]> rows, double at) {
      double[] row = new double[n + 3];
      row[0] = at;
      row[1] = frontCelsius;
      System.arraycopy(t, 0, row, 2, n);
      row[n + 2] = open ? backCelsius : t[n - 1];
      rows.add(row);
      double hottest = Double.NEGATIVE_INFINITY;
      for (int i = 1; i < row.length; i++) {
        hottest = Math.max(hottest, row[i]);
      }
      return hottest;
    }

    /** Takes the heat a step further; returns by how much first order would differ, K. */
    private double tryStep(double at, double length) {
      double[] base = heat.clone();
      look(base);
      double[] slopeBefore = slope.clone();
      double[] celsiusBefore = t.clone();
      double[] first = stage(base, heat, at + GAMMA * length, GAMMA * length);
      if (first.length == 0) {
        return Double.POSITIVE_INFINITY;
      }
      double[] rateFirst = new double[n];
      double[] secondBase = new double[n];
      for (int i = 0; i < n; i++) {
        rateFirst[i] = (first[i] - base[i]) / (GAMMA * length);
        secondBase[i] = base[i] + (1 - GAMMA) * length * rateFirst[i];
      }
      double[] end = stage(secondBase, first, at + length, GAMMA * length);
      if (end.length == 0) {
        return Double.POSITIVE_INFINITY;
      }
      double worst = 0;
      for (int i = 0; i < n; i++) {
        double rateEnd = (end[i] - secondBase[i]) / (GAMMA * length);
        double difference = GAMMA * length * (rateEnd - rateFirst[i]);
        // Into or out of a latent heat, the side that answers more counts.
        worst = Math.max(worst, Math.abs(difference) * Math.max(slopeBefore[i], slope[i]));
        // The history is straight between steps: none may pass over the corner of a curve.
        double halfway = (base[i] + end[i]) / 2;
        double bend = curve[i].celsius(curve[i].interval(halfway), halfway);
        worst = Math.max(worst, Math.abs(bend - (celsiusBefore[i] + t[i]) / 2));
      }
      heat = end;
      return worst;
    }

    /** Solves {@code h = base + dt f(h)} at a time; empty if it does not converge. */
    private double[] stage(double[] base, double[] guess, double at, double dt) {
      double gas = around.gasCelsiusAt(at);
      double walls = around.wallsCelsiusAt(at);
      double[] h = guess.clone();
      double[] lower = new double[n];
      double[] diagonal = new double[n];
      double[] upper = new double[n];
      double[] right = new double[n];
      for (int iteration = 0; iteration < MOST_ITERATIONS; iteration++) {
        look(h);
        for (int i = 0; i < n; i++) {
          right[i] = base[i] - h[i];
          diagonal[i] = 1;
          lower[i] = 0;
          upper[i] = 0;
        }
        for (int i = 0; i + 1 < n; i++) {
          double through = 1 / (width[i] / (2 * k[i]) + width[i + 1] / (2 * k[i + 1]));
          double flow = through * (t[i] - t[i + 1]);
          double here = dt / width[i];
          double there = dt / width[i + 1];
          right[i] -= here * flow;
          right[i + 1] += there * flow;
          diagonal[i] += here * through * slope[i];
          upper[i] = -here * through * slope[i + 1];
          diagonal[i + 1] += there * through * slope[i + 1];
          lower[i + 1] = -there * through * slope[i];
        }
        frontCelsius = face(front, t[0], width[0] / (2 * k[0]), gas, walls, frontCelsius);
        double inFlow = (frontCelsius - t[0]) * 2 * k[0] / width[0];
        right[0] += dt / width[0] * inFlow;
        diagonal[0] += dt / width[0] * through(front, frontCelsius, 2 * k[0] / width[0]) * slope[0];
        if (open) {
          int last = n - 1;
          double conductance = 2 * k[last] / width[last];
          backCelsius = face(back, t[last], 1 / conductance, gas, walls, backCelsius);
          right[last] += dt / width[last] * (backCelsius - t[last]) * conductance;
          diagonal[last] +=
              dt / width[last] * through(back, backCelsius, conductance) * slope[last];
        }
        // Elimination (Thomas).
        for (int i = 1; i < n; i++) {
          double factor = lower[i] / diagonal[i - 1];
          diagonal[i] -= factor * upper[i - 1];
          right[i] -= factor * right[i - 1];
        }
        double worst = 0;
        for (int i = n - 1; i >= 0; i--) {
          right[i] = (right[i] - (i + 1 < n ? upper[i] * right[i + 1] : 0)) / diagonal[i];
          worst = Math.max(worst, Math.abs(right[i]) * slope[i]);
        }
        for (int i = 0; i < n; i++) {
          h[i] += right[i];
        }
        if (worst < SOLVED_KELVINS) {
          look(h);
          return h;
        }
      }
      return new double[0];
    }

    private void look(double[] h) {
      for (int i = 0; i < n; i++) {
        int interval = curve[i].interval(h[i]);
        t[i] = curve[i].celsius(interval, h[i]);
        k[i] = curve[i].conductivity(interval, h[i]);
        slope[i] = curve[i].kelvinsPerHeat(interval);
      }
    }

    /** Temperature of a face whose inside node is a resistance away, °C. */
    private static double face(
        Slab.Face face, double node, double resistance, double gas, double walls, double guess) {
      double film = face.filmWattsPerSquareMetreKelvin();
      double incoming = face.emissivity() * HeatTransfer.emission(walls);
      double celsius = guess;
      for (int i = 0; i < 50; i++) {
        double residual =
            incoming
                - face.emissivity() * HeatTransfer.emission(celsius)
                + film * (gas - celsius)
                + (node - celsius) / resistance;
        double change =
            residual
                / (face.emissivity() * HeatTransfer.emissionSlope(celsius) + film + 1 / resistance);
        celsius += change;
        if (Math.abs(change) < SOLVED_KELVINS / 10) {
          break;
        }
      }
      return celsius;
    }

    /** How much less flows in for each kelvin of the node behind a face, W/(m² K). */
    private static double through(Slab.Face face, double celsius, double conductance) {
      double outside =
          face.emissivity() * HeatTransfer.emissionSlope(celsius)
              + face.filmWattsPerSquareMetreKelvin();
      return outside * conductance / (outside + conductance);
    }
  }
}
