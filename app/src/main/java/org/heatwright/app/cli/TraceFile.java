package org.heatwright.app.cli;

import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Supplier;
import org.heatwright.app.api.Written;
import picocli.CommandLine.Option;

/** The option that says where the curves are written to. */
final class TraceFile {

  @Option(
      names = "--trace",
      paramLabel = "OUT.csv",
      description = "Write the curves there; only another trace is replaced.")
  @Written
  private Optional<Path> path;

  Optional<Path> path() {
    return path;
  }

  /** Refuses, before anything is worked out, what could not be written. */
  void require() {
    path.ifPresent(p -> Output.requireReplaceable(p, Output.Kind.TRACE));
  }

  /**
   * Writes them where that was asked for.
   *
   * @return one sentence that says so
   */
  Optional<String> write(Supplier<String> csv) {
    return path.map(p -> Output.write(p, Output.Kind.TRACE, csv.get()));
  }
}
