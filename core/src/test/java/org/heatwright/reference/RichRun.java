package org.heatwright.reference;

import static org.heatwright.reference.HiddenTruth.BACK;
import static org.heatwright.reference.HiddenTruth.FACES;
import static org.heatwright.reference.HiddenTruth.FLOOR;
import static org.heatwright.reference.HiddenTruth.ROOF;
import static org.heatwright.reference.RichWall.SIGMA;

import java.util.Optional;
import java.util.SplittableRandom;
import org.heatwright.kiln.Chamber;
import org.heatwright.kiln.Control;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.FiringConditions.ColdPieces;
import org.heatwright.kiln.FiringConditions.Disturbance;
import org.heatwright.kiln.Kiln;
import org.heatwright.schedule.Schedule;
import org.jspecify.annotations.Nullable;

/**
 * One firing, step by step. The chamber is a star: every surface exchanges radiation with one
 * radiant node through its own surface and view resistance, and heat with one air node. Each face
 * has at most one companion that it sees first: an element, or the hearth plate on the floor. Walls
 * hand in their eliminated columns, companions and surfaces are eliminated by hand, and what stays
 * is two equations in the radiant and the air temperature. Radiation is linear within a step, with
 * coefficients of its beginning; what one node gives another takes, so heat is kept exactly but for
 * the heat capacities' change within a step.
 */
final class RichRun {

  private static final double KELVIN = 273.15;
  private static final double GRAVITY = 9.80665;
  private static final double GAP_METRES = 0.005;

  /** Where a tip that slipped out takes the wall's temperature. */
  private static final double TIP_OUT_METRES = 0.014;

  // Oxidised copper and steel, on a mesh. Our estimate.
  private static final double PIECE_EMISSIVITY = 0.7;
  private static final double PIECE_CONVECTION = 9;

  /** Steps between new wall properties. */
  private static final int REFRESH = 4;

  private final HiddenTruth truth;
  private final Kiln kiln;
  private final @Nullable Fault fault;
  private final Disturbance[] disturbances;
  private double step = Double.NaN;
  private int sinceRefresh = REFRESH;
  private final int rows;
  private final double room;
  private final double volts;
  private final boolean ventOpen;
  private final double doorEdge;
  private final int doorFace;
  private final double chamberHeight;
  private final RichControl control;
  private final SplittableRandom mainsChance;
  private final SplittableRandom noiseChance;
  private final double cyclePhase;
  private final int tipFace;
  private final int stemCell;
  private final int tipOutCell;

  private final RichWall[] walls = new RichWall[FACES];
  private final double[] surface = new double[FACES];
  private final double[] bridge = new double[FACES];
  private final double[] radiationFactor = new double[FACES];
  private final double[] convection = new double[FACES];
  private final double[] share;

  /** Companion of each face: an element or the hearth; mass zero where there is none. */
  private final boolean[] hasCompanion = new boolean[FACES];

  private final double[] companion = new double[FACES];
  private final double[] companionBefore = new double[FACES];

  /** What the heat capacity's change within the last step left open, J, paid in the next. */
  private final double[] companionDebt = new double[FACES];

  private final double[] companionHold = new double[FACES];
  private final double[] companionKilograms = new double[FACES];
  private final double[] toFaceFactor = new double[FACES];
  private final double[] toStarFactor = new double[FACES];
  private final double[] companionConvection = new double[FACES];
  private final double[] tail = new double[FACES];

  // 0: fixed ceramics, 1: furniture
  private final double[] lump = new double[2];
  private final double[] lumpBefore = new double[2];
  private final double[] lumpKilograms = new double[2];
  private final double[] lumpFactor = new double[2];
  private final double[] lumpConvection = new double[2];

  /** A piece that goes in cold: a steel or copper thing of one temperature, or nothing. */
  private final @Nullable ColdPieces pieces;

  private int changed;
  private boolean pieceInside;
  private double piece;

