package org.heatwright.reference;

import java.util.Arrays;
import org.heatwright.kiln.Chamber;
import org.heatwright.kiln.Kiln;

/**
 * What a {@link RichKiln} is beyond its nameplate. The values here are those of a kiln without any
 * richness in its walls and mains (tables as they are, no leak, exact power) but with a usual
 * chamber; {@link KilnPopulation} draws the rest. Faces are numbered {@link #ROOF} to {@link
 * #FRONT}. Every number is our estimate unless sourced beside it.
 */
final class HiddenTruth {
  static final int FACES = 6;

  /** The roof, or the lid of a top loader. */
  static final int ROOF = 0;

  static final int FLOOR = 1;
  static final int LEFT = 2;
  static final int RIGHT = 3;
  static final int BACK = 4;

  /** The door of a front loader. */
  static final int FRONT = 5;

  // walls
  final RichWall.Truth[] walls = new RichWall.Truth[FACES];

  /**
   * How much of the geometric widening conducts: 0.54 gives the edge term of Langmuir's factors.
   */
  double edgeFactor = 0.54;

  double[] faceEmissivity = filled(0.8);

  /** View of each face towards the rest of the chamber, over its area. */
  double[] faceView = filled(1);

  double[] convectionWatts = filled(7);

  /** Metal, joints and frame beside the layers, over the plain layers' conductance. */
  double[] bridgeShare = filled(0);

  /** Middle of the wall above a straight fall, over the rise, when the kiln starts warm. */
  double warmHump = 0.1;

  // elements
  /** Share of the power on each face; 0 where there is none. */
  double[] elementShare = new double[] {0, 0, 0.5, 0.5, 0, 0};

  double elementSquareMetres;
  double elementEmissivity = 0.7;

  /** Share of an element's radiation that its own face takes. */
  double elementOwnFaceShare = 0.4;

  double elementKilograms;
  double elementConvectionWatts = 12;
  double tailWattsPerKelvin;

  /** Real over rated power, when hot, at the rated voltage. */
  double powerFactor = 1;

  /** Steady departure of the mains from what the nameplate (or the day's note) says, over it. */
  double mainsOffsetShare;

  double mainsWanderShare;
  double mainsWanderSeconds = 1800;

  // air
  /** Discharge coefficient times area of the leak that buoyancy drives, m². */
  double leakSquareMetres;

  double steadyLeakKilogramsPerSecond;
  double ventSquareMetres = 1e-4;
  double holeSquareMetres;

  /** How much of the ideal flow through an open door takes part. */
  double doorFlowShare = 0.35;

  boolean doorSwitch = true;

  // fixed ceramics
  double hearthKilograms;
  double hearthCover = 0.8;
  double hearthContactWatts = 25;
  double fixtureKilograms;

  // sensor
  double tipFaceShare = 0.15;
  double tipElementShare = 0.03;
  double tipConvectionWatts = 18;
  double tipEmissivity = 0.8;
  double lagFactor = 1.2;
  double immersionMetres = 0.045;
  double stemWattsPerMetreKelvin = 20;
  double stemFactor = 0.6;
  double stemDepthMetres = 0.015;
  double tipOutMix = 0.4;
  double offsetKelvins;
  double offsetShare;
  double noiseKelvins = 0.5;
  boolean displayFahrenheit;

  // control
  double bandKelvins = 50;
  double integralSeconds = 400;
  double derivativeSeconds;
  double filterSeconds = 4;
  double minimumOnSeconds;
  double minimumSwitchSeconds = 10;

  /** Grid and step; halve both to see what they are worth. */
  double cellMetres = 0.0025;

  double stepSeconds = 2;

  HiddenTruth(Kiln kiln) {
    for (int f = 0; f < FACES; f++) {
      walls[f] = RichWall.Truth.plain(RichKiln.layers(kiln, f).size(), 0.8);
    }
    Chamber chamber = kiln.chamber();
    double volume = chamber.floorSquareMetres() * chamber.heightMetres();
    // 1.5 W/cm² of wire that sees the chamber, 2 mm wire of 7200 kg/m³
    elementSquareMetres = kiln.element().ratedWatts() / 1.5e4;
    elementKilograms = elementSquareMetres * 0.002 / 4 * 7200;
    hearthKilograms = chamber.floorSquareMetres() * 0.8 * 0.008 * 2000;
    fixtureKilograms = 15 * volume;
  }

  private static double[] filled(double value) {
    double[] all = new double[FACES];
    Arrays.fill(all, value);
    return all;
  }
}
