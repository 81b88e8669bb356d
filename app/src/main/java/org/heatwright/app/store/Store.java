package org.heatwright.app.store;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.flywaydb.core.api.MigrationVersion;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.JdbiException;
import org.jdbi.v3.core.mapper.RowMapper;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteConfig.JournalMode;
import org.sqlite.SQLiteConfig.SynchronousMode;
import org.sqlite.SQLiteConfig.TransactionMode;
import org.sqlite.SQLiteDataSource;

/**
 * The bench's memory in one SQLite file, brought to the newest layout when it is opened.
 *
 * <p>Safe for use from several threads. Every method throws {@link StoreException} if the file
 * cannot be read or written.
 */
public final class Store implements AutoCloseable {

  private static final int CONNECTIONS = 4;
  private static final int WAIT_FOR_OTHER_WRITERS_MILLIS = 5000;

  private final Path file;
  private final Clock clock;
  private final Optional<Path> folderToRemove;
  private final HikariDataSource pool;
  private final Jdbi jdbi;

  private Store(Path file, Clock clock, Optional<Path> folderToRemove, MigrationVersion layout) {
    this.file = file;
    this.clock = clock;
    this.folderToRemove = folderToRemove;
    this.pool =
        new HikariDataSource(
            poolConfig(
                file, folderToRemove.isPresent() ? SynchronousMode.OFF : SynchronousMode.FULL));
    this.jdbi = Jdbi.create(pool);
    if (!layout.equals(MigrationVersion.LATEST) || !isNewest()) {
      bringTo(layout);
    }
  }

  private boolean isNewest() {
    try (Connection connection = pool.getConnection()) {
      return Layout.isNewest(connection);
    } catch (SQLException e) {
      return false; // whoever looks closer tells why
    }
  }

  private void bringTo(MigrationVersion layout) {
    try {
      Flyway.configure()
          .dataSource(pool)
          .locations("classpath:db/migration")
          .placeholders(Map.of("binary", "blob"))
          .target(layout)
          .load()
          .migrate();
    } catch (FlywayException e) {
      pool.close();
      throw new StoreException(
          "The store '%s' cannot be brought to this version's layout. It is left as it was: a newer"
                  .formatted(file)
              + " Heatwright may have written it, or it is not a store; move it away or choose"
              + " another file.",
          e);
    }
  }

  /** Opens the store in {@code file}, making the file and its folders if they do not exist. */
  public static Store open(Path file, Clock clock) {
    return open(file, clock, MigrationVersion.LATEST);
  }

  /** Opens a file without going past an older layout: how tests make a store of yesterday. */
  static Store open(Path file, Clock clock, MigrationVersion layout) {
    try {
      Path folder = file.toAbsolutePath().getParent();
      if (folder != null) {
        Files.createDirectories(folder);
      }
      return new Store(file, clock, Optional.empty(), layout);
    } catch (IOException | com.zaxxer.hikari.pool.HikariPool.PoolInitializationException e) {
      throw new StoreException(
          "The store '%s' cannot be opened: check that the folder exists, can be written to and has"
                  .formatted(file)
              + " room, and that the file is a Heatwright store.",
          e);
    }
  }

  /** A store that is gone when it is closed. */
  public static Store temporary(Clock clock) {
    try {
      Path folder = Files.createTempDirectory("heatwright-");
      Path file = folder.resolve("heatwright.db");
      Layout.putEmpty(file);
      return new Store(file, clock, Optional.of(folder), MigrationVersion.LATEST);
    } catch (IOException e) {
      throw new StoreException("No temporary folder can be made for the store.", e);
    }
  }

  /**
   * Where a person's own store lives: {@code $XDG_DATA_HOME/heatwright/heatwright.db}, or under
   * {@code ~/.local/share} where that is not set.
   *
   * @param environment the process's environment
   * @param home the person's home folder
   */
  public static Path defaultFile(Map<String, String> environment, Path home) {
    String named = environment.getOrDefault("XDG_DATA_HOME", "");
    Path data =
        named.isBlank() || !Path.of(named).isAbsolute()
            ? home.resolve(".local").resolve("share")
            : Path.of(named);
    return data.resolve("heatwright").resolve("heatwright.db");
  }

