package org.heatwright.material;

import java.util.List;
import java.util.Objects;
import org.heatwright.numerics.LinearTable;

/**
 * A solid that stores and conducts heat.
 *
 * @param name the name files use
 * @param densityKilogramsPerCubicMetre kg/m³, above zero
 * @param conductivityWattsPerMetreKelvin W/(m K) over degrees Celsius, above zero
 * @param heatCapacityJoulesPerKilogramKelvin J/(kg K) over degrees Celsius, above zero; without the
 *     latent heats
 * @param latentHeats steps of heat taken up over a temperature range
 * @param origin where the numbers come from
 */
public record Material(
    String name,
    double densityKilogramsPerCubicMetre,
    LinearTable conductivityWattsPerMetreKelvin,
    LinearTable heatCapacityJoulesPerKilogramKelvin,
    List<LatentHeat> latentHeats,
    Origin origin) {

  public Material {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(origin, "origin");
    latentHeats = List.copyOf(latentHeats);
    if (!(densityKilogramsPerCubicMetre > 0 && Double.isFinite(densityKilogramsPerCubicMetre))
        || !(conductivityWattsPerMetreKelvin.smallest() > 0)
        || !(heatCapacityJoulesPerKilogramKelvin.smallest() > 0)) {
      throw new IllegalArgumentException(
          "The material '%s' needs density (%s kg/m³), conductivity %s and heat capacity %s above"
                  .formatted(
                      name,
                      densityKilogramsPerCubicMetre,
                      conductivityWattsPerMetreKelvin,
                      heatCapacityJoulesPerKilogramKelvin)
              + " zero everywhere.");
    }
  }

  /**
   * The same with other conductivity and heat content.
   *
   * @param conductivityFactor multiplies the conductivity, above zero
   * @param heatFactor multiplies heat capacity and latent heats, above zero
   */
  public Material scaled(double conductivityFactor, double heatFactor) {
    return conductivityFactor == 1 && heatFactor == 1
        ? this
        : new Material(
            name,
            densityKilogramsPerCubicMetre,
            conductivityWattsPerMetreKelvin.scaled(conductivityFactor),
            heatCapacityJoulesPerKilogramKelvin.scaled(heatFactor),
            latentHeats.stream()
                .map(
                    latent ->
                        new LatentHeat(
                            latent.fromCelsius(),
                            latent.toCelsius(),
                            heatFactor * latent.joulesPerKilogram(),
                            latent.once()))
                .toList(),
            origin);
  }

  /**
   * Heat taken up evenly over a temperature range.
   *
   * @param fromCelsius start of the range, °C
   * @param toCelsius end of the range, °C, above the start
   * @param joulesPerKilogram J per kg of the material, above zero
   * @param once true for a change that does not come back on cooling (drying, dehydration)
   */
  public record LatentHeat(
      double fromCelsius, double toCelsius, double joulesPerKilogram, boolean once) {

    public LatentHeat {
      if (!(toCelsius > fromCelsius) || !(joulesPerKilogram > 0)) {
        throw new IllegalArgumentException(
            "The latent heat (%s to %s °C, %s J/kg) needs a rising range and heat above zero."
                .formatted(fromCelsius, toCelsius, joulesPerKilogram));
      }
    }
  }
}
