package org.heatwright.kiln;

import java.util.Arrays;
import java.util.List;
import org.heatwright.kiln.KilnNetwork.Drive;
import org.heatwright.numerics.TangentStepper;

/**
 * How the state of a {@link KilnNetwork} changes with scores of its kiln, along the steps that it
 * takes: first derivatives of the network's own equations, written out, and of the times at which
 * the program goes on. Equations: {@code docs/models/kiln.md}. One thread at a time.
 *
 * <p>Not written out: doors, tips out of their place, pieces, and a relay or a switch that is
 * resolved; {@link FiringSimulation#mayDifferentiate} says where they are.
 */
final class KilnTangents implements TangentStepper.Linearised {

  private static final int STAGES = 4;

  /** Where only what the sensor and the meter do is wanted. */
  private static final int OUTSIDE = STAGES;

  private final KilnNetwork network;
  private final int width;
  private final TangentStepper stepper;
  private final Stage[] stages = new Stage[STAGES + 1];

  /** Derivatives of the state, {@link #width} a state. */
  private final double[] s;

  /** The state's rates just before the program goes on. */
  private final double[] ratesBefore;

  /** How much later the program goes on next, s a score. */
  private final double[] later;

  // Places of quantities that the equations know one by one, and what a score is of each; -1: none.
  private final int power;
  private final int conductivity;
  private final int steepness;
  private final int capacity;
  private final int leak;
  private final int fittings;
  private final int sensor;
  private final int convection;
  private final int view;
  private final int ofGain;
  private final int ofIntegral;
  private final int ofDerivative;
  private final int element;
  private final int crest;
  private final double[] perScore;

  // Work arrays, one a derivative.
  private final double[] radiosity;
  private final double[] air;
  private final double[] sensorRate;
  private final double[] duty;
  private final double[] flow;
  private final double[] sensorPart;
  private final double[] integralPart;
  private final double[] elementPart;
  private final double[] carried;

  // The record: one a derivative and row.
  private double[] reading;
  private double[] readingRate;
  private double[] watts;
  private double[] joules;

  /** The equations linearised about a stage of a step. */
  private final class Stage {
    final double[] up = new double[network.size()];
    final double[] down = new double[network.size()];
    final double[] byConductivity = new double[network.size()];
    final double[] bySteepness = new double[network.size()];
    final double[] rates = new double[network.size()];
    final double[] faceRadiant = new double[network.bodies];
    final double[] faceConvective = new double[network.bodies];
    final double[] shell = new double[network.bodies];
    final double[] faceAboveAir = new double[network.bodies];
    double radiantWeights;
    double airWeights;
    double elementSlope;
    double sensorSlope;
    double elementAboveRadiosity;
    double airAboveRoom;
    double airAboveElement;
    double airAboveSensor;
    double duty;
    double raw;
    boolean proportional;
    double integralShare;
    double integralShareSlope;
    double error;
  }

  /**
   * @param network what goes
   * @param quantities by whose scores
   * @param perScore what a score is of each: of those that are logarithms, in the logarithm; of
   *     others in their own unit
   * @param more how many derivatives there are beside, whose equations hold nothing of their own
   */
  KilnTangents(KilnNetwork network, KilnQuantity[] quantities, double[] perScore, int more) {
    this.network = network;
    this.width = quantities.length + more;
    int n = network.size();
    this.stepper = new TangentStepper(this, n, width);
    for (int i = 0; i < stages.length; i++) {
      stages[i] = new Stage();
    }
    this.s = new double[n * width];
    this.ratesBefore = new double[n];
    this.later = new double[width];
    this.perScore = perScore.clone();
    this.power = place(quantities, KilnQuantity.POWER);
    this.conductivity = place(quantities, KilnQuantity.CONDUCTIVITY);
    this.steepness = place(quantities, KilnQuantity.STEEPNESS);
    this.capacity = place(quantities, KilnQuantity.CAPACITY);
    this.leak = place(quantities, KilnQuantity.LEAK);
    this.fittings = place(quantities, KilnQuantity.FITTINGS);
    this.sensor = place(quantities, KilnQuantity.SENSOR);
    this.convection = place(quantities, KilnQuantity.CONVECTION);
    this.view = place(quantities, KilnQuantity.VIEW);
    this.ofGain = place(quantities, KilnQuantity.GAIN);
    this.ofIntegral = place(quantities, KilnQuantity.INTEGRAL);
    this.ofDerivative = place(quantities, KilnQuantity.DERIVATIVE);
    this.element = place(quantities, KilnQuantity.ELEMENT);
    this.crest = place(quantities, KilnQuantity.CREST);
    this.radiosity = new double[width];
    this.air = new double[width];
    this.sensorRate = new double[width];
    this.duty = new double[width];
    this.flow = new double[width];
    this.sensorPart = new double[width];
    this.integralPart = new double[width];
    this.elementPart = new double[width];
    this.carried = new double[width];
    int rows = 512;
    this.reading = new double[rows * width];
    this.readingRate = new double[rows * width];
    this.watts = new double[rows * width];
    this.joules = new double[rows * width];
    network.watch(this);
  }

