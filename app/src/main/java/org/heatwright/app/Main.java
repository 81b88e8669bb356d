package org.heatwright.app;

/** Starts Heatwright from a terminal. */
public final class Main {
  private Main() {}

  public static void main(String[] args) {
    System.exit(2);
  }
}
