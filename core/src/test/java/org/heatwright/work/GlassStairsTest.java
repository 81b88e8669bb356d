package org.heatwright.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.forecast.Forecaster;
import org.heatwright.inspect.Finding;
import org.heatwright.inspect.Inspection;
import org.heatwright.inspect.Inspector;
import org.heatwright.inspect.Severity;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.Keypad.UnitSetting;
import org.heatwright.keypad.KeypadFit;
import org.heatwright.keypad.TestKeypads;
import org.heatwright.kiln.Kiln;
import org.heatwright.material.Material;
import org.heatwright.material.Origin;
import org.heatwright.mould.Surroundings;
import org.heatwright.numerics.LinearTable;
import org.heatwright.piece.Slab;
import org.heatwright.piece.SlabHistory;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.glass.Annealing;
import org.heatwright.work.glass.Glass;
import org.heatwright.work.glass.GlassProcess;
import org.heatwright.work.glass.PlateStress;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Glass on keypads that cannot slow a fall. */
class GlassStairsTest {

  private static final long SEED = 20261127;
  private static final int WORKS = 10_000;
  private static final int INSPECTED_EACH = 20;
  private static final int STRESSED_EACH = 250;

  private static final List<Kiln> KILNS =
      Stream.generate(new RandomWork(new SplittableRandom(SEED + 9))::kiln).limit(30).toList();

  private static final UnitSetting CELSIUS = UnitSetting.fixed(TemperatureUnit.CELSIUS);
  private static final UnitSetting FAHRENHEIT = UnitSetting.fixed(TemperatureUnit.FAHRENHEIT);

  private static Keypad keypad(int segments, UnitSetting units, int step) {
    return TestKeypads.cannotSlowAFall(
        segments,
        units,
        new Keypad.TargetField(
            Optional.empty(), Keypad.Range.of(0, 2300, step), Optional.empty(), Optional.empty()));
  }

  /** A kiln that cools by a law of its own, in hours, from the program's last target. */
  private static GlassComposer.Coasting law(double hours) {
    return (schedule, kiln, until) -> {
      List<Double> shown = new ArrayList<>();
      double celsius = schedule.segments().get(schedule.segments().size() - 1).target().celsius();
      while (celsius > until.celsius() && shown.size() < 720) {
        shown.add(celsius);
        celsius = 20 + (celsius - 20) * Math.exp(-120 / (hours * 3600));
      }
      return List.of(shown.stream().mapToDouble(Double::doubleValue).toArray());
    };
  }

  /** What is composed can be keyed, and its own demands agree with it. */
  @Tag("property")
  @Test
  void anyGlassCanBeKeyedAndIsAccepted() {
    long composed = RandomWork.counted(WORKS, SEED, GlassStairsTest::accepted);
    assertThat(composed).isGreaterThan(WORKS / 3);
  }

  private static boolean accepted(SplittableRandom random) {
    RandomWork any = new RandomWork(random);
    GlassWork work = GlassPropertyTest.work(random, any);
    Kiln kiln = KILNS.get(random.nextInt(KILNS.size()));
    Keypad keypad =
        keypad(
            6 + random.nextInt(30),
            random.nextBoolean() ? CELSIUS : FAHRENHEIT,
            random.nextInt(4) == 0 ? 5 : 1);
    TemperatureUnit unit = keypad.unitFor(TemperatureUnit.CELSIUS);
    double hours = any.between(0.8, 8);
    Composition composition;
    try {
      composition = GlassComposer.compose(work, kiln, unit, Optional.of(keypad), law(hours));
    } catch (WorkRefusedException refused) {
      assertThat(refused).message().endsWith(".").doesNotContain("\n");
      return false;
    }
    Schedule schedule = composition.schedule();
    FittedProgram fitted = KeypadFit.fit(schedule, keypad);
    assertThat(fitted.fits()).as("%s: %s", work, fitted.notes()).isTrue();
    assertThat(fitted.expressible().segments()).isEqualTo(schedule.segments());
    assertThat(composition.cautions()).anyMatch(c -> c.code().equals("cools-in-drops"));
    drops(work, schedule);
    int dice = random.nextInt(INSPECTED_EACH * STRESSED_EACH);
    if (dice % INSPECTED_EACH == 0) {
      assertThat(grave(composition, kiln, keypad)).as("%s: %s", work, schedule).isEmpty();
    }
    if (dice % STRESSED_EACH == 0) {
      asLittleStressAsARamp(work, composition, kiln);
    }
    return true;
  }

