package org.heatwright.app.files;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What a person knows of a material of their own, to be put into works.
 *
 * @param of what it is
 * @param source where the person has it from
 * @param entries values as YAML on one line, by their key; those of a data sheet as {@code
 *     data-sheet.top-celsius}; at least one, in the file's order
 */
public record OwnValues(ValuesOf of, String source, Map<String, String> entries) {

  public OwnValues {
    entries = Collections.unmodifiableMap(new LinkedHashMap<>(entries));
  }
}
