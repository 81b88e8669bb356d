package org.heatwright.app.web;

import java.util.List;
import java.util.Optional;

/**
 * The slots of one kiln's keypad, in words.
 *
 * @param key kiln and keypad as a query string
 * @param kilns names on the shelf; likewise {@code keypads}
 * @param rules what holds for its proofs
 * @param goodForDays the number in it
 * @param keepsPrograms whether this keypad is told to keep its programs through a power cut
 * @param error why the last asking was not done; may be empty
 * @param recent what was told last of the whole keypad and its slots, newest first
 */
public record SlotsPage(
    String clock,
    String kiln,
    String keypad,
    String key,
    List<Page.Option> kilns,
    List<Page.Option> keypads,
    List<String> roles,
    String rules,
    String goodForDays,
    boolean keepsPrograms,
    String error,
    List<Slot> slots,
    List<Told> recent) {

  /**
   * One slot.
   *
   * @param program its name; "not known"
   * @param values in short; may be empty
   * @param since since when, by whom; may be empty
   * @param state "good", "expired", "never" or "unknown"
   * @param proof in a sentence
   * @param unit how the unit was settled; empty without a good proof
   * @param covers the values that were read
   * @param open what the proof or the reading does not cover
   * @param need who needs it; empty if nobody
   */
  public record Slot(
      int number,
      String program,
      String values,
      String since,
      String state,
      String proof,
      String unit,
      List<String> covers,
      List<String> open,
      String need,
      List<Told> history) {}

  /** A line of the history. */
  public record Told(String when, String by, String what) {}

  /**
   * The reading of a slot that nobody knows.
   *
   * @param sign the unit sign as chosen; empty where the keypad is in one unit only
   * @param error why it could not be understood; may be empty
   */
  public record Unknown(
      String clock,
      String kiln,
      String keypad,
      String key,
      int slot,
      String name,
      Optional<String> sign,
      List<Page.Ask> asks,
      List<String> roles,
      String error) {}
}
