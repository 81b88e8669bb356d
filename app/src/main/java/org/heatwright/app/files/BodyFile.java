package org.heatwright.app.files;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import org.heatwright.material.Material;
import org.heatwright.mould.Body;
import org.heatwright.mould.BodyProbe;
import org.heatwright.mould.BodyShape;
import org.heatwright.numerics.LinearTable;
import org.heatwright.units.Temperature;

/** {@code body.yaml}: any solid of revolution in a changing surrounding. */
public final class BodyFile {

  private static final double MILLI = 1000;
  private static final double MOST_SECONDS = 1e7;
  private static final double MOST_READINGS = 200_000;
  private static final double USUAL_REPORT_SECONDS = 60;

  private BodyFile() {}

  /**
   * A body and what happens around it.
   *
   * @param body the body
   * @param surroundings °C over seconds
   * @param lastPointSeconds where the surroundings are last told, s
   * @param endSeconds the end, if the file tells it, s
   * @param everySeconds between two readings, s
   * @param probes where to read, in the order of the file
   */
  public record Content(
      Body body,
      LinearTable surroundings,
      double lastPointSeconds,
      OptionalDouble endSeconds,
      double everySeconds,
      List<BodyProbe> probes) {

    public Content {
      probes = List.copyOf(probes);
    }
  }

  public static Content read(String text, String fileName) {
    return read(text, fileName, Optional.empty());
  }

  /**
   * @param material stands in for the file's own, which may then be left out
   */
  public static Content read(String text, String fileName, Optional<Material> material) {
    YamlMap file =
        YamlFile.read(text, fileName, FileKind.BODY)
            .only(
                "name",
                "shape",
                "material",
                "surface",
                "start-celsius",
                "surroundings",
                "end-s",
                "probes",
                "report-every-s");
    file.optional("name").ifPresent(YamlValue::text);
    BodyShape shape = shape(file.required("shape"));
    Optional<Material> own = file.optional("material").map(MaterialField::readBody);
    Material used =
        material.or(() -> own).orElseGet(() -> MaterialField.readBody(file.required("material")));
    YamlMap surface = file.required("surface").map("emissivity", "convection-w-m2k");
    double emissivity = surface.required("emissivity").between(0, 1, "");
    double convection = surface.required("convection-w-m2k").between(0, 1e6, "W/(m² K)");
    double start = file.required("start-celsius").between(-200, 1800, "°C");
    List<YamlValue> points = file.required("surroundings").filledList();
    LinearTable surroundings = surroundings(points);
    double last = surroundings.asPoints().get(points.size() - 1)[0];
    OptionalDouble end =
        file.optional("end-s")
            .map(v -> OptionalDouble.of(v.between(1, MOST_SECONDS, "s")))
            .orElse(OptionalDouble.empty());
    double every =
        file.optional("report-every-s")
            .map(v -> v.between(0.1, 86_400, "s"))
            .orElse(USUAL_REPORT_SECONDS);
    if (Math.max(last, end.orElse(0)) / every > MOST_READINGS) {
      throw file.required("report-every-s")
          .error(
              "this makes more than %s readings; expected at least %s s."
                  .formatted(
                      YamlText.number(MOST_READINGS),
                      YamlText.number(Math.ceil(Math.max(last, end.orElse(0)) / MOST_READINGS))));
    }
    List<BodyProbe> probes =
        file.optional("probes").map(v -> probes(v, shape)).orElse(BodyProbe.USUAL);
    Body body =
        file.place()
            .build(
                () -> new Body(shape, used, emissivity, convection, Temperature.ofCelsius(start)));
    return new Content(body, surroundings, last, end, every, probes);
  }

  private static BodyShape shape(YamlValue value) {
    YamlMap map = value.map("diameter-mm", "height-mm", "bottom", "cavity", "ring");
    double diameter = map.required("diameter-mm").between(5, 1000, "mm") / MILLI;
    double height = map.required("height-mm").between(5, 1000, "mm") / MILLI;
    BodyShape.Bottom bottom =
        map.optional("bottom")
            .map(v -> v.oneOf(BodyShape.Bottom.class))
            .orElse(BodyShape.Bottom.EXPOSED);
    Optional<BodyShape.Cavity> cavity = map.optional("cavity").map(BodyFile::cavity);
    Optional<BodyShape.Ring> ring = map.optional("ring").map(BodyFile::ring);
    return value.build(() -> new BodyShape(diameter, height, bottom, cavity, ring));
  }

  private static BodyShape.Cavity cavity(YamlValue value) {
    YamlMap map = value.map("diameter-mm", "depth-mm");
    return new BodyShape.Cavity(
        map.required("diameter-mm").between(0.5, 900, "mm") / MILLI,
        map.required("depth-mm").between(0.5, 1000, "mm") / MILLI);
  }

  private static BodyShape.Ring ring(YamlValue value) {
    YamlMap map = value.map("material", "thickness-mm");
    Material material = MaterialField.readBody(map.required("material"));
    return new BodyShape.Ring(
        map.required("thickness-mm").between(0.1, 100, "mm") / MILLI, material);
  }

  private static LinearTable surroundings(List<YamlValue> points) {
    double[] seconds = new double[points.size()];
    double[] celsius = new double[points.size()];
    for (int i = 0; i < seconds.length; i++) {
      List<YamlValue> pair = points.get(i).list();
      if (pair.size() != 2) {
        throw points.get(i).error("expected two numbers: [seconds, °C].");
      }
      seconds[i] = pair.get(0).between(0, MOST_SECONDS, "s");
      celsius[i] = pair.get(1).between(-200, 1800, "°C");
      if (i > 0 && !(seconds[i] > seconds[i - 1])) {
        throw pair.get(0).wrong("a time after the one before it");
      }
    }
    return LinearTable.of(seconds, celsius);
  }

  private static List<BodyProbe> probes(YamlValue value, BodyShape shape) {
    List<BodyProbe> probes = new ArrayList<>();
    Set<String> names = new LinkedHashSet<>();
    for (YamlValue item : value.filledList()) {
      BodyProbe probe = item.isMap() ? point(item, shape) : named(item);
      if (!names.add(probe.name())) {
        throw item.error("this probe is listed twice; keep one.");
      }
      probes.add(probe);
    }
    return probes;
  }

  private static BodyProbe named(YamlValue item) {
    String name =
        item.oneOf(BodyProbe.USUAL.stream().map(BodyProbe::name).collect(Collectors.toList()));
    return BodyProbe.USUAL.stream().filter(p -> p.name().equals(name)).findFirst().orElseThrow();
  }

  private static BodyProbe point(YamlValue item, BodyShape shape) {
    YamlMap map = item.map("r-mm", "z-mm");
    double r = map.required("r-mm").between(0, 500, "mm");
    double z = map.required("z-mm").between(0, 1000, "mm");
    String name = "r%s-z%s".formatted(YamlText.number(r), YamlText.number(z));
    BodyProbe probe = BodyProbe.point(name, r / MILLI, z / MILLI);
    if (!probe.isIn(shape)) {
      throw item.error(
          "there is no solid at r-mm %s, z-mm %s; expected r-mm from 0 to %s, z-mm from 0 to %s, outside the cavity."
              .formatted(
                  YamlText.number(r),
                  YamlText.number(z),
                  YamlText.number(shape.diameterMetres() * MILLI / 2),
                  YamlText.number(shape.heightMetres() * MILLI)));
    }
    return probe;
  }
}
