package org.heatwright.app.files;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.heatwright.forecast.Charge;
import org.heatwright.forecast.Charge.Piece;
import org.heatwright.forecast.SessionPieces;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.FiringConditions.ColdPieces;
import org.heatwright.kiln.FiringConditions.Disturbance;
import org.heatwright.material.PieceMaterials;
import org.heatwright.mould.Investment;
import org.heatwright.mould.Mould;
import org.heatwright.units.Temperature;

/** {@code firing.yaml}: what was so on the day. Every part is optional. */
public final class FiringFile {

  private static final Map<Disturbance.Kind, String> EVENT_KEYS =
      Map.of(
          Disturbance.Kind.DOOR_OPEN, "door-open-s",
          Disturbance.Kind.MAINS_OFF, "mains-off-s",
          Disturbance.Kind.DOOR_AJAR, "door-ajar-s",
          Disturbance.Kind.ELEMENT_OPEN, "element-open-s",
          Disturbance.Kind.TIP_OUT, "tip-out-s",
          Disturbance.Kind.RELAY_ON, "relay-on-s",
          Disturbance.Kind.RELAY_OFF, "relay-off-s");

  private FiringFile() {}

  public static Firing read(String text, String fileName) {
    YamlMap file =
        YamlFile.read(text, fileName, FileKind.FIRING)
            .only(
                "room-celsius",
                "start-celsius",
                "vent",
                "events",
                "goes-in-cold",
                "load",
                "supply-v");
    FiringConditions told =
        new FiringConditions(
            file.optional("room-celsius").map(v -> celsius(v, -30, 60)),
            file.optional("start-celsius").map(v -> celsius(v, -30, 1300)),
            file.optional("vent")
                .map(v -> v.oneOf(List.of("open", "shut")).equals("open"))
                .orElse(false),
            file.optional("supply-v").map(v -> v.between(1, 999, "V")),
            file.optional("events").map(v -> v.listOf(FiringFile::event)).orElse(List.of()));
    FiringConditions conditions =
        told.with(List.of(), file.optional("goes-in-cold").map(v -> cold(v, told.disturbances())));
    return new Firing(conditions, file.optional("load").map(FiringFile::load));
  }

  public static String write(Firing firing) {
    StringBuilder out = new StringBuilder();
    FiringConditions conditions = firing.conditions();
    conditions.room().ifPresent(t -> line(out, "room-celsius", YamlText.number(t.celsius())));
    conditions.start().ifPresent(t -> line(out, "start-celsius", YamlText.number(t.celsius())));
    line(out, "vent", conditions.ventOpen() ? "open" : "shut");
    if (!conditions.disturbances().isEmpty()) {
      line(
          out,
          "events",
          conditions.disturbances().stream()
              .map(FiringFile::event)
              .collect(Collectors.joining(", ", "[", "]")));
    }
    conditions.pieces().ifPresent(pieces -> line(out, "goes-in-cold", cold(pieces)));
    firing.load().ifPresent(charge -> line(out, "load", load(charge)));
    conditions.supplyVolts().ifPresent(volts -> line(out, "supply-v", YamlText.number(volts)));
    return out.toString();
  }

  /** Nothing, or the heat of each piece, J/K, which goes in wherever the door is opened. */
  private static ColdPieces cold(YamlValue value, List<Disturbance> events) {
    if (value.isWord(NOTHING)) {
      return ColdPieces.NONE;
    }
    if (!value.isMap()) {
      throw value.wrong("none or a heat such as {j-per-k: 45}");
    }
    List<ColdPieces.Change> changes = SessionPieces.changes(events);
    if (changes.size() < 2) {
      throw value.error(
          "expected two openings of the door or more among the events, because the last lets the last piece out.");
    }
    return SessionPieces.of(
        value.map("j-per-k").required("j-per-k").between(1, 5000, "J/K"), changes);
  }

  private static String cold(ColdPieces pieces) {
    return pieces.changes().isEmpty()
        ? NOTHING
        : "{j-per-k: %s}".formatted(YamlText.number(pieces.joulesPerKelvin()));
  }

  private static final String NOTHING = "none";

