package org.heatwright.app.files;

import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.heatwright.units.Temperature;
import org.heatwright.work.DataSheet;
import org.heatwright.work.GlassWork;
import org.heatwright.work.GlassWork.Faces;
import org.heatwright.work.GlassWork.Form;
import org.heatwright.work.GlassWork.OwnTop;
import org.heatwright.work.glass.Glass;
import org.heatwright.work.glass.Glass.Expansion;
import org.heatwright.work.glass.Glass.Family;
import org.heatwright.work.glass.GlassProcess;

/** {@code work.yaml} of {@code kind: glass}: sheet glass that is bent, fused or annealed. */
final class GlassWorkFile {

  private static final double MILLI = 1000;
  private static final double MEGA = 1e6;

  /** The trade tells expansions in ten-millionths a kelvin: 90 is 9e-6. */
  private static final double TRADE = 1e7;

  private GlassWorkFile() {}

  static GlassWork read(YamlMap file) {
    file.only(
        "kind",
        "glass",
        "process",
        "sheet-mm",
        "layers",
        "thinnest-mm",
        "piece-mm",
        "pieces",
        "faces",
        "form",
        "expansion",
        "accent-expansion",
        "anneal-celsius",
        "strain-celsius",
        "softening-celsius",
        "anneal-soak",
        "top-celsius",
        "top-hold",
        "tension-mpa",
        "data-sheet",
        "ready-by");
    Glass glass = glass(file);
    GlassProcess process = file.required("process").oneOf(GlassProcess.class);
    double sheet = file.required("sheet-mm").between(1, 40, "mm") / MILLI;
    int layers = file.optional("layers").map(v -> v.whole(1, 20)).orElse(1);
    OptionalDouble thinnest = number(file, "thinnest-mm", 0.5, 60, "mm", MILLI);
    double piece = file.required("piece-mm").between(10, 1000, "mm") / MILLI;
    int pieces = file.optional("pieces").map(v -> v.whole(1, 100)).orElse(1);
    Faces faces = file.optional("faces").map(v -> v.oneOf(Faces.class)).orElse(Faces.ONE);
    Optional<Form> form = file.optional("form").map(GlassWorkFile::form);
    Optional<Expansion> accent = file.optional("accent-expansion").map(GlassWorkFile::expansion);
    OwnTop own =
        new OwnTop(
            file.optional("top-celsius").map(v -> WorkFile.celsius(v, 400, 1500)),
            file.optional("top-hold").map(GlassWorkFile::hold));
    OptionalDouble tension = number(file, "tension-mpa", 0.05, 3, "MPa", 1 / MEGA);
    Optional<Duration> soak = file.optional("anneal-soak").map(GlassWorkFile::hold);
    DataSheet dataSheet =
        file.optional("data-sheet").map(WorkFile::dataSheet).orElse(DataSheet.none());
    return file.place()
        .build(
            () ->
                new GlassWork(
                    glass,
                    process,
                    sheet,
                    layers,
                    thinnest,
                    piece,
                    pieces,
                    faces,
                    form,
                    accent,
                    own,
                    tension,
                    soak,
                    dataSheet,
                    WorkFile.readyBy(file)));
  }

  /** Reads what the glass is from a mapping that may hold more. */
  static Glass glass(YamlMap file) {
    Family family = file.required("glass").oneOf(Family.class);
    Optional<Temperature> anneal = point(file, "anneal-celsius", 380, 720);
    Optional<Temperature> strain = point(file, "strain-celsius", 330, 690);
    Optional<Temperature> softening = point(file, "softening-celsius", 500, 900);
    Optional<Expansion> expansion = file.optional("expansion").map(GlassWorkFile::expansion);
    return file.place().build(() -> new Glass(family, anneal, strain, softening, expansion));
  }

  private static Optional<Temperature> point(YamlMap file, String key, double low, double high) {
    return file.optional(key).map(v -> WorkFile.celsius(v, low, high));
  }

