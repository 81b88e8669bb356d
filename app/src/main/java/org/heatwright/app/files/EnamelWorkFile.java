package org.heatwright.app.files;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.heatwright.units.Temperature;
import org.heatwright.work.DataSheet;
import org.heatwright.work.EnamelBuild;
import org.heatwright.work.EnamelBuild.Counter;
import org.heatwright.work.EnamelBuild.Expansion;
import org.heatwright.work.EnamelCoat;
import org.heatwright.work.EnamelWork;
import org.heatwright.work.enamel.Look;
import org.heatwright.work.enamel.Oxide;
import org.heatwright.work.enamel.TestTile;

/** The kind {@code enamel} of {@code work.yaml}. */
final class EnamelWorkFile {

  private static final double MILLI = 1000;
  private static final double PARTS = 1e6;
  private static final List<String> OXIDES =
      java.util.Arrays.stream(Oxide.values()).map(Oxide::formula).toList();

  private EnamelWorkFile() {}

  static EnamelWork read(YamlMap file) {
    file.only(
        "kind",
        "metal",
        "sheet-mm",
        "pieces",
        "piece-mm",
        "enamel",
        "coat-mm",
        "counter-enamel",
        "expansion-ppm-k",
        "oxides-mol-percent",
        "oxides-mass-percent",
        "softening-celsius",
        "solidus-celsius",
        "trivet-g",
        "coats",
        "tiles",
        "working-celsius",
        "session",
        "data-sheet",
        "ready-by");
    EnamelWork.Metal metal = file.required("metal").oneOf(EnamelWork.Metal.class);
    double sheet = file.required("sheet-mm").between(0.1, 10, "mm") / MILLI;
    int pieces = file.optional("pieces").map(v -> v.whole(1, 500)).orElse(1);
    double piece = file.required("piece-mm").between(5, 500, "mm") / MILLI;
    EnamelWork.Hardness hardness = file.required("enamel").oneOf(EnamelWork.Hardness.class);
    Optional<Temperature> working = file.optional("working-celsius").map(EnamelWorkFile::working);
    YamlValue sessionValue = file.required("session");
    Duration session = sessionValue.hourMinute();
    if (session.isZero() || session.compareTo(Duration.ofHours(24)) > 0) {
      throw sessionValue.wrong("hours and minutes such as \"2:30\", above 0:00, at most 24:00");
    }
    DataSheet sheetOfMaker =
        file.optional("data-sheet").map(WorkFile::dataSheet).orElse(DataSheet.none());
    Optional<LocalDateTime> readyBy = WorkFile.readyBy(file);
    EnamelBuild build = build(file);
    return file.place()
        .build(
            () ->
                new EnamelWork(
                    metal,
                    sheet,
                    pieces,
                    piece,
                    hardness,
                    working,
                    session,
                    sheetOfMaker,
                    readyBy,
                    build));
  }

  static Temperature working(YamlValue value) {
    return WorkFile.celsius(value, 100, 2000);
  }

  /** Reads what lies on the metal from a mapping that may hold more. */
  static EnamelBuild build(YamlMap file) {
    OptionalDouble coat = coat(file);
    Optional<Counter> counter =
        file.optional("counter-enamel")
            .map(
                v -> {
                  YamlMap map =
                      v.map(
                          "coat-mm",
                          "expansion-ppm-k",
                          "oxides-mol-percent",
                          "oxides-mass-percent");
                  return new Counter(coat(map), expansion(map));
                });
    Optional<Expansion> expansion = expansion(file);
    Optional<Temperature> softening =
        file.optional("softening-celsius").map(v -> WorkFile.celsius(v, 450, 800));
    Optional<Temperature> solidus =
        file.optional("solidus-celsius").map(v -> WorkFile.celsius(v, 600, 1600));
    OptionalDouble trivet =
        file.optional("trivet-g")
            .map(v -> OptionalDouble.of(v.between(0, 5000, "g") / MILLI))
            .orElse(OptionalDouble.empty());
    List<EnamelCoat> coats =
        file.optional("coats").map(v -> v.listOf(EnamelWorkFile::firedCoat)).orElse(List.of());
    List<TestTile> tiles =
        file.optional("tiles").map(v -> v.listOf(EnamelWorkFile::tile)).orElse(List.of());
    return new EnamelBuild(coat, counter, expansion, softening, solidus, trivet, coats, tiles);
  }

  private static OptionalDouble coat(YamlMap map) {
    return map.optional("coat-mm")
        .map(v -> OptionalDouble.of(v.between(0.02, 5, "mm") / MILLI))
        .orElse(OptionalDouble.empty());
  }

  private static Optional<Expansion> expansion(YamlMap map) {
    List<Expansion> found = new ArrayList<>();
    map.optional("expansion-ppm-k")
        .ifPresent(v -> found.add(new Expansion.OfSheet(v.between(3, 25, "ppm/K") / PARTS)));
    map.optional("oxides-mol-percent").ifPresent(v -> found.add(oxides(v, false)));
    map.optional("oxides-mass-percent").ifPresent(v -> found.add(oxides(v, true)));
    if (found.size() > 1) {
      throw map.place()
          .error(
              "The expansion of an enamel is told once: by expansion-ppm-k, by oxides-mol-percent or by oxides-mass-percent.");
    }
    return found.stream().findFirst();
  }

