package org.heatwright.app.report;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import org.apache.pdfbox.pdmodel.PDDocument;

/**
 * Prints a card: one page, black on white, nothing but what is in the {@link Card}. The font lies
 * in the jar and is embedded, so neither this machine nor the printer needs one.
 */
public final class CardPdf {

  /** More segments than this do not fit one page legibly. */
  public static final int MOST_SEGMENTS = 16;

  private CardPdf() {}

  /**
   * The same card gives the same bytes.
   *
   * @return a PDF of exactly one page
   * @throws IllegalArgumentException with a sentence for people, if the card is too long for a page
   */
  public static byte[] render(Card card, PageSize size) {
    int segments = card.entries().size();
    if (segments > MOST_SEGMENTS) {
      throw new IllegalArgumentException(
          "A card holds 1 to %d segments, but the schedule '%s' has %d. Maybe split it in two."
              .formatted(MOST_SEGMENTS, card.header().job(), segments));
    }
    try (PDDocument document = new PDDocument()) {
      Sheet sheet = Sheet.addTo(document, size);
      CardLayout.draw(sheet, card, size);
      sheet.close();
      document.getDocumentInformation().setTitle("Firing card: " + card.header().job());
      document.getDocumentCatalog().setLanguage("en");
      document.setDocumentId(0L); // otherwise the clock goes into the file
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      document.save(bytes);
      return bytes.toByteArray();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
