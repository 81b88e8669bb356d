package org.heatwright.app.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.heatwright.app.qr.QrSymbol;
import org.heatwright.app.report.Sheet.Weight;
import org.heatwright.forecast.Band;
import org.heatwright.inspect.Finding;
import org.heatwright.inspect.Severity;
import org.heatwright.schedule.AtEnd;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.Found;

/**
 * Lays a card out on one page.
 *
 * <p>The rule for long content: densities are tried, roomy first, and the first that fits is used;
 * room left over goes to the chart and to the lines for notes. Digits to key never shrink below 14
 * points, nothing below 7.5. The tighter it gets, the fewer lines a text has before it ends in an
 * ellipsis, and the display table goes from eight rows to six. Where even the tightest has no room
 * for the pour, the card goes without, and says so.
 *
 * <p>What is predicted stands on grey; what is measured or written by hand goes into a white box
 * with a firm edge.
 */
final class CardLayout {

  private static final double SIDE = 10;
  private static final double TOP = 7;
  private static final double FOOT = 5.5;

  /** The finding that a card mentions where it has room. */
  private static final String DISPLAYS_WORTH = "couple-tolerance";

  private static final int MOST_DOUBLE_ROWS = 10;
  private static final int STEPS = 8;
  private static final int MOST_FACTS = 8;
  private static final int MOST_LOADING = 6;
  private static final double PREDICTED_GREY = 0.88;

  /** Marks a prediction where grey does not survive a copier. */
  private static final String PREDICTED = "≈";

  /** Digits to key are never smaller, points. */
  private static final double LEAST_DIGITS = 14;

  private static final String NO_CODE =
      "No code to scan here, there is no room for one: hand this schedule on as a file.";

  private static final double FIRM = 0.9;
  private static final double FINE = 0.4;
  private static final double MOST_CHART_GROWTH = 22;

  /** How much of the width the facts of a piece get beside its curve. */
  private static final double PIECE_FACTS_SHARE = 0.49;

  private static final double MOST_NOTES = 40;
  private static final double NOTE_LINE = 7;

  /** Smaller modules do not scan from paper with every phone. Estimate, no source. */
  private static final double LEAST_MODULE = 0.4;

  private static final double LARGEST_CODE = 30;
  private static final double CODE_CAPTION = 2.2;

  /** White between a text and the code's own margin. */
  private static final double CODE_GUTTER = 2;

  /**
   * How closely things are set; heights in mm, sizes in points.
   *
   * @param tightness 0 roomy, 1 tight
   */
  private record Density(double tightness) {

    double body() {
      return between(9, 7.5);
    }

    double small() {
      return between(8, 7.5);
    }

    double digits() {
      return between(17, LEAST_DIGITS);
    }

    double entryRow() {
      return between(9.4, 6);
    }

    double singleRow() {
      return between(6.4, 4.75);
    }

    double displayRow() {
      return between(6.6, 4.3);
    }

    int displayRows() {
      return (int) Math.round(between(8, 6));
    }

    double answer() {
      return between(16, 13.5);
    }

    double clock() {
      return between(22, 18);
    }

    double heading() {
      return between(5, 4.4);
    }

    double box() {
      return between(9.6, 7.4);
    }

    double gap() {
      return between(3.4, 0.9);
    }

    /** Lines that a running text gets. */
    int textLines() {
      return (int) Math.round(between(4, 2));
    }

    int cautionLines() {
      return (int) Math.round(between(9, 3));
    }

    /** Lines that one item of a list gets. */
    int itemLines() {
      return (int) Math.round(between(3, 1));
    }

    int moments() {
      return (int) Math.round(between(5, 3));
    }

    int estimates() {
      return (int) Math.round(between(4, 1));
    }

    /** Side of the code that holds the schedule, with its margin. */
    double code() {
      return between(28, 25);
    }

    double pieceChart() {
      return between(40, 33);
    }

    int factLines() {
      return Math.max(2, itemLines());
    }

    int stops() {
      return tightness > 0.5 ? 1 : 2;
    }

    /** Distance between lines inside a row of a table: set solid. */
    double cellLine() {
      return small() / Sheet.POINTS_PER_MILLIMETRE;
    }

    /** Distance between lines of a size. */
    double lineOf(double points) {
      return points * between(1.22, 1.12) / Sheet.POINTS_PER_MILLIMETRE;
    }

    double line() {
      return lineOf(body());
    }

    double smallLine() {
      return lineOf(small());
    }

    double between(double roomy, double tight) {
      return roomy + tightness * (tight - roomy);
    }
  }

  private final Sheet sheet;
  private final Card card;
  private final WhenWords when;
  private final TemperatureUnit unit;
  private final double width;
  private final Density density;
  private final double slack;
  private final boolean withAside;
  private final boolean withPour;
  private final Optional<PieceChart> pieceChart;
  private final List<Card.DisplayRow> display;
  private final Optional<QrSymbol> code;

  /** How much is told of the pour or of the piece. */
  private enum Told {
    NOTHING,
    FACTS,
    /** The piece's own curve beside them. */
    CURVE
  }

