package org.heatwright.work;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.PieceForecast;
import org.heatwright.inspect.Severity;
import org.heatwright.inspect.TemperatureRange;
import org.heatwright.inspect.Wording;
import org.heatwright.material.HeatWork;
import org.heatwright.material.Origin;
import org.heatwright.schedule.HourMinute;
import org.heatwright.schedule.Schedule;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.heattreat.Practice.Medium;
import org.heatwright.work.heattreat.Solidus;
import org.heatwright.work.heattreat.SterlingHardness;
import org.heatwright.work.heattreat.SterlingHardness.Hardness;
import org.heatwright.work.heattreat.TreatedMetal;
import org.heatwright.work.heattreat.Treatment;

/** What a heat treatment does, by the piece's own curve: time in the window, heat, hardness. */
final class HeatTreatJudge implements PieceJudge {

  /** A piece hotter than this under its solidus is too near to it, K. Our estimate. */
  private static final double NEAR_MELTING_KELVINS = 15;

  /** Beyond this many times what practice names, grains have grown. Our estimate. */
  private static final double FAR_TOO_LONG = 3;

  private static final Origin CURVE =
      Origin.derived("the piece's own curve, followed through its thickness");

  private final HeatTreatWork work;
  private final HeatTreatHeat heat;
  private final TemperatureRange window;
  private final Temperature room;
  private final TemperatureUnit unit;

  /**
   * @param window what the piece must be in
   * @param room what the pieces cool in
   */
  HeatTreatJudge(
      HeatTreatWork work,
      HeatTreatHeat heat,
      TemperatureRange window,
      Temperature room,
      TemperatureUnit unit) {
    this.work = work;
    this.heat = heat;
    this.window = window;
    this.room = room;
    this.unit = unit;
  }

  @Override
  public List<Outcome> outcomes(Schedule schedule, List<PieceForecast> pieces) {
    List<Outcome> outcomes = new ArrayList<>();
    for (PieceForecast piece : pieces) {
      Band minutes = minutes(piece);
      Band hottest = piece.hottestCelsius();
      outcomes.add(work.isAgeing() ? ageing(piece) : atTemperature(minutes));
      outcomes.add(hottest(hottest));
      hardness(piece, hottest).ifPresent(outcomes::add);
      toWater(piece).ifPresent(outcomes::add);
    }
    return outcomes;
  }

  /** Minutes of the judged place in the window until the program ends. */
  private Band minutes(PieceForecast piece) {
    double depth = piece.piece().judged().depthMetres();
    return piece.band(
        draw -> draw.secondsWithin(depth, window.from().celsius(), window.to().celsius()) / 60);
  }

  private Outcome atTemperature(Band minutes) {
    double wanted = heat.soak().toMinutes();
    String value =
        "%s in %s to %s"
            .formatted(
                span(minutes),
                Wording.number(unit.value(window.from())),
                Wording.of(window.to(), unit));
    String what = "the piece at temperature";
    Origin origin = heat.windowOrigin();
    if (minutes.median() < wanted) {
      return Outcome.of(
          "time-at-temperature",
          what,
          value,
          "Less than the %s wanted: %s. Hold longer, or aim at the middle of the window."
              .formatted(HourMinute.words(heat.soak()), heat.below()),
          Severity.WARN,
          origin);
    }
    boolean tooLong =
        work.treatment() == Treatment.ANNEAL
            && heat.most()
                .filter(most -> minutes.median() > FAR_TOO_LONG * most.toMinutes())
                .isPresent();
    return tooLong
        ? Outcome.of(
            "too-long",
            what,
            value,
            "Far longer than practice's %s: grains grow. Shorten the hold."
                .formatted(HourMinute.words(heat.most().orElse(Duration.ZERO))),
            Severity.WARN,
            origin)
        : Outcome.of(
            "time-at-temperature",
            what,
            value,
            minutes.low() < wanted
                ? "Likely the %s wanted; one time in twenty %.0f min or less, because the display may be off: a trusted couple beside the piece tells."
                    .formatted(HourMinute.words(heat.soak()), Math.floor(minutes.low()))
                : "The %s wanted, and the time to take pieces out."
                    .formatted(HourMinute.words(heat.soak())),
            origin);
  }

