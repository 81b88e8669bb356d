package org.heatwright.app.cli;

import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalInt;
import org.heatwright.app.api.ApiRoutes;
import org.heatwright.app.files.InputException;
import org.heatwright.app.json.ServingJson;
import org.heatwright.app.web.Bench;
import org.heatwright.app.web.BenchSettings;

/** Serves the bench until the process is told to end. */
final class Serving {

  private static final int MOST_PORT = 65_535;

  private Serving() {}

  /** Opens the bench, says where, and waits. */
  static void serve(
      Surroundings surroundings,
      Answer answer,
      BenchSettings settings,
      String what,
      Optional<Path> store)
      throws InterruptedException {
    ApiRoutes api =
        new ApiRoutes(
            new AskedFromElsewhere(surroundings, settings.store().file()),
            settings.store(),
            settings.clock());
    try (Bench bench = Bench.start(settings.withApi(api))) {
      String address = String.valueOf(bench.address());
      Page page = new Page();
      page.raw(
          "%s is open at %s%s%n"
              .formatted(what, address, store.map(file -> " (store " + file + ")").orElse("")));
      page.line("Stop it with Ctrl-C.");
      answer.give(surroundings, new ServingJson(address, store.map(Path::toString)), page);
      bench.workAhead();
      surroundings.waiting().untilEnd();
    }
  }

  /**
   * The port that was asked for.
   *
   * @throws InputException if there is no such port
   */
  static OptionalInt port(Optional<Integer> asked) {
    if (asked.isEmpty()) {
      return OptionalInt.empty();
    }
    int port = asked.get();
    if (port < 0 || port > MOST_PORT) {
      throw InputException.in(
          "--port", "%d is no port; expected 0 (any free one) to %d.".formatted(port, MOST_PORT));
    }
    return OptionalInt.of(port);
  }
}
