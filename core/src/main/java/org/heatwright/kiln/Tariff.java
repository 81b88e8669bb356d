package org.heatwright.kiln;

import java.time.LocalTime;
import java.util.List;
import java.util.Objects;

/**
 * The price of electricity: one flat price, or bands by local wall time.
 *
 * @param currency ISO 4217 code, e.g. EUR
 * @param bands not empty; together they must cover the day once
 */
public record Tariff(String currency, List<PriceBand> bands) {

  private static final int MINUTES_A_DAY = 24 * 60;

  public Tariff {
    Objects.requireNonNull(currency, "currency");
    bands = List.copyOf(bands);
    int covered = bands.stream().mapToInt(PriceBand::minutes).sum();
    if (covered != MINUTES_A_DAY) {
      throw new IllegalArgumentException(
          "The tariff's bands must cover the day once (%d of %d minutes are covered)."
              .formatted(covered, MINUTES_A_DAY));
    }
    for (int minute = 0; minute < MINUTES_A_DAY; minute++) {
      LocalTime time = LocalTime.ofSecondOfDay(minute * 60L);
      if (bands.stream().filter(band -> band.contains(time)).count() != 1) {
        throw new IllegalArgumentException(
            "The tariff's bands must cover the day once (%s is in none or in two)."
                .formatted(time));
      }
    }
  }

  public static Tariff flat(String currency, double pricePerKilowattHour) {
    return new Tariff(
        currency,
        List.of(new PriceBand(LocalTime.MIDNIGHT, LocalTime.MIDNIGHT, pricePerKilowattHour)));
  }

  /** Price of a kilowatt-hour at a local wall time. */
  public double priceAt(LocalTime time) {
    return bands.stream()
        .filter(band -> band.contains(time))
        .findFirst()
        .orElseThrow()
        .pricePerKilowattHour();
  }

  public boolean isFlat() {
    return bands.size() == 1;
  }

  /**
   * @param from start, inclusive
   * @param to end, exclusive; a band may wrap midnight, and equal ends mean the whole day
   * @param pricePerKilowattHour price of a kilowatt-hour, zero or more
   */
  public record PriceBand(LocalTime from, LocalTime to, double pricePerKilowattHour) {
    public PriceBand {
      if (!(pricePerKilowattHour >= 0 && Double.isFinite(pricePerKilowattHour))) {
        throw new IllegalArgumentException(
            "The price (%s) must be finite and not negative.".formatted(pricePerKilowattHour));
      }
    }

    boolean contains(LocalTime time) {
      if (from.equals(to)) {
        return true;
      }
      return from.isBefore(to)
          ? !time.isBefore(from) && time.isBefore(to)
          : !time.isBefore(from) || time.isBefore(to);
    }

    int minutes() {
      int length = (to.toSecondOfDay() - from.toSecondOfDay()) / 60;
      return length > 0 ? length : length + MINUTES_A_DAY;
    }
  }
}
