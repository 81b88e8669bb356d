package org.heatwright.work;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.heatwright.forecast.PieceForecast;
import org.heatwright.inspect.Severity;
import org.heatwright.inspect.Wording;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.KilnQuantity;
import org.heatwright.material.Origin;
import org.heatwright.schedule.Schedule;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.enamel.EnamelFit;
import org.heatwright.work.enamel.FusingClass;
import org.heatwright.work.enamel.PullWindow;
import org.heatwright.work.enamel.Range;

/**
 * Tells what a session does to its pieces. They go in and out of the hot kiln, so none stands in it
 * from the start: the judge follows them itself.
 *
 * @param work the session
 * @param kiln where
 * @param model what the kiln does after its door
 * @param known an outlook that was worked out already: the composed one, or that of the schedule it
 *     is {@link #settledFor settled for}
 */
public record EnamelJudge(EnamelWork work, Kiln kiln, EnamelDoor.Model model, EnamelOutlook known)
    implements PieceJudge {

  private static final Origin FLOW =
      Origin.estimate(
          "flow of the glass, integral of dt over viscosity; class of enamel and flow for gloss are"
              + " estimates to a factor of three");
  private static final Origin ELASTIC =
      Origin.memory(
          "Timoshenko, Analysis of Bi-Metal Thermostats, 1925, as plates; limits of cracks and chips"
              + " are estimates");

  /** A quantity of which more of the first ignorance is left than this was taught nothing. */
  private static final double UNTAUGHT = 0.8;

  /** Nearer to the solidus than this we warn, K: display error and hot spots. Estimate. */
  static final double SOLIDUS_WARN_KELVINS = 15;

  /**
   * The outlook for the last target of a schedule: the heat that the pieces go into. Where it is
   * not the known one, the kiln's door is simulated again.
   */
  public EnamelOutlook outlook(Schedule schedule) {
    Temperature last = schedule.segments().get(schedule.segments().size() - 1).target();
    return last.equals(known.working()) ? known : EnamelOutlook.of(work, kiln, model, last);
  }

  @Override
  public EnamelJudge settledFor(Schedule schedule) {
    return new EnamelJudge(work, kiln, model, outlook(schedule));
  }

  @Override
  public List<Outcome> outcomes(Schedule schedule, List<PieceForecast> pieces) {
    EnamelOutlook outlook = outlook(schedule);
    TemperatureUnit unit = schedule.unit();
    List<Outcome> outcomes = new ArrayList<>();
    outcomes.add(window(outlook));
    outcomes.add(heat(outlook, unit));
    solidus(outlook, unit).ifPresent(outcomes::add);
    EnamelFit fit = EnamelOutlook.fit(work);
    outcomes.add(fit(fit));
    outcomes.add(bow(fit));
    outcomes.add(recovery(outlook, unit));
    outcomes.add(session(outlook));
    outcomes.add(tiles(outlook));
    coats(unit, outlook).ifPresent(outcomes::add);
    outcomes.add(cooling(unit));
    return outcomes;
  }

  // ---- when to take it out

  private Outcome window(EnamelOutlook outlook) {
    PullWindow window = outlook.window();
    if (!window.glosses()) {
      return Outcome.of(
          "pull-window",
          "time in the kiln",
          "not glossy within %s".formatted(seconds(window.followedSeconds())),
          "At this heat a %s enamel on this metal is more likely not to gloss than to gloss: fire a test tile, or go hotter where the metal allows it."
              .formatted(work.hardness().words()),
          Severity.WARN,
          FLOW);
    }
    String until =
        Double.isFinite(window.latestSeconds())
            ? seconds(window.latestSeconds())
            : "more than " + seconds(window.followedSeconds());
    String over =
        Double.isFinite(window.overFiredSeconds())
            ? " One in ten would be over-fired after %s."
                .formatted(seconds(window.overFiredSeconds()))
            : "";
    String meaning =
        "Seconds from the door's shutting. Look from %s on, then every 10 to 15 s: sugary before %s, then orange peel, then glossy.%s%s"
            .formatted(
                seconds(window.earliestSeconds()),
                seconds(window.fusedSeconds()),
                over,
                window.tooWide() ? " That is no window to trust without a test tile." : "");
    String value = "%s to %s".formatted(seconds(window.earliestSeconds()), until);
    return window.tooWide()
        ? Outcome.of("pull-window", "time in the kiln", value, meaning, Severity.NOTE, FLOW)
        : Outcome.of("pull-window", "time in the kiln", value, meaning, FLOW);
  }

  private Outcome heat(EnamelOutlook outlook, TemperatureUnit unit) {
    Range near = outlook.nearSeconds();
    String when =
        Double.isFinite(near.high())
            ? "It is within %s of the chamber after %s to %s, as the chamber itself comes back."
                .formatted(
                    kelvins(EnamelOutlook.NEAR_KELVINS, unit),
                    seconds(near.low()),
                    seconds(near.high()))
            : "It may not come within %s of the chamber while it is followed."
                .formatted(kelvins(EnamelOutlook.NEAR_KELVINS, unit));
    Range hot = outlook.window().hottestCelsius();
    return Outcome.of(
        "piece-heat",
        "the piece when it comes out",
        degrees(hot, unit),
        when,
        Origin.derived("thin plate with radiation and convection in the chamber after its door"));
  }

  private Optional<Outcome> solidus(EnamelOutlook outlook, TemperatureUnit unit) {
    double solidus =
        work.build()
            .solidus()
            .map(Temperature::celsius)
            .orElse(work.metal().physical().solidusCelsius());
    double left = solidus - outlook.hottestCelsius().high();
    if (left > 120) {
      return Optional.empty();
    }
    String value =
        "%s %s it".formatted(kelvins(Math.abs(left), unit), left < 0 ? "above" : "below");
    String meaning =
        "A piece that is forgotten comes to %s at most; %s begins to melt at %s. %s"
            .formatted(
                words(outlook.hottestCelsius().high(), unit),
                work.metal().words(),
                words(solidus, unit),
                left < SOLIDUS_WARN_KELVINS
                    ? "That is nearer than a display is right: check the kiln with a silver wire or a reference first, and stay with the piece."
                    : "The display may be out by more than it seems: ask the supplier for the solidus.");
    Origin origin =
        work.build().solidus().isPresent()
            ? Origin.own("supplier's solidus")
            : work.metal().physical().solidusOrigin();
    return Optional.of(
        left < 0
            ? Outcome.of("solidus", "distance to melting", value, meaning, Severity.STOP, origin)
            : left < SOLIDUS_WARN_KELVINS
                ? Outcome.of(
                    "solidus", "distance to melting", value, meaning, Severity.WARN, origin)
                : Outcome.of("solidus", "distance to melting", value, meaning, origin));
  }

  // ---- how it sits

  private Outcome fit(EnamelFit fit) {
    String thin =
        work.build().expansion().isPresent()
            ? "A strip of this sheet, enamelled on one side, shows by its bow how far that is true."
            : "The enamel's expansion is not given: its data sheet or its oxides narrow this most.";
    String stresses =
        "%d in 100 crack and %d in 100 chip by what is not known; the most pulled face of the glass stands at %s. Elastic upper bounds%s."
            .formatted(
                Math.round(100 * fit.crackShare()),
                Math.round(100 * fit.chipShare()),
                megapascals(fit.facePascals()),
                fit.metalYields() ? ", and the metal yields, so true stresses are lower" : "");
    String todo =
        switch (fit.verdict()) {
          case SOUND -> "";
          case NOT_SURE -> " Make a test piece and look after a day.";
          case CHIPS_LIKELY -> " Use an enamel that expands more, or thinner coats.";
          case HAIRLINE_CRACKS_LIKELY ->
              work.build().counter().isPresent()
                  ? " Use an enamel that expands less."
                  : " Counter-enamel the back, use thinner coats or thicker metal, or an enamel that expands less.";
        };
    String meaning = stresses + todo + " " + thin;
    return switch (fit.verdict()) {
      case SOUND -> Outcome.of("enamel-fit", "enamel on the metal", "sound", meaning, ELASTIC);
      case NOT_SURE ->
          Outcome.of(
              "enamel-fit", "enamel on the metal", "not sure", meaning, Severity.NOTE, ELASTIC);
      default ->
          Outcome.of(
              "enamel-fit",
              "enamel on the metal",
              fit.verdict().words(),
              meaning,
              Severity.WARN,
              ELASTIC);
    };
  }

  private Outcome bow(EnamelFit fit) {
    Range bow = fit.bowMetres();
    double most = Math.max(Math.abs(bow.low()), Math.abs(bow.high())) * 1000;
    double least =
        bow.low() * bow.high() <= 0
            ? 0
            : Math.min(Math.abs(bow.low()), Math.abs(bow.high())) * 1000;
    String balance =
        fit.balancingMetres()
            .map(
                r ->
                    "Counter-enamel of %.2f to %.2f mm when fired leaves it flat."
                        .formatted(r.low() * 1000, r.high() * 1000))
            .orElse("No counter-enamel up to 3 mm leaves it flat for sure.");
    String side =
        most < 0.05
            ? "flat"
            : most - least < 0.05
                ? "about %.1f mm over %.0f mm".formatted(most, work.pieceMetres() * 1000)
                : "%.1f to %.1f mm over %.0f mm".formatted(least, most, work.pieceMetres() * 1000);
    return Outcome.of(
        "bow",
        "bow when it is cold",
        side,
        "%s%s The metal yields while it is hot, so expect less."
            .formatted(
                most < 0.05
                    ? ""
                    : bow.median() < 0
                        ? "The enamel is on the outside of the curve. "
                        : "The enamel is on the inside of the curve. ",
                balance),
        ELASTIC);
  }

  // ---- the session

  private Outcome recovery(EnamelOutlook outlook, TemperatureUnit unit) {
    Range back = outlook.backSeconds();
    String value =
        "falls %s, %s"
            .formatted(
                kelvins(outlook.fallKelvins(), unit),
                Double.isFinite(back.high())
                    ? "back after %s to %s".formatted(seconds(back.low()), seconds(back.high()))
                    : "may need more than " + seconds(EnamelDoor.FOLLOWED_SECONDS));
    return Outcome.of(
        "door-recovery",
        "the display after the door",
        value,
        outlook.simulated()
            ? "This kiln with its door open for %.0f s and a cold piece going in%s. The window above counts it in: count from the door's shutting.%s"
                .formatted(EnamelDoor.OPEN_SECONDS, trivetWords(), doorDoubt())
            : "This kiln was not simulated to its working heat; the numbers are for any kiln.",
        outlook.simulated()
            ? Origin.derived("the kiln's model with a door opening")
            : Origin.read("a blog on enamelled steel samples, one studio kiln"));
  }

  /** " with 50 g of trivet and mesh": to the nearest 10 g where it is our estimate. */
  private String trivetWords() {
    double grams = 1000 * EnamelColdLoad.trivetKilograms(work);
    long told =
        work.build().trivetKilograms().isPresent()
            ? Math.round(grams)
            : Math.max(10, 10 * Math.round(grams / 10));
    return told == 0 ? "" : " with %d g of trivet and mesh".formatted(told);
  }

  /** Why the fall is told so wide, where nothing taught the kiln what its door costs. */
  private String doorDoubt() {
    return kiln.beliefs().ignoranceFactor(KilnQuantity.DOOR) > UNTAUGHT
        ? " How much this door lets through was never seen: our estimate holds to a factor of three either way, and that is most of the width. A log with one opening shows the fall of this kiln itself."
        : "";
  }

  private Outcome session(EnamelOutlook outlook) {
    Range rate = outlook.piecesAnHour();
    double room = rate.median() * work.session().toMinutes() / 60;
    int needed = work.pieces() * work.build().firings();
    String value =
        rate.median() > 0
            ? "%.0f to %.0f pieces an hour".formatted(rate.low(), rate.high())
            : "none for sure";
    String meaning =
        "One after another, the next goes in when the last comes out and the display is back; the session has room for about %.0f firings, the work needs %d."
            .formatted(Math.floor(room), needed);
    return room < needed
        ? Outcome.of("throughput", "throughput", value, meaning, Severity.NOTE, FLOW)
        : Outcome.of("throughput", "throughput", value, meaning, FLOW);
  }

  private Outcome tiles(EnamelOutlook outlook) {
    String next =
        outlook
            .nextTile(work)
            .map(
                tile ->
                    "A tile of this sheet and enamel pulled after %s narrows the time from a factor of %.1f either way to about %.1f."
                        .formatted(seconds(tile.seconds()), tile.nowFactor(), tile.thenFactor()))
            .orElse("Another tile would teach little.");
    if (outlook.tiles().isEmpty()) {
      return Outcome.of(
          "test-tile",
          "test tiles",
          "none yet",
          "The window is for any enamel of its class. " + next,
          FLOW);
    }
    EnamelOutlook.Tiles tiles = outlook.tiles().get();
    String needs =
        "It needs %.1f to %.1f times the usual heat-work of its class."
            .formatted(tiles.factorLow(), tiles.factorHigh());
    if (!tiles.odd().isEmpty()) {
      return Outcome.of(
          "test-tile",
          "test tiles",
          tiles.count() == 1 ? "1 tile" : tiles.count() + " tiles",
          "%s Tile %s does not fit the rest or the class of the enamel: check its time and its heat. %s"
              .formatted(needs, tiles.odd().get(0), next),
          Severity.NOTE,
          Origin.own("test tiles"));
    }
    return Outcome.of(
        "test-tile",
        "test tiles",
        tiles.count() == 1 ? "1 tile" : tiles.count() + " tiles",
        needs + " " + next,
        Origin.own("test tiles"));
  }

  private Optional<Outcome> coats(TemperatureUnit unit, EnamelOutlook outlook) {
    if (work.build().coats().isEmpty()) {
      return Optional.empty();
    }
    EnamelCoats plan = EnamelCoats.of(work, outlook.working());
    int budget = EnamelRules.firingsBudget(work.metal());
    boolean many = plan.firings() > budget;
    String value = "%d firing%s a piece".formatted(plan.firings(), plan.firings() == 1 ? "" : "s");
    String meaning =
        plan.words(unit)
            + (many
                ? " That is more than the %d that %s usually stands."
                    .formatted(budget, work.metal().words())
                : "");
    Origin origin =
        Origin.read("an enamel teaching site and a guild of enamellers' journal: hard before soft");
    return Optional.of(
        many || plan.outOfOrder()
            ? Outcome.of("coats", "coats", value, meaning, Severity.WARN, origin)
            : Outcome.of("coats", "coats", value, meaning, origin));
  }

  private Outcome cooling(TemperatureUnit unit) {
    FusingClass fusing = work.hardness().fusing();
    boolean large = work.pieceMetres() >= EnamelRules.LARGE_PIECE_METRES || heavy();
    return Outcome.of(
        "cooling",
        "cooling",
        large ? "slowly: in the kiln's mouth, then a warm place" : "in a warm place, in still air",
        "The glass sets between %s and %s: no draught, no cold metal, no water, until the hand stands it. Under water some %s at once crack it."
            .formatted(
                words(fusing.setsCelsius().low(), unit),
                words(fusing.setsCelsius().high(), unit),
                kelvins(5 * Math.rint(EnamelOutlook.severeShockKelvins(work) / 5), unit)),
        Origin.memory(
            "Kingery, J. Am. Ceram. Soc. 1955, severe thermal shock; never to quench is read: an enamel"
                + " teaching site"));
  }

  private boolean heavy() {
    return work.sheetMetres() + work.build().frontMetres() + work.build().backMetres() >= 0.003;
  }

  // ---- words

  private static String megapascals(Range pascals) {
    return "%.0f to %.0f MPa (%s)"
        .formatted(
            pascals.low() / 1e6, pascals.high() / 1e6, pascals.median() < 0 ? "pushed" : "pulled");
  }

  private static String degrees(Range celsius, TemperatureUnit unit) {
    return "%.0f to %s"
        .formatted(unit.value(Temperature.ofCelsius(celsius.low())), words(celsius.high(), unit));
  }

  /** A difference: "40 K", "72 °F". */
  private static String kelvins(double kelvins, TemperatureUnit unit) {
    return "%.0f %s".formatted(difference(kelvins, unit), unit.differenceSymbol());
  }

  /** "50 to 100 K". */
  static String kelvins(Range kelvins, TemperatureUnit unit) {
    return "%.0f to %s".formatted(difference(kelvins.low(), unit), kelvins(kelvins.high(), unit));
  }

  private static double difference(double kelvins, TemperatureUnit unit) {
    return unit.value(TemperatureChange.ofKelvins(kelvins));
  }

  private static String words(double celsius, TemperatureUnit unit) {
    return Wording.of(
        unit.temperature(Math.rint(unit.value(Temperature.ofCelsius(celsius)))), unit);
  }

  /** "85 s", "4 min 30 s": to the nearest 5 s, above three minutes to the nearest 15. */
  static String seconds(double seconds) {
    long step = seconds < 180 ? 5 : 15;
    long rounded = Math.max(5, Math.round(seconds / step) * step);
    if (rounded < 120) {
      return rounded + " s";
    }
    return rounded % 60 == 0 ? rounded / 60 + " min" : rounded / 60 + " min " + rounded % 60 + " s";
  }
}
