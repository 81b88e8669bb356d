package org.heatwright.app.web;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.heatwright.app.plot.WatchedFiring;
import org.heatwright.app.report.Card;
import org.heatwright.app.report.ChartData;
import org.heatwright.app.report.Ticks;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.ForecastTrace;
import org.heatwright.forecast.SegmentForecast;
import org.heatwright.keypad.KeyedValue;
import org.heatwright.keypad.Keypad;
import org.heatwright.learn.Readings;
import org.heatwright.schedule.Segment;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.EnamelOutlook;
import org.heatwright.work.EnamelPieceCurve;
import org.heatwright.work.enamel.PullWindow;

/** Gathers what the pages' curves show. */
final class Curves {

  /** What a curve may miss between two of its points, K: less than a display's last digit. */
  private static final double TOLERANCE_KELVINS = 0.25;

  /** A noisy log is thinned until it has no more points than this. */
  private static final int MOST_MEASURED = 1500;

  /** A log interrupted for longer than this share of its usual step, and a minute, has a gap. */
  private static final double GAP_STEPS = 5;

  private static final double SHORTEST_GAP_SECONDS = 60;
  private static final BigDecimal MINUTES_AN_HOUR = BigDecimal.valueOf(60);

  private Curves() {}

  // ---- a plan

  /** A planned firing, with corners to drag. */
  static CurveData plan(Firing firing) {
    return plan(
        firing,
        firing.forecast(),
        firing.card().chart(),
        firing.card().timing().ready(),
        firing.sketch());
  }

  /**
   * A sketched firing with the band of a usual ensemble of its display; its work is the sketch's.
   *
   * @param display forecast of the display alone
   */
  static CurveData band(Firing sketched, Forecast display) {
    CurveData data =
        plan(
            sketched,
            display,
            ChartData.of(
                display,
                sketched.card().chart().unit(),
                Optional.of(sketched.start().start()),
                sketched.card().chart().limits()),
            sketched.card().timing().ready(),
            false);
    List<CurveData.Line> lines = new ArrayList<>();
    for (CurveData.Line line : predicted(display.trace(), false)) {
      if (line.role() == CurveData.Role.DISPLAY) {
        predicted(sketched.forecast().trace(), true).stream()
            .filter(l -> l.role() == CurveData.Role.INSIDE)
            .forEach(lines::add);
      }
      if (line.role() != CurveData.Role.INSIDE) {
        lines.add(line);
      }
    }
    return data.with(lines);
  }

  /**
   * A planned firing by another forecast of it.
   *
   * @param chart of that forecast
   * @param ready when the work is ready, as far as that forecast tells
   * @param sketch true if one draw stands behind it
   */
  static CurveData plan(
      Firing firing,
      Forecast forecast,
      ChartData chart,
      Optional<Card.Ready> ready,
      boolean sketch) {
    List<CurveData.Stretch> stretches = new ArrayList<>(nights(chart));
    ready.ifPresent(
        r ->
            stretches.add(
                new CurveData.Stretch(
                    CurveData.During.READY,
                    "ready",
                    r.fromSeconds().low(),
                    r.untilSeconds().orElse(chart.lengthSeconds()))));
    return new CurveData(
        "%s in %s".formatted(firing.choices().work(), firing.choices().kiln()),
        chart.unit(),
        Optional.of(firing.start().start()),
        false,
        chart.lengthSeconds(),
        chart.bottomCelsius(),
        chart.topCelsius(),
        sketch ? Optional.empty() : Optional.of(band(forecast.trace())),
        predicted(forecast.trace(), sketch),
        stretches,
        chart.limits().stream().map(l -> new CurveData.Limit(l.celsius(), l.why())).toList(),
        parts(forecast),
        corners(firing, forecast),
        Optional.empty(),
        sketch);
  }

  private static List<CurveData.Stretch> nights(ChartData chart) {
    return nights(chart.nights());
  }

  private static List<CurveData.Stretch> nights(List<ChartData.Night> nights) {
    return nights.stream()
        .map(
            n ->
                new CurveData.Stretch(
                    CurveData.During.NIGHT, "night", n.fromSeconds(), n.toSeconds()))
        .toList();
  }