  private Outcome hottest(Band hottest) {
    Solidus solidus = HeatTreatRules.solidus(work);
    double margin = solidus.temperature().celsius() - hottest.high();
    String value = "%s to %s".formatted(number(hottest.low()), degrees(hottest.high()));
    String what = "hottest in the piece";
    if (margin < NEAR_MELTING_KELVINS) {
      return Outcome.of(
          "hottest",
          what,
          value,
          margin <= 0
              ? "It may melt: %s begins at %s. Lower the target."
                  .formatted(work.metal().words(), Wording.of(solidus.temperature(), unit))
              : "Within %s of melting (%s): lower the target, or check the display against a trusted couple."
                  .formatted(
                      Wording.differenceUp(margin, unit), Wording.of(solidus.temperature(), unit)),
          margin <= 0 ? Severity.STOP : Severity.WARN,
          solidus.origin());
    }
    if (hottest.high() > window.to().celsius()) {
      boolean likely = hottest.median() > window.to().celsius();
      return Outcome.of(
          "hottest",
          what,
          value,
          "%s beyond %s: %s. Aim lower, or lay it on a heavy block."
              .formatted(likely ? "Likely" : "Maybe", Wording.of(window.to(), unit), heat.beyond()),
          likely ? Severity.WARN : Severity.NOTE,
          heat.windowOrigin());
    }
    return Outcome.of(
        "hottest",
        what,
        value,
        "%s under where %s begins to melt, and within its window."
            .formatted(Wording.differenceDown(margin, unit), work.metal().words()),
        CURVE);
  }

  private Optional<Outcome> hardness(PieceForecast piece, Band hottest) {
    if (work.metal() != TreatedMetal.STERLING_925) {
      return Optional.empty();
    }
    if (work.treatment() == Treatment.ANNEAL) {
      return Optional.of(
          Outcome.of(
              "hardness",
              "hardness when it is done",
              range(SterlingHardness.BEFORE),
              "Soft, if it has had its time. What narrows it: %s."
                  .formatted(SterlingHardness.NARROWED_BY),
              SterlingHardness.ORIGIN));
    }
    if (!work.isAgeing() && !work.isSolution()) {
      return Optional.empty();
    }
    Hardness expected =
        work.isSolution() ? afterSolution(piece) : afterAgeing(piece, hottest.high());
    boolean missed =
        work.own().wantedHardness().isPresent()
            && work.own().wantedHardness().getAsDouble() > expected.low();
    String meaning =
        "%s from 60 to 70 HV; few sources, and they disagree. What narrows it: %s."
            .formatted(
                work.isSolution() ? "After an hour at 300 °C too," : "Up",
                SterlingHardness.NARROWED_BY);
    return Optional.of(
        missed
            ? Outcome.of(
                "hardness",
                "hardness when it is done",
                range(expected),
                "The %.0f HV wanted may be missed. %s"
                    .formatted(work.own().wantedHardness().getAsDouble(), meaning),
                Severity.WARN,
                SterlingHardness.ORIGIN)
            : Outcome.of(
                "hardness",
                "hardness when it is done",
                range(expected),
                meaning,
                SterlingHardness.ORIGIN));
  }

  /** With an hour at 300 °C to come. */
  private static Hardness afterSolution(PieceForecast piece) {
    Band end = piece.atEndCelsius();
    return SterlingHardness.expected(
        end.low(), end.high(), 60, 60, SterlingHardness.AGES_AT_CELSIUS);
  }

