package org.heatwright.work.causes;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.Found;
import org.heatwright.work.causes.Cause.Indication;
import org.heatwright.work.causes.Ranking.Ranked;
import org.heatwright.work.causes.Ranking.Standing;
import org.junit.jupiter.api.Test;

/** What the book holds, and what ranking by evidence must always keep to. */
class CauseBookTest {

  private static final long SEED = 20261126;

  private record Fault(String kind, String code, List<Suspect> suspects) {}

  private static List<Fault> faults() {
    return CauseBook.kinds().stream()
        .flatMap(
            kind ->
                CauseBook.faults(kind).stream()
                    .map(
                        found ->
                            new Fault(kind, found.code(), CauseBook.suspects(kind, found.code()))))
        .toList();
  }

  @Test
  void everyFaultOfEveryKindHasTwoCausesAndEachATestAndASource() {
    assertThat(CauseBook.kinds()).hasSize(7);
    for (Fault fault : faults()) {
      assertThat(fault.suspects()).as("%s, %s", fault.kind(), fault.code()).hasSizeGreaterThan(1);
      assertThat(fault.suspects().stream().map(s -> s.cause().code()))
          .as("%s, %s", fault.kind(), fault.code())
          .doesNotHaveDuplicates();
      for (Suspect suspect : fault.suspects()) {
        Cause cause = suspect.cause();
        assertThat(cause.trials()).as(cause.code()).isNotEmpty();
        assertThat(cause.indications()).as(cause.code()).isNotEmpty();
        assertThat(cause.words()).endsWith(".");
        assertThat(cause.change().words()).endsWith(".");
        assertThat(cause.origin().words()).isNotBlank();
      }
    }
  }

  /** Whatever a firing can be found to be after it, as the card prints it, is known here. */
  @Test
  void theFaultsAreThoseOfTheCardAndGoodIsNone() {
    for (String kind : List.of("burnout", "enamel", "sinter", "heat-treat", "glass", "any")) {
      assertThat(CauseBook.suspects(kind, "good")).isEmpty();
      assertThat(CauseBook.suspects(kind, "no-such-code")).isEmpty();
      assertThat(CauseBook.faults(kind)).hasSize(Found.after(kind).size() - 1);
    }
  }

  @Test
  void oneCodeMeansOneCauseWithinAKind() {
    for (String kind : CauseBook.kinds()) {
      Map<String, Cause> known = new HashMap<>();
      for (Fault fault : faults()) {
        if (fault.kind().equals(kind)) {
          for (Suspect suspect : fault.suspects()) {
            Cause before = known.putIfAbsent(suspect.cause().code(), suspect.cause());
            assertThat(before == null || before == suspect.cause())
                .as("%s: %s", kind, suspect.cause().code())
                .isTrue();
          }
        }
      }
    }
  }

  @Test
  void whatCanHurtIsSaidWithItsCause() {
    Ranking hot =
        CauseBook.rank(
            "glass",
            "over-fired",
            Facts.none()
                .with(Clue.PEAK_ABOVE, true, "918 °C, planned 800 °C.")
                .with(Clue.KEYED_HOTTER, false, "As planned.")
                .with(Clue.UNIT_HOT, false, "No."));
    Cause relay =
        hot.causes().stream()
            .map(Ranked::cause)
            .filter(c -> c.code().equals("relay-stuck"))
            .findFirst()
            .orElseThrow();
    assertThat(relay.caution().orElseThrow()).contains("switch off at the wall", "licensed");
    assertThat(relay.change().edit()).isEmpty();
    for (Fault fault : faults()) {
      for (Suspect suspect : fault.suspects()) {
        boolean craftsman =
            suspect.cause().trials().stream().anyMatch(t -> t.effort() == Trial.Effort.CRAFTSMAN);
        assertThat(!craftsman || suspect.cause().caution().isPresent())
            .as(suspect.cause().code())
            .isTrue();
      }
    }
  }

  @Test
  void theOrderOfListingDoesNotMatter() {
    Random shuffle = new Random(SEED);
    SplittableRandom random = new SplittableRandom(SEED);
    for (Fault fault : faults()) {
      for (int i = 0; i < 5; i++) {
        Facts facts = facts(random, fault.suspects());
        List<Suspect> mixed = new ArrayList<>(fault.suspects());
        Collections.shuffle(mixed, shuffle);
        assertThat(Ranking.of(mixed, facts)).isEqualTo(Ranking.of(fault.suspects(), facts));
      }
    }
  }

