package org.heatwright.reference;

import java.util.List;
import org.heatwright.kiln.Layer;
import org.heatwright.material.Material;

/**
 * One face of a kiln as a column of cells of 0.5 to 2.5 mm that widens outward, a thin metal shell
 * last, solved implicitly. Conductivity and heat capacity follow the material tables times hidden
 * factors. Temperatures are °C.
 *
 * <p>Backward elimination gives the first cell as a line in the hot surface's temperature, so the
 * chamber can be solved together with all its walls: {@link #conductance()} and {@link #source()}
 * say what heat flows in, W = conductance × surface − source.
 */
final class RichWall {

  /** Which way the outside looks: it sets the film of air. */
  enum Outside {
    UPRIGHT,
    UP,
    DOWN,
    /** Upright plate everywhere, emissivity from the caller: for checks against printed values. */
    PLATE
  }

  /**
   * What no nameplate tells.
   *
   * @param conductivityFactor per layer
   * @param capacityFactor per layer
   * @param contactSquareMetreKelvinPerWatt between neighbouring layers
   * @param shellKilograms per square metre of outer area
   * @param shellEmissivity of the outside
   * @param filmFactor on the free convection outside
   * @param massEdgeFactor how much faster the cells' volume grows outward than their conducting
   *     area
   */
  record Truth(
      double[] conductivityFactor,
      double[] capacityFactor,
      double contactSquareMetreKelvinPerWatt,
      double shellKilograms,
      double shellEmissivity,
      double filmFactor,
      double massEdgeFactor) {

    /** The tables as they stand, no contact resistance, next to no shell. */
    static Truth plain(int layers, double shellEmissivity) {
      double[] ones = new double[layers];
      java.util.Arrays.fill(ones, 1);
      return new Truth(ones, ones, 0, 0.001, shellEmissivity, 1, 1);
    }
  }

  static final double SIGMA = 5.670374419e-8;
  private static final double LOW = -40;
  private static final double GRID = 4;
  private static final int POINTS = 421;
  private static final double STEEL_JOULES_PER_KILOGRAM_KELVIN = 460; // sheet A.2, design value

  final int cells;
  final double innerSquareMetres;
  final double outerSquareMetres;

  /** Cells inside to outside, then the shell, °C. */
  final double[] celsius;

  private final double[] before;
  private final int[] layerOf;
  private final double[] width;
  private final double[] centre;
  private final double[] volume;
  private final double[] edgeArea;
  private final double[] contact;
  private final double[] conductivity;
  private final double[] capacity;
  private final double[] enthalpy;
  private final double shellJoulesPerKelvin;
  private final Outside outside;
  private final double heightMetres;
  private final Truth truth;

  private final double[] down;
  private final double[] heldPerSecond;
  private final double[] inverse;
  private final double[] slope;
  private final double[] offset;
  private double film;
  private double room;

