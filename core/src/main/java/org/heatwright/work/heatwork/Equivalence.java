package org.heatwright.work.heatwork;

import org.heatwright.material.HeatWork;
import org.heatwright.material.Viscosity;
import org.heatwright.units.Temperature;

/**
 * How a change of the work goes with temperature: a firing as seconds at a reference. Immutable.
 */
public interface Equivalence {

  /** The seconds at the reference that would do the same. */
  double secondsOf(FiringCurve curve);

  /** How many seconds at the reference one second at a temperature is worth; zero when rigid. */
  double worthOfSecondAt(Temperature temperature);

  /** Q of an activated process at the reference, J/mol: given, or the slope of the viscosity. */
  double activationJoulesPerMole();

  /** By an activation energy. */
  static Equivalence arrhenius(HeatWork work) {
    return new Equivalence() {
      @Override
      public double secondsOf(FiringCurve curve) {
        return work.secondsOf(curve.seconds(), curve.celsius());
      }

      @Override
      public double worthOfSecondAt(Temperature temperature) {
        return work.worthOfSecondAt(temperature);
      }

      @Override
      public double activationJoulesPerMole() {
        return work.activationJoulesPerMole();
      }
    };
  }

  /**
   * By the flow of a glass, {@code ∫dt/eta} times eta at the reference.
   *
   * @param reference where the glass flows at all
   * @throws IllegalArgumentException if it is rigid there
   */
  static Equivalence flow(Viscosity glass, Temperature reference) {
    double activation = glass.activationJoulesPerMole(reference);
    double there = glass.pascalSecondsAt(reference);
    return new Equivalence() {
      @Override
      public double secondsOf(FiringCurve curve) {
        return there * glass.flowPerPascal(curve.seconds(), curve.celsius());
      }

      @Override
      public double worthOfSecondAt(Temperature temperature) {
        return there / glass.pascalSecondsAt(temperature);
      }

      @Override
      public double activationJoulesPerMole() {
        return activation;
      }
    };
  }
}
