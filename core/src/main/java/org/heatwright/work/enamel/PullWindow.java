package org.heatwright.work.enamel;

import java.util.Arrays;
import java.util.List;
import org.heatwright.material.Viscosity;
import org.heatwright.numerics.Samples;
import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * When a piece should come out, in seconds from the door's shutting behind it, over what is not
 * known of kiln, piece and enamel.
 *
 * @param earliestSeconds one piece in ten is glossy by then: look from here on, s; infinite if not
 *     even that while it was followed
 * @param likelySeconds half are, s; infinite likewise
 * @param latestSeconds nine in ten are, s; infinite likewise
 * @param overFiredSeconds one in ten is over-fired by then, s; infinite likewise
 * @param fusedSeconds half have grown together to orange peel, s
 * @param followedSeconds how long it was followed, s
 * @param hottestCelsius the piece at the likely time, or at the end
 */
public record PullWindow(
    double earliestSeconds,
    double likelySeconds,
    double latestSeconds,
    double overFiredSeconds,
    double fusedSeconds,
    double followedSeconds,
    Range hottestCelsius) {

  /** Equally likely slices of what the enamel needs. */
  private static final int SLICES = 24;

  /**
   * The window.
   *
   * @param curves equally likely curves of the piece
   * @param viscosity the enamel's
   * @param decades how much more than usual it needs, see {@link Fusing}
   */
  public static PullWindow of(List<PieceCurve> curves, Viscosity viscosity, Range decades) {
    double[] needs = slices(decades);
    double[] gloss = new double[curves.size() * SLICES];
    double[] over = new double[gloss.length];
    double[] fused = new double[gloss.length];
    int at = 0;
    for (PieceCurve curve : curves) {
      double[] from = Fusing.decadesFromGloss(curve, viscosity, 0);
      double[] seconds = curve.seconds();
      for (double need : needs) {
        gloss[at] = reached(seconds, from, need + Look.GLOSSY.fromDecades());
        over[at] = reached(seconds, from, need + Look.OVER_FIRED.fromDecades());
        fused[at] = reached(seconds, from, need + Look.ORANGE_PEEL.fromDecades());
        at++;
      }
    }
    Arrays.sort(gloss);
    Arrays.sort(over);
    Arrays.sort(fused);
    double likely = Samples.quantile(gloss, 0.5);
    double followed = curves.stream().mapToDouble(PieceCurve::lastSecond).min().orElse(0);
    double[] hottest =
        curves.stream().mapToDouble(c -> c.hottestCelsius(Math.min(likely, followed))).toArray();
    return new PullWindow(
        Samples.quantile(gloss, 0.1),
        likely,
        Samples.quantile(gloss, 0.9),
        Samples.quantile(over, 0.1),
        Samples.quantile(fused, 0.5),
        followed,
        Range.ofSample(hottest));
  }

  /** Whether half of such pieces are glossy while they were followed. */
  public boolean glosses() {
    return Double.isFinite(likelySeconds);
  }

  /** Whether some would be over-fired while others are not glossy yet: only a tile helps. */
  public boolean tooWide() {
    return overFiredSeconds < latestSeconds;
  }

  static double[] slices(Range decades) {
    NormalDistribution normal = new NormalDistribution();
    double[] needs = new double[SLICES];
    for (int i = 0; i < SLICES; i++) {
      needs[i] = decades.at(normal.inverseCumulativeProbability((i + 0.5) / SLICES));
    }
    return needs;
  }

  /** When a rising column first reaches a level: linear between in the logarithm. */
  private static double reached(double[] seconds, double[] rising, double level) {
    int low = 0;
    int high = rising.length - 1;
    if (rising[high] < level) {
      return Double.POSITIVE_INFINITY;
    }
    while (high - low > 1) {
      int middle = (low + high) / 2;
      if (rising[middle] >= level) {
        high = middle;
      } else {
        low = middle;
      }
    }
    if (!Double.isFinite(rising[low]) || rising[high] == rising[low]) {
      return seconds[high];
    }
    double share = Math.max(0, (level - rising[low]) / (rising[high] - rising[low]));
    return seconds[low] + share * (seconds[high] - seconds[low]);
  }
}