  public Path file() {
    return file;
  }

  /** Copies all of it, as it is at one moment, into a file that is not there yet. */
  void copyTo(Path copy) {
    run(handle -> handle.execute("vacuum into ?", copy.toString()));
  }

  /** Brings what another store of this layout holds. */
  Archive.Brought bring(Path other) {
    return run(handle -> Bringing.from(other, handle));
  }

  /** The book of records. */
  public FiringShelf firings() {
    return new FiringShelf(this);
  }

  /** What was put away, and putting away. */
  public AwayShelf away() {
    return new AwayShelf(this);
  }

  /** Answers of a first run that is not done yet. */
  public AnswerShelf start() {
    return new AnswerShelf(this, "start");
  }

  /** Answers about a keypad that is not described to its end yet. */
  public AnswerShelf interview() {
    return new AnswerShelf(this, "keypad");
  }

  /** Every text of a kind, by name. */
  public List<Document> all(Kind kind) {
    return run(
        handle ->
            handle
                .createQuery("select * from document where kind = :kind order by name")
                .bind("kind", kind.word())
                .map(DOCUMENT)
                .list());
  }

  public Optional<Document> find(Kind kind, String name) {
    return run(handle -> find(handle, kind, name));
  }

  /**
   * Keeps a text under a name. A text that was there before is kept as an earlier one; the same
   * text again changes nothing.
   *
   * @param name 1 to 200 characters, not blank
   */
  public Document keep(Kind kind, String name, String text) {
    if (name.isBlank() || name.length() > 200) {
      throw new IllegalArgumentException(
          "The name of a %s must have 1 to 200 characters.".formatted(kind.word()));
    }
    return run(handle -> handle.inTransaction(h -> keep(h, kind, name, text)));
  }

  private Document keep(Handle h, Kind kind, String name, String text) {
    Optional<Document> before = find(h, kind, name);
    if (before.isPresent() && before.get().text().equals(text)) {
      return before.get();
    }
    long now = clock.millis();
    before.ifPresent(old -> keepEarlier(h, old, now));
    h.createUpdate(
            "insert into document (id, kind, name, body, created_ms, changed_ms)"
                + " values (:id, :kind, :name, :body, :now, :now)"
                + " on conflict (kind, name) do update set body = :body,"
                + " changed_ms = :now")
        .bind("id", UUID.randomUUID().toString())
        .bind("kind", kind.word())
        .bind("name", name)
        .bind("body", text)
        .bind("now", now)
        .execute();
    return find(h, kind, name).orElseThrow();
  }

  /** The texts a name held before its present one, newest first. */
  public List<EarlierText> earlier(Kind kind, String name) {
    return run(
        handle ->
            handle
                .createQuery(
                    "select e.body, e.kept_ms, e.replaced_ms from earlier_text e"
                        + " join document d on d.id = e.document_id"
                        + " where d.kind = :kind and d.name = :name"
                        + " order by e.replaced_ms desc, e.kept_ms desc")
                .bind("kind", kind.word())
                .bind("name", name)
                .map(
                    (row, context) ->
                        new EarlierText(
                            row.getString("body"),
                            Instant.ofEpochMilli(row.getLong("kept_ms")),
                            Instant.ofEpochMilli(row.getLong("replaced_ms"))))
                .list());
  }

