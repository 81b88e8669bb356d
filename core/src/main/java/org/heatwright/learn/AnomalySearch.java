package org.heatwright.learn;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.heatwright.kiln.Control;
import org.heatwright.kiln.FiringConditions.Disturbance;
import org.heatwright.kiln.FiringConditions.Disturbance.Kind;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.KilnBeliefs;
import org.heatwright.kiln.KilnQuantity;
import org.heatwright.learn.FaultFit.Fit;
import org.heatwright.learn.FaultFit.Found;
import org.heatwright.learn.FaultFit.Guess;
import org.heatwright.learn.FaultPlaces.Place;
import org.heatwright.material.HeatCurves;
import org.heatwright.units.TemperatureChange;
import org.hipparchus.linear.RealMatrix;

/**
 * Looks in one logged firing for something that went wrong: a generalised likelihood ratio over
 * kinds, beginnings, lengths and sizes, each simulated, while what is believed about the kiln moves
 * along (memory: Willsky and Jones 1976, a generalized likelihood ratio approach to the detection
 * of jumps; Basseville and Nikiforov, Detection of Abrupt Changes, 1993).
 *
 * <p>Beginnings are chosen first by plain shapes that any fault leaves ({@link FaultPlaces}), then
 * each kind is simulated there ({@link SearchedFiring}), the best are fitted together with the kiln
 * ({@link FaultFit}), and here it is decided whether one is told and what it is called. Sizes and
 * thresholds are our estimates, tried on random kilns; {@code docs/models/anomalies.md}.
 */
final class AnomalySearch {

  // ---- what is told

  /** A fault must gain this much to be told (twice the logarithm of the likelihood ratio). */
  private static final double CERTAIN = 50;

  /**
   * The same where the door was opened for cold pieces, which no two times go alike: clean sessions
   * of the study gained up to 48, most faults 150 to 900. Our estimate.
   */
  private static final double CERTAIN_OPENED = 100;

  /**
   * The same of a door ajar in a proportional kiln that an earlier firing taught: it works slowly,
   * and a little more loss explains the display nearly as well; but clean firings of such a kiln
   * seldom gain by a door at all (1 of 483 of the study more than 11).
   */
  private static final double CERTAIN_DOOR = 10;

  /**
   * The same of a mains cut that a gap of the log tells: when it began and how long it was is not
   * chosen from many.
   */
  private static final double CERTAIN_GAP = 40;

  /**
   * An open element takes at least this share of the power: one of three. What looks like less of
   * one is low mains, or another kiln. Our estimate.
   */
  private static final double LEAST_ELEMENTS = 0.3;

  // A tip that sees less of its hole than this must gain more in an on-off kiln: those pulled by
  // 20 mm were told as 0.355 to 0.95, what clean swings looked like, with gains up to 129, as 0.34
  // at the most. Our estimates.
  private static final double SLIGHT_TIP = 0.35;
  private static final double CERTAIN_SLIGHT_TIP = 250;

  /** A kind whose gain is this near to the best explains the display as well. */
  private static final double ALIKE = 12;

  /** The same as a share of the best's gain: a model's own errors grow with the fault's mark. */
  private static final double ALIKE_SHARE = 0.25;

  /** What was wrong this soon cannot be told from another kiln or another schedule, s. */
  static final double SOONEST_SECONDS = 540;

  /** A log that a fault leaves missed by more than this was another schedule or another kiln, K. */
  private static final double UNEXPLAINED_KELVINS = 30;

  /** The same where the switch goes by the log: no controller puts the simulation right. */
  private static final double UNEXPLAINED_SWITCHED_KELVINS = 100;

  /** A cost a row above which a log is not explained, and one below which it is well explained. */
  private static final double UNEXPLAINED = 2.5;

  private static final double UNEXPLAINED_SWITCHED = 12;
  private static final double EXPLAINED = 1.2;

  // ---- what is searched

  private static final int FEWEST_READINGS = 20;

  /** Readings further apart than this on the whole tell too little, s. */
  private static final double SPARSE_SECONDS = 150;

  /** How far beyond a suspicious place a log is looked at before all of it is, s. */
  private static final double[] HORIZON_SECONDS = {2400, 6000};