  private CardLayout(
      Sheet sheet,
      Card card,
      PageSize size,
      Optional<QrSymbol> code,
      Density density,
      double slack,
      boolean withAside,
      Told told) {
    this.sheet = sheet;
    this.card = card;
    this.code = code;
    this.when = new WhenWords(card.timing().start());
    this.unit = card.header().unit();
    this.width = size.widthMillimetres() - 2 * SIDE;
    this.density = density;
    this.slack = slack;
    this.withAside = withAside;
    this.withPour = told != Told.NOTHING && !facts(card).isEmpty();
    this.pieceChart = told == Told.CURVE ? card.pieceChart() : Optional.empty();
    this.display = spread(card.display(), density.displayRows());
  }

  static void draw(Sheet sheet, Card card, PageSize size) {
    int most = (int) (LARGEST_CODE / LEAST_MODULE) - 2 * QrSymbol.QUIET;
    Optional<QrSymbol> code = card.code().flatMap(text -> QrSymbol.of(text, most));
    if ((card.pieceChart().isPresent() && drawn(sheet, card, size, code, Told.CURVE))
        || drawn(sheet, card, size, code, Told.FACTS)
        || drawn(sheet, card, size, code, Told.NOTHING)
        || drawn(sheet, card, size, Optional.empty(), Told.NOTHING)) {
      return;
    }
    throw new IllegalArgumentException(
        "The card '%s' does not fit one page of %s: it has %d segments. Maybe split the schedule in two%s."
            .formatted(
                card.header().job(),
                size.words(),
                card.entries().size(),
                size == PageSize.A4 ? "" : ", or print it on A4"));
  }

  private static boolean drawn(
      Sheet sheet, Card card, PageSize size, Optional<QrSymbol> code, Told told) {
    for (int step = 0; step <= STEPS; step++) {
      Density density = new Density((double) step / STEPS);
      double slack = slack(sheet, card, size, code, density, false, told);
      if (slack >= 0) {
        double beside = slack(sheet, card, size, code, density, true, told);
        boolean aside = beside >= 0;
        if (!aside && told == Told.CURVE && step < STEPS) {
          continue; // set it closer rather than leave something out for the curve
        }
        new CardLayout(sheet, card, size, code, density, aside ? beside : slack, aside, told)
            .page();
        return true;
      }
    }
    return false;
  }

  /** What a page leaves free, mm; below zero it does not fit. */
  private static double slack(
      Sheet sheet,
      Card card,
      PageSize size,
      Optional<QrSymbol> code,
      Density density,
      boolean aside,
      Told told) {
    double bottom = new CardLayout(sheet.dry(), card, size, code, density, 0, aside, told).page();
    return size.heightMillimetres() - FOOT - bottom;
  }

  /** Draws all and returns where it ends, mm from the top. */
  private double page() {
    double y = title(TOP);
    y = stops(y);
    y = answers(y);
    y = heading("Before", "key these digits, read them back, load", y);
    y = entries(y);
    y = beforeColumns(y);
    y = proof(y);
    y =
        heading(
            "During",
            "is it where it should be?  grey and ≈: predicted; firm box: write what you read",
            y);
    y = displayAndChart(y);
    y = alarms(y);
    y = estimatesAndMoments(y);
    y = pour(y);
    y = heading("After", "what was measured; a blank is a blank, not a zero", y);
    double under = measured(y);
    double beside = width - (code.isPresent() ? codeSide() + CODE_GUTTER : 0);
    double text = foot(outcome(under, beside), beside);
    double bottom = Math.max(text, code.map(symbol -> code(symbol, under)).orElse(under));
    return paragraph(
        Card.MAKERS_FIRST + " " + Card.NEVER_STARTS_HEAT, SIDE, bottom, width, 8, Weight.BOLD, 1);
  }

  /** Side of the code with its margin, mm: larger than usual where a module needs it. */
  private double codeSide() {
    int modules = code.map(QrSymbol::side).orElse(0) + 2 * QrSymbol.QUIET;
    return Math.max(density.code(), modules * LEAST_MODULE);
  }

  /** The schedule itself, for another bench, in the lower right corner. */
  private double code(QrSymbol symbol, double under) {
    double y = under + FIRM / Sheet.POINTS_PER_MILLIMETRE; // off the boxes' lower edge
    double side = codeSide();
    double left = SIDE + width - side;
    double module = side / (symbol.side() + 2 * QrSymbol.QUIET);
    double margin = QrSymbol.QUIET * module;
    sheet.modules(left + margin, y + margin, module, symbol);
    sheet.textCentred(
        left + side / 2, y + side + 2.1, "this schedule, to scan", Weight.REGULAR, 7.5);
    return y + side + CODE_CAPTION;
  }

  // ---------------------------------------------------------------- head

