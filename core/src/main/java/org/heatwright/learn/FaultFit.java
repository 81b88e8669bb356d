package org.heatwright.learn;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.IntStream;
import org.heatwright.kiln.FiringConditions.Disturbance;
import org.hipparchus.linear.RealVector;

/**
 * Fits a kiln and a fault to one logged firing, together, so that neither takes what is the
 * other's: the most probable unknowns given what was believed and the readings, by damped
 * Gauss-Newton steps.
 */
final class FaultFit {

  private static final double[] NONE = {};

  private static final int MOST_ROUNDS = 6;
  private static final int MOST_POLISHES = 2;

  /** A round that gains less is the last, chi-squared, and the same as a share of the cost. */
  private static final double SETTLED = 1;

  private static final double SETTLED_SHARE = 0.01;

  /** A cost a row above which a fit is tried from another start. Our estimate. */
  private static final double ROUGH = 2;

  /** A step that gains less was in vain, chi-squared. */
  private static final double VAIN = 0.5;

  // A step is tried with these dampings, and no unknown goes further in it than this.
  private static final double DAMPING = 0.01;
  private static final double DAMPING_FACTOR = 20;
  private static final int MOST_TRIES = 3;
  private static final double FLOOR = 1e-6;
  private static final double LONGEST_STEP = 2;
  private static final double LONGEST_ONSET_STEP = 6;
  private static final double LONGEST_FAULT_STEP = 1.5;

  /** The sensitivities of the kiln are taken anew beside the fault in this round. */
  private static final int FRESH_ROUND = 3;

  // Steps of the fault's sensitivities: minutes, and spreads of the others.
  private static final double ONSET_DIFFERENCE = 0.5;
  private static final double FAULT_DIFFERENCE = 0.2;

  // Tried before the first step: minutes by which a fault may begin sooner or later, and lengths.
  private static final double[] ONSETS = {-8, -4, -2, -1, -0.5, 0.5, 1, 2, 4};
  private static final double[] LENGTHS = {-1.2, -0.5, 0.5, 1.2};

  /** When the switch of an on-off kiln turned: scores tried before the first step. */
  private static final double[] SWITCHING = {0, -2.4, -1.6, -0.8, 0.8, 1.6, 2.4};

  /** The least information of a beginning, a minute to minus two. */
  private static final double ONSET_FLOOR = 0.01;

  // A size that is weighed linearly stays near the first one: precision, and how far it may go.
  private static final double SIZE_PRECISION = 4;
  private static final double LEAST_SIZE = -0.6;
  private static final double MOST_SIZE = 2;

  // Looks about a fault, and the shortest that one with its end kept is made, s.
  private static final int MOST_LOOKS = 3;
  private static final double SHORTEST_SECONDS = 60;

  private static final int WEIGHING_ROUNDS = 4;

  /** A linear answer is none further away than this, scores. Our estimate. */
  private static final double LONGEST_ANSWER = 5;

  private static final int BEFORE_ROUNDS = 3;
  private static final double LONGEST_BEFORE_STEP = 3;

  /** A fit: where, its residuals and its cost; arrays are not to be written to. */
  @SuppressWarnings("ArrayRecordComponent") // read, never written
  record Fit(double[] moved, double[] fault, double[] residual, double cost) {}

  /**
   * A fault to begin a fit with.
   *
   * @param moved the kiln that it was weighed with
   * @param fault its scores
   * @param answered the kiln as it would answer if it did so linearly
   * @param answeredFault scores then
   * @param gain what it would gain then, chi-squared
   */
  @SuppressWarnings("ArrayRecordComponent") // read, never written
  record Guess(
      FaultShape shape,
      double[] moved,
      double onset,
      double[] fault,
      double[] answered,
      double[] answeredFault,
      double gain) {

    /** Beginnings nearer than this are of one fault, s. Our estimate. */
    static final double APART_SECONDS = 720;

    Guess(FaultShape shape, double[] moved, double onset, double[] fault) {
      this(shape, moved, onset, fault, moved, fault, 0);
    }

    /** Whether another guess is about the same fault. */
    boolean same(Guess other) {
      return shape.equals(other.shape) && Math.abs(onset - other.onset) < APART_SECONDS;
    }

    Disturbance disturbance() {
      return shape.at(onset, fault);
    }
  }

