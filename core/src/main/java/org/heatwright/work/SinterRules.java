package org.heatwright.work;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.heatwright.inspect.Wording;
import org.heatwright.kiln.Control;
import org.heatwright.kiln.Kiln;
import org.heatwright.material.HeatWork;
import org.heatwright.material.Origin;
import org.heatwright.schedule.HourMinute;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.SinterWork.Aim;
import org.heatwright.work.SinterWork.Embedded;
import org.heatwright.work.SinterWork.Phase;
import org.heatwright.work.sinter.ClayFacts;
import org.heatwright.work.sinter.ClayFacts.Row;
import org.heatwright.work.sinter.ClayFacts.Strength;
import org.heatwright.work.sinter.CurveBelief;
import org.heatwright.work.sinter.Likely;
import org.heatwright.work.sinter.SinterHeat;
import org.heatwright.work.sinter.TestFiring;

/** Rules of practice for metal clay, in words in {@code docs/models/sintering.md}. */
final class SinterRules {

  /** Up to here a piece counts as thin, m (read: a bronze-clay firing guide's table). */
  static final double THIN_METRES = 0.003;

  /** A piece this near the hold's temperature is at it, K. Our choice. */
  static final double AT_HEAT_KELVINS = 15;

  /** The hold waits for the piece to come as near as this, K. Our choice. */
  static final double LAG_KELVINS = 10;

  /** Silver comes out of the kiln by tongs and is cold on a brick. {@code practice:} */
  static final Duration BY_TONGS = Duration.ofMinutes(30);

  /** Cool enough to be taken out by hand or opened. {@code practice:} */
  static final double COLD_CELSIUS = 100;

  /** A capped piece is held so long, as the strongest low firing. {@code estimate:} */
  private static final Duration LONG_LOW = Duration.ofHours(2);

  private static final double MINUTE = 60;

  private SinterRules() {}

  // ---- limits

  /**
   * A limit with its reason.
   *
   * @param value the chamber's display must not show more
   * @param what whose limit it is
   * @param because what would happen, a clause
   * @param origin where it comes from
   */
  record Limit(Temperature value, String what, String because, Origin origin) {}

  /** The clay's own limit, less what the display may hide; a data sheet's word goes before it. */
  static Limit clay(ClayFacts facts, DataSheet sheet, Kiln kiln) {
    double low = Math.max(0, -kiln.thermocouple().offset().kelvins());
    boolean checked = kiln.thermocouple().offset().kelvins() != 0;
    double less = low + (checked ? 0 : facts.spareKelvins());
    Temperature rule = Temperature.ofCelsius(facts.limit().celsius() - less);
    Optional<Temperature> said =
        sheet.max().or(() -> sheet.top().filter(top -> top.compareTo(rule) > 0));
    if (said.isPresent()) {
      double beyond = beyondCelsius(facts) - low;
      return said.get().celsius() <= beyond
          ? new Limit(
              said.get(),
              "the clay by its data sheet",
              "the maker does not stand behind it",
              Origin.own("data sheet"))
          : new Limit(
              Temperature.ofCelsius(beyond),
              facts.clay().words(),
              "the piece melts whatever the data sheet says",
              Origin.estimate("well into the melting range of the metal"));
    }
    return new Limit(
        rule,
        facts.clay().words(),
        facts.limitBecause()
            + (low > 0 ? "; the display reads %.0f K low".formatted(low) : "")
            + (!checked && facts.spareKelvins() > 0
                ? "; %.0f K are kept for a display nobody has checked"
                    .formatted(facts.spareKelvins())
                : ""),
        facts.limitOrigin());
  }

  /** No data sheet goes beyond this, °C. {@code estimate:} */
  private static double beyondCelsius(ClayFacts facts) {
    return switch (facts.clay()) {
      case FINE_SILVER, FINE_SILVER_LOW_FIRE, FINE_SILVER_OLDER -> 945;
      case STERLING -> 850;
      case COPPER -> 1040;
      case BRONZE, BRONZE_LOW_FIRE -> 900;
    };
  }

