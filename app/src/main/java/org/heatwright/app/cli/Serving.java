package org.heatwright.app.cli;

import java.util.OptionalInt;
import org.heatwright.app.web.Bench;
import org.heatwright.app.web.BenchSettings;

/** Serves the bench until the process is told to end. */
final class Serving {

  private Serving() {}

  static void serve(Surroundings surroundings, BenchSettings settings, String greeting)
      throws InterruptedException {
    try (Bench bench = Bench.start(settings)) {
      surroundings.out().println(greeting.formatted(bench.address()));
      surroundings.out().println("Stop it with Ctrl-C.");
      surroundings.out().flush();
      surroundings.waiting().untilEnd();
    }
  }

  static OptionalInt port(java.util.Optional<Integer> asked) {
    return asked.map(OptionalInt::of).orElse(OptionalInt.empty());
  }
}
