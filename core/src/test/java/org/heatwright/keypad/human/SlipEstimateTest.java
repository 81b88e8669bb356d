package org.heatwright.keypad.human;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.KeyedValue;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.KeypadFit;
import org.heatwright.keypad.Readback;
import org.heatwright.keypad.ReadbackQuestion;
import org.heatwright.keypad.ReadbackReport.Outcome;
import org.heatwright.keypad.Shown;
import org.heatwright.keypad.TestKeypads;
import org.heatwright.keypad.UnitCheck;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class SlipEstimateTest {

  /** 15 fields, 48 digits, 15 confirmations: the worked estimate of the standards sheet. */
  @Test
  void theWorkedEstimateOfTheSheetComesOut() {
    List<SlipEstimate.Value> fields = new ArrayList<>();
    for (int i = 0; i < 15; i++) {
      fields.add(new SlipEstimate.Value((i < 3 ? 4 : 3) + 1, true));
    }
    SlipEstimate estimate = SlipEstimate.of(fields, List.of());
    assertThat(estimate.keys()).isEqualTo(63);
    assertThat(estimate.unchecked().lowShare()).isCloseTo(0.27, within(0.005));
    assertThat(estimate.unchecked().usualShare()).isCloseTo(0.47, within(0.005));
    assertThat(estimate.unchecked().highShare()).isCloseTo(0.72, within(0.005));
    assertThat(estimate.byEye().lowShare()).isCloseTo(0.17, within(0.005));
    assertThat(estimate.byEye().usualShare()).isCloseTo(0.30, within(0.005));
    assertThat(estimate.readBack().highShare()).isLessThan(0.007);
    assertThat(estimate.words())
        .isEqualTo(
            "Of a hundred programs with 63 keys like this one, about 27 to 72 have a wrong key that"
                + " stays if nobody checks, 17 to 46 after looking it over, and at most 0.2 to 0.7"
                + " after a blind read-back compared here. An estimate, not a promise.");
  }

  private static Schedule burnout() {
    TemperatureUnit c = TemperatureUnit.CELSIUS;
    return Schedule.of(
            "Burnout",
            c,
            List.of(
                new Segment(Ramp.at(c.rate(100)), c.temperature(150), Duration.ofMinutes(120)),
                new Segment(Ramp.at(c.rate(150)), c.temperature(370), Duration.ofMinutes(90)),
                new Segment(Ramp.fastest(), c.temperature(732), Duration.ofMinutes(150))))
        .withStartDelay(Duration.ofMinutes(200));
  }

  @Test
  void whatTheReviewDoesNotShowStaysAsItWasKeyed() {
    Keypad knob = TestKeypads.knob();
    FittedProgram program = KeypadFit.fit(burnout(), knob);
    SlipEstimate estimate = SlipEstimate.of(program, knob);
    assertThat(knob.hiddenInReview()).contains(KeyedValue.Kind.DELAY);
    assertThat(estimate.hidden()).containsExactly("start delay");
    int digits = (int) program.values().get(0).digits().chars().filter(Character::isDigit).count();
    double delayWrong = 1 - Math.pow(0.99, digits + 1);
    assertThat(estimate.readBack().usualShare()).isBetween(delayWrong, delayWrong + 0.005);
    assertThat(estimate.words()).contains("in what its review does not show (start delay)");
    assertThat(SlipEstimate.ORIGIN.words()).startsWith("our estimate").contains("Wiseman");
    FittedProgram tooHot =
        KeypadFit.fit(
            Schedule.of(
                "hot",
                TemperatureUnit.CELSIUS,
                List.of(
                    new Segment(
                        Ramp.fastest(), TemperatureUnit.CELSIUS.temperature(1900), Duration.ZERO))),
            knob);
    assertThatThrownBy(() -> SlipEstimate.of(tooHot, knob))
        .isInstanceOf(IllegalArgumentException.class);
  }

  /**
   * People simulated key by key, with the kinds of slips that Verhoeff counted (1969, as a page
   * quotes him: mostly single digits, then left out, doubled and swapped ones), and the real
   * comparison. The formula knows none of this.
   */
  @Test
  @Tag("property")
  void simulatedPeopleSlipAsOftenAsTheFormulaSays() {
    int people = 20_000;
    for (Keypad keypad : List.of(TestKeypads.steps(), TestKeypads.digits(), TestKeypads.knob())) {
      FittedProgram plan = KeypadFit.fit(burnout(), keypad);
      SlipEstimate estimate = SlipEstimate.of(plan, keypad);
      Random random = new Random(7);
      int wrong = 0;
      int passed = 0;
      int passedIfMisreadLikeThePlan = 0;
      for (int person = 0; person < people; person++) {
        Map<String, String> held = keyed(plan, random);
        boolean anyWrong =
            plan.values().stream().anyMatch(v -> !v.digits().equals(held.get(v.place())));
        wrong += anyWrong ? 1 : 0;
        if (!anyWrong) {
          continue;
        }
        passed += passes(plan, keypad, held, random, false) ? 1 : 0;
        passedIfMisreadLikeThePlan += passes(plan, keypad, held, random, true) ? 1 : 0;
      }
      double expected = estimate.unchecked().usualShare();
      assertThat(wrong / (double) people)
          .as("%s: something wrong", keypad.name())
          .isCloseTo(expected, within(4 * deviation(expected, people)));
      double bound = estimate.readBack().usualShare();
      // The bound counts an error in a hidden value even where another one was found; the
      // simulation is of whole programs, so it passes no more often.
      assertThat(passedIfMisreadLikeThePlan / (double) people)
          .as("%s: passes", keypad.name())
          .isLessThan(bound + 4 * deviation(bound, people));
      assertThat(passed / (double) people)
          .as("%s: passes, misread at random", keypad.name())
          .isLessThanOrEqualTo(bound + 4 * deviation(bound, people));
      if (!estimate.hidden().isEmpty()) {
        assertThat(passed).as(keypad.name()).isGreaterThan(people / 200);
      }
    }
  }

  private static double deviation(double share, int of) {
    return Math.sqrt(share * (1 - share) / of) + 1e-4;
  }

  /** What the slot holds when every key slips by one in a hundred. */
  private static Map<String, String> keyed(FittedProgram plan, Random random) {
    Map<String, String> held = new HashMap<>();
    for (KeyedValue value : plan.values()) {
      StringBuilder text = new StringBuilder(value.digits());
      int digits = (int) value.digits().chars().filter(Character::isDigit).count();
      int keys = Math.max(1, digits) + 1;
      boolean slipped = false;
      for (int key = 0; key < keys; key++) {
        slipped |= random.nextInt(100) == 0;
      }
      held.put(value.place(), slipped ? slip(text, random) : value.digits());
    }
    return held;
  }

  /** A text that differs: another digit, one left out, one doubled, two swapped. */
  private static String slip(StringBuilder text, Random random) {
    String was = text.toString();
    String now = was;
    while (withoutZeros(now).equals(withoutZeros(was))) {
      StringBuilder changed = new StringBuilder(was);
      int at = random.nextInt(changed.length());
      switch (random.nextInt(10)) {
        case 0 -> changed.deleteCharAt(at);
        case 1 -> changed.insert(at, changed.charAt(at));
        case 2 -> {
          int next = (at + 1) % changed.length();
          char first = changed.charAt(at);
          changed.setCharAt(at, changed.charAt(next));
          changed.setCharAt(next, first);
        }
        default -> changed.setCharAt(at, (char) ('0' + random.nextInt(10)));
      }
      now = changed.toString();
    }
    return now;
  }

  /** Leading zeros change no value. */
  private static String withoutZeros(String text) {
    return text.replaceFirst("^0+(?=\\d)", "");
  }

  /** Whether a read-back of a wrong program is taken for right. */
  private static boolean passes(
      FittedProgram plan,
      Keypad keypad,
      Map<String, String> held,
      Random random,
      boolean misreadLikeThePlan) {
    Map<String, KeyedValue> byWords = new HashMap<>();
    for (KeyedValue value : plan.values()) {
      boolean unused = value.kind() == KeyedValue.Kind.END && value.segment() > 0;
      byWords.put(unused ? "segment " + value.segment() + ", first value" : value.place(), value);
    }
    List<Shown.Value> shown = new ArrayList<>();
    for (ReadbackQuestion question : Readback.questions(plan, keypad)) {
      KeyedValue value = byWords.get(question.words());
      String text = held.get(value.place());
      if (random.nextInt(200) == 0) {
        text =
            misreadLikeThePlan
                ? value.digits()
                : slip(new StringBuilder(text.isEmpty() ? "0" : text), random);
      }
      shown.add(new Shown.Value(Integer.toString(question.position()), text));
    }
    return Readback.compare(
                plan,
                keypad,
                new Shown(OptionalInt.of(1), Optional.empty(), shown),
                OptionalInt.of(1),
                Optional.of(UnitCheck.judge(20, 20, TemperatureUnit.CELSIUS, true)))
            .outcome()
        == Outcome.PROVEN;
  }
}
