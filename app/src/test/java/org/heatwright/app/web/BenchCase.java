package org.heatwright.app.web;

import java.time.Clock;
import java.util.Map;
import java.util.OptionalInt;
import org.heatwright.app.demo.DemoStudio;
import org.heatwright.app.store.Store;
import org.junit.jupiter.api.AfterEach;

/** A bench for each test of a class, asked over HTTP; what is on its shelf is gone afterwards. */
abstract class BenchCase {

  Store store;
  Bench bench;
  AskedBench asked;

  /** Opens a bench with an empty shelf. */
  void open(Clock clock) {
    start(Store.temporary(clock), clock, Map.of());
  }

  /** Opens a bench with the demo studio on its shelf. */
  void openStudio(Clock clock) {
    openStudio(clock, Map.of());
  }

  /**
   * The same.
   *
   * @param opening what is chosen when a plan's page is opened without a choice
   */
  void openStudio(Clock clock, Map<String, String> opening) {
    Store full = Store.temporary(clock);
    DemoStudio.fill(full);
    start(full, clock, opening);
  }

  private void start(Store shelf, Clock clock, Map<String, String> opening) {
    store = shelf;
    bench = Bench.start(new BenchSettings(store, clock, OptionalInt.of(0), opening));
    asked = new AskedBench(bench);
  }

  @AfterEach
  void close() {
    bench.close();
    store.close();
  }
}
