package org.heatwright.app.languages;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The sentences of the bench in one other language. A text is looked for whole; then with its holes
 * filled; then sentence by sentence; then as a list all of whose parts are known. Of several
 * phrases that fit, the one with the most fixed letters goes first.
 *
 * <p>Its files hold a phrase in two lines: the English one, and the other language's one, indented.
 * {@code =} alone stands for the same text, a line that begins with {@code #} is a remark.
 */
public final class Phrasebook {

  private static final Logger LOG = LoggerFactory.getLogger(Phrasebook.class);

  /** What scripts say; they look it up themselves. */
  public static final String SCRIPTS = "scripts.txt";

  private static final int REMEMBERED = 30_000;
  private static final int DEEPEST = 12;
  private static final int SURE_LETTERS = 18;
  private static final int LONGEST_LABEL = 20;
  private static final String RANGE_WORD = "to";
  private static final Pattern SENTENCE_END =
      Pattern.compile(
          "(?<=[.!?]|[.!?]\\))(?<!\\b(?:\\p{Lu}|vol|ed|Am|Ceram|Soc|pp|p|No|e\\.g|ca)\\.)\\s+(?=[\\p{Lu}\\d\"“(])");
  private static final Pattern CODE = Pattern.compile("[a-z0-9]+(?:-[a-z0-9]+)+");
  private static final Pattern SPACES = Pattern.compile("\\s+");
  private static final List<String> JOINTS =
      List.of("; ", " · ", ": ", ", ", " and ", " or ", " / ", " = ", " + ", "\n");

  private final List<Phrase> phrases;
  private final Map<String, Phrase> whole;
  private final Map<String, List<Phrase>> byWord;
  private final List<Phrase> wordless;
  private final Map<String, List<Phrase>> byTopic;
  private final Conventions conventions;
  private final Set<String> names;
  private final Map<String, Optional<String>> remembered =
      Collections.synchronizedMap(
          new LinkedHashMap<>(256, 0.75f, true) {
            @Override
            protected boolean removeEldestEntry(Map.Entry<String, Optional<String>> eldest) {
              return size() > REMEMBERED;
            }
          });

  private static final Map<Language, Phrasebook> BOOKS = new ConcurrentHashMap<>();

  /** Where the files are: a stream of one by its name, or nothing where there is none. */
  @FunctionalInterface
  interface Shelf {
    @Nullable InputStream open(String name) throws IOException;
  }

  /** A file that cannot be used, with the place in it. */
  private static final class BrokenException extends Exception {
    private static final long serialVersionUID = 1L;

    BrokenException(String where, String what) {
      super("languages/" + where + ": " + what);
    }
  }

  private Phrasebook(Language language, Shelf shelf, Consumer<String> broken) {
    phrases = new ArrayList<>();
    whole = new HashMap<>();
    byWord = new HashMap<>();
    wordless = new ArrayList<>();
    byTopic = new LinkedHashMap<>();
    names = Set.of();
    for (String topic : topics(language, shelf, broken)) {
      try {
        read(language, topic, shelf);
      } catch (BrokenException e) {
        broken.accept(e.getMessage() + " The bench says what this file is about in English.");
      }
    }
    conventions = new Conventions(language.locale(), joint(RANGE_WORD));
    byWord.values().forEach(list -> list.sort(surest()));
    wordless.sort(surest());
  }

  private Phrasebook(Phrasebook other, Set<String> names) {
    phrases = other.phrases;
    whole = other.whole;
    byWord = other.byWord;
    wordless = other.wordless;
    byTopic = other.byTopic;
    conventions = other.conventions;
    this.names = Set.copyOf(names);
  }

  /**
   * The same book for a bench on which things have these names: kilns, keypads, works, logs. They
   * stay as they are, wherever a text holds them.
   */
  public Phrasebook with(Set<String> names) {
    return new Phrasebook(this, names);
  }

  /** The names that stay. */
  public Set<String> names() {
    return names;
  }

  private static Comparator<Phrase> surest() {
    return Comparator.comparingInt(Phrase::fixed)
        .reversed()
        .thenComparing(Comparator.comparingInt(p -> p.holes().size()));
  }

  /** The book of a language; it is read once. What is broken in it is said once, in the log. */
  public static Phrasebook of(Language language) {
    return BOOKS.computeIfAbsent(
        language,
        l ->
            read(
                l,
                name -> Phrasebook.class.getResourceAsStream("/languages/" + l.tag() + "/" + name),
                LOG::warn));
  }

  /**
   * Reads a book. A topic that cannot be read is left out whole, so that its texts stay English.
   *
   * @param broken hears a sentence for each file that is left out
   */
  static Phrasebook read(Language language, Shelf shelf, Consumer<String> broken) {
    return new Phrasebook(language, shelf, broken);
  }

  private static List<String> topics(Language language, Shelf shelf, Consumer<String> broken) {
    try {
      return lines(language, "topics.txt", shelf).stream().filter(l -> !l.isBlank()).toList();
    } catch (BrokenException e) {
      broken.accept(e.getMessage() + " The bench says everything in English.");
      return List.of();
    }
  }

  private void read(Language language, String topic, Shelf shelf) throws BrokenException {
    List<Phrase> own = new ArrayList<>();
    List<String> lines = lines(language, topic, shelf);
    String english = "";
    int at = 0;
    for (int i = 0; i < lines.size(); i++) {
      String line = lines.get(i);
      if (line.startsWith("#") || line.isBlank()) {
        continue;
      }
      String where = place(language, topic, i + 1);
      if (!line.startsWith("  ")) {
        paired(english, place(language, topic, at));
        english = line.strip();
        at = i + 1;
      } else {
        if (english.isEmpty()) {
          throw new BrokenException(
              where, "no English line stands before this translation; write it above.");
        }
        own.add(phrase(english, line.strip(), topic + " line " + (i + 1), where));
        english = "";
      }
    }
    paired(english, place(language, topic, at));
    byTopic.put(topic, List.copyOf(own));
    phrases.addAll(own);
    if (!topic.equals(SCRIPTS)) {
      own.forEach(this::add);
    }
  }

  private static String place(Language language, String topic, int line) {
    return language.tag() + "/" + topic + " line " + line;
  }

  private static void paired(String english, String where) throws BrokenException {
    if (!english.isEmpty()) {
      throw new BrokenException(
          where, "this English line has no translation; write it below, two spaces in.");
    }
  }

  private static Phrase phrase(String english, String other, String named, String where)
      throws BrokenException {
    String said = other.equals("=") ? english : other;
    try {
      if (Phrase.holesOf(english).equals(Phrase.holesOf(said))) {
        return Phrase.of(english, said, named);
      }
    } catch (NumberFormatException e) {
      throw new BrokenException(where, "the number of a hole is too large; count from 0.");
    }
    throw new BrokenException(
        where, "the translation has other holes than the English line; both need the same ones.");
  }

  private void add(Phrase phrase) {
    if (phrase.holes().isEmpty()) {
      whole.putIfAbsent(phrase.english(), phrase);
    } else {
      phrase
          .keyWord()
          .ifPresentOrElse(
              word -> byWord.computeIfAbsent(word, w -> new ArrayList<>()).add(phrase),
              () -> wordless.add(phrase));
    }
  }

  private static List<String> lines(Language language, String name, Shelf shelf)
      throws BrokenException {
    String file = language.tag() + "/" + name;
    List<String> lines = new ArrayList<>();
    try (InputStream in = shelf.open(name)) {
      if (in == null) {
        throw new BrokenException(file, "the file is missing; build the bench again.");
      }
      BufferedReader reader =
          new BufferedReader(
              new StringReader(new String(in.readAllBytes(), StandardCharsets.UTF_8)));
      for (String line = reader.readLine(); line != null; line = reader.readLine()) {
        lines.add(line);
        if (line.indexOf('\ufffd') >= 0) {
          throw new BrokenException(
              file + " line " + lines.size(), "this is no UTF-8; save the file as UTF-8.");
        }
      }
      return lines;
    } catch (IOException e) {
      throw new BrokenException(
          file, "it cannot be read (" + e.getMessage() + "); build the bench again.");
    }
  }

  /** All phrases, in the order of the files. */
  List<Phrase> phrases() {
    return List.copyOf(phrases);
  }

  /** English to the other language, of one file: for the scripts, which look up whole texts. */
  public Map<String, String> dictionary(String topic) {
    Map<String, String> words = new LinkedHashMap<>();
    byTopic.getOrDefault(topic, List.of()).forEach(p -> words.put(p.english(), p.other()));
    return words;
  }

  /** A text in the other language; what is not known stays English. */
  public String said(String english) {
    return said(english, unknown -> {});
  }

  /**
   * A text in the other language.
   *
   * @param unknown hears every part that is not in the book and stays English
   */
  public String said(String english, Consumer<String> unknown) {
    String bare = english.strip();
    if (bare.isEmpty()) {
      return english;
    }
    String text = SPACES.matcher(bare).replaceAll(" ");
    int at = english.indexOf(bare);
    String before = english.substring(0, at);
    String after = english.substring(at + bare.length());
    return before + known(text, 0).orElseGet(() -> partly(text, unknown, 0)) + after;
  }

  /** As well as it goes: sentences that are known, holes that are known; the rest is reported. */
  private String partly(String text, Consumer<String> unknown, int depth) {
    List<String> sentences = sentences(text);
    if (sentences.size() > 1 && depth < DEEPEST) {
      return joined(sentences, unknown, depth);
    }
    for (Phrase phrase : candidates(text)) {
      Optional<List<String>> held = phrase.heldBy(text);
      if (held.isPresent() && phrase.fixed() > 8 && depth < DEEPEST) {
        List<String> filled = new ArrayList<>();
        for (int i = 0; i < held.get().size(); i++) {
          String value = held.get().get(i);
          filled.add(
              inHole(phrase, phrase.holes().get(i), value, depth)
                  .orElseGet(() -> partly(value, unknown, depth + 1)));
        }
        return phrase.filled(filled);
      }
    }
    unknown.accept(text);
    return conventions.written(text);
  }

  private String joined(List<String> sentences, Consumer<String> unknown, int depth) {
    List<String> said = new ArrayList<>();
    int from = 0;
    while (from < sentences.size()) {
      int to = sentences.size();
      Optional<String> found = Optional.empty();
      while (to > from && found.isEmpty()) {
        found = known(String.join(" ", sentences.subList(from, to)), depth + 1);
        to = found.isEmpty() ? to - 1 : to;
      }
      if (found.isPresent()) {
        said.add(found.get());
        from = to;
      } else {
        said.add(partly(sentences.get(from), unknown, depth + 1));
        from++;
      }
    }
    return String.join(" ", said);
  }

  private static List<String> sentences(String text) {
    return List.of(SENTENCE_END.split(text));
  }

  private Optional<String> known(String text, int depth) {
    if (names.contains(text)) {
      return Optional.of(text);
    }
    Optional<String> before = remembered.get(text);
    if (before != null) {
      return before;
    }
    if (Conventions.wordless(text)) {
      Optional<String> written = Optional.of(conventions.written(text));
      remembered.put(text, written);
      return written;
    }
    if (depth > DEEPEST) {
      return Optional.empty();
    }
    Optional<String> found = looked(text, depth);
    remembered.put(text, found);
    return found;
  }

  private Optional<String> looked(String text, int depth) {
    Optional<String> found = asItStands(text, depth);
    if (found.isEmpty() && Character.isUpperCase(text.charAt(0))) {
      found =
          asItStands(Character.toLowerCase(text.charAt(0)) + text.substring(1), depth)
              .map(Phrasebook::capital);
    }
    if (found.isEmpty()) {
      found = withoutEdges(text, depth);
    }
    if (found.isEmpty()) {
      found = bySentences(text, depth);
    }
    for (int i = 0; found.isEmpty() && i < JOINTS.size(); i++) {
      found = byParts(text, JOINTS.get(i), depth);
    }
    return found.isEmpty() && CODE.matcher(text).matches() ? Optional.of(text) : found;
  }

  private static String capital(String text) {
    return text.isEmpty() ? text : Character.toUpperCase(text.charAt(0)) + text.substring(1);
  }

  private Optional<String> asItStands(String text, int depth) {
    Phrase exact = whole.get(text);
    if (exact != null) {
      return Optional.of(exact.other());
    }
    for (Phrase phrase : candidates(text)) {
      Optional<String> filled = phrase.heldBy(text).flatMap(held -> filled(phrase, held, depth));
      if (filled.isPresent()) {
        return filled;
      }
    }
    return Optional.empty();
  }

  private Optional<String> filled(Phrase phrase, List<String> held, int depth) {
    List<String> values = new ArrayList<>();
    for (int i = 0; i < held.size(); i++) {
      int last = i;
      StringBuilder run = new StringBuilder(held.get(i));
      while (phrase.touchesNext(last)) {
        last++;
        run.append(held.get(last));
      }
      Optional<List<String>> parts =
          inHoles(phrase, phrase.holes().subList(i, last + 1), run.toString(), depth);
      if (parts.isEmpty()) {
        return Optional.empty();
      }
      values.addAll(parts.get());
      i = last;
    }
    return Optional.of(phrase.filled(values));
  }

  /** A text that fills holes which touch each other, cut where it can be. */
  private Optional<List<String>> inHoles(
      Phrase phrase, List<Phrase.Hole> holes, String text, int depth) {
    if (holes.size() == 1) {
      return inHole(phrase, holes.get(0), text, depth).map(List::of);
    }
    for (int cut = text.length(); cut >= 0; cut--) {
      if (cut == text.length() || cut == 0 || " ,;:(".indexOf(text.charAt(cut)) >= 0) {
        Optional<String> head = inHole(phrase, holes.get(0), text.substring(0, cut), depth);
        Optional<List<String>> tail =
            head.isEmpty()
                ? Optional.empty()
                : inHoles(phrase, holes.subList(1, holes.size()), text.substring(cut), depth);
        if (head.isPresent() && tail.isPresent()) {
          List<String> all = new ArrayList<>(List.of(head.get()));
          all.addAll(tail.get());
          return Optional.of(all);
        }
      }
    }
    return Optional.empty();
  }

  private Optional<String> inHole(Phrase phrase, Phrase.Hole hole, String value, int depth) {
    return switch (hole.kind()) {
      case TEXT -> {
        String bare = value.strip();
        if (bare.isEmpty()) {
          yield Optional.of(value);
        }
        int at = value.indexOf(bare);
        yield known(bare, depth + 1)
            .map(t -> value.substring(0, at) + t + value.substring(at + bare.length()));
      }
      case NUMBER, DATE -> Optional.of(conventions.written(value));
      case VERBATIM ->
          hole.enclosed() || phrase.fixed() > SURE_LETTERS || verbatim(value)
              ? Optional.of(value)
              : Optional.empty();
    };
  }

  /** What may stand untranslated where little else tells that the phrase is the right one. */
  private boolean verbatim(String value) {
    String bare = value.strip();
    return bare.length() <= LONGEST_LABEL && bare.indexOf(' ') == bare.lastIndexOf(' ')
        || names.contains(bare)
        || CODE.matcher(bare).matches()
        || Conventions.wordless(bare);
  }

  /** Phrases one of whose words stands in the text, the surest first. */
  private List<Phrase> candidates(String text) {
    Set<Phrase> found = new LinkedHashSet<>();
    for (String word : Phrase.words(text)) {
      found.addAll(byWord.getOrDefault(word, List.of()));
    }
    found.addAll(wordless);
    List<Phrase> sorted = new ArrayList<>(found);
    sorted.sort(surest());
    return sorted;
  }

  /** Signs before and after, brackets round it, a full stop. */
  private Optional<String> withoutEdges(String text, int depth) {
    char last = text.charAt(text.length() - 1);
    if (text.length() > 2 && ".:;,!?…".indexOf(last) >= 0) {
      return known(text.substring(0, text.length() - 1).strip(), depth + 1).map(t -> t + last);
    }
    if (text.startsWith("(") && last == ')') {
      return known(text.substring(1, text.length() - 1), depth + 1).map(t -> "(" + t + ")");
    }
    char first = text.charAt(0);
    if (text.length() > 2 && "·✓✗–—•,;:.→".indexOf(first) >= 0) {
      String rest = text.substring(1);
      return known(rest.strip(), depth + 1).map(t -> first + (rest.startsWith(" ") ? " " : "") + t);
    }
    return Optional.empty();
  }

  private Optional<String> bySentences(String text, int depth) {
    List<String> sentences = sentences(text);
    if (sentences.size() < 2) {
      return Optional.empty();
    }
    List<String> said = new ArrayList<>();
    int from = 0;
    while (from < sentences.size()) {
      int to = from == 0 ? sentences.size() - 1 : sentences.size();
      Optional<String> found = Optional.empty();
      while (to > from && found.isEmpty()) {
        found = known(String.join(" ", sentences.subList(from, to)), depth + 1);
        to = found.isEmpty() ? to - 1 : to;
      }
      if (found.isEmpty()) {
        return Optional.empty();
      }
      said.add(found.get());
      from = to;
    }
    return Optional.of(String.join(" ", said));
  }

  /** A list, all of whose parts are known. */
  private Optional<String> byParts(String text, String joint, int depth) {
    int at = text.indexOf(joint);
    while (at > 0 && at + joint.length() < text.length()) {
      String rest = text.substring(at + joint.length());
      Optional<String> head = known(text.substring(0, at).strip(), depth + 1);
      if (head.isPresent()) {
        Optional<String> tail = known(rest.strip(), depth + 1);
        if (tail.isPresent()) {
          return Optional.of(head.get() + joint(joint) + tail.get());
        }
      }
      at = text.indexOf(joint, at + joint.length());
    }
    return Optional.empty();
  }

  /** The word of a joint, such as "and", with the spaces round it. */
  private String joint(String joint) {
    Phrase word = whole.get(joint.strip());
    return word == null ? joint : joint.replace(joint.strip(), word.other());
  }
}
