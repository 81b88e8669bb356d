package org.heatwright.app.cli;

import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import org.heatwright.app.store.Store;
import org.heatwright.app.web.Bench;
import org.heatwright.app.web.BenchSettings;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

@Command(
    name = "serve",
    description = "Opens the web bench and HTTP API on your own store.",
    footerHeading = "%nExamples:%n",
    footer = {"  heatwright serve", "  heatwright serve --store studio.db --port 8080"})
final class ServeCommand implements Callable<Integer> {

  @Option(
      names = "--store",
      paramLabel = "FILE",
      description =
          "Store file; made if it is not there. Usual: heatwright.db in your data folder.")
  private Optional<Path> storePath;

  @Option(
      names = "--port",
      paramLabel = "N",
      description = "Port on this machine; 7070, or a free one where that is taken.")
  private Optional<Integer> port;

  @Mixin private Answer answer;

  private final Surroundings surroundings;

  ServeCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() throws InterruptedException {
    OptionalInt asked = Serving.port(port);
    Bench.warmUp();
    Path file =
        storePath.orElseGet(
            () -> Store.defaultFile(surroundings.environment(), surroundings.home()));
    try (Store store = Store.open(file, surroundings.clock())) {
      Serving.serve(
          surroundings,
          answer,
          new BenchSettings(store, surroundings.clock(), asked),
          "The bench",
          Optional.of(file));
    }
    return Answer.DONE;
  }
}
