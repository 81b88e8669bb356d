package org.heatwright.app.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.heatwright.app.casting.OrderAsk;
import org.heatwright.app.json.CastOrderJson;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.casting.PouringOrder;
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

    private OrderAsk.Mould asked() {
      return new OrderAsk.Mould(name, wanted, Optional.ofNullable(count).orElse(1));
    }
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

  @Mixin private InUnit degrees;

  @Mixin private Answer answer;

  private final Surroundings surroundings;

  CastOrderCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    TemperatureUnit unit = degrees.unit();
    PouringOrder order =
        new OrderAsk(
                moulds.stream().map(WantedOptions::asked).toList(),
                kilnNow,
                fallPerHour,
                risePerHour,
                settleMinutes,
                pourMinutes,
                acceptDegrees,
                unit)
            .order();
    answer.give(surroundings, CastOrderJson.of(order), CastPage.of(OrderAsk.words(order, unit)));
    return Answer.DONE;
  }
}
