package org.heatwright.work.casting;

/** Troy weights, exact by definition: 20 pennyweight to the ounce of 31.1034768 g. */
public final class Troy {

  private static final double KILOGRAMS_PER_OUNCE = 0.0311034768;
  private static final double PENNYWEIGHTS_PER_OUNCE = 20;

  private Troy() {}

  public static double ounces(double kilograms) {
    return kilograms / KILOGRAMS_PER_OUNCE;
  }

  public static double pennyweights(double kilograms) {
    return ounces(kilograms) * PENNYWEIGHTS_PER_OUNCE;
  }

  public static double kilogramsOfOunces(double ounces) {
    return ounces * KILOGRAMS_PER_OUNCE;
  }

  public static double kilogramsOfPennyweights(double pennyweights) {
    return pennyweights / PENNYWEIGHTS_PER_OUNCE * KILOGRAMS_PER_OUNCE;
  }
}
