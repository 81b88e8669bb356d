package org.heatwright.app.cli;

import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import org.heatwright.app.demo.DemoStudio;
import org.heatwright.app.store.Store;
import org.heatwright.app.web.Bench;
import org.heatwright.app.web.BenchSettings;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

@Command(
    name = "demo",
    description = {
      "Opens the web bench on a ready-made studio: three kilns, six keypads, work of every kind.",
      "Nothing to set up; what is changed there is gone when it is stopped."
    },
    footerHeading = "%nExamples:%n",
    footer = {"  heatwright demo", "  heatwright demo --port 8081"})
final class DemoCommand implements Callable<Integer> {

  @Option(
      names = "--port",
      paramLabel = "N",
      description = "Port on this machine; 7070, or a free one where that is taken.")
  private Optional<Integer> port;

  @Mixin private Answer answer;

  private final Surroundings surroundings;

  DemoCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() throws InterruptedException {
    OptionalInt asked = Serving.port(port);
    Bench.warmUp();
    try (Store store = Store.temporary(surroundings.clock())) {
      DemoStudio.fill(store);
      Serving.serve(
          surroundings,
          answer,
          new BenchSettings(store, surroundings.clock(), asked, DemoStudio.OPENING).asDemo(""),
          "The demo studio",
          Optional.empty());
    }
    return Answer.DONE;
  }
}
