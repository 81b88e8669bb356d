package org.heatwright.app.web;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.heatwright.app.report.ChartData;
import org.heatwright.app.report.Ticks;
import org.heatwright.app.report.WhenWords;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;

/**
 * Draws curves without a script: what a page shows first, and all it shows where scripts are off.
 * {@code curves.js} draws the same from the same data, so that nothing jumps when it takes over.
 */
final class CurveDrawing {

  /** Looks that several lines of one kind have in turn. */
  /** Labels of happenings stand so far apart, of the width, to be read. */
  private static final double LABELS_APART = 0.25;

  private static final int LOOKS = 4;

  /** A narrow screen has no room for two dates nearer than this share of its frame. */
  private static final double DATE_ROOM = 0.27;

  private static final String TAGS = "abcdefghijkl";
  private static final int MOST_ROWS = 24;
  private static final double[] ROW_SECONDS = {
    1, 2, 5, 10, 15, 30, 60, 300, 600, 900, 1800, 3600, 7200, 10_800, 21_600, 43_200, 86_400
  };

  private final CurveData data;
  private final WhenWords when;

  CurveDrawing(CurveData data) {
    this.data = data;
    this.when = new WhenWords(data.start());
  }

  String box() {
    return "0 %s %s %s"
        .formatted(
            number(-data.topCelsius()),
            number(data.lengthSeconds()),
            number(data.topCelsius() - data.bottomCelsius()));
  }

  String band() {
    if (data.band().isEmpty()) {
      return "";
    }
    CurveData.Band band = data.band().get();
    StringBuilder path = new StringBuilder(path(band.seconds(), band.highCelsius()));
    for (int i = band.seconds().size() - 1; i >= 0; i--) {
      path.append('L').append(place(band.seconds().get(i), band.lowCelsius().get(i)));
    }
    return path.append('Z').toString();
  }

  /** All but those that are dots. */
  List<CurveFigure.Line> lines() {
    List<CurveFigure.Line> lines = new ArrayList<>();
    Map<String, String> tags = tags();
    int inside = 0;
    for (CurveData.Line line : data.lines()) {
      if (line.role() == CurveData.Role.READINGS) {
        continue;
      }
      String look = look(line, inside);
      String tag = tags.getOrDefault(line.name(), "");
      double at = data.lengthSeconds() * (0.3 + 0.12 * (inside % 5));
      if (line.role() == CurveData.Role.INSIDE) {
        inside++;
      }
      lines.add(
          new CurveFigure.Line(
              look,
              path(line.seconds(), line.celsius()),
              tag,
              percent(at / data.lengthSeconds()),
              percent(down(valueAt(line, at).orElse(data.bottomCelsius())))));
    }
    return lines;
  }

  private static String look(CurveData.Line line, int inside) {
    return line.role() == CurveData.Role.INSIDE ? "inside n" + inside % LOOKS : line.role().word();
  }

  /** A letter for each of several places inside the work. */
  private Map<String, String> tags() {
    List<String> names =
        data.lines().stream()
            .filter(l -> l.role() == CurveData.Role.INSIDE)
            .map(CurveData.Line::name)
            .toList();
    Map<String, String> tags = new LinkedHashMap<>();
    if (names.size() > 1) {
      for (int i = 0; i < names.size() && i < TAGS.length(); i++) {
        tags.put(names.get(i), TAGS.substring(i, i + 1));
      }
    }
    return tags;
  }

  List<CurveFigure.Dot> dots() {
    List<CurveFigure.Dot> dots = new ArrayList<>();
    for (CurveData.Line line : data.lines()) {
      if (line.role() == CurveData.Role.READINGS) {
        for (int i = 0; i < line.seconds().size(); i++) {
          dots.add(
              new CurveFigure.Dot(
                  percent(line.seconds().get(i) / data.lengthSeconds()),
                  percent(down(line.celsius().get(i)))));
        }
      }
    }
    return dots;
  }

  /** The uppermost one names the unit. */
  List<CurveFigure.Tick> temperatureTicks() {
    List<ChartData.TemperatureTick> all =
        Ticks.temperatures(unit(), data.topCelsius()).stream()
            .filter(t -> t.celsius() >= data.bottomCelsius() - 1e-6)
            .toList();
    List<CurveFigure.Tick> ticks = new ArrayList<>();
    for (int i = 0; i < all.size(); i++) {
      String unit = i == all.size() - 1 ? " " + unit().symbol() : "";
      ticks.add(
          new CurveFigure.Tick(
              percent(down(all.get(i).celsius())), all.get(i).label() + unit, "", false, false));
    }
    return ticks;
  }

