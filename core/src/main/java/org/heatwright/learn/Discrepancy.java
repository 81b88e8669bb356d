package org.heatwright.learn;

import java.util.Arrays;

/**
 * What separates a log from the best simulation of it: a slow error, because the model is simpler
 * than a kiln (an Ornstein-Uhlenbeck process), and noise. Turns residuals that go together into
 * independent ones of size one, by the innovations of a Kalman filter (memory: Rasmussen and
 * Williams, Gaussian Processes for Machine Learning, 2006, appendix B; Kalman 1960). The map is
 * linear, so that sensitivities pass through it too.
 */
final class Discrepancy {

  private final double[] decay;
  private final double[] gain;
  private final double[] deviation;

  /**
   * @param seconds times of the residuals, rising
   * @param slow standard deviation of the slow error
   * @param slowSeconds its correlation time, s
   * @param noise standard deviation of the noise of each residual
   */
  Discrepancy(double[] seconds, double slow, double slowSeconds, double[] noise) {
    this(seconds, everywhere(slow, seconds.length), slowSeconds, noise);
  }

  private static double[] everywhere(double slow, int n) {
    double[] all = new double[n];
    Arrays.fill(all, slow);
    return all;
  }

  /**
   * The same with a slow error that is larger at some times than at others.
   *
   * @param slow standard deviation that the slow error tends to, one a time
   */
  Discrepancy(double[] seconds, double[] slow, double slowSeconds, double[] noise) {
    int n = seconds.length;
    decay = new double[n];
    gain = new double[n];
    deviation = new double[n];
    double variance = n > 0 ? slow[0] * slow[0] : 0;
    for (int i = 0; i < n; i++) {
      decay[i] = i == 0 ? 1 : Math.exp((seconds[i - 1] - seconds[i]) / slowSeconds);
      if (i > 0) {
        double kept = decay[i] * decay[i];
        variance = kept * variance + (1 - kept) * slow[i] * slow[i];
      }
      double sum = variance + noise[i] * noise[i];
      deviation[i] = Math.sqrt(sum);
      gain[i] = variance / sum;
      variance *= 1 - gain[i];
    }
  }

  int size() {
    return decay.length;
  }

  /**
   * Independent residuals.
   *
   * @param residual one a time
   * @param into receives them
   * @param at from this place on
   */
  void whiten(double[] residual, double[] into, int at) {
    double mean = 0;
    for (int i = 0; i < decay.length; i++) {
      mean *= decay[i];
      double surprise = residual[i] - mean;
      into[at + i] = surprise / deviation[i];
      mean += gain[i] * surprise;
    }
  }
}
