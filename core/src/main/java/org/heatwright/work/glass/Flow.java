package org.heatwright.work.glass;

/**
 * How far hot glass has flowed, from its dose {@code D = ∫dt/eta} (1/Pa): by its surface when it
 * fuses, by its weight when it slumps. What time and temperature do together is all in the dose.
 */
public final class Flow {

  /** Surface tension of soda-lime glass near 800 °C, N/m. Memory: 0.30 to 0.32, any glass text. */
  public static final double SURFACE_NEWTONS_A_METRE = 0.3;

  /** Angle at which glass stands on a primed shelf. Our estimate: it does not wet it. */
  private static final double CONTACT_RADIANS = Math.toRadians(120);

  private static final double GRAVITY = 9.80665;
  private static final double KILOGRAMS_A_CUBIC_METRE = 2500;

  private Flow() {}

  /**
   * How far a sheet's edges have rounded and sheets have grown together: {@code gamma D/h}, a pure
   * number; 1 is about a sheet's thickness.
   *
   * @param dosePerPascal D, 1/Pa
   * @param sheetMetres thickness of one sheet, m
   */
  public static double fused(double dosePerPascal, double sheetMetres) {
    return SURFACE_NEWTONS_A_METRE * dosePerPascal / sheetMetres;
  }

  /**
   * How deep a round plate that lies on its rim has sunk in the middle: {@code 11 rho g a^4 D/(64
   * h²)}, m. Small depths only: a deep one is held up by its own stretching, and the last touch of
   * a form takes many times the dose.
   *
   * @param dosePerPascal D, 1/Pa
   * @param thicknessMetres of the plate, m
   * @param spanMetres across the rim, m
   * @see "derived: Timoshenko's simply supported plate under its weight (memory), its elasticity
   *     replaced by three times the viscosity and Poisson's ratio by a half"
   */
  public static double sagMetres(double dosePerPascal, double thicknessMetres, double spanMetres) {
    double a = spanMetres / 2;
    return 11
        * KILOGRAMS_A_CUBIC_METRE
        * GRAVITY
        * a
        * a
        * a
        * a
        * dosePerPascal
        / (64 * thicknessMetres * thicknessMetres);
  }

  /** The dose after which the free plate would have sunk so deep, 1/Pa. */
  public static double sagDosePerPascal(
      double sagMetres, double thicknessMetres, double spanMetres) {
    return sagMetres / sagMetres(1, thicknessMetres, spanMetres);
  }

  /**
   * How thick molten glass stands by itself, {@code 2 sqrt(gamma/(rho g)) sin(theta/2)}, m: 6.1 mm.
   * Thinner draws in, thicker spreads; the trade knows it as the 6 mm rule.
   */
  public static double ownThicknessMetres() {
    return 2
        * Math.sqrt(SURFACE_NEWTONS_A_METRE / (KILOGRAMS_A_CUBIC_METRE * GRAVITY))
        * Math.sin(CONTACT_RADIANS / 2);
  }
}
