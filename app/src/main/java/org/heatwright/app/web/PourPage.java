package org.heatwright.app.web;

import java.util.List;
import java.util.Optional;
import org.heatwright.app.casting.CastAnswer;
import org.heatwright.app.report.Card;

/**
 * One of the pages about the pour.
 *
 * @param clock what the time is at the bench
 * @param back address of the plan it belongs to; empty where it belongs to none
 * @param plan the plan's choices in one word, or empty
 * @param tabs the pages about the pour
 * @param what which of them, as the address says it
 * @param title of this one
 * @param says what it answers, one sentence
 * @param firing what the plan's own pour is, where there is a plan
 * @param answer what comes of the fields; empty where they say too little
 * @param alarm what is wrong and belongs to no field
 * @param groups the fields
 * @param alloys names to choose from
 */
public record PourPage(
    String clock,
    Optional<String> back,
    String plan,
    List<Tab> tabs,
    String what,
    String title,
    String says,
    List<Card.Fact> firing,
    Optional<CastAnswer> answer,
    String alarm,
    List<Group> groups,
    List<String> alloys) {

  public PourPage {
    tabs = List.copyOf(tabs);
    firing = List.copyOf(firing);
    groups = List.copyOf(groups);
    alloys = List.copyOf(alloys);
  }

  /** The way to another page. */
  public record Tab(String name, String address, boolean here) {}

  /**
   * Fields that belong together.
   *
   * @param title may be empty
   * @param folded whether it is folded away until it is wanted
   */
  public record Group(String title, boolean folded, List<Field> fields) {
    public Group {
      fields = List.copyOf(fields);
    }
  }

  /**
   * A field.
   *
   * @param name as the address has it
   * @param value as typed
   * @param options to choose from; empty: free text
   * @param alloy whether names of alloys are offered
   * @param error one sentence, or empty
   */
  public record Field(
      String name, String label, String value, List<Option> options, boolean alloy, String error) {
    public Field {
      options = List.copyOf(options);
    }

    /** Sentences that a person reads with the field. */
    public boolean wrong() {
      return !error.isEmpty();
    }
  }

  /** One entry of a list to choose from. */
  public record Option(String value, String label, boolean chosen) {}
}