  /**
   * More evidence for a cause never lowers its weight or its standing in words, and never lets a
   * cause pass it for which that evidence says less.
   */
  @Test
  void evidenceForACauseNeverLowersIt() {
    SplittableRandom random = new SplittableRandom(SEED + 1);
    int tried = 0;
    for (Fault fault : Stream.concat(faults().stream(), faults().stream()).toList()) {
      for (Suspect suspect : fault.suspects()) {
        for (Indication indication : suspect.cause().indications()) {
          Facts before = facts(random, fault.suspects());
          if (before.of(indication.clue()).isPresent() || indication.seenFactor() <= 0) {
            continue;
          }
          Ranking then = Ranking.of(fault.suspects(), before);
          Ranking now = Ranking.of(fault.suspects(), before.told(indication.clue(), true));
          if (at(then, suspect) < 0) {
            assertThat(at(now, suspect)).isNegative(); // what was contradicted stays so
            continue;
          }
          tried++;
          Ranked was = then.causes().get(at(then, suspect));
          Ranked is = now.causes().get(at(now, suspect));
          assertThat(is.logOddsFactor()).isGreaterThan(was.logOddsFactor());
          for (int i = 0; i < at(now, suspect); i++) {
            Cause above = now.causes().get(i).cause();
            boolean wasAbove = at(then, above) < at(then, suspect) && at(then, above) >= 0;
            assertThat(wasAbove || says(above, indication.clue()) > indication.seenFactor())
                .as("%s passed %s", above.code(), suspect.cause().code())
                .isTrue();
          }
          boolean alone =
              fault.suspects().stream()
                  .allMatch(s -> s == suspect || says(s.cause(), indication.clue()) <= 0);
          if (alone) {
            assertThat(is.standing()).isLessThanOrEqualTo(was.standing());
          }
        }
      }
    }
    assertThat(tried).isGreaterThan(500);
  }

  private static double says(Cause cause, Clue clue) {
    return cause.indications().stream()
        .filter(i -> i.clue() == clue)
        .mapToDouble(Indication::seenFactor)
        .findFirst()
        .orElse(0);
  }

  private static int at(Ranking ranking, Suspect suspect) {
    return at(ranking, suspect.cause());
  }

  private static int at(Ranking ranking, Cause cause) {
    return ranking.causes().stream().map(Ranked::cause).toList().indexOf(cause);
  }

  @Test
  void nothingIsLostAndNothingIsBothRankedAndDismissed() {
    SplittableRandom random = new SplittableRandom(SEED + 2);
    for (Fault fault : faults()) {
      Facts facts = facts(random, fault.suspects());
      Ranking ranking = Ranking.of(fault.suspects(), facts);
      List<String> all =
          Stream.concat(
                  ranking.causes().stream().map(r -> r.cause().code()),
                  ranking.dismissed().stream().map(d -> d.cause().code()))
              .toList();
      assertThat(all)
          .containsExactlyInAnyOrderElementsOf(
              fault.suspects().stream().map(s -> s.cause().code()).toList());
      assertThat(ranking.questions()).noneMatch(clue -> facts.of(clue).isPresent());
      assertThat(ranking.causes())
          .isSortedAccordingTo((a, b) -> Double.compare(b.logOddsFactor(), a.logOddsFactor()));
    }
  }

  /** A question is asked only where one of its answers would change the first three. */
  @Test
  void whatIsAskedWouldChangeTheOrder() {
    for (Fault fault : faults()) {
      Ranking ranking = Ranking.of(fault.suspects(), Facts.none());
      for (Clue clue : ranking.questions()) {
        List<String> now = first(ranking);
        boolean changes =
            !first(Ranking.of(fault.suspects(), Facts.none().told(clue, true))).equals(now)
                || !first(Ranking.of(fault.suspects(), Facts.none().told(clue, false))).equals(now);
        assertThat(changes).as("%s, %s: %s", fault.kind(), fault.code(), clue).isTrue();
      }
    }
  }

  private static List<String> first(Ranking ranking) {
    return ranking.causes().stream().limit(3).map(r -> r.cause().code()).toList();
  }

  @Test
  void withNothingKnownNothingIsCalledLikely() {
    for (Fault fault : faults()) {
      assertThat(Ranking.of(fault.suspects(), Facts.none()).causes())
          .noneMatch(r -> r.standing() == Standing.LIKELY);
    }
  }

  @Test
  void aClueKeepsItsCodeAndHasItsWords() {
    for (Clue clue : Clue.values()) {
      assertThat(Clue.ofCode(clue.code())).contains(clue);
      assertThat(clue.question()).contains("?");
      assertThat(clue.words(true)).isNotEqualTo(clue.words(false));
    }
    assertThat(Clue.ofCode("no-such-clue")).isEmpty();
    assertThat(
            faults().stream()
                .flatMap(f -> f.suspects().stream())
                .flatMap(s -> s.cause().indications().stream())
                .map(Indication::clue)
                .distinct())
        .as("clues that no cause asks about")
        .hasSizeGreaterThan(Clue.values().length - 3);
  }

  private static Facts facts(SplittableRandom random, List<Suspect> suspects) {
    Facts facts = Facts.none();
    for (Suspect suspect : suspects) {
      for (Indication indication : suspect.cause().indications()) {
        int what = random.nextInt(6);
        if (what < 2) {
          facts = facts.told(indication.clue(), what == 0);
        }
      }
    }
    return facts;
  }

