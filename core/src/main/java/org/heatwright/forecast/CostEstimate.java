package org.heatwright.forecast;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.time.zone.ZoneOffsetTransition;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.heatwright.kiln.Tariff;
import org.heatwright.kiln.Tariff.PriceBand;

/**
 * What the electricity of a firing costs.
 *
 * @param currency ISO 4217 code
 * @param cost in that currency, with the spread of the energy
 * @param shares by price, in the order the firing meets them
 */
public record CostEstimate(String currency, Band cost, List<Share> shares) {

  private static final double JOULES_PER_KILOWATT_HOUR = 3.6e6;

  public CostEstimate {
    shares = List.copyOf(shares);
  }

  /**
   * The part of the energy that is bought at one price.
   *
   * @param pricePerKilowattHour price of a kilowatt-hour
   * @param kilowattHours median energy at that price, kWh
   */
  public record Share(double pricePerKilowattHour, double kilowattHours) {
    /** Its cost in the tariff's currency. */
    public double cost() {
      return pricePerKilowattHour * kilowattHours;
    }
  }

  /**
   * Splits the trace's median power over the tariff's bands by local wall time, clock changes
   * included, and scales the cost with the forecast's energy and its spread.
   *
   * @param start when the program's first segment begins, in the kiln's zone
   */
  public static CostEstimate of(Forecast forecast, Tariff tariff, ZonedDateTime start) {
    double[] seconds = forecast.trace().seconds();
    double[] watts = forecast.trace().powerWatts();
    double end = Math.min(forecast.endSeconds().median(), seconds[seconds.length - 1]);
    Map<Double, Double> joulesByPrice = new LinkedHashMap<>();
    double from = 0;
    for (double to : edges(tariff, start, end)) {
      double middle = (from + to) / 2;
      double price = tariff.priceAt(at(start, middle).toLocalTime());
      joulesByPrice.merge(price, joules(seconds, watts, from, to), Double::sum);
      from = to;
    }
    double joules = joulesByPrice.values().stream().mapToDouble(j -> j).sum();
    Band energy = forecast.energyKilowattHours();
    double scale = joules > 0 ? energy.median() * JOULES_PER_KILOWATT_HOUR / joules : 0;
    List<Share> shares = new ArrayList<>();
    joulesByPrice.forEach(
        (price, j) -> shares.add(new Share(price, j * scale / JOULES_PER_KILOWATT_HOUR)));
    double perKilowattHour =
        energy.median() > 0 ? shares.stream().mapToDouble(Share::cost).sum() / energy.median() : 0;
    return new CostEstimate(
        tariff.currency(),
        new Band(
            energy.low() * perKilowattHour,
            energy.median() * perKilowattHour,
            energy.high() * perKilowattHour),
        shares);
  }

  /** Seconds from the start at which the price may change, rising, the end included. */
  private static List<Double> edges(Tariff tariff, ZonedDateTime start, double endSeconds) {
    TreeSet<Double> edges = new TreeSet<>();
    ZonedDateTime end = at(start, endSeconds);
    for (LocalDate day = start.toLocalDate();
        !day.isAfter(end.toLocalDate());
        day = day.plusDays(1)) {
      for (PriceBand band : tariff.bands()) {
        for (ZoneOffset offset :
            start.getZone().getRules().getValidOffsets(day.atTime(band.from()))) {
          edges.add(secondsTo(start, day.atTime(band.from()).toInstant(offset)));
        }
      }
    }
    ZoneOffsetTransition change = start.getZone().getRules().nextTransition(start.toInstant());
    while (change != null && change.getInstant().isBefore(end.toInstant())) {
      edges.add(secondsTo(start, change.getInstant()));
      change = start.getZone().getRules().nextTransition(change.getInstant());
    }
    edges.add(endSeconds);
    return edges.stream().filter(s -> s > 0 && s <= endSeconds).toList();
  }

  /** Energy between two times, J: power is linear between grid points. */
  private static double joules(double[] seconds, double[] watts, double from, double to) {
    double joules = 0;
    for (int i = 0; i + 1 < seconds.length; i++) {
      double a = Math.max(from, seconds[i]);
      double b = Math.min(to, seconds[i + 1]);
      if (b > a) {
        double slope = (watts[i + 1] - watts[i]) / (seconds[i + 1] - seconds[i]);
        double middleWatts = watts[i] + slope * ((a + b) / 2 - seconds[i]);
        joules += middleWatts * (b - a);
      }
    }
    return joules;
  }

  private static ZonedDateTime at(ZonedDateTime start, double seconds) {
    return start.plus(Duration.ofMillis(Math.round(seconds * 1000)));
  }

  private static double secondsTo(ZonedDateTime start, Instant instant) {
    return Duration.between(start.toInstant(), instant).toMillis() / 1000.0;
  }
}