  /** A fault fitted together with the kiln. */
  record Found(Guess guess, Fit fit, double onsetSpreadSeconds) {

    /** What a gap of the log that fits a mains cut is worth, chi-squared. Our estimate. */
    private static final double GAP_GAIN = 20;

    /** A log that stops with the mains is no chance. */
    double cost() {
      return fit.cost() - (guess.shape().told() ? GAP_GAIN : 0);
    }

    Disturbance disturbance() {
      return guess.shape().at(guess.onset(), fit.fault());
    }
  }

  private final SearchedFiring firing;
  private final int unknowns;
  private final Fit base;
  private final double[][] sensitivities;

  /**
   * Fits the kiln as if nothing had gone wrong.
   *
   * @param start unknowns to begin with
   */
  FaultFit(SearchedFiring firing, double[] start) {
    this.firing = firing;
    this.unknowns = firing.unknowns();
    Descent likeliest = base(start);
    this.base = likeliest.fit();
    this.sensitivities = likeliest.sensitivities();
  }

  /** A fit that ended in a rough place is begun again from what was believed. */
  private Descent base(double[] start) {
    Descent first = descended(chosen(start));
    if (first.fit().cost() <= ROUGH * firing.rows()) {
      return first;
    }
    Descent second = descended(chosen(new double[unknowns]));
    return second.fit().cost() < first.fit().cost() ? second : first;
  }

  /** When the switch turned is tried first: steps from far off lead astray. */
  private double[] chosen(double[] start) {
    double[] best = start;
    double least = Double.POSITIVE_INFINITY;
    for (int unknown : firing.switching()) {
      double[] from = best;
      for (double score : SWITCHING) {
        double[] tried = from.clone();
        tried[unknown] = score;
        double cost = firing.cost(tried, NONE, firing.residuals(tried, Optional.empty()));
        if (cost < least) {
          least = cost;
          best = tried;
        }
      }
    }
    return best;
  }

  /** Where steps led, and the last sensitivities on the way. */
  @SuppressWarnings("ArrayRecordComponent") // read, never written
  private record Descent(Fit fit, double[][] sensitivities) {}

  private Descent descended(double[] start) {
    double[] residual = firing.residuals(start, Optional.empty());
    Fit best = new Fit(start, NONE, residual, firing.cost(start, NONE, residual));
    double[][] jacobian = {};
    for (int round = 0; round < MOST_ROUNDS; round++) {
      jacobian = firing.jacobian(best.moved(), best.residual(), Optional.empty());
      Fit next = polish(best, jacobian);
      double gained = best.cost() - next.cost();
      best = next;
      if (gained < SETTLED + SETTLED_SHARE * best.cost()) {
        break;
      }
    }
    return new Descent(best, jacobian);
  }

  /** The fit without a fault. */
  Fit base() {
    return base;
  }

  /** Sensitivities of the kiln's and the day's unknowns near {@link #base}. */
  double[][] sensitivities() {
    return sensitivities;
  }

  /** A fit without a fault from another start; {@link #base} if that is better. */
  Fit without(double[] start) {
    Fit best = descended(start).fit();
    return best.cost() < base.cost() ? best : base;
  }

  /** A few more steps with sensitivities at hand. */
  private Fit polish(Fit from, double[][] jacobian) {
    Fit best = from;
    for (int round = 0; round < MOST_POLISHES; round++) {
      Fit next = step(best, jacobian, Optional.empty(), 0);
      if (next.cost() > best.cost() - VAIN) {
        break;
      }
      best = next;
    }
    return best;
  }

