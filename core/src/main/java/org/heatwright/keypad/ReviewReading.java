package org.heatwright.keypad;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.heatwright.schedule.AtEnd;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;

/**
 * What a slot holds that nobody has a plan of: the schedule that its review shows. It proves
 * nothing, because nobody said beforehand what should be there.
 */
public final class ReviewReading {

  private ReviewReading() {}

  /**
   * @param program what the review shows as a schedule, in the keypad's own numbers; empty if it
   *     cannot be told
   * @param notShown what the review does not show, a sentence each
   * @param problem why it cannot be told, one sentence
   */
  public record Result(
      Optional<Schedule> program, List<String> notShown, Optional<String> problem) {

    public Result {
      notShown = List.copyOf(notShown);
    }
  }

  /** Where to look, in display order, if every segment were used. */
  public static List<ReadbackQuestion> questions(Keypad keypad) {
    List<ReadbackQuestion> questions = new ArrayList<>();
    if (ReviewPlan.unitShown(keypad, Keypad.Position.FIRST)) {
      ask(questions, keypad, 0, KeyedValue.Kind.UNIT);
    }
    if (delayShown(keypad, Keypad.Position.FIRST)) {
      ask(questions, keypad, 0, KeyedValue.Kind.DELAY);
    }
    if (keypad.end().by() == Keypad.EndRule.By.COUNT) {
      ask(questions, keypad, 0, KeyedValue.Kind.END);
    }
    for (int segment = 1; segment <= keypad.segments(); segment++) {
      for (KeyedValue.Kind kind : keypad.review().order()) {
        ask(questions, keypad, segment, kind);
      }
    }
    if (delayShown(keypad, Keypad.Position.LAST)) {
      ask(questions, keypad, 0, KeyedValue.Kind.DELAY);
    }
    if (ReviewPlan.unitShown(keypad, Keypad.Position.LAST)) {
      ask(questions, keypad, 0, KeyedValue.Kind.UNIT);
    }
    return questions;
  }

  /** The unit that the program itself shows among these values, if its review shows it. */
  public static Optional<TemperatureUnit> unitShown(Keypad keypad, Shown shown) {
    List<Shown.Value> told = shown.values().stream().filter(v -> !v.text().isBlank()).toList();
    return keypad
        .units()
        .asked()
        .filter(a -> a.review() != Keypad.Position.HIDDEN && !told.isEmpty())
        .flatMap(
            a ->
                a.unit(told.get(a.review() == Keypad.Position.FIRST ? 0 : told.size() - 1).text()));
  }

  private static void ask(
      List<ReadbackQuestion> questions, Keypad keypad, int segment, KeyedValue.Kind kind) {
    questions.add(
        new ReadbackQuestion(
            questions.size() + 1,
            ReviewPlan.label(keypad, segment, kind),
            ReviewPlan.words(keypad, segment, kind),
            ReviewPlan.digits(keypad, kind)));
  }

  private static boolean delayShown(Keypad keypad, Keypad.Position position) {
    return keypad.delay().isPresent() && keypad.review().delay() == position;
  }

  /**
   * @param shown the values in display order; blank ones were not shown
   * @param unit the unit in force
   * @param name what to call it, not blank
   */
  public static Result read(Keypad keypad, Shown shown, TemperatureUnit unit, String name) {
    try {
      Schedule program = new Reading(keypad, shown, unit, name).program();
      return new Result(Optional.of(program), notShown(keypad), Optional.empty());
    } catch (Unreadable e) {
      return new Result(Optional.empty(), List.of(), Optional.ofNullable(e.getMessage()));
    }
  }

  private static List<String> notShown(Keypad keypad) {
    List<String> notShown = new ArrayList<>();
    if (keypad.hiddenInReview().contains(KeyedValue.Kind.DELAY)) {
      notShown.add("The start delay: this review does not show it; none is taken.");
    }
    if (keypad.hiddenInReview().contains(KeyedValue.Kind.END)) {
      notShown.add("Where the program ends: this review does not show unused segments.");
    }
    return notShown;
  }

  /** The sentence says why. */
  private static final class Unreadable extends RuntimeException {
    private static final long serialVersionUID = 1L;

    Unreadable(String message, Object... values) {
      super(message.formatted(values));
    }
  }

  /** One reading; used once, by one thread. */
  private static final class Reading {

    private final Keypad keypad;
    private final Shown shown;
    private final TemperatureUnit unit;
    private final String name;
    private final Meanings meanings;
    private final Iterator<Shown.Value> rest;
    private final List<Map<KeyedValue.Kind, Meanings.Meaning>> segments = new ArrayList<>();
    private Duration delay = Duration.ZERO;
    private int left;

    Reading(Keypad keypad, Shown shown, TemperatureUnit unit, String name) {
      this.keypad = keypad;
      this.unit = unit;
      this.name = name;
      this.meanings = new Meanings(keypad, unit);
      List<Shown.Value> told = shown.values().stream().filter(v -> !v.text().isBlank()).toList();
      this.shown = new Shown(shown.slot(), shown.unit(), numbered(told));
      this.rest = told.iterator();
      this.left = told.size();
    }

