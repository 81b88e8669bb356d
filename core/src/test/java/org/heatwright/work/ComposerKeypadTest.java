package org.heatwright.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import org.heatwright.inspect.Finding;
import org.heatwright.inspect.Inspection;
import org.heatwright.inspect.Inspector;
import org.heatwright.inspect.Severity;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.Keypad.Cooling;
import org.heatwright.keypad.KeypadFit;
import org.heatwright.keypad.TestKeypads;
import org.heatwright.keypad.TimeForm;
import org.heatwright.kiln.Kiln;
import org.heatwright.mould.BurnoutMeasures;
import org.heatwright.mould.Mould;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ComposerKeypadTest {

  private static final List<Case> CASES = cases();

  /** What the cores of a work need is asked for every keypad and solved once. */
  private static final Map<BurnoutWork, CoreHolds> HOLDS = new ConcurrentHashMap<>();

  private static List<Case> cases() {
    RandomWork random = new RandomWork(new SplittableRandom(20261204));
    return IntStream.range(0, 1000).mapToObj(i -> new Case(random.work(), random.kiln())).toList();
  }

  /** The holds that were found, by what was asked. */
  private static final class RememberedHolds extends CoreHolds {

    private final Map<List<Object>, Object> found = new ConcurrentHashMap<>();

    RememberedHolds(BurnoutWork work) {
      super(work);
    }

    @SuppressWarnings("unchecked") // a question's first word tells what answers it
    private <T> T once(Supplier<T> answer, Object... question) {
      List<Object> asked = List.of(question);
      Object known = found.get(asked); // one question may ask another: nothing is held meanwhile
      if (known == null) {
        known = answer.get();
        found.put(asked, known);
      }
      return (T) known;
    }

    @Override
    DryHold drying(Leg dry, boolean fixed, Leg next) {
      return once(() -> super.drying(dry, fixed, next), "drying", dry, fixed, next);
    }

    @Override
    BurnoutMeasures fastest(Mould mould) {
      return once(() -> super.fastest(mould), "fastest", mould);
    }

    @Override
    Duration top(List<Leg> before, Leg top) {
      return once(() -> super.top(before, top), "top", before, top);
    }

    @Override
    Duration soak(Temperature top, Leg pour) {
      return once(() -> super.soak(top, pour), "soak", top, pour);
    }
  }

  static List<Keypad> keypads() {
    return List.of(
        TestKeypads.steps(),
        TestKeypads.digits(),
        TestKeypads.knob(),
        with(TestKeypads.digits(), TimeForm.HOURS_UNSURE, 5940, 12, Cooling.IMPLIED),
        with(TestKeypads.digits(), TimeForm.MINUTES, 240, 12, Cooling.NOT_CONTROLLED));
  }

  /** Whatever is composed for a keypad can be keyed as it stands, and the work agrees with it. */
  @Tag("property")
  @ParameterizedTest
  @MethodSource("keypads")
  void whatIsComposedForAKeypadFitsIt(Keypad keypad) {
    long composed = CASES.parallelStream().filter(c -> fits(c, keypad)).count();
    assertThat(composed).isGreaterThan(500);
  }

  private record Case(Work work, Kiln kiln) {}

  /** As {@link Composer#compose} does. */
  private static Composition compose(Case asked, Keypad keypad) {
    if (asked.work() instanceof BurnoutWork burnout) {
      return BurnoutComposer.compose(
          burnout,
          asked.kiln(),
          keypad.unitFor(TemperatureUnit.CELSIUS),
          Optional.of(keypad),
          work -> HOLDS.computeIfAbsent(work, RememberedHolds::new));
    }
    return Composer.compose(asked.work(), asked.kiln(), Optional.of(keypad));
  }

  /** Whether it was composed; what was composed must fit. */
  private static boolean fits(Case asked, Keypad keypad) {
    Composition composition;
    try {
      composition = compose(asked, keypad);
    } catch (WorkRefusedException refused) {
      return false;
    }
    Schedule schedule = composition.schedule();
    if (schedule.peak().compareTo(Temperature.ofCelsius(1000)) > 0) {
      return false; // the studio's own wish, beyond some keypads
    }
    FittedProgram fitted = KeypadFit.fit(schedule, keypad);
    assertThat(fitted.fits()).as("%s: %s", schedule, fitted.notes()).isTrue();
    assertThat(schedule.unit()).isEqualTo(keypad.unitFor(TemperatureUnit.CELSIUS));
    List<Finding> grave =
        Inspector.inspect(
                Inspection.of(schedule).in(asked.kiln()).on(keypad).forWork(composition.demands()))
            .stream()
            .filter(f -> f.severity() != Severity.NOTE)
            .toList();
    assertThat(grave).as("%s: %s", asked.work(), schedule).isEmpty();
    return true;
  }

  @Test
  void tooFewSegmentsMergeTheHoldsOnTheWay() {
    Keypad three = with(TestKeypads.digits(), TimeForm.MINUTES, 999, 3, Cooling.IMPLIED);
    Composition composed =
        Composer.compose(Scenarios.threeNineties(), Scenarios.capstan(), Optional.of(three));
    assertThat(composed.schedule().segments()).hasSize(3);
    // Two hours between 350 and 450 °C, as the hold it replaces.
    assertThat(composed.schedule().segments().get(1).ramp().rate().orElseThrow().kelvinsPerHour())
        .isEqualTo(50);
    assertThat(composed.reasons())
        .anySatisfy(r -> assertThat(r.rule()).contains("too few segments"));
    Keypad two = with(TestKeypads.digits(), TimeForm.MINUTES, 999, 2, Cooling.IMPLIED);
    assertThatThrownBy(
            () ->
                Composer.compose(Scenarios.threeNineties(), Scenarios.capstan(), Optional.of(two)))
        .isInstanceOf(WorkRefusedException.class)
        .hasMessageContaining("at least 3 segments");
  }

  @Test
  void aKeypadInFahrenheitGetsRoundFahrenheit() {
    Keypad digits = TestKeypads.digits();
    Keypad fahrenheit =
        new Keypad(
            "Digits F",
            Keypad.UnitSetting.fixed(TemperatureUnit.FAHRENHEIT),
            digits.keys(),
            digits.entry(),
            digits.accept(),
            digits.starts(),
            digits.slots(),
            digits.segments(),
            digits.displayDigits(),
            digits.order(),
            digits.rate(),
            new Keypad.TargetField(
                Optional.empty(), Keypad.Range.of(0, 2100, 1), Optional.empty(), Optional.empty()),
            digits.hold(),
            digits.delay(),
            digits.end(),
            digits.programming(),
            digits.gestures(),
            digits.review(),
            digits.afterPowerCut());
    Schedule schedule =
        Composer.compose(Scenarios.threeNineties(), Scenarios.capstan(), Optional.of(fahrenheit))
            .schedule();
    TemperatureUnit unit = schedule.unit();
    assertThat(unit).isEqualTo(TemperatureUnit.FAHRENHEIT);
    assertThat(schedule.segments().stream().map(s -> unit.value(s.target())))
        .containsExactly(300.0, 700.0, 1350.0, 932.0);
    assertThat(schedule.segments().stream().map(s -> unit.value(s.ramp().rate().orElseThrow())))
        .containsExactly(140.0, 140.0, 270.0, 360.0);
  }

  @Test
  void aKeypadThatCannotSlowTheCoolingFallsFreely() {
    Keypad free = with(TestKeypads.digits(), TimeForm.MINUTES, 999, 12, Cooling.NOT_CONTROLLED);
    Schedule schedule =
        Composer.compose(Scenarios.threeNineties(), Scenarios.capstan(), Optional.of(free))
            .schedule();
    assertThat(schedule.segments().get(3).ramp()).isEqualTo(Ramp.fastest());
  }

  @Test
  void aSessionLongerThanTheKeypadsHoldGoesOnInAnotherSegment() {
    Keypad brief = with(TestKeypads.digits(), TimeForm.MINUTES, 150, 12, Cooling.IMPLIED);
    Composition composed =
        Composer.compose(Scenarios.quaysideEnamel().work(), Scenarios.buoy(), Optional.of(brief));
    assertThat(composed.schedule().segments())
        .extracting(s -> s.hold())
        .containsExactly(Duration.ofMinutes(150), Duration.ofMinutes(90));
    assertThat(
            Inspector.inspect(
                Inspection.of(composed.schedule()).on(brief).forWork(composed.demands())))
        .noneMatch(f -> f.code().equals("goes-nowhere"));
  }

  private static Keypad with(
      Keypad keypad, TimeForm form, long longestMinutes, int segments, Cooling cooling) {
    return new Keypad(
        keypad.name(),
        keypad.units(),
        keypad.keys(),
        keypad.entry(),
        keypad.accept(),
        keypad.starts(),
        keypad.slots(),
        segments,
        keypad.displayDigits(),
        keypad.order(),
        new Keypad.RateField(
            keypad.rate().label(),
            keypad.rate().per(),
            keypad.rate().range(),
            keypad.rate().inOtherUnit(),
            keypad.rate().fastest(),
            cooling,
            keypad.rate().start()),
        keypad.target(),
        new Keypad.HoldField(
            keypad.hold().label(),
            form,
            BigDecimal.valueOf(longestMinutes),
            BigDecimal.ONE,
            keypad.hold().endless(),
            keypad.hold().startMinutes()),
        keypad.delay(),
        keypad.end(),
        keypad.programming(),
        keypad.gestures(),
        keypad.review(),
        keypad.afterPowerCut());
  }
}
