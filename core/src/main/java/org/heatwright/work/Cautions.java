package org.heatwright.work;

import org.heatwright.material.Origin;

/** What holds for every firing. */
final class Cautions {

  private Cautions() {}

  static Caution unattended() {
    return new Caution(
        "unattended",
        "A controller can fail with the elements on: keep someone in reach, clear space around the"
            + " kiln and a high-limit cut-out of its own. Heatwright is not a safety device.",
        Origin.practice());
  }

  static Caution makerFirst() {
    return new Caution(
        "maker-first",
        "The makers' data sheets, your kiln's manual and local codes go before anything printed here.",
        Origin.practice());
  }
}
