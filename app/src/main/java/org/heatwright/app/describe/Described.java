package org.heatwright.app.describe;

import java.util.List;
import org.heatwright.app.files.KeypadFile;
import org.heatwright.keypad.Keypad;

/**
 * A keypad as its owner described it.
 *
 * @param keypad the description
 * @param unsure what nobody knew, in the order in which it was asked
 */
public record Described(Keypad keypad, List<Unsure> unsure) {

  public Described {
    unsure = List.copyOf(unsure);
  }

  /**
   * Something nobody knew.
   *
   * @param key of the file that it is about, e.g. "rate"
   * @param sentence what was taken instead, and what follows
   */
  public record Unsure(String key, String sentence) {}

  /** The keypad file, with a comment above every line of which something is unsure. */
  public String yaml() {
    StringBuilder out = new StringBuilder();
    if (!unsure.isEmpty()) {
      out.append(
          "# Some of this nobody knew yet; where a line says so, find out and correct it.\n");
    }
    KeypadFile.write(keypad)
        .lines()
        .forEach(
            line -> {
              unsure.stream()
                  .filter(u -> line.startsWith(u.key() + ":"))
                  .forEach(u -> out.append("# unsure: ").append(u.sentence()).append('\n'));
              out.append(line).append('\n');
            });
    return out.toString();
  }
}
