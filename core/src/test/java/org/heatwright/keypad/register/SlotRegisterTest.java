package org.heatwright.keypad.register;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.KeyedValue;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.KeypadFit;
import org.heatwright.keypad.Readback;
import org.heatwright.keypad.ReadbackReport;
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

class SlotRegisterTest {

  private static final Instant START = Instant.parse("2026-11-26T09:00:00Z");
  private static final ZoneId ZONE = ZoneOffset.UTC;
  private static final Keypad STEPS = TestKeypads.steps();
  private static final Keypad DIGITS = TestKeypads.digits();
  private static final List<Keypad> KEYPADS = List.of(STEPS, DIGITS, TestKeypads.knob());
  private static final Schedule BURNOUT = schedule("Burnout", 150, 732);
  private static final Schedule CLASS = schedule("Class burnout", 150, 700);

  private static Schedule schedule(String name, int first, int top) {
    TemperatureUnit c = TemperatureUnit.CELSIUS;
    return Schedule.of(
        name,
        c,
        List.of(
            new Segment(Ramp.at(c.rate(100)), c.temperature(first), Duration.ofMinutes(120)),
            new Segment(Ramp.at(c.rate(150)), c.temperature(top), Duration.ofMinutes(150))));
  }

  // What the tests tell.

  private static SlotEvent.ReadBack right(Keypad keypad, int slot, Schedule plan, Instant at) {
    return new SlotEvent.ReadBack(at, Role.MAKER, evidence(keypad, slot, slot, plan, plan));
  }

  private static SlotEvent.ReadBack wrong(Keypad keypad, int slot, Schedule plan, Instant at) {
    Schedule other = schedule("other", 155, 650);
    return new SlotEvent.ReadBack(at, Role.MAKER, evidence(keypad, slot, slot, plan, other));
  }

  /** A review of {@code inIt} in slot {@code reviewed}, read back against {@code plan}. */
  private static Evidence evidence(
      Keypad keypad, int slot, int reviewed, Schedule plan, Schedule inIt) {
    return new Evidence(
        plan,
        keypad,
        slot,
        new Shown(OptionalInt.of(reviewed), Optional.empty(), texts(keypad, inIt)),
        keypad.units().switchable()
            ? Optional.of(UnitCheck.judge(20, 20, TemperatureUnit.CELSIUS, true))
            : Optional.empty());
  }

  /** In the order of the questions, found by our words for the place. */
  private static List<Shown.Value> texts(Keypad keypad, Schedule inIt) {
    FittedProgram program = KeypadFit.fit(inIt, keypad);
    List<Shown.Value> values = new ArrayList<>();
    for (var question : Readback.questions(program, keypad)) {
      String text =
          program.values().stream()
              .filter(
                  v ->
                      v.place().equals(question.words())
                          || v.kind() == KeyedValue.Kind.END
                              && question
                                  .words()
                                  .equals("segment " + v.segment() + ", first value"))
              .findFirst()
              .orElseThrow()
              .digits();
      values.add(new Shown.Value(Integer.toString(question.position()), text));
    }
    return values;
  }

  private static Instant days(int after) {
    return START.plus(Duration.ofDays(after));
  }

  @Test
  void aProofIsMadeOnlyFromARightReadBackOfThatSlot() {
    Proof proof = right(DIGITS, 3, BURNOUT, START).proof().orElseThrow();
    assertThat(proof.slot()).isEqualTo(3);
    assertThat(proof.program()).isEqualTo(BURNOUT);
    assertThat(proof.by()).isEqualTo(Role.MAKER);
    assertThat(proof.unitGround()).isEqualTo(UnitGround.FIXED);
    assertThat(proof.covers()).contains("segment 2 target 732", "segment 2 hold 150");

    assertThat(wrong(DIGITS, 3, BURNOUT, START).proof()).isEmpty();
    assertThat(Proof.of(evidence(DIGITS, 3, 4, BURNOUT, BURNOUT), START, Role.MAKER)).isEmpty();
    Evidence right = evidence(DIGITS, 3, 3, BURNOUT, BURNOUT);
    Shown slotNotTold = new Shown(OptionalInt.empty(), Optional.empty(), right.shown().values());
    assertThat(
            Proof.of(
                new Evidence(BURNOUT, DIGITS, 3, slotNotTold, Optional.empty()), START, Role.MAKER))
        .isEmpty();
    assertThatThrownBy(() -> evidence(DIGITS, 10, 10, BURNOUT, BURNOUT))
        .hasMessageContaining("slots 1 to 9");
  }

