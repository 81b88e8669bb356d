package org.heatwright.app.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.heatwright.app.report.Sheet.Weight;
import org.heatwright.forecast.Band;
import org.heatwright.inspect.Finding;
import org.heatwright.inspect.Severity;
import org.heatwright.schedule.AtEnd;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;

/**
 * Lays a card out on one page.
 *
 * <p>The rule for long content: three densities are tried, roomy first, and the first that fits is
 * used; room left over goes to the chart and to the lines for notes. Digits to key never shrink
 * below 14 points, nothing below 7.5. In the tightest density texts are cut to the lines a block
 * has, with an ellipsis or a count of what is left out, and the display gets six rows.
 *
 * <p>What is predicted stands on grey; what is measured or written by hand goes into a white box
 * with a firm edge.
 */
final class CardLayout {

  private static final double SIDE = 10;
  private static final double TOP = 9;
  private static final double FOOT = 8;
  private static final double GAP = 3;
  private static final double PREDICTED_GREY = 0.88;
  private static final double FIRM = 0.9;
  private static final double FINE = 0.4;
  private static final double MOST_CHART_GROWTH = 34;
  private static final double MOST_NOTES = 40;
  private static final double NOTE_LINE = 7;

  /** How closely things are set: points and millimetres. */
  private enum Density {
    ROOMY(9, 8, 17, 9.4, 6.6, 8, 3, 8, 3),
    NORMAL(8.5, 7.5, 15, 7.4, 5.9, 8, 2, 7, 2),
    TIGHT(7.5, 7.5, 14, 6.1, 5.3, 6, 1, 5, 1);

    private final double body;
    private final double small;
    private final double digits;
    private final double entryRow;
    private final double displayRow;
    private final int displayRows;
    private final int cautionLines;
    private final int listLines;
    private final int factLines;

    Density(
        double body,
        double small,
        double digits,
        double entryRow,
        double displayRow,
        int displayRows,
        int cautionLines,
        int listLines,
        int factLines) {
      this.body = body;
      this.small = small;
      this.digits = digits;
      this.entryRow = entryRow;
      this.displayRow = displayRow;
      this.displayRows = displayRows;
      this.cautionLines = cautionLines;
      this.listLines = listLines;
      this.factLines = factLines;
    }

    /** Distance between lines of body text, mm. */
    double line() {
      return lineOf(body);
    }

    double smallLine() {
      return lineOf(small);
    }
  }

  private final Sheet sheet;
  private final Card card;
  private final WhenWords when;
  private final TemperatureUnit unit;
  private final double width;
  private final Density density;
  private final double slack;
  private final List<Card.DisplayRow> display;

  private CardLayout(Sheet sheet, Card card, PageSize size, Density density, double slack) {
    this.sheet = sheet;
    this.card = card;
    this.when = new WhenWords(card.timing().start());
    this.unit = card.header().unit();
    this.width = size.widthMillimetres() - 2 * SIDE;
    this.density = density;
    this.slack = slack;
    this.display = spread(card.display(), density.displayRows);
  }

  static void draw(Sheet sheet, Card card, PageSize size) {
    for (Density density : Density.values()) {
      double bottom = new CardLayout(sheet.dry(), card, size, density, 0).page();
      double slack = size.heightMillimetres() - FOOT - bottom;
      if (slack >= 0) {
        new CardLayout(sheet, card, size, density, slack).page();
        return;
      }
    }
    throw new IllegalStateException("The card '" + card.header().job() + "' is too long.");
  }

  /** Draws all and returns where it ends, mm from the top. */
  private double page() {
    double y = title(TOP);
    y = stops(y);
    y = answers(y);
    y = proof(y);
    y = heading("Before", "key these digits, read them back, load", y);
    y = entries(y);
    y = beforeColumns(y);
    y = heading("During", "is it where it should be?", y);
    y = displayAndChart(y);
    y = alarms(y);
    y = estimatesAndMoments(y);
    y = heading("After", "what was measured; a blank is a blank, not a zero", y);
    y = after(y);
    return foot(y);
  }

  // ---------------------------------------------------------------- head

