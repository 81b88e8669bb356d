package org.heatwright.work.casting;

import java.util.Locale;
import org.heatwright.material.Origin;

/** What a pattern is made of: its density, as a usual value and what sources range over. */
public enum PatternMaterial {
  /** Injection and carving waxes. The trade's own rule takes 1.0, "specific gravity one". */
  WAX(new Spread(930, 950, 1000), Sources.WAX_TO_METAL),
  /** Printed casting resin; the usual value is that of the worked example, the lightest. */
  RESIN(new Spread(1090, 1090, 1200), Sources.RESIN_NOTES);

  private final Spread kilogramsPerCubicMetre;
  private final Origin origin;

  PatternMaterial(Spread kilogramsPerCubicMetre, Origin origin) {
    this.kilogramsPerCubicMetre = kilogramsPerCubicMetre;
    this.origin = origin;
  }

  /** Density, kg/m³. */
  public Spread kilogramsPerCubicMetre() {
    return kilogramsPerCubicMetre;
  }

  public Origin origin() {
    return origin;
  }

  public String words() {
    return name().toLowerCase(Locale.ROOT);
  }
}