  private double star;
  private double air;
  private double sensor;
  private double mains;
  private double wallJoules;
  private double airJoules;
  private double openingJoules;
  private double inJoules;

  RichRun(
      RichKiln rich,
      Schedule schedule,
      FiringConditions conditions,
      double furnitureKilograms,
      Optional<Fault> wrong,
      long seed,
      double untilSecond) {
    truth = rich.truth();
    kiln = rich.nameplate();
    fault = wrong.orElse(null);
    disturbances = conditions.disturbances().toArray(new Disturbance[0]);
    pieces = conditions.pieces().orElse(null);
    rows = (int) Math.floor(untilSecond / RichFiring.ROW_SECONDS) + 1;
    room = conditions.room().orElse(kiln.room()).celsius();
    // a measured supply is nearer the truth than the nameplate's
    double known = conditions.supplyVolts().isPresent() ? 0.3 : 1;
    volts =
        conditions.supplyVolts().orElse(kiln.element().supplyVolts())
            * (1 + known * truth.mainsOffsetShare);
    ventOpen = conditions.ventOpen();
    doorEdge = rich.doorEdgeMetres();
    doorFace = RichKiln.doorFace(kiln);
    chamberHeight = kiln.chamber().heightMetres();
    share = truth.elementShare;
    SplittableRandom chance = new SplittableRandom(seed * 0x9E3779B97F4A7C15L + 77);
    mainsChance = chance.split();
    noiseChance = chance.split();
    cyclePhase = chance.nextDouble();
    mains = truth.mainsWanderShare * mainsChance.nextGaussian();

    double start = conditions.start().map(t -> t.celsius()).orElse(room);
    Chamber chamber = kiln.chamber();
    for (int f = 0; f < FACES; f++) {
      RichWall wall = rich.wall(f);
      walls[f] = wall;
      if (Math.abs(start - room) > 5) {
        wall.fillWarm(start, room, truth.warmHump);
      } else {
        wall.fill(start);
      }
      surface[f] = start;
      double area = wall.innerSquareMetres;
      double bare = f == FLOOR ? 1 - truth.hearthCover : 1;
      bridge[f] = truth.bridgeShare[f] * wall.plainConductance(600);
      double e = truth.faceEmissivity[f];
      radiationFactor[f] = SIGMA * area * bare / ((1 - e) / e + 1 / truth.faceView[f]);
      convection[f] = truth.convectionWatts[f] * area * bare;
      if (f == FLOOR) {
        hasCompanion[f] = truth.hearthKilograms > 0;
        companionKilograms[f] = truth.hearthKilograms;
        toStarFactor[f] = SIGMA * 0.85 * area * truth.hearthCover;
        companionConvection[f] = 6 * area * truth.hearthCover;
      } else if (share[f] > 0) {
        hasCompanion[f] = true;
        companionKilograms[f] = truth.elementKilograms * share[f];
        double seen = SIGMA * truth.elementEmissivity * truth.elementSquareMetres * share[f];
        toFaceFactor[f] = seen * truth.elementOwnFaceShare;
        toStarFactor[f] = seen * (1 - truth.elementOwnFaceShare);
        companionConvection[f] =
            truth.elementConvectionWatts * truth.elementSquareMetres * share[f];
        tail[f] = truth.tailWattsPerKelvin * share[f];
      }
      companion[f] = start;
      companionBefore[f] = start;
    }
    lumpKilograms[0] = truth.fixtureKilograms;
    lumpKilograms[1] = furnitureKilograms;
    for (int i = 0; i < 2; i++) {
      // plates and rods of about 14 mm, 2000 kg/m³: 0.07 m² a kilogram
      lumpFactor[i] = SIGMA * 0.8 * 0.07 * lumpKilograms[i];
      lumpConvection[i] = 7 * 0.07 * lumpKilograms[i];
      lump[i] = start;
      lumpBefore[i] = start;
    }
    tipFace = chamber instanceof Chamber.Drum && doorFace != ROOF ? ROOF : BACK;
    stemCell = walls[tipFace].cellAbove(truth.stemDepthMetres);
    tipOutCell = walls[tipFace].cellAbove(TIP_OUT_METRES);
    star = start;
    air = start;
    sensor = start;
    control = new RichControl(schedule, kiln.control(), truth, display(start, 0));
  }

