package org.heatwright.kiln;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.heatwright.material.HeatCurve;
import org.heatwright.numerics.StiffSystem;

/**
 * The heat flow of a kiln as a system of equations: elements, chamber, layered walls, load, sensor
 * and controller. One thread at a time.
 *
 * <p>Surfaces exchange radiation through a common mean radiosity (a star network), and convect to
 * the chamber's air, which has no mass worth counting. Walls and loads are {@link ThermalBody}s.
 * The sensor is a rod that receives both. The controller is a proportional-integral law with its
 * integral frozen while the output is at a limit, or a switch. Equations and limits: {@code
 * docs/models/kiln.md}.
 *
 * <p>The Jacobian is an arrow: a chain for every body, and two unknowns (radiosity and air) through
 * which alone they meet. Its solution costs a few operations a cell.
 */
final class KilnNetwork implements StiffSystem {

  /** Emissivity of brick, fibre and shelves at furnace temperature. Source: estimate. */
  static final double WALL_EMISSIVITY = 0.8;

  /** Watts a square metre of element that a chamber sees. Source: practice, 1 to 2 W/cm². */
  private static final double ELEMENT_WATTS_PER_SQUARE_METRE = 15_000;

  /** Heat capacity of a square metre of element and its holders, J/(m² K). Source: estimate. */
  private static final double ELEMENT_JOULES_PER_SQUARE_METRE_KELVIN = 2500;

  private static final double ELEMENT_EMISSIVITY = 0.8;

  /** Heat capacity of a steel rod, J/(m³ K). Source: estimate. */
  private static final double SENSOR_JOULES_PER_CUBIC_METRE_KELVIN = 3.6e6;

  /** Convection to a thin rod, W/(m² K). Source: estimate. */
  static final double SENSOR_CONVECTION = 15;

  static final double SENSOR_EMISSIVITY = 0.8;
  static final double SHELL_EMISSIVITY = 0.8;
  static final double SHELL_HEIGHT_METRES = 0.35;

  /** What a gap's view of the hot chamber is through the thickness of a door. Source: estimate. */
  private static final double GAP_VIEW = 0.15;

  /** A room that was stated for the day is known better than the kiln's usual one. Estimate. */
  private static final double STATED_ROOM_SHARE = 0.5;

  /** A kelvin inside a boiling mould matters less than one on the display. */
  private static final double LOAD_WEIGHT = 0.2;

  /** Nor does one on a thin wire: what it does to sensor and walls is judged there. */
  private static final double ELEMENT_WEIGHT = 0.05;

  private static final double AIR_JOULES_PER_KILOGRAM_KELVIN = 1100;

  // Positions of the states before the cells.
  static final int SETPOINT = 0;
  static final int INTEGRAL = 1;
  static final int SENSOR = 2;
  static final int ELEMENT = 3;
  static final int ENERGY = 4;
  static final int FIRST_CELL = 5;

  /** How the power follows from the state. */
  enum Drive {
    PROPORTIONAL,
    FULL,
    NONE
  }

  private final int size;
  final int bodies;
  private final int firstLoadCell;
  final int firstLoad;
  final ThermalBody[] body;
  final int[] start;
  private final double fittedWatts;
  final double elementJoulesPerKelvin;
  final double elementRadiant;
  private final double shutElementConvective;
  final double sensorJoulesPerSquareMetreKelvin;
  private final double radiositySeen;
  private final double elementSeen;

  /** Growth of wall conductivity beyond the tables, 1/K about 400 °C. */
  final double conductivitySlope;

  final double readingPerTrue;
  private final double offsetAtZeroKelvins;
  private final double ownGain;
  private final double ownIntegralSeconds;
  private final double ownDerivativeSeconds;
  final double leakWattsPerKelvin;

  /** The part of it that is not a vent's. */
  final double ownLeakWattsPerKelvin;

  final double roomCelsius;
  private final double openingSquareMetres;
  private final double openingWidthMetres;
  private final double openingHeightMetres;
  private final double doorExchangeShare;
  private final double convectionFactor;
  private final double toleranceKelvins;

  // What the program does with the network.
  Drive drive = Drive.PROPORTIONAL;
  private double setpointPerSecond;
  double doorRadiant;
  double doorWattsPerKelvin;
  double fullWatts;
  double sensorOfRadiosity;
  double sensorOfElement;
  double sensorOfAir;
  private double tipInside = 1;
  private double blown = 1;
  double forcedDuty = Double.NaN;
  double gain;
  double integralSeconds;
  double derivativeSeconds;
  double elementConvective;
  double sensorConvection = SENSOR_CONVECTION;

