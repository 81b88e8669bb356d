package org.heatwright.work;

import java.time.Duration;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.heatwright.kiln.Chamber;
import org.heatwright.kiln.Circuit;
import org.heatwright.kiln.Control;
import org.heatwright.kiln.Face;
import org.heatwright.kiln.HeatingElement;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.Layer;
import org.heatwright.kiln.Tariff;
import org.heatwright.kiln.Thermocouple;
import org.heatwright.material.WallMaterials;
import org.heatwright.mould.Investment;
import org.heatwright.mould.Mould;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;

/** Invented studios with a kiln and work each: the demo studio and four more. */
public final class Scenarios {

  private Scenarios() {}

  /**
   * A studio's evening.
   *
   * @param place where, invented
   * @param kiln the kiln
   * @param work what goes in
   */
  public record Scenario(String place, Kiln kiln, Work work) {
    @Override
    public String toString() {
      return place;
    }
  }

  public static List<Scenario> all() {
    return List.of(
        quaysideMoulds(), quaysideEnamel(), tarnhollow(), brineGate(), saltersRow(), ironYard());
  }

  /** The demo studio: three 90 x 150 mm flasks, wax, sterling, ready at ten. */
  public static Scenario quaysideMoulds() {
    return new Scenario("Quayside Bench, moulds", capstan(), threeNineties());
  }

  /** The demo studio: a morning of copper enamel. */
  public static Scenario quaysideEnamel() {
    return new Scenario(
        "Quayside Bench, enamel",
        buoy(),
        new EnamelWork(
            EnamelWork.Metal.COPPER,
            0.0008,
            12,
            0.040,
            EnamelWork.Hardness.HARD,
            Optional.empty(),
            Duration.ofHours(4),
            DataSheet.none(),
            Optional.of(LocalDateTime.of(2026, 12, 3, 8, 30)),
            EnamelBuild.unknown()));
  }

  /** A school casting room in the hills: one 75 and four 50 mm moulds, wax and resin together. */
  public static Scenario tarnhollow() {
    return new Scenario(
        "Tarnhollow School casting room",
        kiln("Fell", box(0.22, 0.25, 0.20), 2000, 900, Optional.of(new Circuit("bench", 13)), 1.5),
        new BurnoutWork(
            List.of(
                new PatternedMould(
                    new Mould(1, 0.075, 0.100, 0.0015),
                    PatternedMould.Pattern.WAX,
                    OptionalDouble.of(0.012)),
                PatternedMould.resin(new Mould(4, 0.050, 0.065, 0.001))),
            Investment.gypsum(0.40),
            DataSheet.ofMax(Temperature.ofCelsius(730)),
            PouredMetal.of("bronze"),
            Optional.of(LocalDateTime.of(2027, 2, 11, 13, 0))));
  }

  /** A gold workshop by a lock: small moulds, the studio's own pour temperature, a thin sheet. */
  public static Scenario brineGate() {
    return new Scenario(
        "Brine Gate gold workshop",
        kiln("Sluice", box(0.16, 0.20, 0.14), 1600, 1050, Optional.empty(), 3),
        new BurnoutWork(
            List.of(PatternedMould.wax(new Mould(2, 0.063, 0.063, 0.0015))),
            Investment.gypsum(0.38),
            DataSheet.none()
                .withDry(Temperature.ofCelsius(150), Duration.ofMinutes(90))
                .withTop(Temperature.ofCelsius(700), Duration.ofMinutes(100)),
            new PouredMetal("yellow-gold-18k", Optional.of(Temperature.ofCelsius(595))),
            Optional.empty()));
  }

  /** A silversmith's row house: cloisonné on fine silver, a short afternoon. */
  public static Scenario saltersRow() {
    return new Scenario(
        "Salters Row, cloisonné",
        kiln("Lantern", box(0.15, 0.15, 0.10), 1200, 1000, Optional.of(new Circuit("room", 10)), 0),
        new EnamelWork(
            EnamelWork.Metal.FINE_SILVER,
            0.0010,
            5,
            0.035,
            EnamelWork.Hardness.SOFT,
            Optional.of(Temperature.ofCelsius(785)),
            Duration.ofMinutes(150),
            DataSheet.none(),
            Optional.empty(),
            EnamelBuild.unknown()));
  }