  private static Expansion oxides(YamlValue value, boolean byMass) {
    Map<Oxide, Double> percent = new EnumMap<>(Oxide.class);
    value
        .map(OXIDES.toArray(String[]::new))
        .ordered()
        .forEach(
            (formula, share) ->
                Oxide.find(formula)
                    .ifPresent(oxide -> percent.put(oxide, share.between(0, 100, "%"))));
    return value.build(() -> new Expansion.OfOxides(percent, byMass));
  }

  private static EnamelCoat firedCoat(YamlValue value) {
    YamlMap map = value.map("coat", "enamel", "times");
    EnamelCoat.Kind kind = map.required("coat").oneOf(EnamelCoat.Kind.class);
    return new EnamelCoat(
        kind,
        map.optional("enamel").map(v -> v.oneOf(EnamelWork.Hardness.class)),
        map.optional("times").map(v -> v.whole(1, 20)).orElse(1));
  }

  private static TestTile tile(YamlValue value) {
    YamlMap map = value.map("at-celsius", "seconds", "look");
    return new TestTile(
        map.required("at-celsius").between(500, 1100, "°C"),
        map.required("seconds").between(5, 3600, "s"),
        map.required("look").oneOf(Look.class));
  }

  // ---- writing

  static String write(EnamelWork work) {
    StringBuilder out = new StringBuilder("kind: enamel\n");
    WorkFile.line(out, "metal", YamlValue.word(work.metal()));
    WorkFile.line(out, "sheet-mm", YamlText.number(work.sheetMetres() * MILLI));
    WorkFile.line(out, "pieces", String.valueOf(work.pieces()));
    WorkFile.line(out, "piece-mm", YamlText.number(work.pieceMetres() * MILLI));
    WorkFile.line(out, "enamel", YamlValue.word(work.hardness()));
    EnamelBuild build = work.build();
    Map<String, String> front = new LinkedHashMap<>();
    putCoat(front, build.coatMetres());
    putExpansion(front, build.expansion());
    front.forEach((key, value) -> WorkFile.line(out, key, value));
    build
        .counter()
        .ifPresent(
            counter -> {
              Map<String, String> entries = new LinkedHashMap<>();
              putCoat(entries, counter.coatMetres());
              putExpansion(entries, counter.expansion());
              WorkFile.line(out, "counter-enamel", YamlText.flow(entries));
            });
    build.softening().ifPresent(t -> WorkFile.line(out, "softening-celsius", WorkFile.celsius(t)));
    build.solidus().ifPresent(t -> WorkFile.line(out, "solidus-celsius", WorkFile.celsius(t)));
    build
        .trivetKilograms()
        .ifPresent(kg -> WorkFile.line(out, "trivet-g", YamlText.number(kg * MILLI)));
    if (!build.coats().isEmpty()) {
      out.append("coats:\n");
      for (EnamelCoat coat : build.coats()) {
        Map<String, String> entries = new LinkedHashMap<>();
        entries.put("coat", YamlValue.word(coat.kind()));
        coat.hardness().ifPresent(h -> entries.put("enamel", YamlValue.word(h)));
        entries.put("times", String.valueOf(coat.times()));
        out.append("  - ").append(YamlText.flow(entries)).append('\n');
      }
    }
    if (!build.tiles().isEmpty()) {
      out.append("tiles:\n");
      for (TestTile tile : build.tiles()) {
        Map<String, String> entries = new LinkedHashMap<>();
        entries.put("at-celsius", YamlText.number(tile.chamberCelsius()));
        entries.put("seconds", YamlText.number(tile.seconds()));
        entries.put("look", YamlValue.word(tile.look()));
        out.append("  - ").append(YamlText.flow(entries)).append('\n');
      }
    }
    work.working().ifPresent(t -> WorkFile.line(out, "working-celsius", WorkFile.celsius(t)));
    WorkFile.line(out, "session", WorkFile.duration(work.session()));
    Map<String, String> holder = new LinkedHashMap<>();
    WorkFile.putSheet(holder, work.dataSheet());
    holder.forEach((key, sheet) -> WorkFile.line(out, key, sheet));
    WorkFile.appendReadyBy(out, work);
    return out.toString();
  }

  private static void putCoat(Map<String, String> entries, OptionalDouble metres) {
    metres.ifPresent(m -> entries.put("coat-mm", YamlText.number(m * MILLI)));
  }

  private static void putExpansion(Map<String, String> entries, Optional<Expansion> expansion) {
    expansion.ifPresent(
        e -> {
          if (e instanceof Expansion.OfSheet sheet) {
            entries.put(
                "expansion-ppm-k",
                YamlText.number(Math.rint(sheet.perKelvin() * PARTS * PARTS) / PARTS));
          } else if (e instanceof Expansion.OfOxides oxides) {
            Map<String, String> parts = new LinkedHashMap<>();
            for (Oxide oxide : Oxide.values()) {
              Double share = oxides.percent().get(oxide);
              if (share != null) {
                parts.put(oxide.formula(), YamlText.number(share));
              }
            }
            entries.put(
                oxides.byMass() ? "oxides-mass-percent" : "oxides-mol-percent",
                YamlText.flow(parts));
          }
        });
  }
}
