package org.heatwright.app.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.heatwright.kiln.Kiln;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The options that say which firings of a kiln were logged, shared by learn and health. */
final class Logged {

  @Parameters(paramLabel = "K", description = "Kiln file.")
  private Path kilnPath;

  @Option(
      names = "--log",
      required = true,
      paramLabel = "L",
      description = "Log of a firing (CSV); may be repeated.")
  private List<Path> logPaths;

  @Option(
      names = "--schedule",
      required = true,
      paramLabel = "S",
      description = "Schedule that ran, one a log, in the order of the logs.")
  private List<Path> schedulePaths;

  @Option(
      names = "--firing",
      paramLabel = "F",
      description = "What was so on that day, one a log, or none at all.")
  private List<Path> firingPaths = new ArrayList<>();

  @Option(
      names = "--date",
      paramLabel = "D",
      description = {
        "Day of a firing whose log has no times of day, one a log; what was",
        "fired before the kiln changed is not held against what it is now."
      })
  private List<String> dates = new ArrayList<>();

  Kiln kiln() {
    return Input.kiln(kilnPath).kiln();
  }

  List<Path> logs() {
    return logPaths;
  }

  /** Reads what was logged. */
  Watched read(Kiln kiln) {
    return Watched.read(kiln, logPaths, schedulePaths, firingPaths, dates);
  }
}