  private static int place(KilnQuantity[] quantities, KilnQuantity quantity) {
    return Arrays.asList(quantities).indexOf(quantity);
  }

  // ------------------------------------------------------------------ what happens

  /**
   * The start is warmer.
   *
   * @param place which derivative
   * @param kelvins by so many kelvins a score
   * @param perKelvin by how much a state is greater where the kiln begins a kelvin warmer
   */
  void warmer(int place, double kelvins, double[] perKelvin) {
    for (int i = 0; i < perKelvin.length; i++) {
      s[i * width + place] = kelvins * perKelvin[i];
    }
  }

  /**
   * Takes the step that the state took last.
   *
   * @param raw what the controller asked for on its way: the step ends where that meets a limit, so
   *     that all of it is on one side
   */
  void step(double length, double raw) {
    for (int i = 0; i < STAGES; i++) {
      limits(stages[i], raw);
    }
    stepper.step(s, length);
  }

  /** The program goes on from here: what the state does until then. */
  void leave(double[] rates) {
    System.arraycopy(rates, 0, ratesBefore, 0, rates.length);
  }

  /**
   * The program has gone on: what goes on later is behind by what the rates have changed by.
   *
   * @param rates of the state now
   * @param set whether the setpoint was put to where it is
   */
  void enter(double[] rates, boolean set) {
    if (set) {
      ratesBefore[KilnNetwork.SETPOINT] = 0;
      Arrays.fill(s, KilnNetwork.SETPOINT * width, KilnNetwork.SETPOINT * width + width, 0);
    }
    for (int i = 0; i < rates.length; i++) {
      double change = ratesBefore[i] - rates[i];
      if (change != 0) {
        for (int l = 0; l < width; l++) {
          s[i * width + l] += change * later[l];
        }
      }
    }
  }

  /** The program goes on next at a time that nothing moves. */
  void goesOnOnTime() {
    Arrays.fill(later, 0);
  }

  /**
   * The program goes on next at a time that one score alone moves.
   *
   * @param seconds by so many seconds a score
   */
  void goesOnBy(int place, double seconds) {
    Arrays.fill(later, 0);
    later[place] = seconds;
  }

  /** The program goes on next where the setpoint, which moves so fast, came to where it is. */
  void goesOnBySetpoint(double perSecond) {
    for (int l = 0; l < width && perSecond != 0; l++) {
      later[l] = -s[KilnNetwork.SETPOINT * width + l] / perSecond;
    }
  }

  /**
   * The program goes on next where the reading, which moves so fast, came to where it is.
   *
   * @param outward by how much that is further above the target where the display's crests are, K a
   *     K
   */
  void goesOnByReading(double perSecond, double outward) {
    for (int l = 0; l < width && perSecond != 0; l++) {
      double level = l == crest ? outward * perScore[l] : 0;
      later[l] = (level - network.readingPerTrue * s[KilnNetwork.SENSOR * width + l]) / perSecond;
    }
  }

  /** How much later the program goes on next, s a score; a copy. */
  double[] laterSeconds() {
    return later.clone();
  }

  /** The integral keeps a share of itself. */
  void keepIntegral(double share) {
    for (int l = 0; l < width; l++) {
      s[KilnNetwork.INTEGRAL * width + l] *= share;
    }
  }

  /** The setpoint is put to where the reading is. */
  void setToReading() {
    for (int l = 0; l < width; l++) {
      s[KilnNetwork.SETPOINT * width + l] =
          network.readingPerTrue * s[KilnNetwork.SENSOR * width + l];
    }
  }