  /** What a thing in the piece stands, if it limits the heat. */
  static Optional<Limit> embedded(Embedded embedded) {
    return switch (embedded) {
      case NONE -> Optional.empty();
      case GLASS ->
          Optional.of(
              new Limit(
                  Temperature.ofCelsius(650),
                  "the glass in the piece",
                  "it slumps, boils or cracks",
                  Origin.read("a silver-clay firing guide: glass and some stones, 600 to 650 °C")));
      case STONE ->
          Optional.of(
              new Limit(
                  Temperature.ofCelsius(600),
                  "the stone in the piece",
                  "a stone of nature may crack or change its colour",
                  Origin.read("a silver-clay firing guide: glass and some stones, 600 to 650 °C")));
      case LAB_STONE ->
          Optional.of(
              new Limit(
                  Temperature.ofCelsius(900),
                  "the laboratory-grown stone",
                  "it may turn cloudy",
                  Origin.practice()));
      case CORK ->
          Optional.of(
              new Limit(
                  Temperature.ofCelsius(800),
                  "the piece on a cork core",
                  "burning cork makes it hotter than the kiln",
                  Origin.practice()));
    };
  }

  /** How far an on-off kiln may go beyond its setting, K. {@code estimate:} */
  private static final double SWING_KELVINS = 20;

  /** How far a proportional one may, K: what is in a piece bears no more. {@code estimate:} */
  private static final double OVERSHOOT_KELVINS = 10;

  /**
   * What to aim at, at most: the kiln's own limit, or far enough below what the clay and what is in
   * the pieces stand for the display to swing. The spare of a clay is enough for a proportional
   * controller; a piece of glass has none.
   */
  static Limit cap(Limit clay, Optional<Limit> embedded, Kiln kiln) {
    boolean onOff = kiln.control().kind() == Control.Kind.ON_OFF;
    List<Limit> caps = new ArrayList<>();
    caps.add(
        new Limit(
            kiln.limit(), kiln.name(), "the kiln is not made for more", Origin.own("kiln file")));
    caps.add(onOff ? below(clay, SWING_KELVINS, "an on-off kiln's swing") : clay);
    embedded.ifPresent(
        limit ->
            caps.add(
                onOff
                    ? below(limit, SWING_KELVINS, "an on-off kiln's swing")
                    : below(limit, OVERSHOOT_KELVINS, "what the display may go beyond")));
    return lowest(caps);
  }

  private static Limit lowest(List<Limit> limits) {
    return limits.stream().min(Comparator.comparing(Limit::value)).orElseThrow();
  }

  private static Limit below(Limit limit, double kelvins, String why) {
    return new Limit(
        limit.value().plus(TemperatureChange.ofKelvins(-kelvins)),
        limit.what() + ", less %.0f K for %s".formatted(kelvins, why),
        limit.because(),
        limit.origin());
  }

  /** The lowest limit that anything in the pieces sets. */
  static Optional<Limit> embedded(SinterWork work) {
    return work.pieces().stream()
        .flatMap(piece -> embedded(piece.embedded()).stream())
        .min(Comparator.comparing(Limit::value));
  }

  /** Below this a firing of the clay is not worth anything: our estimate. */
  private static double coolestCelsius(ClayFacts facts) {
    return switch (facts.clay()) {
      case FINE_SILVER, FINE_SILVER_LOW_FIRE -> facts.coolest().celsius() - 25;
      case FINE_SILVER_OLDER -> 850;
      case STERLING -> 720;
      case COPPER -> 880;
      case BRONZE -> 780;
      case BRONZE_LOW_FIRE -> 750;
    };
  }

  // ---- firings to choose from

  /**
   * A firing that is possible.
   *
   * @param at temperature of the piece
   * @param hold the piece's own
   * @param strength what it is good for
   * @param targetWhy why that temperature
   * @param holdWhy why that time
   * @param row the row of the sources that it is, if it is one
   */
  record Option(
      Temperature at,
      Duration hold,
      Strength strength,
      Draft.Why targetWhy,
      Draft.Why holdWhy,
      Optional<Row> row) {

    /** The piece at its temperature for its time, after a usual way up. */
    SinterHeat heat() {
      return SinterHeat.rampAndHold(TestFiring.USUAL_RATE, at, hold);
    }

    /** Strength over that after the clay's strongest row. */
    Likely strengthBy(CurveBelief belief) {
      return row.map(belief::strength).orElseGet(() -> belief.strength(List.of(heat())));
    }
  }