  private double display(double tip, double noise) {
    return tip
        + kiln.thermocouple().offset().kelvins()
        + truth.offsetKelvins
        + truth.offsetShare * tip
        + noise;
  }

  private double shown(double value) {
    return truth.displayFahrenheit ? (Math.rint(value * 1.8 + 32) - 32) / 1.8 : Math.rint(value);
  }

  private static double ceramicCapacity(double celsius) {
    return 800 + 0.3 * celsius;
  }

  private static double ceramicHeld(double celsius) {
    return (800 + 0.15 * celsius) * celsius;
  }

  private static double alloyCapacity(double celsius) {
    return 460 + 0.24 * celsius;
  }

  private static double alloyHeld(double celsius) {
    return (460 + 0.12 * celsius) * celsius;
  }

  /** Fe-25Cr-5Al, sheet A.5: resistance over that at 20 °C. */
  private static double resistance(double celsius) {
    return celsius < 400
        ? 1 + 0.013 * (celsius - 20) / 380
        : celsius < 800 ? 1.013 + 0.027 * (celsius - 400) / 400 : 1.04 + 2e-5 * (celsius - 800);
  }

  private double heldJoules() {
    double sum = 0;
    for (int f = 0; f < FACES; f++) {
      sum += walls[f].heldJoules();
      if (hasCompanion[f]) {
        sum +=
            companionKilograms[f]
                * (f == FLOOR ? ceramicHeld(companion[f]) : alloyHeld(companion[f]));
      }
    }
    for (int i = 0; i < 2; i++) {
      sum += lumpKilograms[i] * ceramicHeld(lump[i]);
    }
    if (pieces != null && pieceInside) {
      sum += pieces.joulesPerKelvin() * piece;
    }
    return sum;
  }

  private boolean acts(Disturbance.Kind kind, double second) {
    for (Disturbance d : disturbances) {
      if (d.kind() == kind
          && second >= d.atSeconds()
          && second < d.atSeconds() + d.lengthSeconds()) {
        return true;
      }
    }
    return false;
  }

  private boolean acts(Fault.Kind kind, double second) {
    return fault != null && fault.acts(kind, second);
  }

