package org.heatwright.keypad;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import org.heatwright.schedule.Segment;
import org.heatwright.units.TemperatureUnit;

/**
 * Was it keyed right? What the review shows, asked blind and compared with the plan by what each
 * text means in this keypad's form.
 */
public final class Readback {

  private Readback() {}

  /**
   * Where to look, in display order, without a hint of what should be there.
   *
   * @throws IllegalArgumentException if the program does not fit the keypad
   */
  public static List<ReadbackQuestion> questions(FittedProgram program, Keypad keypad) {
    program.requireFits();
    List<Item> items = Plan.of(program, keypad).items();
    List<ReadbackQuestion> questions = new ArrayList<>();
    for (Item item : items) {
      questions.add(
          new ReadbackQuestion(
              questions.size() + 1,
              label(keypad, item.segment(), item.kind()),
              // Blind: "unused" would tell how many segments there should be.
              item.kind() == KeyedValue.Kind.END && item.segment() > 0
                  ? "segment %d, first value".formatted(item.segment())
                  : KeyedValue.place(item.segment(), item.kind())));
    }
    return questions;
  }

  /** As the other {@code compare}, with no slot expected and no unit check made. */
  public static ReadbackReport compare(FittedProgram program, Keypad keypad, Shown shown) {
    return compare(program, keypad, shown, OptionalInt.empty(), Optional.empty());
  }

  /**
   * @param program the plan; must fit
   * @param keypad the keypad it was fitted to
   * @param shown what its review showed
   * @param slot the slot it was keyed into, if known
   * @param unitCheck a cold kiln's reading against a thermometer, if it was made
   * @throws IllegalArgumentException if the program does not fit the keypad
   */
  public static ReadbackReport compare(
      FittedProgram program,
      Keypad keypad,
      Shown shown,
      OptionalInt slot,
      Optional<UnitCheck.Result> unitCheck) {
    program.requireFits();
    return new Comparison(program, keypad, shown, slot, unitCheck).report();
  }

  /** What the display marks a place with during the review. */
  static String label(Keypad keypad, int segment, KeyedValue.Kind kind) {
    boolean unused = kind == KeyedValue.Kind.END && segment > 0;
    if (!unused) {
      return keypad.label(segment, kind);
    }
    List<KeyedValue.Kind> order = keypad.review().order();
    KeyedValue.Kind first = order.isEmpty() ? keypad.order().get(0) : order.get(0);
    String label = keypad.label(segment, first);
    return label.equals(KeyedValue.place(segment, first))
        ? "segment %d, first value".formatted(segment)
        : label;
  }

  /**
   * A value that a review shows.
   *
   * @param segment 1-based; 0 for the whole program
   * @param kind which field
   * @param text what it reads; empty for a segment that is not the plan's, where it may read
   *     anything
   */
  private record Item(int segment, KeyedValue.Kind kind, Optional<String> text) {}

  /** What a keypad would show of a program, changed or not. */
  private record Plan(
      Keypad keypad, Optional<String> delay, List<Map<KeyedValue.Kind, String>> segments) {

    static Plan of(FittedProgram program, Keypad keypad) {
      List<Map<KeyedValue.Kind, String>> segments = new ArrayList<>();
      Optional<String> delay = Optional.empty();
      for (KeyedValue value : program.values()) {
        if (value.kind() == KeyedValue.Kind.DELAY) {
          delay = Optional.of(value.digits());
        } else if (value.kind() != KeyedValue.Kind.END) {
          if (segments.size() < value.segment()) {
            segments.add(new EnumMap<>(KeyedValue.Kind.class));
          }
          segments.get(value.segment() - 1).put(value.kind(), value.digits());
        }
      }
      return new Plan(keypad, delay, segments);
    }

    Plan without(int segment) {
      List<Map<KeyedValue.Kind, String>> fewer = new ArrayList<>(segments);
      fewer.remove(segment - 1);
      return new Plan(keypad, delay, fewer);
    }

    /** With a segment that may hold anything, so that it becomes number {@code segment}. */
    Plan with(int segment) {
      List<Map<KeyedValue.Kind, String>> more = new ArrayList<>(segments);
      more.add(segment - 1, Map.of());
      return new Plan(keypad, delay, more);
    }

    List<Item> items() {
      Keypad.Review review = keypad.review();
      List<Item> items = new ArrayList<>();
      if (review.delay() == Keypad.Position.FIRST) {
        delay.ifPresent(d -> items.add(new Item(0, KeyedValue.Kind.DELAY, Optional.of(d))));
      }
      if (keypad.end().by() == Keypad.EndRule.By.COUNT) {
        items.add(new Item(0, KeyedValue.Kind.END, Optional.of(Integer.toString(segments.size()))));
      }
      for (int i = 0; i < segments.size(); i++) {
        for (KeyedValue.Kind kind : review.order()) {
          items.add(new Item(i + 1, kind, Optional.ofNullable(segments.get(i).get(kind))));
        }
      }
      if (review.unused()) {
        int last =
            keypad.end().by() == Keypad.EndRule.By.EVERY_UNUSED
                ? keypad.segments()
                : Math.min(segments.size() + 1, keypad.segments());
        for (int segment = segments.size() + 1; segment <= last; segment++) {
          items.add(
              new Item(segment, KeyedValue.Kind.END, keypad.end().mark().map(Special::shows)));
        }
      }
      if (review.delay() == Keypad.Position.LAST) {
        delay.ifPresent(d -> items.add(new Item(0, KeyedValue.Kind.DELAY, Optional.of(d))));
      }
      return items;
    }
  }