  private static Expansion expansion(YamlValue value) {
    double number =
        value.between(20, 160, "ten-millionths a kelvin, as the trade tells it: 90 is 9e-6");
    return new Expansion(number / TRADE);
  }

  private static Form form(YamlValue value) {
    YamlMap map = value.map("span-mm", "depth-mm");
    double span = map.required("span-mm").between(20, 1000, "mm") / MILLI;
    double depth = map.required("depth-mm").between(1, 500, "mm") / MILLI;
    return value.build(() -> new Form(span, depth));
  }

  static Duration hold(YamlValue value) {
    Duration hold = value.hourMinute();
    if (hold.compareTo(Duration.ofHours(48)) > 0) {
      throw value.wrong("hours and minutes such as \"0:15\", at most 48:00");
    }
    return hold;
  }

  private static OptionalDouble number(
      YamlMap file, String key, double low, double high, String unit, double scale) {
    return file.optional(key)
        .map(v -> OptionalDouble.of(v.between(low, high, unit) / scale))
        .orElse(OptionalDouble.empty());
  }

  static String write(GlassWork work) {
    StringBuilder out = new StringBuilder("kind: glass\n");
    Glass glass = work.glass();
    WorkFile.line(out, "glass", YamlValue.word(glass.family()));
    WorkFile.line(out, "process", YamlValue.word(work.process()));
    WorkFile.line(out, "sheet-mm", YamlText.number(work.sheetMetres() * MILLI));
    WorkFile.line(out, "layers", String.valueOf(work.layers()));
    work.thinnestMetres()
        .ifPresent(m -> WorkFile.line(out, "thinnest-mm", YamlText.number(m * MILLI)));
    WorkFile.line(out, "piece-mm", YamlText.number(work.pieceMetres() * MILLI));
    WorkFile.line(out, "pieces", String.valueOf(work.pieces()));
    WorkFile.line(out, "faces", YamlValue.word(work.faces()));
    work.form().ifPresent(form -> WorkFile.line(out, "form", write(form)));
    glass.expansion().ifPresent(e -> WorkFile.line(out, "expansion", write(e)));
    work.accent().ifPresent(e -> WorkFile.line(out, "accent-expansion", write(e)));
    glass.annealPoint().ifPresent(t -> WorkFile.line(out, "anneal-celsius", WorkFile.celsius(t)));
    glass.strainPoint().ifPresent(t -> WorkFile.line(out, "strain-celsius", WorkFile.celsius(t)));
    glass
        .softeningPoint()
        .ifPresent(t -> WorkFile.line(out, "softening-celsius", WorkFile.celsius(t)));
    work.annealSoak().ifPresent(h -> WorkFile.line(out, "anneal-soak", WorkFile.duration(h)));
    work.own().top().ifPresent(t -> WorkFile.line(out, "top-celsius", WorkFile.celsius(t)));
    work.own().hold().ifPresent(h -> WorkFile.line(out, "top-hold", WorkFile.duration(h)));
    work.tensionPascals()
        .ifPresent(pa -> WorkFile.line(out, "tension-mpa", YamlText.number(pa / MEGA)));
    Map<String, String> holder = new LinkedHashMap<>();
    WorkFile.putSheet(holder, work.dataSheet());
    holder.forEach((key, sheet) -> WorkFile.line(out, key, sheet));
    WorkFile.appendReadyBy(out, work);
    return out.toString();
  }

  private static String write(Form form) {
    Map<String, String> entries = new LinkedHashMap<>();
    entries.put("span-mm", YamlText.number(form.spanMetres() * MILLI));
    entries.put("depth-mm", YamlText.number(form.depthMetres() * MILLI));
    return YamlText.flow(entries);
  }

  private static String write(Expansion expansion) {
    return YamlText.number(expansion.perKelvin() * TRADE);
  }
}
