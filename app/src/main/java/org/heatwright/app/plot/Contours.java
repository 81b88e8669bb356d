package org.heatwright.app.plot;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** Lines of one value on a regular grid (marching squares; straight between grid lines). */
final class Contours {

  private Contours() {}

  /**
   * The lines, each a chain of points in grid steps.
   *
   * @param field values by column and row; squares with NaN are left out
   */
  static List<List<double[]>> of(double[][] field, double level) {
    Map<Long, double[]> points = new HashMap<>();
    Map<Long, List<Long>> links = new HashMap<>();
    for (int i = 0; i + 1 < field.length; i++) {
      for (int j = 0; j + 1 < field[i].length; j++) {
        square(field, level, i, j, points, links);
      }
    }
    List<List<double[]>> chains = new ArrayList<>();
    // Open lines from their ends first, then what closes on itself.
    for (long start : List.copyOf(links.keySet())) {
      if (of(links, start).size() == 1) {
        chains.add(walk(start, points, links));
      }
    }
    for (long start : List.copyOf(links.keySet())) {
      if (!of(links, start).isEmpty()) {
        chains.add(walk(start, points, links));
      }
    }
    chains.removeIf(chain -> chain.size() < 2);
    return chains;
  }

  private static List<Long> of(Map<Long, List<Long>> links, long key) {
    return Objects.requireNonNull(links.get(key));
  }

  private static List<double[]> walk(
      long start, Map<Long, double[]> points, Map<Long, List<Long>> links) {
    List<double[]> chain = new ArrayList<>();
    long at = start;
    chain.add(Objects.requireNonNull(points.get(at)));
    while (!of(links, at).isEmpty()) {
      long next = of(links, at).remove(0);
      of(links, next).remove(Long.valueOf(at));
      chain.add(Objects.requireNonNull(points.get(next)));
      at = next;
    }
    return chain;
  }

  private static void square(
      double[][] field,
      double level,
      int i,
      int j,
      Map<Long, double[]> points,
      Map<Long, List<Long>> links) {
    List<Long> crossed = new ArrayList<>();
    edge(field, level, i, j, i + 1, j, points, crossed);
    edge(field, level, i + 1, j, i + 1, j + 1, points, crossed);
    edge(field, level, i, j + 1, i + 1, j + 1, points, crossed);
    edge(field, level, i, j, i, j + 1, points, crossed);
    for (int k = 0; k + 1 < crossed.size(); k += 2) {
      links.computeIfAbsent(crossed.get(k), x -> new ArrayList<>()).add(crossed.get(k + 1));
      links.computeIfAbsent(crossed.get(k + 1), x -> new ArrayList<>()).add(crossed.get(k));
    }
  }

  private static void edge(
      double[][] field,
      double level,
      int i,
      int j,
      int k,
      int l,
      Map<Long, double[]> points,
      List<Long> crossed) {
    double from = field[i][j];
    double to = field[k][l];
    if (Double.isNaN(from) || Double.isNaN(to) || from >= level == to >= level) {
      return;
    }
    double share = (level - from) / (to - from);
    long key = (i * 100_000L + j) * 2 + (k > i ? 1 : 0);
    points.put(key, new double[] {i + share * (k - i), j + share * (l - j)});
    crossed.add(key);
  }
}
