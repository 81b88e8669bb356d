package org.heatwright.app.web;

import java.util.List;

/**
 * The kilns on the shelf.
 *
 * @param clock the time at the bench
 * @param kilns by name
 * @param keypads by name
 */
public record KilnsPage(String clock, List<Entry> kilns, List<String> keypads) {

  /**
   * A kiln.
   *
   * @param name on the shelf
   * @param address its page
   * @param known from what it is known
   * @param last its last firing; may be empty
   * @param keypad its keypad by what was told last; may be empty
   * @param slots address of the keypad's slots; empty without a keypad
   * @param plan address of a plan in it
   * @param trouble why its file cannot be read; may be empty
   */
  public record Entry(
      String name,
      String address,
      String known,
      String last,
      String keypad,
      String slots,
      String plan,
      String trouble) {}
}
