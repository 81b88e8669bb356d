package org.heatwright.app.languages;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * An English text with holes, and the same text in another language with the same holes.
 *
 * @param english as the bench says it
 * @param other as it is said in the other language
 * @param where file and line, to tell a translator
 * @param holes in their order in the English text
 * @param literals what stands between the holes
 * @param pattern finds the English text; a group a hole
 * @param fixed how much of it is fixed, in characters: the more, the surer it is
 */
record Phrase(
    String english,
    String other,
    String where,
    List<Hole> holes,
    List<String> literals,
    Pattern pattern,
    int fixed) {

  private static final Pattern HOLE = Pattern.compile("\\{(\\d+)([#@!]?)\\}");
  private static final Pattern WORD = Pattern.compile("[\\p{L}\\d]{2,}");

  /** What may stand in a hole. */
  enum Kind {
    /** A text that is translated itself. */
    TEXT(".+?"),
    /** A number, quantity or range. */
    NUMBER(Conventions.NUMBER),
    /** A date, a clock time. */
    DATE(Conventions.DATE),
    /** What a person wrote, a name, a code: it stays as it is. */
    VERBATIM(".+?");

    private final String pattern;

    Kind(String pattern) {
      this.pattern = pattern;
    }

    static Kind of(String sign) {
      return switch (sign) {
        case "#" -> NUMBER;
        case "@" -> DATE;
        case "!" -> VERBATIM;
        default -> TEXT;
      };
    }
  }

  /**
   * A place for what changes.
   *
   * @param touches true if it follows the hole before it without anything between them
   * @param enclosed true if quotation marks or brackets stand round it
   */
  record Hole(int number, Kind kind, boolean touches, boolean enclosed) {}

  static Phrase of(String english, String other, String where) {
    List<Hole> holes = new ArrayList<>();
    List<String> literals = new ArrayList<>();
    StringBuilder pattern = new StringBuilder();
    Matcher matcher = HOLE.matcher(english);
    int from = 0;
    while (matcher.find()) {
      literal(english.substring(from, matcher.start()), literals, pattern);
      Kind kind = Kind.of(matcher.group(2));
      boolean touches = matcher.start() == from && !holes.isEmpty();
      holes.add(
          new Hole(
              Integer.parseInt(matcher.group(1)),
              kind,
              touches,
              enclosed(english, matcher.start())));
      boolean optional =
          (kind == Kind.TEXT || kind == Kind.VERBATIM)
              && attached(english, matcher.start(), matcher.end());
      pattern.append('(').append(optional ? ".*?" : kind.pattern).append(')');
      from = matcher.end();
    }
    literal(english.substring(from), literals, pattern);
    return new Phrase(
        english,
        other,
        where,
        List.copyOf(holes),
        List.copyOf(literals),
        Pattern.compile(pattern.toString(), Pattern.DOTALL),
        literals.stream().mapToInt(String::length).sum());
  }

  /** True if nothing stands between a hole and the one after it. */
  boolean touchesNext(int hole) {
    return hole + 1 < holes.size() && holes.get(hole + 1).touches();
  }

  /** A hole that stands close to what is beside it may be empty. */
  private static boolean attached(String text, int from, int to) {
    boolean left = from > 0 && text.charAt(from - 1) != ' ';
    boolean right = to < text.length() && Character.isLetter(text.charAt(to));
    return left && !enclosed(text, from) || right;
  }

  private static boolean enclosed(String text, int at) {
    return at > 0 && "(“„\"'".indexOf(text.charAt(at - 1)) >= 0;
  }

  private static void literal(String text, List<String> literals, StringBuilder pattern) {
    if (!text.isEmpty()) {
      literals.add(text);
      pattern.append(Pattern.quote(text));
    }
  }

  /** The holes of a text, by number, with their kinds. */
  static Map<Integer, Kind> holesOf(String text) {
    Map<Integer, Kind> found = new TreeMap<>();
    HOLE.matcher(text)
        .results()
        .forEach(m -> found.put(Integer.parseInt(m.group(1)), Kind.of(m.group(2))));
    return found;
  }

  /** The longest whole word that is always in it: under this it is found. */
  Optional<String> keyWord() {
    return literals.stream()
        .flatMap(l -> wholeWords(l).stream())
        .max(Comparator.comparingInt(String::length));
  }

  /** Words that cannot go on in a hole beside them. */
  private List<String> wholeWords(String literal) {
    String padded = " " + literal + " ";
    String known = english;
    int at = known.indexOf(literal);
    boolean openLeft = at > 0 && known.charAt(at - 1) == '}';
    boolean openRight =
        at + literal.length() < known.length() && known.charAt(at + literal.length()) == '{';
    List<String> words = words(literal);
    List<String> whole = new ArrayList<>(words);
    if (openLeft && !words.isEmpty() && padded.startsWith(" " + words.get(0))) {
      whole.remove(0);
    }
    if (openRight && !whole.isEmpty() && padded.endsWith(words.get(words.size() - 1) + " ")) {
      whole.remove(whole.size() - 1);
    }
    return whole;
  }

  /** The words of a text, small letters. */
  static List<String> words(String text) {
    return WORD.matcher(text.toLowerCase(java.util.Locale.ROOT))
        .results()
        .map(java.util.regex.MatchResult::group)
        .toList();
  }

  /** What stands in the holes of a text, in their English order; nothing if it is another text. */
  Optional<List<String>> heldBy(String text) {
    int from = 0;
    for (String literal : literals) {
      int at = text.indexOf(literal, from);
      if (at < 0) {
        return Optional.empty();
      }
      from = at + literal.length();
    }
    Matcher matcher = pattern.matcher(text);
    if (!matcher.matches()) {
      return Optional.empty();
    }
    String[] held = new String[holes.size()];
    for (int i = 0; i < held.length; i++) {
      if (cutsWord(text, matcher.start(i + 1)) || cutsWord(text, matcher.end(i + 1))) {
        return Optional.empty();
      }
      held[i] = matcher.group(i + 1);
      if (holes.get(i).kind() == Kind.VERBATIM && held[i].indexOf("</") >= 0) {
        return Optional.empty(); // a name holds no emphasised words
      }
    }
    return Optional.of(List.of(held));
  }

  /** A hole neither begins nor ends within a word. */
  private static boolean cutsWord(String text, int at) {
    return at > 0
        && at < text.length()
        && Character.isLetter(text.charAt(at - 1))
        && Character.isLetter(text.charAt(at));
  }

  /** The other language's text with its holes filled. */
  String filled(List<String> values) {
    Map<Integer, String> byNumber = new TreeMap<>();
    for (int i = 0; i < holes.size(); i++) {
      byNumber.put(holes.get(i).number(), values.get(i));
    }
    return HOLE.matcher(other)
        .replaceAll(
            m ->
                Matcher.quoteReplacement(
                    byNumber.getOrDefault(Integer.parseInt(m.group(1)), m.group())));
  }
}