  /**
   * Puts a log beside its kiln. The same log again changes nothing: the one that is there comes
   * back.
   *
   * @param kiln name of a kiln on the shelf
   * @throws IllegalArgumentException if there is no such kiln
   */
  public FiringLog keepLog(
      String kiln, String name, LocalDate date, String csv, String schedule, String firing) {
    return run(
        handle ->
            handle.inTransaction(
                h -> {
                  Document owner =
                      find(h, Kind.KILN, kiln)
                          .orElseThrow(
                              () -> new IllegalArgumentException("There is no kiln " + kiln + "."));
                  Optional<FiringLog> before =
                      logs(h, owner.id()).stream()
                          .filter(l -> l.csv().equals(csv) && l.schedule().equals(schedule))
                          .findFirst();
                  if (before.isPresent()) {
                    return before.get();
                  }
                  String id = UUID.randomUUID().toString();
                  h.createUpdate(
                          "insert into firing_log (id, kiln_id, name, fired_on, csv, schedule,"
                              + " firing, part, added_ms) values (:id, :kiln, :name, :date, :csv,"
                              + " :schedule, :firing, :part, :added)")
                      .bind("id", id)
                      .bind("kiln", owner.id())
                      .bind("name", name)
                      .bind("date", date.toString())
                      .bind("csv", csv)
                      .bind("schedule", schedule)
                      .bind("firing", firing)
                      .bind("part", FiringLog.Part.NEW.word())
                      .bind("added", clock.millis())
                      .execute();
                  return logs(h, owner.id()).stream()
                      .filter(l -> l.id().equals(id))
                      .findFirst()
                      .orElseThrow();
                }));
  }

  /** The logs of a kiln on the shelf, oldest firing first. */
  public List<FiringLog> logs(String kiln) {
    return run(
        handle ->
            find(handle, Kind.KILN, kiln).map(owner -> logs(handle, owner.id())).orElse(List.of()));
  }

  /**
   * Keeps what was learned: the kiln's new text, and what each log has had in it. All or nothing.
   *
   * @param text the kiln's file with what it taught; its present one becomes an earlier text
   * @param parts the kiln's logs with their new parts and misses
   */
  public void keepLesson(String kiln, String text, List<FiringLog> parts) {
    run(
        handle ->
            handle.inTransaction(
                h -> {
                  keep(h, Kind.KILN, kiln, text);
                  for (FiringLog log : parts) {
                    h.createUpdate(
                            "update firing_log set part = :part, missed_kelvins = :missed,"
                                + " happened = :happened, not_shown = :notShown where id = :id")
                        .bind("part", log.part().word())
                        .bind(
                            "missed",
                            log.missedKelvins().isPresent()
                                ? log.missedKelvins().getAsDouble()
                                : null)
                        .bind("happened", String.join("\n", log.showed().happened()))
                        .bind("notShown", String.join("\n", log.showed().notShown()))
                        .bind("id", log.id())
                        .execute();
                  }
                  return parts.size();
                }));
  }

  private static List<FiringLog> logs(Handle handle, String kilnId) {
    return handle
        .createQuery(
            "select * from firing_log where kiln_id = :kiln and removed_ms is null"
                + " order by fired_on, added_ms")
        .bind("kiln", kilnId)
        .map(LOG)
        .list();
  }

  /**
   * Adds a line to what was told of a keypad's slots.
   *
   * @param kiln name of a kiln on the shelf
   * @param keypad name of a keypad on the shelf
   * @throws IllegalArgumentException if there is no such kiln or keypad
   */
  public void tellSlot(String kiln, String keypad, SlotEntry entry) {
    run(
        handle ->
            handle.inTransaction(
                h ->
                    h.createUpdate(
                            "insert into slot_event (id, kiln_id, keypad_id, turn, slot, kind,"
                                + " role, program, keypad, shown, unit_check, note, until_day,"
                                + " good_for_days, keeps_programs, told_ms) select :id, :kilnId,"
                                + " :keypadId, coalesce(max(turn), 0) + 1, :slot, :kind, :role,"
                                + " :program, :keypad, :shown, :unitCheck, :note, :until, :days,"
                                + " :keeps, :told from slot_event"
                                + " where kiln_id = :kilnId and keypad_id = :keypadId")
                        .bind("id", UUID.randomUUID().toString())
                        .bind("kilnId", onShelf(h, Kind.KILN, kiln).id())
                        .bind("keypadId", onShelf(h, Kind.KEYPAD, keypad).id())
                        .bind("slot", entry.slot())
                        .bind("kind", entry.kind())
                        .bind("role", entry.role())
                        .bind("program", entry.program())
                        .bind("keypad", entry.keypad())
                        .bind("shown", entry.shown())
                        .bind("unitCheck", entry.unitCheck())
                        .bind("note", entry.note())
                        .bind("until", entry.untilDay().map(LocalDate::toString).orElse(null))
                        .bind(
                            "days",
                            entry.goodForDays().isPresent() ? entry.goodForDays().getAsInt() : null)
                        .bind("keeps", entry.keepsPrograms().map(k -> k ? 1 : 0).orElse(null))
                        .bind("told", entry.told().toEpochMilli())
                        .execute()));
  }

