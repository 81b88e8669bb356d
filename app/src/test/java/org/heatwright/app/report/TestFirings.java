package org.heatwright.app.report;

import java.time.Duration;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.Charge;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.ForecastTrace;
import org.heatwright.forecast.SegmentForecast;
import org.heatwright.forecast.WorkForecast;
import org.heatwright.inspect.Demands;
import org.heatwright.inspect.Finding;
import org.heatwright.inspect.Severity;
import org.heatwright.inspect.TemperatureRange;
import org.heatwright.kiln.Chamber;
import org.heatwright.kiln.Circuit;
import org.heatwright.kiln.Control;
import org.heatwright.kiln.Face;
import org.heatwright.kiln.HeatingElement;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.Layer;
import org.heatwright.kiln.Thermocouple;
import org.heatwright.material.Material;
import org.heatwright.material.Origin;
import org.heatwright.mould.Investment;
import org.heatwright.mould.Mould;
import org.heatwright.numerics.LinearTable;
import org.heatwright.schedule.AtEnd;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.Caution;
import org.heatwright.work.Composition;
import org.heatwright.work.Moment;
import org.heatwright.work.PieceJudge;
import org.heatwright.work.Reason;

/** Firings made by hand, for tests of what is printed; no engine is behind them. */
final class TestFirings {

  static final ZoneId LISBON = ZoneId.of("Europe/Lisbon");
  static final ZonedDateTime EVENING = ZonedDateTime.of(2026, 12, 2, 20, 30, 0, 0, LISBON);

  private static final double GRID_SECONDS = 60;

  private TestFirings() {}

  static Kiln kiln(String name) {
    Material brick =
        new Material(
            "brick",
            500,
            LinearTable.constant(0.15),
            LinearTable.constant(1000),
            List.of(),
            Origin.estimate("test"));
    Map<Face, List<Layer>> walls = new EnumMap<>(Face.class);
    for (Face face : Face.values()) {
      walls.put(face, List.of(new Layer(brick, 0.09)));
    }
    return new Kiln(
        name,
        new Chamber.Box(0.3, 0.3, 0.33),
        new HeatingElement(2600, 230, 230),
        walls,
        Kiln.Door.TOP,
        Temperature.ofCelsius(1100),
        new Thermocouple('K', 0.0045, TemperatureChange.ofKelvins(0)),
        new Control(
            Control.Kind.PID,
            2,
            TemperatureChange.ofKelvins(0),
            Optional.of(TemperatureChange.ofKelvins(3)),
            Control.AfterPowerCut.CONTINUE),
        Temperature.ofCelsius(20),
        Optional.of(LISBON),
        Optional.empty(),
        Optional.of(new Circuit("workshop ring", 16)),
        List.of());
  }

  /** A segment: rate in degrees an hour (0: fastest), target, hold in minutes. */
  static Segment segment(TemperatureUnit unit, double rate, double target, long holdMinutes) {
    return new Segment(
        rate == 0 ? Ramp.fastest() : Ramp.at(unit.rate(rate)),
        unit.temperature(target),
        Duration.ofMinutes(holdMinutes));
  }

  static Schedule burnout() {
    TemperatureUnit c = TemperatureUnit.CELSIUS;
    return new Schedule(
        "harbour-burnout",
        c,
        List.of(
            segment(c, 120, 150, 120),
            segment(c, 150, 370, 120),
            segment(c, 180, 720, 150),
            segment(c, 0, 500, 180)),
        Duration.ofMinutes(210),
        AtEnd.KEEP);
  }

  /** Up and down in equal steps, as many segments as wanted. */
  static Schedule stairs(int segments, TemperatureUnit unit) {
    List<Segment> list = new ArrayList<>();
    for (int i = 0; i < segments; i++) {
      double celsius = 120 + (i % 2 == 0 ? 50 : 30) * (i + 1);
      double target = Math.rint(unit.value(Temperature.ofCelsius(celsius)));
      list.add(segment(unit, i % 3 == 2 ? 0 : 150, target, i % 2 == 0 ? 45 : 0));
    }
    return new Schedule("stairs-" + segments, unit, list, Duration.ZERO, AtEnd.OFF);
  }