  /** Every drop while it sets is small and held as long as the slow fall would take. */
  private static void drops(GlassWork work, Schedule schedule) {
    double slow =
        Annealing.coolingRate(
                work.glass().elastic(),
                work.depthMetres(),
                work.tensionPascals().orElse(Annealing.USUAL_TENSION_PASCALS))
            .kelvinsPerHour();
    double setting = work.glass().strain().low().celsius() - 15;
    List<Segment> segments = schedule.segments();
    for (int i = 1; i < segments.size(); i++) {
      double from = segments.get(i - 1).target().celsius();
      double to = segments.get(i).target().celsius();
      if (to < from) {
        assertThat(segments.get(i).ramp()).isEqualTo(Ramp.fastest());
      }
      if (to < from && from <= work.glass().anneal().high().celsius() && from > setting) {
        assertThat(from - to).isLessThanOrEqualTo(GlassRules.COARSE_DROP_KELVINS + 1e-9);
        double hours = 0;
        for (int k = i; k < segments.size() && segments.get(k).target().celsius() == to; k++) {
          hours += segments.get(k).hold().toSeconds() / 3600.0;
        }
        assertThat((from - to) / hours).as("%s", work).isLessThanOrEqualTo(slow * (1 + 1e-9));
      }
    }
  }

  private static List<Finding> grave(Composition composition, Kiln kiln, Keypad keypad) {
    return Inspector.inspect(
            Inspection.of(composition.schedule())
                .in(kiln)
                .on(keypad)
                .forWork(composition.demands()))
        .stream()
        .filter(f -> f.severity() != Severity.NOTE)
        .toList();
  }

  /**
   * The kiln falls as if it had no mass, and still what stays is that of the ramp: the plate's own
   * stress, whose walk is held against closed forms in PlateStressTest.
   */
  private static void asLittleStressAsARamp(GlassWork work, Composition drops, Kiln kiln) {
    Composition ramps = Composer.compose(work, kiln, Optional.empty());
    PlateStress sudden = stress(work, drops);
    PlateStress ramp = stress(work, ramps);
    boolean coarse =
        drops.cautions().stream().anyMatch(c -> c.message().contains("half as much tension again"));
    assertThat(sudden.endTensionPascals())
        .as("%s: %s", work, drops.schedule())
        .isLessThanOrEqualTo((coarse ? 1.5 : 1.1) * ramp.endTensionPascals() + 0.03e6);
  }

  private static PlateStress stress(GlassWork work, Composition composition) {
    List<Double> points = new ArrayList<>();
    List<Segment> segments = composition.schedule().segments();
    int soak =
        composition.reasons().stream()
                .filter(r -> r.purpose().equals("anneal soak"))
                .mapToInt(Reason::segment)
                .findFirst()
                .orElseThrow()
            - 1;
    double celsius = segments.get(soak).target().celsius();
    double start = celsius;
    double second = 0;
    for (int i = soak; i < segments.size() - 1; i++) {
      Segment segment = segments.get(i);
      double to = segment.target().celsius();
      double secondsAKelvin = segment.ramp().rate().map(r -> 3600 / r.kelvinsPerHour()).orElse(0.1);
      points.add(second);
      points.add(celsius);
      second += Math.max(1, (celsius - to) * secondsAKelvin);
      celsius = to;
      points.add(second);
      points.add(celsius);
      second += Math.max(1, segment.hold().toSeconds());
    }
    points.add(second);
    points.add(celsius);
    Slab slab = composition.charge().followed().get(0).slab();
    SlabHistory history =
        SlabHistory.of(
            slab,
            Surroundings.points(points.stream().mapToDouble(Double::doubleValue).toArray()),
            Temperature.ofCelsius(start),
            second);
    return PlateStress.follow(
            work.glass().elastic(),
            work.glass().viscosities().usual(),
            slab.thicknessMetres(),
            history::celsiusAt,
            second)
        .held();
  }

