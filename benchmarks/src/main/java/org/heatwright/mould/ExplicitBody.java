package org.heatwright.mould;

import java.util.ArrayList;
import java.util.List;
import org.heatwright.material.Material;
import org.heatwright.material.Material.LatentHeat;
import org.heatwright.numerics.LinearTable;

/**
 * The equations of a body in the plainest way, written apart from the solver: equal cells with
 * their temperature in the middle, heat moved forward in steps as short as stability asks,
 * temperature looked up in a table of heat content. No rings. A yardstick here, and the source of
 * most answers that the solver is tested against.
 */
public final class ExplicitBody {

  private static final double SIGMA = 5.670374419e-8;
  private static final double TABLE_STEP = 0.05;
  private static final double TABLE_LOW = -100;

  private final Body body;
  private final int nr;
  private final int nz;
  private final double dr;
  private final double dz;
  private final double[] sensible;
  private final double[] once;
  private final double[] conductivity;
  private final double[] heat;
  private final double[] celsius;
  private final double[] k;
  private final double[] peak;
  private final double[] change;
  private final boolean[] solid;
  private final boolean half;
  private final boolean takesOnce;
  private double shortest = Double.POSITIVE_INFINITY;

  /** Cells as near to that size, m, as fits. */
  public ExplicitBody(Body body, double cellMetres) {
    this.body = body;
    BodyShape shape = body.shape();
    half = shape.bottom() == BodyShape.Bottom.EXPOSED && shape.cavity().isEmpty();
    double radius = shape.diameterMetres() / 2;
    double tall = half ? shape.heightMetres() / 2 : shape.heightMetres();
    nr = (int) Math.round(radius / cellMetres);
    nz = (int) Math.round(tall / cellMetres);
    dr = radius / nr;
    dz = tall / nz;
    int points = (int) Math.round((1300 - TABLE_LOW) / TABLE_STEP) + 1;
    sensible = new double[points];
    once = new double[points];
    conductivity = new double[points];
    Material m = body.material();
    LinearTable c = m.heatCapacityJoulesPerKilogramKelvin();
    LinearTable cond = m.conductivityWattsPerMetreKelvin();
    double rho = m.densityKilogramsPerCubicMetre();
    double base = c.integral(TABLE_LOW);
    double latentOnce = 0;
    for (int i = 0; i < points; i++) {
      double t = TABLE_LOW + i * TABLE_STEP;
      sensible[i] = rho * (c.integral(t) - base);
      conductivity[i] = cond.at(t);
      for (LatentHeat l : m.latentHeats()) {
        double share =
            Math.max(0, Math.min(1, (t - l.fromCelsius()) / (l.toCelsius() - l.fromCelsius())));
        (l.once() ? once : sensible)[i] += rho * l.joulesPerKilogram() * share;
      }
      latentOnce = once[i];
    }
    takesOnce = latentOnce > 0;
    shortest =
        0.4 * Math.min(dr, dz) * Math.min(dr, dz) * rho * c.smallest() / (2 * cond.largest());
    int n = nr * nz;
    heat = new double[n];
    celsius = new double[n];
    k = new double[n];
    peak = new double[n];
    change = new double[n];
    solid = new boolean[n];
    double hole = shape.cavity().map(v -> v.diameterMetres() / 2).orElse(0.0);
    double floor = shape.heightMetres() - shape.cavity().map(v -> v.depthMetres()).orElse(0.0);
    double start = body.start().celsius();
    for (int i = 0; i < nr; i++) {
      for (int j = 0; j < nz; j++) {
        int at = i * nz + j;
        solid[at] = !((i + 0.5) * dr < hole && (j + 0.5) * dz > floor);
        celsius[at] = start;
        peak[at] = start;
        heat[at] = at(sensible, start) + at(once, start);
        k[at] = at(conductivity, start);
      }
    }
  }

  private static double at(double[] table, double t) {
    double x = (t - TABLE_LOW) / TABLE_STEP;
    int i = (int) x;
    return table[i] + (x - i) * (table[i + 1] - table[i]);
  }

  /** Rows of seconds, centre, mid-radius, surface, mean. */
  public List<double[]> run(LinearTable surroundings, double endSeconds, double everySeconds) {
    List<double[]> rows = new ArrayList<>();
    rows.add(row(0, surroundings.at(0)));
    int reports = (int) Math.round(endSeconds / everySeconds);
    for (int report = 1; report <= reports; report++) {
      int parts = (int) Math.ceil(everySeconds / shortest);
      double dt = everySeconds / parts;
      for (int p = 0; p < parts; p++) {
        step(dt, surroundings.at((report - 1) * everySeconds + (p + 0.5) * dt));
      }
      rows.add(row(report * everySeconds, surroundings.at(report * everySeconds)));
    }
    return rows;
  }

