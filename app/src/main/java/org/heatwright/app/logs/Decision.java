package org.heatwright.app.logs;

import java.util.List;

/**
 * One decision about a file.
 *
 * @param word what was decided, as a correction would say it
 * @param why in a sentence
 * @param alternatives what fits the file too, as a correction would say it
 */
public record Decision(
    Topic topic, String word, Sureness sure, String why, List<String> alternatives) {
  public Decision {
    alternatives = List.copyOf(alternatives);
  }
}