  /** One damped Gauss-Newton step; the fault's sensitivities are the last rows. */
  private Fit step(Fit from, double[][] jacobian, Optional<FaultShape> shape, double onset) {
    int m = jacobian.length;
    NormalEquations equations = new NormalEquations(m);
    equations.addPrior(firing.precision(), from.moved());
    equations.addReadings(jacobian, SearchedFiring.HUBER.weights(from.residual()), from.residual());
    for (int i = unknowns + 1; i < m; i++) {
      equations.addPrior(i, 1, from.fault()[i - unknowns]);
    }
    double damping = DAMPING;
    for (int tries = 0; tries < MOST_TRIES; tries++, damping *= DAMPING_FACTOR) {
      RealVector change = equations.solve(damping, FLOOR);
      double[] moved = from.moved().clone();
      double[] fault = from.fault().clone();
      for (int i = 0; i < m; i++) {
        if (i < unknowns) {
          moved[i] += NormalEquations.clamp(change.getEntry(i), LONGEST_STEP);
        } else {
          double most = i == unknowns ? LONGEST_ONSET_STEP : LONGEST_FAULT_STEP;
          fault[i - unknowns] += NormalEquations.clamp(change.getEntry(i), most);
        }
      }
      double[] residual = firing.residuals(moved, shape.map(one -> one.at(onset, fault)));
      double cost = firing.cost(moved, fault, residual);
      if (cost < from.cost()) {
        return new Fit(moved, fault, residual, cost);
      }
    }
    return from;
  }

  /** The kiln fitted to what the log says before a time. */
  double[] before(double second) {
    Readings seen = firing.seen();
    int rows = (int) IntStream.range(0, seen.size()).filter(i -> seen.second(i) < second).count();
    int temperatures = firing.temperature().size();
    double[] moved = base.moved();
    double[] residual = base.residual();
    for (int round = 0; round < BEFORE_ROUNDS; round++) {
      double[] weight = SearchedFiring.HUBER.weights(residual);
      Arrays.fill(weight, rows, temperatures, 0);
      for (int i = 0; i < firing.power().size(); i++) {
        if (firing.power().row(i) >= rows) {
          weight[temperatures + i] = 0;
        }
      }
      NormalEquations equations = new NormalEquations(unknowns);
      equations.addPrior(firing.precision(), moved);
      equations.addReadings(sensitivities, weight, residual);
      RealVector change = equations.solve(DAMPING, 0);
      double[] next = moved.clone();
      for (int i = 0; i < unknowns; i++) {
        next[i] += NormalEquations.clamp(change.getEntry(i), LONGEST_BEFORE_STEP);
      }
      moved = next;
      residual = firing.residuals(moved, Optional.empty());
    }
    return moved;
  }

  /** What a fault would gain if the kiln, and the fault's size, answered linearly. */
  Guess weighed(Guess guess, SearchedFiring.Fork fork) {
    double[] with = fork.residuals(guess.disturbance());
    boolean sized = guess.shape().sizeSpread() > 0;
    double[][] rows = Arrays.copyOf(sensitivities, unknowns + (sized ? 1 : 0));
    if (sized) {
      rows[unknowns] = difference(with, fork.without());
    }
    double[] residual = with;
    double least = firing.cost(guess.moved(), guess.fault(), with);
    double[] likeliest = guess.moved();
    double[] fault = guess.fault();
    for (int round = 0; round < WEIGHING_ROUNDS; round++) {
      NormalEquations equations = new NormalEquations(rows.length);
      equations.addPrior(firing.precision(), guess.moved());
      equations.addReadings(rows, SearchedFiring.HUBER.weights(residual), with);
      for (int i = 0; i < rows.length; i++) {
        equations.addPrior(i, i < unknowns ? FLOOR : SIZE_PRECISION, 0);
      }
      double[] change = equations.solve().toArray();
      for (int i = 0; i < unknowns; i++) {
        change[i] = NormalEquations.clamp(change[i], LONGEST_ANSWER);
      }
      double size = 0;
      if (sized) {
        // A fault fitted away is none.
        change[unknowns] = Math.max(LEAST_SIZE, Math.min(MOST_SIZE, change[unknowns]));
        size = SIZE_PRECISION * change[unknowns] * change[unknowns];
      }
      double[] moved = guess.moved().clone();
      residual = with.clone();
      for (int i = 0; i < rows.length; i++) {
        if (i < unknowns) {
          moved[i] += change[i];
        }
        for (int r = 0; r < residual.length; r++) {
          residual[r] += rows[i][r] * change[i];
        }
      }
      double cost = firing.cost(moved, guess.fault(), residual) + size;
      if (cost < least) {
        least = cost;
        likeliest = moved;
        if (sized) {
          fault = guess.fault().clone();
          fault[fault.length - 1] = Math.log1p(change[unknowns]) / guess.shape().sizeSpread();
        }
      }
    }
    return new Guess(
        guess.shape(),
        guess.moved(),
        guess.onset(),
        guess.fault(),
        likeliest,
        fault,
        base.cost() - least);
  }