  /**
   * Writes down a row.
   *
   * @param row which one
   * @param y the state, whose rates were evaluated last
   */
  void record(int row, double[] y, double[] rates) {
    if ((row + 1) * width > reading.length) {
      reading = Arrays.copyOf(reading, 2 * reading.length);
      readingRate = Arrays.copyOf(readingRate, 2 * readingRate.length);
      watts = Arrays.copyOf(watts, 2 * watts.length);
      joules = Arrays.copyOf(joules, 2 * joules.length);
    }
    Stage here = stages[OUTSIDE];
    surfaces(here, y, rates);
    chamber(here, s);
    sensor(here, s);
    duty(here, s);
    for (int l = 0; l < width; l++) {
      int at = row * width + l;
      reading[at] = network.readingPerTrue * s[KilnNetwork.SENSOR * width + l];
      readingRate[at] = network.readingPerTrue * sensorRate[l];
      watts[at] = network.fullWatts * duty[l];
      joules[at] = s[KilnNetwork.ENERGY * width + l];
    }
    if (power >= 0) {
      watts[row * width + power] += here.duty * network.fullWatts * perScore[power];
    }
  }

  /** A run moved along one of the derivatives by so many scores, with these times of its holds. */
  FiringRun moved(FiringRun run, int place, double scores, List<FiringRun.SegmentRun> segments) {
    FiringRun.Columns columns = run.columns();
    double[] rates = columns.readingRate().clone();
    for (int r = 0; r < columns.rows(); r++) {
      double by = scores * rate(columns.seconds(), r, place);
      rates[2 * r] += by;
      if (r > 0) {
        rates[2 * r - 1] += by;
      }
    }
    return run.with(
        moved(columns.reading(), reading, place, scores),
        rates,
        moved(columns.watts(), watts, place, scores),
        moved(columns.joules(), joules, place, scores),
        segments);
  }

  /**
   * How fast a derivative of the reading goes at a row: as its equation says, as far as what it
   * does about that row bears it out. After a step that is long beside the sensor's lag a kelvin's
   * error in the derivative would be a great one in its rate.
   */
  private double rate(double[] seconds, int row, int place) {
    double left = secant(seconds, row - 1, place);
    double right = secant(seconds, row, place);
    if (Double.isNaN(left)) {
      left = secant(seconds, row + 1, place);
    }
    if (Double.isNaN(right)) {
      right = secant(seconds, row - 2, place);
    }
    double own = readingRate[row * width + place];
    if (Double.isNaN(left) || Double.isNaN(right)) {
      return own;
    }
    double more = Math.abs(right - left);
    return Math.max(Math.min(left, right) - more, Math.min(Math.max(left, right) + more, own));
  }

  /** How fast it went from a row to the next; not a number if there is no such step. */
  private double secant(double[] seconds, int row, int place) {
    if (row < 0 || row + 1 >= seconds.length || seconds[row + 1] <= seconds[row]) {
      return Double.NaN;
    }
    return (reading[(row + 1) * width + place] - reading[row * width + place])
        / (seconds[row + 1] - seconds[row]);
  }

  private double[] moved(double[] column, double[] by, int place, double scores) {
    double[] moved = column.clone();
    for (int r = 0; r < moved.length; r++) {
      moved[r] += scores * by[r * width + place];
    }
    return moved;
  }

  // ------------------------------------------------------------------ the equations

  /** Called by the network where a step evaluates it. */
  void linearise(int number, double[] y, double[] rates) {
    Stage stage = stages[number];
    surfaces(stage, y, rates);
    System.arraycopy(rates, 0, stage.rates, 0, rates.length);
    conduction(stage, y);
  }

