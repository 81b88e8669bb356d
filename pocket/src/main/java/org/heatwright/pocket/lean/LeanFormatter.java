package org.heatwright.pocket.lean;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * What the core's sentences use of {@code java.util.Formatter}, in plain figures: {@code %s},
 * {@code %d}, {@code %02d}, {@code %.1f} and {@code %%}. Anything else is refused.
 */
public final class LeanFormatter {

  private final StringBuilder out = new StringBuilder();

  public LeanFormatter() {}

  public LeanFormatter(Locale locale) {
    this();
  }

  public LeanFormatter format(String pattern, @Nullable Object... values) {
    int next = 0;
    int at = 0;
    while (at < pattern.length()) {
      char c = pattern.charAt(at++);
      if (c != '%') {
        out.append(c);
        continue;
      }
      int start = at;
      while ("sdf%".indexOf(pattern.charAt(at)) < 0) {
        at++;
      }
      String how = pattern.substring(start, at);
      char kind = pattern.charAt(at++);
      if (kind == '%') {
        out.append('%');
      } else if (kind == 's' && how.isEmpty()) {
        out.append(values[next++]);
      } else if (kind == 'd') {
        whole(how, String.valueOf(values[next++]));
      } else if (kind == 'f' && how.length() == 2 && how.charAt(0) == '.') {
        out.append(
            new BigDecimal(String.valueOf(values[next++]))
                .setScale(how.charAt(1) - '0', RoundingMode.HALF_UP)
                .toPlainString());
      } else {
        throw new IllegalArgumentException("No such format here: %" + how + kind);
      }
    }
    return this;
  }

  private void whole(String how, String figures) {
    if (!how.isEmpty() && (how.charAt(0) != '0' || how.length() != 2)) {
      throw new IllegalArgumentException("No such format here: %" + how + "d");
    }
    int width = how.isEmpty() ? 0 : how.charAt(1) - '0';
    for (int i = figures.length(); i < width; i++) {
      out.append('0');
    }
    out.append(figures);
  }

  @Override
  public String toString() {
    return out.toString();
  }
}
