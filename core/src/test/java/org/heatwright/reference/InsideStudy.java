package org.heatwright.reference;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.Charge;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.forecast.InsideForecast;
import org.heatwright.forecast.InsideFromLog;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.material.Material;
import org.heatwright.mould.Body;
import org.heatwright.mould.BodyMaterials;
import org.heatwright.mould.BodyShape;
import org.heatwright.mould.BodySolver;
import org.heatwright.mould.Investment;
import org.heatwright.mould.Mould;
import org.heatwright.schedule.Schedule;
import org.heatwright.units.Temperature;
import org.heatwright.work.BurnoutWork;
import org.heatwright.work.Composer;
import org.heatwright.work.DataSheet;
import org.heatwright.work.PatternedMould;
import org.heatwright.work.PouredMetal;
import org.heatwright.work.WorkRefusedException;

/**
 * The core of random moulds in random kilns that the product does not know, from what the display
 * said and the nameplate alone, beside what it was. The true mould has a powder of its own, carries
 * the heats of its inversions and stands raised; it is solved finely in the true chamber, which
 * does not feel it.
 */
final class InsideStudy {

  private static final double MINUTES_20 = 1200;
  private static final int EACH = 3;

  /** Whether a third of the moulds take up no heat from below. */
  private static final boolean ON_COLD_SHELF = Boolean.getBoolean("cold-shelf");

  private InsideStudy() {}

  /**
   * One firing.
   *
   * @param plateauShare end of the boiling plateau, late, as a share of its length
   * @param rms root mean square of the core's error outside of 20 min about that end, K
   * @param atEnd error at the program's end, K
   * @param inBand share of the time in the band
   * @param bandKelvins mean half width of the band
   */
  record Outcome(
      long seed,
      boolean onOff,
      double diameter,
      double height,
      double ring,
      double plateauShare,
      double rms,
      double atEnd,
      double inBand,
      double bandKelvins) {}

  static Optional<Outcome> of(long seed) {
    SplittableRandom chance = new SplittableRandom(seed * 7919 + 5);
    RichKiln kiln = KilnPopulation.draw(seed);
    Mould mould =
        new Mould(
            1,
            between(chance, 0.05, 0.11),
            between(chance, 0.06, 0.15),
            chance.nextBoolean() ? 0 : 0.002);
    Investment investment = new Investment(Investment.Binder.GYPSUM, 0.40, 2);
    Schedule schedule;
    try {
      schedule =
          Composer.compose(
                  new BurnoutWork(
                      List.of(PatternedMould.wax(mould)),
                      investment,
                      DataSheet.none(),
                      PouredMetal.of("sterling-925"),
                      Optional.empty()),
                  kiln.nameplate(),
                  Optional.empty())
              .schedule();
    } catch (WorkRefusedException refused) {
      return Optional.empty();
    }
    FiringConditions conditions = SchedulePopulation.conditions(seed);
    RichFiring firing =
        kiln.fire(
            schedule,
            conditions,
            SchedulePopulation.furnitureKilograms(kiln, seed),
            Optional.empty(),
            seed,
            SchedulePopulation.untilSecond(schedule, kiln));
    double end = firing.programEndSeconds();
    if (!Double.isFinite(end)) {
      return Optional.empty();
    }
    int rows = (int) (end / RichFiring.ROW_SECONDS);
    double[] truth = core(firing, body(mould, chance, kiln), rows);
    int readings = (rows - 1) / EACH + 1;
    double[] seconds = new double[readings];
    double[] shown = new double[readings];
    for (int i = 0; i < readings; i++) {
      seconds[i] = firing.secondsAt(i * EACH);
      shown[i] = firing.displayCelsius()[i * EACH];
    }
    InsideForecast inside =
        InsideFromLog.estimate(
                ForecastRequest.of(
                        schedule, kiln.nameplate(), Charge.moulds(List.of(mould), investment))
                    .withConditions(conditions),
                seconds,
                shown)
            .get(0);
    return Optional.of(
        judged(
            seed, kiln.nameplate().control().kind().name().equals("ON_OFF"), mould, truth, inside));
  }

