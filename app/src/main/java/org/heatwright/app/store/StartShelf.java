package org.heatwright.app.store;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What somebody has answered who sets up their studio for the first time, kept answer by answer
 * until it is done. Safe for use from several threads; throws as the {@link Store} does.
 */
public final class StartShelf {

  /** Longer answers are cut, characters. */
  private static final int LONGEST = 200;

  private final Store store;

  StartShelf(Store store) {
    this.store = store;
  }

  /** Field to what was typed. */
  public Map<String, String> answers() {
    return store.run(
        handle -> {
          Map<String, String> answers = new LinkedHashMap<>();
          handle
              .createQuery("select field, answer from start_answer order by field")
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
                  answers.forEach(
                      (field, answer) ->
                          h.createUpdate(
                                  "insert into start_answer (field, answer, told_ms) values"
                                      + " (:field, :answer, :now) on conflict (field) do update set"
                                      + " answer = :answer, told_ms = :now")
                              .bind("field", field)
                              .bind(
                                  "answer",
                                  answer.length() > LONGEST ? answer.substring(0, LONGEST) : answer)
                              .bind("now", store.now().toEpochMilli())
                              .execute());
                  return answers.size();
                }));
  }

  /** Forgets them: it is done, or begun afresh. */
  public void clear() {
    store.run(handle -> handle.createUpdate("delete from start_answer").execute());
  }
}