  /** What a text means: a number, or one of the keypad's special values. */
  private record Meaning(Optional<BigDecimal> number, String special) {

    static Meaning of(BigDecimal number) {
      return new Meaning(Optional.of(number.stripTrailingZeros()), "");
    }

    static Meaning of(Special special) {
      return new Meaning(Optional.empty(), Texts.folded(special.shows()));
    }
  }

  /** One comparison; used once, by one thread. */
  private static final class Comparison {

    private final FittedProgram program;
    private final Keypad keypad;
    private final Shown shown;
    private final OptionalInt slot;
    private final Optional<UnitCheck.Result> unitCheck;
    private final Plan plan;
    private final List<Item> items;

    /** For each item that was shown, the value that answers it. */
    private final Map<Integer, Shown.Value> answers = new HashMap<>();

    private final List<Shown.Value> extras = new ArrayList<>();
    private final Map<Integer, ReadbackReport.Verdict> verdicts = new HashMap<>();
    private final List<ReadbackReport.Verdict> extraVerdicts = new ArrayList<>();
    private final List<String> findings = new ArrayList<>();
    private final List<String> corrections = new ArrayList<>();
    private final List<String> unproven = new ArrayList<>();
    private boolean unitOpen;

    Comparison(
        FittedProgram program,
        Keypad keypad,
        Shown shown,
        OptionalInt slot,
        Optional<UnitCheck.Result> unitCheck) {
      this.program = program;
      this.keypad = keypad;
      this.shown = Objects.requireNonNull(shown, "shown");
      this.slot = slot;
      this.unitCheck = unitCheck;
      this.plan = Plan.of(program, keypad);
      this.items = plan.items();
    }

    ReadbackReport report() {
      slot();
      unit();
      assign();
      List<Item> figured = items;
      List<Shown.Value> figuredShown = answersInOrder();
      if (!allMatch()) {
        Optional<List<Item>> moved = missingSegment().or(this::extraSegment);
        if (moved.isPresent()) {
          figured = moved.orElseThrow();
          figuredShown = shown.values();
        } else {
          unitOfAll();
          exchangedSegments();
          swappedValues();
          singles();
        }
      }
      hidden();
      List<ReadbackReport.Verdict> all = new ArrayList<>();
      for (int i = 0; i < items.size(); i++) {
        int index = i;
        all.add(verdicts.computeIfAbsent(i, unused -> match(index)));
      }
      all.addAll(extraVerdicts);
      boolean right =
          findings.isEmpty()
              && all.stream().allMatch(v -> v.kind() == ReadbackReport.VerdictKind.MATCH);
      ReadbackReport.Outcome outcome =
          !right
              ? ReadbackReport.Outcome.NOT_PROVEN
              : unitOpen ? ReadbackReport.Outcome.UNIT_OPEN : ReadbackReport.Outcome.PROVEN;
      return new ReadbackReport(
          outcome,
          all,
          findings,
          corrections.stream().findFirst().map(c -> c + " Then read back again."),
          figures(figured, figuredShown),
          unproven);
    }