  private double title(double y) {
    Card.Header header = card.header();
    double badge = 25;
    double room = width - badge - 4;
    double size = sheet.sizeFor(header.job(), Weight.BOLD, room, 13, 22);
    String job = sheet.fit(header.job(), Weight.BOLD, size, room);
    sheet.text(SIDE, y + 6.2, job, Weight.BOLD, size);
    StringBuilder where = new StringBuilder("Kiln " + header.kiln());
    header.keypad().ifPresent(k -> where.append("  ·  keypad ").append(k));
    if (header.slot().isPresent()) {
      where.append("  ·  slot ").append(header.slot().getAsInt());
    }
    sheet.text(SIDE, y + 11.6, sheet.fit(where.toString(), Weight.BOLD, 11.5, room), Weight.BOLD, 11.5);
    String date =
        card.timing().start().map(s -> WhenWords.longDay(s) + ", program start").orElse("Date");
    double end = SIDE + sheet.widthOf(date, Weight.REGULAR, 9);
    sheet.text(SIDE, y + 16, date, Weight.REGULAR, 9);
    if (card.timing().start().isEmpty()) {
      sheet.line(end + 1, y + 16.4, end + 45, y + 16.4, FINE);
      end += 45;
    }
    sheet.text(
        end + 4,
        y + 16,
        sheet.fit(
            "clock times: " + header.zone().getId(), Weight.REGULAR, 9, SIDE + room - end - 4),
        Weight.REGULAR,
        9);
    double left = SIDE + width - badge;
    sheet.fill(left, y, badge, 13, 0);
    sheet.text(
        left + (badge - sheet.widthOf(unit.symbol(), Weight.BOLD, 30)) / 2,
        y + 6.5 + Sheet.capitals(30) / 2,
        unit.symbol(),
        Weight.BOLD,
        30,
        1);
    sheet.textCentred(left + badge / 2, y + 16, "unit in force", Weight.BOLD, 8.5);
    return y + 17.5 + GAP / 2;
  }

  /** A black bar for each finding that says stop. */
  private double stops(double y) {
    double at = y;
    List<Finding> stops =
        card.findings().stream().filter(f -> f.severity() == Severity.STOP).toList();
    int shown = Math.min(stops.size(), 2);
    for (int i = 0; i < shown; i++) {
      boolean more = i == shown - 1 && stops.size() > shown;
      String rest = more ? " (and " + (stops.size() - shown) + " more that say stop)" : "";
      List<String> lines =
          sheet.wrap(
              "STOP, do not fire: " + stops.get(i).message() + rest, Weight.BOLD, 9.5, width - 4, 2);
      double height = lines.size() * lineOf(9.5) + 1.6;
      sheet.fill(SIDE, at, width, height, 0);
      for (int line = 0; line < lines.size(); line++) {
        sheet.text(
            SIDE + 2, at + 3.8 + line * lineOf(9.5), lines.get(line), Weight.BOLD, 9.5, 1);
      }
      at += height + 1;
    }
    return at;
  }

  /** Start, ready from, ready until, end: the four times that matter, large. */
  private double answers(double y) {
    Card.Timing timing = card.timing();
    double cell = width / 4;
    double height = 16;
    answer(0, y, "Program starts", timing.start().isPresent() ? Optional.of(0.0) : Optional.empty(),
        card.timing().delay().map(d -> "after the delay below").orElse("no delay set"), false);
    Optional<Card.Ready> ready = timing.ready();
    String what = ready.map(Card.Ready::what).orElse("Ready");
    answer(1, y, what + " from", ready.map(r -> r.fromSeconds().median()),
        ready.map(r -> nineInTen(r.fromSeconds())).orElse("not known"), true);
    Optional<Double> until = ready.flatMap(Card.Ready::untilSeconds);
    answer(2, y, what + " until", until,
        until.isPresent() ? "then the kiln cools" : "a person stops the program", true);
    answer(3, y, timing.atEnd() == AtEnd.OFF ? "Program ends, elements off" : "Last hold ends, heat stays on",
        Optional.of(timing.endSeconds().median()), nineInTen(timing.endSeconds()), true);
    sheet.box(SIDE, y, width, height, FINE);
    for (int i = 1; i < 4; i++) {
      sheet.line(SIDE + i * cell, y, SIDE + i * cell, y + height, FINE);
    }
    sheet.box(SIDE + cell, y, 2 * cell, height, 1.6);
    return y + height + GAP / 2;
  }

