package org.heatwright.app.web;

import java.util.List;
import java.util.Optional;

/**
 * Below a firing that came out with a fault: causes, and the firings before it.
 *
 * @param causes what may be behind it
 * @param basis what the ranking rests on, a sentence
 * @param later whether a log is still being read for it
 * @param compared this firing beside the last ones of its kind; empty without any
 * @param ask where to tell more
 */
public record BehindPage(
    CausesView causes, String basis, boolean later, Optional<Compared> compared, String ask) {

  /**
   * Firings side by side.
   *
   * @param about which ones they are, a sentence
   * @param heads one a firing: the day, and the address of its page
   * @param rows what is compared
   */
  public record Compared(String about, List<Head> heads, List<Line> rows) {}

  /** A firing; empty address for the one whose page it is. */
  public record Head(String day, String address) {}

  /** One line. */
  public record Line(String what, List<Cell> cells) {}

  /** What it was, and whether that differs from this firing. */
  public record Cell(String words, boolean differs) {}
}