  @Test
  void anOpenUnitProvesNothingAndASettledOneSaysByWhat() {
    Evidence settled = evidence(STEPS, 2, 2, BURNOUT, BURNOUT);
    Evidence open = new Evidence(BURNOUT, STEPS, 2, settled.shown(), Optional.empty());
    assertThat(open.report().outcome()).isEqualTo(Outcome.UNIT_OPEN);
    assertThat(Proof.of(open, START, Role.MAKER)).isEmpty();
    Proof proof = Proof.of(settled, START, Role.MAKER).orElseThrow();
    assertThat(proof.unitGround()).isEqualTo(UnitGround.COLD_KILN);
    Evidence sign =
        new Evidence(
            BURNOUT,
            STEPS,
            2,
            new Shown(
                OptionalInt.of(2), Optional.of(TemperatureUnit.CELSIUS), settled.shown().values()),
            Optional.empty());
    assertThat(Proof.of(sign, START, Role.MAKER).orElseThrow().unitGround())
        .isEqualTo(UnitGround.SIGN);
    // An open unit leaves the slot known, but never proven.
    SlotRegister register =
        SlotRegister.of(STEPS, List.of(new SlotEvent.ReadBack(START, Role.MAKER, open)));
    assertThat(register.held(2)).contains(BURNOUT);
    assertThat(register.standing(2, START)).isEqualTo(Standing.NEVER);
  }

  @Test
  void whatTheReviewDoesNotShowKeepsAProofFromBeingCalledWhole() {
    for (Keypad keypad : KEYPADS) {
      FittedProgram program = KeypadFit.fit(BURNOUT, keypad);
      Proof proof = right(keypad, 1, BURNOUT, START).proof().orElseThrow();
      boolean hides =
          program.values().stream().anyMatch(v -> keypad.hiddenInReview().contains(v.kind()));
      if (hides) {
        assertThat(proof.whole()).as(keypad.name()).isFalse();
        assertThat(proof.words()).isEqualTo("proven as far as its review shows");
      }
      assertThat(proof.whole()).isEqualTo(proof.unproven().isEmpty());
    }
  }

  @Test
  void aProofTellsItsAgeAndIsTooOldAfterItsDays() {
    SlotRegister register = SlotRegister.of(DIGITS, List.of(right(DIGITS, 1, BURNOUT, START)));
    assertThat(register.standing(1, days(3)).sentence(days(3), ZONE))
        .isEqualTo("Proven: read back 26 Nov 2026 by the maker, 3 days ago.");
    assertThat(register.standing(1, days(30)).kind()).isEqualTo(Standing.Kind.GOOD);
    Standing old = register.standing(1, days(30).plusMillis(1));
    assertThat(old.ended().orElseThrow().cause()).isEqualTo(Cause.AGE);
    assertThat(old.sentence(days(31), ZONE))
        .isEqualTo("Proof of 26 Nov 2026 expired: it is too old.");
    assertThat(register.standing(1, START.minusSeconds(1)).ended().orElseThrow().cause())
        .isEqualTo(Cause.CLOCK);
    List<SlotEvent> week = new ArrayList<>(register.history());
    week.add(new SlotEvent.RulesSet(days(1), Role.TEACHER, new Rules(7, false)));
    assertThat(SlotRegister.of(DIGITS, week).standing(1, days(8)).kind())
        .isEqualTo(Standing.Kind.EXPIRED);
  }

  @Test
  void aKeypadDescribedAnewNeedsANewProof() {
    List<SlotEvent> events = List.of(right(DIGITS, 1, BURNOUT, START));
    Keypad other = TestKeypads.knob();
    assertThat(SlotRegister.of(other, events).standing(1, START).ended().orElseThrow().cause())
        .isEqualTo(Cause.DESCRIBED_ANEW);
  }

