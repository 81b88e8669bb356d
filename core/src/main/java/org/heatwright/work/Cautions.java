package org.heatwright.work;

import java.util.List;
import org.heatwright.material.Origin;

/** What holds for every firing. */
final class Cautions {

  private Cautions() {}

  /** The last of every card. */
  static List<Caution> always() {
    return List.of(unattended(), makerFirst());
  }

  /**
   * Heat through an open door, up to 950 °C.
   *
   * @param fromCelsius the coolest that is meant, °C
   * @param leastKilowatts what a square metre radiates there
   */
  static Caution hotWork(int fromCelsius, int leastKilowatts) {
    return new Caution(
        "hot-work",
        "An open door at %d to 950 °C radiates %d to 130 kW for each square metre: tinted glasses, gloves, tongs, natural-fibre clothes, a clear path."
            .formatted(fromCelsius, leastKilowatts),
        Origin.derived("radiation of a black opening"));
  }

  private static Caution unattended() {
    return new Caution(
        "unattended",
        "A controller can fail with the elements on: keep someone in reach, clear space around the"
            + " kiln and a high-limit cut-out of its own. Heatwright is not a safety device.",
        Origin.practice());
  }

  private static Caution makerFirst() {
    return new Caution(
        "maker-first",
        "The makers' data sheets, your kiln's manual and local codes go before anything printed here.",
        Origin.practice());
  }
}
