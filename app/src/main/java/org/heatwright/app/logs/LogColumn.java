package org.heatwright.app.logs;

import java.util.List;

/**
 * A column of the file.
 *
 * @param number counted from 1
 * @param name as the file names it; empty where it does not
 * @param use what it is read as: the word of a {@link Topic} that names a column; empty where it is
 *     not used
 * @param samples its first fields, as written
 */
public record LogColumn(int number, String name, String use, List<String> samples) {
  public LogColumn {
    samples = List.copyOf(samples);
  }
}