  private double title(double y) {
    Card.Header header = card.header();
    double badge = 25;
    double slot = 19;
    double who = 42;
    double room = width - badge - slot - 5;
    double narrow = room - who - 4;
    if (sheet.widthOf(header.job(), Weight.BOLD, 13) <= room) {
      double size = sheet.sizeFor(header.job(), Weight.BOLD, room, 13, 22);
      sheet.text(SIDE, y + 6.2, header.job(), Weight.BOLD, size);
    } else {
      List<String> job = sheet.wrap(header.job(), Weight.BOLD, 10.5, room, 2);
      for (int i = 0; i < job.size(); i++) {
        sheet.text(SIDE, y + 3 + i * 4, job.get(i), Weight.BOLD, 10.5);
      }
    }
    StringBuilder where = new StringBuilder("Kiln " + header.kiln());
    header.keypad().ifPresent(k -> where.append("  ·  keypad ").append(k));
    double whereSize = sheet.sizeFor(where.toString(), Weight.BOLD, narrow, 9, 11.5);
    sheet.text(
        SIDE,
        y + 11.6,
        sheet.fit(where.toString(), Weight.BOLD, whereSize, narrow),
        Weight.BOLD,
        whereSize);
    String date = card.timing().start().map(WhenWords::longDay).orElse("Date") + "   ";
    double end = SIDE + sheet.widthOf(date, Weight.REGULAR, 9);
    sheet.text(SIDE, y + 16.2, date, Weight.REGULAR, 9);
    if (card.timing().start().isEmpty()) {
      sheet.line(end - 1, y + 16.6, end + 38, y + 16.6, FINE);
      end += 41;
    }
    String zone =
        card.timing().start().isPresent()
            ? "clock of " + header.zone().getId()
            : "+h:mm counts from program start";
    sheet.text(
        end, y + 16.2, sheet.fit(zone, Weight.REGULAR, 9, SIDE + narrow - end), Weight.REGULAR, 9);
    line("Responsible", header.responsible(), SIDE + narrow + 4, y + 11.6, who);
    line("Phone", header.phone(), SIDE + narrow + 4, y + 16.2, who);
    double left = SIDE + width - badge;
    sheet.fill(left, y, badge, 13, 0);
    sheet.text(
        left + (badge - sheet.widthOf(unit.symbol(), Weight.BOLD, 30)) / 2,
        y + 6.5 + Sheet.capitals(30) / 2,
        unit.symbol(),
        Weight.BOLD,
        30,
        1);
    sheet.textCentred(left + badge / 2, y + 16.2, "unit in force", Weight.BOLD, 8.5);
    double slotLeft = left - slot - 1.5;
    sheet.box(slotLeft, y + 0.3, slot, 12.4, 1.6);
    if (header.slot().isPresent()) {
      String number = Integer.toString(header.slot().getAsInt());
      double points = sheet.sizeFor(number, Weight.BOLD, slot - 2, 10, 28);
      double baseline = y + 6.5 + Sheet.capitals(points) / 2;
      sheet.textCentred(slotLeft + slot / 2, baseline, number, Weight.BOLD, points);
    }
    sheet.textCentred(slotLeft + slot / 2, y + 16.2, "slot", Weight.BOLD, 8.5);
    return y + 17.5 + density.gap() / 2;
  }

  /** A label and its value, or a line to write on. */
  private void line(String label, Optional<String> value, double x, double baseline, double room) {
    sheet.text(x, baseline, label, Weight.REGULAR, 8.5);
    double at = x + sheet.widthOf(label, Weight.REGULAR, 8.5) + 1.5;
    if (value.isPresent()) {
      String shown = sheet.fit(value.get(), Weight.BOLD, 9, x + room - at);
      sheet.text(at, baseline, shown, Weight.BOLD, 9);
    } else {
      sheet.line(at, baseline + 0.4, x + room, baseline + 0.4, FINE);
    }
  }

  /** A black bar for each finding that says stop. */
  private double stops(double y) {
    double at = y;
    List<Finding> stops =
        card.findings().stream().filter(f -> f.severity() == Severity.STOP).toList();
    int shown = Math.min(stops.size(), density.stops());
    for (int i = 0; i < shown; i++) {
      boolean more = i == shown - 1 && stops.size() > shown;
      String rest = more ? " (and " + (stops.size() - shown) + " more that say stop)" : "";
      List<String> lines =
          sheet.wrap(
              "STOP, do not fire: " + stops.get(i).message() + rest,
              Weight.BOLD,
              9.5,
              width - 4,
              2);
      double height = lines.size() * density.lineOf(9.5) + 1.6;
      sheet.fill(SIDE, at, width, height, 0);
      for (int line = 0; line < lines.size(); line++) {
        sheet.text(
            SIDE + 2, at + 3.8 + line * density.lineOf(9.5), lines.get(line), Weight.BOLD, 9.5, 1);
      }
      at += height + 1;
    }
    return at;
  }

  /** Start, ready from, ready until, end: the four times that matter, large. */
  private double answers(double y) {
    Card.Timing timing = card.timing();
    double cell = width / 4;
    double height = density.answer();
    Optional<Card.Ready> ready = timing.ready();
    String what = ready.map(Card.Ready::what).orElse("Ready");
    String unsure = "not known for this program";
    sheet.fill(SIDE + cell, y, 3 * cell, height, PREDICTED_GREY);
    Ending ending = timing.ending();
    answer(
        0,
        y,
        "Program starts",
        timing.start().map(s -> 0.0),
        "",
        timing.delayed()
            ? "after the delay below"
            : timing.start().isPresent() ? "press start then, no delay" : "no delay set");
    answer(
        1,
        y,
        what + " from",
        ready.map(r -> r.fromSeconds().median()),
        "",
        ready.map(r -> nineInTen(r.fromSeconds())).orElse(unsure));
    Optional<Double> until = ready.flatMap(Card.Ready::untilSeconds).map(when::minuteBefore);
    Optional<Card.Keeping> kept = timing.keeping();
    answer(
        2,
        y,
        what + " until",
        until,
        kept.map(Card.Keeping::how).orElse(""),
        kept.map(Card.Keeping::until)
            .orElseGet(() -> ready.map(r -> "then the kiln cools").orElse(unsure)));
    answer(
        3,
        y,
        timing.atEnd() == AtEnd.OFF
            ? "Program ends, elements off"
            : "Last hold ends, heat stays on",
        Optional.of(ending.seconds().median()).filter(end -> ending.isTold()),
        ending.briefly(),
        ending.isTold() ? nineInTen(ending.seconds()) : ending.cases());
    sheet.box(SIDE, y, width, height, FINE);
    for (int i = 1; i < 4; i++) {
      sheet.line(SIDE + i * cell, y, SIDE + i * cell, y + height, FINE);
    }
    sheet.box(SIDE + cell, y, 2 * cell, height, 1.6);
    return y + height + density.gap() / 2;
  }

