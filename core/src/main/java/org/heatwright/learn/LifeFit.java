package org.heatwright.learn;

import java.time.Duration;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.FiringRun;
import org.heatwright.kiln.FiringSimulation;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.KilnBeliefs;
import org.heatwright.kiln.KilnQuantity;
import org.heatwright.kiln.LifeEvent;
import org.heatwright.material.HeatCurves;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * Fits a kiln over its life: what ages ({@link #walk}) has one score a firing, bound to the one
 * before by a random walk; all else has one score for every firing, because walls stay. What a life
 * event touches begins anew after it. All of it is one fit (a smoother: most probable scores given
 * the nameplate's prior, the walk and all readings, by damped Gauss-Newton steps), so that the
 * joint distribution of power then and power now is known, and with it their ratio, far better than
 * either.
 *
 * <p>Steps of the walk, like residuals, count linearly beyond twice their size: a door that has
 * lost its seal does so at once. Equations and measured coverage: {@code docs/models/health.md}.
 */
final class LifeFit {

  private static final int MOST_ROUNDS = 20;

  /** Rounds in which only what ages is moved, to begin with. */
  private static final int FIRST_ROUNDS = 4;

  /** A round that gains less is the last. */
  private static final double SETTLED = 0.5;

  /** How far out residuals count linearly at first. Our estimate. */
  private static final Huber FAR = new Huber(6 * KilnLearner.HUBER.bend());

  /** Place of the mains in a day. */
  private static final int MAINS = 0;

  /** Precision that keeps a score where it is. */
  private static final double FIXED = 1e8;

  /**
   * How something wanders, in natural logarithms: a trend a hundred days that lasts as long as the
   * part does, and steps from time and from each firing; standard deviations all.
   */
  private record Walk(double trend, double perHundredDays, double perFiring) {
    double step(long days) {
      return Math.sqrt(perHundredDays * perHundredDays * days / 100.0 + perFiring * perFiring);
    }
  }

  private static final Walk STAYS = new Walk(0, 0, 0);

  /**
   * How a quantity wanders, in its natural logarithm. Our estimates, wide on purpose: an element
   * loses 5 to 10 % of its power in its life, but hard use does it in months and nobody knows
   * whose; a seal sits a little otherwise each time the door is shut, and wears; a thermocouple's
   * sheath and junction scale. Wear goes on: a trend lasts until the part is replaced. A narrow
   * walk would take a real change for a chance of the day.
   */
  private static Walk walk(KilnQuantity quantity) {
    return switch (quantity) {
      case POWER -> new Walk(0.06, 0.02, 0.008);
      case LEAK -> new Walk(0, 0.10, 0.06);
      case SENSOR -> new Walk(0, 0.30, 0.12);
      default -> STAYS;
    };
  }

  /** Whether the life of a kiln moves it slowly. */
  static boolean ages(KilnQuantity quantity) {
    return walk(quantity) != STAYS;
  }

  /** Whether what was learned of a quantity before an event no longer holds. */
  static boolean restarts(LifeEvent.What what, KilnQuantity quantity) {
    return switch (what) {
      case ELEMENTS_REPLACED -> quantity == KilnQuantity.POWER || quantity == KilnQuantity.ELEMENT;
      case THERMOCOUPLE_REPLACED ->
          quantity == KilnQuantity.SENSOR
              || quantity == KilnQuantity.VIEW
              || quantity == KilnQuantity.OFFSET;
      case OFFSET_CHANGED -> quantity == KilnQuantity.OFFSET;
      case DOOR_RESEALED -> quantity == KilnQuantity.LEAK;
      case NOTE -> false;
    };
  }

  /** The first firing that has the same elements, seal or sensor as one. */
  private static int epoch(
      Kiln kiln, List<DatedFiring> firings, int firing, KilnQuantity quantity) {
    LocalDate since = LocalDate.MIN;
    for (LifeEvent event : kiln.history()) {
      if (restarts(event.what(), quantity)
          && !event.date().isAfter(firings.get(firing).date())
          && event.date().isAfter(since)) {
        since = event.date();
      }
    }
    int first = firing;
    while (first > 0 && !firings.get(first - 1).date().isBefore(since)) {
      first--;
    }
    return first;
  }

  /**
   * What binds a score to the one before: the step between them, beyond the trend, has this size.
   *
   * @param trend the unknown that is the trend
   * @param slope how far a trend of one takes the score
   */
  private record Tie(int from, int to, int trend, double slope, double deviation) {
    double step(double[] x) {
      return (x[to] - x[from] - slope * x[trend]) / deviation;
    }
  }

  private final Kiln kiln;
  private final List<DatedFiring> firings;
  private final List<Evidence> evidence;
  private final KilnQuantity[] quantities;

  /** Which unknown is the score of a quantity at a firing. */
  private final int[][] place;

  private final int scores;
  private final int unknowns;
  private final List<Tie> ties = new ArrayList<>();
  private final List<Lesson.LeftOut> leftOut;

  private double[] at;

  /** Beyond this a residual or a step of the walk counts linearly. */
  private Huber huber = KilnLearner.HUBER;

  /** Empty where a meter tells. */
  private final Optional<UsualScale> usualScale;

  private final Progress progress;
  private final RealMatrix posterior;
  private final double[] misfit;
  private final double[] saturated;

  private LifeFit(
      Kiln kiln,
      List<DatedFiring> firings,
      List<Lesson.LeftOut> leftOut,
      KilnBeliefs start,
      Progress progress) {
    this.kiln = kiln;
    this.progress = progress;
    this.firings = firings;
    this.leftOut = leftOut;
    HeatCurves curves = new HeatCurves();
    this.evidence =
        firings.stream().map(dated -> new Evidence(kiln, dated.firing().in(kiln), curves)).toList();
    List<LoggedFiring> logged = firings.stream().map(DatedFiring::firing).toList();
    this.quantities =
        Arrays.stream(KilnQuantity.values())
            .filter(KilnQuantity::learnable)
            .filter(quantity -> KilnLearner.matters(quantity, kiln, logged))
            .toArray(KilnQuantity[]::new);
    this.place = new int[firings.size()][quantities.length];
    int next = 0;
    for (int q = 0; q < quantities.length; q++) {
      Walk walk = walk(quantities[q]);
      int trend = -1;
      for (int f = 0; f < firings.size(); f++) {
        if (epoch(kiln, firings, f, quantities[q]) == f) {
          place[f][q] = next++;
          trend = walk == STAYS ? -1 : next++;
        } else if (walk == STAYS) {
          place[f][q] = place[f - 1][q];
        } else {
          long days = ChronoUnit.DAYS.between(firings.get(f - 1).date(), firings.get(f).date());
          double size = quantities[q].logarithmPerScore();
          ties.add(
              new Tie(
                  place[f - 1][q],
                  next,
                  trend,
                  walk.trend() * days / 100 / size,
                  walk.step(days) / size));
          place[f][q] = next++;
        }
      }
    }
    this.scores = next;
    this.unknowns = scores + Evidence.DAY * firings.size();
    this.at = new double[unknowns];
    for (int f = 0; f < firings.size(); f++) {
      for (int q = 0; q < quantities.length; q++) {
        at[place[f][q]] = start.score(quantities[q]);
      }
    }
    this.usualScale =
        evidence.stream().anyMatch(Evidence::metered)
            ? Optional.empty()
            : Optional.of(usualScale());
    if (firings.size() > 1) {
      descend(FIRST_ROUNDS, true, FAR);
      descend(MOST_ROUNDS, false, FAR);
    }
    RealMatrix data = descend(MOST_ROUNDS, false, KilnLearner.HUBER);
    this.misfit = new double[firings.size()];
    this.saturated = new double[firings.size()];
    IntStream.range(0, firings.size()).parallel().forEach(this::look);
    this.posterior =
        new CholeskyDecomposition(withoutScale(precision(at), data)).getSolver().getInverse();
  }

  /** Firings that lie that near are of one kiln, where nothing was done to it, days. */
  private static final int SAME_DAYS = 14;

  /** Whether a kiln may have changed between the first and the last firing. */
  static boolean apart(Kiln kiln, List<DatedFiring> firings) {
    List<LocalDate> dates = firings.stream().map(DatedFiring::date).sorted().toList();
    if (dates.isEmpty()) {
      return false;
    }
    LocalDate first = dates.get(0);
    LocalDate last = dates.get(dates.size() - 1);
    return ChronoUnit.DAYS.between(first, last) > SAME_DAYS
        || kiln.history().stream()
            .filter(event -> event.date().isAfter(first) && !event.date().isAfter(last))
            .anyMatch(
                event ->
                    Arrays.stream(KilnQuantity.values())
                        .anyMatch(quantity -> restarts(event.what(), quantity)));
  }

  /**
   * Fits.
   *
   * @param kiln the nameplate with its history; what was learned before is not used
   * @param firings one or more, in any order; those of one day in their own order
   * @param progress is told, and may end it
   */
  static LifeFit of(Kiln kiln, List<DatedFiring> firings, Progress progress) {
    List<DatedFiring> used = new ArrayList<>(firings);
    used.sort(Comparator.comparing(DatedFiring::date));
    LoggedFiring hottest =
        used.stream()
            .map(DatedFiring::firing)
            .max(Comparator.comparingDouble(LifeFit::peakCelsius))
            .orElseThrow(() -> new IllegalArgumentException("There is no firing to learn from."));
    KilnBeliefs start = KilnLearner.learn(kiln, List.of(hottest), progress).beliefs();
    List<Lesson.LeftOut> leftOut = new ArrayList<>();
    while (true) {
      LifeFit fit = new LifeFit(kiln, List.copyOf(used), List.copyOf(leftOut), start, progress);
      int worst = 0;
      for (int f = 1; f < used.size(); f++) {
        worst = fit.misfit[f] > fit.misfit[worst] ? f : worst;
      }
      if (fit.misfit[worst] <= KilnLearner.UNEXPLAINED_KELVINS || used.size() == 1) {
        return fit;
      }
      leftOut.add(new Lesson.LeftOut(used.get(worst).firing().name(), fit.misfit[worst]));
      used.remove(worst);
    }
  }

  private static double peakCelsius(LoggedFiring firing) {
    return IntStream.range(0, firing.readings().size())
        .mapToDouble(firing.readings()::celsius)
        .max()
        .orElseThrow();
  }

  // ---- the fit

  private double[] scoresOf(double[] x, int firing) {
    double[] all = new double[KilnQuantity.values().length];
    for (int q = 0; q < quantities.length; q++) {
      all[quantities[q].ordinal()] = x[place[firing][q]];
    }
    return all;
  }

  private double[] day(double[] x, int firing) {
    int from = scores + Evidence.DAY * firing;
    return Arrays.copyOfRange(x, from, from + Evidence.DAY);
  }

  private double[] residuals(double[] scores, double[] day, int firing) {
    double[] into = new double[evidence.get(firing).size()];
    evidence.get(firing).residuals(scores, day, into, 0);
    return into;
  }

  private double[][] residuals(double[] x) {
    return IntStream.range(0, firings.size())
        .parallel()
        .mapToObj(f -> residuals(scoresOf(x, f), day(x, f), f))
        .toArray(double[][]::new);
  }

  private double cost(double[] x, double[][] residuals) {
    double sum = 0;
    for (int u = 0; u < unknowns; u++) {
      sum += free(u) ? x[u] * x[u] : 0;
    }
    for (Tie tie : ties) {
      sum += huber.cost(tie.step(x));
    }
    for (double[] rows : residuals) {
      sum += huber.cost(rows);
    }
    return sum;
  }

  /** Whether an unknown has the nameplate's prior: not where it comes from the firing before. */
  private boolean free(int unknown) {
    return ties.stream().noneMatch(tie -> tie.to == unknown);
  }

  /** What is known without readings: prior and walk. */
  private RealMatrix precision(double[] x) {
    RealMatrix precision = new Array2DRowRealMatrix(unknowns, unknowns);
    for (int u = 0; u < unknowns; u++) {
      precision.setEntry(u, u, free(u) ? 1 : 0);
    }
    for (Tie tie : ties) {
      double w = huber.weight(tie.step(x)) / (tie.deviation * tie.deviation);
      int[] at = {tie.to, tie.from, tie.trend};
      double[] by = {1, -1, -tie.slope};
      for (int i = 0; i < at.length; i++) {
        for (int j = 0; j < at.length; j++) {
          precision.addToEntry(at[i], at[j], w * by[i] * by[j]);
        }
      }
    }
    return precision;
  }

  /** All powers and heat flows, then as now. */
  private UsualScale usualScale() {
    double[] along = new double[unknowns];
    for (int f = 0; f < firings.size(); f++) {
      for (int q = 0; q < quantities.length; q++) {
        along[place[f][q]] = quantities[q].scoreOfScale();
      }
    }
    int power = Arrays.asList(quantities).indexOf(KilnQuantity.POWER);
    return new UsualScale(
        precision(at),
        along,
        IntStream.range(0, firings.size()).map(f -> place[f][power]).toArray(),
        IntStream.range(0, firings.size())
            .map(f -> column(f, quantities.length + MAINS))
            .toArray());
  }

  /** Where a firing's columns stand among the unknowns: quantities, then the day's. */
  private int column(int firing, int column) {
    return column < quantities.length
        ? place[firing][column]
        : scores + Evidence.DAY * firing + column - quantities.length;
  }

  /** Sensitivities of a firing's residuals, one row a column of {@link #column}. */
  private double[][][] jacobians(double[] x, boolean agesOnly) {
    return IntStream.range(0, firings.size())
        .parallel()
        .mapToObj(
            f ->
                evidence
                    .get(f)
                    .slopes(
                        scoresOf(x, f),
                        day(x, f),
                        quantities,
                        quantity -> !agesOnly || ages(quantity)))
        .toArray(double[][][]::new);
  }

  /** Somewhere on the descent. */
  private record Place(double[] at, double[][] residual, double cost) {}

  private Place place(double[] tried) {
    double[] x = usualScale.map(usual -> usual.usual(tried)).orElse(tried);
    double[][] residuals = residuals(x);
    return new Place(x, residuals, cost(x, residuals));
  }

  /**
   * Moves to the most probable unknowns.
   *
   * @param agesOnly whether what stays for life is left as it is
   * @param bend beyond what a residual counts linearly: far out while the fit is far off
   * @return what the readings say there: information without the prior's
   */
  private RealMatrix descend(int rounds, boolean agesOnly, Huber bend) {
    huber = bend;
    Place now = place(at);
    NormalEquations.Damping damping = new NormalEquations.Damping();
    RealMatrix data = new Array2DRowRealMatrix(unknowns, unknowns);
    for (int round = 0; round < rounds; round++) {
      progress.at(Progress.Step.FIT, "");
      RealMatrix precision = precision(now.at());
      NormalEquations equations = new NormalEquations(unknowns);
      equations.addForce(precision, now.at());
      double[][][] jacobians = jacobians(now.at(), agesOnly);
      for (int f = 0; f < jacobians.length; f++) {
        int firing = f;
        double[] rows = now.residual()[f];
        NormalEquations part = new NormalEquations(jacobians[f].length);
        part.addReadings(jacobians[f], huber.weights(rows), rows);
        equations.add(part, i -> column(firing, i));
      }
      data = equations.matrix().copy();
      equations.addInformation(precision);
      if (!agesOnly) {
        usualScale.ifPresent(usual -> usual.hold(equations));
      } else {
        for (int q = 0; q < quantities.length; q++) {
          for (int f = 0; f < firings.size(); f++) {
            equations.addPrior(place[f][q], ages(quantities[q]) ? 0 : FIXED, 0);
          }
        }
      }
      double before = now.cost();
      now = damping.step(equations, now.at(), this::place, Place::cost, before).orElse(now);
      if (before - now.cost() <= SETTLED) {
        break;
      }
    }
    at = now.at();
    return data;
  }

  /**
   * Without a meter a kiln with a tenth more of all powers and heat flows, then as now, shows the
   * same displays: what the readings seem to say along that direction is not believed. What they
   * say of changes stays.
   */
  private RealMatrix withoutScale(RealMatrix precision, RealMatrix data) {
    return precision.add(usualScale.map(usual -> usual.told(data)).orElse(data));
  }

  /** Misfit and time at full power of one firing. */
  private void look(int firing) {
    Evidence one = evidence.get(firing);
    double[] day = day(at, firing);
    FiringRun run = one.run(scoresOf(at, firing), day);
    double[] miss = one.missKelvins(run, day[Evidence.CLOCK]);
    misfit[firing] = Math.sqrt(Arrays.stream(miss).map(m -> m * m).average().orElseThrow());
    double last = one.lastSecond();
    saturated[firing] =
        run.segments().stream()
            .filter(segment -> segment.reachedSeconds() <= last || !run.complete())
            .mapToDouble(segment -> Math.min(last, segment.saturatedSeconds()))
            .sum();
  }

  // ---- what came of it

  /** The firings it rests on, by date. */
  List<DatedFiring> firings() {
    return firings;
  }

  List<Lesson.LeftOut> leftOut() {
    return leftOut;
  }

  double misfitKelvins(int firing) {
    return misfit[firing];
  }

  /** How long the elements were at full power on the way to a target, s. */
  double saturatedSeconds(int firing) {
    return saturated[firing];
  }

  /** The first firing that what is of one firing can be compared with. */
  int reference(int firing, KilnQuantity quantity) {
    return epoch(kiln, firings, firing, quantity);
  }

  /**
   * Natural logarithm of something at one firing over the same at another.
   *
   * @param deviation standard deviation
   * @param deviationUnseen the same if the firings had told nothing of the change
   */
  record Change(double mean, double deviation, double deviationUnseen) {
    boolean told() {
      return deviation < UNTOLD_SHARE * deviationUnseen;
    }
  }

  /** A change known hardly better than the walk alone lets one guess was not told. */
  private static final double UNTOLD_SHARE = 0.8;

  /**
   * @param quantity one that {@link #ages}
   */
  Change change(KilnQuantity quantity, int from, int to) {
    double size = quantity.logarithmPerScore();
    double[] weights = new double[unknowns];
    weights[unknown(quantity, to)] += size;
    weights[unknown(quantity, from)] -= size;
    return new Change(
        size * (at[unknown(quantity, to)] - at[unknown(quantity, from)]),
        from == to ? 0 : Math.hypot(deviation(weights), modelError(quantity)),
        Math.hypot(unseen(quantity, from, to), modelError(quantity)));
  }

  /**
   * What two firings of a kiln that stays the same differ by because the model is simpler than a
   * kiln, in natural logarithms: standard deviation beyond what the fit knows. Set by kilns
   * simulated apart; {@code docs/models/health.md}.
   */
  private static double modelError(KilnQuantity quantity) {
    return switch (quantity) {
      case POWER -> 0.015;
      case LEAK -> 0.02; // of all the heat lost
      case SENSOR -> 0.12;
      default -> 0;
    };
  }

  /**
   * Change of all the heat that a kiln at a temperature loses. The walls stay, so that only what
   * goes past the door can change it: loss = C k + D l, with k and l the factors of conductivity
   * and leak.
   *
   * @param celsius inside, long held
   */
  Change lossChange(int from, int to, double celsius) {
    double[] then = scoresOf(at, from);
    double all = heldWatts(then, celsius);
    double size = KilnQuantity.LEAK.logarithmPerScore();
    then[KilnQuantity.LEAK.ordinal()] += 0.5 / size;
    double leaked = (heldWatts(then, celsius) - all) / (Math.exp(0.5) - 1);
    double ratio =
        Math.exp(
            size * (at[unknown(KilnQuantity.LEAK, to)] - at[unknown(KilnQuantity.LEAK, from)]));
    double now = all + leaked * (ratio - 1);
    double shareThen = leaked / all;
    double shareNow = leaked * ratio / now;
    double[] weights = new double[unknowns];
    weights[unknown(KilnQuantity.LEAK, to)] += size * shareNow;
    weights[unknown(KilnQuantity.LEAK, from)] -= size * shareThen;
    weights[unknown(KilnQuantity.CONDUCTIVITY, to)] +=
        KilnQuantity.CONDUCTIVITY.logarithmPerScore() * (shareThen - shareNow);
    return new Change(
        Math.log(now / all),
        from == to ? 0 : Math.hypot(deviation(weights), modelError(KilnQuantity.LEAK)),
        Math.hypot(shareThen * unseen(KilnQuantity.LEAK, from, to), modelError(KilnQuantity.LEAK)));
  }

  private static final int HELD_HOURS = 8;

  /** A score of power that takes any kiln to any temperature. */
  private static final double STRONG = 30;

  /** Power that a kiln of these scores takes after a long hold, W. */
  private double heldWatts(double[] scores, double celsius) {
    double[] strong = scores.clone();
    strong[KilnQuantity.POWER.ordinal()] = STRONG;
    Schedule hold =
        Schedule.of(
            "hold",
            TemperatureUnit.CELSIUS,
            List.of(
                new Segment(
                    Ramp.fastest(), Temperature.ofCelsius(celsius), Duration.ofHours(HELD_HOURS))));
    FiringSimulation simulation =
        new FiringSimulation(
            kiln,
            KilnBeliefs.at(kiln, strong),
            FiringConditions.usual(),
            List.of(),
            hold,
            FiringSimulation.Accuracy.USUAL,
            new HeatCurves());
    simulation.runProgram();
    FiringRun run = simulation.run();
    double end = Math.min(run.endSeconds(), run.lastSecond());
    return (run.joulesAt(end) - run.joulesAt(end - 3600)) / 3600;
  }

  private int unknown(KilnQuantity quantity, int firing) {
    return place[firing][Arrays.asList(quantities).indexOf(quantity)];
  }

  private double deviation(double[] weights) {
    RealVector vector = new ArrayRealVector(weights);
    return Math.sqrt(Math.max(0, vector.dotProduct(posterior.operate(vector))));
  }

  /** Standard deviation of the walk alone. */
  private double unseen(KilnQuantity quantity, int from, int to) {
    Walk walk = walk(quantity);
    long all = ChronoUnit.DAYS.between(firings.get(from).date(), firings.get(to).date());
    double variance = Math.pow(walk.trend() * all / 100, 2);
    for (int f = from + 1; f <= to; f++) {
      long days = ChronoUnit.DAYS.between(firings.get(f - 1).date(), firings.get(f).date());
      variance += Math.pow(walk.step(days), 2);
    }
    return Math.sqrt(variance);
  }

  /** What is believed of the kiln as it was at one firing. */
  KilnBeliefs beliefs(int firing) {
    int all = KilnQuantity.values().length;
    double[][] covariance = new double[all][all];
    for (int i = 0; i < all; i++) {
      covariance[i][i] = 1;
    }
    for (int i = 0; i < quantities.length; i++) {
      for (int j = 0; j < quantities.length; j++) {
        covariance[quantities[i].ordinal()][quantities[j].ordinal()] =
            posterior.getEntry(place[firing][i], place[firing][j]);
      }
      double left = covariance[quantities[i].ordinal()][quantities[i].ordinal()];
      covariance[quantities[i].ordinal()][quantities[i].ordinal()] +=
          KilnLearner.REMAINING * KilnLearner.REMAINING * Math.max(0, 1 - left);
    }
    return KilnBeliefs.of(scoresOf(at, firing), covariance);
  }

  /** What the whole life teaches of the kiln as it is now; the nameplate's where nothing fits. */
  Lesson lesson() {
    List<LoggedFiring> used = firings.stream().map(DatedFiring::firing).toList();
    KilnBeliefs now = beliefs(firings.size() - 1);
    if (misfit[0] > KilnLearner.UNEXPLAINED_KELVINS) {
      List<Lesson.LeftOut> all = new ArrayList<>(leftOut);
      all.add(new Lesson.LeftOut(used.get(0).name(), misfit[0]));
      return new Lesson(
          KilnBeliefs.prior(),
          List.of(),
          new double[0],
          all,
          List.of(),
          List.of(),
          Coverage.of(kiln, KilnBeliefs.prior(), List.of()));
    }
    return new Lesson(
        now,
        used.stream().map(LoggedFiring::name).toList(),
        misfit,
        leftOut,
        List.of(),
        openings(),
        Coverage.of(kiln, now, used));
  }

  private List<Lesson.Openings> openings() {
    List<Lesson.Openings> all = new ArrayList<>();
    for (int f = 0; f < firings.size(); f++) {
      int piece = scores + Evidence.DAY * f + Evidence.PIECE;
      evidence
          .get(f)
          .openings(at[piece], Math.sqrt(posterior.getEntry(piece, piece)))
          .ifPresent(all::add);
    }
    return all;
  }
}