  RichFiring run() {
    double[] displays = new double[rows];
    double[] sensors = new double[rows];
    double[] stars = new double[rows];
    double[] airs = new double[rows];
    double[] elements = new double[rows];
    double[] setpoints = new double[rows];
    double[] powers = new double[rows];
    boolean[] powered = new boolean[rows];
    double before = heldJoules();
    double programJoules = Double.NaN;
    boolean proportional = kiln.control().kind() == Control.Kind.PID;
    double cycle = kiln.control().cycleSeconds();
    double cycleStart = -cyclePhase * Math.max(cycle, 0);
    double output = 0;
    double latched = 0;
    double reading;
    double rowJoules = 0;
    double decay = Math.exp(-RichFiring.ROW_SECONDS / truth.mainsWanderSeconds);
    int samplesPerRow = (int) Math.round(RichFiring.ROW_SECONDS / RichControl.SAMPLE_SECONDS);
    int usualSteps = (int) Math.round(RichControl.SAMPLE_SECONDS / truth.stepSeconds);
    long samples = (rows - 1) * (long) samplesPerRow;
    double elementBefore = sensor;
    for (long n = 0; ; n++) {
      double sampled = n * RichControl.SAMPLE_SECONDS;
      boolean cut =
          acts(Disturbance.Kind.MAINS_OFF, sampled) || acts(Fault.Kind.MAINS_CUT, sampled);
      reading = display(sensor, truth.noiseKelvins * noiseChance.nextGaussian());
      if (!cut) {
        output = control.sample(sampled, reading, inJoules);
        if (control.over && Double.isNaN(programJoules)) {
          programJoules = inJoules;
        }
      }
      if (n % samplesPerRow == 0) {
        int row = (int) (n / samplesPerRow);
        displays[row] = shown(reading);
        sensors[row] = sensor;
        stars[row] = star;
        airs[row] = air;
        elements[row] = elementMean();
        setpoints[row] = control.over && output == 0 ? Double.NaN : control.setpoint;
        powers[row] = rowJoules / RichFiring.ROW_SECONDS;
        powered[row] = !cut;
        rowJoules = 0;
        mains =
            mains * decay
                + truth.mainsWanderShare
                    * Math.sqrt(1 - decay * decay)
                    * mainsChance.nextGaussian();
      }
      if (n == samples) {
        break;
      }
      // half the step while the elements' temperature runs
      double elementNow = elementMean();
      int steps = Math.abs(elementNow - elementBefore) > 3 ? 2 * usualSteps : usualSteps;
      elementBefore = elementNow;
      double length = RichControl.SAMPLE_SECONDS / steps;
      if (length != step) {
        step = length;
        sinceRefresh = REFRESH;
      }
      for (int i = 0; i < steps; i++) {
        double second = sampled + i * step;
        // the relay
        double duty;
        if (!proportional || cycle <= RichControl.SAMPLE_SECONDS) {
          duty = output;
        } else {
          double end = second + step;
          double on = 0;
          double from = second;
          while (from < end) {
            if (from >= cycleStart + cycle) {
              cycleStart += cycle;
              latched = output * cycle;
              if (latched < truth.minimumOnSeconds) {
                latched = 0;
              } else if (latched > cycle - truth.minimumOnSeconds) {
                latched = cycle;
              }
            }
            double to = Math.min(end, cycleStart + cycle);
            on += Math.max(0, Math.min(to, cycleStart + latched) - from);
            from = to;
          }
          duty = on / step;
        }
        boolean doorOpen = acts(Disturbance.Kind.DOOR_OPEN, second);
        if (acts(Fault.Kind.RELAY_STUCK_ON, second)) {
          duty = 1;
        }
        if (cut || acts(Fault.Kind.RELAY_STUCK_OFF, second) || (doorOpen && truth.doorSwitch)) {
          duty = 0;
        }
        double used = advance(second, duty, doorOpen);
        rowJoules += used;
        inJoules += used;
      }
    }
    return new RichFiring(
        displays,
        sensors,
        stars,
        airs,
        elements,
        setpoints,
        powers,
        powered,
        control.reached,
        control.ended,
        control.energyAtEnd,
        Double.isNaN(programJoules) ? inJoules : programJoules,
        control.saturatedSeconds,
        new RichFiring.Audit(
            inJoules, heldJoules() - before, wallJoules, airJoules, openingJoules));
  }

  private double elementMean() {
    double sum = 0;
    for (int f = 0; f < FACES; f++) {
      sum += share[f] * companion[f];
    }
    return sum;
  }

  /** The two temperatures' part of a radiation that is linear in a step, K³. */
  private static double cube(double kelvin1, double kelvin2) {
    return (kelvin1 * kelvin1 + kelvin2 * kelvin2) * (kelvin1 + kelvin2);
  }

  private final double[] faceRadiation = new double[FACES];
  private final double[] faceConvection = new double[FACES];
  private final double[] toFace = new double[FACES];
  private final double[] toStar = new double[FACES];
  private final double[] ea = new double[FACES];
  private final double[] ex = new double[FACES];
  private final double[] ey = new double[FACES];
  private final double[] ef = new double[FACES];
  private final double[] fa = new double[FACES];
  private final double[] fx = new double[FACES];
  private final double[] fy = new double[FACES];
  private final double[] stir = new double[FACES];

