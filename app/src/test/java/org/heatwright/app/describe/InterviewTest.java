package org.heatwright.app.describe;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.heatwright.app.files.KeypadFile;
import org.heatwright.keypad.Entry;
import org.heatwright.keypad.Gesture;
import org.heatwright.keypad.Key;
import org.heatwright.keypad.KeyedValue;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.Special;
import org.heatwright.keypad.TimeForm;
import org.heatwright.schedule.AtEnd;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class InterviewTest {

  private static final Path KEYPADS = Path.of("src", "main", "resources", "demo", "keypads");

  static Keypad demo(String name) throws IOException {
    return KeypadFile.read(Files.readString(KEYPADS.resolve(name + ".yaml")), name);
  }

  @ParameterizedTest
  @ValueSource(strings = {"tern", "gull", "heron", "petrel", "skua", "dunlin"})
  void itsOwnersAnswersDescribeADemoKeypadInEveryField(String name) throws IOException {
    Keypad keypad = demo(name);
    Interview interview = Interview.of(Owner.answers(keypad));
    assertThat(interview.pending()).as(interview.error()).isEmpty();
    Described described = interview.described().orElseThrow();
    assertThat(described.keypad()).isEqualTo(keypad);
    assertThat(KeypadFile.read(described.yaml(), "new.yaml")).isEqualTo(keypad);
    assertThat(interview.answered()).hasSizeBetween(30, 60); // ten minutes, at ten seconds each
  }

  @Test
  void allDemoKeypadsAreAmongThose() throws IOException {
    try (var files = Files.list(KEYPADS)) {
      assertThat(files.map(f -> f.getFileName().toString()))
          .containsExactlyInAnyOrder(
              "tern.yaml", "gull.yaml", "heron.yaml", "petrel.yaml", "skua.yaml", "dunlin.yaml");
    }
  }

  @Test
  void itsOwnersAnswersDescribeAnyKeypad() {
    Random random = new Random(20261126);
    int built = 0;
    for (int i = 0; i < 20_000 && built < 600; i++) {
      Keypad keypad;
      try {
        keypad = any(random);
      } catch (IllegalArgumentException contradicts) {
        continue; // keys that mean two things, and the like: no such keypad is made
      }
      built++;
      Interview interview = Interview.of(Owner.answers(keypad));
      assertThat(interview.pending().map(Question::id))
          .as("%s %s", interview.error(), KeypadFile.write(keypad))
          .isEmpty();
      assertThat(interview.described().orElseThrow().keypad()).isEqualTo(keypad);
    }
    assertThat(built).isEqualTo(600);
  }

  private static <T> T of(Random random, List<T> all) {
    return all.get(random.nextInt(all.size()));
  }

  private static <E extends Enum<E>> E of(Random random, Class<E> type) {
    return of(random, List.of(type.getEnumConstants()));
  }

  private static Keypad any(Random random) {
    int kind = random.nextInt(3);
    boolean pointKey = random.nextBoolean();
    Set<Key> keys = new TreeSet<>(List.of(Key.NEXT, Key.BACK, Key.PROGRAM, Key.START, Key.STOP));
    Entry entry;
    if (kind == 0) {
      keys.addAll(List.of(Key.UP, Key.DOWN));
      List<Entry.RepeatStage> stages = new ArrayList<>();
      double after = 0;
      for (int n = random.nextInt(4); n > 0; n--) {
        after += 0.1 * (1 + random.nextInt(30));
        stages.add(
            new Entry.RepeatStage(
                Math.rint(after * 10) / 10, 1 + random.nextInt(99), 1 + random.nextInt(20)));
      }
      entry =
          new Entry.StepKeys(
              stages, of(random, Entry.AtLimit.class), of(random, Entry.AtLimit.class));
    } else if (kind == 1) {
      keys.addAll(List.of(Key.TURN, Key.PUSH));
      entry =
          new Entry.Knob(
              4 + random.nextInt(60),
              1 + random.nextInt(50),
              of(random, Entry.AtLimit.class),
              of(random, Entry.AtLimit.class));
    } else {
      keys.addAll(List.of(Key.DIGITS, Key.CLEAR));
      if (pointKey || random.nextBoolean()) {
        keys.add(Key.POINT);
      }
      entry = new Entry.DigitKeys(pointKey);
    }
    boolean switchable = random.nextBoolean();
    TemperatureUnit unit = of(random, TemperatureUnit.class);
    Set<Keypad.UnitSetting.ShownAt> shown = new TreeSet<>();
    for (var at : Keypad.UnitSetting.ShownAt.values()) {
      if (random.nextBoolean()) {
        shown.add(at);
      }
    }
    Keypad.UnitSetting units =
        switchable
            ? new Keypad.UnitSetting(
                Keypad.UnitSetting.Setting.SWITCHABLE,
                unit,
                shown,
                of(random, Keypad.UnitSetting.SwitchingConverts.class))
            : Keypad.UnitSetting.fixed(unit, shown.toArray(new Keypad.UnitSetting.ShownAt[0]));
    Keypad.FieldStart starts = of(random, Keypad.FieldStart.class);
    boolean fixed = starts == Keypad.FieldStart.DEFAULT && random.nextBoolean();
    boolean digits = kind == 2;
    List<KeyedValue.Kind> order =
        new ArrayList<>(
            List.of(KeyedValue.Kind.RATE, KeyedValue.Kind.TARGET, KeyedValue.Kind.HOLD));
    java.util.Collections.shuffle(order, random);
    Keypad.Range rates = Keypad.Range.of(5, 995, 5);
    Keypad.RateField rate =
        new Keypad.RateField(
            random.nextBoolean() ? Optional.of("r#") : Optional.empty(),
            of(random, Keypad.RateField.Per.class),
            rates,
            switchable && random.nextBoolean()
                ? Optional.of(Keypad.Range.of(10, 1800, 10))
                : Optional.empty(),
            random.nextBoolean()
                ? Optional.of(special(random, digits, "FULL", 0))
                : Optional.empty(),
            digits
                ? of(random, List.of(Keypad.Cooling.IMPLIED, Keypad.Cooling.NOT_CONTROLLED))
                : of(random, Keypad.Cooling.class),
            fixed ? Optional.of(BigDecimal.valueOf(100)) : Optional.empty());
    Keypad.TargetField target =
        new Keypad.TargetField(
            random.nextBoolean() ? Optional.of("t#") : Optional.empty(),
            Keypad.Range.of(20, 1100, 1),
            switchable && random.nextBoolean()
                ? Optional.of(Keypad.Range.of(70, 2010, 1))
                : Optional.empty(),
            fixed ? Optional.of(BigDecimal.valueOf(20)) : Optional.empty());
    TimeForm form = of(random, TimeForm.class);
    BigDecimal step = BigDecimal.valueOf(of(random, List.of(1, 6, 30)));
    Keypad.HoldField hold =
        new Keypad.HoldField(
            random.nextBoolean() ? Optional.of("h#") : Optional.empty(),
            form,
            BigDecimal.valueOf(599),
            form == TimeForm.DECIMAL_HOURS ? new BigDecimal("0.6") : step,
            random.nextBoolean()
                ? Optional.of(special(random, digits, "StAY", -1))
                : Optional.empty(),
            fixed ? Optional.of(BigDecimal.valueOf(0)) : Optional.empty());
    Optional<Keypad.DelayField> delay =
        random.nextInt(4) == 0
            ? Optional.empty()
            : Optional.of(
                new Keypad.DelayField(
                    random.nextBoolean() ? Optional.of("dL") : Optional.empty(),
                    TimeForm.HOURS_COLON_MINUTES,
                    BigDecimal.valueOf(1439),
                    BigDecimal.ONE,
                    of(random, List.of(Keypad.Position.FIRST, Keypad.Position.LAST)),
                    Optional.empty()));
    Keypad.EndRule.By by = of(random, Keypad.EndRule.By.class);
    Keypad.EndRule end =
        new Keypad.EndRule(
            by,
            by == Keypad.EndRule.By.COUNT
                ? Optional.empty()
                : Optional.of(special(random, digits, "End", -1)),
            of(random, AtEnd.class));
    Keypad.Commits commits = of(random, Keypad.Commits.class);
    Keypad.Programming programming =
        new Keypad.Programming(
            kind == 2 ? Keypad.Navigation.SEQUENCE : of(random, Keypad.Navigation.class),
            of(random, Keypad.AfterLast.class),
            commits);
    List<Gesture> some =
        List.of(
            Gesture.of(),
            Gesture.of(Key.BACK),
            Gesture.of(Key.PROGRAM),
            Gesture.of(Key.STOP),
            Gesture.of(Key.START),
            Gesture.holding(Key.NEXT, 2),
            Gesture.holding(Key.BACK, 1.5),
            Gesture.holding(Key.STOP, 4),
            Gesture.of(Key.PROGRAM, Key.NEXT));
    Keypad.Gestures gestures =
        new Keypad.Gestures(
            of(random, some),
            commits == Keypad.Commits.GESTURE ? of(random, some) : Gesture.of(),
            commits == Keypad.Commits.ACCEPTING || random.nextBoolean()
                ? Optional.empty()
                : Optional.of("donE"),
            random.nextBoolean() ? OptionalInt.of(1 + random.nextInt(600)) : OptionalInt.empty(),
            of(random, some),
            of(random, some),
            of(random, some),
            of(random, some),
            of(random, some),
            switchable ? of(random, some) : Gesture.of());
    List<KeyedValue.Kind> reviewed = new ArrayList<>(order.subList(0, random.nextInt(4)));
    java.util.Collections.shuffle(reviewed, random);
    boolean unused = by != Keypad.EndRule.By.COUNT && !reviewed.isEmpty() && random.nextBoolean();
    return new Keypad(
        "Invented " + random.nextInt(100),
        units,
        keys,
        entry,
        Key.NEXT,
        starts,
        1 + random.nextInt(30),
        1 + random.nextInt(30),
        4,
        order,
        rate,
        target,
        hold,
        delay,
        end,
        programming,
        gestures,
        new Keypad.Review(
            reviewed,
            delay.isEmpty() ? Keypad.Position.HIDDEN : of(random, Keypad.Position.class),
            unused,
            random.nextBoolean()),
        of(random, Keypad.PowerCut.class));
  }

  /** A word, on digit keys typed as a number beyond all ordinary ones, or below where there is. */
  private static Special special(Random random, boolean digits, String word, int below) {
    if (!digits) {
      return random.nextBoolean() ? Special.above(word) : Special.below(word);
    }
    return below >= 0 && random.nextBoolean()
        ? new Special(word, Special.Place.BELOW_LEAST, Optional.of("" + below))
        : new Special(word, Special.Place.ABOVE_GREATEST, Optional.of("9999"));
  }

  // ---- one by one

  @Test
  void onlyWhatFollowsFromTheAnswersIsAsked() throws IOException {
    List<String> digits = asked(demo("gull"));
    assertThat(digits)
        .doesNotContain("repeat1", "at-least", "clicks", "point-key", "fastest-at", "ranges-in")
        .doesNotContain("switching-converts", "commit", "end", "review-unused", "rate-other");
    assertThat(asked(demo("heron")))
        .contains("clicks", "fast-steps", "fastest-at", "commit", "committed", "ranges-in")
        .doesNotContain("repeat1", "hold-start");
    assertThat(asked(demo("skua"))).contains("repeat3", "start").doesNotContain("commit");
  }

  private static List<String> asked(Keypad keypad) {
    return Interview.of(Owner.answers(keypad)).answered().stream()
        .map(one -> one.question().id())
        .toList();
  }

  /** An answer taken back is asked again, and all others stand. */
  @Test
  void everyAnswerCanBeTakenBack() throws IOException {
    Map<String, String> answers = Owner.answers(demo("petrel"));
    for (String id : asked(demo("petrel"))) {
      Map<String, String> fewer = new LinkedHashMap<>(answers);
      String before = fewer.remove(id);
      Interview interview = Interview.of(fewer);
      assertThat(interview.pending().orElseThrow().id()).isEqualTo(id);
      assertThat(interview.error()).isEmpty();
      fewer.put(id, before);
      assertThat(Interview.of(fewer).described().orElseThrow().keypad()).isEqualTo(demo("petrel"));
    }
  }

  @Test
  void everyQuestionSaysWhyAndWhatIsUnknownIsWrittenDown() throws IOException {
    for (String name : List.of("tern", "gull", "heron", "petrel", "skua", "dunlin")) {
      Map<String, String> answers = Owner.answers(demo(name));
      List<String> unsure = new ArrayList<>();
      for (Interview.Answered one : Interview.of(answers).answered()) {
        Question question = one.question();
        assertThat(question.why()).as(question.id()).isNotBlank();
        assertThat(question.ask()).as(question.id()).isNotBlank();
        if (question.unknown().isPresent()) {
          answers.put(question.id(), "?");
          unsure.add(question.unknown().get());
        }
      }
      // Keys that nobody knows save nothing: what rests on an answer is not left open.
      Described described = finished(answers);
      assertThat(described.unsure()).hasSizeGreaterThanOrEqualTo(8);
      String yaml = described.yaml();
      for (Described.Unsure one : described.unsure()) {
        assertThat(yaml).contains("# unsure: " + one.sentence());
      }
      assertThat(KeypadFile.read(yaml, "new.yaml")).isEqualTo(described.keypad());
      assertThat(described.keypad().afterPowerCut()).isEqualTo(Keypad.PowerCut.UNKNOWN);
      assertThat(described.keypad().hold().form()).isEqualTo(TimeForm.HOURS_UNSURE);
      assertThat(described.keypad().rate().fastest()).isEmpty();
    }
  }

  /** Answers what else comes up after "unknown", as little as can be said. */
  private static Described finished(Map<String, String> answers) {
    for (int i = 0; i < 20; i++) {
      Interview interview = Interview.of(answers);
      if (interview.described().isPresent()) {
        return interview.described().get();
      }
      Question question = interview.pending().orElseThrow();
      assertThat(interview.error()).as(question.id()).isEmpty();
      answers.put(question.id(), question.unknown().isPresent() ? "?" : "none");
    }
    throw new AssertionError("it does not end");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          keys         | up, down, nxt | "nxt"; expected one of up, down, next, back
          keys         | up, next      | expected up and down, or digits, or turn
          keys         | up, down      | expected one key at least that takes a value
          slots        | 0             | "0"; expected a whole number from 1 to 999.
          slots        | four          | "four"; expected a whole number from 1 to 999.
          slots        | ?             | This one needs an answer
          repeat1      | 0.6 1         | expected no, or three numbers
          repeat2      | 0.5 10 5      | stages must follow each other
          rate-range   | 5 995         | expected three numbers: smallest, largest, step
          rate-range   | 995 5 5       | goes up from zero or more
          rate-range   | 0 995 5       | begin with the smallest above it
          rate-label   | 12            | expected a mark with a letter
          fastest      | 500           | "fastest" is not asked again
          hold-form    | 2.45          | expected one of minutes, h.mm, hh:mm, decimal-hours
          hold-range   | 23.59         | expected a time and minutes, such as 23:59 1.
          open         | hold next     | expected the keys to press
          open         | push          | expected keys that it has: up, down, next.
          open         | none          | expected the keys to press
          order        | rate, hold    | expected rate (or time), target and hold, each once
          """)
  void aWrongAnswerIsToldInOneSentence(String id, String answer, String message)
      throws IOException {
    Map<String, String> answers = Owner.answers(demo("tern"));
    answers.put(id, answer);
    Interview interview = Interview.of(answers);
    if (id.equals("fastest")) { // an ordinary rate: seen only when all is put together
      assertThat(interview.pending().orElseThrow().id()).isEqualTo(Interview.MEND);
      assertThat(interview.error()).contains("The rate '500' means fastest, but it is also");
      return;
    }
    assertThat(interview.pending().orElseThrow().id()).isEqualTo(id);
    assertThat(interview.error()).contains(message).doesNotContain("\n");
  }

  @Test
  void answersThatDoNotGoTogetherLeadToOneToChange() throws IOException {
    Map<String, String> answers = Owner.answers(demo("gull"));
    answers.put("review", "program");
    Interview interview = Interview.of(answers);
    Question question = interview.pending().orElseThrow();
    assertThat(question.id()).isEqualTo(Interview.MEND);
    assertThat(interview.error()).contains("open and review cannot be told apart");
    assertThat(question.options()).extracting(Question.Option::word).contains("open", "review");
  }

  // ---- in words

  @Test
  void keysAreToldByState() throws IOException {
    Map<String, Map<String, String>> told = new LinkedHashMap<>();
    for (KeypadWords.Section section : KeypadWords.keys(demo("skua"))) {
      Map<String, String> keys = new LinkedHashMap<>();
      section.keys().forEach(line -> keys.put(line.key(), line.does()));
      told.put(section.state(), keys);
    }
    // From skua.yaml by hand.
    assertThat(told.get("On the idle display"))
        .containsEntry("next", "asks which program to key")
        .containsEntry("up", "asks which program to read back")
        .containsEntry("start", "asks which program to start")
        .containsEntry("hold down 4 s", "switches the unit to °C")
        .containsEntry("down", "nothing");
    assertThat(told.get("While a value is keyed"))
        .containsEntry("start", "SAVES; STARTS THE PROGRAM: heat")
        .containsEntry("hold next 4 s", "out, to the idle display");
    assertThat(told.get("While a value is keyed").get("next"))
        .startsWith("takes the value and goes");
    assertThat(told.get("While a program runs"))
        .containsEntry("hold start 2 s", "stops the program")
        .containsEntry("next", "nothing");
    assertThat(told.get("While a program is read back").get("up"))
        .startsWith("CHANGES THE STORED VALUE");
  }

  @ParameterizedTest
  @ValueSource(strings = {"tern", "gull", "heron", "petrel", "skua", "dunlin"})
  void everyDemoKeypadIsToldWithoutAGap(String name) throws IOException {
    assertThat(KeypadWords.facts(demo(name))).hasSizeGreaterThan(10).allMatch(f -> f.endsWith("."));
    List<KeypadWords.Section> keys = KeypadWords.keys(demo(name));
    assertThat(keys).hasSizeGreaterThanOrEqualTo(5);
    for (KeypadWords.Section section : keys) {
      assertThat(section.keys()).hasSizeGreaterThanOrEqualTo(demo(name).keys().size());
      assertThat(section.keys()).allMatch(line -> !line.does().isBlank());
    }
  }
}
