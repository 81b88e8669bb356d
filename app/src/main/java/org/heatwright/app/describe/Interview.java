package org.heatwright.app.describe;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.KeypadFile;
import org.heatwright.app.files.YamlValue;
import org.heatwright.keypad.Entry;
import org.heatwright.keypad.Gesture;
import org.heatwright.keypad.Key;
import org.heatwright.keypad.KeyedValue;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.Keypad.UnitSetting;
import org.heatwright.keypad.Special;
import org.heatwright.keypad.TimeForm;
import org.heatwright.schedule.AtEnd;
import org.heatwright.units.TemperatureUnit;

/**
 * The questions that describe a keypad, as far as given answers lead: what was asked, what is asked
 * next, or the finished description. The same answers give the same interview, so an answer is
 * taken back or changed by leaving it out; answers to what is then not asked any more do no harm.
 */
public final class Interview {

  /** The answer "I do not know". */
  public static final String UNKNOWN = "?";

  /** The question that follows where answers contradict each other: it names one to change. */
  public static final String MEND = "mend";

  private static final String NONE = "none";

  /** No keypad has more; what is asked has an end. */
  private static final int MOST_STAGES = 6;

  private final List<Answered> answered;
  private final Optional<Question> pending;
  private final String error;
  private final Optional<Described> described;

  private Interview(
      List<Answered> answered,
      Optional<Question> pending,
      String error,
      Optional<Described> described) {
    this.answered = List.copyOf(answered);
    this.pending = pending;
    this.error = error;
    this.described = described;
  }

  /** A question with its answer, as given. */
  public record Answered(Question question, String answer) {}

  /**
   * @param answers question id to answer
   */
  public static Interview of(Map<String, String> answers) {
    Script script = new Script(answers);
    try {
      Described described = script.run();
      return new Interview(script.answered, Optional.empty(), "", Optional.of(described));
    } catch (Asking asking) {
      return new Interview(
          script.answered, Optional.of(asking.question), asking.error, Optional.empty());
    }
  }

  /** What was asked and answered, in order. */
  public List<Answered> answered() {
    return answered;
  }

  /** What is asked next; empty when the description is finished. */
  public Optional<Question> pending() {
    return pending;
  }

  /** Why an answer to what is asked was not taken, one sentence; empty if there was none. */
  public String error() {
    return error;
  }

  public Optional<Described> described() {
    return described;
  }

  /** Ends the script at a question. */
  private static final class Asking extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final transient Question question;
    private final String error;

