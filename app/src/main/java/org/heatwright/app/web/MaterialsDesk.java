package org.heatwright.app.web;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.heatwright.app.catalogue.Catalogue;
import org.heatwright.app.catalogue.Shelf;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.WorkFile;
import org.heatwright.app.store.Document;
import org.heatwright.app.store.Kind;
import org.heatwright.app.store.Store;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.Work;

/** What is known of materials, with the values that people brought themselves. */
final class MaterialsDesk {

  /** So few found ones lie open. */
  private static final int FEW = 12;

  private final Store store;
  private final ValuesDesk values;

  MaterialsDesk(Store store, ValuesDesk values) {
    this.store = store;
    this.values = values;
  }

  /**
   * @param words to look for; empty for everything
   * @param unit "F" for °F; anything else is °C
   * @param done what was done just now
   */
  MaterialsPage page(String clock, String words, String unit, MaterialsPage.Told done) {
    TemperatureUnit chosen =
        unit.equals("F") ? TemperatureUnit.FAHRENHEIT : TemperatureUnit.CELSIUS;
    Catalogue catalogue = new Catalogue(chosen);
    List<Shelf> all = new ArrayList<>();
    all.add(catalogue.own(works()));
    all.addAll(catalogue.shelves());
    List<Shelf> found =
        all.stream()
            .map(shelf -> words.isBlank() ? shelf : shelf.matching(words))
            .filter(shelf -> !shelf.items().isEmpty())
            .toList();
    List<MaterialsPage.Own> own = values.all(words, chosen);
    int count = own.size() + found.stream().mapToInt(shelf -> shelf.items().size()).sum();
    boolean open = !words.isBlank() && count <= FEW;
    return new MaterialsPage(
        clock,
        words,
        chosen.letter(),
        told(words, count),
        own,
        done,
        found.stream()
            .map(
                shelf ->
                    new MaterialsPage.Kind(
                        shelf.code(),
                        shelf.name(),
                        shelf.about(),
                        open,
                        shelf.items().stream().map(MaterialsDesk::item).toList()))
            .toList());
  }

  private static String told(String words, int count) {
    if (words.isBlank()) {
      return "Every value with where it is from: read in a source, from memory, common practice, an"
          + " estimate, or your own.";
    }
    return switch (count) {
      case 0 -> "Nothing here speaks of “%s”.".formatted(words);
      case 1 -> "One speaks of “%s”.".formatted(words);
      default -> "%d speak of “%s”.".formatted(count, words);
    };
  }

  private static MaterialsPage.Item item(Shelf.Item item) {
    return new MaterialsPage.Item(
        item.name(),
        item.values().stream()
            .map(v -> new MaterialsPage.Value(v.what(), v.value(), v.origin().words()))
            .toList());
  }

  /** Those that can be read; what is wrong with the others is told where they are planned. */
  private Map<String, Work> works() {
    Map<String, Work> works = new LinkedHashMap<>();
    for (Document document : store.all(Kind.WORK)) {
      try {
        works.put(document.name(), WorkFile.read(document.text(), document.name()));
      } catch (InputException notReadable) {
        continue;
      }
    }
    return works;
  }
}
