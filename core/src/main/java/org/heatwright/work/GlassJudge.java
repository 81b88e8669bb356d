package org.heatwright.work;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.PieceForecast;
import org.heatwright.forecast.SegmentForecast;
import org.heatwright.inspect.Severity;
import org.heatwright.inspect.Wording;
import org.heatwright.material.Origin;
import org.heatwright.material.Viscosity;
import org.heatwright.piece.SlabHistory;
import org.heatwright.schedule.HourMinute;
import org.heatwright.schedule.Schedule;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.glass.Annealing;
import org.heatwright.work.glass.Flow;
import org.heatwright.work.glass.Glass.Viscosities;
import org.heatwright.work.glass.GlassProcess;
import org.heatwright.work.glass.PlateStress;
import org.heatwright.work.glass.PlateStress.HeldOrFree;

/**
 * What a firing does to the glass, by the glass's own curve: how far it flows, how it anneals, what
 * stress comes and stays, when it may be opened.
 *
 * @param work what is fired
 * @param limits what the composer keeps to
 * @param coast how long glass that is too hot at the program's end is left shut in
 */
record GlassJudge(GlassWork work, Limits limits, Coast coast) implements PieceJudge {

  /** How the shut kiln cools with the glass in it, worked out when it is asked for. */
  interface Coast {
    /**
     * @return for some likely kilns what the display shows from well above on until it is cool
     *     enough to open, one reading every {@link #STEP_SECONDS}, °C
     */
    List<double[]> readings();

    double STEP_SECONDS = 600;
  }

  /**
   * Temperatures and times that the composer plans by.
   *
   * @param firm never hotter
   * @param soak the anneal soak
   * @param soakTime how long
   * @param slowEnd where the slow range ends
   * @param openAt cool enough to open
   * @param devitrifyFrom where a dull skin grows
   * @param devitrifyTo up to there
   */
  record Limits(
      Temperature firm,
      Temperature soak,
      Duration soakTime,
      Temperature slowEnd,
      Temperature openAt,
      Temperature devitrifyFrom,
      Temperature devitrifyTo) {}

  private static final double MEGA = 1e6;

  /** Glass that is held at the slow range's end stays within so much of it, K. Our estimate. */
  private static final double HELD_WITHIN_KELVINS = 5;

  /** Walls are warmer than the display at the end, and the glass with them, K. Our estimate. */
  private static final double AT_THE_DOOR_KELVINS = 30;

  /**
   * More tension than this is seen at once between polarisers and shortens a life. Estimate, Pa.
   */
  private static final double DOUBTFUL_PASCALS = 1e6;

  private static final double BAD_PASCALS = 4e6;

  /** A form is reached, by practice, after several times what a free plate needs. Estimate. */
  private static final double FORM_SURE_FACTOR = 4;

  private static final double FORM_TOO_FAR_FACTOR = 150;

  private static final Origin PLATE =
      Origin.derived("a flat plate that flows and stiffens, through its own curve");

  @Override
  public List<Outcome> outcomes(Schedule schedule, List<PieceForecast> pieces) {
    if (pieces.size() != 1) {
      return List.of();
    }
    PieceForecast piece = pieces.get(0);
    TemperatureUnit unit = schedule.unit();
    List<Outcome> outcomes = new ArrayList<>();
    outcomes.add(hottest(piece, unit));
    flow(piece).ifPresent(outcomes::add);
    Stresses stresses = Stresses.of(work, piece);
    outcomes.add(heating(stresses));
    outcomes.add(soak(piece, unit));
    outcomes.add(spread(piece, unit));
    outcomes.add(left(piece, stresses, unit));
    devitrified(piece, unit).ifPresent(outcomes::add);
    outcomes.add(opening(piece, unit));
    return outcomes;
  }

  // ---- heat

