package org.heatwright.reference;

import java.time.Duration;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import org.heatwright.kiln.Chamber;
import org.heatwright.kiln.Control;
import org.heatwright.kiln.Face;
import org.heatwright.kiln.HeatingElement;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.Layer;
import org.heatwright.kiln.Thermocouple;
import org.heatwright.material.Material;
import org.heatwright.material.WallMaterials;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;
import org.heatwright.units.TemperatureUnit;

/**
 * Random small kilns: nameplates as makers write them, and truths beyond. Every range in here is
 * our estimate; the sheet's section A sets the classes (2 to 30 litres, losses 1.3 to 2 times what
 * the layers alone say, bricks of one group ±25 % in conductivity).
 */
public final class KilnPopulation {

  private KilnPopulation() {}

  /** The kiln of a seed, commissioned: its control is tuned as an owner would have it. */
  public static RichKiln draw(long seed) {
    SplittableRandom chance = new SplittableRandom(seed * 0x9E3779B97F4A7C15L + 4711);
    while (true) {
      SplittableRandom plate = chance.split();
      SplittableRandom hidden = chance.split();
      Kiln kiln = nameplate("r" + seed, plate);
      HiddenTruth truth = truth(kiln, hidden);
      // A maker gives a kiln the power to get there: nine tenths of the limit within two hours.
      for (int i = 0; i < 12; i++) {
        if (secondsToNinetyPercent(kiln, truth) < 7200) {
          break;
        }
        double watts = Math.rint(kiln.element().ratedWatts() * 1.15 / 50) * 50;
        double ratio = watts / kiln.element().ratedWatts();
        kiln = withWatts(kiln, watts);
        truth.elementSquareMetres *= ratio;
        truth.elementKilograms *= ratio;
      }
      // One that cannot be tuned is not sold.
      Optional<RichKiln> tuned = commission(kiln, truth);
      if (tuned.isPresent()) {
        return tuned.get();
      }
    }
  }

  /**
   * A truth for a nameplate of your own, from the population's ranges.
   *
   * @param seed of the truth
   */
  public static RichKiln drawFor(Kiln nameplate, long seed) {
    SplittableRandom chance = new SplittableRandom(seed * 0x9E3779B97F4A7C15L + 4712);
    while (true) {
      Optional<RichKiln> tuned = commission(nameplate, truth(nameplate, chance.split()));
      if (tuned.isPresent()) {
        return tuned.get();
      }
    }
  }

  /** A kiln just as its nameplate and the tables say: for checks of the reference itself. */
  static RichKiln plain(Kiln nameplate) {
    return new RichKiln(nameplate, new HiddenTruth(nameplate), Double.NaN);
  }

  private static double between(SplittableRandom chance, double low, double high) {
    return low + (high - low) * chance.nextDouble();
  }

  /** A factor around one: normal in the logarithm, cut at twice the spread. */
  private static double factor(SplittableRandom chance, double spread) {
    double z = Math.max(-2, Math.min(2, chance.nextGaussian()));
    return Math.exp(spread * z);
  }

  @SafeVarargs
  private static <T> T one(SplittableRandom chance, T... of) {
    return of[chance.nextInt(of.length)];
  }

  private static Layer layer(String material, double millimetres) {
    Material found = WallMaterials.named(material).orElseThrow();
    return new Layer(found, millimetres / 1000);
  }

  private static double round(double metres) {
    return Math.rint(metres * 200) / 200; // 5 mm
  }