  private static Body body(Mould mould, SplittableRandom chance, RichKiln kiln) {
    Material powder =
        BodyMaterials.named("gypsum-investment-40")
            .orElseThrow()
            .material()
            .scaled(factor(chance, 0.2), factor(chance, 0.06));
    return new Body(
        mould.shape(
            chance.nextInt(3) == 0 && ON_COLD_SHELF
                ? BodyShape.Bottom.INSULATED
                : BodyShape.Bottom.EXPOSED),
        powder,
        between(chance, 0.55, 0.85),
        between(chance, 6, 14),
        kiln.nameplate().room());
  }

  private static double[] core(RichFiring firing, Body body, int rows) {
    BodySolver solver = new BodySolver(body, new BodySolver.Accuracy(1.2, 0.25, 0));
    double[] core = new double[rows];
    for (int row = 0; row < rows; row++) {
      if (row > 0) {
        solver.advance(
            RichFiring.ROW_SECONDS,
            Temperature.ofCelsius(firing.airCelsius()[row - 1]),
            Temperature.ofCelsius(firing.airCelsius()[row]),
            Temperature.ofCelsius(firing.radiantCelsius()[row - 1]),
            Temperature.ofCelsius(firing.radiantCelsius()[row]),
            step -> {});
      }
      core[row] = solver.centreCelsius();
    }
    return core;
  }

  private static Outcome judged(
      long seed, boolean onOff, Mould mould, double[] truth, InsideForecast inside) {
    double begins = passes(truth, 90);
    double ends = passes(truth, 110);
    double[] middle = new double[truth.length];
    int within = 0;
    int all = 0;
    double width = 0;
    double squares = 0;
    int counted = 0;
    for (int row = 0; row < truth.length; row += 6) {
      double second = row * (double) RichFiring.ROW_SECONDS;
      Band band = inside.centreCelsiusAt(second);
      Arrays.fill(middle, row, Math.min(truth.length, row + 6), band.median());
      all++;
      within += band.contains(truth[row]) ? 1 : 0;
      width += (band.high() - band.low()) / 2;
      if (Math.abs(second - ends) > MINUTES_20) {
        squares += Math.pow(band.median() - truth[row], 2);
        counted++;
      }
    }
    int last = truth.length - 1;
    return new Outcome(
        seed,
        onOff,
        mould.diameterMetres(),
        mould.heightMetres(),
        mould.wallMetres(),
        (passes(middle, 110) - ends) / (ends - begins),
        Math.sqrt(squares / counted),
        middle[last] - truth[last],
        within / (double) all,
        width / all);
  }

  private static double passes(double[] celsius, double over) {
    for (int row = 0; row < celsius.length; row++) {
      if (celsius[row] >= over) {
        return row * (double) RichFiring.ROW_SECONDS;
      }
    }
    return Double.NaN;
  }

  private static double between(SplittableRandom chance, double low, double high) {
    return low + (high - low) * chance.nextDouble();
  }

  private static double factor(SplittableRandom chance, double spread) {
    return Math.exp(spread * chance.nextGaussian());
  }

  /** Seeds from and to (without). */
  public static void main(String[] arguments) {
    System.out.println("seed onOff d h ring plateauShare rms atEnd inBand band");
    LongStream.range(Long.parseLong(arguments[0]), Long.parseLong(arguments[1]))
        .mapToObj(InsideStudy::of)
        .flatMap(Optional::stream)
        .forEach(
            o ->
                System.out.printf(
                    "%d %b %.0f %.0f %.0f %.3f %.1f %.1f %.3f %.1f%n",
                    o.seed,
                    o.onOff,
                    1000 * o.diameter,
                    1000 * o.height,
                    1000 * o.ring,
                    o.plateauShare,
                    o.rms,
                    o.atEnd,
                    o.inBand,
                    o.bandKelvins));
  }
}
