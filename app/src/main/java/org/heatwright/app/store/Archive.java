package org.heatwright.app.store;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;

/**
 * Everything that a store holds, as one file: a ZIP archive with the store itself, which is what is
 * read back, and with its texts, logs and cards as plain files for people and other programs.
 * Nothing is lost by bringing an archive: what is in both stays once, and where a name holds
 * different texts the older one becomes an earlier text of the newer.
 */
public final class Archive {

  /** The store within the archive. */
  private static final String STORE = "heatwright.db";

  private static final long LARGEST_STORE = 2_000_000_000L;

  private Archive() {}

  /**
   * What an archive brought that was not there.
   *
   * @param texts kilns, keypads, works and schedules that are new or newer
   * @param logs of kilns' firings
   * @param firings in the book
   * @param cards that were made
   * @param pieces firings of named pieces
   */
  public record Brought(int texts, int logs, int firings, int cards, int pieces) {
    /** Whether everything in it was here already. */
    public boolean nothing() {
      return texts + logs + firings + cards + pieces == 0;
    }
  }

  /** Writes all of a store; the stream stays open. */
  public static void write(Store store, OutputStream out) throws IOException {
    Path folder = Files.createTempDirectory("heatwright-archive-");
    try {
      Path copy = folder.resolve(STORE);
      store.copyTo(copy);
      ZipOutputStream zip = new ZipOutputStream(out, StandardCharsets.UTF_8);
      Names names = new Names();
      text(zip, names.free("READ ME.txt"), READ_ME);
      zip.putNextEntry(new ZipEntry(STORE));
      Files.copy(copy, zip);
      zip.closeEntry();
      for (Kind kind : Kind.values()) {
        for (Document document : store.all(kind)) {
          String name = "%s/%s.yaml".formatted(kind.several(), plain(document.name()));
          text(zip, names.free(name), document.text());
        }
      }
      for (Document kiln : store.all(Kind.KILN)) {
        for (FiringLog log : store.logs(kiln.name())) {
          String name =
              "logs/%s/%s %s".formatted(plain(kiln.name()), log.date(), plain(log.name()));
          text(zip, names.free(name + ".csv"), log.csv());
          text(zip, names.free(name + ".schedule.yaml"), log.schedule());
          if (!log.firing().isBlank()) {
            text(zip, names.free(name + ".firing.yaml"), log.firing());
          }
        }
      }
      for (CardEntry card : store.newestCards(Integer.MAX_VALUE)) {
        zip.putNextEntry(
            new ZipEntry(names.free("cards/%s %s.pdf".formatted(day(card), plain(card.name())))));
        zip.write(store.cardPdf(card.id()).orElseThrow());
        zip.closeEntry();
      }
      zip.finish();
    } finally {
      remove(folder);
    }
  }

  private static final String READ_ME =
      """
      Everything of a Heatwright store, to keep or to move to another machine.

      heatwright.db   the store itself (SQLite 3): all of it, with photos and earlier texts. This is what is read back:
                      bring this archive under "Keep and move" on the shelf's page, or by: heatwright archive bring FILE
      the folders     the same texts, logs and cards as plain files, for people and other programs. They are not read back.
      """;

  private static String day(CardEntry card) {
    return card.made().toString().substring(0, 10);
  }

  /**
   * Brings all of an archive to a store.
   *
   * @param in a file that {@link #write} wrote, by this version or an earlier one; stays open
   * @throws ArchiveException if it is no such file, or a newer version wrote it; nothing is brought
   *     then
   */
  public static Brought read(InputStream in, Store store, Clock clock) throws IOException {
    return unpacked(in, clock, store::bring);
  }

  /**
   * Looks whether a file can be brought; nothing is.
   *
   * @param in stays open
   * @throws ArchiveException if it is no archive, or a newer version wrote it
   */
  public static void require(InputStream in, Clock clock) throws IOException {
    unpacked(in, clock, copy -> copy);
  }

  /** Does something with the store in an archive, in this version's layout. */
  private static <T> T unpacked(InputStream in, Clock clock, Function<Path, T> what)
      throws IOException {
    Path folder = Files.createTempDirectory("heatwright-archive-");
    try {
      Path copy = folder.resolve(STORE);
      if (!unpack(in, copy)) {
        throw none();
      }
      upToDate(copy, clock);
      return what.apply(copy);
    } finally {
      remove(folder);
    }
  }

  private static ArchiveException none() {
    return new ArchiveException(
        "The file is no archive of a Heatwright store: expected a ZIP file with %s in it."
            .formatted(STORE));
  }

  /** Brings it to this version's layout. */
  private static void upToDate(Path copy, Clock clock) {
    try {
      Store.open(copy, clock).close();
    } catch (StoreException e) {
      throw new ArchiveException(
          "The store in the archive cannot be read: it is damaged, or a newer Heatwright wrote it.");
    }
  }

  private static boolean unpack(InputStream in, Path to) throws IOException {
    try (OutputStream out = Files.newOutputStream(to)) {
      ZipInputStream zip = new ZipInputStream(in, StandardCharsets.UTF_8);
      for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
        if (entry.getName().equals(STORE)) {
          copy(zip, out);
          return true;
        }
      }
      return false;
    } catch (ZipException e) {
      return false;
    }
  }

  private static void copy(InputStream from, OutputStream to) throws IOException {
    byte[] some = new byte[65536];
    long all = 0;
    for (int read = from.read(some); read >= 0; read = from.read(some)) {
      all += read;
      if (all > LARGEST_STORE) {
        throw new ArchiveException(
            "The archive's store is larger than any that Heatwright writes.");
      }
      to.write(some, 0, read);
    }
  }

  private static void text(ZipOutputStream zip, String name, String text) throws IOException {
    zip.putNextEntry(new ZipEntry(name));
    zip.write(text.getBytes(StandardCharsets.UTF_8));
    zip.closeEntry();
  }

  /** A name that every file system takes. */
  private static String plain(String name) {
    String plain = name.replaceAll("[\\p{Cntrl}\\\\/:*?\"<>|]+", "-").strip();
    return plain.isEmpty() || plain.startsWith(".") ? "-" + plain : plain;
  }

  /** No two files of one name, whatever their case. */
  private static final class Names {
    private final Set<String> taken = new HashSet<>();

    String free(String wanted) {
      String name = wanted;
      int dot = wanted.lastIndexOf('.');
      for (int i = 2; !taken.add(name.toLowerCase(Locale.ROOT)); i++) {
        name = "%s %d%s".formatted(wanted.substring(0, dot), i, wanted.substring(dot));
      }
      return name;
    }
  }

  private static void remove(Path folder) throws IOException {
    List<Path> files;
    try (Stream<Path> all = Files.list(folder)) {
      files = all.toList();
    }
    for (Path file : files) {
      Files.deleteIfExists(file);
    }
    Files.deleteIfExists(folder);
  }
}