  private static Kiln nameplate(String name, SplittableRandom chance) {
    double litres = 2 * Math.pow(15, chance.nextDouble());
    double shape = chance.nextDouble();
    boolean drum = shape < 0.15;
    boolean top = shape < 0.3 && litres > 5;
    Chamber chamber;
    if (drum) {
      double diameter = round(Math.cbrt(litres / 1000 / 0.785 / between(chance, 0.8, 1.2)));
      chamber = new Chamber.Drum(diameter, round(litres / 1000 / (0.785 * diameter * diameter)));
    } else {
      double height = round(Math.cbrt(litres / 1000) * between(chance, 0.75, 1.05));
      double width = round(Math.sqrt(litres / 1000 / height) * between(chance, 0.85, 1.15));
      chamber = new Chamber.Box(width, round(litres / 1000 / height / width), height);
    }
    Map<Face, List<Layer>> walls = new EnumMap<>(Face.class);
    boolean fibre = chance.nextDouble() < (litres < 6 ? 0.5 : 0.2);
    double limit;
    if (fibre) {
      double inner = one(chance, 38.0, 50.0, 60.0);
      List<Layer> body =
          List.of(
              layer(one(chance, "vacuum-formed-fibre-220", "fibre-board-280"), inner),
              layer(
                  one(chance, "fibre-blanket-96", "fibre-blanket-128"),
                  one(chance, 20.0, 25.0, 40.0)));
      for (Face face : Face.values()) {
        walls.put(face, body);
      }
      walls.put(Face.DOOR, chance.nextBoolean() ? List.of(layer("fibre-board-280", inner)) : body);
      limit = one(chance, 1000.0, 1050.0, 1100.0);
    } else {
      boolean hard = chance.nextDouble() < 0.3;
      String brick = hard ? "insulating-brick-26" : "insulating-brick-23";
      double thick = hard ? one(chance, 64.0, 76.0) : one(chance, 50.0, 57.0, 64.0, 76.0);
      String backing =
          one(
              chance,
              "calcium-silicate-board",
              "fibre-blanket-96",
              "fibre-blanket-128",
              "vermiculite-board");
      double back = hard ? one(chance, 25.0, 38.0) : one(chance, 20.0, 25.0, 38.0);
      List<Layer> body = List.of(layer(brick, thick), layer(backing, back));
      for (Face face : Face.values()) {
        walls.put(face, body);
      }
      walls.put(Face.ROOF, List.of(layer(brick, thick), layer(backing, one(chance, 20.0, 25.0))));
      double doorway = chance.nextDouble();
      walls.put(
          Face.DOOR,
          doorway < 0.3
              ? List.of(layer(brick, thick))
              : doorway < 0.7
                  ? List.of(layer(brick, thick), layer("fibre-blanket-128", 10))
                  : body);
      limit = hard ? one(chance, 1150.0, 1200.0) : one(chance, 1000.0, 1100.0, 1150.0);
    }
    double watts = Math.rint(1000 * Math.sqrt(litres / 2) * between(chance, 0.85, 1.25) / 50) * 50;
    boolean onOff = chance.nextDouble() < (litres < 6 ? 0.4 : 0.2);
    double cycle = chance.nextDouble() < 0.6 || fibre ? 2 : one(chance, 10.0, 15.0, 20.0, 30.0);
    return new Kiln(
        name,
        chamber,
        new HeatingElement(watts, 230, 230),
        walls,
        top ? Kiln.Door.TOP : Kiln.Door.FRONT,
        Temperature.ofCelsius(limit),
        new Thermocouple(
            one(chance, 'K', 'K', 'N'),
            one(chance, 1.5, 3.0, 3.0, 4.5, 6.0) / 1000,
            TemperatureChange.ofKelvins(0)),
        new Control(
            onOff ? Control.Kind.ON_OFF : Control.Kind.PID,
            onOff ? 0 : cycle,
            TemperatureChange.ofKelvins(onOff ? one(chance, 3.0, 4.0, 6.0, 8.0) : 0),
            chance.nextDouble() < 0.92
                ? Optional.of(TemperatureChange.ofKelvins(one(chance, 2.0, 3.0, 3.0, 5.0)))
                : Optional.empty(),
            Control.AfterPowerCut.CONTINUE),
        Temperature.ofCelsius(20),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        List.of());
  }

