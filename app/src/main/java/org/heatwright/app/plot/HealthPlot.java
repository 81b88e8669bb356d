package org.heatwright.app.plot;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.heatwright.forecast.Band;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.LifeEvent;
import org.heatwright.learn.KilnHealth;

/** How a kiln ages: each quantity over the dates of its firings, relative to a reference. */
public final class HealthPlot {

  /** Firings of one day stand this far apart, days. */
  private static final double SAME_DAY_STEP = 0.3;

  private HealthPlot() {}

  /**
   * What one firing says of one quantity.
   *
   * @param date of the firing
   * @param firing its name
   * @param quantity what was watched, in plain words, e.g. "Full power"
   * @param relative 5th percentile, median and 95th percentile over the reference's, 1 for the same
   */
  public record Point(LocalDate date, String firing, String quantity, Band relative) {
    public Point {
      Objects.requireNonNull(date, "date");
      Objects.requireNonNull(relative, "relative");
    }
  }

  /** What its firings tell of a kiln; what they do not tell in the end is left out. */
  public static Figure of(Kiln kiln, KilnHealth health) {
    EnumSet<KilnHealth.Aspect> told = EnumSet.of(KilnHealth.Aspect.POWER);
    for (KilnHealth.Aspect aspect : KilnHealth.Aspect.values()) {
      health.points().stream()
          .filter(p -> p.aspect() == aspect)
          .reduce((older, newer) -> newer)
          .filter(KilnHealth.Point::told)
          .ifPresent(last -> told.add(aspect));
    }
    return of(
        kiln.name(),
        health.points().stream()
            .filter(p -> told.contains(p.aspect()))
            .map(p -> new Point(p.date(), p.firing(), name(p.aspect()), p.relative()))
            .toList(),
        kiln.history());
  }

  private static String name(KilnHealth.Aspect aspect) {
    return switch (aspect) {
      case POWER -> "Full power";
      case LOSS -> "Heat lost when held";
      case LAG -> "Lag of the thermocouple";
    };
  }

  /**
   * @param kiln its name
   * @param points of one firing or more; each quantity gets its own panel, in order of appearance
   * @param events what changed the kiln for good; those outside the dates are left out
   * @throws IllegalArgumentException if there is no point
   */
  public static Figure of(String kiln, List<Point> points, List<LifeEvent> events) {
    if (points.isEmpty()) {
      throw new IllegalArgumentException("There is no firing to plot.");
    }
    List<Point> sorted = points.stream().sorted(Comparator.comparing(Point::date)).toList();
    LocalDate first = sorted.get(0).date();
    LocalDate last = sorted.get(sorted.size() - 1).date();
    List<LifeEvent> near =
        events.stream()
            .filter(e -> !e.date().isBefore(first) && !e.date().isAfter(last))
            .sorted(Comparator.comparing(LifeEvent::date))
            .toList();
    List<Figure.Panel> panels = new ArrayList<>();
    List<String> quantities = points.stream().map(Point::quantity).distinct().toList();
    for (String quantity : quantities) {
      panels.add(
          panel(
              quantity,
              sorted.stream().filter(p -> p.quantity().equals(quantity)).toList(),
              near,
              panels.isEmpty()));
    }
    return new Figure(
        "Health of %s over time".formatted(kiln),
        told(sorted, quantities),
        Axis.dates(first, last),
        panels,
        List.of(new Figure.Key(Figure.Kind.BAR, "one firing, nine times in ten inside its bar")));
  }

  private static Figure.Panel panel(
      String quantity, List<Point> points, List<LifeEvent> events, boolean named) {
    List<Layer> layers = new ArrayList<>();
    for (LifeEvent event : events) {
      layers.add(new Layer.Mark(event.date().toEpochDay(), named ? words(event.what()) : ""));
    }
    layers.add(new Layer.Level(1, Look.LEVEL));
    List<Layer.Bar> bars = new ArrayList<>();
    double least = 1;
    double most = 1;
    double free = Double.NEGATIVE_INFINITY;
    for (Point point : points) {
      double x = Math.max(point.date().toEpochDay(), free);
      free = x + SAME_DAY_STEP;
      Band band = point.relative();
      bars.add(new Layer.Bar(x, band.low(), band.median(), band.high()));
      least = Math.min(least, band.low());
      most = Math.max(most, band.high());
    }
    layers.add(
        new Layer.Line(
            bars.stream().map(b -> new Layer.Point(b.x(), b.middle())).toList(), Look.THREAD));
    layers.add(new Layer.Bars(bars, Look.AFTER));
    return new Figure.Panel(quantity, Axis.numbers(least, most, 100, "%"), 0, layers);
  }

  private static String told(List<Point> sorted, List<String> quantities) {
    List<String> parts = new ArrayList<>();
    for (String quantity : quantities) {
      Band band =
          sorted.stream()
              .filter(p -> p.quantity().equals(quantity))
              .reduce((a, b) -> b)
              .orElseThrow()
              .relative();
      parts.add(
          "%s %d to %d %%"
              .formatted(
                  quantity.substring(0, 1).toLowerCase(Locale.UK) + quantity.substring(1),
                  Math.round(100 * band.low()),
                  Math.round(100 * band.high())));
    }
    return "The last firing against the first: " + String.join(", ", parts) + ".";
  }

  private static String words(LifeEvent.What what) {
    return switch (what) {
      case ELEMENTS_REPLACED -> "new elements";
      case THERMOCOUPLE_REPLACED -> "new thermocouple";
      case OFFSET_CHANGED -> "offset changed";
      case DOOR_RESEALED -> "door resealed";
      case NOTE -> "note";
    };
  }
}
