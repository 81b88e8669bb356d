package org.heatwright.work.casting;

import java.util.Objects;
import java.util.Optional;
import org.heatwright.material.Origin;
import org.heatwright.units.Temperature;

/**
 * One source's melting range.
 *
 * @param solidus where it begins to melt, if told
 * @param liquidus where all of it is liquid, if told; a single "melting point" of an alloy is taken
 *     for this. At least one of the two is told, and they do not fall.
 * @param origin where it comes from
 */
public record Melting(
    Optional<Temperature> solidus, Optional<Temperature> liquidus, Origin origin) {

  public Melting {
    Objects.requireNonNull(origin, "origin");
    if (solidus.isEmpty() && liquidus.isEmpty()) {
      throw new IllegalArgumentException("A melting range needs one of its ends.");
    }
    if (solidus.isPresent()
        && liquidus.isPresent()
        && solidus.get().compareTo(liquidus.get()) > 0) {
      throw new IllegalArgumentException("The solidus must not be above the liquidus.");
    }
  }

  static Melting at(Temperature point, Origin origin) {
    return new Melting(Optional.of(point), Optional.of(point), origin);
  }

  static Melting between(double solidusCelsius, double liquidusCelsius, Origin origin) {
    return new Melting(
        Optional.of(Temperature.ofCelsius(solidusCelsius)),
        Optional.of(Temperature.ofCelsius(liquidusCelsius)),
        origin);
  }

  /** A single melting point of an alloy, as bench tables give it. */
  static Melting point(double celsius, Origin origin) {
    return new Melting(Optional.empty(), Optional.of(Temperature.ofCelsius(celsius)), origin);
  }

  static Melting from(double solidusCelsius, Origin origin) {
    return new Melting(
        Optional.of(Temperature.ofCelsius(solidusCelsius)), Optional.empty(), origin);
  }
}
