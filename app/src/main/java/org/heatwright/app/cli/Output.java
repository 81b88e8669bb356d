package org.heatwright.app.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.KeypadFile;
import org.heatwright.app.files.KilnFile;
import org.heatwright.app.files.ScheduleFile;
import org.heatwright.app.files.WorkFile;

/**
 * Files a command writes. A file that is there already is replaced only if it is of the kind that
 * is being written; a schedule, kiln, keypad, work or log that is replaced is kept beside it under
 * its name with {@code ~}, {@code ~2} and so on at the end. A file is there whole or not at all.
 */
final class Output {

  /** The kinds of file that commands write. */
  enum Kind {
    SCHEDULE("a schedule") {
      @Override
      boolean is(byte[] bytes) {
        try {
          ScheduleFile.read(new String(bytes, StandardCharsets.UTF_8), "");
          return true;
        } catch (InputException e) {
          return false;
        }
      }
    },
    KILN("a kiln") {
      @Override
      boolean is(byte[] bytes) {
        try {
          KilnFile.read(new String(bytes, StandardCharsets.UTF_8), "");
          return true;
        } catch (InputException e) {
          return false;
        }
      }
    },
    KEYPAD("a keypad") {
      @Override
      boolean is(byte[] bytes) {
        try {
          KeypadFile.read(new String(bytes, StandardCharsets.UTF_8), "");
          return true;
        } catch (InputException e) {
          return false;
        }
      }
    },
    WORK("a work") {
      @Override
      boolean is(byte[] bytes) {
        try {
          WorkFile.read(new String(bytes, StandardCharsets.UTF_8), "");
          return true;
        } catch (InputException e) {
          return false;
        }
      }
    },
    TRACE("a trace") {
      @Override
      boolean is(byte[] bytes) {
        String header = firstLine(bytes);
        return TRACE_HEADERS.stream().anyMatch(start -> header.startsWith(start));
      }
    },
    LOG("a log of ours") {
      @Override
      boolean is(byte[] bytes) {
        return startsWith(bytes, "time,chamber_") || startsWith(bytes, "time_s,chamber_");
      }
    },
    SVG("an SVG drawing") {
      @Override
      boolean is(byte[] bytes) {
        return new String(bytes, StandardCharsets.UTF_8).contains("<svg ");
      }
    },
    PNG("a PNG picture") {
      @Override
      boolean is(byte[] bytes) {
        return startsWith(bytes, "\u0089PNG");
      }
    },
    PAGE("a page of ours") {
      @Override
      boolean is(byte[] bytes) {
        return new String(bytes, StandardCharsets.UTF_8).contains(" id=\"pocket-data\">");
      }
    },
    PDF("a PDF") {
      @Override
      boolean is(byte[] bytes) {
        return startsWith(bytes, "%PDF-");
      }
    },
    ARCHIVE("an archive of ours") {
      @Override
      boolean is(byte[] bytes) {
        return startsWith(bytes, "PK")
            && new String(bytes, StandardCharsets.ISO_8859_1).contains("heatwright.db");
      }
    },
    CALENDAR("a calendar") {
      @Override
      boolean is(byte[] bytes) {
        return startsWith(bytes, "BEGIN:VCALENDAR");
      }
    };

    /** Whole headers, as commands that trace write them: a log begins with a time too. */
    private static final List<String> TRACE_HEADERS =
        List.of(Trace.HEADER, InsideCommand.TRACE_HEADER, BodyCommand.TRACE_HEADER);

    private final String words;

    Kind(String words) {
      this.words = words;
    }

    abstract boolean is(byte[] bytes);

    /** With the line ending that traces have; empty where the line ends otherwise. */
    private static String firstLine(byte[] bytes) {
      String text = new String(bytes, StandardCharsets.UTF_8);
      int end = text.indexOf("\n");
      String line = end < 0 ? "" : text.substring(0, end + 1);
      return line.endsWith("\r\n") ? line : "";
    }

    private static boolean startsWith(byte[] bytes, String start) {
      return new String(bytes, StandardCharsets.ISO_8859_1).startsWith(start);
    }
  }

  /** What a person may have written by hand, and what was measured and comes but once. */
  private static final Set<Kind> KEPT_BEFORE =
      EnumSet.of(Kind.SCHEDULE, Kind.KILN, Kind.KEYPAD, Kind.WORK, Kind.LOG);

  private Output() {}

  static void requireReplaceable(Path path, Kind kind) {
    try {
      if (Files.isDirectory(path)) {
        throw InputException.in(
            path.toString(), "this is a folder; expected the name of a file to write.");
      }
      if (Files.exists(path) && !Files.isRegularFile(path)) {
        throw InputException.in(
            path.toString(),
            "this is a device or a pipe, not a file; expected the name of a file to write.");
      }
      if (Files.exists(path) && !Files.isWritable(path)) {
        throw InputException.in(
            path.toString(), "the file is write-protected; choose another name or unprotect it.");
      }
      if (Files.exists(path) && Files.size(path) > 0 && !kind.is(Files.readAllBytes(path))) {
        throw InputException.in(
            path.toString(),
            "the file is there already and is not %s; choose another name or move it away."
                .formatted(kind.words));
      }
      Path folder = path.toAbsolutePath().getParent();
      if (folder == null || !Files.isDirectory(folder)) {
        throw InputException.in(
            path.toString(), "there is no such folder; make it first or choose another name.");
      }
    } catch (IOException e) {
      throw cannot(path, e);
    }
  }

  /**
   * Writes the file.
   *
   * @return one sentence that says so
   */
  static String write(Path path, Kind kind, byte[] bytes) {
    requireReplaceable(path, kind);
    try {
      Optional<Path> before = keepBefore(path, kind, bytes);
      // Through a link, the file it leads to is the one that is replaced.
      Path target = Files.exists(path) ? path.toRealPath() : path.toAbsolutePath();
      // Not createTempFile: its files are private, and this one takes the usual permissions.
      Path unfinished =
          target.resolveSibling(
              ".%s.%d.part".formatted(target.getFileName(), ProcessHandle.current().pid()));
      try {
        Files.write(unfinished, bytes, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
        Files.move(unfinished, target, StandardCopyOption.REPLACE_EXISTING);
      } finally {
        Files.deleteIfExists(unfinished);
      }
      return "Written to %s.%s"
          .formatted(path, before.map(b -> " What was there is kept as " + b + ".").orElse(""));
    } catch (IOException e) {
      throw cannot(path, e);
    }
  }

  static String write(Path path, Kind kind, String text) {
    return write(path, kind, text.getBytes(StandardCharsets.UTF_8));
  }

  private static Optional<Path> keepBefore(Path path, Kind kind, byte[] bytes) throws IOException {
    if (!KEPT_BEFORE.contains(kind)
        || !Files.exists(path)
        || Arrays.equals(Files.readAllBytes(path), bytes)) {
      return Optional.empty();
    }
    Path before = path.resolveSibling(path.getFileName() + "~");
    for (int number = 2; Files.exists(before); number++) {
      before = path.resolveSibling(path.getFileName() + "~" + number);
    }
    Files.copy(path, before);
    return Optional.of(before);
  }

  private static InputException cannot(Path path, IOException e) {
    return InputException.in(
        path.toString(),
        "the file cannot be written (%s); check who may write in that folder and how full it is."
            .formatted(e.getClass().getSimpleName()));
  }
}
