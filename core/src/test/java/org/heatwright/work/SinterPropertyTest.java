package org.heatwright.work;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.Predicate;
import org.heatwright.inspect.Finding;
import org.heatwright.inspect.Inspection;
import org.heatwright.inspect.Inspector;
import org.heatwright.inspect.Severity;
import org.heatwright.kiln.Kiln;
import org.heatwright.mould.Surroundings;
import org.heatwright.piece.SlabHistory;
import org.heatwright.schedule.Segment;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.SinterWork.Aim;
import org.heatwright.work.SinterWork.Embedded;
import org.heatwright.work.SinterWork.Phase;
import org.heatwright.work.sinter.CarbonBox;
import org.heatwright.work.sinter.Clay;
import org.heatwright.work.sinter.ClayFacts;
import org.heatwright.work.sinter.Clays;
import org.heatwright.work.sinter.CurveBelief;
import org.heatwright.work.sinter.Likely;
import org.heatwright.work.sinter.SinterHeat;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What must hold for any firing of metal clay, tried on 10,000. */
@Tag("property")
class SinterPropertyTest {

  private static final int WORKS = 10_000;
  private static final int COMPARED_WORKS = 3_000;
  private static final long SEED = 20261126;
  private static final List<Kiln> KILNS = RandomWork.kilns(SEED);

  @Test
  void noFiringGoesBeyondALimitAndItsOwnInspectionFindsNothingGrave() {
    // The generator must not hide behind refusals.
    assertThat(counted(WORKS, SEED, SinterPropertyTest::keepsItsLimits)).isGreaterThan(WORKS / 3);
  }

  private static boolean keepsItsLimits(Any any) {
    SinterWork work = any.work();
    Kiln kiln = any.kiln();
    Optional<Composition> composition = compose(work, kiln);
    if (composition.isEmpty()) {
      return false;
    }
    Temperature peak = composition.get().schedule().peak();
    assertThat(peak).as("%s", work).isLessThanOrEqualTo(kiln.limit());
    assertThat(peak)
        .as("%s", work)
        .isLessThanOrEqualTo(composition.get().demands().firmCeiling().orElseThrow().limit());
    work.dataSheet().max().ifPresent(max -> assertThat(peak).isLessThanOrEqualTo(max));
    assertThat(peak.celsius()).as("%s", work).isLessThan(melting(work));
    for (SinterWork.Piece piece : work.pieces()) {
      // Ten kelvins are kept for a display that goes beyond its setting.
      assertThat(peak.celsius()).isLessThanOrEqualTo(stands(piece.embedded()) - 10);
    }
    assertThat(grave(composition.get(), kiln))
        .as("%s: %s", work, composition.get().schedule())
        .isEmpty();
    return true;
  }

  private static long counted(int works, long seed, Predicate<Any> passes) {
    return RandomWork.counted(works, seed, random -> passes.test(new Any(random)));
  }

  /**
   * The same work with every piece thicker: no rise faster, no target hotter, no purpose lost, and
   * from the start to the end of each hold at least as long. (A slow rise leaves less lag for the
   * hold, so the hold alone may be shorter.)
   */
  @Test
  void aThickerPieceNeverGetsLessTime() {
    assertThat(counted(COMPARED_WORKS, SEED + 1, SinterPropertyTest::thickerGetsNoLessTime))
        .isGreaterThan(COMPARED_WORKS / 4);
  }

  private static boolean thickerGetsNoLessTime(Any any) {
    SinterWork work = any.work();
    Kiln kiln = any.kiln();
    Optional<Composition> thin = compose(work, kiln);
    Optional<Composition> thick = compose(thicker(work, any.between(1, 1.6)), kiln);
    if (thin.isEmpty() || thick.isEmpty()) {
      return false;
    }
    assertThat(thick.get().schedule().peak()).isEqualTo(thin.get().schedule().peak());
    for (Reason reason : thin.get().reasons()) {
      if (reason.part() != Reason.Part.HOLD) {
        continue;
      }
      Segment before = segment(thin.get(), reason.purpose()).orElseThrow();
      Optional<Segment> after = segment(thick.get(), reason.purpose());
      assertThat(after).as("%s of %s", reason.purpose(), work).isPresent();
      assertThat(rate(after.orElseThrow()))
          .as("%s of %s", reason.purpose(), work)
          .isLessThanOrEqualTo(rate(before));
      assertThat(minutesUntil(thick.get(), reason.purpose()))
          .as("%s of %s", reason.purpose(), work)
          .isGreaterThanOrEqualTo(minutesUntil(thin.get(), reason.purpose()) - 1e-6);
    }
    return true;
  }

