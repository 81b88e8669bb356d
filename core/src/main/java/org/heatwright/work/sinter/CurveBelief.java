package org.heatwright.work.sinter;

import static org.heatwright.numerics.NormalSteps.NINE_IN_TEN;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;
import org.heatwright.units.Temperature;
import org.heatwright.work.sinter.ClayFacts.CurvePrior;

/**
 * What is believed of a clay's master sintering curve: many curves, each as likely as the others.
 * Before any test they fill the ranges of {@link ClayFacts.CurvePrior}; each measured shrinkage
 * leaves those that agree with it. Immutable.
 *
 * <p>The curves are brought from the ranges to the tests in steps, with moves between them
 * (<i>memory</i>: Del Moral, Doucet and Jasra, Sequential Monte Carlo samplers, J. R. Statist. Soc.
 * B 68, 2006). The same tests give the same curves.
 */
public final class CurveBelief {

  /** How much pieces of one firing differ, standard deviation of shrinkage. {@code estimate:} */
  static final double SCATTER_SHARE = 0.007;

  /** How well calipers are read on a rough strip, m. {@code estimate:} */
  private static final double CALIPER_METRES = 0.15e-3;

  /** Strength after 30 min over that after 2 h at 899 °C, for silver (read: a teacher's page). */
  static final double THIRTY_MINUTES_STRENGTH = 0.95;

  private static final double STRENGTH_SPREAD = 0.02;

  /** Strength goes with this power of density, at least and at most. {@code estimate:} */
  private static final double LEAST_POWER = 2;

  private static final double MOST_POWER = 6;

  private static final int CURVES = 300;
  private static final int NUMBERS = 5;
  private static final int MOVES = 8;
  private static final long SEED = 20261126;

  private final ClayFacts facts;
  private final CurvePrior prior;
  private final MasterSinteringCurve[] curves;
  private final double[] powers;
  private final int tests;
  private final int firings;
  private final double worstScores;
  private final double[] bestShares;
  private final Map<ClayFacts.Row, Likely> strengths;

  private CurveBelief(
      ClayFacts facts, CurvePrior prior, double[][] sample, List<MeasuredStrip> tests) {
    this.facts = facts;
    this.prior = prior;
    this.tests = tests.size();
    firings = MasterCurveFit.different(tests.stream().map(MeasuredStrip::heat).toList());
    curves = new MasterSinteringCurve[sample.length];
    powers = new double[sample.length];
    for (int i = 0; i < sample.length; i++) {
      curves[i] = curve(prior, facts, sample[i]).orElseThrow();
      powers[i] = between(LEAST_POWER, MOST_POWER, sample[i][4]);
    }
    double worst = 0;
    for (MeasuredStrip test : tests) {
      double off = test.linearShare() - shrinkageOfMaterial(test.heat()).median();
      worst = Math.max(worst, Math.abs(off) / spread(test));
    }
    worstScores = worst;
    Map<ClayFacts.Row, Likely> byRow = new LinkedHashMap<>();
    bestShares = shares(facts.best().heat());
    facts.rows().forEach(row -> byRow.put(row, strength(List.of(row.heat()))));
    strengths = Collections.unmodifiableMap(byRow);
  }

  /**
   * What is believed of a clay after some tests.
   *
   * @param tests may be empty
   * @return empty for a clay that has no such curve
   */
  public static Optional<CurveBelief> of(ClayFacts facts, List<MeasuredStrip> tests) {
    return tests.isEmpty()
        ? Optional.ofNullable(Untested.ALL.get(facts.clay()))
        : facts.curve().map(prior -> of(facts, prior, List.copyOf(tests)));
  }

  /** What is believed before any test; made once. */
  private static final class Untested {
    static final Map<Clay, CurveBelief> ALL = all();

    private Untested() {}

    private static Map<Clay, CurveBelief> all() {
      Map<Clay, CurveBelief> all = new EnumMap<>(Clay.class);
      for (Clay clay : Clay.values()) {
        ClayFacts facts = Clays.of(clay);
        facts.curve().ifPresent(prior -> all.put(clay, of(facts, prior, List.of())));
      }
      return Collections.unmodifiableMap(all);
    }
  }

  private static CurveBelief of(ClayFacts facts, CurvePrior prior, List<MeasuredStrip> tests) {
    SplittableRandom random = new SplittableRandom(SEED);
    double[][] sample = new double[CURVES][];
    double[] likelihood = new double[CURVES];
    for (int i = 0; i < CURVES; i++) {
      do {
        sample[i] = random.doubles(NUMBERS).toArray();
      } while (curve(prior, facts, sample[i]).isEmpty());
      likelihood[i] = logLikelihood(prior, facts, tests, sample[i]);
    }
    if (tests.isEmpty() && !prior.strengthKnown()) {
      return new CurveBelief(facts, prior, sample, tests);
    }
    double reached = 0;
    while (reached < 1) {
      double next = nextPower(likelihood, reached);
      int[] chosen = resampled(likelihood, next - reached, random);
      double[][] from = sample.clone();
      double[] fromLikelihood = likelihood.clone();
      for (int i = 0; i < CURVES; i++) {
        sample[i] = from[chosen[i]];
        likelihood[i] = fromLikelihood[chosen[i]];
      }
      reached = next;
      double[] steps = spreads(sample);
      for (int move = 0; move < MOVES; move++) {
        double scale = move % 2 == 0 ? 0.8 : 0.25;
        for (int i = 0; i < CURVES; i++) {
          double[] tried = sample[i].clone();
          for (int j = 0; j < NUMBERS; j++) {
            tried[j] = reflected(tried[j] + scale * steps[j] * random.nextGaussian());
          }
          double found = logLikelihood(prior, facts, tests, tried);
          if (Math.log(random.nextDouble()) < reached * (found - likelihood[i])) {
            sample[i] = tried;
            likelihood[i] = found;
          }
        }
      }
    }
    return new CurveBelief(facts, prior, sample, tests);
  }

