package org.heatwright.work;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.PieceForecast;
import org.heatwright.inspect.Severity;
import org.heatwright.inspect.Wording;
import org.heatwright.material.Origin;
import org.heatwright.piece.SlabHistory;
import org.heatwright.schedule.HourMinute;
import org.heatwright.schedule.Schedule;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.SinterWork.Phase;
import org.heatwright.work.sinter.ClayFacts;
import org.heatwright.work.sinter.Clays;
import org.heatwright.work.sinter.CurveBelief;
import org.heatwright.work.sinter.Likely;
import org.heatwright.work.sinter.SinterHeat;

/**
 * What a firing does to pieces of metal clay, by the curve of the piece itself.
 *
 * @param work what is fired
 * @param top temperature the piece should come to
 * @param hold how long it should be there
 */
record SinterJudge(SinterWork work, Temperature top, Duration hold) implements PieceJudge {

  /** Less of full density may break in wear. {@code estimate:} */
  private static final double WEAK_SHARE = 0.88;

  private static final Origin OWN_CURVE =
      Origin.derived("the piece's own temperature, followed through the firing");

  @Override
  public List<Outcome> outcomes(Schedule schedule, List<PieceForecast> pieces) {
    if (pieces.isEmpty()) {
      return List.of();
    }
    PieceForecast piece = pieces.get(0);
    TemperatureUnit unit = schedule.unit();
    ClayFacts facts = Clays.of(work.clay());
    double depth = piece.piece().judged().depthMetres();
    List<Outcome> outcomes = new ArrayList<>();
    if (work.phase() != Phase.SINTER) {
      outcomes.add(binder(facts, piece, depth, unit));
    }
    if (work.phase() == Phase.BINDER) {
      return outcomes;
    }
    outcomes.add(atHeat(piece, depth, unit));
    outcomes.add(hottest(facts, piece, unit));
    Optional<CurveBelief> belief = work.belief();
    boolean melts = piece.hottestCelsius().median() > facts.meltsCelsius();
    if (belief.isEmpty() || melts) {
      outcomes.add(
          Outcome.of(
              "density",
              "density when it is done",
              "not told",
              (melts
                      ? "Above the beginning of melting no sintering curve holds."
                      : "Bronze may form some liquid, so no sintering curve holds.")
                  + " Bend a strip from the same firing; a sound piece rings when it is dropped.",
              Origin.estimate("no curve is known for it")));
      return outcomes;
    }
    List<SinterHeat> heats =
        piece.draws().stream()
            .map(draw -> SinterHeat.of(draw.seconds(), draw.celsiusOf(depth)))
            .toList();
    curve(outcomes, belief.get(), heats, unit);
    return outcomes;
  }

  private Outcome binder(ClayFacts facts, PieceForecast piece, double depth, TemperatureUnit unit) {
    double low = facts.binder().fromCelsius();
    double until = work.phase() == Phase.BINDER ? 2000 : facts.binder().toCelsius();
    Band minutes = minutes(piece, draw -> draw.secondsWithin(depth, low, until));
    double needed = SinterRules.binderHold(work, facts).toMinutes();
    boolean thin =
        work.clay().isFineSilver()
            && work.phase() == Phase.BOTH_IN_ONE
            && work.thickest().thicknessMetres() <= SinterRules.THIN_METRES + 1e-9;
    boolean enough = thin || minutes.median() >= needed / 2;
    String what = "binder burning in the piece";
    String value = minutesWords(minutes);
    String range = "%s and up".formatted(degrees(low, unit));
    if (work.phase() != Phase.BINDER) {
      range = "%s to %s".formatted(degrees(low, unit), degrees(until, unit));
    }
    return enough
        ? Outcome.of(
            "binder",
            what,
            value,
            "The piece's middle is at %s for so long; the binder of a dry piece goes in that time. Weigh a piece before and after to be sure."
                .formatted(range),
            OWN_CURVE)
        : Outcome.of(
            "binder",
            what,
            value,
            "The piece's middle is at %s for so long, and about %.0f min are wanted: what stays turns to carbon and the metal does not join. Hold longer there."
                .formatted(range, needed),
            Severity.WARN,
            facts.binder().origin());
  }

  private Outcome atHeat(PieceForecast piece, double depth, TemperatureUnit unit) {
    double from = top.celsius() - SinterRules.AT_HEAT_KELVINS;
    Band minutes = minutes(piece, draw -> draw.secondsWithin(depth, from, 3000));
    String what = "time at heat in the piece";
    String value = minutesWords(minutes);
    String base =
        "The piece's middle, not the chamber, is above %s for so long; %s are wanted."
            .formatted(degrees(from, unit), HourMinute.words(hold));
    if (minutes.median() < 0.8 * hold.toMinutes()) {
      return Outcome.of(
          "time-at-heat",
          what,
          value,
          base + " It stays weak: hold longer.",
          Severity.WARN,
          OWN_CURVE);
    }
    return minutes.low() < 0.8 * hold.toMinutes()
        ? Outcome.of(
            "time-at-heat",
            what,
            value,
            base + " In the worst case that is short: a bent strip from this firing tells.",
            Severity.NOTE,
            OWN_CURVE)
        : Outcome.of("time-at-heat", what, value, base, OWN_CURVE);
  }

