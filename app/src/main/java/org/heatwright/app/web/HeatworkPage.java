package org.heatwright.app.web;

import java.util.List;
import java.util.Optional;

/**
 * Two schedules compared by heat-work.
 *
 * @param clock the time at the bench
 * @param first schedules to choose the first from; empty where there are none
 * @param second the same for the second
 * @param kilns to compare by a kiln's display; the first is paper
 * @param typed what stands in the fields
 * @param error what is wrong, by field; empty where nothing is
 * @param answer empty until both are chosen
 */
public record HeatworkPage(
    String clock,
    List<Choice> first,
    List<Choice> second,
    List<Choice> kilns,
    Typed typed,
    Wrong error,
    Optional<Answer> answer) {

  /** One entry of a list; a label that is somebody's name is not translated. */
  public record Choice(String value, String label, boolean named, boolean chosen) {}

  /**
   * @param activation kJ/mol
   * @param at temperature to tell the time at; may be empty
   * @param fahrenheit the unit of that and of the answer
   */
  public record Typed(String activation, String at, boolean fahrenheit) {}

  /** A sentence, or empty. */
  public record Wrong(String activation, String at, String schedules) {}

  /**
   * @param headline the verdict
   * @param about what it is told as
   * @param lines what each comes to
   * @param hold which hold makes them even
   * @param cases how far that depends on what is assumed
   * @param notes what to know with it
   */
  public record Answer(
      String headline,
      String about,
      List<String> lines,
      String hold,
      List<String> cases,
      List<String> notes) {}
}