  /** A kiln that follows with a lag, five percent uncertain in time. */
  static Forecast forecast(Schedule schedule, Kiln kiln, boolean withWork) {
    List<Double> corners = new ArrayList<>(List.of(0.0));
    List<Double> levels = new ArrayList<>(List.of(20.0));
    List<SegmentForecast> segments = new ArrayList<>();
    double now = 0;
    double level = 20;
    for (int i = 0; i < schedule.segments().size(); i++) {
      Segment segment = schedule.segments().get(i);
      double target = segment.target().celsius();
      double rate =
          segment
              .ramp()
              .rate()
              .map(HeatingRate::kelvinsPerHour)
              .orElse(target > level ? 600.0 : 90.0);
      now += Math.abs(target - level) / rate * 3600;
      double reached = now;
      corners.add(now);
      levels.add(target);
      now += segment.hold().toSeconds();
      corners.add(now);
      levels.add(target);
      segments.add(
          new SegmentForecast(
              i + 1,
              around(reached + 120),
              Optional.of(around(reached + 120)),
              around(now + 120),
              600,
              120,
              1));
      level = target;
    }
    int n = (int) Math.ceil(now / GRID_SECONDS) + 1;
    double[] seconds = new double[n];
    double[] setpoint = new double[n];
    double[] low = new double[n];
    double[] median = new double[n];
    double[] high = new double[n];
    double[] power = new double[n];
    double[] core = new double[n];
    double display = 20;
    double inside = 20;
    for (int i = 0; i < n; i++) {
      seconds[i] = i * GRID_SECONDS;
      setpoint[i] = interpolate(corners, levels, seconds[i]);
      display += (setpoint[i] - display) * GRID_SECONDS / 240;
      inside += (display - inside) * GRID_SECONDS / 3600;
      median[i] = display;
      double spread = 3 + 0.05 * Math.abs(setpoint[i] - display) * 4;
      low[i] = display - spread;
      high[i] = display + spread;
      power[i] = 1200;
      core[i] = inside;
    }
    Map<String, double[]> work = new LinkedHashMap<>();
    List<WorkForecast> places = new ArrayList<>();
    if (withWork) {
      work.put("mould 1 centre", core);
      places.add(
          new WorkForecast(
              1,
              "centre",
              Optional.of(around(3.4 * 3600)),
              Optional.of(around(now - 4800)),
              new Band(496, 502, 509)));
    }
    return new Forecast(
        schedule.name(),
        kiln.name(),
        segments,
        around(now + 120),
        new Band(10.9, 11.8, 13.1),
        1100,
        places,
        new ForecastTrace(seconds, setpoint, low, median, high, power, work),
        List.of(),
        List.of());
  }

  private static Band around(double seconds) {
    return new Band(seconds * 0.985, seconds, seconds * 1.02);
  }

  private static double interpolate(List<Double> xs, List<Double> ys, double x) {
    for (int i = 1; i < xs.size(); i++) {
      if (x <= xs.get(i)) {
        double width = xs.get(i) - xs.get(i - 1);
        double share = width == 0 ? 1 : (x - xs.get(i - 1)) / width;
        return ys.get(i - 1) + share * (ys.get(i) - ys.get(i - 1));
      }
    }
    return ys.get(ys.size() - 1);
  }

