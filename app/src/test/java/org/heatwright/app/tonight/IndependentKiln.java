package org.heatwright.app.tonight;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.heatwright.forecast.Charge;
import org.heatwright.kiln.Control;
import org.heatwright.kiln.Face;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.KilnQuantity;
import org.heatwright.kiln.Layer;
import org.heatwright.mould.Mould;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;

/**
 * A kiln to be surprised by, written apart from the product: explicit differences on uniform cells,
 * every face for itself with pairwise radiation, a controller that samples and drives a relay, a
 * display with noise that shows whole degrees. What the nameplate does not say is drawn from ranges
 * of its own.
 */
final class IndependentKiln {

  private static final double SIGMA = 5.670374419e-8;
  private static final double STEP = 0.5;
  private static final double CELL = 0.004;
  private static final double EMISSIVITY = 0.8;

  private final Kiln kiln;
  private final Random random;
  private final double room;
  private final double watts;
  private final double leak;
  private final double fittingsCapacity;
  private final double fittingsArea;
  private final double sensorCapacity;
  private final double band;
  private final double integralSeconds;
  private final double switchDelay;
  private final double elementCapacity;
  private final double elementArea;
  private final double convection;
  private final List<Wall> walls = new ArrayList<>();
  private final List<Cylinder> cylinders = new ArrayList<>();
  private List<Opening> openings = List.of();
  private double exchange;
  private int door = -1;

  private double element;
  private double fittings;
  private double sensor;
  private double air;
  private double cold;

  /**
   * The door is opened and shut behind something cold; what stood there before is taken out.
   *
   * @param joulesPerKelvin heat of what goes in, J/K
   * @param squareMetres its surface, m²
   */
  record Opening(double atSecond, double openSeconds, double joulesPerKelvin, double squareMetres) {

    boolean open(double second) {
      return second >= atSecond && second < atSecond + openSeconds;
    }
  }

  /** A flat face in uniform cells, widened outward. */
  private static final class Wall {
    final double[] t;
    final Layer[] of;
    final double[] area;
    final double conductivityFactor;
    final double capacityFactor;
    final double face;
    double surface;
    double absorbed;

    Wall(List<Layer> layers, double face, double spread, double kf, double cf, double start) {
      double thickness = layers.stream().mapToDouble(Layer::thicknessMetres).sum();
      int n = (int) Math.round(thickness / CELL);
      t = new double[n];
      of = new Layer[n];
      area = new double[n + 1];
      double x = 0;
      for (int i = 0; i < n; i++) {
        t[i] = start;
        double middle = (i + 0.5) * thickness / n;
        double edge = 0;
        for (Layer layer : layers) {
          edge += layer.thicknessMetres();
          if (middle < edge || layer == layers.get(layers.size() - 1)) {
            of[i] = layer;
            break;
          }
        }
        x += thickness / n;
      }
      for (int i = 0; i <= n; i++) {
        area[i] = face * (1 + spread * i * x / n);
      }
      this.face = face;
      conductivityFactor = kf;
      capacityFactor = cf;
      surface = start;
    }

    double k(int i) {
      return conductivityFactor * of[i].material().conductivityWattsPerMetreKelvin().at(t[i]);
    }

    double heatCapacity(int i) {
      return capacityFactor
          * of[i].material().densityKilogramsPerCubicMetre()
          * of[i].material().heatCapacityJoulesPerKilogramKelvin().at(t[i]);
    }

    void step(double room) {
      int n = t.length;
      double flow = absorbed;
      double[] next = new double[n];
      for (int i = 0; i < n; i++) {
        double out;
        if (i + 1 < n) {
          double mean = 2 / (1 / k(i) + 1 / k(i + 1));
          out = mean * area[i + 1] / CELL * (t[i] - t[i + 1]);
        } else {
          double above = Math.max(0.01, t[i] - room);
          double film =
              1.3 * Math.pow(above / 0.3, 0.25) + 0.85 * SIGMA * (quad(t[i]) - quad(room)) / above;
          double shellFilm = 1 / (1 / film + CELL / 2 / k(i));
          out = shellFilm * area[n] * (t[i] - room);
        }
        double volume = 0.5 * (area[i] + area[i + 1]) * CELL;
        next[i] = t[i] + STEP * (flow - out) / (volume * heatCapacity(i));
        flow = out;
      }
      System.arraycopy(next, 0, t, 0, n);
    }
  }

  /**
   * Moulds as long cylinders in rings of equal width, with an enthalpy that boils and dehydrates.
   */
  private static final class Cylinder {
    static final int RINGS = 12;
    final double[] heat = new double[RINGS];
    final double radius;
    final double height;
    final int count;
    final double k;
    final double water;
    final double surfaceArea;
    double surface;
    double absorbed;

