package org.heatwright.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.heatwright.inspect.Severity;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.LumpedLoad;
import org.heatwright.units.Temperature;
import org.heatwright.work.EnamelWork.Hardness;
import org.heatwright.work.EnamelWork.Metal;
import org.heatwright.work.enamel.Look;
import org.heatwright.work.enamel.Range;
import org.heatwright.work.enamel.TestTile;
import org.junit.jupiter.api.Test;

/** What is told of a piece that goes into a hot kiln. */
class EnamelOutlookTest {

  private static final Kiln BUOY = Scenarios.buoy();
  private static final Temperature AT_820 = Temperature.ofCelsius(820);
  private static final EnamelDoor DOOR =
      EnamelDoor.Simulated.usual()
          .at(BUOY, AT_820, EnamelColdLoad.of(work(Metal.COPPER, counterEnamelled())));

  private static EnamelWork work(Metal metal, EnamelBuild build) {
    return new EnamelWork(
            metal,
            0.001,
            6,
            0.04,
            Hardness.MEDIUM,
            Optional.empty(),
            Duration.ofHours(2),
            DataSheet.none(),
            Optional.empty(),
            EnamelBuild.unknown())
        .withBuild(build);
  }

  private static EnamelBuild build(
      Optional<EnamelBuild.Counter> counter, List<EnamelCoat> coats, List<TestTile> tiles) {
    return new EnamelBuild(
        OptionalDouble.of(0.0003),
        counter,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        OptionalDouble.empty(),
        coats,
        tiles);
  }

  private static EnamelBuild counterEnamelled() {
    return build(
        Optional.of(new EnamelBuild.Counter(OptionalDouble.empty(), Optional.empty())),
        List.of(),
        List.of());
  }

  private static Map<String, Outcome> judged(EnamelWork work) {
    Composition composition =
        EnamelComposer.compose(
            work,
            BUOY,
            org.heatwright.units.TemperatureUnit.CELSIUS,
            Optional.empty(),
            (kiln, working, cold) -> DOOR);
    return composition.judge().outcomes(composition.schedule(), List.of()).stream()
        .collect(java.util.stream.Collectors.toMap(Outcome::code, outcome -> outcome));
  }

  /** The kiln's own model: it falls, comes back, and settles near where it was. */
  @Test
  void theKilnsOwnDoorIsSimulated() {
    assertThat(DOOR.simulated()).isTrue();
    DOOR.draws()
        .forEach(
            around -> {
              assertThat(around.wallsCelsiusAt(0)).isLessThan(around.wallsCelsiusAt(1000));
              assertThat(around.wallsCelsiusAt(1000)).isCloseTo(820, within(60.0));
            });
  }

  /** Nine in ten of a few draws are nine in ten of many. */
  @Test
  void fewDrawsTellWhatManyDo() {
    EnamelDoor many =
        new EnamelDoor.Simulated(201)
            .at(BUOY, AT_820, EnamelColdLoad.of(work(Metal.COPPER, counterEnamelled())));
    assertNear(DOOR.fallKelvins(), many.fallKelvins());
    assertNear(DOOR.backSeconds(), many.backSeconds());
    // A nameplate tells no fall: the ends are a factor of two apart at least.
    assertThat(many.fallKelvins().high()).isGreaterThan(2 * many.fallKelvins().low());
  }

  private static void assertNear(Range few, Range many) {
    assertThat(few.low()).isCloseTo(many.low(), within(many.low() / 7));
    assertThat(few.median()).isCloseTo(many.median(), within(many.median() / 7));
    assertThat(few.high()).isCloseTo(many.high(), within(many.high() / 7));
  }

  /** What goes in cold cools the chamber: in every draw, and more the heavier it is. */
  @Test
  void aColdTrivetCoolsTheChamber() {
    EnamelDoor empty = EnamelDoor.Simulated.usual().at(BUOY, AT_820, List.of());
    EnamelDoor heavy =
        EnamelDoor.Simulated.usual()
            .at(
                BUOY,
                AT_820,
                EnamelColdLoad.of(work(Metal.COPPER, counterEnamelled().withTrivet(0.3))));
    for (int draw = 0; draw < DOOR.draws().size(); draw++) {
      double usual = DOOR.draws().get(draw).wallsCelsiusAt(60);
      assertThat(usual).isLessThan(empty.draws().get(draw).wallsCelsiusAt(60) - 1);
      assertThat(heavy.draws().get(draw).wallsCelsiusAt(60)).isLessThan(usual - 5);
    }
    EnamelWork copper = work(Metal.COPPER, counterEnamelled());
    assertThat(EnamelOutlook.of(copper, heavy, AT_820).piecesAnHour().median())
        .isLessThan(EnamelOutlook.of(copper, empty, AT_820).piecesAnHour().median());
  }

