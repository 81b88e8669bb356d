package org.heatwright.work.enamel;

import org.heatwright.material.Origin;
import org.heatwright.material.Viscosity;
import org.heatwright.units.Temperature;

/**
 * Enamels by how hot they flow: three points of viscosity and where they set. All of it is an
 * estimate from what the trade calls soft, medium and hard; sources place each class up to 40 K
 * apart, which {@link Fusing#CLASS_DECADES} stands for.
 */
public enum FusingClass {
  SOFT(480, 590, 740, Range.of(450, 485, 520)),
  MEDIUM(505, 620, 780, Range.of(470, 510, 545)),
  HARD(530, 650, 820, Range.of(500, 530, 560));

  /** log10 of poise at the hottest of the three points: glossy within a minute or so. */
  private static final double FLOWS_LOG_POISE = 4.5;

  private final Viscosity viscosity;
  private final Range setsCelsius;

  FusingClass(double anneals, double softens, double flows, Range setsCelsius) {
    viscosity =
        Viscosity.through(
            Temperature.ofCelsius(anneals),
            Viscosity.ANNEALING_LOG_POISE,
            Temperature.ofCelsius(softens),
            Viscosity.SOFTENING_LOG_POISE,
            Temperature.ofCelsius(flows),
            FLOWS_LOG_POISE,
            Origin.estimate("the class of enamel: annealing, softening and flow temperatures"));
    this.setsCelsius = setsCelsius;
  }

  public Viscosity viscosity() {
    return viscosity;
  }

  /** Below this the cooling glass cannot follow the metal any more, °C. */
  public Range setsCelsius() {
    return setsCelsius;
  }
}
