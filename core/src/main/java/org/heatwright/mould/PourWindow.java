package org.heatwright.mould;

import java.util.Arrays;
import java.util.Optional;
import org.heatwright.material.Material;
import org.heatwright.units.Temperature;

/**
 * How a mould loses its heat after it left the kiln: the outermost pattern is the clock, not the
 * core. Immutable.
 *
 * <p>Limits: the mould is as hot all through when it leaves as it is said to be; tongs, an open
 * sprue that draws air, and a cold plate under it change the times by tens of percent.
 */
public final class PourWindow {

  /** Emissivity of investment and oxidised steel. Source: estimate. */
  private static final double EMISSIVITY = 0.85;

  /** Still air, W/(m² K). Source: estimate, 5 to 12. */
  private static final double AIR_CONVECTION = 8;

  /** A cradle takes half of the side's view of the room. Source: estimate. */
  private static final double CRADLE_VIEW = 0.5;

  private static final double LONGEST_SECONDS = 3600;
  private static final double ROW_SECONDS = 2;

  /** Where the mould stands while it waits. */
  public enum Place {
    /** Free in the air, or on points. */
    AIR("in the air"),
    /** In the cradle of a casting machine, on a gasket: its bottom and half its sides held. */
    CRADLE("in a casting machine's cradle");

    private final String words;

    Place(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  /**
   * What leaves the kiln, and where it goes.
   *
   * @param mould its size; the count does not matter
   * @param investment the mix; it is dry by now
   * @param cavity sprue and pattern tree as one hole from the top, where its wall is to be told
   * @param start temperature all through when it leaves
   * @param room what is around it then
   * @param place where it stands
   * @param patternDepthMetres from the investment's outer face to the outermost pattern, m, above
   *     zero, less than the radius
   */
  public record Setting(
      Mould mould,
      Investment investment,
      Optional<BodyShape.Cavity> cavity,
      Temperature start,
      Temperature room,
      Place place,
      double patternDepthMetres) {
    public Setting {
      double radius = mould.investmentDiameterMetres() / 2;
      if (!(patternDepthMetres > 0 && patternDepthMetres < radius)) {
        throw new IllegalArgumentException(
            "The outermost pattern (%s mm deep) must lie between the wall and the axis, %s mm away."
                .formatted(patternDepthMetres * 1000, radius * 1000));
      }
      if (start.compareTo(room) <= 0) {
        throw new IllegalArgumentException(
            "The mould (%s °C) must be hotter than the room (%s °C)."
                .formatted(start.celsius(), room.celsius()));
      }
    }
  }

  private final double[] seconds;
  private final double[] pattern;
  private final double[] cavity;
  private final double[] centre;

  private PourWindow(double[] seconds, double[] pattern, double[] cavity, double[] centre) {
    this.seconds = seconds;
    this.pattern = pattern;
    this.cavity = cavity;
    this.centre = centre;
  }

  /** Solves the first hour in the open. */
  public static PourWindow of(Setting setting) {
    BodySolver solver = new BodySolver(body(setting));
    int rows = (int) (LONGEST_SECONDS / ROW_SECONDS) + 1;
    double[] seconds = new double[rows];
    double[] pattern = new double[rows];
    double[] cavity = new double[rows];
    double[] centre = new double[rows];
    Mould mould = setting.mould();
    double depth = mould.wallMetres() + setting.patternDepthMetres();
    double radius = mould.diameterMetres() / 2 - depth;
    double middle = mould.heightMetres() / 2;
    Temperature room = setting.room();
    for (int row = 0; row < rows; row++) {
      if (row > 0) {
        solver.advance(ROW_SECONDS, room, room, room, room, ignored -> {});
      }
      seconds[row] = row * ROW_SECONDS;
      pattern[row] = solver.celsiusAt(radius, middle);
      centre[row] = solver.centreCelsius();
      cavity[row] =
          setting
              .cavity()
              .map(
                  hole ->
                      solver.celsiusAt(
                          hole.diameterMetres() / 2, mould.heightMetres() - hole.depthMetres() / 2))
              .orElse(centre[row]);
    }
    return new PourWindow(seconds, pattern, cavity, centre);
  }

  private static Body body(Setting setting) {
    Mould mould = setting.mould();
    // Dry: what is taken up once has been.
    Material material = MouldLoad.material(setting.investment());
    boolean held = setting.place() == Place.CRADLE;
    return new Body(
        new BodyShape(
            mould.diameterMetres(),
            mould.heightMetres(),
            held ? BodyShape.Bottom.INSULATED : BodyShape.Bottom.EXPOSED,
            setting.cavity(),
            mould.wallMetres() > 0
                ? Optional.of(new BodyShape.Ring(mould.wallMetres(), MouldLoad.STEEL))
                : Optional.empty()),
        material,
        held ? EMISSIVITY * CRADLE_VIEW : EMISSIVITY,
        held ? AIR_CONVECTION * CRADLE_VIEW : AIR_CONVECTION,
        setting.start());
  }

  /** At the outermost pattern, at mid height, °C. */
  public double patternCelsiusAt(double second) {
    return at(pattern, second);
  }

  /** At the wall of the cavity, half-way down; the core where there is no cavity, °C. */
  public double cavityCelsiusAt(double second) {
    return at(cavity, second);
  }

  /** At the core, °C. */
  public double centreCelsiusAt(double second) {
    return at(centre, second);
  }

  /** How long until the outermost pattern's place has fallen below a temperature, s. */
  public double patternFallsBelowSeconds(Temperature least) {
    return below(pattern, least);
  }

  /** How long until the cavity's wall has fallen below a temperature, s. */
  public double cavityFallsBelowSeconds(Temperature least) {
    return below(cavity, least);
  }

  /** Times to read the curves at, s, rising. */
  public double[] seconds() {
    return seconds.clone();
  }

  private double below(double[] column, Temperature least) {
    double limit = least.celsius();
    for (int i = 0; i < column.length; i++) {
      if (column[i] < limit) {
        return i == 0
            ? 0
            : seconds[i - 1]
                + (seconds[i] - seconds[i - 1])
                    * (column[i - 1] - limit)
                    / (column[i - 1] - column[i]);
      }
    }
    return Double.POSITIVE_INFINITY;
  }

  private double at(double[] column, double second) {
    int last = seconds.length - 1;
    if (second <= 0) {
      return column[0];
    }
    if (second >= seconds[last]) {
      return column[last];
    }
    int found = Arrays.binarySearch(seconds, second);
    int i = found >= 0 ? found : -found - 2;
    double share = (second - seconds[i]) / (seconds[i + 1] - seconds[i]);
    return column[i] + share * (column[i + 1] - column[i]);
  }
}
