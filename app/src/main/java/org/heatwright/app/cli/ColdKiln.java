package org.heatwright.app.cli;

import java.util.Optional;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.TypedNumber;
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
    String text = thermometer.get().strip();
    Optional<TypedNumber> degrees = TypedNumber.of(text);
    Optional<TemperatureUnit> unit = degrees.flatMap(TypedNumber::unit);
    if (degrees.isEmpty() || unit.isEmpty()) {
      throw InputException.in(
          "--thermometer",
          "\"%s\" is not a reading; expected a number with its unit, such as 20C or 68F."
              .formatted(text));
    }
    return Optional.of(
        UnitCheck.judge(
            displayReads.orElseThrow(), degrees.get().value(), unit.get(), unheatedOvernight));
  }
}