  private void answer(
      int column, double y, String label, Optional<Double> seconds, String below, boolean predicted) {
    double cell = width / 4;
    double x = SIDE + column * cell;
    if (predicted) {
      sheet.fill(x, y, cell, 16, PREDICTED_GREY);
    }
    double inner = cell - 4;
    sheet.text(x + 2, y + 3.4, sheet.fit(label, Weight.REGULAR, 8, inner), Weight.REGULAR, 8);
    if (seconds.isPresent()) {
      String clock = when.clock(seconds.get());
      String day = when.day(seconds.get());
      double dayWidth = sheet.widthOf(day, Weight.BOLD, 11);
      double size =
          sheet.sizeFor(clock, Weight.BOLD, inner - (day.isEmpty() ? 0 : dayWidth + 2), 12, 22);
      sheet.text(x + 2, y + 10.8, day, Weight.BOLD, 11);
      sheet.text(x + 2 + (day.isEmpty() ? 0 : dayWidth + 2), y + 10.8, clock, Weight.BOLD, size);
    } else {
      sheet.line(x + 2, y + 11, x + cell - 3, y + 11, FINE);
    }
    sheet.text(x + 2, y + 14.7, sheet.fit(below, Weight.REGULAR, 8, inner), Weight.REGULAR, 8);
  }

  private String nineInTen(Band seconds) {
    return when.band(seconds) + ", nine in ten";
  }

  /** Who proved the keying, who answers for it. */
  private double proof(double y) {
    double height = 9.2;
    double[] shares = {0.36, 0.2, 0.24, 0.2};
    String[] labels = {
      "Read back and proven by, on (date, time)",
      "Thermocouple checked on",
      "Responsible",
      "Phone"
    };
    List<Optional<String>> values =
        List.of(
            Optional.empty(), Optional.empty(), card.header().responsible(), card.header().phone());
    double x = SIDE;
    for (int i = 0; i < shares.length; i++) {
      double cell = width * shares[i];
      sheet.box(x, y, cell, height, FIRM);
      sheet.text(
          x + 1.5, y + 3.2, sheet.fit(labels[i], Weight.REGULAR, 7.5, cell - 2), Weight.REGULAR, 7.5);
      String value = values.get(i).orElse("");
      sheet.text(x + 1.5, y + 7.8, sheet.fit(value, Weight.BOLD, 10, cell - 3), Weight.BOLD, 10);
      x += cell;
    }
    return y + height + GAP;
  }

  private double heading(String name, String says, double y) {
    double tab = sheet.widthOf(name, Weight.BOLD, 10) + 5;
    sheet.fill(SIDE, y, tab, 5, 0);
    sheet.text(SIDE + 2.5, y + 3.8, name, Weight.BOLD, 10, 1);
    sheet.text(SIDE + tab + 2, y + 3.7, says, Weight.REGULAR, 8.5);
    sheet.line(SIDE, y + 5, SIDE + width, y + 5, 1.2);
    return y + 5 + 1.6;
  }

  // ---------------------------------------------------------------- before

  private double entries(double y) {
    double spare = width - 190;
    double[] columns = {7, 31 + spare / 2, 21, 21, 21, 43 + spare / 2, 31, 15};
    double[] x = new double[columns.length + 1];
    x[0] = SIDE;
    for (int i = 0; i < columns.length; i++) {
      x[i + 1] = x[i] + columns[i];
    }
    boolean clockForm = card.entries().stream().allMatch(e -> e.holdDigits().contains(":"));
    String[] heads = {
      "",
      "purpose",
      "rate, " + unit.symbol() + "/h",
      "target, " + unit.symbol(),
      clockForm ? "hold, h:mm" : "hold",
      "which means",
      "target reached, predicted",
      "read at"
    };
    double head = 4.4;
    for (int i = 0; i < heads.length; i++) {
      if (i >= 2 && i <= 4) {
        sheet.textCentred((x[i] + x[i + 1]) / 2, y + 3.2, heads[i], Weight.BOLD, 8);
      } else {
        sheet.text(
            x[i] + 1, y + 3.2, sheet.fit(heads[i], Weight.REGULAR, 7.5, columns[i]), Weight.REGULAR, 7.5);
      }
    }
    double top = y + head;
    double row = density.entryRow;
    for (int i = 0; i < card.entries().size(); i++) {
      Card.Entry entry = card.entries().get(i);
      double at = top + i * row;
      sheet.fill(x[6], at, columns[6], row, PREDICTED_GREY);
      double middle = at + row / 2;
      sheet.textCentred(
          (x[0] + x[1]) / 2,
          middle + Sheet.capitals(11) / 2,
          Integer.toString(entry.segment()),
          Weight.BOLD,
          11);
      stacked(entry.purpose(), x[1] + 1, middle, columns[1] - 2);
      digits(entry.rateDigits(), x[2], middle, columns[2]);
      digits(entry.targetDigits(), x[3], middle, columns[3]);
      digits(entry.holdDigits(), x[4], middle, columns[4]);
      stacked(entry.meaning(), x[5] + 1, middle, columns[5] - 2);
      reached(entry.reachedSeconds(), x[6] + 1, middle, columns[6] - 2);
      sheet.line(SIDE, at + row, SIDE + width, at + row, FINE);
    }
    double height = card.entries().size() * row;
    sheet.line(SIDE, top, SIDE + width, top, FINE);
    sheet.line(x[3], top, x[3], top + height, FINE);
    sheet.line(x[4], top, x[4], top + height, FINE);
    sheet.box(x[2], top, x[5] - x[2], height, 1.6);
    for (int i = 0; i < card.entries().size(); i++) {
      sheet.box(x[7], top + i * row, columns[7], row, FIRM);
    }
    return top + height + GAP;
  }