    private void slot() {
      if (shown.slot().isEmpty()) {
        unproven.add(
            slot.isPresent()
                ? "Which slot was reviewed was not told; the program belongs in slot %d."
                    .formatted(slot.getAsInt())
                : "Which slot was reviewed was not told.");
        return;
      }
      int reviewed = shown.slot().getAsInt();
      if (reviewed < 1 || reviewed > keypad.slots()) {
        findings.add(
            "There is no slot %d: the keypad has slots 1 to %d."
                .formatted(reviewed, keypad.slots()));
      } else if (slot.isPresent() && slot.getAsInt() != reviewed) {
        findings.add(
            "Slot %d was reviewed, but the program was keyed into slot %d."
                .formatted(reviewed, slot.getAsInt()));
        corrections.add("Open the review of slot %d.".formatted(slot.getAsInt()));
      }
    }

    private void unit() {
      TemperatureUnit unit = program.unit();
      if (shown.unit().filter(u -> u != unit).isPresent()) {
        wrongUnitInForce(
            "The display says %s, but the plan is for %s: the same numbers mean other temperatures."
                .formatted(unit.other().symbol(), unit.symbol()));
        return;
      }
      if (unitCheck.filter(c -> c.settles(unit.other())).isPresent()) {
        wrongUnitInForce(unitCheck.orElseThrow().why());
        return;
      }
      boolean settled =
          !keypad.units().switchable()
              || unitCheck.filter(c -> c.settles(unit)).isPresent()
              || (shown.unit().isPresent()
                  && keypad.units().shownAt().contains(Keypad.UnitSetting.ShownAt.REVIEW));
      if (settled) {
        return;
      }
      UnitTrap trap = UnitTrap.of(program, keypad);
      unitOpen = trap.needsUnitCheck();
      unproven.add(
          "That the keypad is in %s: its review does not show the unit, and no reading alone can tell (68 may be a warm kiln in °C). Compare the cold kiln's reading with a thermometer.%s"
              .formatted(
                  unit.symbol(),
                  trap.targets().stream()
                      .filter(UnitTrap.Target::accepted)
                      .map(t -> " Segment %d: %s".formatted(t.segment(), t.meaning()))
                      .findFirst()
                      .orElse("")));
      unitCheck.ifPresent(c -> unproven.add(c.why()));
    }

    private void wrongUnitInForce(String finding) {
      findings.add(finding);
      corrections.add(
          "Switch the keypad to %s, then key the program again."
              .formatted(program.unit().symbol()));
    }

    /** Which shown value answers which item: by label, by position. */
    private void assign() {
      for (Shown.Value value : shown.values()) {
        OptionalInt index = indexOf(value.at());
        if (index.isPresent()) {
          answers.put(index.getAsInt(), value);
        } else {
          extras.add(value);
        }
      }
      for (Shown.Value extra : extras) {
        extraVerdicts.add(
            new ReadbackReport.Verdict(
                shown.values().indexOf(extra) + 1,
                extra.at(),
                "",
                extra.text(),
                ReadbackReport.VerdictKind.EXTRA,
                "'%s' shows '%s', but the plan has nothing there."
                    .formatted(extra.at(), extra.text()),
                Optional.empty()));
      }
    }

    private OptionalInt indexOf(String at) {
      String wanted = Texts.folded(at);
      for (int i = 0; i < items.size(); i++) {
        Item item = items.get(i);
        if (!answers.containsKey(i)
            && (Texts.folded(label(keypad, item.segment(), item.kind())).equals(wanted)
                || Texts.folded(KeyedValue.place(item.segment(), item.kind())).equals(wanted))) {
          return OptionalInt.of(i);
        }
      }
      if (wanted.matches("\\d{1,4}")) {
        int index = Integer.parseInt(wanted) - 1;
        if (index >= 0 && index < items.size() && !answers.containsKey(index)) {
          return OptionalInt.of(index);
        }
      }
      return OptionalInt.empty();
    }

    private Optional<Shown.Value> answer(int index) {
      return Optional.ofNullable(answers.get(index));
    }

    private String shownText(int index) {
      return answer(index).map(Shown.Value::text).orElse("");
    }

