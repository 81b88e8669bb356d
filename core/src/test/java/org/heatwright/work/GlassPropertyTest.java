package org.heatwright.work;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.heatwright.inspect.Finding;
import org.heatwright.inspect.Inspection;
import org.heatwright.inspect.Inspector;
import org.heatwright.inspect.Severity;
import org.heatwright.kiln.Kiln;
import org.heatwright.schedule.Segment;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.work.GlassWork.Faces;
import org.heatwright.work.GlassWork.OwnTop;
import org.heatwright.work.glass.Annealing;
import org.heatwright.work.glass.Flow;
import org.heatwright.work.glass.Glass;
import org.heatwright.work.glass.Glass.Expansion;
import org.heatwright.work.glass.Glass.Family;
import org.heatwright.work.glass.GlassProcess;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What must hold for any glass, tried on 10,000 invented works. */
@Tag("property")
class GlassPropertyTest {

  private static final int WORKS = 10_000;
  private static final int INSPECTED_EACH = 10;
  private static final long SEED = 20261126;

  /** Making a kiln takes longer than composing for it, so some serve them all. */
  private static final List<Kiln> KILNS =
      Stream.generate(new RandomWork(new SplittableRandom(SEED + 9))::kiln).limit(60).toList();

  static GlassWork work(SplittableRandom random, RandomWork any) {
    Family family = Family.values()[random.nextInt(3)];
    Optional<Temperature> anneal =
        random.nextBoolean()
            ? Optional.empty()
            : Optional.of(Temperature.ofCelsius(Math.rint(any.between(460, 570))));
    Glass glass =
        new Glass(
            family,
            anneal,
            anneal
                .filter(a -> random.nextInt(3) == 0)
                .map(a -> Temperature.ofCelsius(a.celsius() - any.between(20, 50))),
            anneal
                .filter(a -> random.nextInt(3) == 0)
                .map(a -> Temperature.ofCelsius(a.celsius() + any.between(130, 200))),
            random.nextInt(3) == 0
                ? Optional.of(new Expansion(any.between(7e-6, 11e-6)))
                : Optional.empty());
    GlassProcess process = GlassProcess.values()[random.nextInt(6)];
    double sheet = any.between(0.0015, 0.008);
    int layers = 1 + random.nextInt(4);
    boolean own = process.hasTop() && random.nextInt(4) == 0;
    return new GlassWork(
        glass,
        process,
        sheet,
        layers,
        random.nextInt(3) == 0
            ? OptionalDouble.of(any.between(0.001, sheet * layers))
            : OptionalDouble.empty(),
        any.between(0.02, 0.4),
        1 + random.nextInt(6),
        random.nextBoolean() ? Faces.ONE : Faces.BOTH,
        Optional.empty(),
        Optional.empty(),
        own
            ? new OwnTop(
                Optional.of(Temperature.ofCelsius(Math.rint(any.between(600, 900)))),
                Optional.empty())
            : OwnTop.none(),
        random.nextInt(3) == 0
            ? OptionalDouble.of(any.between(0.1e6, 1e6))
            : OptionalDouble.empty(),
        Optional.empty(),
        random.nextInt(4) == 0
            ? new DataSheet(
                Optional.of(Temperature.ofCelsius(any.between(650, 950))),
                Optional.empty(),
                Optional.empty(),
                random.nextBoolean()
                    ? Optional.of(Temperature.ofCelsius(any.between(640, 900)))
                    : Optional.empty(),
                Optional.empty(),
                random.nextBoolean()
                    ? Optional.of(HeatingRate.ofKelvinsPerHour(any.between(30, 500)))
                    : Optional.empty(),
                Optional.empty(),
                Optional.empty())
            : DataSheet.none(),
        Optional.empty());
  }

  private static Optional<Composition> compose(GlassWork work, Kiln kiln) {
    try {
      return Optional.of(Composer.compose(work, kiln, Optional.empty()));
    } catch (WorkRefusedException refused) {
      assertThat(refused).message().endsWith(".").doesNotContain("\n");
      return Optional.empty();
    }
  }

  @Test
  void noLimitIsCrossed() {
    SplittableRandom random = new SplittableRandom(SEED);
    RandomWork any = new RandomWork(random);
    int composed = 0;
    for (int i = 0; i < WORKS; i++) {
      GlassWork work = work(random, any);
      Kiln kiln = KILNS.get(random.nextInt(KILNS.size()));
      Optional<Composition> composition = compose(work, kiln);
      if (composition.isEmpty()) {
        continue;
      }
      composed++;
      check(work, kiln, composition.get());
      if (i % INSPECTED_EACH == 0) {
        inspect(work, kiln, composition.get());
      }
    }
    // The generator must not hide behind refusals.
    assertThat(composed).isGreaterThan(WORKS / 2);
  }

  private static void check(GlassWork work, Kiln kiln, Composition composition) {
    List<Segment> segments = composition.schedule().segments();
    Temperature peak = composition.schedule().peak();
    assertThat(peak).isLessThanOrEqualTo(kiln.limit());
    assertThat(peak).isLessThanOrEqualTo(composition.demands().firmCeiling().orElseThrow().limit());
    double tension = work.tensionPascals().orElse(Annealing.USUAL_TENSION_PASCALS);
    double from = kiln.room().celsius();
    for (Segment segment : segments) {
      double to = segment.target().celsius();
      Optional<HeatingRate> rate = segment.ramp().rate();
      if (to < from) {
        boolean slowRange = to < work.glass().anneal().high().celsius() - 1;
        if (slowRange) {
          assertThat(rate).as("%s", work).isPresent();
          boolean first = from > work.glass().strain().low().celsius() + 1;
          double left =
              Annealing.tensionPascals(
                  work.glass().elastic(), work.depthMetres(), rate.orElseThrow());
          assertThat(left)
              .as("%s: %s", work, segment)
              .isLessThanOrEqualTo(
                  (first ? tension : Annealing.SHARE_OF_DESIGN * Annealing.DESIGN_PASCALS / 2)
                      * (1 + 1e-9));
        }
      } else if (from < work.glass().anneal().low().celsius() - 1) {
        assertThat(
                Annealing.tensionPascals(
                    work.glass().elastic(), work.depthMetres(), rate.orElseThrow()))
            .isLessThanOrEqualTo(Annealing.SHARE_OF_DESIGN * Annealing.DESIGN_PASCALS * (1 + 1e-9));
      }
      from = to;
    }
  }