  List<CurveFigure.Tick> timeTicks() {
    List<CurveFigure.Tick> ticks = new ArrayList<>();
    boolean spare = false;
    for (ChartData.TimeTick tick : axis()) {
      boolean newDay = !tick.date().isEmpty() && !ticks.isEmpty();
      if (newDay && !spare && ticks.get(ticks.size() - 1).day().isEmpty()) {
        ticks.set(ticks.size() - 1, ticks.get(ticks.size() - 1).spared()); // too close to the day
      }
      spare = !newDay && !ticks.isEmpty() && !spare;
      ticks.add(
          new CurveFigure.Tick(
              percent(tick.seconds() / data.lengthSeconds()),
              tick.label(),
              tick.date(),
              spare,
              false));
    }
    for (int i = 0, dated = -1; i < ticks.size(); i++) {
      if (!ticks.get(i).day().isEmpty()) {
        double room = dated < 0 ? 1 : share(ticks.get(i)) - share(ticks.get(dated));
        if (room < DATE_ROOM) {
          ticks.set(dated, ticks.get(dated).withSpareDay());
        }
        dated = i;
      }
    }
    return ticks;
  }

  private static double share(CurveFigure.Tick tick) {
    return Double.parseDouble(tick.at().replace("%", "")) / 100;
  }

  private List<ChartData.TimeTick> axis() {
    if (!data.brief()) {
      return Ticks.times(data.start(), data.lengthSeconds());
    }
    double step = rowSeconds(8);
    List<ChartData.TimeTick> ticks = new ArrayList<>();
    for (int i = 0; i * step <= data.lengthSeconds(); i++) {
      ticks.add(new ChartData.TimeTick(i * step, seconds(i * step), ""));
    }
    return ticks;
  }

  List<CurveFigure.Stretch> stretches() {
    List<CurveFigure.Stretch> drawn = new ArrayList<>();
    double lastNamed = -1;
    for (CurveData.Stretch stretch : data.stretches()) {
      double from = Math.max(0, stretch.fromSeconds()) / data.lengthSeconds();
      double to = Math.min(data.lengthSeconds(), stretch.toSeconds()) / data.lengthSeconds();
      boolean named =
          stretch.during() == CurveData.During.EVENT && from - lastNamed >= LABELS_APART;
      lastNamed = named ? from : lastNamed;
      drawn.add(
          new CurveFigure.Stretch(
              stretch.during().word(),
              percent(from),
              percent(Math.max(0, to - from)),
              named ? stretch.label() : "",
              stretch.toSeconds() <= stretch.fromSeconds()));
    }
    return drawn;
  }

  List<CurveFigure.Limit> limits() {
    return data.limits().stream()
        .map(
            l ->
                new CurveFigure.Limit(
                    percent(down(l.celsius())), temperature(l.celsius()), ": " + l.why()))
        .toList();
  }

  List<CurveFigure.Part> parts() {
    return data.segments().stream()
        .map(
            s ->
                new CurveFigure.Part(
                    Integer.toString(s.number()),
                    percent((s.fromSeconds() + s.toSeconds()) / 2 / data.lengthSeconds()),
                    percent(s.toSeconds() / data.lengthSeconds()),
                    s.toSeconds() - s.fromSeconds() > 0.04 * data.lengthSeconds()))
        .toList();
  }

  Optional<String> now() {
    return data.nowSeconds()
        .filter(s -> s >= 0 && s <= data.lengthSeconds())
        .map(s -> percent(s / data.lengthSeconds()));
  }

  /** Each kind once, in the order in which people look for them. */
  List<CurveFigure.Key> legend() {
    Map<String, CurveFigure.Key> keys = new LinkedHashMap<>();
    Map<String, String> tags = tags();
    List<CurveData.Line> lines = new ArrayList<>(data.lines());
    java.util.Collections.reverse(lines); // what lies on top first
    int inside = (int) lines.stream().filter(l -> l.role() == CurveData.Role.INSIDE).count();
    List<CurveFigure.Key> places = new ArrayList<>();
    for (CurveData.Line line : lines) {
      switch (line.role()) {
        case INSIDE -> {
          inside--;
          places.add(
              0,
              new CurveFigure.Key(
                  look(line, inside), "line", tags.getOrDefault(line.name(), ""), line.name()));
        }
        case READINGS ->
            keys.put(line.name(), new CurveFigure.Key("readings", "dot", "", line.name()));
        case DISPLAY ->
            keys.put(
                line.name(),
                data.band()
                    .map(b -> new CurveFigure.Key("display", "banded", "", b.name()))
                    .orElseGet(() -> new CurveFigure.Key("display", "line", "", line.name())));
        default ->
            keys.put(line.name(), new CurveFigure.Key(line.role().word(), "line", "", line.name()));
      }
    }
    places.forEach(p -> keys.put(p.label(), p));
    if (!data.limits().isEmpty()) {
      keys.put("limit", new CurveFigure.Key("limit", "hatch", "", "do not enter"));
    }
    for (CurveData.Stretch stretch : data.stretches()) {
      boolean event = stretch.during() == CurveData.During.EVENT;
      String label = event ? "happened" : stretch.label();
      if (!event || stretch.toSeconds() > stretch.fromSeconds()) {
        keys.putIfAbsent(label, new CurveFigure.Key(stretch.during().word(), "area", "", label));
      }
    }
    return List.copyOf(keys.values());
  }

  // ---- values to be read

