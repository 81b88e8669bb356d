package org.heatwright.material;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Heat curves, each made once. Safe to share between threads: a curve is a pure function of its
 * material, so it does not matter who makes it first.
 */
public final class HeatCurves {

  /** A bench's kilns and loads have a few dozen. */
  private static final int KEPT = 128;

  /** For whoever fires the same few kilns again and again. */
  public static final HeatCurves SHARED = new HeatCurves();

  private final Map<Material, HeatCurve> curves = new ConcurrentHashMap<>();

  /** The curve of a material. */
  public HeatCurve of(Material material) {
    if (curves.size() >= KEPT) {
      curves.clear(); // all of them are quickly made again
    }
    return curves.computeIfAbsent(material, HeatCurve::of);
  }
}