  /** To the end of a purpose's hold, a kiln's full power taken as 1200 K/h. */
  private static double minutesUntil(Composition composition, String purpose) {
    double minutes = 0;
    double celsius = 20;
    int last =
        composition.reasons().stream()
            .filter(reason -> reason.purpose().equals(purpose))
            .mapToInt(Reason::segment)
            .max()
            .orElseThrow();
    for (Segment segment : composition.schedule().segments().subList(0, last)) {
      minutes += (segment.target().celsius() - celsius) / Math.min(1200, rate(segment)) * 60;
      minutes += segment.hold().toMinutes();
      celsius = segment.target().celsius();
    }
    return minutes;
  }

  /** More heat never leaves a lighter, weaker or larger piece, whatever the history. */
  @Test
  void hotterAndLongerIsDenserStrongerSmaller() {
    for (Clay clay : Clay.values()) {
      CurveBelief.of(Clays.of(clay), List.of())
          .ifPresent(belief -> counted(60, SEED + 2, any -> moreHeatIsMore(belief, any)));
    }
  }

  private static boolean moreHeatIsMore(CurveBelief belief, Any any) {
    double[] seconds = new double[6];
    double[] celsius = new double[6];
    double[] hotter = new double[6];
    double[] longer = new double[6];
    for (int p = 1; p < 6; p++) {
      seconds[p] = seconds[p - 1] + any.between(60, 7200);
      celsius[p] = any.between(300, 930);
    }
    double more = any.between(1, 40);
    double stretch = any.between(1.05, 3);
    for (int p = 0; p < 6; p++) {
      hotter[p] = celsius[p] + more;
      longer[p] = stretch * seconds[p];
    }
    SinterHeat base = SinterHeat.of(seconds, celsius);
    for (SinterHeat stronger :
        List.of(SinterHeat.of(seconds, hotter), SinterHeat.of(longer, celsius))) {
      rises(belief.density(base), belief.density(stronger));
      rises(belief.shrinkage(base), belief.shrinkage(stronger));
      rises(belief.strength(List.of(base)), belief.strength(List.of(stronger)));
    }
    assertThat(belief.density(base).high()).isLessThan(1);
    return true;
  }

  /** A thicker piece, or more carbon about it, has less time at heat in the same firing. */
  @Test
  void moreBetweenChamberAndMiddleIsLessTimeAtHeat() {
    ClayFacts facts = Clays.of(Clay.COPPER);
    double before = Double.POSITIVE_INFINITY;
    for (double height : new double[] {0.03, 0.05, 0.07, 0.09}) {
      CarbonBox box = new CarbonBox(CarbonBox.Wall.STEEL, 0.001, 0.1, 0.1, height);
      double time = time(box, facts, 0.003);
      assertThat(time).isLessThan(before);
      // Metal in place of carbon: more heat to bring, through less carbon.
      before = time;
    }
    CarbonBox thick = new CarbonBox(CarbonBox.Wall.CERAMIC, 0.004, 0.1, 0.1, 0.06);
    CarbonBox thicker = new CarbonBox(CarbonBox.Wall.CERAMIC, 0.008, 0.1, 0.1, 0.06);
    assertThat(time(thicker, facts, 0.003)).isLessThan(time(thick, facts, 0.003));
  }

  private static double time(CarbonBox box, ClayFacts facts, double pieceMetres) {
    var slab = box.slab(facts, pieceMetres);
    SlabHistory history =
        SlabHistory.of(
            slab,
            Surroundings.points(0, 20, 3600, 930, 6 * 3600, 930),
            Temperature.ofCelsius(20),
            6 * 3600);
    return history.secondsWithin(slab.thicknessMetres(), 915, 2000);
  }

  private static void rises(Likely before, Likely after) {
    assertThat(after.low()).isGreaterThanOrEqualTo(before.low());
    assertThat(after.median()).isGreaterThanOrEqualTo(before.median());
    assertThat(after.high()).isGreaterThanOrEqualTo(before.high());
  }