  // Work arrays of one evaluation, by cell.
  final double[] celsius;
  final double[] conductivity;
  final double[] kelvinsPerHeat;
  final double[] conductance;
  private final double[] flow;
  private final double[] lookedUp;

  // The cells of all bodies in one row: nothing conducts between the last of one and the first of
  // the next.
  final HeatCurve[] runCurve;
  final int[] runStart;
  final int wallEnd;
  final double[] conductivityFactor;
  final double[] volume;
  final double[] volumeInverse;
  final double[] area;
  final double[] pathOut;
  final double[] pathIn;
  final double[] contact;

  // Work arrays of one factorisation.
  final double[] pivotInverse;
  final double[] ratio;
  final double[] heatPerKelvin;
  final double[] faceRadiant;
  private final boolean[] outside;
  final double[] faceConvective;
  final double[] radiantSlope;
  double shift;
  double elementPivotInverse;
  double elementSlope;
  double elementByRadiant;
  double elementByAir;
  double sensorByElement;
  double sensorPivotInverse;
  private double sensorSlope;
  boolean proportional;
  double integralSlope;
  private double integralByRaw;
  double derivativeShift;
  double radiantOfRadiant;
  double radiantOfAir;
  double airOfRadiant;
  double airOfAir;

  private Optional<KilnTangents> tangents = Optional.empty();

  // Results of the last evaluation of rates.
  private double duty;
  private double rawDuty;

  KilnNetwork(
      Kiln kiln,
      KilnParameters parameters,
      FiringConditions conditions,
      List<ThermalBody> walls,
      List<ThermalBody> loads,
      double toleranceKelvins) {
    this.toleranceKelvins = toleranceKelvins;
    this.bodies = walls.size() + loads.size();
    this.body = new ThermalBody[bodies];
    this.start = new int[bodies + 1];
    this.firstLoad = walls.size();
    this.firstLoadCell = FIRST_CELL + walls.stream().mapToInt(wall -> wall.cells).sum();
    int position = FIRST_CELL;
    for (int b = 0; b < bodies; b++) {
      body[b] = b < walls.size() ? walls.get(b) : loads.get(b - walls.size());
      start[b] = position;
      position += body[b].cells;
    }
    start[bodies] = position;
    this.size = position;
    HeatingElement element = kiln.element();
    double volts = conditions.supplyVolts().orElse(element.supplyVolts());
    this.fittedWatts = element.wattsAt(volts) * parameters.powerFactor();
    this.fullWatts = fittedWatts;
    double elementArea = element.ratedWatts() / ELEMENT_WATTS_PER_SQUARE_METRE;
    this.elementJoulesPerKelvin =
        elementArea * ELEMENT_JOULES_PER_SQUARE_METRE_KELVIN * parameters.elementFactor();
    this.elementRadiant = elementArea * ELEMENT_EMISSIVITY;
    this.shutElementConvective = elementArea * HeatTransfer.CHAMBER_CONVECTION;
    this.sensorJoulesPerSquareMetreKelvin =
        SENSOR_JOULES_PER_CUBIC_METRE_KELVIN
            * kiln.thermocouple().sheathMetres()
            / 4
            * parameters.sensorFactor();
    this.radiositySeen = SENSOR_EMISSIVITY * (1 - parameters.sensorViewShare());
    this.elementSeen = SENSOR_EMISSIVITY * parameters.sensorViewShare();
    this.conductivitySlope = (parameters.conductivitySteepnessFactor() - 1) / 1000;
    this.readingPerTrue = 1 + parameters.offsetKelvinsAt1000() / 1000;
    this.offsetAtZeroKelvins = kiln.thermocouple().offset().kelvins();
    this.convectionFactor = parameters.convectionFactor();
    this.doorExchangeShare = parameters.doorFactor();
    this.ownGain = parameters.gainPerKelvin();
    this.ownIntegralSeconds = parameters.integralSeconds();
    this.ownDerivativeSeconds = parameters.derivativeSeconds();
    this.gain = ownGain;
    this.integralSeconds = ownIntegralSeconds;
    this.derivativeSeconds = ownDerivativeSeconds;
    double vent = conditions.ventOpen() ? VENT_WATTS_PER_KELVIN : 0;
    this.ownLeakWattsPerKelvin = parameters.leakWattsPerKelvin();
    this.leakWattsPerKelvin = ownLeakWattsPerKelvin + vent;
    this.roomCelsius =
        conditions
            .room()
            .map(stated -> stated.celsius() + STATED_ROOM_SHARE * parameters.roomShiftKelvins())
            .orElse(kiln.room().celsius() + parameters.roomShiftKelvins());
    pullTip(0);
    this.openingSquareMetres = kiln.openingSquareMetres();
    this.openingHeightMetres =
        kiln.door() == Kiln.Door.FRONT
            ? kiln.chamber().heightMetres()
            : Math.sqrt(openingSquareMetres);
    this.openingWidthMetres = openingSquareMetres / openingHeightMetres;
    this.celsius = new double[size];
    this.conductivity = new double[size];
    this.kelvinsPerHeat = new double[size];
    this.conductance = new double[size];
    this.flow = new double[size];
    this.lookedUp = new double[size];
    Arrays.fill(lookedUp, Double.NaN);
    this.conductivityFactor = new double[size];
    this.volume = new double[size];
    this.volumeInverse = new double[size];
    this.area = new double[size];
    this.pathOut = new double[size];
    this.pathIn = new double[size];
    this.contact = new double[size];
    Arrays.fill(pathOut, 1);
    int wallsEnd = FIRST_CELL;
    List<HeatCurve> curves = new ArrayList<>();
    List<Integer> starts = new ArrayList<>();
    for (int b = 0; b < bodies; b++) {
      ThermalBody one = body[b];
      for (int i = 0; i < one.cells; i++) {
        int c = start[b] + i;
        conductivityFactor[c] = one.conductivityFactor[i];
        volume[c] = one.volume[i];
        volumeInverse[c] = 1 / one.volume[i];
        if (i + 1 < one.cells) {
          area[c] = one.area[i];
          pathOut[c] = one.pathOut[i];
          pathIn[c] = one.pathIn[i];
          contact[c] = one.contact[i];
        }
        if (curves.isEmpty() || curves.get(curves.size() - 1) != one.curve[i]) {
          curves.add(one.curve[i]);
          starts.add(c);
        }
      }
      if (one.shellSquareMetres > 0) {
        wallsEnd = start[b + 1];
      }
    }
    this.wallEnd = wallsEnd;
    this.runCurve = curves.toArray(HeatCurve[]::new);
    starts.add(size);
    this.runStart = starts.stream().mapToInt(Integer::intValue).toArray();
    this.pivotInverse = new double[size];
    this.ratio = new double[size];
    this.heatPerKelvin = new double[size];
    this.faceRadiant = new double[bodies];
    this.outside = new boolean[bodies];
    this.faceConvective = new double[bodies];
    this.radiantSlope = new double[bodies];
    for (int b = 0; b < bodies; b++) {
      faceRadiant[b] = body[b].faceSquareMetres * body[b].faceEmissivity;
    }
    blow(1);
  }