    Cylinder(Mould mould, double k, double water, double start) {
      radius = mould.diameterMetres() / 2;
      height = mould.heightMetres();
      count = mould.count();
      this.k = k;
      this.water = water;
      surfaceArea = count * 2 * Math.PI * radius * (height + 0.6 * radius);
      java.util.Arrays.fill(heat, heatAt(start));
      surface = start;
    }

    double heatAt(double celsius) {
      double dry = 1230 * (750 * celsius + 0.29 * celsius * celsius);
      double wet = water * 4186 * Math.min(celsius, 98);
      double boil = water * 2.257e6 * clamp((celsius - 97) / 4);
      double gypsum = 2.7e8 * clamp((celsius - 105) / 90);
      return dry + wet + boil + gypsum;
    }

    private static double clamp(double x) {
      return Math.max(0, Math.min(1, x));
    }

    double celsius(double h) {
      double low = -50;
      double high = 1300;
      for (int i = 0; i < 26; i++) {
        double middle = (low + high) / 2;
        if (heatAt(middle) < h) {
          low = middle;
        } else {
          high = middle;
        }
      }
      return (low + high) / 2;
    }

    void step() {
      double[] t = new double[RINGS];
      for (int i = 0; i < RINGS; i++) {
        t[i] = celsius(heat[i]);
      }
      surface = t[0];
      double dr = radius / RINGS;
      double flow = absorbed;
      for (int i = 0; i < RINGS; i++) {
        double outer = radius - i * dr;
        double inner = outer - dr;
        double ends = surfaceArea / (2 * Math.PI * radius * height * count);
        double out =
            i + 1 < RINGS
                ? k * 2 * Math.PI * inner * height * count * ends / dr * (t[i] - t[i + 1])
                : 0;
        double volume = Math.PI * (outer * outer - inner * inner) * height * count;
        heat[i] += STEP * MOULD_EVERY * (flow - out) / volume;
        flow = out;
      }
    }
  }

  /** The moulds are slow: they take every so manyth step. */
  private static final int MOULD_EVERY = 8;

  IndependentKiln(Kiln kiln, Charge charge, double room, Random random) {
    this.kiln = kiln;
    this.random = random;
    this.room = room;
    this.watts = kiln.element().suppliedWatts() * Math.exp(0.04 * random.nextGaussian());
    double perimeter = 4 * Math.sqrt(kiln.openingSquareMetres());
    this.leak = perimeter * uniform(0.15, 0.7);
    double plate = uniform(0.006, 0.018) * kiln.chamber().floorSquareMetres();
    this.fittingsCapacity = plate * 2000 * 1050;
    this.fittingsArea = uniform(1.0, 1.6) * kiln.chamber().floorSquareMetres();
    this.sensorCapacity = uniform(0.4, 1.3) * 3.6e6 * kiln.thermocouple().sheathMetres() / 4;
    this.band = Math.exp(uniform(Math.log(25), Math.log(90)));
    this.integralSeconds = Math.exp(uniform(Math.log(150), Math.log(600)));
    this.switchDelay = uniform(6, 35);
    this.elementArea = kiln.element().ratedWatts() / uniform(12_000, 20_000);
    this.elementCapacity = elementArea * uniform(1700, 3200);
    this.convection = uniform(5, 12);
    double spread = uniform(3.0, 6.0);
    double kf = Math.exp(Math.log(1.2) + 0.18 * random.nextGaussian());
    double cf = Math.exp(0.09 * random.nextGaussian());
    for (Face face : Face.values()) {
      double area = kiln.innerSquareMetres(face);
      if (area > 0) {
        door = face == Face.DOOR ? walls.size() : door;
        double own = kf * uniform(0.93, 1.07);
        walls.add(new Wall(kiln.layers(face), area, spread, own, cf, room));
      }
    }
    for (Mould mould : charge.moulds()) {
      cylinders.add(new Cylinder(mould, uniform(0.35, 0.6), uniform(390, 450), room));
    }
    element = room;
    fittings = room;
    sensor = room;
    air = room;
  }

  /**
   * Opens the door at these times. Its inner face then looks into the room, the opening is as black
   * and as cold as the room, and air goes to and fro.
   */
  IndependentKiln opened(List<Opening> times) {
    openings = List.copyOf(times);
    exchange = uniform(80, 220);
    return this;
  }

