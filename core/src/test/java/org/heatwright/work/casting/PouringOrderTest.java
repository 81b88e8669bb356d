package org.heatwright.work.casting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.heatwright.forecast.Changeover;
import org.heatwright.inspect.TemperatureRange;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.work.casting.PouringOrder.Change;
import org.heatwright.work.casting.PouringOrder.Wanted;
import org.junit.jupiter.api.Test;

class PouringOrderTest {

  /** 120 K an hour, both ways: two kelvins a minute. */
  private static Change kiln(double settleMinutes) {
    return (from, to) ->
        Changeover.atRate(from, to, HeatingRate.ofKelvinsPerHour(120), settleMinutes);
  }

  private static final Temperature TOP = Temperature.ofCelsius(730);

  private static Wanted wanted(String name, int count, double celsius, double eitherWay) {
    return new Wanted(
        name,
        count,
        Temperature.ofCelsius(celsius),
        TemperatureRange.ofCelsius(celsius - eitherWay, celsius + eitherWay));
  }

  @Test
  void theHottestGoesFirstAndTheKilnComesDown() {
    PouringOrder order =
        PouringOrder.of(
            List.of(wanted("signet", 2, 450, 25), wanted("filigree", 3, 630, 25)),
            TOP,
            kiln(60),
            5);

    assertThat(order.steps())
        .extracting(s -> s.moulds().name())
        .containsExactly("filigree", "signet");
    // By hand: 100 K in 50 min, 60 min to settle, three pours of 5; then 180 K in 90 min.
    assertThat(order.steps().get(0).readyMinutes()).isCloseTo(110, within(1e-9));
    assertThat(order.steps().get(0).pouredMinutes()).isCloseTo(125, within(1e-9));
    assertThat(order.steps().get(1).readyMinutes()).isCloseTo(275, within(1e-9));
    assertThat(order.totalMinutes()).isCloseTo(285, within(1e-9));
  }

  @Test
  void aCompromiseSaysWhatItCosts() {
    PouringOrder order =
        PouringOrder.of(
            List.of(wanted("signet", 2, 450, 25), wanted("filigree", 3, 630, 25)),
            TOP,
            kiln(60),
            5);
    PouringOrder.Compromise one = order.compromise().orElseThrow();
    assertThat(one.temperature().celsius()).isEqualTo(540);
    assertThat(one.withinAll()).isFalse();
    assertThat(one.costs()).extracting(PouringOrder.Cost::offKelvins).containsExactly(-90.0, 90.0);
    assertThat(one.costs().get(0).sentence()).contains("may not fill");
    assertThat(one.costs().get(1).sentence()).contains("more porous");
    // By hand: 190 K in 95 min, 60 to settle, five pours of 5: 180 against 285.
    assertThat(one.savedMinutes()).isCloseTo(105, within(1e-9));
  }

  @Test
  void whereAllAcceptOneItIsTaken() {
    PouringOrder order =
        PouringOrder.of(
            List.of(wanted("a", 1, 500, 25), wanted("b", 1, 540, 25)), TOP, kiln(60), 5);
    PouringOrder.Compromise one = order.compromise().orElseThrow();
    assertThat(one.withinAll()).isTrue();
    assertThat(one.temperature().celsius()).isBetween(515.0, 525.0);
    assertThat(one.costs()).allMatch(PouringOrder.Cost::accepted);
  }

  @Test
  void equalWishesNeedNoCompromiseAndNoSecondWait() {
    PouringOrder order =
        PouringOrder.of(
            List.of(wanted("a", 1, 500, 25), wanted("b", 1, 500, 25)), TOP, kiln(60), 5);
    assertThat(order.compromise()).isEmpty();
    assertThat(order.steps().get(1).readyMinutes())
        .isCloseTo(order.steps().get(0).pouredMinutes(), within(1e-9));
  }

  @Test
  void whatCannotBeIsTold() {
    assertThatThrownBy(() -> PouringOrder.of(List.of(), TOP, kiln(60), 5))
        .hasMessageContaining("at least one");
    assertThatThrownBy(() -> PouringOrder.of(List.of(wanted("a", 1, 500, 25)), TOP, kiln(60), -1))
        .hasMessageContaining("must not be negative");
    assertThatThrownBy(
            () -> PouringOrder.of(List.of(wanted("a", 1, 500, 25)), TOP, kiln(Double.NaN), 5))
        .hasMessageContaining("zero or more minutes");
  }
}
