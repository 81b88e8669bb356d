package org.heatwright.app.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.heatwright.app.api.Answers;
import org.heatwright.app.casting.CastInput;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.TypedNumber;
import org.heatwright.app.json.OffsetJson;
import org.heatwright.inspect.Wording;
import org.heatwright.kiln.Kiln;
import org.heatwright.sensing.DisplayCheck;
import org.heatwright.sensing.MeltCheck;
import org.heatwright.sensing.OffsetCorrection;
import org.heatwright.sensing.ThermocoupleType;
import org.heatwright.sensing.WrongType.Comparison;
import org.heatwright.sensing.WrongType.Suspect;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;
import org.heatwright.units.TemperatureUnit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

@Answers(OffsetJson.class)
@Command(
    name = "offset",
    description = {
      "Says how far a kiln's display is off, and what to write as offset-k.",
      "By a fine-silver wire that melts beside the sensor, by a trusted thermometer",
      "there, or by both. A wrong type setting and swapped leads are looked for first.",
      "Temperatures are in the unit of --unit."
    },
    footerHeading = "%nA melt check:%n",
    footer = {
      "  Only in a kiln that its maker allows above 970 °C, without work, investment",
      "  or glass in it. Fine silver of at least 99.9 %%, a thin wire across supports",
      "  beside the tip, over a tray that catches the drop. Heat through 940 to 970 °C",
      "  at 2 to 5 K a minute and look often, through dark glasses. Charcoal burns to",
      "  carbon monoxide: a little in a small covered dish, the room well aired. A",
      "  carbon atmosphere makes a type K couple read low with time. One melt says",
      "  nothing about other temperatures, nor about how evenly the chamber is heated.",
      "",
      "Examples:",
      "  heatwright offset --melt 958..962 --in-air --kiln anchor.yaml",
      "  heatwright offset --melt 1760..1766 --charcoal --unit F --at 1450",
      "  heatwright offset --compare 506=500 --compare 809=800 --type K --at 750"
    })
final class OffsetCommand implements Callable<Integer> {

  /** 3 K a minute, in the middle of what is meant. */
  private static final double USUAL_KELVINS_PER_HOUR = 180;

  /** A thin rod in a kiln's air (our estimate). */
  private static final double USUAL_LAG_SECONDS = 40;

  /** Slower was meant a minute, faster nobody can watch. */
  private static final double SLOWEST_KELVINS_PER_HOUR = 20;

  private static final double FASTEST_KELVINS_PER_HOUR = 1200;
  private static final double LONGEST_LAG_SECONDS = 600;

  /** Swapped leads take the display below zero. */
  private static final Temperature COLDEST_SHOWN = Temperature.ofCelsius(-270);

  private static final Temperature COLDEST = Temperature.ofCelsius(-50);
  private static final Temperature HOTTEST = Temperature.ofCelsius(1800);
  private static final Temperature COLDEST_TERMINALS = Temperature.ofCelsius(0);
  private static final Temperature HOTTEST_TERMINALS = Temperature.ofCelsius(70);

  @Option(
      names = "--melt",
      paramLabel = "W..M",
      description =
          "What the display said when the wire was last seen whole and first seen melted, such as"
              + " 958..962; one number for both.")
  private Optional<String> meltText;

  @Option(names = "--in-air", description = "With --melt: the wire lay bare.")
  private boolean inAir;

  @Option(names = "--charcoal", description = "With --melt: charcoal shielded the wire.")
  private boolean charcoal;

  @Option(
      names = "--rate",
      paramLabel = "R",
      description = "With --melt: how fast it heated, K/h or °F/h (180 K/h, 3 K a minute).")
  private Optional<Double> rate;

  @Option(
      names = "--lag",
      paramLabel = "S",
      description =
          "With --melt: seconds that the sensor is behind the wire (40, an estimate for a thin"
              + " rod).")
  private Optional<Double> lagSeconds;

  @Option(
      names = "--compare",
      paramLabel = "SHOWN=TRUE",
      description =
          "What the display and a trusted thermometer beside the sensor said; may be repeated.")
  private List<String> comparisonTexts = new ArrayList<>();