  private Outcome hottest(PieceForecast piece, TemperatureUnit unit) {
    Band band = piece.band(SlabHistory::hottestCelsius);
    String value = degrees(band, unit);
    if (band.high() > limits.firm().celsius() + 0.5) {
      return Outcome.of(
          "hottest",
          "the hottest the glass gets",
          value,
          "Above %s it blisters and eats into its shelf, or its maker no longer stands behind it. Lower the top."
              .formatted(Wording.of(limits.firm(), unit)),
          band.median() > limits.firm().celsius() ? Severity.STOP : Severity.WARN,
          PLATE);
    }
    return Outcome.of(
        "hottest",
        "the hottest the glass gets",
        value,
        "In the glass, which lags the kiln by what its own curve shows.",
        PLATE);
  }

  private Optional<Outcome> flow(PieceForecast piece) {
    if (work.process() == GlassProcess.SLUMP) {
      return work.form().map(form -> slump(piece, form));
    }
    double[] flow = doses(piece);
    for (int i = 0; i < flow.length; i++) {
      flow[i] = Flow.fused(flow[i], work.sheetMetres());
    }
    String value = span(process(flow[0]), process(flow[2]));
    Origin origin =
        Origin.estimate(
            "surface tension, sheet and time over viscosity, set by practice's temperatures");
    String test =
        " Two strips on one another, fired along, show where in this range your glass is.";
    if (!work.process().hasTop()) {
      boolean flows = flow[2] > GlassProcess.SHARP_TACK.leastFlow();
      return Optional.of(
          flows
              ? Outcome.of(
                  "flow",
                  "what becomes of its shape",
                  value,
                  "It may get soft enough to stick to what it lies on." + test,
                  Severity.WARN,
                  origin)
              : Outcome.of(
                  "flow", "what becomes of its shape", "nothing", "It keeps its edges.", origin));
    }
    GlassProcess asked = work.process();
    boolean enough = flow[1] >= 0.8 * asked.leastFlow();
    boolean tooFar = flow[1] > 1.25 * asked.mostFlow();
    String meaning =
        enough && !tooFar
            ? "Asked for: a %s; most likely %s.".formatted(asked.words(), process(flow[1]))
            : enough
                ? "Asked for: a %s; most likely it goes further, to %s. Hold shorter or lower the top."
                    .formatted(asked.words(), process(flow[1]))
                : "Asked for: a %s; most likely it comes only to %s. Hold longer or raise the top."
                    .formatted(asked.words(), process(flow[1]));
    return Optional.of(
        enough && !tooFar
            ? Outcome.of("flow", "what the sheets become", value, meaning + test, origin)
            : Outcome.of(
                "flow", "what the sheets become", value, meaning + test, Severity.WARN, origin));
  }

  private Outcome slump(PieceForecast piece, GlassWork.Form form) {
    double needed =
        Flow.sagDosePerPascal(form.depthMetres(), work.wholeMetres(), form.spanMetres());
    double[] flow = doses(piece);
    String value =
        "%s to %s times what it needs"
            .formatted(factor(flow[0] / needed), factor(flow[2] / needed));
    double likely = flow[1] / needed;
    Origin origin =
        Origin.derived("a round plate sinking under its weight, time over viscosity in the glass");
    String test = " A strip of the same glass over the same span, fired along, narrows this.";
    if (likely < 1) {
      return Outcome.of(
          "slump",
          "sinking into the form",
          value,
          "Even a free plate would not reach the bottom: hold longer or raise the top." + test,
          Severity.WARN,
          origin);
    }
    if (likely > FORM_TOO_FAR_FACTOR) {
      return Outcome.of(
          "slump",
          "sinking into the form",
          value,
          "It goes on to thin, to take the form's marks and to creep down its rim: hold shorter or lower the top."
              + test,
          Severity.WARN,
          origin);
    }
    return Outcome.of(
        "slump",
        "sinking into the form",
        value,
        (likely < FORM_SURE_FACTOR
                ? "It sinks, but the last touch of the form may want longer: look at the end of the hold."
                : "It reaches the form; the last touch takes several times what a free plate needs.")
            + test,
        origin);
  }

