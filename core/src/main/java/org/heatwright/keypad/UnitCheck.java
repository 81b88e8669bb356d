package org.heatwright.keypad;

import java.util.Objects;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;

/**
 * Which unit a display is in, settled by a cold kiln's reading against a thermometer. A reading
 * alone settles nothing: 68 may be a cold kiln in °F or a warm one in °C.
 */
public final class UnitCheck {

  /**
   * How far a cold kiln's reading may be from a room thermometer: sensor class, cold junction and a
   * heavy kiln that follows the room slowly. An estimate; the two units lie some 40 degrees or more
   * apart at any room temperature, so it need not be fine.
   */
  public static final double TOLERANCE_KELVIN = 8;

  private static final double COLDEST_ROOM_CELSIUS = -10;
  private static final double HOTTEST_ROOM_CELSIUS = 45;

  private UnitCheck() {}

  /**
   * @param displayReading the number on the idle display, finite
   * @param thermometerReading the number on a thermometer beside the kiln, finite
   * @param thermometerUnit the unit printed on the thermometer
   * @param unheatedOvernight whether the kiln stood unheated overnight
   */
  public static Result judge(
      double displayReading,
      double thermometerReading,
      TemperatureUnit thermometerUnit,
      boolean unheatedOvernight) {
    Objects.requireNonNull(thermometerUnit, "thermometerUnit");
    if (!Double.isFinite(displayReading)) {
      throw new IllegalArgumentException(
          "The display reading (%s) must be a number.".formatted(displayReading));
    }
    if (!Double.isFinite(thermometerReading)) {
      throw new IllegalArgumentException(
          "The thermometer reading (%s) must be a number.".formatted(thermometerReading));
    }
    String display = Words.number(displayReading);
    if (!unheatedOvernight) {
      return undecided(
          "The kiln has not stood unheated overnight, so its reading of %s says nothing about the unit: it may be a warm kiln in °C or a cold one in °F. Look again tomorrow before anything is switched on."
              .formatted(display));
    }
    double roomCelsius = celsius(thermometerReading, thermometerUnit);
    if (!(roomCelsius >= COLDEST_ROOM_CELSIUS && roomCelsius <= HOTTEST_ROOM_CELSIUS)) {
      return undecided(
          "A thermometer at %s %s is not in a room that people work in; read it again, and check its unit."
              .formatted(Words.number(thermometerReading), thermometerUnit.symbol()));
    }
    Temperature room = Temperature.ofCelsius(roomCelsius);
    for (TemperatureUnit unit : TemperatureUnit.values()) {
      double apartDegrees = Math.abs(displayReading - unit.value(room));
      if (unit.change(apartDegrees).kelvins() <= TOLERANCE_KELVIN) {
        return new Result(
            unit == TemperatureUnit.CELSIUS ? Verdict.CELSIUS : Verdict.FAHRENHEIT,
            "The kiln stood unheated overnight and reads %s while the thermometer beside it reads %s %s: in %s that is %s, so the display is in %s."
                .formatted(
                    display,
                    Words.number(thermometerReading),
                    thermometerUnit.symbol(),
                    unit.symbol(),
                    Words.temperature(room, unit),
                    unit.symbol()));
      }
    }
    return undecided(
        "The kiln stood unheated overnight and should read about %s or %s, but it reads %s: it fits neither unit. It may still be warm, or its sensor may be off; find out which before firing."
            .formatted(
                Words.temperature(room, TemperatureUnit.CELSIUS),
                Words.temperature(room, TemperatureUnit.FAHRENHEIT),
                display));
  }

  /** Unlike {@link Temperature}, this takes impossible readings too, so that they can be told. */
  private static double celsius(double reading, TemperatureUnit unit) {
    return unit.change(reading - unit.value(Temperature.ofCelsius(0))).kelvins();
  }

  private static Result undecided(String why) {
    return new Result(Verdict.UNDECIDED, why);
  }

  /** What the check says. */
  public enum Verdict {
    CELSIUS,
    FAHRENHEIT,
    UNDECIDED
  }

  /**
   * @param verdict the unit, or that it is open
   * @param why one or two sentences
   */
  public record Result(Verdict verdict, String why) {

    public Result {
      Objects.requireNonNull(verdict, "verdict");
      Objects.requireNonNull(why, "why");
    }

    public boolean settles(TemperatureUnit unit) {
      return verdict == (unit == TemperatureUnit.CELSIUS ? Verdict.CELSIUS : Verdict.FAHRENHEIT);
    }
  }
}