  private static double[] difference(double[] a, double[] b) {
    double[] all = new double[a.length];
    for (int i = 0; i < all.length; i++) {
      all[i] = a[i] - b[i];
    }
    return all;
  }

  /** The best of a few faults that differ in one of their scores. */
  private Fit tried(Guess guess, Fit from, int score, double[] by) {
    Fit best = from;
    for (double more : by) {
      double[] fault = from.fault().clone();
      fault[score] += more;
      Fit fit = at(guess, from.moved(), fault);
      best = fit.cost() < best.cost() ? fit : best;
    }
    return best;
  }

  private Fit at(Guess guess, double[] moved, double[] fault) {
    double[] residual =
        firing.residuals(moved, Optional.of(guess.shape().at(guess.onset(), fault)));
    return new Fit(moved, fault, residual, firing.cost(moved, fault, residual));
  }

  /** Fits the fault and the kiln together. */
  Found found(Guess guess) {
    FaultShape shape = guess.shape();
    Fit best = at(guess, guess.moved(), guess.fault());
    if (guess.answered() != guess.moved()) {
      Fit answered = at(guess, guess.answered(), guess.answeredFault());
      best = answered.cost() < best.cost() ? answered : best;
    }
    best = tried(guess, best, 0, ONSETS);
    if (shape.ends()) {
      best = tried(guess, best, 1, LENGTHS);
      best = tried(guess, best, 0, ONSETS);
    }
    return fitted(guess, best);
  }

  /**
   * Looks about a fault that was found: steps may have ended where a beginning that is some minutes
   * off costs least for a kiln that has taken the rest of it.
   */
  Found lookedAbout(Found found) {
    Guess guess = found.guess();
    Found best = found;
    for (int look = 0; look < MOST_LOOKS; look++) {
      Fit about = tried(guess, best.fit(), 0, ONSETS);
      if (guess.shape().ends()) {
        about = endingThen(guess, about);
      }
      if (about.cost() > best.fit().cost() - VAIN) {
        break;
      }
      best = fitted(guess, about);
    }
    return best;
  }

  /** The best of a few faults that begin at other times and end when this one does. */
  private Fit endingThen(Guess guess, Fit from) {
    Disturbance fault = guess.shape().at(guess.onset(), from.fault());
    Fit best = from;
    for (double later : ONSETS) {
      double length = fault.lengthSeconds() - 60 * later;
      if (length > SHORTEST_SECONDS) {
        double[] other = from.fault().clone();
        other[0] += later;
        other[1] = guess.shape().lengthScore(length);
        Fit fit = at(guess, from.moved(), other);
        best = fit.cost() < best.cost() ? fit : best;
      }
    }
    return best;
  }

  private Found fitted(Guess guess, Fit from) {
    FaultShape shape = guess.shape();
    Fit best = from;
    double[][] ofKiln = sensitivities;
    double spread = 60;
    for (int round = 0; round < MOST_ROUNDS; round++) {
      if (round == FRESH_ROUND) {
        ofKiln =
            firing.jacobian(
                best.moved(), best.residual(), Optional.of(shape.at(guess.onset(), best.fault())));
      }
      double[][] jacobian = Arrays.copyOf(ofKiln, unknowns + best.fault().length);
      for (int i = 0; i < best.fault().length; i++) {
        double difference = i == 0 ? ONSET_DIFFERENCE : FAULT_DIFFERENCE;
        double[] other = best.fault().clone();
        other[i] += difference;
        double[] row = at(guess, best.moved(), other).residual();
        for (int r = 0; r < row.length; r++) {
          row[r] = (row[r] - best.residual()[r]) / difference;
        }
        jacobian[unknowns + i] = row;
      }
      double square = NormalEquations.dot(jacobian[unknowns], jacobian[unknowns]);
      spread = 60 / Math.sqrt(square + ONSET_FLOOR);
      Fit next = step(best, jacobian, Optional.of(shape), guess.onset());
      double gained = best.cost() - next.cost();
      best = next;
      if (gained < VAIN && round >= 1) {
        break;
      }
    }
    return new Found(guess, best, spread);
  }
}
