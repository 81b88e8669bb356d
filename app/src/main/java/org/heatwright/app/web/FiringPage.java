package org.heatwright.app.web;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One firing of the book.
 *
 * @param clock the time at the bench
 * @param id of the record
 * @param job what was fired
 * @param kiln where
 * @param kilnAddress the kiln's page
 * @param state "planned", "running" or "done"
 * @param figure how it came out, or where it stands
 * @param lead what the figure is
 * @param day when
 * @param facts about it
 * @param curve forecast and readings, where start was pressed and it can be told
 * @param planned the schedule as planned, a line each
 * @param keyed how the slot stood, and what it held where it held something else
 * @param plan address of the plan
 * @param happened what was told, in the order it happened
 * @param photos pictures
 * @param outcomes how it may have come out
 * @param result what was told of that, where it was
 * @param behind what may be behind it, where it came out with a fault
 * @param back the line that was just taken back; may be empty
 * @param away whether the firing was put away
 * @param field with the trouble; may be empty
 * @param error what is wrong with it
 * @param typed what was typed
 * @param unit of the display
 */
public record FiringPage(
    String clock,
    String id,
    String job,
    String kiln,
    String kilnAddress,
    String state,
    String lead,
    String figure,
    String day,
    List<Page.Fact> facts,
    Optional<CurveFigure> curve,
    List<String> planned,
    List<String> keyed,
    String plan,
    List<Happened> happened,
    List<Photo> photos,
    List<NowPage.Outcome> outcomes,
    Optional<String> result,
    Optional<BehindPage> behind,
    String back,
    boolean away,
    String field,
    String error,
    Map<String, String> typed,
    String unit) {

  /** Something that was told. */
  public record Happened(String id, String when, String what, String words) {}

  /** A picture. */
  public record Photo(String id, String address, String caption, String when) {}

  /** The sentence about a field; else nothing. */
  public String error(String name) {
    return field.equals(name) ? error : "";
  }

  /** What was typed into a field of a form that was wrong; else nothing. */
  public String typed(String name) {
    return typed.getOrDefault(name, "");
  }
}