  private static final double[] HORIZON_SECONDS_SWITCHED = {2400};

  /** What a log says until so long before a place is not yet the fault's, s. */
  private static final double BEFORE_SECONDS = 240;

  // How much sooner than a place a fault is tried, s, and with what lengths, in spreads.
  private static final double[] TIP_SOONER = {-60, -30, 0, 30, 60, 150};
  private static final double[] SLOW_SOONER = {0, 120, 360, 900, 1800};
  private static final double[] SLOW_SOONER_SWITCHED = {0, 120, 360, 900};
  private static final double[] QUICK_SOONER = {0, 120, 360};
  private static final double[] FEW_SOONER = {0, 45, 90};
  private static final double[] CUT_LENGTHS = {-1.5, -0.3, 0.7, 1.5};
  private static final double[] CUT_LENGTHS_SWITCHED = {-0.5, 0.6};
  private static final double[] REFINED_LENGTHS = {-1.2, -0.4, 0.4, 1, 1.6};
  private static final double[] ONE = {0};

  // A door's mark has no edge that a plain shape would find: it is tried throughout a log, so far
  // apart, s, and fitted at the likeliest places.
  private static final double DOOR_STEP_SECONDS = 180;
  private static final int DOORS_FITTED = 2;

  // What is always fitted at the likeliest place, and how near to it: our estimate.
  private static final Set<Kind> ALWAYS =
      EnumSet.of(Kind.TIP_OUT, Kind.ELEMENT_OPEN, Kind.DOOR_AJAR);
  private static final double ALWAYS_SECONDS = 600;
  private static final double[] NO_KILN = {};

  // How many guesses are fitted beside those: what time allows.
  private static final int MOST_FITTED = 4;
  private static final int MOST_FITTED_SWITCHED = 2;
  private static final int MOST_OF_A_SHAPE = 2;
  private static final int MOST_GAPS = 3;

  /** How many kilns that faults led to are tried without any. */
  private static final int MOST_DOUBTED = 2;

  /** After a fault is over the kiln is not at once where the simulation has it, s. */
  private static final double RECOVERY_SECONDS = 1200;

  // A switch in the mean: a band of ten kelvins.
  private static final double SMOOTH_GAIN = 0.1;
  private static final double SMOOTH_SECONDS = 400;
  private static final double SMOOTH_AHEAD_SECONDS = 0.1;

  private final SearchedFiring firing;
  private final boolean taught;
  private final FaultFit fit;

  /** The best fit without a fault so far. */
  private Fit none;

  /** Kilns that may need no fault: what the whole log led to. */
  private final List<double[]> doubts;

  private AnomalySearch(
      SearchedFiring firing, boolean taught, double[] fitted, List<double[]> doubts) {
    this.firing = firing;
    this.taught = taught;
    this.doubts = doubts;
    this.fit = new FaultFit(firing, Arrays.copyOf(fitted, firing.unknowns()));
    this.none = fit.base();
  }

  /** When exactly a switch turns is chance, and slow to simulate: the mean of its swing does. */
  static Kiln smoothed(Kiln kiln) {
    Control control = kiln.control();
    if (control.kind() != Control.Kind.ON_OFF) {
      return kiln;
    }
    return kiln.withControl(
        new Control(
            Control.Kind.PID,
            0,
            TemperatureChange.ofKelvins(0),
            control.holdWaitsWithin(),
            control.afterPowerCut()));
  }

  /** What is believed, for the {@link #smoothed} kiln. */
  static KilnBeliefs smoothed(Kiln kiln, KilnBeliefs beliefs) {
    if (kiln.control().kind() != Control.Kind.ON_OFF) {
      return beliefs;
    }
    KilnQuantity[] all = KilnQuantity.values();
    double[] mean = new double[all.length];
    double[][] covariance = new double[all.length][all.length];
    for (KilnQuantity a : all) {
      mean[a.ordinal()] =
          switch (a) {
            case GAIN -> a.score(SMOOTH_GAIN);
            case INTEGRAL -> a.score(SMOOTH_SECONDS);
            case DERIVATIVE -> a.score(SMOOTH_AHEAD_SECONDS);
            default -> beliefs.score(a);
          };
      for (KilnQuantity b : all) {
        covariance[a.ordinal()][b.ordinal()] = beliefs.covarianceFactor(a, b);
      }
    }
    return KilnBeliefs.of(mean, covariance);
  }

