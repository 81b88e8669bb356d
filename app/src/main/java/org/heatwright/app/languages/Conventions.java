package org.heatwright.app.languages;

import java.text.DecimalFormatSymbols;
import java.time.DayOfWeek;
import java.time.Month;
import java.time.format.DateTimeFormatter;
import java.time.format.TextStyle;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Finds numbers, quantities and dates as our English texts write them, and rewrites them as a
 * locale does: 12.5 becomes 12,5, and "Tue 1 Dec 10:00" becomes "Di 1. Dez. 10:00".
 */
final class Conventions {

  private static final String SPACE = "[ \\u00a0\\u202f\\u2009]";

  private static final String UNIT =
      "(?:°C/h|°F/h|°C/min|K/h|K/min|K/mm|K/m|°C|°F|K|h|min|s|ms|mm/s|mm²|mm³|mm|cm³|cm²|cm|µm|m²|m|kg/m³"
          + "|kg|g/cm³|g/s|g|mg|ml|l|kWh|Wh|kW|W|mV/K|mV|µV|V|A|Ω|mΩ|kJ/mol|kJ|MJ|J/\\(kg·K\\)"
          + "|J/kgK|J|W/K|W/mK|W/\\(m·K\\)|Pa·s|Pa s|MPa|GPa|kPa|Pa|bar|HV|Hz|kA|ct|px|p)(?![\\p{L}\\d])|%|‰|°|‘|’|″|\"";

  private static final String FIGURE =
      "[-−+±≤≥<>~×]?" + SPACE + "?\\d+(?:[.,:/]\\d+)*(?:e[-+]?\\d+)?";

  /** A number, a quantity with its unit, a range or a sum of such. */
  static final String NUMBER =
      "(?:"
          + FIGURE
          + "(?:"
          + SPACE
          + "?(?:to|–|-|±|×|x|/|…|\\+)"
          + SPACE
          + "?"
          + FIGURE
          + "|"
          + SPACE
          + "?(?:"
          + UNIT
          + ")|"
          + SPACE
          + FIGURE
          + ")*)";

  private static final String WEEKDAY =
      "(?:Mon|Tue|Wed|Thu|Fri|Sat|Sun|Monday|Tuesday|Wednesday|Thursday|Friday|Saturday|Sunday)\\b";
  private static final String MONTH =
      "(?:Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sept|Sep|Oct|Nov|Dec|January|February|March|April|June"
          + "|July|August|September|October|November|December)\\b";
  private static final String CLOCK = "\\d{1,2}:\\d{2}(?::\\d{2})?(?: \\((?:1st|2nd)\\))?";
  private static final String MOMENT =
      "(?:(?:"
          + WEEKDAY
          + ",? )?\\d{1,2} "
          + MONTH
          + "(?: \\d{4})?(?:,? "
          + CLOCK
          + ")?|(?:"
          + WEEKDAY
          + ",? )?"
          + CLOCK
          + "(?: "
          + WEEKDAY
          + " \\d{1,2} "
          + MONTH
          + ")?|\\+\\d+:\\d{2} h|\\d{4}-\\d{2}-\\d{2}(?:[ T]"
          + CLOCK
          + ")?|"
          + MONTH
          + " \\d{4}|"
          + WEEKDAY
          + ")";

  /** A date, a clock time, both, or from one to another. */
  static final String DATE = "(?:" + MOMENT + "(?:(?: to |–)" + MOMENT + ")?)";

