package org.heatwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The serving commands serve while they wait, say where, and end cleanly. */
class ServingTest {

  private static final Pattern ADDRESS = Pattern.compile("(http://127\\.0\\.0\\.1:\\d+/)");

  @TempDir private Path dir;

  private static int status(String address) throws Exception {
    HttpClient client = HttpClient.newBuilder().build();
    return client
        .send(
            HttpRequest.newBuilder(URI.create(address + "health")).build(),
            HttpResponse.BodyHandlers.discarding())
        .statusCode();
  }

  /** Runs the command and asks for its health at the moment it would wait. */
  private static Run served(Object... words) {
    List<Integer> statuses = new ArrayList<>();
    java.io.ByteArrayOutputStream out = new java.io.ByteArrayOutputStream();
    Surroundings surroundings =
        new Surroundings(
            new java.io.PrintStream(out, true, java.nio.charset.StandardCharsets.UTF_8),
            System.err,
            java.time.Clock.systemUTC(),
            java.util.Map.of(),
            Path.of("no-home"),
            () -> {
              try {
                Matcher address =
                    ADDRESS.matcher(out.toString(java.nio.charset.StandardCharsets.UTF_8));
                assertThat(address.find()).isTrue();
                statuses.add(status(address.group(1)));
              } catch (Exception e) {
                throw new IllegalStateException(e);
              }
            });
    String[] arguments =
        java.util.Arrays.stream(words).map(Object::toString).toArray(String[]::new);
    int code = Cli.run(surroundings, arguments);
    assertThat(statuses).containsExactly(200);
    return new Run(code, out.toString(java.nio.charset.StandardCharsets.UTF_8), "");
  }

  @Test
  void theDemoOpensItsStudio() {
    Run run = served("demo", "--port", 0);

    assertThat(run.code()).isZero();
    assertThat(run.out()).startsWith("The demo studio is open at http://127.0.0.1:");
  }

  @Test
  void servingKeepsTheStore() {
    Path store = dir.resolve("studio 50%d.db"); // a percent sign is a letter like another

    assertThat(served("serve", "--store", store, "--port", 0).code()).isZero();
    assertThat(store).satisfies(file -> assertThat(Files.size(file)).isPositive());
    assertThat(served("serve", "--store", store, "--port", 0).code()).isZero();
  }

  @Test
  void programsReadWhereItIsOpen() {
    Run run = served("demo", "--port", 0, "--json");

    assertThat(run.out()).startsWith("{\n  \"address\" : \"http://127.0.0.1:");
  }
}