    private List<Shown.Value> answersInOrder() {
      List<Shown.Value> inOrder = new ArrayList<>();
      for (int i = 0; i < items.size(); i++) {
        inOrder.add(answer(i).orElse(new Shown.Value("", "")));
      }
      return inOrder;
    }

    private boolean allMatch() {
      for (int i = 0; i < items.size(); i++) {
        if (!matches(items.get(i), answer(i))) {
          return false;
        }
      }
      return extras.isEmpty();
    }

    private boolean matches(Item item, Optional<Shown.Value> value) {
      Optional<Meaning> meaning = value.flatMap(v -> meaning(item.kind(), v.text()));
      return meaning.isPresent()
          && (item.text().isEmpty()
              || meaning.equals(meaning(item.kind(), item.text().orElseThrow())));
    }

    private boolean matches(List<Item> other) {
      if (other.size() != shown.values().size()) {
        return false;
      }
      for (int i = 0; i < other.size(); i++) {
        if (!matches(other.get(i), Optional.of(shown.values().get(i)))) {
          return false;
        }
      }
      return true;
    }

    /** What a text means in a field, if it means exactly one thing there. */
    private Optional<Meaning> meaning(KeyedValue.Kind kind, String text) {
      Optional<Special> mark =
          keypad
              .end()
              .mark()
              .filter(m -> kind == KeyedValue.Kind.END || kind == keypad.order().get(0));
      Optional<Special> special =
          switch (kind) {
            case RATE -> keypad.rate().fastest().filter(s -> Texts.same(s.shows(), text));
            case HOLD -> keypad.hold().endless().filter(s -> Texts.same(s.shows(), text));
            default -> Optional.empty();
          };
      special = special.or(() -> mark.filter(m -> Texts.same(m.shows(), text)));
      if (special.isPresent()) {
        return special.map(Meaning::of);
      }
      return switch (kind) {
        case HOLD -> keypad.hold().form().minutes(Texts.clean(text)).map(Meaning::of);
        case DELAY ->
            keypad.delay().flatMap(d -> d.form().minutes(Texts.clean(text))).map(Meaning::of);
        case TARGET -> Texts.number(withoutUnit(text)).map(Meaning::of);
        default -> Texts.number(text).map(Meaning::of);
      };
    }

    /** A target may be read back with its unit, if it is the one in force. */
    private String withoutUnit(String text) {
      String folded = Texts.folded(text);
      String letter = program.unit().letter().toLowerCase(Locale.ROOT);
      return folded.matches(".*\\d°?" + letter)
          ? folded.substring(0, folded.length() - 1).replace("°", "")
          : text;
    }

    // What went wrong as a whole.

    private Optional<List<Item>> missingSegment() {
      for (int k = 1; k <= plan.segments().size(); k++) {
        if (plan.segments().size() == 1) {
          break;
        }
        List<Item> fewer = plan.without(k).items();
        if (!matches(fewer)) {
          continue;
        }
        findings.add(
            "Segment %d is missing (%s)%s"
                .formatted(
                    k,
                    segmentWords(k),
                    k < plan.segments().size() ? "; what follows has moved up by one." : "."));
        corrections.add(
            k < plan.segments().size()
                ? "Key the program again from segment %d (%s) on.".formatted(k, segmentWords(k))
                : "Key segment %d (%s).".formatted(k, segmentWords(k)));
        for (int i = 0; i < items.size(); i++) {
          Item item = items.get(i);
          if (item.segment() == k) {
            put(
                i,
                "",
                ReadbackReport.VerdictKind.MISSING,
                "%s is missing, with its whole segment.".formatted(sentencePlace(item)),
                Optional.of(key(item)));
          } else {
            int now = item.segment() > k ? item.segment() - 1 : item.segment();
            moved(i, indexOf(fewer, now, item.kind()), now);
          }
        }
        extraVerdicts.clear();
        return Optional.of(fewer);
      }
      return Optional.empty();
    }