  /** 40 mm of 1 mm copper, 0.3 mm of enamel on both sides, on 43 g of trivet and mesh. */
  @Test
  void theColdLoadIsSheetEnamelTrivetAndMesh() {
    List<LumpedLoad> cold = EnamelColdLoad.of(work(Metal.COPPER, counterEnamelled()));

    // By hand: (8960 kg/m³ x 385..420 J/(kg K) x 1 mm + 2700 x 950 x 0.6 mm) x 16 cm².
    double piece = joulesPerKelvin(cold.get(0));
    assertThat(piece).isBetween(7.9, 8.6);
    // 5.3 kg/m² x (60 mm)² + 0.6 kg/m x 40 mm.
    assertThat(cold.get(1).massKilograms()).isCloseTo(0.0431, within(1e-4));
    assertThat(EnamelColdLoad.of(work(Metal.COPPER, counterEnamelled().withTrivet(0)))).hasSize(1);
  }

  private static double joulesPerKelvin(LumpedLoad load) {
    return load.massKilograms() * load.heatCapacityJoulesPerKilogramKelvin();
  }

  /** A kiln that cannot get there has the estimate for any kiln, and that is said. */
  @Test
  void aKilnThatCannotGetThereHasTheEstimate() {
    Kiln weak =
        Scenarios.kiln("Weak", Scenarios.box(0.5, 0.5, 0.5), 600, 1100, Optional.empty(), 3);

    EnamelDoor door = EnamelDoor.Simulated.usual().at(weak, AT_820, List.of());

    assertThat(door.simulated()).isFalse();
    assertThat(door.fallKelvins().median()).isEqualTo(75);
  }

  @Test
  void everythingMovesTheRightWay() {
    EnamelWork copper = work(Metal.COPPER, counterEnamelled());
    EnamelOutlook usual = EnamelOutlook.of(copper, DOOR, AT_820);

    assertThat(usual.window().earliestSeconds()).isLessThan(usual.window().likelySeconds());
    assertThat(usual.piecesAnHour().median()).isBetween(5.0, 60.0);
    assertThat(usual.curve().rows()).hasSizeGreaterThan(30);
    assertThat(usual.hottestCelsius().high()).isLessThan(880);
    // Bare bright silver is heated from one side: later than the same counter-enamelled.
    double bright =
        EnamelOutlook.of(
                work(Metal.FINE_SILVER, build(Optional.empty(), List.of(), List.of())),
                DOOR,
                AT_820)
            .window()
            .likelySeconds();
    double counter =
        EnamelOutlook.of(work(Metal.FINE_SILVER, counterEnamelled()), DOOR, AT_820)
            .window()
            .likelySeconds();
    assertThat(bright).isGreaterThan(1.1 * counter);
  }

  /** Tiles that show gloss later than usual move the window there and narrow it. */
  @Test
  void tilesMoveAndNarrowTheWindow() {
    EnamelOutlook before = EnamelOutlook.of(work(Metal.COPPER, counterEnamelled()), DOOR, AT_820);
    double late = 1.7 * before.window().likelySeconds();
    EnamelBuild tiled =
        build(
            counterEnamelled().counter(),
            List.of(),
            List.of(
                new TestTile(820, 0.8 * late, Look.ORANGE_PEEL),
                new TestTile(820, 1.2 * late, Look.GLOSSY)));

    EnamelOutlook after = EnamelOutlook.of(work(Metal.COPPER, tiled), DOOR, AT_820);

    assertThat(after.window().likelySeconds()).isCloseTo(late, within(0.2 * late));
    assertThat(after.window().latestSeconds() / after.window().earliestSeconds())
        .isLessThan(before.window().latestSeconds() / before.window().earliestSeconds());
    assertThat(after.tiles().orElseThrow().factorMedian()).isGreaterThan(1.3);
    EnamelOutlook.NextTile next =
        before.nextTile(work(Metal.COPPER, counterEnamelled())).orElseThrow();
    assertThat(next.thenFactor()).isLessThan(next.nowFactor());
    assertThat(next.seconds())
        .isBetween(before.window().fusedSeconds() / 2, 2 * before.window().latestSeconds());
  }

