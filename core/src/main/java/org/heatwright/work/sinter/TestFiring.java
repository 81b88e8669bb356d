package org.heatwright.work.sinter;

import java.time.Duration;
import java.util.Objects;
import org.heatwright.mould.Surroundings;
import org.heatwright.piece.Slab;
import org.heatwright.piece.SlabHistory;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;

/**
 * A measured strip as a person writes it down.
 *
 * @param beforeMetres length when it was bone dry, m
 * @param afterMetres the same length after the firing, m
 * @param at temperature of the hold
 * @param hold as keyed, whole minutes, up to 48 h
 * @param rate on the way up
 */
public record TestFiring(
    double beforeMetres, double afterMetres, Temperature at, Duration hold, HeatingRate rate) {

  /** Where nothing is said. Our estimate of a small kiln at full power. */
  public static final HeatingRate USUAL_RATE = Clays.USUAL_RATE;

  public TestFiring {
    Objects.requireNonNull(rate, "rate");
    if (!(at.celsius() >= 400 && at.celsius() <= 1100)) {
      throw new IllegalArgumentException(
          "The temperature of a test (%s °C) must be 400 to 1100 °C.".formatted(at.celsius()));
    }
    if (hold.isNegative() || hold.compareTo(Duration.ofHours(48)) > 0) {
      throw new IllegalArgumentException("The hold of a test must be 0:00 to 48:00.");
    }
    MeasuredStrip.requireLengths(beforeMetres, afterMetres);
  }

  /** The test with the heat its piece had, which lay at the back of a slab. */
  public MeasuredStrip in(Slab slab) {
    double up = (at.celsius() - 20) / rate.kelvinsPerHour() * 3600;
    double end = up + Math.max(1, hold.toSeconds());
    SlabHistory history =
        SlabHistory.of(
            slab,
            Surroundings.points(0, 20, up, at.celsius(), end, at.celsius()),
            Temperature.ofCelsius(20),
            end);
    return new MeasuredStrip(
        beforeMetres,
        afterMetres,
        SinterHeat.of(history.seconds(), history.celsiusOf(slab.thicknessMetres())));
  }
}
