package org.heatwright.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.groups.Tuple.tuple;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.heatwright.inspect.Finding;
import org.heatwright.inspect.Inspection;
import org.heatwright.inspect.Inspector;
import org.heatwright.material.Origin;
import org.heatwright.mould.Investment;
import org.heatwright.mould.Investment.Binder;
import org.heatwright.mould.Mould;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Segment;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BurnoutComposerTest {

  private static final Temperature KILN_LIMIT = Temperature.ofCelsius(1100);

  @Test
  void threeNinetiesInWaxGetTheirFourSteps() {
    Composition composed = compose(Scenarios.threeNineties());
    assertThat(composed.schedule().segments())
        .containsExactly(
            segment(70, 150, 2, 0),
            segment(70, 370, 2, 0),
            segment(150, 730, 3, 0),
            segment(200, 500, 1, 30));
    assertThat(purposes(composed))
        .containsExactly("dry", "wax out", "carbon out", "settle at pour temperature");
    assertThat(composed.charge().moulds()).containsExactly(new Mould(3, 0.090, 0.150, 0.003));
  }

  @Test
  void largeMouldsRestTwiceOnTheWay() {
    Composition composed =
        compose(
            Scenarios.burnout(List.of(PatternedMould.wax(new Mould(1, 0.102, 0.203, 0))), none()));
    assertThat(purposes(composed))
        .containsExactly(
            "dry", "wax out", "settle the gypsum", "carbon out", "settle at pour temperature");
    assertThat(composed.schedule().segments().get(1).target().celsius()).isEqualTo(320);
    assertThat(composed.schedule().segments().get(2).target().celsius()).isEqualTo(480);
    assertThat(composed.schedule().segments().get(3).hold()).isEqualTo(Duration.ofHours(4));
  }

  @Test
  void everyNumberCarriesItsReason() {
    for (Scenarios.Scenario scenario : Scenarios.all()) {
      Composition composed = Composer.compose(scenario.work(), scenario.kiln(), Optional.empty());
      int segments = composed.schedule().segments().size();
      for (int segment = 1; segment <= segments; segment++) {
        int number = segment;
        assertThat(composed.reasons().stream().filter(r -> r.segment() == number))
            .extracting(Reason::part)
            .containsExactly(Reason.Part.RATE, Reason.Part.TARGET, Reason.Part.HOLD);
      }
      assertThat(composed.reasons())
          .allSatisfy(
              r -> {
                assertThat(r.rule()).endsWith(".");
                assertThat(r.value()).isNotBlank();
                assertThat(r.origin().words()).isNotBlank();
              });
    }
  }

  @Test
  void anUnknownBinderIsRefusedInOneSentence() {
    assertRefused(bonded(Binder.UNKNOWN, 0.40, "sterling-925"), "binder");
  }

  private static BurnoutWork bonded(Binder binder, double ratio, String alloy) {
    return new BurnoutWork(
        Scenarios.threeNineties().moulds(),
        new Investment(binder, ratio, 2),
        none(),
        PouredMetal.of(alloy),
        Optional.empty());
  }

  /**
   * Ranges of practice for phosphate-bonded moulds (practice; top: memory, a textbook of dental
   * materials): to 250 to 300 °C at 100 °C/h at most, 1 to 2 h; 150 to 300 °C/h to 850 to 1000 °C,
   * 1 to 3 h; platinum into 850 to 900 °C.
   */
  @Test
  void platinumGoesIntoPhosphateWithinPractice() {
    Composition composed = compose(bonded(Binder.PHOSPHATE, 0.20, "platinum-950"));
    List<Segment> segments = composed.schedule().segments();
    assertThat(segments).hasSize(3);
    assertThat(segments.get(0).ramp().rate().orElseThrow().kelvinsPerHour()).isBetween(50.0, 100.0);
    assertThat(segments.get(0).target().celsius()).isBetween(250.0, 300.0);
    assertThat(segments.get(0).hold()).isBetween(Duration.ofHours(1), Duration.ofHours(3));
    assertThat(segments.get(1).ramp().rate().orElseThrow().kelvinsPerHour())
        .isBetween(150.0, 300.0);
    assertThat(segments.get(1).target().celsius()).isBetween(850.0, 1000.0);
    assertThat(segments.get(1).hold()).isBetween(Duration.ofHours(1), Duration.ofHours(3));
    assertThat(segments.get(2).target().celsius()).isBetween(850.0, 900.0);
    assertThat(codes(composed))
        .contains("ammonia", "thin-sources")
        .doesNotContain("not-dry-through");
  }

  @Test
  void aPhosphateBondedMouldForGoldComesDownToItsPour() {
    Composition composed = compose(bonded(Binder.PHOSPHATE, 0.20, "white-gold-14k"));
    assertThat(composed.schedule().segments().get(2).target())
        .isEqualTo(Temperature.ofCelsius(650));
  }

  @Test
  void aKilnTooCoolForPhosphateIsRefused() {
    assertThatThrownBy(
            () ->
                Composer.compose(
                    bonded(Binder.PHOSPHATE, 0.20, "platinum-950"),
                    Scenarios.kiln(
                        "Cool", Scenarios.box(0.3, 0.3, 0.3), 2000, 830, Optional.empty(), 3),
                    Optional.empty()))
        .isInstanceOf(WorkRefusedException.class)
        .hasMessageContaining("phosphate-bonded moulds needs about 900 °C");
  }

  @Test
  void anUnknownPatternIsRefused() {
    assertRefused(
        Scenarios.burnout(
            List.of(
                new PatternedMould(
                    new Mould(1, 0.05, 0.06, 0),
                    PatternedMould.Pattern.UNKNOWN,
                    OptionalDouble.empty())),
            none()),
        "pattern");
  }

  @Test
  void platinumAndAlloysWithoutAMouldTemperatureAreRefused() {
    assertRefused(pouring(PouredMetal.of("platinum-950")), "phosphate");
    assertRefused(pouring(PouredMetal.of("pewter")), "pewter");
    assertThat(compose(pouring(new PouredMetal("pewter", Optional.of(Temperature.ofCelsius(120))))))
        .isNotNull();
  }

  @Test
  void aPourTemperatureMeantInFahrenheitIsNamed() {
    BurnoutWork work =
        pouring(new PouredMetal("sterling-925", Optional.of(Temperature.ofCelsius(900))));
    assertRefused(work, "900 °F is 482 °C");
  }

  @Test
  void aKilnThatIsTooColdOrTooSmallIsRefused() {
    assertThatThrownBy(
            () ->
                Composer.compose(
                    Scenarios.threeNineties(),
                    Scenarios.kiln(
                        "Cool", Scenarios.box(0.3, 0.3, 0.3), 2000, 650, Optional.empty(), 3),
                    Optional.empty()))
        .isInstanceOf(WorkRefusedException.class)
        .hasMessageContaining("650 °C");
    assertThatThrownBy(
            () -> Composer.compose(Scenarios.threeNineties(), Scenarios.buoy(), Optional.empty()))
        .isInstanceOf(WorkRefusedException.class)
        .hasMessageContaining("does not fit into Buoy");
    assertRefused(
        Scenarios.burnout(List.of(PatternedMould.wax(new Mould(40, 0.09, 0.15, 0))), none()),
        "do not all fit");
  }

  @Test
  void theDataSheetGoesBeforeTheRule() {
    DataSheet sheet =
        none()
            .withDry(Temperature.ofCelsius(120), Duration.ofHours(4))
            .withTop(Temperature.ofCelsius(700), Duration.ofHours(5))
            .withFastestRise(HeatingRate.ofKelvinsPerHour(100), HeatingRate.ofKelvinsPerHour(60));
    Composition composed = compose(Scenarios.burnout(Scenarios.threeNineties().moulds(), sheet));
    assertThat(composed.schedule().segments())
        .containsExactly(
            segment(60, 120, 4, 0),
            segment(60, 370, 2, 0),
            segment(100, 700, 5, 0),
            segment(200, 500, 1, 30));
    assertThat(composed.reasons())
        .filteredOn(r -> r.origin().kind() == Origin.Kind.OWN && r.rule().contains("data sheet"))
        .hasSizeGreaterThanOrEqualTo(5);
  }

  @Test
  void theDataSheetNeverGoesBeyondItsOwnLimitNorTheBinders() {
    DataSheet own =
        none()
            .withTop(Temperature.ofCelsius(760), Duration.ofHours(3))
            .withMax(Temperature.ofCelsius(725));
    assertThat(
            compose(Scenarios.burnout(Scenarios.threeNineties().moulds(), own)).schedule().peak())
        .isEqualTo(Temperature.ofCelsius(725));
    DataSheet bold = none().withTop(Temperature.ofCelsius(900), Duration.ofHours(3));
    assertThat(
            compose(Scenarios.burnout(Scenarios.threeNineties().moulds(), bold)).schedule().peak())
        .isEqualTo(new GypsumRules().ceiling());
  }

  @Test
  void theTopStaysUnderTheKilnsLimit() {
    Composition composed =
        Composer.compose(
            Scenarios.threeNineties(),
            Scenarios.kiln("Low", Scenarios.box(0.3, 0.3, 0.3), 2000, 715, Optional.empty(), 3),
            Optional.empty());
    assertThat(composed.schedule().peak()).isEqualTo(Temperature.ofCelsius(710));
  }

  @Test
  void resinIsSlowerAndLongerAndPromisesNothing() {
    Composition wax = compose(Scenarios.threeNineties());
    Composition resin =
        compose(
            Scenarios.burnout(
                List.of(PatternedMould.resin(new Mould(3, 0.090, 0.150, 0.003))), none()));
    assertThat(resin.schedule().segments().get(2).hold())
        .isEqualTo(wax.schedule().segments().get(2).hold().plusHours(2));
    assertThat(resin.schedule().segments().get(1).ramp().rate().orElseThrow())
        .isLessThan(wax.schedule().segments().get(1).ramp().rate().orElseThrow());
    assertThat(codes(resin)).contains("resin-no-promise");
    assertThat(codes(wax)).doesNotContain("resin-no-promise");
  }

  @Test
  void twoHoursAt150DoNotDryANinetyMillimetreMouldAndItSaysSo() {
    Composition composed = compose(Scenarios.threeNineties());
    assertThat(composed.cautions())
        .filteredOn(c -> c.code().equals("not-dry-through"))
        .singleElement()
        .satisfies(
            c -> assertThat(c.message()).contains("2 h at 150 °C does not dry", "90 mm", "boils"));
    assertThat(reason(composed, 1, Reason.Part.HOLD).rule()).contains("does not dry");
    // A 30 mm mould does dry.
    assertThat(
            codes(
                compose(
                    Scenarios.burnout(
                        List.of(PatternedMould.wax(new Mould(1, 0.020, 0.04, 0))), none()))))
        .doesNotContain("not-dry-through");
  }

  @Test
  void mixedSizesSayWhatTheSmallOnesSuffer() {
    Scenarios.Scenario scenario = Scenarios.tarnhollow();
    Composition composed = Composer.compose(scenario.work(), scenario.kiln(), Optional.empty());
    assertThat(composed.cautions())
        .filteredOn(c -> c.code().equals("mixed-sizes"))
        .singleElement()
        .satisfies(c -> assertThat(c.message()).contains("75 mm", "50 mm"));
    assertThat(codes(compose(Scenarios.threeNineties()))).doesNotContain("mixed-sizes");
  }

  @Test
  void theLastChangesAreTiedToTheirSegments() {
    Composition composed = compose(Scenarios.threeNineties());
    assertThat(composed.moments())
        .filteredOn(m -> m.kind() == Moment.Kind.LAST_CHANGE)
        .extracting(Moment::what, Moment::anchor, Moment::segment)
        .containsExactly(
            tuple("call it off without harm", Moment.Anchor.SEGMENT_REACHED, 1),
            tuple("change the top temperature", Moment.Anchor.SEGMENT_REACHED, 3),
            tuple("change the pour temperature at no cost", Moment.Anchor.SEGMENT_END, 3));
  }

  @Test
  void standingTooShortOrTooLongIsTold() {
    assertThat(codes(compose(standing(0.5)))).contains("stand-first").doesNotContain("rewet");
    assertThat(codes(compose(standing(2)))).doesNotContain("stand-first", "rewet");
    assertThat(codes(compose(standing(48)))).contains("rewet").doesNotContain("stand-first");
  }

  @Test
  void aPourAtTheTopNeedsNoSegmentOfItsOwn() {
    Composition composed =
        compose(pouring(new PouredMetal("bronze", Optional.of(Temperature.ofCelsius(730)))));
    assertThat(purposes(composed)).last().isEqualTo("carbon out, settle at pour temperature");
    assertThat(composed.schedule().segments()).hasSize(3);
  }

  @Test
  void theUsualCautionsAreThere() {
    assertThat(codes(compose(Scenarios.threeNineties())))
        .contains(
            "burnout-fumes",
            "molten-metal",
            "pour-window",
            "silica-dust",
            "power-cut",
            "unattended",
            "maker-first");
  }

  /** Practice's hour of drying counts on its own slow rise; a data sheet's may be much faster. */
  @ParameterizedTest
  @ValueSource(doubles = {90, 150, 239, 400, 900})
  void aFastWetRiseLeavesTheMouldItsTimeToDry(double kelvinsPerHour) {
    HeatingRate wet = HeatingRate.ofKelvinsPerHour(kelvinsPerHour);
    BurnoutWork work =
        new BurnoutWork(
            List.of(PatternedMould.wax(new Mould(1, 0.04, 0.06, 0))),
            new Investment(Binder.PHOSPHATE, 0.20, 2),
            none().withFastestRise(HeatingRate.ofKelvinsPerHour(1000), wet),
            PouredMetal.of("platinum-950"),
            Optional.empty());
    Composition composed = compose(work);
    Segment dry = composed.schedule().segments().get(0);
    assertThat(dry.ramp().rate()).contains(wet);
    assertThat(Inspector.inspect(Inspection.of(composed.schedule()).forWork(composed.demands())))
        .extracting(Finding::code)
        .doesNotContain("short-dry-hold");
    // No longer than it must: two hours between 95 and 305 °C, in quarters of an hour.
    assertThat(dry.hold()).isBetween(Duration.ofHours(1), Duration.ofHours(2));
    assertThat(reason(composed, 1, Reason.Part.HOLD).rule().contains("Longer here"))
        .isEqualTo(dry.hold().compareTo(Duration.ofHours(1)) > 0);
  }

  private static BurnoutWork pouring(PouredMetal metal) {
    return new BurnoutWork(
        Scenarios.threeNineties().moulds(),
        Investment.gypsum(0.40),
        none(),
        metal,
        Optional.empty());
  }

  private static BurnoutWork standing(double hours) {
    return new BurnoutWork(
        Scenarios.threeNineties().moulds(),
        new Investment(Binder.GYPSUM, 0.40, hours),
        none(),
        PouredMetal.of("sterling-925"),
        Optional.empty());
  }

  private static Composition compose(Work work) {
    return Composer.compose(
        work,
        Scenarios.kiln(
            "Wide", Scenarios.box(0.4, 0.4, 0.3), 4000, KILN_LIMIT.celsius(), Optional.empty(), 3),
        Optional.empty());
  }

  private static void assertRefused(Work work, String words) {
    assertThatThrownBy(() -> compose(work))
        .isInstanceOf(WorkRefusedException.class)
        .hasMessageContaining(words)
        .message()
        .satisfies(m -> assertThat(m).endsWith(".").doesNotContain("\n"))
        .satisfies(m -> assertThat(m.split("[.] ")).hasSize(1));
  }

  private static Reason reason(Composition composed, int segment, Reason.Part part) {
    return composed.reasons().stream()
        .filter(r -> r.segment() == segment && r.part() == part)
        .findFirst()
        .orElseThrow();
  }

  private static List<String> purposes(Composition composed) {
    return composed.reasons().stream().map(Reason::purpose).distinct().toList();
  }

  private static List<String> codes(Composition composed) {
    return composed.cautions().stream().map(Caution::code).toList();
  }

  private static DataSheet none() {
    return DataSheet.none();
  }

  private static Segment segment(double rate, double celsius, int hours, int minutes) {
    return new Segment(
        Ramp.at(HeatingRate.ofKelvinsPerHour(rate)),
        Temperature.ofCelsius(celsius),
        Duration.ofHours(hours).plusMinutes(minutes));
  }
}
