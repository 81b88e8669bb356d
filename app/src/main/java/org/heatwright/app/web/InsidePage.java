package org.heatwright.app.web;

import java.util.List;
import java.util.Optional;

/**
 * The page about the inside of the moulds of one plan.
 *
 * @param clock what the time is where the kiln stands
 * @param back address of the plan
 * @param plan the plan's choices in one word
 * @param moulds the kinds to choose from
 * @param refusal why there is nothing to show
 * @param shown what is shown, where there is something
 */
public record InsidePage(
    String clock,
    String back,
    String plan,
    List<Kind> moulds,
    Optional<String> refusal,
    Optional<Shown> shown) {

  /** A kind of mould to choose. */
  public record Kind(int number, String name, boolean chosen) {}

  /**
   * One kind at one moment.
   *
   * @param name of the kind
   * @param sentences what happens inside
   * @param curvesWide the curves as SVG for wide screens; likewise narrow
   * @param section the cut mould as SVG
   * @param minute the moment, min from the start
   * @param lastMinute the last that can be chosen
   * @param moment the moment in words
   */
  public record Shown(
      String name,
      List<String> sentences,
      String curvesWide,
      String curvesNarrow,
      String section,
      int minute,
      int lastMinute,
      String moment) {}
}