  private void surfaces(Stage stage, double[] y, double[] rates) {
    KilnNetwork k = network;
    double radiantWeights = k.elementRadiant + k.doorRadiant;
    double airWeights = k.elementConvective + k.leakWattsPerKelvin + k.doorWattsPerKelvin;
    double airCelsius = k.airCelsius(y);
    double radiosity = k.radiosity(y);
    for (int b = 0; b < k.bodies; b++) {
      int face = k.start[b];
      radiantWeights += k.faceRadiant[b];
      airWeights += k.faceConvective[b];
      double perHeat = k.kelvinsPerHeat[face];
      stage.faceRadiant[b] =
          k.faceRadiant[b] * HeatTransfer.emissionSlope(k.celsius[face]) * perHeat;
      stage.faceConvective[b] = k.faceConvective[b] * perHeat;
      stage.faceAboveAir[b] = k.celsius[face] - airCelsius;
      int last = k.start[b + 1] - 1;
      stage.shell[b] = k.shellSlope(b) * k.kelvinsPerHeat[last];
    }
    stage.radiantWeights = radiantWeights;
    stage.airWeights = airWeights;
    double ofElement = y[KilnNetwork.ELEMENT];
    double ofSensor = y[KilnNetwork.SENSOR];
    stage.elementSlope = HeatTransfer.emissionSlope(ofElement);
    stage.sensorSlope = HeatTransfer.emissionSlope(ofSensor);
    stage.elementAboveRadiosity = HeatTransfer.emission(ofElement) - radiosity;
    stage.airAboveRoom = airCelsius - k.roomCelsius;
    stage.airAboveElement = airCelsius - ofElement;
    stage.airAboveSensor = airCelsius - ofSensor;
    stage.rates[KilnNetwork.SENSOR] = rates[KilnNetwork.SENSOR];
    stage.error = y[KilnNetwork.SETPOINT] - k.reading(y);
    boolean controlled = k.drive == Drive.PROPORTIONAL;
    stage.raw = controlled ? k.wanted(y, stage.error, rates[KilnNetwork.SENSOR]) : 0;
    boolean forced = !Double.isNaN(k.forcedDuty);
    stage.duty =
        forced ? k.forcedDuty : k.drive == Drive.FULL ? 1 : Math.max(0, Math.min(1, stage.raw));
    stage.integralShare = controlled ? KilnNetwork.integralShare(stage.raw, stage.error) : 0;
    limits(stage, stage.raw);
  }

  /** On which side of the controller's limits a stage lies. */
  private void limits(Stage stage, double raw) {
    boolean controlled = network.drive == Drive.PROPORTIONAL;
    stage.proportional = controlled && raw > 0 && raw < 1 && Double.isNaN(network.forcedDuty);
    stage.integralShareSlope = controlled ? KilnNetwork.integralShareSlope(raw, stage.error) : 0;
  }

  private void conduction(Stage stage, double[] y) {
    KilnNetwork k = network;
    double[] slope = stage.up; // for a moment
    for (int run = 0; run < k.runCurve.length; run++) {
      k.runCurve[run].conductivitySlopes(y, k.runStart[run], k.runStart[run + 1], slope);
    }
    double[] byHeat = stage.down;
    double[] bySteepness = stage.bySteepness;
    for (int c = KilnNetwork.FIRST_CELL; c < k.wallEnd; c++) {
      double above = k.celsius[c] - 400;
      double steep = 1 + k.conductivitySlope * above;
      boolean free = steep > KilnNetwork.LEAST_STEEPNESS;
      double factor = free ? steep : KilnNetwork.LEAST_STEEPNESS;
      double relative = free ? 1 / factor : 0;
      double own = k.conductivity[c];
      byHeat[c] =
          k.conductivityFactor[c] * factor * slope[c]
              + own * relative * k.conductivitySlope * k.kelvinsPerHeat[c];
      bySteepness[c] = own * relative * above / 1000;
    }
    for (int c = k.wallEnd; c < byHeat.length; c++) {
      byHeat[c] = k.conductivityFactor[c] * slope[c];
      bySteepness[c] = 0;
    }
    int end = byHeat.length - 1;
    for (int c = KilnNetwork.FIRST_CELL; c < end; c++) {
      double here = k.conductivity[c];
      double next = k.conductivity[c + 1];
      double both = here * next;
      double inverse = 1 / (k.pathOut[c] * next + k.pathIn[c] * here + k.contact[c] * both);
      double fall = (k.celsius[c] - k.celsius[c + 1]) * k.area[c] * inverse * inverse;
      double byHere = fall * k.pathOut[c] * next * next;
      double byNext = fall * k.pathIn[c] * here * here;
      double conductance = k.conductance[c];
      stage.byConductivity[c] = c < k.wallEnd ? byHere * here + byNext * next : 0;
      double steep = byHere * bySteepness[c] + byNext * bySteepness[c + 1];
      stage.up[c] = conductance * k.kelvinsPerHeat[c] + byHere * byHeat[c];
      double down = conductance * k.kelvinsPerHeat[c + 1] - byNext * byHeat[c + 1];
      // What this cell's own conductivity does is used up.
      byHeat[c] = down;
      bySteepness[c] = steep;
    }
    stage.up[end] = 0;
    stage.down[end] = 0;
    stage.byConductivity[end] = 0;
    bySteepness[end] = 0;
  }

