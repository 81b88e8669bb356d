package org.heatwright.app.web;

import java.util.OptionalInt;
import org.heatwright.app.demo.DemoStudio;
import org.heatwright.app.store.Store;
import org.jspecify.annotations.Nullable;

/**
 * The demo studio beside somebody's own bench: a store of its own that is gone at the end, at an
 * address of its own, so that neither the bench nor the browser can mix the two. It is opened when
 * somebody first asks for it. Safe for use from several threads.
 */
final class DemoHouse implements AutoCloseable {

  private final BenchSettings own;
  private @Nullable Store store;
  private @Nullable Bench bench;

  /**
   * @param own the bench it stands beside
   */
  DemoHouse(BenchSettings own) {
    this.own = own;
  }

  /** Whether there can be one: a demo studio has none beside it. */
  boolean exists() {
    return own.demo().isEmpty();
  }

  /**
   * Where it answers; opens it at the first call.
   *
   * @param back address of the own bench
   */
  synchronized String address(String back) {
    if (bench == null) {
      store = Store.temporary(own.clock());
      DemoStudio.fill(store);
      bench =
          Bench.start(
              new BenchSettings(store, own.clock(), OptionalInt.of(0), DemoStudio.OPENING)
                  .asDemo(back));
    }
    return bench.address().toString();
  }

  @Override
  public synchronized void close() {
    if (bench != null) {
      bench.close();
      bench = null;
    }
    if (store != null) {
      store.close();
      store = null;
    }
  }
}
