package org.heatwright.app.json;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.heatwright.app.files.LogFile;
import org.heatwright.app.logs.LogReading;

/**
 * What {@code log import --json} prints.
 *
 * @param shape by what the next file of this logger is known
 * @param start the instant of second 0, or null
 * @param localStart the local time of second 0, or null
 * @param remembered whether corrections of an earlier file of this shape were used
 */
public record LogImportJson(
    String file,
    String shape,
    boolean remembered,
    List<DecisionJson> decisions,
    List<ColumnJson> columns,
    int rows,
    double lastSeconds,
    double lowestCelsius,
    double highestCelsius,
    Optional<String> start,
    Optional<String> localStart,
    List<RowJson> preview,
    List<String> remarks,
    List<String> written) {

  /** {@code sure}: told, sure, likely or guess; {@code alternatives} fit as well. */
  public record DecisionJson(
      String topic,
      String about,
      String word,
      String sure,
      String why,
      List<String> alternatives,
      List<String> choices) {}

  /** {@code use}: the topic that the column is read as; empty where it is not used. */
  public record ColumnJson(int number, String name, String use, List<String> samples) {}

  /** A row as written and as read. */
  public record RowJson(
      int line,
      List<String> fields,
      double seconds,
      double chamberCelsius,
      OptionalDouble setpointCelsius,
      OptionalDouble powerWatts,
      OptionalDouble workCelsius,
      Optional<String> event) {}

  public static LogImportJson of(LogReading reading, boolean remembered, List<String> written) {
    List<LogFile.Row> rows = reading.log().rows();
    return new LogImportJson(
        reading.fileName(),
        reading.shape(),
        remembered,
        reading.decisions().stream()
            .map(
                d ->
                    new DecisionJson(
                        d.topic().word(),
                        d.topic().words(),
                        d.word(),
                        d.sure().word(),
                        d.why(),
                        d.alternatives(),
                        d.topic().choices()))
            .toList(),
        reading.columns().stream()
            .map(c -> new ColumnJson(c.number(), c.name(), c.use(), c.samples()))
            .toList(),
        rows.size(),
        rows.get(rows.size() - 1).seconds(),
        rows.stream().mapToDouble(LogFile.Row::chamberCelsius).min().orElseThrow(),
        rows.stream().mapToDouble(LogFile.Row::chamberCelsius).max().orElseThrow(),
        reading.log().start().map(Object::toString),
        reading.log().localStart().map(Object::toString),
        reading.preview().stream()
            .map(
                p ->
                    new RowJson(
                        p.line(),
                        p.fields(),
                        p.row().seconds(),
                        p.row().chamberCelsius(),
                        p.row().setpointCelsius(),
                        p.row().powerWatts(),
                        p.row().workCelsius(),
                        p.row().event()))
            .toList(),
        reading.log().remarks(),
        written);
  }
}
