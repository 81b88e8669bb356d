package org.heatwright.app.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.ReaderException;
import com.google.zxing.ResultPoint;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.heatwright.app.files.ScheduleCode;
import org.heatwright.app.qr.QrFinder;
import org.heatwright.app.qr.QrSymbol;
import org.heatwright.schedule.Schedule;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

class CardPdfTest {

  static Stream<Arguments> cards() {
    List<Arguments> cards = new ArrayList<>();
    for (PageSize size : PageSize.values()) {
      cards.add(Arguments.of("burnout", size, TestFirings.burnoutCard()));
      for (int segments : new int[] {1, 4, 8, 10, 11, 16}) {
        for (TemperatureUnit unit : TemperatureUnit.values()) {
          Card card = TestFirings.bareCard(TestFirings.stairs(segments, unit));
          cards.add(Arguments.of("bare " + segments + " " + unit, size, card));
        }
        cards.add(Arguments.of("crowded " + segments, size, TestFirings.crowdedCard(segments)));
      }
    }
    return cards.stream();
  }

  @ParameterizedTest(name = "{0} on {1}")
  @MethodSource("cards")
  void everyCardIsOneLegiblePageAndNothingSpillsOrCollides(String name, PageSize size, Card card)
      throws IOException {
    byte[] pdf = CardPdf.render(card, size);
    try (PDDocument document = Loader.loadPDF(pdf)) {
      assertThat(document.getNumberOfPages()).isEqualTo(1);
      PDPage page = document.getPage(0);
      double width = page.getMediaBox().getWidth();
      double height = page.getMediaBox().getHeight();
      assertThat(width).isCloseTo(size.widthMillimetres() / 25.4 * 72, within(0.01));
      assertThat(height).isCloseTo(size.heightMillimetres() / 25.4 * 72, within(0.01));
      List<PrintedPage.Run> runs = PrintedPage.runs(document);
      double margin = 5 / 25.4 * 72; // common practice, no source: lasers print to some 4.3 mm
      for (PrintedPage.Run run : runs) {
        assertThat(run.points()).as(run.text()).isGreaterThanOrEqualTo(7.5);
        assertThat(run.x()).as(run.text()).isGreaterThan(margin);
        assertThat(run.right()).as(run.text()).isLessThan(width - margin);
        assertThat(run.top()).as(run.text()).isGreaterThan(margin);
        assertThat(run.y()).as(run.text()).isLessThan(height - margin);
      }
      List<PrintedPage.Run> words = runs.stream().filter(r -> !r.isMark()).toList();
      for (int i = 0; i < words.size(); i++) {
        for (int j = i + 1; j < words.size(); j++) {
          assertThat(words.get(i).meets(words.get(j)))
              .as("%s over %s", words.get(i), words.get(j))
              .isFalse();
        }
      }
      for (Card.Entry entry : card.entries()) {
        assertThat(PrintedPage.large(pdf)).containsAll(entry.digits());
      }
    }
  }

