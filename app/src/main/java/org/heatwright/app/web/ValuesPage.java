package org.heatwright.app.web;

import java.util.List;

/**
 * The form for a person's own values of one material.
 *
 * @param clock the time at the bench
 * @param kinds what values can be of
 * @param of the chosen one, as files write it
 * @param was the name of those that are changed; empty for new ones
 * @param name as typed
 * @param source as typed
 * @param unit "C" or "F"
 * @param fields what can be told
 * @param sheet what a data sheet tells; empty where there is none
 * @param wrong what is wrong with name, source and all
 */
public record ValuesPage(
    String clock,
    List<Kind> kinds,
    String of,
    String was,
    String name,
    String source,
    String unit,
    List<Field> fields,
    List<Field> sheet,
    Wrong wrong) {

  public ValuesPage {
    kinds = List.copyOf(kinds);
    fields = List.copyOf(fields);
    sheet = List.copyOf(sheet);
  }

  /** Whether the data sheet's fields lie open. */
  public boolean sheetOpen() {
    return sheet.stream().anyMatch(f -> !f.value().isEmpty() || !f.error().isEmpty());
  }

  /** What values can be of. */
  public record Kind(String code, String name, boolean chosen) {}

  /**
   * A value to type or to choose.
   *
   * @param code as in files
   * @param hint what is expected, e.g. "h:mm"; may be empty
   * @param digits whether only digits and a point are typed
   * @param options to choose from; empty: it is typed
   */
  public record Field(
      String code,
      String label,
      String hint,
      boolean digits,
      String value,
      List<Option> options,
      String error) {
    public Field {
      options = List.copyOf(options);
    }
  }

  /** A word to choose. */
  public record Option(String code, String name, boolean chosen) {}

  /** Sentences; empty where nothing is wrong. */
  public record Wrong(String name, String source, String all) {
    static Wrong nothing() {
      return new Wrong("", "", "");
    }
  }
}
