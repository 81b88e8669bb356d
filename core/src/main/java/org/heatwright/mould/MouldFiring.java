package org.heatwright.mould;

import java.util.Arrays;
import org.heatwright.kiln.HeatTransfer;
import org.heatwright.kiln.KilnParameters;
import org.heatwright.numerics.NormalSteps;
import org.heatwright.numerics.Samples;
import org.heatwright.units.Temperature;

/**
 * What happens inside one mould of a kind while its surroundings change: temperatures in the
 * axisymmetric section, the water that is left, the steam that leaves. Immutable.
 *
 * <p>Limits: moulds of one kind are alike; vapour leaves where it boils; the bottom takes up heat
 * like the top, which is so where a mould stands raised or on a shelf as hot as the chamber.
 */
public final class MouldFiring {

  /**
   * Within 2 K of the converged answer in 199 of 200 minutes (tested), further off only where a
   * front passes: materials are far less sure. Coarse cells with short steps are nearer, and sooner
   * there, than finer cells with long ones.
   */
  public static final BodySolver.Accuracy QUICK = new BodySolver.Accuracy(0.4, 0.9, 0);

  /** In two thirds of the time, half again as far off: while somebody is still changing a value. */
  public static final BodySolver.Accuracy SKETCH = new BodySolver.Accuracy(0.3, 1.5, 0);

  /** Less of the free water than this is none. */
  private static final double DRY_SHARE = 0.005;

  /** Emissivity 0.75 to 0.95, view 0.6 to 1, standard deviation of the logarithm. Estimate. */
  private static final double RADIATION_SPREAD = 0.15;

  /** Rows are not closer than this, s. */
  private static final double ROW_SECONDS = 30;

  /**
   * What the mould is made of and how it stands.
   *
   * @param mould its size; the count does not matter
   * @param investment the mix
   * @param conductivityFactor multiplies the investment's conductivity
   * @param heatFactor multiplies its heat content, water included
   * @param convectionFactor multiplies convection in the chamber
   * @param radiationFactor multiplies the radiation that it takes up: emissivity, view
   */
  public record Setting(
      Mould mould,
      Investment investment,
      double conductivityFactor,
      double heatFactor,
      double convectionFactor,
      double radiationFactor) {

    /** As the tables have it. */
    public static Setting of(Mould mould, Investment investment) {
      return new Setting(mould, investment, 1, 1, 1, 1);
    }

    /**
     * As one draw of a forecast has it.
     *
     * @param index of the draw: how well the mould sees the chamber goes with it
     */
    public static Setting of(Mould mould, Investment investment, KilnParameters draw, int index) {
      return new Setting(
          mould,
          investment,
          draw.loadConductivityFactor(),
          draw.loadHeatFactor(),
          draw.convectionFactor(),
          Math.exp(RADIATION_SPREAD * NormalSteps.score(index, NormalSteps.ROOT_TWO)));
    }

    /** The body to solve. */
    public Body body(Temperature start) {
      return new Body(
          mould.shape(BodyShape.Bottom.EXPOSED),
          MouldLoad.material(investment).scaled(conductivityFactor, heatFactor),
          Math.min(1, MouldLoad.EMISSIVITY * MouldLoad.VIEW * radiationFactor),
          HeatTransfer.CHAMBER_CONVECTION * convectionFactor,
          start);
    }
  }

  private final Setting setting;
  private final Temperature start;
  private final Surroundings around;
  private final double[] seconds;
  private final double[] centre;
  private final double[] surface;
  private final double[] coldest;
  private final double[] hottest;
  private final double[] mean;
  private final double[] waterShare;
  private final double[] steam;

  private MouldFiring(Setting setting, Temperature start, Surroundings around, Recorder recorder) {
    this.setting = setting;
    this.start = start;
    this.around = around;
    int n = recorder.rows;
    seconds = Arrays.copyOf(recorder.seconds, n);
    centre = Arrays.copyOf(recorder.centre, n);
    surface = Arrays.copyOf(recorder.surface, n);
    coldest = Arrays.copyOf(recorder.coldest, n);
    hottest = Arrays.copyOf(recorder.hottest, n);
    mean = Arrays.copyOf(recorder.mean, n);
    waterShare = Arrays.copyOf(recorder.waterShare, n);
    steam = Arrays.copyOf(recorder.steam, n);
  }

  /**
   * Solves a firing as exactly as forecasts need it.
   *
   * @param setting the mould
   * @param start its temperature at the start
   * @param around its surroundings, from 0 s on
   */
  public static MouldFiring of(Setting setting, Temperature start, Surroundings around) {
    return of(setting, start, around, QUICK);
  }

  /** Solves a firing as exactly as asked for. */
  public static MouldFiring of(
      Setting setting, Temperature start, Surroundings around, BodySolver.Accuracy accuracy) {
    BodySolver solver = new BodySolver(setting.body(start), accuracy);
    Recorder recorder = new Recorder(setting, solver);
    recorder.record();
    around.drive(solver, around.lastSecond(), recorder);
    recorder.record();
    return new MouldFiring(setting, start, around, recorder);
  }

  /** Collects the rows. */
  private static final class Recorder implements BodySolver.Watcher {
    private final BodySolver solver;
    private final double[] peak;
    private final MouldWater water;
    private int rows;
    private double[] seconds = new double[1024];
    private double[] centre = new double[1024];
    private double[] surface = new double[1024];
    private double[] coldest = new double[1024];
    private double[] hottest = new double[1024];
    private double[] mean = new double[1024];
    private double[] waterShare = new double[1024];
    private double[] steam = new double[1024];
    private double waterBefore = Double.NaN;

