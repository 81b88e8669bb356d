package org.heatwright.keypad;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import org.heatwright.schedule.Segment;
import org.heatwright.units.TemperatureUnit;

/** One comparison; used once, by one thread. */
final class Comparison {

  private final FittedProgram program;
  private final Keypad keypad;
  private final Shown shown;
  private final OptionalInt slot;
  private final Optional<UnitCheck.Result> unitCheck;
  private final ReviewPlan plan;
  private final Meanings meanings;
  private final List<ReviewPlan.Item> items;

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
    // A blank says that nothing was shown there.
    this.shown =
        new Shown(
            shown.slot(),
            shown.unit(),
            shown.values().stream().filter(v -> !v.text().isBlank()).toList());
    this.slot = slot;
    this.unitCheck = unitCheck;
    this.plan = ReviewPlan.of(program, keypad);
    this.meanings = new Meanings(keypad, program.unit());
    this.items = plan.items();
  }

  ReadbackReport report() {
    slot();
    unit();
    assign();
    List<ReviewPlan.Item> figured = items;
    List<Shown.Value> figuredShown = answersInOrder();
    if (!allMatch()) {
      Optional<List<ReviewPlan.Item>> moved = missingSegment().or(this::extraSegment);
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
          "There is no slot %d: the keypad has slots 1 to %d.".formatted(reviewed, keypad.slots()));
    } else if (slot.isPresent() && slot.getAsInt() != reviewed) {
      findings.add(
          "Slot %d was reviewed, but the program was keyed into slot %d."
              .formatted(reviewed, slot.getAsInt()));
      corrections.add("Open the review of slot %d.".formatted(slot.getAsInt()));
    }
  }

  private void unit() {
    TemperatureUnit unit = program.unit();
    boolean asked = keypad.units().asked().isPresent();
    if (shown.unit().filter(u -> u != unit).isPresent()) {
      wrongUnitInForce(
          "The display says %s, but the plan is for %s: the same numbers mean other temperatures."
              .formatted(unit.other().symbol(), unit.symbol()));
      return;
    }
    if (asked) {
      unitOfProgram();
      return;
    }
    if (unitCheck.filter(c -> c.settles(unit.other())).isPresent()) {
      wrongUnitInForce(unitCheck.orElseThrow().why());
      return;
    }
    Set<Keypad.UnitSetting.ShownAt> shownAt = keypad.units().shownAt();
    if (!keypad.units().switchable() || unitCheck.filter(c -> c.settles(unit)).isPresent()) {
      return;
    }
    if (shown.unit().isPresent() && !shownAt.isEmpty()) {
      if (!shownAt.contains(Keypad.UnitSetting.ShownAt.REVIEW)) {
        unproven.add(
            "That the keypad is in %s rests on the sign seen elsewhere on its display; the review does not show it."
                .formatted(unit.symbol()));
      }
      return;
    }
    UnitTrap trap = UnitTrap.of(program, keypad);
    unitOpen = trap.needsUnitCheck();
    unproven.add(
        "That the keypad is in %s: no unit sign was read off the display, and no reading alone can tell (68 may be a warm kiln in °C). Compare the cold kiln's reading with a thermometer.%s"
            .formatted(
                unit.symbol(),
                trap.worst()
                    .map(t -> " Segment %d: %s".formatted(t.segment(), t.meaning()))
                    .orElse("")));
    unitCheck.ifPresent(c -> unproven.add(c.why()));
  }

  /** A unit that the program itself asks: a cold kiln's reading says nothing of it. */
  private void unitOfProgram() {
    Keypad.UnitPrompt asked = keypad.units().asked().orElseThrow();
    if (asked.review() != Keypad.Position.HIDDEN) {
      return; // one of the values that are compared
    }
    String symbol = program.unit().symbol();
    Set<Keypad.UnitSetting.ShownAt> shownAt = keypad.units().shownAt();
    if (shown.unit().isPresent() && shownAt.contains(Keypad.UnitSetting.ShownAt.REVIEW)) {
      return;
    }
    if (shown.unit().isPresent() && shownAt.contains(Keypad.UnitSetting.ShownAt.ENTRY)) {
      unproven.add(
          "That the program is in %s rests on the sign seen while it was open; the review does not show it."
              .formatted(symbol));
      return;
    }
    UnitTrap trap = UnitTrap.of(program, keypad);
    unitOpen = trap.needsUnitCheck();
    unproven.add(
        "That the program is in %s: this review does not show the unit that it was keyed with, and the kiln's own reading says nothing of it. Open the program again and look at its unit, without taking anything.%s"
            .formatted(
                symbol,
                trap.worst()
                    .map(t -> " Segment %d: %s".formatted(t.segment(), t.meaning()))
                    .orElse("")));
  }

  private void wrongUnitInForce(String finding) {
    findings.add(finding);
    corrections.add(
        keypad
            .units()
            .asked()
            .map(
                a ->
                    "Key %s at the unit, then look at every value again."
                        .formatted(a.text(program.unit())))
            .orElse(
                "Switch the keypad to %s, then key the program again."
                    .formatted(program.unit().symbol())));
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
    if (wanted.matches("\\d{1,4}")) {
      // Labels have a letter, so this is a position.
      int index = Integer.parseInt(wanted) - 1;
      return index >= 0 && index < items.size() && !answers.containsKey(index)
          ? OptionalInt.of(index)
          : OptionalInt.empty();
    }
    for (int i = 0; i < items.size(); i++) {
      ReviewPlan.Item item = items.get(i);
      if (!answers.containsKey(i)
          && ReviewPlan.names(keypad, item.segment(), item.kind()).stream()
              .anyMatch(name -> Texts.folded(name).equals(wanted))) {
        return OptionalInt.of(i);
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

  private boolean matches(ReviewPlan.Item item, Optional<Shown.Value> value) {
    if (item.unused()) {
      return true;
    }
    Optional<Meanings.Meaning> meaning = value.flatMap(v -> meanings.of(item.kind(), v.text()));
    return meaning.isPresent()
        && (item.text().isEmpty()
            || meaning.equals(meanings.of(item.kind(), item.text().orElseThrow())));
  }

  private boolean matches(List<ReviewPlan.Item> other) {
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

  // What went wrong as a whole.

  private Optional<List<ReviewPlan.Item>> missingSegment() {
    for (int k = 1; k <= plan.segments().size(); k++) {
      if (plan.segments().size() == 1) {
        break;
      }
      List<ReviewPlan.Item> fewer = plan.without(k).items();
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
        ReviewPlan.Item item = items.get(i);
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

  private Optional<List<ReviewPlan.Item>> extraSegment() {
    if (plan.segments().size() >= keypad.segments() || keypad.review().order().isEmpty()) {
      return Optional.empty();
    }
    for (int k = 1; k <= plan.segments().size() + 1; k++) {
      List<ReviewPlan.Item> more = plan.with(k).items();
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
        ReviewPlan.Item item = more.get(j);
        if (item.text().isEmpty() && !item.unused()) {
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
        ReviewPlan.Item item = items.get(i);
        int now = item.segment() >= k ? item.segment() + 1 : item.segment();
        moved(i, indexOf(more, now, item.kind()), now);
      }
      return Optional.of(more);
    }
    return Optional.empty();
  }

  /** Whether two segments show the same, if both are shown. */
  private boolean sameShown(List<ReviewPlan.Item> as, int one, int other) {
    for (KeyedValue.Kind kind : keypad.review().order()) {
      OptionalInt here = indexOf(as, one, kind);
      OptionalInt there = indexOf(as, other, kind);
      if (here.isEmpty()
          || there.isEmpty()
          || !meanings
              .of(kind, shown.values().get(here.getAsInt()).text())
              .equals(meanings.of(kind, shown.values().get(there.getAsInt()).text()))) {
        return false;
      }
    }
    return true;
  }

  private static OptionalInt indexOf(
      List<ReviewPlan.Item> items, int segment, KeyedValue.Kind kind) {
    for (int i = 0; i < items.size(); i++) {
      if (items.get(i).segment() == segment && items.get(i).kind() == kind) {
        return OptionalInt.of(i);
      }
    }
    return OptionalInt.empty();
  }

  /** An item that is right in itself; it may stand in another segment. */
  private void moved(int index, OptionalInt shownIndex, int segmentNow) {
    ReviewPlan.Item item = items.get(index);
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
    } else if (segmentNow == item.segment()
        || item.kind() == KeyedValue.Kind.END
        || item.unused()) {
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
      if (items.get(i).kind() == KeyedValue.Kind.TARGET && !items.get(i).unused()) {
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
      ReviewPlan.Item item = items.get(index);
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
    ReviewPlan.Item item = items.get(index);
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
    ReviewPlan.Item item = items.get(index);
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
    Optional<Meanings.Meaning> meaning = meanings.of(item.kind(), text);
    if (meaning.isEmpty()) {
      wrong(
          index,
          text,
          ReadbackReport.VerdictKind.UNREADABLE,
          "%s must be %s; '%s' means nothing certain here.%s"
              .formatted(sentencePlace(item), must, text, unreadable(item)));
    } else if (item.kind() == KeyedValue.Kind.UNIT) {
      wrong(
          index,
          text,
          ReadbackReport.VerdictKind.WRONG_UNIT,
          "The program's unit must read %s, it shows '%s': the same numbers mean other temperatures."
              .formatted(must, text));
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

  private static String unreadable(ReviewPlan.Item item) {
    return isTime(item.kind())
        ? " Give it exactly as displayed, with both digits of the minutes."
        : "";
  }

  private void wrong(int index, String text, ReadbackReport.VerdictKind kind, String message) {
    ReviewPlan.Item item = items.get(index);
    put(index, text, kind, message, Optional.of(key(item)));
    findings.add(message);
    corrections.add(key(item));
  }

  /** Whether a target or rate shows, in the other unit, the value as asked or as keyed. */
  private boolean isOtherUnit(int index) {
    ReviewPlan.Item item = items.get(index);
    if (matches(item, answer(index)) || item.segment() == 0) {
      return false;
    }
    Optional<BigDecimal> number =
        meanings
            .of(item.kind(), shownText(index))
            .flatMap(Meanings.Meaning::number)
            .map(BigDecimal::abs);
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

  private static boolean isTime(KeyedValue.Kind kind) {
    return kind == KeyedValue.Kind.HOLD
        || kind == KeyedValue.Kind.DELAY
        || kind == KeyedValue.Kind.TIME;
  }

  private boolean isHoursForMinutes(ReviewPlan.Item item, Meanings.Meaning shownMeaning) {
    if (!isTime(item.kind())) {
      return false;
    }
    Optional<BigDecimal> planned =
        meanings.of(item.kind(), item.text().orElse("")).flatMap(Meanings.Meaning::number);
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
      // A unit that is not shown has been told of already, with what it may lead to.
      if (!hidden.contains(value.kind()) || value.kind() == KeyedValue.Kind.UNIT) {
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

  private List<ReadbackReport.Figure> figures(List<ReviewPlan.Item> as, List<Shown.Value> texts) {
    List<ReadbackReport.Figure> figures = new ArrayList<>();
    CheckFigures planned = program.checkFigures();
    int segments =
        as.stream()
            .filter(item -> item.kind() != KeyedValue.Kind.END && !item.unused())
            .mapToInt(ReviewPlan.Item::segment)
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
      KeyedValue.Kind kind, List<ReviewPlan.Item> as, List<Shown.Value> texts, boolean complete) {
    BigDecimal sum = BigDecimal.ZERO;
    for (int i = 0; i < as.size(); i++) {
      if (as.get(i).kind() != kind || as.get(i).unused()) {
        continue;
      }
      Optional<Meanings.Meaning> meaning = meanings.of(kind, texts.get(i).text());
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
    ReviewPlan.Item item = items.get(index);
    return new ReadbackReport.Verdict(
        index + 1,
        place(item),
        item.text().orElse(""),
        shownText(index),
        ReadbackReport.VerdictKind.MATCH,
        item.unused() ? "not run, so no matter what it reads" : "as planned",
        Optional.empty());
  }

  private void put(
      int index,
      String text,
      ReadbackReport.VerdictKind kind,
      String message,
      Optional<String> correction) {
    ReviewPlan.Item item = items.get(index);
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

  private static String key(ReviewPlan.Item item) {
    return "Key %s at %s.".formatted(item.text().orElse(""), place(item));
  }

  private static String place(ReviewPlan.Item item) {
    return KeyedValue.place(item.segment(), item.kind()) + (item.unused() ? " (unused)" : "");
  }

  private static String sentencePlace(ReviewPlan.Item item) {
    return capital(place(item));
  }

  private static String capital(String words) {
    return Character.toUpperCase(words.charAt(0)) + words.substring(1);
  }
}
