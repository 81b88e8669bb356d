package org.heatwright.mould;

import java.util.ArrayList;
import java.util.List;
import org.heatwright.numerics.Samples;
import org.heatwright.units.Temperature;

/**
 * How a mould loses its heat after it left the kiln: the outermost pattern is the clock, not the
 * core. Immutable.
 *
 * <p>Limits: the mould is as hot all through when it leaves as it is said to be; tongs, an open
 * sprue that draws air, and a cold plate under it change the times by tens of percent.
 */
public final class PourWindow {

  /** Still air, W/(m² K). Source: estimate, 5 to 12. */
  private static final double AIR_CONVECTION = 8;

  /** A cradle takes half of the side's view of the room. Source: estimate. */
  private static final double CRADLE_VIEW = 0.5;

  private static final double USUAL_DEPTH_METRES = 0.008;
  private static final double LONGEST_SECONDS = 3600;

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
   * @param start temperature all through when it leaves
   * @param room what is around it then
   * @param place where it stands
   * @param patternDepthMetres from the investment's outer face to the outermost pattern, m, above
   *     zero, less than the radius
   */
  public record Setting(
      Mould mould,
      Investment investment,
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
  private final double[] centre;

  private PourWindow(double[] seconds, double[] pattern, double[] centre) {
    this.seconds = seconds;
    this.pattern = pattern;
    this.centre = centre;
  }

  /**
   * How deep the outermost pattern lies where nobody says, m: a quarter of the way through a mould
   * that is thin for 8 mm. Source: estimate.
   */
  public static double usualDepthMetres(Mould mould) {
    return Math.min(USUAL_DEPTH_METRES, mould.investmentDiameterMetres() / 4);
  }

  /** Solves the first hour in the open. */
  public static PourWindow of(Setting setting) {
    BodySolver solver = new BodySolver(body(setting));
    Mould mould = setting.mould();
    double radius = mould.investmentDiameterMetres() / 2 - setting.patternDepthMetres();
    List<double[]> rows = new ArrayList<>();
    Runnable row =
        () ->
            rows.add(
                new double[] {
                  solver.seconds(),
                  solver.celsiusAt(radius, mould.heightMetres() / 2),
                  solver.centreCelsius()
                });
    row.run();
    Temperature room = setting.room();
    solver.advance(LONGEST_SECONDS, room, room, room, room, step -> row.run());
    return new PourWindow(column(rows, 0), column(rows, 1), column(rows, 2));
  }

  private static double[] column(List<double[]> rows, int index) {
    return rows.stream().mapToDouble(row -> row[index]).toArray();
  }

  private static Body body(Setting setting) {
    boolean held = setting.place() == Place.CRADLE;
    double share = held ? CRADLE_VIEW : 1;
    return new Body(
        setting.mould().shape(held ? BodyShape.Bottom.INSULATED : BodyShape.Bottom.EXPOSED),
        // What is taken up once has been: it is dry.
        MouldLoad.material(setting.investment()),
        MouldLoad.EMISSIVITY * share,
        AIR_CONVECTION * share,
        setting.start());
  }

  /** At the core, °C. */
  public double centreCelsiusAt(double second) {
    return Samples.linear(seconds, centre, second);
  }

  /** How long until the outermost pattern's place has fallen below a temperature, s. */
  public double patternFallsBelowSeconds(Temperature least) {
    double limit = least.celsius();
    for (int i = 0; i < pattern.length; i++) {
      if (pattern[i] < limit) {
        return i == 0
            ? 0
            : seconds[i - 1]
                + (seconds[i] - seconds[i - 1])
                    * (pattern[i - 1] - limit)
                    / (pattern[i - 1] - pattern[i]);
      }
    }
    return Double.POSITIVE_INFINITY;
  }
}
