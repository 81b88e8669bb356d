package org.heatwright.app.store;

import java.util.LinkedHashMap;
import java.util.Map;
import org.jdbi.v3.core.Handle;

/**
 * What somebody has answered so far to a row of questions, kept answer by answer until it is done:
 * a shut browser loses nothing. Safe for use from several threads; throws as the {@link Store}
 * does.
 */
public final class AnswerShelf {

  /** Longer answers are cut, characters. */
  private static final int LONGEST = 300;

  private final Store store;
  private final String topic;

  /**
   * @param topic which row of questions, up to 16 letters
   */
  AnswerShelf(Store store, String topic) {
    this.store = store;
    this.topic = topic;
  }

  /** Field to what was typed. */
  public Map<String, String> answers() {
    return store.run(
        handle -> {
          Map<String, String> answers = new LinkedHashMap<>();
          handle
              .createQuery(
                  "select field, answer from kept_answer where topic = :topic order by field")
              .bind("topic", topic)
              .map((row, context) -> Map.entry(row.getString("field"), row.getString("answer")))
              .forEach(e -> answers.put(e.getKey(), e.getValue()));
          return answers;
        });
  }

  /** Keeps answers beside those that were given to other fields. */
  public void keep(Map<String, String> answers) {
    store.run(
        handle ->
            handle.inTransaction(
                h -> {
                  answers.forEach((field, answer) -> keep(h, field, answer));
                  return answers.size();
                }));
  }

  /** Keeps these answers and no others. */
  public void replace(Map<String, String> answers) {
    store.run(
        handle ->
            handle.inTransaction(
                h -> {
                  clear(h);
                  answers.forEach((field, answer) -> keep(h, field, answer));
                  return answers.size();
                }));
  }

  /** Forgets them: it is done, or begun afresh. */
  public void clear() {
    store.run(this::clear);
  }

  private int clear(Handle handle) {
    return handle
        .createUpdate("delete from kept_answer where topic = :topic")
        .bind("topic", topic)
        .execute();
  }

  private void keep(Handle handle, String field, String answer) {
    handle
        .createUpdate(
            "insert into kept_answer (topic, field, answer, told_ms) values (:topic, :field,"
                + " :answer, :now) on conflict (topic, field) do update set answer = :answer,"
                + " told_ms = :now")
        .bind("topic", topic)
        .bind("field", field)
        .bind("answer", answer.length() > LONGEST ? answer.substring(0, LONGEST) : answer)
        .bind("now", store.now().toEpochMilli())
        .execute();
  }
}
