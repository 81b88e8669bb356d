package org.heatwright.app.web;

import java.util.List;
import java.util.Optional;

/**
 * Enamelled pieces: what a session's log tells of each, and what was kept of them.
 *
 * @param clock the time at the bench
 * @param unit "C" or "F"
 * @param session a log that is being split; empty where none was asked for
 * @param kept pieces that were kept, by name
 */
public record PiecesPage(String clock, String unit, Optional<Session> session, List<Kept> kept) {

  /**
   * A log, split.
   *
   * @param headline which log, and how many pieces
   * @param works enamel on the shelf to judge it by; empty where there is none
   * @param twoOpenings whether the door is opened twice a piece
   * @param error why it cannot be split; empty if it was
   * @param door what the door costs, a sentence
   * @param lines one a piece, in order
   * @param caveat how far to trust it
   * @param named how many firings of named pieces it tells
   * @param address of this page with its kiln and log
   */
  public record Session(
      String headline,
      List<Page.Option> works,
      boolean twoOpenings,
      String error,
      String door,
      List<String> lines,
      String caveat,
      int named,
      Hidden address) {}

  /** Which log of which kiln. */
  public record Hidden(String kiln, String log) {}

  /**
   * A piece.
   *
   * @param words its history in one sentence
   * @param firings one line each
   */
  public record Kept(String words, List<String> firings) {}
}
