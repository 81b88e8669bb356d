package org.heatwright.keypad;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.heatwright.schedule.AtEnd;
import org.heatwright.schedule.HourMinute;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;

/**
 * What a keypad can express of a schedule. Numbers are rounded toward safe, and every difference is
 * told: a rate becomes slower, a target never higher, a hold never shorter, a start delay never
 * longer (so that the work is ready early rather than late). What would need more than rounding is
 * refused with a reason; nothing is merged, split or left out silently.
 */
public final class KeypadFit {

  /** Where paper starts counting: a cold kiln in a room. */
  static final Temperature COLD_KILN = Temperature.ofCelsius(20);

  private KeypadFit() {}

  public static FittedProgram fit(Schedule schedule, Keypad keypad) {
    return new Fitting(schedule, keypad).program();
  }

  /**
   * The schedule with every hold that is too long for the keypad split into several at the same
   * target: what a refusal suggests. It is for the person to accept, so {@link #fit} never does it.
   *
   * @return empty if the keypad has not enough segments; the schedule itself if no hold is too long
   */
  public static Optional<Schedule> withHoldsSplit(Schedule schedule, Keypad keypad) {
    long longestMinutes = longestWholeMinutes(keypad.hold());
    List<Segment> segments = new ArrayList<>();
    for (Segment segment : schedule.segments()) {
      long leftMinutes = segment.hold().toMinutes();
      while (leftMinutes > longestMinutes) {
        segments.add(segment.withHold(Duration.ofMinutes(longestMinutes)));
        leftMinutes -= longestMinutes;
      }
      segments.add(segment.withHold(Duration.ofMinutes(leftMinutes)));
    }
    return segments.size() > keypad.segments()
        ? Optional.empty()
        : Optional.of(schedule.withSegments(segments));
  }

  private static long longestWholeMinutes(Keypad.HoldField hold) {
    Keypad.Range range = hold.range();
    for (int i = range.count() - 1; i > 0; i--) {
      if (usable(hold.form(), range.value(i))) {
        return range.value(i).longValueExact();
      }
    }
    throw new IllegalArgumentException("The keypad has no hold of a whole number of minutes.");
  }

  /** Whether a time can be keyed so that it means one thing, in whole minutes. */
  private static boolean usable(TimeForm form, BigDecimal minutes) {
    BigDecimal grid = BigDecimal.valueOf(form == TimeForm.HOURS_UNSURE ? 60 : 1);
    return minutes.remainder(grid).signum() == 0;
  }

  /** One fitting; used once, by one thread. */
  private static final class Fitting {

    private final Schedule schedule;
    private final Keypad keypad;
    private final TemperatureUnit unit;
    private final List<FitNote> notes = new ArrayList<>();
    private final List<KeyedValue> values = new ArrayList<>();
    private final List<Segment> expressible = new ArrayList<>();
    private BigDecimal sumOfTargets = BigDecimal.ZERO;
    private long shownHoldMinutes;
    private Optional<KeyedValue> lastValue = Optional.empty();

    Fitting(Schedule schedule, Keypad keypad) {
      this.schedule = schedule;
      this.keypad = keypad;
      this.unit = keypad.unitFor(schedule.unit());
    }

    FittedProgram program() {
      unit();
      segmentCount();
      Duration delay = delay();
      unitAsked();
      for (int i = 0; i < schedule.segments().size(); i++) {
        segment(i);
      }
      end();
      atEnd();
      boolean fits = notes.stream().noneMatch(n -> n.kind() == FitNote.Kind.REFUSED);
      Schedule result = schedule.withSegments(expressible).withUnit(unit).withStartDelay(delay);
      return new FittedProgram(
          schedule, result, unit, fits ? values : List.of(), notes, figures(result), fits);
    }

