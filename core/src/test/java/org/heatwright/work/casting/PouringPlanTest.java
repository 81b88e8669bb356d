package org.heatwright.work.casting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.heatwright.inspect.TemperatureRange;
import org.heatwright.material.Origin;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Test;

class PouringPlanTest {

  private static PouringQuestion question(String alloy, PouringMethod method) {
    return PouringQuestion.of(CastingAlloys.find(alloy).orElseThrow(), method);
  }

  private static PouringPlan plan(PouringQuestion question) {
    return PouringPlan.of(question, TemperatureUnit.CELSIUS);
  }

  private static double mould(String alloy, PouringMethod method, SectionClass section) {
    return plan(question(alloy, method).withSection(section))
        .mould()
        .orElseThrow()
        .value()
        .celsius();
  }

  /**
   * Bench forums (read): thin sterling 475 to 500 °C by one, 565 to 620 °C by another. Both are
   * rows, and the disagreement is told.
   */
  @Test
  void disagreeingSourcesAreRowsOfTheirOwn() {
    PouringPlan plan =
        plan(question("sterling", PouringMethod.VACUUM).withSection(SectionClass.LIGHT));
    Proposal mould = plan.mould().orElseThrow();
    assertThat(mould.rows())
        .filteredOn(TemperatureRow::counts)
        .extracting(TemperatureRow::range)
        .containsExactlyInAnyOrder(
            TemperatureRange.ofCelsius(475, 500), TemperatureRange.ofCelsius(565, 620));
    assertThat(mould.range()).isEqualTo(TemperatureRange.ofCelsius(475, 620));
    assertThat(mould.value().celsius()).isEqualTo(540); // middles 487.5 and 592.5
    assertThat(plan.remarks()).extracting(Remark::code).contains("sources-disagree");
    assertThat(mould.rows()).extracting(r -> r.origin().text()).doesNotHaveDuplicates();
  }

  @Test
  void everyProposalLiesInItsRange() {
    for (CastingAlloy alloy : CastingAlloys.all()) {
      for (PouringMethod method : PouringMethod.values()) {
        for (SectionClass section : SectionClass.values()) {
          PouringPlan plan = plan(PouringQuestion.of(alloy, method).withSection(section));
          plan.mould().ifPresent(m -> inside(alloy, m));
          plan.metal().ifPresent(m -> inside(alloy, m));
          plan.superheatKelvins()
              .ifPresent(s -> assertThat(s.usual()).as(alloy.name()).isPositive());
        }
      }
    }
  }

  private static void inside(CastingAlloy alloy, Proposal proposal) {
    // Rounded to tens: half of that beyond, at most.
    assertThat(proposal.value().celsius())
        .as(alloy.name())
        .isBetween(proposal.range().from().celsius() - 5, proposal.range().to().celsius() + 5);
  }

  @Test
  void thinnerWorkTakesAHotterMould() {
    for (String alloy : new String[] {"sterling", "14k", "18k white gold", "bronze", "brass"}) {
      for (PouringMethod method : PouringMethod.values()) {
        double heavy = mould(alloy, method, SectionClass.HEAVY);
        double medium = mould(alloy, method, SectionClass.MEDIUM);
        double light = mould(alloy, method, SectionClass.LIGHT);
        double filigree = mould(alloy, method, SectionClass.FILIGREE);
        assertThat(heavy).as(alloy).isLessThanOrEqualTo(medium);
        assertThat(medium).as(alloy).isLessThanOrEqualTo(light);
        assertThat(light).as(alloy).isLessThanOrEqualTo(filigree);
      }
    }
  }

  /** A supplier's article on karat gold (read): centrifugal low, white gold at the high end. */
  @Test
  void centrifugalIsCoolerAndWhiteGoldHotter() {
    assertThat(mould("14k", PouringMethod.CENTRIFUGAL, SectionClass.LIGHT))
        .isLessThan(mould("14k", PouringMethod.VACUUM, SectionClass.LIGHT));
    assertThat(mould("14k white gold", PouringMethod.VACUUM, SectionClass.LIGHT))
        .isGreaterThan(mould("14k", PouringMethod.VACUUM, SectionClass.LIGHT));
  }

