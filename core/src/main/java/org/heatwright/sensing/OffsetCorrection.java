package org.heatwright.sensing;

import java.util.List;
import java.util.Objects;
import org.heatwright.numerics.LinearTable;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;

/**
 * How far a display is off, over the temperature it shows: linear between the points, constant
 * outside. Immutable.
 *
 * @param points one or more, rising in what is shown and in the truth behind it
 */
public record OffsetCorrection(List<Point> points) {

  /**
   * @param shown what the display says
   * @param offset what it says above the truth, as in a kiln file's {@code offset-k}
   */
  public record Point(Temperature shown, TemperatureChange offset) {
    public Point {
      Objects.requireNonNull(shown, "shown");
      Objects.requireNonNull(offset, "offset");
    }

    /** What the display stood for. */
    public Temperature truth() {
      return shown.plus(TemperatureChange.ofKelvins(-offset.kelvins()));
    }
  }

  public OffsetCorrection {
    points = List.copyOf(points);
    if (points.isEmpty()) {
      throw new IllegalArgumentException("An offset correction needs at least one point.");
    }
    for (int i = 1; i < points.size(); i++) {
      Point before = points.get(i - 1);
      Point point = points.get(i);
      if (before.shown.compareTo(point.shown) >= 0
          || before.truth().compareTo(point.truth()) >= 0) {
        throw new IllegalArgumentException(
            "The offset at %s must come after that at %s, and the truth must rise between them."
                .formatted(Words.celsius(point.shown), Words.celsius(before.shown)));
      }
    }
  }

  /** The same offset everywhere. */
  public static OffsetCorrection constant(TemperatureChange offset) {
    return new OffsetCorrection(List.of(new Point(Temperature.ofCelsius(0), offset)));
  }

  /**
   * A first guess from one point: nothing at 0 °C, in proportion up to the point, constant above
   * it. Our estimate; a second point beats it.
   *
   * @param point above 0 °C
   */
  public static OffsetCorrection inProportion(Point point) {
    Point nothing = new Point(Temperature.ofCelsius(0), TemperatureChange.ofKelvins(0));
    return new OffsetCorrection(List.of(nothing, point));
  }

  /** What the display shows above the truth when it shows {@code shown}. */
  public TemperatureChange offsetAt(Temperature shown) {
    return TemperatureChange.ofKelvins(
        offsetsOver(points.stream().map(Point::shown).toList()).at(shown.celsius()));
  }

  /** The truth behind what is shown. */
  public Temperature truth(Temperature shown) {
    return new Point(shown, offsetAt(shown)).truth();
  }

  /** What the display shows at a true temperature: the setpoint that gets there. */
  public Temperature shown(Temperature truth) {
    return truth.plus(
        TemperatureChange.ofKelvins(
            offsetsOver(points.stream().map(Point::truth).toList()).at(truth.celsius())));
  }

  private LinearTable offsetsOver(List<Temperature> arguments) {
    return LinearTable.of(
        arguments.stream().mapToDouble(Temperature::celsius).toArray(),
        points.stream().mapToDouble(point -> point.offset.kelvins()).toArray());
  }
}
