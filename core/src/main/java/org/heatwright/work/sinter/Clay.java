package org.heatwright.work.sinter;

import java.util.Locale;

/** The clays that Heatwright has rules for. */
public enum Clay {
  /** Fine silver of the lower-sintering kind. */
  FINE_SILVER_LOW_FIRE("fine silver clay, lower-firing"),
  /** Fine silver of the usual kind; also the cautious answer where the kind is not known. */
  FINE_SILVER("fine silver clay"),
  /** Fine silver of the older kind, which shrinks by a quarter and more. */
  FINE_SILVER_OLDER("fine silver clay, older kind"),
  /** 925 silver with copper. */
  STERLING("sterling silver clay"),
  COPPER("copper clay"),
  /** About 90 % copper and 10 % tin. */
  BRONZE("bronze clay"),
  /** Bronze blended for a lower firing. */
  BRONZE_LOW_FIRE("bronze clay, lower-firing");

  private final String words;

  Clay(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }

  /** Whether it is silver without copper, which fires in air in one go. */
  public boolean isFineSilver() {
    return this == FINE_SILVER || this == FINE_SILVER_LOW_FIRE || this == FINE_SILVER_OLDER;
  }

  /** Whether it is bronze. */
  public boolean isBronze() {
    return this == BRONZE || this == BRONZE_LOW_FIRE;
  }

  /** The word that files and commands use, "fine-silver". */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
