package org.heatwright.app.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.heatwright.app.files.InputException;
import org.heatwright.app.json.CastOrderJson;
import org.heatwright.forecast.Changeover;
import org.heatwright.inspect.TemperatureRange;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.casting.PouringOrder;
import org.heatwright.work.casting.PouringOrder.Wanted;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

@Command(
    name = "order",
    description = {
      "Moulds that want different temperatures from one kiln: the order, with the",
      "waits between, and what one temperature for all would cost. Temperatures are",
      "in the unit of --unit. A forecast of your kiln tells how fast it falls."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  heatwright cast order --mould lace --wants 630 --count 3 \\",
      "      --mould signet --wants 450 --kiln-now 730 --fall-per-hour 150",
      "  heatwright cast order --unit F --mould lace --wants 1150 --mould band \\",
      "      --wants 900 --kiln-now 1350 --fall-per-hour 270 --settle-minutes 45"
    })
final class CastOrderCommand implements Callable<Integer> {

  /** Moulds that want one temperature. */
  static final class WantedOptions {
    @Option(
        names = "--mould",
        required = true,
        paramLabel = "NAME",
        description = "What you call them.")
    private String name = "";

    @Option(
        names = "--wants",
        required = true,
        paramLabel = "T",
        description = "Temperature all through at the pour.")
    private double wanted;

    @Option(names = "--count", paramLabel = "N", description = "How many (1).")
    private @Nullable Integer count;
  }

  @ArgGroup(exclusive = false, multiplicity = "1..*", heading = "Moulds of one wish:%n")
  private List<WantedOptions> moulds = new ArrayList<>();

  @Option(
      names = "--kiln-now",
      required = true,
      paramLabel = "T",
      description = "Temperature of kiln and moulds now.")
  private double kilnNow;

  @Option(
      names = "--fall-per-hour",
      required = true,
      paramLabel = "R",
      description = "How fast the kiln comes down.")
  private double fallPerHour;

  @Option(
      names = "--rise-per-hour",
      paramLabel = "R",
      description = "How fast it goes up, if it must.")
  private Optional<Double> risePerHour;

  @Option(
      names = "--settle-minutes",
      paramLabel = "M",
      defaultValue = "60",
      description = "For the cores after each change (60).")
  private double settleMinutes;

  @Option(
      names = "--pour-minutes",
      paramLabel = "M",
      defaultValue = "5",
      description = "For each mould (5).")
  private double pourMinutes;

  @Option(
      names = "--accept-degrees",
      paramLabel = "D",
      description = "What would do, either side of the wish (25 K, 45 °F).")
  private Optional<Double> acceptDegrees;

  @Option(names = "--unit", paramLabel = "U", defaultValue = "C", description = "C or F.")
  private String unitLetter;

  @Mixin private Answer answer;

  private final Surroundings surroundings;

  CastOrderCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    TemperatureUnit unit = CastInput.unit("--unit", unitLetter);
    Temperature now = CastInput.temperature("--kiln-now", kilnNow, unit);
    CastInput.positive("--fall-per-hour", fallPerHour);
    risePerHour.ifPresent(r -> CastInput.positive("--rise-per-hour", r));
    notNegative("--settle-minutes", settleMinutes);
    notNegative("--pour-minutes", pourMinutes);
    acceptDegrees.ifPresent(d -> notNegative("--accept-degrees", d));
    double eitherWay = acceptDegrees.map(d -> unit.change(d).kelvins()).orElse(25.0);
    List<Wanted> wanted = moulds.stream().map(m -> wanted(m, eitherWay, unit)).toList();
    PouringOrder order =
        PouringOrder.of(
            wanted,
            now,
            (from, to) -> new Changeover(minutes(from, to, unit), settleMinutes),
            pourMinutes);
    answer.give(surroundings, CastOrderJson.of(order), page(order, unit));
    return Answer.DONE;
  }

  private static Wanted wanted(WantedOptions options, double eitherWay, TemperatureUnit unit) {
    Temperature wanted = CastInput.temperature("--wants", options.wanted, unit);
    TemperatureRange accepted =
        CastInput.blaming(
            "--accept-degrees",
            () ->
                new TemperatureRange(
                    wanted.plus(TemperatureChange.ofKelvins(-eitherWay)),
                    wanted.plus(TemperatureChange.ofKelvins(eitherWay))));
    return CastInput.blaming(
        "--count",
        () ->
            new Wanted(
                options.name, Optional.ofNullable(options.count).orElse(1), wanted, accepted));
  }

  private double minutes(Temperature from, Temperature to, TemperatureUnit unit) {
    double degrees = unit.value(to.minus(from));
    if (degrees <= 0) {
      return -degrees / fallPerHour * 60;
    }
    double rise =
        risePerHour.orElseThrow(
            () ->
                InputException.in(
                    "--rise-per-hour",
                    "not given, but the kiln must go up from %s to %s; expected how fast it does."
                        .formatted(CastInput.degrees(from, unit), CastInput.degrees(to, unit))));
    return degrees / rise * 60;
  }

  private static void notNegative(String option, double value) {
    if (!(value >= 0 && value < Double.POSITIVE_INFINITY)) {
      throw InputException.in(
          option, "\"%s\" is not possible; expected zero or more.".formatted(value));
    }
  }

  private static Page page(PouringOrder order, TemperatureUnit unit) {
    Page page = new Page();
    page.line("Hottest first, minutes from now:");
    for (PouringOrder.Step step : order.steps()) {
      page.hanging(
          "  %-9s".formatted(CastInput.degrees(step.moulds().wanted(), unit)),
          "%s%s: ready at %.0f, poured by %.0f (kiln on its way %.0f, settling %.0f)"
              .formatted(
                  step.moulds().name(),
                  step.moulds().count() > 1 ? " x " + step.moulds().count() : "",
                  step.readyMinutes(),
                  step.pouredMinutes(),
                  step.kilnMinutes(),
                  step.settleMinutes()));
    }
    order
        .compromise()
        .ifPresent(
            c -> {
              page.blank()
                  .line(
                      "All at %s would %s %.0f minutes%s:"
                          .formatted(
                              CastInput.degrees(c.temperature(), unit),
                              c.savedMinutes() >= 0 ? "save" : "cost",
                              Math.abs(c.savedMinutes()),
                              c.withinAll() ? ", inside what you accept for each" : ""));
              c.costs()
                  .forEach(
                      k ->
                          page.hanging(
                              "  ",
                              "%s: %+.0f %s, %s"
                                  .formatted(
                                      k.name(),
                                      unit == TemperatureUnit.CELSIUS
                                          ? k.offKelvins()
                                          : k.offKelvins() * 1.8,
                                      unit == TemperatureUnit.CELSIUS ? "K" : "°F",
                                      k.sentence())));
            });
    page.blank()
        .hanging(
            "note  ",
            "The core follows the kiln late, the more the thicker the mould; --settle-minutes must cover"
                + " that. Each opening of the door cools what stays inside.");
    return page;
  }
}
