package org.heatwright.app.files;

import java.util.LinkedHashMap;
import java.util.Map;
import org.heatwright.mould.Mould;

/** The size and number of moulds, as work and firing files write them. */
final class MouldField {

  private static final double MILLI = 1000;

  private MouldField() {}

  static Mould read(YamlMap map) {
    int count = map.optional("count").map(v -> v.whole(1, 200)).orElse(1);
    double diameter = map.required("diameter-mm").between(10, 500, "mm") / MILLI;
    double height = map.required("height-mm").between(10, 600, "mm") / MILLI;
    double wall = map.required("wall-mm").atLeast0("mm, 0 for no ring") / MILLI;
    return map.place().build(() -> new Mould(count, diameter, height, wall));
  }

  static Map<String, String> entries(Mould mould) {
    Map<String, String> entries = new LinkedHashMap<>();
    entries.put("count", String.valueOf(mould.count()));
    entries.put("diameter-mm", YamlText.number(mould.diameterMetres() * MILLI));
    entries.put("height-mm", YamlText.number(mould.heightMetres() * MILLI));
    entries.put("wall-mm", YamlText.number(mould.wallMetres() * MILLI));
    return entries;
  }
}
