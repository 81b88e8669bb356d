package org.heatwright.work;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.heatwright.inspect.Finding;
import org.heatwright.inspect.Inspection;
import org.heatwright.inspect.Inspector;
import org.heatwright.inspect.Severity;
import org.heatwright.kiln.Kiln;
import org.heatwright.mould.BurnoutMeasures;
import org.heatwright.mould.Mould;
import org.heatwright.schedule.Segment;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * What must hold for any work, tried on 10,000 of each with the holds of practice, which are the
 * least, and on some with what cores need besides, which takes longer to find.
 */
@Tag("property")
class ComposerPropertyTest {

  private static final int WORKS = 10_000;
  private static final int SOLVED_WORKS = 60;
  private static final long SEED = 20261203;

  /** Practice's holds, whatever the core says. */
  private static final class RuleHolds extends CoreHolds {
    RuleHolds(BurnoutWork work) {
      super(work);
    }

    @Override
    DryHold drying(Leg dry, boolean fixed, Leg next) {
      return new DryHold(dry.hold(), 0.5, Optional.empty());
    }

    @Override
    Duration top(List<Leg> before, Leg top) {
      return top.hold();
    }

    @Override
    Duration soak(Temperature top, Leg pour) {
      return pour.hold();
    }

    @Override
    BurnoutMeasures fastest(Mould mould) {
      return new BurnoutMeasures(0, 0, 0, 1, 0, 0, 0, 0, 0, 1, 1, 1, 0);
    }
  }

  @Test
  void noScheduleGoesBeyondALimitAndItsOwnInspectionFindsNothingGrave() {
    RandomWork random = new RandomWork(new SplittableRandom(SEED));
    int composed = 0;
    for (int i = 0; i < WORKS; i++) {
      Work work = random.work();
      Kiln kiln = random.kiln();
      Optional<Composition> composition = compose(work, kiln);
      if (composition.isEmpty()) {
        continue;
      }
      composed++;
      Temperature peak = composition.get().schedule().peak();
      assertThat(peak).as("%s in %s", work, kiln).isLessThanOrEqualTo(kiln.limit());
      assertThat(peak)
          .as("%s", work)
          .isLessThanOrEqualTo(composition.get().demands().firmCeiling().orElseThrow().limit());
      sheet(work).max().ifPresent(max -> assertThat(peak).isLessThanOrEqualTo(max));
      if (work instanceof EnamelWork enamel) {
        enamelKeepsItsLimits(enamel, composition.get());
      }
      if (work instanceof BurnoutWork burnout) {
        assertThat(peak)
            .isLessThanOrEqualTo(
                Temperature.ofCelsius(burnout.investment().isPhosphateBonded() ? 1030 : 788));
      }
      assertThat(grave(composition.get(), kiln))
          .as("%s: %s", work, composition.get().schedule())
          .isEmpty();
    }
    // The generator must not hide behind refusals.
    assertThat(composed).isGreaterThan(WORKS / 2);
  }

  /**
   * The same work with all its moulds thicker: every hold of the same purpose is at least as long.
   */
  @Test
  void aLargerDiameterNeverShortensAHold() {
    RandomWork random = new RandomWork(new SplittableRandom(SEED + 2));
    int compared = 0;
    for (int i = 0; i < WORKS; i++) {
      BurnoutWork work = random.burnout();
      Kiln kiln = random.kiln();
      double growth = random.between(1, 1.8);
      Optional<Composition> small = compose(work, kiln);
      Optional<Composition> large = compose(grown(work, growth), kiln);
      if (small.isEmpty() || large.isEmpty()) {
        continue;
      }
      compared++;
      for (Reason reason : small.get().reasons()) {
        if (reason.part() == Reason.Part.HOLD) {
          Segment before = small.get().schedule().segments().get(reason.segment() - 1);
          assertThat(hold(large.get(), reason.purpose()))
              .as("%s of %s, grown %s times", reason.purpose(), work, growth)
              .isGreaterThanOrEqualTo(before.hold().toMinutes());
        }
      }
    }
    assertThat(compared).isGreaterThan(WORKS / 4);
  }

