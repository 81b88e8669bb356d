package org.heatwright.app.store;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.util.Optional;
import java.util.StringJoiner;

/**
 * This version's layout, made ready while Heatwright is built: an empty store, and the history of
 * changes that led to it. So a start needs not look for changes that are not there, which takes
 * longer than all else it does to a store. Where nothing was made ready, every start looks.
 */
public final class Layout {

  /** Every change in its order, as a store tells it. */
  private static final String HISTORY =
      "select version, checksum, success from flyway_schema_history order by installed_rank";

  private static final String FOLDER = "/store/";
  private static final String EMPTY = "empty.db";
  private static final String CHANGES = "changes.txt";

  private Layout() {}

  /**
   * Makes it ready; called by the build.
   *
   * @param args the folder to write to
   */
  public static void main(String[] args) throws IOException, SQLException {
    Path folder = Files.createDirectories(Path.of(args[0]));
    Path file = folder.resolve(EMPTY);
    Files.deleteIfExists(file);
    Store.open(file, Clock.systemUTC()).close();
    try (Connection store = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = store.createStatement()) {
      // The same sources make the same file.
      statement.executeUpdate(
          "update flyway_schema_history set installed_on = '2026-01-01', execution_time = 0,"
              + " installed_by = ''");
      statement.execute("vacuum");
      Files.writeString(folder.resolve(CHANGES), history(store));
    }
  }

  /** Puts an empty store of this layout where there is no file yet, if one was made ready. */
  static void putEmpty(Path file) throws IOException {
    try (InputStream in = Layout.class.getResourceAsStream(FOLDER + EMPTY)) {
      if (in != null) {
        Files.copy(in, file);
      }
    }
  }

  /** Whether a store surely has this layout; if not, somebody has to look closer. */
  static boolean isNewest(Connection store) {
    Optional<String> newest = changes();
    try {
      return newest.isPresent() && newest.get().equals(history(store));
    } catch (SQLException noHistory) {
      return false;
    }
  }

  private static Optional<String> changes() {
    try (InputStream in = Layout.class.getResourceAsStream(FOLDER + CHANGES)) {
      return in == null
          ? Optional.empty()
          : Optional.of(new String(in.readAllBytes(), StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String history(Connection store) throws SQLException {
    StringJoiner lines = new StringJoiner("\n", "", "\n");
    try (Statement statement = store.createStatement();
        ResultSet rows = statement.executeQuery(HISTORY)) {
      while (rows.next()) {
        lines.add("%s %s %s".formatted(rows.getString(1), rows.getString(2), rows.getString(3)));
      }
    }
    return lines.toString();
  }
}