    private void unit() {
      if (unit != schedule.unit()) {
        note(
            FitNote.Kind.CONVERTED,
            OptionalInt.empty(),
            "The schedule is in %s, the keypad works in %s: every number below is converted. Key the numbers of this sheet, not those of the schedule."
                .formatted(schedule.unit().symbol(), unit.symbol()));
      } else if (keypad.units().switchable() && keypad.units().asked().isEmpty()) {
        String stored =
            switch (keypad.units().switchingConverts()) {
              case YES -> "switching converts the stored programs, so look at them afterwards";
              case NO ->
                  "switching leaves the numbers of stored programs as they are, in the wrong unit";
              case UNKNOWN ->
                  "nobody knows yet whether switching converts stored programs, so read them back after it";
            };
        note(
            FitNote.Kind.TOLD,
            OptionalInt.empty(),
            "Set the keypad to %s before keying: %s.".formatted(unit.symbol(), stored));
      }
    }

    /** The first of all values, where a program asks its own unit. */
    private void unitAsked() {
      keypad
          .units()
          .asked()
          .ifPresent(
              asked ->
                  values.add(
                      0,
                      new KeyedValue(
                          0,
                          KeyedValue.Kind.UNIT,
                          asked.text(unit),
                          "%s for the whole program".formatted(unit.symbol()))));
    }

    private void segmentCount() {
      int wanted = schedule.segments().size();
      if (wanted > keypad.segments()) {
        refuse(
            OptionalInt.empty(),
            "The schedule has %d segments, the keypad holds %d. Maybe merge segments that serve one purpose, or key two programs with a hand-over by hand."
                .formatted(wanted, keypad.segments()));
      } else if (keypad.end().by() == Keypad.EndRule.By.COUNT) {
        values.add(
            new KeyedValue(
                0,
                KeyedValue.Kind.END,
                Integer.toString(wanted),
                wanted == 1 ? "1 segment" : wanted + " segments"));
      }
    }

    private Duration delay() {
      Duration asked = schedule.startDelay();
      if (keypad.delay().isEmpty()) {
        if (!asked.isZero()) {
          refuse(
              OptionalInt.empty(),
              "The keypad has no start delay, but the schedule waits %s. Maybe start it by hand at that time."
                  .formatted(HourMinute.words(asked)));
        }
        return asked;
      }
      Keypad.DelayField field = keypad.delay().orElseThrow();
      Keypad.Range range = field.range();
      BigDecimal minutes = BigDecimal.valueOf(asked.toMinutes());
      if (minutes.compareTo(range.greatest()) > 0) {
        refuse(
            OptionalInt.empty(),
            "The start delay of %s is longer than the %s that the keypad can wait. Maybe set it later in the day."
                .formatted(
                    HourMinute.words(asked),
                    HourMinute.words(Duration.ofMinutes(range.greatest().longValue()))));
        return asked;
      }
      BigDecimal keyed = range.floor(minutes);
      while (!usable(field.form(), keyed)) {
        keyed = keyed.subtract(range.step());
      }
      Duration result = Duration.ofMinutes(keyed.longValueExact());
      if (!result.equals(asked)) {
        note(
            FitNote.Kind.ROUNDED,
            OptionalInt.empty(),
            "The start delay of %s is keyed as %s: it starts %s earlier, so that the work is not late."
                .formatted(
                    HourMinute.words(asked),
                    HourMinute.words(result),
                    HourMinute.words(asked.minus(result))));
      }
      String text = field.form().text(keyed, field.decimals());
      requireShowable(OptionalInt.empty(), "start delay", text);
      KeyedValue value =
          new KeyedValue(
              0,
              KeyedValue.Kind.DELAY,
              text,
              result.isZero()
                  ? "no delay"
                  : "waits " + HourMinute.words(result) + " before it heats");
      if (field.position() == Keypad.Position.FIRST) {
        values.add(0, value);
      } else {
        lastValue = Optional.of(value);
      }
      return result;
    }

