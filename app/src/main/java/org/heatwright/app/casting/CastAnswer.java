package org.heatwright.app.casting;

import java.util.List;
import org.heatwright.inspect.Wording;
import org.heatwright.material.Origin;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.casting.Remark;

/**
 * An answer of the casting bench in words, the same at every door.
 *
 * @param headline what was asked for, one sentence
 * @param details more numbers, a phrase each
 * @param tables what stands side by side: sources, steps, clocks
 * @param notes what to know about the numbers
 * @param cautions what can hurt
 */
public record CastAnswer(
    String headline,
    List<String> details,
    List<Table> tables,
    List<String> notes,
    List<Remark> cautions) {

  public CastAnswer {
    details = List.copyOf(details);
    tables = List.copyOf(tables);
    notes = List.copyOf(notes);
    cautions = List.copyOf(cautions);
  }

  /** The same with every temperature in words in that unit; it was written in °C or in both. */
  CastAnswer in(TemperatureUnit unit) {
    return new CastAnswer(
        Wording.in(headline, unit),
        all(details, unit),
        tables.stream().map(table -> table.in(unit)).toList(),
        all(notes, unit),
        cautions.stream().map(caution -> in(caution, unit)).toList());
  }

  private static List<String> all(List<String> texts, TemperatureUnit unit) {
    return texts.stream().map(text -> Wording.in(text, unit)).toList();
  }

  private static Remark in(Remark remark, TemperatureUnit unit) {
    Origin origin = remark.origin();
    return new Remark(
        remark.code(),
        Wording.in(remark.message(), unit),
        new Origin(origin.kind(), Wording.in(origin.text(), unit)));
  }

  /**
   * Rows under a title.
   *
   * @param name what it is about, e.g. "Mould"
   * @param figure the one number it comes to; may be empty
   * @param rest what the title says after that; may be empty
   * @param lines under the title
   * @param rows the first goes first
   */
  public record Table(String name, String figure, String rest, List<String> lines, List<Row> rows) {
    public Table {
      lines = List.copyOf(lines);
      rows = List.copyOf(rows);
    }

    private Table in(TemperatureUnit unit) {
      return new Table(
          name,
          figure,
          Wording.in(rest, unit),
          all(lines, unit),
          rows.stream().map(row -> row.in(unit)).toList());
    }

    static Table plain(String title, List<Row> rows) {
      return new Table(title, "", "", List.of(), rows);
    }
  }

  /**
   * One row.
   *
   * @param weight how it takes part
   * @param value a number with its unit; may be empty
   * @param words what it is, and from where
   */
  public record Row(Weight weight, String value, String words) {
    private Row in(TemperatureUnit unit) {
      return new Row(weight, value, Wording.in(words, unit));
    }
  }

  /** Whether a row goes into the number above it. */
  public enum Weight {
    /** Rows that are no sources. */
    NONE,
    /** It does. */
    COUNTS,
    /** It is shown, and does not. */
    BESIDE
  }
}