    Recorder(Setting setting, BodySolver solver) {
      this.solver = solver;
      this.peak = new double[solver.cells()];
      Arrays.fill(peak, Double.NEGATIVE_INFINITY);
      this.water = MouldWater.of(setting.investment(), setting.heatFactor());
    }

    @Override
    public void step(BodySolver of) {
      for (int n = 0; n < peak.length; n++) {
        peak[n] = Math.max(peak[n], solver.celsiusOfNode(n));
      }
      if (solver.seconds() - seconds[rows - 1] >= ROW_SECONDS) {
        record();
      }
    }

    void record() {
      double now = solver.seconds();
      double since = rows == 0 ? 0 : now - seconds[rows - 1];
      if (rows > 0 && since <= 0) {
        return;
      }
      if (rows == seconds.length) {
        int more = 2 * rows;
        seconds = Arrays.copyOf(seconds, more);
        centre = Arrays.copyOf(centre, more);
        surface = Arrays.copyOf(surface, more);
        coldest = Arrays.copyOf(coldest, more);
        hottest = Arrays.copyOf(hottest, more);
        mean = Arrays.copyOf(mean, more);
        waterShare = Arrays.copyOf(waterShare, more);
        steam = Arrays.copyOf(steam, more);
      }
      double cold = Double.POSITIVE_INFINITY;
      double hot = Double.NEGATIVE_INFINITY;
      double volume = 0;
      double warmth = 0;
      double free = 0;
      double all = 0;
      for (int n = 0; n < peak.length; n++) {
        double v = solver.insideCubicMetres(n);
        if (v <= 0) {
          continue;
        }
        double t = solver.celsiusOfNode(n);
        double most = Math.max(peak[n], t);
        peak[n] = most;
        cold = Math.min(cold, t);
        hot = Math.max(hot, t);
        volume += v;
        warmth += v * t;
        free += v * water.freeShare(most);
        all += v * water.left(most);
      }
      seconds[rows] = now;
      centre[rows] = solver.centreCelsius();
      surface[rows] = solver.surfaceCelsius();
      coldest[rows] = cold;
      hottest[rows] = hot;
      mean[rows] = warmth / volume;
      waterShare[rows] = water.freeAtStart() > 0 ? free / volume : 0;
      steam[rows] = since > 0 ? solver.wholeOf(waterBefore - all) / since : 0;
      waterBefore = all;
      rows++;
    }
  }

  public Setting setting() {
    return setting;
  }

  /**
   * The whole section at a time, solved once more up to there.
   *
   * @param second s; times outside the firing give its first or last section
   */
  public Section sectionAt(double second) {
    BodySolver solver = new BodySolver(setting.body(start));
    around.drive(solver, Math.min(second, around.lastSecond()), step -> {});
    return solver.section();
  }

  public int rows() {
    return seconds.length;
  }

  /** Time of a row, s. */
  public double second(int row) {
    return seconds[row];
  }

  /** The core at mid height, °C. */
  public double centreCelsius(int row) {
    return centre[row];
  }

  /** The outer face at mid height, °C. */
  public double surfaceCelsius(int row) {
    return surface[row];
  }

  /** The coldest place in the investment, °C. */
  public double coldestCelsius(int row) {
    return coldest[row];
  }

  /** The hottest place in the investment, °C. */
  public double hottestCelsius(int row) {
    return hottest[row];
  }

  /** Mean of the investment, °C. */
  public double meanCelsius(int row) {
    return mean[row];
  }

  /** Share of the free water that is still there, 0 to 1. */
  public double waterShare(int row) {
    return waterShare[row];
  }

  /** Steam that left since the row before, kg/s. */
  public double steamKilogramsPerSecond(int row) {
    return steam[row];
  }

  /** The core at a time, °C. */
  public double centreCelsiusAt(double second) {
    return at(centre, second);
  }

  /** The outer face at a time, °C. */
  public double surfaceCelsiusAt(double second) {
    return at(surface, second);
  }

  /** The coldest place at a time, °C. */
  public double coldestCelsiusAt(double second) {
    return at(coldest, second);
  }

  /** The hottest place at a time, °C. */
  public double hottestCelsiusAt(double second) {
    return at(hottest, second);
  }

  /** Share of the free water left at a time, 0 to 1. */
  public double waterShareAt(double second) {
    return at(waterShare, second);
  }

  /** When the last free water has gone, s; infinite if it never has. */
  public double drySeconds() {
    for (int i = 0; i < seconds.length; i++) {
      if (waterShare[i] < DRY_SHARE) {
        return seconds[i];
      }
    }
    return Double.POSITIVE_INFINITY;
  }

  /**
   * From when on the whole inside stays within a range until {@code untilSecond}, s; infinite if it
   * is not inside then.
   */
  public double staysWithinSeconds(double lowCelsius, double highCelsius, double untilSecond) {
    double since = Double.POSITIVE_INFINITY;
    for (int i = seconds.length - 1; i >= 0; i--) {
      if (seconds[i] > untilSecond) {
        continue;
      }
      if (coldest[i] < lowCelsius || hottest[i] > highCelsius) {
        return since;
      }
      since = seconds[i];
    }
    return since;
  }

  private double at(double[] column, double second) {
    return Samples.linear(seconds, column, second);
  }
}
