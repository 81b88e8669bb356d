package org.heatwright.app.files;

import java.time.LocalTime;
import java.time.ZoneId;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.heatwright.kiln.Chamber;
import org.heatwright.kiln.Circuit;
import org.heatwright.kiln.Control;
import org.heatwright.kiln.Face;
import org.heatwright.kiln.HeatingElement;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.Layer;
import org.heatwright.kiln.LifeEvent;
import org.heatwright.kiln.Tariff;
import org.heatwright.kiln.Tariff.PriceBand;
import org.heatwright.kiln.Thermocouple;
import org.heatwright.sensing.ToleranceClass;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;

/** {@code kiln.yaml}: what a kiln's owner can read off its nameplate, and what changed it since. */
public final class KilnFile {

  private static final double MILLI = 1000;

  /** Used where the file says nothing; usual for a small kiln (our estimate). */
  private static final Thermocouple USUAL_THERMOCOUPLE =
      new Thermocouple('K', 0.0045, TemperatureChange.ofKelvins(0));

  private static final double USUAL_CYCLE_SECONDS = 2;
  private static final double USUAL_ROOM_CELSIUS = 20;

  private KilnFile() {}

  /**
   * A kiln file with the parts that do not belong to the nameplate.
   *
   * @param kiln the nameplate
   * @param learned what a fit with another version of the model wrote, as YAML; kept, not used
   */
  public record Content(Kiln kiln, Optional<String> learned) {}

  public static Kiln read(String text, String fileName) {
    return readContent(text, fileName).kiln();
  }

  public static Content readContent(String text, String fileName) {
    YamlMap file =
        YamlFile.read(text, fileName, FileKind.KILN)
            .only(
                "name",
                "chamber",
                "element",
                "walls",
                "door",
                "max-celsius",
                "thermocouple",
                "control",
                "room-celsius",
                "time-zone",
                "tariff",
                "circuit",
                "history",
                "learned");
    String name = file.required("name").text();
    Chamber chamber = chamber(file.required("chamber"));
    HeatingElement element = element(file.required("element"));
    Kiln.Door door =
        file.optional("door").map(v -> v.oneOf(Kiln.Door.class)).orElse(Kiln.Door.FRONT);
    Map<Face, List<Layer>> walls = walls(file.required("walls"), door);
    YamlValue limit = file.required("max-celsius");
    double limitCelsius = limit.between(101, 1800, "°C");
    Kiln kiln =
        file.place()
            .build(
                () ->
                    new Kiln(
                        name,
                        chamber,
                        element,
                        walls,
                        door,
                        Temperature.ofCelsius(limitCelsius),
                        file.optional("thermocouple")
                            .map(KilnFile::thermocouple)
                            .orElse(USUAL_THERMOCOUPLE),
                        file.optional("control").map(KilnFile::control).orElseGet(KilnFile::pid),
                        Temperature.ofCelsius(
                            file.optional("room-celsius")
                                .map(v -> v.between(-30, 60, "°C"))
                                .orElse(USUAL_ROOM_CELSIUS)),
                        file.optional("time-zone").map(KilnFile::zone),
                        file.optional("tariff").map(KilnFile::tariff),
                        file.optional("circuit").map(KilnFile::circuit),
                        file.optional("history")
                            .map(v -> v.listOf(KilnFile::lifeEvent))
                            .orElse(List.of())));
    Optional<YamlValue> learned = file.optional("learned");
    if (learned.isPresent() && LearnedField.isOurs(learned.get())) {
      return new Content(kiln.withLearned(LearnedField.read(learned.get())), Optional.empty());
    }
    return new Content(kiln, learned.map(YamlValue::asFlow));
  }

  public static String write(Kiln kiln) {
    return write(new Content(kiln, Optional.empty()));
  }

