package org.heatwright.work.casting;

import static org.heatwright.work.casting.Metal.COPPER;
import static org.heatwright.work.casting.Metal.GOLD;
import static org.heatwright.work.casting.Metal.NICKEL;
import static org.heatwright.work.casting.Metal.PALLADIUM;
import static org.heatwright.work.casting.Metal.PLATINUM;
import static org.heatwright.work.casting.Metal.SILVER;
import static org.heatwright.work.casting.Metal.TIN;
import static org.heatwright.work.casting.Metal.ZINC;

import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.heatwright.material.KaratGolds;
import org.heatwright.material.Origin;

/**
 * The casting alloys known by name. Compositions are examples: alloys of one name differ, and the
 * maker's own numbers go first.
 */
public final class CastingAlloys {

  private static final Origin COLOUR_STANDARD = Origin.memory("ISO 8654, colours of gold alloys");
  private static final Origin EXAMPLE = Origin.estimate("an example of such an alloy");

  private static final List<CastingAlloy> ALL =
      Stream.concat(
              Stream.of(
                  new CastingAlloy(
                      "sterling-925",
                      AlloyFamily.SILVER,
                      bench(10.36),
                      List.of(mix(Origin.derived("by definition"), SILVER, 925, COPPER, 75)),
                      List.of(
                          Melting.between(
                              788,
                              891,
                              Origin.read("a metals data page, whose two labels are swapped")),
                          Melting.between(802, 893, Origin.memory("ASM Handbook vol. 2")))),
                  gold(
                      "yellow-gold-9k",
                      Optional.empty(),
                      List.of(mix(EXAMPLE, GOLD, 375, SILVER, 100, COPPER, 525)),
                      Optional.empty()),
                  gold(
                      "red-gold-9k",
                      Optional.empty(),
                      List.of(mix(EXAMPLE, GOLD, 375, SILVER, 50, COPPER, 575)),
                      Optional.empty()),
                  gold(
                      "white-gold-9k",
                      Optional.empty(),
                      List.of(
                          mix(EXAMPLE, GOLD, 375, COPPER, 355, NICKEL, 170, ZINC, 100),
                          mix(EXAMPLE, GOLD, 375, SILVER, 525, PALLADIUM, 100)),
                      Optional.empty()),
                  gold(
                      "yellow-gold-10k",
                      Optional.of(11.57),
                      List.of(mix(EXAMPLE, GOLD, 417, SILVER, 110, COPPER, 410, ZINC, 63)),
                      Optional.empty()),
                  gold(
                      "red-gold-10k",
                      Optional.empty(),
                      List.of(mix(EXAMPLE, GOLD, 417, SILVER, 30, COPPER, 553)),
                      Optional.empty()),
                  gold(
                      "white-gold-10k",
                      Optional.empty(),
                      List.of(
                          mix(EXAMPLE, GOLD, 417, COPPER, 343, NICKEL, 150, ZINC, 90),
                          mix(EXAMPLE, GOLD, 417, SILVER, 473, PALLADIUM, 110)),
                      Optional.empty()),
                  gold(
                      "yellow-gold-14k",
                      Optional.of(13.07),
                      List.of(mix(Sources.BENCH_TABLE, GOLD, 583, SILVER, 104, COPPER, 313)),
                      Optional.of(KaratGolds.YELLOW_14K_CELSIUS)),
                  gold(
                      "red-gold-14k",
                      Optional.of(13.26),
                      List.of(mix(EXAMPLE, GOLD, 585, SILVER, 60, COPPER, 355)),
                      Optional.of(KaratGolds.RED_14K_CELSIUS)),
                  gold(
                      "white-gold-14k",
                      Optional.of(12.61),
                      List.of(
                          mix(EXAMPLE, GOLD, 585, COPPER, 225, NICKEL, 120, ZINC, 70),
                          mix(EXAMPLE, GOLD, 585, SILVER, 275, PALLADIUM, 140)),
                      Optional.of(KaratGolds.WHITE_14K_CELSIUS)),
                  gold(
                      "yellow-gold-18k",
                      Optional.of(15.58),
                      List.of(mix(COLOUR_STANDARD, GOLD, 750, SILVER, 125, COPPER, 125)),
                      Optional.of(KaratGolds.YELLOW_18K_CELSIUS)),
                  gold(
                      "red-gold-18k",
                      Optional.of(15.18),
                      List.of(mix(COLOUR_STANDARD, GOLD, 750, SILVER, 45, COPPER, 205)),
                      Optional.of(KaratGolds.RED_18K_CELSIUS)),
                  gold(
                      "white-gold-18k",
                      Optional.of(14.64),
                      List.of(
                          mix(EXAMPLE, GOLD, 750, COPPER, 65, NICKEL, 135, ZINC, 50),
                          mix(EXAMPLE, GOLD, 750, SILVER, 120, PALLADIUM, 130)),
                      Optional.of(KaratGolds.WHITE_18K_CELSIUS)),
                  pure("fine-gold", AlloyFamily.GOLD, GOLD),
                  pure("fine-silver", AlloyFamily.SILVER, SILVER),
                  pure("platinum", AlloyFamily.PLATINUM, PLATINUM),
                  new CastingAlloy(
                      "platinum-950",
                      AlloyFamily.PLATINUM,
                      List.of(),
                      List.of(
                          mix(EXAMPLE, PLATINUM, 950, PALLADIUM, 50),
                          mix(EXAMPLE, PLATINUM, 950, COPPER, 50)),
                      List.of()),
                  new CastingAlloy(
                      "bronze",
                      AlloyFamily.BRONZE,
                      bench(8.8),
                      List.of(mix(EXAMPLE, COPPER, 900, TIN, 100)),
                      List.of(Melting.from(845, Origin.memory("ASM Handbook vol. 3")))),
                  new CastingAlloy(
                      "brass",
                      AlloyFamily.BRASS,
                      bench(8.4),
                      List.of(mix(EXAMPLE, COPPER, 700, ZINC, 300)),
                      List.of())),
              Stream.of(
                  pure("palladium", AlloyFamily.PLATINUM, PALLADIUM),
                  pure("copper", AlloyFamily.OTHER, COPPER),
                  pure("nickel", AlloyFamily.OTHER, NICKEL),
                  pure("tin", AlloyFamily.OTHER, TIN),
                  pure("zinc", AlloyFamily.OTHER, ZINC)))
          .toList();

