package org.heatwright.learn;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * Where in a log to look for a fault: beginnings after which the display, or the power, departs as
 * nothing but a fault would make it. Plain shapes that any fault leaves are laid into what is left
 * of the residuals when kiln and day may move.
 */
final class FaultPlaces {

  /** A plain shape must gain this much (twice the logarithm of the likelihood ratio). Estimate. */
  private static final double SUSPICIOUS = 14;

  /** The same of an on-off kiln. */
  private static final double SUSPICIOUS_SWITCHED = 14;

  // How many places are looked into: what time allows.
  private static final int MOST = 4;
  private static final int MOST_SWITCHED = 2;

  /** A display rises and falls back in these times, s. Our estimates. */
  private static final double[] SHAPE_SECONDS = {120, 400, 1200, 4000};

  /** A power changes for so many rows: for a while, and for good. */
  private static final int[] POWER_ROWS = {5, 1000};

  /** What a shape that the kiln can imitate is not divided by. */
  private static final double LEAST_SQUARE = 0.02;

  /** What begins sooner cannot be told from another kiln, s. Our estimate. */
  private static final double SOONEST_SECONDS = AnomalySearch.SOONEST_SECONDS - 120;

  /**
   * A place.
   *
   * @param second a beginning, s from the program's start
   * @param gain of the best plain shape from there on, twice the logarithm of the likelihood ratio
   */
  record Place(double second, double gain) {}

  private final SearchedFiring firing;
  private final double[][] sensitivities;
  private final CholeskyDecomposition information;
  private final double[] left;

  private FaultPlaces(SearchedFiring firing, FaultFit fit) {
    this.firing = firing;
    this.sensitivities = fit.sensitivities();
    RealMatrix sum = firing.precision().copy();
    for (int i = 0; i < firing.unknowns(); i++) {
      for (int j = 0; j <= i; j++) {
        double dot = NormalEquations.dot(sensitivities[i], sensitivities[j]);
        sum.addToEntry(i, j, dot);
        if (i != j) {
          sum.addToEntry(j, i, dot);
        }
      }
    }
    this.information = new CholeskyDecomposition(sum);
    this.left = SearchedFiring.HUBER.tempered(fit.base().residual());
  }

  /** The most suspicious places, well apart, most suspicious first. */
  static List<Place> of(SearchedFiring firing, FaultFit fit) {
    FaultPlaces places = new FaultPlaces(firing, fit);
    List<Place> all = new ArrayList<>(places.ofDisplay());
    all.addAll(places.ofPower());
    all.sort(Comparator.comparingDouble(Place::gain).reversed());
    List<Place> chosen = new ArrayList<>();
    for (Place place : all) {
      if (place.gain() < (firing.switched() ? SUSPICIOUS_SWITCHED : SUSPICIOUS)
          || chosen.size() == (firing.switched() ? MOST_SWITCHED : MOST)) {
        break;
      }
      if (place.second() >= SOONEST_SECONDS
          && chosen.stream()
              .noneMatch(
                  c -> Math.abs(c.second() - place.second()) < FaultFit.Guess.APART_SECONDS)) {
        chosen.add(place);
      }
    }
    return chosen;
  }

  private List<Place> ofDisplay() {
    Readings seen = firing.seen();
    int n = seen.size();
    List<Place> all = new ArrayList<>();
    for (int row = 1; row < n; row++) {
      double onset = seen.second(row) - SearchedFiring.SPAN_SECONDS / 2;
      double most = 0;
      for (double scale : SHAPE_SECONDS) {
        double[] miss = new double[n];
        for (int i = row; i < n; i++) {
          double u = (seen.second(i) - onset) / scale;
          miss[i] = u * Math.exp(1 - u);
        }
        double[] shape = new double[firing.rows()];
        firing.temperature().whiten(miss, shape, 0);
        most = Math.max(most, gain(shape));
      }
      all.add(new Place(onset, most));
    }
    return all;
  }

  private List<Place> ofPower() {
    MeteredPower power = firing.power();
    List<Place> all = new ArrayList<>();
    for (int from = 1; from < power.size(); from++) {
      double most = 0;
      for (int length : POWER_ROWS) {
        double[] miss = new double[power.size()];
        for (int i = from; i < Math.min(power.size(), from + length); i++) {
          miss[i] = 1;
        }
        double[] shape = new double[firing.rows()];
        power.discrepancy().whiten(miss, shape, firing.temperature().size());
        most = Math.max(most, gain(shape));
      }
      double second = firing.seen().second(power.row(from));
      all.add(new Place(second - SearchedFiring.SPAN_SECONDS / 2, most));
    }
    return all;
  }

  /** What a shape of the best size gains. */
  private double gain(double[] shape) {
    double with = NormalEquations.dot(shape, left);
    return with * with / (square(shape) + LEAST_SQUARE);
  }

  /** What is left of a vector when the kiln may move: v' (1 + J S J')^-1 v. */
  private double square(double[] v) {
    RealVector along = new ArrayRealVector(sensitivities.length);
    for (int i = 0; i < sensitivities.length; i++) {
      along.setEntry(i, NormalEquations.dot(sensitivities[i], v));
    }
    return NormalEquations.dot(v, v) - along.dotProduct(information.getSolver().solve(along));
  }
}