  @Test
  void theJudgeTellsWhatAPersonAsks() {
    Map<String, Outcome> told = judged(work(Metal.COPPER, counterEnamelled()));

    assertThat(told.keySet())
        .contains(
            "pull-window",
            "piece-heat",
            "enamel-fit",
            "bow",
            "door-recovery",
            "throughput",
            "test-tile",
            "cooling");
    assertThat(told.get("enamel-fit").value()).isEqualTo("sound");
    assertThat(told.get("pull-window").value()).matches("\\d+ s to .*");
    assertThat(told.get("test-tile").meaning()).contains("narrows the time");
  }

  /** Sterling at its cap: melting is near, and is told; a supplier's solidus goes first. */
  @Test
  void theDistanceToMeltingIsTold() {
    Map<String, Outcome> sterling =
        judged(work(Metal.STERLING_925, build(Optional.empty(), List.of(), List.of())));
    assertThat(sterling).containsKey("solidus");
    assertThat(sterling.get("solidus").meaning()).contains("788 °C");
    assertThat(judged(work(Metal.COPPER, counterEnamelled()))).doesNotContainKey("solidus");
  }

  /** A supplier's solidus sets the limit of gold, whatever is told of such alloys. */
  @Test
  void theSuppliersSolidusRules() {
    EnamelBuild told =
        new EnamelBuild(
            OptionalDouble.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.of(Temperature.ofCelsius(850)),
            OptionalDouble.empty(),
            List.of(),
            List.of());
    Composition composed =
        Composer.compose(work(Metal.GOLD_18K_YELLOW, told), BUOY, Optional.empty());

    assertThat(composed.demands().firmCeiling().orElseThrow().limit().celsius()).isEqualTo(810);
    assertThat(composed.schedule().peak().celsius()).isLessThanOrEqualTo(780);
  }

  /** Hard before soft, each coat no hotter than the one before; too many firings are told. */
  @Test
  void coatsAreFiredInOrder() {
    EnamelWork good =
        work(
            Metal.COPPER,
            build(
                Optional.empty(),
                List.of(
                    new EnamelCoat(EnamelCoat.Kind.COUNTER, Optional.empty(), 1),
                    new EnamelCoat(EnamelCoat.Kind.GROUND, Optional.of(Hardness.HARD), 1),
                    new EnamelCoat(EnamelCoat.Kind.COLOUR, Optional.of(Hardness.MEDIUM), 3),
                    new EnamelCoat(EnamelCoat.Kind.OVERGLAZE, Optional.of(Hardness.SOFT), 1)),
                List.of()));
    EnamelCoats plan = EnamelCoats.of(good, AT_820);
    assertThat(plan.firings()).isEqualTo(6);
    // The counter-enamel is of the work's medium enamel, the ground coat is harder.
    assertThat(plan.outOfOrder()).isFalse();
    double last = 2000;
    for (EnamelCoats.Step step : plan.steps()) {
      assertThat(step.chamber().celsius()).isLessThanOrEqualTo(last);
      last = step.chamber().celsius();
    }
    assertThat(last).isCloseTo(770, within(1e-9));

    EnamelWork turned =
        work(
            Metal.STERLING_925,
            build(
                Optional.empty(),
                List.of(
                    new EnamelCoat(EnamelCoat.Kind.GROUND, Optional.of(Hardness.SOFT), 4),
                    new EnamelCoat(EnamelCoat.Kind.COLOUR, Optional.of(Hardness.HARD), 8)),
                List.of()));
    Outcome told = judged(turned).get("coats");
    assertThat(told.severity()).contains(Severity.WARN);
    assertThat(told.meaning()).contains("harder coat comes after").contains("more than the 9");
  }
}