  /** Heat lost through an open vent, W/K. Source: estimate (a 15 mm hole's chimney draught). */
  private static final double VENT_WATTS_PER_KELVIN = 0.1;

  /** The state of a kiln that stands at one temperature inside, with walls between it and room. */
  double[] stateAt(double insideCelsius) {
    double[] y = new double[size];
    y[SENSOR] = insideCelsius;
    y[ELEMENT] = insideCelsius;
    y[SETPOINT] = reading(y);
    for (int b = 0; b < bodies; b++) {
      ThermalBody wall = body[b];
      boolean shell = wall.shellSquareMetres > 0;
      double through = 0;
      for (int i = 0; i + 1 < wall.cells; i++) {
        through += wall.pathOut[i] + wall.pathIn[i];
      }
      double depth = 0;
      for (int i = 0; i < wall.cells; i++) {
        // A warm start is taken as a straight line from the hot face to a shell near the room.
        double share = shell && through > 0 ? WARM_START_FALL * depth / through : 0;
        double t = insideCelsius + share * (roomCelsius - insideCelsius);
        y[start[b] + i] = wall.curve[i].heatAt(t);
        depth += wall.pathOut[i] + (i + 1 < wall.cells ? wall.pathIn[i] : 0);
      }
    }
    return y;
  }

  /** By how much {@link #stateAt} grows where it is a kelvin warmer inside. */
  double[] perKelvinAt(double insideCelsius) {
    double[] warmer = stateAt(insideCelsius + WARMER_KELVINS);
    double[] colder = stateAt(insideCelsius - WARMER_KELVINS);
    for (int i = 0; i < size; i++) {
      warmer[i] = (warmer[i] - colder[i]) / (2 * WARMER_KELVINS);
    }
    return warmer;
  }

  private static final double WARMER_KELVINS = 0.5;

