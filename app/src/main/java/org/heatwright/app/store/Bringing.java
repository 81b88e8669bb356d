package org.heatwright.app.store;

import java.nio.file.Path;
import java.util.List;
import java.util.UUID;
import org.jdbi.v3.core.Handle;

/**
 * Puts what another store of the same layout holds beside what this one holds. Rows have ids that
 * are the same nowhere else, so that what both have is known; texts of one kind and name are one.
 */
final class Bringing {

  private final Handle handle;

  private Bringing(Handle handle) {
    this.handle = handle;
  }

  /** Does it, all or nothing. */
  static Archive.Brought from(Path other, Handle handle) {
    handle.execute("attach database ? as other", other.toString());
    try {
      return handle.inTransaction(h -> new Bringing(h).all());
    } finally {
      handle.execute("detach database other");
    }
  }

  private Archive.Brought all() {
    // Where a text of theirs stands here: under its own id, or that of ours of its kind and name.
    handle.execute("drop table if exists temp.place");
    handle.execute(
        "create temp table place as select t.id as theirs, coalesce(o.id, t.id) as ours"
            + " from other.document t left join main.document o"
            + " on o.id = t.id or (o.kind = t.kind and o.name = t.name)");
    int texts = texts();
    handle.execute(
        "insert or ignore into main.earlier_text (id, document_id, body, kept_ms, replaced_ms)"
            + " select e.id, p.ours, e.body, e.kept_ms, e.replaced_ms"
            + " from other.earlier_text e join temp.place p on p.theirs = e.document_id");
    int logs = logs();
    slotEvents();
    int firings = added("firing");
    firingEvents();
    added("firing_photo");
    int cards = added("card");
    int pieces = added("piece_firing");
    added("log_form");
    handle.execute("drop table temp.place");
    return new Archive.Brought(texts, logs, firings, cards, pieces);
  }

  /** One text of which both hold something else, with when each last changed. */
  private record Differing(
      String id, String ours, long oursMillis, String theirs, long theirsMillis) {}

  private int texts() {
    int fresh =
        handle.execute(
            "insert into main.document (%1$s) select %1$s from other.document"
                    .formatted(columns("document"))
                + " where id in (select theirs from temp.place"
                + " where ours = theirs and theirs not in (select id from main.document))");
    List<Differing> differing =
        handle
            .createQuery(
                "select p.ours as id, o.body as ours, o.changed_ms as ours_ms, t.body as theirs,"
                    + " t.changed_ms as theirs_ms from other.document t"
                    + " join temp.place p on p.theirs = t.id"
                    + " join main.document o on o.id = p.ours where o.body <> t.body")
            .map(
                (row, context) ->
                    new Differing(
                        row.getString("id"),
                        row.getString("ours"),
                        row.getLong("ours_ms"),
                        row.getString("theirs"),
                        row.getLong("theirs_ms")))
            .list();
    int changed = 0;
    for (Differing text : differing) {
      boolean newer = text.theirsMillis() > text.oursMillis();
      handle
          .createUpdate(
              "insert into main.earlier_text (id, document_id, body, kept_ms, replaced_ms)"
                  + " select :id, :document, :body, :kept, :replaced where not exists"
                  + " (select 1 from main.earlier_text where document_id = :document"
                  + " and body = :body)")
          .bind("id", UUID.randomUUID().toString())
          .bind("document", text.id())
          .bind("body", newer ? text.ours() : text.theirs())
          .bind("kept", Math.min(text.oursMillis(), text.theirsMillis()))
          .bind("replaced", Math.max(text.oursMillis(), text.theirsMillis()))
          .execute();
      if (newer) {
        changed +=
            handle
                .createUpdate(
                    "update main.document set body = :body, changed_ms = :changed where id = :id")
                .bind("body", text.theirs())
                .bind("changed", text.theirsMillis())
                .bind("id", text.id())
                .execute();
      }
    }
    return fresh + changed;
  }

  /** What was told of slots keeps its order, behind what was told here. */
  private void slotEvents() {
    handle.execute(
        "insert into main.slot_event (%s) select %s from other.slot_event t"
                .formatted(
                    columns("slot_event"),
                    prefixed(columns("slot_event"))
                        .replace("t.kiln_id", "k.ours")
                        .replace("t.keypad_id", "d.ours")
                        .replace(
                            "t.turn",
                            "t.turn + coalesce((select max(s.turn) from main.slot_event s"
                                + " where s.kiln_id = k.ours and s.keypad_id = d.ours), 0)"))
            + " join temp.place k on k.theirs = t.kiln_id"
            + " join temp.place d on d.theirs = t.keypad_id"
            + " where t.id not in (select id from main.slot_event)");
  }

  /** Likewise what was told of firings that both have. */
  private void firingEvents() {
    String columns = columns("firing_event");
    handle.execute(
        "insert into main.firing_event (%s) select %s from other.firing_event t"
                .formatted(
                    columns,
                    prefixed(columns)
                        .replace(
                            "t.turn",
                            "t.turn + coalesce((select max(s.turn) from main.firing_event s"
                                + " where s.firing_id = t.firing_id), 0)"))
            + " where t.id not in (select id from main.firing_event)");
  }

  /** The same log of the same kiln stays once, whatever its id. */
  private int logs() {
    String columns = columns("firing_log");
    return handle.execute(
        "insert or ignore into main.firing_log (%s) select %s from other.firing_log t"
                .formatted(columns, prefixed(columns).replace("t.kiln_id", "p.ours"))
            + " join temp.place p on p.theirs = t.kiln_id where not exists (select 1 from"
            + " main.firing_log o where o.kiln_id = p.ours and o.csv = t.csv"
            + " and o.schedule = t.schedule)");
  }

  private static String prefixed(String columns) {
    return "t." + columns.replace(", ", ", t.");
  }

  /** Rows that stand for themselves. */
  private int added(String table) {
    return handle.execute(
        "insert or ignore into main.%1$s (%2$s) select %2$s from other.%1$s"
            .formatted(table, columns(table)));
  }

  private String columns(String table) {
    return String.join(
        ", ",
        handle
            .createQuery("select name from pragma_table_info(:table)")
            .bind("table", table)
            .mapTo(String.class)
            .list());
  }
}
