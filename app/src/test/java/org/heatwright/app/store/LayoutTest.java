package org.heatwright.app.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import org.flywaydb.core.api.MigrationVersion;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the build made ready is what every change of the layout, one after the other, leads to. */
class LayoutTest {

  private static final String TABLES =
      "select type || ' ' || name || ' ' || coalesce(sql, '') from sqlite_master order by type, name";

  @TempDir private Path folder;

  @Test
  void theEmptyStoreIsWhatTheChangesLeadTo() throws Exception {
    Path ready = folder.resolve("ready.db");
    Layout.putEmpty(ready);
    assertThat(ready).exists();
    Path changed = folder.resolve("changed.db");
    Store.open(changed, Clock.systemUTC()).close();
    assertThat(column(ready, TABLES)).isEqualTo(column(changed, TABLES)).hasSizeGreaterThan(9);
    assertThat(isNewest(ready)).isTrue();
    assertThat(isNewest(changed)).isTrue();
    assertThat(column(ready, "select body from document")).isEmpty();
  }

  @Test
  void anOlderStoreIsLookedAtCloserAndBroughtOn() throws Exception {
    Path old = folder.resolve("old.db");
    Store.open(old, Clock.systemUTC(), MigrationVersion.fromVersion("8")).close();
    assertThat(isNewest(old)).isFalse();
    try (Store store = Store.open(old, Clock.systemUTC())) {
      assertThat(store.all(Kind.KILN)).isEmpty();
    }
    assertThat(isNewest(old)).isTrue();
  }

  @Test
  void aChangedHistoryOrNoneIsLookedAtCloser() throws Exception {
    Path other = folder.resolve("other.db");
    Layout.putEmpty(other);
    try (Connection store = DriverManager.getConnection("jdbc:sqlite:" + other);
        Statement statement = store.createStatement()) {
      statement.executeUpdate("update flyway_schema_history set checksum = 1 where version = '3'");
    }
    assertThat(isNewest(other)).isFalse();
    assertThat(isNewest(folder.resolve("nothing.db"))).isFalse();
  }

  @Test
  void theBuildMakesTheSameAgain() throws Exception {
    for (String name : List.of("one", "two")) {
      Layout.main(new String[] {folder.resolve(name).toString()});
    }
    for (String file : List.of("empty.db", "changes.txt")) {
      assertThat(bytes("one", file)).isEqualTo(bytes("two", file));
    }
  }

  private byte[] bytes(String name, String file) throws IOException {
    return Files.readAllBytes(folder.resolve(name).resolve(file));
  }

  private static boolean isNewest(Path file) throws SQLException {
    try (Connection store = DriverManager.getConnection("jdbc:sqlite:" + file)) {
      return Layout.isNewest(store);
    }
  }

  private static List<String> column(Path file, String query) throws SQLException {
    List<String> lines = new ArrayList<>();
    try (Connection store = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = store.createStatement();
        ResultSet rows = statement.executeQuery(query)) {
      while (rows.next()) {
        lines.add(rows.getString(1));
      }
    }
    return lines;
  }
}