  /** A time if there is one, else words if there are some, else a line to write on. */
  private void answer(
      int column, double y, String label, Optional<Double> seconds, String words, String below) {
    double cell = width / 4;
    double x = SIDE + column * cell;
    double inner = cell - 4;
    double base = y + density.answer() - 4.8;
    sheet.text(x + 2, y + 3.1, sheet.fit(label, Weight.REGULAR, 8, inner), Weight.REGULAR, 8);
    String day = seconds.map(when::day).orElse("");
    String about = column == 0 ? "" : PREDICTED;
    String main = seconds.map(s -> about + when.clock(s)).orElse(words);
    if (day.isEmpty()) {
      sheet.text(x + 2, base, main, Weight.BOLD, 15);
      if (words.isEmpty()) {
        double blank = x + 3 + sheet.widthOf(main, Weight.BOLD, 15);
        sheet.line(blank, base + 0.2, x + cell - 3, base + 0.2, FINE);
      }
    } else {
      double dayWidth = sheet.widthOf(day, Weight.BOLD, 11);
      double size = sheet.sizeFor(main, Weight.BOLD, inner - dayWidth - 2, 12, density.clock());
      sheet.text(x + 2, base, day, Weight.BOLD, 11);
      sheet.text(x + 4 + dayWidth, base, main, Weight.BOLD, size);
    }
    String foot = sheet.fit(below, Weight.REGULAR, 8, inner);
    sheet.text(x + 2, y + density.answer() - 1.3, foot, Weight.REGULAR, 8);
  }

  private String nineInTen(Band seconds) {
    return when.band(seconds) + ", nine in ten";
  }

  /** Proven, sensor checked, go or not: signed before start is pressed. */
  private double proof(double y) {
    double height = density.box();
    double proven = width * 0.34;
    double sensor = width * 0.22;
    double go = width - proven - sensor;
    sheet.box(SIDE, y, proven, height, FIRM);
    sheet.text(SIDE + 1.5, y + 3, "read back and proven by, date, time", Weight.REGULAR, 7.5);
    sheet.box(SIDE + proven, y, sensor, height, FIRM);
    sheet.text(SIDE + proven + 1.5, y + 3, "thermocouple checked on", Weight.REGULAR, 7.5);
    double x = SIDE + proven + sensor;
    sheet.box(x, y, go, height, 1.6);
    sheet.box(x + 2.5, y + height / 2 - 1.8, 3.6, 3.6, FIRM);
    sheet.text(x + 7.3, y + height / 2 + Sheet.capitals(11) / 2, "GO", Weight.BOLD, 11);
    sheet.box(x + 17, y + height / 2 - 1.8, 3.6, 3.6, FIRM);
    sheet.text(x + 21.8, y + height / 2 + Sheet.capitals(11) / 2, "NO-GO", Weight.BOLD, 11);
    sheet.text(x + 40, y + 3, "signed, date, time", Weight.REGULAR, 7.5);
    return y + height + density.gap();
  }

  private double heading(String name, String says, double y) {
    double height = density.heading();
    double tab = sheet.widthOf(name, Weight.BOLD, 10) + 5;
    sheet.fill(SIDE, y, tab, height, 0);
    double baseline = y + height / 2 + Sheet.capitals(10) / 2;
    sheet.text(SIDE + 2.5, baseline, name, Weight.BOLD, 10, 1);
    sheet.text(SIDE + tab + 2, baseline, says, Weight.REGULAR, 8.5);
    sheet.line(SIDE, y + height, SIDE + width, y + height, 1.2);
    return y + height + Math.max(0.9, density.gap() / 2);
  }

  // ---------------------------------------------------------------- before