    private void segment(int index) {
      Segment asked = schedule.segments().get(index);
      int number = index + 1;
      Keyed<Temperature> target = target(number, asked);
      boolean cooling =
          index > 0 && target.value().compareTo(expressible.get(index - 1).target()) < 0;
      Temperature from = index == 0 ? COLD_KILN : expressible.get(index - 1).target();
      Keyed<Ramp> ramp =
          keypad.rate().time().isPresent()
              ? time(number, asked, target.value(), from)
              : rate(number, asked, cooling, from);
      boolean endless =
          number == schedule.segments().size()
              && schedule.atEnd() == AtEnd.KEEP
              && keypad.end().afterwards() == AtEnd.OFF
              && keypad.hold().endless().isPresent();
      Keyed<Duration> hold = endless ? endlessHold(number, asked) : hold(number, asked);
      expressible.add(new Segment(ramp.value(), target.value(), hold.value()));
      for (KeyedValue.Kind kind : keypad.order()) {
        Keyed<?> keyed =
            kind == keypad.rampKind() ? ramp : kind == KeyedValue.Kind.TARGET ? target : hold;
        requireShowable(OptionalInt.of(number), kind.word(), keyed.digits());
        values.add(new KeyedValue(number, kind, keyed.digits(), keyed.meaning()));
      }
    }

    private Keyed<Temperature> target(int number, Segment asked) {
      Keypad.Range range = keypad.targetRange(unit);
      BigDecimal wanted = BigDecimal.valueOf(unit.value(asked.target()));
      String was = asked(Words.temperature(asked.target(), schedule.unit()), wanted, "");
      if (wanted.compareTo(range.min()) < 0 || wanted.compareTo(range.max()) > 0) {
        refuse(
            OptionalInt.of(number),
            "Segment %d: the target of %s is outside what the keypad takes, %s to %s %s. A lower top would change what the firing does, so it is not cut."
                .formatted(
                    number,
                    was,
                    Words.number(range.min()),
                    Words.number(range.greatest()),
                    unit.symbol()));
        return new Keyed<>(asked.target(), "", "");
      }
      BigDecimal keyed = range.floor(wanted);
      sumOfTargets = sumOfTargets.add(keyed);
      Temperature result = asked.target();
      if (keyed.compareTo(wanted) != 0) {
        result = unit.temperature(keyed.doubleValue());
        note(
            FitNote.Kind.ROUNDED,
            OptionalInt.of(number),
            "Segment %d: the target of %s is keyed as %s %s, %s %s lower."
                .formatted(
                    number,
                    was,
                    Words.number(keyed),
                    unit.symbol(),
                    Words.number(wanted.subtract(keyed).setScale(2, RoundingMode.HALF_UP)),
                    unit.symbol()));
      }
      return new Keyed<>(
          result, range.text(keyed), "%s %s".formatted(Words.number(keyed), unit.symbol()));
    }

    private Keyed<Ramp> rate(int number, Segment asked, boolean cooling, Temperature from) {
      Keypad.Range range = keypad.rateRange(unit);
      Optional<HeatingRate> rate = asked.ramp().rate();
      boolean uncontrolled = cooling && keypad.rate().cooling() == Keypad.Cooling.NOT_CONTROLLED;
      if (rate.isEmpty()) {
        return fastest(number, asked, cooling, uncontrolled, range);
      }
      if (uncontrolled) {
        refuse(
            OptionalInt.of(number),
            "Segment %d: the keypad cannot slow the cooling to %s; the kiln would fall as fast as it can. Maybe cool in steps with holds, or accept free cooling (rate: fastest)."
                .formatted(number, rateWords(rate.orElseThrow(), schedule.unit())));
        return new Keyed<>(asked.ramp(), "", "");
      }
      BigDecimal wanted =
          BigDecimal.valueOf(unit.value(rate.orElseThrow()))
              .divide(keypad.rate().per().inAnHour(), 9, RoundingMode.FLOOR);
      String was =
          asked(rateWords(rate.orElseThrow(), schedule.unit()), wanted, keypad.rate().per().sign());
      if (wanted.compareTo(range.min()) < 0) {
        refuse(
            OptionalInt.of(number),
            "Segment %d: a rate of %s is slower than the least the keypad takes, %s %s%s. A faster one would not be safe. Maybe climb in small steps with holds."
                .formatted(
                    number,
                    was,
                    Words.number(range.min()),
                    unit.symbol(),
                    keypad.rate().per().sign()));
        return new Keyed<>(asked.ramp(), "", "");
      }
      BigDecimal keyed = range.floor(wanted);
      Ramp ramp = asked.ramp();
      BigDecimal back = keyed.multiply(keypad.rate().per().inAnHour());
      if (back.compareTo(BigDecimal.valueOf(unit.value(rate.orElseThrow()))) != 0) {
        HeatingRate result = unit.rate(back.doubleValue());
        ramp = Ramp.at(result);
        Duration longer =
            result
                .timeFor(asked.target().minus(from))
                .minus(rate.orElseThrow().timeFor(asked.target().minus(from)));
        boolean above = wanted.compareTo(range.max()) > 0;
        note(
            above ? FitNote.Kind.LIMITED : FitNote.Kind.ROUNDED,
            OptionalInt.of(number),
            "Segment %d: a rate of %s is keyed as %s %s%s, %sslower%s."
                .formatted(
                    number,
                    was,
                    Words.number(keyed),
                    unit.symbol(),
                    keypad.rate().per().sign(),
                    above ? "the greatest the keypad takes, " : "",
                    longer.toMinutes() >= 1
                        ? "; its ramp takes about %s longer%s"
                            .formatted(
                                HourMinute.words(longer), number == 1 ? " from a cold kiln" : "")
                        : ""));
      }
      String hourly =
          keypad.rate().per() == Keypad.RateField.Per.MINUTE
              ? " (%s %s/h)".formatted(Words.number(back), unit.symbol())
              : "";
      return new Keyed<>(
          ramp,
          signed(range.text(keyed), cooling),
          "%s %s%s %s%s"
              .formatted(
                  Words.number(keyed),
                  unit.symbol(),
                  keypad.rate().per().sign(),
                  cooling ? "down" : "up",
                  hourly));
    }