  /**
   * @param squareMetres inner area
   * @param growth1 how the first side of the face grows outward, 1/m
   * @param growth2 how the second side grows, 1/m
   */
  RichWall(
      double squareMetres,
      double growth1,
      double growth2,
      List<Layer> layers,
      Truth truth,
      Outside outside,
      double heightMetres,
      double cellMetres) {
    this.truth = truth;
    this.outside = outside;
    this.heightMetres = heightMetres;
    innerSquareMetres = squareMetres;
    int n = 0;
    double[][] each = new double[layers.size()][];
    for (int l = 0; l < each.length; l++) {
      each[l] = widths(layers.get(l).thicknessMetres(), cellMetres, l == 0);
      n += each[l].length;
    }
    cells = n;
    celsius = new double[n + 1];
    before = new double[n + 1];
    layerOf = new int[n];
    width = new double[n];
    centre = new double[n];
    volume = new double[n];
    edgeArea = new double[n + 1];
    contact = new double[n + 1];
    down = new double[n + 1];
    heldPerSecond = new double[n + 1];
    inverse = new double[n + 1];
    slope = new double[n + 1];
    offset = new double[n + 1];
    conductivity = new double[POINTS * each.length];
    capacity = new double[POINTS * each.length];
    enthalpy = new double[POINTS * each.length];
    double x = 0;
    int i = 0;
    double wide = truth.massEdgeFactor();
    edgeArea[0] = squareMetres;
    for (int l = 0; l < each.length; l++) {
      if (l > 0) {
        contact[i] = truth.contactSquareMetreKelvinPerWatt();
      }
      for (int c = 0; c < each[l].length; c++, i++) {
        double dx = each[l][c];
        layerOf[i] = l;
        width[i] = dx;
        centre[i] = x + dx / 2;
        volume[i] =
            squareMetres * (1 + wide * growth1 * centre[i]) * (1 + wide * growth2 * centre[i]) * dx;
        x += dx;
        edgeArea[i + 1] = squareMetres * (1 + growth1 * x) * (1 + growth2 * x);
      }
      fillTables(layers.get(l).material(), l);
    }
    outerSquareMetres = squareMetres * (1 + wide * growth1 * x) * (1 + wide * growth2 * x);
    shellJoulesPerKelvin =
        truth.shellKilograms() * outerSquareMetres * STEEL_JOULES_PER_KILOGRAM_KELVIN;
  }

  /** Uniform cells; at the hot face they grow from a fifth, because that face heats in seconds. */
  private static double[] widths(double thickness, double cell, boolean fineFirst) {
    double[] all = new double[400];
    int n = 0;
    double left = thickness;
    if (fineFirst) {
      for (double w = cell / 5; w < cell && left - w > cell; w *= 1.12) {
        all[n++] = w;
        left -= w;
      }
    }
    int uniform = (int) Math.max(3, Math.round(left / cell));
    for (int i = 0; i < uniform; i++) {
      all[n++] = left / uniform;
    }
    return java.util.Arrays.copyOf(all, n);
  }

  private void fillTables(Material material, int layer) {
    double sum = 0;
    for (int j = 0; j < POINTS; j++) {
      double at = LOW + GRID * j;
      int k = layer * POINTS + j;
      conductivity[k] =
          material.conductivityWattsPerMetreKelvin().at(at) * truth.conductivityFactor()[layer];
      capacity[k] =
          material.heatCapacityJoulesPerKilogramKelvin().at(at)
              * material.densityKilogramsPerCubicMetre()
              * truth.capacityFactor()[layer];
      if (j > 0) {
        sum += (capacity[k] + capacity[k - 1]) / 2 * GRID;
      }
      enthalpy[k] = sum;
    }
  }

  /** Everything at one temperature. */
  void fill(double at) {
    java.util.Arrays.fill(celsius, at);
    java.util.Arrays.fill(before, at);
  }

  /**
   * A wall that has been warm for a while: falling from inside to outside with the resistance
   * passed, and still a little warmer than that in the middle.
   */
  void fillWarm(double inside, double roomCelsius, double hump) {
    double total = 0;
    for (int i = 0; i < cells; i++) {
      total += width[i] / at(conductivity, i, inside);
    }
    total += 0.1; // m²K/W, a film of 10 W/(m² K)
    double passed = 0;
    double whole = centre[cells - 1] + width[cells - 1] / 2;
    for (int i = 0; i < cells; i++) {
      double r = width[i] / at(conductivity, i, inside);
      double share = 1 - (passed + r / 2) / total + hump * Math.sin(Math.PI * centre[i] / whole);
      celsius[i] = roomCelsius + (inside - roomCelsius) * share;
      passed += r;
    }
    celsius[cells] = roomCelsius + (inside - roomCelsius) * 0.1 / total;
    System.arraycopy(celsius, 0, before, 0, cells + 1);
  }

  private double at(double[] table, int cell, double temperature) {
    double p = (temperature - LOW) / GRID;
    int j = p <= 0 ? 0 : p >= POINTS - 1 ? POINTS - 2 : (int) p;
    int k = layerOf[cell] * POINTS + j;
    return table[k] + (p - j) * (table[k + 1] - table[k]);
  }

