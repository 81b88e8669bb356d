package org.heatwright.app.web;

import java.util.List;
import java.util.Optional;

/**
 * What is hot, what happens next, what to do.
 *
 * @param clock the time at the bench
 * @param headline one sentence about all of it
 * @param minds what a person must put right in the book, a sentence each
 * @param hot firings that run, the one that needs somebody first
 * @param coming planned ones, the next first
 * @param past the last that ended
 * @param empty whether there is no kiln yet, or no work
 */
public record NowPage(
    String clock,
    String headline,
    List<String> minds,
    List<Hot> hot,
    List<Coming> coming,
    List<Past> past,
    boolean empty) {

  /**
   * A firing that runs.
   *
   * @param id of the record
   * @param job what is fired
   * @param kiln where
   * @param lead what the figure is
   * @param figure when it is ready
   * @param day on what day
   * @param due what to do now, a sentence each
   * @param whatNow what the kiln should be doing
   * @param next what needs somebody next; may be empty
   * @param display what the display should say now; may be empty
   * @param unit of the display
   * @param verdict what the readings mean
   * @param read the last readings, newest first
   * @param outcomes how it may have come out; empty before that can be seen
   * @param keyedOtherwise whether something else was keyed than planned
   * @param asked what was typed wrong: field, sentence
   * @param trouble why nothing can be told of it; may be empty
   * @param timer address of the piece timer, where pieces go in and out of the hot kiln
   * @param later whether it is still being worked out, and comes by itself
   */
  public record Hot(
      String id,
      String job,
      String kiln,
      String lead,
      String figure,
      String day,
      List<String> due,
      String whatNow,
      String next,
      String display,
      String unit,
      Optional<Verdict> verdict,
      List<Line> read,
      List<Outcome> outcomes,
      boolean keyedOtherwise,
      Optional<Wrong> asked,
      String trouble,
      Optional<String> timer,
      boolean later) {

    /** What was typed into a field that is wrong now; else nothing. */
    public String typed(String field) {
      return asked.map(a -> a.typed().getOrDefault(field, "")).orElse("");
    }

    /** The sentence about a field; else nothing. */
    public String error(String field) {
      return asked.filter(a -> a.field().equals(field)).map(Wrong::sentence).orElse("");
    }
  }

  /** What the readings mean. */
  public record Verdict(boolean normal, String words) {}

  /** A line of the record, to take back. */
  public record Line(String id, String words) {}

  /** A word to tick and what stands on its button. */
  public record Outcome(String code, String words) {}

  /** What was typed, and what is wrong with one field of it. */
  public record Wrong(String field, String sentence, java.util.Map<String, String> typed) {}

  /**
   * A firing to come.
   *
   * @param press when to press start, in words
   * @param what then, in words
   */
  public record Coming(
      String id, String job, String kiln, String slot, String press, String what, String plan) {}

  /** A firing that ended. */
  public record Past(String address, String job, String kiln, String when, String result) {}
}
