package org.heatwright.material;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * The heat curves of one forecast, each made once. Safe to share between threads: a curve is a pure
 * function of its material, so it does not matter who makes it first.
 */
public final class HeatCurves {

  private final Map<Material, HeatCurve> curves = new ConcurrentHashMap<>();

  /** The curve of a material. */
  public HeatCurve of(Material material) {
    return curves.computeIfAbsent(material, HeatCurve::of);
  }
}
