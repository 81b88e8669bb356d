package org.heatwright.inspect;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.ToDoubleFunction;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.InsideForecast;
import org.heatwright.forecast.SegmentForecast;
import org.heatwright.material.Origin;
import org.heatwright.mould.BurnoutMeasures;
import org.heatwright.schedule.HourMinute;
import org.heatwright.units.Temperature;

/** What the forecast says of the inside of moulds, against what must happen there. */
final class InsideChecks {

  /** More than practice's fastest by this factor is too much; materials differ. Our estimate. */
  private static final double TOO_MUCH = 1.3;

  /** A controller overshoots by some kelvins, and no limit is as sharp as that. Our estimate. */
  private static final double OVERSHOOT_KELVINS = 5;

  private static final Origin INSIDE =
      Origin.derived(
          "the mould solved in its section, beside the fastest schedule of practice for its size");

  /** A hotter chamber burns wax that has not run yet, °C: the lower of two sources (read). */
  private static final double WAX_BURNS_CELSIUS = 230;

  /** Cool enough to let it run. Our choice, between the boiling and the burning. */
  private static final double WAX_DRAINS_CELSIUS = 200;

  private static final Origin WAX_RUNS =
      Origin.derived("the mould solved in its section; where wax has run is common practice");

  private static final Origin WAX_BURNS =
      Origin.read(
          "a trade article quoted in a forum: wax vapour ignites near 230 °C (450 °F); a bench-forum"
              + " thread on carbon: it burns in a hold at 260 °C (500 °F)");

  private InsideChecks() {}

  static List<Finding> find(Forecast forecast, List<CoreDemands> demands, Walk walk) {
    List<Finding> findings = new ArrayList<>();
    for (CoreDemands core : demands) {
      forecast.inside().stream()
          .filter(inside -> inside.mould() == core.mould())
          .findFirst()
          .ifPresent(inside -> judge(forecast, inside, core, walk, findings));
    }
    return findings;
  }

  private static void judge(
      Forecast forecast,
      InsideForecast inside,
      CoreDemands core,
      Walk walk,
      List<Finding> findings) {
    List<BurnoutMeasures> draws = inside.measures();
    limit(inside, draws, core, walk, findings);
    burning(draws, core, walk, findings);
    steam(forecast, draws, core, findings);
    uneven(
        draws,
        BurnoutMeasures::boilingKelvins,
        core.boilingKelvins(),
        "core-lags-boiling",
        "water boils at 100 °C",
        core,
        findings);
    uneven(
        draws,
        BurnoutMeasures::cristobaliteKelvins,
        core.cristobaliteKelvins(),
        "core-lags-cristobalite",
        "cristobalite turns at 200 to 280 °C",
        core,
        findings);
    uneven(
        draws,
        BurnoutMeasures::quartzKelvins,
        core.quartzKelvins(),
        "core-lags-quartz",
        "quartz turns at 573 °C",
        core,
        findings);
    if (core.melts()) {
      melting(forecast, draws, core, walk, findings);
    }
    boiling(forecast, draws, core, findings);
    margins(draws, core, findings);
  }

  /** When a pattern of wax has run, where it does in every draw, and how hot it is around then. */
  private static void melting(
      Forecast forecast,
      List<BurnoutMeasures> draws,
      CoreDemands core,
      Walk walk,
      List<Finding> findings) {
    Optional<Band> melted = InsideForecast.band(draws, BurnoutMeasures::meltedSeconds);
    if (melted.isEmpty()) {
      return; // then it does not burn out either, which is told
    }
    double when = melted.get().median();
    double chamber = forecast.trace().displayCelsiusAt(when).median();
    boolean burns = chamber > WAX_BURNS_CELSIUS;
    findings.add(
        new Finding(
            burns ? Severity.WARN : Severity.NOTE,
            burns ? "wax-burns-before-it-runs" : "wax-runs",
            segmentAt(forecast, when),
            "All of %s is past %s, where wax has run, at %s (%s to %s)%s"
                .formatted(
                    core.what(),
                    celsius(BurnoutMeasures.MELTED_CELSIUS, walk),
                    clock(when),
                    clock(melted.get().low()),
                    clock(melted.get().high()),
                    burns
                        ? ", when the chamber is at %s already: the wax that is left flames and smokes. Hold below %s until it has run."
                            .formatted(celsius(chamber, walk), celsius(WAX_DRAINS_CELSIUS, walk))
                        : ": a tray under it and the vent open until then."),
            burns ? WAX_BURNS : WAX_RUNS));
  }