  /**
   * The table of digits. Up to ten segments have two lines each; more have one line, with purpose
   * and meaning in one column, or the meaning alone where both do not fit.
   */
  private double entries(double y) {
    int count = card.entries().size();
    boolean single = count > MOST_DOUBLE_ROWS;
    double spare = width - 190;
    double[] columns =
        single
            ? new double[] {6, 0, 19.3, 19.3, 19.3, 66.1 + spare, 48, 12}
            : new double[] {7, 31 + spare / 2, 21, 21, 21, 43 + spare / 2, 31, 15};
    double[] x = new double[columns.length + 1];
    x[0] = SIDE;
    for (int i = 0; i < columns.length; i++) {
      x[i + 1] = x[i] + columns[i];
    }
    String[] heads = {
      "",
      single ? "" : "purpose",
      card.digitHeads().get(0),
      card.digitHeads().get(1),
      card.digitHeads().get(2),
      single ? "purpose: which means" : "which means",
      "hold starts, predicted",
      "read at"
    };
    for (int i = 0; i < heads.length; i++) {
      boolean keyed = i >= 2 && i <= 4;
      Weight weight = keyed ? Weight.BOLD : Weight.REGULAR;
      String head = sheet.fit(heads[i], weight, 7.5, columns[i]);
      double left = keyed ? (x[i] + x[i + 1] - sheet.widthOf(head, weight, 7.5)) / 2 : x[i] + 1;
      sheet.text(left, y + 3.2, head, weight, 7.5);
    }
    double row = single ? density.singleRow() : density.entryRow();
    double start = y + 4.1;
    sheet.line(SIDE, start, SIDE + width, start, FINE);
    double top = extras(true, start, x, row, single);
    double height = count * row;
    sheet.fill(x[6], top, columns[6], height, PREDICTED_GREY);
    for (int i = 0; i < count; i++) {
      Card.Entry entry = card.entries().get(i);
      double middle = top + (i + 0.5) * row;
      sheet.textCentred(
          (x[0] + x[1]) / 2,
          middle + Sheet.capitals(11) / 2,
          Integer.toString(entry.segment()),
          Weight.BOLD,
          11);
      for (int digit = 0; digit < entry.digits().size(); digit++) {
        digits(entry.digits().get(digit), x[2 + digit], middle, columns[2 + digit], single);
      }
      if (single) {
        String both = entry.purpose() + ": " + entry.meaning();
        boolean fits = sheet.widthOf(both, Weight.REGULAR, density.small()) <= columns[5] - 2;
        stacked(fits ? both : entry.meaning(), x[5] + 1, middle, columns[5] - 2, 1);
      } else {
        stacked(entry.purpose(), x[1] + 1, middle, columns[1] - 2, 2);
        stacked(entry.meaning(), x[5] + 1, middle, columns[5] - 2, 2);
      }
      reached(entry.reachedSeconds(), x[6] + 1, middle, columns[6] - 2, single);
      sheet.line(SIDE, top + (i + 1) * row, SIDE + width, top + (i + 1) * row, FINE);
      sheet.box(x[7], top + i * row, columns[7], row, FIRM);
    }
    sheet.line(x[3], top, x[3], top + height, FINE);
    sheet.line(x[4], top, x[4], top + height, FINE);
    sheet.box(x[2], top, x[5] - x[2], height, 1.6);
    return extras(false, top + height, x, row, single) + density.gap();
  }

  /** Rows for what is keyed beside the segments: its digits in one box across the three columns. */
  private double extras(boolean before, double y, double[] x, double row, boolean single) {
    double bottom = y;
    for (Card.Extra extra : card.extras()) {
      if (extra.beforeSegments() != before) {
        continue;
      }
      double middle = bottom + row / 2;
      String what = single ? "+" : sheet.fit(extra.what(), Weight.BOLD, 8, x[2] - SIDE - 3);
      sheet.textRight(x[2] - 1.5, middle + Sheet.capitals(8) / 2, what, Weight.BOLD, 8);
      digits(extra.digits(), x[2], middle, x[5] - x[2], single);
      String words = (single ? extra.what() + ": " : "") + extra.meaning();
      stacked(words, x[5] + 1, middle, SIDE + width - x[5] - 2, 1);
      sheet.box(x[2], bottom, x[5] - x[2], row, 1.6);
      sheet.line(SIDE, bottom + row, SIDE + width, bottom + row, FINE);
      bottom += row;
    }
    return bottom;
  }

  private void digits(String digits, double x, double middle, double column, boolean single) {
    double most = single ? LEAST_DIGITS : density.digits();
    double size = sheet.sizeFor(digits, Weight.BOLD, column - 1.6, 7.5, most);
    String shown = sheet.fit(digits, Weight.BOLD, size, column - 1);
    sheet.textCentred(x + column / 2, middle + Sheet.capitals(size) / 2, shown, Weight.BOLD, size);
  }

  /** A few lines, centred on a height. */
  private void stacked(String text, double x, double middle, double room, int mostLines) {
    centred(sheet.wrap(text, Weight.REGULAR, density.small(), room, mostLines), x, middle);
  }

  private void reached(
      Optional<Band> seconds, double x, double middle, double room, boolean single) {
    double points = density.small();
    String at = seconds.map(s -> when.full(s.median())).orElse("may be never");
    double first = middle + Sheet.capitals(points) / 2 - (single ? 0 : density.cellLine() / 2);
    sheet.text(x, first, sheet.fit(at, Weight.BOLD, points, room), Weight.BOLD, points);
    double left = single ? x + sheet.widthOf(at, Weight.BOLD, points) + 1.5 : x;
    double band = single ? first : first + density.cellLine();
    String words =
        sheet.fit(seconds.map(when::band).orElse(""), Weight.REGULAR, 7.5, x + room - left);
    sheet.text(left, band, words, Weight.REGULAR, 7.5);
  }

  private void centred(List<String> lines, double x, double middle) {
    double line = density.cellLine();
    double first = middle - (lines.size() - 1) * line / 2 + Sheet.capitals(density.small()) / 2;
    for (int i = 0; i < lines.size(); i++) {
      sheet.text(x, first + i * line, lines.get(i), Weight.REGULAR, density.small());
    }
  }