  @Test
  void keyingOtherValuesMakesItNeverProvenAndTheSameOnesExpired() {
    List<SlotEvent> events = new ArrayList<>();
    events.add(right(DIGITS, 1, BURNOUT, START));
    events.add(new SlotEvent.Keyed(days(1), Role.STUDENT, 1, CLASS));
    assertThat(SlotRegister.of(DIGITS, events).standing(1, days(2))).isEqualTo(Standing.NEVER);
    assertThat(SlotRegister.of(DIGITS, events).held(1)).contains(CLASS);
    events.set(1, new SlotEvent.Keyed(days(1), Role.STUDENT, 1, BURNOUT));
    Standing again = SlotRegister.of(DIGITS, events).standing(1, days(2));
    assertThat(again.ended().orElseThrow().cause()).isEqualTo(Cause.KEYED);
    assertThat(again.sentence(days(2), ZONE))
        .isEqualTo("Proof of 26 Nov 2026 expired: it was keyed again, told 27 Nov 2026.");
  }

  @Test
  void onlyAProgramThatWaitsLosesItsProofByBeingRun() {
    Schedule waits = BURNOUT.withStartDelay(Duration.ofHours(6));
    SlotEvent ran = new SlotEvent.Ran(days(1), Role.MAKER, 1);
    assertThat(
            SlotRegister.of(DIGITS, List.of(right(DIGITS, 1, BURNOUT, START), ran))
                .standing(1, days(2))
                .kind())
        .isEqualTo(Standing.Kind.GOOD);
    assertThat(
            SlotRegister.of(DIGITS, List.of(right(DIGITS, 1, waits, START), ran))
                .standing(1, days(2))
                .ended()
                .orElseThrow()
                .cause())
        .isEqualTo(Cause.RAN);
  }

  @Test
  void aPowerCutSparesOnlyAKeypadThatSomebodyTried() {
    SlotEvent cut = new SlotEvent.PowerCut(days(2), Role.MAKER);
    SlotEvent proof = right(DIGITS, 1, BURNOUT, START);
    SlotEvent tried = new SlotEvent.RulesSet(days(1), Role.TECHNICIAN, new Rules(30, true));
    assertThat(SlotRegister.of(DIGITS, List.of(proof, cut)).held(1)).isEmpty();
    assertThat(SlotRegister.of(DIGITS, List.of(proof, tried, cut)).standing(1, days(3)).kind())
        .isEqualTo(Standing.Kind.GOOD);
    // What was told before the rule stays as it was.
    assertThat(SlotRegister.of(DIGITS, List.of(proof, cut, tried)).standing(1, days(3)).kind())
        .isEqualTo(Standing.Kind.EXPIRED);
  }

  @Test
  void whatIsInASlotIsToldBeforeItIsOverwritten() {
    FittedProgram plan = KeypadFit.fit(CLASS, DIGITS);
    assertThat(warnings(List.of(), plan))
        .extracting(SlotWarning::level)
        .containsExactly(SlotWarning.Level.WARN);
    assertThat(warnings(List.of(), plan).get(0).message()).contains("slot 1 holds is not known");

    SlotEvent keyed = new SlotEvent.Keyed(START, Role.MAKER, 1, BURNOUT);
    SlotWarning unproven = warnings(List.of(keyed), plan).get(0);
    assertThat(unproven.level()).isEqualTo(SlotWarning.Level.WARN);
    assertThat(unproven.message())
        .isEqualTo(
            "Slot 1 holds “Burnout” since 26 Nov 2026, and keying “Class burnout” overwrites it."
                + " Never proven. The register keeps its values.");
    assertThat(warnings(List.of(right(DIGITS, 1, BURNOUT, START)), plan).get(0).level())
        .isEqualTo(SlotWarning.Level.NOTE);

    SlotEvent need =
        new SlotEvent.Protected(
            START, Role.TEACHER, 1, "Thursday class", Optional.of(LocalDate.of(2026, 12, 3)));
    SlotWarning stop = warnings(List.of(keyed, need), plan).get(0);
    assertThat(stop.level()).isEqualTo(SlotWarning.Level.STOP);
    assertThat(stop.message()).contains("needed until 3 Dec 2026 (Thursday class)");
    assertThat(
            SlotRegister.of(DIGITS, List.of(keyed, need))
                .beforeKeying(1, plan, plan.requested().name(), days(8), ZONE))
        .noneMatch(w -> w.level() == SlotWarning.Level.STOP);
    assertThat(
            warnings(List.of(keyed, need, new SlotEvent.Released(days(1), Role.TEACHER, 1)), plan))
        .noneMatch(w -> w.level() == SlotWarning.Level.STOP);

    // An unknown program can be needed too.
    assertThat(warnings(List.of(need), plan).get(0).level()).isEqualTo(SlotWarning.Level.STOP);

    // The plan itself is there, or elsewhere.
    assertThat(warnings(List.of(right(DIGITS, 1, CLASS, START), need), plan).get(0).message())
        .contains("already holds this program")
        .endsWith("Nothing needs keying.");
    assertThat(warnings(List.of(keyed, right(DIGITS, 5, CLASS, START)), plan))
        .last()
        .extracting(SlotWarning::message)
        .asString()
        .startsWith("Slot 5 already holds this program, proven");
    assertThat(
            warnings(List.of(keyed, new SlotEvent.Edited(days(0), Role.OTHER, 1)), plan)
                .get(0)
                .message())
        .contains("it was edited at the keypad");
  }