    private Optional<List<Item>> extraSegment() {
      if (plan.segments().size() >= keypad.segments() || keypad.review().order().isEmpty()) {
        return Optional.empty();
      }
      for (int k = 1; k <= plan.segments().size() + 1; k++) {
        List<Item> more = plan.with(k).items();
        if (!matches(more)) {
          continue;
        }
        int twice = sameShown(more, k, k - 1) ? k - 1 : sameShown(more, k, k + 1) ? k : 0;
        findings.add(
            twice > 0
                ? "Segment %d is there twice, as segments %d and %d."
                    .formatted(twice, twice, twice + 1)
                : "There is a segment too many: number %d is not in the plan.".formatted(k));
        corrections.add(
            k <= plan.segments().size()
                ? "Key the program again from segment %d (%s) on; after segment %d it must end."
                    .formatted(k, segmentWords(k), plan.segments().size())
                : "Make the program end after segment %d.".formatted(plan.segments().size()));
        extraVerdicts.clear();
        for (int j = 0; j < more.size(); j++) {
          Item item = more.get(j);
          if (item.text().isEmpty()) {
            extraVerdicts.add(
                new ReadbackReport.Verdict(
                    j + 1,
                    KeyedValue.place(item.segment(), item.kind()),
                    "",
                    shown.values().get(j).text(),
                    ReadbackReport.VerdictKind.EXTRA,
                    "Segment %d (as shown) is not in the plan: its %s reads '%s'."
                        .formatted(k, item.kind().word(), shown.values().get(j).text()),
                    Optional.empty()));
          }
        }
        for (int i = 0; i < items.size(); i++) {
          Item item = items.get(i);
          int now = item.segment() >= k ? item.segment() + 1 : item.segment();
          moved(i, indexOf(more, now, item.kind()), now);
        }
        return Optional.of(more);
      }
      return Optional.empty();
    }

    /** Whether two segments show the same, if both are shown. */
    private boolean sameShown(List<Item> as, int one, int other) {
      for (KeyedValue.Kind kind : keypad.review().order()) {
        OptionalInt here = indexOf(as, one, kind);
        OptionalInt there = indexOf(as, other, kind);
        if (here.isEmpty()
            || there.isEmpty()
            || !meaning(kind, shown.values().get(here.getAsInt()).text())
                .equals(meaning(kind, shown.values().get(there.getAsInt()).text()))) {
          return false;
        }
      }
      return true;
    }

    private static OptionalInt indexOf(List<Item> items, int segment, KeyedValue.Kind kind) {
      for (int i = 0; i < items.size(); i++) {
        if (items.get(i).segment() == segment && items.get(i).kind() == kind) {
          return OptionalInt.of(i);
        }
      }
      return OptionalInt.empty();
    }

    /** An item that is right in itself; it may stand in another segment. */
    private void moved(int index, OptionalInt shownIndex, int segmentNow) {
      Item item = items.get(index);
      if (shownIndex.isEmpty()) {
        put(
            index,
            "",
            ReadbackReport.VerdictKind.MISSING,
            "%s is not shown.".formatted(sentencePlace(item)),
            Optional.of(key(item)));
        return;
      }
      String text = shown.values().get(shownIndex.getAsInt()).text();
      // A count is shown at its own place and tells the number that is there.
      if (item.kind() == KeyedValue.Kind.END && item.segment() == 0) {
        put(
            index,
            text,
            ReadbackReport.VerdictKind.WRONG,
            "%s must be %s, it shows '%s'."
                .formatted(sentencePlace(item), item.text().orElse(""), text),
            Optional.of(key(item)));
      } else if (segmentNow == item.segment() || item.kind() == KeyedValue.Kind.END) {
        put(index, text, ReadbackReport.VerdictKind.MATCH, "as planned", Optional.empty());
      } else {
        put(
            index,
            text,
            ReadbackReport.VerdictKind.MOVED,
            "%s is right, but stands in segment %d.".formatted(sentencePlace(item), segmentNow),
            Optional.empty());
      }
    }

    /** Every target in the other unit: the schedule's own numbers, or a wrong sheet. */
    private void unitOfAll() {
      List<Integer> targets = new ArrayList<>();
      for (int i = 0; i < items.size(); i++) {
        if (items.get(i).kind() == KeyedValue.Kind.TARGET) {
          targets.add(i);
        }
      }
      if (targets.size() < 2 || !targets.stream().allMatch(this::isOtherUnit)) {
        return;
      }
      findings.add(
          "Every target is the plan's in %s, but the keypad is to work in %s."
              .formatted(program.unit().other().symbol(), program.unit().symbol()));
      corrections.add(
          "Key the program again with the numbers in %s: segment 1 target %s."
              .formatted(program.unit().symbol(), items.get(targets.get(0)).text().orElse("")));
    }