  // ---- the one change

  private static final Schedule BURNOUT =
      Schedule.of(
          "burnout",
          TemperatureUnit.CELSIUS,
          List.of(segment(100, 150, 120), segment(150, 732, 180), segment(200, 500, 60)));

  private static Segment segment(double rate, double target, int holdMinutes) {
    return new Segment(
        Ramp.at(HeatingRate.ofKelvinsPerHour(rate)),
        Temperature.ofCelsius(target),
        java.time.Duration.ofMinutes(holdMinutes));
  }

  @Test
  void aChangeTouchesNothingButWhatItSays() {
    assertThat(edited(Edit.times(Edit.What.TOP_HOLD, 1.25)))
        .containsExactly(segment(100, 150, 120), segment(150, 732, 225), segment(200, 500, 60));
    assertThat(edited(Edit.target(Edit.What.TOP_TARGET, -20)))
        .containsExactly(segment(100, 150, 120), segment(150, 710, 180), segment(200, 500, 60));
    assertThat(edited(Edit.target(Edit.What.LAST_TARGET, 25)))
        .containsExactly(segment(100, 150, 120), segment(150, 732, 180), segment(200, 525, 60));
    assertThat(edited(Edit.times(Edit.What.LAST_HOLD, 1.5)))
        .containsExactly(segment(100, 150, 120), segment(150, 732, 180), segment(200, 500, 90));
    assertThat(edited(Edit.times(Edit.What.RISES, 0.66)))
        .containsExactly(segment(66, 150, 120), segment(99, 732, 180), segment(200, 500, 60));
    assertThat(edited(Edit.times(Edit.What.FIRST_RISE, 0.5)))
        .containsExactly(segment(50, 150, 120), segment(150, 732, 180), segment(200, 500, 60));
    assertThat(edited(Edit.times(Edit.What.FALLS, 0.5)))
        .containsExactly(segment(100, 150, 120), segment(150, 732, 180), segment(100, 500, 60));
    assertThat(edited(Edit.times(Edit.What.HOLD_AFTER_TOP, 1.5)))
        .containsExactly(segment(100, 150, 120), segment(150, 732, 180), segment(200, 500, 90));
  }

  /** Binder burns at its own hold; a firing that only sinters has none, and stays as it is. */
  @Test
  void moreTimeForTheBinderIsNotMoreTimeForTheMetal() {
    Edit edit = Edit.times(Edit.What.BINDER_HOLD, 1.25);
    Segment binder = segment(270, 290, 15);
    Segment sinter = segment(500, 950, 210);
    assertThat(edit.apply(clay(binder, sinter)).orElseThrow().segments())
        .containsExactly(segment(270, 290, 20), sinter);
    assertThat(edit.apply(clay(segment(500, 540, 30))).orElseThrow().segments())
        .containsExactly(segment(500, 540, 40));
    assertThat(edit.apply(clay(sinter))).isEmpty();
    assertThat(edit.apply(clay(segment(100, 150, 30), sinter, segment(200, 500, 60)))).isEmpty();
    assertThat(
            CauseBook.suspects("sinter", "blisters").stream()
                .map(Suspect::cause)
                .filter(cause -> cause.code().equals("binder-left"))
                .map(cause -> cause.change().edit())
                .toList())
        .containsExactly(Optional.of(edit));
  }

  private static Schedule clay(Segment... segments) {
    return Schedule.of("clay", TemperatureUnit.CELSIUS, List.of(segments));
  }

  private static List<Segment> edited(Edit edit) {
    return edit.apply(BURNOUT).orElseThrow().segments();
  }

  /** A hotter target rounds down, a slower rate too, a longer hold up; a fastest ramp stays. */
  @Test
  void aChangeRoundsTowardSafeInTheSchedulesUnit() {
    Schedule fahrenheit = BURNOUT.withUnit(TemperatureUnit.FAHRENHEIT);
    double top =
        TemperatureUnit.FAHRENHEIT.value(
            Edit.target(Edit.What.TOP_TARGET, 20).apply(fahrenheit).orElseThrow().peak());
    assertThat(top).isCloseTo(1385, org.assertj.core.data.Offset.offset(1e-9)); // 752 °C is 1385.6
    Schedule fastest =
        BURNOUT.withSegments(List.of(BURNOUT.segments().get(0).withRamp(Ramp.fastest())));
    assertThat(Edit.times(Edit.What.RISES, 0.5).apply(fastest)).isEmpty();
    assertThat(Edit.times(Edit.What.LAST_HOLD, 1.5).apply(fastest)).isEmpty();
    for (Fault fault : faults()) {
      for (Suspect suspect : fault.suspects()) {
        suspect
            .cause()
            .change()
            .edit()
            .flatMap(e -> e.apply(BURNOUT))
            .ifPresent(s -> assertThat(s.segments()).hasSize(3));
      }
    }
  }
}