  /** How radiosity and air change. */
  private void chamber(Stage stage, double[] x) {
    KilnNetwork k = network;
    int e = KilnNetwork.ELEMENT * width;
    double ofElement = k.elementRadiant * stage.elementSlope;
    for (int l = 0; l < width; l++) {
      radiosity[l] = ofElement * x[e + l];
      air[l] = k.elementConvective * x[e + l];
    }
    for (int b = 0; b < k.bodies; b++) {
      int face = k.start[b] * width;
      double radiant = stage.faceRadiant[b];
      double convective = stage.faceConvective[b];
      for (int l = 0; l < width; l++) {
        radiosity[l] += radiant * x[face + l];
        air[l] += convective * x[face + l];
      }
    }
    double perRadiant = 1 / stage.radiantWeights;
    double perAir = 1 / stage.airWeights;
    for (int l = 0; l < width; l++) {
      radiosity[l] *= perRadiant;
      air[l] *= perAir;
    }
    if (leak >= 0) {
      air[leak] -= stage.airAboveRoom * perAir * k.ownLeakWattsPerKelvin * perScore[leak];
    }
    if (convection >= 0) {
      air[convection] +=
          (k.leakWattsPerKelvin + k.doorWattsPerKelvin)
              * stage.airAboveRoom
              * perAir
              * perScore[convection];
    }
  }

  private void sensor(Stage stage, double[] x) {
    KilnNetwork k = network;
    int e = KilnNetwork.ELEMENT * width;
    int m = KilnNetwork.SENSOR * width;
    double inverse = 1 / k.sensorJoulesPerSquareMetreKelvin;
    double byAir = k.sensorOfAir * inverse;
    double byRadiosity = k.sensorOfRadiosity * inverse;
    double byElement = k.sensorOfElement * stage.elementSlope * inverse;
    double byItself =
        (k.sensorConvection + KilnNetwork.SENSOR_EMISSIVITY * stage.sensorSlope) * inverse;
    for (int l = 0; l < width; l++) {
      sensorRate[l] =
          byAir * air[l] + byRadiosity * radiosity[l] + byElement * x[e + l] - byItself * x[m + l];
    }
    if (sensor >= 0) {
      sensorRate[sensor] -= stage.rates[KilnNetwork.SENSOR] * perScore[sensor];
    }
    if (convection >= 0) {
      sensorRate[convection] +=
          k.sensorConvection * stage.airAboveSensor * inverse * perScore[convection];
    }
    if (view >= 0) {
      sensorRate[view] +=
          KilnNetwork.SENSOR_EMISSIVITY * stage.elementAboveRadiosity * inverse * perScore[view];
    }
  }

  private void duty(Stage stage, double[] x) {
    KilnNetwork k = network;
    boolean integrating = stage.integralShareSlope != 0;
    if (!stage.proportional && !integrating) {
      Arrays.fill(duty, 0);
      Arrays.fill(flow, 0);
      return;
    }
    int p = KilnNetwork.SETPOINT * width;
    int m = KilnNetwork.SENSOR * width;
    int i = KilnNetwork.INTEGRAL * width;
    double ahead = k.derivativeSeconds * k.readingPerTrue;
    for (int l = 0; l < width; l++) {
      flow[l] =
          k.gain * (x[p + l] - k.readingPerTrue * x[m + l] + x[i + l] - ahead * sensorRate[l]);
    }
    if (ofGain >= 0) {
      flow[ofGain] += stage.raw * perScore[ofGain];
    }
    if (ofDerivative >= 0) {
      flow[ofDerivative] -=
          k.gain * ahead * stage.rates[KilnNetwork.SENSOR] * perScore[ofDerivative];
    }
    for (int l = 0; l < width; l++) {
      duty[l] = stage.proportional ? flow[l] : 0;
    }
  }