  /**
   * The same article: vacuum 56 to 111 K, centrifugal 28 to 69 K over melting; a bench table (read)
   * melts 14 karat yellow at 879 °C.
   */
  @Test
  void superheatFollowsTheMethod() {
    Proposal vacuum = plan(question("14k", PouringMethod.VACUUM)).metal().orElseThrow();
    assertThat(vacuum.range()).isEqualTo(TemperatureRange.ofCelsius(879 + 50, 879 + 111));
    Proposal centrifugal = plan(question("14k", PouringMethod.CENTRIFUGAL)).metal().orElseThrow();
    assertThat(centrifugal.range()).isEqualTo(TemperatureRange.ofCelsius(879 + 28, 879 + 100));
    assertThat(centrifugal.value()).isLessThan(vacuum.value());
    Spread superheat = plan(question("14k", PouringMethod.VACUUM)).superheatKelvins().orElseThrow();
    assertThat(superheat.low()).isCloseTo(50, within(1e-9));
    assertThat(superheat.usual()).isCloseTo(vacuum.value().celsius() - 879, within(1e-9));
  }

  @Test
  void theStudiosOwnValueGoesFirstAndIsToldWhereItLies() {
    PouringQuestion own =
        question("sterling", PouringMethod.VACUUM)
            .withSection(SectionClass.HEAVY)
            .withOwn(Optional.of(Temperature.ofCelsius(640)), Optional.empty());
    Proposal mould = plan(own).mould().orElseThrow();
    assertThat(mould.value().celsius()).isEqualTo(640);
    assertThat(mould.own()).isTrue();
    assertThat(mould.rows().get(0).origin().kind()).isEqualTo(Origin.Kind.OWN);
    assertThat(mould.rows().size()).isGreaterThan(3);
    assertThat(plan(own).remarks()).extracting(Remark::code).contains("own-outside");
  }

  @Test
  void metalThatIsNotLiquidIsTold() {
    PouringQuestion cold =
        question("sterling", PouringMethod.VACUUM)
            .withOwn(Optional.empty(), Optional.of(Temperature.ofCelsius(880)));
    assertThat(plan(cold).remarks()).extracting(Remark::code).contains("not-liquid");
  }

  @Test
  void withoutASourceNothingIsProposed() {
    PouringPlan nineKarat = plan(question("9k", PouringMethod.VACUUM));
    assertThat(nineKarat.metal()).isEmpty();
    assertThat(nineKarat.superheatKelvins()).isEmpty();
    assertThat(nineKarat.remarks()).extracting(Remark::code).contains("no-source");
    assertThat(
            plan(question("9k", PouringMethod.VACUUM).withLiquidus(Temperature.ofCelsius(900)))
                .metal())
        .isPresent();
  }

  @Test
  void theContradictionAndTheDangersAreTold() {
    PouringPlan plan = plan(question("sterling", PouringMethod.VACUUM));
    assertThat(plan.remarks()).extracting(Remark::code).contains("hotter-may-fill-less");
    assertThat(plan.cautions())
        .extracting(Remark::code)
        .contains("silica-dust", "steam-and-metal", "quench-splash", "fume");
    assertThat(plan(question("bronze", PouringMethod.VACUUM)).remarks())
        .extracting(Remark::code)
        .contains("hot-for-gypsum");
    assertThat(plan(question("copper", PouringMethod.VACUUM)).mould()).isEmpty();
    assertThat(plan(question("tin", PouringMethod.VACUUM)).mould()).isEmpty();
  }

  @Test
  void platinumInGypsumIsRefused() {
    CastingAlloy platinum = CastingAlloys.find("platinum").orElseThrow();
    assertThat(plan(PouringQuestion.of(platinum, PouringMethod.CENTRIFUGAL)).mould()).isPresent();
    assertThatThrownBy(
            () ->
                new PouringQuestion(
                    "platinum",
                    AlloyFamily.PLATINUM,
                    platinum.meltings(),
                    Optional.empty(),
                    PouringMethod.CENTRIFUGAL,
                    org.heatwright.mould.Investment.Binder.GYPSUM,
                    Optional.empty(),
                    Optional.empty()))
        .hasMessageContaining("phosphate-bonded");
  }

  @Test
  void inFahrenheitTheValueIsRoundThere() {
    double fahrenheit =
        PouringPlan.of(
                question("sterling", PouringMethod.VACUUM).withSection(SectionClass.LIGHT),
                TemperatureUnit.FAHRENHEIT)
            .mould()
            .orElseThrow()
            .value()
            .fahrenheit();
    assertThat(fahrenheit / 10).isCloseTo(Math.rint(fahrenheit / 10), within(1e-9));
  }

  @Test
  void everyClockHasItsSource() {
    assertThat(CastingClocks.all())
        .extracting(CastingClock::code)
        .doesNotHaveDuplicates()
        .contains(
            "working-time",
            "standing",
            "re-wet",
            "steam-dewax",
            "settle",
            "transfer",
            "quench",
            "breaking-out");
    assertThat(CastingClocks.all()).allMatch(c -> !c.origin().words().isBlank());
  }
}