  /**
   * All firings below a cap, the strongest first.
   *
   * @param cap no hotter
   */
  static List<Option> options(ClayFacts facts, DataSheet sheet, Limit cap, TemperatureUnit unit) {
    Temperature round = RoundNumbers.target(cap.value(), cap.value(), unit);
    String range = range(facts, unit);
    if (sheet.top().isPresent()) {
      return List.of(bySheet(facts, sheet, sheet.top().get(), cap, range));
    }
    List<Option> options = new ArrayList<>();
    for (Row row : facts.rows()) {
      if (row.at().compareTo(cap.value()) <= 0) {
        Temperature at = RoundNumbers.target(row.at(), cap.value(), unit);
        Duration hold = sheet.topHold().orElse(row.hold());
        options.add(
            new Option(
                at,
                hold,
                row.strength(),
                new Draft.Why(sentence(row), range, row.origin()),
                sheet.topHold().isPresent()
                    ? new Draft.Why(
                        "The maker's data sheet names the hold.", "", Origin.own("data sheet"))
                    : new Draft.Why(holdSentence(row), range, row.origin()),
                sheet.topHold().isPresent() ? Optional.empty() : Optional.of(row)));
      }
    }
    boolean best = options.stream().anyMatch(o -> o.strength() == facts.best().strength());
    if (!best && round.celsius() >= coolestCelsius(facts) - 1e-9) {
      options.add(lowered(facts, round, cap, unit));
    }
    options.sort(
        Comparator.comparing(Option::strength)
            .reversed()
            .thenComparing(Comparator.comparing(Option::hold).reversed())
            .thenComparing(Comparator.comparing(Option::at).reversed()));
    return options;
  }

  private static Option bySheet(
      ClayFacts facts, DataSheet sheet, Temperature top, Limit cap, String range) {
    boolean cut = top.compareTo(cap.value()) > 0;
    Origin origin = Origin.own("data sheet");
    return new Option(
        RoundNumbers.lower(top, cap.value()),
        sheet.topHold().orElse(facts.best().hold()),
        cut ? Strength.LEAST : Strength.GOOD,
        cut
            ? new Draft.Why(
                "The data sheet's firing temperature lies above what %s stands, which rules."
                    .formatted(cap.what()),
                range,
                cap.origin())
            : new Draft.Why("The maker's data sheet names the firing temperature.", range, origin),
        new Draft.Why(
            sheet.topHold().isPresent()
                ? "The maker's data sheet names the hold."
                : "The data sheet names no hold: that of practice.",
            range,
            sheet.topHold().isPresent() ? origin : facts.best().origin()),
        Optional.empty());
  }

  /** The strongest firing at a cap below what practice would take. */
  private static Option lowered(ClayFacts facts, Temperature at, Limit cap, TemperatureUnit unit) {
    Row best = facts.best();
    String range = range(facts, unit);
    Duration hold = facts.clay().isFineSilver() ? LONG_LOW : longer(facts, best, at);
    Origin origin =
        Origin.estimate("longer makes up for cooler only in part: the curve's range tells how far");
    return new Option(
        at,
        hold,
        Strength.LEAST,
        new Draft.Why(
            "As hot as may be (%s); practice would take %s."
                .formatted(cap.what(), Wording.of(best.at(), unit)),
            range,
            cap.origin()),
        new Draft.Why(
            "Held long because it is cool: the piece stays weaker than after %s for %s."
                .formatted(Wording.of(best.at(), unit), HourMinute.words(best.hold())),
            range,
            origin),
        Optional.empty());
  }

  /** As long as would do the same in the middle of the likely activation energies, 8 h at most. */
  private static Duration longer(ClayFacts facts, Row best, Temperature at) {
    double seconds =
        facts
            .curve()
            .map(
                prior ->
                    HeatWork.of(
                            (prior.lowJoulesPerMole() + prior.highJoulesPerMole()) / 2, best.at())
                        .equivalentSeconds(best.hold().toSeconds(), best.at(), at))
            .orElse(3.0 * 3600);
    double minutes = Math.min(480, Math.ceil(seconds / MINUTE / 15) * 15);
    return Duration.ofMinutes(Math.round(Math.max(best.hold().toMinutes(), minutes)));
  }

  private static String sentence(Row row) {
    return switch (row.strength()) {
      case LEAST -> "A least firing of the sources; hotter and longer is stronger.";
      case GOOD -> "Hot enough for good strength.";
      case BEST -> "As strong as this clay gets.";
    };
  }

  private static String holdSentence(Row row) {
    return switch (row.strength()) {
      case LEAST -> "The least time at this temperature.";
      case GOOD -> "Half an hour and more gives good strength; two hours a little more.";
      case BEST -> "The full time, counted in the piece.";
    };
  }

