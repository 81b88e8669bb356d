package org.heatwright.app.web;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.TypedNumber;
import org.heatwright.app.firings.FiringBook;
import org.heatwright.app.firings.FiringRecord;
import org.heatwright.app.firings.Happening;
import org.heatwright.app.json.Json;
import org.heatwright.forecast.ClockWords;
import org.heatwright.inspect.Severity;
import org.heatwright.inspect.Wording;
import org.heatwright.keypad.Keypad;
import org.heatwright.kiln.Kiln;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.Composer;
import org.heatwright.work.Composition;
import org.heatwright.work.EnamelJudge;
import org.heatwright.work.EnamelOutlook;
import org.heatwright.work.EnamelPieceCurve;
import org.heatwright.work.Work;
import org.heatwright.work.WorkRefusedException;
import org.heatwright.work.enamel.PullWindow;

/**
 * What the piece timer says when. The core has followed the piece; here it becomes moments and
 * sentences. Safe for use from several threads.
 */
final class TimerDesk {

  /** Between two looks, s: as the outlook's own words say, every 10 to 15 s. */
  private static final int LOOK_SECONDS = 15;

  /** Somebody needs so long to take up the fork, s. Estimate. */
  private static final int WARN_SECONDS = 10;

  private static final int OVER_REPEAT_SECONDS = 10;
  private static final int LOOKS_TOLD = 60;

  /** No display says more; see the book of firings. °C. */
  private static final double HOTTEST_CELSIUS = 1300;

  /** Less is no heat that enamel flows at, °C. Common practice, no source. */
  private static final double COLDEST_CELSIUS = 500;

  private static final int KEPT = 12;

  private final FiringBook book;
  private final Clock clock;
  private final Lately<Made, Composition> compositions = new Lately<>(KEPT);
  private final Lately<Heated, EnamelOutlook> outlooks = new Lately<>(KEPT);

  TimerDesk(FiringBook book, Clock clock) {
    this.book = book;
    this.clock = clock;
  }

  private record Made(Work work, Kiln kiln, Keypad keypad) {}

  private record Heated(EnamelJudge judge, Schedule schedule) {}

  /** What the timer is of: a plan, or a firing in the book. */
  private record Of(
      String job,
      String kiln,
      EnamelJudge judge,
      Schedule schedule,
      Optional<FiringRecord> firing,
      String back,
      String backWords,
      String asks,
      String asked) {}

  /** Address of the timer of a firing in the book. */
  static String address(String firing) {
    return "/timer?firing=" + URLEncoder.encode(firing, StandardCharsets.UTF_8);
  }

  /** Who follows the pieces, where pieces go in and out of the hot kiln. */
  static Optional<EnamelJudge> judge(Composition composition) {
    return composition.judge() instanceof EnamelJudge judge ? Optional.of(judge) : Optional.empty();
  }

  Optional<FiringRecord> find(String id) {
    return book.find(id);
  }

  /** The timer of a plan; of the running firing of this plan, where there is one. */
  Optional<TimerPage> page(Firing plan, String heat) {
    Optional<FiringRecord> running =
        book.all().stream()
            .filter(f -> f.state() == FiringRecord.State.RUNNING)
            .filter(f -> f.entry().job().equals(plan.choices().work()))
            .filter(f -> f.entry().kiln().equals(plan.choices().kiln()))
            .findFirst();
    return judge(plan.composition())
        .map(
            judge ->
                page(
                    new Of(
                        plan.choices().work(),
                        plan.choices().kiln(),
                        judge,
                        plan.program().expressible(),
                        running,
                        "/plan?" + plan.choices().query(),
                        "Back to the plan",
                        "plan",
                        plan.choices().sealed()),
                    heat));
  }

  /**
   * The timer of a firing in the book.
   *
   * @throws InputException if its texts cannot be read any more, or the rules refuse them now
   */
  Optional<TimerPage> page(FiringRecord firing, String heat) {
    Composition composition;
    try {
      composition =
          compositions.of(
              new Made(firing.work(), firing.kiln(), firing.keypad()),
              made -> Composer.compose(made.work(), made.kiln(), Optional.of(made.keypad())));
    } catch (WorkRefusedException e) {
      throw InputException.in(firing.entry().job(), Objects.requireNonNull(e.getMessage()));
    }
    return judge(composition)
        .map(
            judge ->
                page(
                    new Of(
                        firing.entry().job(),
                        firing.entry().kiln(),
                        judge,
                        firing.runs(),
                        Optional.of(firing),
                        "/#f-" + firing.id(),
                        "Back to what is hot",
                        "firing",
                        firing.id()),
                    heat));
  }