  private void digits(String digits, double x, double middle, double column) {
    double size = sheet.sizeFor(digits, Weight.BOLD, column - 1.6, 7.5, density.digits);
    String shown = sheet.fit(digits, Weight.BOLD, size, column - 1);
    sheet.textCentred(
        x + column / 2, middle + Sheet.capitals(size) / 2, shown, Weight.BOLD, size);
  }

  /** One or two lines, centred on a height. */
  private void stacked(String text, double x, double middle, double room) {
    centred(sheet.wrap(text, Weight.REGULAR, density.small, room, 2), x, middle, Weight.REGULAR);
  }

  private void reached(Band seconds, double x, double middle, double room) {
    double line = density.smallLine();
    double first = middle - line / 2 + Sheet.capitals(density.small) / 2;
    sheet.text(
        x,
        first,
        sheet.fit(when.full(seconds.median()), Weight.BOLD, density.small, room),
        Weight.BOLD,
        density.small);
    double size = sheet.sizeFor(when.band(seconds), Weight.REGULAR, room, 7.5, density.small);
    sheet.text(
        x,
        first + line,
        sheet.fit(when.band(seconds), Weight.REGULAR, size, room),
        Weight.REGULAR,
        size);
  }

  private void centred(List<String> lines, double x, double middle, Weight weight) {
    double line = density.smallLine();
    double first = middle - (lines.size() - 1) * line / 2 + Sheet.capitals(density.small) / 2;
    for (int i = 0; i < lines.size(); i++) {
      sheet.text(x, first + i * line, lines.get(i), weight, density.small);
    }
  }

  private double beforeColumns(double y) {
    double gutter = 4;
    double column = (width - 2 * gutter) / 3;
    double a = checkColumn(SIDE, y, column);
    double b = kilnColumn(SIDE + column + gutter, y, column);
    double c = goColumn(SIDE + 2 * (column + gutter), y, column);
    return Math.max(a, Math.max(b, c)) + GAP;
  }

  private double checkColumn(double x, double y, double room) {
    double at = smallHead("Check figures the keypad must show", x, y);
    double size = density.body + 0.5;
    for (Card.Fact fact : card.checkFigures()) {
      at += lineOf(size) + 0.5;
      String value = fact.value();
      double valueWidth = sheet.widthOf(value, Weight.BOLD, size);
      String label = sheet.fit(fact.label(), Weight.REGULAR, density.body, room * 0.55);
      sheet.text(x, at, label, Weight.REGULAR, density.body);
      double left = room - sheet.widthOf(label, Weight.REGULAR, density.body) - 2;
      if (valueWidth > left) {
        value = sheet.fit(value, Weight.BOLD, density.small, left);
        sheet.textRight(x + room, at, value, Weight.BOLD, density.small);
      } else {
        sheet.textRight(x + room, at, value, Weight.BOLD, size);
      }
      sheet.line(x, at + 1, x + room, at + 1, 0.25);
    }
    at += 2.2;
    if (card.timing().delay().isPresent()) {
      Card.Delay delay = card.timing().delay().get();
      double box = 24;
      double height = 7;
      sheet.box(x, at, box, height, 1.6);
      digits(delay.digits(), x, at + height / 2, box);
      List<String> lines =
          sheet.wrap(
              "delay to key: " + delay.meaning(), Weight.REGULAR, density.small, room - box - 2, 2);
      centred(lines, x + box + 2, at + height / 2, Weight.REGULAR);
      at += height + 0.6;
    }
    for (String note : firstOf(card.timing().notes(), density.factLines)) {
      at = paragraph(note, x, at, room, density.small, Weight.REGULAR, 2);
    }
    return at;
  }

