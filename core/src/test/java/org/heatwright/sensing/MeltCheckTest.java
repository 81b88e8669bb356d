package org.heatwright.sensing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.heatwright.material.Origin;
import org.heatwright.sensing.MeltCheck.Correction;
import org.heatwright.sensing.MeltCheck.Surroundings;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Test;

class MeltCheckTest {

  private static MeltCheck check(double whole, double melted, Surroundings around, double behind) {
    return new MeltCheck(
        Temperature.ofCelsius(whole),
        Temperature.ofCelsius(melted),
        around,
        TemperatureChange.ofKelvins(behind));
  }

  /** ITS-90 Table 1: silver 961.78 °C. */
  @Test
  void aShieldedMeltGivesANarrowBand() {
    Correction correction =
        MeltCheck.seenAt(Temperature.ofCelsius(966.78), Surroundings.SHIELDED_BY_CHARCOAL)
            .correction();
    assertThat(correction.offset().kelvins()).isCloseTo(5.0, within(1e-9));
    assertThat(correction.lowOffset().kelvins()).isCloseTo(5.0, within(1e-9));
    assertThat(correction.highOffset().kelvins()).isCloseTo(5.7, within(1e-9));
  }

  @Test
  void aBareMeltGivesAnUnevenBand() {
    Correction correction =
        MeltCheck.seenAt(Temperature.ofCelsius(958.78), Surroundings.BARE_IN_AIR).correction();
    assertThat(correction.offset().kelvins()).isCloseTo(-3.0, within(1e-9));
    assertThat(correction.lowOffset().kelvins()).isCloseTo(-3.0, within(1e-9));
    assertThat(correction.highOffset().kelvins()).isCloseTo(9.0, within(1e-9));
    assertThat(correction.sentence(TemperatureUnit.CELSIUS))
        .isEqualTo(
            "At 958.8 °C the display shows 3 K too little (possible: -3 to 9 K above the truth; wire"
                + " bare in air).");
    assertThat(correction.sentence(TemperatureUnit.FAHRENHEIT))
        .isEqualTo(
            "At 1757.8 °F the display shows 5.4 °F too little (possible: -5.4 to 16.2 °F above the"
                + " truth; wire bare in air).");
    assertThat(correction.origins()).extracting(Origin::kind).contains(Origin.Kind.MEMORY);
  }

  @Test
  void timeBetweenLooksAndLagWidenTheBand() {
    Correction correction =
        check(964.78, 968.78, Surroundings.SHIELDED_BY_CHARCOAL, 2).correction();
    assertThat(correction.lowOffset().kelvins()).isCloseTo(3.0, within(1e-9));
    assertThat(correction.offset().kelvins()).isCloseTo(6.0, within(1e-9));
    assertThat(correction.highOffset().kelvins()).isCloseTo(9.7, within(1e-9));
    assertThat(correction.shown().celsius()).isCloseTo(966.78, within(1e-9));
  }

  @Test
  void theLagOfADisplayIsRateTimesLag() {
    assertThat(MeltCheck.behind(HeatingRate.ofKelvinsPerHour(180), 40).kelvins())
        .isCloseTo(2.0, within(1e-12));
    assertThatThrownBy(() -> MeltCheck.behind(HeatingRate.ofKelvinsPerHour(180), -1))
        .hasMessageContaining("zero or more");
  }

  /** The truth is drawn first, so the limits are tested from outside. */
  @Test
  void theTruthIsAlwaysBetweenTheLimits() {
    Random random = new Random(962);
    for (int i = 0; i < 2000; i++) {
      Surroundings around = Surroundings.values()[i % 2];
      double offset = 80 * random.nextDouble() - 40;
      double meltedAt = 961.78 - random.nextDouble() * around.lowerByAtMost().kelvins();
      double behind = 3 * random.nextDouble();
      double shown = meltedAt + offset - behind * random.nextDouble();
      Correction correction =
          check(shown - 3 * random.nextDouble(), shown + 3 * random.nextDouble(), around, behind)
              .correction();
      assertThat(offset)
          .isBetween(correction.lowOffset().kelvins(), correction.highOffset().kelvins());
      assertThat(correction.offset()).isBetween(correction.lowOffset(), correction.highOffset());
    }
  }

  @Test
  void theOffsetBelongsToTheMeltItself() {
    Correction correction =
        check(969.78, 971.78, Surroundings.SHIELDED_BY_CHARCOAL, 2).correction();
    assertThat(correction.point().offset().kelvins()).isCloseTo(10.0, within(1e-9));
    assertThat(correction.point().truth().celsius()).isCloseTo(961.78, within(1e-9));
    OffsetCorrection guess = OffsetCorrection.inProportion(correction.point());
    assertThat(guess.offsetAt(Temperature.ofCelsius(485.89)).kelvins())
        .isCloseTo(5.0, within(1e-9));
    assertThat(guess.truth(Temperature.ofCelsius(971.78)).celsius())
        .isCloseTo(961.78, within(1e-9));
  }

  @Test
  void whatIsNoOffsetIsRefused() {
    // a type S couple on a display set to type K shows 225 °C at the melt
    assertThatThrownBy(() -> MeltCheck.seenAt(Temperature.ofCelsius(225), Surroundings.BARE_IN_AIR))
        .hasMessage(
            "The wire melts at 961.8 °C, and the display said 225 °C to 225 °C: more than 100 K off"
                + " is no offset; check the type setting, the leads, the unit and where the tip is.");
    assertThatThrownBy(() -> check(970, 960, Surroundings.BARE_IN_AIR, 0))
        .hasMessageContaining("cannot be seen melted at 960 °C and still whole at 970 °C");
    assertThatThrownBy(() -> check(960, 970, Surroundings.BARE_IN_AIR, -1))
        .hasMessageContaining("0 K or more");
  }

  @Test
  void cautionsAreShown() {
    assertThat(String.join(" ", MeltCheck.cautions()))
        .contains("970 °C")
        .contains("carbon monoxide")
        .contains("One melt says nothing about other temperatures");
  }
}
