package org.heatwright.app.languages;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** A language that the bench speaks. */
public enum Language {
  /** What everything is written in. */
  ENGLISH(Locale.UK, "English"),
  GERMAN(Locale.GERMANY, "Deutsch");

  private final Locale locale;
  private final String ownName;

  Language(Locale locale, String ownName) {
    this.locale = locale;
    this.ownName = ownName;
  }

  /** How numbers, dates and the clock are written. */
  public Locale locale() {
    return locale;
  }

  /** As a page's {@code lang} says it, e.g. "de". */
  public String tag() {
    return locale.getLanguage();
  }

  /** As its speakers call it. */
  public String ownName() {
    return ownName;
  }

  /** By its tag, e.g. "de". */
  public static Optional<Language> ofTag(String tag) {
    return Arrays.stream(values()).filter(l -> l.tag().equals(tag)).findFirst();
  }

  /**
   * What a browser would rather read, of what there is.
   *
   * @param accepted the header {@code Accept-Language} (RFC 9110, section 12.5.4), e.g. {@code
   *     "de-AT,de;q=0.9,en;q=0.5"}; empty or not understood means English
   */
  public static Language preferred(String accepted) {
    List<Locale.LanguageRange> ranges;
    try {
      ranges = accepted.isBlank() ? List.of() : Locale.LanguageRange.parse(accepted);
    } catch (IllegalArgumentException e) {
      return ENGLISH;
    }
    return ranges.stream()
        .filter(r -> r.getWeight() > 0)
        .sorted(Comparator.comparingDouble(Locale.LanguageRange::getWeight).reversed())
        .flatMap(r -> ofTag(r.getRange().split("-", 2)[0]).stream())
        .findFirst()
        .orElse(ENGLISH);
  }
}