  private void step(double dt, double outside) {
    double[] t = celsius;
    for (int i = 0; i < nr; i++) {
      double faceOut = 2 * Math.PI * (i + 1) * dr * dz;
      double faceUp = Math.PI * (2 * i + 1) * dr * dr;
      for (int j = 0; j < nz; j++) {
        int n = i * nz + j;
        if (!solid[n]) {
          continue;
        }
        if (i + 1 < nr) {
          if (solid[n + nz]) {
            double q =
                2 * k[n] * k[n + nz] / (k[n] + k[n + nz]) * faceOut * (t[n] - t[n + nz]) / dr;
            change[n] -= q;
            change[n + nz] += q;
          }
        } else {
          change[n] += faceOut * in(n, dr, outside);
        }
        if (i > 0 && !solid[n - nz]) {
          change[n] += 2 * Math.PI * i * dr * dz * in(n, dr, outside);
        }
        if (j + 1 < nz && solid[n + 1]) {
          double q = 2 * k[n] * k[n + 1] / (k[n] + k[n + 1]) * faceUp * (t[n] - t[n + 1]) / dz;
          change[n] -= q;
          change[n + 1] += q;
        } else {
          change[n] += faceUp * in(n, dz, outside);
        }
        if (j == 0 && !half && body.shape().bottom() == BodyShape.Bottom.EXPOSED) {
          change[n] += faceUp * in(n, dz, outside);
        }
      }
    }
    for (int i = 0; i < nr; i++) {
      double volume = Math.PI * (2 * i + 1) * dr * dr * dz;
      for (int j = 0; j < nz; j++) {
        int n = i * nz + j;
        if (solid[n]) {
          heat[n] += dt * change[n] / volume;
          change[n] = 0;
          settle(n);
        }
      }
    }
  }

  /** W/m² through a face, from the middle of a cell half a cell away. */
  private double in(int n, double across, double outside) {
    double ts = surface(n, across, outside);
    return 2 * k[n] / across * (ts - celsius[n]);
  }

  private double surface(int n, double across, double outside) {
    double g = 2 * k[n] / across;
    double h = body.convectionWattsPerSquareMetreKelvin();
    double e = body.emissivity() * SIGMA;
    double hot = outside + 273.15;
    double hot4 = hot * hot * hot * hot;
    double ts = celsius[n];
    for (int i = 0; i < 3; i++) {
      double s = ts + 273.15;
      double f = g * (celsius[n] - ts) + h * (outside - ts) + e * (hot4 - s * s * s * s);
      double df = -g - h - 4 * e * s * s * s;
      ts -= f / df;
      if (Math.abs(f / df) < 1e-6) {
        break;
      }
    }
    return ts;
  }

  private void settle(int n) {
    double h = heat[n];
    int i = (int) ((celsius[n] - TABLE_LOW) / TABLE_STEP);
    double done = at(once, peak[n]);
    boolean below = takesOnce && h < at(sensible, peak[n]) + done;
    if (below) {
      while (sensible[i] + done > h) {
        i--;
      }
      while (sensible[i + 1] + done <= h) {
        i++;
      }
      celsius[n] =
          TABLE_LOW + TABLE_STEP * (i + (h - done - sensible[i]) / (sensible[i + 1] - sensible[i]));
    } else {
      while (sensible[i] + once[i] > h) {
        i--;
      }
      while (sensible[i + 1] + once[i + 1] <= h) {
        i++;
      }
      double low = sensible[i] + once[i];
      celsius[n] = TABLE_LOW + TABLE_STEP * (i + (h - low) / (sensible[i + 1] + once[i + 1] - low));
      peak[n] = Math.max(peak[n], celsius[n]);
    }
    k[n] = at(conductivity, celsius[n]);
  }

  private double[] row(double seconds, double outside) {
    double tall = body.shape().heightMetres();
    double z = half ? 0 : tall / 2;
    double mean = 0;
    double volumes = 0;
    int first = 0;
    int jm = Math.min(nz - 1, (int) (z / dz - 0.5 + 1e-9));
    if (half) {
      jm = 0;
    }
    while (!solid[first * nz + jm + 1]) {
      first++;
    }
    for (int n = 0; n < heat.length; n++) {
      if (solid[n]) {
        double v = 2 * (n / nz) + 1;
        mean += v * celsius[n];
        volumes += v;
      }
    }
    double[] row = new double[5];
    row[0] = seconds;
    row[1] =
        first == 0
            ? level(0, z) - (level(1, z) - level(0, z)) / 8
            : surface(first * nz + jm, dr, outside);
    double x = nr / 2.0 - 0.5;
    int i = (int) x;
    row[2] = level(i, z) + (x - i) * (level(i + 1, z) - level(i, z));
    int last = (nr - 1) * nz;
    row[3] =
        half
            ? surface(last, dr, outside)
            : (surface(last + jm, dr, outside) + surface(last + jm + 1, dr, outside)) / 2;
    row[4] = mean / volumes;
    return row;
  }

  /** Temperature of column i at a height, °C. */
  private double level(int i, double z) {
    if (half) {
      return celsius[i * nz] - (celsius[i * nz + 1] - celsius[i * nz]) / 8;
    }
    double y = z / dz - 0.5;
    int j = Math.max(0, Math.min(nz - 2, (int) y));
    return celsius[i * nz + j] + (y - j) * (celsius[i * nz + j + 1] - celsius[i * nz + j]);
  }
}