  /** One step; returns the energy taken, J. */
  private double advance(double second, double duty, boolean doorOpen) {
    if (sinceRefresh++ >= REFRESH) {
      sinceRefresh = 1;
      for (int f = 0; f < FACES; f++) {
        walls[f].refresh(step, room);
        // free convection grows with the difference, weakly
        double over = Math.abs(surface[f] - air) / 15;
        stir[f] = Math.max(0.6, Math.min(1.8, Math.pow(over + 1e-9, 0.2)));
      }
    }
    changePiece(second);
    double starK = star + KELVIN;
    double roomK = room + KELVIN;
    double live = volts * (1 + mains) / kiln.element().ratedVolts();
    double full = kiln.element().ratedWatts() * truth.powerFactor * live * live * duty;
    if (acts(Fault.Kind.ELEMENT_OPEN, second)) {
      full *= 0.5;
    }
    double hotResistance = resistance(900);

    // radiant star: sxx X + sxy Y = sx; air: syx X + syy Y = sy
    double sxx = 0;
    double sxy = 0;
    double sx = 0;
    double syx = 0;
    double syy = 0;
    double sy = 0;
    double watts = 0;
    for (int f = 0; f < FACES; f++) {
      RichWall wall = walls[f];
      wall.prepare();
      boolean swung = doorOpen && f == doorFace;
      double surfaceK = surface[f] + KELVIN;
      double kr = radiationFactor[f] * cube(surfaceK, swung ? roomK : starK);
      double kc = swung ? convection[f] * 1.5 : convection[f] * stir[f];
      faceRadiation[f] = kr;
      faceConvection[f] = kc;
      double sum = wall.conductance() + bridge[f] + kr + kc;
      double a = wall.source() + bridge[f] * room;
      double x = kr;
      double y = kc;
      if (swung) {
        a += (kr + kc) * room;
        x = 0;
        y = 0;
      }
      if (hasCompanion[f]) {
        double own = companion[f];
        double ownK = own + KELVIN;
        double guess = own + 0.5 * (own - companionBefore[f]);
        double kf;
        double hold;
        double power = 0;
        if (f == FLOOR) {
          kf =
              truth.hearthContactWatts * wall.innerSquareMetres * truth.hearthCover
                  + SIGMA * 0.5 * wall.innerSquareMetres * cube(ownK, surfaceK);
          hold = companionKilograms[f] * ceramicCapacity(guess) / step;
        } else {
          kf = toFaceFactor[f] * cube(ownK, surfaceK);
          hold = companionKilograms[f] * alloyCapacity(guess) / step;
          power = full * share[f] * hotResistance / resistance(own);
          watts += power;
        }
        double ks = toStarFactor[f] * cube(ownK, starK);
        double ka = companionConvection[f];
        double inverse = 1 / (hold + kf + ks + ka + tail[f]);
        toFace[f] = kf;
        toStar[f] = ks;
        companionHold[f] = hold;
        ea[f] = (hold * own + power + tail[f] * room - companionDebt[f] / step) * inverse;
        ex[f] = ks * inverse;
        ey[f] = ka * inverse;
        ef[f] = kf * inverse;
        sum += kf - kf * ef[f];
        a += kf * ea[f];
        x += kf * ex[f];
        y += kf * ey[f];
      }
      double inverse = 1 / sum;
      fa[f] = a * inverse;
      fx[f] = x * inverse;
      fy[f] = y * inverse;
      if (!swung) {
        sxx += kr * (1 - fx[f]);
        sxy -= kr * fy[f];
        sx += kr * fa[f];
        syx -= kc * fx[f];
        syy += kc * (1 - fy[f]);
        sy += kc * fa[f];
      }
      if (hasCompanion[f]) {
        // companion in terms of X and Y alone
        ea[f] += ef[f] * fa[f];
        ex[f] += ef[f] * fx[f];
        ey[f] += ef[f] * fy[f];
        double ks = toStar[f];
        double ka = companionConvection[f];
        sxx += ks * (1 - ex[f]);
        sxy -= ks * ey[f];
        sx += ks * ea[f];
        syx -= ka * ex[f];
        syy += ka * (1 - ey[f]);
        sy += ka * ea[f];
      }
    }
    double l0a = 0;
    double l0x = 0;
    double l0y = 0;
    double l1a = 0;
    double l1x = 0;
    double l1y = 0;
    for (int i = 0; i < 2; i++) {
      if (lumpKilograms[i] > 0) {
        double own = lump[i];
        double hold = lumpKilograms[i] * ceramicCapacity(own + 0.5 * (own - lumpBefore[i])) / step;
        double ks = lumpFactor[i] * cube(own + KELVIN, starK);
        double ka = lumpConvection[i];
        double inverse = 1 / (hold + ks + ka);
        double a = hold * own * inverse;
        double x = ks * inverse;
        double y = ka * inverse;
        sxx += ks * (1 - x);
        sxy -= ks * y;
        sx += ks * a;
        syx -= ka * x;
        syy += ka * (1 - y);
        sy += ka * a;
        if (i == 0) {
          l0a = a;
          l0x = x;
          l0y = y;
        } else {
          l1a = a;
          l1x = x;
          l1y = y;
        }
      }
    }
    double pieceStar = 0;
    double pieceAir = 0;
    double pieceHold = 0;
    double pieceInverse = 0;
    if (pieces != null && pieceInside) {
      pieceHold = pieces.joulesPerKelvin() / step;
      pieceStar = SIGMA * PIECE_EMISSIVITY * pieces.squareMetres() * cube(piece + KELVIN, starK);
      pieceAir = PIECE_CONVECTION * pieces.squareMetres();
      pieceInverse = 1 / (pieceHold + pieceStar + pieceAir);
      double a = pieceHold * piece * pieceInverse;
      sxx += pieceStar * (1 - pieceStar * pieceInverse);
      sxy -= pieceStar * pieceAir * pieceInverse;
      sx += pieceStar * a;
      syx -= pieceAir * pieceStar * pieceInverse;
      syy += pieceAir * (1 - pieceAir * pieceInverse);
      sy += pieceAir * a;
    }
    // what the chamber loses directly
    boolean ajar = acts(Fault.Kind.DOOR_AJAR, second);
    double gap = ajar && fault != null ? GAP_METRES * doorEdge * fault.extentShare() : 0;
    double open = truth.holeSquareMetres * 0.5 + gap * 0.35;
    if (doorOpen) {
      open += kiln.openingSquareMetres() * 0.9;
    }
    double ko = SIGMA * open * cube(starK, roomK);
    sxx += ko;
    sx += ko * room;
    double flow = leak(gap, doorOpen);
    double airCapacity = flow * (1005 + 0.1 * Math.max(0, air - room));
    syy += airCapacity;
    sy += airCapacity * room;

    double det = sxx * syy - sxy * syx;
    star = (sx * syy - sxy * sy) / det;
    air = (sxx * sy - sx * syx) / det;

    for (int f = 0; f < FACES; f++) {
      double t = fa[f] + fx[f] * star + fy[f] * air;
      surface[f] = t;
      wallJoules += (walls[f].finish(t) + bridge[f] * (t - room)) * step;
      if (doorOpen && f == doorFace) {
        openingJoules += (faceRadiation[f] + faceConvection[f]) * (t - room) * step;
      }
      if (hasCompanion[f]) {
        companionBefore[f] = companion[f];
        companion[f] = ea[f] + ex[f] * star + ey[f] * air;
        openingJoules += tail[f] * (companion[f] - room) * step;
        double own = companionBefore[f];
        double held =
            f == FLOOR
                ? ceramicHeld(companion[f]) - ceramicHeld(own)
                : alloyHeld(companion[f]) - alloyHeld(own);
        // the step before has just been paid
        companionDebt[f] =
            companionKilograms[f] * held - companionHold[f] * step * (companion[f] - own);
      }
    }
    lumpBefore[0] = lump[0];
    lumpBefore[1] = lump[1];
    if (lumpKilograms[0] > 0) {
      lump[0] = l0a + l0x * star + l0y * air;
    }
    if (lumpKilograms[1] > 0) {
      lump[1] = l1a + l1x * star + l1y * air;
    }
    if (pieceInside) {
      piece = (pieceHold * piece + pieceStar * star + pieceAir * air) * pieceInverse;
    }
    openingJoules += ko * (star - room) * step;
    airJoules += airCapacity * (air - room) * step;
    advanceSensor(second);
    return watts * step;
  }

