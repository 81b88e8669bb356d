package org.heatwright.keypad;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import org.heatwright.keypad.ReadbackReport.Outcome;
import org.heatwright.keypad.ReadbackReport.VerdictKind;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Ten thousand generated read-backs over five keypads. What the slot really holds is made from the
 * plan by one slip, then the keypad's review of <i>that</i> is read and compared with the plan.
 */
@Tag("property")
class ReadbackPropertyTest {

  private static final int READ_BACKS = 10_000;

  private enum Slip {
    NONE,
    DIGIT,
    DROPPED,
    ADDED,
    SWAPPED
  }

  private final Random random = new Random(20261125);
  private final List<Keypad> keypads = TestKeypads.kinds();

  @Test
  void everySlipThatTheReviewShowsIsCaughtAndNoCorrectReadBackIsRefused() {
    int[] caught = new int[Slip.values().length];
    int hiddenSlips = 0;
    int correct = 0;
    for (int run = 0; run < READ_BACKS; run++) {
      Keypad keypad = keypads.get(run % keypads.size());
      FittedProgram plan = generated(keypad);
      Slip slip = Slip.values()[random.nextInt(Slip.values().length)];
      Slot held = Slot.of(plan);
      List<KeyedValue> touched = held.slip(slip, random, keypad);
      Shown shown = spelled(held.review(keypad, plan.unit()));
      ReadbackReport report = compare(plan, keypad, shown);
      boolean visible = touched.stream().anyMatch(v -> !hidden(keypad, v));
      if (touched.isEmpty() || !visible) {
        assertThat(report.outcome()).as("run %d: %s", run, report).isEqualTo(Outcome.PROVEN);
        assertThat(report.findings()).isEmpty();
        assertThat(report.figures()).allMatch(ReadbackReport.Figure::agrees);
        correct++;
        hiddenSlips += touched.isEmpty() ? 0 : 1;
      } else {
        assertThat(report.outcome()).as("run %d, %s", run, slip).isEqualTo(Outcome.NOT_PROVEN);
        assertThat(report.correction()).as("run %d, %s", run, slip).isPresent();
        assertNamed(report, slip, touched, keypad, run);
        caught[slip.ordinal()]++;
      }
      assertUnprovenIsListed(plan, keypad, report);
    }
    assertThat(correct).isGreaterThan(1500);
    assertThat(hiddenSlips).isGreaterThan(5);
    assertThat(caught[Slip.DIGIT.ordinal()]).isGreaterThan(1500);
    assertThat(caught[Slip.DROPPED.ordinal()]).isGreaterThan(1000);
    assertThat(caught[Slip.ADDED.ordinal()]).isGreaterThan(1000);
    assertThat(caught[Slip.SWAPPED.ordinal()]).isGreaterThan(1500);
  }

  private static void assertNamed(
      ReadbackReport report, Slip slip, List<KeyedValue> touched, Keypad keypad, int run) {
    List<ReadbackReport.Verdict> wrong =
        report.verdicts().stream().filter(v -> v.kind() != VerdictKind.MATCH).toList();
    switch (slip) {
      case DIGIT ->
          assertThat(wrong)
              .as("run %d", run)
              .extracting(ReadbackReport.Verdict::place)
              .containsExactly(touched.get(0).place());
      case DROPPED -> assertThat(report.findings().get(0)).as("run %d", run).contains("is missing");
      case ADDED ->
          assertThat(report.findings().get(0))
              .as("run %d", run)
              .matches(f -> f.contains("too many") || f.contains("twice"));
      case SWAPPED ->
          assertThat(wrong)
              .as("run %d: %s", run, report)
              .filteredOn(v -> touched.stream().anyMatch(t -> t.place().equals(v.place())))
              .hasSize((int) touched.stream().filter(v -> !hidden(keypad, v)).count())
              .allMatch(v -> v.kind() == VerdictKind.SWAPPED);
      case NONE -> throw new AssertionError("nothing was touched");
    }
  }

  private static void assertUnprovenIsListed(
      FittedProgram plan, Keypad keypad, ReadbackReport report) {
    for (KeyedValue value : plan.values()) {
      if (hidden(keypad, value) && value.kind() != KeyedValue.Kind.END) {
        assertThat(report.unproven())
            .anyMatch(
                u ->
                    u.toLowerCase(Locale.ROOT).startsWith(value.place())
                        && u.contains(value.digits()));
      }
    }
  }

