package org.heatwright.benchmarks;

import java.time.Duration;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.heatwright.kiln.Chamber;
import org.heatwright.kiln.Control;
import org.heatwright.kiln.Face;
import org.heatwright.kiln.HeatingElement;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.Layer;
import org.heatwright.kiln.Thermocouple;
import org.heatwright.material.WallMaterials;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;
import org.heatwright.units.TemperatureUnit;

/** The kiln and the firing that the benchmarks run: a twelve-litre brick muffle, twelve hours. */
final class BenchmarkKilns {

  private BenchmarkKilns() {}

  static Kiln muffle() {
    List<Layer> layers =
        List.of(
            new Layer(WallMaterials.named("insulating-brick-23").orElseThrow(), 0.064),
            new Layer(WallMaterials.named("fibre-blanket-96").orElseThrow(), 0.025));
    Map<Face, List<Layer>> walls = new EnumMap<>(Face.class);
    for (Face face : Face.values()) {
      walls.put(face, layers);
    }
    // The door has a layer of its own, so that there are two walls to solve.
    walls.put(
        Face.DOOR,
        List.of(
            new Layer(WallMaterials.named("insulating-brick-23").orElseThrow(), 0.064),
            new Layer(WallMaterials.named("fibre-board-280").orElseThrow(), 0.012)));
    return new Kiln(
        "muffle",
        new Chamber.Box(0.20, 0.25, 0.24),
        new HeatingElement(2200, 230, 230),
        walls,
        Kiln.Door.FRONT,
        Temperature.ofCelsius(1100),
        new Thermocouple('K', 0.0045, TemperatureChange.ofKelvins(0)),
        new Control(
            Control.Kind.PID,
            2,
            TemperatureChange.ofKelvins(0),
            Optional.of(TemperatureChange.ofKelvins(3)),
            Control.AfterPowerCut.CONTINUE),
        Temperature.ofCelsius(20),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        List.of());
  }

  /** Four litres of fibre with an on-off controller. */
  static Kiln fibre() {
    List<Layer> layers =
        List.of(
            new Layer(WallMaterials.named("vacuum-formed-fibre-220").orElseThrow(), 0.05),
            new Layer(WallMaterials.named("fibre-blanket-96").orElseThrow(), 0.025));
    Map<Face, List<Layer>> walls = new EnumMap<>(Face.class);
    for (Face face : Face.values()) {
      walls.put(face, layers);
    }
    return new Kiln(
        "fibre",
        new Chamber.Box(0.16, 0.18, 0.14),
        new HeatingElement(1400, 230, 230),
        walls,
        Kiln.Door.FRONT,
        Temperature.ofCelsius(1000),
        new Thermocouple('K', 0.003, TemperatureChange.ofKelvins(0)),
        new Control(
            Control.Kind.ON_OFF,
            0,
            TemperatureChange.ofKelvins(4),
            Optional.of(TemperatureChange.ofKelvins(3)),
            Control.AfterPowerCut.CONTINUE),
        Temperature.ofCelsius(20),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        List.of());
  }

  static Schedule holdOfHours() {
    return Schedule.of(
        "session",
        TemperatureUnit.CELSIUS,
        List.of(new Segment(Ramp.fastest(), Temperature.ofCelsius(820), Duration.ofHours(6))));
  }

  static Schedule twelveHours() {
    return Schedule.of(
        "burnout",
        TemperatureUnit.CELSIUS,
        List.of(
            segment(150, 150, 120),
            segment(150, 370, 120),
            segment(200, 732, 120),
            segment(200, 500, 55)));
  }

  private static Segment segment(double rate, double target, int minutes) {
    return new Segment(
        Ramp.at(HeatingRate.ofKelvinsPerHour(rate)),
        Temperature.ofCelsius(target),
        Duration.ofMinutes(minutes));
  }
}