    private static List<Shown.Value> numbered(List<Shown.Value> values) {
      return IntStream.range(0, values.size())
          .mapToObj(i -> new Shown.Value(Integer.toString(i + 1), values.get(i).text()))
          .toList();
    }

    Schedule program() {
      for (KeyedValue.Kind kind : keypad.order()) {
        if (!keypad.review().order().contains(kind)) {
          throw new Unreadable(
              "The review of %s does not show every %s, so a program cannot be learned from it.",
              keypad.name(), kind.word());
        }
      }
      if (keypad.unitFor(unit) != unit) {
        throw new Unreadable("%s works in %s only.", keypad.name(), unit.other().symbol());
      }
      if (shown.unit().filter(u -> u != unit).isPresent()) {
        throw new Unreadable("The display says %s, not %s.", unit.other().symbol(), unit.symbol());
      }
      if (ReviewPlan.unitShown(keypad, Keypad.Position.FIRST)) {
        unit();
      }
      if (delayShown(keypad, Keypad.Position.FIRST)) {
        delay();
      }
      segments();
      if (delayShown(keypad, Keypad.Position.LAST)) {
        delay();
      }
      if (ReviewPlan.unitShown(keypad, Keypad.Position.LAST)) {
        unit();
      }
      if (rest.hasNext()) {
        throw new Unreadable(
            "There is something after the end of the program: “%s”. Look again.",
            rest.next().text());
      }
      if (segments.isEmpty()) {
        throw new Unreadable("The slot is empty: its first segment is unused.");
      }
      Schedule schedule = schedule();
      verify(schedule);
      return schedule;
    }

    private void segments() {
      int most = keypad.segments();
      if (keypad.end().by() == Keypad.EndRule.By.COUNT) {
        String text = next(0, KeyedValue.Kind.END).text();
        most = Texts.number(text).filter(n -> n.scale() <= 0).map(BigDecimal::intValue).orElse(0);
        if (most < 1 || most > keypad.segments()) {
          throw new Unreadable(
              "“%s” is no number of segments; %s has 1 to %d.",
              text, keypad.name(), keypad.segments());
        }
      }
      int after =
          (delayShown(keypad, Keypad.Position.LAST) ? 1 : 0)
              + (ReviewPlan.unitShown(keypad, Keypad.Position.LAST) ? 1 : 0);
      boolean mayRunOut = keypad.end().by() != Keypad.EndRule.By.COUNT && !keypad.review().unused();
      for (int segment = 1; segment <= most; segment++) {
        if (mayRunOut && left == after) {
          return;
        }
        if (!segment(segment)) {
          marks(segment + 1);
          return;
        }
      }
    }

    /**
     * @return false if it is unused
     */
    private boolean segment(int number) {
      Map<KeyedValue.Kind, Meanings.Meaning> values = new EnumMap<>(KeyedValue.Kind.class);
      Optional<Unreadable> unreadable = Optional.empty();
      for (KeyedValue.Kind kind : keypad.review().order()) {
        Shown.Value value = next(number, kind);
        boolean atMark =
            keypad.markField() == keypad.order().get(0)
                ? values.isEmpty()
                : kind == keypad.markField();
        boolean marked = keypad.review().unused() && atMark && isMark(value.text());
        Optional<Meanings.Meaning> meaning = meanings.of(kind, value.text());
        if (marked) {
          return false;
        }
        if (meaning.isPresent()) {
          values.put(kind, meaning.orElseThrow());
        } else if (unreadable.isEmpty()) {
          // No matter, if the segment turns out to be unused.
          unreadable =
              Optional.of(
                  new Unreadable(
                      "%s: “%s” means nothing certain there. Give it exactly as displayed.",
                      ReviewPlan.words(keypad, number, kind), value.text()));
        }
      }
      if (unreadable.isPresent()) {
        throw unreadable.orElseThrow();
      }
      segments.add(values);
      return true;
    }

    /** Some keypads run every segment that is not emptied: each must be seen. */
    private void marks(int from) {
      if (keypad.end().by() != Keypad.EndRule.By.EVERY_UNUSED) {
        return;
      }
      for (int segment = from; segment <= keypad.segments(); segment++) {
        for (KeyedValue.Kind kind : ReviewPlan.beforeMark(keypad)) {
          next(segment, kind);
        }
        Shown.Value value = next(segment, KeyedValue.Kind.END);
        if (!isMark(value.text())) {
          throw new Unreadable(
              "Segment %d reads “%s” after an unused one. Look again.", segment, value.text());
        }
      }
    }

    private boolean isMark(String text) {
      return keypad.end().mark().filter(m -> Texts.same(m.shows(), text)).isPresent();
    }

    private void unit() {
      Shown.Value value = next(0, KeyedValue.Kind.UNIT);
      TemperatureUnit read =
          keypad
              .units()
              .asked()
              .flatMap(a -> a.unit(value.text()))
              .orElseThrow(() -> new Unreadable("“%s” is no unit.", value.text()));
      if (read != unit) {
        throw new Unreadable(
            "The program itself says %s, not %s: read its numbers in that unit.",
            read.symbol(), unit.symbol());
      }
    }

