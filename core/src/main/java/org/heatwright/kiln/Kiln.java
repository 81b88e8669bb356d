package org.heatwright.kiln;

import java.time.ZoneId;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.heatwright.units.Temperature;

/**
 * A kiln as its owner knows it: the nameplate. What Heatwright believes beyond it is {@link
 * KilnParameters}.
 *
 * @param name what people call it
 * @param chamber the inside
 * @param element the heating elements
 * @param walls layers of each face, inside to outside; every face present, no list empty
 * @param door where it opens
 * @param limit the highest temperature it may be set to
 * @param thermocouple the sensor behind the display
 * @param control how the controller drives the elements
 * @param room temperature of the room it stands in
 * @param timeZone zone of every clock time of this kiln, where known
 * @param tariff price of electricity, where known
 * @param circuit the mains circuit, where known
 * @param history what changed the kiln, oldest first
 * @param learned what its logs have taught, if anything
 */
public record Kiln(
    String name,
    Chamber chamber,
    HeatingElement element,
    Map<Face, List<Layer>> walls,
    Door door,
    Temperature limit,
    Thermocouple thermocouple,
    Control control,
    Temperature room,
    Optional<ZoneId> timeZone,
    Optional<Tariff> tariff,
    Optional<Circuit> circuit,
    List<LifeEvent> history,
    Optional<Learned> learned) {

  /** Where the kiln opens. */
  public enum Door {
    FRONT,
    TOP
  }

  /** A kiln known by its nameplate alone. */
  public Kiln(
      String name,
      Chamber chamber,
      HeatingElement element,
      Map<Face, List<Layer>> walls,
      Door door,
      Temperature limit,
      Thermocouple thermocouple,
      Control control,
      Temperature room,
      Optional<ZoneId> timeZone,
      Optional<Tariff> tariff,
      Optional<Circuit> circuit,
      List<LifeEvent> history) {
    this(
        name,
        chamber,
        element,
        walls,
        door,
        limit,
        thermocouple,
        control,
        room,
        timeZone,
        tariff,
        circuit,
        history,
        Optional.empty());
  }

  public Kiln {
    Objects.requireNonNull(name, "name");
    EnumMap<Face, List<Layer>> copy = new EnumMap<>(Face.class);
    for (Face face : Face.values()) {
      List<Layer> layers = walls.get(face);
      if (layers == null || layers.isEmpty()) {
        throw new IllegalArgumentException(
            "The %s of kiln '%s' needs at least one layer."
                .formatted(face.name().toLowerCase(java.util.Locale.ROOT), name));
      }
      copy.put(face, List.copyOf(layers));
    }
    walls = java.util.Collections.unmodifiableMap(copy);
    history = List.copyOf(history);
    if (!(limit.celsius() > 100 && limit.celsius() <= 1800)) {
      throw new IllegalArgumentException(
          "The limit of kiln '%s' (%s °C) must be above 100 and at most 1800 °C."
              .formatted(name, limit.celsius()));
    }
  }

  /** Layers of one face, inside to outside. */
  public List<Layer> layers(Face face) {
    return Objects.requireNonNull(walls.get(face));
  }

  /** Inner area of one face, m²: the door is one upright face, or the lid for a top loader. */
  public double innerSquareMetres(Face face) {
    return switch (face) {
      case ROOF -> door == Door.TOP ? 0 : chamber.floorSquareMetres();
      case FLOOR -> chamber.floorSquareMetres();
      case WALLS ->
          chamber.uprightSquareMetres() - (door == Door.TOP ? 0 : chamber.frontSquareMetres());
      case DOOR -> openingSquareMetres();
    };
  }

  /** Area of the opening when the door or lid is open, m². */
  public double openingSquareMetres() {
    return door == Door.TOP ? chamber.floorSquareMetres() : chamber.frontSquareMetres();
  }

  /** What is believed about it: what was learned with this model, else the nameplate's prior. */
  public KilnBeliefs beliefs() {
    return learned
        .filter(fit -> fit.engine().equals(Learned.ENGINE))
        .map(Learned::beliefs)
        .orElse(KilnBeliefs.prior());
  }

  /** The same kiln with what its logs have taught. */
  public Kiln withLearned(Learned fit) {
    return with(control, Optional.of(fit));
  }

  /** The same kiln as its nameplate alone tells it. */
  public Kiln withoutLearned() {
    return with(control, Optional.empty());
  }

  /** The same kiln under another control. */
  public Kiln withControl(Control other) {
    return with(other, learned);
  }

  private Kiln with(Control control, Optional<Learned> learned) {
    return new Kiln(
        name,
        chamber,
        element,
        walls,
        door,
        limit,
        thermocouple,
        control,
        room,
        timeZone,
        tariff,
        circuit,
        history,
        learned);
  }
}
