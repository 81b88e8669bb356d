package org.heatwright.app.web;

import java.util.List;

/**
 * Every value with its source.
 *
 * @param clock the time at the bench
 * @param words what was looked for; may be empty
 * @param unit "C" or "F"
 * @param found what was found, a sentence
 * @param shelves of materials
 */
public record MaterialsPage(
    String clock, String words, String unit, String found, List<Kind> shelves) {

  /**
   * Materials of one kind.
   *
   * @param open whether its materials lie open
   */
  public record Kind(String code, String name, String about, boolean open, List<Item> items) {}

  /** One material. */
  public record Item(String name, List<Value> values) {}

  /** A value and where it is from. */
  public record Value(String what, String value, String source) {}
}
