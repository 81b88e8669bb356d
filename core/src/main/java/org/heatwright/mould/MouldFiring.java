package org.heatwright.mould;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.heatwright.kiln.KilnParameters;
import org.heatwright.material.Material;
import org.heatwright.units.Temperature;

/**
 * What happens inside one mould of a kind while its surroundings change: temperatures in the
 * axisymmetric section, the water that is left, the steam that leaves. Immutable.
 *
 * <p>Limits: moulds of one kind are alike; vapour leaves where it boils; the bottom takes up heat
 * like the top, which is so where a mould stands raised or on a shelf as hot as the chamber.
 */
public final class MouldFiring {

  /** Emissivity of investment and oxidised steel at furnace temperature. Source: estimate. */
  private static final double EMISSIVITY = 0.85;

  /** Share of its surroundings that a mould among others sees. Source: estimate. */
  private static final double VIEW = 0.8;

  /** Convection inside a chamber, W/(m² K). Source: estimate, range 5 to 10. */
  private static final double CHAMBER_CONVECTION = 8;

  /** Within two kelvins of the converged answer: materials are far less sure (tested). */
  public static final BodySolver.Accuracy QUICK = new BodySolver.Accuracy(0.6, 3, 0);

  /** Rows are not closer than this, s. */
  private static final double ROW_SECONDS = 30;

  /**
   * What the mould is made of and how it stands.
   *
   * @param mould its size; the count does not matter
   * @param investment the mix
   * @param cavity the hole of sprue and patterns, where it is to be told
   * @param conductivityFactor multiplies the investment's conductivity
   * @param heatFactor multiplies its heat content, water included
   * @param convectionFactor multiplies convection in the chamber
   */
  public record Setting(
      Mould mould,
      Investment investment,
      Optional<BodyShape.Cavity> cavity,
      double conductivityFactor,
      double heatFactor,
      double convectionFactor) {

    /** As the tables have it. */
    public static Setting of(Mould mould, Investment investment) {
      return new Setting(mould, investment, Optional.empty(), 1, 1, 1);
    }

    /** As one draw of a forecast has it. */
    public static Setting of(Mould mould, Investment investment, KilnParameters draw) {
      return new Setting(
          mould,
          investment,
          Optional.empty(),
          draw.loadConductivityFactor(),
          draw.loadHeatFactor(),
          draw.convectionFactor());
    }

    /** The body to solve. */
    public Body body(Temperature start) {
      Material material = MouldLoad.material(investment).scaled(conductivityFactor, heatFactor);
      Optional<BodyShape.Ring> ring =
          mould.wallMetres() > 0
              ? Optional.of(new BodyShape.Ring(mould.wallMetres(), MouldLoad.STEEL))
              : Optional.empty();
      return new Body(
          new BodyShape(
              mould.diameterMetres(), mould.heightMetres(), BodyShape.Bottom.EXPOSED, cavity, ring),
          material,
          EMISSIVITY * VIEW,
          CHAMBER_CONVECTION * convectionFactor,
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
  private final List<Section> sections;

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
    sections = List.copyOf(recorder.sections);
  }

  /**
   * Solves a firing.
   *
   * @param setting the mould
   * @param start its temperature at the start
   * @param around its surroundings, from 0 s on
   */
  public static MouldFiring of(Setting setting, Temperature start, Surroundings around) {
    return of(setting, start, around, Double.POSITIVE_INFINITY, QUICK);
  }

  /**
   * Solves a firing and keeps the whole section every so often.
   *
   * @param sectionSeconds how often, s, above zero; infinite: never
   */
  public static MouldFiring of(
      Setting setting, Temperature start, Surroundings around, double sectionSeconds) {
    return of(setting, start, around, sectionSeconds, BodySolver.Accuracy.USUAL);
  }

  /** Solves a firing as exactly as asked for. */
  public static MouldFiring of(
      Setting setting,
      Temperature start,
      Surroundings around,
      double sectionSeconds,
      BodySolver.Accuracy accuracy) {
    BodySolver solver = new BodySolver(setting.body(start), accuracy);
    Recorder recorder = new Recorder(setting, solver, sectionSeconds);
    recorder.record();
    for (int i = 0; i + 1 < around.size(); i++) {
      double from = around.second(i);
      double to = around.second(i + 1);
      solver.advance(
          to - from,
          Temperature.ofCelsius(around.gasCelsiusAt(from)),
          Temperature.ofCelsius(around.gasCelsiusAt(to)),
          Temperature.ofCelsius(around.wallsCelsiusAt(from)),
          Temperature.ofCelsius(around.wallsCelsiusAt(to)),
          recorder);
    }
    recorder.record();
    return new MouldFiring(setting, start, around, recorder);
  }

  /** Collects the rows. */
  private static final class Recorder implements BodySolver.Watcher {
    private final BodySolver solver;
    private final double sectionSeconds;
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
    private final List<Section> sections = new ArrayList<>();

    Recorder(Setting setting, BodySolver solver, double sectionSeconds) {
      this.solver = solver;
      this.sectionSeconds = sectionSeconds;
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
      double sum = 0;
      double volume = 0;
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
        sum += v * t;
        volume += v;
        free += v * water.freeShare(most);
        all += v * water.left(most);
      }
      double now = solver.seconds();
      double since = rows == 0 ? 0 : now - seconds[rows - 1];
      if (rows > 0 && since <= 0) {
        return;
      }
      seconds[rows] = now;
      centre[rows] = solver.centreCelsius();
      surface[rows] = solver.surfaceCelsius();
      coldest[rows] = cold;
      hottest[rows] = hot;
      mean[rows] = sum / volume;
      waterShare[rows] = water.freeAtStart() > 0 ? free / volume : 0;
      steam[rows] = since > 0 ? solver.wholeOf(waterBefore - all) / since : 0;
      waterBefore = all;
      if (now >= sections.size() * sectionSeconds) {
        sections.add(solver.section());
      }
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
    double until = Math.min(second, around.lastSecond());
    if (!(until > 0)) {
      return new BodySolver(setting.body(start), BodySolver.Accuracy.USUAL).section();
    }
    List<Section> kept = of(setting, start, around.until(until), until * (1 - 1e-6)).sections();
    return kept.get(kept.size() - 1);
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

  /** Volume mean of the investment, °C. */
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

  /** The sections that were kept, in order of time. */
  public List<Section> sections() {
    return sections;
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

  /** When less than a share of the free water is left, s; infinite if it never is. */
  public double dryerThanSeconds(double share) {
    for (int i = 0; i < seconds.length; i++) {
      if (waterShare[i] < share) {
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
    int last = seconds.length - 1;
    if (second <= seconds[0]) {
      return column[0];
    }
    if (second >= seconds[last]) {
      return column[last];
    }
    int found = Arrays.binarySearch(seconds, second);
    int i = found >= 0 ? found : -found - 2;
    double share = (second - seconds[i]) / (seconds[i + 1] - seconds[i]);
    return column[i] + share * (column[i + 1] - column[i]);
  }
}