  /**
   * The first loads are taken out, and the same go in as cold as the room.
   *
   * @param count how many of the loads, in their order
   */
  void changeLoads(double[] y, int count) {
    for (int b = firstLoad; b < firstLoad + count; b++) {
      for (int i = 0; i < body[b].cells; i++) {
        y[start[b] + i] = body[b].curve[i].heatAt(roomCelsius);
      }
    }
  }

  /**
   * A body comes out; another like it goes in as cold as the room, or nothing does and the chamber
   * does not see it any more.
   *
   * @param load which of the loads
   */
  void bring(double[] y, int load, boolean goesIn) {
    int b = firstLoad + load;
    for (int i = 0; i < body[b].cells; i++) {
      y[start[b] + i] = body[b].curve[i].heatAt(roomCelsius);
    }
    stand(load, goesIn);
  }

  /** The chamber sees a load, or does not. */
  void stand(int load, boolean inside) {
    int b = firstLoad + load;
    outside[b] = !inside;
    faceRadiant[b] = inside ? body[b].faceSquareMetres * body[b].faceEmissivity : 0;
    blow(blown);
  }

  /** Share of inside minus room that has fallen off at the shell of a warm kiln. Estimate. */
  private static final double WARM_START_FALL = 0.85;

  void drive(Drive newDrive) {
    drive = newDrive;
  }

  void moveSetpoint(double kelvinsPerSecond) {
    setpointPerSecond = kelvinsPerSecond;
  }

  /**
   * Opens the door.
   *
   * @param share of the opening, 1 for all of it
   * @param chamberCelsius what is inside, °C
   */
  void openDoor(double share, double chamberCelsius) {
    boolean gap = share < 1;
    blow(gap ? 1 : 1 + DRAUGHT * doorExchangeShare);
    doorRadiant = share * openingSquareMetres * (gap ? GAP_VIEW : 1);
    doorWattsPerKelvin =
        (gap ? share : doorExchangeShare)
            * AIR_JOULES_PER_KILOGRAM_KELVIN
            * HeatTransfer.doorKilogramsPerSecond(
                openingWidthMetres, openingHeightMetres, chamberCelsius, roomCelsius);
  }

  void shutDoor() {
    blow(1);
    doorRadiant = 0;
    doorWattsPerKelvin = 0;
  }

  /** Multiplies all convection inside. */
  private void blow(double times) {
    blown = times;
    double factor = times * convectionFactor;
    elementConvective = shutElementConvective * factor;
    sensorConvection = SENSOR_CONVECTION * factor;
    weighSensor();
    for (int b = 0; b < bodies; b++) {
      faceConvective[b] =
          outside[b] ? 0 : body[b].faceSquareMetres * HeatTransfer.CHAMBER_CONVECTION * factor;
    }
  }

  /** How much an open door's draught adds to convection, of its exchange share. Estimate. */
  private static final double DRAUGHT = 3;

  /** Leaves a share of the elements without power. */
  void loseElements(double share) {
    fullWatts = fittedWatts * (1 - share);
  }

  /**
   * Pulls the tip back into its hole in the wall: it sees less of the chamber by a share, and as
   * much more of the hole. It gets there with its own lag.
   */
  void pullTip(double share) {
    tipInside = 1 - share;
    weighSensor();
  }

  /**
   * A wall so deep is what a tip in its hole sees, m: half of the 20 mm or so that it stood out of
   * the wall by. Estimate.
   */
  private static final double HOLE_METRES = 0.012;

  /**
   * The hole of the thermocouple, °C, at the state that was looked up last: nobody knows in which
   * wall it is.
   */
  private double holeCelsius() {
    double sum = 0;
    double weights = 0;
    for (int b = 0; b < firstLoad; b++) {
      ThermalBody wall = body[b];
      weights += wall.faceSquareMetres;
      sum += wall.faceSquareMetres * wall.at(HOLE_METRES, celsius, start[b]);
    }
    return sum / weights;
  }

  private void weighSensor() {
    sensorOfRadiosity = radiositySeen * tipInside;
    sensorOfElement = elementSeen * tipInside;
    sensorOfAir = sensorConvection * tipInside;
  }

  /**
   * Drives like the mean of these cycles, while {@link Drive#PROPORTIONAL} is on.
   *
   * @return what the integral must be in the state for that
   */
  double average(SwitchCycles cycles) {
    gain = cycles.gainPerKelvin();
    integralSeconds = Double.POSITIVE_INFINITY;
    derivativeSeconds = 0;
    return cycles.duty() / gain - cycles.errorKelvins();
  }