  /** Whether a log is dense enough to be searched. */
  static boolean searchable(Readings readings) {
    return readings.size() >= FEWEST_READINGS && readings.usualStepSeconds() <= SPARSE_SECONDS;
  }

  /**
   * What went wrong, if anything did. Where the whole log does not tell, it is searched as it grew,
   * because a fault early on spoils the fit of all that follows.
   *
   * @param taught whether an earlier firing says what the kiln is, beside its nameplate
   * @param believed scores believed without this firing, one a quantity
   * @param covariance of those of {@code quantities}
   * @param fitted scores of {@code quantities} less those believed, and the day's, as fitted
   */
  static Optional<Anomaly> search(
      Kiln kiln,
      LoggedFiring firing,
      boolean taught,
      double[] believed,
      RealMatrix covariance,
      KilnQuantity[] quantities,
      double[] fitted) {
    Readings readings = firing.readings();
    HeatCurves curves = new HeatCurves();
    if (!searchable(readings)) {
      return Optional.empty();
    }
    AnomalySearch all =
        new AnomalySearch(
            new SearchedFiring(kiln, firing, curves, believed, covariance, quantities, fitted),
            taught,
            fitted,
            List.of());
    Result whole = all.search();
    boolean explained = all.explains(whole);
    if (whole.places().length == 0 || (explained && whole.left() < EXPLAINED)) {
      return explained ? whole.anomaly() : Optional.empty();
    }
    boolean switched = all.firing.switched();
    for (double place : whole.places()) {
      for (double horizon : switched ? HORIZON_SECONDS_SWITCHED : HORIZON_SECONDS) {
        Readings sofar = readings.before(place + horizon);
        if (sofar.size() < FEWEST_READINGS || sofar.size() == readings.size()) {
          continue;
        }
        SearchedFiring part =
            new SearchedFiring(
                kiln, firing.with(sofar), curves, believed, covariance, quantities, fitted);
        Result early = new AnomalySearch(part, taught, fitted, List.of(all.none.moved())).search();
        if (early.anomaly().isEmpty()
            || early.left() >= (switched ? UNEXPLAINED_SWITCHED : UNEXPLAINED)) {
          continue;
        }
        Result refined = all.refined(early);
        if (all.explains(refined)) {
          if (!explained || refined.left() < whole.left()) {
            return refined.anomaly();
          }
        } else if (!explained && all.explains(early) && tellsAlone(early)) {
          return early.anomaly();
        }
      }
    }
    return explained ? whole.anomaly() : Optional.empty();
  }

  /** Whether a part of a log is enough that the whole of it does not bear out. */
  private static boolean tellsAlone(Result early) {
    return early
        .anomaly()
        .filter(
            fault ->
                fault.likeliest().kind() != Kind.DOOR_AJAR || 2 * fault.logOddsFactor() >= CERTAIN)
        .isPresent();
  }

  /**
   * The firing with a fault among its conditions, and without the readings that it touched: those
   * to the end where it stays or where it is not certain what it was.
   */
  static LoggedFiring without(LoggedFiring firing, Anomaly fault) {
    Disturbance likeliest = fault.likeliest();
    double recovered =
        fault.alternatives().isEmpty() && fault.lengthSeconds().isPresent()
            ? likeliest.atSeconds() + likeliest.lengthSeconds() + RECOVERY_SECONDS
            : Double.POSITIVE_INFINITY;
    return firing
        .with(firing.conditions().with(likeliest))
        .with(
            firing
                .readings()
                .without(likeliest.atSeconds() - SearchedFiring.SPAN_SECONDS, recovered));
  }

  /**
   * What a search found.
   *
   * @param moved scores with the fault, or without where there is none
   * @param left cost a row
   * @param places suspicious beginnings, s
   */
  @SuppressWarnings("ArrayRecordComponent") // read, never written
  private record Result(Optional<Anomaly> anomaly, double[] moved, double left, double[] places) {}