  /** What is inside comes out, with its heat; what goes in is as cold as the room. */
  private void changePiece(double second) {
    while (pieces != null
        && changed < pieces.changes().size()
        && second >= pieces.changes().get(changed).atSeconds()) {
      if (pieceInside) {
        openingJoules += pieces.joulesPerKelvin() * piece;
      }
      pieceInside = pieces.changes().get(changed).goesIn();
      piece = room;
      if (pieceInside) {
        openingJoules -= pieces.joulesPerKelvin() * piece;
      }
      changed++;
    }
  }

  /** kg/s of air that goes through the chamber. */
  private double leak(double gapSquareMetres, boolean doorOpen) {
    double cold = 353 / (room + KELVIN); // kg/m³, sheet A.3
    double hot = 353 / (Math.max(air, room) + KELVIN);
    double driving = Math.sqrt(2 * GRAVITY * chamberHeight * hot * (cold - hot));
    // half of a gap lets in, half lets out; Cd 0.6, and little of it passes the whole chamber
    double open =
        truth.leakSquareMetres
            + (ventOpen ? truth.ventSquareMetres : 0)
            + gapSquareMetres * 0.5 * 0.6 * 0.3;
    double flow = open * driving + (hot < cold ? truth.steadyLeakKilogramsPerSecond : 0);
    if (doorOpen) {
      double area = kiln.openingSquareMetres();
      double height = doorFace == ROOF ? 0.1 : chamberHeight;
      double root = 1 + Math.cbrt(cold / hot);
      // Prahl and Emmons, Combustion and Flame 1975 (from memory; sheet A.3), two-way flow
      flow +=
          truth.doorFlowShare
              * 2
              / 3
              * 0.6
              * area
              * Math.sqrt(height * 2 * GRAVITY * cold * (cold - hot) / (root * root * root));
    }
    return flow;
  }

