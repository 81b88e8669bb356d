package org.heatwright.app.cli;

import java.io.IOException;
import java.lang.reflect.AnnotatedElement;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.heatwright.app.api.Written;
import org.heatwright.app.files.InputException;
import picocli.CommandLine.ExecutionException;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParseResult;

/** The files that a command line names: what is written must not be what is read. */
final class NamedFiles {

  /**
   * A file on a command line.
   *
   * @param written whether the command writes it
   * @param inPlace whether it may be a file that is read, because that is kept
   */
  private record Named(String option, Path path, boolean written, boolean inPlace) {

    boolean same(Path other) {
      try {
        if (Files.exists(path) && Files.exists(other)) {
          return Files.isSameFile(path, other);
        }
      } catch (IOException e) {
        // Who may not look at a file is told when it is opened.
      }
      return path.toAbsolutePath().normalize().equals(other.toAbsolutePath().normalize());
    }
  }

  private NamedFiles() {}

  /**
   * Refuses to write a file that is read, and to write two into one.
   *
   * @throws ExecutionException around an {@link InputException}
   */
  static void requireApart(ParseResult parsed) {
    ParseResult last = parsed;
    while (last.hasSubcommand()) {
      last = last.subcommand();
    }
    List<Named> files = new ArrayList<>();
    last.matchedArgs().forEach(arg -> paths(arg).forEach(path -> files.add(named(arg, path))));
    for (Named written : files) {
      for (Named other : files) {
        if (written != other
            && written.written()
            && !(written.inPlace() && !other.written())
            && written.same(other.path())) {
          InputException refused =
              InputException.in(
                  written.option(),
                  other.written()
                      ? "%s is written by %s too; choose two names."
                          .formatted(written.path(), other.option())
                      : "%s is the file that %s reads, which would be lost; choose another name to write to."
                          .formatted(written.path(), other.option()));
          throw new ExecutionException(
              last.commandSpec().commandLine(), refused.getMessage(), refused);
        }
      }
    }
  }

  private static Named named(ArgSpec arg, Path path) {
    Optional<Written> written = written(arg);
    return new Named(
        arg instanceof OptionSpec option ? option.longestName() : arg.paramLabel(),
        path,
        written.isPresent(),
        written.map(Written::inPlace).orElse(false));
  }

  private static Optional<Written> written(ArgSpec arg) {
    return arg.userObject() instanceof AnnotatedElement element
        ? Optional.ofNullable(element.getAnnotation(Written.class))
        : Optional.empty();
  }

  private static List<Path> paths(ArgSpec arg) {
    return values(arg.getValue()).stream()
        .filter(Path.class::isInstance)
        .map(Path.class::cast)
        .toList();
  }

  private static Collection<?> values(Object value) {
    if (value instanceof Optional<?> maybe) {
      return maybe.map(List::<Object>of).orElse(List.of());
    }
    if (value instanceof Collection<?> many) {
      return many;
    }
    return value == null ? List.of() : List.of(value);
  }
}
