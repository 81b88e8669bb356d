package org.heatwright.work.casting;

import java.util.List;
import java.util.Optional;

/**
 * Share of the precious metal by mass.
 *
 * @param share 0 to 1: 0.750 is 750 parts in a thousand, 18 in 24
 */
public record Fineness(double share) implements Comparable<Fineness> {

  public static final Fineness NONE = new Fineness(0);
  public static final Fineness PURE = new Fineness(1);

  /**
   * Karats whose legal mark is not their fraction of 24. Source: read (9, 14, 18), a jewellery
   * education page on fineness; the others are common practice.
   */
  private static final List<Mark> MARKS =
      List.of(
          new Mark(8, 333),
          new Mark(9, 375),
          new Mark(10, 417),
          new Mark(14, 585),
          new Mark(18, 750),
          new Mark(22, 916),
          new Mark(24, 999));

  private record Mark(int karat, int thousandths) {}

  public Fineness {
    if (!(share >= 0 && share <= 1)) {
      throw new IllegalArgumentException(
          "The fineness (%s) must be 0 to 1000 parts in a thousand.".formatted(share * 1000));
    }
  }

  public static Fineness ofThousandths(double thousandths) {
    return new Fineness(thousandths / 1000);
  }

  /** The plain fraction, 14 of 24, not the legal mark. */
  public static Fineness ofKarats(double karats) {
    if (!(karats >= 0 && karats <= 24)) {
      throw new IllegalArgumentException("The karats (%s) must be 0 to 24.".formatted(karats));
    }
    return new Fineness(karats / 24);
  }

  public double thousandths() {
    return share * 1000;
  }

  public double karats() {
    return share * 24;
  }

  /**
   * The mark that is usual for this number of karats where it is not the fraction itself, e.g. 585
   * for 14 of 24 (583.3). Which marks are legal, and what is allowed below them, differs from land
   * to land.
   */
  public Optional<Fineness> mark() {
    return MARKS.stream()
        .filter(m -> Math.abs(karats() - m.karat()) < 1e-9)
        .map(m -> ofThousandths(m.thousandths()))
        .filter(f -> Math.abs(f.share - share) > 1e-4)
        .findFirst();
  }

  @Override
  public int compareTo(Fineness other) {
    return Double.compare(share, other.share);
  }
}
