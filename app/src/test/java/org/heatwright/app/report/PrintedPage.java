package org.heatwright.app.report;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;

/** What lies on a printed page, read back from the PDF. */
final class PrintedPage {

  private PrintedPage() {}

  /** A run of text as it lies on the page: points from the top left, the baseline at y. */
  record Run(String text, double x, double y, double right, double points, boolean bold) {

    double top() {
      return y - points * Sheet.CAPITAL_HEIGHT;
    }

    boolean meets(Run other) {
      double wide = Math.min(right, other.right) - Math.max(x, other.x);
      double high = Math.min(y, other.y) - Math.max(top(), other.top());
      return wide > 0.5 && high > 0.5;
    }

    /** The numbers on the curve lie on top of it and of its words by intent. */
    boolean isMark() {
      return bold && points < 7.6 && text.length() == 1;
    }
  }

  static List<Run> runs(PDDocument document) throws IOException {
    List<Run> runs = new ArrayList<>();
    PDFTextStripper stripper =
        new PDFTextStripper() {
          private final List<TextPosition> shown = new ArrayList<>();

          @Override
          protected void showText(byte[] string) throws IOException {
            shown.clear();
            super.showText(string);
            if (shown.isEmpty()) {
              return;
            }
            TextPosition first = shown.get(0);
            TextPosition last = shown.get(shown.size() - 1);
            StringBuilder text = new StringBuilder();
            shown.forEach(position -> text.append(position.getUnicode()));
            runs.add(
                new Run(
                    text.toString().strip(),
                    first.getXDirAdj(),
                    first.getYDirAdj(),
                    last.getXDirAdj() + last.getWidthDirAdj(),
                    first.getFontSize(),
                    first.getFont().getName().endsWith("-Bold")));
          }

          @Override
          protected void processTextPosition(TextPosition position) {
            shown.add(position);
          }
        };
    stripper.getText(document);
    return runs;
  }

  /** All text in the order it is drawn, one blank between the runs. */
  static String text(byte[] pdf) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      return runs(document).stream().map(Run::text).collect(Collectors.joining(" "));
    }
  }

  /** All bold text of 14 points and more. */
  static List<String> large(byte[] pdf) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      return runs(document).stream()
          .filter(r -> r.bold() && r.points() >= 13.99)
          .map(Run::text)
          .toList();
    }
  }
}