  private static Document onShelf(Handle handle, Kind kind, String name) {
    return find(handle, kind, name)
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "There is no %s %s on the shelf.".formatted(kind.word(), name)));
  }

  /** Everything that was told of a keypad's slots, in the order it was told. */
  public List<SlotEntry> slotsTold(String kiln, String keypad) {
    return run(
        handle ->
            handle
                .createQuery(
                    "select e.* from slot_event e"
                        + " join document k on k.id = e.kiln_id"
                        + " join document p on p.id = e.keypad_id"
                        + " where k.name = :kiln and p.name = :keypad order by e.turn")
                .bind("kiln", kiln)
                .bind("keypad", keypad)
                .map(SLOT)
                .list());
  }

  /**
   * What people have named: everything on the shelf, logs, firings and pieces, put away or not. No
   * entry is read for it beyond its names, so that none can spoil it.
   */
  public Set<String> names() {
    return run(
        handle ->
            handle
                .createQuery(
                    "select coalesce(away_name, name) from document"
                        + " union select name from firing_log"
                        + " union select job from firing union select kiln from firing"
                        + " union select keypad from firing"
                        + " union select piece from piece_firing")
                .mapTo(String.class)
                .collect(Collectors.toUnmodifiableSet()));
  }

  /** The keypad of a kiln by what was told last of its slots: its name on the shelf. */
  public Optional<String> keypadOf(String kiln) {
    return run(
        handle ->
            handle
                .createQuery(
                    "select p.name from slot_event e"
                        + " join document k on k.id = e.kiln_id"
                        + " join document p on p.id = e.keypad_id"
                        + " where k.name = :kiln and p.removed_ms is null"
                        + " order by e.told_ms desc, e.turn desc limit 1")
                .bind("kiln", kiln)
                .mapTo(String.class)
                .findOne());
  }

  /**
   * Keeps what a session's log told of its pieces, in place of what the same log told before. All
   * or nothing.
   *
   * @param logText the log itself: it tells whether it is the same
   * @param pieces its firings
   */
  public void keepPieces(String logText, List<PieceEntry> pieces) {
    String log = UUID.nameUUIDFromBytes(logText.getBytes(StandardCharsets.UTF_8)).toString();
    run(
        handle ->
            handle.inTransaction(
                h -> {
                  h.createUpdate("delete from piece_firing where log_id = :log")
                      .bind("log", log)
                      .execute();
                  pieces.forEach(piece -> keep(h, log, piece));
                  return pieces.size();
                }));
  }

  private void keep(Handle h, String log, PieceEntry piece) {
    h.createUpdate(
            "insert into piece_firing (log_id, number, piece, coat, place, log, kiln, metal,"
                + " fired_ms, in_seconds, stay_seconds, working_celsius, heat_seconds,"
                + " hottest_celsius, look, kept_ms) values (:logId, :number, :piece, :coat,"
                + " :place, :log, :kiln, :metal, :fired, :in, :stay, :working, :heat, :hottest,"
                + " :look, :kept)")
        .bind("logId", log)
        .bind("number", piece.number())
        .bind("piece", piece.piece())
        .bind("coat", piece.coat().isPresent() ? piece.coat().getAsInt() : null)
        .bind("place", piece.place())
        .bind("log", piece.log())
        .bind("kiln", piece.kiln())
        .bind("metal", piece.metal())
        .bind("fired", piece.fired().map(Instant::toEpochMilli).orElse(null))
        .bind("in", piece.inSeconds())
        .bind("stay", piece.staySeconds())
        .bind("working", piece.workingCelsius())
        .bind("heat", piece.heatSeconds())
        .bind("hottest", piece.hottestCelsius())
        .bind("look", piece.look())
        .bind("kept", clock.millis())
        .execute();
  }

  /**
   * Every firing that was kept, by piece; a piece's firings in their order, those without a clock
   * first.
   */
  public List<PieceEntry> pieces() {
    return run(
        handle ->
            handle
                .createQuery(
                    "select * from piece_firing"
                        + " order by piece, coalesce(fired_ms, 0), log, in_seconds")
                .map(PIECE)
                .list());
  }

  /**
   * Keeps what was corrected in a log, for the next of its form; what was kept before is replaced.
   *
   * @param shape by what the form is known
   * @param corrections a line each
   */
  public void keepLogForm(String shape, String corrections) {
    run(
        handle ->
            handle
                .createUpdate(
                    "insert into log_form (shape, corrections, told_ms)"
                        + " values (:shape, :corrections, :told)"
                        + " on conflict (shape) do update set corrections = :corrections,"
                        + " told_ms = :told")
                .bind("shape", shape)
                .bind("corrections", corrections)
                .bind("told", clock.millis())
                .execute());
  }

  /** What was corrected in the last log of a form. */
  public Optional<String> logForm(String shape) {
    return run(
        handle ->
            handle
                .createQuery("select corrections from log_form where shape = :shape")
                .bind("shape", shape)
                .mapTo(String.class)
                .findOne());
  }

  /** Keeps a card as it was handed out. */
  public CardEntry keepCard(String name, String madeFrom, byte[] pdf) {
    CardEntry entry = new CardEntry(UUID.randomUUID().toString(), name, madeFrom, now());
    run(
        handle ->
            handle
                .createUpdate(
                    "insert into card (id, name, made_from, pdf, made_ms)"
                        + " values (:id, :name, :madeFrom, :pdf, :made)")
                .bind("id", entry.id())
                .bind("name", name)
                .bind("madeFrom", madeFrom)
                .bind("pdf", pdf)
                .bind("made", entry.made().toEpochMilli())
                .execute());
    return entry;
  }

  /** The cards made last, newest first. */
  public List<CardEntry> newestCards(int atMost) {
    return run(
        handle ->
            handle
                .createQuery(
                    "select id, name, made_from, made_ms from card where removed_ms is null"
                        + " order by made_ms desc, id limit :atMost")
                .bind("atMost", atMost)
                .map(
                    (row, context) ->
                        new CardEntry(
                            row.getString("id"),
                            row.getString("name"),
                            row.getString("made_from"),
                            Instant.ofEpochMilli(row.getLong("made_ms"))))
                .list());
  }

  public Optional<byte[]> cardPdf(String id) {
    return run(
        handle ->
            handle
                .createQuery("select pdf from card where id = :id and removed_ms is null")
                .bind("id", id)
                .map((row, context) -> row.getBytes("pdf"))
                .findOne());
  }

  /** Whether the file answers. */
  public boolean answers() {
    try {
      return run(handle -> handle.createQuery("select 1").mapTo(Integer.class).one()) == 1;
    } catch (StoreException e) {
      return false;
    }
  }

  /** Lets go of the file; a temporary store is removed. */
  @Override
  public void close() {
    pool.close();
    folderToRemove.ifPresent(Store::removeFolder);
  }

  Instant now() {
    return Instant.ofEpochMilli(clock.millis());
  }

  private static final RowMapper<Document> DOCUMENT =
      (row, context) ->
          new Document(
              row.getString("id"),
              Kind.valueOf(row.getString("kind").toUpperCase(java.util.Locale.ROOT)),
              row.getString("name"),
              row.getString("body"),
              Instant.ofEpochMilli(row.getLong("created_ms")),
              Instant.ofEpochMilli(row.getLong("changed_ms")));

  private static final RowMapper<FiringLog> LOG =
      (row, context) -> {
        double missed = row.getDouble("missed_kelvins");
        boolean known = !row.wasNull();
        return new FiringLog(
            row.getString("id"),
            row.getString("name"),
            LocalDate.parse(row.getString("fired_on")),
            row.getString("csv"),
            row.getString("schedule"),
            row.getString("firing"),
            FiringLog.Part.valueOf(row.getString("part").toUpperCase(java.util.Locale.ROOT)),
            known ? OptionalDouble.of(missed) : OptionalDouble.empty(),
            new FiringLog.Showed(
                row.getString("happened").lines().toList(),
                row.getString("not_shown").lines().toList()),
            Instant.ofEpochMilli(row.getLong("added_ms")));
      };

  private static final RowMapper<PieceEntry> PIECE =
      (row, context) -> {
        int coat = row.getInt("coat");
        OptionalInt told = row.wasNull() ? OptionalInt.empty() : OptionalInt.of(coat);
        long fired = row.getLong("fired_ms");
        Optional<Instant> at =
            row.wasNull() ? Optional.empty() : Optional.of(Instant.ofEpochMilli(fired));
        return new PieceEntry(
            row.getString("piece"),
            row.getInt("number"),
            told,
            row.getString("place"),
            row.getString("log"),
            row.getString("kiln"),
            row.getString("metal"),
            at,
            row.getDouble("in_seconds"),
            row.getDouble("stay_seconds"),
            row.getDouble("working_celsius"),
            row.getDouble("heat_seconds"),
            row.getDouble("hottest_celsius"),
            row.getString("look"));
      };

  private static final RowMapper<SlotEntry> SLOT =
      (row, context) -> {
        int days = row.getInt("good_for_days");
        OptionalInt goodForDays = row.wasNull() ? OptionalInt.empty() : OptionalInt.of(days);
        int keeps = row.getInt("keeps_programs");
        Optional<Boolean> keepsPrograms =
            row.wasNull() ? Optional.empty() : Optional.of(keeps == 1);
        return new SlotEntry(
            row.getInt("slot"),
            row.getString("kind"),
            row.getString("role"),
            row.getString("program"),
            row.getString("keypad"),
            row.getString("shown"),
            row.getString("unit_check"),
            row.getString("note"),
            Optional.ofNullable(row.getString("until_day")).map(LocalDate::parse),
            goodForDays,
            keepsPrograms,
            Instant.ofEpochMilli(row.getLong("told_ms")));
      };

  private static Optional<Document> find(Handle handle, Kind kind, String name) {
    return handle
        .createQuery("select * from document where kind = :kind and name = :name")
        .bind("kind", kind.word())
        .bind("name", name)
        .map(DOCUMENT)
        .findOne();
  }

  private static void keepEarlier(Handle handle, Document old, long now) {
    handle
        .createUpdate(
            "insert into earlier_text (id, document_id, body, kept_ms, replaced_ms)"
                + " values (:id, :document, :body, :kept, :now)")
        .bind("id", UUID.randomUUID().toString())
        .bind("document", old.id())
        .bind("body", old.text())
        .bind("kept", old.changed().toEpochMilli())
        .bind("now", now)
        .execute();
  }

  <T> T run(Function<Handle, T> work) {
    try {
      return jdbi.withHandle(work::apply);
    } catch (JdbiException e) {
      throw new StoreException(
          "The store '%s' cannot be used now: check that its disk has room and that no other program"
                  .formatted(file)
              + " holds it, then try again.",
          e);
    }
  }

  /**
   * @param synchronous whether what was kept is on the disk when a call returns: a store that is
   *     gone when it is closed need not wait for that
   */
  private static HikariConfig poolConfig(Path file, SynchronousMode synchronous) {
    SQLiteConfig sqlite = new SQLiteConfig();
    sqlite.setJournalMode(JournalMode.WAL);
    sqlite.setSynchronous(synchronous);
    sqlite.enforceForeignKeys(true);
    sqlite.setBusyTimeout(WAIT_FOR_OTHER_WRITERS_MILLIS);
    sqlite.setTransactionMode(TransactionMode.IMMEDIATE);
    SQLiteDataSource source = new SQLiteDataSource(sqlite);
    source.setUrl("jdbc:sqlite:" + file);
    HikariConfig config = new HikariConfig();
    config.setPoolName("store");
    config.setDataSource(source);
    config.setMaximumPoolSize(CONNECTIONS);
    return config;
  }

  private static void removeFolder(Path folder) {
    try (Stream<Path> files = Files.list(folder)) {
      for (Path inside : files.toList()) {
        Files.deleteIfExists(inside);
      }
      Files.deleteIfExists(folder);
    } catch (IOException e) {
      throw new StoreException("The temporary store '%s' cannot be removed.".formatted(folder), e);
    }
  }
}
