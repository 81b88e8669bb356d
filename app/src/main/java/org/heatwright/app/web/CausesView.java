package org.heatwright.app.web;

import java.util.List;
import java.util.Optional;

/**
 * What may be behind a fault, as a page tells it.
 *
 * @param causes the likeliest first: those worth a look now
 * @param more the others
 * @param proposed the one change to try; empty where a test comes first
 * @param dismissed what the record contradicts
 * @param questions what is not known and would change the order
 * @param noted what a log of that day was read to show, a sentence each
 */
public record CausesView(
    List<Row> causes,
    List<Row> more,
    Optional<Proposed> proposed,
    List<Dismissed> dismissed,
    List<Question> questions,
    List<String> noted) {

  /** A cause with what speaks for and against it and what would tell. */
  public record Row(
      String standing,
      String words,
      String side,
      List<String> why,
      List<String> against,
      List<Test> tests,
      String change,
      String caution,
      String source) {}

  /** A test, with what it takes. */
  public record Test(String takes, String words) {}

  /**
   * The one change.
   *
   * @param words what
   * @param address the plan with it, where it is a number of the schedule; else empty
   * @param note why there is no such address, or what the plan will say; may be empty
   */
  public record Proposed(String words, String address, String note) {}

  /** A cause that the record contradicts. */
  public record Dismissed(String words, String because) {}

  /**
   * What to tell.
   *
   * @param words the question
   * @param yes where its answer leads; likewise {@code no}
   */
  public record Question(String words, String yes, String no) {}
}
