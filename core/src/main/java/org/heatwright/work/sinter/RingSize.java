package org.heatwright.work.sinter;

/**
 * Ring sizes as inner diameters.
 *
 * <p>US: {@code d = 11.63 mm + 0.8128 mm × size} (memory: usual table of jewellers, 0.032 inch of
 * diameter a size). By circumference: {@code d = size/pi} (memory: ISO 8653 defines a ring's size
 * by its inner circumference in mm).
 */
public final class RingSize {

  private static final double US_ZERO_METRES = 11.63e-3;
  private static final double US_STEP_METRES = 0.8128e-3;

  private RingSize() {}

  /** Inner diameter of a US size, m; sizes 0 to 20, quarters and halves as decimals. */
  public static double ofUsMetres(double usSizeFactor) {
    if (!(usSizeFactor >= 0 && usSizeFactor <= 20)) {
      throw new IllegalArgumentException(
          "The US ring size (%s) must be 0 to 20.".formatted(usSizeFactor));
    }
    return US_ZERO_METRES + US_STEP_METRES * usSizeFactor;
  }

  /** The US size of an inner diameter. */
  public static double usOfMetres(double innerMetres) {
    return (innerMetres - US_ZERO_METRES) / US_STEP_METRES;
  }

  /** Inner diameter of a circumference, m; 35 to 90 mm. */
  public static double ofCircumferenceMetres(double circumferenceMetres) {
    if (!(circumferenceMetres >= 0.035 && circumferenceMetres <= 0.09)) {
      throw new IllegalArgumentException(
          "The ring's inner circumference (%s mm) must be 35 to 90 mm."
              .formatted(circumferenceMetres * 1000));
    }
    return circumferenceMetres / Math.PI;
  }
}