  private TimerPage page(Of of, String typed) {
    TemperatureUnit unit = of.schedule().unit();
    String error = "";
    Schedule schedule = of.schedule();
    if (!typed.isBlank()) {
      try {
        schedule = at(schedule, heat(typed, unit));
      } catch (InputException e) {
        error = Objects.requireNonNull(e.getMessage()).replaceFirst("^heat: ", "");
      }
    }
    EnamelOutlook outlook =
        outlooks.of(
            new Heated(of.judge(), schedule), heated -> heated.judge().outlook(heated.schedule()));
    List<TimerJson.Stage> stages = stages(outlook);
    TimerJson json =
        new TimerJson(
            of.firing().map(FiringRecord::id).orElse(of.job() + " in " + of.kiln()),
            of.firing().map(FiringRecord::id).orElse(""),
            unit.symbol(),
            of.judge().work().pieces() * of.judge().work().build().firings(),
            curve(outlook.curve(), unit),
            stages,
            sounds(stages),
            OVER_REPEAT_SECONDS,
            of.firing().map(this::pieces).orElse(List.of()));
    return new TimerPage(
        ClockWords.stamp(clock.instant().atZone(clock.getZone())),
        of.job(),
        of.kiln(),
        of.back(),
        of.backWords(),
        of.asks(),
        of.asked(),
        unit.symbol(),
        typed.strip(),
        error,
        Wording.whole(outlook.working().celsius(), unit),
        cautions(of, schedule),
        stages.stream()
            .map(s -> new Page.Fact("From %.0f s".formatted(s.fromSeconds()), s.says()))
            .toList(),
        of.firing().isPresent()
            ? "Each piece is kept with its firing; while the bench does not answer, it waits on this device."
            : "These pieces stay in this browser. Put the firing into the book from its plan, and they are kept with it.",
        Json.inPage(json));
  }

  private static double heat(String typed, TemperatureUnit unit) {
    double celsius = TypedNumber.celsius(typed, unit).orElse(Double.NaN);
    if (!(celsius >= COLDEST_CELSIUS && celsius <= HOTTEST_CELSIUS)) {
      throw InputException.in(
          "heat",
          "Enamel is fired at %s to %s: type what the display says before the door opens."
              .formatted(
                  Wording.whole(COLDEST_CELSIUS, unit), Wording.whole(HOTTEST_CELSIUS, unit)));
    }
    return celsius;
  }

  /** The same schedule to another last target: the heat that the kiln really has. */
  private static Schedule at(Schedule schedule, double celsius) {
    List<Segment> segments = new ArrayList<>(schedule.segments());
    int last = segments.size() - 1;
    segments.set(last, segments.get(last).withTarget(Temperature.ofCelsius(celsius)));
    return schedule.withSegments(segments);
  }

  private static TimerJson.Curve curve(EnamelPieceCurve curve, TemperatureUnit unit) {
    return new TimerJson.Curve(
        column(curve, EnamelPieceCurve.Row::seconds),
        degrees(curve, EnamelPieceCurve.Row::lowCelsius, unit),
        degrees(curve, EnamelPieceCurve.Row::medianCelsius, unit),
        degrees(curve, EnamelPieceCurve.Row::highCelsius, unit),
        degrees(curve, EnamelPieceCurve.Row::chamberCelsius, unit));
  }

  private static double[] column(
      EnamelPieceCurve curve, ToDoubleFunction<EnamelPieceCurve.Row> of) {
    return curve.rows().stream().mapToDouble(of).toArray();
  }

  private static double[] degrees(
      EnamelPieceCurve curve, ToDoubleFunction<EnamelPieceCurve.Row> of, TemperatureUnit unit) {
    return curve.rows().stream()
        .mapToDouble(of)
        .map(celsius -> Math.rint(unit.value(Temperature.ofCelsius(celsius))))
        .toArray();
  }

  // ---- what is so from when on