  private static boolean hidden(Keypad keypad, KeyedValue value) {
    return keypad.hiddenInReview().contains(value.kind());
  }

  private static ReadbackReport compare(FittedProgram plan, Keypad keypad, Shown shown) {
    return Readback.compare(
        plan,
        keypad,
        shown,
        OptionalInt.of(1),
        Optional.of(
            plan.unit() == TemperatureUnit.CELSIUS
                ? UnitCheck.judge(20, 20, TemperatureUnit.CELSIUS, true)
                : UnitCheck.judge(68, 20, TemperatureUnit.CELSIUS, true)));
  }

  /** A program of two or more segments, up to all that the keypad has. */
  private FittedProgram generated(Keypad keypad) {
    while (true) {
      TemperatureUnit unit = TemperatureUnit.values()[random.nextInt(2)];
      int count = 2 + random.nextInt(Math.min(keypad.segments() - 1, 7));
      List<Segment> segments = new ArrayList<>();
      for (int i = 0; i < count; i++) {
        if (i > 0 && random.nextInt(8) == 0) {
          segments.add(segments.get(i - 1));
          continue;
        }
        segments.add(
            new Segment(
                random.nextInt(6) == 0
                    ? Ramp.fastest()
                    : Ramp.at(unit.rate(20 + random.nextInt(600))),
                unit.temperature(100 + random.nextInt(850)),
                Duration.ofMinutes(random.nextInt(500))));
      }
      FittedProgram program =
          KeypadFit.fit(
              Schedule.of("generated", unit, segments)
                  .withStartDelay(Duration.ofMinutes(random.nextInt(1400))),
              keypad);
      if (program.fits()) {
        return program;
      }
    }
  }

  /** As people write it down: with blanks, other case, a decimal comma, a leading zero. */
  private Shown spelled(Shown shown) {
    List<Shown.Value> values = new ArrayList<>();
    for (Shown.Value value : shown.values()) {
      String text = value.text();
      text =
          switch (random.nextInt(6)) {
            case 0 -> " " + text + " ";
            case 1 -> text.toUpperCase(Locale.ROOT);
            case 2 -> text.replace('.', ',');
            case 3 -> text.matches("\\d.*") ? "0" + text : text;
            default -> text;
          };
      values.add(new Shown.Value(value.at(), text));
    }
    return new Shown(shown.slot(), shown.unit(), values);
  }

  /** What a slot holds, as text; the slips happen here. */
  private static final class Slot {

    private final List<KeyedValue> values;

    private Slot(List<KeyedValue> values) {
      this.values = values;
    }

    static Slot of(FittedProgram program) {
      return new Slot(new ArrayList<>(program.values()));
    }

    /**
     * @return the values of the plan that are no longer what they were; empty if none
     */
    List<KeyedValue> slip(Slip slip, Random random, Keypad keypad) {
      return switch (slip) {
        case NONE -> List.of();
        case DIGIT -> digit(random);
        case DROPPED -> dropped(random, keypad);
        case ADDED -> added(random, keypad);
        case SWAPPED -> swapped(random);
      };
    }

    private List<KeyedValue> digit(Random random) {
      while (true) {
        int index = random.nextInt(values.size());
        KeyedValue value = values.get(index);
        List<Integer> digits = new ArrayList<>();
        for (int i = 0; i < value.digits().length(); i++) {
          if (Character.isDigit(value.digits().charAt(i))) {
            digits.add(i);
          }
        }
        if (digits.isEmpty()) {
          continue;
        }
        int at = digits.get(random.nextInt(digits.size()));
        char was = value.digits().charAt(at);
        char slipped = (char) ('0' + (was - '0' + 1 + random.nextInt(9)) % 10);
        String text = value.digits().substring(0, at) + slipped + value.digits().substring(at + 1);
        values.set(index, withDigits(value, text));
        return List.of(value);
      }
    }

    private List<KeyedValue> swapped(Random random) {
      for (int attempt = 0; attempt < 1000; attempt++) {
        int a = random.nextInt(values.size());
        int b = random.nextInt(values.size());
        KeyedValue one = values.get(a);
        KeyedValue other = values.get(b);
        if (one.kind() != other.kind()
            || one.kind() == KeyedValue.Kind.END
            || one.digits().equals(other.digits())) {
          continue;
        }
        values.set(a, withDigits(one, other.digits()));
        values.set(b, withDigits(other, one.digits()));
        return List.of(one, other);
      }
      return List.of();
    }

