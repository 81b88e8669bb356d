package org.heatwright.keypad;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.heatwright.schedule.AtEnd;
import org.heatwright.units.TemperatureUnit;

/**
 * A kiln's keypad as data: its keys, prompts, ranges, repeat behaviour, how it saves and what its
 * review shows. Immutable. The constructor refuses a description that contradicts itself, because a
 * keying sheet or a read-back built on it would be wrong.
 *
 * @param name what people call it, not blank
 * @param units which unit it works in
 * @param keys the keys it has
 * @param entry how a value is made
 * @param accept the key that takes a value and goes to the next prompt
 * @param starts where a field's value stands when it is entered
 * @param slots programs it can store, 1 to 999
 * @param segments segments in a program, 1 to 99
 * @param displayDigits digits the display has, 2 to 8
 * @param order the fields of a segment in the order they are keyed: rate (or time), target, hold,
 *     each once
 * @param rate the rate field, or that of the time to get to the target
 * @param target the target field
 * @param hold the hold field
 * @param delay the delay field, if it has one
 * @param end how the end of a program is marked
 * @param programming how one goes through a program's values and what stores them
 * @param gestures how programming is opened, saved and left, how a program is started and stopped
 * @param review what the review shows
 * @param afterPowerCut what a running program does when the power comes back
 */
