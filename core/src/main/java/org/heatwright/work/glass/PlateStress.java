package org.heatwright.work.glass;

import java.util.Arrays;
import org.heatwright.material.Viscosity;
import org.heatwright.units.Temperature;
import org.heatwright.work.glass.Glass.Elastic;

/**
 * The stress in a plate through a firing: elastic when cold, flowing when hot. Each depth is a
 * Maxwell body with the viscosity of its own temperature:
 *
 * <pre>  e' = (1-nu)/E s' + s/(6 eta) + alpha T'     (equal in both directions of the plate)</pre>
 *
 * The strain is the same at every depth (held flat), or bends as a straight line through the
 * thickness (free to bow); the stresses sum to nothing, and if it is free to bow so do their
 * moments. A step is solved exactly for a temperature that goes straight through it, so no step is
 * too long for the hot glass.
 *
 * <p>Limits: no structural relaxation (the glass's own slow shrinking, which adds some tenths in
 * fast cooling), one expansion above and below the annealing point, nothing sideways: edges, rings
 * and thick places are not in it.
 *
 * @param endTensionPascals greatest tension left when all is at room temperature, Pa
 * @param endPressurePascals greatest pressure left, as a number above zero, Pa
 * @param heatingTensionPascals greatest tension before the hottest moment, Pa
 * @param coolingTensionPascals greatest tension after it, Pa
 * @param bowPerMetre curvature that is left, 1/m; nothing where it is held flat
 * @see "derived; Maxwell body, any text on viscoelasticity (memory)"
 */