  private static List<CurveData.Corner> corners(Firing firing, Forecast forecast) {
    TemperatureUnit unit = firing.composition().schedule().unit();
    Keypad keypad = firing.keypad();
    boolean same = keypad.unitFor(unit) == unit;
    BigDecimal targetStep = same ? keypad.targetRange(unit).step() : BigDecimal.ONE;
    boolean takesTime = keypad.rampKind() == KeyedValue.Kind.TIME;
    BigDecimal rampStep = keypad.rateRange(unit).step();
    BigDecimal perHour =
        keypad.rate().per() == Keypad.RateField.Per.MINUTE
            ? rampStep.multiply(MINUTES_AN_HOUR)
            : rampStep;
    Optional<BigDecimal> rateStep =
        takesTime ? Optional.empty() : Optional.of(same ? perHour : BigDecimal.ONE);
    Optional<BigDecimal> timeStep =
        takesTime
            ? Optional.of(rampStep.setScale(0, RoundingMode.UP).max(BigDecimal.ONE))
            : Optional.empty();
    BigDecimal holdStep =
        keypad.holdRange().step().setScale(0, RoundingMode.UP).max(BigDecimal.ONE);
    List<CurveData.Corner> corners = new ArrayList<>();
    double from = 0;
    double celsius = forecast.trace().setpointCelsius()[0];
    for (int i = 0; i < forecast.segments().size(); i++) {
      SegmentForecast expected = forecast.segments().get(i);
      Segment asked = firing.program().expressible().segments().get(i);
      corners.add(
          new CurveData.Corner(
              i + 1,
              from,
              expected.reachedSeconds().median(),
              expected.endSeconds().median(),
              celsius,
              asked.target().celsius(),
              unit,
              targetStep,
              rateStep,
              timeStep,
              holdStep));
      from = expected.endSeconds().median();
      celsius = asked.target().celsius();
    }
    return corners;
  }

  // ---- a firing that was or is watched

  /**
   * A forecast, and what was seen of the firing: a logger's line, or a dot for each reading by
   * hand.
   *
   * @param limits never above; those far above the curves are not shown
   * @param now the present, where the firing runs
   */
  static CurveData watched(
      WatchedFiring firing, List<CurveData.Limit> limits, Optional<ZonedDateTime> now) {
    Forecast forecast = firing.forecast();
    ForecastTrace trace = forecast.trace();
    Optional<Readings> seen = firing.seen();
    double length = Math.max(1, trace.seconds()[trace.size() - 1]);
    double bottom = Arrays.stream(trace.lowCelsius()).min().orElse(0);
    double top =
        Math.max(
            Arrays.stream(trace.highCelsius()).max().orElse(0),
            Arrays.stream(trace.setpointCelsius()).max().orElse(0));
    List<CurveData.Line> lines = new ArrayList<>(predicted(trace, false));
    if (seen.isPresent()) {
      lines.addAll(seen(seen.get()));
      for (int i = 0; i < seen.get().size(); i++) {
        length = Math.max(length, seen.get().second(i));
        bottom = Math.min(bottom, seen.get().celsius(i));
        top = Math.max(top, seen.get().celsius(i));
      }
    }
    double reach = Math.max(1, top) * 1.3;
    List<CurveData.Limit> near = limits.stream().filter(l -> l.celsius() <= reach).toList();
    double highest = near.stream().mapToDouble(CurveData.Limit::celsius).max().orElse(0);
    List<CurveData.Stretch> stretches = new ArrayList<>();
    double end = length;
    firing.start().ifPresent(s -> stretches.addAll(nights(ChartData.nights(s, end))));
    for (WatchedFiring.Happening happening : firing.happenings()) {
      if (happening.fromSeconds() <= end) {
        stretches.add(
            new CurveData.Stretch(
                CurveData.During.EVENT,
                happening.label(),
                Math.max(0, happening.fromSeconds()),
                Math.min(end, happening.toSeconds())));
      }
    }
    return new CurveData(
        "%s in %s".formatted(forecast.schedule(), forecast.kiln()),
        firing.unit(),
        firing.start(),
        false,
        length,
        Math.min(firing.unit().temperature(0).celsius(), bottom),
        Math.max(Math.max(1, top) * 1.06, highest * ChartData.LIMIT_HEADROOM),
        Optional.of(band(trace)),
        lines,
        stretches,
        near,
        parts(forecast),
        List.of(),
        now.flatMap(n -> firing.start().map(s -> Ticks.secondsFrom(s, n))),
        false);
  }

  /** A dot for each reading by hand, a line with its gaps for a logger's. */
  private static List<CurveData.Line> seen(Readings readings) {
    List<Integer> after = new ArrayList<>();
    for (int i = 0; i < readings.size(); i++) {
      if (readings.second(i) >= 0) { // before the program began there is no forecast
        after.add(i);
      }
    }
    double[] seconds = after.stream().mapToDouble(readings::second).toArray();
    double[] celsius = after.stream().mapToDouble(readings::celsius).toArray();
    if (WatchedFiring.byHand(seconds)) {
      return seconds.length == 0
          ? List.of()
          : List.of(
              new CurveData.Line(
                  CurveData.Role.READINGS,
                  "read off the display",
                  "read off the display:",
                  rounded(seconds),
                  rounded(celsius)));
    }
    double gap = Math.max(SHORTEST_GAP_SECONDS, GAP_STEPS * WatchedFiring.usualStep(seconds));
    List<CurveData.Line> runs = new ArrayList<>();
    int from = 0;
    for (int i = 1; i <= seconds.length; i++) {
      if (i == seconds.length || seconds[i] - seconds[i - 1] > gap) {
        runs.add(
            line(
                CurveData.Role.MEASURED,
                "what the display said",
                "it said",
                Arrays.copyOfRange(seconds, from, i),
                Arrays.copyOfRange(celsius, from, i),
                MOST_MEASURED));
        from = i;
      }
    }
    return runs;
  }

