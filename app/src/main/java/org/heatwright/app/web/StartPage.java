package org.heatwright.app.web;

import java.util.List;

/**
 * One step of a first run.
 *
 * @param clock the time at the bench
 * @param steps all of them
 * @param step the word of this one
 * @param head its question
 * @param lead what it is for, a sentence or two
 * @param fields what is asked
 * @param guesses what is taken where nobody told, with where that is from
 * @param error what is wrong with all of it; empty if nothing
 * @param next words of the button
 * @param back address of the step before; empty at the first
 * @param begun whether something was answered already
 * @param demo address of the demo studio; empty where there is none
 */
public record StartPage(
    String clock,
    List<Step> steps,
    String step,
    String head,
    String lead,
    List<Field> fields,
    List<Page.Fact> guesses,
    String error,
    String next,
    String back,
    boolean begun,
    String demo) {

  /**
   * A step at the head of the page.
   *
   * @param address empty where it cannot be gone to yet
   */
  public record Step(String words, String address, boolean here) {}

  /**
   * A question.
   *
   * @param kind "text", "decimal", "choice" (a list) or "pick" (each with a sentence)
   * @param hint how it may be written, or where it stands; may be empty
   * @param unit beside the field; may be empty
   * @param options of a choice
   * @param error what is wrong with it; empty if nothing
   */
  public record Field(
      String name,
      String label,
      String hint,
      String kind,
      String unit,
      List<Option> options,
      String value,
      String error) {}

  /** One of several answers. */
  public record Option(String value, String words, String about) {}
}
