package org.heatwright.app.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.heatwright.app.files.InputException;
import org.heatwright.app.store.Store;
import picocli.CommandLine.Option;

/** The option that says which store. */
final class OwnStore {

  @Option(
      names = "--store",
      paramLabel = "FILE",
      description = "Store file. Usual: heatwright.db in your data folder.")
  private Optional<Path> path;

  /** Whether it was said. */
  boolean isNamed() {
    return path.isPresent();
  }

  /** The store that was said, or the usual one. */
  Path file(Surroundings surroundings) {
    return path.or(surroundings::store)
        .orElseGet(() -> Store.defaultFile(surroundings.environment(), surroundings.home()));
  }

  /** Opens a store that is there; only the bench, and what keeps something new, makes one. */
  Store open(Surroundings surroundings) {
    Path file = file(surroundings);
    if (!Files.exists(file)) {
      throw InputException.in(
          file.toString(), "there is no store; heatwright serve makes one, with a shelf.");
    }
    return Store.open(file, surroundings.clock());
  }
}