  private static Disturbance event(YamlValue value) {
    List<String> keys = new ArrayList<>(List.of("at-s"));
    for (Disturbance.Kind kind : Disturbance.Kind.values()) {
      keys.add(key(kind));
    }
    YamlMap map = value.map(keys.toArray(String[]::new));
    double at = map.required("at-s").between(0, 1e7, "s");
    List<Disturbance> found = new ArrayList<>();
    for (Disturbance.Kind kind : Disturbance.Kind.values()) {
      map.optional(key(kind))
          .ifPresent(length -> found.add(new Disturbance(kind, at, length.between(1, 1e6, "s"))));
    }
    if (found.size() != 1) {
      throw value.error("expected one of " + String.join(", ", keys.subList(1, keys.size())) + ".");
    }
    return found.get(0);
  }

  private static String event(Disturbance disturbance) {
    return "{at-s: %s, %s: %s}"
        .formatted(
            YamlText.number(disturbance.atSeconds()),
            key(disturbance.kind()),
            YamlText.number(disturbance.lengthSeconds()));
  }

  private static String key(Disturbance.Kind kind) {
    return EVENT_KEYS.getOrDefault(kind, "");
  }

  private static Charge load(YamlValue value) {
    YamlMap map =
        value.map(
            "furniture-kg", "moulds", "binder", "water-powder", "poured-hours-before", "pieces");
    List<Mould> moulds =
        map.optional("moulds").map(v -> v.listOf(FiringFile::mould)).orElse(List.of());
    Optional<Investment> investment =
        moulds.isEmpty() ? Optional.empty() : Optional.of(investmentOf(map));
    return new Charge(
        map.optional("furniture-kg").map(v -> v.between(0, 500, "kg")).orElse(0.0),
        moulds,
        investment,
        map.optional("pieces").map(v -> v.listOf(FiringFile::piece)).orElse(List.of()),
        List.of());
  }

  /** A binder that is not told is taken for gypsum: the load only has to hold the heat. */
  private static Investment investmentOf(YamlMap map) {
    Investment told = WorkFile.investment(map);
    return map.has("binder")
        ? told
        : new Investment(Investment.Binder.GYPSUM, told.waterPowder(), told.pouredHoursBefore());
  }

  private static Mould mould(YamlValue value) {
    return MouldField.read(value.map("count", "diameter-mm", "height-mm", "wall-mm"));
  }

  private static Piece piece(YamlValue value) {
    YamlMap map = value.map("material", "mass-kg", "heat-capacity-j-kgk");
    double mass = map.required("mass-kg").between(1e-6, 500, "kg");
    if (map.has("heat-capacity-j-kgk")) {
      String name = map.required("material").text();
      double own = map.required("heat-capacity-j-kgk").between(10, 20_000, "J/(kg K)");
      return new Piece(name, mass, own);
    }
    String name = map.required("material").oneOf(PieceMaterials.names());
    return new Piece(
        name, mass, PieceMaterials.heatCapacityJoulesPerKilogramKelvin(name).orElseThrow());
  }

  private static String load(Charge charge) {
    Map<String, String> entries = new LinkedHashMap<>();
    if (charge.furnitureKilograms() > 0) {
      entries.put("furniture-kg", YamlText.number(charge.furnitureKilograms()));
    }
    if (!charge.moulds().isEmpty()) {
      entries.put(
          "moulds",
          charge.moulds().stream()
              .map(mould -> YamlText.flow(MouldField.entries(mould)))
              .collect(Collectors.joining(", ", "[", "]")));
    }
    charge.investment().ifPresent(investment -> entries.putAll(WorkFile.entries(investment)));
    if (!charge.pieces().isEmpty()) {
      entries.put(
          "pieces",
          charge.pieces().stream()
              .map(
                  piece ->
                      "{material: %s, mass-kg: %s, heat-capacity-j-kgk: %s}"
                          .formatted(
                              YamlText.text(piece.name()),
                              YamlText.number(piece.massKilograms()),
                              YamlText.number(piece.heatCapacityJoulesPerKilogramKelvin())))
              .collect(Collectors.joining(", ", "[", "]")));
    }
    return YamlText.flow(entries);
  }

  private static Temperature celsius(YamlValue value, double low, double high) {
    return Temperature.ofCelsius(value.between(low, high, "°C"));
  }

  private static void line(StringBuilder out, String key, String value) {
    out.append(key).append(": ").append(value).append('\n');
  }
}