  private double kilnColumn(double x, double y, double room) {
    double at = smallHead("In the kiln", x, y);
    List<Card.Fact> facts = new ArrayList<>(card.work());
    facts.addAll(card.limits());
    facts.addAll(card.power());
    int most = density.listLines + 1;
    int shown = facts.size() > most ? most - 1 : facts.size();
    for (Card.Fact fact : facts.subList(0, shown)) {
      at = fact(fact, x, at, room);
    }
    if (shown < facts.size()) {
      at =
          paragraph(
              (facts.size() - shown) + " more lines did not fit this page.",
              x,
              at,
              room,
              density.small,
              Weight.REGULAR,
              1);
    }
    return at;
  }

  private double fact(Card.Fact fact, double x, double y, double room) {
    double label = sheet.widthOf(fact.label() + "  ", Weight.BOLD, density.small);
    List<String> lines =
        sheet.wrap(
            fact.value(), Weight.REGULAR, density.small, room - label, density.factLines);
    sheet.text(x, y + density.smallLine(), fact.label(), Weight.BOLD, density.small);
    double at = y;
    for (String line : lines) {
      at += density.smallLine();
      sheet.text(x + label, at, line, Weight.REGULAR, density.small);
    }
    return at + 0.4;
  }

  private double goColumn(double x, double y, double room) {
    double at = smallHead("Before you press start", x, y);
    for (String item : firstOf(card.loading(), density.listLines)) {
      List<String> lines =
          sheet.wrap(item, Weight.REGULAR, density.small, room - 4.5, density.factLines);
      sheet.box(x, at + density.smallLine() - 2.4, 2.6, 2.6, FIRM);
      for (String line : lines) {
        at += density.smallLine();
        sheet.text(x + 4.5, at, line, Weight.REGULAR, density.small);
      }
      at += 0.5;
    }
    at += 1.6;
    double height = 11;
    sheet.box(x, at, room, height, 1.6);
    sheet.box(x + 2, at + 1.4, 3.4, 3.4, FIRM);
    sheet.text(x + 6.5, at + 4.5, "GO", Weight.BOLD, 10.5);
    sheet.box(x + 17, at + 1.4, 3.4, 3.4, FIRM);
    sheet.text(x + 21.5, at + 4.5, "NO-GO", Weight.BOLD, 10.5);
    sheet.text(x + 2, at + 9.4, "signed, date, time", Weight.REGULAR, 7.5);
    sheet.line(x + 25, at + 9.6, x + room - 2, at + 9.6, FINE);
    return at + height;
  }

  private double smallHead(String text, double x, double y) {
    sheet.text(x, y + 3, text, Weight.BOLD, 9);
    return y + 3.4;
  }

  // ---------------------------------------------------------------- during

  private double displayAndChart(double y) {
    double growth = Math.min(slack, MOST_CHART_GROWTH);
    double head = 4.4;
    double height = head + density.displayRows * density.displayRow + growth;
    double table = 86;
    displayTable(y, table, height, head);
    ChartDrawing.draw(
        sheet, card.chart(), display, SIDE + table + 3, y - 0.5, width - table - 3, height + 0.5);
    return y + height + GAP * 0.8;
  }