  /** The formula for the peak after a sudden drop, against our own solution of the plate. */
  @Test
  void theShareOfASuddenDropIsThatOfThePlate() {
    for (double biot : new double[] {0.1, 0.3, 1, 3, 10}) {
      double conductivity = 1;
      double depth = 0.01;
      Material plain =
          new Material(
              "plain",
              2500,
              LinearTable.constant(conductivity),
              LinearTable.constant(1000),
              List.of(),
              Origin.derived("made up for the test"));
      Slab slab = Slab.lying(plain, depth, new Slab.Face(1e-9, biot * conductivity / depth));
      SlabHistory history =
          SlabHistory.of(
              slab,
              Surroundings.points(0, 500, 1, 500, 1.1, 400, 3000, 400),
              Temperature.ofCelsius(500),
              3000);
      double most = 0;
      for (double second : history.seconds()) {
        most = Math.max(most, history.meanCelsiusAt(second) - history.celsiusAt(0, second));
      }
      // The formula is a fit to the series; its own book tells it to some hundredths.
      assertThat(Annealing.shareOfDrop(biot)).as("Bi %s", biot).isCloseTo(most / 100, within(0.03));
    }
  }

  private static GlassWork bowl(double sheetMetres) {
    return new GlassWork(
        Glass.of(Glass.Family.SOFT_ART).withAnnealPoint(Temperature.ofCelsius(500)),
        GlassProcess.FULL_FUSE,
        sheetMetres,
        1,
        OptionalDouble.empty(),
        0.15,
        1,
        GlassWork.Faces.ONE,
        Optional.empty(),
        Optional.empty(),
        GlassWork.OwnTop.none(),
        OptionalDouble.empty(),
        Optional.empty(),
        DataSheet.none(),
        Optional.empty());
  }

  /** In a whole kiln: what stays and how uneven it is, judged in the forecast as any glass. */
  @Test
  void aForecastFindsNothingAgainstIt() {
    Keypad keypad = keypad(20, CELSIUS, 1);
    Composition composed = Composer.compose(bowl(0.0095), Scenarios.capstan(), Optional.of(keypad));
    Forecast forecast =
        Forecaster.forecast(
            ForecastRequest.of(composed.schedule(), Scenarios.capstan(), composed.charge())
                .withDraws(8));
    List<Outcome> outcomes = composed.judge().outcomes(composed.schedule(), forecast.pieces());
    assertThat(outcomes)
        .filteredOn(
            o ->
                List.of("left-stress", "anneal-soak", "slow-range-difference", "heating-tension")
                    .contains(o.code()))
        .hasSize(4)
        .allMatch(o -> o.severity().isEmpty(), "nothing against it");
    assertThat(grave(composed, Scenarios.capstan(), keypad)).isEmpty();
  }

  @Test
  void tooFewSegmentsAreRefusedInOneSentence() {
    assertThatThrownBy(
            () ->
                Composer.compose(
                    bowl(0.019), Scenarios.capstan(), Optional.of(keypad(8, CELSIUS, 1))))
        .isInstanceOf(WorkRefusedException.class)
        .hasMessageContaining("cannot slow a fall")
        .hasMessageContaining("the keypad has 8");
  }

  @Test
  void targetsTooFarApartAreRefused() {
    assertThatThrownBy(
            () ->
                Composer.compose(
                    bowl(0.006), Scenarios.capstan(), Optional.of(keypad(30, CELSIUS, 25))))
        .isInstanceOf(WorkRefusedException.class)
        .hasMessageContaining("too far apart");
  }

  /** A drop that is not held long enough is a fast fall like any other. */
  @Test
  void aHurriedDropIsFound() {
    Keypad keypad = keypad(20, CELSIUS, 1);
    Composition composed = Composer.compose(bowl(0.0095), Scenarios.capstan(), Optional.of(keypad));
    int first =
        composed.reasons().stream()
            .filter(r -> r.purpose().equals(GlassStairs.COOL_SLOWLY))
            .mapToInt(Reason::segment)
            .min()
            .orElseThrow();
    List<Segment> segments = new ArrayList<>(composed.schedule().segments());
    Segment hurried = segments.get(first - 1);
    segments.set(
        first - 1,
        new Segment(
            hurried.ramp(), hurried.target(), Duration.ofMinutes(hurried.hold().toMinutes() / 2)));
    Schedule schedule = Schedule.of("hurried", TemperatureUnit.CELSIUS, segments);
    assertThat(
            Inspector.inspect(
                    Inspection.of(schedule)
                        .in(Scenarios.capstan())
                        .on(keypad)
                        .forWork(composed.demands()))
                .stream()
                .map(Finding::code)
                .collect(Collectors.toList()))
        .contains("cools-too-fast");
  }
}