  private double beforeColumns(double y) {
    double gutter = 4;
    double column = (width - 2 * gutter) / 3;
    double a = checkColumn(SIDE, y, column);
    double b = kilnColumn(SIDE + column + gutter, y, column);
    double c = loadingColumn(SIDE + 2 * (column + gutter), y, column);
    return Math.max(a, Math.max(b, c)) + density.gap();
  }

  private double checkColumn(double x, double y, double room) {
    double at = smallHead("Check figures: count and add up", x, y);
    double size = density.body() + 0.5;
    for (Card.Fact fact : card.checkFigures()) {
      at += density.lineOf(size) + 0.5;
      String value = fact.value();
      double valueWidth = sheet.widthOf(value, Weight.BOLD, size);
      String label = sheet.fit(fact.label(), Weight.REGULAR, density.body(), room * 0.55);
      sheet.text(x, at, label, Weight.REGULAR, density.body());
      double left = room - sheet.widthOf(label, Weight.REGULAR, density.body()) - 2;
      if (valueWidth > left) {
        value = sheet.fit(value, Weight.BOLD, density.small(), left);
        sheet.textRight(x + room, at, value, Weight.BOLD, density.small());
      } else {
        sheet.textRight(x + room, at, value, Weight.BOLD, size);
      }
      sheet.line(x, at + 1, x + room, at + 1, 0.25);
    }
    return at;
  }