  /** A foundry yard: two large tall moulds for bronze, in a drum of a kiln. */
  public static Scenario ironYard() {
    return new Scenario(
        "Iron Yard foundry",
        kiln(
            "Keel", new Chamber.Drum(0.40, 0.45), 5000, 1150, Optional.of(new Circuit("k", 32)), 3),
        new BurnoutWork(
            List.of(
                new PatternedMould(
                    new Mould(2, 0.150, 0.250, 0.002),
                    PatternedMould.Pattern.WAX,
                    OptionalDouble.of(0.350))),
            new Investment(Investment.Binder.GYPSUM, 0.42, 30),
            DataSheet.none(),
            PouredMetal.of("bronze"),
            Optional.empty()));
  }

  public static BurnoutWork threeNineties() {
    return burnout(
        List.of(
            new PatternedMould(
                new Mould(3, 0.090, 0.150, 0.003),
                PatternedMould.Pattern.WAX,
                OptionalDouble.of(0.014))),
        DataSheet.none());
  }

  public static BurnoutWork burnout(List<PatternedMould> moulds, DataSheet sheet) {
    return new BurnoutWork(
        moulds,
        Investment.gypsum(0.40),
        sheet,
        new PouredMetal("sterling-925", Optional.of(Temperature.ofCelsius(500))),
        Optional.of(LocalDateTime.of(2026, 12, 3, 10, 0)));
  }

  public static EnamelWork enamel(EnamelWork.Metal metal, EnamelWork.Hardness hardness) {
    return new EnamelWork(
        metal,
        0.001,
        8,
        0.04,
        hardness,
        Optional.empty(),
        Duration.ofHours(3),
        DataSheet.none(),
        Optional.empty(),
        EnamelBuild.unknown());
  }

  /** The demo studio's 30 litre top loader. */
  public static Kiln capstan() {
    return kiln(
        "Capstan", box(0.32, 0.32, 0.30), 3000, 1100, Optional.of(new Circuit("yard", 16)), 3);
  }

  /** The demo studio's 4 litre enamelling kiln. */
  public static Kiln buoy() {
    return kiln(
        "Buoy", box(0.18, 0.20, 0.11), 1500, 1050, Optional.of(new Circuit("bench", 16)), 3);
  }

  public static Chamber box(double widthMetres, double depthMetres, double heightMetres) {
    return new Chamber.Box(widthMetres, depthMetres, heightMetres);
  }

  /**
   * @param holdWaitsWithinKelvins 0: the hold runs from the setpoint
   */
  public static Kiln kiln(
      String name,
      Chamber chamber,
      double watts,
      double limitCelsius,
      Optional<Circuit> circuit,
      double holdWaitsWithinKelvins) {
    List<Layer> wall =
        List.of(new Layer(WallMaterials.named("insulating-brick-23").orElseThrow(), 0.064));
    Map<Face, List<Layer>> walls = new EnumMap<>(Face.class);
    for (Face face : Face.values()) {
      walls.put(face, wall);
    }
    return new Kiln(
        name,
        chamber,
        new HeatingElement(watts, 230, 230),
        walls,
        Kiln.Door.FRONT,
        Temperature.ofCelsius(limitCelsius),
        new Thermocouple('K', 0.0045, TemperatureChange.ofKelvins(0)),
        new Control(
            Control.Kind.PID,
            2,
            TemperatureChange.ofKelvins(0),
            holdWaitsWithinKelvins > 0
                ? Optional.of(TemperatureChange.ofKelvins(holdWaitsWithinKelvins))
                : Optional.empty(),
            Control.AfterPowerCut.CONTINUE),
        Temperature.ofCelsius(20),
        Optional.of(ZoneId.of("Europe/Lisbon")),
        Optional.of(Tariff.flat("EUR", 0.28)),
        circuit,
        List.of());
  }
}
