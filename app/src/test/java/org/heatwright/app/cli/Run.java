package org.heatwright.app.cli;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Map;

/** One run of the command line inside the test's process, at a fixed time. */
record Run(int code, String out, String err) {

  /** Wednesday 2 December 2026, 12:00 in Lisbon and London. */
  static final Instant NOON = Instant.parse("2026-12-02T12:00:00Z");

  static Run of(Object... args) {
    return at(NOON, args);
  }

  static Run at(Instant now, Object... args) {
    return in(now, () -> {}, args);
  }

  static Run in(Instant now, Surroundings.Waiting waiting, Object... args) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    Surroundings surroundings =
        new Surroundings(
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8),
            Clock.fixed(now, ZoneId.of("UTC")),
            Map.of(),
            Path.of("no-home"),
            waiting);
    String[] words = new String[args.length];
    for (int i = 0; i < args.length; i++) {
      words[i] = args[i].toString();
    }
    int code = Cli.run(surroundings, words);
    return new Run(
        code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }
}
