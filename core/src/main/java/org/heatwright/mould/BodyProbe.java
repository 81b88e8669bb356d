package org.heatwright.mould;

import java.util.List;

/**
 * Where a temperature is read.
 *
 * @param name as files and traces call it
 * @param what which kind of place
 * @param radiusMetres from the axis, m; only for a point
 * @param heightMetres up from the bottom, m; only for a point
 */
public record BodyProbe(String name, What what, double radiusMetres, double heightMetres) {

  /** Kinds of places. All but the mean and the points are at mid height. */
  public enum What {
    /** On the axis, or on the wall of a cavity that reaches there. */
    CENTRE,
    /** Half the outer radius from the axis. */
    MID_RADIUS,
    /** On the outer face. */
    SURFACE,
    /** Volume mean of the whole solid. */
    MEAN,
    /** A place of its own. */
    POINT
  }

  public static final BodyProbe CENTRE = new BodyProbe("centre", What.CENTRE, 0, 0);
  public static final BodyProbe MID_RADIUS = new BodyProbe("mid-radius", What.MID_RADIUS, 0, 0);
  public static final BodyProbe SURFACE = new BodyProbe("surface", What.SURFACE, 0, 0);
  public static final BodyProbe MEAN = new BodyProbe("mean", What.MEAN, 0, 0);

  /** The four that have a name. */
  public static final List<BodyProbe> USUAL = List.of(CENTRE, MID_RADIUS, SURFACE, MEAN);

  /** A place in the solid. */
  public static BodyProbe point(String name, double radiusMetres, double heightMetres) {
    return new BodyProbe(name, What.POINT, radiusMetres, heightMetres);
  }

  /** Whether it lies in the solid or on its faces. */
  public boolean isIn(BodyShape shape) {
    if (what != What.POINT) {
      return true;
    }
    boolean inside =
        radiusMetres >= 0
            && radiusMetres <= shape.diameterMetres() / 2
            && heightMetres >= 0
            && heightMetres <= shape.heightMetres();
    boolean inHole =
        shape
            .cavity()
            .map(
                c ->
                    radiusMetres < c.diameterMetres() / 2
                        && heightMetres > shape.heightMetres() - c.depthMetres())
            .orElse(false);
    return inside && !inHole;
  }

  double celsius(BodySolver solver) {
    return switch (what) {
      case CENTRE -> solver.centreCelsius();
      case MID_RADIUS -> solver.midRadiusCelsius();
      case SURFACE -> solver.surfaceCelsius();
      case MEAN -> solver.meanCelsius();
      case POINT -> solver.celsiusAt(radiusMetres, heightMetres);
    };
  }
}
