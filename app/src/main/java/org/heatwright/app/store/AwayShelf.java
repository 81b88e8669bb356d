package org.heatwright.app.store;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;

/**
 * What was put away from the shelf: texts, cards, logs. Nothing of it is lost, and all of it can be
 * put back; its name is free for another meanwhile. Safe for use from several threads; throws as
 * the {@link Store} does.
 */
public final class AwayShelf {

  private static final String CARD = "card";
  private static final String LOG = "log";

  private final Store store;

  AwayShelf(Store store) {
    this.store = store;
  }

  /**
   * Something that was put away.
   *
   * @param what kind of thing: a {@link Kind}'s word, "card" or "log"
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
                .createQuery(
                    "select replace(kind, ' away', '') as what, id, away_name as name, removed_ms"
                        + " from document where removed_ms is not null union all select 'card', id, name, removed_ms"
                        + " from card where removed_ms is not null union all select 'log', id,"
                        + " name, removed_ms from firing_log where removed_ms is not null order by"
                        + " removed_ms desc, name")
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
    return change(
        h ->
            h.createUpdate(
                    switch (what) {
                      case CARD ->
                          "update card set removed_ms = :now where id = :id and removed_ms is null";
                      case LOG ->
                          "update firing_log set removed_ms = :now where id = :id and removed_ms is"
                              + " null";
                      default ->
                          "update document set removed_ms = :now, away_name = name, name = id,"
                              + " kind = kind || ' away' where id = :id and removed_ms is null";
                    })
                .bind("id", id)
                .bind("now", store.now().toEpochMilli())
                .execute());
  }

  /**
   * Puts something back: a text under the name it had, or, where another text has that now, under
   * the next free one ("Anchor 2").
   *
   * @return its name; empty if it was not put away
   */
  public Optional<String> putBack(String id) {
    return find(id)
        .flatMap(
            away ->
                store.run(
                    handle ->
                        handle.inTransaction(
                            h -> {
                              String name = away.name();
                              if (away.what().equals(CARD) || away.what().equals(LOG)) {
                                h.createUpdate(
                                        away.what().equals(CARD)
                                            ? "update card set removed_ms = null where id = :id"
                                            : "update firing_log set removed_ms = null where id ="
                                                + " :id")
                                    .bind("id", id)
                                    .execute();
                              } else {
                                name = free(h, away.what(), name);
                                h.createUpdate(
                                        "update document set removed_ms = null, away_name = null,"
                                            + " name = :name, kind = :kind where id = :id")
                                    .bind("id", id)
                                    .bind("kind", away.what())
                                    .bind("name", name)
                                    .execute();
                              }
                              return Optional.of(name);
                            })));
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

  private boolean change(Function<Handle, Integer> update) {
    return store.run(handle -> update.apply(handle)) > 0;
  }
}