  private void displayTable(double y, double table, double height, double head) {
    double[] x = {SIDE, SIDE + 6, SIDE + 37, SIDE + 53, SIDE + 71, SIDE + table};
    String symbol = unit.symbol();
    sheet.text(x[1] + 1, y + 3.2, "at this time", Weight.REGULAR, 7.5);
    sheet.text(x[2] + 1, y + 3.2, "display should say, " + symbol, Weight.BOLD, 7.5);
    sheet.text(x[4] + 1, y + 3.2, "read, " + symbol, Weight.BOLD, 7.5);
    double row = (height - head) / Math.max(display.size(), 6);
    for (int i = 0; i < display.size(); i++) {
      Card.DisplayRow at = display.get(i);
      double top = y + head + i * row;
      double middle = top + row / 2;
      sheet.fill(x[2], top, x[4] - x[2], row, PREDICTED_GREY);
      sheet.circle(x[0] + 2.4, middle, 2, 0.6, 1);
      sheet.textCentred(
          x[0] + 2.4,
          middle + Sheet.capitals(8) / 2,
          Integer.toString(i + 1),
          Weight.BOLD,
          8);
      String day = when.day(at.seconds());
      String clock = when.clock(at.seconds());
      sheet.text(x[1] + 1, middle + Sheet.capitals(9) / 2, day, Weight.REGULAR, 9);
      double clockSize = clock.length() > 6 ? 9 : 12;
      sheet.textRight(
          x[2] - 1.5, middle + Sheet.capitals(clockSize) / 2, clock, Weight.BOLD, clockSize);
      Band band = at.displayCelsius();
      sheet.textRight(
          x[3] - 2,
          middle + Sheet.capitals(13.5) / 2,
          degrees(band.median()),
          Weight.BOLD,
          13.5);
      sheet.text(
          x[3],
          middle + Sheet.capitals(9) / 2,
          degrees(band.low()) + " to " + degrees(band.high()),
          Weight.REGULAR,
          9);
      sheet.line(SIDE, top + row, SIDE + table, top + row, FINE);
    }
    sheet.line(SIDE, y + head, SIDE + table, y + head, FINE);
    for (int i = 0; i < display.size(); i++) {
      sheet.box(x[4], y + head + i * row, x[5] - x[4], row, FIRM);
    }
  }

  private String degrees(double celsius) {
    return Long.toString(Math.round(unit.value(new Temperature(celsius))));
  }

  private double alarms(double y) {
    double at = y;
    double size = density.body;
    for (Card.Alarm alarm : card.alarms()) {
      at += lineOf(size) + 0.3;
      String sign = alarm.sign() + ":  ";
      sheet.polyline(
          new double[] {SIDE, SIDE + 2.6, SIDE + 1.3, SIDE},
          new double[] {at, at, at - 2.3, at},
          FIRM);
      sheet.text(SIDE + 4, at, sign, Weight.BOLD, size);
      double left = SIDE + 4 + sheet.widthOf(sign, Weight.BOLD, size);
      sheet.text(
          left,
          at,
          sheet.fit(alarm.action(), Weight.REGULAR, size, SIDE + width - left),
          Weight.REGULAR,
          size);
    }
    return at + GAP * 0.6;
  }

  private double estimatesAndMoments(double y) {
    double gutter = 4;
    double left = card.estimates().isEmpty() ? 0 : (width - gutter) * 0.42;
    double a = y;
    if (left > 0) {
      a = smallHead("Inside the work, predicted", SIDE, y);
      for (String estimate : firstOf(card.estimates(), density.factLines + 1)) {
        a = paragraph(estimate, SIDE, a, left, density.small, Weight.REGULAR, 2);
      }
    }
    double b = y;
    if (!card.moments().isEmpty()) {
      double x = SIDE + (left > 0 ? left + gutter : 0);
      double room = SIDE + width - x;
      b = smallHead("What you do, and until when you can still change your mind", x, y);
      int most = density.factLines + 3;
      for (Card.Act act : card.moments().subList(0, Math.min(most, card.moments().size()))) {
        b = act(act, x, b, room);
      }
    }
    return Math.max(a, b) + GAP;
  }

  private double act(Card.Act act, double x, double y, double room) {
    double clock = 28;
    double size = density.body;
    double at = y + lineOf(size);
    sheet.text(
        x,
        at,
        sheet.fit(when.full(act.seconds().median()), Weight.BOLD, size, clock),
        Weight.BOLD,
        size);
    List<String> lines =
        sheet.wrap(
            (act.actNow() ? "ACT: " : "") + act.what(),
            Weight.REGULAR,
            density.small,
            room - clock - 1,
            density.factLines);
    for (int i = 0; i < lines.size(); i++) {
      sheet.text(
          x + clock + 1,
          at + i * density.smallLine(),
          lines.get(i),
          Weight.REGULAR,
          density.small);
    }
    return at + (lines.size() - 1) * density.smallLine() + 0.4;
  }

  // ---------------------------------------------------------------- after

