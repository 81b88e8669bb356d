package org.heatwright.reference;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.LongStream;
import org.heatwright.kiln.Control;
import org.heatwright.reference.ForecastStudy.Outcome;
import org.heatwright.reference.ForecastStudy.Timed;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * What an on-off kiln's log of slow ramps teaches, in which its switch swings the display by tens
 * of kelvins: the kiln is then forecast at full power, which no such log has shown. Kilns simulated
 * apart ({@link RichKiln}); the seeds are others than those that the constants were tried on.
 */
class FollowedRampsTest {

  private static final long FIRST_SEED = 10_000;
  private static final long AFTER_LAST = 10_090;

  private static List<Outcome> learned;

  @BeforeAll
  static void fireThem() {
    learned =
        LongStream.range(FIRST_SEED, AFTER_LAST)
            .filter(
                seed ->
                    KilnPopulation.draw(seed).nameplate().control().kind() == Control.Kind.ON_OFF)
            .parallel()
            .mapToObj(
                seed ->
                    ForecastStudy.of(
                        seed,
                        SchedulePopulation.Family.HOLD_HEAVY,
                        SchedulePopulation.Family.SATURATED))
            .flatMap(List::stream)
            .filter(Outcome::learned)
            .toList();
  }

  /** Nine in ten is asked; a few kilns are too few to say more. */
  @Test
  void bandsHold() {
    assertThat(learned).hasSizeGreaterThan(15);
    List<Timed> arrivals = learned.stream().flatMap(o -> o.arrivals().stream()).toList();
    double arrived = arrivals.stream().filter(Timed::inside).count() / (double) arrivals.size();
    double energies =
        learned.stream().filter(o -> o.energy().contains(o.energyKilowattHours())).count()
            / (double) learned.size();
    System.out.printf(
        "on-off kilns after slow ramps: %.0f %% of %d arrivals, %.0f %% of %d energies in band%n",
        100 * arrived, arrivals.size(), 100 * energies, learned.size());
    assertThat(arrived).isGreaterThan(0.7);
    assertThat(energies).isGreaterThan(0.7);
  }
}