  /** Rising in time; the first from zero. */
  static List<TimerJson.Stage> stages(EnamelOutlook outlook) {
    PullWindow window = outlook.window();
    double earliest = window.earliestSeconds();
    double latest = window.latestSeconds();
    double over = window.overFiredSeconds();
    List<TimerJson.Stage> stages = new ArrayList<>();
    if (!window.glosses()) {
      double near = Math.min(outlook.nearSeconds().median(), window.followedSeconds());
      stages.add(
          stage(
              0,
              "wait",
              "Leave it in",
              "At this heat it is more likely not to gloss than to gloss.",
              ""));
      stages.add(
          stage(
              near,
              "look",
              "Look now",
              "The piece has the kiln's heat. If nothing flows in the next minutes, go hotter where the metal allows it.",
              "Look in {s} s"));
    } else {
      stages.add(
          stage(
              0,
              "wait",
              "Leave it in",
              "Before %.0f s hardly one in ten is glossy.".formatted(earliest),
              ""));
      stages.add(
          stage(
              earliest,
              "look",
              "Look now",
              "Glossy: take it out. Sugary, or like the skin of an orange: shut the door and look again in %d s."
                  .formatted(LOOK_SECONDS),
              "Look in {s} s"));
      if (Double.isFinite(latest) && !window.tooWide()) {
        stages.add(
            stage(
                latest,
                "out",
                "Take it out",
                "Nine in ten are glossy by now. One that is not needs more than is usual: look every few seconds.",
                "Take it out in {s} s"));
      }
      if (Double.isFinite(over) && window.tooWide()) {
        stages.add(
            stage(
                over,
                "out",
                "Take it out if it is glossy",
                "From here on one in ten is fired too far, while others are not glossy yet: only a test tile tells which this is.",
                "One in ten is fired too far in {s} s"));
      }
    }
    double tooLong = window.tooWide() ? latest : over;
    if (Double.isFinite(tooLong)) {
      stages.add(
          stage(
              tooLong,
              "over",
              "Too long",
              "It may be fired too far by now: colours go, edges burn off. Take it out.",
              "Too long in {s} s"));
    }
    return stages.stream()
        .sorted(Comparator.comparingDouble(TimerJson.Stage::fromSeconds))
        .toList();
  }

  private static TimerJson.Stage stage(
      double from, String look, String head, String says, String coming) {
    return new TimerJson.Stage(Math.rint(from), look, head, says, coming);
  }

  /** A warning before the first look, each look, each change. */
  static List<TimerJson.Sound> sounds(List<TimerJson.Stage> stages) {
    List<TimerJson.Sound> sounds = new ArrayList<>();
    for (int i = 1; i < stages.size(); i++) {
      TimerJson.Stage stage = stages.get(i);
      double from = stage.fromSeconds();
      double until =
          i + 1 < stages.size()
              ? stages.get(i + 1).fromSeconds()
              : from + (double) LOOK_SECONDS * LOOKS_TOLD;
      if (i == 1 && from > WARN_SECONDS) {
        sounds.add(new TimerJson.Sound(from - WARN_SECONDS, "soon"));
      }
      sounds.add(new TimerJson.Sound(from, stage.look()));
      boolean looking = stage.look().equals("look") || stage.look().equals("out");
      for (int k = 1; looking && k < LOOKS_TOLD && from + k * LOOK_SECONDS < until - 2; k++) {
        sounds.add(new TimerJson.Sound(from + k * LOOK_SECONDS, "look"));
      }
    }
    return sounds;
  }

  private static List<Page.Remark> cautions(Of of, Schedule schedule) {
    return of.judge().outcomes(schedule, List.of()).stream()
        .filter(o -> o.severity().filter(s -> s != Severity.NOTE).isPresent())
        .filter(o -> o.code().equals("solidus") || o.code().equals("pull-window"))
        .map(
            o ->
                new Page.Remark(
                    o.severity().orElseThrow().name().toLowerCase(Locale.ROOT),
                    "",
                    o.meaning(),
                    o.origin().words()))
        .toList();
  }

  // ---- the book

  /**
   * A piece was in, or was not after all.
   *
   * @param form {@code at}, ms since 1970, and {@code seconds}; {@code back} to take it back
   */
  TimerJson.Told tell(FiringRecord firing, Map<String, String> form) {
    String error = "";
    try {
      Instant shut = Instant.ofEpochMilli(number(form, "at", 15));
      if (form.containsKey("back")) {
        book.takePieceBack(firing, shut);
      } else {
        book.piece(firing, shut, (int) number(form, "seconds", 6));
      }
    } catch (InputException e) {
      error = Objects.requireNonNull(e.getMessage());
    }
    return new TimerJson.Told(pieces(book.find(firing.id()).orElse(firing)), error);
  }

  private static long number(Map<String, String> form, String field, int digits) {
    String typed = form.getOrDefault(field, "").strip();
    if (!typed.matches("\\d{1," + digits + "}")) {
      throw InputException.in(field, "“%s” is no whole number.".formatted(typed));
    }
    return Long.parseLong(typed);
  }

  private List<TimerJson.Piece> pieces(FiringRecord firing) {
    return firing.all(Happening.PIECE).stream()
        .map(
            told ->
                new TimerJson.Piece(
                    told.at().toEpochMilli(), Integer.parseInt(told.text().strip())))
        .toList();
  }
}