    private Keyed<Ramp> fastest(
        int number, Segment asked, boolean cooling, boolean uncontrolled, Keypad.Range range) {
      String meaning = cooling ? "free cooling, as fast as the kiln falls" : "full power up";
      if (keypad.rate().fastest().isPresent()) {
        return new Keyed<>(asked.ramp(), keypad.rate().fastest().orElseThrow().shows(), meaning);
      }
      BigDecimal greatest = range.greatest();
      if (uncontrolled) {
        return new Keyed<>(asked.ramp(), range.text(greatest), meaning);
      }
      note(
          FitNote.Kind.LIMITED,
          OptionalInt.of(number),
          "Segment %d: the keypad has no 'fastest', so its greatest rate is keyed, %s %s%s; a kiln that could go faster will not."
              .formatted(
                  number, Words.number(greatest), unit.symbol(), keypad.rate().per().sign()));
      return new Keyed<>(
          Ramp.at(unit.rate(greatest.multiply(keypad.rate().per().inAnHour()).doubleValue())),
          signed(range.text(greatest), cooling),
          "%s %s%s %s, the greatest rate"
              .formatted(
                  Words.number(greatest),
                  unit.symbol(),
                  keypad.rate().per().sign(),
                  cooling ? "down" : "up"));
    }

    /**
     * The time to get to the target. It is rounded up, so that the rate never becomes faster; from
     * where the segment before ends, and the first from a cold kiln.
     */
    private Keyed<Ramp> time(int number, Segment asked, Temperature target, Temperature from) {
      Keypad.RateField field = keypad.rate();
      Keypad.Range range = field.range();
      boolean cooling = target.compareTo(from) < 0;
      boolean uncontrolled = cooling && field.cooling() == Keypad.Cooling.NOT_CONTROLLED;
      double kelvins = Math.abs(target.minus(from).kelvins());
      Optional<HeatingRate> rate = asked.ramp().rate();
      if (rate.isPresent() && uncontrolled) {
        return rate(number, asked, true, from);
      }
      if (rate.isEmpty() || kelvins == 0) {
        return quickest(number, asked, target, from, uncontrolled);
      }
      String was = rateWords(rate.orElseThrow(), schedule.unit());
      double exactMinutes = 60 * kelvins / rate.orElseThrow().kelvinsPerHour();
      // A time that is one of the keypad's but for the last digits of a double is that one.
      BigDecimal wanted = new BigDecimal(exactMinutes).setScale(6, RoundingMode.HALF_UP);
      if (wanted.compareTo(range.greatest()) > 0) {
        refuse(
            OptionalInt.of(number),
            "Segment %d: %s takes %s, longer than the %s that the keypad takes for a ramp. A shorter time would be faster. Maybe climb in two segments."
                .formatted(number, was, minutesWords(wanted), minutesWords(range.greatest())));
        return new Keyed<>(asked.ramp(), "", "");
      }
      BigDecimal keyed = range.min();
      if (wanted.compareTo(range.min()) > 0) {
        keyed =
            range
                .min()
                .add(
                    wanted
                        .subtract(range.min())
                        .divide(range.step(), 0, RoundingMode.CEILING)
                        .multiply(range.step()));
      }
      while (field.time().orElseThrow() == TimeForm.HOURS_UNSURE
          && !usable(TimeForm.HOURS_UNSURE, keyed)) {
        keyed = keyed.add(range.step());
        if (keyed.compareTo(range.greatest()) > 0) {
          refuse(
              OptionalInt.of(number),
              "Segment %d: a time of %s cannot be keyed without doubt: nobody has found out whether this keypad counts minutes or hundredths of an hour after the point."
                  .formatted(number, minutesWords(wanted)));
          return new Keyed<>(asked.ramp(), "", "");
        }
      }
      if (keyed.compareTo(wanted) != 0) {
        HeatingRate result = HeatingRate.ofKelvinsPerHour(60 * kelvins / keyed.doubleValue());
        note(
            FitNote.Kind.ROUNDED,
            OptionalInt.of(number),
            "Segment %d: a rate of %s is keyed as a time of %s, which is %s, slower; its ramp takes %s min longer%s."
                .formatted(
                    number,
                    was,
                    minutesWords(keyed),
                    rateRounded(result),
                    Words.number(keyed.subtract(wanted).setScale(2, RoundingMode.HALF_UP)),
                    number == 1 ? " from a cold kiln" : ""));
        return timed(Ramp.at(result), keyed, cooling, number, result);
      }
      if (number == 1) {
        note(
            FitNote.Kind.TOLD,
            OptionalInt.of(1),
            "Segment 1: its time is counted from a cold kiln of %s; a warmer one climbs more slowly."
                .formatted(Words.temperature(COLD_KILN, unit)));
      }
      return timed(asked.ramp(), keyed, cooling, number, rate.orElseThrow());
    }

