package org.heatwright.forecast;

/** Runs an ensemble of kilns through a schedule and tells what they have in common. */
public final class Forecaster {

  /** A core this near the last target counts as ready, K. */
  public static final double READY_WITHIN_KELVINS = 10;

  private Forecaster() {}

  public static Forecast forecast(ForecastRequest request) {
    throw new IllegalStateException("The kiln engine has not landed yet.");
  }
}
