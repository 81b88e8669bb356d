package org.heatwright.work.enamel;

import java.util.List;
import java.util.stream.IntStream;
import org.hipparchus.special.Erf;

/**
 * What test tiles say about an enamel: by how many decades it needs more flow than usual for its
 * class. Bayes on a grid: a normal prior, and for each tile the chance of the look that was seen,
 * with {@value #READING_DECADES} decades of scatter from tile to tile. Immutable.
 */
public final class TileCalibration {

  /** Scatter from tile to tile (grain, thickness, timing, eye), decades of flow. Estimate. */
  static final double READING_DECADES = 0.12;

  /** A tile whose look had less chance than this at the best value contradicts the others. */
  private static final double ODD_CHANCE = 0.03;

  private static final int POINTS = 301;

  /** Further than this from gloss it does not matter how far, decades. */
  private static final double FAR_DECADES = 30;

  /**
   * A tile, with the flow that its curve gives it.
   *
   * @param flowDecades log10 of the flow over what gloss usually needs
   * @param look what was seen
   */
  public record Seen(double flowDecades, Look look) {}

  private final double[] decades = new double[POINTS];
  private final double[] chance = new double[POINTS];
  private final List<Seen> tiles;
  private final int best;

  private TileCalibration(Range prior, List<Seen> tiles) {
    this.tiles = List.copyOf(tiles);
    double deviation = (prior.high() - prior.low()) / (2 * Range.DEVIATIONS);
    double sum = 0;
    double[] logs = new double[POINTS];
    double greatest = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < POINTS; i++) {
      double z = 10.0 * i / (POINTS - 1) - 5;
      decades[i] = prior.median() + z * deviation;
      logs[i] = -z * z / 2;
      for (Seen tile : tiles) {
        logs[i] += Math.log(chanceOf(tile.look(), tile.flowDecades() - decades[i]));
      }
      greatest = Math.max(greatest, logs[i]);
    }
    int at = 0;
    for (int i = 0; i < POINTS; i++) {
      chance[i] = Math.exp(logs[i] - greatest);
      sum += chance[i];
      at = logs[i] > logs[at] ? i : at;
    }
    best = at;
    for (int i = 0; i < POINTS; i++) {
      chance[i] /= sum;
    }
  }

  /**
   * Calibrates.
   *
   * @param prior what is believed without tiles, decades
   * @param tiles none or more
   */
  public static TileCalibration of(Range prior, List<Seen> tiles) {
    return new TileCalibration(prior, tiles);
  }

  /** Chance to see a look, for a flow so many decades past where gloss begins. */
  private static double chanceOf(Look look, double decadesFromGloss) {
    double fromGloss = Math.max(-FAR_DECADES, Math.min(FAR_DECADES, decadesFromGloss));
    double below = below(look.fromDecades() - fromGloss);
    double above = below(look.toDecades() - fromGloss);
    return Math.max(1e-12, above - below);
  }

  private static double below(double decades) {
    return Double.isInfinite(decades)
        ? decades < 0 ? 0 : 1
        : 0.5 * Erf.erfc(-decades / (READING_DECADES * Math.sqrt(2)));
  }

  public double meanDecades() {
    return IntStream.range(0, POINTS).mapToDouble(i -> chance[i] * decades[i]).sum();
  }

  /** Standard deviation of what is still open, decades. */
  public double deviationDecades() {
    double mean = meanDecades();
    return Math.sqrt(
        IntStream.range(0, POINTS)
            .mapToDouble(i -> chance[i] * (decades[i] - mean) * (decades[i] - mean))
            .sum());
  }

  /** 5th, 50th and 95th percentile, decades: what {@link PullWindow} takes. */
  public Range decades() {
    return Range.of(percentile(0.05), percentile(0.5), percentile(0.95));
  }

  private double percentile(double share) {
    double sum = 0;
    for (int i = 0; i < POINTS; i++) {
      if (sum + chance[i] >= share) {
        double part = chance[i] > 0 ? (share - sum) / chance[i] : 0;
        return decades[i] + (part - 0.5) * (decades[1] - decades[0]);
      }
      sum += chance[i];
    }
    return decades[POINTS - 1];
  }

  /** Positions, 0-based, of tiles that contradict the others or the class of the enamel. */
  public List<Integer> odd() {
    return IntStream.range(0, tiles.size())
        .filter(
            i ->
                chanceOf(tiles.get(i).look(), tiles.get(i).flowDecades() - decades[best])
                    < ODD_CHANCE)
        .boxed()
        .toList();
  }

  /**
   * The standard deviation to expect after one more tile, decades: over all looks it may show.
   *
   * @param flowDecades log10 of that tile's flow over what gloss usually needs
   */
  public double deviationAfter(double flowDecades) {
    double variance = 0;
    for (Look look : Look.values()) {
      double weight = 0;
      double mean = 0;
      double square = 0;
      for (int i = 0; i < POINTS; i++) {
        double w = chance[i] * chanceOf(look, flowDecades - decades[i]);
        weight += w;
        mean += w * decades[i];
        square += w * decades[i] * decades[i];
      }
      variance += weight > 0 ? square - mean * mean / weight : 0;
    }
    return Math.sqrt(Math.max(0, variance));
  }
}
