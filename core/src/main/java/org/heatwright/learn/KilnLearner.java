package org.heatwright.learn;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import org.heatwright.kiln.Control;
import org.heatwright.kiln.FiringConditions.Disturbance;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.KilnBeliefs;
import org.heatwright.kiln.KilnQuantity;
import org.heatwright.material.HeatCurves;
import org.heatwright.numerics.NumericsException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * Fits what is believed about a kiln to what its display showed: the most probable scores given the
 * nameplate's prior and the readings (maximum a posteriori), by damped Gauss-Newton steps with
 * exact derivatives that go along with a run; with differences of runs where those are not written
 * out ({@link org.heatwright.kiln.FiringSimulation#mayDifferentiate}).
 *
 * <p>Model and kiln differ slowly and a display is noisy ({@link Discrepancy}); the mains and the
 * log's clock are of each day and are fitted with it. A residual beyond twice its size counts
 * linearly, so that a stretch the model cannot explain does not rule the fit (Huber 1964, from
 * memory).
 */
public final class KilnLearner {

  /** A residual beyond this many of its sizes counts linearly. Our estimate. */
  static final Huber HUBER = new Huber(2);

  private static final int MOST_ROUNDS = 25;

  /** A round that gains less than this share of the cost is the last. */
  private static final double SETTLED = 5e-4;

  /** A firing whose display the fit misses by more than this does not belong to this kiln, K. */
  static final double UNEXPLAINED_KELVINS = 30;

  private final Kiln kiln;
  private final KilnBeliefs before;
  private final RealMatrix precision;

  /** Empty where a meter tells. */
  private final Optional<UsualScale> usualScale;

  private final List<LoggedFiring> firings;
  private final List<Evidence> evidence;
  private final int[] firstRow;
  private final KilnQuantity[] quantities;
  private final int unknowns;
  private final int residuals;
  private final Progress progress;

  private KilnLearner(
      Kiln kiln, KilnBeliefs before, List<LoggedFiring> firings, Progress progress) {
    this(kiln, kiln, before, firings, progress);
  }

  /** For a look at what may have gone wrong: a switch in the mean is quick to simulate. */
  private static KilnLearner scout(
      Kiln kiln, KilnBeliefs before, List<LoggedFiring> firings, Progress progress) {
    return new KilnLearner(
        kiln,
        AnomalySearch.smoothed(kiln),
        AnomalySearch.smoothed(kiln, before),
        firings,
        progress);
  }

  private KilnLearner(
      Kiln real, Kiln kiln, KilnBeliefs before, List<LoggedFiring> firings, Progress progress) {
    this.progress = progress;
    this.kiln = real;
    this.before = before;
    this.firings = firings.stream().map(firing -> firing.in(real)).toList();
    HeatCurves curves = new HeatCurves();
    this.evidence =
        this.firings.stream().map(firing -> new Evidence(kiln, firing, curves)).toList();
    this.firstRow = new int[firings.size() + 1];
    for (int f = 0; f < evidence.size(); f++) {
      firstRow[f + 1] = firstRow[f] + evidence.get(f).size();
    }
    this.residuals = firstRow[evidence.size()];
    this.quantities =
        Arrays.stream(KilnQuantity.values())
            .filter(KilnQuantity::learnable)
            .filter(quantity -> matters(quantity, real, firings))
            .toArray(KilnQuantity[]::new);
    this.unknowns = quantities.length + Evidence.DAY * firings.size();
    this.precision = precision(before, quantities, unknowns);
    this.usualScale =
        evidence.stream().anyMatch(Evidence::metered)
            ? Optional.empty()
            : Optional.of(usualScale());
  }

  private UsualScale usualScale() {
    double[] along = new double[unknowns];
    for (int i = 0; i < quantities.length; i++) {
      along[i] = quantities[i].scoreOfScale();
    }
    int[] power = new int[firings.size()];
    Arrays.fill(power, Arrays.asList(quantities).indexOf(KilnQuantity.POWER));
    int[] mains =
        IntStream.range(0, firings.size()).map(f -> quantities.length + Evidence.DAY * f).toArray();
    return new UsualScale(precision, along, power, mains);
  }

  /**
   * Learns from firings.
   *
   * @param kiln the nameplate; what was learned before is not used, the nameplate's prior is
   * @param firings one or more
   * @return the beliefs, what they rest on, and which firings were left out and why; where all
   *     were, the nameplate's
   * @throws IllegalArgumentException if there is no firing
   */
  public static Lesson learn(Kiln kiln, List<LoggedFiring> firings) {
    return learn(kiln, firings, Progress.UNHEARD);
  }

  /**
   * Learns from firings, and tells how far it has come.
   *
   * @param progress is told, and may end it
   * @return as {@link #learn(Kiln, List)}
   */
  public static Lesson learn(Kiln kiln, List<LoggedFiring> firings, Progress progress) {
    if (firings.isEmpty()) {
      throw new IllegalArgumentException("There is no firing to learn from.");
    }
    List<LoggedFiring> used = new ArrayList<>(firings);
    List<Lesson.Happened> happened = new ArrayList<>();
    List<Lesson.LeftOut> leftOut = new ArrayList<>();
    KilnLearner scout = scout(kiln, KilnBeliefs.prior(), used, progress);
    Fit seen = scout.fit();
    Map<LoggedFiring, Look> looks = new IdentityHashMap<>();
    // The clearest fault first: what it spoils in the common fit is not blamed on the others.
    for (int round = 0; round < MOST_FAULTS * firings.size(); round++) {
      Optional<Anomaly> clearest = Optional.empty();
      int where = 0;
      for (int f = 0; f < used.size(); f++) {
        progress.at(Progress.Step.SEARCH, used.get(f).name());
        Look look = scout.look(kiln, seen, f, Optional.ofNullable(looks.get(used.get(f))));
        looks.put(used.get(f), look);
        Optional<Anomaly> fault = look.fault();
        if (fault.isPresent()
            && !aftermath(happened, used.get(f), fault.get())
            && (clearest.isEmpty() || fault.get().logOddsFactor() > clearest.get().logOddsFactor())
            && happened(happened, used.get(f)) < MOST_FAULTS) {
          clearest = fault;
          where = f;
        }
      }
      if (clearest.isEmpty()) {
        break;
      }
      happened.add(new Lesson.Happened(used.get(where).name(), clearest.get()));
      used.set(where, AnomalySearch.without(used.get(where), clearest.get()));
      scout = scout(kiln, KilnBeliefs.prior(), used, progress);
      seen = scout.fit();
    }
    boolean switched = kiln.control().kind() == Control.Kind.ON_OFF;
    KilnLearner learner =
        switched ? new KilnLearner(kiln, KilnBeliefs.prior(), used, progress) : scout;
    Fit fit = switched ? learner.fit() : seen;
    while (true) {
      int worst = fit.worst();
      if (fit.rmsKelvins()[worst] <= UNEXPLAINED_KELVINS) {
        return learner.lesson(fit, leftOut, happened);
      }
      leftOut.add(new Lesson.LeftOut(used.get(worst).name(), fit.rmsKelvins()[worst]));
      used.remove(worst);
      if (used.isEmpty()) {
        return new Lesson(
            KilnBeliefs.prior(),
            List.of(),
            new double[0],
            leftOut,
            happened,
            List.of(),
            Coverage.of(kiln, KilnBeliefs.prior(), List.of()));
      }
      learner = new KilnLearner(kiln, KilnBeliefs.prior(), used, progress);
      fit = learner.fit();
    }
  }

  /** What one firing looks like, beside what is known of the kiln. */
  static Optional<Anomaly> look(Kiln kiln, LoggedFiring firing) {
    KilnLearner scout = scout(kiln, kiln.beliefs(), List.of(firing), Progress.UNHEARD);
    return scout.look(kiln, scout.fit(), 0, Optional.empty()).fault();
  }

  private static long happened(List<Lesson.Happened> happened, LoggedFiring firing) {
    return happened.stream().filter(one -> one.firing().equals(firing.name())).count();
  }

  /**
   * Whether a fault begins so soon after another is over that it may be what the other left: a kiln
   * and a controller that come back are not simulated that well.
   */
  private static boolean aftermath(
      List<Lesson.Happened> happened, LoggedFiring firing, Anomaly fault) {
    return happened.stream()
        .filter(one -> one.firing().equals(firing.name()))
        .map(Lesson.Happened::what)
        .anyMatch(
            before ->
                fault.beganSeconds() > before.beganSeconds()
                    && fault.beganSeconds()
                        < before.beganSeconds()
                            + before.lengthSeconds().orElse(Double.POSITIVE_INFINITY)
                            + AFTERMATH_SECONDS);
  }

  private static final double AFTERMATH_SECONDS = 3600;

  /** Most faults looked for in one firing. */
  private static final int MOST_FAULTS = 2;

  /**
   * What was found in a firing, beside what was believed then.
   *
   * @param mean scores, one a quantity
   * @param covariance of those that may move
   */
  @SuppressWarnings("ArrayRecordComponent") // read, never written
  private record Look(double[] mean, RealMatrix covariance, Optional<Anomaly> fault) {}

  /** A kiln that has moved by fewer spreads than this is looked at no second time. Our estimate. */
  private static final double HARDLY_MOVED = 0.5;

  /** Whether another look would be at nearly the same kiln. */
  private boolean same(Look before, double[] mean, RealMatrix covariance) {
    for (int i = 0; i < quantities.length; i++) {
      int score = quantities[i].ordinal();
      double spread = Math.sqrt(covariance.getEntry(i, i));
      double spreadBefore = Math.sqrt(before.covariance().getEntry(i, i));
      if (Math.abs(mean[score] - before.mean()[score]) > HARDLY_MOVED * spread
          || Math.abs(Math.log(spread / spreadBefore)) > HARDLY_MOVED) {
        return false;
      }
    }
    return true;
  }

  /**
   * What went wrong in one of the firings, if anything did: judged by what the others say of the
   * kiln and what was known of it before.
   *
   * @param before what was found in it earlier
   */
  private Look look(Kiln kiln, Fit fit, int firing, Optional<Look> before) {
    int n = quantities.length;
    boolean taught = firings.size() > 1 || kiln.learned().isPresent();
    double[] mean;
    RealMatrix covariance;
    if (firings.size() == 1) {
      // What was learned earlier, else the nameplate.
      KilnBeliefs known = AnomalySearch.smoothed(kiln, kiln.beliefs());
      mean = Arrays.stream(KilnQuantity.values()).mapToDouble(known::score).toArray();
      covariance = covariance(known, quantities);
    } else {
      double[] residual = residuals(fit.moved());
      double[][] jacobian = jacobian(fit.moved());
      double[] weight = HUBER.weights(residual);
      Arrays.fill(weight, firstRow[firing], firstRow[firing + 1], 0);
      NormalEquations equations = equations(fit.moved(), residual, jacobian, weight);
      RealMatrix inverse = new CholeskyDecomposition(equations.matrix()).getSolver().getInverse();
      covariance = inverse.getSubMatrix(0, n - 1, 0, n - 1);
      RealVector moved = new ArrayRealVector(fit.moved()).add(equations.solve());
      mean = scores(moved.toArray());
    }
    // What was learned earlier has that part of it already which stays open.
    double open = firings.size() == 1 ? 0 : REMAINING;
    for (int i = 0; i < n; i++) {
      covariance.addToEntry(i, i, open * open + REMAINING_SEARCHED * REMAINING_SEARCHED);
    }
    if (before.isPresent() && same(before.get(), mean, covariance)) {
      return before.get();
    }
    double[] start = new double[n + Evidence.DAY];
    double[] fitted = scores(fit.moved());
    for (int i = 0; i < n; i++) {
      start[i] = fitted[quantities[i].ordinal()] - mean[quantities[i].ordinal()];
    }
    System.arraycopy(
        SearchedFiring.day(firings.get(firing), day(fit.moved(), firing)),
        0,
        start,
        n,
        Evidence.DAY);
    return new Look(
        mean,
        covariance,
        AnomalySearch.search(
            kiln, firings.get(firing), taught, mean, covariance, quantities, start));
  }

  /**
   * Learns from firings with dates, the kiln as it is after the last of them: what ages between
   * them may wander, and what happened before a life event teaches nothing of what that touched.
   *
   * @param kiln the nameplate with its history
   * @param firings one or more, in any order
   * @return as {@link #learn(Kiln, List)}
   * @throws IllegalArgumentException if there is no firing
   */
  public static Lesson learnDated(Kiln kiln, List<DatedFiring> firings) {
    return learnDated(kiln, firings, Progress.UNHEARD);
  }

  /**
   * Learns from firings with dates, and tells how far it has come.
   *
   * @param progress is told, and may end it
   * @return as {@link #learnDated(Kiln, List)}
   */
  public static Lesson learnDated(Kiln kiln, List<DatedFiring> firings, Progress progress) {
    return LifeFit.apart(kiln, firings)
        ? LifeFit.of(kiln, firings, progress).lesson()
        : learn(kiln, firings.stream().map(DatedFiring::firing).toList(), progress);
  }

  /**
   * What a firing that is still running adds to what is believed already.
   *
   * @param kiln the kiln and what was learned before
   * @param sofar the firing with its readings up to now
   */
  static Lesson update(Kiln kiln, LoggedFiring sofar) {
    KilnLearner learner = new KilnLearner(kiln, kiln.beliefs(), List.of(sofar), Progress.UNHEARD);
    return learner.lesson(learner.fit(), List.of(), List.of());
  }

  /** Cost of the best fit of a firing, less what chance alone would make it, chi-squared. */
  static double misfit(Kiln kiln, LoggedFiring firing) {
    KilnLearner learner = new KilnLearner(kiln, kiln.beliefs(), List.of(firing), Progress.UNHEARD);
    return learner.fit().cost() - learner.residuals;
  }

  /** Whether a quantity can make any difference to these firings. */
  static boolean matters(KilnQuantity quantity, Kiln kiln, List<LoggedFiring> firings) {
    boolean onOff = kiln.control().kind() == Control.Kind.ON_OFF;
    return switch (quantity) {
      case GAIN, INTEGRAL, DERIVATIVE -> !onOff;
      case SWITCH -> onOff;
      case CREST -> !onOff && kiln.control().holdWaitsWithin().isPresent();
      case DOOR ->
          firings.stream()
              .flatMap(firing -> firing.happenings().stream())
              .anyMatch(event -> event.kind() == Disturbance.Kind.DOOR_OPEN);
      default -> true;
    };
  }

  private static RealMatrix precision(
      KilnBeliefs beliefs, KilnQuantity[] quantities, int unknowns) {
    int n = quantities.length;
    RealMatrix covariance = covariance(beliefs, quantities);
    RealMatrix all = new Array2DRowRealMatrix(unknowns, unknowns);
    RealMatrix inverse = new CholeskyDecomposition(covariance).getSolver().getInverse();
    all.setSubMatrix(inverse.add(inverse.transpose()).scalarMultiply(0.5).getData(), 0, 0);
    for (int i = n; i < unknowns; i++) {
      all.setEntry(i, i, 1);
    }
    return all;
  }

  private static RealMatrix covariance(KilnBeliefs beliefs, KilnQuantity[] quantities) {
    int n = quantities.length;
    RealMatrix covariance = new Array2DRowRealMatrix(n, n);
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        covariance.setEntry(i, j, beliefs.covarianceFactor(quantities[i], quantities[j]));
      }
    }
    return covariance;
  }

  /** Unknowns and what belongs to them. */
  private record Fit(double[] moved, double cost, RealMatrix information, double[] rmsKelvins) {
    int worst() {
      int worst = 0;
      for (int i = 1; i < rmsKelvins.length; i++) {
        if (rmsKelvins[i] > rmsKelvins[worst]) {
          worst = i;
        }
      }
      return worst;
    }
  }

  private double[] scores(double[] moved) {
    double[] scores = new double[KilnQuantity.values().length];
    for (KilnQuantity quantity : KilnQuantity.values()) {
      scores[quantity.ordinal()] = before.score(quantity);
    }
    for (int i = 0; i < quantities.length; i++) {
      scores[quantities[i].ordinal()] += moved[i];
    }
    return scores;
  }

  private double[] day(double[] moved, int firing) {
    int from = quantities.length + Evidence.DAY * firing;
    return Arrays.copyOfRange(moved, from, from + Evidence.DAY);
  }

  /**
   * The best of several descents: from what was believed, and from the most probable of a few
   * scattered kilns, because a slow kiln may be a leaky one or a heavy one. Where a log does not
   * tell when its holds began ({@link HoldStarts}), a descent may also end where a hold of the
   * simulation begins at another time. So where no two of them have come to the same cost there are
   * more, one of them from what the log's first parts lead to. An on-off kiln's simulations are too
   * slow for that.
   */
  private Fit fit() {
    List<Fit> fits = new ArrayList<>();
    fits.add(descend(new double[unknowns], MOST_ROUNDS));
    List<Place> scattered = scattered();
    scattered.subList(0, FEWEST_STARTS).forEach(at -> fits.add(descend(at.moved(), MOST_ROUNDS)));
    if (kiln.control().kind() != Control.Kind.ON_OFF && !agree(fits)) {
      fits.add(descend(grown(), MOST_ROUNDS));
      for (int s = FEWEST_STARTS; s < MOST_STARTS && !agree(fits); s++) {
        fits.add(descend(scattered.get(s).moved(), MOST_ROUNDS));
      }
    }
    return fits.stream().min(Comparator.comparingDouble(Fit::cost)).orElseThrow();
  }

  /** Whether the two best have come to the same cost, and explain the readings as well as usual. */
  private boolean agree(List<Fit> fits) {
    double[] best = fits.stream().mapToDouble(Fit::cost).sorted().limit(2).toArray();
    return best[1] - best[0] < SAME_COST * (1 + best[0]) && best[0] <= USUAL_COST * residuals;
  }

  /**
   * Where what was believed leads to by the first part of each log, then by more of it: a hold that
   * the simulation begins at another time does not spoil what came before it.
   */
  private double[] grown() {
    double[] moved = new double[unknowns];
    for (double share : GROWING) {
      List<LoggedFiring> parts =
          firings.stream()
              .map(one -> one.with(one.readings().before(share * one.readings().lastSecond())))
              .toList();
      moved = new KilnLearner(kiln, before, parts, progress).descend(moved, GROWING_ROUNDS).moved();
    }
    return moved;
  }

  private static final double[] GROWING = {0.2, 0.35, 0.5, 0.75};
  private static final int GROWING_ROUNDS = 5;

  /** Scattered kilns, the most probable first. */
  private List<Place> scattered() {
    Random random = new Random(1);
    List<double[]> points = new ArrayList<>();
    for (int s = 0; s < SCATTERED; s++) {
      double[] moved = new double[unknowns];
      for (int i = 0; i < quantities.length; i++) {
        moved[i] = before.ignoranceFactor(quantities[i]) * random.nextGaussian();
      }
      for (int f = 0; f < evidence.size(); f++) {
        if (evidence.get(f).startOpen()) {
          moved[quantities.length + Evidence.DAY * f + Evidence.START] = random.nextGaussian();
        }
      }
      points.add(moved);
    }
    return points.parallelStream()
        .map(this::place)
        .sorted(Comparator.comparingDouble(Place::cost))
        .toList();
  }

  private static final int SCATTERED = 48;

  // Descents from scattered kilns: so many at the least, and at the most. Our estimates.
  private static final int FEWEST_STARTS = 2;
  private static final int MOST_STARTS = 8;

  /** Two descents whose costs differ by less than this share have ended at the same place. */
  private static final double SAME_COST = 0.02;

  private Fit descend(double[] start, int rounds) {
    Place at = place(start);
    NormalEquations.Damping damping = new NormalEquations.Damping();
    RealMatrix information = null;
    for (int round = 0; round < rounds; round++) {
      progress.at(Progress.Step.FIT, "");
      double[][] jacobian = jacobian(at.moved());
      NormalEquations equations =
          equations(at.moved(), at.residual(), jacobian, HUBER.weights(at.residual()));
      information = equations.matrix();
      double before = at.cost();
      at = damping.step(equations, at.moved(), this::place, Place::cost, before).orElse(at);
      if (before - at.cost() <= SETTLED * (1 + at.cost())) {
        break;
      }
    }
    if (information == null) {
      throw new IllegalStateException("The fit took no step.");
    }
    return new Fit(at.moved(), at.cost(), information, rms(at.moved()));
  }

  /** Somewhere on a descent; at no finite cost where the kiln cannot be simulated. */
  private record Place(double[] moved, double[] residual, double cost) {}

  private Place place(double[] tried) {
    double[] moved = usualScale.map(usual -> usual.usual(tried)).orElse(tried);
    try {
      double[] residual = residuals(moved);
      return new Place(moved, residual, cost(moved, residual));
    } catch (NumericsException noSuchKiln) {
      return new Place(moved, new double[residuals], Double.POSITIVE_INFINITY);
    }
  }

  /** The linear problem of one step. */
  private NormalEquations equations(
      double[] moved, double[] residual, double[][] jacobian, double[] weight) {
    NormalEquations equations = new NormalEquations(unknowns);
    equations.addPrior(precision, moved);
    equations.addReadings(jacobian, weight, residual);
    usualScale.ifPresent(usual -> usual.hold(equations));
    return equations;
  }

  /** One row an unknown. */
  private double[][] jacobian(double[] moved) {
    double[][] jacobian = new double[unknowns][residuals];
    double[] scores = scores(moved);
    IntStream.range(0, evidence.size())
        .parallel()
        .forEach(
            f -> {
              double[][] slopes =
                  evidence.get(f).slopes(scores, day(moved, f), quantities, q -> true);
              for (int i = 0; i < slopes.length; i++) {
                // What is of a day touches that day alone.
                int unknown = i < quantities.length ? i : i + Evidence.DAY * f;
                System.arraycopy(slopes[i], 0, jacobian[unknown], firstRow[f], slopes[i].length);
              }
            });
    return jacobian;
  }

  /** Independent residuals of all firings. */
  private double[] residuals(double[] moved) {
    double[] all = new double[residuals];
    double[] scores = scores(moved);
    for (int f = 0; f < evidence.size(); f++) {
      evidence.get(f).residuals(scores, day(moved, f), all, firstRow[f]);
    }
    return all;
  }

  private double cost(double[] moved, double[] residual) {
    RealVector vector = new ArrayRealVector(moved);
    return vector.dotProduct(precision.operate(vector)) + HUBER.cost(residual);
  }

  /** Root mean square of the misfit of each firing, K. */
  private double[] rms(double[] moved) {
    double[] rms = new double[firings.size()];
    double[] scores = scores(moved);
    for (int f = 0; f < rms.length; f++) {
      Evidence one = evidence.get(f);
      double[] day = day(moved, f);
      double[] miss = one.missKelvins(one.run(scores, day), day[Evidence.CLOCK]);
      rms[f] = Math.sqrt(Arrays.stream(miss).map(m -> m * m).average().orElseThrow());
    }
    return rms;
  }

  /**
   * The fit with what no display tells as unsure as before it, and readings that it misses by more
   * than usual counting for less.
   */
  private Fit honest(Fit fit) {
    RealMatrix told = fit.information().subtract(precision);
    RealMatrix alone = usualScale.map(usual -> usual.told(told)).orElse(told);
    double missed = fit.cost() / residuals / USUAL_COST;
    return new Fit(
        fit.moved(),
        fit.cost(),
        precision.add(alone.scalarMultiply(1 / Math.max(1, missed))),
        fit.rmsKelvins());
  }

  /** What fits of kilns that the model describes cost a residual at the most. Our estimate. */
  private static final double USUAL_COST = 0.4;

  private Lesson lesson(Fit found, List<Lesson.LeftOut> leftOut, List<Lesson.Happened> happened) {
    Fit fit = honest(found);
    RealMatrix posterior = new CholeskyDecomposition(fit.information()).getSolver().getInverse();
    int all = KilnQuantity.values().length;
    double[][] covariance = new double[all][all];
    for (KilnQuantity a : KilnQuantity.values()) {
      for (KilnQuantity b : KilnQuantity.values()) {
        boolean both = a.learnable() && b.learnable() && open(a) && open(b);
        covariance[a.ordinal()][b.ordinal()] =
            both ? before.covarianceFactor(a, b) : a == b ? 1 : 0;
      }
    }
    for (int i = 0; i < quantities.length; i++) {
      for (int j = 0; j < quantities.length; j++) {
        covariance[quantities[i].ordinal()][quantities[j].ordinal()] =
            (posterior.getEntry(i, j) + posterior.getEntry(j, i)) / 2;
      }
    }
    // A part of what was learned stays open.
    for (KilnQuantity quantity : quantities) {
      double left = covariance[quantity.ordinal()][quantity.ordinal()];
      covariance[quantity.ordinal()][quantity.ordinal()] +=
          REMAINING * REMAINING * Math.max(0, before.covarianceFactor(quantity, quantity) - left);
    }
    KilnBeliefs beliefs = KilnBeliefs.of(scores(fit.moved()), covariance);
    return new Lesson(
        beliefs,
        firings.stream().map(LoggedFiring::name).toList(),
        fit.rmsKelvins(),
        leftOut,
        happened,
        openings(fit.moved(), posterior),
        Coverage.of(kiln, beliefs, firings));
  }

  private List<Lesson.Openings> openings(double[] moved, RealMatrix posterior) {
    List<Lesson.Openings> all = new ArrayList<>();
    for (int f = 0; f < evidence.size(); f++) {
      int piece = quantities.length + Evidence.DAY * f + Evidence.PIECE;
      evidence
          .get(f)
          .openings(moved[piece], Math.sqrt(posterior.getEntry(piece, piece)))
          .ifPresent(all::add);
    }
    return all;
  }

  /** Whether the fit left a quantity as it was. */
  private boolean open(KilnQuantity quantity) {
    return !Arrays.asList(quantities).contains(quantity);
  }

  /**
   * Spread of a score that no log takes away, because doors, seals and the model's own errors
   * differ from day to day. Our estimate, tried on kilns simulated apart.
   */
  static final double REMAINING = 0.15;

  /**
   * What is added to that where a firing is searched for faults: the rest of the model's errors
   * counts as its slow error there. Our estimate, tried in the same way.
   */
  private static final double REMAINING_SEARCHED = 0.1;
}