  // ---- a piece on its own clock

  /**
   * An enamelled piece from the door's shutting, with the window to take it out.
   *
   * @param name what files taken from it are called
   */
  static CurveData piece(String name, EnamelOutlook outlook, TemperatureUnit unit) {
    List<EnamelPieceCurve.Row> rows = outlook.curve().rows();
    double end = rows.get(rows.size() - 1).seconds();
    double[] seconds = rows.stream().mapToDouble(EnamelPieceCurve.Row::seconds).toArray();
    double[] low = rows.stream().mapToDouble(EnamelPieceCurve.Row::lowCelsius).toArray();
    double[] median = rows.stream().mapToDouble(EnamelPieceCurve.Row::medianCelsius).toArray();
    double[] high = rows.stream().mapToDouble(EnamelPieceCurve.Row::highCelsius).toArray();
    double[] chamber = rows.stream().mapToDouble(EnamelPieceCurve.Row::chamberCelsius).toArray();
    PullWindow window = outlook.window();
    List<CurveData.Stretch> stretches = new ArrayList<>();
    if (window.earliestSeconds() < end) {
      stretches.add(
          new CurveData.Stretch(
              CurveData.During.READY,
              "take it out: glossy, from one in ten to nine in ten",
              window.earliestSeconds(),
              Math.min(end, window.latestSeconds())));
    }
    if (window.fusedSeconds() < end) {
      stretches.add(
          new CurveData.Stretch(
              CurveData.During.EVENT, "orange peel", window.fusedSeconds(), window.fusedSeconds()));
    }
    double top =
        Math.max(
            outlook.working().celsius(),
            Math.max(Arrays.stream(high).max().orElse(0), Arrays.stream(chamber).max().orElse(0)));
    return new CurveData(
        name,
        unit,
        Optional.empty(),
        true,
        Math.max(1, end),
        unit.temperature(0).celsius(),
        top + 40,
        Optional.of(band("the piece, nine times in ten inside", seconds, low, high)),
        List.of(
            line(CurveData.Role.CHAMBER, "the chamber", "the chamber about", seconds, chamber, 0),
            line(CurveData.Role.DISPLAY, "the piece", "the piece should be", seconds, median, 0)),
        stretches,
        List.of(),
        List.of(),
        List.of(),
        Optional.empty(),
        false);
  }

  // ---- parts of them

  private static CurveData.Band band(ForecastTrace trace) {
    return band(
        "display, nine times in ten inside",
        trace.seconds(),
        trace.lowCelsius(),
        trace.highCelsius());
  }

  private static CurveData.Band band(String name, double[] seconds, double[] low, double[] high) {
    int[] kept = Thinning.kept(seconds, List.of(low, high), TOLERANCE_KELVINS);
    return new CurveData.Band(
        name, rounded(seconds, kept), rounded(low, kept), rounded(high, kept));
  }

  private static List<CurveData.Line> predicted(ForecastTrace trace, boolean sketch) {
    double[] seconds = trace.seconds();
    List<CurveData.Line> lines = new ArrayList<>();
    lines.add(
        line(CurveData.Role.SETPOINT, "setpoint", "setpoint", seconds, trace.setpointCelsius(), 0));
    for (String place : trace.workNames()) {
      lines.add(
          line(
              CurveData.Role.INSIDE,
              place,
              "%s about".formatted(place),
              seconds,
              trace.workCelsius(place),
              0));
    }
    lines.add(
        line(
            CurveData.Role.DISPLAY,
            sketch ? "display, first sketch" : "display, most likely",
            "the display should say",
            seconds,
            trace.medianCelsius(),
            0));
    return lines;
  }

  private static List<CurveData.Part> parts(Forecast forecast) {
    List<CurveData.Part> parts = new ArrayList<>();
    double from = 0;
    for (SegmentForecast segment : forecast.segments()) {
      double to = segment.endSeconds().median();
      parts.add(new CurveData.Part(segment.index(), from, to));
      from = to;
    }
    return parts;
  }

  /**
   * @param most points that may be left; 0 for as many as tell it to the tolerance
   */
  private static CurveData.Line line(
      CurveData.Role role, String name, String says, double[] seconds, double[] celsius, int most) {
    double tolerance = TOLERANCE_KELVINS;
    int[] kept = Thinning.kept(seconds, List.of(celsius), tolerance);
    while (most > 0 && kept.length > most) {
      tolerance *= 2;
      kept = Thinning.kept(seconds, List.of(celsius), tolerance);
    }
    return new CurveData.Line(role, name, says, rounded(seconds, kept), rounded(celsius, kept));
  }

  private static List<Double> rounded(double[] values) {
    return Arrays.stream(values).mapToObj(Curves::tenths).toList();
  }

  private static List<Double> rounded(double[] values, int[] kept) {
    return Arrays.stream(kept).mapToObj(i -> tenths(values[i])).toList();
  }

  private static Double tenths(double value) {
    return Math.rint(value * 10) / 10;
  }
}