  /** Drives by its own law again. */
  void noAverage() {
    gain = ownGain;
    integralSeconds = ownIntegralSeconds;
    derivativeSeconds = ownDerivativeSeconds;
  }

  /** The relay does as it is told here, whatever the controller says; NaN: it obeys again. */
  void forceDuty(double share) {
    forcedDuty = share;
  }

  /** What the display shows, °C. */
  double reading(double[] y) {
    return y[SENSOR] * readingPerTrue + offsetAtZeroKelvins;
  }

  /** Rate of the display, K/s. */
  double readingRate(double[] rates) {
    return rates[SENSOR] * readingPerTrue;
  }

  double fullWatts() {
    return fullWatts;
  }

  double roomCelsius() {
    return roomCelsius;
  }

  double setpointPerSecond() {
    return setpointPerSecond;
  }

  /** Duty at the last evaluation of {@link #rates}, 0 to 1. */
  double duty() {
    return duty;
  }

  /** What the controller asked for at the last evaluation; above 1 it is at its limit. */
  double rawDuty() {
    return rawDuty;
  }

  /** Temperature of a cell of a body in a state, °C. */
  double cellCelsius(double[] y, int ofBody, int cell) {
    double h = y[start[ofBody] + cell];
    var curve = body[ofBody].curve[cell];
    return curve.celsius(curve.interval(h), h);
  }

  /** A black surrounding that radiates like the chamber, °C, at the state looked up last. */
  double radiantCelsius(double[] y) {
    return HeatTransfer.radiantCelsius(radiosity(y));
  }

  /** Heat stored in all cells, elements and nothing else, J, from an arbitrary zero. */
  double storedJoules(double[] y) {
    double sum = y[ELEMENT] * elementJoulesPerKelvin;
    for (int b = 0; b < bodies; b++) {
      for (int i = 0; i < body[b].cells; i++) {
        sum += y[start[b] + i] * body[b].volume[i];
      }
    }
    return sum;
  }

  /** Heat that leaves through shells, leaks and an open door, W. */
  double lostWatts(double[] y) {
    lookUp(y);
    double radiosity = radiosity(y);
    double air = airCelsius(y);
    double lost =
        (leakWattsPerKelvin + doorWattsPerKelvin) * (air - roomCelsius)
            + doorRadiant * (radiosity - HeatTransfer.emission(roomCelsius));
    for (int b = 0; b < bodies; b++) {
      lost += shellWatts(b);
    }
    return lost;
  }

  private double shellWatts(int b) {
    double area = body[b].shellSquareMetres;
    if (area == 0) {
      return 0;
    }
    double shell = celsius[start[b + 1] - 1];
    double above = shell - roomCelsius;
    return area
        * (HeatTransfer.shellConvection(above, SHELL_HEIGHT_METRES) * above
            + SHELL_EMISSIVITY
                * (HeatTransfer.emission(shell) - HeatTransfer.emission(roomCelsius)));
  }

  /** What a shell loses more of a kelvin, W/K. */
  double shellSlope(int b) {
    double area = body[b].shellSquareMetres;
    if (area == 0) {
      return 0;
    }
    double shell = celsius[start[b + 1] - 1];
    return area
        * (1.25 * HeatTransfer.shellConvection(shell - roomCelsius, SHELL_HEIGHT_METRES)
            + SHELL_EMISSIVITY * HeatTransfer.emissionSlope(shell));
  }

  @Override
  public int size() {
    return size;
  }

  static final double LEAST_STEEPNESS = 0.3;

  private void lookUp(double[] y) {
    for (int run = 0; run < runCurve.length; run++) {
      runCurve[run].lookUp(
          y, runStart[run], runStart[run + 1], celsius, conductivity, kelvinsPerHeat);
    }
    System.arraycopy(y, 0, lookedUp, 0, size);
    for (int c = FIRST_CELL; c < wallEnd; c++) {
      conductivity[c] *=
          conductivityFactor[c]
              * Math.max(LEAST_STEEPNESS, 1 + conductivitySlope * (celsius[c] - 400));
    }
    for (int c = wallEnd; c < size; c++) {
      conductivity[c] *= conductivityFactor[c];
    }
    for (int c = FIRST_CELL; c < size - 1; c++) {
      double here = conductivity[c];
      double next = conductivity[c + 1];
      double both = here * next;
      conductance[c] = area[c] * both / (pathOut[c] * next + pathIn[c] * here + contact[c] * both);
    }
  }

