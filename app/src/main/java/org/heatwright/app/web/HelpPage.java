package org.heatwright.app.web;

import java.util.List;

/**
 * The job explained.
 *
 * @param clock the time at the bench
 * @param words what the words mean
 * @param cautions what can hurt, and what to do
 */
public record HelpPage(String clock, List<Word> words, List<String> cautions) {

  /** A word and its meaning. */
  public record Word(String word, String meaning) {}
}
