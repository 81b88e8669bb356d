package org.heatwright.app.cli;

import java.nio.file.Path;
import java.util.Optional;
import java.util.function.BiFunction;
import org.heatwright.app.files.BodyFile;
import org.heatwright.app.files.Firing;
import org.heatwright.app.files.FiringFile;
import org.heatwright.app.files.KeypadFile;
import org.heatwright.app.files.KilnFile;
import org.heatwright.app.files.LogFile;
import org.heatwright.app.files.MaterialFile;
import org.heatwright.app.files.OwnValues;
import org.heatwright.app.files.ScheduleFile;
import org.heatwright.app.files.ShownFile;
import org.heatwright.app.files.TextFile;
import org.heatwright.app.files.ValuesFile;
import org.heatwright.app.files.WorkFile;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.Shown;
import org.heatwright.material.Material;
import org.heatwright.schedule.Schedule;
import org.heatwright.work.Work;

/** The files a command names. */
final class Input {

  private Input() {}

  static Schedule schedule(Path path) {
    return read(path, ScheduleFile::read);
  }

  static KilnFile.Content kiln(Path path) {
    return read(path, KilnFile::readContent);
  }

  static Keypad keypad(Path path) {
    return read(path, KeypadFile::read);
  }

  static Work work(Path path) {
    return read(path, WorkFile::read);
  }

  /** A work as its file holds it. */
  static String workText(Path path) {
    return TextFile.yaml(path);
  }

  static OwnValues values(Path path) {
    return read(path, ValuesFile::read);
  }

  static Firing firing(Path path) {
    return read(path, FiringFile::read);
  }

  static BodyFile.Content body(Path path, Optional<Path> material) {
    Optional<Material> own = material.map(m -> read(m, MaterialFile::read));
    return read(path, (text, name) -> BodyFile.read(text, name, own));
  }

  static Shown shown(Path path) {
    return read(path, ShownFile::read);
  }

  static LogFile.Log log(Path path) {
    return LogFile.read(TextFile.log(path), String.valueOf(path.getFileName()));
  }

  /** A log as its file holds it. */
  static String logText(Path path) {
    return TextFile.log(path);
  }

  private static <T> T read(Path path, BiFunction<String, String, T> reader) {
    return reader.apply(TextFile.yaml(path), String.valueOf(path.getFileName()));
  }
}
