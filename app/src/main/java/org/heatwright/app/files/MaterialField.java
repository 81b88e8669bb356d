package org.heatwright.app.files;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.heatwright.material.Material;
import org.heatwright.material.Material.LatentHeat;
import org.heatwright.material.Origin;
import org.heatwright.material.WallMaterials;
import org.heatwright.mould.BodyMaterials;
import org.heatwright.numerics.LinearTable;

/** A material inside a file: a known name, or a table of its own. */
final class MaterialField {

  private static final String UNNAMED = "own material";

  private MaterialField() {}

  static Material read(YamlValue value) {
    if (!value.isMap()) {
      return WallMaterials.named(value.oneOf(WallMaterials.names())).orElseThrow();
    }
    return table(value, value.map());
  }

  /** What a body is made of: more names are known than for walls. */
  static Material readBody(YamlValue value) {
    if (!value.isMap()) {
      String name = value.text();
      return BodyMaterials.named(name)
          .orElseThrow(
              () ->
                  value.wrong(
                      "a table of your own or one of the %d names in docs/models/mould.md, such as %s%s"
                          .formatted(
                              BodyMaterials.names().size(),
                              "gypsum-investment-40, stainless-steel or dense-firebrick",
                              Nearest.hint(name, BodyMaterials.names()))))
          .material();
    }
    return table(value, value.map());
  }

  /** A table of one's own. */
  static Material table(YamlValue value, YamlMap all) {
    YamlMap map =
        all.only(
            "name",
            "density-kg-m3",
            "conductivity-w-mk",
            "heat-capacity-j-kgk",
            "latent",
            "source");
    double density = map.required("density-kg-m3").between(1, 25_000, "kg/m³");
    LinearTable conductivity = table(map.required("conductivity-w-mk"), 0.001, 500, "W/(m K)");
    LinearTable heatCapacity = table(map.required("heat-capacity-j-kgk"), 10, 20_000, "J/(kg K)");
    return value.build(
        () ->
            new Material(
                map.optional("name").map(YamlValue::text).orElse(UNNAMED),
                density,
                conductivity,
                heatCapacity,
                map.optional("latent").map(v -> v.listOf(MaterialField::latent)).orElse(List.of()),
                Origin.own(map.optional("source").map(YamlValue::text).orElse(""))));
  }

  /** The material as YAML on one line. */
  static String write(Material material) {
    if (WallMaterials.named(material.name()).equals(java.util.Optional.of(material))) {
      return material.name();
    }
    Map<String, String> entries = new LinkedHashMap<>();
    if (!material.name().equals(UNNAMED)) {
      entries.put("name", YamlText.text(material.name()));
    }
    entries.put("density-kg-m3", YamlText.number(material.densityKilogramsPerCubicMetre()));
    entries.put("conductivity-w-mk", table(material.conductivityWattsPerMetreKelvin()));
    entries.put("heat-capacity-j-kgk", table(material.heatCapacityJoulesPerKilogramKelvin()));
    if (!material.latentHeats().isEmpty()) {
      entries.put(
          "latent",
          material.latentHeats().stream()
              .map(MaterialField::latent)
              .collect(Collectors.joining(", ", "[", "]")));
    }
    if (!material.origin().text().isEmpty()) {
      entries.put("source", YamlText.text(material.origin().text()));
    }
    return YamlText.flow(entries);
  }

  /**
   * One number, or {@code [[celsius, value], …]} with rising temperatures and values above zero.
   */
  private static LinearTable table(YamlValue value, double low, double high, String unit) {
    if (value.isNumber()) {
      return LinearTable.constant(value.between(low, high, unit));
    }
    List<YamlValue> points = value.filledList();
    double[] celsius = new double[points.size()];
    double[] numbers = new double[points.size()];
    for (int i = 0; i < points.size(); i++) {
      List<YamlValue> pair = points.get(i).list();
      if (pair.size() != 2) {
        throw points.get(i).error("expected two numbers: [°C, %s].".formatted(unit));
      }
      celsius[i] = pair.get(0).between(-273, 3000, "°C");
      numbers[i] = pair.get(1).between(low, high, unit);
      if (i > 0 && !(celsius[i] > celsius[i - 1])) {
        throw pair.get(0).wrong("a temperature above the one before it");
      }
    }
    return LinearTable.of(celsius, numbers);
  }

  private static String table(LinearTable table) {
    List<double[]> points = table.asPoints();
    if (points.size() == 1) {
      return YamlText.number(points.get(0)[1]);
    }
    return points.stream()
        .map(p -> "[%s, %s]".formatted(YamlText.number(p[0]), YamlText.number(p[1])))
        .collect(Collectors.joining(", ", "[", "]"));
  }

  private static LatentHeat latent(YamlValue value) {
    YamlMap map = value.map("from-celsius", "to-celsius", "j-kg", "once");
    double from = map.required("from-celsius").between(-273, 3000, "°C");
    double to = map.required("to-celsius").between(-273, 3000, "°C");
    double joules = map.required("j-kg").between(1, 1e7, "J/kg");
    boolean once = map.optional("once").map(YamlValue::bool).orElse(false);
    return value.build(() -> new LatentHeat(from, to, joules, once));
  }

  private static String latent(LatentHeat latent) {
    Map<String, String> entries = new LinkedHashMap<>();
    entries.put("from-celsius", YamlText.number(latent.fromCelsius()));
    entries.put("to-celsius", YamlText.number(latent.toCelsius()));
    entries.put("j-kg", YamlText.number(latent.joulesPerKilogram()));
    if (latent.once()) {
      entries.put("once", "true");
    }
    return YamlText.flow(entries);
  }
}
