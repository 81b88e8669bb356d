package org.heatwright.app.casting;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.heatwright.app.casting.CastAnswer.Row;
import org.heatwright.app.casting.CastAnswer.Table;
import org.heatwright.app.casting.CastAnswer.Weight;
import org.heatwright.app.files.InputException;
import org.heatwright.forecast.Changeover;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.inspect.TemperatureRange;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.casting.PouringOrder;
import org.heatwright.work.casting.PouringOrder.Compromise;
import org.heatwright.work.casting.PouringOrder.Wanted;

/**
 * The order of pouring, as asked for; degrees are of {@code unit}.
 *
 * @param moulds at least one
 * @param kilnNow temperature of kiln and moulds
 * @param change how long kiln and cores take between temperatures
 * @param acceptDegrees what would do, either side of the wish; 25 K where it is not said
 */
public record OrderAsk(
    List<Mould> moulds,
    double kilnNow,
    PouringOrder.Change change,
    double pourMinutes,
    Optional<Double> acceptDegrees,
    TemperatureUnit unit) {

  /** For the cores after each change, where nothing forecasts it, min. Practice: 0.5 to 2 h. */
  public static final double USUAL_SETTLE_MINUTES = 60;

  /** For each mould, min. Our estimate. */
  public static final double USUAL_POUR_MINUTES = 5;

  private static final double USUALLY_ACCEPTED_KELVINS = 25;
  private static final double MOST_ACCEPTED_DEGREES = 300;

  public OrderAsk {
    moulds = List.copyOf(moulds);
  }

  /** Moulds that want one temperature. */
  public record Mould(String name, double wants, int count) {}

  /** Works it out. */
  public PouringOrder order() {
    Temperature now = CastInput.temperature("--kiln-now", kilnNow, unit);
    CastInput.minutes("--pour-minutes", pourMinutes);
    return PouringOrder.of(wanted(), now, change, pourMinutes);
  }

  /** Refuses what is wrong with a wish by itself. */
  public void requireMoulds() {
    wanted();
  }

  private List<Wanted> wanted() {
    double eitherWay =
        acceptDegrees.map(d -> unit.change(accepted(d)).kelvins()).orElse(USUALLY_ACCEPTED_KELVINS);
    return moulds.stream().map(m -> wanted(m, eitherWay)).toList();
  }

  private static double accepted(double degrees) {
    if (!(degrees >= 0 && degrees <= MOST_ACCEPTED_DEGREES)) {
      throw InputException.in(
          "--accept-degrees",
          "\"%s\" is not possible; expected 0 to 300.".formatted(CastInput.typed(degrees)));
    }
    return degrees;
  }

  private Wanted wanted(Mould mould, double eitherWay) {
    if (mould.name().isBlank()) {
      throw InputException.in("--mould", "the name is empty; expected what you call these moulds.");
    }
    Temperature wanted = CastInput.temperature("--wants", mould.wants(), unit);
    TemperatureRange accepted =
        CastInput.blaming(
            "--accept-degrees",
            () ->
                new TemperatureRange(
                    wanted.plus(TemperatureChange.ofKelvins(-eitherWay)),
                    wanted.plus(TemperatureChange.ofKelvins(eitherWay))));
    return CastInput.blaming(
        "--count", () -> new Wanted(mould.name(), mould.count(), wanted, accepted));
  }

  /**
   * Plain rates, in degrees an hour.
   *
   * @param risePerHour needed only where the kiln must go up
   */
  public static PouringOrder.Change atRates(
      double fallPerHour,
      Optional<Double> risePerHour,
      double settleMinutes,
      TemperatureUnit unit) {
    CastInput.positive("--fall-per-hour", fallPerHour);
    risePerHour.ifPresent(r -> CastInput.positive("--rise-per-hour", r));
    CastInput.minutes("--settle-minutes", settleMinutes);
    return (from, to) -> {
      boolean falls = to.compareTo(from) <= 0;
      double rate =
          falls
              ? fallPerHour
              : risePerHour.orElseThrow(
                  () ->
                      InputException.in(
                          "--rise-per-hour",
                          "not given, but the kiln must go up from %s to %s; expected how fast it does."
                              .formatted(
                                  CastWords.degrees(from, unit), CastWords.degrees(to, unit))));
      return Changeover.atRate(from, to, unit.rate(rate), settleMinutes);
    };
  }

  /**
   * By forecast of a kiln with its moulds.
   *
   * @param firing the burnout
   * @param fallPerHour how fast the program lets the kiln fall or rise, degrees an hour; empty: as
   *     it will
   */
  public static PouringOrder.Change byForecast(
      ForecastRequest firing, Optional<Double> fallPerHour, TemperatureUnit unit) {
    fallPerHour.ifPresent(r -> CastInput.positive("--fall-per-hour", r));
    return (from, to) ->
        Changeover.forecast(firing, from, to, fallPerHour.map(unit::rate))
            .orElseThrow(
                () ->
                    InputException.in(
                        "--kiln",
                        "%s and its moulds do not come from %s to %s within 8 h in every likely case; expected wishes nearer together."
                            .formatted(
                                firing.kiln().name(),
                                CastWords.degrees(from, unit),
                                CastWords.degrees(to, unit))));
  }

  /** An order in words. */
  public static CastAnswer words(PouringOrder order, TemperatureUnit unit) {
    List<Table> tables = new ArrayList<>();
    tables.add(
        Table.plain(
            "Hottest first, minutes from now:",
            order.steps().stream().map(step -> row(step, unit)).toList()));
    order.compromise().ifPresent(c -> tables.add(table(c, unit)));
    return new CastAnswer(
        "All poured %.0f minutes from now.".formatted(order.totalMinutes()),
        List.of(),
        tables,
        List.of(
            "Each opening of the door cools what stays inside; heatwright inside says by how much."),
        List.of());
  }

  private static Row row(PouringOrder.Step step, TemperatureUnit unit) {
    return new Row(
        Weight.NONE,
        CastWords.degrees(step.moulds().wanted(), unit),
        "%s%s: ready at %.0f, poured by %.0f (kiln on its way %.0f, settling %.0f)"
            .formatted(
                step.moulds().name(),
                step.moulds().count() > 1 ? " x " + step.moulds().count() : "",
                step.readyMinutes(),
                step.pouredMinutes(),
                step.kilnMinutes(),
                step.settleMinutes()));
  }

  private static Table table(Compromise compromise, TemperatureUnit unit) {
    return Table.plain(
        "All at %s would %s %.0f minutes%s:"
            .formatted(
                CastWords.degrees(compromise.temperature(), unit),
                compromise.savedMinutes() >= 0 ? "save" : "cost",
                Math.abs(compromise.savedMinutes()),
                compromise.withinAll() ? ", inside what you accept for each" : ""),
        compromise.costs().stream()
            .map(
                cost ->
                    new Row(
                        Weight.NONE,
                        "%+.0f %s"
                            .formatted(
                                CastWords.difference(cost.offKelvins(), unit),
                                unit.differenceSymbol()),
                        "%s, %s".formatted(cost.name(), cost.sentence())))
            .toList());
  }
}
