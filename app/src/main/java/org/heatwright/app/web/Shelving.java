package org.heatwright.app.web;

import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.ShelfText;
import org.heatwright.app.store.Kind;
import org.heatwright.app.store.Store;

/** Puts a file that a person brings on the shelf, if it can be read. */
final class Shelving {

  private Shelving() {}

  /**
   * @param kind "work", "kiln" or "keypad"
   * @param name its name on the shelf; empty: the name inside the file, where it has one
   * @return what was brought; its error is empty if it is on the shelf now
   */
  static Page.Bringing bring(Store store, String kind, String name, String text) {
    try {
      Optional<Kind> wanted = kind(kind);
      if (wanted.isEmpty()) {
        return Page.Bringing.wrong(
            kind, name, text, "Say whether it is a work, a kiln or a keypad.");
      }
      String inside = ShelfText.nameInside(wanted.get(), text, "this file");
      String shelfName = name.isEmpty() ? inside : name;
      if (shelfName.isEmpty() || shelfName.length() > 200) {
        return Page.Bringing.wrong(
            kind, name, text, "Give it a name to find it by, at most 200 characters.");
      }
      store.keep(wanted.get(), shelfName, text);
      return Page.Bringing.done(wanted.get().word(), shelfName);
    } catch (InputException e) {
      return Page.Bringing.wrong(kind, name, text, Objects.requireNonNull(e.getMessage()));
    }
  }

  private static Optional<Kind> kind(String word) {
    return switch (word.toLowerCase(Locale.ROOT)) {
      case "work" -> Optional.of(Kind.WORK);
      case "kiln" -> Optional.of(Kind.KILN);
      case "keypad" -> Optional.of(Kind.KEYPAD);
      default -> Optional.empty();
    };
  }
}
