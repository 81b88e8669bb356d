package org.heatwright.app.cli;

import org.heatwright.app.casting.CastAnswer;
import org.heatwright.app.casting.CastAnswer.Row;
import org.heatwright.app.casting.CastAnswer.Table;
import org.heatwright.app.casting.CastAnswer.Weight;
import org.heatwright.app.casting.CastWords;

/** An answer of the casting bench as plain text. */
final class CastPage {

  private CastPage() {}

  static Page of(CastAnswer answer) {
    Page page = new Page();
    page.line(answer.headline());
    answer.details().forEach(detail -> page.hanging("  ", detail));
    answer.tables().forEach(table -> table(page, table));
    if (!answer.notes().isEmpty() || !answer.cautions().isEmpty()) {
      page.blank();
    }
    answer.notes().forEach(note -> page.hanging("note  ", note));
    answer.cautions().forEach(caution -> page.hanging("care  ", CastWords.words(caution)));
    return page;
  }

  private static void table(Page page, Table table) {
    String figure = table.figure().isEmpty() ? "" : ": " + table.figure();
    page.blank().line(table.name() + figure + table.rest());
    table.lines().forEach(line -> page.hanging("  ", line));
    boolean sources = table.rows().stream().anyMatch(row -> row.weight() != Weight.NONE);
    if (sources) {
      page.hanging("  ", "Rows with * enter:");
    }
    int widest = table.rows().stream().mapToInt(row -> row.value().length()).max().orElse(0);
    for (Row row : table.rows()) {
      String mark = sources ? row.weight() == Weight.COUNTS ? "* " : "  " : "";
      page.hanging(
          "  %s%s  ".formatted(mark, row.value() + " ".repeat(widest - row.value().length())),
          row.words());
    }
  }
}