  /**
   * Its values in the product's words, for those that mean the same there. How surfaces exchange
   * heat, and with what lag a switch follows a noisy display, is another law here.
   */
  Map<KilnQuantity, Double> hidden() {
    double perimeter = 4 * Math.sqrt(kiln.openingSquareMetres());
    return Map.of(
        KilnQuantity.LEAK,
        leak / perimeter,
        KilnQuantity.FITTINGS,
        fittingsCapacity / kiln.chamber().floorSquareMetres(),
        KilnQuantity.CONDUCTIVITY,
        walls.stream().mapToDouble(w -> w.conductivityFactor * w.face).sum()
            / walls.stream().mapToDouble(w -> w.face).sum(),
        KilnQuantity.CAPACITY,
        walls.get(0).capacityFactor,
        KilnQuantity.SENSOR,
        sensorCapacity / (3.6e6 * kiln.thermocouple().sheathMetres() / 4),
        KilnQuantity.SWITCH,
        switchDelay,
        KilnQuantity.POWER,
        watts / kiln.element().suppliedWatts());
  }

  private double uniform(double low, double high) {
    return low + (high - low) * random.nextDouble();
  }

  private static double quad(double celsius) {
    double kelvin = celsius + 273.15;
    return kelvin * kelvin * kelvin * kelvin;
  }

  /** Runs the schedule and returns what the display shows every ten seconds until {@code until}. */
  double[] displayEveryTenSeconds(Schedule schedule, double until) {
    double[] display = new double[(int) (until / 10) + 2];
    double setpoint = sensor;
    double integral = 0;
    boolean on = false;
    double pending = -1;
    double duty = 0;
    int segmentIndex = 0;
    Segment segment = schedule.segments().get(0);
    boolean holding = false;
    double left = 0;
    boolean done = false;
    long steps = (long) (until / STEP);
    for (long s = 0; s <= steps; s++) {
      double now = s * STEP;
      double reading = sensor + 0.6 * random.nextGaussian();
      if (s % 20 == 0) {
        display[(int) (now / 10)] = Math.rint(reading);
      }
      // The program.
      if (!done) {
        double target = segment.target().celsius();
        if (!holding) {
          double kelvins =
              segment.ramp().rate().map(r -> r.kelvinsPerHour() / 3600 * STEP).orElse(1e9);
          double way = target - setpoint;
          setpoint = Math.abs(way) <= kelvins ? target : setpoint + Math.signum(way) * kelvins;
          double near = kiln.control().holdWaitsWithin().map(c -> c.kelvins()).orElse(1e9);
          if (setpoint == target && Math.abs(sensor - target) <= near) {
            holding = true;
            left = segment.hold().toSeconds();
          }
        } else {
          left -= STEP;
          if (left <= 0) {
            holding = false;
            segmentIndex++;
            if (segmentIndex == schedule.segments().size()) {
              done = true;
            } else {
              segment = schedule.segments().get(segmentIndex);
            }
          }
        }
      }
      // The controller, every two seconds.
      if (s % 4 == 0) {
        if (done) {
          duty = 0;
        } else if (kiln.control().kind() == Control.Kind.PID) {
          double error = setpoint - reading;
          double next = integral + error * 2 / integralSeconds;
          double output = (error + next) / band;
          if (output >= 0 && output <= 1) {
            integral = next;
          }
          duty = Math.max(0, Math.min(1, output));
        } else {
          double half = kiln.control().hysteresis().kelvins() / 2;
          boolean wants = on ? reading < setpoint + half : reading < setpoint - half;
          if (wants != on && pending < 0) {
            pending = switchDelay;
          }
          if (pending >= 0) {
            pending -= 2;
            if (pending < 0) {
              on = !on;
            }
          }
          duty = on ? 1 : 0;
        }
      }
      boolean open = openings.stream().anyMatch(o -> o.open(now));
      for (Opening opening : openings) {
        double since = now - opening.atSecond() - opening.openSeconds();
        if (since >= 0 && since < STEP) {
          cold = room;
        }
      }
      Opening last =
          openings.stream()
              .filter(o -> now >= o.atSecond() + o.openSeconds())
              .reduce((a, b) -> b)
              .orElse(new Opening(0, 0, 1, 0));
      heat(open ? 0 : duty * watts, s, open, last);
    }
    return display;
  }

