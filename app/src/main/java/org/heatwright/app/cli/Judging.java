package org.heatwright.app.cli;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.heatwright.inspect.Demands;
import org.heatwright.keypad.Keypad;
import org.heatwright.kiln.Chamber;
import org.heatwright.kiln.Control;
import org.heatwright.kiln.Face;
import org.heatwright.kiln.HeatingElement;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.Layer;
import org.heatwright.kiln.Thermocouple;
import org.heatwright.material.WallMaterials;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;
import org.heatwright.work.Composer;
import org.heatwright.work.Work;

/** What a piece of work asks, whether or not a kiln is named. */
final class Judging {

  private Judging() {}

  static Demands demands(Work work, Optional<Kiln> kiln, Optional<Keypad> keypad) {
    return Composer.compose(work, kiln.orElseGet(Judging::roomyKiln), keypad).demands();
  }

  /** A kiln that limits nothing: only the work's own demands are left. */
  private static Kiln roomyKiln() {
    List<Layer> layers =
        List.of(new Layer(WallMaterials.named("insulating-brick-26").orElseThrow(), 0.1));
    Map<Face, List<Layer>> walls = new EnumMap<>(Face.class);
    for (Face face : Face.values()) {
      walls.put(face, layers);
    }
    return new Kiln(
        "any kiln",
        new Chamber.Box(0.6, 0.6, 0.6),
        new HeatingElement(20_000, 230, 230),
        walls,
        Kiln.Door.FRONT,
        Temperature.ofCelsius(1300),
        new Thermocouple('K', 0.0045, TemperatureChange.ofKelvins(0)),
        new Control(
            Control.Kind.PID,
            2,
            TemperatureChange.ofKelvins(0),
            Optional.empty(),
            Control.AfterPowerCut.UNKNOWN),
        Temperature.ofCelsius(20),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        List.of());
  }
}
