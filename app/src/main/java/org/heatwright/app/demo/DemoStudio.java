package org.heatwright.app.demo;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.heatwright.app.store.Kind;
import org.heatwright.app.store.Store;

/**
 * Puts the Quayside Bench on the shelf: three kilns, six keypads, work of every kind, five logs.
 */
public final class DemoStudio {

  private static final List<String> WORKS =
      List.of(
          "harbour-burnout",
          "mixed-moulds",
          "platinum-pair",
          "evening-enamel",
          "silver-class",
          "glass-charms",
          "copper-leaves-1",
          "copper-leaves-2",
          "glass-disc",
          "glass-bowl",
          "glass-tack",
          "glass-slab",
          "silver-cloisonne",
          "steel-numbers",
          "gold-studs",
          "rivet-anneal",
          "spring-clasps-solution",
          "spring-clasps-age",
          "soldered-catches",
          "red-gold-bangle",
          "keum-boo-pendants",
          "granulation-preheat",
          "patina-bake");
  private static final List<String> KILNS = List.of("anchor", "buoy", "capstan");
  private static final List<String> KEYPADS =
      List.of("tern", "gull", "heron", "petrel", "skua", "dunlin");
  private static final List<String> VALUES = List.of("shop-clear", "shop-powder");

  /**
   * An invented log.
   *
   * @param file its name under {@code demo/logs}, without ending
   * @param schedule what ran, likewise
   */
  public record Logged(String file, String name, LocalDate date, String schedule) {}

  /** Anchor's logs, oldest first: its power falls a little from one to the next. */
  public static final List<Logged> LOGS =
      List.of(
          logged("2026-09-05", "Dry run after new elements", "dry-run"),
          logged("2026-09-26", "Working heat, empty", "working-heat"),
          logged("2026-10-17", "Slow rise", "slow-rise"),
          logged("2026-11-14", "Dry run", "dry-run"));

  /** An evening of brooches in kiln Buoy, its door opened for each. */
  private static final Logged EVENING =
      logged("2026-11-20", "Evening of brooches", "enamel-evening");

  private static Logged logged(String date, String name, String schedule) {
    return new Logged(date, name + " (invented)", LocalDate.parse(date), schedule);
  }

  /** What the bench shows first: three moulds for Thursday's pour, in the top loader. */
  public static final Map<String, String> OPENING =
      Map.of("work", "Harbour burnout", "kiln", "Capstan", "keypad", "Tern", "slot", "3");

  private DemoStudio() {}

  /** Fills the store; what is there already under the same names becomes an earlier text. */
  public static void fill(Store store) {
    WORKS.forEach(name -> keep(store, Kind.WORK, "works", name));
    KILNS.forEach(name -> keep(store, Kind.KILN, "kilns", name));
    KEYPADS.forEach(name -> keep(store, Kind.KEYPAD, "keypads", name));
    VALUES.forEach(name -> keep(store, Kind.VALUES, "values", name));
    LOGS.forEach(log -> keep(store, "Anchor", log));
    keep(store, "Buoy", EVENING);
  }

  private static void keep(Store store, String kiln, Logged log) {
    store.keepLog(
        kiln,
        log.name(),
        log.date(),
        text("/demo/logs/" + log.file() + ".csv"),
        text("/demo/logs/" + log.schedule() + ".yaml"),
        "");
  }

  /** A file to start one's own from. */
  public static String example(Kind kind) {
    return switch (kind) {
      case KILN -> text("/demo/kilns/capstan.yaml");
      case KEYPAD -> text("/demo/keypads/gull.yaml");
      case WORK -> text("/demo/works/harbour-burnout.yaml");
      case SCHEDULE -> text("/demo/schedules/harbour-burnout.yaml");
      case VALUES -> text("/demo/values/shop-clear.yaml");
    };
  }

  private static void keep(Store store, Kind kind, String folder, String name) {
    store.keep(kind, shelfName(name), text("/demo/" + folder + "/" + name + ".yaml"));
  }

  /** "harbour-burnout" stands on the shelf as "Harbour burnout". */
  private static String shelfName(String name) {
    return Character.toUpperCase(name.charAt(0)) + name.substring(1).replace('-', ' ');
  }

  private static String text(String resource) {
    try (InputStream in = DemoStudio.class.getResourceAsStream(resource)) {
      if (in == null) {
        throw new IllegalStateException("The demo studio lacks " + resource + ".");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