  /** Mean radiosity of the chamber, W/m². */
  double radiosity(double[] y) {
    double weights = elementRadiant + doorRadiant;
    double sum =
        elementRadiant * HeatTransfer.emission(y[ELEMENT])
            + (doorRadiant > 0 ? doorRadiant * HeatTransfer.emission(roomCelsius) : 0);
    for (int b = 0; b < bodies; b++) {
      weights += faceRadiant[b];
      sum += faceRadiant[b] * HeatTransfer.emission(celsius[start[b]]);
    }
    return sum / weights;
  }

  /** The chamber's air, °C, at the state that was looked up last. */
  double airCelsius(double[] y) {
    double leak = leakWattsPerKelvin + doorWattsPerKelvin;
    double weights = elementConvective + leak;
    double sum = elementConvective * y[ELEMENT] + leak * roomCelsius;
    for (int b = 0; b < bodies; b++) {
      weights += faceConvective[b];
      sum += faceConvective[b] * celsius[start[b]];
    }
    return sum / weights;
  }

  @Override
  public void rates(double[] y, double[] rates) {
    lookUp(y);
    double radiosity = radiosity(y);
    double air = airCelsius(y);
    double error = y[SETPOINT] - reading(y);
    rates[SENSOR] = sensorRate(y, radiosity, air);
    rawDuty =
        switch (drive) {
          case PROPORTIONAL -> wanted(y, error, rates[SENSOR]);
          case FULL -> 1;
          case NONE -> 0;
        };
    duty = Double.isNaN(forcedDuty) ? Math.max(0, Math.min(1, rawDuty)) : forcedDuty;
    rates[SETPOINT] = setpointPerSecond;
    rates[INTEGRAL] =
        drive == Drive.PROPORTIONAL ? integralShare(rawDuty, error) * error / integralSeconds : 0;
    double watts = duty * fullWatts;
    rates[ENERGY] = watts;
    rates[ELEMENT] =
        (watts
                + elementRadiant * (radiosity - HeatTransfer.emission(y[ELEMENT]))
                + elementConvective * (air - y[ELEMENT]))
            / elementJoulesPerKelvin;
    for (int c = FIRST_CELL; c < size - 1; c++) {
      flow[c] = conductance[c] * (celsius[c] - celsius[c + 1]);
    }
    rates[FIRST_CELL] = -flow[FIRST_CELL] * volumeInverse[FIRST_CELL];
    for (int c = FIRST_CELL + 1; c < size; c++) {
      rates[c] = (flow[c - 1] - flow[c]) * volumeInverse[c];
    }
    for (int b = 0; b < bodies; b++) {
      int face = start[b];
      double surface = celsius[face];
      rates[face] +=
          (faceRadiant[b] * (radiosity - HeatTransfer.emission(surface))
                  + faceConvective[b] * (air - surface))
              * volumeInverse[face];
      int last = start[b + 1] - 1;
      rates[last] -= shellWatts(b) * volumeInverse[last];
    }
  }

  /** How fast the sensor warms, K/s. */
  private double sensorRate(double[] y, double radiosity, double air) {
    double ofHole = 0;
    if (tipInside < 1) {
      double hole = holeCelsius();
      ofHole =
          (1 - tipInside)
              * (sensorConvection * hole + SENSOR_EMISSIVITY * HeatTransfer.emission(hole));
    }
    return (sensorConvection * (tipInside * air - y[SENSOR])
            + ofHole
            + sensorOfRadiosity * radiosity
            + sensorOfElement * HeatTransfer.emission(y[ELEMENT])
            - SENSOR_EMISSIVITY * HeatTransfer.emission(y[SENSOR]))
        / sensorJoulesPerSquareMetreKelvin;
  }

  /** What the controller's law asks for, a share of full power; below 0 and above 1 too. */
  double wanted(double[] y, double error, double sensorRate) {
    return gain * (error + y[INTEGRAL] - derivativeSeconds * readingPerTrue * sensorRate);
  }

  /**
   * Share of the integral that still runs: all of it while the output is free or comes back from a
   * limit, none of it where it would go further beyond one, with a narrow passage between so that
   * the equations stay continuous.
   */
  static double integralShare(double raw, double error) {
    double beyond = raw > 1 && error > 0 ? raw - 1 : raw < 0 && error < 0 ? -raw : 0;
    return Math.max(0, 1 - beyond / INTEGRAL_PASSAGE);
  }

  /** How {@link #integralShare} changes with the output. */
  static double integralShareSlope(double raw, double error) {
    double share = integralShare(raw, error);
    return share > 0 && share < 1 ? (raw > 1 ? -1 : 1) / INTEGRAL_PASSAGE : 0;
  }

  static final double INTEGRAL_PASSAGE = 0.05;