  private static List<SlotWarning> warnings(List<SlotEvent> events, FittedProgram plan) {
    return SlotRegister.of(DIGITS, events)
        .beforeKeying(1, plan, plan.requested().name(), days(1), ZONE);
  }

  @Test
  void aNeedEndsWithItsProgramAndAReadingWithoutAPlanProvesNothing() {
    SlotEvent keyed = new SlotEvent.Keyed(START, Role.MAKER, 1, BURNOUT);
    SlotEvent need = new SlotEvent.Protected(START, Role.TEACHER, 1, "class", Optional.empty());
    SlotEvent other = new SlotEvent.Keyed(days(1), Role.STUDENT, 1, CLASS);
    SlotState state = SlotRegister.of(DIGITS, List.of(keyed, need, other)).slot(1);
    assertThat(state.need()).isEmpty();
    assertThat(state.history()).containsExactly(keyed, need, other);

    SlotEvent learned = new SlotEvent.Learned(START, Role.MAKER, 2, CLASS, List.of());
    SlotRegister register = SlotRegister.of(DIGITS, List.of(learned));
    assertThat(register.slot(2).contents().known()).isEqualTo(Holding.Known.LEARNED);
    assertThat(register.held(2)).contains(CLASS);
    assertThat(register.standing(2, START)).isEqualTo(Standing.NEVER);
    // What its review does not show may be anything: no start for keying less.
    SlotEvent half = new SlotEvent.Learned(START, Role.MAKER, 2, CLASS, List.of("The delay."));
    assertThat(SlotRegister.of(DIGITS, List.of(half)).held(2)).isEmpty();
    assertThat(SlotRegister.of(DIGITS, List.of(half)).slot(2).contents().program()).contains(CLASS);
    // A delay that was not shown says nothing against the one that is known.
    Schedule waits = CLASS.withStartDelay(Duration.ofHours(3));
    SlotEvent keyedFirst = new SlotEvent.Keyed(START, Role.MAKER, 2, waits);
    assertThat(SlotRegister.of(DIGITS, List.of(keyedFirst, half)).held(2)).contains(waits);
  }

  /** What must end a proof; the rule is written here a second time, from the list. */
  private static boolean ends(SlotEvent event, int slot, boolean waits, boolean keeps) {
    if (event instanceof SlotEvent.PowerCut) {
      return !keeps;
    }
    if (event instanceof SlotEvent.UnitSwitched
        || event instanceof SlotEvent.FiredByOther
        || event instanceof SlotEvent.Reset) {
      return true;
    }
    if (!(event instanceof SlotEvent.OfSlot of) || of.slot() != slot) {
      return false;
    }
    if (event instanceof SlotEvent.ReadBack read) {
      return read.evidence().report().outcome() == ReadbackReport.Outcome.NOT_PROVEN
          && read.evidence().ofItsSlot();
    }
    return event instanceof SlotEvent.Keyed
        || event instanceof SlotEvent.Edited
        || event instanceof SlotEvent.Ran && waits;
  }

