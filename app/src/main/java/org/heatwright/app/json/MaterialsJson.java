package org.heatwright.app.json;

import java.util.List;
import org.heatwright.app.catalogue.Shelf;
import org.heatwright.units.TemperatureUnit;

/**
 * What {@code materials --json} prints.
 *
 * @param unit of the temperatures in the texts: "C" or "F"
 */
public record MaterialsJson(String unit, List<ShelfJson> shelves) {

  /** Materials of one kind. */
  public record ShelfJson(String code, String name, String about, List<ItemJson> items) {}

  /** One material. */
  public record ItemJson(String name, List<ValueJson> values) {}

  /** A value; {@code origin}: read, from memory, common practice, our estimate, derived, own. */
  public record ValueJson(String what, String value, String origin, String source) {}

  public static MaterialsJson of(TemperatureUnit unit, List<Shelf> shelves) {
    return new MaterialsJson(
        unit.letter(),
        shelves.stream()
            .map(
                shelf ->
                    new ShelfJson(
                        shelf.code(),
                        shelf.name(),
                        shelf.about(),
                        shelf.items().stream().map(MaterialsJson::item).toList()))
            .toList());
  }

  private static ItemJson item(Shelf.Item item) {
    return new ItemJson(
        item.name(),
        item.values().stream()
            .map(
                v ->
                    new ValueJson(
                        v.what(), v.value(), v.origin().kind().words(), v.origin().text()))
            .toList());
  }
}
