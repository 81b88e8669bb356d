package org.heatwright.mould;

import java.util.List;
import java.util.TreeSet;
import org.heatwright.material.Material;
import org.heatwright.material.Material.LatentHeat;
import org.heatwright.numerics.LinearTable;

/**
 * A material's heat content and the integral of its conductivity, both exact, as pieces between the
 * temperatures where a table bends or a latent heat begins or ends. Within a piece heat capacity
 * and conductivity are straight lines of temperature, so both integrals are parabolas.
 *
 * <p>Heat that is taken up once (drying, dehydration) is kept apart: a cell follows {@code virgin}
 * while it is as hot as it ever was, and {@code sensible} plus what it has taken up below that.
 *
 * <p>Temperatures in °C, heat in J/m³ counted from {@value #LOWEST_CELSIUS} °C, conductivity
 * integrals in W/m from there. Arrays have one entry a piece at its lower end; {@code virgin} and
 * {@code sensible} have one more, infinity.
 */
final class EnthalpyCurve {

  static final double LOWEST_CELSIUS = -273.15;

  final double[] celsius;
  final double[] sensible;
  final double[] virgin;
  final double[] onceBelow;
  final double[] integral;

  /** J/(m³ K) at the lower end, without what is taken up once, and its slope. */
  final double[] capacity;

  final double[] capacitySlope;

  /** What is taken up once, J/(m³ K), constant in a piece. */
  final double[] once;

  final double[] conductivity;
  final double[] conductivitySlope;

  EnthalpyCurve(Material material) {
    this(material, 1, material);
  }

  /**
   * Two materials side by side at one temperature.
   *
   * @param material whose conductivity counts
   * @param share its share of the volume
   * @param other what takes the rest of it
   */
  EnthalpyCurve(Material material, double share, Material other) {
    LinearTable k = material.conductivityWattsPerMetreKelvin();
    List<Part> parts =
        share == 1
            ? List.of(new Part(1, material))
            : List.of(new Part(share, material), new Part(1 - share, other));
    TreeSet<Double> kinks = new TreeSet<>();
    kinks.add(LOWEST_CELSIUS);
    k.asPoints().forEach(p -> kinks.add(p[0]));
    for (Part part : parts) {
      part.material.heatCapacityJoulesPerKilogramKelvin().asPoints().forEach(p -> kinks.add(p[0]));
      for (LatentHeat l : part.material.latentHeats()) {
        kinks.add(l.fromCelsius());
        kinks.add(l.toCelsius());
      }
    }
    kinks.headSet(LOWEST_CELSIUS).clear();
    int n = kinks.size();
    celsius = kinks.stream().mapToDouble(Double::doubleValue).toArray();
    sensible = new double[n + 1];
    virgin = new double[n + 1];
    onceBelow = new double[n];
    integral = new double[n];
    capacity = new double[n];
    capacitySlope = new double[n];
    once = new double[n];
    conductivity = new double[n];
    conductivitySlope = new double[n];
    for (int i = 0; i < n; i++) {
      double low = celsius[i];
      double middle = i + 1 < n ? (low + celsius[i + 1]) / 2 : low + 1;
      conductivity[i] = k.at(low);
      conductivitySlope[i] = (k.at(middle) - k.at(low)) / (middle - low);
      for (Part part : parts) {
        LinearTable c = part.material.heatCapacityJoulesPerKilogramKelvin();
        double density = part.share * part.material.densityKilogramsPerCubicMetre();
        capacity[i] += density * c.at(low);
        capacitySlope[i] += density * (c.at(middle) - c.at(low)) / (middle - low);
        for (LatentHeat l : part.material.latentHeats()) {
          if (middle > l.fromCelsius() && middle < l.toCelsius()) {
            double spread = density * l.joulesPerKilogram() / (l.toCelsius() - l.fromCelsius());
            if (l.once()) {
              once[i] += spread;
            } else {
              capacity[i] += spread;
            }
          }
        }
      }
      if (i + 1 < n) {
        double x = celsius[i + 1] - low;
        sensible[i + 1] = sensible[i] + x * (capacity[i] + 0.5 * capacitySlope[i] * x);
        onceBelow[i + 1] = onceBelow[i] + x * once[i];
        virgin[i + 1] = sensible[i + 1] + onceBelow[i + 1];
        integral[i + 1] = integral[i] + x * (conductivity[i] + 0.5 * conductivitySlope[i] * x);
      }
    }
    sensible[n] = Double.POSITIVE_INFINITY;
    virgin[n] = Double.POSITIVE_INFINITY;
  }

  private record Part(double share, Material material) {}

  boolean takesHeatOnce() {
    return onceBelow[onceBelow.length - 1] > 0;
  }

  /** Heat content at a temperature never exceeded before, J/m³. */
  double virginAt(double temperatureCelsius) {
    int p = pieceAt(temperatureCelsius);
    double x = temperatureCelsius - celsius[p];
    return virgin[p] + x * (capacity[p] + once[p] + 0.5 * capacitySlope[p] * x);
  }

  private int pieceAt(double temperatureCelsius) {
    int p = 0;
    while (p + 1 < celsius.length && celsius[p + 1] <= temperatureCelsius) {
      p++;
    }
    return p;
  }

  /** The piece of a heat content, looked for from one that was near. */
  static int find(double[] table, double heat, int near) {
    int p = near;
    while (p > 0 && heat < table[p]) {
      p--;
    }
    while (heat >= table[p + 1]) {
      p++;
    }
    return p;
  }
}
