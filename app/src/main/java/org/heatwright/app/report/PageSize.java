package org.heatwright.app.report;

/** The paper a card is printed on. */
public enum PageSize {
  /** 210 mm by 297 mm (ISO 216). */
  A4("A4", 210, 297),
  /** 8.5 in by 11 in, US letter. */
  LETTER("US letter", 215.9, 279.4);

  private final String words;
  private final double widthMillimetres;
  private final double heightMillimetres;

  PageSize(String words, double widthMillimetres, double heightMillimetres) {
    this.words = words;
    this.widthMillimetres = widthMillimetres;
    this.heightMillimetres = heightMillimetres;
  }

  /** As people call it. */
  public String words() {
    return words;
  }

  public double widthMillimetres() {
    return widthMillimetres;
  }

  public double heightMillimetres() {
    return heightMillimetres;
  }
}
