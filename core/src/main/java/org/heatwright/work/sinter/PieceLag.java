package org.heatwright.work.sinter;

import java.util.Arrays;
import org.heatwright.kiln.HeatTransfer;
import org.heatwright.piece.Slab;

/**
 * How long after the chamber the back of a slab comes to its temperature, without following it: a
 * little too long rather than too short.
 *
 * <p>A chain of resistances and heat capacities answers a step like a dead time and one
 * exponential: its mean delay D (memory: Elmore, J. Appl. Phys. 19, 1948: the sum of every heat
 * capacity times the resistance in front of it) and its slowest time tau. Behind a ramp of rate r
 * the back lags by r D; once the chamber stands, by {@code r tau (1 - exp(-t_ramp/tau)) exp(-(t - D
 * + tau)/tau)}. The film is taken at 0.85 of the hold's kelvins, the materials at 0.8 of its
 * degrees.
 */
public final class PieceLag {

  private static final int CELLS = 6;
  private static final double MATERIALS_AT = 0.8;

  private PieceLag() {}

  /** Mean delay of the slab's back behind the chamber, s. */
  public static double delaySeconds(Slab slab, double topCelsius) {
    double before = 1 / film(slab, topCelsius);
    double sum = 0;
    for (Slab.Layer layer : slab.layers()) {
      double resistance = resistance(layer, topCelsius);
      sum += heat(layer, topCelsius) * (before + resistance / 2);
      before += resistance;
    }
    return sum;
  }

  /**
   * How long the back needs, once the chamber stands, to come close.
   *
   * @param slab with no heat through its back
   * @param fromCelsius where the ramp began, °C
   * @param topCelsius where the chamber stands, °C, above that
   * @param kelvinsPerHour of the ramp; infinite for a step
   * @param withinKelvins close enough, K, above zero
   * @return s, zero or more
   */
  public static double seconds(
      Slab slab,
      double fromCelsius,
      double topCelsius,
      double kelvinsPerHour,
      double withinKelvins) {
    double delay = delaySeconds(slab, topCelsius);
    double slowest = Math.min(delay, slowestSeconds(slab, topCelsius));
    double way = topCelsius - fromCelsius;
    double rate = kelvinsPerHour / 3600;
    boolean step = !Double.isFinite(rate) || rate * slowest > 1e6 * way;
    double behind = step ? way : rate * slowest * -Math.expm1(-way / (rate * slowest));
    if (behind > withinKelvins) {
      return delay - slowest + slowest * Math.log(behind / withinKelvins);
    }
    return step ? 0 : Math.max(0, delay - withinKelvins / rate);
  }

  /** The slowest time of the chain, s, by inverse iteration on cells. */
  static double slowestSeconds(Slab slab, double topCelsius) {
    int n = CELLS * slab.layers().size();
    double[] heat = new double[n];
    double[] before = new double[n];
    double last = 1 / film(slab, topCelsius);
    for (int l = 0; l < slab.layers().size(); l++) {
      Slab.Layer layer = slab.layers().get(l);
      double resistance = resistance(layer, topCelsius) / CELLS;
      for (int i = 0; i < CELLS; i++) {
        heat[l * CELLS + i] = heat(layer, topCelsius) / CELLS;
        before[l * CELLS + i] = last + resistance / 2;
        last = resistance / 2;
      }
    }
    double[] shape = new double[n];
    Arrays.fill(shape, 1);
    double slowest = 0;
    for (int iteration = 0; iteration < 60; iteration++) {
      // Heat that each cell gives off flows out through all resistances in front of it.
      double flow = 0;
      for (int i = 0; i < n; i++) {
        flow += heat[i] * shape[i];
      }
      double[] next = new double[n];
      double at = 0;
      for (int i = 0; i < n; i++) {
        at += flow * before[i];
        next[i] = at;
        flow -= heat[i] * shape[i];
      }
      double found = next[n - 1];
      for (int i = 0; i < n; i++) {
        shape[i] = next[i] / found;
      }
      if (Math.abs(found - slowest) < 1e-6 * found) {
        return found;
      }
      slowest = found;
    }
    return slowest;
  }

  private static double film(Slab slab, double topCelsius) {
    double kelvin = 0.85 * (topCelsius + 273.15);
    return slab.front().filmWattsPerSquareMetreKelvin()
        + slab.front().emissivity() * 4 * HeatTransfer.STEFAN_BOLTZMANN * Math.pow(kelvin, 3);
  }

  private static double heat(Slab.Layer layer, double topCelsius) {
    return layer.material().densityKilogramsPerCubicMetre()
        * layer.material().heatCapacityJoulesPerKilogramKelvin().at(MATERIALS_AT * topCelsius)
        * layer.thicknessMetres();
  }

  private static double resistance(Slab.Layer layer, double topCelsius) {
    return layer.thicknessMetres()
        / layer.material().conductivityWattsPerMetreKelvin().at(MATERIALS_AT * topCelsius);
  }
}
