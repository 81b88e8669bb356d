package org.heatwright.app.files;

import org.heatwright.app.store.Kind;

/** Files as they lie on the shelf. */
public final class ShelfText {

  private ShelfText() {}

  /**
   * Reads a file of that kind, so that nothing is kept that cannot be read.
   *
   * @param label what a message calls the file
   * @return the name inside; empty where its kind has none
   * @throws InputException saying what is wrong and where
   */
  public static String nameInside(Kind kind, String text, String label) {
    return switch (kind) {
      case KILN -> KilnFile.read(text, label).name();
      case KEYPAD -> KeypadFile.read(text, label).name();
      case SCHEDULE -> ScheduleFile.read(text, label).name();
      case VALUES -> {
        ValuesFile.read(text, label);
        yield "";
      }
      case WORK -> {
        WorkFile.read(text, label);
        yield "";
      }
    };
  }
}
