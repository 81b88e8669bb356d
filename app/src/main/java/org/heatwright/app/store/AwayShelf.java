package org.heatwright.app.store;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/**
 * What was put away: texts, cards, logs, and firings from the book. Nothing of it is lost, and all
 * of it can be put back; its name is free for another meanwhile. Safe for use from several threads;
 * throws as the {@link Store} does.
 */
public final class AwayShelf {

  /** Tables of what is not a text, by what people call it. */
  private static final Map<String, String> TABLES =
      Map.of("card", "card", "log", "firing_log", "firing", "firing");

  private static final String ALL =
      """
      select replace(kind, ' away', '') as what, id, away_name as name, removed_ms
        from document where removed_ms is not null
      union all select 'card', id, name, removed_ms from card where removed_ms is not null
      union all select 'log', id, name, removed_ms from firing_log where removed_ms is not null
      union all select 'firing', id, job, removed_ms from firing where removed_ms is not null
      order by removed_ms desc, name
      """;

  private final Store store;

  AwayShelf(Store store) {
    this.store = store;
  }

  /**
   * Something that was put away.
   *
   * @param what kind of thing: a {@link Kind}'s word, "card", "log" or "firing"
   * @param id UUID as text
   * @param name what it was called
   * @param removed when
   */
  public record Away(String what, String id, String name, Instant removed) {}

  /** All of it, what was put away last first. */
  public List<Away> all() {
    return store.run(
        handle ->
            handle
                .createQuery(ALL)
                .map(
                    (row, context) ->
                        new Away(
                            row.getString("what"),
                            row.getString("id"),
                            row.getString("name"),
                            Instant.ofEpochMilli(row.getLong("removed_ms"))))
                .list());
  }

  public Optional<Away> find(String id) {
    return all().stream().filter(away -> away.id().equals(id)).findFirst();
  }

  /**
   * Puts something away.
   *
   * @param what as in {@link Away}
   * @return false if it is not on the shelf
   */
  public boolean putAway(String what, String id) {
    String table = TABLES.get(what);
    String update =
        table == null
            ? "update document set removed_ms = :now, away_name = name, name = id,"
                + " kind = kind || ' away' where id = :id and removed_ms is null"
            : "update " + table + " set removed_ms = :now where id = :id and removed_ms is null";
    return store.run(
            handle ->
                handle
                    .createUpdate(update)
                    .bind("id", id)
                    .bind("now", store.now().toEpochMilli())
                    .execute())
        > 0;
  }

  /**
   * Puts something back: a text under the name it had, or, where another text has that now, under
   * the next free one ("Anchor 2").
   *
   * @return its name; empty if it was not put away
   */
  public Optional<String> putBack(String id) {
    return find(id).map(away -> store.run(handle -> handle.inTransaction(h -> putBack(h, away))));
  }

  private static String putBack(Handle handle, Away away) {
    String table = TABLES.get(away.what());
    if (table != null) {
      handle
          .createUpdate("update " + table + " set removed_ms = null where id = :id")
          .bind("id", away.id())
          .execute();
      return away.name();
    }
    String name = free(handle, away.what(), away.name());
    handle
        .createUpdate(
            "update document set removed_ms = null, away_name = null, name = :name, kind = :kind"
                + " where id = :id")
        .bind("id", away.id())
        .bind("kind", away.what())
        .bind("name", name)
        .execute();
    return name;
  }

  /** A name that no text of the kind has. */
  public String free(Kind kind, String name) {
    return store.run(handle -> free(handle, kind.word(), name));
  }

  private static String free(Handle handle, String kind, String name) {
    List<String> taken =
        handle
            .createQuery("select name from document where kind = :kind")
            .bind("kind", kind)
            .mapTo(String.class)
            .list();
    List<String> tried = new ArrayList<>(List.of(name));
    while (taken.contains(tried.get(tried.size() - 1))) {
      tried.add("%s %d".formatted(name, tried.size() + 1));
    }
    return tried.get(tried.size() - 1);
  }
}
