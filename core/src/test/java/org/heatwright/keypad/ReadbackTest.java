package org.heatwright.keypad;

import static org.assertj.core.api.Assertions.assertThat;
import static org.heatwright.keypad.ReadbackReport.Outcome.NOT_PROVEN;
import static org.heatwright.keypad.ReadbackReport.Outcome.PROVEN;
import static org.heatwright.keypad.ReadbackReport.Outcome.UNIT_OPEN;
import static org.heatwright.keypad.TestKeypads.burnout;
import static org.heatwright.keypad.TestKeypads.celsius;
import static org.heatwright.keypad.TestKeypads.review;
import static org.heatwright.keypad.TestKeypads.schedule;
import static org.heatwright.keypad.TestKeypads.segment;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import org.heatwright.keypad.ReadbackReport.VerdictKind;
import org.heatwright.schedule.AtEnd;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class ReadbackTest {

  private static final UnitCheck.Result COLD_IN_CELSIUS =
      UnitCheck.judge(19, 20, TemperatureUnit.CELSIUS, true);

  private final Keypad keypad = TestKeypads.digits();
  private final FittedProgram program = KeypadFit.fit(burnout(), keypad);

  static List<Keypad> keypads() {
    return TestKeypads.all();
  }

  /** The review of the burnout with one text changed. Positions are 1-based. */
  private Shown changed(int position, String text) {
    return changed(review(program, keypad), position, text);
  }

  private static Shown changed(Shown shown, int position, String text) {
    List<Shown.Value> values = new ArrayList<>(shown.values());
    values.set(position - 1, new Shown.Value(values.get(position - 1).at(), text));
    return new Shown(shown.slot(), shown.unit(), values);
  }

  private static Shown shown(String... texts) {
    List<Shown.Value> values = new ArrayList<>();
    for (String text : texts) {
      values.add(new Shown.Value(String.valueOf(values.size() + 1), text));
    }
    return new Shown(OptionalInt.of(1), Optional.empty(), values);
  }

  private ReadbackReport compare(Shown shown) {
    return Readback.compare(program, keypad, shown);
  }

  private static ReadbackReport.Verdict only(ReadbackReport report) {
    List<ReadbackReport.Verdict> wrong =
        report.verdicts().stream().filter(v -> v.kind() != VerdictKind.MATCH).toList();
    assertThat(wrong).hasSize(1);
    return wrong.get(0);
  }

  @ParameterizedTest
  @MethodSource("keypads")
  void questionsAreBlindAndInDisplayOrder(Keypad keypad) {
    FittedProgram program = KeypadFit.fit(burnout(), keypad);
    List<ReadbackQuestion> questions = Readback.questions(program, keypad);
    assertThat(questions).hasSameSizeAs(review(program, keypad).values());
    assertThat(questions).extracting(ReadbackQuestion::position).startsWith(1, 2, 3);
    assertThat(questions).extracting(ReadbackQuestion::label).doesNotHaveDuplicates();
    assertThat(questions).noneMatch(q -> q.words().contains("unused") || q.words().contains("730"));
  }

  @Test
  void theFirstUnusedSegmentIsAskedFor() {
    Keypad steps = TestKeypads.steps();
    List<ReadbackQuestion> questions = Readback.questions(KeypadFit.fit(burnout(), steps), steps);
    assertThat(questions.get(13).label()).isEqualTo("r5");
    assertThat(questions.get(13).words()).isEqualTo("segment 5, first value");
    assertThat(questions.get(0).label()).isEqualTo("dL");
  }

  @Test
  void aCorrectReadBackOfAFixedKeypadIsProven() {
    ReadbackReport report = compare(review(program, keypad));
    assertThat(report.outcome()).isEqualTo(PROVEN);
    assertThat(report.findings()).isEmpty();
    assertThat(report.correction()).isEmpty();
    assertThat(report.unproven()).isEmpty();
    assertThat(report.figures()).allMatch(ReadbackReport.Figure::agrees);
    assertThat(report.figures())
        .extracting(ReadbackReport.Figure::planned)
        .containsExactly("4", "1750", "585");
  }

  @Test
  void theUnitMustBeSettledWhereItCanBeEither() {
    Keypad steps = TestKeypads.steps();
    FittedProgram fitted = KeypadFit.fit(burnout(), steps);
    Shown shown = review(fitted, steps);
    ReadbackReport open = Readback.compare(fitted, steps, shown);
    assertThat(open.outcome()).isEqualTo(UNIT_OPEN);
    assertThat(open.unproven().get(0))
        .contains("no unit sign was read", "68 may be a warm kiln in °C", "thermometer");
    assertThat(
            Readback.compare(fitted, steps, shown, OptionalInt.of(1), Optional.of(COLD_IN_CELSIUS))
                .outcome())
        .isEqualTo(PROVEN);
    ReadbackReport other =
        Readback.compare(
            fitted,
            steps,
            shown,
            OptionalInt.of(1),
            Optional.of(UnitCheck.judge(68, 20, TemperatureUnit.CELSIUS, true)));
    assertThat(other.outcome()).isEqualTo(NOT_PROVEN);
    assertThat(other.correction().orElseThrow()).contains("Switch the keypad to °C");
    ReadbackReport warm =
        Readback.compare(
            fitted,
            steps,
            shown,
            OptionalInt.of(1),
            Optional.of(UnitCheck.judge(68, 20, TemperatureUnit.CELSIUS, false)));
    assertThat(warm.outcome()).isEqualTo(UNIT_OPEN);
    // The sign stands in this keypad's settings, so it can have been seen, but not in the review.
    ReadbackReport seen =
        Readback.compare(
            fitted,
            steps,
            new Shown(shown.slot(), Optional.of(TemperatureUnit.CELSIUS), shown.values()));
    assertThat(seen.outcome()).isEqualTo(PROVEN);
    assertThat(seen.unproven().get(0)).contains("rests on the sign seen elsewhere");
    // Where no display shows the unit, what somebody wrote down settles nothing.
    Keypad silent = TestKeypads.withUnits(steps, Set.of());
    assertThat(
            Readback.compare(
                    fitted,
                    silent,
                    new Shown(shown.slot(), Optional.of(TemperatureUnit.CELSIUS), shown.values()))
                .outcome())
        .isEqualTo(UNIT_OPEN);
  }

  @Test
  void aUnitSignInTheReviewSettlesItAndTheWrongOneIsNamed() {
    Keypad knob = TestKeypads.knob();
    FittedProgram fitted = KeypadFit.fit(burnout(), knob);
    Shown shown = review(fitted, knob);
    ReadbackReport right = Readback.compare(fitted, knob, shown);
    assertThat(right.outcome()).isEqualTo(PROVEN);
    assertThat(right.unproven())
        .containsExactly(
            "Start delay, 03:20 (waits 3 h 20 min before it heats): this review does not show it.");
    ReadbackReport wrong =
        Readback.compare(
            fitted,
            knob,
            new Shown(shown.slot(), Optional.of(TemperatureUnit.FAHRENHEIT), shown.values()));
    assertThat(wrong.outcome()).isEqualTo(NOT_PROVEN);
    assertThat(wrong.findings().get(0)).contains("The display says °F", "plan is for °C");
  }

  // Display order of the digit keypad: 1 count, then target, rate, hold by segment, 14 delay.

  @Test
  void aWrongDigitIsNamedWithItsCorrection() {
    ReadbackReport report = compare(changed(5, "379"));
    assertThat(report.outcome()).isEqualTo(NOT_PROVEN);
    assertThat(only(report).kind()).isEqualTo(VerdictKind.WRONG);
    assertThat(only(report).message()).isEqualTo("Segment 2 target must be 370, it shows '379'.");
    assertThat(report.correction()).contains("Key 370 at segment 2 target. Then read back again.");
    assertThat(report.figures())
        .filteredOn(f -> f.name().equals("sum of targets"))
        .singleElement()
        .satisfies(
            f -> {
              assertThat(f.shown()).isEqualTo("1759");
              assertThat(f.agrees()).isFalse();
            });
  }

  @ParameterizedTest
  @CsvSource({
    "5, ' 370', true",
    "5, 0370, true",
    "5, '3 70', true",
    "5, 370C, true",
    "5, 370 °C, true",
    "5, 370.0, true",
    "5, 307, false",
    "5, 3700, false",
    "5, 370F, false",
    "5, -370, false",
    "5, '', false",
    "14, 3:20, true",
    "14, ' 03:20 ', true",
    "14, '03.20', true",
    "14, 03:02, false",
    "14, 3:2, false",
    "14, 320, false"
  })
  void toleranceNeverReachesADifferentValue(int position, String text, boolean right) {
    assertThat(compare(changed(position, text)).outcome()).isEqualTo(right ? PROVEN : NOT_PROVEN);
  }

  @Test
  void caseAndDecimalCommaAreTolerated() {
    Keypad steps = TestKeypads.steps();
    FittedProgram fitted = KeypadFit.fit(burnout(), steps);
    Shown shown = review(fitted, steps);
    Shown written = changed(changed(changed(shown, 14, "eND"), 8, "full"), 4, "2,30");
    assertThat(
            Readback.compare(
                    fitted, steps, written, OptionalInt.of(1), Optional.of(COLD_IN_CELSIUS))
                .outcome())
        .isEqualTo(PROVEN);
    // 2.3 may be 2 h 3 min or 2 h 30 min.
    ReadbackReport unsure = Readback.compare(fitted, steps, changed(shown, 4, "2.3"));
    assertThat(only(unsure).kind()).isEqualTo(VerdictKind.UNREADABLE);
    assertThat(only(unsure).message()).contains("both digits of the minutes");
  }

  @Test
  void labelsMayStandForPositions() {
    Keypad steps = TestKeypads.steps();
    FittedProgram fitted = KeypadFit.fit(burnout(), steps);
    List<ReadbackQuestion> questions = Readback.questions(fitted, steps);
    List<Shown.Value> byLabel = new ArrayList<>();
    List<Shown.Value> byPosition = review(fitted, steps).values();
    for (int i = 0; i < byPosition.size(); i++) {
      byLabel.add(
          new Shown.Value(
              questions.get(i).label().toUpperCase(Locale.ROOT), byPosition.get(i).text()));
    }
    ReadbackReport report =
        Readback.compare(
            fitted,
            steps,
            new Shown(OptionalInt.of(2), Optional.empty(), byLabel),
            OptionalInt.of(2),
            Optional.of(COLD_IN_CELSIUS));
    assertThat(report.outcome()).isEqualTo(PROVEN);
    ReadbackReport otherSlot =
        Readback.compare(
            fitted,
            steps,
            new Shown(OptionalInt.of(2), Optional.empty(), byLabel),
            OptionalInt.of(3),
            Optional.of(COLD_IN_CELSIUS));
    assertThat(otherSlot.outcome()).isEqualTo(NOT_PROVEN);
    assertThat(otherSlot.findings())
        .containsExactly("Slot 2 was reviewed, but the program was keyed into slot 3.");
  }

  @Test
  void theUnusedSegmentMayBeCalledByItsFirstField() {
    Keypad steps = TestKeypads.steps();
    FittedProgram fitted = KeypadFit.fit(burnout(), steps);
    for (String name : List.of("r5", "R5", "14", "segment 5, first value", "Segment 5 rate")) {
      List<Shown.Value> values = new ArrayList<>(review(fitted, steps).values());
      values.set(13, new Shown.Value(name, "End"));
      assertThat(
              Readback.compare(
                      fitted,
                      steps,
                      new Shown(OptionalInt.of(1), Optional.of(TemperatureUnit.CELSIUS), values))
                  .outcome())
          .as(name)
          .isEqualTo(PROVEN);
    }
  }

  @ParameterizedTest
  @MethodSource("keypads")
  void oneSegmentAndAllSegmentsAreProvenToo(Keypad keypad) {
    for (int count : new int[] {1, keypad.segments()}) {
      Segment[] segments = new Segment[count];
      for (int i = 0; i < count; i++) {
        segments[i] = celsius(60 + 60 * i, 100 + 50 * i, 5 * i);
      }
      FittedProgram fitted = KeypadFit.fit(schedule(segments), keypad);
      ReadbackReport report =
          Readback.compare(
              fitted,
              keypad,
              review(fitted, keypad),
              OptionalInt.of(1),
              Optional.of(COLD_IN_CELSIUS));
      assertThat(report.outcome()).as("%s with %d", keypad.name(), count).isEqualTo(PROVEN);
    }
  }

  @Test
  void aMissingSegmentIsNamedAndWhatMovedIsNotCalledWrong() {
    Keypad steps = TestKeypads.steps();
    FittedProgram fitted = KeypadFit.fit(burnout(), steps);
    ReadbackReport report =
        Readback.compare(
            fitted,
            steps,
            shown(
                "3.20", "120", "150", "2.30", "FULL", "730", "4.00", "180", "500", "1.45", "End"));
    assertThat(report.outcome()).isEqualTo(NOT_PROVEN);
    assertThat(report.findings().get(0))
        .isEqualTo(
            "Segment 2 is missing (rate 150, target 370, hold 1.30); what follows has moved up by one.");
    assertThat(report.correction().orElseThrow()).contains("from segment 2");
    assertThat(report.verdicts())
        .filteredOn(v -> v.kind() == VerdictKind.MISSING)
        .extracting(ReadbackReport.Verdict::place)
        .containsExactly("segment 2 rate", "segment 2 target", "segment 2 hold");
    assertThat(report.verdicts()).filteredOn(v -> v.kind() == VerdictKind.MOVED).hasSize(6);
    assertThat(report.figures())
        .extracting(ReadbackReport.Figure::shown)
        .containsExactly("3", "1380", "495");
  }

  @Test
  void anOldSegmentBehindTheLastIsNamed() {
    Keypad steps = TestKeypads.steps();
    FittedProgram fitted = KeypadFit.fit(burnout(), steps);
    ReadbackReport report =
        Readback.compare(
            fitted,
            steps,
            shown(
                "3.20", "120", "150", "2.30", "150", "370", "1.30", "FULL", "730", "4.00", "180",
                "500", "1.45", "95", "640", "0.30", "End"));
    assertThat(report.outcome()).isEqualTo(NOT_PROVEN);
    assertThat(report.findings().get(0)).contains("too many", "number 5");
    assertThat(report.correction().orElseThrow()).contains("end after segment 4");
    assertThat(report.verdicts())
        .filteredOn(v -> v.kind() == VerdictKind.EXTRA)
        .extracting(ReadbackReport.Verdict::shown)
        .containsExactly("95", "640", "0.30");
  }

  @Test
  void aSegmentKeyedTwiceIsNamed() {
    ReadbackReport report =
        compare(
            shown(
                "5", "150", "120", "150", "370", "150", "90", "370", "150", "90", "730", "999",
                "240", "500", "180", "105", "03:20"));
    assertThat(report.findings().get(0))
        .isEqualTo("Segment 2 is there twice, as segments 2 and 3.");
  }

  @Test
  void aMissingMarkIsWrong() {
    Keypad steps = TestKeypads.steps();
    FittedProgram fitted = KeypadFit.fit(burnout(), steps);
    ReadbackReport report =
        Readback.compare(fitted, steps, changed(review(fitted, steps), 14, "95"));
    assertThat(only(report).message()).isEqualTo("Segment 5 (unused) must be End, it shows '95'.");
  }

  @Test
  void swappedValuesAndSegmentsAreNamed() {
    ReadbackReport values = compare(changed(changed(5, "730"), 8, "370"));
    assertThat(values.findings())
        .containsExactly("The segment 2 target and the segment 3 target have changed places.");
    assertThat(values.verdicts()).filteredOn(v -> v.kind() == VerdictKind.SWAPPED).hasSize(2);
    ReadbackReport within = compare(changed(changed(5, "90"), 7, "370"));
    assertThat(within.findings())
        .containsExactly("The segment 2 target and the segment 2 hold have changed places.");
    ReadbackReport segments =
        compare(
            shown(
                "4", "150", "120", "150", "730", "999", "240", "370", "150", "90", "500", "180",
                "105", "03:20"));
    assertThat(segments.findings()).containsExactly("Segments 2 and 3 have changed places.");
    assertThat(segments.correction().orElseThrow())
        .contains("segment 2 (target 370, rate 150, hold 90)");
  }

  @Test
  void numbersOfTheOtherUnitAreNamed() {
    Schedule fahrenheit =
        Schedule.of(
            "old-card",
            TemperatureUnit.FAHRENHEIT,
            List.of(
                segment(TemperatureUnit.FAHRENHEIT, 180, 300, 60),
                segment(TemperatureUnit.FAHRENHEIT, 270, 900, 45)));
    FittedProgram fitted = KeypadFit.fit(fahrenheit, keypad);
    ReadbackReport all =
        Readback.compare(
            fitted, keypad, shown("2", "300", "180", "60", "900", "270", "45", "00:00"));
    assertThat(all.findings().get(0))
        .isEqualTo("Every target is the plan's in °F, but the keypad is to work in °C.");
    assertThat(all.verdicts()).filteredOn(v -> v.kind() == VerdictKind.WRONG_UNIT).hasSize(4);
    ReadbackReport one =
        Readback.compare(
            fitted, keypad, shown("2", "148", "100", "60", "900", "150", "45", "00:00"));
    assertThat(only(one).kind()).isEqualTo(VerdictKind.WRONG_UNIT);
    assertThat(only(one).message())
        .isEqualTo("Segment 2 target must be 482; '900' is the plan's value in °F.");
  }

  @Test
  void hoursForMinutesAreNamed() {
    Keypad knob = TestKeypads.knob();
    FittedProgram fitted = KeypadFit.fit(schedule(celsius(60, 500, 20)), knob);
    ReadbackReport report =
        Readback.compare(fitted, knob, changed(review(fitted, knob), 2, "20:00"));
    assertThat(only(report).kind()).isEqualTo(VerdictKind.HOURS_FOR_MINUTES);
    FittedProgram two = KeypadFit.fit(schedule(celsius(60, 500, 120)), keypad);
    assertThat(only(Readback.compare(two, keypad, shown("1", "500", "60", "2", "00:00"))).kind())
        .isEqualTo(VerdictKind.HOURS_FOR_MINUTES);
    // 1 h 30 min keyed as decimal hours into h.mm.
    Keypad steps = TestKeypads.steps();
    FittedProgram half = KeypadFit.fit(schedule(celsius(60, 500, 90)), steps);
    assertThat(
            only(Readback.compare(half, steps, shown("0.00", "60", "500", "1.50", "End"))).kind())
        .isEqualTo(VerdictKind.HOURS_FOR_MINUTES);
  }

  @Test
  void whatWasNotReadIsMissingAndWhatHasNoPlaceIsExtra() {
    Shown full = review(program, keypad);
    List<Shown.Value> without = new ArrayList<>(full.values());
    without.remove(4);
    ReadbackReport missing = compare(new Shown(OptionalInt.of(1), Optional.empty(), without));
    assertThat(only(missing).kind()).isEqualTo(VerdictKind.MISSING);
    assertThat(only(missing).message())
        .isEqualTo("Segment 2 target was not shown; it must be 370.");
    List<Shown.Value> with = new ArrayList<>(full.values());
    with.add(new Shown.Value("segment 9 flap", "12"));
    ReadbackReport extra = compare(new Shown(OptionalInt.of(1), Optional.empty(), with));
    assertThat(only(extra).kind()).isEqualTo(VerdictKind.EXTRA);
    assertThat(extra.findings()).isNotEmpty();
    assertThat(compare(new Shown(OptionalInt.of(1), Optional.empty(), List.of())).outcome())
        .isEqualTo(NOT_PROVEN);
  }

  @Test
  void anEndlessHoldIsReadByItsWord() {
    Keypad knob = TestKeypads.knob();
    Schedule keep =
        new Schedule(
            "session",
            TemperatureUnit.CELSIUS,
            List.of(celsius(60, 300, 30), celsius(120, 800, 60)),
            Duration.ZERO,
            AtEnd.KEEP);
    FittedProgram fitted = KeypadFit.fit(keep, knob);
    ReadbackReport right = Readback.compare(fitted, knob, changed(review(fitted, knob), 5, "Cont"));
    assertThat(right.outcome()).isEqualTo(PROVEN);
    assertThat(right.figures()).allMatch(ReadbackReport.Figure::agrees);
    assertThat(
            only(Readback.compare(fitted, knob, changed(review(fitted, knob), 5, "01:00"))).kind())
        .isEqualTo(VerdictKind.WRONG);
  }

  @Test
  void aBlankAnswerIsNoAnswerAndAMissingSegmentIsStillNamed() {
    ReadbackReport report =
        compare(
            shown(
                "3", "150", "120", "150", "730", "999", "240", "500", "180", "105", "03:20", "",
                " ", ""));
    assertThat(report.findings().get(0)).startsWith("Segment 2 is missing");
    assertThat(only(compare(changed(5, " "))).kind()).isEqualTo(VerdictKind.MISSING);
  }

  private static String spelling(String text) {
    return text.replaceAll("[^0-9a-zA-Z-]", "").toLowerCase(Locale.ROOT);
  }

  @Tag("property")
  @ParameterizedTest
  @MethodSource("keypads")
  void noTextMakesItStumbleOrPass(Keypad keypad) {
    Random random = new Random(7);
    FittedProgram fitted = KeypadFit.fit(burnout(), keypad);
    Shown right = review(fitted, keypad);
    String letters = "0123456789.,:-+ °CFEndFULLcont\u2212\u00e9\u0661eE%s";
    for (int run = 0; run < 3000; run++) {
      List<Shown.Value> values = new ArrayList<>(right.values());
      int at = random.nextInt(values.size());
      StringBuilder text = new StringBuilder();
      int length = random.nextInt(12);
      for (int i = 0; i < length; i++) {
        text.append(letters.charAt(random.nextInt(letters.length())));
      }
      String was = values.get(at).text();
      values.set(
          at,
          new Shown.Value(
              random.nextInt(8) == 0 ? text.toString() : values.get(at).at(), text.toString()));
      ReadbackReport report =
          Readback.compare(fitted, keypad, new Shown(OptionalInt.of(1), right.unit(), values));
      if (report.outcome() != NOT_PROVEN) {
        // The only text that passes is the right one in another spelling.
        String plain = spelling(text.toString());
        boolean sameNumber =
            Texts.number(text.toString())
                .filter(n -> Texts.number(was).filter(w -> w.compareTo(n) == 0).isPresent())
                .isPresent();
        assertThat(sameNumber || plain.matches("0*" + spelling(was) + "[cf]?"))
            .as("'%s' for '%s'", text, was)
            .isTrue();
      }
    }
  }

  @Test
  void anUnknownOrImpossibleSlotIsTold() {
    Shown right = review(program, keypad);
    assertThat(compare(new Shown(OptionalInt.empty(), Optional.empty(), right.values())).unproven())
        .containsExactly("Which slot was reviewed was not told.");
    assertThat(compare(new Shown(OptionalInt.of(10), Optional.empty(), right.values())).outcome())
        .isEqualTo(NOT_PROVEN);
  }

  @Test
  void unequalSegmentsOnlyAreCalledSwapped() {
    Segment same = celsius(100, 500, 30);
    FittedProgram fitted = KeypadFit.fit(schedule(same, same, celsius(120, 600, 40)), keypad);
    assertThat(Readback.compare(fitted, keypad, review(fitted, keypad)).outcome())
        .isEqualTo(PROVEN);
  }
}
