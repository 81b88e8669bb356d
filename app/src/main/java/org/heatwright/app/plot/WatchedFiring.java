package org.heatwright.app.plot;

import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.heatwright.app.files.LogFile;
import org.heatwright.app.report.WhenWords;
import org.heatwright.forecast.Forecast;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.FiringConditions.Disturbance;
import org.heatwright.learn.Anomaly;
import org.heatwright.learn.LoggedFiring;
import org.heatwright.learn.Readings;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.enamel.LoggedOpenings;

/**
 * A forecast, and what was seen of the firing where it was watched.
 *
 * @param forecast what should happen
 * @param basis what the forecast knew, one sentence; may be empty
 * @param seen what the display said, s from the program's start; empty before the firing
 * @param unit of the labels
 * @param start when the program's first segment began, where known
 * @param happenings what is known to have happened on the way
 */
public record WatchedFiring(
    Forecast forecast,
    String basis,
    Optional<Readings> seen,
    TemperatureUnit unit,
    Optional<ZonedDateTime> start,
    List<Happening> happenings) {

  /** What happens more often than this has one label for all. */
  private static final int MOST_TOLD_APART = 3;

  /** The log tells again what the conditions tell if both begin within this, s. */
  private static final double SAME_SECONDS = 120;

  public WatchedFiring {
    Objects.requireNonNull(forecast, "forecast");
    happenings = List.copyOf(happenings);
  }

  /**
   * Something that happened.
   *
   * @param fromSeconds s from the program's start
   * @param toSeconds when it ended; the same for a moment
   * @param label in a few words
   */
  public record Happening(double fromSeconds, double toSeconds, String label) {}

  /** The display's readings of a log. */
  public static Readings readings(LogFile.Log log) {
    return Readings.of(
        log.rows().stream().mapToDouble(LogFile.Row::seconds).toArray(),
        log.rows().stream().mapToDouble(LogFile.Row::chamberCelsius).toArray(),
        log.rows().stream().mapToDouble(row -> row.powerWatts().orElse(Double.NaN)).toArray());
  }

  /** A firing with the openings of the door that its log tells or shows. */
  public static LoggedFiring opened(LoggedFiring firing, LogFile.Log log) {
    return LoggedOpenings.in(
        firing,
        log.rows().stream().mapToDouble(row -> row.setpointCelsius().orElse(Double.NaN)).toArray(),
        log.rows().stream().map(LogFile.Row::event).toList());
  }

  /** When a log began by the clock, where it says so. */
  public static Optional<ZonedDateTime> start(LogFile.Log log, ZoneId zone) {
    return log.start().map(instant -> instant.atZone(zone));
  }

  /** What the day's conditions and the log's own events tell. */
  public static List<Happening> happenings(FiringConditions conditions, Optional<LogFile.Log> log) {
    List<Happening> all = new ArrayList<>();
    for (Disturbance disturbance : conditions.disturbances()) {
      all.add(
          new Happening(
              disturbance.atSeconds(),
              disturbance.atSeconds() + disturbance.lengthSeconds(),
              disturbance.kind().words()));
    }
    List<Happening> told = List.copyOf(all);
    for (Happening logged : log.map(l -> events(l.rows())).orElse(List.of())) {
      boolean again =
          told.stream()
              .anyMatch(
                  t ->
                      t.label().equals(logged.label())
                          && Math.abs(t.fromSeconds() - logged.fromSeconds()) <= SAME_SECONDS);
      if (!again) {
        all.add(logged);
      }
    }
    return all;
  }

  /** What was recognised as having gone wrong; what did not end is a moment. */
  public static List<Happening> happenings(List<Anomaly> anomalies) {
    return anomalies.stream()
        .map(
            anomaly ->
                new Happening(
                    anomaly.beganSeconds(),
                    anomaly.beganSeconds() + anomaly.lengthSeconds().orElse(0),
                    anomaly.kind().words() + "?"))
        .toList();
  }

  /**
   * "door-open", whatever goes in then, to "door-shut" and "mains-off" to "mains-on" are stretches,
   * all else moments.
   */
  private static List<Happening> events(List<LogFile.Row> rows) {
    List<Happening> events = new ArrayList<>();
    String before = "";
    for (int i = 0; i < rows.size(); i++) {
      String event = rows.get(i).event().orElse("");
      if (!event.equals(before) && !event.isEmpty()) {
        double from = rows.get(i).seconds();
        if (event.startsWith("door-open")) {
          events.add(new Happening(from, end(rows, i, "door-shut"), "door open"));
        } else if (event.equals("mains-off")) {
          events.add(new Happening(from, end(rows, i, "mains-on"), "mains off"));
        } else if (!event.equals("door-shut") && !event.equals("mains-on")) {
          events.add(new Happening(from, from, event));
        }
      }
      before = event;
    }
    return events;
  }

  private static double end(List<LogFile.Row> rows, int from, String word) {
    return rows.subList(from, rows.size()).stream()
        .filter(row -> row.event().filter(word::equals).isPresent())
        .mapToDouble(LogFile.Row::seconds)
        .findFirst()
        .orElse(rows.get(from).seconds());
  }

  /** The same with more that happened. */
  public WatchedFiring with(List<Happening> more) {
    List<Happening> all = new ArrayList<>(happenings);
    all.addAll(more);
    return new WatchedFiring(forecast, basis, seen, unit, start, all);
  }

  /** Whether something was seen while the forecast goes. */
  public boolean comparable() {
    return compared().filter(c -> !c.differences().isEmpty()).isPresent();
  }

  /** Says its moments. */
  public WhenWords when() {
    return new WhenWords(start);
  }

  /** How what was seen compares; empty where nothing was. */
  public Optional<LogAgainstForecast> compared() {
    return seen.map(s -> LogAgainstForecast.of(forecast.trace(), s));
  }

  String name() {
    return "%s in %s".formatted(forecast.schedule(), forecast.kiln());
  }

  /** How far the forecast goes, s. */
  double forecastSeconds() {
    double[] grid = forecast.trace().seconds();
    return Math.max(1, grid[grid.length - 1]);
  }

  /** How far the forecast or what was seen goes, s. */
  double endSeconds() {
    return seen.map(s -> Math.max(forecastSeconds(), s.lastSecond())).orElse(forecastSeconds());
  }

  /** Happenings until {@code end} as layers of a panel. */
  List<Layer> happeningLayers(double end) {
    List<Happening> drawn = happenings.stream().filter(h -> h.fromSeconds() <= end).toList();
    Set<String> told = new HashSet<>();
    List<Layer> layers = new ArrayList<>();
    for (Happening happening : drawn) {
      double from = Math.max(0, happening.fromSeconds());
      String label = happening.label();
      long count = drawn.stream().filter(h -> h.label().equals(happening.label())).count();
      if (count > MOST_TOLD_APART) {
        label = told.add(label) ? "%s, %d times".formatted(label, count) : "";
      }
      layers.add(
          happening.toSeconds() > from
              ? new Layer.Stretch(from, Math.min(end, happening.toSeconds()), label)
              : new Layer.Mark(from, label));
    }
    return layers;
  }

  boolean shades() {
    return happenings.stream().anyMatch(h -> h.toSeconds() > h.fromSeconds());
  }

  /** A handful of readings by hand is shown as crosses, a logger's as a line with its gaps. */
  static List<Layer> seenLayers(List<Layer.Point> points) {
    if (byHand(points)) {
      return List.of(new Layer.Crosses(points, Look.MEASURED));
    }
    double gap = Math.max(60, 5 * usualStep(times(points)));
    List<Layer> layers = new ArrayList<>();
    int from = 0;
    for (int i = 1; i <= points.size(); i++) {
      if (i == points.size() || points.get(i).x() - points.get(i - 1).x() > gap) {
        List<Layer.Point> run = points.subList(from, i);
        layers.add(
            run.size() == 1
                ? new Layer.Crosses(run, Look.MEASURED)
                : new Layer.Line(run, Look.MEASURED));
        from = i;
      }
    }
    return layers;
  }

  static boolean byHand(List<Layer.Point> points) {
    return byHand(times(points));
  }

  /**
   * Whether a person read it off the display rather than a logger.
   *
   * @param seconds rising
   */
  public static boolean byHand(double[] seconds) {
    return seconds.length < 12 || usualStep(seconds) > 600;
  }

  private static double[] times(List<Layer.Point> points) {
    return points.stream().mapToDouble(Layer.Point::x).toArray();
  }

  /**
   * The median step between readings, s.
   *
   * @param seconds rising, two at least
   */
  public static double usualStep(double[] seconds) {
    double[] steps = new double[seconds.length - 1];
    for (int i = 0; i < steps.length; i++) {
      steps[i] = seconds[i + 1] - seconds[i];
    }
    Arrays.sort(steps);
    return steps[steps.length / 2];
  }

  /** How the legend names what was seen. */
  static Figure.Key seenKey(List<Layer.Point> points) {
    return byHand(points)
        ? new Figure.Key(Figure.Kind.CROSS, "read off the display")
        : new Figure.Key(Figure.Kind.MEASURED, "what the display said");
  }
}
