package org.heatwright.app.report;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.heatwright.app.report.Sheet.Weight;

/** Prints a slot register: big slot numbers, room to write by hand, black on white. */
public final class RegisterPdf {

  private static final double SIDE = 12;
  private static final double TOP = 14;
  private static final double FOOT = 16;
  private static final double FIRST_ROW = 44;
  private static final double LEAST_ROW = 16.5;
  private static final double MOST_ROW = 26;

  /** A name that is too long for this size, pt, goes on in a second line, mm below. */
  private static final double NAME_POINTS = 10.5;

  private static final double NAME_LINE = 4.2;

  /** The least row that has room for two lines of a name and two below them, mm. */
  private static final double TWO_LINE_ROW = 20;

  private static final double FINE = 0.4;
  private static final double FIRM = 0.9;

  /** Widths of the columns after the program, mm. */
  private static final double SLOT = 21;

  private static final double TOP_WIDTH = 23;
  private static final double HOURS = 27;
  private static final double PROVEN = 25;
  private static final double INITIALS = 21;

  private RegisterPdf() {}

  /** The same register gives the same bytes. */
  public static byte[] render(RegisterSheet register, PageSize size) {
    double room = size.heightMillimetres() - FIRST_ROW - FOOT;
    int onPage = (int) (room / LEAST_ROW);
    double rowHeight =
        Math.min(MOST_ROW, room / Math.max(1, Math.min(onPage, register.rows().size())));
    List<List<RegisterSheet.Row>> pages = new ArrayList<>();
    for (int from = 0; from < register.rows().size(); from += onPage) {
      pages.add(register.rows().subList(from, Math.min(register.rows().size(), from + onPage)));
    }
    try (PDDocument document = new PDDocument()) {
      for (int i = 0; i < pages.size(); i++) {
        Sheet sheet = Sheet.addTo(document, size);
        new Leaf(sheet, size, register, rowHeight).draw(pages.get(i), i + 1, pages.size());
        sheet.close();
      }
      document.getDocumentInformation().setTitle("Program slots of " + register.kiln());
      document.getDocumentCatalog().setLanguage("en");
      document.setDocumentId(0L); // otherwise the clock goes into the file
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      document.save(bytes);
      return bytes.toByteArray();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** One page in the making. */
  private static final class Leaf {

    private final Sheet sheet;
    private final RegisterSheet register;
    private final double rowHeight;
    private final double right;
    private final double bottom;
    private final double program;
    private final double top;
    private final double hours;
    private final double proven;
    private final double initials;

    /** One size for all hours, the smallest that any of them needs, pt. */
    private final double hoursPoints;

    Leaf(Sheet sheet, PageSize size, RegisterSheet register, double rowHeight) {
      this.rowHeight = rowHeight;
      this.sheet = sheet;
      this.register = register;
      this.right = size.widthMillimetres() - SIDE;
      this.bottom = size.heightMillimetres();
      this.program = SIDE + SLOT;
      this.initials = right - INITIALS;
      this.proven = initials - PROVEN;
      this.hours = proven - HOURS;
      this.top = hours - TOP_WIDTH;
      this.hoursPoints =
          register.rows().stream()
              .mapToDouble(r -> sheet.sizeFor(r.hours(), Weight.REGULAR, HOURS - 3, 8, 12))
              .min()
              .orElse(12);
    }

    void draw(List<RegisterSheet.Row> rows, int page, int pages) {
      double width = right - SIDE;
      sheet.text(
          SIDE,
          TOP + 8,
          sheet.fit("Slots of " + register.kiln(), Weight.BOLD, 26, width - 55),
          Weight.BOLD,
          26);
      sheet.textRight(
          right, TOP + 3.5, sheet.fit(register.keypad(), Weight.BOLD, 12, 52), Weight.BOLD, 12);
      sheet.textRight(
          right,
          TOP + 8.5,
          "printed " + register.day() + (pages > 1 ? ", page %d of %d".formatted(page, pages) : ""),
          Weight.REGULAR,
          9);
      double at = TOP + 15;
      for (String line :
          sheet.wrap(
              register.rules()
                  + " It also ends when the slot is edited, the unit is switched, somebody else"
                  + " fires the kiln, or the keypad is replaced or reset.",
              Weight.REGULAR,
              9,
              width,
              2)) {
        sheet.text(SIDE, at, line, Weight.REGULAR, 9);
        at += 4;
      }
      heads();
      sheet.line(SIDE, FIRST_ROW, right, FIRST_ROW, FIRM);
      double y = FIRST_ROW;
      for (RegisterSheet.Row row : rows) {
        row(row, y);
        y += rowHeight;
        sheet.line(SIDE, y, right, y, FINE);
      }
      sheet.line(initials, FIRST_ROW, initials, y, FINE);
      sheet.text(
          SIDE,
          bottom - 8,
          "Read a slot back before it is started. This sheet says what was told, not what the kiln does.",
          Weight.REGULAR,
          8);
    }

    private void heads() {
      double y = FIRST_ROW - 2;
      sheet.text(SIDE, y, "slot", Weight.REGULAR, 9);
      sheet.text(program, y, "program", Weight.REGULAR, 9);
      sheet.text(top, y, "top", Weight.REGULAR, 9);
      sheet.text(hours, y, "hours on paper", Weight.REGULAR, 9);
      sheet.text(proven, y, "proven on", Weight.REGULAR, 9);
      sheet.text(initials + 2, y, "initials", Weight.REGULAR, 9);
    }

    private void row(RegisterSheet.Row row, double y) {
      double middle = y + rowHeight / 2;
      double size = sheet.sizeFor(row.slot(), Weight.BOLD, SLOT - 3, 10, 32);
      sheet.text(SIDE, middle + Sheet.capitals(size) / 2, row.slot(), Weight.BOLD, size);
      double nameWidth = top - program - 3;
      List<String> under =
          row.under().isEmpty()
              ? List.of()
              : sheet.wrap(row.under(), Weight.REGULAR, 8, proven - program - 3, 2);
      double name = sheet.sizeFor(row.program(), Weight.BOLD, nameWidth, NAME_POINTS, 13);
      List<String> names =
          sheet.wrap(
              row.program(),
              Weight.BOLD,
              name,
              nameWidth,
              rowHeight >= TWO_LINE_ROW || under.isEmpty() ? 2 : 1);
      double more = NAME_LINE * Math.max(0, names.size() - 1);
      double block = Sheet.capitals(13) + more + (under.isEmpty() ? 0 : 0.7 + 3.5 * under.size());
      double base = middle - block / 2 + Sheet.capitals(13);
      if (row.program().isEmpty()) {
        // A line to write on; what is known goes beside it.
        sheet.line(program, base + 1, proven - 3, base + 1, FINE);
      } else {
        for (int i = 0; i < names.size(); i++) {
          String text = sheet.fit(names.get(i), Weight.BOLD, name, nameWidth);
          sheet.text(program, base + i * NAME_LINE, text, Weight.BOLD, name);
        }
        sheet.text(top, base, row.top(), Weight.BOLD, 13);
        sheet.text(
            hours,
            base,
            sheet.fit(row.hours(), Weight.REGULAR, hoursPoints, HOURS),
            Weight.REGULAR,
            hoursPoints);
      }
      sheet.text(
          proven,
          base,
          row.proven(),
          row.good() ? Weight.BOLD : Weight.REGULAR,
          sheet.sizeFor(
              row.proven(), row.good() ? Weight.BOLD : Weight.REGULAR, PROVEN - 2, 8, 12));
      double line = base + more + 4.2;
      for (String text : under) {
        sheet.text(program, line, text, row.needed() ? Weight.BOLD : Weight.REGULAR, 8);
        line += 3.5;
      }
    }
  }
}
