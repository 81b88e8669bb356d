package org.heatwright.benchmarks;

import org.heatwright.kiln.AccuracyReport;

/** Prints the accuracy that the benchmarks' solvers have on the benchmarks' firing. */
public final class Accuracy {

  private Accuracy() {}

  public static void main(String[] args) {
    AccuracyReport.print(BenchmarkKilns.muffle(), BenchmarkKilns.twelveHours());
  }
}
