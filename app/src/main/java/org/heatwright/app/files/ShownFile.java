package org.heatwright.app.files;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.heatwright.keypad.Shown;
import org.heatwright.units.TemperatureUnit;

/** What a keypad's review showed: slot, unit if it shows one, label or position and text. */
public final class ShownFile {

  private ShownFile() {}

  public static Shown read(String text, String fileName) {
    YamlMap file = YamlFile.read(text, fileName, FileKind.SHOWN).only("slot", "unit", "shown");
    OptionalInt slot =
        file.optional("slot").map(v -> OptionalInt.of(v.whole(0, 999))).orElse(OptionalInt.empty());
    Optional<TemperatureUnit> unit =
        file.optional("unit").flatMap(v -> TemperatureUnit.ofLetter(v.oneOf(List.of("C", "F"))));
    return new Shown(slot, unit, file.required("shown").listOf(ShownFile::value));
  }

  public static String write(Shown shown) {
    StringBuilder out = new StringBuilder();
    shown.slot().ifPresent(slot -> out.append("slot: ").append(slot).append('\n'));
    shown.unit().ifPresent(unit -> out.append("unit: ").append(unit.letter()).append('\n'));
    out.append(shown.values().isEmpty() ? "shown: []\n" : "shown:\n");
    for (Shown.Value value : shown.values()) {
      out.append("  - [%s, %s]\n".formatted(text(value.at()), text(value.text())));
    }
    return out.toString();
  }

  private static Shown.Value value(YamlValue value) {
    List<YamlValue> pair = value.list();
    if (pair.size() != 2) {
      throw value.error("expected two things: [label or position, text as displayed].");
    }
    return new Shown.Value(pair.get(0).asWritten(), pair.get(1).asWritten());
  }

  private static String text(String text) {
    return YamlText.quoted(text);
  }
}
