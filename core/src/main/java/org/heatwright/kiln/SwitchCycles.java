package org.heatwright.kiln;

/**
 * Watches an on-off controller until its cycles repeat, and tells what they are on average: then a
 * hold of hours need not be simulated switch by switch. One firing, one thread.
 *
 * <p>On average an on-off controller is a proportional one: to a slow change of the error it
 * answers with a gain of about {@code 2 D / (pi A)}, D half of the power and A the amplitude of its
 * swing (memory: describing functions of relays with a bias, as in Gelb and Vander Velde,
 * Multiple-Input Describing Functions, 1968). That is about half of the gain at which its loop
 * swings, so that the mean does not.
 */
final class SwitchCycles {

  private static final int ENOUGH = 3;

  /** Cycles repeat where neighbours differ in length by less than this share. Our estimate. */
  private static final double ALIKE = 0.2;

  private boolean watching;
  private int complete;
  private double seconds;
  private double onSeconds;
  private double error;
  private double errorSquare;
  private double lastSeconds;
  private double lastDuty;
  private double lastError;
  private double lastSwing;
  private double least;
  private double most;
  private double lastAbove;
  private double lastBelow;
  private boolean alike;

  /** Something has changed: what was seen counts no more. */
  void forget() {
    watching = false;
    complete = 0;
    alike = false;
  }

  /** A step between two switches, with the error (setpoint minus display, K) at its ends. */
  void step(double length, boolean on, double errorBefore, double errorAfter) {
    if (!watching) {
      return;
    }
    seconds += length;
    onSeconds += on ? length : 0;
    error += length * (errorBefore + errorAfter) / 2;
    errorSquare +=
        length
            * (errorBefore * errorBefore + errorBefore * errorAfter + errorAfter * errorAfter)
            / 3;
    least = Math.min(least, Math.min(errorBefore, errorAfter));
    most = Math.max(most, Math.max(errorBefore, errorAfter));
  }

  /** The elements go on: a cycle is over, another begins. */
  void turnsOn() {
    if (watching) {
      double mean = error / seconds;
      alike = complete > 0 && Math.abs(seconds - lastSeconds) < ALIKE * lastSeconds;
      lastSeconds = seconds;
      lastDuty = onSeconds / seconds;
      lastError = mean;
      lastSwing = Math.sqrt(Math.max(0, errorSquare / seconds - mean * mean));
      // The error is the setpoint less the display: its least is the display's most.
      lastAbove = mean - least;
      lastBelow = most - mean;
      complete++;
    }
    least = Double.POSITIVE_INFINITY;
    most = Double.NEGATIVE_INFINITY;
    watching = true;
    seconds = 0;
    onSeconds = 0;
    error = 0;
    errorSquare = 0;
  }

  /** Whether the last cycles were alike. */
  boolean repeat() {
    return complete >= ENOUGH && alike && lastSwing > 0;
  }

  /** Share of the last cycle with power. */
  double duty() {
    return lastDuty;
  }

  /** Mean of setpoint minus display over the last cycle, K. */
  double errorKelvins() {
    return lastError;
  }

  /** Standard deviation of the display about its mean over the last cycle, K. */
  double swingKelvins() {
    return lastSwing;
  }

  /** How long the last cycle took, s. */
  double cycleSeconds() {
    return lastSeconds;
  }

  /** How far the display goes above its mean in the last cycle, K; more than it goes below. */
  double aboveKelvins() {
    return lastAbove;
  }

  /** How far it goes below its mean, K: the switch acts on it sooner than on what is above. */
  double belowKelvins() {
    return lastBelow;
  }

  /**
   * The slow gain, duty a kelvin: one over the height of a triangle of this deviation is {@code 1 /
   * (2 sqrt(3))}, one of a sine by the describing function {@code 1 / (pi sqrt(2))}; displays swing
   * in between.
   */
  double gainPerKelvin() {
    return 0.27 / lastSwing;
  }
}
