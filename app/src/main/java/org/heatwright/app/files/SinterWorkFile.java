package org.heatwright.app.files;

import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.heatwright.schedule.HourMinute;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.work.DataSheet;
import org.heatwright.work.SinterWork;
import org.heatwright.work.SinterWork.Aim;
import org.heatwright.work.SinterWork.Embedded;
import org.heatwright.work.SinterWork.Phase;
import org.heatwright.work.sinter.CarbonBox;
import org.heatwright.work.sinter.Clay;
import org.heatwright.work.sinter.TestFiring;

/** A work file of metal clay, {@code kind: sinter}. */
final class SinterWorkFile {

  private static final double MILLI = 1000;

  private SinterWorkFile() {}

  static SinterWork read(YamlMap file) {
    file.only(
        "kind",
        "clay",
        "phase",
        "pieces",
        "box",
        "aim",
        "dry-at",
        "tests",
        "data-sheet",
        "ready-by");
    Clay clay = file.required("clay").oneOf(Clay.class);
    Phase phase =
        file.optional("phase").map(v -> v.oneOf(Phase.class)).orElse(SinterWork.usualPhase(clay));
    List<SinterWork.Piece> pieces =
        file.required("pieces").filledList().stream().map(SinterWorkFile::piece).toList();
    Optional<CarbonBox> box = file.optional("box").map(SinterWorkFile::box);
    Aim aim = file.optional("aim").map(v -> v.oneOf(Aim.class)).orElse(Aim.STRONGEST);
    List<TestFiring> tests =
        file.optional("tests").map(v -> v.listOf(SinterWorkFile::test)).orElse(List.of());
    DataSheet sheet = file.optional("data-sheet").map(WorkFile::dataSheet).orElse(DataSheet.none());
    return file.place()
        .build(
            () ->
                new SinterWork(
                    clay,
                    phase,
                    pieces,
                    box,
                    aim,
                    file.optional("dry-at").map(YamlValue::dateTime),
                    tests,
                    sheet,
                    file.optional("ready-by").map(YamlValue::dateTime)));
  }

  private static SinterWork.Piece piece(YamlValue value) {
    YamlMap map = value.map("count", "thickness-mm", "length-mm", "holds");
    int count = map.optional("count").map(v -> v.whole(1, 200)).orElse(1);
    double thickness = map.required("thickness-mm").between(0.3, 30, "mm") / MILLI;
    double length = map.required("length-mm").between(3, 300, "mm") / MILLI;
    Embedded holds = map.optional("holds").map(v -> v.oneOf(Embedded.class)).orElse(Embedded.NONE);
    return map.place().build(() -> new SinterWork.Piece(count, thickness, length, holds));
  }

  private static CarbonBox box(YamlValue value) {
    YamlMap map = value.map("wall", "wall-mm", "width-mm", "depth-mm", "height-mm");
    CarbonBox.Wall wall = map.required("wall").oneOf(CarbonBox.Wall.class);
    double thick = map.required("wall-mm").between(0.3, 25, "mm") / MILLI;
    double width = map.required("width-mm").between(30, 500, "mm") / MILLI;
    double depth = map.required("depth-mm").between(30, 500, "mm") / MILLI;
    double height = map.required("height-mm").between(20, 300, "mm") / MILLI;
    return map.place().build(() -> new CarbonBox(wall, thick, width, depth, height));
  }

  private static TestFiring test(YamlValue value) {
    YamlMap map = value.map("before-mm", "after-mm", "celsius", "hold", "rate-k-per-h");
    double before = map.required("before-mm").between(2, 500, "mm") / MILLI;
    double after = map.required("after-mm").between(1, 500, "mm") / MILLI;
    Temperature at = Temperature.ofCelsius(map.required("celsius").between(400, 1100, "°C"));
    Duration hold = map.required("hold").hourMinute();
    HeatingRate rate =
        map.optional("rate-k-per-h")
            .map(v -> HeatingRate.ofKelvinsPerHour(v.between(1, 100_000, "K/h")))
            .orElse(TestFiring.USUAL_RATE);
    return map.place().build(() -> new TestFiring(before, after, at, hold, rate));
  }

  static String write(SinterWork work) {
    StringBuilder out = new StringBuilder("kind: sinter\n");
    line(out, "clay", YamlValue.word(work.clay()));
    line(out, "phase", YamlValue.word(work.phase()));
    out.append("pieces:\n");
    for (SinterWork.Piece piece : work.pieces()) {
      Map<String, String> entries = new LinkedHashMap<>();
      entries.put("count", String.valueOf(piece.count()));
      entries.put("thickness-mm", YamlText.number(piece.thicknessMetres() * MILLI));
      entries.put("length-mm", YamlText.number(piece.lengthMetres() * MILLI));
      if (piece.embedded() != Embedded.NONE) {
        entries.put("holds", YamlValue.word(piece.embedded()));
      }
      out.append("  - ").append(YamlText.flow(entries)).append('\n');
    }
    work.box()
        .ifPresent(
            box -> {
              Map<String, String> entries = new LinkedHashMap<>();
              entries.put("wall", YamlValue.word(box.wall()));
              entries.put("wall-mm", YamlText.number(box.wallMetres() * MILLI));
              entries.put("width-mm", YamlText.number(box.widthMetres() * MILLI));
              entries.put("depth-mm", YamlText.number(box.depthMetres() * MILLI));
              entries.put("height-mm", YamlText.number(box.heightMetres() * MILLI));
              line(out, "box", YamlText.flow(entries));
            });
    line(out, "aim", YamlValue.word(work.aim()));
    work.dryAt().ifPresent(time -> line(out, "dry-at", time.toString()));
    if (!work.tests().isEmpty()) {
      out.append("tests:\n");
      for (TestFiring test : work.tests()) {
        Map<String, String> entries = new LinkedHashMap<>();
        entries.put("before-mm", YamlText.number(test.beforeMetres() * MILLI));
        entries.put("after-mm", YamlText.number(test.afterMetres() * MILLI));
        entries.put("celsius", YamlText.number(test.at().celsius()));
        entries.put("hold", YamlText.quoted(HourMinute.format(test.hold())));
        entries.put("rate-k-per-h", YamlText.number(test.rate().kelvinsPerHour()));
        out.append("  - ").append(YamlText.flow(entries)).append('\n');
      }
    }
    Map<String, String> holder = new LinkedHashMap<>();
    WorkFile.putSheet(holder, work.dataSheet());
    holder.forEach((key, sheet) -> line(out, key, sheet));
    work.readyBy().ifPresent(time -> line(out, "ready-by", time.toString()));
    return out.toString();
  }

  private static void line(StringBuilder out, String key, String value) {
    out.append(key).append(": ").append(value).append('\n');
  }
}