    private Keyed<Ramp> timed(
        Ramp ramp, BigDecimal minutes, boolean cooling, int number, HeatingRate rate) {
      return new Keyed<>(
          ramp,
          keypad.rate().text(keypad.rate().range(), minutes),
          "%s %s%s (%s)"
              .formatted(
                  minutesWords(minutes),
                  cooling ? "down" : "up",
                  number == 1 ? " from a cold kiln" : "",
                  rateRounded(rate)));
    }

    /** As fast as it goes, or a segment that begins where it is to get to. */
    private Keyed<Ramp> quickest(
        int number, Segment asked, Temperature target, Temperature from, boolean uncontrolled) {
      Keypad.RateField field = keypad.rate();
      double kelvins = Math.abs(target.minus(from).kelvins());
      boolean cooling = target.compareTo(from) < 0;
      String meaning =
          kelvins == 0
              ? "it is there already"
              : cooling ? "free cooling, as fast as the kiln falls" : "full power up";
      if (field.fastest().isPresent()) {
        return new Keyed<>(asked.ramp(), field.fastest().orElseThrow().shows(), meaning);
      }
      BigDecimal least = field.range().min();
      if (field.time().orElseThrow() == TimeForm.HOURS_UNSURE) {
        least = least.max(BigDecimal.valueOf(60));
      }
      if (uncontrolled) {
        return new Keyed<>(asked.ramp(), field.text(field.range(), least), meaning);
      }
      if (kelvins == 0) {
        note(
            FitNote.Kind.ROUNDED,
            OptionalInt.of(number),
            "Segment %d begins at its target, but the keypad takes no time of zero: %s is keyed, so it stays so much longer."
                .formatted(number, minutesWords(least)));
        return new Keyed<>(
            asked.ramp(), field.text(field.range(), least), minutesWords(least) + ", the least");
      }
      note(
          FitNote.Kind.LIMITED,
          OptionalInt.of(number),
          "Segment %d: the keypad has no 'fastest', so its least time is keyed, %s; where the kiln cannot follow, the hold may begin before it is there."
              .formatted(number, minutesWords(least)));
      HeatingRate rate = HeatingRate.ofKelvinsPerHour(60 * kelvins / least.doubleValue());
      return new Keyed<>(
          Ramp.at(rate),
          field.text(field.range(), least),
          "%s %s, the least time".formatted(minutesWords(least), cooling ? "down" : "up"));
    }