  List<String> head() {
    List<String> head = new ArrayList<>();
    head.add(data.start().isPresent() ? "When" : "After");
    data.band().ifPresent(b -> head.add("%s, %s".formatted(b.name(), unit().symbol())));
    columns().keySet().forEach(name -> head.add("%s, %s".formatted(name, unit().symbol())));
    return head;
  }

  List<List<String>> rows() {
    double step = rowSeconds(MOST_ROWS);
    List<Double> times = rowTimes(step);
    List<List<String>> rows = new ArrayList<>();
    for (int i = 0; i < times.size(); i++) {
      double at = times.get(i);
      double next = i + 1 < times.size() ? times.get(i + 1) : at + step;
      List<String> row = new ArrayList<>();
      row.add(data.brief() ? seconds(at) : when.full(at));
      data.band()
          .ifPresent(
              b ->
                  row.add(
                      between(
                          at(b.seconds(), b.lowCelsius(), at),
                          at(b.seconds(), b.highCelsius(), at))));
      columns()
          .values()
          .forEach(
              lines ->
                  row.add(
                      lines.get(0).role() == CurveData.Role.READINGS
                          ? read(lines.get(0), at, next)
                          : lines.stream()
                              .flatMap(l -> valueAt(l, at).stream())
                              .findFirst()
                              .map(this::degrees)
                              .orElse("")));
      rows.add(row);
    }
    return rows;
  }

  /** The start, and round times after it: by the clock where there is one. */
  private List<Double> rowTimes(double step) {
    double first =
        data.start().map(s -> step - s.toLocalTime().toSecondOfDay() % step).orElse(step);
    List<Double> times = new ArrayList<>(List.of(0.0));
    for (double at = first; at <= data.lengthSeconds(); at += step) {
      times.add(at);
    }
    return times;
  }

  private String read(CurveData.Line line, double from, double to) {
    List<String> texts = new ArrayList<>();
    for (int i = 0; i < line.seconds().size(); i++) {
      double second = line.seconds().get(i);
      if (second >= from && second < to) {
        texts.add("%s (%s)".formatted(degrees(line.celsius().get(i)), when.clock(second)));
      }
    }
    return String.join(", ", texts);
  }

  private Map<String, List<CurveData.Line>> columns() {
    Map<String, List<CurveData.Line>> columns = new LinkedHashMap<>();
    for (int i = data.lines().size() - 1; i >= 0; i--) {
      CurveData.Line line = data.lines().get(i);
      columns.computeIfAbsent(line.name(), n -> new ArrayList<>()).add(line);
    }
    return columns;
  }

  private double rowSeconds(int most) {
    for (double step : ROW_SECONDS) {
      if ((data.brief() || step >= 60) && data.lengthSeconds() / step <= most) {
        return step;
      }
    }
    return Math.ceil(data.lengthSeconds() / most / 86_400) * 86_400;
  }

  // ---- places and numbers

  private static Optional<Double> valueAt(CurveData.Line line, double second) {
    List<Double> seconds = line.seconds();
    return seconds.isEmpty() || second < seconds.get(0) || second > seconds.get(seconds.size() - 1)
        ? Optional.empty()
        : Optional.of(at(seconds, line.celsius(), second));
  }

  private static double at(List<Double> seconds, List<Double> values, double second) {
    int after = java.util.Collections.binarySearch(seconds, second);
    if (after >= 0) {
      return values.get(after);
    }
    int next = Math.min(-after - 1, seconds.size() - 1);
    int last = Math.max(0, next - 1);
    double span = seconds.get(next) - seconds.get(last);
    double share = span > 0 ? Math.min(1, (second - seconds.get(last)) / span) : 0;
    return values.get(last) + share * (values.get(next) - values.get(last));
  }

  private String path(List<Double> seconds, List<Double> celsius) {
    StringBuilder path = new StringBuilder();
    for (int i = 0; i < celsius.size(); i++) {
      path.append(i == 0 ? 'M' : 'L').append(place(seconds.get(i), celsius.get(i)));
    }
    return path.toString();
  }

  private static String place(double seconds, double celsius) {
    return number(seconds) + " " + number(-celsius);
  }

  /** How far down the frame a temperature lies: 0 at the top, 1 at the bottom. */
  private double down(double celsius) {
    return (data.topCelsius() - celsius) / (data.topCelsius() - data.bottomCelsius());
  }

  private String between(double lowCelsius, double highCelsius) {
    String low = degrees(lowCelsius);
    String high = degrees(highCelsius);
    return low.equals(high) ? low : low + " to " + high;
  }

  private String temperature(double celsius) {
    return degrees(celsius) + " " + unit().symbol();
  }

  private String degrees(double celsius) {
    return Long.toString(Math.round(unit().value(Temperature.ofCelsius(celsius))));
  }

  private TemperatureUnit unit() {
    return Objects.requireNonNull(data.unit());
  }

  private static String seconds(double seconds) {
    return Math.round(seconds) + " s";
  }

  private static String number(double value) {
    return SegmentFields.number(value);
  }

  private static String percent(double share) {
    return String.format(Locale.ROOT, "%.2f%%", 100 * share);
  }
}
