package org.heatwright.app.api;

import java.util.List;

/** What is on the shelf. */
record ShelfJson(List<EntryJson> entries) {

  /**
   * One text.
   *
   * @param kind kiln, keypad, work or schedule
   * @param changed when its text last changed, ISO 8601
   */
  record EntryJson(String kind, String name, String changed) {}

  /** One text with its words, as its owner wrote it. */
  record TextJson(String kind, String name, String changed, String text) {}

  /** A text to keep. */
  record KeepJson(String text) implements Asked {}
}
