package org.heatwright.app.cli;

import org.heatwright.app.casting.CastInput;
import org.heatwright.units.TemperatureUnit;
import picocli.CommandLine.Option;

/** The option that says in which degrees all others are. */
final class InUnit {

  @Option(names = "--unit", paramLabel = "U", defaultValue = "C", description = "C or F.")
  private String letter;

  TemperatureUnit unit() {
    return CastInput.unit("--unit", letter);
  }
}
