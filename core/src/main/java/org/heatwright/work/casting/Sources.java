package org.heatwright.work.casting;

import org.heatwright.material.KaratGolds;
import org.heatwright.material.Origin;

/** Sources that more than one number comes from. */
final class Sources {

  static final Origin CRC =
      Origin.read("CRC table of solid densities, as carried by an open library");
  static final Origin HANDBOOK = Origin.memory("CRC Handbook of Chemistry and Physics");
  static final Origin BENCH_TABLE = KaratGolds.ORIGIN;
  static final Origin METAL_WEIGHTS = Origin.read("a supplier's article on metal weights");
  static final Origin WAX_TO_METAL = Origin.read("forum and trade pages on wax to metal weight");
  static final Origin RESIN_NOTES = Origin.read("notes on resin casting with a worked example");
  static final Origin KARAT_CASTING = Origin.read("a supplier's article on casting karat gold");
  static final Origin SECTIONS_THREAD =
      Origin.read("a bench forum's mould temperatures by section, vacuum assist");
  static final Origin SULPHUR_THREAD =
      Origin.read("a bench-forum thread on high temperatures and sulphur gas");
  static final Origin USUAL_ADVICE =
      Origin.read("a bench-forum thread: 900 to 1150 °F as the usual advice for sterling");
  static final Origin TEMPERATURES_THREAD =
      Origin.read("a bench-forum thread on casting temperatures");
  static final Origin VACUUM_THREAD =
      Origin.read("a bench-forum thread on the best temperature for vacuum casting");

  private Sources() {}

  static QuotedDensity bench(double kilogramsPerCubicMetre) {
    return new QuotedDensity("bench table", kilogramsPerCubicMetre, BENCH_TABLE);
  }

  static QuotedDensity crc(double kilogramsPerCubicMetre) {
    return new QuotedDensity("handbook", kilogramsPerCubicMetre, CRC);
  }

  static QuotedDensity handbook(double kilogramsPerCubicMetre) {
    return new QuotedDensity("handbook", kilogramsPerCubicMetre, HANDBOOK);
  }
}
