package org.heatwright.kiln;

import java.util.ArrayList;
import java.util.List;
import org.heatwright.material.HeatCurve;

/**
 * A stack of cells that conducts in one direction: a wall from its hot face to its shell, or a load
 * from its surface to its core. The first cell's node sits on the surface that faces the chamber;
 * the last one's sits on the shell (a wall) or stands for the core (a load). Immutable.
 *
 * <p>The cells are a choice, not a constant of nature: the tests show how the answers settle as
 * they get finer.
 */
public final class ThermalBody {

  final String name;
  final int cells;
  final HeatCurve[] curve;
  final double[] conductivityFactor;

  /** Heat content of a cell per J/m³ of its curve: volume times capacity factor, m³. */
  final double[] volume;

  /** Path from node i to the boundary with cell i+1, and from there to node i+1, m. */
  final double[] pathOut;

  final double[] pathIn;

  /** Resistance of the joint between cell i and cell i+1, m² K/W. */
  final double[] contact;

  /** Area between cell i and cell i+1, m². */
  final double[] area;

  final double faceSquareMetres;
  final double faceEmissivity;

  /** Area of the shell that loses heat to the room, m²; zero for a load. */
  final double shellSquareMetres;

  private ThermalBody(Builder builder, double shellSquareMetres) {
    this.name = builder.name;
    this.faceSquareMetres = builder.faceSquareMetres;
    this.faceEmissivity = builder.faceEmissivity;
    this.shellSquareMetres = shellSquareMetres;
    List<Cell> list = builder.list;
    this.cells = list.size();
    this.curve = new HeatCurve[cells];
    this.conductivityFactor = new double[cells];
    this.volume = new double[cells];
    this.area = new double[cells];
    this.pathOut = new double[cells];
    this.pathIn = new double[cells];
    this.contact = new double[cells];
    for (int i = 0; i < cells; i++) {
      Cell cell = list.get(i);
      curve[i] = cell.curve;
      conductivityFactor[i] = cell.conductivityFactor;
      volume[i] = cell.cubicMetres * cell.capacityFactor;
      area[i] = cell.innerSquareMetres;
      contact[i] = cell.contact;
    }
    for (int i = 0; i + 1 < cells; i++) {
      // The first node sits on the surface, a shell's last node on the shell, others in the middle.
      pathOut[i] = i == 0 ? list.get(i).thicknessMetres : list.get(i).thicknessMetres / 2;
      boolean onShell = i + 1 == cells - 1 && shellSquareMetres > 0;
      pathIn[i] = onShell ? list.get(i + 1).thicknessMetres : list.get(i + 1).thicknessMetres / 2;
    }
  }

  public String name() {
    return name;
  }

  public int cells() {
    return cells;
  }

  /**
   * A value at a depth, between those of the nodes about it; that of the last node if it is deeper.
   *
   * @param depthMetres from the face
   * @param values a value a cell
   * @param start where the body's first cell is in them
   */
  double at(double depthMetres, double[] values, int start) {
    double depth = 0;
    for (int i = 0; i + 1 < cells; i++) {
      double next = depth + pathOut[i] + pathIn[i];
      if (depthMetres < next) {
        double share = (depthMetres - depth) / (next - depth);
        return values[start + i] + share * (values[start + i + 1] - values[start + i]);
      }
      depth = next;
    }
    return values[start + cells - 1];
  }

  /** Heat to warm all of it by a kelvin at a temperature, latent heats included, J/K. */
  public double joulesPerKelvin(double celsius) {
    double sum = 0;
    for (int i = 0; i < cells; i++) {
      double heat = curve[i].heatAt(celsius);
      sum += volume[i] / curve[i].kelvinsPerHeat(curve[i].interval(heat));
    }
    return sum;
  }

  /** Area that faces the chamber, m². */
  public double faceSquareMetres() {
    return faceSquareMetres;
  }

  /**
   * A body of {@code count} equal ones side by side.
   *
   * @param name what it is
   * @param faceSquareMetres area that faces the chamber, m²
   * @param faceEmissivity emissivity of that face times its view of the chamber, 0 to 1
   */
  public static Builder builder(String name, double faceSquareMetres, double faceEmissivity) {
    return new Builder(name, faceSquareMetres, faceEmissivity);
  }

  /** A body that is the same temperature all through. */
  public static ThermalBody lumped(
      String name,
      double faceSquareMetres,
      double faceEmissivity,
      HeatCurve curve,
      double cubicMetres) {
    return builder(name, faceSquareMetres, faceEmissivity)
        .cell(curve, 1, 1, 0.001, cubicMetres, 0)
        .core();
  }

  private record Cell(
      HeatCurve curve,
      double conductivityFactor,
      double capacityFactor,
      double thicknessMetres,
      double cubicMetres,
      double innerSquareMetres,
      double contact) {}

  /** Collects cells from the face inward. */
  public static final class Builder {
    private final String name;
    private final double faceSquareMetres;
    private final double faceEmissivity;
    private final List<Cell> list = new ArrayList<>();

    private Builder(String name, double faceSquareMetres, double faceEmissivity) {
      if (!(faceSquareMetres > 0) || !(faceEmissivity > 0 && faceEmissivity <= 1)) {
        throw new IllegalArgumentException(
            "The body '%s' needs a face (%s m²) above zero and an emissivity (%s) in (0, 1]."
                .formatted(name, faceSquareMetres, faceEmissivity));
      }
      this.name = name;
      this.faceSquareMetres = faceSquareMetres;
      this.faceEmissivity = faceEmissivity;
    }

    /**
     * Adds a cell behind the last one.
     *
     * @param curve its material
     * @param conductivityFactor multiplies the material's conductivity
     * @param capacityFactor multiplies the material's heat content
     * @param thicknessMetres m
     * @param cubicMetres m³
     * @param innerSquareMetres area between it and the next cell, m²; ignored for the last cell
     */
    public Builder cell(
        HeatCurve curve,
        double conductivityFactor,
        double capacityFactor,
        double thicknessMetres,
        double cubicMetres,
        double innerSquareMetres) {
      list.add(
          new Cell(
              curve,
              conductivityFactor,
              capacityFactor,
              thicknessMetres,
              cubicMetres,
              innerSquareMetres,
              0));
      return this;
    }

    /** Puts a joint of that resistance, m² K/W, between the last cell and the next one. */
    public Builder joint(double squareMetreKelvinsPerWatt) {
      int last = list.size() - 1;
      Cell c = list.get(last);
      list.set(
          last,
          new Cell(
              c.curve,
              c.conductivityFactor,
              c.capacityFactor,
              c.thicknessMetres,
              c.cubicMetres,
              c.innerSquareMetres,
              squareMetreKelvinsPerWatt));
      return this;
    }

    /** Ends the body with a core that loses nothing. */
    public ThermalBody core() {
      return new ThermalBody(this, 0);
    }

    /** Ends the body with a shell of that area, m², in the room. */
    public ThermalBody shell(double shellSquareMetres) {
      return new ThermalBody(this, shellSquareMetres);
    }
  }
}
