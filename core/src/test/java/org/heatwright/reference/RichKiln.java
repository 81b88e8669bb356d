package org.heatwright.reference;

import java.util.List;
import java.util.Optional;
import org.heatwright.kiln.Chamber;
import org.heatwright.kiln.Face;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.Layer;
import org.heatwright.schedule.Schedule;

/**
 * A kiln with a nameplate anyone may read and a truth nobody knows. Immutable in use: {@link #fire}
 * starts a fresh run each time, and the same arguments give the same firing to the last bit.
 */
public final class RichKiln {

  private final Kiln nameplate;
  private final HiddenTruth truth;
  private final double secondsToNinetyPercent;

  RichKiln(Kiln nameplate, HiddenTruth truth, double secondsToNinetyPercent) {
    this.nameplate = nameplate;
    this.truth = truth;
    this.secondsToNinetyPercent = secondsToNinetyPercent;
  }

  public Kiln nameplate() {
    return nameplate;
  }

  HiddenTruth truth() {
    return truth;
  }

  /**
   * Time from 20 °C to nine tenths of the limit, empty and at full power, s; what a maker prints.
   * NaN where nobody timed it.
   */
  public double secondsToNinetyPercent() {
    return secondsToNinetyPercent;
  }

  /** Mean rate of {@link #secondsToNinetyPercent()}, K/h. */
  public double meanFullPowerKelvinsPerHour() {
    return (0.9 * nameplate.limit().celsius() - 20) / secondsToNinetyPercent * 3600;
  }

  /**
   * Fires it.
   *
   * @param schedule the program, without a start delay
   * @param conditions room, start, vent, supply and disturbances; what is empty is as the nameplate
   *     says
   * @param furnitureKilograms shelves and props in the chamber, kg, zero or more
   * @param fault what goes wrong
   * @param seed of chance alone: mains, noise, and where the relay's cycle stands. Vary it with all
   *     else equal to see the spread that no forecast can beat
   * @param untilSecond when the log ends, s
   */
  public RichFiring fire(
      Schedule schedule,
      FiringConditions conditions,
      double furnitureKilograms,
      Optional<Fault> fault,
      long seed,
      double untilSecond) {
    if (!schedule.startDelay().isZero()) {
      throw new IllegalArgumentException("The reference kiln knows no start delay.");
    }
    return new RichRun(this, schedule, conditions, furnitureKilograms, fault, seed, untilSecond)
        .run();
  }

  /** Empty, undisturbed, in its usual room. */
  public RichFiring fire(Schedule schedule, long seed, double untilSecond) {
    return fire(schedule, FiringConditions.usual(), 0, Optional.empty(), seed, untilSecond);
  }

  static List<Layer> layers(Kiln kiln, int face) {
    boolean top = kiln.door() == Kiln.Door.TOP;
    return kiln.layers(
        switch (face) {
          case HiddenTruth.ROOF -> top ? Face.DOOR : Face.ROOF;
          case HiddenTruth.FLOOR -> Face.FLOOR;
          case HiddenTruth.FRONT -> top ? Face.WALLS : Face.DOOR;
          default -> Face.WALLS;
        });
  }

  /** Which face opens. */
  static int doorFace(Kiln kiln) {
    return kiln.door() == Kiln.Door.TOP ? HiddenTruth.ROOF : HiddenTruth.FRONT;
  }

  RichWall wall(int face) {
    Chamber chamber = nameplate.chamber();
    double beta = 2 * truth.edgeFactor;
    double squareMetres;
    double growth1;
    double growth2;
    if (chamber instanceof Chamber.Box box) {
      double first =
          face == HiddenTruth.LEFT || face == HiddenTruth.RIGHT
              ? box.depthMetres()
              : box.widthMetres();
      double second =
          face == HiddenTruth.ROOF || face == HiddenTruth.FLOOR
              ? box.depthMetres()
              : box.heightMetres();
      squareMetres = first * second;
      growth1 = beta / first;
      growth2 = beta / second;
    } else {
      Chamber.Drum drum = (Chamber.Drum) chamber;
      if (face == HiddenTruth.ROOF || face == HiddenTruth.FLOOR) {
        squareMetres = drum.floorSquareMetres();
        growth1 = beta / drum.diameterMetres();
        growth2 = growth1;
      } else {
        boolean frontLoader = nameplate.door() == Kiln.Door.FRONT;
        squareMetres =
            frontLoader
                ? face == HiddenTruth.FRONT
                    ? drum.frontSquareMetres()
                    : (drum.uprightSquareMetres() - drum.frontSquareMetres()) / 3
                : drum.uprightSquareMetres() / 4;
        growth1 = 2 / drum.diameterMetres();
        growth2 = beta / drum.heightMetres();
      }
    }
    return new RichWall(
        squareMetres,
        growth1,
        growth2,
        layers(nameplate, face),
        truth.walls[face],
        switch (face) {
          case HiddenTruth.ROOF -> RichWall.Outside.UP;
          case HiddenTruth.FLOOR -> RichWall.Outside.DOWN;
          default -> RichWall.Outside.UPRIGHT;
        },
        chamber.heightMetres() + 0.15,
        truth.cellMetres);
  }

  /** Length of the door's edge, m. */
  double doorEdgeMetres() {
    Chamber chamber = nameplate.chamber();
    if (nameplate.door() == Kiln.Door.TOP) {
      return chamber instanceof Chamber.Drum drum
          ? Math.PI * drum.diameterMetres()
          : 4 * Math.sqrt(chamber.floorSquareMetres());
    }
    return 2 * (chamber.heightMetres() + chamber.frontSquareMetres() / chamber.heightMetres());
  }
}