  private static Kiln withWatts(Kiln k, double watts) {
    return new Kiln(
        k.name(),
        k.chamber(),
        new HeatingElement(watts, k.element().ratedVolts(), k.element().supplyVolts()),
        k.walls(),
        k.door(),
        k.limit(),
        k.thermocouple(),
        k.control(),
        k.room(),
        k.timeZone(),
        k.tariff(),
        k.circuit(),
        k.history());
  }

  private static HiddenTruth truth(Kiln kiln, SplittableRandom chance) {
    HiddenTruth t = new HiddenTruth(kiln);
    boolean top = kiln.door() == Kiln.Door.TOP;
    // Walls. Mean above one: damp, cut and mortared bricks and seams, never better than the sheet
    // on the whole; ±25 % between makers as two sigma.
    double kilnConductivity = 1.08 * factor(chance, 0.11);
    double kilnCapacity = factor(chance, 0.05);
    t.edgeFactor = between(chance, 0.5, 0.8);
    // Joints, frame, screws and gaskets weigh more on a small kiln, and most against light walls.
    boolean fibre = kiln.layers(Face.WALLS).get(0).material().name().contains("fibre");
    double litres = 1000 * kiln.chamber().floorSquareMetres() * kiln.chamber().heightMetres();
    double small = Math.min(1.6, Math.max(0.7, Math.pow(6 / litres, 0.4)));
    double kilnBridge = small * (fibre ? between(chance, 0.1, 0.5) : between(chance, 0.03, 0.33));
    double shell = between(chance, 5, 9); // 0.7 to 1.1 mm of sheet, and what hangs on it
    double shellEmissivity = one(chance, 0.35, 0.85, 0.9); // bright or painted
    double face0 = between(chance, 0.65, 0.9);
    double stir = between(chance, 5, 10);
    for (int f = 0; f < HiddenTruth.FACES; f++) {
      int layers = RichKiln.layers(kiln, f).size();
      double[] k = new double[layers];
      double[] c = new double[layers];
      for (int l = 0; l < layers; l++) {
        k[l] = kilnConductivity * factor(chance, 0.04) * factor(chance, 0.03);
        c[l] = kilnCapacity * factor(chance, 0.03);
      }
      t.walls[f] =
          new RichWall.Truth(
              k,
              c,
              between(chance, 0, 0.02),
              shell,
              shellEmissivity,
              f == HiddenTruth.FLOOR ? between(chance, 0.5, 1) : between(chance, 0.9, 1.3),
              between(chance, 1.05, 1.35));
      t.faceEmissivity[f] = Math.min(0.95, face0 * factor(chance, 0.04));
      t.faceView[f] = between(chance, 0.75, 1);
      t.convectionWatts[f] = stir * factor(chance, 0.15);
      boolean door = f == RichKiln.doorFace(kiln);
      t.bridgeShare[f] = kilnBridge * factor(chance, 0.3) * (door ? 1.5 : 1);
    }
    t.warmHump = between(chance, 0, 0.25);

    // Elements: sides; sides and back; sides and roof; sides, back and a little on the roof.
    t.elementShare =
        top || kiln.chamber() instanceof Chamber.Drum
            ? new double[] {0, 0, 0.25, 0.25, 0.25, 0.25}
            : one(
                chance,
                new double[] {0, 0, 0.5, 0.5, 0, 0},
                new double[] {0, 0, 0.35, 0.35, 0.3, 0},
                new double[] {0.3, 0, 0.35, 0.35, 0, 0},
                new double[] {0.15, 0, 0.3, 0.3, 0.25, 0});
    if (!top && kiln.chamber() instanceof Chamber.Drum) {
      t.elementShare = new double[] {0, 0, 0.35, 0.35, 0.3, 0};
    }
    double load = between(chance, 1.1, 2.0) * 1e4; // W/m² of wire, sheet A.5: 1 to 2 W/cm²
    double wire = between(chance, 1.4, 2.4) / 1000;
    t.elementSquareMetres = kiln.element().ratedWatts() / load;
    t.elementKilograms = t.elementSquareMetres * wire / 4 * 7200;
    t.elementEmissivity = between(chance, 0.65, 0.85);
    t.elementOwnFaceShare = between(chance, 0.25, 0.5);
    t.elementConvectionWatts = between(chance, 9, 16);
    t.tailWattsPerKelvin = between(chance, 0.01, 0.04);
    // Power: 0 to 8 % weaker with age, mostly little; makers round, mains depart by up to 2 %.
    double age = 0.08 * Math.pow(chance.nextDouble(), 2.5);
    t.powerFactor = (1 - age) * (1 + between(chance, -0.01, 0.015));
    t.mainsOffsetShare = Math.max(-0.02, Math.min(0.02, 0.008 * chance.nextGaussian()));
    t.mainsWanderShare = between(chance, 0.003, 0.008);
    t.mainsWanderSeconds = between(chance, 900, 3600);

    // Air: so much of the losses at 900 °C, mostly by buoyancy.
    double leaves = between(chance, 0.06, 0.17);
    double lost = 0;
    double inner = 0;
    RichKiln rough = new RichKiln(kiln, t, Double.NaN);
    for (int f = 0; f < HiddenTruth.FACES; f++) {
      RichWall wall = rough.wall(f);
      // the outer film takes some 60 of the 880 K
      lost += wall.plainConductance(500) * (820 + 880 * t.bridgeShare[f]);
      inner += wall.innerSquareMetres;
    }
    double steady = between(chance, 0.1, 0.4);
    double watts = lost * leaves / (1 - leaves);
    double kilogramsPerSecond = watts / (1090 * 850);
    double hot = 353.0 / 1140;
    double cold = 353.0 / 293;
    double driving = Math.sqrt(2 * 9.80665 * kiln.chamber().heightMetres() * hot * (cold - hot));
    t.leakSquareMetres = (1 - steady) * kilogramsPerSecond / driving;
    t.steadyLeakKilogramsPerSecond = steady * kilogramsPerSecond;
    t.ventSquareMetres = 0.6 * between(chance, 0.5e-4, 1.5e-4);
    t.holeSquareMetres = between(chance, 0, 0.8e-4);
    t.doorFlowShare = between(chance, 0.2, 0.5); // sheet A.3
    t.doorSwitch = chance.nextDouble() < 0.7;

    // Ceramics: a plate of 6 to 12 mm on two of three floors, rods and holders.
    double floor = kiln.chamber().floorSquareMetres();
    boolean plate = chance.nextDouble() < 0.67;
    t.hearthCover = plate ? between(chance, 0.6, 0.9) : 0.1;
    t.hearthKilograms =
        plate ? floor * t.hearthCover * between(chance, 0.006, 0.012) * 2100 : floor * 0.5;
    t.hearthContactWatts = between(chance, 5, 40);
    t.fixtureKilograms = inner * (fibre ? between(chance, 0.6, 3.6) : between(chance, 0.3, 2));

    // Sensor.
    boolean sees = t.elementShare[HiddenTruth.BACK] > 0;
    t.tipFaceShare = between(chance, 0.05, 0.3);
    t.tipElementShare = between(chance, 0, sees ? 0.1 : 0.05);
    t.tipConvectionWatts = between(chance, 12, 25);
    t.tipEmissivity = between(chance, 0.65, 0.9);
    t.lagFactor = between(chance, 1, 1.8); // insulated junctions are slower, sheet A.6
    t.immersionMetres = between(chance, 0.03, 0.06);
    t.stemWattsPerMetreKelvin = between(chance, 12, 24);
    t.stemFactor = between(chance, 0.3, 0.7);
    t.stemDepthMetres = between(chance, 0.008, 0.02);
    t.tipOutMix = between(chance, 0.3, 0.6);
    // class 2 is ±2.5 K or 0.75 %, taken as two sigma, and the display's own error
    t.offsetShare = 0.003 * chance.nextGaussian();
    t.offsetKelvins = between(chance, -1, 1);
    t.noiseKelvins = between(chance, 0.3, 0.8);
    t.displayFahrenheit = chance.nextDouble() < 0.12;

    // Control.
    t.bandKelvins = between(chance, 30, 90);
    t.integralSeconds = between(chance, 250, 700);
    t.derivativeSeconds = chance.nextDouble() < 0.4 ? between(chance, 10, 40) : 0;
    boolean onOff = kiln.control().kind() == Control.Kind.ON_OFF;
    t.filterSeconds = onOff ? between(chance, 4, 12) : between(chance, 2, 8);
    t.minimumOnSeconds =
        kiln.control().cycleSeconds() > RichControl.SAMPLE_SECONDS ? between(chance, 0.5, 2) : 0;
    t.minimumSwitchSeconds = between(chance, 6, 25);
    return t;
  }

