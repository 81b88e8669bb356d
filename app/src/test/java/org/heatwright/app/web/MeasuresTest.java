package org.heatwright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.OptionalInt;
import java.util.regex.Pattern;
import org.heatwright.app.demo.DemoStudio;
import org.heatwright.app.store.Store;
import org.junit.jupiter.api.Test;

/** What can be measured of the running bench. */
class MeasuresTest {

  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-12-02T12:00:00Z"), ZoneOffset.UTC);

  /** A sample line of the text format 0.0.4, as its specification writes it. */
  private static final Pattern SAMPLE =
      Pattern.compile(
          "[a-zA-Z_:][a-zA-Z0-9_:]*(\\{([a-zA-Z_][a-zA-Z0-9_]*=\"([^\"\\\\\\n]|\\\\.)*\",?)*\\})?"
              + " ([+-]?[0-9.]+([eE][+-]?[0-9]+)?|NaN|[+-]Inf)");

  @Test
  void tellsAnswersShelfAndFirings() throws Exception {
    try (Store store = Store.temporary(CLOCK)) {
      DemoStudio.fill(store);
      try (Bench bench = Bench.start(new BenchSettings(store, CLOCK, OptionalInt.of(0)))) {
        AskedBench asked = new AskedBench(bench);
        assertThat(asked.get("materials").statusCode()).isEqualTo(200);
        assertThat(asked.get("no-such-page").statusCode()).isEqualTo(404);
        HttpResponse<String> response = asked.get("metrics");
        assertThat(response.headers().firstValue("Content-Type").orElseThrow())
            .startsWith("text/plain; version=0.0.4");
        List<String> lines = response.body().lines().toList();
        assertThat(lines)
            .filteredOn(line -> !line.startsWith("#"))
            .allMatch(line -> SAMPLE.matcher(line).matches());
        assertThat(lines)
            .contains(
                "heatwright_shelf_texts{kind=\"kiln\"} 3.0",
                "heatwright_firings{state=\"running\"} 0.0")
            .anyMatch(
                l ->
                    l.startsWith(
                        "heatwright_answer_seconds_count{method=\"GET\",page=\"/materials\",status=\"200\"} 1"))
            .anyMatch(l -> l.contains("status=\"404\""))
            .anyMatch(l -> l.startsWith("jvm_memory_used_bytes{"));
      }
    }
  }
}
