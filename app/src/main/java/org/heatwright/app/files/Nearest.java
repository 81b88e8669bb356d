package org.heatwright.app.files;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;

/** The word a person probably meant. */
public final class Nearest {

  private Nearest() {}

  /**
   * The known word nearest to what was typed, if it is near: at most a third of its letters
   * changed, dropped, added or swapped with a neighbour, or only its end left out.
   */
  public static Optional<String> to(String typed, Collection<String> known) {
    String word = typed.toLowerCase(Locale.ROOT);
    return known.stream()
        .filter(k -> changes(word, k) <= k.length() / 3)
        .min(Comparator.comparingInt(k -> changes(word, k)));
  }

  private static int changes(String word, String known) {
    String other = known.toLowerCase(Locale.ROOT);
    return word.length() >= 3 && other.startsWith(word) ? 0 : distance(word, other);
  }

  /** " (did you mean pid?)", or nothing. */
  public static String hint(String typed, Collection<String> known) {
    return to(typed, known).map(" (did you mean %s?)"::formatted).orElse("");
  }

  /** Optimal string alignment distance. */
  private static int distance(String a, String b) {
    if (Math.abs(a.length() - b.length()) > 20) {
      return Integer.MAX_VALUE;
    }
    int[][] d = new int[a.length() + 1][b.length() + 1];
    for (int i = 0; i <= a.length(); i++) {
      for (int j = 0; j <= b.length(); j++) {
        if (i == 0 || j == 0) {
          d[i][j] = i + j;
          continue;
        }
        int change = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
        int best = Math.min(d[i - 1][j - 1] + change, Math.min(d[i - 1][j], d[i][j - 1]) + 1);
        boolean swapped =
            i > 1
                && j > 1
                && a.charAt(i - 1) == b.charAt(j - 2)
                && a.charAt(i - 2) == b.charAt(j - 1);
        d[i][j] = swapped ? Math.min(best, d[i - 2][j - 2] + 1) : best;
      }
    }
    return d[a.length()][b.length()];
  }
}