  @ParameterizedTest
  @EnumSource(PageSize.class)
  void everyPromisedElementIsThere(PageSize size) throws IOException {
    Card card = TestFirings.burnoutCard();
    String text = PrintedPage.text(CardPdf.render(card, size));
    assertThat(text)
        .contains("harbour-burnout", "Kiln Capstan", "Wednesday 2 December 2026")
        .contains("Europe/Lisbon", "unit in force", "slot", "Responsible caster", "Phone")
        .contains("Before", "rate, °C/h", "target, °C", "hold, h:mm")
        .contains("dry", "wax out", "carbon out", "settle at pour")
        .contains("120 °C/h up to 150 °C", "elements off, down to 500 °C")
        .contains("start delay", "3:30", "start pressed Wed 2 Dec 17:00")
        .contains("segments 4", "sum of targets 1740 °C", "570 min = 9 h 30 min")
        .contains("segment 5 must read empty")
        .contains("2.6 kW at 230 V, 11.3 A", "workshop ring, 16 A breaker: 4.7 A left")
        .contains("730 °C, the gypsum-bonded")
        .contains("thermocouple tip in sight", "extraction on", "lid shut")
        .contains("GO", "NO-GO", "read back and proven by", "thermocouple checked on")
        .contains("During", "display should say, °C", "read, °C")
        .contains("Two rows running outside their band", "After a power cut")
        .contains("Inside the work, predicted", "mould 1 centre")
        .contains("Work ready from", "Thu 3 Dec ≈11:36", "nine in ten", "kept hot")
        .contains("last moment to change the top temperature", "ACT: pour the first mould")
        .contains("After", "peak read, °C", "incomplete", "gas pores", "fins")
        .contains("Keep, or change one thing", "Next service")
        .contains("Caution: Burning wax", "Moulds look cold")
        .contains("Schedule harbour-burnout, °C: 1. 120 °C/h to 150 °C")
        .contains(Card.NEVER_STARTS_HEAT)
        .contains("night", "in the work", "never above 730 °C");
    WhenWords when = new WhenWords(card.timing().start());
    long rows =
        card.display().stream()
            .filter(
                row ->
                    text.contains(
                        when.full(row.seconds())
                            + " "
                            + Math.round(row.displayCelsius().median())
                            + " ≈ "
                            + (long) Math.floor(celsius(row.displayCelsius().low()))
                            + " to "
                            + (long) Math.ceil(celsius(row.displayCelsius().high()))))
            .count();
    assertThat(rows).isBetween(6L, 8L);
  }

  /** Without noise in the last digits. */
  private static double celsius(double value) {
    return TemperatureUnit.CELSIUS.value(Temperature.ofCelsius(value));
  }

  static Stream<Arguments> cardsInCelsius() {
    return cards()
        .filter(a -> ((Card) a.get()[2]).header().unit() == TemperatureUnit.CELSIUS)
        .filter(a -> !String.valueOf(a.get()[0]).matches("bare (4|10) .*"));
  }

  /**
   * Every card that a page holds can be handed on: read from the paper, it is the same schedule.
   */
  @ParameterizedTest(name = "{0} on {1}")
  @MethodSource("cardsInCelsius")
  void theCodeOnThePageHoldsTheScheduleItself(String name, PageSize size, Card card)
      throws IOException {
    byte[] pdf = CardPdf.render(card, size);
    String text = PrintedPage.text(pdf);
    if (text.contains("No code to scan here")) {
      assertThat(name).isEqualTo("crowded 16"); // all of everything, and sixteen segments
      assertThat(text).doesNotContain("this schedule, to scan");
      return;
    }
    String code = QrFinder.text(pdf, "card.pdf", ScheduleCode::isOurs);
    assertThat(code).isEqualTo(card.code().orElseThrow());
    Schedule read = ScheduleCode.read(code, "card.pdf");
    assertThat(read.name()).isEqualTo(card.header().job());
    assertThat(read.segments()).hasSameSizeAs(card.entries());
    assertThat(text).contains("this schedule, to scan");
  }

  /** No text and no line within four modules of the code: ISO/IEC 18004. */
  @ParameterizedTest
  @EnumSource(PageSize.class)
  void nothingTouchesTheCodesMargin(PageSize size) throws IOException {
    for (Card card : List.of(TestFirings.burnoutCard(), TestFirings.crowdedCard(11))) {
      BufferedImage page = page(CardPdf.render(card, size));
      QrSymbol symbol = QrSymbol.of(card.code().orElseThrow(), 177).orElseThrow();
      ResultPoint[] eyes = eyes(page);
      double dots =
          ResultPoint.distance(eyes[1], eyes[2]) / (symbol.side() - 7); // between eyes' middles
      assertThat(dots / DPI * 25.4).as("module, mm").isGreaterThanOrEqualTo(0.4);
      int left = (int) Math.round(eyes[1].getX() - 3.5 * dots);
      int top = (int) Math.round(eyes[1].getY() - 3.5 * dots);
      int side = (int) Math.round(symbol.side() * dots);
      int margin = (int) (QrSymbol.QUIET * dots) - 1;
      for (int x = left - margin; x < left + side + margin; x++) {
        for (int y = top - margin; y < top + side + margin; y++) {
          boolean inside = x > left - 3 && x < left + side + 3 && y > top - 3 && y < top + side + 3;
          assertThat(inside || (page.getRGB(x, y) & 0xff) > 250)
              .as("%d, %d beside a code at %d, %d", x, y, left, top)
              .isTrue();
        }
      }
    }
  }