  private void heat(double power, long s, boolean open, Opening inside) {
    double faces = inside.squareMetres();
    for (Wall wall : walls) {
      faces += wall.face;
    }
    for (Cylinder cylinder : cylinders) {
      faces += cylinder.surfaceArea;
    }
    faces += fittingsArea;
    double airSum = leak * room + convection * (elementArea * element + fittingsArea * fittings);
    double airWeight = leak + convection * (elementArea + fittingsArea);
    for (int i = 0; i < walls.size(); i++) {
      Wall wall = walls.get(i);
      boolean away = open && i == door;
      airSum += away ? exchange * wall.face * room : convection * wall.face * wall.surface;
      airWeight += (away ? exchange : convection) * wall.face;
    }
    airSum += convection * inside.squareMetres() * cold;
    airWeight += convection * inside.squareMetres();
    for (Cylinder cylinder : cylinders) {
      airSum += convection * cylinder.surfaceArea * cylinder.surface;
      airWeight += convection * cylinder.surfaceArea;
    }
    air = airSum / airWeight;
    // Pairwise grey exchange: every surface sees the others by area.
    double radiantSum = 0;
    double fromElement = 0;
    double grey = EMISSIVITY / (2 - EMISSIVITY) * 1.3;
    double fourElement = quad(element);
    double meanFour = fittingsArea * quad(fittings) + inside.squareMetres() * quad(cold);
    for (int i = 0; i < walls.size(); i++) {
      meanFour += walls.get(i).face * quad(open && i == door ? room : walls.get(i).surface);
    }
    for (Cylinder cylinder : cylinders) {
      meanFour += cylinder.surfaceArea * quad(cylinder.surface);
    }
    meanFour /= faces;
    for (int i = 0; i < walls.size(); i++) {
      Wall wall = walls.get(i);
      boolean away = open && i == door;
      double direct =
          EMISSIVITY
              * SIGMA
              * elementArea
              * wall.face
              / faces
              * (fourElement - quad(away ? room : wall.surface));
      if (away) {
        fromElement += direct;
        wall.absorbed =
            wall.face
                * (EMISSIVITY * SIGMA * (quad(room) - quad(wall.surface))
                    + convection * (room - wall.surface));
        wall.step(room);
        double seen = wall.t[0] + wall.absorbed * (CELL / 2) / (wall.k(0) * wall.face);
        wall.surface += SURFACE_RELAXATION * (seen - wall.surface);
        continue;
      }
      double among = grey * SIGMA * wall.face * (meanFour - quad(wall.surface));
      fromElement += direct;
      radiantSum += among;
      wall.absorbed = direct + among + convection * wall.face * (air - wall.surface);
      wall.step(room);
      double wanted = wall.t[0] + wall.absorbed * (CELL / 2) / (wall.k(0) * wall.face);
      wall.surface += SURFACE_RELAXATION * (wanted - wall.surface);
    }
    for (Cylinder cylinder : cylinders) {
      double direct =
          EMISSIVITY
              * SIGMA
              * elementArea
              * cylinder.surfaceArea
              / faces
              * (fourElement - quad(cylinder.surface));
      double among = grey * SIGMA * cylinder.surfaceArea * (meanFour - quad(cylinder.surface));
      fromElement += direct;
      radiantSum += among;
      cylinder.absorbed =
          direct + among + convection * cylinder.surfaceArea * (air - cylinder.surface);
      if (s % MOULD_EVERY == 0) {
        cylinder.step();
      }
    }
    if (inside.squareMetres() > 0) {
      double taken =
          inside.squareMetres()
              * (EMISSIVITY * SIGMA * elementArea / faces * (fourElement - quad(cold))
                  + grey * SIGMA * (meanFour - quad(cold))
                  + convection * (air - cold));
      fromElement +=
          EMISSIVITY
              * SIGMA
              * elementArea
              * inside.squareMetres()
              / faces
              * (fourElement - quad(cold));
      cold += STEP * taken / inside.joulesPerKelvin();
    }
    double direct =
        EMISSIVITY * SIGMA * elementArea * fittingsArea / faces * (fourElement - quad(fittings));
    fromElement += direct;
    double among = grey * SIGMA * fittingsArea * (meanFour - quad(fittings));
    radiantSum += among;
    fittings +=
        STEP * (direct + among + convection * fittingsArea * (air - fittings)) / fittingsCapacity;
    element +=
        STEP * (power - fromElement - convection * elementArea * (element - air)) / elementCapacity;
    double seen = (elementArea * fourElement + faces * meanFour) / (elementArea + faces);
    sensor += STEP * (14 * (air - sensor) + 0.8 * SIGMA * (seen - quad(sensor))) / sensorCapacity;
    if (!Double.isFinite(radiantSum) || !Double.isFinite(element)) {
      throw new IllegalStateException("The independent kiln has become unstable.");
    }
  }

  /**
   * The surface follows its cell with this share a step, which keeps the explicit scheme stable.
   */
  private static final double SURFACE_RELAXATION = 0.1;
}
