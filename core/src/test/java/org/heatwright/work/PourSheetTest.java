package org.heatwright.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.heatwright.mould.Investment;
import org.heatwright.mould.Mould;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.casting.PouringMethod;
import org.junit.jupiter.api.Test;

class PourSheetTest {

  private static final Temperature ROOM = Temperature.ofCelsius(20);
  private static final Temperature POUR = Temperature.ofCelsius(500);

  private static BurnoutWork work(PouredMetal metal) {
    return new BurnoutWork(
        List.of(
            new PatternedMould(
                new Mould(3, 0.090, 0.150, 0.003),
                PatternedMould.Pattern.WAX,
                OptionalDouble.of(0.014)),
            new PatternedMould(
                new Mould(1, 0.063, 0.080, 0.002),
                PatternedMould.Pattern.RESIN,
                OptionalDouble.of(0.006))),
        Investment.gypsum(0.40),
        DataSheet.none(),
        metal,
        Optional.empty());
  }

  private static PourSheet sheet(PouredMetal metal) {
    return PourSheet.of(work(metal), POUR, ROOM, TemperatureUnit.CELSIUS).orElseThrow();
  }

  private static PouredMetal sterling(Optional<Temperature> least, OptionalDouble thinnest) {
    return new PouredMetal(
        "sterling-925",
        Optional.empty(),
        Optional.empty(),
        least,
        thinnest,
        Optional.of(PouringMethod.VACUUM));
  }

  /** By hand: 14 g of wax at 0.95 make 152.67 g at 10.36 g/cm³, with a tenth for the button. */
  @Test
  void theMetalIsThatOfEveryPattern() {
    PourSheet sheet = sheet(PouredMetal.of("sterling-925"));
    double wax = 0.014 / 950 * 10_360 * 1.1;
    double resin = 0.006 / 1090 * 10_360 * 1.1;
    assertThat(sheet.kinds().get(0).metal().orElseThrow().totalKilograms().usual())
        .isCloseTo(wax, within(1e-12));
    assertThat(sheet.metalKilograms().orElseThrow().usual())
        .isCloseTo(3 * wax + resin, within(1e-12));
    assertThat(sheet(PouredMetal.of("pewter")).metalKilograms()).isEmpty();
  }

  @Test
  void theSmallMouldFallsFirstAndACradleKeepsTheHeatLonger() {
    PourSheet sheet = sheet(PouredMetal.of("sterling-925"));
    assertThat(sheet.least()).isEqualTo(Temperature.ofCelsius(475));
    assertThat(sheet.ownLeast()).isFalse();
    assertThat(sheet.quickest().mould().diameterMetres()).isEqualTo(0.063);
    for (PourSheet.Kind kind : sheet.kinds()) {
      assertThat(kind.cradleSeconds().orElseThrow()).isGreaterThan(kind.airSeconds().orElseThrow());
    }
    PourSheet lower =
        sheet(sterling(Optional.of(Temperature.ofCelsius(450)), OptionalDouble.empty()));
    assertThat(lower.ownLeast()).isTrue();
    assertThat(lower.quickest().airSeconds().orElseThrow())
        .isGreaterThan(sheet.quickest().airSeconds().orElseThrow());
  }

  @Test
  void nothingIsPouredIntoWhatIsAsCoolAsTheRoom() {
    assertThat(
            PourSheet.of(
                work(PouredMetal.of("sterling-925")),
                Temperature.ofCelsius(60),
                ROOM,
                TemperatureUnit.CELSIUS))
        .isEmpty();
  }

  /** Thin work wants the mould hotter; the studio's own value goes before any source. */
  @Test
  void theThinnestSectionSetsTheComposedMouldTemperature() {
    PouredMetal light = sterling(Optional.empty(), OptionalDouble.of(0.0012));
    PouredMetal heavy = sterling(Optional.empty(), OptionalDouble.of(0.004));
    assertThat(last(light)).isGreaterThan(last(heavy));
    assertThat(last(light)).isEqualTo(sheet(light).plan().mould().orElseThrow().value());
    assertThat(last(PouredMetal.of("sterling-925"))).isEqualTo(POUR);
    PouredMetal own =
        new PouredMetal(
            "sterling-925",
            Optional.of(Temperature.ofCelsius(520)),
            Optional.empty(),
            Optional.empty(),
            OptionalDouble.of(0.0012),
            Optional.empty());
    assertThat(last(own)).isEqualTo(Temperature.ofCelsius(520));
    assertThat(sheet(own).plan().mould().orElseThrow().own()).isTrue();
  }

  @Test
  void aLeastTemperatureAboveThePoursIsRefused() {
    assertThatThrownBy(
            () ->
                new PouredMetal(
                    "sterling-925",
                    Optional.of(POUR),
                    Optional.empty(),
                    Optional.of(POUR),
                    OptionalDouble.empty(),
                    Optional.empty()))
        .hasMessageContaining("must be below the one it leaves the kiln with (500.0 °C)");
  }

  private static Temperature last(PouredMetal metal) {
    var segments =
        Composer.compose(work(metal), Scenarios.quaysideMoulds().kiln(), Optional.empty())
            .schedule()
            .segments();
    return segments.get(segments.size() - 1).target();
  }
}
