package org.heatwright.app.cli;

import java.nio.file.Path;
import org.heatwright.app.files.InputException;
import org.heatwright.work.SinterWork;

/** Work files that must be of metal clay. */
final class SinterInput {

  private SinterInput() {}

  static SinterWork work(Path path) {
    if (Input.work(path) instanceof SinterWork work) {
      return work;
    }
    throw InputException.in(
        String.valueOf(path.getFileName()),
        "this is no work of metal clay; expected kind: sinter.");
  }
}