  /** Doses: stiff glass in the coolest draw, the usual one, soft glass in the hottest. */
  private double[] doses(PieceForecast piece) {
    Viscosities glass = work.glass().viscosities();
    double depth = piece.piece().judged().depthMetres();
    return new double[] {
      piece.band(draw -> dose(glass.stiff(), draw, depth)).low(),
      piece.band(draw -> dose(glass.usual(), draw, depth)).median(),
      piece.band(draw -> dose(glass.soft(), draw, depth)).high()
    };
  }

  private static double dose(Viscosity viscosity, SlabHistory draw, double depth) {
    return viscosity.flowPerPascal(draw.seconds(), draw.celsiusOf(depth));
  }

  private static String process(double flow) {
    if (flow < GlassProcess.SHARP_TACK.leastFlow()) {
      return "loose sheets";
    }
    for (GlassProcess process :
        List.of(
            GlassProcess.SHARP_TACK,
            GlassProcess.TACK,
            GlassProcess.CONTOUR,
            GlassProcess.FULL_FUSE)) {
      if (flow < process.mostFlow()) {
        return process.words();
      }
    }
    return "further than a full fuse";
  }

  private Optional<Outcome> devitrified(PieceForecast piece, TemperatureUnit unit) {
    if (!work.process().hasTop()) {
      return Optional.empty();
    }
    Band band =
        piece.band(
            draw ->
                draw.secondsWithin(
                    0, limits.devitrifyFrom().celsius(), limits.devitrifyTo().celsius()));
    String value = minutes(band);
    String what =
        "time between %s and %s"
            .formatted(
                Wording.of(limits.devitrifyFrom(), unit), Wording.of(limits.devitrifyTo(), unit));
    return Optional.of(
        band.high() > GlassRules.DEVITRIFIED.toSeconds()
            ? Outcome.of(
                "devitrification",
                what,
                value,
                "After about an hour there a dull skin shows on many glasses; your own test piece tells.",
                Severity.WARN,
                GlassRules.BLOG)
            : Outcome.of(
                "devitrification",
                what,
                value,
                "Under the hour after which a dull skin shows.",
                GlassRules.BLOG));
  }

  // ---- stress

  private Outcome heating(Stresses stresses) {
    double high = stresses.heldPascals(PlateStress::heatingTensionPascals);
    double low = stresses.freePascals(PlateStress::heatingTensionPascals);
    double share = high / Annealing.DESIGN_PASCALS;
    String value = megapascals(low, high);
    String meaning =
        "Design stress of annealed float is 19 MPa: %s of it. Kilns heat unevenly from side to side as well, which this does not see."
            .formatted(percent(share));
    if (share > 1) {
      return Outcome.of(
          "heating-tension",
          "tension in the glass while it heats",
          value,
          meaning + " It is likely to crack: rise slower.",
          Severity.STOP,
          PLATE);
    }
    return share > 2 * Annealing.SHARE_OF_DESIGN
        ? Outcome.of(
            "heating-tension",
            "tension in the glass while it heats",
            value,
            meaning + " Rise slower.",
            Severity.WARN,
            PLATE)
        : Outcome.of(
            "heating-tension", "tension in the glass while it heats", value, meaning, PLATE);
  }

  private Outcome soak(PieceForecast piece, TemperatureUnit unit) {
    double least = limits.soak().celsius() - GlassRules.SOAK_BELOW_KELVINS;
    double most = limits.soak().celsius() + GlassRules.SOAK_ABOVE_KELVINS;
    double depth = piece.piece().judged().depthMetres();
    Band band = piece.band(draw -> secondsAfterTop(draw, depth, least, most));
    boolean enough = band.low() >= 0.85 * limits.soakTime().toSeconds();
    String meaning =
        "Wanted: %s near %s, counted in the glass, not in the kiln."
            .formatted(HourMinute.words(limits.soakTime()), Wording.of(limits.soak(), unit));
    Origin origin = Origin.derived("the glass's own curve; the length is practice's");
    return enough
        ? Outcome.of("anneal-soak", "anneal soak in the glass", minutes(band), meaning, origin)
        : Outcome.of(
            "anneal-soak",
            "anneal soak in the glass",
            minutes(band),
            meaning + " Hold longer.",
            Severity.WARN,
            origin);
  }