  /** Lets derivatives go along with the state. */
  void watch(KilnTangents watching) {
    tangents = Optional.of(watching);
  }

  @Override
  public void atStage(int stage, double[] y, double[] rates) {
    if (tangents.isPresent()) {
      tangents.get().linearise(stage, y, rates);
    }
  }

  @Override
  public void factor(double[] y, double newShift) {
    shift = newShift;
    // Rates at the same state have looked it up.
    if (!Arrays.equals(y, FIRST_CELL, size, lookedUp, FIRST_CELL, size)) {
      lookUp(y);
    }
    for (int c = FIRST_CELL; c < size; c++) {
      heatPerKelvin[c] = 1 / kelvinsPerHeat[c];
    }
    double weights = elementRadiant + doorRadiant;
    double airWeights = elementConvective + leakWattsPerKelvin + doorWattsPerKelvin;
    double error = y[SETPOINT] - reading(y);
    boolean controlled = drive == Drive.PROPORTIONAL;
    double raw = controlled ? wanted(y, error, sensorRate(y, radiosity(y), airCelsius(y))) : 0;
    proportional = controlled && raw > 0 && raw < 1 && Double.isNaN(forcedDuty);
    integralSlope = controlled ? integralShare(raw, error) / integralSeconds / shift : 0;
    integralByRaw = controlled ? integralShareSlope(raw, error) * error / integralSeconds : 0;
    double radiantByRadiant = 0;
    double radiantByAir = 0;
    double airByAir = 0;
    for (int b = 0; b < bodies; b++) {
      ThermalBody one = body[b];
      int offset = start[b];
      int last = one.cells - 1;
      double below = 0; // conductance to the next cell, already eliminated
      double pivot;
      double shellSlope = shellSlope(b);
      for (int i = last; i >= 0; i--) {
        int c = offset + i;
        double toFace = i > 0 ? conductance[c - 1] : 0;
        pivot = shift * volume[c] * heatPerKelvin[c] + toFace + below;
        if (i == last) {
          pivot += shellSlope;
        }
        if (i == 0) {
          radiantSlope[b] = faceRadiant[b] * HeatTransfer.emissionSlope(celsius[c]);
          pivot += radiantSlope[b] + faceConvective[b];
        }
        double inverse = 1 / pivot;
        pivotInverse[c] = inverse;
        ratio[c] = toFace * inverse;
        // What the next cell toward the face sees of this one.
        below = toFace * (1 - ratio[c]);
      }
      double inverse = pivotInverse[offset];
      weights += faceRadiant[b];
      airWeights += faceConvective[b];
      radiantByRadiant += radiantSlope[b] * faceRadiant[b] * inverse;
      radiantByAir += radiantSlope[b] * faceConvective[b] * inverse;
      airByAir += faceConvective[b] * faceConvective[b] * inverse;
    }
    elementSlope = elementRadiant * HeatTransfer.emissionSlope(y[ELEMENT]);
    sensorSlope = SENSOR_EMISSIVITY * HeatTransfer.emissionSlope(y[SENSOR]);
    sensorPivotInverse =
        1 / (shift * sensorJoulesPerSquareMetreKelvin + sensorSlope + sensorConvection);
    // Radiosity and air move the element directly, and through sensor and controller, which see the
    // element too.
    derivativeShift = derivativeSeconds * shift;
    double dutyPerSensor =
        proportional ? -gain * readingPerTrue * (1 + integralSlope + derivativeShift) : 0;
    sensorByElement = sensorOfElement * HeatTransfer.emissionSlope(y[ELEMENT]) * sensorPivotInverse;
    elementPivotInverse =
        1
            / (shift * elementJoulesPerKelvin
                + elementSlope
                + elementConvective
                - fullWatts * dutyPerSensor * sensorByElement);
    elementByRadiant =
        elementPivotInverse
            * (elementRadiant + fullWatts * dutyPerSensor * sensorOfRadiosity * sensorPivotInverse);
    elementByAir =
        elementPivotInverse
            * (elementConvective + fullWatts * dutyPerSensor * sensorOfAir * sensorPivotInverse);
    // Rows: weights X - sum(radiant slope w) = ..., airWeights A - sum(convective w) = ...
    radiantOfRadiant = weights - radiantByRadiant - elementSlope * elementByRadiant;
    radiantOfAir = -radiantByAir - elementSlope * elementByAir;
    double airByRadiant = 0;
    for (int b = 0; b < bodies; b++) {
      airByRadiant += faceConvective[b] * faceRadiant[b] * pivotInverse[start[b]];
    }
    airOfRadiant = -airByRadiant - elementConvective * elementByRadiant;
    airOfAir = airWeights - airByAir - elementConvective * elementByAir;
  }

