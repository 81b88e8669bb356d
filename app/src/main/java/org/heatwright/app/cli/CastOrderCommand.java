package org.heatwright.app.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.heatwright.app.api.Answers;
import org.heatwright.app.casting.OrderAsk;
import org.heatwright.app.files.InputException;
import org.heatwright.app.json.CastOrderJson;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.kiln.Kiln;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.Composer;
import org.heatwright.work.Composition;
import org.heatwright.work.casting.PouringOrder;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

@Answers(CastOrderJson.class)
@Command(
    name = "order",
    description = {
      "Moulds that want different temperatures from one kiln: the order, with the waits between, and what one temperature for all would cost.",
      "Temperatures are in the unit of --unit. With a kiln and its burnout the waits are forecast, for the slowest kiln and core in ten; else they go by the rates you give."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  heatwright cast order --mould lace --wants 630 --count 3 \\",
      "      --mould signet --wants 450 --kiln-now 730 --fall-per-hour 150",
      "  heatwright cast order --mould lace --wants 630 --mould signet --wants 450 \\",
      "      --kiln kilns/capstan.yaml --work works/harbour-burnout.yaml",
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

    private OrderAsk.Mould asked() {
      return new OrderAsk.Mould(name, wanted, Optional.ofNullable(count).orElse(1));
    }
  }

  @ArgGroup(exclusive = false, multiplicity = "1..*", heading = "Moulds of one wish:%n")
  private List<WantedOptions> moulds = new ArrayList<>();

  @Option(
      names = "--kiln",
      paramLabel = "K",
      description = "Kiln file: with --work the waits are forecast.")
  private Optional<Path> kilnPath;

  @Option(names = "--work", paramLabel = "W", description = "Work file of the burnout.")
  private Optional<Path> workPath;

  @Option(
      names = "--kiln-now",
      paramLabel = "T",
      description =
          "Temperature of kiln and moulds now; with --kiln the burnout's top if left out.")
  private Optional<Double> kilnNow;

  @Option(
      names = "--fall-per-hour",
      paramLabel = "R",
      description = "How fast the kiln comes down; with --kiln as fast as it will if left out.")
  private Optional<Double> fallPerHour;

  @Option(
      names = "--rise-per-hour",
      paramLabel = "R",
      description = "How fast it goes up, if it must; not with --kiln.")
  private Optional<Double> risePerHour;

  @Option(
      names = "--settle-minutes",
      paramLabel = "M",
      description = "For the cores after each change (60); not with --kiln.")
  private Optional<Double> settleMinutes;

  @Option(names = "--pour-minutes", paramLabel = "M", description = "For each mould (5).")
  private Optional<Double> pourMinutes;

  @Option(
      names = "--accept-degrees",
      paramLabel = "D",
      description = "What would do, either side of the wish (25 K, 45 °F).")
  private Optional<Double> acceptDegrees;

  @Mixin private InUnit degrees;

  @Mixin private Answer answer;

  private final Surroundings surroundings;

  CastOrderCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    TemperatureUnit unit = degrees.unit();
    Optional<ForecastRequest> firing = firing();
    PouringOrder order =
        new OrderAsk(
                moulds.stream().map(WantedOptions::asked).toList(),
                kilnNow
                    .or(() -> firing.map(f -> unit.value(f.schedule().peak())))
                    .orElseThrow(() -> needed("--kiln-now")),
                firing
                    .map(f -> OrderAsk.byForecast(f, fallPerHour, unit))
                    .orElseGet(
                        () ->
                            OrderAsk.atRates(
                                fallPerHour.orElseThrow(() -> needed("--fall-per-hour")),
                                risePerHour,
                                settleMinutes.orElse(OrderAsk.USUAL_SETTLE_MINUTES),
                                unit)),
                pourMinutes.orElse(OrderAsk.USUAL_POUR_MINUTES),
                acceptDegrees,
                unit)
            .order();
    answer.give(surroundings, CastOrderJson.of(order), CastPage.of(OrderAsk.words(order, unit)));
    return Answer.DONE;
  }

  /** The burnout that is composed for the kiln and the work, if they are given. */
  private Optional<ForecastRequest> firing() {
    if (kilnPath.isEmpty() && workPath.isEmpty()) {
      return Optional.empty();
    }
    Path kilnFile = kilnPath.orElseThrow(() -> besides("--kiln", "--work"));
    Path workFile = workPath.orElseThrow(() -> besides("--work", "--kiln"));
    risePerHour.ifPresent(r -> unwanted("--rise-per-hour"));
    settleMinutes.ifPresent(m -> unwanted("--settle-minutes"));
    Kiln kiln = Input.kiln(kilnFile).kiln();
    Composition composed = Composer.compose(Input.work(workFile), kiln, Optional.empty());
    if (composed.charge().moulds().isEmpty()) {
      throw InputException.in(
          "--work", "%s has no moulds; expected the work of a burnout.".formatted(workFile));
    }
    return Optional.of(ForecastRequest.of(composed.schedule(), kiln, composed.charge()));
  }

  private static InputException needed(String option) {
    return InputException.in(
        option, "not given; expected it, or --kiln and --work for a forecast.");
  }

  private static InputException besides(String missing, String given) {
    return InputException.in(
        missing, "not given, but %s is; a forecast needs both.".formatted(given));
  }

  private static void unwanted(String option) {
    throw InputException.in(
        option, "given besides --kiln, which forecasts that; keep one of the two.");
  }
}
