package org.heatwright.app.catalogue;

import java.util.List;
import java.util.Locale;
import org.heatwright.material.Origin;

/**
 * Materials of one kind.
 *
 * @param code a short name for addresses, e.g. "glass"
 * @param name in words
 * @param about what its values are used for
 * @param items by name
 */
public record Shelf(String code, String name, String about, List<Item> items) {

  public Shelf {
    items = List.copyOf(items);
  }

  /** One material. */
  public record Item(String name, List<Value> values) {
    public Item {
      values = List.copyOf(values);
    }
  }

  /**
   * A value.
   *
   * @param what it is
   * @param value with its unit
   * @param origin where it comes from
   */
  public record Value(String what, String value, Origin origin) {}

  /** The same with what holds all the words only; every item where the shelf itself holds them. */
  public Shelf matching(String words) {
    String[] wanted = words.toLowerCase(Locale.UK).strip().split("\\s+");
    return new Shelf(
        code, name, about, items.stream().filter(item -> holds(item, wanted)).toList());
  }

  private boolean holds(Item item, String[] wanted) {
    StringBuilder all = new StringBuilder(name).append(' ').append(item.name());
    item.values()
        .forEach(v -> all.append(' ').append(v.what()).append(' ').append(v.origin().words()));
    String text = all.toString().toLowerCase(Locale.UK);
    for (String word : wanted) {
      if (!text.contains(word)) {
        return false;
      }
    }
    return true;
  }
}
