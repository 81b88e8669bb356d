package org.heatwright.mould;

/** The nodes of one grid line, side by side in memory, while they are solved for. */
final class Line {

  private static final double ZERO_CELSIUS_KELVIN = 273.15;
  private static final int MOST_ITERATIONS = 8;

  /** A line agrees with its curve when no node is further off, K. */
  private static final double AGREES_KELVINS = 0.01;

  final double[] before;
  final double[] goal;
  final double[] heat;
  final double[] beforeCelsius;
  final double[] firstCelsius;
  final double[] celsius;
  final double[] theta;
  final double[] slope;
  final double[] conductivity;
  final int[] piece;
  final double[] volume;
  final double[] conductance;
  final double[] facing;
  final double[] peakHeat;
  final double[] takenUp;
  private final double[] sweepC;
  private final double[] sweepD;

  int count;

  /** The node on the joint to the ring; large if there is none. */
  int joint;

  double jointArea;
  double ringMetres;
  double gasConvection;
  double radiation;
  EnthalpyCurve inside;
  EnthalpyCurve ring;
  long solved;

  Line(int longest, EnthalpyCurve curve) {
    before = new double[longest];
    goal = new double[longest];
    heat = new double[longest];
    beforeCelsius = new double[longest];
    firstCelsius = new double[longest];
    celsius = new double[longest];
    theta = new double[longest];
    slope = new double[longest];
    conductivity = new double[longest];
    piece = new int[longest];
    volume = new double[longest];
    conductance = new double[longest];
    facing = new double[longest];
    peakHeat = new double[longest];
    takenUp = new double[longest];
    sweepC = new double[longest];
    sweepD = new double[longest];
    inside = curve;
    ring = curve;
  }

  /** Solves heat = goal + tau flux(heat); returns the watts through the faces. */
  double stage(double tau, double gas, double wall) {
    double perTau = 1 / tau;
    double wallKelvin = wall + ZERO_CELSIUS_KELVIN;
    double wallPower = radiation * wallKelvin * wallKelvin * wallKelvin * wallKelvin;
    for (int iteration = 1; ; iteration++) {
      eliminate(perTau, gas, wallPower);
      double watts = substitute(gas, wallPower);
      boolean agree = settle(inside, 0, joint < count ? joint + 1 : count);
      if (joint < count) {
        agree &= settle(ring, joint + 1, count);
      }
      solved += count;
      if (agree || iteration >= MOST_ITERATIONS) {
        return watts;
      }
    }
  }

  private void eliminate(double perTau, double gas, double wallPower) {
    double innerOwn = 0;
    double innerOther = 0;
    double inflow = 0;
    double lastC = 0;
    double lastD = 0;
    int last = count - 1;
    double here = theta[0];
    for (int m = 0; m <= last; m++) {
      double outerOwn = 0;
      double outerOther = 0;
      double outflow = 0;
      if (m < last) {
        double next = theta[m + 1];
        if (m != joint) {
          outerOwn = conductance[m];
          outerOther = outerOwn;
          outflow = outerOwn * (here - next);
        } else {
          // From a node on the joint through the ring's own resistance.
          double g = jointArea * conductivity[m + 1] / ringMetres;
          outerOwn = g / conductivity[m];
          outerOther = g / conductivity[m + 1];
          outflow = g * (celsius[m] - celsius[m + 1]);
        }
        here = next;
      }
      double volumes = volume[m] * perTau;
      double diagonal = volumes * slope[m] + innerOwn + outerOwn;
      double right = volumes * (goal[m] - heat[m]) + inflow - outflow;
      double area = facing[m];
      if (area > 0) {
        double kelvin = celsius[m] + ZERO_CELSIUS_KELVIN;
        double cube = radiation * kelvin * kelvin * kelvin;
        right += area * (gasConvection * (gas - celsius[m]) + wallPower - cube * kelvin);
        diagonal += area * (gasConvection + 4 * cube) / conductivity[m];
      }
      double pivot = 1 / (diagonal - innerOther * lastC);
      lastC = outerOther * pivot;
      lastD = (right + innerOther * lastD) * pivot;
      sweepC[m] = lastC;
      sweepD[m] = lastD;
      innerOwn = outerOther;
      innerOther = outerOwn;
      inflow = outflow;
    }
  }

  /** Leaves the change of theta in sweepD; returns the watts the faces let in by the same law. */
  private double substitute(double gas, double wallPower) {
    double watts = 0;
    double change = 0;
    for (int m = count - 1; m >= 0; m--) {
      change = sweepD[m] + sweepC[m] * change;
      sweepD[m] = change;
      double area = facing[m];
      if (area > 0) {
        double kelvin = celsius[m] + ZERO_CELSIUS_KELVIN;
        double cube = radiation * kelvin * kelvin * kelvin;
        watts +=
            area
                * (gasConvection * (gas - celsius[m])
                    + wallPower
                    - cube * kelvin
                    - (gasConvection + 4 * cube) * change / conductivity[m]);
      }
    }
    return watts;
  }

  /** Heat by the linear law, then temperature by the curve; tells whether both agree. */
  private boolean settle(EnthalpyCurve curve, int from, int to) {
    double[] curveCelsius = curve.celsius;
    double[] curveCapacity = curve.capacity;
    double[] curveSlope = curve.capacitySlope;
    double[] curveK = curve.conductivity;
    double[] curveKSlope = curve.conductivitySlope;
    double[] curveIntegral = curve.integral;
    double[] curveOnce = curve.once;
    boolean agree = true;
    for (int m = from; m < to; m++) {
      double linear = theta[m] + sweepD[m];
      double h = heat[m] + slope[m] * sweepD[m];
      heat[m] = h;
      int p = piece[m];
      double[] table = curve.virgin;
      double a;
      if (h < peakHeat[m]) {
        h -= takenUp[m];
        table = curve.sensible;
        p = curve.find(table, h, p);
        a = curveCapacity[p];
      } else {
        p = curve.find(table, h, p);
        a = curveCapacity[p] + curveOnce[p];
      }
      piece[m] = p;
      double y = h - table[p];
      double root = Math.sqrt(a * a + 2 * curveSlope[p] * y);
      double x = 2 * y / (a + root);
      double k0 = curveK[p];
      double ks = curveKSlope[p];
      double k = k0 + ks * x;
      double th = curveIntegral[p] + x * (k0 + 0.5 * ks * x);
      celsius[m] = curveCelsius[p] + x;
      theta[m] = th;
      conductivity[m] = k;
      slope[m] = root / k;
      agree &= Math.abs(th - linear) < AGREES_KELVINS * k;
    }
    return agree;
  }
}