  // ---- what it says

  /** Density over full density after a firing. */
  public Likely density(SinterHeat heat) {
    return density(List.of(heat));
  }

  /** Density after a firing that is itself uncertain: any of the heats, as likely as the others. */
  public Likely density(List<SinterHeat> heats) {
    return pooled(heats, i -> curves[i]::densityShare);
  }

  /** Linear shrinkage of one piece from bone dry, with what pieces differ by. */
  public Likely shrinkage(SinterHeat heat) {
    return shrinkage(List.of(heat));
  }

  /** The same after a firing that is itself uncertain. */
  public Likely shrinkage(List<SinterHeat> heats) {
    Likely material = pooled(heats, i -> heat -> shrinkage(curves[i], heat));
    double piece = NINE_IN_TEN * SCATTER_SHARE;
    return new Likely(
        Math.max(0, material.median() - Math.hypot(material.median() - material.low(), piece)),
        Math.max(0, material.median()),
        material.median() + Math.hypot(material.high() - material.median(), piece));
  }

  private Likely shrinkageOfMaterial(SinterHeat heat) {
    return pooled(List.of(heat), i -> one -> shrinkage(curves[i], one));
  }

  /**
   * Strength after a firing over that after the clay's strongest row: a power of the density, 2 to
   * 6.
   *
   * @param heats what the firing may have been, each as likely as the others
   */
  public Likely strength(List<SinterHeat> heats) {
    return strength(heats, bestShares);
  }

  /** The same over that after another firing. */
  Likely strength(List<SinterHeat> heats, SinterHeat against) {
    return strength(heats, shares(against));
  }

  private Likely strength(List<SinterHeat> heats, double[] reference) {
    return pooled(
        heats, i -> heat -> Math.pow(curves[i].densityShare(heat) / reference[i], powers[i]));
  }

  /** Density over full density, by every curve. */
  private double[] shares(SinterHeat heat) {
    return Arrays.stream(curves).mapToDouble(curve -> curve.densityShare(heat)).toArray();
  }

  /** Strength after one of the clay's own rows over that after the strongest of them. */
  public Likely strength(ClayFacts.Row row) {
    return Objects.requireNonNull(strengths.get(row), "a row of this clay");
  }

  /** The activation energy, J/mol. */
  public Likely activation() {
    return Likely.of(
        Arrays.stream(curves).mapToDouble(MasterSinteringCurve::activationJoulesPerMole).toArray());
  }

  /** How many shrinkages it rests on; 0: on ranges of literature and estimates alone. */
  public int tests() {
    return tests;
  }

  /** How many clearly different firings those were. */
  public int firings() {
    return firings;
  }

  /** Whether the tests say anything of how time trades for temperature. */
  public boolean tellsActivation() {
    double before = prior.highJoulesPerMole() - prior.lowJoulesPerMole();
    return firings >= MasterCurveFit.LEAST_FIRINGS && activation().spread() < 0.6 * before;
  }

  /** Whether some test lies far outside what any curve of the ranges could give. */
  public boolean strained() {
    return worstScores > 3;
  }

  /** What it rests on, a sentence: how thin the data are, and what would make them better. */
  public String basis() {
    if (tests == 0) {
      return "No strips measured yet, only published ranges: fire three, one of them cooler and longer, and put their lengths before and after under tests.";
    }
    String strips =
        "%d strip%s from %d clearly different firing%s"
            .formatted(tests, tests == 1 ? "" : "s", firings, firings == 1 ? "" : "s");
    if (strained()) {
      return strips + "; some agree with no curve held likely: check the lengths and the clay.";
    }
    return tellsActivation()
        ? strips + "."
        : strips
            + "; how time trades for heat needs three, one of them cooler and longer than the others.";
  }

  public ClayFacts facts() {
    return facts;
  }

  // ---- inside

  private interface OfCurve {
    ToDoubleFunction<SinterHeat> of(int curve);
  }

  private Likely pooled(List<SinterHeat> heats, OfCurve value) {
    double[] all = new double[heats.size() * curves.length];
    int n = 0;
    for (int i = 0; i < curves.length; i++) {
      for (SinterHeat heat : heats) {
        all[n++] = value.of(i).applyAsDouble(heat);
      }
    }
    return Likely.of(all);
  }