  private Outcome spread(PieceForecast piece, TemperatureUnit unit) {
    double depth = piece.piece().judged().depthMetres();
    Band band = piece.band(draw -> spreadKelvins(draw, depth));
    String value = kelvins(band, unit);
    String meaning =
        "From its slowest place to its face, between %s and %s; a published schedule wants %s at most."
            .formatted(
                Wording.of(limits.soak(), unit),
                Wording.of(limits.slowEnd(), unit),
                difference(GlassRules.SPREAD_KELVINS, unit));
    Origin origin = Origin.read("a practitioner's published schedule, at most 5 °C");
    return band.high() > GlassRules.SPREAD_KELVINS
        ? Outcome.of(
            "slow-range-difference",
            "unevenness while it sets",
            value,
            meaning + " Cool slower.",
            Severity.WARN,
            origin)
        : Outcome.of("slow-range-difference", "unevenness while it sets", value, meaning, origin);
  }

  private Outcome left(PieceForecast piece, Stresses stresses, TemperatureUnit unit) {
    String what = "tension that stays in the glass";
    boolean hot =
        piece.band(draw -> draw.meanCelsiusAt(draw.endSecond())).high()
            > limits.slowEnd().celsius() - 30;
    if (hot) {
      return Outcome.of(
          "left-stress",
          what,
          "not told",
          "The curve ends while the glass is above %s; how it cools from there decides."
              .formatted(Wording.of(limits.slowEnd(), unit)),
          Severity.WARN,
          PLATE);
    }
    double high = stresses.heldPascals(PlateStress::endTensionPascals);
    double low = stresses.freePascals(PlateStress::endTensionPascals);
    double wanted = work.tensionPascals().orElse(Annealing.USUAL_TENSION_PASCALS);
    String test =
        " Crossed polarisers narrow this: a sound piece stays dark, bright corners mean stress.";
    String meaning =
        "Free to bow, to held flat, at its thickest place; wanted at most %s MPa."
            .formatted(Wording.number(wanted / MEGA));
    Optional<Severity> severity =
        high > BAD_PASCALS
            ? Optional.of(Severity.STOP)
            : high > Math.max(DOUBTFUL_PASCALS, 2 * wanted)
                ? Optional.of(Severity.WARN)
                : Optional.empty();
    return new Outcome(
        "left-stress",
        what,
        megapascals(low, high),
        severity.isPresent()
            ? meaning + " Cool slower through the slow range." + test
            : meaning + test,
        severity,
        PLATE);
  }

  /** The plate of every draw, held flat and free to bow. */
  private record Stresses(List<HeldOrFree> draws) {

    static Stresses of(GlassWork work, PieceForecast piece) {
      Viscosity viscosity = work.glass().viscosities().usual();
      return new Stresses(
          piece.draws().parallelStream()
              .map(
                  draw ->
                      PlateStress.follow(
                          work.glass().elastic(),
                          viscosity,
                          piece.piece().slab().thicknessMetres(),
                          draw::celsiusAt,
                          draw.endSecond()))
              .toList());
    }

    double heldPascals(ToDoubleFunction<PlateStress> value) {
      return band(draw -> value.applyAsDouble(draw.held())).high();
    }

    double freePascals(ToDoubleFunction<PlateStress> value) {
      return band(draw -> value.applyAsDouble(draw.free())).low();
    }

    private Band band(ToDoubleFunction<HeldOrFree> value) {
      return Band.of(draws.stream().mapToDouble(value).toArray());
    }
  }

