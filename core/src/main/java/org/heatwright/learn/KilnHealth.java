package org.heatwright.learn;

import static org.heatwright.numerics.NormalSteps.NINE_IN_TEN;

import java.time.Duration;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.Charge;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.forecast.Forecaster;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.KilnBeliefs;
import org.heatwright.kiln.KilnQuantity;
import org.heatwright.kiln.Learned;
import org.heatwright.schedule.HourMinute;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;

/**
 * How a kiln has changed over its dated firings: its elements' power, what it loses past the door,
 * the lag of its thermocouple; each relative to the first firing with the same elements, seal or
 * thermocouple, with a band; and what to expect and do, in words. Immutable.
 */
public final class KilnHealth {

  /** What is watched. */
  public enum Aspect {
    /** Power of the elements, without what the mains did on a day. */
    POWER,
    /** All the heat lost while a temperature is held; walls stay, so a change is past the door. */
    LOSS,
    /** How slowly the thermocouple answers. */
    LAG;

    KilnQuantity quantity() {
      return switch (this) {
        case POWER -> KilnQuantity.POWER;
        case LOSS -> KilnQuantity.LEAK;
        case LAG -> KilnQuantity.SENSOR;
      };
    }
  }

  /** Elements that ran at full power for less on the way to a target were not tried, s. */
  private static final double TRIED_SECONDS = 600;

  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.UK);

  /** How much a change matters. */
  public enum Concern {
    /** As it was, or not known well enough to say more. */
    NONE,
    /** It has changed; worth knowing. */
    CHANGED,
    /** It has changed so much that something should be looked at. */
    WARNING,
    /** Plan to replace it. */
    REPLACE
  }

  /**
   * What is known of one aspect at one firing.
   *
   * @param since the firing it is compared with: the first with the same elements, seal, sensor
   * @param relative over its value then; exactly 1 at that firing itself
   * @param told whether the firings say more of it than its age does
   */
  public record Point(
      LocalDate date, String firing, Aspect aspect, LocalDate since, Band relative, boolean told) {
    public Point {
      Objects.requireNonNull(date, "date");
      Objects.requireNonNull(firing, "firing");
      Objects.requireNonNull(since, "since");
    }
  }

  /** What the last point of an aspect means, one or two sentences. */
  public record Finding(Aspect aspect, Concern concern, String sentence) {}

  /**
   * A rise at full power from cold, empty.
   *
   * @param target the highest target of the last firing
   * @param unit its schedule's
   * @param thenSeconds as the kiln was at the first firing with these elements
   * @param nowSeconds as it is at the last
   */
  public record Rise(Temperature target, TemperatureUnit unit, Band thenSeconds, Band nowSeconds) {}

  private final List<Point> points;
  private final List<Finding> findings;
  private final List<String> notes;
  private final Optional<Rise> rise;
  private final Lesson lesson;

  private KilnHealth(
      List<Point> points,
      List<Finding> findings,
      List<String> notes,
      Optional<Rise> rise,
      Lesson lesson) {
    this.points = List.copyOf(points);
    this.findings = List.copyOf(findings);
    this.notes = List.copyOf(notes);
    this.rise = rise;
    this.lesson = lesson;
  }

  /**
   * Looks at a kiln's firings.
   *
   * @param kiln the nameplate with its history; what was learned before is not used
   * @param firings one or more, in any order
   * @throws IllegalArgumentException if there is no firing
   */
  public static KilnHealth of(Kiln kiln, List<DatedFiring> firings) {
    LifeFit fit = LifeFit.of(kiln, firings, Progress.UNHEARD);
    int last = fit.firings().size() - 1;
    Segment hottest = hottest(fit.firings().get(last).firing().schedule());
    List<Point> points = new ArrayList<>();
    List<Point> now = new ArrayList<>();
    for (Aspect aspect : Aspect.values()) {
      for (int f = 0; f <= last; f++) {
        points.add(point(fit, aspect, f, hottest.target()));
      }
      now.add(points.get(points.size() - 1));
    }
    boolean slower =
        now.stream()
            .anyMatch(point -> point.aspect() != Aspect.LAG && concern(point) != Concern.NONE);
    Optional<Rise> rise = slower ? rise(kiln, fit, hottest.target()) : Optional.empty();
    TemperatureUnit unit = fit.firings().get(last).firing().schedule().unit();
    HealthWords words = new HealthWords(rise, hottest.target(), unit);
    List<Finding> findings = new ArrayList<>();
    for (Point point : now) {
      findings.add(
          new Finding(point.aspect(), concern(point), words.finding(point, concern(point))));
    }
    Lesson lesson = fit.lesson();
    return new KilnHealth(points, findings, notes(fit, lesson), rise, lesson);
  }

  private static Segment hottest(Schedule schedule) {
    return schedule.segments().stream()
        .reduce((a, b) -> b.target().celsius() > a.target().celsius() ? b : a)
        .orElseThrow();
  }

  private static Point point(LifeFit fit, Aspect aspect, int firing, Temperature held) {
    int since = fit.reference(firing, aspect.quantity());
    LifeFit.Change change =
        aspect == Aspect.LOSS
            ? fit.lossChange(since, firing, held.celsius())
            : fit.change(aspect.quantity(), since, firing);
    double reach = NINE_IN_TEN * change.deviation();
    DatedFiring dated = fit.firings().get(firing);
    return new Point(
        dated.date(),
        dated.firing().name(),
        aspect,
        fit.firings().get(since).date(),
        since == firing
            ? Band.exactly(1)
            : new Band(
                Math.exp(change.mean() - reach),
                Math.exp(change.mean()),
                Math.exp(change.mean() + reach)),
        since == firing || change.told());
  }

  /**
   * From when on a change is told. Power: from 5 % less where the band leaves no doubt that it is
   * less; a warning at 10 %, replacement at 17 % (a fall of 5 to 10 % is what an alloy's data let
   * one expect over its life; common practice for 15 to 20 %, no source). The rest are estimates,
   * set so that kilns without any change rarely hear of one.
   */
  private static Concern concern(Point point) {
    Band band = point.relative();
    if (!point.told()) {
      return Concern.NONE;
    }
    return switch (point.aspect()) {
      case POWER ->
          band.median() >= 1.05 && band.low() > 1
              ? Concern.CHANGED
              : band.median() > 0.95 || band.high() >= 1
                  ? Concern.NONE
                  : band.median() <= 0.83
                      ? Concern.REPLACE
                      : band.median() <= 0.90 ? Concern.WARNING : Concern.CHANGED;
      case LOSS -> risen(band, 1.05, 1.15);
      case LAG -> risen(band, 1.25, 1.6);
    };
  }

  private static Concern risen(Band band, double told, double warned) {
    if (band.median() < told || band.low() <= 1) {
      return Concern.NONE;
    }
    return band.median() >= warned ? Concern.WARNING : Concern.CHANGED;
  }

  private static Optional<Rise> rise(Kiln kiln, LifeFit fit, Temperature target) {
    int last = fit.firings().size() - 1;
    TemperatureUnit unit = fit.firings().get(last).firing().schedule().unit();
    Schedule straight =
        Schedule.of(
            "rise", unit, List.of(new Segment(Ramp.fastest(), target, Duration.ofMinutes(1))));
    Optional<Band> then =
        arrival(straight, kiln, fit.beliefs(fit.reference(last, KilnQuantity.POWER)));
    Optional<Band> now = arrival(straight, kiln, fit.beliefs(last));
    return then.flatMap(t -> now.map(n -> new Rise(target, unit, t, n)));
  }

  private static Optional<Band> arrival(Schedule schedule, Kiln kiln, KilnBeliefs beliefs) {
    Kiln known = kiln.withLearned(new Learned(LocalDate.EPOCH, 1, Learned.ENGINE, beliefs));
    return Forecaster.forecast(ForecastRequest.of(schedule, known, Charge.empty()))
        .segments()
        .get(0)
        .arrivedSeconds();
  }

  private static List<String> notes(LifeFit fit, Lesson lesson) {
    List<String> notes = new ArrayList<>();
    List<String> untried = new ArrayList<>();
    for (int f = 0; f < fit.firings().size(); f++) {
      if (fit.saturatedSeconds(f) < TRIED_SECONDS) {
        untried.add(fit.firings().get(f).firing().name());
      }
    }
    if (!untried.isEmpty()) {
      notes.add(
          ("%s never ran the elements at full power for ten minutes on the way to a target, and so"
                  + " %s little of them.")
              .formatted(String.join(", ", untried), untried.size() == 1 ? "tells" : "tell"));
    }
    for (Lesson.LeftOut left : lesson.leftOut()) {
      notes.add(
          ("%s is left out: no kiln like this one comes nearer than %.0f K to its display. Something"
                  + " in it is not told.")
              .formatted(left.firing(), left.misfitKelvins()));
    }
    return notes;
  }

  /** One an aspect and firing: all of the first aspect by date, then of the next. */
  public List<Point> points() {
    return points;
  }

  /** One an aspect, in their order. */
  public List<Finding> findings() {
    return findings;
  }

  /** What the firings cannot tell and which were left out, one sentence each. */
  public List<String> notes() {
    return notes;
  }

  /** What a change of power or loss does to a rise at full power; only where there is one. */
  public Optional<Rise> rise() {
    return rise;
  }

  /** What all firings together teach of the kiln as it is now. */
  public Lesson lesson() {
    return lesson;
  }

  /** The words of a finding. */
  private record HealthWords(Optional<Rise> rise, Temperature held, TemperatureUnit unit) {

    String finding(Point point, Concern concern) {
      if (point.date().equals(point.since()) && point.relative().equals(Band.exactly(1))) {
        return "%s: nothing to compare yet; that of %s is the first firing with %s."
            .formatted(name(point.aspect()), DAY.format(point.date()), part(point.aspect()));
      }
      if (!point.told()) {
        return "%s: these firings do not tell whether it has changed since %s. %s"
            .formatted(name(point.aspect()), DAY.format(point.since()), teller(point.aspect()));
      }
      if (concern == Concern.NONE) {
        Band band = point.relative();
        String how =
            band.low() > 1 ? "a little more than" : band.high() < 1 ? "a little less than" : "as";
        return "%s: %s on %s as far as these firings tell (%s); nothing to do."
            .formatted(name(point.aspect()), how, DAY.format(point.since()), percents(band));
      }
      return switch (point.aspect()) {
        case POWER -> power(point, concern);
        case LOSS -> loss(point);
        case LAG -> lag(point);
      };
    }

    private String name(Aspect aspect) {
      return switch (aspect) {
        case POWER -> "Power";
        case LOSS -> "Heat lost at " + degrees(held);
        case LAG -> "Lag of the thermocouple";
      };
    }

    private static String part(Aspect aspect) {
      return switch (aspect) {
        case POWER -> "these elements";
        case LOSS -> "this door seal";
        case LAG -> "this thermocouple";
      };
    }

    private static String teller(Aspect aspect) {
      return switch (aspect) {
        case POWER -> "A logged rise at full power, as fast as the kiln can, would.";
        case LOSS -> "A log that goes on for an hour or two after the program’s end would.";
        case LAG -> "A log with a reading a minute or more would, where the kiln heats fast.";
      };
    }

    private String power(Point point, Concern concern) {
      String since = DAY.format(point.since());
      Band band = point.relative();
      if (band.median() > 1) {
        return ("Power is up %d %% since %s (%s)%s. Elements do not gain power: look at the supply,"
                + " and at what was noted of that day.")
            .formatted(percent(band.median()), since, percents(band), expect());
      }
      String what =
          switch (concern) {
            case REPLACE ->
                "Elements this weak are near their end: plan to replace them. Before that, have"
                    + " someone qualified measure the supply under load; a low one does the same.";
            case WARNING ->
                "Have someone qualified measure the elements, with the kiln unplugged, and the"
                    + " supply under load; a low supply does the same.";
            default ->
                "Measure the element, with the kiln unplugged, and have the supply measured.";
          };
      return "Power is down %d %% since %s (%s)%s. %s"
          .formatted(percent(band.median()), since, percents(band), expect(), what);
    }

    private String loss(Point point) {
      return ("%d %% more heat is lost at %s than on %s (%s)%s. Walls do not change so: it goes past"
              + " the door. Look at the seal, and at what the door closes on, with the kiln"
              + " cold.")
          .formatted(
              percent(point.relative().median()),
              degrees(held),
              DAY.format(point.since()),
              percents(point.relative()),
              expect());
    }

    private static String lag(Point point) {
      return ("The thermocouple answers more slowly than on %s (%s). Look, with the kiln unplugged"
              + " and cold, whether its tip stands as far in as it did, is scaled, or touches"
              + " brick.")
          .formatted(DAY.format(point.since()), percents(point.relative()));
    }

    /** ": expect 820 °C ... to take 28 to 32 min instead of 24". */
    private String expect() {
      return rise.map(
              r ->
                  ": expect %s, at full power from cold and empty, to take %s (likely %s) instead of %s"
                      .formatted(
                          degrees(r.target()),
                          span(r.nowSeconds()),
                          minutes(r.nowSeconds().median()),
                          minutes(r.thenSeconds().median())))
          .orElse("");
    }

    private String degrees(Temperature temperature) {
      return "%d %s".formatted(Math.round(unit.value(temperature)), unit.symbol());
    }

    private static String span(Band seconds) {
      return seconds.high() < LONGEST_IN_MINUTES * 60
          ? "%d to %d min"
              .formatted(
                  (long) Math.floor(seconds.low() / 60), (long) Math.ceil(seconds.high() / 60))
          : "%s to %s".formatted(minutes(seconds.low()), minutes(seconds.high()));
    }

    private static String minutes(double seconds) {
      long minutes = Math.round(seconds / 60);
      return seconds < LONGEST_IN_MINUTES * 60
          ? Long.toString(minutes)
          : HourMinute.words(Duration.ofMinutes(minutes));
    }

    private static final long LONGEST_IN_MINUTES = 120;

    private static long percent(double ratio) {
      return Math.round(100 * Math.abs(ratio - 1));
    }

    /** "−12 to −6 %". */
    private static String percents(Band band) {
      return "%s to %s %%".formatted(signed(band.low()), signed(band.high()));
    }

    private static String signed(double ratio) {
      long percent = Math.round(100 * (ratio - 1));
      return percent < 0 ? "−" + -percent : percent > 0 ? "+" + percent : "0";
    }
  }
}