  /** Takes properties and films anew and eliminates from the shell to the first cell. */
  void refresh(double stepSeconds, double roomCelsius) {
    room = roomCelsius;
    double shell = celsius[cells];
    double difference = Math.abs(shell - room);
    // Holman, Heat Transfer, Table 7-2 (from memory), simplified laminar plates in air.
    double free =
        switch (outside) {
              case UPRIGHT, PLATE -> 1.42;
              case UP -> 1.32;
              case DOWN -> 0.59;
            }
            * Math.pow(difference / heightMetres, 0.25)
            * truth.filmFactor();
    double hot = shell + 273.15;
    double cold = room + 273.15;
    double radiated = truth.shellEmissivity() * SIGMA * (hot * hot + cold * cold) * (hot + cold);
    film = (free + radiated) * outerSquareMetres;

    double previousHalf = 0;
    for (int i = 0; i < cells; i++) {
      double guess = celsius[i] + 0.5 * (celsius[i] - before[i]);
      double half = width[i] / 2 / at(conductivity, i, guess);
      down[i] = edgeArea[i] / (previousHalf + contact[i] + half);
      heldPerSecond[i] = volume[i] * at(capacity, i, guess) / stepSeconds;
      previousHalf = half;
      before[i] = celsius[i];
    }
    before[cells] = shell;
    down[cells] = edgeArea[cells] / previousHalf;
    heldPerSecond[cells] = shellJoulesPerKelvin / stepSeconds;
    inverse[cells] = 1 / (heldPerSecond[cells] + down[cells] + film);
    slope[cells] = down[cells] * inverse[cells];
    for (int i = cells - 1; i >= 0; i--) {
      inverse[i] = 1 / (heldPerSecond[i] + down[i] + down[i + 1] * (1 - slope[i + 1]));
      slope[i] = down[i] * inverse[i];
    }
  }

  /** The half step of elimination that depends on the present temperatures. */
  void prepare() {
    double above = (heldPerSecond[cells] * celsius[cells] + film * room) * inverse[cells];
    offset[cells] = above;
    for (int i = cells - 1; i >= 0; i--) {
      above = (heldPerSecond[i] * celsius[i] + down[i + 1] * above) * inverse[i];
      offset[i] = above;
    }
  }

  double conductance() {
    return down[0] * (1 - slope[0]);
  }

  double source() {
    return down[0] * offset[0];
  }

  /**
   * Finishes the step.
   *
   * @return what leaves the shell, W
   */
  double finish(double surfaceCelsius) {
    double t = surfaceCelsius;
    for (int i = 0; i <= cells; i++) {
      t = offset[i] + slope[i] * t;
      celsius[i] = t;
    }
    return film * (t - room);
  }

  /** Heat held above -40 °C, J. */
  double heldJoules() {
    double sum = shellJoulesPerKelvin * celsius[cells];
    for (int i = 0; i < cells; i++) {
      sum += volume[i] * at(enthalpy, i, celsius[i]);
    }
    return sum;
  }

  /** The cell whose centre is the last above a depth; see {@link #celsiusAt}. */
  int cellAbove(double metres) {
    int i = 0;
    while (i < cells - 2 && centre[i + 1] < metres) {
      i++;
    }
    return i;
  }

  /** Temperature at a depth of which {@link #cellAbove} is known, °C. */
  double celsiusAt(int cell, double metres) {
    double part = (metres - centre[cell]) / (centre[cell + 1] - centre[cell]);
    return celsius[cell] + part * (celsius[cell + 1] - celsius[cell]);
  }

  /** Conductance from the hot face to the outside of the plain layers at one temperature, W/K. */
  double plainConductance(double meanCelsius) {
    double r = 0;
    for (int i = 0; i < cells; i++) {
      r += width[i] / at(conductivity, i, meanCelsius) / ((edgeArea[i] + edgeArea[i + 1]) / 2);
    }
    return 1 / r;
  }
}