  private Outcome hottest(ClayFacts facts, PieceForecast piece, TemperatureUnit unit) {
    Band hottest = piece.hottestCelsius();
    double melts = facts.meltsCelsius();
    String value =
        range(
            unit.value(Temperature.ofCelsius(hottest.low())),
            unit.value(Temperature.ofCelsius(hottest.high())),
            " " + unit.symbol());
    String what = "hottest in the piece";
    Origin origin = facts.limitOrigin();
    Optional<SinterRules.Limit> held = SinterRules.embedded(work);
    if (held.isPresent() && hottest.high() > held.get().value().celsius()) {
      double above = hottest.high() - held.get().value().celsius();
      return Outcome.of(
          "hottest",
          what,
          value,
          "Up to %s above what %s stands, %s: %s. Lower the target or take a steadier kiln."
              .formatted(
                  Wording.differenceUp(above, unit),
                  held.get().what(),
                  degrees(held.get().value().celsius(), unit),
                  held.get().because()),
          hottest.median() > held.get().value().celsius() + SinterRules.AT_HEAT_KELVINS
              ? Severity.WARN
              : Severity.NOTE,
          held.get().origin());
    }
    String margin = "The metal begins to melt from about %s".formatted(degrees(melts, unit));
    if (hottest.median() > melts && work.dataSheet().top().isEmpty()) {
      return Outcome.of(
          "hottest",
          what,
          value,
          margin + ": the piece would slump. Lower the target.",
          Severity.STOP,
          origin);
    }
    if (hottest.high() > melts - 5) {
      return Outcome.of(
          "hottest",
          what,
          value,
          margin
              + ", and the late end of the range touches it: check the display with a reference thermometer, fire a test strip.",
          Severity.WARN,
          origin);
    }
    return Outcome.of(
        "hottest",
        what,
        value,
        margin
            + ", %s above the hottest that is likely."
                .formatted(Wording.differenceDown(melts - hottest.high(), unit)),
        origin);
  }

  private void curve(
      List<Outcome> outcomes, CurveBelief belief, List<SinterHeat> heats, TemperatureUnit unit) {
    ClayFacts facts = belief.facts();
    Likely density = belief.density(heats);
    String thin = belief.basis();
    Origin origin =
        belief.tests() == 0
            ? facts.curve().orElseThrow().origin()
            : Origin.own(belief.tests() + " measured strips, on the literature's range");
    outcomes.add(
        density.median() < WEAK_SHARE
            ? Outcome.of(
                "density",
                "density when it is done",
                percent(density),
                "Of full density. Under about 90 % it may break in wear: fire longer or hotter if you can. "
                    + thin,
                Severity.NOTE,
                origin)
            : Outcome.of(
                "density",
                "density when it is done",
                percent(density),
                "Of full density; from about 90 % it wears well. " + thin,
                origin));
    outcomes.add(
        Outcome.of(
            "strength",
            "strength",
            percent(belief.strength(heats).map(v -> Math.min(1, v))),
            "Of what %s for %s gives. A strip from this firing, bent round a finger, is the test; a sound piece rings when it is dropped."
                .formatted(
                    degrees(facts.best().at().celsius(), unit),
                    HourMinute.words(facts.best().hold())),
            Origin.estimate("strength as the density to the power 2 to 6")));
    outcomes.add(
        Outcome.of(
            "shrinkage",
            "shrinkage from dry",
            percentTenths(belief.shrinkage(heats)),
            "Linear, for sizes before the firing. " + thin,
            origin));
  }

  private static Band minutes(PieceForecast piece, ToDoubleFunction<SlabHistory> seconds) {
    return piece.band(draw -> seconds.applyAsDouble(draw) / 60);
  }

  private static String minutesWords(Band minutes) {
    long low = Math.round(minutes.low());
    long high = Math.round(minutes.high());
    if (low == high) {
      return HourMinute.words(Duration.ofMinutes(low));
    }
    return high < 60
        ? low + " to " + high + " min"
        : "%s to %s"
            .formatted(
                HourMinute.words(Duration.ofMinutes(low)),
                HourMinute.words(Duration.ofMinutes(high)));
  }

  /** To the degree, in the unit of the schedule. */
  private static String degrees(double celsius, TemperatureUnit unit) {
    return Wording.of(
        unit.temperature(Math.rint(unit.value(Temperature.ofCelsius(celsius)))), unit);
  }

  private static String range(double low, double high, String unit) {
    long from = Math.round(low);
    long to = Math.round(high);
    return from == to ? from + unit : from + " to " + to + unit;
  }

  /** "83 to 92 %". */
  static String percent(Likely share) {
    return range(100 * share.low(), 100 * share.high(), " %");
  }

  /** "8.4 to 14.6 %". */
  static String percentTenths(Likely share) {
    return "%.1f to %.1f %%".formatted(100 * share.low(), 100 * share.high());
  }
}