  public static String write(Content content) {
    Kiln kiln = content.kiln();
    StringBuilder out = new StringBuilder();
    line(out, "name", YamlText.text(kiln.name()));
    line(out, "chamber", chamber(kiln.chamber()));
    HeatingElement element = kiln.element();
    line(
        out,
        "element",
        flow(
            "rated-w", YamlText.number(element.ratedWatts()),
            "rated-v", YamlText.number(element.ratedVolts()),
            "supply-v", YamlText.number(element.supplyVolts())));
    writeWalls(out, kiln);
    line(out, "door", YamlValue.word(kiln.door()));
    line(out, "max-celsius", YamlText.number(kiln.limit().celsius()));
    line(out, "thermocouple", thermocouple(kiln.thermocouple()));
    line(out, "control", control(kiln.control()));
    line(out, "room-celsius", YamlText.number(kiln.room().celsius()));
    kiln.timeZone().ifPresent(zone -> line(out, "time-zone", YamlText.text(zone.getId())));
    kiln.tariff().ifPresent(tariff -> line(out, "tariff", tariff(tariff)));
    kiln.circuit()
        .ifPresent(
            circuit ->
                line(
                    out,
                    "circuit",
                    flow(
                        "name", YamlText.text(circuit.name()),
                        "limit-a", YamlText.number(circuit.limitAmperes()))));
    if (!kiln.history().isEmpty()) {
      line(
          out,
          "history",
          kiln.history().stream()
              .map(e -> flow("date", e.date().toString(), "what", YamlValue.word(e.what())))
              .collect(Collectors.joining(", ", "[", "]")));
    }
    kiln.learned()
        .map(LearnedField::write)
        .or(content::learned)
        .ifPresent(learned -> line(out, "learned", learned));
    return out.toString();
  }

  // ---- chamber and walls

  private static Chamber chamber(YamlValue value) {
    YamlMap map = value.map("width-mm", "depth-mm", "height-mm", "diameter-mm");
    double height = inside(map.required("height-mm"));
    if (map.has("diameter-mm")) {
      if (map.has("width-mm") || map.has("depth-mm")) {
        throw value.error(
            "a drum has diameter-mm and height-mm, a box width-mm, depth-mm and height-mm; keep"
                + " one kind.");
      }
      double diameter = inside(map.required("diameter-mm"));
      return value.build(() -> new Chamber.Drum(diameter, height));
    }
    double width = inside(map.required("width-mm"));
    double depth = inside(map.required("depth-mm"));
    return value.build(() -> new Chamber.Box(width, depth, height));
  }

  private static String chamber(Chamber chamber) {
    if (chamber instanceof Chamber.Box box) {
      return flow(
          "width-mm", millimetres(box.widthMetres()),
          "depth-mm", millimetres(box.depthMetres()),
          "height-mm", millimetres(box.heightMetres()));
    }
    Chamber.Drum drum = (Chamber.Drum) chamber;
    return flow(
        "diameter-mm", millimetres(drum.diameterMetres()),
        "height-mm", millimetres(drum.heightMetres()));
  }

  /**
   * One list for all faces, or a map by face. A face that is not given is built like the walls; a
   * lid like the roof where only that is given.
   */
  private static Map<Face, List<Layer>> walls(YamlValue value, Kiln.Door door) {
    Map<Face, List<Layer>> walls = new EnumMap<>(Face.class);
    if (value.isList()) {
      List<Layer> layers = layers(value);
      for (Face face : Face.values()) {
        walls.put(face, layers);
      }
      return walls;
    }
    if (!value.isMap()) {
      throw value.wrong("a list of layers, or a mapping with roof, walls, floor, door");
    }
    YamlMap map = value.map("roof", "walls", "floor", "door");
    for (Face face : Face.values()) {
      map.optional(YamlValue.word(face)).ifPresent(v -> walls.put(face, layers(v)));
    }
    if (walls.isEmpty()) {
      throw value.error("expected layers for at least one of roof, walls, floor, door.");
    }
    List<Layer> roof = walls.get(Face.ROOF);
    if (door == Kiln.Door.TOP && roof != null) {
      walls.putIfAbsent(Face.DOOR, roof);
    }
    List<Layer> others = walls.getOrDefault(Face.WALLS, walls.values().iterator().next());
    for (Face face : Face.values()) {
      walls.putIfAbsent(face, others);
    }
    return walls;
  }

  private static List<Layer> layers(YamlValue value) {
    return value.filledList().stream().map(KilnFile::layer).toList();
  }

  private static Layer layer(YamlValue value) {
    YamlMap map = value.map("material", "thickness-mm", "joint-m2k-w");
    var material = MaterialField.read(map.required("material"));
    double thickness = map.required("thickness-mm").between(0.5, 499, "mm") / MILLI;
    double joint = map.optional("joint-m2k-w").map(v -> v.between(0, 9, "m²K/W")).orElse(0.0);
    return value.build(() -> new Layer(material, thickness, joint));
  }

