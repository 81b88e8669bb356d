package org.heatwright.app.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Map;
import java.util.Optional;

/**
 * What a run of the command line touches outside its arguments and files.
 *
 * @param out where answers go
 * @param err where complaints go
 * @param clock what time it is
 * @param environment the process's environment variables
 * @param home the person's home folder
 * @param waiting how a serving command waits until it is told to end
 * @param in where answers to questions come from
 * @param store the store that is meant where none is named; empty: the person's own
 */
record Surroundings(
    PrintStream out,
    PrintStream err,
    Clock clock,
    Map<String, String> environment,
    Path home,
    Waiting waiting,
    InputStream in,
    Optional<Path> store) {

  /** Where nobody answers questions. */
  Surroundings(
      PrintStream out,
      PrintStream err,
      Clock clock,
      Map<String, String> environment,
      Path home,
      Waiting waiting) {
    this(
        out,
        err,
        clock,
        environment,
        home,
        waiting,
        InputStream.nullInputStream(),
        Optional.empty());
  }

  /** Waits until a serving command is told to end. */
  interface Waiting {
    void untilEnd() throws InterruptedException;
  }

  /** The real ones. Text is UTF-8 whatever the terminal's locale says. */
  static Surroundings ofProcess() {
    return new Surroundings(
        utf8(FileDescriptor.out),
        utf8(FileDescriptor.err),
        Clock.systemDefaultZone(),
        System.getenv(),
        Path.of(System.getProperty("user.home", ".")),
        () -> Thread.currentThread().join(), // until the process is stopped
        System.in,
        Optional.empty());
  }

  private static PrintStream utf8(FileDescriptor descriptor) {
    return new PrintStream(new FileOutputStream(descriptor), true, StandardCharsets.UTF_8);
  }
}