    private static String minutesWords(BigDecimal minutes) {
      BigDecimal rounded = minutes.setScale(2, RoundingMode.HALF_UP).stripTrailingZeros();
      return rounded.scale() <= 0
          ? HourMinute.words(Duration.ofMinutes(rounded.longValueExact()))
          : Words.number(rounded) + " min";
    }

    private String rateRounded(HeatingRate rate) {
      return "%s %s/h"
          .formatted(
              Words.number(BigDecimal.valueOf(unit.value(rate)).setScale(2, RoundingMode.HALF_UP)),
              unit.symbol());
    }

    private String signed(String digits, boolean cooling) {
      return cooling && keypad.rate().cooling() == Keypad.Cooling.NEGATIVE ? "-" + digits : digits;
    }

    private Keyed<Duration> hold(int number, Segment asked) {
      Keypad.HoldField field = keypad.hold();
      Keypad.Range range = keypad.holdRange();
      BigDecimal wanted = BigDecimal.valueOf(asked.hold().toMinutes());
      // Where a hold of zero ends the program, the least hold stands for none.
      BigDecimal keyed =
          wanted
              .divide(range.step(), 0, RoundingMode.CEILING)
              .multiply(range.step())
              .max(range.min());
      if (field.form() == TimeForm.HOURS_UNSURE && !usable(field.form(), keyed)) {
        refuse(
            OptionalInt.of(number),
            "Segment %d: a hold of %s cannot be keyed without doubt: nobody has found out whether this keypad counts minutes or hundredths of an hour after the point (%s might be %s). Maybe try it: hold 0.02 at room temperature and see whether it lasts 2 min or 1 min 12 s."
                .formatted(
                    number, HourMinute.words(asked.hold()), "1.50", "1 h 50 min or 1 h 30 min"));
        return new Keyed<>(asked.hold(), "", "");
      }
      while (!usable(field.form(), keyed)) {
        keyed = keyed.add(range.step());
      }
      if (keyed.compareTo(range.greatest()) > 0) {
        refuse(OptionalInt.of(number), tooLong(number, asked));
        return new Keyed<>(asked.hold(), "", "");
      }
      Duration result = Duration.ofMinutes(keyed.longValueExact());
      shownHoldMinutes += result.toMinutes();
      if (!result.equals(asked.hold())) {
        note(
            FitNote.Kind.ROUNDED,
            OptionalInt.of(number),
            "Segment %d: the hold of %s is keyed as %s, %s longer."
                .formatted(
                    number,
                    HourMinute.words(asked.hold()),
                    HourMinute.words(result),
                    HourMinute.words(result.minus(asked.hold()))));
      }
      return new Keyed<>(
          result,
          field.form().text(keyed, field.decimals()),
          result.isZero() ? "no hold" : HourMinute.words(result));
    }

    private String tooLong(int number, Segment asked) {
      long longestMinutes = longestWholeMinutes(keypad.hold());
      String longest = HourMinute.words(Duration.ofMinutes(longestMinutes));
      long more = (asked.hold().toMinutes() - 1) / longestMinutes;
      int free = keypad.segments() - schedule.segments().size();
      String cure =
          free >= more
              ? "Maybe split it into %d holds at the same target; that takes %d more %s, and %d %s free."
                  .formatted(
                      more + 1,
                      more,
                      more == 1 ? "segment" : "segments",
                      free,
                      free == 1 ? "is" : "are")
              : "Splitting it would take %d more %s, but only %d %s free."
                  .formatted(
                      more,
                      more == 1 ? "segment" : "segments",
                      Math.max(0, free),
                      free == 1 ? "is" : "are");
      return "Segment %d: the hold of %s is longer than the %s that the keypad can hold. %s"
          .formatted(number, HourMinute.words(asked.hold()), longest, cure);
    }