    private void exchangedSegments() {
      int count = plan.segments().size();
      for (int a = 1; a <= count; a++) {
        for (int b = a + 1; b <= count; b++) {
          if (exchanged(a, b)) {
            findings.add("Segments %d and %d have changed places.".formatted(a, b));
            corrections.add(
                "Key segment %d (%s) and segment %d (%s) again."
                    .formatted(a, segmentWords(a), b, segmentWords(b)));
          }
        }
      }
    }

    private boolean exchanged(int a, int b) {
      List<Integer> different = new ArrayList<>();
      for (KeyedValue.Kind kind : keypad.review().order()) {
        int atA = indexOf(items, a, kind).orElseThrow();
        int atB = indexOf(items, b, kind).orElseThrow();
        if (!matches(items.get(atA), answer(atB)) || !matches(items.get(atB), answer(atA))) {
          return false;
        }
        if (!matches(items.get(atA), answer(atA))) {
          different.add(atA);
          different.add(atB);
        }
      }
      // One differing value is a swap of values; two or more are a swap of segments.
      if (different.size() < 4 || different.stream().anyMatch(verdicts::containsKey)) {
        return false;
      }
      for (int index : different) {
        Item item = items.get(index);
        put(
            index,
            shownText(index),
            ReadbackReport.VerdictKind.SWAPPED,
            "%s must be %s; '%s' belongs to segment %d."
                .formatted(
                    sentencePlace(item),
                    item.text().orElse(""),
                    shownText(index),
                    item.segment() == a ? b : a),
            Optional.of(key(item)));
      }
      return true;
    }

    private void swappedValues() {
      for (int i = 0; i < items.size(); i++) {
        for (int j = i + 1; j < items.size(); j++) {
          if (!open(i) || !open(j) || !holdsValueOf(i, j) || !holdsValueOf(j, i)) {
            continue;
          }
          findings.add(
              "The %s and the %s have changed places."
                  .formatted(place(items.get(i)), place(items.get(j))));
          corrections.add(key(items.get(i)) + " " + key(items.get(j)));
          swapped(i, j);
          swapped(j, i);
        }
      }
    }

    private void swapped(int index, int with) {
      Item item = items.get(index);
      put(
          index,
          shownText(index),
          ReadbackReport.VerdictKind.SWAPPED,
          "%s must be %s; '%s' belongs to the %s."
              .formatted(
                  sentencePlace(item),
                  item.text().orElse(""),
                  shownText(index),
                  place(items.get(with))),
          Optional.of(key(item)));
    }

    /** Answered, wrong and not yet explained. */
    private boolean open(int index) {
      return !verdicts.containsKey(index)
          && answer(index).isPresent()
          && !matches(items.get(index), answer(index));
    }

    /** Whether {@code index} shows what {@code other} should show. */
    private boolean holdsValueOf(int index, int other) {
      return matches(items.get(other), answer(index));
    }

    private void singles() {
      for (int i = 0; i < items.size(); i++) {
        if (verdicts.containsKey(i) || matches(items.get(i), answer(i))) {
          continue;
        }
        single(i);
      }
      for (ReadbackReport.Verdict extra : extraVerdicts) {
        findings.add(extra.message());
        corrections.add("Look again at '%s'; the plan has nothing there.".formatted(extra.place()));
      }
    }