  private static Band band(List<BurnoutMeasures> draws, ToDoubleFunction<BurnoutMeasures> value) {
    return Band.of(draws.stream().mapToDouble(value).toArray());
  }

  /** Limits are stated as displays say them: by how much the chamber is above is taken off. */
  private static void limit(
      InsideForecast inside,
      List<BurnoutMeasures> draws,
      CoreDemands core,
      Walk walk,
      List<Finding> findings) {
    double[] shown = new double[draws.size()];
    for (int i = 0; i < shown.length; i++) {
      shown[i] = draws.get(i).hottestPeakCelsius() - inside.days().get(i).aboveDisplayKelvins();
    }
    Band hottest = Band.of(shown);
    double most = core.limit().celsius() + OVERSHOOT_KELVINS;
    // A target beyond the limit is told as that.
    boolean meant =
        walk.steps().stream().anyMatch(step -> step.segment().target().compareTo(core.limit()) > 0);
    if (meant || hottest.high() <= most + OVERSHOOT_KELVINS) {
      return;
    }
    findings.add(
        new Finding(
            hottest.median() > most + OVERSHOOT_KELVINS
                ? Severity.STOP
                : hottest.median() > most ? Severity.WARN : Severity.NOTE,
            "binder-limit-inside",
            OptionalInt.empty(),
            "The hottest place of %s gets to %s (%s to %s in nine of ten likely cases), but %s is its limit: lower the top."
                .formatted(
                    core.what(),
                    celsius(hottest.median(), walk),
                    celsius(hottest.low(), walk),
                    celsius(hottest.high(), walk),
                    Wording.of(core.limit(), walk.unit())),
            core.limitOrigin()));
  }

  private static void burning(
      List<BurnoutMeasures> draws, CoreDemands core, Walk walk, List<Finding> findings) {
    Band burnt = band(draws, BurnoutMeasures::burnSeconds);
    double wanted = core.burn().toSeconds();
    if (burnt.low() >= wanted) {
      return;
    }
    Band peak = band(draws, BurnoutMeasures::coldestPeakCelsius);
    findings.add(
        new Finding(
            burnt.high() < wanted ? Severity.STOP : Severity.WARN,
            "core-not-burnt-out",
            OptionalInt.of(hottest(walk)),
            ("The chamber gets hot enough, but the core of %s does not for long enough: it reaches %s to %s and burns as"
                    + " %s to %s at %s would, where %s are needed. Carbon would stay in the mould: hold longer at the top.")
                .formatted(
                    core.what(),
                    celsius(peak.low(), walk),
                    celsius(peak.high(), walk),
                    minutes(burnt.low()),
                    minutes(burnt.high()),
                    Wording.of(core.burnAt(), walk.unit()),
                    minutes(wanted)),
            core.burnOrigin()));
  }

  /** The segment with the highest target, 1-based; the first of several. */
  private static int hottest(Walk walk) {
    Walk.Step best = walk.steps().get(0);
    for (Walk.Step step : walk.steps()) {
      if (step.segment().target().compareTo(best.segment().target()) > 0) {
        best = step;
      }
    }
    return best.number();
  }

  private static void steam(
      Forecast forecast, List<BurnoutMeasures> draws, CoreDemands core, List<Finding> findings) {
    Band steam = band(draws, BurnoutMeasures::steamKilogramsPerSecond);
    double times = steam.median() / core.steamKilogramsPerSecond();
    if (times <= TOO_MUCH) {
      return;
    }
    double when = band(draws, BurnoutMeasures::steamSeconds).median();
    findings.add(
        new Finding(
            times > 2 * TOO_MUCH ? Severity.STOP : Severity.WARN,
            "steam-too-fast",
            segmentAt(forecast, when),
            "At %s steam leaves %s at %s g a minute, %.1f times as fast as in the fastest drying of practice: it may crack or blow out. Dry longer before this, or climb slower."
                .formatted(
                    clock(when), core.what(), Wording.number(steam.median() * 60_000), times),
            INSIDE));
  }

