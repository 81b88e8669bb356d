package org.heatwright.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.List;
import org.heatwright.kiln.Tariff;
import org.heatwright.kiln.Tariff.PriceBand;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CostEstimateTest {

  private static final Tariff NIGHT =
      new Tariff(
          "EUR",
          List.of(
              new PriceBand(LocalTime.of(22, 0), LocalTime.of(8, 0), 0.12),
              new PriceBand(LocalTime.of(8, 0), LocalTime.of(22, 0), 0.30)));

  private static Forecast hours(double hours, double watts, Band kilowattHours) {
    Band end = Band.exactly(hours * 3600);
    return Forecasts.empty(end, end, watts, kilowattHours);
  }

  private static ZonedDateTime at(String zone, String local) {
    return LocalDateTime.parse(local).atZone(ZoneId.of(zone));
  }

  /** CHK-I2: 8 h at a mean of 1.1 kW from 20:00, 0.30 until 22:00, then 0.12: 1.452. */
  @Test
  void aFiringIntoTheNightIsPricedByBand() {
    CostEstimate cost =
        CostEstimate.of(
            hours(8, 1100, Band.exactly(8.8)), NIGHT, at("Europe/Lisbon", "2026-12-02T20:00"));

    assertThat(cost.cost().median()).isCloseTo(1.452, within(1e-12));
    assertThat(cost.currency()).isEqualTo("EUR");
    assertThat(cost.shares())
        .extracting(CostEstimate.Share::pricePerKilowattHour)
        .containsExactly(0.30, 0.12);
    assertThat(cost.shares().get(0).kilowattHours()).isCloseTo(2.2, within(1e-12));
  }

  @Test
  void theSpreadOfTheEnergyIsTheSpreadOfTheCost() {
    CostEstimate cost =
        CostEstimate.of(
            hours(8, 1100, new Band(8, 8.8, 9.9)), NIGHT, at("Europe/Lisbon", "2026-12-02T20:00"));

    assertThat(cost.cost().low()).isCloseTo(1.452 / 8.8 * 8, within(1e-12));
    assertThat(cost.cost().high()).isCloseTo(1.452 / 8.8 * 9.9, within(1e-12));
  }

  @Test
  void aFlatTariffIsEnergyTimesPrice() {
    CostEstimate cost =
        CostEstimate.of(
            hours(30, 900, Band.exactly(27)),
            Tariff.flat("GBP", 0.25),
            at("Europe/London", "2026-12-02T20:00"));

    assertThat(cost.cost().median()).isCloseTo(6.75, within(1e-12));
  }

  /** From 20:00 to 07:00 on the wall: 12 h when the clocks go back, 10 h when they go forward. */
  @ParameterizedTest
  @CsvSource({"2026-10-24T20:00, 12, 2", "2027-03-27T20:00, 10, 2", "2026-12-02T20:00, 11, 2"})
  void bandsFollowTheWallClock(String start, double hours, double dearHours) {
    CostEstimate cost =
        CostEstimate.of(hours(hours, 1000, Band.exactly(hours)), NIGHT, at("Europe/London", start));

    assertThat(cost.cost().median())
        .isCloseTo(dearHours * 0.30 + (hours - dearHours) * 0.12, within(1e-9));
  }

  /** A band that ends inside the doubled hour ends twice: 01:30 to 02:00 comes back at 0.12. */
  @Test
  void theDoubledHourIsPricedBothTimes() {
    Tariff tariff =
        new Tariff(
            "GBP",
            List.of(
                new PriceBand(LocalTime.of(1, 30), LocalTime.of(12, 0), 1),
                new PriceBand(LocalTime.of(12, 0), LocalTime.of(1, 30), 0)));

    // 01:00 BST to 02:00 GMT is two hours; 01:30 to 02:00 comes twice.
    CostEstimate cost =
        CostEstimate.of(
            hours(2, 1000, Band.exactly(2)), tariff, at("Europe/London", "2026-10-25T01:00"));

    assertThat(cost.cost().median()).isCloseTo(1.0, within(1e-9));
  }

  @Test
  void noEnergyCostsNothing() {
    CostEstimate cost =
        CostEstimate.of(
            hours(2, 0, Band.exactly(0)), NIGHT, at("Europe/London", "2026-12-02T20:00"));

    assertThat(cost.cost()).isEqualTo(Band.exactly(0));
  }
}