    private void single(int index) {
      Item item = items.get(index);
      String must = item.text().orElse("");
      if (answer(index).isEmpty()) {
        wrong(
            index,
            "",
            ReadbackReport.VerdictKind.MISSING,
            "%s was not shown; it must be %s.".formatted(sentencePlace(item), must));
        return;
      }
      String text = shownText(index);
      Optional<Meaning> meaning = meaning(item.kind(), text);
      if (meaning.isEmpty()) {
        wrong(
            index,
            text,
            ReadbackReport.VerdictKind.UNREADABLE,
            "%s must be %s; '%s' means nothing certain here.%s"
                .formatted(sentencePlace(item), must, text, unreadable(item, text)));
      } else if (isOtherUnit(index)) {
        wrong(
            index,
            text,
            ReadbackReport.VerdictKind.WRONG_UNIT,
            "%s must be %s; '%s' is the plan's value in %s."
                .formatted(sentencePlace(item), must, text, program.unit().other().symbol()));
      } else if (isHoursForMinutes(item, meaning.orElseThrow())) {
        wrong(
            index,
            text,
            ReadbackReport.VerdictKind.HOURS_FOR_MINUTES,
            "%s must be %s; '%s' mixes up hours and minutes."
                .formatted(sentencePlace(item), must, text));
      } else {
        wrong(
            index,
            text,
            ReadbackReport.VerdictKind.WRONG,
            "%s must be %s, it shows '%s'.".formatted(sentencePlace(item), must, text));
      }
    }

    private String unreadable(Item item, String text) {
      return item.kind() == KeyedValue.Kind.HOLD || item.kind() == KeyedValue.Kind.DELAY
          ? " Give it exactly as displayed, with both digits of the minutes."
          : text.isBlank() ? " Give what the display shows." : "";
    }

    private void wrong(int index, String text, ReadbackReport.VerdictKind kind, String message) {
      Item item = items.get(index);
      put(index, text, kind, message, Optional.of(key(item)));
      findings.add(message);
      corrections.add(key(item));
    }

    /** Whether a target or rate shows, in the other unit, the value as asked or as keyed. */
    private boolean isOtherUnit(int index) {
      Item item = items.get(index);
      if (matches(item, answer(index)) || item.segment() == 0) {
        return false;
      }
      Optional<BigDecimal> number =
          meaning(item.kind(), shownText(index)).flatMap(Meaning::number).map(BigDecimal::abs);
      int at = item.segment() - 1;
      return number.isPresent()
          && at < plan.segments().size()
          && List.of(program.requested(), program.expressible()).stream()
              .anyMatch(s -> isOtherUnit(item.kind(), s.segments().get(at), number.orElseThrow()));
    }

    private boolean isOtherUnit(KeyedValue.Kind kind, Segment segment, BigDecimal number) {
      TemperatureUnit other = program.unit().other();
      double perHour = keypad.rate().per().inAnHour().doubleValue();
      Optional<Double> value =
          switch (kind) {
            case TARGET -> Optional.of(other.value(segment.target()));
            case RATE -> segment.ramp().rate().map(rate -> other.value(rate) / perHour);
            default -> Optional.empty();
          };
      BigDecimal step =
          (kind == KeyedValue.Kind.RATE ? keypad.rate().range() : keypad.target().range()).step();
      return value.filter(v -> Math.abs(v - number.doubleValue()) < step.doubleValue()).isPresent();
    }

    private boolean isHoursForMinutes(Item item, Meaning shownMeaning) {
      if (item.kind() != KeyedValue.Kind.HOLD && item.kind() != KeyedValue.Kind.DELAY) {
        return false;
      }
      Optional<BigDecimal> planned =
          meaning(item.kind(), item.text().orElse("")).flatMap(Meaning::number);
      if (planned.isEmpty() || shownMeaning.number().isEmpty()) {
        return false;
      }
      long plannedMinutes = planned.orElseThrow().longValue();
      double shownMinutes = shownMeaning.number().orElseThrow().doubleValue();
      long hours = plannedMinutes / 60;
      long rest = plannedMinutes % 60;
      // 1.30 keyed as 1.50 (decimal hours), or 1.5 h keyed as 1.30.
      double hundredths = hours * 60 + rest / 0.6;
      double sixtieths = hours * 60 + rest * 0.6;
      return shownMinutes == plannedMinutes * 60.0
          || shownMinutes * 60.0 == plannedMinutes
          || (rest != 0
              && (Math.abs(shownMinutes - hundredths) < 0.5
                  || Math.abs(shownMinutes - sixtieths) < 0.5));
    }