  private static void writeWalls(StringBuilder out, Kiln kiln) {
    List<Layer> first = kiln.layers(Face.WALLS);
    out.append("walls:\n");
    if (kiln.walls().values().stream().allMatch(first::equals)) {
      writeLayers(out, "  ", first);
      return;
    }
    for (Face face : Face.values()) {
      out.append("  ").append(YamlValue.word(face)).append(":\n");
      writeLayers(out, "    ", kiln.layers(face));
    }
  }

  private static void writeLayers(StringBuilder out, String indent, List<Layer> layers) {
    for (Layer layer : layers) {
      String material = MaterialField.write(layer.material());
      String thickness = millimetres(layer.thicknessMetres());
      double joint = layer.contactSquareMetreKelvinPerWatt();
      out.append(indent)
          .append("- ")
          .append(
              joint > 0
                  ? flow(
                      "material", material,
                      "thickness-mm", thickness,
                      "joint-m2k-w", YamlText.number(joint))
                  : flow("material", material, "thickness-mm", thickness))
          .append('\n');
    }
  }

  // ---- element, sensor, control

  private static HeatingElement element(YamlValue value) {
    YamlMap map = value.map("rated-w", "rated-v", "supply-v");
    double watts = map.required("rated-w").above0("W");
    double volts = map.required("rated-v").above0("V");
    double supply = map.optional("supply-v").map(v -> v.above0("V")).orElse(volts);
    return value.build(() -> new HeatingElement(watts, volts, supply));
  }

  private static Thermocouple thermocouple(YamlValue value) {
    YamlMap map = value.map("type", "sheath-mm", "offset-k", "class");
    String type =
        map.optional("type")
            .map(v -> v.oneOf(List.of("B", "E", "J", "K", "N", "R", "S", "T")))
            .orElse("K");
    double sheath =
        map.optional("sheath-mm").map(KilnFile::metres).orElse(USUAL_THERMOCOUPLE.sheathMetres());
    double offset = map.optional("offset-k").map(v -> v.between(-200, 200, "K")).orElse(0.0);
    Optional<ToleranceClass> toleranceClass =
        map.optional("class")
            .map(v -> v.oneOf(Stream.of(ToleranceClass.values()).map(c -> c.word()).toList()))
            .flatMap(ToleranceClass::ofWord);
    return value.build(
        () ->
            new Thermocouple(
                type.charAt(0), sheath, TemperatureChange.ofKelvins(offset), toleranceClass));
  }

  private static String thermocouple(Thermocouple couple) {
    Map<String, String> entries = new LinkedHashMap<>();
    entries.put("type", String.valueOf(couple.type()));
    couple.toleranceClass().ifPresent(c -> entries.put("class", c.word()));
    entries.put("sheath-mm", millimetres(couple.sheathMetres()));
    entries.put("offset-k", YamlText.number(couple.offset().kelvins()));
    return YamlText.flow(entries);
  }

  private static Control pid() {
    return new Control(
        Control.Kind.PID,
        USUAL_CYCLE_SECONDS,
        TemperatureChange.ofKelvins(0),
        Optional.empty(),
        Control.AfterPowerCut.UNKNOWN);
  }

  private static Control control(YamlValue value) {
    YamlMap map =
        value.map("kind", "cycle-s", "hysteresis-k", "hold-waits-within-k", "after-power-cut");
    Control.Kind kind = map.required("kind").oneOf(Control.Kind.class);
    double hysteresis = 0;
    if (kind == Control.Kind.ON_OFF) {
      hysteresis = map.required("hysteresis-k").between(0.1, 200, "K");
    } else if (map.has("hysteresis-k")) {
      throw map.required("hysteresis-k").error("only an on-off control has it; remove it.");
    }
    double hysteresisKelvins = hysteresis;
    double usualCycle = kind == Control.Kind.PID ? USUAL_CYCLE_SECONDS : 0;
    double cycle = map.optional("cycle-s").map(v -> v.between(0, 600, "s")).orElse(usualCycle);
    Optional<TemperatureChange> within =
        map.optional("hold-waits-within-k")
            .filter(v -> !v.isWord("none"))
            .map(v -> TemperatureChange.ofKelvins(v.between(0.1, 500, "K, or none")));
    Control.AfterPowerCut afterPowerCut =
        map.optional("after-power-cut")
            .map(v -> v.oneOf(Control.AfterPowerCut.class))
            .orElse(Control.AfterPowerCut.UNKNOWN);
    return value.build(
        () ->
            new Control(
                kind,
                cycle,
                TemperatureChange.ofKelvins(hysteresisKelvins),
                within,
                afterPowerCut));
  }