  /** Ageing is a matter of time and temperature together: what it is worth at the plan. */
  private Outcome ageing(PieceForecast piece) {
    Band worth = worthMinutes(piece, heat.plan());
    String what = "ageing of the piece";
    String value = "worth %s at %s".formatted(span(worth), Wording.of(heat.plan(), unit));
    String counted = "Counted with activation energies of 100 to 190 kJ/mol, our bracket.";
    return worth.median() < heat.soak().toMinutes()
        ? Outcome.of(
            "time-at-temperature",
            what,
            value,
            "Less than the %s wanted: %s. Hold longer. %s"
                .formatted(HourMinute.words(heat.soak()), heat.below(), counted),
            Severity.WARN,
            heat.soakOrigin())
        : Outcome.of(
            "time-at-temperature",
            what,
            value,
            "%s wanted; more is less harm than hotter, but no source of ours tells how long it stays hard. %s"
                .formatted(HourMinute.words(heat.soak()), counted),
            heat.soakOrigin());
  }

  /** Minutes at one temperature that do the same, over draws and activation energies. */
  private static Band worthMinutes(PieceForecast piece, Temperature at) {
    double depth = piece.piece().judged().depthMetres();
    Band low = worth(piece, at, depth, SterlingHardness.LOW_JOULES_PER_MOLE);
    Band high = worth(piece, at, depth, SterlingHardness.HIGH_JOULES_PER_MOLE);
    return new Band(
        Math.min(low.low(), high.low()),
        (low.median() + high.median()) / 2,
        Math.max(low.high(), high.high()));
  }

  private static Band worth(PieceForecast piece, Temperature at, double depth, double energy) {
    HeatWork counted = HeatWork.of(energy, at);
    return piece.band(draw -> draw.heatWorkSeconds(counted, depth) / 60);
  }

  private Hardness afterAgeing(PieceForecast piece, double hottestCelsius) {
    Band minutes = worthMinutes(piece, Temperature.ofCelsius(SterlingHardness.AGES_AT_CELSIUS));
    double[] solution = HeatTreatCautions.solutionCelsius(work);
    return SterlingHardness.expected(
        solution[0], solution[1], minutes.low(), minutes.high(), hottestCelsius);
  }

  /** How long it may be in the air before it is under its gate. */
  private Optional<Outcome> toWater(PieceForecast piece) {
    if (heat.after().medium() != Medium.WATER || heat.after().above().isEmpty()) {
      return Optional.empty();
    }
    Temperature gate = heat.after().above().get();
    double[] seconds =
        HeatTreatRules.secondsInAir(
            work, Temperature.ofCelsius(piece.atEndCelsius().median()), gate, room);
    String value =
        "%s to %s above %s"
            .formatted(
                HeatTreatCautions.seconds(seconds[0]),
                HeatTreatCautions.seconds(seconds[1]),
                Wording.of(gate, unit));
    boolean quick = seconds[0] < HeatTreatCautions.QUICKEST_HAND_SECONDS;
    String meaning =
        "From the kiln until it must be in water: the shorter for the thinnest part, scaled and moved; the longer for the thickest, clean and still.%s"
            .formatted(
                quick
                    ? " Quicker than a hand: carry it on its hot tray, the water beside the door."
                    : "");
    Origin origin = Origin.derived("radiation and moved air from both faces");
    return Optional.of(
        quick
            ? Outcome.of("to-water", "time to the water", value, meaning, Severity.WARN, origin)
            : Outcome.of("to-water", "time to the water", value, meaning, origin));
  }

  private String number(double celsius) {
    return Wording.number(Math.rint(unit.value(Temperature.ofCelsius(celsius))));
  }

  private String degrees(double celsius) {
    return number(celsius) + " " + unit.symbol();
  }

  private static String range(Hardness hardness) {
    return "%.0f to %.0f HV".formatted(hardness.low(), hardness.high());
  }

  /** "38 to 46 min", rounded down. */
  private static String span(Band minutes) {
    long low = (long) Math.floor(minutes.low());
    long high = (long) Math.floor(minutes.high());
    return low == high ? low + " min" : "%d to %d min".formatted(low, high);
  }
}