  /** No hold is shorter than practice's, and nothing else changes. */
  @Test
  void coresOnlyLengthenHolds() {
    RandomWork random = new RandomWork(new SplittableRandom(SEED + 3));
    int longer = 0;
    for (int i = 0; i < SOLVED_WORKS; i++) {
      BurnoutWork work = random.burnout();
      Kiln kiln = random.kiln();
      Optional<Composition> byRule = compose(work, kiln);
      if (byRule.isEmpty()) {
        continue;
      }
      Composition byCore = Composer.compose(work, kiln, Optional.empty());
      List<Segment> rule = byRule.get().schedule().segments();
      List<Segment> core = byCore.schedule().segments();
      assertThat(core).hasSameSizeAs(rule);
      for (int s = 0; s < core.size(); s++) {
        assertThat(core.get(s).ramp()).isEqualTo(rule.get(s).ramp());
        assertThat(core.get(s).target()).isEqualTo(rule.get(s).target());
        assertThat(core.get(s).hold()).as("%s", work).isGreaterThanOrEqualTo(rule.get(s).hold());
        longer += core.get(s).hold().compareTo(rule.get(s).hold()) > 0 ? 1 : 0;
      }
      assertThat(grave(byCore, kiln)).as("%s: %s", work, byCore.schedule()).isEmpty();
    }
    assertThat(longer).isPositive();
  }

  @Test
  void theSameWorkGivesTheSameComposition() {
    for (int i = 0; i < 200; i++) {
      Work once = new RandomWork(new SplittableRandom(SEED + i)).work();
      Work again = new RandomWork(new SplittableRandom(SEED + i)).work();
      assertThat(compose(once, Scenarios.capstan())).isEqualTo(compose(again, Scenarios.capstan()));
    }
  }

  /** Under the supplier's solidus, every coat no hotter than the session, the window in order. */
  private static void enamelKeepsItsLimits(EnamelWork work, Composition composition) {
    Temperature peak = composition.schedule().peak();
    work.build()
        .solidus()
        .ifPresent(solidus -> assertThat(peak).as("%s", work).isLessThanOrEqualTo(solidus));
    EnamelOutlook outlook = ((EnamelJudge) composition.judge()).known();
    EnamelCoats.of(work, outlook.working())
        .steps()
        .forEach(step -> assertThat(step.chamber()).isLessThanOrEqualTo(outlook.working()));
    assertThat(outlook.window().earliestSeconds())
        .isLessThanOrEqualTo(outlook.window().likelySeconds());
    assertThat(outlook.window().likelySeconds())
        .isLessThanOrEqualTo(outlook.window().latestSeconds());
    assertThat(outlook.hottestCelsius().high())
        .isLessThanOrEqualTo(outlook.working().celsius() + 1e-6);
  }

  private static Optional<Composition> compose(Work work, Kiln kiln) {
    try {
      return Optional.of(
          work instanceof BurnoutWork burnout
              ? BurnoutComposer.compose(
                  burnout, kiln, TemperatureUnit.CELSIUS, Optional.empty(), RuleHolds::new)
              : EnamelComposer.compose(
                  (EnamelWork) work,
                  kiln,
                  TemperatureUnit.CELSIUS,
                  Optional.empty(),
                  new EnamelDoor.Estimated()));
    } catch (WorkRefusedException refused) {
      assertThat(refused).message().endsWith(".").doesNotContain("\n");
      return Optional.empty();
    }
  }

  private static List<Finding> grave(Composition composition, Kiln kiln) {
    return Inspector.inspect(
            Inspection.of(composition.schedule()).in(kiln).forWork(composition.demands()))
        .stream()
        .filter(f -> f.severity() != Severity.NOTE)
        .toList();
  }

  private static DataSheet sheet(Work work) {
    return work instanceof BurnoutWork burnout
        ? burnout.dataSheet()
        : ((EnamelWork) work).dataSheet();
  }

  private static BurnoutWork grown(BurnoutWork work, double growth) {
    List<PatternedMould> moulds = new ArrayList<>();
    for (PatternedMould each : work.moulds()) {
      Mould mould = each.mould();
      moulds.add(
          new PatternedMould(
              new Mould(
                  mould.count(),
                  mould.diameterMetres() * growth,
                  mould.heightMetres(),
                  mould.wallMetres()),
              each.pattern(),
              each.patternKilograms()));
    }
    return new BurnoutWork(
        moulds, work.investment(), work.dataSheet(), work.metal(), work.readyBy());
  }

  private static long hold(Composition composition, String purpose) {
    return composition.reasons().stream()
        .filter(r -> r.part() == Reason.Part.HOLD && r.purpose().equals(purpose))
        .mapToLong(r -> composition.schedule().segments().get(r.segment() - 1).hold().toMinutes())
        .findFirst()
        .orElse(-1);
  }
}
