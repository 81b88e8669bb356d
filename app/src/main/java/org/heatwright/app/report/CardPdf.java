package org.heatwright.app.report;

/** Prints a card: one page, black on white, nothing but what is in the {@link Card}. */
public final class CardPdf {

  private CardPdf() {}

  /**
   * @return a PDF of exactly one page
   */
  public static byte[] render(Card card, PageSize size) {
    throw new IllegalStateException("The card's printing has not landed yet.");
  }
}