  /** Whether the whole log is explained with the fault, if there is one. */
  private boolean explains(Result found) {
    if (found.anomaly().isEmpty()) {
      return false;
    }
    Anomaly fault = found.anomaly().get();
    boolean switched = firing.switched();
    return firing.rmsKelvins(found.moved(), fault.likeliest())
            <= (switched ? UNEXPLAINED_SWITCHED_KELVINS : UNEXPLAINED_KELVINS)
        && found.left() < mostLeft(fault.likeliest().kind())
        && fault.beganSeconds() >= SOONEST_SECONDS;
  }

  /** A door's slow mark is told by a log that is well explained with it only. */
  private double mostLeft(Kind kind) {
    if (firing.switched()) {
      return UNEXPLAINED_SWITCHED;
    }
    return kind == Kind.DOOR_AJAR ? UNEXPLAINED : Double.POSITIVE_INFINITY;
  }

  private Result search() {
    List<Place> places = FaultPlaces.of(firing, fit);
    List<double[]> gaps = firing.gaps();
    double[] where =
        DoubleStream.concat(
                places.stream().mapToDouble(Place::second), gaps.stream().mapToDouble(g -> g[0]))
            .sorted()
            .distinct()
            .toArray();
    List<Guess> guesses = worth(weighed(guesses(places, gaps)));
    guesses.addAll(doors());
    return conclude(guesses, where);
  }

  /**
   * The likeliest of doors that came ajar anywhere in the log of a proportional kiln that was
   * taught. From the nameplate alone a door that shows so little is not told from another kiln.
   */
  private List<Guess> doors() {
    if (firing.switched() || !taught) {
      return List.of();
    }
    FaultShape shape = FaultShape.forGood(Kind.DOOR_AJAR);
    double last = firing.seen().second(firing.seen().size() - 1) - BEFORE_SECONDS;
    List<Guess> all = new ArrayList<>();
    double[] unmoved = new double[firing.unknowns()];
    for (double onset = SOONEST_SECONDS; onset < last; onset += DOOR_STEP_SECONDS) {
      for (double[] moved : List.of(fit.base().moved(), unmoved)) {
        all.add(new Guess(shape, moved, onset, ofLength(shape, 0)));
      }
    }
    List<Guess> likeliest = new ArrayList<>();
    for (Guess guess : weighed(all)) {
      if (likeliest.size() < DOORS_FITTED && likeliest.stream().noneMatch(guess::same)) {
        likeliest.add(guess);
      }
    }
    return likeliest;
  }

  private List<Guess> guesses(List<Place> places, List<double[]> gaps) {
    boolean switched = firing.switched();
    List<Guess> all = new ArrayList<>();
    double[] unmoved = new double[firing.unknowns()];
    for (Place place : places) {
      double[] prefix = fit.before(place.second() - BEFORE_SECONDS);
      for (FaultShape shape : FaultShape.all(switched)) {
        for (double sooner : sooner(shape.kind())) {
          for (double length : lengths(shape.kind())) {
            double onset = Math.max(0, place.second() - sooner);
            double[] fault = ofLength(shape, length);
            all.add(new Guess(shape, fit.base().moved(), onset, fault));
            all.add(new Guess(shape, prefix, onset, fault));
            if (!switched) {
              all.add(new Guess(shape, unmoved, onset, fault));
            }
          }
        }
      }
    }
    for (double[] gap : gaps) {
      double[] prefix = fit.before(gap[0]);
      for (double forgotten : new double[] {1, FaultShape.REMEMBERED}) {
        FaultShape shape = FaultShape.gap(gap[1], forgotten);
        for (double[] moved : List.of(fit.base().moved(), prefix, unmoved)) {
          all.add(new Guess(shape, moved, gap[0], ofLength(shape, 0)));
        }
      }
    }
    return all;
  }

  private double[] sooner(Kind kind) {
    boolean switched = firing.switched();
    return switch (kind) {
      case TIP_OUT -> switched ? FEW_SOONER : TIP_SOONER;
      case ELEMENT_OPEN, DOOR_AJAR -> switched ? SLOW_SOONER_SWITCHED : SLOW_SOONER;
      case RELAY_ON, RELAY_OFF, MAINS_OFF, DOOR_OPEN -> switched ? FEW_SOONER : QUICK_SOONER;
    };
  }

