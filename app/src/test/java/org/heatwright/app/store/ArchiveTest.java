package org.heatwright.app.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;

/** Everything as one file, and back. */
class ArchiveTest {

  private static final Instant NOON = Instant.parse("2026-12-02T12:00:00Z");
  private static final Clock CLOCK = Clock.fixed(NOON, ZoneOffset.UTC);
  private static final Clock LATER = Clock.offset(CLOCK, Duration.ofHours(1));

  @Test
  void everythingComesBackOnAnotherMachine() throws IOException {
    try (Store here = Store.temporary(CLOCK);
        Store there = Store.temporary(LATER)) {
      fill(here);
      byte[] archive = archive(here);
      Archive.Brought brought = bring(archive, there);
      assertThat(brought).isEqualTo(new Archive.Brought(2, 1, 1, 1, 0));
      assertThat(there.all(Kind.KILN)).isEqualTo(here.all(Kind.KILN));
      assertThat(there.earlier(Kind.KILN, "Anchor")).isEqualTo(here.earlier(Kind.KILN, "Anchor"));
      assertThat(there.logs("Anchor")).isEqualTo(here.logs("Anchor"));
      assertThat(there.firings().all()).isEqualTo(here.firings().all());
      String photo = there.firings().all().get(0).told().get(1).id();
      assertThat(there.firings().photo(photo).orElseThrow().picture()).containsExactly(1, 2, 3);
      assertThat(there.newestCards(9)).isEqualTo(here.newestCards(9));
      assertThat(there.cardPdf(there.newestCards(9).get(0).id()).orElseThrow())
          .containsExactly(4, 5);

      // The same again changes nothing.
      assertThat(bring(archive, there).nothing()).isTrue();
      assertThat(there.firings().all()).isEqualTo(here.firings().all());
      assertThat(bring(archive, here).nothing()).isTrue();
    }
  }

  @Test
  void twoStudiosBecomeOneAndNothingIsLost() throws IOException {
    try (Store here = Store.temporary(CLOCK);
        Store there = Store.temporary(LATER)) {
      fill(here);
      there.keep(Kind.KILN, "Anchor", "newer");
      there.keepLog("Anchor", "June", LocalDate.parse("2026-06-01"), "csv 2", "s", "");
      Archive.Brought brought = bring(archive(here), there);
      assertThat(brought.texts()).isEqualTo(1); // the keypad
      assertThat(there.find(Kind.KILN, "Anchor").orElseThrow().text()).isEqualTo("newer");
      assertThat(there.earlier(Kind.KILN, "Anchor"))
          .extracting(EarlierText::text)
          .containsExactlyInAnyOrder("second", "first");
      assertThat(there.logs("Anchor"))
          .extracting(FiringLog::name)
          .containsExactlyInAnyOrder("May", "June");

      Archive.Brought back = bring(archive(there), here);
      assertThat(back.texts()).isEqualTo(1);
      assertThat(here.find(Kind.KILN, "Anchor").orElseThrow().text()).isEqualTo("newer");
      assertThat(here.logs("Anchor"))
          .extracting(FiringLog::name)
          .containsExactlyInAnyOrder("May", "June");
    }
  }

  /** Both went on telling of the same firing. */
  @Test
  void whatBothToldOfOneFiringStays() throws IOException {
    try (Store here = Store.temporary(CLOCK);
        Store there = Store.temporary(LATER)) {
      fill(here);
      bring(archive(here), there);
      String firing = here.firings().all().get(0).id();
      here.firings().tell(firing, told("note", "here"));
      there.firings().tell(firing, told("note", "there"));
      bring(archive(here), there);
      assertThat(there.firings().all().get(0).told())
          .extracting(FiringEntry.Told::text)
          .contains("here", "there");
    }
  }

  @Test
  void theFilesInItAreForPeople() throws IOException {
    try (Store here = Store.temporary(CLOCK)) {
      fill(here);
      here.keep(Kind.WORK, "../../etc/a:b", "odd");
      List<String> names = new ArrayList<>();
      ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(archive(here)));
      for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
        names.add(entry.getName());
        if (entry.getName().equals("kilns/Anchor.yaml")) {
          assertThat(new String(zip.readAllBytes(), StandardCharsets.UTF_8)).isEqualTo("second");
        }
      }
      assertThat(names)
          .contains(
              "READ ME.txt",
              "heatwright.db",
              "kilns/Anchor.yaml",
              "logs/Anchor/2026-05-01 May.csv",
              "cards/2026-12-02 A card.pdf")
          .noneMatch(name -> name.startsWith("/") || List.of(name.split("/")).contains(".."));
    }
  }

  @Test
  void anotherFileIsRefusedInASentence() throws IOException {
    try (Store here = Store.temporary(CLOCK)) {
      fill(here);
      List<Document> before = here.all(Kind.KILN);
      assertThatThrownBy(() -> bring("no zip".getBytes(StandardCharsets.UTF_8), here))
          .isInstanceOf(ArchiveException.class)
          .hasMessageContaining("no archive of a Heatwright store");
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      try (ZipOutputStream zip = new ZipOutputStream(out)) {
        zip.putNextEntry(new ZipEntry("heatwright.db"));
        zip.write("this is no database, but it is long enough to look at".getBytes());
        zip.closeEntry();
      }
      assertThatThrownBy(() -> bring(out.toByteArray(), here))
          .isInstanceOf(ArchiveException.class)
          .hasMessageContaining("damaged")
          .hasMessageNotContaining("heatwright-archive-");
      assertThat(here.all(Kind.KILN)).isEqualTo(before);
    }
  }

  private static void fill(Store store) {
    store.keep(Kind.KILN, "Anchor", "first");
    store.keep(Kind.KILN, "Anchor", "second");
    store.keep(Kind.KEYPAD, "Gull", "keypad");
    store.keepLog("Anchor", "May", LocalDate.parse("2026-05-01"), "csv", "schedule", "firing");
    store.keepCard("A card", "made from", new byte[] {4, 5});
    FiringEntry firing =
        store
            .firings()
            .put(
                new FiringEntry(
                    "",
                    "A job",
                    "enamel",
                    "Anchor",
                    "Gull",
                    1,
                    "plan",
                    "w",
                    "k",
                    "p",
                    "planned",
                    NOON,
                    NOON,
                    List.of(),
                    Optional.empty()));
    store.firings().tell(firing.id(), told("pressed", ""));
    store
        .firings()
        .tell(
            firing.id(),
            told("photo", "a picture"),
            new FiringEntry.Photo("image/png", new byte[] {1, 2, 3}));
  }

  private static FiringEntry.Told told(String kind, String text) {
    return new FiringEntry.Told("", kind, NOON, OptionalDouble.empty(), text);
  }

  private static byte[] archive(Store store) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    Archive.write(store, out);
    return out.toByteArray();
  }

  private static Archive.Brought bring(byte[] archive, Store store) throws IOException {
    return Archive.read(new ByteArrayInputStream(archive), store, CLOCK);
  }
}