  /**
   * Glass that is too hot when the program ends is ready when the shut kiln has cooled it, as long
   * as the likely kilns take for that. Never where in most cases the program does not end.
   */
  @Override
  public Optional<Band> ready(Forecast forecast, Optional<Band> reached) {
    if (!SegmentForecast.hasMedian(forecast.endsShare())) {
      return Optional.empty();
    }
    Band ends = forecast.endSeconds();
    double last = ends.median();
    double[] celsius = {forecast.trace().displayCelsiusAt(last).median()};
    double[] seconds = {last};
    if (forecast.pieces().size() == 1) {
      PieceForecast piece = forecast.pieces().get(0);
      celsius = endCelsius(piece);
      seconds = new double[celsius.length];
      for (int d = 0; d < seconds.length; d++) {
        seconds[d] = endSecond(piece, d);
      }
    }
    if (!tooHot(Band.of(celsius))) {
      return reached;
    }
    List<double[]> kilns = coast.readings();
    double[] ready = new double[celsius.length * kilns.size()];
    for (int i = 0; i < ready.length; i++) {
      int d = i / kilns.size();
      ready[i] = seconds[d] + fallSeconds(kilns.get(i % kilns.size()), celsius[d]);
    }
    return Band.ofFinite(ready);
  }

  private boolean tooHot(Band endCelsius) {
    return endCelsius.high() > limits.openAt().celsius() + AT_THE_DOOR_KELVINS;
  }

  /** How long a kiln takes from a temperature until it may be opened, s; infinite: longer. */
  private double fallSeconds(double[] readings, double celsius) {
    return Math.max(0, secondAt(readings, limits.openAt().celsius()) - secondAt(readings, celsius));
  }

  /** When falling readings first show no more than this, s. */
  private static double secondAt(double[] readings, double celsius) {
    int i = 0;
    while (i < readings.length && readings[i] > celsius) {
      i++;
    }
    if (i == readings.length) {
      return Double.POSITIVE_INFINITY;
    }
    return i == 0
        ? 0
        : (i - (celsius - readings[i]) / (readings[i - 1] - readings[i])) * Coast.STEP_SECONDS;
  }

  private static double endSecond(PieceForecast piece, int draw) {
    return Math.min(piece.draws().get(draw).endSecond(), piece.days().get(draw).endSeconds());
  }

  /** The hotter face of every draw when the program ends, °C. */
  private static double[] endCelsius(PieceForecast piece) {
    double thick = piece.piece().slab().thicknessMetres();
    double[] ends = new double[piece.draws().size()];
    for (int d = 0; d < ends.length; d++) {
      SlabHistory draw = piece.draws().get(d);
      double end = endSecond(piece, d);
      ends[d] = Math.max(draw.celsiusAt(0, end), draw.celsiusAt(thick, end));
    }
    return ends;
  }

  private Outcome opening(PieceForecast piece, TemperatureUnit unit) {
    Band band = Band.of(endCelsius(piece));
    String what = "the glass when the program ends";
    Origin origin = Origin.read("a glass workshop's page: thick pieces under 40 to 50 °C");
    return tooHot(band)
        ? Outcome.of(
            "opening",
            what,
            degrees(band, unit),
            "Too hot to open: leave the kiln shut until the glass is under %s."
                .formatted(Wording.of(limits.openAt(), unit)),
            Severity.WARN,
            origin)
        : Outcome.of(
            "opening",
            what,
            degrees(band, unit),
            "Lift the lid or door a crack, and take the glass out under %s; thick and uneven pieces are safer colder, up to a day."
                .formatted(Wording.of(limits.openAt(), unit)),
            origin);
  }

  // ---- reading a curve

  private static int hottestStep(double[] curve) {
    int hottest = 0;
    for (int i = 1; i < curve.length; i++) {
      if (curve[i] >= curve[hottest]) {
        hottest = i;
      }
    }
    return hottest;
  }