  @Override
  public void product(int number, double[] x, double[] into) {
    KilnNetwork k = network;
    Stage stage = stages[number];
    chamber(stage, x);
    sensor(stage, x);
    duty(stage, x);
    controller(stage, x, into);
    int e = KilnNetwork.ELEMENT * width;
    int j = KilnNetwork.ENERGY * width;
    for (int l = 0; l < width; l++) {
      into[j + l] = k.fullWatts * duty[l];
    }
    if (power >= 0) {
      into[j + power] += stage.duty * k.fullWatts * perScore[power];
    }
    double inverse = 1 / k.elementJoulesPerKelvin;
    double byItself = k.elementRadiant * stage.elementSlope + k.elementConvective;
    for (int l = 0; l < width; l++) {
      into[e + l] =
          (into[j + l]
                  + k.elementRadiant * radiosity[l]
                  + k.elementConvective * air[l]
                  - byItself * x[e + l])
              * inverse;
    }
    if (element >= 0) {
      into[e + element] -= stage.rates[KilnNetwork.ELEMENT] * perScore[element];
    }
    if (convection >= 0) {
      into[e + convection] +=
          k.elementConvective * stage.airAboveElement * inverse * perScore[convection];
    }
    cells(stage, x, into);
    faces(stage, x, into);
    factors(stage, into);
  }

  private void controller(Stage stage, double[] x, double[] into) {
    KilnNetwork k = network;
    int p = KilnNetwork.SETPOINT * width;
    int m = KilnNetwork.SENSOR * width;
    int i = KilnNetwork.INTEGRAL * width;
    double perSecond = k.drive == Drive.PROPORTIONAL ? 1 / k.integralSeconds : 0;
    double byError = stage.integralShare * perSecond;
    double byRaw = stage.integralShareSlope * stage.error * perSecond;
    for (int l = 0; l < width; l++) {
      into[p + l] = 0;
      into[m + l] = sensorRate[l];
      into[i + l] = byError * (x[p + l] - k.readingPerTrue * x[m + l]) + byRaw * flow[l];
    }
    if (ofIntegral >= 0) {
      into[i + ofIntegral] -= byError * stage.error * perScore[ofIntegral];
    }
  }

  private void cells(Stage stage, double[] x, double[] into) {
    double[] above = carried;
    Arrays.fill(above, 0);
    int end = network.size() - 1;
    for (int c = KilnNetwork.FIRST_CELL; c < end; c++) {
      int at = c * width;
      int next = at + width;
      double up = stage.up[c];
      double down = stage.down[c];
      double inverse = network.volumeInverse[c];
      for (int l = 0; l < width; l++) {
        double through = up * x[at + l] - down * x[next + l];
        into[at + l] = (above[l] - through) * inverse;
        above[l] = through;
      }
    }
    int at = end * width;
    for (int l = 0; l < width; l++) {
      into[at + l] = above[l] * network.volumeInverse[end];
    }
  }

  private void faces(Stage stage, double[] x, double[] into) {
    KilnNetwork k = network;
    for (int b = 0; b < k.bodies; b++) {
      int face = k.start[b];
      int at = face * width;
      double inverse = k.volumeInverse[face];
      double radiant = k.faceRadiant[b] * inverse;
      double convective = k.faceConvective[b] * inverse;
      double byItself = (stage.faceRadiant[b] + stage.faceConvective[b]) * inverse;
      for (int l = 0; l < width; l++) {
        into[at + l] += radiant * radiosity[l] + convective * air[l] - byItself * x[at + l];
      }
      if (convection >= 0) {
        into[at + convection] -= convective * stage.faceAboveAir[b] * perScore[convection];
      }
      if (stage.shell[b] != 0) {
        int last = k.start[b + 1] - 1;
        double shell = stage.shell[b] * k.volumeInverse[last];
        for (int l = last * width; l < last * width + width; l++) {
          into[l] -= shell * x[l];
        }
      }
    }
  }

  /** What the factors of walls and fittings do by themselves. */
  private void factors(Stage stage, double[] into) {
    KilnNetwork k = network;
    double conducted = 0;
    double steepened = 0;
    for (int c = KilnNetwork.FIRST_CELL; c < k.wallEnd; c++) {
      double inverse = k.volumeInverse[c];
      int at = c * width;
      if (conductivity >= 0) {
        into[at + conductivity] +=
            (conducted - stage.byConductivity[c]) * inverse * perScore[conductivity];
        conducted = stage.byConductivity[c];
      }
      if (steepness >= 0) {
        into[at + steepness] += (steepened - stage.bySteepness[c]) * inverse * perScore[steepness];
        steepened = stage.bySteepness[c];
      }
      if (capacity >= 0) {
        into[at + capacity] -= stage.rates[c] * perScore[capacity];
      }
    }
    if (fittings >= 0) {
      for (int c = k.start[k.bodies - 1]; c < k.size(); c++) {
        into[c * width + fittings] -= stage.rates[c] * perScore[fittings];
      }
    }
  }

