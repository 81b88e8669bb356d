package org.heatwright.keypad;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.heatwright.keypad.TestKeypads.celsius;
import static org.heatwright.keypad.TestKeypads.schedule;
import static org.heatwright.keypad.TestKeypads.segment;

import java.util.List;
import org.heatwright.schedule.Schedule;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Test;

class UnitTrapTest {

  @Test
  void nineHundredMeantInFahrenheitIsTakenInCelsius() {
    Schedule meant =
        Schedule.of(
            "pour",
            TemperatureUnit.FAHRENHEIT,
            List.of(segment(TemperatureUnit.FAHRENHEIT, 180, 900, 60)));
    Keypad keypad = TestKeypads.steps();
    UnitTrap trap = UnitTrap.of(KeypadFit.fit(meant, keypad), keypad);
    assertThat(trap.needsUnitCheck()).isTrue();
    assertThat(trap.targets().get(0).accepted()).isTrue();
    // 900 °C is 1652 °F, 752 °F above 900 °F (418 K, by the definition of the scales).
    assertThat(trap.targets().get(0).meaning())
        .contains("900 °F meant (482.2 °C)", "1652 °F", "752 °F too hot");
  }

  @Test
  void fourHundredEightyMeantInCelsiusIsTakenInFahrenheit() {
    Keypad keypad = TestKeypads.steps();
    UnitTrap trap = UnitTrap.of(KeypadFit.fit(schedule(celsius(100, 480, 60)), keypad), keypad);
    assertThat(trap.needsUnitCheck()).isTrue();
    // 480 °F is 248.9 °C.
    assertThat(trap.targets().get(0).meaning()).contains("248.9 °C", "231 °C too cold");
  }

  @Test
  void aScheduleInTheOtherUnitIsATrapForAFixedKeypadButItsUnitNeedsNoCheck() {
    Schedule meant =
        Schedule.of(
            "pour",
            TemperatureUnit.FAHRENHEIT,
            List.of(
                segment(TemperatureUnit.FAHRENHEIT, 180, 900, 60),
                segment(TemperatureUnit.FAHRENHEIT, 180, 1350, 60)));
    Keypad keypad = TestKeypads.digits();
    UnitTrap trap = UnitTrap.of(KeypadFit.fit(meant, keypad), keypad);
    assertThat(trap.needsUnitCheck()).isFalse();
    assertThat(trap.springs()).isTrue();
    assertThat(trap.targets()).extracting(UnitTrap.Target::accepted).containsExactly(true, false);
    assertThat(trap.targets().get(1).meaning()).contains("refused", "0 to 1200 °C");
  }

  @Test
  void theWorstIsTheOneThatGoesFarthestWrong() {
    Keypad keypad = TestKeypads.knob();
    UnitTrap trap =
        UnitTrap.of(
            KeypadFit.fit(
                schedule(celsius(60, 150, 60), celsius(60, 730, 60), celsius(60, 500, 60)), keypad),
            keypad);
    UnitTrap.Target worst = trap.worst().orElseThrow();
    assertThat(worst.segment()).isEqualTo(2);
    // 730 °F is 387.78 °C: (730 - 32) / 1.8.
    assertThat(worst.off().kelvins()).isCloseTo(698 / 1.8 - 730, within(1e-9));
  }

  @Test
  void noAlarmWhereThereIsOneUnitOnly() {
    Keypad keypad = TestKeypads.digits();
    UnitTrap trap = UnitTrap.of(KeypadFit.fit(schedule(celsius(100, 900, 60)), keypad), keypad);
    assertThat(trap.springs()).isFalse();
    assertThat(trap.needsUnitCheck()).isFalse();
  }
}
