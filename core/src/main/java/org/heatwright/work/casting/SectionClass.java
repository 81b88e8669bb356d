package org.heatwright.work.casting;

import java.util.Locale;
import org.heatwright.material.Origin;

/** How thin the thinnest part of a casting is, as the trade's tables class it. */
public enum SectionClass {
  FILIGREE("under 0.8 mm"),
  LIGHT("0.8 to 1.5 mm"),
  MEDIUM("1.5 to 3 mm"),
  HEAVY("over 3 mm");

  public static final Origin ORIGIN =
      Origin.estimate("the trade says light and heavy; the millimetres are ours");

  private final String millimetres;

  SectionClass(String millimetres) {
    this.millimetres = millimetres;
  }

  /** Class of a thickness, m, 0.0001 to 0.1. */
  public static SectionClass ofMetres(double metres) {
    if (!(metres >= 1e-4 && metres <= 0.1)) {
      throw new IllegalArgumentException(
          "The thinnest section (%s mm) must be 0.1 to 100 mm.".formatted(metres * 1000));
    }
    if (metres < 0.8e-3) {
      return FILIGREE;
    }
    if (metres < 1.5e-3) {
      return LIGHT;
    }
    return metres <= 3e-3 ? MEDIUM : HEAVY;
  }

  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** "light, 0.8 to 1.5 mm". */
  public String words() {
    return word() + ", " + millimetres;
  }
}