    private void hidden() {
      Set<KeyedValue.Kind> hidden = keypad.hiddenInReview();
      Set<Integer> ends = new TreeSet<>();
      for (KeyedValue value : program.values()) {
        if (!hidden.contains(value.kind())) {
          continue;
        }
        if (value.kind() == KeyedValue.Kind.END) {
          ends.add(value.segment());
          continue;
        }
        unproven.add(
            "%s, %s (%s): this review does not show it."
                .formatted(capital(value.place()), value.digits(), value.meaning()));
      }
      if (!ends.isEmpty()) {
        unproven.add(
            "That the program ends after segment %d (segment %d must read %s): this review does not show unused segments."
                .formatted(
                    plan.segments().size(),
                    plan.segments().size() + 1,
                    program.checkFigures().firstUnused()));
      }
    }

    // Check figures.

    private List<ReadbackReport.Figure> figures(List<Item> as, List<Shown.Value> texts) {
      List<ReadbackReport.Figure> figures = new ArrayList<>();
      CheckFigures planned = program.checkFigures();
      int segments =
          as.stream()
              .filter(item -> item.kind() != KeyedValue.Kind.END)
              .mapToInt(Item::segment)
              .max()
              .orElse(0);
      boolean told = texts.stream().noneMatch(v -> v.text().isEmpty()) && extras.isEmpty();
      boolean realigned = as != items;
      if (!keypad.review().order().isEmpty()) {
        figures.add(
            figure(
                "segments",
                BigDecimal.valueOf(planned.segments()),
                told || realigned ? Optional.of(BigDecimal.valueOf(segments)) : Optional.empty()));
      }
      boolean complete = extras.isEmpty() || realigned;
      if (keypad.review().order().contains(KeyedValue.Kind.TARGET)) {
        figures.add(
            figure(
                "sum of targets",
                BigDecimal.valueOf(planned.sumOfTargets()),
                sum(KeyedValue.Kind.TARGET, as, texts, complete)));
      }
      if (keypad.review().order().contains(KeyedValue.Kind.HOLD)) {
        figures.add(
            figure(
                "minutes of hold",
                BigDecimal.valueOf(planned.totalMinutes()),
                sum(KeyedValue.Kind.HOLD, as, texts, complete)));
      }
      return figures;
    }

    private Optional<BigDecimal> sum(
        KeyedValue.Kind kind, List<Item> as, List<Shown.Value> texts, boolean complete) {
      BigDecimal sum = BigDecimal.ZERO;
      for (int i = 0; i < as.size(); i++) {
        if (as.get(i).kind() != kind) {
          continue;
        }
        Optional<Meaning> meaning = meaning(kind, texts.get(i).text());
        if (!complete || meaning.isEmpty()) {
          return Optional.empty();
        }
        // An endless hold counts nothing, as in the plan's figures.
        sum = sum.add(meaning.orElseThrow().number().orElse(BigDecimal.ZERO));
      }
      return Optional.of(sum);
    }

    private static ReadbackReport.Figure figure(
        String name, BigDecimal planned, Optional<BigDecimal> shown) {
      return new ReadbackReport.Figure(
          name,
          Words.number(planned),
          shown.map(Words::number).orElse("?"),
          shown.filter(s -> s.compareTo(planned) == 0).isPresent());
    }

    // Words.

    private ReadbackReport.Verdict match(int index) {
      Item item = items.get(index);
      return new ReadbackReport.Verdict(
          index + 1,
          place(item),
          item.text().orElse(""),
          shownText(index),
          ReadbackReport.VerdictKind.MATCH,
          "as planned",
          Optional.empty());
    }

    private void put(
        int index,
        String text,
        ReadbackReport.VerdictKind kind,
        String message,
        Optional<String> correction) {
      Item item = items.get(index);
      verdicts.put(
          index,
          new ReadbackReport.Verdict(
              index + 1, place(item), item.text().orElse(""), text, kind, message, correction));
    }

    private String segmentWords(int segment) {
      Map<KeyedValue.Kind, String> values = plan.segments().get(segment - 1);
      return keypad.order().stream()
          .map(kind -> kind.word() + " " + values.get(kind))
          .reduce((a, b) -> a + ", " + b)
          .orElse("");
    }

    private static String key(Item item) {
      return "Key %s at %s.".formatted(item.text().orElse(""), place(item));
    }

    private static String place(Item item) {
      return KeyedValue.place(item.segment(), item.kind());
    }

    private static String sentencePlace(Item item) {
      return capital(place(item));
    }

    private static String capital(String words) {
      return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }
  }
}