  private double[] lengths(Kind kind) {
    return kind != Kind.MAINS_OFF ? ONE : firing.switched() ? CUT_LENGTHS_SWITCHED : CUT_LENGTHS;
  }

  private static double[] ofLength(FaultShape shape, double length) {
    double[] scores = new double[shape.unknowns()];
    if (shape.ends()) {
      scores[1] = length;
    }
    return scores;
  }

  /** Fits the whole log with a fault that a part of it gave away. */
  private Result refined(Result early) {
    List<Guess> guesses = new ArrayList<>();
    List<double[]> kilns =
        List.of(early.moved(), fit.base().moved(), new double[firing.unknowns()]);
    for (Anomaly fault : early.anomaly().stream().toList()) {
      for (FaultShape shape : FaultShape.all(firing.switched())) {
        if (!fault.names(shape.kind())) {
          continue;
        }
        for (double length : shape.ends() ? REFINED_LENGTHS : ONE) {
          double[] scores = ofLength(shape, length);
          for (double[] moved : kilns) {
            guesses.add(new Guess(shape, moved, fault.beganSeconds(), scores));
          }
        }
      }
    }
    return conclude(worth(weighed(guesses)), new double[0]);
  }

  /** Fits guesses and decides. */
  private Result conclude(List<Guess> guesses, double[] places) {
    List<Found> found =
        guesses.parallelStream()
            .map(fit::found)
            .sorted(Comparator.comparingDouble(Found::cost))
            .toList();
    if (told(found).isEmpty()) {
      return new Result(Optional.empty(), none.moved(), none.cost() / firing.rows(), places);
    }
    found =
        Stream.of(
                found.stream().limit(MOST_DOUBTED).map(fit::lookedAbout),
                found.stream().skip(MOST_DOUBTED),
                twin(found).stream().map(fit::found))
            .flatMap(one -> one)
            .sorted(Comparator.comparingDouble(Found::cost))
            .toList();
    // A kiln that the faults led to may need none of them.
    for (double[] kiln :
        Stream.concat(
                found.stream().limit(MOST_DOUBTED).map(one -> one.fit().moved()), doubts.stream())
            .toList()) {
      Fit other = fit.without(kiln);
      none = other.cost() < none.cost() ? other : none;
    }
    Optional<Found> likeliest = told(found);
    if (likeliest.isEmpty()) {
      return new Result(Optional.empty(), none.moved(), none.cost() / firing.rows(), places);
    }
    Found told = likeliest.get();
    double gain = none.cost() - told.cost();
    return new Result(
        Optional.of(
            new Anomaly(
                told.disturbance(), alike(found, told, gain), gain / 2, told.onsetSpreadSeconds())),
        told.fit().moved(),
        told.fit().cost() / firing.rows(),
        places);
  }

  /** The likeliest fault that gains enough to be told. */
  private Optional<Found> told(List<Found> found) {
    if (found.isEmpty() || tooLittle(found.get(0))) {
      return Optional.empty();
    }
    return found.stream().filter(one -> none.cost() - one.cost() >= certain(one)).findFirst();
  }

  /** Whether a fault is so small that another kiln or a swing may look like it. */
  private boolean tooLittle(Found likeliest) {
    Disturbance fault = likeliest.disturbance();
    return switch (fault.kind()) {
      case ELEMENT_OPEN -> fault.sizeShare() < LEAST_ELEMENTS;
      case TIP_OUT ->
          firing.switched()
              && fault.sizeShare() < SLIGHT_TIP
              && none.cost() - likeliest.cost() < CERTAIN_SLIGHT_TIP;
      case DOOR_AJAR, DOOR_OPEN, MAINS_OFF, RELAY_OFF, RELAY_ON -> false;
    };
  }

