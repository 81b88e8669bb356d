package org.heatwright.kiln;

import java.util.List;
import org.heatwright.material.HeatCurves;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;

/**
 * The same kiln equations, integrated by a general-purpose library: Hipparchus' Dormand-Prince
 * 8(5,3) with adaptive steps. The yardstick of the benchmarks; it lives in this package because the
 * equations are not public.
 *
 * <p>The library has no integrator for stiff problems, so its steps are bounded by stability; that
 * is part of what the ratio says.
 */
public final class ExplicitFiring {

  private final Kiln kiln;
  private final KilnParameters parameters;
  private final Schedule schedule;
  private final FiringRun known;
  private final double toleranceKelvins;
  private long evaluations;

  /**
   * @param known the firing as our own solver ran it: its segment times are taken over, so that
   *     both integrate the same span
   */
  public ExplicitFiring(
      Kiln kiln,
      KilnParameters parameters,
      Schedule schedule,
      FiringRun known,
      double toleranceKelvins) {
    this.kiln = kiln;
    this.parameters = parameters;
    this.schedule = schedule;
    this.known = known;
    this.toleranceKelvins = toleranceKelvins;
  }

  /** Integrates to the program's end and returns the final reading, °C. */
  public double finalReadingCelsius() {
    HeatCurves curves = new HeatCurves();
    FiringSimulation.Accuracy usual = FiringSimulation.Accuracy.USUAL;
    List<ThermalBody> walls =
        new WallBuilder(
                kiln, new WallBuilder.Grid(usual.firstCellMetres(), usual.cellGrowth()), curves)
            .build(parameters.conductivityFactor(), parameters.capacityFactor());
    List<ThermalBody> bodies =
        List.of(LumpedLoad.fittings(kiln).body(curves, 1, parameters.fittingsJoulesPerKelvin()));
    KilnNetwork network =
        new KilnNetwork(
            kiln, parameters, FiringConditions.usual(), walls, bodies, toleranceKelvins);
    double[] y = network.stateAt(network.roomCelsius());
    // Tolerances in the state's own units: heat content for the cells, kelvins for the rest.
    double[] absolute = new double[y.length];
    double[] relative = new double[y.length];
    double[] warm = network.stateAt(network.roomCelsius() + 1);
    for (int i = 0; i < y.length; i++) {
      double perKelvin = Math.abs(warm[i] - y[i]);
      absolute[i] = toleranceKelvins * (perKelvin > 0 ? perKelvin : 1);
    }
    absolute[KilnNetwork.ENERGY] = 1e5;
    OrdinaryDifferentialEquation equation =
        new OrdinaryDifferentialEquation() {
          @Override
          public int getDimension() {
            return network.size();
          }

          @Override
          public double[] computeDerivatives(double t, double[] state) {
            evaluations++;
            double[] rates = new double[state.length];
            network.rates(state, rates);
            return rates;
          }
        };
    double now = 0;
    for (int s = 0; s < schedule.segments().size(); s++) {
      Segment segment = schedule.segments().get(s);
      double target = segment.target().celsius();
      double way = target - y[KilnNetwork.SETPOINT];
      double rate = segment.ramp().rate().orElseThrow().kelvinsPerHour() / 3600;
      network.moveSetpoint(Math.signum(way) * rate);
      y = integrate(equation, y, now, now + Math.abs(way) / rate, absolute, relative);
      now += Math.abs(way) / rate;
      network.moveSetpoint(0);
      y[KilnNetwork.SETPOINT] = target;
      double end = known.segments().get(s).endSeconds();
      y = integrate(equation, y, now, end, absolute, relative);
      now = end;
    }
    return network.reading(y);
  }

  /** Evaluations of the equations so far. */
  public long evaluations() {
    return evaluations;
  }

  private static double[] integrate(
      OrdinaryDifferentialEquation equation,
      double[] y,
      double from,
      double to,
      double[] absolute,
      double[] relative) {
    var integrator = new DormandPrince853Integrator(1e-6, to - from, absolute, relative);
    return integrator.integrate(equation, new ODEState(from, y), to).getPrimaryState();
  }
}