    private Keyed<Duration> endlessHold(int number, Segment asked) {
      note(
          FitNote.Kind.TOLD,
          OptionalInt.of(number),
          "Segment %d: the last hold is keyed as endless, because the schedule keeps its last target until a person stops it."
              .formatted(number));
      return new Keyed<>(
          asked.hold(),
          keypad.hold().endless().orElseThrow().shows(),
          "holds until a person stops it; at least %s".formatted(HourMinute.words(asked.hold())));
    }

    private void end() {
      int used = schedule.segments().size();
      keypad
          .end()
          .mark()
          .ifPresent(
              mark -> {
                int last =
                    keypad.end().by() == Keypad.EndRule.By.EVERY_UNUSED
                        ? keypad.segments()
                        : Math.min(used + 1, keypad.segments());
                for (int segment = used + 1; segment <= last; segment++) {
                  values.add(
                      new KeyedValue(
                          segment,
                          KeyedValue.Kind.END,
                          mark.shows(),
                          segment == used + 1 ? "the program ends here" : "must be empty too"));
                }
              });
      lastValue.ifPresent(values::add);
    }

    private void atEnd() {
      AtEnd wanted = schedule.atEnd();
      AtEnd does = keypad.end().afterwards();
      if (wanted == AtEnd.OFF && does == AtEnd.KEEP) {
        refuse(
            OptionalInt.empty(),
            "The schedule ends with the elements off, but this keypad keeps the last target until a person stops it.");
      }
      if (wanted == AtEnd.KEEP && does == AtEnd.OFF && keypad.hold().endless().isEmpty()) {
        refuse(
            OptionalInt.empty(),
            "The schedule keeps its last target until a person stops it, but this keypad switches off after the last hold. Maybe key a hold that is long enough.");
      }
    }

    private CheckFigures figures(Schedule result) {
      int used = schedule.segments().size();
      String firstUnused =
          used >= keypad.segments()
              ? "none: all %d segments are used".formatted(keypad.segments())
              : keypad
                  .end()
                  .mark()
                  .map(m -> markWords() + m.shows())
                  .orElse("none: the keypad counts segments");
      return new CheckFigures(
          used,
          sumOfTargets.doubleValue(),
          shownHoldMinutes,
          firstUnused,
          Math.round(result.nominalTime(COLD_KILN).total().getSeconds() / 60.0));
    }

    /** Which value of the first unused segment; nothing if it is the first one. */
    private String markWords() {
      return keypad.markField() == keypad.order().get(0) ? "" : keypad.markField().word() + " ";
    }

    private void requireShowable(OptionalInt segment, String what, String text) {
      long digits = text.chars().filter(Character::isDigit).count();
      if (digits > keypad.displayDigits()) {
        refuse(
            segment,
            "%s: the %s %s needs %d digits, the display has %d, so nobody could tell what was keyed."
                .formatted(
                    segment.isPresent() ? "Segment " + segment.getAsInt() : "Program",
                    what,
                    text,
                    digits,
                    keypad.displayDigits()));
      }
    }

    /**
     * "1350 °F, which is 732.22 °C,": the value as asked, and in the keypad's unit if it differs.
     */
    private String asked(String was, BigDecimal wanted, String per) {
      boolean converted = unit != schedule.unit();
      boolean otherTime = !per.isEmpty() && keypad.rate().per() == Keypad.RateField.Per.MINUTE;
      return converted || otherTime
          ? "%s (%s %s%s)"
              .formatted(
                  was, Words.number(wanted.setScale(2, RoundingMode.HALF_UP)), unit.symbol(), per)
          : was;
    }

    private static String rateWords(HeatingRate rate, TemperatureUnit unit) {
      return "%s %s/h".formatted(Words.number(unit.value(rate)), unit.symbol());
    }

    private void note(FitNote.Kind kind, OptionalInt segment, String message) {
      notes.add(new FitNote(kind, segment, message));
    }

    private void refuse(OptionalInt segment, String message) {
      note(FitNote.Kind.REFUSED, segment, message);
    }
  }

  /** A value as the keypad will run it, as it is shown, and in words. */
  private record Keyed<T>(T value, String digits, String meaning) {}
}