  private CastingAlloys() {}

  /** All of them, in the order of a list for people. */
  public static List<CastingAlloy> all() {
    return ALL;
  }

  public static String names() {
    return ALL.stream().map(CastingAlloy::name).collect(Collectors.joining(", "));
  }

  /**
   * The alloy of a name; the order of its words does not matter, gold without a colour is yellow,
   * and "24k", "14kt", "bronze-90-10" or "rose" are understood.
   */
  public static Optional<CastingAlloy> find(String name) {
    Set<String> wanted = words(name);
    return ALL.stream().filter(alloy -> words(alloy.name()).equals(wanted)).findFirst();
  }

  /** The words of a name, brought to ours. */
  private static Set<String> words(String name) {
    String lower = name.toLowerCase(Locale.ROOT).strip();
    TreeSet<String> words = new TreeSet<>();
    for (String word : lower.split("[^a-z0-9]+", -1)) {
      String plain =
          switch (word) {
            case "rose", "pink" -> "red";
            case "pure" -> "fine";
            default -> word.replaceFirst("^(\\d+)(kt|ct|carat|karat)$", "$1k");
          };
      if (!plain.isEmpty()) {
        words.add(plain);
      }
    }
    if (words.remove("sterling") || words.remove("925")) {
      words.remove("silver");
      words.remove("925");
      words.add("sterling");
      return words;
    }
    boolean karat = words.stream().anyMatch(w -> w.matches("\\d+k"));
    if (words.contains("24k")) {
      words.remove("24k");
      words.add("fine");
      words.add("gold");
    } else if (words.contains("999")) {
      words.remove("999");
      words.add("fine");
    } else if (karat) {
      words.add("gold");
      if (!words.contains("white") && !words.contains("red")) {
        words.add("yellow");
      }
    }
    if (words.contains("bronze")) {
      words.removeAll(Set.of("90", "10"));
    }
    if (words.contains("brass")) {
      words.removeAll(Set.of("70", "30"));
    }
    if (words.contains("platinum")) {
      words.remove("fine");
    }
    return words;
  }

  private static CastingAlloy gold(
      String name,
      Optional<Double> benchGramsPerCubicCentimetre,
      List<Mix> mixes,
      Optional<Double> meltsAtCelsius) {
    return new CastingAlloy(
        name,
        name.contains("white") ? AlloyFamily.WHITE_GOLD : AlloyFamily.GOLD,
        benchGramsPerCubicCentimetre.map(CastingAlloys::bench).orElse(List.of()),
        mixes,
        meltsAtCelsius
            .map(celsius -> List.of(Melting.point(celsius, KaratGolds.ORIGIN)))
            .orElse(List.of()));
  }

  private static CastingAlloy pure(String name, AlloyFamily family, Metal metal) {
    return new CastingAlloy(
        name, family, List.of(), List.of(Mix.pure(metal)), List.of(metal.melting()));
  }

  private static List<QuotedDensity> bench(double gramsPerCubicCentimetre) {
    return List.of(Sources.bench(Math.rint(gramsPerCubicCentimetre * 1000)));
  }

  private static Mix mix(Origin origin, Object... metalsAndParts) {
    Map<Metal, Double> parts = new EnumMap<>(Metal.class);
    for (int i = 0; i < metalsAndParts.length; i += 2) {
      parts.put((Metal) metalsAndParts[i], ((Integer) metalsAndParts[i + 1]).doubleValue());
    }
    return Mix.ofParts(parts, origin);
  }
}