    private void delay() {
      Shown.Value value = next(0, KeyedValue.Kind.DELAY);
      delay =
          meanings
              .of(KeyedValue.Kind.DELAY, value.text())
              .flatMap(Meanings.Meaning::number)
              .flatMap(Reading::wholeMinutes)
              .orElseThrow(() -> new Unreadable("“%s” is no start delay.", value.text()));
    }

    private static Optional<Duration> wholeMinutes(BigDecimal minutes) {
      return minutes.stripTrailingZeros().scale() <= 0
          ? Optional.of(Duration.ofMinutes(minutes.longValue()))
          : Optional.empty();
    }

    private Shown.Value next(int segment, KeyedValue.Kind kind) {
      if (!rest.hasNext()) {
        throw new Unreadable(
            "The values end before %s. Read on to the end of the review.",
            ReviewPlan.words(keypad, segment, kind));
      }
      left--;
      Shown.Value value = rest.next();
      boolean label = value.at().chars().anyMatch(Character::isLetter);
      if (label
          && ReviewPlan.names(keypad, segment, kind).stream()
              .noneMatch(n -> Texts.folded(n).equals(Texts.folded(value.at())))) {
        throw new Unreadable(
            "“%s” comes where %s should. Give the values in display order.",
            value.at(), ReviewPlan.label(keypad, segment, kind));
      }
      return value;
    }

    private Schedule schedule() {
      List<Segment> read = new ArrayList<>();
      AtEnd atEnd = keypad.end().afterwards();
      for (int i = 0; i < segments.size(); i++) {
        Map<KeyedValue.Kind, Meanings.Meaning> values = segments.get(i);
        Duration hold = Duration.ZERO;
        Optional<BigDecimal> minutes = number(values, KeyedValue.Kind.HOLD);
        if (minutes.isPresent()) {
          int number = i + 1;
          hold =
              wholeMinutes(minutes.get())
                  .orElseThrow(
                      () -> new Unreadable("The hold of segment %d is no whole minutes.", number));
        } else if (i == segments.size() - 1) {
          atEnd = AtEnd.KEEP;
        } else {
          throw new Unreadable(
              "Segment %d holds without end, so what follows it never runs.", i + 1);
        }
        Temperature target = target(values, i + 1);
        Temperature from = i == 0 ? KeypadFit.COLD_KILN : read.get(i - 1).target();
        read.add(new Segment(ramp(values, from, target), target, hold));
      }
      return new Schedule(name, unit, read, delay, atEnd);
    }

    private Temperature target(Map<KeyedValue.Kind, Meanings.Meaning> values, int segment) {
      Keypad.Range range = keypad.targetRange(unit);
      BigDecimal degrees =
          number(values, KeyedValue.Kind.TARGET)
              .filter(range::holds)
              .orElseThrow(
                  () ->
                      new Unreadable(
                          "The target of segment %d is none that %s can hold (%s to %s %s).",
                          segment,
                          keypad.name(),
                          Words.number(range.min()),
                          Words.number(range.greatest()),
                          unit.symbol()));
      return unit.temperature(degrees.doubleValue());
    }

    private Ramp ramp(
        Map<KeyedValue.Kind, Meanings.Meaning> values, Temperature from, Temperature to) {
      if (keypad.rampKind() == KeyedValue.Kind.TIME) {
        double kelvins = Math.abs(to.minus(from).kelvins());
        return number(values, KeyedValue.Kind.TIME)
            .filter(minutes -> minutes.signum() > 0 && kelvins > 0)
            .map(
                minutes ->
                    Ramp.at(HeatingRate.ofKelvinsPerHour(60 * kelvins / minutes.doubleValue())))
            .orElse(Ramp.fastest());
      }
      return number(values, KeyedValue.Kind.RATE)
          .map(BigDecimal::abs)
          .map(n -> n.multiply(keypad.rate().per().inAnHour()))
          .filter(n -> n.signum() > 0)
          .map(n -> Ramp.at(unit.rate(n.doubleValue())))
          .orElse(Ramp.fastest());
    }

    private static Optional<BigDecimal> number(
        Map<KeyedValue.Kind, Meanings.Meaning> values, KeyedValue.Kind kind) {
      return Optional.ofNullable(values.get(kind)).flatMap(Meanings.Meaning::number);
    }

    /** What was understood must show the very values that were read. */
    private void verify(Schedule schedule) {
      FittedProgram program = KeypadFit.fit(schedule, keypad);
      if (!program.fits()) {
        throw new Unreadable(
            "This cannot stand in a slot of %s: %s",
            keypad.name(), program.refusals().get(0).message());
      }
      ReadbackReport report = Readback.compare(program, keypad, shown);
      report.verdicts().stream()
          .filter(v -> v.kind() != ReadbackReport.VerdictKind.MATCH)
          .findFirst()
          .ifPresent(
              v -> {
                throw new Unreadable(
                    "%s: “%s” is no value that %s shows there. Look again.",
                    v.place(), v.shown(), keypad.name());
              });
    }
  }
}