  private void advanceSensor(double second) {
    double near = hasCompanion[tipFace] && tipFace != FLOOR ? companion[tipFace] : elementMean();
    double radiant =
        (1 - truth.tipFaceShare - truth.tipElementShare) * star
            + truth.tipFaceShare * surface[tipFace]
            + truth.tipElementShare * near;
    double kelvin = (sensor + radiant) / 2 + KELVIN;
    double hr = 4 * truth.tipEmissivity * SIGMA * kelvin * kelvin * kelvin;
    double hc = truth.tipConvectionWatts;
    double sheath = kiln.thermocouple().sheathMetres();
    double local = (hr * radiant + hc * air) / (hr + hc);
    double length = truth.immersionMetres;
    RichWall wall = walls[tipFace];
    boolean out = acts(Fault.Kind.TIP_OUT, second);
    if (out && fault != null) {
      length = Math.max(0.004, length - 0.02 * fault.extentShare());
    }
    double m = Math.sqrt(4 * (hr + hc) / (truth.stemWattsPerMetreKelvin * sheath));
    double stem = truth.stemFactor / Math.cosh(m * length);
    local -= stem * (local - wall.celsiusAt(stemCell, truth.stemDepthMetres));
    if (out && fault != null) {
      local -=
          truth.tipOutMix
              * fault.extentShare()
              * (local - wall.celsiusAt(tipOutCell, TIP_OUT_METRES));
    }
    // cylinder sheath, rho c 3.6e6 J/(m³ K): sheet A.6
    double tau = truth.lagFactor * 3.6e6 * sheath / (4 * (hr + hc));
    sensor += (1 - Math.exp(-step / tau)) * (local - sensor);
  }
}