  private static final String ELEMENT = "\\b(?:Ag|Au|Cu|Zn|Sn|Ni|Pd|Pt)\\b";
  private static final Pattern PARTS =
      Pattern.compile("(?:" + DATE + ")|(?:" + NUMBER + ")|" + ELEMENT + "|\\b(?:EUR|YAML)\\b");
  private static final Pattern WORD = Pattern.compile("\\p{L}{2,}");
  private static final Pattern DECIMAL = Pattern.compile("(?<![\\d.])(\\d+)\\.(\\d+)(?![\\d.])");
  private static final Pattern DAY_MONTH =
      Pattern.compile("\\b(\\d{1,2}) (" + MONTH + ")(?: (\\d{4}))?");
  private static final Pattern NAMED =
      Pattern.compile("\\b(?:" + WEEKDAY + "|(?<!\\d )" + MONTH + "(?!\\.))");
  private static final Pattern ISO = Pattern.compile("\\b(\\d{4})-(\\d{2})-(\\d{2})\\b");
  private static final Pattern BETWEEN =
      Pattern.compile("(?<=[\\d%)CFKhns]) to (?=[-−+\\p{L}\\d])");

  private final char decimal;
  private final String to;
  private final Map<String, String> names = new TreeMap<>();
  private final Locale locale;

  /**
   * @param to the word between the ends of a range
   */
  Conventions(Locale locale, String to) {
    this.locale = locale;
    this.to = to;
    this.decimal = DecimalFormatSymbols.getInstance(locale).getDecimalSeparator();
    for (DayOfWeek day : DayOfWeek.values()) {
      names.put(day.getDisplayName(TextStyle.SHORT, Locale.UK), format("EEE", day));
      names.put(day.getDisplayName(TextStyle.FULL, Locale.UK), format("EEEE", day));
    }
    for (Month month : Month.values()) {
      names.put(
          month.getDisplayName(TextStyle.SHORT, Locale.UK),
          DateTimeFormatter.ofPattern("MMM", locale).format(month));
      names.put(
          month.getDisplayName(TextStyle.SHORT, Locale.US),
          DateTimeFormatter.ofPattern("MMM", locale).format(month));
      names.put(
          month.getDisplayName(TextStyle.FULL, Locale.UK),
          DateTimeFormatter.ofPattern("MMMM", locale).format(month));
    }
  }

  private String format(String pattern, DayOfWeek day) {
    String name = DateTimeFormatter.ofPattern(pattern, locale).format(day);
    return name.endsWith(".") ? name.substring(0, name.length() - 1) : name;
  }

  /** True if there is nothing to translate: numbers, units, dates and signs alone. */
  static boolean wordless(String text) {
    return !lettersTogether(text) || !WORD.matcher(PARTS.matcher(text).replaceAll(" ")).find();
  }

  private static boolean lettersTogether(String text) {
    for (int i = 1; i < text.length(); i++) {
      if (Character.isLetter(text.charAt(i)) && Character.isLetter(text.charAt(i - 1))) {
        return true;
      }
    }
    return false;
  }

  /** The numbers and dates in a text as the locale writes them; words stay. */
  String written(String text) {
    if (!lettersTogether(text) && text.indexOf('-') < 0) {
      return DECIMAL.matcher(text).replaceAll("$1" + decimal + "$2");
    }
    String dated = ISO.matcher(text).replaceAll("$3.$2.$1");
    dated =
        DAY_MONTH
            .matcher(dated)
            .replaceAll(
                m ->
                    Matcher.quoteReplacement(
                        m.group(1)
                            + ". "
                            + name(m.group(2))
                            + (m.group(3) == null ? "" : " " + m.group(3))));
    dated = NAMED.matcher(dated).replaceAll(m -> Matcher.quoteReplacement(name(m.group())));
    for (String name : names.values()) {
      if (name.endsWith(".") && dated.contains(name + ".")) {
        dated = dated.replace(name + ".", name);
      }
    }
    dated = BETWEEN.matcher(dated).replaceAll(Matcher.quoteReplacement(" " + to + " "));
    dated = dated.replace("(1st)", "(1.)").replace("(2nd)", "(2.)");
    return DECIMAL.matcher(dated).replaceAll("$1" + decimal + "$2");
  }

  /** Any other name stays. */
  private String name(String english) {
    return names.getOrDefault(english, english);
  }
}
