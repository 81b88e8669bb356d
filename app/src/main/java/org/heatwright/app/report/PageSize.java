package org.heatwright.app.report;

/** The paper a card is printed on. */
public enum PageSize {
  /** 210 mm by 297 mm (ISO 216). */
  A4(210, 297),
  /** 8.5 in by 11 in, US letter. */
  LETTER(215.9, 279.4);

  private final double widthMillimetres;
  private final double heightMillimetres;

  PageSize(double widthMillimetres, double heightMillimetres) {
    this.widthMillimetres = widthMillimetres;
    this.heightMillimetres = heightMillimetres;
  }

  public double widthMillimetres() {
    return widthMillimetres;
  }

  public double heightMillimetres() {
    return heightMillimetres;
  }
}