    Asking(Question question, String error) {
      super(question.id(), null, false, false);
      this.question = question;
      this.error = error;
    }
  }

  /** Asks in order; every question that has no good answer ends it. */
  private static final class Script {

    private static final String GESTURE_EXAMPLE = "next, or hold next 2, or program, confirm";

    private final Map<String, String> answers;
    private final List<Answered> answered = new ArrayList<>();
    private final List<Described.Unsure> unsure = new ArrayList<>();
    private String about = "";
    private Set<Key> keys = Set.of();

    Script(Map<String, String> answers) {
      this.answers = answers;
    }

    // ---- asking

    private <T> T ask(Question question, Function<String, T> meaning) {
      String answer = answers.getOrDefault(question.id(), "").strip();
      if (answer.isEmpty()) {
        throw new Asking(question, "");
      }
      if (answer.equals(UNKNOWN)) {
        throw new Asking(question, "This one needs an answer; everything else rests on it.");
      }
      T meant;
      try {
        meant = meaning.apply(answer);
      } catch (IllegalArgumentException e) {
        throw new Asking(question, Objects.requireNonNull(e.getMessage()));
      }
      answered.add(new Answered(question, answer));
      return meant;
    }

    private <T> T ask(Question question, Function<String, T> meaning, String key, T instead) {
      if (answers.getOrDefault(question.id(), "").strip().equals(UNKNOWN)) {
        answered.add(new Answered(question, UNKNOWN));
        unsure.add(new Described.Unsure(key, question.unknown().orElseThrow()));
        return instead;
      }
      return ask(question, meaning);
    }

    /** Builds a part; what contradicts itself is asked again. */
    private <T> T build(Supplier<T> part) {
      try {
        return part.get();
      } catch (IllegalArgumentException e) {
        Answered last = answered.remove(answered.size() - 1);
        throw new Asking(last.question(), Objects.requireNonNull(e.getMessage()));
      }
    }

    private Question text(String id, String ask, String why, String look, String example) {
      return new Question(
          id, about, ask, why, look, Question.Kind.TEXT, List.of(), example, Optional.empty());
    }

    /** Options are word and meaning, in turn. */
    private Question choice(String id, String ask, String why, String look, String... options) {
      List<Question.Option> all = new ArrayList<>();
      for (int i = 0; i < options.length; i += 2) {
        all.add(new Question.Option(options[i], options[i + 1]));
      }
      return new Question(id, about, ask, why, look, Question.Kind.ONE, all, "", Optional.empty());
    }

    private static Question several(Question one) {
      return new Question(
          one.id(),
          one.about(),
          one.ask(),
          one.why(),
          one.look(),
          Question.Kind.SEVERAL,
          one.options(),
          one.example(),
          one.unknown());
    }

    private static Question orUnknown(Question one, String unknown) {
      return new Question(
          one.id(),
          one.about(),
          one.ask(),
          one.why(),
          one.look(),
          one.kind(),
          one.options(),
          one.example(),
          Optional.of(unknown));
    }

    // ---- what answers mean

    /** A choice by its word or its number. */
    private static String word(Question question, String answer) {
      String plain = answer.toLowerCase(Locale.ROOT);
      List<Question.Option> options = question.options();
      if (plain.matches("\\d{1,2}") && options.stream().noneMatch(o -> o.word().equals(plain))) {
        int number = Integer.parseInt(plain);
        if (number >= 1 && number <= options.size()) {
          return options.get(number - 1).word();
        }
      }
      return options.stream()
          .map(Question.Option::word)
          .filter(w -> w.toLowerCase(Locale.ROOT).equals(plain))
          .findFirst()
          .orElseThrow(
              () ->
                  wrong(
                      answer,
                      "one of "
                          + String.join(
                              ", ", options.stream().map(Question.Option::word).toList())));
    }

    private <E extends Enum<E>> E one(Question question, Class<E> type) {
      return ask(question, answer -> constant(type, word(question, answer)));
    }

    private <E extends Enum<E>> E one(Question question, Class<E> type, String key, E instead) {
      return ask(question, answer -> constant(type, word(question, answer)), key, instead);
    }

    private static <E extends Enum<E>> E constant(Class<E> type, String word) {
      return Arrays.stream(type.getEnumConstants())
          .filter(c -> YamlValue.word(c).equals(word))
          .findFirst()
          .orElseThrow();
    }

    private static Set<String> words(Question question, String answer) {
      Set<String> words = new LinkedHashSet<>();
      if (!answer.equalsIgnoreCase(NONE)) {
        for (String word : answer.split("[,;\\s]+")) {
          if (!word.isEmpty()) {
            words.add(word(question, word));
          }
        }
      }
      return words;
    }

    private static IllegalArgumentException wrong(String answer, String expected) {
      String shown = answer.length() > 60 ? answer.substring(0, 60) + "…" : answer;
      return new IllegalArgumentException("\"%s\"; expected %s.".formatted(shown, expected));
    }

    private static List<BigDecimal> numbers(String answer, int count, String expected) {
      List<BigDecimal> numbers = new ArrayList<>();
      Matcher matcher = Pattern.compile("\\d{1,6}(?:[.,]\\d{1,6})?").matcher(answer);
      while (matcher.find()) {
        numbers.add(new BigDecimal(matcher.group().replace(',', '.')));
      }
      if (numbers.size() != count || answer.contains("-")) {
        throw wrong(answer, expected);
      }
      return numbers;
    }

    private static int whole(String answer, int least, int most) {
      String expected = "a whole number from %d to %d".formatted(least, most);
      if (!answer.matches("\\d{1,6}")) {
        throw wrong(answer, expected);
      }
      int number = Integer.parseInt(answer);
      if (number < least || number > most) {
        throw wrong(answer, expected);
      }
      return number;
    }

    private static Keypad.Range range(String answer) {
      List<BigDecimal> n =
          numbers(answer, 3, "three numbers: smallest, largest, step, such as 5 995 5");
      return new Keypad.Range(n.get(0), n.get(1), n.get(2));
    }

    private static Optional<String> textOrNone(String answer) {
      return answer.equalsIgnoreCase(NONE) ? Optional.empty() : Optional.of(answer);
    }

    private Gesture gesture(String answer, boolean needed) {
      List<Gesture.Press> presses = new ArrayList<>();
      if (answer.equalsIgnoreCase(NONE)) {
        if (needed) {
          throw wrong(answer, "the keys to press, such as " + GESTURE_EXAMPLE);
        }
        return Gesture.of();
      }
      for (String press : answer.toLowerCase(Locale.ROOT).split("\\s*(?:,|;|\\bthen\\b)\\s*")) {
        Matcher parts =
            Pattern.compile("(?:(hold)\\s+)?([a-z]+)(?:\\s+(\\d{1,2}(?:\\.\\d{1,2})?)(?:\\s*s)?)?")
                .matcher(press);
        boolean hold = parts.matches() && parts.group(1) != null;
        if (!parts.matches() || hold != (parts.group(3) != null)) {
          throw wrong(answer, "the keys to press, such as " + GESTURE_EXAMPLE);
        }
        Key key =
            Key.ofWord(parts.group(2))
                .filter(keys::contains)
                .orElseThrow(
                    () ->
                        wrong(
                            answer,
                            "keys that it has: "
                                + String.join(
                                    ", ", keys.stream().sorted().map(Key::word).toList())));
        double seconds = hold ? Double.parseDouble(parts.group(3)) : 0;
        if (hold && !(seconds > 0 && seconds <= 60)) {
          throw wrong(answer, "a key held for more than 0 and at most 60 s");
        }
        presses.add(new Gesture.Press(key, seconds));
      }
      return new Gesture(presses);
    }

    private static List<KeyedValue.Kind> kinds(Question question, String answer, int least) {
      List<KeyedValue.Kind> kinds =
          words(question, answer).stream().map(w -> constant(KeyedValue.Kind.class, w)).toList();
      if (kinds.size() < least) {
        throw wrong(answer, "rate (or time), target and hold, each once, in their order");
      }
      if (kinds.contains(KeyedValue.Kind.RATE) && kinds.contains(KeyedValue.Kind.TIME)) {
        throw wrong(answer, "a rate or a time, not both");
      }
      return kinds;
    }

    // ---- the questions

    Described run() {
      about = "The keypad";
      String name =
          ask(
              text(
                  "name",
                  "What do you call this keypad?",
                  "Sheets and lists name it.",
                  "",
                  "the grey one"),
              answer -> answer);
      keys = keys();
      Entry entry = entry();
      Key accept = accept();
      int slots =
          ask(
              text(
                  "slots",
                  "How many programs can it store?",
                  "Sheets say which one to choose.",
                  "Choose a program and go on until the number does not rise any more.",
                  "4"),
              answer -> whole(answer, 1, 999));
      int segments =
          ask(
              text(
                  "segments",
                  "How many segments (a rate, a target, a hold) can a program have?",
                  "A longer schedule is refused, not cut off.",
                  "Key a program on and on, or read the maker's sheet.",
                  "8"),
              answer -> whole(answer, 1, 99));
      int digits =
          ask(
              text(
                  "display-digits",
                  "How many digits can the display show at once?",
                  "What does not fit it cannot be shown.",
                  "Count the places that light up at switching on.",
                  "4"),
              answer -> whole(answer, 2, 8));
      UnitSetting units = units(entry);
      about = "Making a program";
      List<KeyedValue.Kind> order = order();
      Keypad.FieldStart starts = starts();
      Keypad.RateField rate =
          order.contains(KeyedValue.Kind.TIME) ? time(entry, starts) : rate(entry, units, starts);
      Keypad.TargetField target = target(units, starts);
      Keypad.HoldField hold = hold(entry, starts);
      Optional<Keypad.DelayField> delay = delay(starts);
      Keypad.EndRule end =
          end(
              entry,
              order,
              kind ->
                  switch (kind) {
                    case RATE, TIME -> rate.range();
                    case TARGET -> target.range();
                    // Where a hold of zero ends a program it is none of the ordinary ones.
                    default ->
                        new Keypad.Range(hold.stepMinutes(), hold.maxMinutes(), hold.stepMinutes());
                  });
      about = "Opening, keeping, leaving";
      Gesture open =
          keysFor(
              "open",
              "Which keys lead from the idle display into programming?",
              "The sheet begins there.",
              "From the display of the kiln's temperature.",
              true);
      Keypad.Navigation navigation =
          one(
              choice(
                  "navigation",
                  "Inside a program, how do you go from value to value?",
                  "It decides what every key means there.",
                  "Open a program and press the accepting key once: does the next value come, or can"
                      + " you now change this one?",
                  "sequence",
                  "accepting a value leads to the next",
                  "list",
                  "the values are a list: walk along it, open one, close it again"),
              Keypad.Navigation.class);
      Keypad.Programming programming = programming(navigation);
      Gesture commit =
          programming.commits() == Keypad.Commits.GESTURE
              ? keysFor(
                  "commit",
                  "Which keys save the program?",
                  "Without them all keying is lost.",
                  "",
                  true)
              : Gesture.of();
      Optional<String> committed =
          programming.commits() == Keypad.Commits.ACCEPTING
              ? Optional.empty()
              : ask(
                  text(
                      "committed",
                      "What does the display show when the program has been saved? none: nothing"
                          + " special",
                      "It is the only sign that it was kept.",
                      "Save one and look.",
                      "donE"),
                  Script::textOrNone);
      OptionalInt discards = discards();
      Gesture leave =
          keysFor(
              "leave",
              "Which keys lead out of programming and out of the review, back to the idle display?"
                  + " none: no key does",
              "The sheet ends there, and a mistake is left by them.",
              "",
              false);
      Gesture previous =
          keysFor(
              "previous",
              "Which keys go one value back, or leave a value unchanged? none: no key does",
              "A slip is then mended without starting over.",
              "Change a value, do not accept it, and try each key.",
              false);
      Keypad.Review review = review(order, delay, end);
      Gesture start = starting(programming.commits() == Keypad.Commits.START);
      Gesture stop =
          ask(
              orUnknown(
                  text(
                      "stop",
                      "Which keys stop a running program?",
                      "The sheet says how to end it. Know this before you fire.",
                      "On a cold kiln: start, then stop.",
                      "hold down 3"),
                  "no keys that stop a program are known; find out before firing."),
              answer -> gesture(answer, false),
              "gestures",
              Gesture.of());
      Keypad.PowerCut powerCut = powerCut();
      Gesture reviewKeys = Objects.requireNonNull(this.reviewKeys);
      Gesture switchUnit = Objects.requireNonNull(this.switchUnit);
      Keypad keypad =
          mended(
              () ->
                  new Keypad(
                      name,
                      units,
                      keys,
                      entry,
                      accept,
                      starts,
                      slots,
                      segments,
                      digits,
                      order,
                      rate,
                      target,
                      hold,
                      delay,
                      end,
                      programming,
                      new Keypad.Gestures(
                          open,
                          commit,
                          committed,
                          discards,
                          leave,
                          previous,
                          reviewKeys,
                          start,
                          stop,
                          switchUnit),
                      review,
                      powerCut));
      return new Described(keypad, unsure);
    }

    private @org.jspecify.annotations.Nullable Gesture reviewKeys;
    private @org.jspecify.annotations.Nullable Gesture switchUnit;

    /** The whole; what contradicts itself or cannot be written leads to an answer to change. */
    private Keypad mended(Supplier<Keypad> whole) {
      String sentence;
      try {
        Keypad keypad = whole.get();
        if (KeypadFile.read(KeypadFile.write(keypad), "the keypad").equals(keypad)) {
          return keypad;
        }
        sentence = "This cannot be written to a file as it is.";
      } catch (IllegalArgumentException | InputException e) {
        sentence = Objects.requireNonNull(e.getMessage());
      }
      List<Question.Option> options = new ArrayList<>();
      for (Answered one : answered) {
        options.add(new Question.Option(one.question().id(), one.answer()));
      }
      throw new Asking(
          new Question(
              MEND,
              "Together",
              "These answers do not go together. Which of them do you want to change?",
              "A sheet made from this would be wrong.",
              "",
              Question.Kind.ONE,
              options,
              "",
              Optional.empty()),
          sentence);
    }

    private Set<Key> keys() {
      Question question =
          several(
              choice(
                  "keys",
                  "Which keys does it have? Take for each key the word here that says what it does.",
                  "Sheets call your keys by these words.",
                  "Look at the front; a knob that can be pushed is two: turn and push.",
                  "up",
                  "makes a value larger",
                  "down",
                  "makes a value smaller",
                  "next",
                  "goes on to the next value",
                  "back",
                  "goes back or out",
                  "confirm",
                  "takes a value",
                  "clear",
                  "empties what was typed",
                  "program",
                  "opens programming",
                  "start",
                  "starts a program",
                  "stop",
                  "stops it",
                  "digits",
                  "the ten keys 0 to 9",
                  "point",
                  "a decimal point among the digits",
                  "minus",
                  "a sign among the digits",
                  "turn",
                  "a knob that is turned",
                  "push",
                  "the same knob pushed"));
      return ask(
          question,
          answer -> {
            Set<Key> all = EnumSet.noneOf(Key.class);
            words(question, answer).forEach(w -> all.add(Key.ofWord(w).orElseThrow()));
            boolean steps = all.containsAll(Set.of(Key.UP, Key.DOWN));
            if (!steps && !all.contains(Key.DIGITS) && !all.contains(Key.TURN)) {
              throw wrong(answer, "up and down, or digits, or turn: something must change a value");
            }
            if (all.stream().noneMatch(Script::canAccept)) {
              throw wrong(answer, "one key at least that takes a value, such as next or confirm");
            }
            return all;
          });
    }

    private static boolean canAccept(Key key) {
      return switch (key) {
        case UP, DOWN, DIGITS, POINT, MINUS, TURN, CLEAR -> false;
        default -> true;
      };
    }

    // ---- making a value

    private Entry entry() {
      about = "Changing a number";
      List<String> ways = new ArrayList<>();
      if (keys.containsAll(Set.of(Key.UP, Key.DOWN))) {
        ways.addAll(List.of("steps", "with the keys up and down"));
      }
      if (keys.contains(Key.DIGITS)) {
        ways.addAll(List.of("digits", "typed with the digit keys"));
      }
      if (keys.contains(Key.TURN)) {
        ways.addAll(List.of("knob", "with the knob"));
      }
      String way = ways.get(0);
      if (ways.size() > 2) {
        Question question =
            choice(
                "entry",
                "How do you change a number in a program?",
                "It decides which keys a sheet tells.",
                "",
                ways.toArray(String[]::new));
        way = ask(question, answer -> word(question, answer));
      }
      return switch (way) {
        case "steps" -> steps();
        case "digits" -> new Entry.DigitKeys(keys.contains(Key.POINT) && pointKey());
        default -> knob();
      };
    }

    private Entry steps() {
      List<Entry.RepeatStage> stages = new ArrayList<>();
      while (stages.size() < MOST_STAGES) {
        int number = stages.size() + 1;
        Question question =
            orUnknown(
                text(
                    "repeat" + number,
                    number == 1
                        ? "Hold the up key: does the number start to run? no, or: after about how"
                            + " many seconds, by how many smallest steps at a time, how many times a"
                            + " second"
                        : "Keep holding: does it run faster later on? no, or again: after about how"
                            + " many seconds from the press, steps at a time, times a second",
                    "Holding is quicker than tapping, and overshoots.",
                    "Take a number far from its end, hold the key and count with a clock.",
                    number == 1 ? "0.6 1 6" : "3 10 5"),
                number == 1
                    ? "whether a held key runs is not known; sheets count taps only."
                    : "whether a held key gets faster still is not known; let go early.");
        Optional<Entry.RepeatStage> stage =
            ask(question, Script::stage, "entry", Optional.<Entry.RepeatStage>empty());
        if (stage.isEmpty()) {
          break;
        }
        stages.add(stage.get());
        build(() -> new Entry.StepKeys(stages, Entry.AtLimit.STOP, Entry.AtLimit.STOP));
      }
      return new Entry.StepKeys(stages, limit("at-least"), limit("at-greatest"));
    }

    private static Optional<Entry.RepeatStage> stage(String answer) {
      if (answer.equalsIgnoreCase("no") || answer.equalsIgnoreCase(NONE)) {
        return Optional.empty();
      }
      String expected = "no, or three numbers: seconds, steps at a time, times a second";
      List<BigDecimal> n = numbers(answer, 3, expected);
      if (n.get(1).stripTrailingZeros().scale() > 0) {
        throw wrong(answer, expected + " (whole steps)");
      }
      return Optional.of(
          new Entry.RepeatStage(
              n.get(0).doubleValue(), n.get(1).intValue(), n.get(2).doubleValue()));
    }

    private Entry.AtLimit limit(String id) {
      boolean least = id.equals("at-least");
      return one(
          orUnknown(
              choice(
                  id,
                  least
                      ? "Go to the smallest value and one further down: does it stay, or jump to the"
                          + " largest?"
                      : "Go to the largest value and one further up: does it stay, or jump to the"
                          + " smallest?",
                  "A jump can be the shortest way, or a trap.",
                  least ? "A hold of zero is quickly reached." : "",
                  "stop",
                  "it stays",
                  "wrap",
                  "it jumps to the other end"),
              "whether it jumps at the %s value is not known; sheets never go beyond it."
                  .formatted(least ? "smallest" : "largest")),
          Entry.AtLimit.class,
          "entry",
          Entry.AtLimit.STOP);
    }

    private boolean pointKey() {
      Question question =
          choice(
              "point-key",
              "Must the decimal point be typed?",
              "Otherwise digits fill the display from the right and the point stands still.",
              "Type a number with a point in a program.",
              "yes",
              "the point is a key",
              "no",
              "it stands still");
      return ask(question, answer -> word(question, answer).equals("yes"));
    }

    private Entry knob() {
      int clicks =
          ask(
              orUnknown(
                  text(
                      "clicks",
                      "How many clicks has the knob in one turn?",
                      "Sheets say how far to turn.",
                      "Make a mark and count once around.",
                      "24"),
                  "the clicks of a turn are not counted; turns on sheets are rough."),
              answer -> whole(answer, 4, 100),
              "entry",
              20);
      int fast =
          ask(
              orUnknown(
                  text(
                      "fast-steps",
                      "Spin the knob fast: by how many smallest steps does a click move then? 1: no"
                          + " difference",
                      "Large changes are then quicker.",
                      "Spin a quarter turn and see how far the number went.",
                      "10"),
                  "whether spinning moves further is not known; turn slowly."),
              answer -> whole(answer, 1, 1000),
              "entry",
              1);
      return new Entry.Knob(clicks, fast, limit("at-least"), limit("at-greatest"));
    }

    private Key accept() {
      List<String> options = new ArrayList<>();
      keys.stream()
          .sorted()
          .filter(Script::canAccept)
          .forEach(key -> options.addAll(List.of(key.word(), "")));
      if (options.size() == 2) {
        return Key.ofWord(options.get(0)).orElseThrow();
      }
      Question question =
          choice(
              "accept",
              "Which key takes a value when it is right?",
              "Every line of a sheet ends with it.",
              "Change a number in a program and press keys until it is taken.",
              options.toArray(String[]::new));
      return ask(question, answer -> Key.ofWord(word(question, answer)).orElseThrow());
    }

    private Keypad.FieldStart starts() {
      return one(
          orUnknown(
              choice(
                  "starts",
                  "When a value comes up to be keyed, where does it stand?",
                  "Sheets count steps from there.",
                  "Go through a stored program.",
                  "stored",
                  "at what the program holds",
                  "default",
                  "always at the same value"),
              "where a value stands when it comes up is not known; look before you key."),
          Keypad.FieldStart.class,
          "starts",
          Keypad.FieldStart.STORED);
    }

    // ---- the unit

    private UnitSetting units(Entry entry) {
      about = "The unit";
      Question setting =
          choice(
              "unit",
              "Does it work in °C or °F, can it be switched, or does each program ask?",
              "Numbers in the wrong unit ruin work and kiln.",
              "A cold kiln reads about 20 in °C and about 68 in °F. Look for a setting.",
              "C",
              "°C only",
              "F",
              "°F only",
              "switchable",
              "either, by a setting",
              "asked",
              "either: each program asks first");
      String chosen = ask(setting, answer -> word(setting, answer));
      boolean asked = chosen.equals("asked");
      boolean switchable = asked || chosen.equals("switchable");
      Optional<TemperatureUnit> rangesIn = TemperatureUnit.ofLetter(chosen);
      if (switchable) {
        Question now =
            choice(
                "ranges-in",
                asked
                    ? "In which unit is the program with which you try out its ranges?"
                    : "In which unit is it now, while you try out its ranges?",
                "Ranges differ between the two.",
                "",
                "C",
                "",
                "F",
                "");
        rangesIn =
            Optional.of(
                ask(now, answer -> TemperatureUnit.ofLetter(word(now, answer)).orElseThrow()));
      }
      Question shown =
          several(
              choice(
                  "unit-shown",
                  "Where does the display show which unit is in force? none: nowhere",
                  "A read-back proves a unit only where it is shown.",
                  "A C, an F or a degree sign beside the number.",
                  "idle",
                  "while nothing is keyed",
                  "entry",
                  "while a value is keyed",
                  "review",
                  "while a program is read back",
                  "settings",
                  "among the settings"));
      Set<UnitSetting.ShownAt> at = EnumSet.noneOf(UnitSetting.ShownAt.class);
      ask(
              orUnknown(
                  shown,
                  "where the unit is shown is not known; it must be settled on a cold kiln."),
              answer -> words(shown, answer),
              "unit",
              Set.<String>of())
          .forEach(word -> at.add(constant(UnitSetting.ShownAt.class, word)));
      switchUnit = Gesture.of();
      if (!switchable) {
        return UnitSetting.fixed(rangesIn.orElseThrow(), at.toArray(new UnitSetting.ShownAt[0]));
      }
      UnitSetting.SwitchingConverts converts =
          one(
              orUnknown(
                  choice(
                      "switching-converts",
                      asked
                          ? "Choose the other unit in a stored program: are its numbers converted?"
                          : "Switch the unit: are the numbers of stored programs converted?",
                      "If not, a program that was right is dangerous afterwards.",
                      "Note a stored target, switch, and look again.",
                      "yes",
                      "the numbers change",
                      "no",
                      "they stay as they are"),
                  "whether switching converts stored programs is not known; read every program back"
                      + " after switching."),
              UnitSetting.SwitchingConverts.class,
              "unit",
              UnitSetting.SwitchingConverts.UNKNOWN);
      if (asked) {
        TemperatureUnit ranges = rangesIn.orElseThrow();
        Keypad.UnitPrompt prompt = unitPrompt(entry);
        return build(
            () ->
                new UnitSetting(
                    UnitSetting.Setting.SWITCHABLE, ranges, at, converts, Optional.of(prompt)));
      }
      switchUnit =
          keysFor(
              "switch-unit",
              "Which keys switch the unit, straight from the idle display? none: it is done in a"
                  + " menu",
              "They may be pressed by mistake.",
              "",
              false);
      return new UnitSetting(UnitSetting.Setting.SWITCHABLE, rangesIn.orElseThrow(), at, converts);
    }

    /** Two values that go around either way: which one is the lower does not matter. */
    private static boolean goesAround(Entry entry) {
      return entry instanceof Entry.StepKeys steps
          ? steps.atLeast() == Entry.AtLimit.WRAP && steps.atGreatest() == Entry.AtLimit.WRAP
          : entry instanceof Entry.Knob knob
              && knob.atLeast() == Entry.AtLimit.WRAP
              && knob.atGreatest() == Entry.AtLimit.WRAP;
    }

    /** The unit as a program asks it. */
    private Keypad.UnitPrompt unitPrompt(Entry entry) {
      Optional<String> label = label("unit-label", "Unit");
      boolean digits = entry instanceof Entry.DigitKeys;
      List<String> shows =
          ask(
              text(
                  "unit-shows",
                  digits
                      ? "Which digit is typed for °C, and which for °F?"
                      : "What does it show for °C, and what for °F?",
                  "The read-back knows the unit by it.",
                  "",
                  digits ? "0, 1" : "C, F"),
              answer -> {
                List<String> two = List.of(answer.split("\\s*[,;]\\s*|\\s+"));
                if (two.size() != 2
                    || (digits && two.stream().anyMatch(t -> !t.matches("\\d{1,4}")))) {
                  throw wrong(answer, "two texts, such as " + (digits ? "0, 1" : "C, F"));
                }
                return two;
              });
      TemperatureUnit lower = TemperatureUnit.CELSIUS;
      if (!digits && !goesAround(entry)) {
        Question below =
            choice(
                "unit-lower",
                "Which of the two do you come to downward?",
                "It decides the key that a sheet tells.",
                "Go down until nothing changes, or see which one follows the other.",
                "C",
                "",
                "F",
                "");
        lower = ask(below, answer -> TemperatureUnit.ofLetter(word(below, answer)).orElseThrow());
      }
      Keypad.Position review =
          one(
              orUnknown(
                  choice(
                      "unit-review",
                      "When a stored program is read back, is its unit one of the values?",
                      "Otherwise a read-back cannot prove the unit.",
                      "",
                      "first",
                      "yes, the first",
                      "last",
                      "yes, the last",
                      "hidden",
                      "no"),
                  "whether the review shows a program's unit is not known; it counts as not shown."),
              Keypad.Position.class,
              "unit",
              Keypad.Position.HIDDEN);
      TemperatureUnit lowest = lower;
      return build(() -> new Keypad.UnitPrompt(label, shows.get(0), shows.get(1), lowest, review));
    }

    // ---- values

    private List<KeyedValue.Kind> order() {
      Question question =
          order(
              "order",
              "In which order does it ask for the values of a segment?",
              "Sheets go in this order.",
              "Open an empty program and go on from value to value.",
              List.of(
                  KeyedValue.Kind.RATE,
                  KeyedValue.Kind.TIME,
                  KeyedValue.Kind.TARGET,
                  KeyedValue.Kind.HOLD));
      return ask(question, answer -> kinds(question, answer, 3));
    }

    private Question order(
        String id, String ask, String why, String look, List<KeyedValue.Kind> kinds) {
      return new Question(
          id,
          about,
          ask,
          why,
          look,
          Question.Kind.TEXT,
          kinds.stream()
              .map(kind -> new Question.Option(YamlValue.word(kind), meaning(kind)))
              .toList(),
          kinds.stream()
              .filter(kind -> kinds.size() == 3 || kind != KeyedValue.Kind.TIME)
              .map(YamlValue::word)
              .collect(Collectors.joining(", ")),
          Optional.empty());
    }

    private static String meaning(KeyedValue.Kind kind) {
      return switch (kind) {
        case RATE -> "how fast";
        case TIME -> "instead of a rate: the time to get to the target";
        case TARGET -> "up or down to which temperature";
        default -> "how long to stay";
      };
    }

    private Optional<String> label(String id, String example) {
      return ask(
          text(
              id,
              "What does the display mark it with? # for the segment's number; none: no mark",
              "Sheets and the read-back name values as your display does.",
              "",
              example),
          answer -> {
            if (!answer.equalsIgnoreCase(NONE) && answer.chars().noneMatch(Character::isLetter)) {
              throw wrong(answer, "a mark with a letter, such as " + example + ", or none");
            }
            return textOrNone(answer);
          });
    }

    private Optional<Keypad.Range> otherRange(String id, String key, UnitSetting units) {
      if (!units.switchable()) {
        return Optional.empty();
      }
      return ask(
          orUnknown(
              text(
                  id,
                  "Switched to %s: its smallest, largest and step? converted: the same, converted"
                      .formatted(units.rangesIn().other().symbol()),
                  "What is beyond its range cannot be keyed.",
                  "Switch the unit and try, then switch back.",
                  "70 2010 1"),
              "the range in %s is not known; it is taken as converted."
                  .formatted(units.rangesIn().other().symbol())),
          answer ->
              answer.equalsIgnoreCase("converted") ? Optional.empty() : Optional.of(range(answer)),
          key,
          Optional.<Keypad.Range>empty());
    }

    private Optional<BigDecimal> start(String id, Keypad.FieldStart starts, String unit) {
      if (starts == Keypad.FieldStart.STORED) {
        return Optional.empty();
      }
      return ask(
          text(
              id,
              "Where does it always start%s? none: at its smallest".formatted(unit),
              "Sheets count steps from there.",
              "",
              "20"),
          answer ->
              answer.equalsIgnoreCase(NONE)
                  ? Optional.empty()
                  : Optional.of(numbers(answer, 1, "one number, or none").get(0)));
    }

    /** A value that is no ordinary number: what shows, where one meets it, how it is typed. */
    private Optional<Special> special(
        String id, Question shows, Entry entry, Keypad.Range range, Optional<String> key) {
      Optional<String> text =
          key.isPresent()
              ? ask(shows, Script::textOrNone, key.get(), Optional.<String>empty())
              : ask(shows, Script::textOrNone);
      if (text.isEmpty()) {
        return Optional.empty();
      }
      Optional<String> typed = Optional.empty();
      boolean digits = entry instanceof Entry.DigitKeys;
      if (digits && !text.get().matches("\\d+")) {
        typed =
            Optional.of(
                ask(
                    text(
                        id + "-typed",
                        "Which digits are typed for it?",
                        "The display shows something else than the keys.",
                        "",
                        "999"),
                    answer -> {
                      if (!answer.matches("\\d{1,8}")) {
                        throw wrong(answer, "digits only");
                      }
                      return answer;
                    }));
      }
      Special.Place place = Special.Place.ABOVE_GREATEST;
      if (digits) {
        BigDecimal number = new BigDecimal(typed.orElse(text.get()));
        if (number.compareTo(range.min()) < 0) {
          place = Special.Place.BELOW_LEAST;
        }
      } else {
        place =
            one(
                choice(
                    id + "-at",
                    "Where do you meet it: one below the smallest number, or one above the largest?",
                    "It decides which way is shorter.",
                    "Go to both ends of the numbers and one further.",
                    "below-least",
                    "below the smallest",
                    "above-greatest",
                    "above the largest"),
                Special.Place.class);
      }
      return Optional.of(new Special(text.get(), place, typed));
    }

    private Keypad.RateField rate(Entry entry, UnitSetting units, Keypad.FieldStart starts) {
      about = "The rate";
      Optional<String> label = label("rate-label", "r#");
      Keypad.RateField.Per per =
          one(
              choice(
                  "rate-per",
                  "Is a rate given per hour or per minute?",
                  "The difference is sixty times.",
                  "The maker's sheet says so; a range up to about 999 is mostly per hour, one up to"
                      + " about 30 per minute (common practice, no source).",
                  "hour",
                  "",
                  "minute",
                  ""),
              Keypad.RateField.Per.class);
      Keypad.Range range =
          ask(
              text(
                  "rate-range",
                  "Its smallest and largest ordinary number, and the step between neighbours?",
                  "What cannot be keyed is rounded toward safe, and told.",
                  "Leave out zero and words: they are asked next.",
                  "5 995 5"),
              Script::range);
      if (range.min().signum() == 0) {
        throw again("A rate of 0 is no ordinary one: begin with the smallest above it.");
      }
      Optional<Keypad.Range> other = otherRange("rate-other", "rate", units);
      Optional<Special> fastest =
          special(
              "fastest",
              orUnknown(
                  text(
                      "fastest",
                      "Key a rate of full speed: what does the display show? none: it cannot",
                      "Heating as fast as the kiln can is its own value, often a word, 0 or the"
                          + " largest number.",
                      "Go to both ends of the rates and one further.",
                      "FULL"),
                  "how full speed is keyed is not known; the fastest ordinary rate is used."),
              entry,
              range,
              Optional.of("rate"));
      List<String> cooling =
          new ArrayList<>(
              List.of(
                  "implied",
                  "by a target below the one before",
                  "not-controlled",
                  "it cannot: the kiln just cools"));
      if (!(entry instanceof Entry.DigitKeys) || keys.contains(Key.MINUS)) {
        cooling.addAll(2, List.of("negative", "the rate has a minus sign"));
      }
      Keypad.Cooling down =
          one(
              orUnknown(
                  choice(
                      "cooling",
                      "How do you key a slow way down?",
                      "Moulds and glass must not cool as fast as the kiln likes.",
                      "",
                      cooling.toArray(String[]::new)),
                  "whether it cools at a rate is not known; it is taken that it cannot."),
              Keypad.Cooling.class,
              "rate",
              Keypad.Cooling.NOT_CONTROLLED);
      Optional<BigDecimal> start = start("rate-start", starts, "");
      requireIn(range, start);
      return build(() -> new Keypad.RateField(label, per, range, other, fastest, down, start));
    }

    private Keypad.RateField time(Entry entry, Keypad.FieldStart starts) {
      about = "The time to get to the target";
      Optional<String> label = label("time-label", "t#");
      TimeForm form = form("time-form", "a time");
      List<BigDecimal> longest = times("time-range", "time");
      Keypad.Range range =
          build(() -> new Keypad.Range(longest.get(1), longest.get(0), longest.get(1)));
      Optional<Special> fastest =
          special(
              "fastest",
              orUnknown(
                  text(
                      "fastest",
                      "Key full speed: what does the display show for the time? none: it cannot",
                      "Heating as fast as the kiln can is its own value, often 0 or a word.",
                      "Go to both ends of the times and one further.",
                      "0.00"),
                  "how full speed is keyed is not known; the least time is used."),
              entry,
              range,
              Optional.of("time"));
      Keypad.Cooling down =
          one(
              orUnknown(
                  choice(
                      "cooling",
                      "How do you key a slow way down?",
                      "Moulds and glass must not cool as fast as the kiln likes.",
                      "",
                      "implied",
                      "by a target below the one before",
                      "not-controlled",
                      "it cannot: the kiln just cools"),
                  "whether it cools in a given time is not known; it is taken that it cannot."),
              Keypad.Cooling.class,
              "time",
              Keypad.Cooling.NOT_CONTROLLED);
      Optional<BigDecimal> start = start("time-start", starts, ", in minutes");
      requireIn(range, start);
      return build(() -> Keypad.RateField.time(label, form, range, fastest, down, start));
    }

    private Asking again(String sentence) {
      return new Asking(answered.remove(answered.size() - 1).question(), sentence);
    }

    private void requireIn(Keypad.Range range, Optional<BigDecimal> start) {
      if (start.isPresent() && !range.holds(start.get())) {
        throw again("%s is not one of its values.".formatted(start.get().toPlainString()));
      }
    }

    private Keypad.TargetField target(UnitSetting units, Keypad.FieldStart starts) {
      about = "The target";
      Optional<String> label = label("target-label", "t#");
      Keypad.Range range =
          ask(
              text(
                  "target-range",
                  "Its smallest and largest number, and the step between neighbours?",
                  "What cannot be keyed is rounded toward safe, and told.",
                  "",
                  "20 1100 1"),
              Script::range);
      Optional<Keypad.Range> other = otherRange("target-other", "target", units);
      Optional<BigDecimal> start = start("target-start", starts, "");
      requireIn(range, start);
      return new Keypad.TargetField(label, range, other, start);
    }

    private TimeForm form(String id, String what) {
      Question question =
          choice(
              id,
              "How does it write %s of two and a half hours?".formatted(what),
              "2.50 for 2 h 50 min where 2 h 30 min was meant has spoilt many a firing.",
              "Step upward from 0: after 59 minutes, does 1.00 come (hours and minutes)? Does 2.99"
                  + " exist (decimal hours)?",
              "minutes",
              "150",
              "h.mm",
              "2.30",
              "hh:mm",
              "02:30",
              "decimal-hours",
              "2.5 or 2.50");
      return ask(
          orUnknown(
              question,
              "whether the digits after the point of %s count minutes or hundredths is not known;"
                      .formatted(what)
                  + " only whole hours are keyed."),
          answer -> TimeForm.ofWord(word(question, answer)).orElseThrow(),
          id.substring(0, id.indexOf('-')),
          TimeForm.HOURS_UNSURE);
    }

    private List<BigDecimal> times(String id, String what) {
      return ask(
          text(
              id,
              "The longest %s as h:mm, and the step between neighbours in minutes?".formatted(what),
              "A longer one is refused or split, and told.",
              "",
              "23:59 1"),
          answer -> {
            Matcher parts =
                Pattern.compile(
                        "(\\d{1,3}):([0-5]\\d)[,;\\s]+(\\d{1,4}(?:\\.\\d{1,2})?)(?:\\s*min)?")
                    .matcher(answer);
            if (!parts.matches()) {
              throw wrong(answer, "a time and minutes, such as 23:59 1");
            }
            BigDecimal hours = new BigDecimal(parts.group(1)).multiply(BigDecimal.valueOf(60));
            return List.of(
                hours.add(new BigDecimal(parts.group(2))), new BigDecimal(parts.group(3)));
          });
    }

    private Keypad.HoldField hold(Entry entry, Keypad.FieldStart starts) {
      about = "The hold";
      Optional<String> label = label("hold-label", "h#");
      TimeForm form = form("hold-form", "a hold");
      List<BigDecimal> longest = times("hold-range", "hold");
      Keypad.Range range =
          build(
                  () ->
                      new Keypad.HoldField(
                          label,
                          form,
                          longest.get(0),
                          longest.get(1),
                          Optional.empty(),
                          Optional.empty()))
              .range();
      Optional<Special> endless =
          special(
              "endless",
              orUnknown(
                  text(
                      "endless",
                      "Can a hold last until a person stops it? What does the display show then?"
                          + " none: it cannot",
                      "Work that waits for people needs it.",
                      "Go to both ends of the holds and one further.",
                      "StAY"),
                  "whether a hold can be endless is not known; it is taken that it cannot."),
              entry,
              range,
              Optional.of("hold"));
      Optional<BigDecimal> start = start("hold-start", starts, ", in minutes");
      requireIn(range, start);
      return build(
          () -> new Keypad.HoldField(label, form, longest.get(0), longest.get(1), endless, start));
    }

    private Optional<Keypad.DelayField> delay(Keypad.FieldStart starts) {
      about = "The start delay";
      Question question =
          choice(
              "delay",
              "Can a program wait before it starts, and where is that keyed?",
              "To be ready in the morning, it must.",
              "",
              "no",
              "it cannot wait",
              "first",
              "before the first segment",
              "last",
              "after the last segment");
      String where = ask(question, answer -> word(question, answer));
      if (where.equals("no")) {
        return Optional.empty();
      }
      Optional<String> label = label("delay-label", "dL");
      TimeForm form = form("delay-form", "a delay");
      List<BigDecimal> longest = times("delay-range", "delay");
      Keypad.Position position = constant(Keypad.Position.class, where);
      Keypad.Range range =
          build(
                  () ->
                      new Keypad.DelayField(
                          label, form, longest.get(0), longest.get(1), position, Optional.empty()))
              .range();
      Optional<BigDecimal> start = start("delay-start", starts, ", in minutes");
      requireIn(range, start);
      return Optional.of(
          new Keypad.DelayField(label, form, longest.get(0), longest.get(1), position, start));
    }

    /**
     * @param numbers the ordinary numbers of a segment's field
     */
    private Keypad.EndRule end(
        Entry entry, List<KeyedValue.Kind> order, Function<KeyedValue.Kind, Keypad.Range> numbers) {
      about = "The end of a program";
      Keypad.EndRule.By by =
          one(
              choice(
                  "end-by",
                  "How does it know where a program ends?",
                  "What is left in unused segments may otherwise be fired.",
                  "Key a program of two segments where a longer one was, and read it back.",
                  "mark",
                  "a mark in the first unused segment ends it",
                  "every-unused",
                  "every segment runs: each unused one must be emptied",
                  "count",
                  "the number of segments is keyed first"),
              Keypad.EndRule.By.class);
      KeyedValue.Kind in = order.get(0);
      if (by != Keypad.EndRule.By.COUNT) {
        List<String> options = new ArrayList<>();
        for (KeyedValue.Kind kind : order) {
          options.add(YamlValue.word(kind));
          options.add(kind == in ? "the first one" : "whatever stands before it");
        }
        in =
            one(
                choice(
                    "end-in",
                    "At which value of the first unused segment does it say that the program ends?",
                    "A hold or a target of zero may end it just as a word does.",
                    "Go through the values of the first segment that is not run.",
                    options.toArray(String[]::new)),
                KeyedValue.Kind.class);
      }
      KeyedValue.Kind markField = in;
      Optional<Special> mark =
          by == Keypad.EndRule.By.COUNT
              ? Optional.empty()
              : special(
                  "end",
                  text(
                      "end",
                      "What does the display show at that value?",
                      "It ends the program.",
                      "Go to both ends of that value and one further.",
                      "End"),
                  entry,
                  numbers.apply(markField),
                  Optional.empty());
      if (by != Keypad.EndRule.By.COUNT && mark.isEmpty()) {
        throw again("Something marks it; if nothing does, the end goes by a count.");
      }
      AtEnd afterwards =
          one(
              orUnknown(
                  choice(
                      "end-afterwards",
                      "After the last segment, what does it do?",
                      "Heat that stays on, or does not, spoils work.",
                      "",
                      "off",
                      "the elements go off",
                      "keep",
                      "it keeps the last target"),
                  "what follows the last segment is not known; do not rely on heat staying on."),
              AtEnd.class,
              "end",
              AtEnd.OFF);
      Optional<KeyedValue.Kind> later =
          markField == order.get(0) ? Optional.empty() : Optional.of(markField);
      return build(() -> new Keypad.EndRule(by, mark, later, afterwards));
    }

    // ---- keys with a purpose

    private Gesture keysFor(String id, String ask, String why, String look, boolean needed) {
      return ask(text(id, ask, why, look, GESTURE_EXAMPLE), answer -> gesture(answer, needed));
    }

    private Keypad.Programming programming(Keypad.Navigation navigation) {
      Keypad.Commits commits =
          one(
              choice(
                  "commits",
                  "After the last value, what must you do so that the program is kept?",
                  "Many a night was lost to a program that was never saved.",
                  "Change one value, accept it, leave by waiting or switching off, and look whether it"
                      + " was kept.",
                  "accepting",
                  "nothing: each value is kept as it is taken",
                  "gesture",
                  "press certain keys that save it",
                  "start",
                  "start it: only then is it kept"),
              Keypad.Commits.class);
      List<String> ways =
          new ArrayList<>(
              List.of("first", "around, to the first value", "stays", "nowhere: it stays there"));
      if (commits == Keypad.Commits.ACCEPTING) {
        ways.addAll(List.of("idle", "out of programming"));
      }
      Keypad.AfterLast afterLast =
          one(
              orUnknown(
                  choice(
                      "after-last",
                      navigation == Keypad.Navigation.LIST
                          ? "Walk on from the last value: where does it lead?"
                          : "Accept the last value: where does it lead?",
                      "The sheet must know where it stands.",
                      "",
                      ways.toArray(String[]::new)),
                  "where the last value leads is not known; look before you go on."),
              Keypad.AfterLast.class,
              "after-last",
              Keypad.AfterLast.STAYS);
      return new Keypad.Programming(navigation, afterLast, commits);
    }

    private OptionalInt discards() {
      return ask(
          orUnknown(
              text(
                  "discards",
                  "Leave it untouched in the middle: after how many seconds does it throw away what"
                      + " was keyed? no: it does not",
                  "Who is called away then starts over.",
                  "Change a value, do not save, wait three minutes.",
                  "60"),
              "whether it throws away what was keyed after a while is not known; do not pause."),
          answer ->
              answer.equalsIgnoreCase("no") || answer.equalsIgnoreCase(NONE)
                  ? OptionalInt.empty()
                  : OptionalInt.of(whole(answer, 1, 86_400)),
          "gestures",
          OptionalInt.empty());
    }

    private Keypad.Review review(
        List<KeyedValue.Kind> order, Optional<Keypad.DelayField> delay, Keypad.EndRule end) {
      about = "Reading a program back";
      reviewKeys =
          keysFor(
              "review",
              "Which keys show a stored program from the idle display, value by value?",
              "Nothing is called proven that was not read back.",
              "If only opening it again shows it, give those keys.",
              true);
      Question shows =
          order(
              "review-order",
              "Which values of a segment does it show there, in which order? none: none of them",
              "The read-back asks in this order, and tells what it does not show.",
              "Go through a stored program.",
              order);
      List<KeyedValue.Kind> shown = ask(shows, answer -> kinds(shows, answer, 0));
      Keypad.Position delayAt = Keypad.Position.HIDDEN;
      if (delay.isPresent()) {
        delayAt =
            one(
                orUnknown(
                    choice(
                        "review-delay",
                        "Where does it show the start delay?",
                        "What is not shown stays unproven.",
                        "",
                        "first",
                        "before the segments",
                        "last",
                        "after them",
                        "hidden",
                        "nowhere"),
                    "whether the delay is shown is not known; it counts as not shown."),
                Keypad.Position.class,
                "review",
                Keypad.Position.HIDDEN);
      }
      boolean unused = false;
      if (end.by() != Keypad.EndRule.By.COUNT && !shown.isEmpty()) {
        Question question =
            orUnknown(
                choice(
                    "review-unused",
                    "After the last segment, does it show the first unused one?",
                    "A program that is too long is noticed there.",
                    "",
                    "shown",
                    "",
                    "hidden",
                    ""),
                "whether the first unused segment is shown is not known; it counts as not shown.");
        unused = ask(question, answer -> word(question, answer).equals("shown"), "review", false);
      }
      Question edit =
          orUnknown(
              choice(
                  "review-edits",
                  "Does a key that makes values change them there?",
                  "A program can then be spoilt by looking at it.",
                  "On a program you do not need: press such a key while it is shown, then look again.",
                  "yes",
                  "",
                  "no",
                  ""),
              "whether keys change values in the review is not known; touch only what leads on.");
      boolean edits = ask(edit, answer -> word(edit, answer).equals("yes"), "review", true);
      return new Keypad.Review(shown, delayAt, unused, edits);
    }

    private Gesture starting(boolean needed) {
      about = "Starting, stopping, power cuts";
      Question question =
          text(
              "start",
              "Which keys start a program?" + (needed ? "" : " none: not told here"),
              "So that no sheet presses them unasked: starting is heat.",
              "On a cold, empty kiln, and stop it again.",
              "hold up 3");
      if (needed) {
        return ask(question, answer -> gesture(answer, true));
      }
      return ask(
          orUnknown(question, "no keys that start a program are known; take care with every key."),
          answer -> gesture(answer, false),
          "gestures",
          Gesture.of());
    }

    private Keypad.PowerCut powerCut() {
      return one(
          orUnknown(
              choice(
                  "after-power-cut",
                  "The power comes back in the middle of a program: what does it do?",
                  "It decides what to do at night.",
                  "The maker's sheet says so; or try it on a cold, empty kiln, low target.",
                  "resumes",
                  "it goes on",
                  "restarts",
                  "it begins again from the start",
                  "stops",
                  "it stays off"),
              "what it does after a power cut is not known; expect any of it."),
          Keypad.PowerCut.class,
          "after-power-cut",
          Keypad.PowerCut.UNKNOWN);
    }
  }
}
