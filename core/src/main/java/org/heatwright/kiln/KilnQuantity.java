package org.heatwright.kiln;

/**
 * What a nameplate does not say about a kiln and its day. Each quantity has a median and a spread
 * that an honest stranger would believe; a <i>score</i> counts in spreads from the median, so that
 * before any firing was seen every score is a standard normal number.
 *
 * <p>Medians and spreads are our estimates, from the ranges named at each; {@code
 * docs/models/kiln.md} tells them as a table.
 */
public enum KilnQuantity {
  /** Makers round, elements age, the supply departs; power goes with its square. Estimate. */
  POWER("power-factor", true, 0.98, 0.032),

  /**
   * Materials of one name differ by a quarter; joints and edges conduct too, so that measured kilns
   * lose 1.3 to 2 times what the layers say. Estimate; the leak carries the rest.
   */
  CONDUCTIVITY("conductivity-factor", true, 1.2, 0.17),

  /**
   * How much more wall conductivity grows from 400 to 1400 °C than in the tables: batches differ in
   * pores, and so in radiation through them. Estimate.
   */
  STEEPNESS("conductivity-steepness", true, 1.0, 0.2),

  /** Density and heat capacity of a batch. Estimate. */
  CAPACITY("capacity-factor", true, 1.07, 0.11),

  /** Air past the door, element tails and holes, by door perimeter, W/(K m). Estimate. */
  LEAK("leak-w-per-k-m", true, 0.45, 0.45),

  /**
   * Hearth plate and element carriers, by floor area, J/(K m²): about 6 mm of dense ceramic.
   * Estimate; range 3 to 55 kJ/(K m²).
   */
  FITTINGS("fittings-j-per-k-m2", true, 12_000, 0.75),

  /** Bare tips are quicker than a rod, insulated junctions slower. Estimate; range 0.4 to 1.9. */
  SENSOR("sensor-factor", true, 0.9, 0.45),

  /** Convection inside over 8 W/(m² K): it counts while the kiln is cold. Estimate; 5 to 12. */
  CONVECTION("convection-factor", true, 1.1, 0.3),

  /** Share of what the sensor receives that comes straight from the elements. Estimate. */
  VIEW("sensor-view", true, 0.05, 0.5),

  /** What the display adds at 1000 °C, K: half of class 2 of type K, IEC 60584-1. */
  OFFSET("offset-k-at-1000", false, 0, 3.75),

  /** Proportional gain, 1/K: a band of 50 K. Practice; range 20 to 120 K. */
  GAIN("gain-per-k", true, 0.02, 0.45),

  /** Integral time, s. Estimate; range 3 to 14 min. */
  INTEGRAL("integral-s", true, 400, 0.45),

  /**
   * Derivative time, s: how far ahead a controller looks along the reading's slope; little where it
   * does not. Practice: none, or up to a quarter of the integral time. Estimate.
   */
  DERIVATIVE("derivative-s", true, 5, 1.3),

  /**
   * How far the crests that a controller sees stand above the line of its display, K: one of them
   * is enough to begin a hold's clock. Noise and last digit, and what a slow relay swings it by;
   * little where it smooths what it sees. Estimate; range 0.5 to 3, of slow relays up to 10.
   */
  CREST("crest-k", true, 1.2, 0.5),

  /** From the edge of the hysteresis to the switch, s. Estimate; range 3 to 30 s. */
  SWITCH("switch-s", true, 9, 0.65),

  /**
   * Share of the two-way exchange through the open door that leaves with heat, and with it the
   * draught over the walls. Estimate; range 0.2 to 2, because the formula is for rooms.
   */
  DOOR("door-factor", true, 0.8, 0.7),

  /** Heat capacity of the elements over the usual. Estimate. */
  ELEMENT("element-factor", true, 0.8, 0.35),

  /** Full power of a day over the kiln's own: the mains wander. Estimate. */
  MAINS("mains-factor", true, 1.0, 0.018),

  /** The room above the kiln's usual one, K; above one stated for the day half of it. Estimate. */
  ROOM("room-k", false, 0, 2),

  /** Investment conductivity 0.35 to 0.65 W/(m K). Estimate. */
  LOAD_CONDUCTIVITY("load-conductivity-factor", true, 1.0, 0.18),

  /** Heat content of the load. Estimate. */
  LOAD_HEAT("load-heat-factor", true, 1.0, 0.06);

  private final String fileName;
  private final boolean logarithmic;
  private final double median;
  private final double spread;

  KilnQuantity(String fileName, boolean logarithmic, double median, double spread) {
    this.fileName = fileName;
    this.logarithmic = logarithmic;
    this.median = median;
    this.spread = spread;
  }

  /** The name that kiln files use; it ends in the unit where there is one. */
  public String fileName() {
    return fileName;
  }

  /** The value at a score, in the unit of the file name. */
  public double value(double score) {
    return logarithmic ? median * Math.exp(spread * score) : median + spread * score;
  }

  /** The score of a value. */
  public double score(double value) {
    return logarithmic ? Math.log(value / median) / spread : (value - median) / spread;
  }

  /**
   * By how much its natural logarithm grows with its score.
   *
   * @throws IllegalStateException if it is a difference and may be zero
   */
  public double logarithmPerScore() {
    if (!logarithmic) {
      throw new IllegalStateException("The %s has no logarithm.".formatted(fileName));
    }
    return spread;
  }

  /**
   * By how many scores it moves where every power and every heat flow of a kiln grows by one in its
   * natural logarithm and the display stays the same; 0 where it has no part in that.
   */
  public double scoreOfScale() {
    return switch (this) {
      case POWER, CONDUCTIVITY, CAPACITY, LEAK, FITTINGS, ELEMENT, CONVECTION -> 1 / spread;
      default -> 0;
    };
  }

  /**
   * Whether it belongs to the kiln and can show in its logs. Mains, room and load are of a day; the
   * offset of the display cannot be seen in what the display says.
   */
  public boolean learnable() {
    return switch (this) {
      case OFFSET, MAINS, ROOM, LOAD_CONDUCTIVITY, LOAD_HEAT -> false;
      default -> true;
    };
  }
}
