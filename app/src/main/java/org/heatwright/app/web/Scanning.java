package org.heatwright.app.web;

import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.InputStream;
import java.util.Objects;
import java.util.Optional;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.ScheduleCode;
import org.heatwright.app.files.ScheduleFile;
import org.heatwright.app.qr.QrFinder;
import org.heatwright.app.store.Kind;
import org.heatwright.app.store.Store;
import org.heatwright.schedule.Schedule;

/** Puts a schedule on the shelf that comes from the code on a card. */
final class Scanning {

  private static final int LONGEST_NAME = 200;

  private Scanning() {}

  /**
   * @param file a photograph or PDF; goes before the text
   * @param text of the code
   * @return why it is not on the shelf, one sentence; empty if it is there now
   */
  static String keep(Store store, Optional<UploadedFile> file, String text) {
    try {
      if (file.isEmpty() && text.isBlank()) {
        return "Choose a photograph or PDF of a card, or paste the text of its code.";
      }
      Schedule schedule =
          ScheduleCode.read(
              file.map(Scanning::found).orElse(text), file.isEmpty() ? "code" : name(file.get()));
      if (schedule.name().length() > LONGEST_NAME) {
        return "The schedule's name has %d characters; the shelf takes at most %d."
            .formatted(schedule.name().length(), LONGEST_NAME);
      }
      store.keep(Kind.SCHEDULE, schedule.name(), ScheduleFile.write(schedule));
      return "";
    } catch (InputException e) {
      return Objects.requireNonNull(e.getMessage());
    }
  }

  private static String found(UploadedFile file) {
    try (InputStream in = file.content()) {
      return QrFinder.text(in.readAllBytes(), name(file), ScheduleCode::isOurs);
    } catch (IOException e) {
      throw InputException.in(name(file), "the file did not arrive whole; send it again.");
    }
  }

  private static String name(UploadedFile file) {
    return file.filename().isBlank() ? "the picture" : file.filename();
  }
}
