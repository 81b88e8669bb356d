package org.heatwright.app.store;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.mapper.RowMapper;

/**
 * The firings that a store keeps. Nothing is overwritten: what was wrong is taken back and can be
 * put back. Safe for use from several threads; throws as the {@link Store} does.
 */
public final class FiringShelf {

  private final Store store;

  FiringShelf(Store store) {
    this.store = store;
  }

  /** Keeps a new firing; its id, times and told lines are the store's to give. */
  public FiringEntry put(FiringEntry firing) {
    String id = UUID.randomUUID().toString();
    Instant made = store.now();
    run(
        handle ->
            handle
                .createUpdate(
                    "insert into firing (id, job, kind, kiln, keypad, slot, plan, work_text,"
                        + " kiln_text, keypad_text, planned, press_ms, made_ms) values (:id, :job,"
                        + " :kind, :kiln, :keypad, :slot, :plan, :work, :kilnText, :keypadText,"
                        + " :planned, :press, :made)")
                .bind("id", id)
                .bind("job", firing.job())
                .bind("kind", firing.kind())
                .bind("kiln", firing.kiln())
                .bind("keypad", firing.keypad())
                .bind("slot", firing.slot())
                .bind("plan", firing.plan())
                .bind("work", firing.work())
                .bind("kilnText", firing.kilnText())
                .bind("keypadText", firing.keypadText())
                .bind("planned", firing.planned())
                .bind("press", firing.press().toEpochMilli())
                .bind("made", made.toEpochMilli())
                .execute());
    return find(id).orElseThrow();
  }

  /** Every firing that was not put away, the one pressed last first. */
  public List<FiringEntry> all() {
    return run(
        handle -> {
          Map<String, List<FiringEntry.Told>> told = new HashMap<>();
          handle
              .createQuery(
                  "select e.* from firing_event e join firing f on f.id = e.firing_id"
                      + " where f.removed_ms is null and e.taken_back_ms is null order by e.turn")
              .map((row, context) -> Map.entry(row.getString("firing_id"), TOLD.map(row, context)))
              .forEach(
                  e -> told.computeIfAbsent(e.getKey(), id -> new ArrayList<>()).add(e.getValue()));
          return handle
              .createQuery(
                  "select * from firing where removed_ms is null order by press_ms desc, id")
              .map(FIRING)
              .list()
              .stream()
              .map(firing -> firing.with(told.getOrDefault(firing.id(), List.of())))
              .toList();
        });
  }

  /** A firing, also one that was put away. */
  public Optional<FiringEntry> find(String id) {
    return run(
        handle ->
            handle
                .createQuery("select * from firing where id = :id")
                .bind("id", id)
                .map(FIRING)
                .findOne()
                .map(firing -> firing.with(told(handle, id))));
  }

  /**
   * Adds what happened.
   *
   * @param firing id of a firing
   * @param line what; its id is the store's to give
   * @return its id
   */
  public String tell(String firing, FiringEntry.Told line) {
    return run(handle -> handle.inTransaction(h -> tell(h, firing, line)));
  }

  /** Adds a picture. */
  public String tell(String firing, FiringEntry.Told line, FiringEntry.Photo photo) {
    return run(
        handle ->
            handle.inTransaction(
                h -> {
                  String id = tell(h, firing, line);
                  h.createUpdate(
                          "insert into firing_photo (event_id, media_type, picture)"
                              + " values (:id, :media, :picture)")
                      .bind("id", id)
                      .bind("media", photo.mediaType())
                      .bind("picture", photo.picture())
                      .execute();
                  return id;
                }));
  }

  public Optional<FiringEntry.Photo> photo(String line) {
    return run(
        handle ->
            handle
                .createQuery(
                    "select p.* from firing_photo p join firing_event e on e.id = p.event_id"
                        + " where p.event_id = :id and e.taken_back_ms is null")
                .bind("id", line)
                .map(
                    (row, context) ->
                        new FiringEntry.Photo(row.getString("media_type"), row.getBytes("picture")))
                .findOne());
  }

  /** Takes a line back, or puts it back. */
  public void takeBack(String firing, String line, boolean back) {
    run(
        handle ->
            handle
                .createUpdate(
                    "update firing_event set taken_back_ms = :when"
                        + " where id = :id and firing_id = :firing")
                .bind("when", back ? store.now().toEpochMilli() : null)
                .bind("id", line)
                .bind("firing", firing)
                .execute());
  }

  /** Puts a firing away, or puts it back. */
  public void remove(String firing, boolean away) {
    run(
        handle ->
            handle
                .createUpdate("update firing set removed_ms = :when where id = :id")
                .bind("when", away ? store.now().toEpochMilli() : null)
                .bind("id", firing)
                .execute());
  }

  private String tell(Handle handle, String firing, FiringEntry.Told line) {
    String id = UUID.randomUUID().toString();
    handle
        .createUpdate(
            "insert into firing_event (id, firing_id, turn, kind, at_ms, celsius, body, told_ms)"
                + " select :id, :firing, coalesce(max(turn), 0) + 1, :kind, :at, :celsius, :body,"
                + " :told from firing_event where firing_id = :firing")
        .bind("id", id)
        .bind("firing", firing)
        .bind("kind", line.kind())
        .bind("at", line.at().toEpochMilli())
        .bind("celsius", line.celsius().isPresent() ? line.celsius().getAsDouble() : null)
        .bind("body", line.text())
        .bind("told", store.now().toEpochMilli())
        .execute();
    return id;
  }

  private static List<FiringEntry.Told> told(Handle handle, String firing) {
    return handle
        .createQuery(
            "select * from firing_event where firing_id = :firing and taken_back_ms is null"
                + " order by turn")
        .bind("firing", firing)
        .map(TOLD)
        .list();
  }

  private static final RowMapper<FiringEntry> FIRING =
      (row, context) -> {
        long removed = row.getLong("removed_ms");
        boolean away = !row.wasNull();
        return new FiringEntry(
            row.getString("id"),
            row.getString("job"),
            row.getString("kind"),
            row.getString("kiln"),
            row.getString("keypad"),
            row.getInt("slot"),
            row.getString("plan"),
            row.getString("work_text"),
            row.getString("kiln_text"),
            row.getString("keypad_text"),
            row.getString("planned"),
            Instant.ofEpochMilli(row.getLong("press_ms")),
            Instant.ofEpochMilli(row.getLong("made_ms")),
            List.of(),
            away ? Optional.of(Instant.ofEpochMilli(removed)) : Optional.empty());
      };

  private static final RowMapper<FiringEntry.Told> TOLD =
      (row, context) -> {
        double celsius = row.getDouble("celsius");
        boolean shown = !row.wasNull();
        return new FiringEntry.Told(
            row.getString("id"),
            row.getString("kind"),
            Instant.ofEpochMilli(row.getLong("at_ms")),
            shown ? OptionalDouble.of(celsius) : OptionalDouble.empty(),
            row.getString("body"));
      };

  private <T> T run(Function<Handle, T> work) {
    return store.run(work);
  }
}