    private List<KeyedValue> dropped(Random random, Keypad keypad) {
      int count = segments();
      int gone = 1 + random.nextInt(count);
      List<KeyedValue> touched = values.stream().filter(v -> v.segment() == gone).toList();
      List<List<KeyedValue>> kept = bySegment(count);
      kept.remove(gone - 1);
      rebuild(kept, keypad);
      return touched;
    }

    private List<KeyedValue> added(Random random, Keypad keypad) {
      int count = segments();
      if (count >= keypad.segments()) {
        return List.of();
      }
      List<List<KeyedValue>> more = bySegment(count);
      List<KeyedValue> twice = more.get(random.nextInt(count));
      more.add(random.nextInt(count + 1), twice);
      rebuild(more, keypad);
      return twice;
    }

    private int segments() {
      return values.stream()
          .filter(v -> v.kind() == KeyedValue.Kind.TARGET)
          .mapToInt(KeyedValue::segment)
          .max()
          .orElseThrow();
    }

    private List<List<KeyedValue>> bySegment(int count) {
      List<List<KeyedValue>> segments = new ArrayList<>();
      for (int segment = 1; segment <= count; segment++) {
        int number = segment;
        segments.add(
            values.stream()
                .filter(v -> v.segment() == number && v.kind() != KeyedValue.Kind.END)
                .toList());
      }
      return segments;
    }

    private void rebuild(List<List<KeyedValue>> segments, Keypad keypad) {
      List<KeyedValue> whole =
          values.stream()
              .filter(v -> v.kind() == KeyedValue.Kind.DELAY || v.kind() == KeyedValue.Kind.UNIT)
              .toList();
      values.clear();
      values.addAll(whole);
      if (keypad.end().by() == Keypad.EndRule.By.COUNT) {
        values.add(
            new KeyedValue(0, KeyedValue.Kind.END, String.valueOf(segments.size()), "count"));
      }
      for (int i = 0; i < segments.size(); i++) {
        for (KeyedValue value : segments.get(i)) {
          values.add(new KeyedValue(i + 1, value.kind(), value.digits(), value.meaning()));
        }
      }
      int last =
          keypad.end().by() == Keypad.EndRule.By.EVERY_UNUSED
              ? keypad.segments()
              : Math.min(segments.size() + 1, keypad.segments());
      keypad
          .end()
          .mark()
          .ifPresent(
              mark -> {
                for (int segment = segments.size() + 1; segment <= last; segment++) {
                  values.add(new KeyedValue(segment, KeyedValue.Kind.END, mark.shows(), "unused"));
                }
              });
    }

    /** This slot's own review, walked in the keypad's display order. */
    Shown review(Keypad keypad, TemperatureUnit unit) {
      List<Shown.Value> shown = new ArrayList<>();
      show(shown, 0, KeyedValue.Kind.UNIT);
      if (keypad.review().delay() == Keypad.Position.FIRST) {
        show(shown, 0, KeyedValue.Kind.DELAY);
      }
      show(shown, 0, KeyedValue.Kind.END);
      for (int segment = 1; segment <= keypad.segments(); segment++) {
        for (KeyedValue.Kind kind : keypad.review().order()) {
          show(shown, segment, kind);
        }
        int number = segment;
        if (keypad.review().unused()
            && values.stream()
                .anyMatch(v -> v.segment() == number && v.kind() == KeyedValue.Kind.END)) {
          // Whatever stands there: the segment is not run.
          TestKeypads.beforeMark(keypad)
              .forEach(k -> shown.add(new Shown.Value(String.valueOf(shown.size() + 1), "95")));
          show(shown, segment, KeyedValue.Kind.END);
        }
      }
      if (keypad.review().delay() == Keypad.Position.LAST) {
        show(shown, 0, KeyedValue.Kind.DELAY);
      }
      return new Shown(
          OptionalInt.of(1),
          keypad.units().shownAt().contains(Keypad.UnitSetting.ShownAt.REVIEW)
              ? Optional.of(unit)
              : Optional.empty(),
          shown);
    }

    private void show(List<Shown.Value> shown, int segment, KeyedValue.Kind kind) {
      values.stream()
          .filter(v -> v.segment() == segment && v.kind() == kind)
          .forEach(v -> shown.add(new Shown.Value(String.valueOf(shown.size() + 1), v.digits())));
    }

    private static KeyedValue withDigits(KeyedValue value, String digits) {
      return new KeyedValue(value.segment(), value.kind(), digits, value.meaning());
    }
  }
}
