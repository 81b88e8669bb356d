package org.heatwright.mould;

import java.util.Arrays;

/**
 * The finite volumes of a body: nodes where grid lines cross, on the axis and on every face, each
 * with the volume half-way to its neighbours. Lines are close where heat enters and wider inside.
 * Immutable once made; index {@code i * nz + j}, i outward from the axis, j upward.
 *
 * <p>A body that is the same above and below its middle is solved in its upper half.
 */
final class BodyGrid {

  // Shares of the size. Chosen by trying: twice the lines move no case of the tests by 0.5 K.
  private static final double FIRST_RADIAL = 0.012;
  private static final double GROWTH_RADIAL = 0.2;
  private static final double WIDEST_RADIAL = 1.0 / 38;
  private static final double FIRST_AXIAL = 0.03;
  private static final double GROWTH_AXIAL = 0.3;
  private static final double WIDEST_AXIAL = 1.0 / 24;

  // Under the floor of a cavity a front goes down along the axis.
  private static final double FIRST_UNDER_FLOOR = 0.02;
  private static final double GROWTH_UNDER_FLOOR = 0.07;
  private static final double WIDEST_UNDER_FLOOR = 1.0 / 40;

  final int nr;
  final int nz;
  final double[] radius;

  /** Height above {@link #baseMetres}. */
  final double[] height;

  final boolean half;

  /** Where j = 0 stands above the bottom of the body, m. */
  final double baseMetres;

  /** m³ of each node; zero in a cavity. */
  final double[] volume;

  /** Area over distance to the next node outward and upward, m. */
  final double[] outward;

  final double[] upward;

  /** Area that faces the surroundings, m², by the direction it faces. */
  final double[] facingRadially;

  final double[] facingAxially;

  /** First solid node of the line at j. */
  final int[] firstSolid;

  /**
   * Cross section of the ring, m²; zero without one. The nodes on the joint hold it too: the ring
   * has the temperature of what it touches.
   */
  final double ringSquareMetres;

  /** Share of the volume of nodes on the joint that is not ring. */
  final double besideRing;

  /** j at mid height. */
  final int middle;

  final double totalVolume;

