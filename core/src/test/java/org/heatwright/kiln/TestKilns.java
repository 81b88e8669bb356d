package org.heatwright.kiln;

import java.util.DoubleSummaryStatistics;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.DoubleStream;
import org.heatwright.material.Material;
import org.heatwright.material.WallMaterials;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;

/** Invented kilns for tests. */
public final class TestKilns {

  private TestKilns() {}

  private static Material material(String name) {
    return WallMaterials.named(name).orElseThrow();
  }

  public static Kiln brickMuffle(double watts) {
    return brickMuffle(watts, 4.5);
  }

  /** A nine-litre brick muffle with a proportional controller. */
  public static Kiln brickMuffle(double watts, double sheathMillimetres) {
    return kiln(
        "muffle",
        new Chamber.Box(0.20, 0.25, 0.18),
        watts,
        List.of(
            new Layer(material("insulating-brick-23"), 0.064),
            new Layer(material("fibre-blanket-96"), 0.025)),
        sheathMillimetres,
        Control.Kind.PID);
  }

  /** A three-litre fibre kiln with an on-off controller. */
  public static Kiln fibreMuffle() {
    return kiln(
        "fibre",
        new Chamber.Box(0.16, 0.17, 0.11),
        1300,
        List.of(
            new Layer(material("vacuum-formed-fibre-220"), 0.05),
            new Layer(material("fibre-blanket-96"), 0.025)),
        3,
        Control.Kind.ON_OFF);
  }

  private static Kiln kiln(
      String name,
      Chamber chamber,
      double watts,
      List<Layer> layers,
      double sheathMillimetres,
      Control.Kind kind) {
    Map<Face, List<Layer>> walls = new EnumMap<>(Face.class);
    for (Face face : Face.values()) {
      walls.put(face, layers);
    }
    return new Kiln(
        name,
        chamber,
        new HeatingElement(watts, 230, 230),
        walls,
        Kiln.Door.FRONT,
        Temperature.ofCelsius(1100),
        new Thermocouple('K', sheathMillimetres / 1000, TemperatureChange.ofKelvins(0)),
        new Control(
            kind,
            2,
            TemperatureChange.ofKelvins(kind == Control.Kind.ON_OFF ? 4 : 0),
            Optional.of(TemperatureChange.ofKelvins(3)),
            Control.AfterPowerCut.CONTINUE),
        Temperature.ofCelsius(20),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        List.of());
  }

  /** Lowest and highest reading between two seconds, looked at every half second, °C. */
  static double[] displayRange(FiringRun run, double fromSecond, double toSecond) {
    DoubleSummaryStatistics all =
        DoubleStream.iterate(fromSecond, t -> t <= toSecond, t -> t + 0.5)
            .map(run::readingCelsiusAt)
            .summaryStatistics();
    return new double[] {all.getMin(), all.getMax()};
  }
}
