package org.heatwright.mould;

/**
 * Temperatures in the section of a body at one moment, on the solver's lines: from the axis out,
 * and from the bottom up. Immutable.
 */
public final class Section {

  private final double second;
  private final double[] radiusMetres;
  private final double[] heightMetres;
  private final double[] celsius;

  /**
   * @param second when, s
   * @param radiusMetres lines from the axis, rising, m
   * @param heightMetres lines from the bottom, rising, m
   * @param celsius temperatures, all heights of the first radius first; NaN in a cavity
   */
  Section(double second, double[] radiusMetres, double[] heightMetres, double[] celsius) {
    this.second = second;
    this.radiusMetres = radiusMetres;
    this.heightMetres = heightMetres;
    this.celsius = celsius;
  }

  /** When, s from the start. */
  public double second() {
    return second;
  }

  /** Number of lines from the axis out. */
  public int radii() {
    return radiusMetres.length;
  }

  /** Number of lines from the bottom up. */
  public int heights() {
    return heightMetres.length;
  }

  /** Distance of a line from the axis, m. */
  public double radiusMetres(int line) {
    return radiusMetres[line];
  }

  /** Height of a line above the bottom, m. */
  public double heightMetres(int line) {
    return heightMetres[line];
  }

  /** Temperature where two lines cross, °C; NaN in a cavity. */
  public double celsius(int radius, int height) {
    return celsius[radius * heightMetres.length + height];
  }
}
