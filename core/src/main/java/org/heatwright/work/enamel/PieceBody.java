package org.heatwright.work.enamel;

/**
 * A flat piece as something that is heated: one temperature throughout, because metal evens it out
 * faster than the kiln brings heat (Biot number 0.06 for 0.3 mm of enamel).
 *
 * @param joulesPerSquareMetreKelvin heat that a square metre takes up, metal and enamel, J/(m² K)
 * @param frontEmissivity of the enamelled face, times what it sees of the kiln
 * @param backEmissivity of the underside, the same
 * @param filmWattsPerSquareMetreKelvin convection at each face, W/(m² K)
 */
public record PieceBody(
    double joulesPerSquareMetreKelvin,
    Range frontEmissivity,
    Range backEmissivity,
    Range filmWattsPerSquareMetreKelvin) {

  /** Of a fired coat, kg/m³. Estimate: from some 2.4 without lead to 3.5 with. */
  static final double ENAMEL_DENSITY = 2700;

  /** J/(kg K) over 20 to 800 °C. Estimate. */
  static final double ENAMEL_CAPACITY = 950;

  /** Estimate: a little under the 0.84 to 0.97 of glass (read: instrument manuals' tables). */
  static final Range ENAMELLED = Range.of(0.78, 0.87, 0.95);

  /** Estimate: air in a closed muffle. */
  static final Range FILM = Range.of(4, 8, 15);

  /** What the kiln sees of the underside. */
  public enum Underside {
    /** Enamelled too. */
    COUNTER_ENAMEL(ENAMELLED),
    /** Bare and oxidised, as copper and steel are after the first heat. */
    OXIDISED(Range.of(0.5, 0.68, 0.85)),
    /** Bare and bright, as fine silver and gold stay. */
    BRIGHT(Range.of(0.02, 0.05, 0.15));

    private final Range emissivity;

    Underside(Range emissivity) {
      this.emissivity = emissivity;
    }

    /**
     * Estimates about what instrument manuals' tables print (read): oxidised copper 0.57 to 0.88,
     * polished silver 0.02, gold 0.02 to 0.03. A bright metal that was fired is not polished.
     */
    public Range emissivity() {
      return emissivity;
    }
  }

  /** A mesh or a trivet hides so much of the underside. Estimate. */
  static final Range SEEN_SHARE = Range.of(0.6, 0.8, 0.95);

  public PieceBody {
    if (!(joulesPerSquareMetreKelvin > 0)) {
      throw new IllegalArgumentException(
          "The piece's heat (%s J/(m² K)) must be above zero."
              .formatted(joulesPerSquareMetreKelvin));
    }
  }

  /**
   * Enamelled sheet.
   *
   * @param metal what carries it
   * @param sheetMetres how thick, m
   * @param enamelMetres all enamel on both faces, m
   * @param underside what the kiln sees of the other face
   */
  public static PieceBody of(
      EnamelMetal metal, double sheetMetres, double enamelMetres, Underside underside) {
    Range back = underside.emissivity();
    return new PieceBody(
        metal.joulesPerSquareMetreKelvin(sheetMetres)
            + ENAMEL_DENSITY * ENAMEL_CAPACITY * enamelMetres,
        ENAMELLED,
        Range.of(
            back.low() * SEEN_SHARE.low(),
            back.median() * SEEN_SHARE.median(),
            back.high() * SEEN_SHARE.high()),
        FILM);
  }

  /**
   * The piece through given surroundings.
   *
   * @param deviations where in their ranges the emissivities and the convection lie
   */
  public PieceCurve follow(
      org.heatwright.mould.Surroundings around,
      double startCelsius,
      double untilSecond,
      double deviations) {
    return PieceCurve.follow(
        joulesPerSquareMetreKelvin,
        frontEmissivity.at(deviations) + backEmissivity.at(deviations),
        2 * filmWattsPerSquareMetreKelvin.at(deviations),
        around,
        startCelsius,
        untilSecond,
        1);
  }
}