  /**
   * @param radialFineness multiplies the number of lines across
   * @param axialFineness multiplies the number of lines up
   * @param sidesClosed whether no heat passes the faces that look sideways: a column, for tests
   */
  BodyGrid(BodyShape shape, double radialFineness, double axialFineness, boolean sidesClosed) {
    double outer = shape.diameterMetres() / 2;
    double inner = outer - shape.ring().map(BodyShape.Ring::thicknessMetres).orElse(0.0);
    ringSquareMetres = Math.PI * (outer * outer - inner * inner);
    double hole = shape.cavity().map(c -> c.diameterMetres() / 2).orElse(0.0);
    double tall = shape.heightMetres();
    half = shape.cavity().isEmpty() && shape.bottom() == BodyShape.Bottom.EXPOSED;
    boolean bottomExposed = !half && shape.bottom() == BodyShape.Bottom.EXPOSED;
    baseMetres = half ? tall / 2 : 0;
    double top = tall - baseMetres;
    double floor = top - shape.cavity().map(BodyShape.Cavity::depthMetres).orElse(0.0);
    double size = Math.min(inner, tall / 2);

    double[] radialStops = sorted(0, hole, outer / 2 < inner ? outer / 2 : 0, inner);
    double[] axialStops = sorted(0, half ? 0 : tall / 2, hole > 0 ? floor : top, top);
    Spacing radial =
        r -> {
          double depth = inner - r;
          if (hole > 0) {
            depth = Math.min(depth, Math.abs(r - hole));
          }
          return (Math.min(FIRST_RADIAL * size + GROWTH_RADIAL * depth, WIDEST_RADIAL * inner))
              / radialFineness;
        };
    Spacing axial =
        z -> {
          double depth = top - z;
          if (bottomExposed) {
            depth = Math.min(depth, z);
          }
          double widest = Math.min(FIRST_AXIAL * size + GROWTH_AXIAL * depth, WIDEST_AXIAL * tall);
          if (hole > 0) {
            boolean under = z < floor;
            double growth = under ? GROWTH_UNDER_FLOOR : GROWTH_AXIAL;
            double near = FIRST_UNDER_FLOOR * size + growth * Math.abs(z - floor);
            widest = Math.min(widest, near);
            if (under) {
              widest = Math.min(widest, WIDEST_UNDER_FLOOR * tall);
            }
          }
          return widest / axialFineness;
        };
    radius = lines(radialStops, radial);
    height = lines(axialStops, axial);
    nr = radius.length;
    nz = height.length;
    int n = nr * nz;
    volume = new double[n];
    outward = new double[n];
    upward = new double[n];
    facingRadially = new double[n];
    facingAxially = new double[n];
    for (int i = 0; i + 1 < nr; i++) {
      double face = (radius[i] + radius[i + 1]) / 2;
      double innerRing = Math.PI * (face * face - radius[i] * radius[i]);
      double outerRing = Math.PI * (radius[i + 1] * radius[i + 1] - face * face);
      for (int j = 0; j + 1 < nz; j++) {
        if (hollow(i, j, hole, floor)) {
          continue;
        }
        int here = i * nz + j;
        int out = here + nz;
        double dz = height[j + 1] - height[j];
        double dr = radius[i + 1] - radius[i];
        for (int up = 0; up <= 1; up++) {
          volume[here + up] += innerRing * dz / 2;
          volume[out + up] += outerRing * dz / 2;
          outward[here + up] += 2 * Math.PI * face * dz / 2 / dr;
        }
        upward[here] += innerRing / dz;
        upward[out] += outerRing / dz;
        if (i + 2 == nr) {
          for (int up = 0; up <= 1; up++) {
            facingRadially[out + up] += Math.PI * outer * dz;
            volume[out + up] += ringSquareMetres * dz / 2;
          }
        }
        if (i > 0 && hollow(i - 1, j, hole, floor)) {
          facingRadially[here] += Math.PI * radius[i] * dz;
          facingRadially[here + 1] += Math.PI * radius[i] * dz;
        }
        if (j + 2 == nz || hollow(i, j + 1, hole, floor)) {
          facingAxially[here + 1] += innerRing;
          facingAxially[out + 1] += outerRing + (i + 2 == nr ? ringSquareMetres : 0);
        }
        if (j == 0 && bottomExposed) {
          facingAxially[here] += innerRing;
          facingAxially[out] += outerRing + (i + 2 == nr ? ringSquareMetres : 0);
        }
      }
    }
    if (sidesClosed) {
      Arrays.fill(facingRadially, 0);
    }
    firstSolid = new int[nz];
    for (int j = 0; j < nz; j++) {
      while (volume[firstSolid[j] * nz + j] == 0) {
        firstSolid[j]++;
      }
    }
    double halfway = (radius[nr - 2] + inner) / 2;
    double beside = Math.PI * (inner * inner - halfway * halfway);
    besideRing = beside / (beside + ringSquareMetres);
    middle = half ? 0 : nearest(height, tall / 2);
    totalVolume = Arrays.stream(volume).sum();
  }

  /** m between lines at a place. */
  private interface Spacing {
    double at(double metres);
  }

  private boolean hollow(int i, int j, double hole, double floor) {
    return (radius[i] + radius[i + 1]) / 2 < hole && (height[j] + height[j + 1]) / 2 > floor;
  }

  private static int nearest(double[] lines, double metres) {
    int best = 0;
    for (int i = 1; i < lines.length; i++) {
      if (Math.abs(lines[i] - metres) < Math.abs(lines[best] - metres)) {
        best = i;
      }
    }
    return best;
  }

  private static double[] sorted(double... stops) {
    return Arrays.stream(stops).sorted().distinct().toArray();
  }

  /** Lines through all stops, between them as close as asked for. */
  private static double[] lines(double[] stops, Spacing spacing) {
    double[] all = {stops[0]};
    for (int s = 0; s + 1 < stops.length; s++) {
      double from = stops[s];
      double to = stops[s + 1];
      int samples = 400;
      double[] count = new double[samples + 1];
      for (int q = 0; q < samples; q++) {
        double x = from + (to - from) * (q + 0.5) / samples;
        count[q + 1] = count[q] + (to - from) / samples / spacing.at(x);
      }
      int cells = (int) Math.max(1, Math.ceil(count[samples] - 0.1));
      int start = all.length;
      all = Arrays.copyOf(all, start + cells);
      int q = 0;
      for (int c = 1; c < cells; c++) {
        double want = count[samples] * c / cells;
        while (count[q + 1] < want) {
          q++;
        }
        double share = (want - count[q]) / (count[q + 1] - count[q]);
        all[start + c - 1] = from + (to - from) * (q + share) / samples;
      }
      all[start + cells - 1] = to;
    }
    return all;
  }
}
