package org.heatwright.app.json;

import java.util.List;
import org.heatwright.keypad.ReadbackQuestion;

/** What {@code readback --questions --json} prints: where to look, never what should be there. */
public record QuestionsJson(String schedule, String keypad, List<QuestionJson> questions) {

  /** One place of the review: its position from 1, what the display marks it with, our words. */
  public record QuestionJson(int position, String label, String words) {}

  /** The record of a read-back's questions. */
  public static QuestionsJson of(String schedule, String keypad, List<ReadbackQuestion> questions) {
    return new QuestionsJson(
        schedule,
        keypad,
        questions.stream().map(q -> new QuestionJson(q.position(), q.label(), q.words())).toList());
  }
}