  static Composition composition(Schedule schedule) {
    String[] purposes = {"dry", "wax out", "carbon out", "settle at pour temperature"};
    List<Reason> reasons = new ArrayList<>();
    for (int i = 0; i < schedule.segments().size(); i++) {
      reasons.add(
          new Reason(
              i + 1,
              Reason.Part.HOLD,
              purposes[Math.min(i, purposes.length - 1)],
              "2 h",
              "rule",
              "",
              Origin.practice()));
    }
    Demands demands =
        new Demands(
            "burnout of 3 gypsum-bonded moulds, wax",
            List.of(
                new Demands.Ceiling(
                    Temperature.ofCelsius(730),
                    Severity.STOP,
                    "the gypsum-bonded mould",
                    "sulphur gas spoils the castings",
                    Origin.practice())),
            List.of(
                new Demands.RateLimit(
                    "wet-mould-too-fast",
                    new TemperatureRange(Temperature.ofCelsius(90), Temperature.ofCelsius(150)),
                    HeatingRate.ofKelvinsPerHour(120),
                    Severity.STOP,
                    "steam can blow the mould out",
                    Origin.practice())),
            List.of(),
            new TemperatureRange(Temperature.ofCelsius(650), Temperature.ofCelsius(760)),
            new TemperatureRange(Temperature.ofCelsius(300), Temperature.ofCelsius(700)),
            TemperatureChange.ofKelvins(10),
            List.of(),
            List.of());
    return new Composition(
        "burnout",
        schedule,
        reasons,
        demands,
        Charge.moulds(List.of(new Mould(3, 0.09, 0.15, 0.003)), Investment.gypsum(0.40)),
        List.of(
            new Caution(
                "burnout-fumes",
                "Burning wax gives off fumes that choke and can catch fire: extraction on, nobody sleeps near it.",
                Origin.practice()),
            new Caution(
                "hot-moulds",
                "Moulds look cold and are 500 °C: gloves, tongs, a dry path to the pour.",
                Origin.practice())),
        List.of(
            new Moment(
                Moment.Kind.LAST_CHANGE,
                Moment.Anchor.SEGMENT_END,
                2,
                Duration.ZERO,
                "change the top temperature",
                "its ramp begins"),
            new Moment(
                Moment.Kind.READY,
                Moment.Anchor.WORK_READY,
                0,
                Duration.ZERO,
                "moulds ready",
                "core"),
            new Moment(
                Moment.Kind.ACT,
                Moment.Anchor.WORK_READY,
                0,
                Duration.ofMinutes(30),
                "pour the first mould: gloves, tongs, thinnest work first",
                "the core is within 10 K")),
        PieceJudge.none());
  }

  static Card burnoutCard() {
    Schedule schedule = burnout();
    Kiln kiln = kiln("Capstan");
    return CardBuilder.of(schedule, kiln, forecast(schedule, kiln, true))
        .composition(composition(schedule), List.of())
        .slot(3)
        .start(EVENING, List.of())
        .responsible("caster")
        .build();
  }

  /** As much of everything as a card can be asked to hold. */
  static Card crowdedCard(int segments) {
    Schedule schedule =
        stairs(segments, TemperatureUnit.FAHRENHEIT)
            .withName("third-attempt-at-the-very-large-commemorative-plaque-with-the-long-name-v12")
            .withStartDelay(Duration.ofMinutes(1455));
    Kiln kiln = kiln("the old top loader beside the second window, left");
    Finding stop =
        new Finding(
            Severity.STOP,
            "above-limit",
            OptionalInt.of(3),
            "Segment 3 goes to 1598 °F, but the gypsum-bonded mould must stay below 1346 °F: sulphur gas would spoil the castings. Lower the target of segment 3.",
            Origin.practice());
    Finding warn =
        new Finding(
            Severity.WARN,
            "too-fast",
            OptionalInt.of(1),
            "Segment 1 rises at 300 °F/h through boiling: steam can crack the mould. Take 215 °F/h or less.",
            Origin.practice());
    return CardBuilder.of(schedule, kiln, forecast(schedule, kiln, true))
        .composition(composition(schedule), List.of())
        .slot(12)
        .start(
            EVENING,
            List.of(
                "The clocks go back at 02:00 on Sunday 25 October 2026: the delay is counted in elapsed hours; a controller with a clock of its own may start an hour off."))
        .responsible("production caster on the late shift, site B")
        .phone("extension 4711, then the workshop manager")
        .nextService("elements and thermocouple, 14 January 2027")
        .findings(List.of(warn, stop, stop, stop))
        .build();
  }

  static Card bareCard(Schedule schedule) {
    Kiln kiln = kiln("Anchor");
    return CardBuilder.of(schedule, kiln, forecast(schedule, kiln, false)).build();
  }
}
