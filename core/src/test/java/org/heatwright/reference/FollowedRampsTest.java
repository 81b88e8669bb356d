package org.heatwright.reference;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.LongStream;
import org.heatwright.kiln.Control;
import org.heatwright.reference.ForecastStudy.Outcome;
import org.heatwright.reference.ForecastStudy.Timed;
import org.junit.jupiter.api.Test;

/**
 * Slow ramps of on-off kilns, on which a switch swings the display by tens of kelvins: what a log
 * of them teaches of full power, which no such log has shown, and when a hold after one begins,
 * which waits for the swing. Kilns simulated apart ({@link RichKiln}); the seeds are others than
 * those that the constants were tried on. Nine in ten is asked of bands; a few kilns are too few to
 * say more.
 */
class FollowedRampsTest {

  private static final long FIRST_SEED = 10_000;
  private static final long AFTER_LAST = 10_090;

  /** What was forecast of each kiln after one firing. */
  private static List<Outcome> forecast(
      SchedulePopulation.Family learned, SchedulePopulation.Family next) {
    return LongStream.range(FIRST_SEED, AFTER_LAST)
        .filter(
            seed -> KilnPopulation.draw(seed).nameplate().control().kind() == Control.Kind.ON_OFF)
        .parallel()
        .mapToObj(seed -> ForecastStudy.of(seed, learned, next))
        .flatMap(List::stream)
        .filter(Outcome::learned)
        .toList();
  }

  @Test
  void bandsAtFullPowerHoldAfterThem() {
    List<Outcome> outcomes =
        forecast(SchedulePopulation.Family.HOLD_HEAVY, SchedulePopulation.Family.SATURATED);
    assertThat(outcomes).hasSizeGreaterThan(15);
    List<Timed> arrivals = outcomes.stream().flatMap(o -> o.arrivals().stream()).toList();
    double arrived = arrivals.stream().filter(Timed::inside).count() / (double) arrivals.size();
    double energies =
        outcomes.stream().filter(o -> o.energy().contains(o.energyKilowattHours())).count()
            / (double) outcomes.size();
    System.out.printf(
        "on-off kilns after slow ramps: %.0f %% of %d arrivals, %.0f %% of %d energies in band%n",
        100 * arrived, arrivals.size(), 100 * energies, outcomes.size());
    assertThat(arrived).isGreaterThan(0.8);
    assertThat(energies).isGreaterThan(0.8);
  }

  @Test
  void bandsOfEndsHoldWhereHoldsWaitForTheSwing() {
    List<Outcome> outcomes =
        forecast(SchedulePopulation.Family.SATURATED, SchedulePopulation.Family.HOLD_HEAVY);
    assertThat(outcomes).hasSizeGreaterThan(15);
    long inside =
        outcomes.stream().filter(o -> new Timed(o.endSeconds(), o.end(), 0).inside()).count();
    double[] widths =
        outcomes.stream().mapToDouble(o -> o.end().high() - o.end().low()).sorted().toArray();
    System.out.printf(
        "on-off kilns' long holds: %d of %d ends in band, half of the bands %.0f s or less%n",
        inside, outcomes.size(), widths[widths.length / 2]);
    assertThat(inside).isGreaterThan(Math.round(0.8 * outcomes.size()));
    assertThat(widths[widths.length / 2]).isLessThan(300);
  }
}
