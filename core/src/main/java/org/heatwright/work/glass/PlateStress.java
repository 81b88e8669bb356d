package org.heatwright.work.glass;

import java.util.function.ToDoubleBiFunction;
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

  /**
   * Follows a plate.
   *
   * @param glass elastic constants
   * @param viscosity of the glass
   * @param thicknessMetres from face to face, or from the face to a plane that nothing bends
   * @param heldFlat whether it cannot bow: a half plate cannot, a thin one on a shelf can
   * @param celsiusAt temperature at a depth (m) and a second
   * @param endSeconds how long to follow it; then it comes to room temperature as it is, s
   */
  public static PlateStress follow(
      Elastic glass,
      Viscosity viscosity,
      double thicknessMetres,
      boolean heldFlat,
      ToDoubleBiFunction<Double, Double> celsiusAt,
      double endSeconds) {
    return new Follower(glass, viscosity, thicknessMetres, heldFlat).run(celsiusAt, endSeconds);
  }

  private static final class Follower {
    private final Elastic glass;
    private final Viscosity viscosity;
    private final boolean heldFlat;
    private final double modulus;
    private final double[] depth = new double[NODES];
    private final double[] weight = new double[NODES];
    private final double[] stress = new double[NODES];
    private final double[] celsius = new double[NODES];
    private double curvature;

    Follower(Elastic glass, Viscosity viscosity, double thicknessMetres, boolean heldFlat) {
      this.glass = glass;
      this.viscosity = viscosity;
      this.heldFlat = heldFlat;
      modulus = glass.youngPascals() / (1 - glass.poissonRatio());
      for (int i = 0; i < NODES; i++) {
        depth[i] = thicknessMetres * i / (NODES - 1);
        weight[i] = i == 0 || i == NODES - 1 ? 1 : i % 2 == 1 ? 4 : 2; // Simpson's rule
      }
    }

    PlateStress run(ToDoubleBiFunction<Double, Double> celsiusAt, double endSeconds) {
      for (int i = 0; i < NODES; i++) {
        celsius[i] = celsiusAt.applyAsDouble(depth[i], 0.0);
      }
      int steps = Math.max(1, (int) Math.ceil(endSeconds / STEP_SECONDS));
      double length = endSeconds / steps;
      double[] next = new double[NODES];
      double hottest = celsius[0];
      double tensionSoFar = 0;
      double heating = 0;
      double cooling = 0;
      for (int step = 1; step <= steps; step++) {
        double second = endSeconds * step / steps;
        for (int i = 0; i < NODES; i++) {
          next[i] = celsiusAt.applyAsDouble(depth[i], second);
        }
        advance(next, length);
        double tension = greatest();
        tensionSoFar = Math.max(tensionSoFar, tension);
        if (next[0] >= hottest) {
          hottest = next[0];
          heating = tensionSoFar;
          cooling = 0;
        } else {
          cooling = Math.max(cooling, tension);
        }
      }
      java.util.Arrays.fill(next, ROOM_CELSIUS);
      advance(next, 0);
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

    /** One step; a length of nothing is a step without flow. */
    private void advance(double[] next, double seconds) {
      double[] kept = new double[NODES];
      double[] stiffness = new double[NODES];
      double[] thermal = new double[NODES];
      for (int i = 0; i < NODES; i++) {
        double ratio = seconds / relaxationSeconds((celsius[i] + next[i]) / 2);
        double left = Math.exp(-ratio);
        kept[i] = stress[i] * left;
        stiffness[i] = modulus * (ratio < 1e-8 ? 1 : (1 - left) / ratio);
        thermal[i] = glass.expansionPerKelvin() * (next[i] - celsius[i]);
        celsius[i] = next[i];
      }
      double[] strain = strains(kept, stiffness, thermal);
      for (int i = 0; i < NODES; i++) {
        stress[i] = kept[i] + stiffness[i] * (strain[0] + strain[1] * depth[i] - thermal[i]);
      }
      curvature += strain[1];
    }

    /** Equal in both directions: {@code 6 eta (1-nu)/E}. */
    private double relaxationSeconds(double atCelsius) {
      return 6 * viscosity.pascalSecondsAt(Temperature.ofCelsius(atCelsius)) / modulus;
    }

    /** Strain at the face and its change a metre, from no net force and no net moment. */
    private double[] strains(double[] kept, double[] stiffness, double[] thermal) {
      double s0 = 0;
      double s1 = 0;
      double s2 = 0;
      double f0 = 0;
      double f1 = 0;
      for (int i = 0; i < NODES; i++) {
        double w = weight[i] * stiffness[i];
        double force = weight[i] * (stiffness[i] * thermal[i] - kept[i]);
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