  /** Time between two temperatures from the hottest moment on; an anneal alone has no other top. */
  private double secondsAfterTop(SlabHistory draw, double depth, double low, double high) {
    if (!work.process().hasTop()) {
      return draw.secondsWithin(depth, low, high);
    }
    double[] seconds = draw.seconds();
    double[] curve = draw.celsiusOf(depth);
    double sum = 0;
    for (int i = hottestStep(curve); i + 1 < curve.length; i++) {
      double a = curve[i];
      double b = curve[i + 1];
      double from = Math.max(low, Math.min(a, b));
      double to = Math.min(high, Math.max(a, b));
      double share =
          a == b ? (a >= low && a <= high ? 1 : 0) : Math.max(0, to - from) / Math.abs(a - b);
      sum += share * (seconds[i + 1] - seconds[i]);
    }
    return sum;
  }

  private double spreadKelvins(SlabHistory draw, double depth) {
    double[] face = draw.celsiusOf(0);
    double[] inside = draw.celsiusOf(depth);
    double[] seconds = draw.seconds();
    double most = 0;
    int from = hottestStep(inside);
    // Until the soak is over the difference of the way down is still going.
    double soaked = seconds[from];
    double until = secondLeft(seconds, inside, from, limits.soak().celsius() - 3);
    for (int i = from; i < face.length; i++) {
      boolean slow =
          inside[i] <= limits.soak().celsius() - 2
              && inside[i] >= limits.slowEnd().celsius() + HELD_WITHIN_KELVINS;
      if (slow && seconds[i] >= Math.max(soaked, until)) {
        most = Math.max(most, Math.abs(inside[i] - face[i]));
      }
    }
    return most;
  }

  /** When a curve leaves a temperature for good, s. */
  private static double secondLeft(double[] seconds, double[] curve, int from, double celsius) {
    double last = seconds[from];
    for (int i = from; i < curve.length; i++) {
      if (curve[i] > celsius) {
        last = seconds[i];
      }
    }
    return last;
  }

  // ---- words

  private static String degrees(Band band, TemperatureUnit unit) {
    return span(
        whole(band.low(), unit), whole(band.high(), unit) + " " + unit.symbol(), unit.symbol());
  }

  private static String whole(double celsius, TemperatureUnit unit) {
    return "%.0f".formatted(unit.value(Temperature.ofCelsius(celsius)));
  }

  /** "790 to 805 °C", and "800 °C" where both are the same. */
  private static String span(String from, String to, String unit) {
    return to.equals(from + " " + unit) ? to : from + " to " + to;
  }

  private static String span(String from, String to) {
    return from.equals(to) ? from : from + " to " + to;
  }

  private static String kelvins(Band band, TemperatureUnit unit) {
    return span(
        tenths(unit.value(TemperatureChange.ofKelvins(band.low()))),
        difference(band.high(), unit),
        unit.differenceSymbol());
  }

  private static String difference(double kelvins, TemperatureUnit unit) {
    return "%s %s"
        .formatted(
            tenths(unit.value(TemperatureChange.ofKelvins(kelvins))), unit.differenceSymbol());
  }

  private static String megapascals(double low, double high) {
    return span(hundredths(low / MEGA), hundredths(high / MEGA)) + " MPa";
  }

  private static String tenths(double value) {
    return Wording.number(Math.rint(value * 10) / 10);
  }

  private static String hundredths(double value) {
    return Wording.number(Math.abs(value) < 1 ? Math.rint(value * 100) / 100 : value);
  }

  private static String percent(double share) {
    return share < 0.01 ? "under 1 %" : Math.round(share * 100) + " %";
  }

  private static String factor(double value) {
    return value >= 10
        ? String.valueOf(Math.round(value))
        : Wording.number(Math.rint(value * 10) / 10);
  }

  private static String minutes(Band band) {
    return span(HourMinute.words(whole(band.low())), HourMinute.words(whole(band.high())));
  }

  private static Duration whole(double seconds) {
    return Duration.ofMinutes(Math.round(seconds / 60));
  }
}