  private static Schedule straightTo(double celsius, int holdMinutes) {
    return Schedule.of(
        "commissioning",
        TemperatureUnit.CELSIUS,
        List.of(
            new Segment(
                Ramp.fastest(), Temperature.ofCelsius(celsius), Duration.ofMinutes(holdMinutes))));
  }

  /** At full power from the room, s; infinite if not within three hours. */
  static double secondsTo(Kiln kiln, HiddenTruth truth, double celsius) {
    RichFiring run =
        new RichKiln(kiln, truth, Double.NaN)
            .fire(straightTo(kiln.limit().celsius() + 500, 300), 1, 10_800);
    for (int row = 0; row < run.rows(); row++) {
      if (run.sensorCelsius()[row] >= celsius) {
        return run.secondsAt(row);
      }
    }
    return Double.POSITIVE_INFINITY;
  }

  private static double secondsToNinetyPercent(Kiln kiln, HiddenTruth truth) {
    return secondsTo(kiln, truth, 0.9 * kiln.limit().celsius());
  }

  /**
   * Tunes a proportional control until it settles with a small overshoot at a half and at nine
   * tenths of the limit, as somebody did before the kiln was sold. Empty if that does not work.
   */
  private static Optional<RichKiln> commission(Kiln kiln, HiddenTruth truth) {
    double seconds = secondsToNinetyPercent(kiln, truth);
    RichKiln rich = new RichKiln(kiln, truth, seconds);
    if (kiln.control().kind() != Control.Kind.PID) {
      return Optional.of(rich);
    }
    for (int i = 0; i < 12; i++) {
      double most = Double.NEGATIVE_INFINITY;
      double least = Double.POSITIVE_INFINITY;
      double swing = 0;
      for (double part : new double[] {0.5, 0.9}) {
        double target = part * kiln.limit().celsius();
        RichFiring run = rich.fire(straightTo(target, 300), 3, 1.5 * seconds + 3600);
        double over = run.peakCelsius() + offset(truth, target) - target;
        most = Math.max(most, over);
        least = Math.min(least, over);
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int row = run.rows() - 90; row < run.rows(); row++) {
          low = Math.min(low, run.sensorCelsius()[row]);
          high = Math.max(high, run.sensorCelsius()[row]);
        }
        swing = Math.max(swing, high - low);
      }
      if (most <= 6 && least >= 0.5 && swing < 7) {
        return Optional.of(rich);
      }
      if (swing >= 7) {
        truth.bandKelvins *= 1.3;
      } else if (most > 6) {
        truth.integralSeconds *= 1.2;
        truth.derivativeSeconds = Math.min(60, Math.max(10, truth.derivativeSeconds * 1.3));
      } else {
        truth.integralSeconds *= 0.85;
      }
    }
    return Optional.empty();
  }

  private static double offset(HiddenTruth truth, double celsius) {
    return truth.offsetKelvins + truth.offsetShare * celsius;
  }
}
