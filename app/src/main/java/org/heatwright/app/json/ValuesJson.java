package org.heatwright.app.json;

import java.util.List;
import org.heatwright.app.files.OwnValues;

/**
 * What {@code values --json} prints.
 *
 * @param name what the values are called
 * @param of what they are of, as files write it
 * @param source where the person has them from
 */
public record ValuesJson(String name, String of, String source, List<EntryJson> values) {

  /** A value as files write it: its key, and what stands behind it. */
  public record EntryJson(String key, String value) {}

  public static ValuesJson of(String name, OwnValues values) {
    return new ValuesJson(
        name,
        values.of().word(),
        values.source(),
        values.entries().entrySet().stream()
            .map(e -> new EntryJson(e.getKey(), e.getValue()))
            .toList());
  }
}