public record Keypad(
    String name,
    UnitSetting units,
    Set<Key> keys,
    Entry entry,
    Key accept,
    FieldStart starts,
    int slots,
    int segments,
    int displayDigits,
    List<KeyedValue.Kind> order,
    RateField rate,
    TargetField target,
    HoldField hold,
    Optional<DelayField> delay,
    EndRule end,
    Programming programming,
    Gestures gestures,
    Review review,
    PowerCut afterPowerCut) {

  public Keypad {
    Objects.requireNonNull(units, "units");
    keys = Set.copyOf(keys);
    Objects.requireNonNull(entry, "entry");
    Objects.requireNonNull(accept, "accept");
    Objects.requireNonNull(starts, "starts");
    order = List.copyOf(order);
    Objects.requireNonNull(rate, "rate");
    Objects.requireNonNull(target, "target");
    Objects.requireNonNull(hold, "hold");
    Objects.requireNonNull(delay, "delay");
    Objects.requireNonNull(end, "end");
    Objects.requireNonNull(programming, "programming");
    Objects.requireNonNull(gestures, "gestures");
    Objects.requireNonNull(review, "review");
    Objects.requireNonNull(afterPowerCut, "afterPowerCut");
    require(!name.isBlank(), "A keypad needs a name.");
    require(slots >= 1 && slots <= 999, "A keypad has 1 to 999 slots, not %d.", slots);
    require(
        segments >= 1 && segments <= 99,
        "A keypad program has 1 to 99 segments, not %d.",
        segments);
    require(
        displayDigits >= 2 && displayDigits <= 8,
        "A display has 2 to 8 digits, not %d.",
        displayDigits);
    require(
        order.size() == 3 && Set.copyOf(order).equals(segmentFields(rate)),
        "The order of a segment names %s, target and hold once each, not %s.",
        rampKind(rate).word(),
        words(order));
    for (KeyedValue.Kind kind : review.order()) {
      require(
          order.contains(kind),
          "The review's order names %s, target and hold, not %s.",
          rampKind(rate).word(),
          kind.word());
    }
    require(
        Set.copyOf(review.order()).size() == review.order().size(),
        "The review's order names a field twice: %s.",
        words(review.order()));
    require(
        !(review.unused() && review.order().isEmpty()),
        "A review that shows unused segments shows at least one field of a segment.");
    require(
        !(review.unused() && end.by() == EndRule.By.COUNT),
        "With a segment count the review cannot show an unused segment: set unused to hidden.");
    require(
        keys.contains(accept),
        "The accepting key '%s' is not among the keypad's keys.",
        accept.word());
    for (Key key : needed(entry, rate, gestures)) {
      require(
          keys.contains(key),
          "The key '%s' is used but is not among the keypad's keys.",
          key.word());
    }
    require(
        units.setting() == UnitSetting.Setting.SWITCHABLE
            || (rate.inOtherUnit().isEmpty() && target.inOtherUnit().isEmpty()),
        "Ranges in the other unit are for a keypad that can be switched to it.");
    KeyedValue.Kind markField = end.in().orElse(order.get(0));
    require(
        order.contains(markField),
        "The mark that ends a program is keyed at one of a segment's values, not at %s.",
        markField.word());
    require(
        !review.unused() || markField == order.get(0) || review.order().contains(markField),
        "A review that shows the first unused segment shows its %s, which ends the program.",
        markField.word());
    Range holds = holdRange(hold, end, markField);
    requireDistinctTexts(rate, target, hold, holds, end, markField);
    if (entry instanceof Entry.DigitKeys) {
      requireTypable(rate.fastest(), rate::isTyped);
      requireTypable(hold.endless(), n -> isTyped(holds, hold.form(), hold.decimals(), n));
      requireTypable(
          end.mark(),
          n ->
              switch (markField) {
                case RATE, TIME -> rate.isTyped(n);
                case TARGET -> target.range().holds(n);
                default -> isTyped(holds, hold.form(), hold.decimals(), n);
              });
    }
    requireLabels(rate, target, hold, delay, units);
    requireUnitAsked(units, gestures, entry);
    requireProgramming(programming, gestures, entry, keys, units);
    KeyClashes.first(entry, keys, accept, programming, gestures)
        .ifPresent(
            clash -> {
              throw new IllegalArgumentException(clash);
            });
    rate.start()
        .ifPresent(
            v -> require(rate.range().holds(v), "The rate cannot start at %s: it is not one.", v));
    target
        .start()
        .ifPresent(
            v ->
                require(
                    target.range().holds(v), "The target cannot start at %s: it is not one.", v));
    hold.startMinutes()
        .ifPresent(
            v -> require(holds.holds(v), "The hold cannot start at %s min: it is not one.", v));
    delay
        .flatMap(DelayField::startMinutes)
        .ifPresent(
            v ->
                require(
                    delay.orElseThrow().range().holds(v),
                    "The delay cannot start at %s min: it is not one.",
                    v));
  }

  private static void require(boolean holds, String message, Object... values) {
    if (!holds) {
      throw new IllegalArgumentException(message.formatted(values));
    }
  }

  /** One form for equal numbers, so that equal descriptions are equal records. */
  private static BigDecimal plain(BigDecimal number) {
    BigDecimal stripped = number.stripTrailingZeros();
    return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
  }

  private static String words(List<KeyedValue.Kind> kinds) {
    return kinds.stream().map(KeyedValue.Kind::word).toList().toString();
  }

  private static KeyedValue.Kind rampKind(RateField rate) {
    return rate.time().isPresent() ? KeyedValue.Kind.TIME : KeyedValue.Kind.RATE;
  }

  private static Set<KeyedValue.Kind> segmentFields(RateField rate) {
    return EnumSet.of(rampKind(rate), KeyedValue.Kind.TARGET, KeyedValue.Kind.HOLD);
  }

  /** Where a hold of zero marks the end of a program, it is no ordinary hold. */
  private static Range holdRange(HoldField hold, EndRule end, KeyedValue.Kind markField) {
    boolean zeroEnds =
        markField == KeyedValue.Kind.HOLD
            && end.mark()
                .flatMap(m -> hold.form().minutes(Texts.clean(m.shows())))
                .filter(m -> m.signum() == 0)
                .isPresent();
    return zeroEnds
        ? new Range(hold.stepMinutes(), hold.maxMinutes(), hold.stepMinutes())
        : hold.range();
  }

  private static Set<Key> needed(Entry entry, RateField rate, Gestures gestures) {
    Set<Key> needed = EnumSet.noneOf(Key.class);
    if (entry instanceof Entry.StepKeys) {
      needed.add(Key.UP);
      needed.add(Key.DOWN);
    } else if (entry instanceof Entry.Knob) {
      needed.add(Key.TURN);
    } else if (entry instanceof Entry.DigitKeys digits) {
      needed.add(Key.DIGITS);
      if (digits.pointKey()) {
        needed.add(Key.POINT);
      }
      if (rate.cooling() == Cooling.NEGATIVE) {
        needed.add(Key.MINUS);
      }
    }
    for (Gesture gesture : gestures.all()) {
      gesture.presses().forEach(press -> needed.add(press.key()));
    }
    return needed;
  }

  /** One text must never mean two things in one field. */
  private static void requireDistinctTexts(
      RateField rate,
      TargetField target,
      HoldField hold,
      Range holds,
      EndRule end,
      KeyedValue.Kind markField) {
    String ramp = rampKind(rate).word();
    rate.fastest()
        .ifPresent(
            fastest -> {
              require(
                  !rate.isShown(fastest.shows()),
                  "The %s '%s' means fastest, but it is also an ordinary %s between %s and %s.",
                  ramp,
                  fastest.shows(),
                  ramp,
                  rate.text(rate.range(), rate.range().min()),
                  rate.text(rate.range(), rate.range().greatest()));
              require(
                  !(markField == rampKind(rate)
                      && end.mark().isPresent()
                      && Texts.same(fastest.shows(), end.mark().orElseThrow().shows())),
                  "The %s '%s' means both fastest and the end of the program.",
                  ramp,
                  fastest.shows());
            });
    hold.endless()
        .ifPresent(
            endless ->
                require(
                    hold.form()
                        .minutes(Texts.clean(endless.shows()))
                        .filter(m -> isBetween(holds, m))
                        .isEmpty(),
                    "The hold '%s' means endless, but it is also an ordinary hold.",
                    endless.shows()));
    end.mark()
        .ifPresent(
            mark -> {
              Optional<BigDecimal> number = Texts.number(mark.shows());
              boolean ordinary =
                  switch (markField) {
                    case RATE, TIME -> rate.isShown(mark.shows());
                    case TARGET -> number.filter(n -> target.range().holds(n)).isPresent();
                    default ->
                        hold.form()
                            .minutes(Texts.clean(mark.shows()))
                            .filter(m -> isBetween(holds, m))
                            .isPresent();
                  };
              require(
                  !(markField == KeyedValue.Kind.HOLD
                      && hold.endless()
                          .filter(e -> Texts.same(e.shows(), mark.shows()))
                          .isPresent()),
                  "The hold '%s' means both endless and the end of the program.",
                  mark.shows());
              require(
                  !ordinary,
                  "The %s '%s' marks the end of the program, but it is also an ordinary %s.",
                  markField.word(),
                  mark.shows(),
                  markField.word());
            });
  }

  private static boolean isBetween(Range range, BigDecimal number) {
    return number.compareTo(range.min()) >= 0 && number.compareTo(range.max()) <= 0;
  }

  /** Whether typing these digits makes a time; points and colons are not typed. */
  private static boolean isTyped(Range range, TimeForm form, int decimals, BigDecimal typed) {
    return IntStream.range(0, range.count())
        .mapToObj(i -> form.text(range.value(i), decimals).replaceAll("[.:]", ""))
        .anyMatch(text -> new BigDecimal(text).compareTo(typed) == 0);
  }

  private static void requireTypable(Optional<Special> special, Predicate<BigDecimal> isOrdinary) {
    special.ifPresent(
        s -> {
          require(
              s.typed().isPresent() || s.shows().matches("\\d+"),
              "The special value '%s' cannot be typed on digit keys: say which digits make it.",
              s.shows());
          String typed = s.typed().orElse(s.shows());
          require(
              !isOrdinary.test(new BigDecimal(typed)),
              "The special value '%s' is typed as %s, but that is an ordinary value too.",
              s.shows(),
              typed);
        });
  }

  private static void requireLabels(
      RateField rate,
      TargetField target,
      HoldField hold,
      Optional<DelayField> delay,
      UnitSetting units) {
    List<String> labels = new ArrayList<>();
    units.asked().flatMap(UnitPrompt::label).ifPresent(labels::add);
    rate.label().ifPresent(labels::add);
    target.label().ifPresent(labels::add);
    hold.label().ifPresent(labels::add);
    delay.flatMap(DelayField::label).ifPresent(labels::add);
    for (String label : labels) {
      require(
          label.chars().anyMatch(Character::isLetter),
          "The label '%s' needs a letter, or it could be taken for a position.",
          label);
    }
    require(
        Set.copyOf(labels.stream().map(Texts::folded).toList()).size() == labels.size(),
        "Two fields have the same label: %s.",
        labels);
  }

  private static void requireUnitAsked(UnitSetting units, Gestures gestures, Entry entry) {
    if (units.asked().isEmpty()) {
      return;
    }
    require(
        gestures.switchUnit().isEmpty(),
        "Where each program asks its unit, no keys switch it from the idle display: leave switch-unit out.");
    if (entry instanceof Entry.DigitKeys) {
      UnitPrompt asked = units.asked().orElseThrow();
      for (String shows : List.of(asked.celsius(), asked.fahrenheit())) {
        require(
            shows.matches("\\d+"),
            "The unit '%s' cannot be typed on digit keys: give the digits that choose it.",
            shows);
      }
    }
  }

  private static void requireProgramming(
      Programming programming, Gestures gestures, Entry entry, Set<Key> keys, UnitSetting units) {
    switch (programming.commits()) {
      case ACCEPTING ->
          require(
              gestures.commit().isEmpty(),
              "Values that are stored as they are accepted need no keys that save: leave commit out, or set commits to gesture.");
      case GESTURE ->
          require(
              !gestures.commit().isEmpty(),
              "Which keys save the program? Give commit, or set commits to accepting or start.");
      case START ->
          require(
              gestures.commit().isEmpty() && !gestures.start().isEmpty(),
              "A program that is stored only when it is started needs the keys that start it (start) and no others that save (commit).");
    }
    require(
        programming.afterLast() != AfterLast.IDLE || programming.commits() == Commits.ACCEPTING,
        "Leaving by the last value would throw away what is not saved: set after-last to first or stays.");
    require(
        programming.afterLast() == AfterLast.IDLE
            || programming.commits() != Commits.ACCEPTING
            || !gestures.leave().isEmpty(),
        "Nothing leads out of programming: give the keys that leave it, or set after-last to idle.");
    require(
        gestures.switchUnit().isEmpty() || units.switchable(),
        "Keys that switch the unit are for a keypad that can be switched.");
    if (programming.navigation() == Navigation.LIST) {
      require(
          entry instanceof Entry.Knob || keys.containsAll(Set.of(Key.UP, Key.DOWN)),
          "A list of values is walked with the keys up and down or with a knob; this keypad has neither.");
    }
  }

  /** The unit in force when a schedule in {@code wanted} is keyed. */
  public TemperatureUnit unitFor(TemperatureUnit wanted) {
    return switch (units.setting()) {
      case CELSIUS -> TemperatureUnit.CELSIUS;
      case FAHRENHEIT -> TemperatureUnit.FAHRENHEIT;
      case SWITCHABLE -> wanted;
    };
  }

  /**
   * The rates it accepts while {@code unit} is in force, in degrees of it an hour or a minute;
   * where it takes times to get to the target, these, min.
   */
  public Range rateRange(TemperatureUnit unit) {
    return unit == units.rangesIn() || rate.time().isPresent()
        ? rate.range()
        : rate.inOtherUnit().orElseGet(() -> rate.range().converted(unit, false, displayDigits));
  }

  /** The targets it accepts while {@code unit} is in force, in degrees of it. */
  public Range targetRange(TemperatureUnit unit) {
    return unit == units.rangesIn()
        ? target.range()
        : target.inOtherUnit().orElseGet(() -> target.range().converted(unit, true, displayDigits));
  }

  /** The ordinary holds, min. */
  public Range holdRange() {
    return holdRange(hold, end, markField());
  }

  /** How fast is told as a rate or as a time. */
  public KeyedValue.Kind rampKind() {
    return rampKind(rate);
  }

  /** The field of an unused segment at which the mark stands that ends a program. */
  public KeyedValue.Kind markField() {
    return end.in().orElse(order.get(0));
  }

  /** Every value of a full program, in the order in which they are keyed. */
  public List<Place> places() {
    List<Place> places = new ArrayList<>();
    if (units.asked().isPresent()) {
      places.add(new Place(0, KeyedValue.Kind.UNIT));
    }
    boolean first = delay.filter(d -> d.position() == Position.FIRST).isPresent();
    if (first) {
      places.add(new Place(0, KeyedValue.Kind.DELAY));
    }
    if (end.by() == EndRule.By.COUNT) {
      places.add(new Place(0, KeyedValue.Kind.END));
    }
    for (int segment = 1; segment <= segments; segment++) {
      for (KeyedValue.Kind kind : order) {
        places.add(new Place(segment, kind));
      }
    }
    if (delay.isPresent() && !first) {
      places.add(new Place(0, KeyedValue.Kind.DELAY));
    }
    return places;
  }

  /** What the display marks a place with; our words for it if it marks nothing. */
  public String label(int segment, KeyedValue.Kind kind) {
    Optional<String> label =
        switch (kind) {
          case RATE, TIME -> rate.label();
          case UNIT -> units.asked().flatMap(UnitPrompt::label);
          case TARGET -> target.label();
          case HOLD -> hold.label();
          case DELAY -> delay.flatMap(DelayField::label);
          case END -> Optional.empty();
        };
    return label
        .map(text -> text.replace("#", Integer.toString(segment)))
        .orElseGet(() -> KeyedValue.place(segment, kind));
  }

  /** Fields of a program that the review does not show. */
  public Set<KeyedValue.Kind> hiddenInReview() {
    Set<KeyedValue.Kind> hidden = EnumSet.copyOf(order);
    review.order().forEach(hidden::remove);
    if (units.asked().filter(a -> a.review() == Position.HIDDEN).isPresent()) {
      hidden.add(KeyedValue.Kind.UNIT);
    }
    if (delay.isPresent() && review.delay() == Position.HIDDEN) {
      hidden.add(KeyedValue.Kind.DELAY);
    }
    if (!review.unused() && end.by() != EndRule.By.COUNT) {
      hidden.add(KeyedValue.Kind.END);
    }
    return hidden;
  }

  /**
   * @param setting fixed or switchable
   * @param rangesIn the unit in which this description gives ranges; the fixed one if it is fixed
   * @param shownAt places where the display shows which unit is in force
   * @param switchingConverts whether switching converts stored programs; where each program asks
   *     its unit, whether choosing another converts the numbers of that program
   * @param asked how a program asks its own unit, if it does; then it is switchable
   */
  public record UnitSetting(
      Setting setting,
      TemperatureUnit rangesIn,
      Set<ShownAt> shownAt,
      SwitchingConverts switchingConverts,
      Optional<UnitPrompt> asked) {

    /** A unit that is a setting of the whole keypad. */
    public UnitSetting(
        Setting setting,
        TemperatureUnit rangesIn,
        Set<ShownAt> shownAt,
        SwitchingConverts switchingConverts) {
      this(setting, rangesIn, shownAt, switchingConverts, Optional.empty());
    }

    public UnitSetting {
      Objects.requireNonNull(asked, "asked");
      require(
          asked.isEmpty() || setting == Setting.SWITCHABLE,
          "A keypad whose programs ask their unit can be in either unit: its setting is switchable.");
      Objects.requireNonNull(setting, "setting");
      Objects.requireNonNull(rangesIn, "rangesIn");
      shownAt = Set.copyOf(shownAt);
      Objects.requireNonNull(switchingConverts, "switchingConverts");
      require(
          setting == Setting.SWITCHABLE
              || (setting == Setting.CELSIUS) == (rangesIn == TemperatureUnit.CELSIUS),
          "A keypad fixed to one unit gives its ranges in that unit.");
    }

    public static UnitSetting fixed(TemperatureUnit unit, ShownAt... shownAt) {
      return new UnitSetting(
          unit == TemperatureUnit.CELSIUS ? Setting.CELSIUS : Setting.FAHRENHEIT,
          unit,
          Set.of(shownAt),
          SwitchingConverts.NO);
    }

    public boolean switchable() {
      return setting == Setting.SWITCHABLE;
    }

    /** Whether a cold kiln's reading tells the unit that a program is in. */
    public boolean coldKilnTells() {
      return switchable() && asked.isEmpty();
    }

    /** Whether a read-back asks for the unit's sign: not where the unit is one of the values. */
    public boolean asksSign() {
      return shownAt.contains(ShownAt.REVIEW)
          || (shownAt.contains(ShownAt.ENTRY)
              && asked.filter(a -> a.review() == Position.HIDDEN).isPresent());
    }

    /** Fixed to one unit, or switchable. */
    public enum Setting {
      CELSIUS,
      FAHRENHEIT,
      SWITCHABLE
    }

    /** Where the unit in force can be seen. */
    public enum ShownAt {
      IDLE,
      ENTRY,
      REVIEW,
      SETTINGS
    }

    /** What becomes of stored programs when the unit is switched. */
    public enum SwitchingConverts {
      YES,
      NO,
      UNKNOWN
    }
  }

  /**
   * The unit as the first value of every program, in force for that program alone.
   *
   * @param label what the display marks it with
   * @param celsius what it reads for °C; on digit keys the digits that choose it
   * @param fahrenheit what it reads for °F
   * @param lower the unit that keys or a knob come to downward; the other one lies above it
   * @param review where the review shows it, if at all
   */
  public record UnitPrompt(
      Optional<String> label,
      String celsius,
      String fahrenheit,
      TemperatureUnit lower,
      Position review) {

    public UnitPrompt {
      Objects.requireNonNull(label, "label");
      Objects.requireNonNull(lower, "lower");
      Objects.requireNonNull(review, "review");
      require(
          !celsius.isBlank() && !fahrenheit.isBlank() && !Texts.same(celsius, fahrenheit),
          "The unit must show something else for °C than for °F.");
    }

    /** What it reads for a unit. */
    public String text(TemperatureUnit unit) {
      return unit == TemperatureUnit.CELSIUS ? celsius : fahrenheit;
    }

    /** The unit that a text means; empty if it means none. */
    public Optional<TemperatureUnit> unit(String text) {
      return Arrays.stream(TemperatureUnit.values())
          .filter(u -> Texts.same(text(u).replace("°", ""), text.replace("°", "")))
          .findFirst();
    }
  }

  /**
   * The ordinary numbers of a field: {@code min}, {@code min + step}, … up to {@code max}.
   *
   * @param min least, zero or more
   * @param max greatest, not below {@code min}
   * @param step resolution, above zero; its decimals are the decimals the display shows
   */
  public record Range(BigDecimal min, BigDecimal max, BigDecimal step) {

    public Range {
      min = plain(min);
      max = plain(max);
      step = plain(step);
      require(
          min.signum() >= 0 && max.compareTo(min) >= 0 && step.signum() > 0,
          "A range (%s to %s, step %s) goes up from zero or more by steps above zero.",
          min.toPlainString(),
          max.toPlainString(),
          step.toPlainString());
      require(
          max.subtract(min)
                  .divide(step, 0, RoundingMode.FLOOR)
                  .compareTo(BigDecimal.valueOf(99_999))
              <= 0,
          "A range (%s to %s, step %s) has at most 100000 values.",
          min.toPlainString(),
          max.toPlainString(),
          step.toPlainString());
    }

    public static Range of(long min, long max, long step) {
      return new Range(BigDecimal.valueOf(min), BigDecimal.valueOf(max), BigDecimal.valueOf(step));
    }

    /** How many values. */
    public int count() {
      return max.subtract(min).divide(step, 0, RoundingMode.FLOOR).intValueExact() + 1;
    }

    public BigDecimal value(int index) {
      return min.add(step.multiply(BigDecimal.valueOf(index)));
    }

    /** The greatest value of the range. */
    public BigDecimal greatest() {
      return value(count() - 1);
    }

    /** The greatest value that is not above {@code wanted}, which must not be below the least. */
    public BigDecimal floor(BigDecimal wanted) {
      BigDecimal steps = wanted.subtract(min).divide(step, 0, RoundingMode.FLOOR);
      return min.add(step.multiply(steps)).min(greatest());
    }

    /** Whether a number is one of the range's values. */
    public boolean holds(BigDecimal number) {
      return number.compareTo(min) >= 0
          && number.compareTo(greatest()) <= 0
          && number.subtract(min).remainder(step).signum() == 0;
    }

    /** Decimals the display shows. */
    public int decimals() {
      return Math.max(
          0, Math.max(step.stripTrailingZeros().scale(), min.stripTrailingZeros().scale()));
    }

    public String text(BigDecimal value) {
      return value.setScale(decimals(), RoundingMode.UNNECESSARY).toPlainString();
    }

    /** These bounds in the other unit, inside what can be shown, never beyond the original. */
    Range converted(TemperatureUnit to, boolean point, int displayDigits) {
      TemperatureUnit from = to.other();
      double least =
          point
              ? to.value(from.temperature(min.doubleValue()))
              : to.value(from.change(min.doubleValue()));
      double most =
          point
              ? to.value(from.temperature(max.doubleValue()))
              : to.value(from.change(max.doubleValue()));
      BigDecimal showable =
          BigDecimal.TEN
              .pow(Math.max(1, displayDigits - decimals()))
              .subtract(step.min(BigDecimal.ONE));
      BigDecimal newMin =
          BigDecimal.valueOf(Math.max(0, least))
              .divide(step, 0, RoundingMode.CEILING)
              .multiply(step);
      BigDecimal newMax =
          BigDecimal.valueOf(most).min(showable).divide(step, 0, RoundingMode.FLOOR).multiply(step);
      return new Range(newMin, newMax.max(newMin), step);
    }
  }

  /**
   * @param label what the display marks it with; {@code #} stands for the segment's number
   * @param per the time a rate is given over
   * @param time how the time to get to the target is written, on keypads that take that instead of
   *     a rate; {@code range} and {@code start} are minutes then and {@code per} means nothing
   * @param range ordinary rates, above zero
   * @param inOtherUnit the range when switched to the other unit; converted if not told
   * @param fastest how <i>fastest</i> is expressed, if it can be
   * @param cooling how a cooling ramp is expressed
   * @param start the value it starts from, if always the same
   */
  public record RateField(
      Optional<String> label,
      Per per,
      Optional<TimeForm> time,
      Range range,
      Optional<Range> inOtherUnit,
      Optional<Special> fastest,
      Cooling cooling,
      Optional<BigDecimal> start) {

    /** A rate. */
    public RateField(
        Optional<String> label,
        Per per,
        Range range,
        Optional<Range> inOtherUnit,
        Optional<Special> fastest,
        Cooling cooling,
        Optional<BigDecimal> start) {
      this(label, per, Optional.empty(), range, inOtherUnit, fastest, cooling, start);
    }

    /** The time to get to the target, min. */
    public static RateField time(
        Optional<String> label,
        TimeForm form,
        Range minutes,
        Optional<Special> fastest,
        Cooling cooling,
        Optional<BigDecimal> startMinutes) {
      return new RateField(
          label,
          Per.HOUR,
          Optional.of(form),
          minutes,
          Optional.empty(),
          fastest,
          cooling,
          startMinutes);
    }

    public RateField {
      Objects.requireNonNull(time, "time");
      time.ifPresent(
          form -> {
            requireTimes("time", form, range.max(), range.step());
            requireTimes("time", form, range.max(), range.min());
            require(
                inOtherUnit.isEmpty(), "A time to get to the target has no range in another unit.");
            require(
                cooling != Cooling.NEGATIVE,
                "A time to get to the target has no sign: down follows from a lower target.");
          });
      Objects.requireNonNull(label, "label");
      Objects.requireNonNull(per, "per");
      Objects.requireNonNull(range, "range");
      Objects.requireNonNull(inOtherUnit, "inOtherUnit");
      Objects.requireNonNull(fastest, "fastest");
      Objects.requireNonNull(cooling, "cooling");
      start = start.map(Keypad::plain);
      require(
          range.min().signum() > 0 && inOtherUnit.map(r -> r.min().signum() > 0).orElse(true),
          "The least ordinary rate must be above zero; a rate of 0 is a special value.");
    }

    /** What the display reads for an ordinary value of a range of this field. */
    public String text(Range of, BigDecimal value) {
      return time.map(form -> form.text(value, decimals())).orElseGet(() -> of.text(value));
    }

    private int decimals() {
      return time.map(
              form -> Math.max(hourDecimals(form, range.step()), hourDecimals(form, range.min())))
          .orElse(0);
    }

    /** Whether a text shows an ordinary value. */
    private boolean isShown(String text) {
      return time.map(
              form -> form.minutes(Texts.clean(text)).filter(m -> isBetween(range, m)).isPresent())
          .orElseGet(() -> Texts.number(text).filter(n -> range.holds(n.abs())).isPresent());
    }

    /** Whether typing these digits makes an ordinary value. */
    private boolean isTyped(BigDecimal typed) {
      return time.map(form -> Keypad.isTyped(range, form, decimals(), typed))
          .orElseGet(() -> range.holds(typed));
    }

    /** Per hour or per minute. */
    public enum Per {
      HOUR(1),
      MINUTE(60);

      private final int inAnHour;

      Per(int inAnHour) {
        this.inAnHour = inAnHour;
      }

      BigDecimal inAnHour() {
        return BigDecimal.valueOf(inAnHour);
      }

      String sign() {
        return this == HOUR ? "/h" : "/min";
      }
    }
  }

  /** How a cooling ramp is expressed. */
  public enum Cooling {
    /** Down follows from a target below the one before. */
    IMPLIED,
    /** The rate carries a minus sign. */
    NEGATIVE,
    /** It can only stop heating: the kiln cools as it will. */
    NOT_CONTROLLED
  }

  /**
   * @param label what the display marks it with; {@code #} stands for the segment's number
   * @param range targets
   * @param inOtherUnit the range when switched to the other unit; converted if not told
   * @param start the value it starts from, if always the same
   */
  public record TargetField(
      Optional<String> label,
      Range range,
      Optional<Range> inOtherUnit,
      Optional<BigDecimal> start) {

    public TargetField {
      Objects.requireNonNull(label, "label");
      Objects.requireNonNull(range, "range");
      Objects.requireNonNull(inOtherUnit, "inOtherUnit");
      start = start.map(Keypad::plain);
    }
  }

  /**
   * @param label what the display marks it with; {@code #} stands for the segment's number
   * @param form how a length of time is written
   * @param maxMinutes longest, min
   * @param stepMinutes resolution, min: whole, except for decimal hours (0.6 min is 0.01 h)
   * @param endless how "until a person stops it" is expressed, if it can be
   * @param startMinutes the value it starts from, if always the same, min
   */
  public record HoldField(
      Optional<String> label,
      TimeForm form,
      BigDecimal maxMinutes,
      BigDecimal stepMinutes,
      Optional<Special> endless,
      Optional<BigDecimal> startMinutes) {

    public HoldField {
      Objects.requireNonNull(label, "label");
      Objects.requireNonNull(endless, "endless");
      maxMinutes = plain(maxMinutes);
      stepMinutes = plain(stepMinutes);
      startMinutes = startMinutes.map(Keypad::plain);
      requireTimes("hold", form, maxMinutes, stepMinutes);
    }

    public Range range() {
      return new Range(BigDecimal.ZERO, maxMinutes, stepMinutes);
    }

    /** Decimals of decimal hours. */
    public int decimals() {
      return hourDecimals(form, stepMinutes);
    }

    /** What it reads where it always starts alike. */
    public Optional<String> startText() {
      return startMinutes.map(m -> form.text(m, decimals()));
    }

    public Duration max() {
      return Duration.ofMinutes(range().greatest().longValue());
    }
  }

  /**
   * @param label what the display marks it with
   * @param form how a length of time is written
   * @param maxMinutes longest, min
   * @param stepMinutes resolution, min
   * @param position whether it is keyed before the first segment or after the last
   * @param startMinutes the value it starts from, if always the same, min
   */
  public record DelayField(
      Optional<String> label,
      TimeForm form,
      BigDecimal maxMinutes,
      BigDecimal stepMinutes,
      Position position,
      Optional<BigDecimal> startMinutes) {

    public DelayField {
      Objects.requireNonNull(label, "label");
      maxMinutes = plain(maxMinutes);
      stepMinutes = plain(stepMinutes);
      startMinutes = startMinutes.map(Keypad::plain);
      requireTimes("delay", form, maxMinutes, stepMinutes);
      require(position != Position.HIDDEN, "The delay is keyed first or last.");
    }

    public Range range() {
      return new Range(BigDecimal.ZERO, maxMinutes, stepMinutes);
    }

    /** What it reads where it always starts alike. */
    public Optional<String> startText() {
      return startMinutes.map(m -> form.text(m, decimals()));
    }

    public int decimals() {
      return hourDecimals(form, stepMinutes);
    }
  }

  private static void requireTimes(
      String what, TimeForm form, BigDecimal maxMinutes, BigDecimal stepMinutes) {
    BigDecimal unit = form == TimeForm.DECIMAL_HOURS ? new BigDecimal("0.6") : BigDecimal.ONE;
    require(
        stepMinutes.signum() > 0 && stepMinutes.remainder(unit).signum() == 0,
        "The %s's step (%s min) must be a multiple of %s min in the form %s.",
        what,
        stepMinutes.toPlainString(),
        unit.toPlainString(),
        form.word());
    require(
        maxMinutes.compareTo(stepMinutes) >= 0,
        "The longest %s (%s min) must be at least one step (%s min).",
        what,
        maxMinutes.toPlainString(),
        stepMinutes.toPlainString());
  }

  private static int hourDecimals(TimeForm form, BigDecimal stepMinutes) {
    return form == TimeForm.DECIMAL_HOURS
            && stepMinutes.remainder(BigDecimal.valueOf(6)).signum() == 0
        ? 1
        : 2;
  }

  /** Where something stands beside the segments. */
  public enum Position {
    FIRST,
    LAST,
    HIDDEN
  }

  /**
   * @param by what marks the end
   * @param mark what a field of an unused segment reads; empty only with a count
   * @param in the field that reads it, whatever the fields before it read: that segment is not run;
   *     empty if it is the first one
   * @param afterwards what the controller does after the last segment
   */
  public record EndRule(
      By by, Optional<Special> mark, Optional<KeyedValue.Kind> in, AtEnd afterwards) {

    /** With the mark in the first field, or with a count. */
    public EndRule(By by, Optional<Special> mark, AtEnd afterwards) {
      this(by, mark, Optional.empty(), afterwards);
    }

    public EndRule {
      Objects.requireNonNull(in, "in");
      require(
          by != By.COUNT || in.isEmpty(),
          "With a segment count no field of a segment marks the end.");
      Objects.requireNonNull(by, "by");
      Objects.requireNonNull(mark, "mark");
      Objects.requireNonNull(afterwards, "afterwards");
      require(
          (by == By.COUNT) == mark.isEmpty(),
          "An end by mark names what an unused segment shows; an end by count does not.");
    }

    /** What marks the end of a program. */
    public enum By {
      /** A mark in a field of the first unused segment: a word, a rate or hold of zero. */
      MARK,
      /** Every segment runs, so every unused one must be emptied. */
      EVERY_UNUSED,
      /** The number of segments, keyed before the first. */
      COUNT
    }
  }

  /**
   * @param open from the idle display into programming
   * @param commit writes the program to its slot; empty if values are stored as they are accepted
   * @param committed what the display shows when it has been written
   * @param discardsAfterSeconds an unsaved entry is thrown away after so long untouched, s
   * @param leave back to the idle display, from programming and from the review; may be empty
   * @param previous back to the value before, or out of a listed value without changing it; may be
   *     empty
   * @param review from the idle display into the review of a slot
   * @param start starts a program: heat; empty if not told
   * @param stop stops it; empty if not told
   * @param switchUnit from the idle display, switches the unit in force; empty if not told
   */
  public record Gestures(
      Gesture open,
      Gesture commit,
      Optional<String> committed,
      OptionalInt discardsAfterSeconds,
      Gesture leave,
      Gesture previous,
      Gesture review,
      Gesture start,
      Gesture stop,
      Gesture switchUnit) {

    public Gestures {
      Objects.requireNonNull(open, "open");
      Objects.requireNonNull(commit, "commit");
      Objects.requireNonNull(committed, "committed");
      Objects.requireNonNull(discardsAfterSeconds, "discardsAfterSeconds");
      Objects.requireNonNull(leave, "leave");
      Objects.requireNonNull(previous, "previous");
      Objects.requireNonNull(review, "review");
      Objects.requireNonNull(start, "start");
      Objects.requireNonNull(stop, "stop");
      Objects.requireNonNull(switchUnit, "switchUnit");
      require(!open.isEmpty(), "A keypad needs a key that opens programming.");
      require(!review.isEmpty(), "A keypad needs a key that opens the review.");
    }

    List<Gesture> all() {
      return List.of(open, commit, leave, previous, review, start, stop, switchUnit);
    }
  }

  /**
   * @param order the fields of a segment that it shows, in order; a field left out is not shown
   * @param delay where the delay is shown, if at all
   * @param unused whether it shows the first unused segment
   * @param keysEdit whether a key that makes values also changes them during the review
   */
  public record Review(
      List<KeyedValue.Kind> order, Position delay, boolean unused, boolean keysEdit) {

    public Review {
      order = List.copyOf(order);
      Objects.requireNonNull(delay, "delay");
    }
  }

  /** Where a field's value stands when it is entered. */
  public enum FieldStart {
    /** At what the slot holds. */
    STORED,
    /** At the field's own start value, or its least. */
    DEFAULT
  }

  /**
   * @param navigation how one goes from value to value
   * @param afterLast where accepting the last value leads
   * @param commits what writes a program to its slot
   */
  public record Programming(Navigation navigation, AfterLast afterLast, Commits commits) {

    public Programming {
      Objects.requireNonNull(navigation, "navigation");
      Objects.requireNonNull(afterLast, "afterLast");
      Objects.requireNonNull(commits, "commits");
    }
  }

  /** How one goes from value to value. */
  public enum Navigation {
    /** Accepting a value leads to the next. */
    SEQUENCE,
    /**
     * The values are a list: up and down, or the knob, walk along it, the accepting key opens the
     * one that is shown and closes it again.
     */
    LIST
  }

  /** Where accepting the last value leads; in a list, where walking on from the last one leads. */
  public enum AfterLast {
    /** Around, to the first value. */
    FIRST,
    /** Nowhere. */
    STAYS,
    /** Out of programming. */
    IDLE
  }

  /** What writes a program to its slot. */
  public enum Commits {
    /** Each value is stored as it is accepted. */
    ACCEPTING,
    /** Keys that save. */
    GESTURE,
    /** Only starting the program stores it. */
    START
  }

  /** What a running program does when the power comes back. */
  public enum PowerCut {
    RESUMES,
    RESTARTS,
    STOPS,
    UNKNOWN
  }
}
