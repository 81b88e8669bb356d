package org.heatwright.app.logs;

import java.util.List;
import java.util.Optional;
import org.heatwright.app.files.LogFile;

/**
 * How a file was read.
 *
 * @param decisions in the order of {@link Topic}; what does not arise is not there
 * @param columns all of them, used or not
 * @param preview the first rows
 * @param log what came of it, with what is odd in the rows; lines are those of the file
 * @param shape by what the next file of the same logger is known: separator and names of columns
 */
public record LogReading(
    String fileName,
    List<Decision> decisions,
    List<LogColumn> columns,
    List<PreviewRow> preview,
    LogFile.Log log,
    String shape) {

  public LogReading {
    decisions = List.copyOf(decisions);
    columns = List.copyOf(columns);
    preview = List.copyOf(preview);
  }

  /**
   * A row beside what was made of it.
   *
   * @param line of the file, counted from 1
   * @param fields as written
   * @param row as read; its times are not yet put in order
   */
  public record PreviewRow(int line, List<String> fields, LogFile.Row row) {
    public PreviewRow {
      fields = List.copyOf(fields);
    }
  }

  public Optional<Decision> decision(Topic topic) {
    return decisions.stream().filter(d -> d.topic() == topic).findFirst();
  }

  /** What a person should look at: guesses. */
  public List<Decision> guesses() {
    return decisions.stream().filter(d -> d.sure() == Sureness.GUESS).toList();
  }
}