  private static double rate(Segment segment) {
    return segment.ramp().rate().map(HeatingRate::kelvinsPerHour).orElse(1e9);
  }

  private static Optional<Segment> segment(Composition composition, String purpose) {
    return composition.reasons().stream()
        .filter(reason -> reason.purpose().equals(purpose))
        .findFirst()
        .map(reason -> composition.schedule().segments().get(reason.segment() - 1));
  }

  private static double stands(Embedded embedded) {
    return switch (embedded) {
      case NONE -> 2000;
      case GLASS -> 650;
      case STONE -> 600;
      case LAB_STONE -> 900;
      case CORK -> 800;
    };
  }

  /** Published solidus or melting point; liquid is allowed by a data sheet alone, and not all. */
  private static double melting(SinterWork work) {
    boolean sheet = work.dataSheet().top().isPresent() || work.dataSheet().max().isPresent();
    return switch (work.clay()) {
      case FINE_SILVER, FINE_SILVER_LOW_FIRE, FINE_SILVER_OLDER -> 961;
      case STERLING -> sheet ? 891 : 788;
      case COPPER -> 1066;
      case BRONZE, BRONZE_LOW_FIRE -> sheet ? 950 : 845;
    };
  }

  private static Optional<Composition> compose(SinterWork work, Kiln kiln) {
    try {
      return Optional.of(
          SinterComposer.compose(
              work,
              kiln,
              TemperatureUnit.CELSIUS,
              Optional.empty(),
              (schedule, any, charge) -> Duration.ofHours(8)));
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

  private static SinterWork thicker(SinterWork work, double growth) {
    return new SinterWork(
        work.clay(),
        work.phase(),
        work.pieces().stream()
            .map(
                piece ->
                    new SinterWork.Piece(
                        piece.count(),
                        Math.min(0.03, piece.thicknessMetres() * growth),
                        piece.lengthMetres(),
                        piece.embedded()))
            .toList(),
        work.box(),
        work.aim(),
        work.dryAt(),
        work.tests(),
        work.dataSheet(),
        work.readyBy());
  }

  /** Firings as they may come in, over and beyond what is usual. */
  private static final class Any {
    private final SplittableRandom random;

    Any(SplittableRandom random) {
      this.random = random;
    }

    Kiln kiln() {
      return KILNS.get(random.nextInt(KILNS.size()));
    }

    SinterWork work() {
      Clay clay = Clay.values()[random.nextInt(Clay.values().length)];
      Phase phase = Phase.values()[random.nextInt(3)];
      List<SinterWork.Piece> pieces = new ArrayList<>();
      int kinds = 1 + random.nextInt(3);
      for (int i = 0; i < kinds; i++) {
        pieces.add(
            new SinterWork.Piece(
                1 + random.nextInt(12),
                between(0.0005, 0.010),
                between(0.008, 0.09),
                random.nextInt(4) == 0
                    ? Embedded.values()[random.nextInt(Embedded.values().length)]
                    : Embedded.NONE));
      }
      Optional<CarbonBox> box =
          clay.isFineSilver() || random.nextBoolean()
              ? Optional.empty()
              : Optional.of(
                  new CarbonBox(
                      CarbonBox.Wall.values()[random.nextInt(2)],
                      between(0.0005, 0.01),
                      between(0.08, 0.2),
                      between(0.08, 0.2),
                      between(0.03, 0.12)));
      return new SinterWork(
          clay,
          phase,
          pieces,
          box,
          Aim.values()[random.nextInt(2)],
          Optional.empty(),
          List.of(),
          sheet(),
          Optional.empty());
    }

    private DataSheet sheet() {
      return new DataSheet(
          maybe().map(x -> Temperature.ofCelsius(between(600, 1000))),
          Optional.empty(),
          Optional.empty(),
          maybe().map(x -> Temperature.ofCelsius(between(550, 1000))),
          maybe().map(x -> Duration.ofMinutes(random.nextInt(300))),
          maybe().map(x -> HeatingRate.ofKelvinsPerHour(between(30, 1500))),
          Optional.empty(),
          Optional.empty());
    }

    private Optional<Boolean> maybe() {
      return random.nextInt(6) == 0 ? Optional.of(true) : Optional.empty();
    }

    double between(double low, double high) {
      return low + (high - low) * random.nextDouble();
    }
  }
}