  private double kilnColumn(double x, double y, double room) {
    double at = smallHead("In the kiln", x, y);
    List<Card.Fact> facts = new ArrayList<>(card.work());
    facts.addAll(card.limits());
    facts.addAll(card.power());
    if (withAside && facts.size() < MOST_FACTS) {
      displaysWorth().ifPresent(facts::add);
    }
    int shown = facts.size() > MOST_FACTS ? MOST_FACTS - 1 : facts.size();
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
              density.small(),
              Weight.REGULAR,
              1);
    }
    return at;
  }

  /** What the display is worth: the first clause of its finding. */
  private Optional<Card.Fact> displaysWorth() {
    return card.findings().stream()
        .filter(f -> f.code().equals(DISPLAYS_WORTH))
        .map(f -> f.message().replaceFirst("; .*", ""))
        .map(words -> words.substring(0, 1).toLowerCase(Locale.ROOT) + words.substring(1))
        .map(words -> new Card.Fact("display", words))
        .findFirst();
  }

  private double fact(Card.Fact fact, double x, double y, double room) {
    double label = sheet.widthOf(fact.label() + "  ", Weight.BOLD, density.small());
    List<String> lines =
        sheet.wrap(
            fact.value(), Weight.REGULAR, density.small(), room - label, density.factLines());
    sheet.text(x, y + density.smallLine(), fact.label(), Weight.BOLD, density.small());
    double at = y;
    for (String line : lines) {
      at += density.smallLine();
      sheet.text(x + label, at, line, Weight.REGULAR, density.small());
    }
    return at + 0.4;
  }

  private double loadingColumn(double x, double y, double room) {
    double at = smallHead("Before you press start", x, y);
    for (String item : firstOf(card.loading(), MOST_LOADING)) {
      List<String> lines =
          sheet.wrap(item, Weight.REGULAR, density.small(), room - 4.5, density.itemLines());
      sheet.box(x, at + density.smallLine() - 2.4, 2.6, 2.6, FIRM);
      for (String line : lines) {
        at += density.smallLine();
        sheet.text(x + 4.5, at, line, Weight.REGULAR, density.small());
      }
      at += 0.5;
    }
    return at;
  }

  private double smallHead(String text, double x, double y) {
    sheet.text(x, y + 2.9, text, Weight.BOLD, 8.5);
    return y + 3.2;
  }

  // ---------------------------------------------------------------- during

  private double displayAndChart(double y) {
    double growth = Math.min(slack, MOST_CHART_GROWTH);
    double head = 4.1;
    double height = head + density.displayRows() * density.displayRow() + growth;
    double table = 89;
    displayTable(y, table, height, head);
    ChartDrawing.draw(
        sheet, card.chart(), display, SIDE + table + 3, y - 0.5, width - table - 3, height + 0.5);
    return y + height + density.gap() * 0.8;
  }

  private void displayTable(double y, double table, double height, double head) {
    double[] x = {SIDE, SIDE + 5, SIDE + 37.5, SIDE + 54.5, SIDE + 75.5, SIDE + table};
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
          x[0] + 2.4, middle + Sheet.capitals(8) / 2, Integer.toString(i + 1), Weight.BOLD, 8);
      String day = when.day(at.seconds());
      String clock = when.clock(at.seconds());
      double clockSize = clock.length() > 6 ? 9 : 12;
      if (day.isEmpty()) {
        sheet.line(x[1] + 1, middle + 1.5, x[1] + 14, middle + 1.5, FINE);
      } else {
        double left = x[2] - x[1] - 4 - sheet.widthOf(clock, Weight.BOLD, clockSize);
        double daySize = sheet.sizeFor(day, Weight.REGULAR, left, 7, 9);
        sheet.text(x[1] + 1, middle + Sheet.capitals(9) / 2, day, Weight.REGULAR, daySize);
      }
      sheet.textRight(
          x[2] - 1.5, middle + Sheet.capitals(clockSize) / 2, clock, Weight.BOLD, clockSize);
      Band band = at.displayCelsius();
      sheet.textRight(
          x[3] - 2, middle + Sheet.capitals(13.5) / 2, degrees(band.median()), Weight.BOLD, 13.5);
      sheet.text(x[2] + 0.6, middle + Sheet.capitals(9) / 2, PREDICTED, Weight.REGULAR, 9);
      String range = range(band);
      double size = sheet.sizeFor(range, Weight.REGULAR, x[4] - x[3] - 1, 7.5, 9);
      sheet.text(x[3], middle + Sheet.capitals(9) / 2, range, Weight.REGULAR, size);
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

  /** "397 to 405", opened outward to whole degrees. */
  private String range(Band celsius) {
    long low = (long) Math.floor(unit.value(new Temperature(celsius.low())));
    long high = (long) Math.ceil(unit.value(new Temperature(celsius.high())));
    return low + " to " + high;
  }

  private double alarms(double y) {
    double at = y;
    double size = density.body();
    for (Card.Alarm alarm : card.alarms()) {
      at += density.lineOf(size) + 0.3;
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
    return at + density.gap() * 0.6;
  }

  private double estimatesAndMoments(double y) {
    double gutter = 4;
    double left = card.estimates().isEmpty() ? 0 : (width - gutter) * 0.42;
    double a = y;
    if (left > 0) {
      a = smallHead("Inside the work, predicted", SIDE, y);
      for (String estimate : firstOf(card.estimates(), density.estimates())) {
        a = paragraph(estimate, SIDE, a, left, density.small(), Weight.REGULAR, 2);
      }
    }
    double b = y;
    if (!card.moments().isEmpty()) {
      double x = SIDE + (left > 0 ? left + gutter : 0);
      double room = SIDE + width - x;
      b = smallHead("What you do, and until when you can still change your mind", x, y);
      List<Card.Act> acts = mostUrgent(card.moments(), density.moments());
      double clock = acts.stream().mapToDouble(this::clockWidth).max().orElse(0);
      for (Card.Act act : acts) {
        b = act(act, x, b, clock, room);
      }
      String leftOut =
          card.moments().stream()
              .filter(act -> !acts.contains(act))
              .map(act -> act.what() + " " + act.at(when))
              .collect(Collectors.joining("; "));
      if (!leftOut.isEmpty()) {
        b = paragraph("Also: " + leftOut + ".", x, b, room, density.small(), Weight.REGULAR, 4);
      }
    }
    return Math.max(a, b) + density.gap();
  }

  private double clockWidth(Card.Act act) {
    return sheet.widthOf(act.at(when), Weight.BOLD, density.body());
  }

  private double act(Card.Act act, double x, double y, double clock, double room) {
    double at = y + density.lineOf(density.body());
    sheet.text(x, at, act.at(when), Weight.BOLD, density.body());
    List<String> lines =
        sheet.wrap(
            (act.actNow() ? "ACT: " : "") + act.what(),
            Weight.REGULAR,
            density.small(),
            room - clock - 2,
            density.itemLines());
    for (int i = 0; i < lines.size(); i++) {
      sheet.text(
          x + clock + 2,
          at + i * density.smallLine(),
          lines.get(i),
          Weight.REGULAR,
          density.small());
    }
    return at + (lines.size() - 1) * density.smallLine() + 0.4;
  }

  // ---------------------------------------------------------------- pour, or the piece

  /** What is told of the pour, or of the piece: no work has both. */
  private static List<Card.Fact> facts(Card card) {
    return card.pour().isEmpty() ? card.piece() : card.pour();
  }

  /** Facts in two columns, read down the left one first. */
  private double pour(double y) {
    if (!withPour) {
      return y;
    }
    if (pieceChart.isPresent()) {
      return pieceAndItsCurve(pieceChart.get(), y);
    }
    double top =
        card.pour().isEmpty()
            ? heading("What happens in the piece", "by its own curve, nine times in ten", y)
            : heading("Pour", "melt first, then draw the moulds; metal on water explodes", y);
    double gutter = 4;
    double room = (width - gutter) / 2;
    List<Card.Fact> facts = facts(card);
    int left = (facts.size() + 1) / 2;
    double a = top;
    for (Card.Fact fact : facts.subList(0, left)) {
      a = fact(fact, SIDE, a, room);
    }
    double b = top;
    for (Card.Fact fact : facts.subList(left, facts.size())) {
      b = fact(fact, SIDE + room + gutter, b, room);
    }
    return Math.max(a, b) + density.gap();
  }

  private double pieceAndItsCurve(PieceChart chart, double y) {
    double top =
        heading(
            "What happens in the piece", "counted from the door's shutting, nine times in ten", y);
    double room = (width - 3) * PIECE_FACTS_SHARE;
    double facts = top;
    for (Card.Fact fact : card.piece()) {
      facts = fact(fact, SIDE, facts, room);
    }
    double height = Math.max(facts - top + 1, density.pieceChart());
    PieceDrawing.draw(sheet, chart, SIDE + room + 3, top - 0.5, width - room - 3, height);
    return top + height + density.gap();
  }

  // ---------------------------------------------------------------- after

  private double measured(double y) {
    String symbol = unit.symbol();
    String[] labels = {
      "peak read, " + symbol + ", date and time",
      "furthest from the band, " + symbol + ", when",
      "energy by the meter, kWh",
      "keyed other than planned?"
    };
    double cell = width / labels.length;
    double height = density.box();
    for (int i = 0; i < labels.length; i++) {
      sheet.box(SIDE + i * cell, y, cell, height, FIRM);
      sheet.text(SIDE + i * cell + 1.5, y + 3, labels[i], Weight.REGULAR, 7.5);
    }
    return y + height;
  }

  private double outcome(double y, double room) {
    double at = y + 1.2 + density.line();
    double x = SIDE;
    sheet.text(x, at, "Outcome", Weight.BOLD, density.body());
    x += sheet.widthOf("Outcome", Weight.BOLD, density.body()) + 3;
    for (Found box : card.found()) {
      double wide = 3.6 + sheet.widthOf(box.words(), Weight.REGULAR, density.small()) + 1.5;
      if (x + wide > SIDE + room + 2) {
        x = SIDE;
        at += density.line() + 1;
      }
      sheet.box(x, at - 2.5, 2.8, 2.8, FIRM);
      sheet.text(x + 3.6, at, box.words(), Weight.REGULAR, density.small());
      x += wide;
    }
    at += density.line() + density.between(3, 1.8);
    String keep = "Keep, or change one thing:";
    String service = "Next service:";
    sheet.text(SIDE, at, keep, Weight.BOLD, density.body());
    String due = card.nextService().orElse("");
    double dueWidth = Math.max(28, sheet.widthOf(due, Weight.REGULAR, density.body()));
    double serviceWidth = sheet.widthOf(service, Weight.BOLD, density.body());
    double serviceAt = SIDE + room - dueWidth - serviceWidth - 2;
    sheet.line(
        SIDE + sheet.widthOf(keep, Weight.BOLD, density.body()) + 2,
        at + 0.6,
        serviceAt - 3,
        at + 0.6,
        FINE);
    sheet.text(serviceAt, at, service, Weight.BOLD, density.body());
    double dueAt = serviceAt + serviceWidth + 2;
    if (due.isEmpty()) {
      sheet.line(dueAt, at + 0.6, SIDE + room, at + 0.6, FINE);
    } else {
      sheet.text(dueAt, at, due, Weight.REGULAR, density.body());
    }
    double notes = Math.min(MOST_NOTES, Math.max(0, slack - MOST_CHART_GROWTH));
    for (int i = 1; i * NOTE_LINE <= notes; i++) {
      sheet.line(SIDE, at + 0.6 + i * NOTE_LINE, SIDE + room, at + 0.6 + i * NOTE_LINE, FINE);
    }
    return at + notes + 1 + density.gap() * 0.6;
  }

  private double foot(double y, double room) {
    sheet.line(SIDE, y, SIDE + room, y, 1.2);
    double at = y + 0.6;
    List<String> cautions = new ArrayList<>(card.timing().notes());
    card.findings().stream()
        .filter(f -> f.severity() == Severity.WARN)
        .map(Finding::message)
        .forEach(cautions::add);
    cautions.addAll(card.cautions());
    if (!withPour && !facts(card).isEmpty()) {
      cautions.add(
          0,
          card.pour().isEmpty()
              ? "What happens in the piece has no room here: heatwright forecast and the bench tell it."
              : "The pour has no room here: heatwright cast pour and the bench tell it.");
    }
    if (code.isEmpty()) {
      cautions.add(0, NO_CODE);
    }
    if (!cautions.isEmpty()) {
      at = cautions(cautions, at, room);
    }
    if (wrapped(card.scheduleText(), room).size() <= density.textLines()) { // half would mislead
      at =
          paragraph(
              card.scheduleText(),
              SIDE,
              at,
              room,
              density.small(),
              Weight.REGULAR,
              density.textLines());
    }
    return at;
  }

  /** As many whole cautions as there are lines for; what does not fit is counted. */
  private double cautions(List<String> cautions, double y, double room) {
    int most = density.cautionLines() + (code.isPresent() ? 1 : 0); // lines are shorter beside it
    for (int shown = cautions.size(); ; shown--) {
      String text = "Caution: " + String.join("  ·  ", cautions.subList(0, shown));
      int left = cautions.size() - shown;
      if (left > 0) {
        text += "  ·  " + left + " more with the schedule, not printed here.";
      }
      if (wrapped(text, room).size() <= most || shown <= 1) {
        return paragraph(text, SIDE, y, room, density.small(), Weight.REGULAR, most);
      }
    }
  }

  private List<String> wrapped(String text, double room) {
    return sheet.wrap(text, Weight.REGULAR, density.small(), room, Integer.MAX_VALUE);
  }

  // ---------------------------------------------------------------- text

  private double paragraph(
      String text, double x, double y, double room, double size, Weight weight, int mostLines) {
    double at = y;
    for (String line : sheet.wrap(text, weight, size, room, mostLines)) {
      at += density.lineOf(size);
      sheet.text(x, at, line, weight, size);
    }
    return at + 0.6;
  }

  private static <T> List<T> firstOf(List<T> all, int most) {
    return all.subList(0, Math.min(most, all.size()));
  }

  /** At most so many, in order of time; what must be done goes before what may be changed. */
  private static List<Card.Act> mostUrgent(List<Card.Act> acts, int most) {
    long actNow = acts.stream().filter(Card.Act::actNow).count();
    long others = Math.max(0, most - actNow);
    List<Card.Act> kept = new ArrayList<>();
    for (Card.Act act : acts) {
      if (act.actNow() ? kept.size() < most : others-- > 0) {
        kept.add(act);
      }
    }
    return kept;
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
