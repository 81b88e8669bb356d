package org.heatwright.app.web;

import java.util.List;
import java.util.Optional;
import org.heatwright.app.describe.Interview;
import org.heatwright.app.describe.KeypadWords;
import org.heatwright.app.describe.Question;

/**
 * Describing a keypad, one question at a time.
 *
 * @param clock what the time is at the bench
 * @param given every answer so far, also to what is not asked any more
 * @param answered what was asked and answered, in order
 * @param pending the question that is asked now
 * @param error why the answer to it was not taken, one sentence; may be empty
 * @param typed that answer, as typed
 * @param done the finished description
 */
public record DescribePage(
    String clock,
    List<Given> given,
    List<Interview.Answered> answered,
    Optional<Question> pending,
    String error,
    String typed,
    Optional<Done> done) {

  public DescribePage {
    given = List.copyOf(given);
    answered = List.copyOf(answered);
  }

  /** An answer by its question's id. */
  public record Given(String id, String answer) {}

  /**
   * The finished description.
   *
   * @param facts it in words
   * @param keys what each key does in each state
   * @param unsure what nobody knew
   * @param yaml its file
   */
  public record Done(
      List<String> facts, List<KeypadWords.Section> keys, List<String> unsure, String yaml) {}
}