  private static String range(ClayFacts facts, TemperatureUnit unit) {
    return facts.rows().stream()
        .map(row -> "%s %s".formatted(Wording.of(row.at(), unit), HourMinute.words(row.hold())))
        .collect(Collectors.joining(", "));
  }

  /** Which of the possible firings come first. */
  static List<Option> inOrder(List<Option> strongestFirst, Aim aim) {
    List<Option> options = new ArrayList<>(strongestFirst);
    if (aim == Aim.QUICKEST) {
      options.sort(
          Comparator.comparing(Option::hold).thenComparing(Comparator.comparing(Option::at)));
    }
    return options;
  }

  // ---- rates and binder

  /** A rate with its reason; empty where the kiln may do what it can. */
  record Rate(HeatingRate value, Draft.Why why) {}

  /** How fast the pieces may rise while their binder burns. */
  static Optional<Rate> binderRate(SinterWork work, ClayFacts facts) {
    List<Rate> rates = new ArrayList<>();
    double millimetres = work.thickest().thicknessMetres() * 1000;
    if (work.thickest().thicknessMetres() > THIN_METRES + 1e-9) {
      rates.add(
          rate(
              2500 / millimetres,
              "The thickest piece, %.1f mm, rules: its binder must find its way out before the piece lifts or cracks."
                  .formatted(millimetres),
              Origin.estimate("2500 K/h over the thickness in mm, above 3 mm")));
    }
    if (work.holds(Embedded.CORK)) {
      rates.add(
          rate(
              400,
              "A cork core smokes and burns with a flame: slowly.",
              Origin.estimate("about half of what beginners' pages call a medium rate")));
    }
    facts
        .binder()
        .rate()
        .filter(rate -> work.phase() != Phase.SINTER)
        .ifPresent(
            rate ->
                rates.add(
                    new Rate(
                        rate,
                        new Draft.Why(
                            "Slowly while the binder burns.", "", facts.binder().origin()))));
    return slowestOf(rates, work);
  }

  /** How fast to the top, once the binder has gone. */
  static Optional<Rate> topRate(SinterWork work, ClayFacts facts, Temperature top) {
    List<Rate> rates = new ArrayList<>();
    double millimetres = work.thickest().thicknessMetres() * 1000;
    if (facts.clay().isBronze() && work.thickest().thicknessMetres() > THIN_METRES + 1e-9) {
      rates.add(
          rate(
              top.celsius() / millimetres,
              "Bronze above 3 mm: the target in Celsius over the thickness in millimetres (%.1f), an hour."
                  .formatted(millimetres),
              Origin.read("a bronze-clay firing guide's table; its sentence has it upside down")));
    }
    return slowestOf(rates, work);
  }

  /** With what holds on the whole way up: glass, stones and the data sheet. */
  private static Optional<Rate> slowestOf(List<Rate> rates, SinterWork work) {
    if (work.holdsWhatCracks()) {
      rates.add(rate(500, "Glass and stones crack if they heat unevenly.", Origin.practice()));
    }
    work.dataSheet()
        .fastestRise()
        .ifPresent(
            rate ->
                rates.add(
                    new Rate(
                        rate,
                        new Draft.Why(
                            "The maker's data sheet names the fastest rise.",
                            "",
                            Origin.own("data sheet")))));
    return rates.stream().min(Comparator.comparing(r -> r.value().kelvinsPerHour()));
  }

  private static Rate rate(double kelvinsPerHour, String rule, Origin origin) {
    return new Rate(HeatingRate.ofKelvinsPerHour(kelvinsPerHour), new Draft.Why(rule, "", origin));
  }

  /** The binder's hold in the piece: 5 min more for each millimetre above three. */
  static Duration binderHold(SinterWork work, ClayFacts facts) {
    double above = Math.max(0, work.thickest().thicknessMetres() - THIN_METRES) * 1000;
    return facts.binder().hold().plusMinutes((long) Math.ceil(5 * above - 1e-9));
  }

  /** How long a piece lies on a warm plate before it may be called dry. {@code estimate:} */
  static Duration drying(double thicknessMetres) {
    return RoundNumbers.quarterUp(0.5 + thicknessMetres * 1000 / 3);
  }

  static boolean coolsShut(SinterWork work) {
    return work.inCarbon() || work.holdsWhatCracks();
  }
}
