package org.heatwright.app.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.flywaydb.core.api.MigrationVersion;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StoreTest {

  private static final Instant NOON = Instant.parse("2026-12-01T12:00:00.123Z");

  @TempDir Path folder;

  @Test
  void aKeptTextIsThereAfterReopening() {
    try (Store store = Store.open(file(), at(NOON))) {
      store.keep(Kind.KILN, "Anchor", "name: Anchor\n");
    }
    try (Store store = Store.open(file(), at(NOON.plusSeconds(60)))) {
      Document anchor = store.find(Kind.KILN, "Anchor").orElseThrow();
      assertThat(anchor.text()).isEqualTo("name: Anchor\n");
      assertThat(anchor.created()).isEqualTo(NOON);
      assertThat(store.find(Kind.KEYPAD, "Anchor")).isEmpty();
    }
  }

  @Test
  void aReplacedTextStaysAsAnEarlierOne() {
    try (Store store = Store.open(file(), at(NOON))) {
      store.keep(Kind.SCHEDULE, "harbour", "one");
    }
    try (Store store = Store.open(file(), at(NOON.plusSeconds(60)))) {
      Document changed = store.keep(Kind.SCHEDULE, "harbour", "two");
      Document same = store.keep(Kind.SCHEDULE, "harbour", "two");
      assertThat(same).isEqualTo(changed);
      assertThat(changed.created()).isEqualTo(NOON);
      assertThat(changed.changed()).isEqualTo(NOON.plusSeconds(60));
      assertThat(store.earlier(Kind.SCHEDULE, "harbour"))
          .containsExactly(new EarlierText("one", NOON, NOON.plusSeconds(60)));
    }
  }

  @Test
  void cardsComeBackByteForByteNewestFirst() {
    byte[] pdf = {37, 80, 68, 70, 0, -1, 127};
    try (Store store = Store.open(file(), at(NOON))) {
      store.keepCard("older", "work=a", pdf);
    }
    try (Store store = Store.open(file(), at(NOON.plusSeconds(1)))) {
      CardEntry newer = store.keepCard("newer", "work=b", pdf);
      assertThat(store.newestCards(5))
          .extracting(CardEntry::name)
          .containsExactly("newer", "older");
      assertThat(store.newestCards(1)).containsExactly(newer);
      assertThat(store.cardPdf(newer.id())).hasValueSatisfying(b -> assertThat(b).isEqualTo(pdf));
      assertThat(store.cardPdf("no-such-card")).isEmpty();
    }
  }

  @Test
  void aStoreOfTheFirstLayoutIsBroughtUpWithNothingLost() throws Exception {
    try (Store first = Store.open(file(), at(NOON), MigrationVersion.fromVersion("1"))) {
      first.keep(Kind.KILN, "Anchor", "old kiln");
      first.keepCard("card", "work=a", new byte[] {1, 2, 3});
    }
    assertThat(tables()).contains("document").doesNotContain("earlier_text");
    try (Store store = Store.open(file(), at(NOON.plusSeconds(1)))) {
      assertThat(store.find(Kind.KILN, "Anchor").orElseThrow().text()).isEqualTo("old kiln");
      assertThat(store.newestCards(9)).hasSize(1);
      store.keep(Kind.KILN, "Anchor", "new kiln");
      assertThat(store.earlier(Kind.KILN, "Anchor"))
          .extracting(EarlierText::text)
          .containsExactly("old kiln");
    }
  }

  @Test
  void logsComeBackByDateAndTheSameOneIsKeptOnce() {
    try (Store store = Store.open(file(), at(NOON))) {
      store.keep(Kind.KILN, "Anchor", "kiln");
      store.keep(Kind.KILN, "Buoy", "kiln");
      LocalDate may = LocalDate.of(2026, 5, 2);
      FiringLog later = store.keepLog("Anchor", "later", may, "csv 2", "schedule", "");
      FiringLog first = store.keepLog("Anchor", "first", may.minusDays(9), "csv 1", "schedule", "");
      assertThat(store.keepLog("Anchor", "again", may, "csv 2", "schedule", "")).isEqualTo(later);
      assertThat(store.logs("Anchor")).containsExactly(first, later);
      assertThat(store.logs("Buoy")).isEmpty();
      assertThat(first.part()).isEqualTo(FiringLog.Part.NEW);
      assertThat(first.missedKelvins()).isEmpty();
      assertThatThrownBy(() -> store.keepLog("Dinghy", "x", may, "csv", "schedule", ""))
          .isInstanceOf(IllegalArgumentException.class);
    }
  }

  @Test
  void whatWasLearnedIsKeptWithThePartOfEachLog() {
    try (Store store = Store.open(file(), at(NOON))) {
      store.keep(Kind.KILN, "Anchor", "nameplate");
      FiringLog log =
          store.keepLog("Anchor", "may", LocalDate.of(2026, 5, 2), "csv", "schedule", "");
      FiringLog taught =
          log.after(
              FiringLog.Part.TAUGHT,
              OptionalDouble.of(2.5),
              new FiringLog.Showed(List.of("The relay stuck.", "It stuck again."), List.of()));
      store.keepLesson("Anchor", "learned", List.of(taught));
      assertThat(store.logs("Anchor")).containsExactly(taught);
      assertThat(store.find(Kind.KILN, "Anchor").orElseThrow().text()).isEqualTo("learned");
      assertThat(store.earlier(Kind.KILN, "Anchor"))
          .extracting(EarlierText::text)
          .containsExactly("nameplate");
    }
  }

  @Test
  void writersInTwoStoresAtOnceLoseNothing() throws Exception {
    int rounds = 40;
    try (Store one = Store.open(file(), at(NOON));
        Store two = Store.open(file(), at(NOON))) {
      ExecutorService threads = Executors.newFixedThreadPool(4);
      try {
        List<Callable<Object>> writers = new ArrayList<>();
        for (int t = 0; t < 4; t++) {
          Store store = t % 2 == 0 ? one : two;
          String own = "own-" + t;
          writers.add(
              () -> {
                for (int i = 0; i < rounds; i++) {
                  store.keep(Kind.SCHEDULE, "shared", own + " " + i);
                  store.keep(Kind.SCHEDULE, own + "-" + i, "text");
                }
                return null;
              });
        }
        for (Future<Object> done : threads.invokeAll(writers)) {
          done.get();
        }
      } finally {
        threads.shutdownNow();
      }
      assertThat(one.all(Kind.SCHEDULE)).hasSize(4 * rounds + 1);
      assertThat(one.earlier(Kind.SCHEDULE, "shared")).hasSize(4 * rounds - 1);
    }
  }

  @Test
  void aFileThatIsNoStoreIsRefusedInOneSentenceAndLeftAlone() throws Exception {
    Files.writeString(file(), "this is a shopping list, not a database, and it is long enough");
    assertThatThrownBy(() -> Store.open(file(), at(NOON)))
        .isInstanceOf(StoreException.class)
        .hasMessageContaining(file().toString());
    assertThat(file()).hasContent("this is a shopping list, not a database, and it is long enough");
  }

  @Test
  void aTemporaryStoreIsGoneWhenClosed() {
    Path file;
    try (Store store = Store.temporary(at(NOON))) {
      file = store.file();
      assertThat(file).exists();
    }
    assertThat(file.getParent()).doesNotExist();
  }

  @Test
  void theUsualPlaceFollowsTheDesktopConvention() {
    Path home = Path.of("/home/caster");
    assertThat(Store.defaultFile(Map.of(), home))
        .isEqualTo(home.resolve(".local/share/heatwright/heatwright.db"));
    assertThat(Store.defaultFile(Map.of("XDG_DATA_HOME", "/data"), home))
        .isEqualTo(Path.of("/data/heatwright/heatwright.db"));
    // A relative XDG_DATA_HOME is to be ignored: XDG Base Directory Specification, "Basics".
    assertThat(Store.defaultFile(Map.of("XDG_DATA_HOME", "data"), home))
        .isEqualTo(home.resolve(".local/share/heatwright/heatwright.db"));
  }

  private Path file() {
    return folder.resolve("heatwright.db");
  }

  private List<String> tables() throws Exception {
    List<String> names = new ArrayList<>();
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file());
        var rows =
            connection
                .createStatement()
                .executeQuery("select name from sqlite_master where type = 'table'")) {
      while (rows.next()) {
        names.add(rows.getString(1));
      }
    }
    return names;
  }

  private static Clock at(Instant instant) {
    return Clock.fixed(instant, ZoneOffset.UTC);
  }
}
