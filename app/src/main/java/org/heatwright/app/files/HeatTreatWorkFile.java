package org.heatwright.app.files;

import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.heatwright.inspect.TemperatureRange;
import org.heatwright.units.Temperature;
import org.heatwright.work.DataSheet;
import org.heatwright.work.HeatTreatWork;
import org.heatwright.work.HeatTreatWork.Own;
import org.heatwright.work.HeatTreatWork.Phase;
import org.heatwright.work.HeatTreatWork.Piece;
import org.heatwright.work.HeatTreatWork.Setting;
import org.heatwright.work.heattreat.TreatedMetal;
import org.heatwright.work.heattreat.Treatment;

/** {@code work.yaml} of {@code kind: heat-treat}: heat treatment and low heat. */
final class HeatTreatWorkFile {

  private static final double MILLI = 1000;
  private static final double GRAMS = 1000;

  private HeatTreatWorkFile() {}

  static HeatTreatWork read(YamlMap file) {
    file.only(
        "kind",
        "treatment",
        "phase",
        "metal",
        "pieces",
        "thickness-mm",
        "thinnest-mm",
        "mass-g",
        "setting",
        "setting-mm",
        "target-celsius",
        "soak",
        "window",
        "solidus-celsius",
        "soldered",
        "solder-flow-celsius",
        "solution-celsius",
        "wanted-hv",
        "data-sheet",
        "ready-by");
    Treatment treatment = file.required("treatment").oneOf(Treatment.class);
    Optional<Phase> phase = file.optional("phase").map(v -> v.oneOf(Phase.class));
    TreatedMetal metal = file.required("metal").oneOf(TreatedMetal.class);
    int pieces = file.optional("pieces").map(v -> v.whole(1, 500)).orElse(1);
    double thickness = file.required("thickness-mm").between(0.1, 50, "mm") / MILLI;
    double thinnest =
        file.optional("thinnest-mm").map(v -> v.between(0.1, 50, "mm") / MILLI).orElse(thickness);
    double mass = file.required("mass-g").between(0.01, 5000, "g") / GRAMS;
    Setting setting =
        file.optional("setting").map(v -> v.oneOf(Setting.class)).orElse(Setting.SHELF);
    OptionalDouble settingMetres =
        file.optional("setting-mm")
            .map(v -> OptionalDouble.of(v.between(1, 150, "mm") / MILLI))
            .orElse(OptionalDouble.empty());
    Own own = own(file);
    DataSheet sheet = file.optional("data-sheet").map(WorkFile::dataSheet).orElse(DataSheet.none());
    return file.place()
        .build(
            () ->
                new HeatTreatWork(
                    treatment,
                    phase,
                    metal,
                    new Piece(thickness, thinnest, mass),
                    pieces,
                    setting,
                    settingMetres,
                    own,
                    sheet,
                    WorkFile.readyBy(file)));
  }

  /** Reads what a person knows better from a mapping that may hold more. */
  static Own own(YamlMap file) {
    Optional<Temperature> target =
        file.optional("target-celsius").map(v -> WorkFile.celsius(v, 30, 1500));
    Optional<Duration> soak = file.optional("soak").map(HeatTreatWorkFile::soak);
    Optional<TemperatureRange> window = file.optional("window").map(HeatTreatWorkFile::window);
    Optional<Temperature> solidus =
        file.optional("solidus-celsius").map(v -> WorkFile.celsius(v, 300, 1800));
    boolean soldered = file.optional("soldered").map(YamlValue::bool).orElse(false);
    Optional<Temperature> flow =
        file.optional("solder-flow-celsius").map(v -> WorkFile.celsius(v, 150, 1200));
    Optional<Temperature> solution =
        file.optional("solution-celsius").map(v -> WorkFile.celsius(v, 300, 1200));
    OptionalDouble wanted =
        file.optional("wanted-hv")
            .map(v -> OptionalDouble.of(v.between(20, 400, "HV")))
            .orElse(OptionalDouble.empty());
    return file.place()
        .build(() -> new Own(target, soak, window, solidus, soldered, flow, solution, wanted));
  }

  private static Duration soak(YamlValue value) {
    Duration soak = value.hourMinute();
    if (soak.isZero() || soak.compareTo(Duration.ofHours(48)) > 0) {
      throw value.wrong("hours and minutes such as \"0:30\", above 0:00, at most 48:00");
    }
    return soak;
  }

  private static TemperatureRange window(YamlValue value) {
    YamlMap map = value.map("from-celsius", "to-celsius");
    Temperature from = WorkFile.celsius(map.required("from-celsius"), 20, 1500);
    Temperature to = WorkFile.celsius(map.required("to-celsius"), 30, 1500);
    return value.build(() -> new TemperatureRange(from, to));
  }

  static String write(HeatTreatWork work) {
    StringBuilder out = new StringBuilder("kind: heat-treat\n");
    WorkFile.line(out, "treatment", YamlValue.word(work.treatment()));
    work.phase().ifPresent(phase -> WorkFile.line(out, "phase", YamlValue.word(phase)));
    WorkFile.line(out, "metal", YamlValue.word(work.metal()));
    WorkFile.line(out, "pieces", String.valueOf(work.pieces()));
    Piece piece = work.piece();
    WorkFile.line(out, "thickness-mm", YamlText.number(piece.thickestMetres() * MILLI));
    if (piece.thinnestMetres() < piece.thickestMetres()) {
      WorkFile.line(out, "thinnest-mm", YamlText.number(piece.thinnestMetres() * MILLI));
    }
    WorkFile.line(out, "mass-g", YamlText.number(piece.massKilograms() * GRAMS));
    WorkFile.line(out, "setting", YamlValue.word(work.setting()));
    work.settingMetres()
        .ifPresent(m -> WorkFile.line(out, "setting-mm", YamlText.number(m * MILLI)));
    write(out, work.own());
    Map<String, String> holder = new LinkedHashMap<>();
    WorkFile.putSheet(holder, work.dataSheet());
    holder.forEach((key, sheet) -> WorkFile.line(out, key, sheet));
    WorkFile.appendReadyBy(out, work);
    return out.toString();
  }

  private static void write(StringBuilder out, Own own) {
    own.target().ifPresent(t -> WorkFile.line(out, "target-celsius", WorkFile.celsius(t)));
    own.soak().ifPresent(s -> WorkFile.line(out, "soak", WorkFile.duration(s)));
    own.window()
        .ifPresent(
            w -> {
              Map<String, String> entries = new LinkedHashMap<>();
              entries.put("from-celsius", WorkFile.celsius(w.from()));
              entries.put("to-celsius", WorkFile.celsius(w.to()));
              WorkFile.line(out, "window", YamlText.flow(entries));
            });
    own.solidus().ifPresent(t -> WorkFile.line(out, "solidus-celsius", WorkFile.celsius(t)));
    if (own.soldered()) {
      WorkFile.line(out, "soldered", "true");
    }
    own.solderFlow().ifPresent(t -> WorkFile.line(out, "solder-flow-celsius", WorkFile.celsius(t)));
    own.solution().ifPresent(t -> WorkFile.line(out, "solution-celsius", WorkFile.celsius(t)));
    own.wantedHardness().ifPresent(hv -> WorkFile.line(out, "wanted-hv", YamlText.number(hv)));
  }
}