  @Override
  public void solve(double[] rhs, double[] x) {
    double perShift = 1 / shift;
    double setpoint = rhs[SETPOINT] * perShift;
    // Parts that do not depend on radiosity and air.
    double sensorPart = rhs[SENSOR] * sensorJoulesPerSquareMetreKelvin * sensorPivotInverse;
    double integralPart = integralChange(setpoint, sensorPart, rhs[SENSOR], rhs[INTEGRAL]);
    double dutyPart = dutyChange(setpoint, sensorPart, rhs[SENSOR], integralPart);
    double elementPart =
        (rhs[ELEMENT] * elementJoulesPerKelvin + fullWatts * dutyPart) * elementPivotInverse;
    double radiantRight = elementSlope * elementPart;
    double airRight = elementConvective * elementPart;
    for (int b = 0; b < bodies; b++) {
      int face = start[b];
      double carried = 0;
      for (int c = start[b + 1] - 1; c >= face; c--) {
        double right = rhs[c] * volume[c] + carried;
        x[c] = right * pivotInverse[c];
        carried = ratio[c] * right;
      }
      radiantRight += radiantSlope[b] * x[face];
      airRight += faceConvective[b] * x[face];
    }
    double determinant = radiantOfRadiant * airOfAir - radiantOfAir * airOfRadiant;
    double radiosity = (radiantRight * airOfAir - radiantOfAir * airRight) / determinant;
    double air = (radiantOfRadiant * airRight - airOfRadiant * radiantRight) / determinant;
    double element = elementPart + elementByRadiant * radiosity + elementByAir * air;
    double sensor =
        sensorPart
            + (sensorOfRadiosity * radiosity + sensorOfAir * air) * sensorPivotInverse
            + sensorByElement * element;
    double integral = integralChange(setpoint, sensor, rhs[SENSOR], rhs[INTEGRAL]);
    double dutyChange = dutyChange(setpoint, sensor, rhs[SENSOR], integral);
    double energyRight = rhs[ENERGY];
    x[ELEMENT] = element;
    x[SETPOINT] = setpoint;
    x[SENSOR] = sensor;
    x[INTEGRAL] = integral;
    x[ENERGY] = (energyRight + fullWatts * dutyChange) * perShift;
    for (int b = 0; b < bodies; b++) {
      int face = start[b];
      double before = (faceRadiant[b] * radiosity + faceConvective[b] * air) * pivotInverse[face];
      before += x[face];
      x[face] = before * heatPerKelvin[face];
      int end = start[b + 1];
      for (int c = face + 1; c < end; c++) {
        before = x[c] + ratio[c] * before;
        x[c] = before * heatPerKelvin[c];
      }
    }
  }

  /** By how much the integral changes with setpoint and sensor; where it passes, by itself too. */
  double integralChange(double setpoint, double sensor, double sensorRight, double right) {
    double error = setpoint - readingPerTrue * sensor;
    if (integralByRaw == 0) {
      return right / shift + integralSlope * error;
    }
    double ahead = derivativeShift * sensor - derivativeSeconds * sensorRight;
    double passing = integralByRaw * gain;
    return (right + integralSlope * shift * error + passing * (error - readingPerTrue * ahead))
        / (shift - passing);
  }

  /**
   * By how much the duty changes with setpoint, sensor and integral. The slope that the derivative
   * sees follows from the sensor's row, shift x - slope = right.
   */
  double dutyChange(double setpoint, double sensor, double right, double integral) {
    if (!proportional) {
      return 0;
    }
    double ahead = derivativeShift * sensor - derivativeSeconds * right;
    return gain * (setpoint - readingPerTrue * (sensor + ahead) + integral);
  }

  @Override
  public double errorNorm(double[] y, double[] error) {
    double worst =
        Math.max(
            Math.abs(error[SENSOR]),
            Math.max(Math.abs(error[ELEMENT]) * ELEMENT_WEIGHT, Math.abs(error[INTEGRAL]) * 0.2));
    for (int c = FIRST_CELL; c < firstLoadCell; c++) {
      worst = Math.max(worst, Math.abs(error[c]) * kelvinsPerHeat[c]);
    }
    for (int c = firstLoadCell; c < size; c++) {
      worst = Math.max(worst, Math.abs(error[c]) * kelvinsPerHeat[c] * LOAD_WEIGHT);
    }
    return worst / toleranceKelvins;
  }
}