  @Test
  @Tag("property")
  void anyListedEventEndsAProofAndNothingButAReadBackMakesOne() {
    Random random = new Random(20261126);
    int good = 0;
    int expired = 0;
    int never = 0;
    for (int run = 0; run < 6_000; run++) {
      Keypad keypad = KEYPADS.get(random.nextInt(KEYPADS.size()));
      List<SlotEvent> events = new ArrayList<>();
      int count = random.nextInt(9);
      for (int i = 0; i < count; i++) {
        events.add(event(random, keypad, START.plus(Duration.ofHours(i))));
      }
      Instant now = START.plus(Duration.ofDays(random.nextInt(40)).plusHours(10));
      SlotRegister register = SlotRegister.of(keypad, events);
      for (int slot = 1; slot <= 2; slot++) {
        // By hand: the last right read-back, and nothing on the list after it.
        int proofAt = -1;
        boolean keeps = false;
        boolean over = false;
        int goodForDays = 30;
        boolean waits = false;
        for (int i = 0; i < events.size(); i++) {
          SlotEvent event = events.get(i);
          if (event instanceof SlotEvent.RulesSet set) {
            keeps = set.rules().keepsPrograms();
            goodForDays = set.rules().goodForDays();
          } else if (event instanceof SlotEvent.ReadBack read
              && read.slot() == slot
              && read.evidence().ofItsSlot()
              && read.evidence().report().outcome() == Outcome.PROVEN) {
            proofAt = i;
            over = false;
            waits = !read.evidence().planned().startDelay().isZero();
          } else if (ends(event, slot, waits, keeps)) {
            over = true;
          } else if (event instanceof SlotEvent.Learned learned
              && learned.slot() == slot
              && !learned.program().withName("a").equals(planOf(events, proofAt))) {
            over = true;
          }
        }
        Standing standing = register.standing(slot, now);
        boolean mustBeGood =
            proofAt >= 0
                && !over
                && !now.isAfter(events.get(proofAt).at().plus(Duration.ofDays(goodForDays)));
        assertThat(standing.kind() == Standing.Kind.GOOD)
            .as("run %d, slot %d: %s", run, slot, events)
            .isEqualTo(mustBeGood);
        if (proofAt < 0) {
          assertThat(standing).as("run %d, slot %d", run, slot).isEqualTo(Standing.NEVER);
        }
        good += standing.kind() == Standing.Kind.GOOD ? 1 : 0;
        expired += standing.kind() == Standing.Kind.EXPIRED ? 1 : 0;
        never += standing.kind() == Standing.Kind.NEVER ? 1 : 0;
      }
    }
    assertThat(good).isGreaterThan(300);
    assertThat(expired).isGreaterThan(300);
    assertThat(never).isGreaterThan(300);
  }

  private static Schedule planOf(List<SlotEvent> events, int proofAt) {
    return proofAt < 0
        ? schedule("a", 1, 2)
        : ((SlotEvent.ReadBack) events.get(proofAt)).evidence().planned().withName("a");
  }

  private static SlotEvent event(Random random, Keypad keypad, Instant at) {
    int slot = 1 + random.nextInt(2);
    Role by = Role.values()[random.nextInt(Role.values().length)];
    Schedule plan = random.nextBoolean() ? BURNOUT : CLASS;
    if (random.nextInt(4) == 0) {
      plan = plan.withStartDelay(Duration.ofHours(3));
    }
    return switch (random.nextInt(18)) {
      case 0, 1, 2, 3, 4, 5 -> right(keypad, slot, plan, at);
      case 6 -> wrong(keypad, slot, plan, at);
      case 7 ->
          new SlotEvent.ReadBack(
              at, by, evidence(keypad, slot, 3 - slot, plan, plan)); // other slot
      case 8 -> new SlotEvent.Keyed(at, by, slot, plan);
      case 9 -> new SlotEvent.Learned(at, by, slot, plan, List.of());
      case 10 -> new SlotEvent.Edited(at, by, slot);
      case 11 -> new SlotEvent.Ran(at, by, slot);
      case 12 -> new SlotEvent.Protected(at, by, slot, "class", Optional.empty());
      case 13 -> new SlotEvent.UnitSwitched(at, by);
      case 14 -> new SlotEvent.PowerCut(at, by);
      case 15 -> new SlotEvent.FiredByOther(at, by);
      case 16 -> new SlotEvent.Reset(at, by);
      default ->
          new SlotEvent.RulesSet(at, by, new Rules(5 + random.nextInt(30), random.nextBoolean()));
    };
  }
}
