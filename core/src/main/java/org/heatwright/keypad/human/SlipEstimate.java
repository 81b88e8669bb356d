package org.heatwright.keypad.human;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.KeyedValue;
import org.heatwright.keypad.Keypad;
import org.heatwright.material.Origin;

/**
 * The chance that a keyed program is wrong somewhere and stays so: with nobody checking, looked
 * over by eye, and read back blind with the comparison made by machine.
 *
 * <p>Every character of a value and its accepting key is one chance to slip, all independent. A
 * read-back lets a slip pass where it is in a value that the review does not show, or where a wrong
 * value is misread; every such misreading is counted as if it gave exactly the planned text, so the
 * last figure is an upper bound of this model.
 *
 * @param keys characters and accepting keys
 * @param values how many values
 * @param hidden the places of values that the review does not show
 * @param unchecked chance that something is wrong when nobody checks
 * @param byEye the same after looking it over
 * @param readBack the same after a blind read-back
 */
public record SlipEstimate(
    int keys, int values, List<String> hidden, Chance unchecked, Chance byEye, Chance readBack) {

  /** Per key: the least, a usual and the greatest rate taken. */
  static final List<Double> SLIPS = List.of(0.005, 0.01, 0.02);

  /** Of the errors in numbers, the share that a person finds who checks a sum by eye. */
  static final double EYE_FINDS_SHARE = 0.36;

  /** Of readings of a gauge, the share that is wrong. */
  static final double MISREAD_SHARE = 0.005;

  /** Where the rates are from, and how far they carry. */
  public static final Origin ORIGIN =
      Origin.estimate(
          "0.5 to 2 % of keys wrong, between 0.5 % of codes after correction (Baddeley and Longman 1973) or 0.6 % of characters (Shaffer and Hardwick 1968) and 1 % uncorrected (Grudin 1983), doubled for an unfamiliar keypad; reading a gauge wrongly 0.5 % (Dhillon 1986); all as Panko's list of human error rates quotes them. By eye 36 % of errors were found (Wiseman et al., CHI 2013, abstract). For keys that repeat while held no published rate was found: the same is taken");

  public SlipEstimate {
    hidden = List.copyOf(hidden);
  }

  /**
   * A chance, 0 to 1.
   *
   * @param lowShare with the least slips
   * @param usualShare with the usual ones
   * @param highShare with the most
   */
  public record Chance(double lowShare, double usualShare, double highShare) {

    private static Chance of(List<Double> three) {
      return new Chance(three.get(0), three.get(1), three.get(2));
    }

    Chance times(double share) {
      return new Chance(lowShare * share, usualShare * share, highShare * share);
    }

    /** "27 to 72", in a hundred. */
    String inHundred() {
      String low = percent(lowShare);
      String high = percent(highShare);
      return low.equals(high) ? high : low + " to " + high;
    }

    private static String percent(double share) {
      double percent = share * 100;
      if (percent >= 1) {
        return Long.toString(Math.round(percent));
      }
      double tenths = Math.ceil(percent * 10 - 1e-9) / 10; // never less than it is
      return tenths <= 0 ? "0" : Double.toString(tenths);
    }
  }

  /**
   * Of a program on a keypad.
   *
   * @throws IllegalArgumentException if the program does not fit, so that nothing can be keyed
   */
  public static SlipEstimate of(FittedProgram program, Keypad keypad) {
    if (program.values().isEmpty()) {
      throw new IllegalArgumentException("A program that does not fit has no keys.");
    }
    Set<KeyedValue.Kind> hiddenKinds = keypad.hiddenInReview();
    List<Value> values = new ArrayList<>();
    List<String> hidden = new ArrayList<>();
    for (KeyedValue value : program.values()) {
      boolean shown = !hiddenKinds.contains(value.kind());
      values.add(new Value(characters(value.digits()) + 1, shown));
      if (!shown) {
        hidden.add(value.place());
      }
    }
    return of(values, hidden);
  }

  /** Points, colons and signs come by themselves or with a digit; a word is one choice. */
  private static int characters(String text) {
    int digits = (int) text.chars().filter(Character::isDigit).count();
    return Math.max(1, digits);
  }

  /**
   * One value.
   *
   * @param keys its characters and its accepting key
   * @param shown whether the review shows it
   */
  record Value(int keys, boolean shown) {}

  static SlipEstimate of(List<Value> values, List<String> hidden) {
    Chance unchecked = Chance.of(SLIPS.stream().map(slip -> survives(values, slip, 1)).toList());
    return new SlipEstimate(
        values.stream().mapToInt(Value::keys).sum(),
        values.size(),
        hidden,
        unchecked,
        unchecked.times(1 - EYE_FINDS_SHARE),
        Chance.of(SLIPS.stream().map(slip -> survives(values, slip, MISREAD_SHARE)).toList()));
  }

  /**
   * @param slip chance of one wrong key
   * @param shownPass chance that a wrong value passes though the review shows it
   */
  private static double survives(List<Value> values, double slip, double shownPass) {
    double none = 1;
    for (Value value : values) {
      double wrong = 1 - Math.pow(1 - slip, value.keys());
      none *= 1 - wrong * (value.shown() ? shownPass : 1);
    }
    return 1 - none;
  }

  /** In two sentences, without the source. */
  public String words() {
    String where =
        hidden.isEmpty()
            ? ""
            : ", most of them in what its review does not show (%s)".formatted(named());
    return "Of a hundred programs with %d keys like this one, about %s have a wrong key that stays if nobody checks, %s after looking it over, and at most %s after a blind read-back compared here%s. An estimate, not a promise."
        .formatted(keys, unchecked.inHundred(), byEye.inHundred(), readBack.inHundred(), where);
  }

  private String named() {
    return hidden.size() <= 2
        ? String.join(" and ", hidden)
        : "%s and %d more values".formatted(hidden.get(0), hidden.size() - 1);
  }
}