  private static String control(Control control) {
    Map<String, String> entries = new LinkedHashMap<>();
    entries.put("kind", YamlValue.word(control.kind()));
    entries.put("cycle-s", YamlText.number(control.cycleSeconds()));
    if (control.kind() == Control.Kind.ON_OFF) {
      entries.put("hysteresis-k", YamlText.number(control.hysteresis().kelvins()));
    }
    entries.put(
        "hold-waits-within-k",
        control.holdWaitsWithin().map(c -> YamlText.number(c.kelvins())).orElse("none"));
    entries.put("after-power-cut", YamlValue.word(control.afterPowerCut()));
    return YamlText.flow(entries);
  }

  // ---- place, price, history

  private static ZoneId zone(YamlValue value) {
    String id = value.text();
    if (!ZoneId.getAvailableZoneIds().contains(id)) {
      throw value.error(
          "the time zone \"%s\" is not known; expected an IANA name such as Europe/Lisbon%s."
              .formatted(id, Nearest.hint(id, ZoneId.getAvailableZoneIds())));
    }
    return ZoneId.of(id);
  }

  private static Tariff tariff(YamlValue value) {
    YamlMap map = value.map("currency", "flat", "bands");
    YamlValue currencyValue = map.required("currency");
    String currency = currencyValue.text();
    if (!currency.matches("[A-Z]{3}")) {
      throw currencyValue.wrong("three capital letters such as EUR");
    }
    if (map.has("flat") == map.has("bands")) {
      throw value.error("expected one of flat and bands.");
    }
    if (map.has("flat")) {
      double price = map.required("flat").atLeast0("price of a kWh");
      return Tariff.flat(currency, price);
    }
    List<PriceBand> bands =
        map.required("bands").filledList().stream().map(KilnFile::priceBand).toList();
    return map.required("bands").build(() -> new Tariff(currency, bands));
  }

  private static PriceBand priceBand(YamlValue value) {
    YamlMap map = value.map("from", "to", "price");
    return new PriceBand(
        map.required("from").clock(),
        endOfBand(map.required("to")),
        map.required("price").atLeast0("price of a kWh"));
  }

  private static LocalTime endOfBand(YamlValue value) {
    return value.isWord("24:00") ? LocalTime.MIDNIGHT : value.clock();
  }

  private static String tariff(Tariff tariff) {
    Map<String, String> entries = new LinkedHashMap<>();
    entries.put("currency", tariff.currency());
    if (tariff.isFlat()) {
      entries.put("flat", YamlText.number(tariff.bands().get(0).pricePerKilowattHour()));
    } else {
      entries.put(
          "bands",
          tariff.bands().stream()
              .map(
                  band ->
                      flow(
                          "from", YamlText.quoted(band.from().toString()),
                          "to", YamlText.quoted(band.to().toString()),
                          "price", YamlText.number(band.pricePerKilowattHour())))
              .collect(Collectors.joining(", ", "[", "]")));
    }
    return YamlText.flow(entries);
  }

  private static Circuit circuit(YamlValue value) {
    YamlMap map = value.map("name", "limit-a");
    return new Circuit(map.required("name").text(), map.required("limit-a").between(1, 1000, "A"));
  }

  private static LifeEvent lifeEvent(YamlValue value) {
    YamlMap map = value.map("date", "what");
    return new LifeEvent(
        map.required("date").date(), map.required("what").oneOf(LifeEvent.What.class));
  }

  // ---- small helpers

  /** A length of the chamber; below 3 cm it was meant in centimetres or metres. */
  private static double inside(YamlValue value) {
    return value.between(30, 4999, "mm") / MILLI;
  }

  private static double metres(YamlValue value) {
    return value.above0("mm") / MILLI;
  }

  private static String millimetres(double metres) {
    return YamlText.number(metres * MILLI);
  }

  private static String flow(String... keysAndValues) {
    Map<String, String> entries = new LinkedHashMap<>();
    for (int i = 0; i < keysAndValues.length; i += 2) {
      entries.put(keysAndValues[i], keysAndValues[i + 1]);
    }
    return YamlText.flow(entries);
  }

  private static void line(StringBuilder out, String key, String value) {
    out.append(key).append(value.startsWith("\n") ? ":" : ": ").append(value).append('\n');
  }
}
