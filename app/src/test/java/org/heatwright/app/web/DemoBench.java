package org.heatwright.app.web;

import java.nio.file.Path;
import java.time.Clock;
import java.util.OptionalInt;
import org.heatwright.app.demo.DemoStudio;
import org.heatwright.app.store.Store;

/** The demo studio's bench on a free port, and a browser to walk it. */
record DemoBench(Store store, Bench bench, Browser browser) implements AutoCloseable {

  static DemoBench open(Path folder, Clock clock) {
    Store store = Store.temporary(clock);
    DemoStudio.fill(store);
    return new DemoBench(
        store,
        Bench.start(new BenchSettings(store, clock, OptionalInt.of(0), DemoStudio.OPENING)),
        new Browser(folder));
  }

  @Override
  public void close() {
    browser.close();
    bench.close();
    store.close();
  }
}
