package org.heatwright.app.web;

import java.time.Clock;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.heatwright.app.api.ApiRoutes;
import org.heatwright.app.store.Store;

/**
 * What a bench needs to start.
 *
 * @param store what is on the shelf; stays the caller's to close
 * @param clock what time it is
 * @param opening what is chosen when the page is opened without any choice: field name to text
 * @param port the port asked for, 0 for any free one; empty: 7070, or a free one where that is
 *     taken
 * @param demo where this is a demo studio: the address of the bench it was opened from, or empty
 *     text; every page of it says so
 * @param api what programs ask beside the pages; empty: nothing
 */
public record BenchSettings(
    Store store,
    Clock clock,
    OptionalInt port,
    Map<String, String> opening,
    Optional<String> demo,
    Optional<ApiRoutes> api) {

  /** The port tried first when none is asked for. */
  public static final int USUAL_PORT = 7070;

  public BenchSettings {
    opening = Map.copyOf(opening);
    if (port.isPresent() && (port.getAsInt() < 0 || port.getAsInt() > 65535)) {
      throw new IllegalArgumentException(
          "The port (%d) must be 0 to 65535; 0 takes any free one.".formatted(port.getAsInt()));
    }
  }

  /** A person's own bench. */
  public BenchSettings(Store store, Clock clock, OptionalInt port, Map<String, String> opening) {
    this(store, clock, port, opening, Optional.empty(), Optional.empty());
  }

  /** A bench that opens on the first of everything. */
  public BenchSettings(Store store, Clock clock, OptionalInt port) {
    this(store, clock, port, Map.of());
  }

  /**
   * The same bench as a demo studio.
   *
   * @param back address of the bench it was opened from, or empty
   */
  public BenchSettings asDemo(String back) {
    return new BenchSettings(store, clock, port, opening, Optional.of(back), api);
  }

  /** The same bench, which answers programs, too. */
  public BenchSettings withApi(ApiRoutes routes) {
    return new BenchSettings(store, clock, port, opening, demo, Optional.of(routes));
  }
}