  /**
   * In an on-off kiln mains that are cut look like a relay that sticks off, and the other way
   * round: where one was found and the other not as good, this is tried with its times.
   */
  private Optional<Guess> twin(List<Found> found) {
    Found first = found.get(0);
    Kind kind =
        switch (first.guess().shape().kind()) {
          case RELAY_OFF -> Kind.MAINS_OFF;
          case MAINS_OFF -> Kind.RELAY_OFF;
          default -> first.guess().shape().kind();
        };
    boolean tried =
        found.stream()
            .filter(one -> one.guess().shape().kind() == kind)
            .anyMatch(one -> one.cost() - first.cost() < ALIKE);
    if (!firing.switched() || tried) {
      return Optional.empty();
    }
    Disturbance fault = first.disturbance();
    return FaultShape.all(firing.switched()).stream()
        .filter(shape -> shape.kind() == kind)
        .findFirst()
        .map(
            shape ->
                new Guess(
                    shape,
                    first.fit().moved(),
                    fault.atSeconds(),
                    ofLength(shape, shape.lengthScore(fault.lengthSeconds()))));
  }

  /**
   * What a fault must gain: more where the log is rougher with it than was thought, unless in an
   * on-off kiln a gap of the log tells of it.
   */
  private double certain(Found found) {
    if (firing.opened() && !firing.switched()) {
      return CERTAIN_OPENED;
    }
    FaultShape shape = found.guess().shape();
    double rough = Math.sqrt(Math.max(1, found.fit().cost() / firing.rows()));
    if (shape.told()) {
      return CERTAIN_GAP * (firing.switched() ? 1 : rough);
    }
    boolean slight = taught && !firing.switched() && shape.kind() == Kind.DOOR_AJAR;
    return (slight ? CERTAIN_DOOR : CERTAIN) * rough;
  }

  /** Other kinds that explain the display as well as the one told, likeliest first. */
  private static List<Kind> alike(List<Found> found, Found told, double gain) {
    return found.stream()
        .filter(other -> other.cost() - told.cost() < Math.max(ALIKE, ALIKE_SHARE * gain))
        .map(other -> other.guess().shape().kind())
        .filter(kind -> kind != told.guess().shape().kind())
        .distinct()
        .toList();
  }

  private List<Guess> weighed(List<Guess> raw) {
    Map<double[], List<Guess>> byKiln = new IdentityHashMap<>();
    for (Guess guess : raw) {
      byKiln.computeIfAbsent(guess.moved(), key -> new ArrayList<>()).add(guess);
    }
    return byKiln.entrySet().parallelStream()
        .flatMap(
            entry -> {
              List<Guess> guesses = entry.getValue();
              double[] onsets =
                  guesses.stream().mapToDouble(Guess::onset).sorted().distinct().toArray();
              SearchedFiring.Fork fork = firing.new Fork(entry.getKey(), onsets);
              return guesses.stream().map(guess -> fit.weighed(guess, fork)).toList().stream();
            })
        .sorted(Comparator.comparingDouble(Guess::gain).reversed())
        .toList();
  }

  /**
   * Guesses worth a fit: those that gaps tell; at the likeliest place what stays, from every kiln,
   * because a jump at the wrong second is weighed too low; then the best places of each kind.
   */
  private List<Guess> worth(List<Guess> guesses) {
    List<Guess> worth =
        new ArrayList<>(
            guesses.stream().filter(guess -> guess.shape().told()).limit(MOST_GAPS).toList());
    List<Guess> places = guesses.stream().filter(guess -> !guess.shape().told()).toList();
    Set<List<Object>> sure = new HashSet<>();
    for (Guess guess : places) {
      double[] kiln = guess.shape().kind() == Kind.TIP_OUT ? guess.moved() : NO_KILN;
      if (ALWAYS.contains(guess.shape().kind())
          && Math.abs(guess.onset() - places.get(0).onset()) < ALWAYS_SECONDS
          && sure.add(List.of(guess.shape(), System.identityHashCode(kiln)))) {
        worth.add(guess);
      }
    }
    int most = worth.size() + (firing.switched() ? MOST_FITTED_SWITCHED : MOST_FITTED);
    Map<FaultShape, Integer> taken = new HashMap<>();
    for (Guess guess : places) {
      int before = taken.getOrDefault(guess.shape(), 0);
      if (guess.gain() > 0
          && before < MOST_OF_A_SHAPE
          && worth.size() < most
          && worth.stream().noneMatch(guess::same)) {
        taken.put(guess.shape(), before + 1);
        worth.add(guess);
      }
    }
    return worth;
  }
}