  @Override
  public void solve(double[] rhs, double[] x) {
    KilnNetwork k = network;
    double perShift = 1 / k.shift;
    int p = KilnNetwork.SETPOINT * width;
    int m = KilnNetwork.SENSOR * width;
    int i = KilnNetwork.INTEGRAL * width;
    int e = KilnNetwork.ELEMENT * width;
    int j = KilnNetwork.ENERGY * width;
    double bySensor = k.sensorJoulesPerSquareMetreKelvin * k.sensorPivotInverse;
    for (int l = 0; l < width; l++) {
      x[p + l] = rhs[p + l] * perShift;
      sensorPart[l] = rhs[m + l] * bySensor;
      integralPart[l] = k.integralChange(x[p + l], sensorPart[l], rhs[m + l], rhs[i + l]);
      duty[l] = k.dutyChange(x[p + l], sensorPart[l], rhs[m + l], integralPart[l]);
      elementPart[l] =
          (rhs[e + l] * k.elementJoulesPerKelvin + k.fullWatts * duty[l]) * k.elementPivotInverse;
      radiosity[l] = k.elementSlope * elementPart[l];
      air[l] = k.elementConvective * elementPart[l];
    }
    for (int b = 0; b < k.bodies; b++) {
      int face = k.start[b];
      Arrays.fill(carried, 0);
      for (int c = k.start[b + 1] - 1; c >= face; c--) {
        int at = c * width;
        double volume = k.volume[c];
        double inverse = k.pivotInverse[c];
        double ratio = k.ratio[c];
        for (int l = 0; l < width; l++) {
          double right = rhs[at + l] * volume + carried[l];
          x[at + l] = right * inverse;
          carried[l] = ratio * right;
        }
      }
      double radiant = k.radiantSlope[b];
      double convective = k.faceConvective[b];
      for (int l = 0; l < width; l++) {
        radiosity[l] += radiant * x[face * width + l];
        air[l] += convective * x[face * width + l];
      }
    }
    double determinant = k.radiantOfRadiant * k.airOfAir - k.radiantOfAir * k.airOfRadiant;
    double inverse = 1 / determinant;
    for (int l = 0; l < width; l++) {
      double ofRadiosity = (radiosity[l] * k.airOfAir - k.radiantOfAir * air[l]) * inverse;
      double ofAir = (k.radiantOfRadiant * air[l] - k.airOfRadiant * radiosity[l]) * inverse;
      double ofElement = elementPart[l] + k.elementByRadiant * ofRadiosity + k.elementByAir * ofAir;
      double ofSensor =
          sensorPart[l]
              + (k.sensorOfRadiosity * ofRadiosity + k.sensorOfAir * ofAir) * k.sensorPivotInverse
              + k.sensorByElement * ofElement;
      double integral = k.integralChange(x[p + l], ofSensor, rhs[m + l], rhs[i + l]);
      double ofDuty = k.dutyChange(x[p + l], ofSensor, rhs[m + l], integral);
      x[e + l] = ofElement;
      x[m + l] = ofSensor;
      x[i + l] = integral;
      x[j + l] = (rhs[j + l] + k.fullWatts * ofDuty) * perShift;
      radiosity[l] = ofRadiosity;
      air[l] = ofAir;
    }
    for (int b = 0; b < k.bodies; b++) {
      int face = k.start[b];
      double radiant = k.faceRadiant[b] * k.pivotInverse[face];
      double convective = k.faceConvective[b] * k.pivotInverse[face];
      double heat = k.heatPerKelvin[face];
      for (int l = 0; l < width; l++) {
        double before = radiant * radiosity[l] + convective * air[l] + x[face * width + l];
        x[face * width + l] = before * heat;
        carried[l] = before;
      }
      int end = k.start[b + 1];
      for (int c = face + 1; c < end; c++) {
        int at = c * width;
        double ratio = k.ratio[c];
        double perKelvin = k.heatPerKelvin[c];
        for (int l = 0; l < width; l++) {
          double before = x[at + l] + ratio * carried[l];
          x[at + l] = before * perKelvin;
          carried[l] = before;
        }
      }
    }
  }
}
