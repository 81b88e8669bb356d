package org.heatwright.work.casting;

import java.util.List;
import java.util.Objects;

/**
 * Metal of one fineness.
 *
 * @param kilograms zero or more
 * @param fineness of the precious metal that is looked at
 */
public record Lot(double kilograms, Fineness fineness) {

  private static final double NOISE = 1e-12;

  public Lot {
    Objects.requireNonNull(fineness, "fineness");
    if (!(kilograms >= 0 && kilograms < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException(
          "The mass (%s g) must be zero or more.".formatted(kilograms * 1000));
    }
  }

  /** Several lots melted together. */
  public static Lot together(List<Lot> lots) {
    double kilograms = lots.stream().mapToDouble(Lot::kilograms).sum();
    if (!(kilograms > 0)) {
      throw new IllegalArgumentException("There must be metal to mix.");
    }
    double fine = lots.stream().mapToDouble(l -> l.kilograms * l.fineness.share()).sum();
    return new Lot(kilograms, new Fineness(Math.min(1, fine / kilograms)));
  }

  public Lot and(Lot other) {
    return together(List.of(this, other));
  }

  /**
   * What must be added to come to a fineness: {@code m (f1 - f2) / (f2 - fa)}.
   *
   * @param wanted the fineness to come to
   * @param added fineness of what is added, on the other side of the wanted one
   * @return the addition, zero or more
   * @throws IllegalArgumentException if no amount of it gets there
   */
  public Lot addition(Fineness wanted, Fineness added) {
    double short0 = fineness.share() - wanted.share();
    if (Math.abs(short0) <= NOISE) {
      return new Lot(0, added);
    }
    if (wanted.equals(Fineness.PURE) || wanted.equals(Fineness.NONE)) {
      throw new IllegalArgumentException(
          "No addition brings %s to %s; only refining does."
              .formatted(thousandths(fineness), thousandths(wanted)));
    }
    double from = wanted.share() - added.share();
    if (short0 * from <= 0) {
      throw new IllegalArgumentException(
          "No amount of %s brings %s to %s; it takes something %s than that."
              .formatted(
                  thousandths(added),
                  thousandths(fineness),
                  thousandths(wanted),
                  short0 > 0 ? "less fine" : "finer"));
    }
    return new Lot(kilograms * short0 / from, added);
  }

  private static String thousandths(Fineness fineness) {
    return "%.1f".formatted(fineness.thousandths()).replaceFirst("\\.0$", "");
  }
}