  @Option(
      names = "--type",
      paramLabel = "T",
      description = "Couple that the controller is set to: B E J K N R S or T.")
  private Optional<String> typeLetter;

  @Option(
      names = "--cold-junction",
      paramLabel = "T",
      description = "With a type: temperature of the controller's terminals (15 to 45 °C).")
  private Optional<Double> coldJunction;

  @Option(
      names = "--kiln",
      paramLabel = "K",
      description = "Kiln file: type and offset-k come from it.")
  private Optional<Path> kilnPath;

  @Option(
      names = "--at",
      paramLabel = "T",
      description = "True temperature of your work (that of the melt or of the last comparison).")
  private Optional<Double> workAt;

  @Mixin private InUnit degrees;

  @Mixin private Answer answer;

  private final Surroundings surroundings;

  OffsetCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    TemperatureUnit unit = degrees.unit();
    if (meltText.isEmpty() && comparisonTexts.isEmpty()) {
      throw InputException.in(
          "--melt", "neither this nor --compare is given; expected one of the two, or both.");
    }
    Optional<MeltCheck> melt = melt(unit);
    List<Comparison> comparisons =
        comparisonTexts.stream().map(text -> comparison(text, unit)).toList();
    Optional<Kiln> kiln = kilnPath.map(path -> Input.kiln(path).kiln());
    kiln.ifPresent(k -> requireHotEnough(k, unit));
    Optional<ThermocoupleType> type = type(kiln);
    DisplayCheck check = new DisplayCheck(melt, comparisons, type, coldJunction(type, unit));
    List<Suspect> suspects = check.suspects();
    Optional<OffsetCorrection> correction = correction(check, suspects, unit);
    Temperature work = work(check, kiln, unit);
    OffsetPage answered =
        new OffsetPage(
            check, suspects, correction, kiln, work, unit, LocalDate.now(surroundings.clock()));
    answer.give(surroundings, answered.json(), answered.page());
    return correction.isPresent() ? Answer.DONE : Answer.STOP;
  }

  // ---- the wire

  private Optional<MeltCheck> melt(TemperatureUnit unit) {
    if (meltText.isEmpty()) {
      withoutMelt("--in-air", inAir);
      withoutMelt("--charcoal", charcoal);
      withoutMelt("--rate", rate.isPresent());
      withoutMelt("--lag", lagSeconds.isPresent());
      return Optional.empty();
    }
    if (inAir == charcoal) {
      throw InputException.in(
          inAir ? "--charcoal" : "--in-air",
          inAir
              ? "--in-air is given too; keep one of the two."
              : "neither this nor --charcoal is given; expected what was around the wire.");
    }
    String text = meltText.get();
    String[] looks = text.split("\\.\\.", -1);
    Optional<Double> whole = number(looks[0]);
    Optional<Double> melted = number(looks[looks.length - 1]);
    if (looks.length > 2 || whole.isEmpty() || melted.isEmpty()) {
      throw InputException.in(
          "--melt",
          "\"%s\" is no reading; expected what the display said at the last look at a whole wire and the first at a melted one, such as %s, or one number for both."
              .formatted(text, unit == TemperatureUnit.CELSIUS ? "958..962" : "1757..1763"));
    }
    requireMelt(text, whole.get(), melted.get(), unit);
    return Optional.of(
        new MeltCheck(
            unit.temperature(whole.get()),
            unit.temperature(melted.get()),
            inAir
                ? MeltCheck.Surroundings.BARE_IN_AIR
                : MeltCheck.Surroundings.SHIELDED_BY_CHARCOAL,
            MeltCheck.behind(rate(unit), lag())));
  }

  private static void withoutMelt(String option, boolean given) {
    if (given) {
      throw InputException.in(
          option, "given without --melt, to which it belongs; add it or leave" + " this out.");
    }
  }

  private static void requireMelt(String text, double whole, double melted, TemperatureUnit unit) {
    if (whole > melted) {
      throw InputException.in(
          "--melt",
          "\"%s\" has the wire melted at a lower reading than it was last whole; expected the lower one first, heated slowly and never back."
              .formatted(text));
    }
    double silver = unit.value(MeltCheck.SILVER_MELTS);
    double most = unit.value(MeltCheck.LARGEST_OFFSET);
    if (silver - whole > most || melted - silver > most) {
      throw InputException.in(
          "--melt",
          "\"%s\" is more than %s %s off %s, where silver melts: that is no offset; check the type setting, the leads, --unit and where the tip is."
              .formatted(
                  text,
                  Wording.number(most),
                  unit.differenceSymbol(),
                  Wording.of(MeltCheck.SILVER_MELTS, unit)));
    }
  }

  private HeatingRate rate(TemperatureUnit unit) {
    double given = rate.orElse(unit.value(HeatingRate.ofKelvinsPerHour(USUAL_KELVINS_PER_HOUR)));
    double least = unit.value(HeatingRate.ofKelvinsPerHour(SLOWEST_KELVINS_PER_HOUR));
    double most = unit.value(HeatingRate.ofKelvinsPerHour(FASTEST_KELVINS_PER_HOUR));
    String symbol = unit.differenceSymbol();
    if (!(given >= least && given <= most)) {
      throw InputException.in(
          "--rate",
          "\"%s\" is not possible; expected %s to %s %s/h (%s a minute is %s)."
              .formatted(
                  CastInput.typed(given),
                  Wording.number(least),
                  Wording.number(most),
                  symbol,
                  Wording.number(unit.value(TemperatureChange.ofKelvins(3))) + " " + symbol,
                  Wording.number(
                      unit.value(HeatingRate.ofKelvinsPerHour(USUAL_KELVINS_PER_HOUR)))));
    }
    return unit.rate(given);
  }

  private double lag() {
    double given = lagSeconds.orElse(USUAL_LAG_SECONDS);
    if (!(given >= 0 && given <= LONGEST_LAG_SECONDS)) {
      throw InputException.in(
          "--lag",
          "\"%s\" is not possible; expected 0 to %s seconds."
              .formatted(CastInput.typed(given), Wording.number(LONGEST_LAG_SECONDS)));
    }
    return given;
  }

  // ---- other readings

  private static Comparison comparison(String text, TemperatureUnit unit) {
    String[] sides = text.split("=", -1);
    Optional<Double> shown = sides.length == 2 ? number(sides[0]) : Optional.empty();
    Optional<Double> truth = sides.length == 2 ? number(sides[1]) : Optional.empty();
    if (shown.isEmpty() || truth.isEmpty()) {
      throw InputException.in(
          "--compare",
          "\"%s\" is no comparison; expected what the display showed, = and what the trusted thermometer said, such as %s."
              .formatted(text, unit == TemperatureUnit.CELSIUS ? "809=800" : "1488=1472"));
    }
    within("--compare", shown.get(), COLDEST_SHOWN, HOTTEST, unit);
    within("--compare", truth.get(), COLDEST, HOTTEST, unit);
    return new Comparison(unit.temperature(truth.get()), unit.temperature(shown.get()));
  }

  /** What is far off is a matter for the type; what does not rise is no offset either. */
  private Optional<OffsetCorrection> correction(
      DisplayCheck check, List<Suspect> suspects, TemperatureUnit unit) {
    if (!suspects.isEmpty()) {
      return Optional.empty();
    }
    Optional<Comparison> far = check.tooFarOff();
    if (far.isPresent()) {
      if (check.setTo().isPresent()) {
        return Optional.empty();
      }
      throw InputException.in(
          "--compare",
          "%s shown at %s is more than %s %s off, which is no offset; give --type, the couple that the controller is set to, to look for a wrong type or swapped leads, and check --unit and where the tip is."
              .formatted(
                  Wording.of(far.get().shown(), unit),
                  Wording.of(far.get().truth(), unit),
                  Wording.number(unit.value(MeltCheck.LARGEST_OFFSET)),
                  unit.differenceSymbol()));
    }
    List<OffsetCorrection.Point> points = check.points();
    for (int i = 1; i < points.size(); i++) {
      OffsetCorrection.Point cooler = points.get(i - 1);
      OffsetCorrection.Point hotter = points.get(i);
      if (cooler.shown().compareTo(hotter.shown()) >= 0
          || cooler.truth().compareTo(hotter.truth()) >= 0) {
        throw InputException.in(
            "--compare",
            "%s shown at %s and %s shown at %s cannot both be: the display must rise with the truth; expected one reading for each temperature."
                .formatted(
                    Wording.of(cooler.shown(), unit),
                    Wording.of(cooler.truth(), unit),
                    Wording.of(hotter.shown(), unit),
                    Wording.of(hotter.truth(), unit)));
      }
    }
    return Optional.of(check.correction());
  }

  // ---- couple, kiln and work

  private Optional<ThermocoupleType> type(Optional<Kiln> kiln) {
    if (kiln.isPresent() && typeLetter.isPresent()) {
      throw InputException.in(
          "--type",
          "the kiln file names the type too (%s); keep one of --type and --kiln."
              .formatted(kiln.get().thermocouple().type()));
    }
    return typeLetter
        .map(
            letter ->
                ThermocoupleType.ofLetter(letter)
                    .orElseThrow(
                        () ->
                            InputException.in(
                                "--type",
                                "\"%s\" is not known; expected B, E, J, K, N, R, S or T."
                                    .formatted(letter))))
        .or(() -> kiln.map(k -> ThermocoupleType.valueOf(String.valueOf(k.thermocouple().type()))));
  }

  private Optional<Temperature> coldJunction(
      Optional<ThermocoupleType> type, TemperatureUnit unit) {
    if (coldJunction.isPresent() && type.isEmpty()) {
      throw InputException.in(
          "--cold-junction",
          "it counts only for a couple; give --type or --kiln too, or leave this out.");
    }
    coldJunction.ifPresent(
        value -> within("--cold-junction", value, COLDEST_TERMINALS, HOTTEST_TERMINALS, unit));
    return coldJunction.map(unit::temperature);
  }

  private void requireHotEnough(Kiln kiln, TemperatureUnit unit) {
    if (meltText.isPresent() && kiln.limit().compareTo(MeltCheck.KILN_ABOVE) <= 0) {
      throw InputException.in(
          "--melt",
          "kiln %s is allowed %s at most, and a melt check leads it above %s; expected --compare, with a trusted couple beside the sensor."
              .formatted(
                  kiln.name(),
                  Wording.of(kiln.limit(), unit),
                  Wording.of(MeltCheck.KILN_ABOVE, unit)));
    }
  }

  private Temperature work(DisplayCheck check, Optional<Kiln> kiln, TemperatureUnit unit) {
    if (workAt.isEmpty()) {
      return check.usualWork();
    }
    within("--at", workAt.get(), COLDEST, HOTTEST, unit);
    kiln.filter(k -> unit.temperature(workAt.get()).compareTo(k.limit()) > 0)
        .ifPresent(
            k -> {
              throw InputException.in(
                  "--at",
                  "%s is more than kiln %s is allowed; expected at most %s."
                      .formatted(
                          Wording.of(unit.temperature(workAt.get()), unit),
                          k.name(),
                          Wording.of(k.limit(), unit)));
            });
    return unit.temperature(workAt.get());
  }

  private static void within(
      String option, double value, Temperature least, Temperature most, TemperatureUnit unit) {
    if (!(value >= unit.value(least) && value <= unit.value(most))) {
      throw InputException.in(
          option,
          "\"%s\" is not possible; expected %s to %s."
              .formatted(
                  CastInput.typed(value),
                  Wording.number(unit.value(least)),
                  Wording.of(most, unit)));
    }
  }

  private static Optional<Double> number(String text) {
    OptionalDouble typed = TypedNumber.bare(text);
    return typed.isPresent() ? Optional.of(typed.getAsDouble()) : Optional.empty();
  }
}
