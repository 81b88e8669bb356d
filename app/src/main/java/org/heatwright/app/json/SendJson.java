package org.heatwright.app.json;

import java.util.List;
import org.heatwright.inspect.Finding;

/** What {@code send --json} prints: where the page is, how large, and what it says of danger. */
public record SendJson(
    String schedule, String keypad, int slot, String page, int bytes, List<FindingJson> findings) {

  /** The record of a written page. */
  public static SendJson of(
      String schedule, String keypad, int slot, String page, int bytes, List<Finding> findings) {
    return new SendJson(schedule, keypad, slot, page, bytes, FindingJson.of(findings));
  }
}