  /** Its own inspection finds nothing grave; an inspection takes long, so only some have one. */
  private static void inspect(GlassWork work, Kiln kiln, Composition composition) {
    List<Finding> grave =
        Inspector.inspect(
                Inspection.of(composition.schedule()).in(kiln).forWork(composition.demands()))
            .stream()
            .filter(f -> f.severity() != Severity.NOTE)
            .toList();
    assertThat(grave).as("%s: %s", work, composition.schedule()).isEmpty();
  }

  /** Thicker: no soak is shorter, no rate is faster. */
  @Test
  void thickerIsNeverFaster() {
    SplittableRandom random = new SplittableRandom(SEED + 1);
    RandomWork any = new RandomWork(random);
    int compared = 0;
    for (int i = 0; i < WORKS; i++) {
      GlassWork thin = work(random, any);
      Kiln kiln = KILNS.get(random.nextInt(KILNS.size()));
      GlassWork thick = thicker(thin, any.between(1.05, 1.8));
      Optional<Composition> one = compose(thin, kiln);
      Optional<Composition> two = compose(thick, kiln);
      if (one.isEmpty() || two.isEmpty()) {
        continue;
      }
      compared++;
      List<Segment> before = one.get().schedule().segments();
      List<Segment> after = two.get().schedule().segments();
      assertThat(after).hasSameSizeAs(before);
      for (int s = 0; s < before.size(); s++) {
        assertThat(after.get(s).hold()).isGreaterThanOrEqualTo(before.get(s).hold());
        double slower = rate(after.get(s));
        assertThat(slower).as("%s", thin).isLessThanOrEqualTo(rate(before.get(s)));
      }
    }
    assertThat(compared).isGreaterThan(WORKS / 3);
  }

  private static double rate(Segment segment) {
    return segment.ramp().rate().map(HeatingRate::kelvinsPerHour).orElse(1e9);
  }

  private static GlassWork thicker(GlassWork work, double factor) {
    return new GlassWork(
        work.glass(),
        work.process(),
        work.sheetMetres() * factor,
        work.layers(),
        work.thinnestMetres().isPresent()
            ? OptionalDouble.of(work.thinnestMetres().getAsDouble() * factor)
            : OptionalDouble.empty(),
        work.pieceMetres(),
        work.pieces(),
        work.faces(),
        work.form(),
        work.accent(),
        work.own(),
        work.tensionPascals(),
        work.annealSoak(),
        work.dataSheet(),
        work.readyBy());
  }

  /** Hotter or longer flows further; a stiffer glass flows less; thicker sheets round less. */
  @Test
  void hotterAndLongerFlowFurther() {
    SplittableRandom random = new SplittableRandom(SEED + 2);
    RandomWork any = new RandomWork(random);
    for (int i = 0; i < WORKS; i++) {
      Glass glass = work(random, any).glass();
      double celsius = any.between(600, 900);
      double seconds = any.between(60, 7200);
      double sheet = any.between(0.002, 0.01);
      double here = fused(glass, celsius, seconds, sheet);
      assertThat(fused(glass, celsius + any.between(1, 50), seconds, sheet)).isGreaterThan(here);
      assertThat(fused(glass, celsius, seconds * any.between(1.01, 2), sheet)).isGreaterThan(here);
      assertThat(fused(glass, celsius, seconds, sheet * 1.2)).isLessThan(here);
      double dose = dose(glass, celsius, seconds);
      assertThat(Flow.sagMetres(dose, sheet * 1.2, 0.2))
          .isLessThan(Flow.sagMetres(dose, sheet, 0.2));
      assertThat(Flow.sagMetres(dose, sheet, 0.25)).isGreaterThan(Flow.sagMetres(dose, sheet, 0.2));
      double[] times = {0, seconds};
      double[] hot = {celsius, celsius};
      assertThat(glass.viscosities().soft().flowPerPascal(times, hot))
          .isGreaterThan(glass.viscosities().stiff().flowPerPascal(times, hot));
    }
  }

  private static double dose(Glass glass, double celsius, double seconds) {
    return glass
        .viscosities()
        .usual()
        .flowPerPascal(new double[] {0, seconds}, new double[] {celsius, celsius});
  }

  private static double fused(Glass glass, double celsius, double seconds, double sheet) {
    return Flow.fused(dose(glass, celsius, seconds), sheet);
  }

  /** No soak is shorter than half an hour for each 6 mm. */
  @Test
  void theSoakOfPracticeIsKept() {
    SplittableRandom random = new SplittableRandom(SEED + 3);
    RandomWork any = new RandomWork(random);
    for (int i = 0; i < 500; i++) {
      GlassWork work = work(random, any);
      compose(work, Scenarios.capstan())
          .ifPresent(
              c ->
                  assertThat(c.schedule().segments())
                      .anyMatch(
                          s ->
                              s.hold()
                                      .compareTo(
                                          Duration.ofMinutes(
                                              Math.round(work.effectiveMetres() * 5000)))
                                  >= 0));
    }
  }
}