  private double after(double y) {
    String symbol = unit.symbol();
    String[] labels = {
      "peak read, " + symbol + ", date and time",
      "furthest from the band, " + symbol + ", when",
      "energy by the meter, kWh",
      "keyed other than planned?"
    };
    double cell = width / labels.length;
    double height = density == Density.TIGHT ? 8 : 9.5;
    for (int i = 0; i < labels.length; i++) {
      sheet.box(SIDE + i * cell, y, cell, height, FIRM);
      sheet.text(SIDE + i * cell + 1.5, y + 3, labels[i], Weight.REGULAR, 7.5);
    }
    double at = y + height + 1.2 + density.line();
    double x = SIDE;
    sheet.text(x, at, "Outcome", Weight.BOLD, density.body);
    x += sheet.widthOf("Outcome", Weight.BOLD, density.body) + 3;
    for (String fault : card.faults()) {
      double wide = 4 + sheet.widthOf(fault, Weight.REGULAR, density.body) + 3;
      if (x + wide > SIDE + width + 3) {
        x = SIDE;
        at += density.line() + 1;
      }
      sheet.box(x, at - 2.5, 2.8, 2.8, FIRM);
      sheet.text(x + 4, at, fault, Weight.REGULAR, density.body);
      x += wide;
    }
    at += density.line() + 3;
    String keep = "Keep, or change one thing:";
    String service = "Next service:";
    sheet.text(SIDE, at, keep, Weight.BOLD, density.body);
    String due = card.nextService().orElse("");
    double dueWidth = Math.max(28, sheet.widthOf(due, Weight.REGULAR, density.body));
    double serviceWidth = sheet.widthOf(service, Weight.BOLD, density.body);
    double serviceAt = SIDE + width - dueWidth - serviceWidth - 2;
    sheet.line(
        SIDE + sheet.widthOf(keep, Weight.BOLD, density.body) + 2,
        at + 0.6,
        serviceAt - 3,
        at + 0.6,
        FINE);
    sheet.text(serviceAt, at, service, Weight.BOLD, density.body);
    double dueAt = serviceAt + serviceWidth + 2;
    if (due.isEmpty()) {
      sheet.line(dueAt, at + 0.6, SIDE + width, at + 0.6, FINE);
    } else {
      sheet.text(dueAt, at, due, Weight.REGULAR, density.body);
    }
    double notes = Math.min(MOST_NOTES, Math.max(0, slack - MOST_CHART_GROWTH));
    for (int i = 1; i * NOTE_LINE <= notes; i++) {
      sheet.line(SIDE, at + 0.6 + i * NOTE_LINE, SIDE + width, at + 0.6 + i * NOTE_LINE, FINE);
    }
    return at + notes + GAP * 0.8;
  }

  private double foot(double y) {
    sheet.line(SIDE, y, SIDE + width, y, 1.2);
    double at = y + 0.6;
    List<String> cautions = new ArrayList<>();
    card.findings().stream()
        .filter(f -> f.severity() == Severity.WARN)
        .map(Finding::message)
        .forEach(cautions::add);
    cautions.addAll(card.cautions());
    if (!cautions.isEmpty()) {
      at =
          paragraph(
              "Caution: " + String.join("  ·  ", cautions),
              SIDE,
              at,
              width,
              density.small,
              Weight.REGULAR,
              density.cautionLines + 1);
    }
    at =
        paragraph(
            card.scheduleText(), SIDE, at, width, density.small, Weight.REGULAR, density.cautionLines + 1);
    return paragraph(Card.NEVER_STARTS_HEAT, SIDE, at, width, 8, Weight.BOLD, 1);
  }

  // ---------------------------------------------------------------- text

  private double paragraph(
      String text, double x, double y, double room, double size, Weight weight, int mostLines) {
    double at = y;
    for (String line : sheet.wrap(text, weight, size, room, mostLines)) {
      at += lineOf(size);
      sheet.text(x, at, line, weight, size);
    }
    return at + 0.6;
  }

  private static double lineOf(double points) {
    return points * 1.2 / Sheet.POINTS_PER_MILLIMETRE;
  }

  private static <T> List<T> firstOf(List<T> all, int most) {
    return all.subList(0, Math.min(most, all.size()));
  }

  /** At most so many rows, the first and the last among them, the rest spread evenly. */
  private static List<Card.DisplayRow> spread(List<Card.DisplayRow> rows, int most) {
    if (rows.size() <= most) {
      return rows;
    }
    List<Card.DisplayRow> kept = new ArrayList<>();
    for (int i = 0; i < most; i++) {
      kept.add(rows.get(Math.round((float) i * (rows.size() - 1) / (most - 1))));
    }
    return kept;
  }
}
