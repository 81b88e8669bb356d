package org.heatwright.app;

import org.heatwright.app.cli.Cli;

/** Starts Heatwright from a terminal. */
public final class Main {
  private Main() {}

  public static void main(String[] args) {
    System.exit(Cli.run(args));
  }
}