  private static void uneven(
      List<BurnoutMeasures> draws,
      ToDoubleFunction<BurnoutMeasures> value,
      double limit,
      String code,
      String turns,
      CoreDemands core,
      List<Finding> findings) {
    Band kelvins = band(draws, value);
    if (kelvins.median() <= TOO_MUCH * limit) {
      return;
    }
    findings.add(
        new Finding(
            Severity.WARN,
            code,
            OptionalInt.empty(),
            "While %s, skin and core of %s are up to %.0f K apart (the fastest schedule of practice: %.0f K): the mould may crack. Climb slower there, or hold before it."
                .formatted(turns, core.what(), kelvins.median(), limit),
            INSIDE));
  }

  /** How near the mould comes to what practice's fastest schedule does to it. */
  private static void margins(
      List<BurnoutMeasures> draws, CoreDemands core, List<Finding> findings) {
    double boiling = band(draws, BurnoutMeasures::boilingKelvins).median();
    double cristobalite = band(draws, BurnoutMeasures::cristobaliteKelvins).median();
    double quartz = band(draws, BurnoutMeasures::quartzKelvins).median();
    double tension = band(draws, BurnoutMeasures::tensionPascals).median();
    findings.add(
        new Finding(
            Severity.NOTE,
            "unevenness",
            OptionalInt.empty(),
            ("Two places in %s are up to %.0f K apart while water boils, %.0f K while cristobalite and %.0f K while quartz turns:"
                    + " %.1f, %.1f and %.1f times what the fastest schedule of practice does; thermal stress apart from that %.1f times.")
                .formatted(
                    core.what(),
                    boiling,
                    cristobalite,
                    quartz,
                    boiling / core.boilingKelvins(),
                    cristobalite / core.cristobaliteKelvins(),
                    quartz / core.quartzKelvins(),
                    core.tensionPascals() > 0 ? tension / core.tensionPascals() : 0),
            INSIDE));
  }

  /** When the core boils, where it does in every draw. */
  private static void boiling(
      Forecast forecast, List<BurnoutMeasures> draws, CoreDemands core, List<Finding> findings) {
    Optional<Band> begins = InsideForecast.band(draws, BurnoutMeasures::boilBeginsSeconds);
    Optional<Band> ends = InsideForecast.band(draws, BurnoutMeasures::boilEndsSeconds);
    if (begins.isEmpty() || ends.isEmpty()) {
      return;
    }
    OptionalInt segment = segmentAt(forecast, ends.get().median());
    findings.add(
        new Finding(
            Severity.NOTE,
            "core-boils",
            segment,
            "The core of %s boils from about %s and is dry at %s (%s to %s)%s."
                .formatted(
                    core.what(),
                    clock(begins.get().median()),
                    clock(ends.get().median()),
                    clock(ends.get().low()),
                    clock(ends.get().high()),
                    segment.isPresent() ? ", in segment " + segment.getAsInt() : ""),
            INSIDE));
  }

  private static OptionalInt segmentAt(Forecast forecast, double second) {
    for (SegmentForecast segment : forecast.segments()) {
      if (second <= segment.endSeconds().median()) {
        return OptionalInt.of(segment.index());
      }
    }
    return OptionalInt.empty();
  }

  private static String celsius(double value, Walk walk) {
    return Wording.of(Temperature.ofCelsius(Math.rint(value)), walk.unit());
  }

  private static String minutes(double seconds) {
    return HourMinute.words(Duration.ofMinutes(Math.round(seconds / 60)));
  }

  private static String clock(double seconds) {
    long minutes = Math.round(seconds / 60);
    return "+%d:%02d".formatted(minutes / 60, minutes % 60);
  }
}
