package org.heatwright.app.web;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Five questions for somebody on the phone.
 *
 * @param clock the time at the bench
 * @param headline what the page has to say
 * @param answered whether anything was told yet
 * @param said what was told, in words
 * @param notes what was taken for what, a sentence each
 * @param came what may have come out, in groups by kind of work
 * @param works names on the shelf; likewise {@code kilns}, {@code keypads}
 * @param firings of the book, by id
 * @param clues what may have been different, each to be answered by yes, no or not known
 * @param typed what was typed or chosen, by field
 * @param errors field to one sentence
 * @param causes what may be behind it, where it was told what came out
 * @param checked the plan that was made, where one was wanted and can be made
 * @param compared this firing beside the last ones of its kind
 */
public record AskPage(
    String clock,
    String headline,
    boolean answered,
    List<Page.Fact> said,
    List<String> notes,
    List<Group> came,
    List<String> works,
    List<String> kilns,
    List<String> keypads,
    List<Choice> firings,
    List<Asked> clues,
    Map<String, String> typed,
    Map<String, String> errors,
    Optional<CausesView> causes,
    Optional<Checked> checked,
    Optional<BehindPage.Compared> compared) {

  /** Choices under one head. */
  public record Group(String name, List<Choice> choices) {}

  /** One of them. */
  public record Choice(String value, String words) {}

  /**
   * Something that may have been different.
   *
   * @param name of the field
   * @param words the question
   * @param value "yes", "no" or empty
   */
  public record Asked(String name, String words, String value) {}

  /**
   * A plan that was made and looked at.
   *
   * @param clean whether nothing says stop or warn
   * @param sentence what came of it
   * @param address of the plan
   * @param findings what to look at, severity before each
   */
  public record Checked(boolean clean, String sentence, String address, List<String> findings) {}

  /** What was typed into a field; else nothing. */
  public String typed(String name) {
    return typed.getOrDefault(name, "");
  }

  /** Whether a choice stands. */
  public boolean is(String name, String value) {
    return typed(name).equals(value);
  }

  /** The sentence about a field; else nothing. */
  public String error(String name) {
    return errors.getOrDefault(name, "");
  }
}
