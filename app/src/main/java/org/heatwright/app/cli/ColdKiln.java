package org.heatwright.app.cli;

import java.util.Optional;
import java.util.OptionalDouble;
import org.heatwright.app.files.InputException;
import org.heatwright.keypad.UnitCheck;
import org.heatwright.units.TemperatureUnit;
import picocli.CommandLine.Option;

/** The options by which a cold kiln's display beside a thermometer settles the unit. */
final class ColdKiln {

  @Option(
      names = "--display-reads",
      paramLabel = "NUMBER",
      description = "What the idle display reads; with --thermometer it settles the unit.")
  private Optional<Double> displayReads;

  @Option(
      names = "--thermometer",
      paramLabel = "DEGREES",
      description = "What a thermometer beside the cold kiln reads: 20C or 68F.")
  private Optional<String> thermometer;

  @Option(names = "--unheated-overnight", description = "The kiln stood unheated overnight.")
  private boolean unheatedOvernight;

  /** What the readings say; empty if none was given. */
  Optional<UnitCheck.Result> check() {
    if (displayReads.isPresent() != thermometer.isPresent()) {
      throw InputException.in(
          "--thermometer", "--display-reads and --thermometer belong together; give both or none.");
    }
    if (thermometer.isEmpty()) {
      return Optional.empty();
    }
    if (!Double.isFinite(displayReads.orElseThrow())) {
      throw InputException.in(
          "--display-reads",
          "%s is not a reading; expected the number on the display.".formatted(displayReads.get()));
    }
    String text = thermometer.get().strip();
    Optional<TemperatureUnit> unit =
        text.isEmpty()
            ? Optional.empty()
            : TemperatureUnit.ofLetter(text.substring(text.length() - 1));
    OptionalDouble degrees = number(text.isEmpty() ? "" : text.substring(0, text.length() - 1));
    if (unit.isEmpty() || degrees.isEmpty()) {
      throw InputException.in(
          "--thermometer",
          "\"%s\" is not a reading; expected a number with its unit, such as 20C or 68F."
              .formatted(text));
    }
    return Optional.of(
        UnitCheck.judge(
            displayReads.orElseThrow(), degrees.getAsDouble(), unit.get(), unheatedOvernight));
  }

  private static OptionalDouble number(String text) {
    try {
      double value = Double.parseDouble(text.strip());
      return Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty();
    } catch (NumberFormatException e) {
      return OptionalDouble.empty();
    }
  }
}
