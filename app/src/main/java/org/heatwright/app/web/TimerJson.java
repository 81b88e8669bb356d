package org.heatwright.app.web;

import java.util.List;

/**
 * What the timer's script shows: it reads from a table and decides nothing. Seconds count from the
 * door's shutting; temperatures are in the display's unit.
 *
 * @param key under which the browser keeps what is counted
 * @param firing id of the firing in the book; empty where there is none
 * @param unit symbol of the display's unit
 * @param planned how many pieces the work has
 * @param curve the piece
 * @param stages what is so from when on, rising; the first begins at zero
 * @param sounds when to beep, rising
 * @param repeatSeconds how often the last sound comes again
 * @param pieces what the book has already
 */
record TimerJson(
    String key,
    String firing,
    String unit,
    int planned,
    Curve curve,
    List<Stage> stages,
    List<Sound> sounds,
    int repeatSeconds,
    List<Piece> pieces) {

  /** The piece itself, nine times in ten inside, and what radiates about it. */
  record Curve(double[] seconds, double[] low, double[] median, double[] high, double[] chamber) {}

  /**
   * @param fromSeconds from when on
   * @param look wait, look, out or over
   * @param head what to do, in a word or three
   * @param says what that means
   * @param coming what is said beforehand: "Look in {s} s"
   */
  record Stage(double fromSeconds, String look, String head, String says, String coming) {}

  /**
   * @param kind soon, look, out or over
   */
  record Sound(double atSeconds, String kind) {}

  /**
   * @param at when the door shut behind it, ms since 1970
   */
  record Piece(long at, int seconds) {}

  /**
   * What the book has after something was told.
   *
   * @param error what was wrong with it; empty if nothing
   */
  record Told(List<Piece> pieces, String error) {}
}
