package org.heatwright.app.cli;

import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.heatwright.app.api.Commands;
import picocli.CommandLine.Model.CommandSpec;

/** The commands for whoever asks them from elsewhere than a terminal. */
final class AskedFromElsewhere implements Commands {

  private final Surroundings surroundings;

  private final Path store;

  /**
   * @param store the store that is meant
   */
  AskedFromElsewhere(Surroundings surroundings, Path store) {
    this.surroundings = surroundings;
    this.store = store;
  }

  @Override
  public CommandSpec root() {
    return Cli.commandLine(surroundings).getCommandSpec();
  }

  @Override
  public Ran run(List<String> arguments) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream complaint = new ByteArrayOutputStream();
    int exit =
        Cli.runQuoted(
            new Surroundings(
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(complaint, true, StandardCharsets.UTF_8),
                surroundings.clock(),
                surroundings.environment(),
                surroundings.home(),
                surroundings.waiting(),
                InputStream.nullInputStream(),
                Optional.of(store)),
            arguments.toArray(String[]::new));
    return new Ran(
        exit, out.toString(StandardCharsets.UTF_8), complaint.toString(StandardCharsets.UTF_8));
  }
}