  private static final int DPI = 300;

  private static BufferedImage page(byte[] pdf) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      return new PDFRenderer(document).renderImageWithDPI(0, DPI);
    }
  }

  private static ResultPoint[] eyes(BufferedImage page) {
    int[] pixels = page.getRGB(0, 0, page.getWidth(), page.getHeight(), null, 0, page.getWidth());
    try {
      return new QRCodeReader()
          .decode(
              new BinaryBitmap(
                  new HybridBinarizer(
                      new RGBLuminanceSource(page.getWidth(), page.getHeight(), pixels))),
              Map.of(DecodeHintType.TRY_HARDER, true))
          .getResultPoints();
    } catch (ReaderException e) {
      throw new AssertionError("no code on the page", e);
    }
  }

  @Test
  void aScheduleTooLongForACodeSaysSo() throws IOException {
    Schedule stairs = TestFirings.stairs(16, TemperatureUnit.CELSIUS);
    Card card = TestFirings.bareCard(stairs.withName("名".repeat(60)));
    assertThat(PrintedPage.text(CardPdf.render(card, PageSize.A4)))
        .contains("No code to scan here")
        .doesNotContain("this schedule, to scan");
  }

  @Test
  void withoutAStartTimesAreElapsedAndTheClockIsBlank() throws IOException {
    String text =
        PrintedPage.text(CardPdf.render(TestFirings.bareCard(TestFirings.burnout()), PageSize.A4));
    assertThat(text).contains("Date", "+1:07 h", "empty kiln").doesNotContain("Dec");
  }

  @Test
  void aFindingThatSaysStopStandsInABlackBarAndAWarningAmongTheCautions() throws IOException {
    String text = PrintedPage.text(CardPdf.render(TestFirings.crowdedCard(4), PageSize.A4));
    assertThat(text)
        .contains("STOP, do not fire: Segment 3 goes to 1598 °F", "more that say stop")
        .contains("Segment 1 rises at 300 °F/h")
        .contains("The clocks go back");
  }

  @Test
  void theFontIsEmbedded() throws IOException {
    try (PDDocument document =
        Loader.loadPDF(CardPdf.render(TestFirings.burnoutCard(), PageSize.A4))) {
      var resources = document.getPage(0).getResources();
      int fonts = 0;
      for (COSName name : resources.getFontNames()) {
        assertThat(resources.getFont(name).isEmbedded()).isTrue();
        assertThat(resources.getFont(name).getName()).contains("DejaVuSansCondensed");
        fonts++;
      }
      assertThat(fonts).isEqualTo(2);
    }
  }

  @Test
  void theSameCardGivesTheSameBytes() {
    assertThat(CardPdf.render(TestFirings.burnoutCard(), PageSize.A4))
        .isEqualTo(CardPdf.render(TestFirings.burnoutCard(), PageSize.A4));
  }

  @Test
  void charactersThatTheFontLacksAreMarkedAndDoNotStopThePrint() throws IOException {
    Card card = TestFirings.bareCard(TestFirings.burnout().withName("печь 🔥 炉\u0007 \u202e é ß"));
    assertThat(PrintedPage.text(CardPdf.render(card, PageSize.A4)))
        .contains("печь", "\uFFFD", "é ß");
  }

  @Test
  void moreSegmentsThanAPageHoldsAreRefusedInOneSentence() {
    Card card = TestFirings.bareCard(TestFirings.stairs(17, TemperatureUnit.CELSIUS));
    assertThatThrownBy(() -> CardPdf.render(card, PageSize.A4))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("1 to 16 segments")
        .hasMessageContaining("has 17");
  }
}