public record PlateStress(
    double endTensionPascals,
    double endPressurePascals,
    double heatingTensionPascals,
    double coolingTensionPascals,
    double bowPerMetre) {

  /** Room temperature: what is left is told for it. */
  private static final double ROOM_CELSIUS = 20;

  /** Depths at which it is solved. */
  private static final int NODES = 15;

  /** Longest step, s. */
  private static final double STEP_SECONDS = 60;

  /** Temperature in a plate. */
  @FunctionalInterface
  public interface Profile {

    /**
     * All depths at one time.
     *
     * @param second s
     * @param depthMetres from the face, m, rising
     * @return one temperature a depth, °C
     */
    double[] celsiusAt(double second, double[] depthMetres);
  }

  /** The same plate held flat, as a half plate or a heavy one is, and free to bow. */
  public record HeldOrFree(PlateStress held, PlateStress free) {}

  /**
   * Follows a plate, at once held flat and free to bow: temperatures and flow are the same.
   *
   * @param glass elastic constants
   * @param viscosity of the glass
   * @param thicknessMetres from face to face, or from the face to a plane that nothing bends
   * @param profile temperature in it
   * @param endSeconds how long to follow it; then it comes to room temperature as it is, s
   */
  public static HeldOrFree follow(
      Elastic glass,
      Viscosity viscosity,
      double thicknessMetres,
      Profile profile,
      double endSeconds) {
    double[] depth = new double[NODES];
    for (int i = 0; i < NODES; i++) {
      depth[i] = thicknessMetres * i / (NODES - 1);
    }
    Follower held = new Follower(depth, true);
    Follower free = new Follower(depth, false);
    double[] celsius = profile.celsiusAt(0, depth);
    int steps = Math.max(1, (int) Math.ceil(endSeconds / STEP_SECONDS));
    double length = endSeconds / steps;
    double hottest = celsius[0];
    for (int step = 1; step <= steps; step++) {
      double[] next = profile.celsiusAt(endSeconds * step / steps, depth);
      Step taken = Step.of(glass, viscosity, celsius, next, length);
      boolean heating = next[0] >= hottest;
      held.advance(taken);
      held.note(heating);
      free.advance(taken);
      free.note(heating);
      hottest = Math.max(hottest, next[0]);
      celsius = next;
    }
    double[] room = new double[NODES];
    Arrays.fill(room, ROOM_CELSIUS);
    Step last = Step.of(glass, viscosity, celsius, room, 0);
    held.advance(last);
    free.advance(last);
    return new HeldOrFree(held.result(), free.result());
  }

  /**
   * What a step does at each depth, whatever holds the plate.
   *
   * @param left share of the stress that does not flow away
   * @param stiffness stress for each strain that comes in the step, Pa
   * @param thermal free strain
   */
  private record Step(double[] left, double[] stiffness, double[] thermal) {

    /** A length of nothing is a step without flow. */
    static Step of(
        Elastic glass, Viscosity viscosity, double[] from, double[] to, double lengthSeconds) {
      double modulus = glass.youngPascals() / (1 - glass.poissonRatio());
      double[] left = new double[NODES];
      double[] stiffness = new double[NODES];
      double[] thermal = new double[NODES];
      for (int i = 0; i < NODES; i++) {
        Temperature mean = Temperature.ofCelsius((from[i] + to[i]) / 2);
        // Equal in both directions: the time is 6 eta (1-nu)/E.
        double ratio = lengthSeconds / (6 * viscosity.pascalSecondsAt(mean) / modulus);
        left[i] = Math.exp(-ratio);
        stiffness[i] = modulus * (ratio < 1e-8 ? 1 : (1 - left[i]) / ratio);
        thermal[i] = glass.expansionPerKelvin() * (to[i] - from[i]);
      }
      return new Step(left, stiffness, thermal);
    }
  }

  private static final class Follower {
    private final double[] depth;
    private final boolean heldFlat;
    private final double[] weight = new double[NODES];
    private final double[] stress = new double[NODES];
    private double curvature;
    private double tensionSoFar;
    private double heating;
    private double cooling;

    Follower(double[] depth, boolean heldFlat) {
      this.depth = depth;
      this.heldFlat = heldFlat;
      for (int i = 0; i < NODES; i++) {
        weight[i] = i == 0 || i == NODES - 1 ? 1 : i % 2 == 1 ? 4 : 2; // Simpson's rule
      }
    }

    /** The tension now; where the face has never been hotter, all so far came with the heating. */
    void note(boolean hottestYet) {
      double tension = greatest();
      tensionSoFar = Math.max(tensionSoFar, tension);
      if (hottestYet) {
        heating = tensionSoFar;
        cooling = 0;
      } else {
        cooling = Math.max(cooling, tension);
      }
    }

    PlateStress result() {
      double pressure = 0;
      for (double s : stress) {
        pressure = Math.max(pressure, -s);
      }
      return new PlateStress(Math.max(0, greatest()), pressure, heating, cooling, curvature);
    }

    private double greatest() {
      double most = Double.NEGATIVE_INFINITY;
      for (double s : stress) {
        most = Math.max(most, s);
      }
      return most;
    }

    void advance(Step step) {
      for (int i = 0; i < NODES; i++) {
        stress[i] *= step.left()[i];
      }
      double[] strain = strains(step);
      for (int i = 0; i < NODES; i++) {
        stress[i] += step.stiffness()[i] * (strain[0] + strain[1] * depth[i] - step.thermal()[i]);
      }
      curvature += strain[1];
    }

    /** Strain at the face and its change a metre, from no net force and no net moment. */
    private double[] strains(Step step) {
      double s0 = 0;
      double s1 = 0;
      double s2 = 0;
      double f0 = 0;
      double f1 = 0;
      for (int i = 0; i < NODES; i++) {
        double w = weight[i] * step.stiffness()[i];
        double force = w * step.thermal()[i] - weight[i] * stress[i];
        s0 += w;
        s1 += w * depth[i];
        s2 += w * depth[i] * depth[i];
        f0 += force;
        f1 += force * depth[i];
      }
      if (heldFlat) {
        return new double[] {f0 / s0, 0};
      }
      double determinant = s0 * s2 - s1 * s1;
      return new double[] {(f0 * s2 - f1 * s1) / determinant, (f1 * s0 - f0 * s1) / determinant};
    }
  }
}