  private static double shrinkage(MasterSinteringCurve curve, SinterHeat heat) {
    return Shrinkage.ofShares(curve.greenShare(), curve.densityShare(heat));
  }

  /** The curve of a point of the unit cube; empty where the densities contradict one another. */
  private static Optional<MasterSinteringCurve> curve(
      CurvePrior prior, ClayFacts facts, double[] at) {
    double weak = between(prior.weakLowShare(), prior.weakHighShare(), at[1]);
    double strong = between(prior.strongLowShare(), prior.strongHighShare(), at[2]);
    double shrinkage = between(facts.shrinkage().lowShare(), facts.shrinkage().highShare(), at[3]);
    double green = Shrinkage.greenShare(strong, shrinkage);
    if (weak < green + 0.02 || strong < weak + 0.005) {
      return Optional.empty();
    }
    return Optional.of(
        MasterSinteringCurve.through(
            between(prior.lowJoulesPerMole(), prior.highJoulesPerMole(), at[0]),
            green,
            prior.weak(),
            weak,
            prior.strong(),
            strong));
  }

  private static double logLikelihood(
      CurvePrior prior, ClayFacts facts, List<MeasuredStrip> tests, double[] at) {
    Optional<MasterSinteringCurve> made = curve(prior, facts, at);
    if (made.isEmpty()) {
      return Double.NEGATIVE_INFINITY;
    }
    MasterSinteringCurve curve = made.get();
    double sum = 0;
    if (prior.strengthKnown()) {
      double ratio =
          Math.pow(
              curve.densityShare(Known.SHORT) / curve.densityShare(Known.LONG),
              between(LEAST_POWER, MOST_POWER, at[4]));
      sum -= square((ratio - THIRTY_MINUTES_STRENGTH) / STRENGTH_SPREAD) / 2;
    }
    for (MeasuredStrip test : tests) {
      double off = test.linearShare() - shrinkage(curve, test.heat());
      sum -= square(off / spread(test)) / 2;
    }
    return sum;
  }

  /** The two firings whose strengths a page compares. */
  private static final class Known {
    private static final Temperature AT = Temperature.ofCelsius(899);
    static final SinterHeat SHORT =
        SinterHeat.rampAndHold(Clays.USUAL_RATE, AT, Duration.ofMinutes(30));
    static final SinterHeat LONG =
        SinterHeat.rampAndHold(Clays.USUAL_RATE, AT, Duration.ofHours(2));

    private Known() {}
  }

  private static double spread(MeasuredStrip test) {
    return Math.hypot(SCATTER_SHARE, CALIPER_METRES / test.beforeMetres());
  }

  /** How far the tests may count more in one step: until half of the curves are left in effect. */
  private static double nextPower(double[] likelihood, double reached) {
    if (effective(likelihood, 1 - reached) >= CURVES / 2.0) {
      return 1;
    }
    double low = 0;
    double high = 1 - reached;
    for (int i = 0; i < 40; i++) {
      double middle = (low + high) / 2;
      if (effective(likelihood, middle) >= CURVES / 2.0) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return reached + Math.max(low, 1e-9);
  }

  private static double effective(double[] likelihood, double power) {
    double[] weights = weights(likelihood, power);
    double squares = Arrays.stream(weights).map(w -> w * w).sum();
    return 1 / squares;
  }

  private static double[] weights(double[] likelihood, double power) {
    double most = Arrays.stream(likelihood).max().orElseThrow();
    double[] weights =
        Arrays.stream(likelihood).map(value -> Math.exp(power * (value - most))).toArray();
    double sum = Arrays.stream(weights).sum();
    return Arrays.stream(weights).map(w -> w / sum).toArray();
  }

  private static int[] resampled(double[] likelihood, double power, SplittableRandom random) {
    double[] weights = weights(likelihood, power);
    int[] chosen = new int[CURVES];
    double at = random.nextDouble() / CURVES;
    double sum = weights[0];
    int from = 0;
    for (int i = 0; i < CURVES; i++) {
      while (at > sum && from < CURVES - 1) {
        from++;
        sum += weights[from];
      }
      chosen[i] = from;
      at += 1.0 / CURVES;
    }
    return chosen;
  }

  private static double[] spreads(double[][] sample) {
    double[] spreads = new double[NUMBERS];
    List<double[]> rows = new ArrayList<>(Arrays.asList(sample));
    for (int j = 0; j < NUMBERS; j++) {
      int column = j;
      double mean = rows.stream().mapToDouble(row -> row[column]).average().orElse(0);
      double variance =
          rows.stream().mapToDouble(row -> square(row[column] - mean)).average().orElse(0);
      spreads[j] = Math.max(1e-4, Math.sqrt(variance));
    }
    return spreads;
  }

  private static double reflected(double value) {
    double folded = Math.abs(value) % 2;
    return folded > 1 ? 2 - folded : folded;
  }

  private static double between(double low, double high, double share) {
    return low + (high - low) * share;
  }

  private static double square(double value) {
    return value * value;
  }
}
