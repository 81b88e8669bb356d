package org.heatwright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Random;
import org.heatwright.app.demo.DemoStudio;
import org.heatwright.app.store.Kind;
import org.heatwright.app.store.Store;
import org.junit.jupiter.api.Test;

/** Everything is taken from one bench and brought to another. */
class ArchiveBenchTest {

  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-12-02T12:00:00Z"), ZoneOffset.UTC);

  @Test
  void aStudioIsTakenAndBrought() throws Exception {
    try (Store here = Store.temporary(CLOCK);
        Store there = Store.temporary(CLOCK)) {
      DemoStudio.fill(here);
      // Larger than any page's form: a studio of years, with its photographs.
      here.keepCard("Large", "", noise(25_000_000));
      try (Bench one = Bench.start(new BenchSettings(here, CLOCK, OptionalInt.of(0)));
          Bench other = Bench.start(new BenchSettings(there, CLOCK, OptionalInt.of(0)))) {
        AskedBench from = new AskedBench(one);
        HttpResponse<byte[]> taken = from.bytes(from.request("archive.zip"));
        assertThat(taken.headers().firstValue("Content-Disposition").orElseThrow())
            .contains("heatwright-2026-12-02.zip");
        assertThat(taken.body().length).isGreaterThan(25_000_000);

        HttpResponse<String> brought = bring(other, taken.body());
        assertThat(brought.statusCode()).isEqualTo(200);
        assertThat(brought.body()).contains("The archive was read. New here:", "Logs: 5");
        assertThat(there.find(Kind.KILN, "Anchor")).isPresent();
        assertThat(bring(other, taken.body()).body()).contains("all of it was here already");

        HttpResponse<String> wrong = bring(other, "no archive".getBytes(StandardCharsets.UTF_8));
        assertThat(wrong.statusCode()).isEqualTo(422);
        assertThat(wrong.body()).contains("The file is no archive of a Heatwright store");
        assertThat(bring(other, new byte[0]).body()).contains("Choose the archive first.");
      }
    }
  }

  private static byte[] noise(int length) {
    byte[] noise = new byte[length];
    new Random(1).nextBytes(noise);
    return noise;
  }

  private static HttpResponse<String> bring(Bench bench, byte[] archive) throws Exception {
    return new AskedBench(bench)
        .post("archive", Map.of(), List.of(new AskedBench.SentFile("archive", "a.zip", archive)));
  }
}
