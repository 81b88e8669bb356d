package org.heatwright.app.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.OptionalInt;
import org.heatwright.app.store.Store;
import org.junit.jupiter.api.Test;

class BenchTest {

  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-12-02T15:00:00Z"), ZoneOffset.UTC);

  @Test
  void answersOnLoopbackThatItIsWell() throws Exception {
    try (Store store = Store.temporary(CLOCK);
        Bench bench = Bench.start(new BenchSettings(store, CLOCK, OptionalInt.of(0)))) {
      assertThat(bench.address().getHost()).isEqualTo("127.0.0.1");
      HttpResponse<String> health = get(bench, "health");
      assertThat(health.statusCode()).isEqualTo(200);
      assertThat(health.body()).isEqualTo("{\"store\":true}");
    }
  }

  @Test
  void aTakenPortIsToldWhenAskedForAndSteppedAsideFromWhenNot() {
    try (Store store = Store.temporary(CLOCK);
        Bench first = Bench.start(new BenchSettings(store, CLOCK, OptionalInt.empty()));
        Bench second = Bench.start(new BenchSettings(store, CLOCK, OptionalInt.empty()))) {
      assertThat(second.address()).isNotEqualTo(first.address());
      int taken = first.address().getPort();
      assertThatThrownBy(() -> Bench.start(new BenchSettings(store, CLOCK, OptionalInt.of(taken))))
          .isInstanceOf(BenchException.class)
          .hasMessageContaining("Port " + taken);
    }
  }

  private static HttpResponse<String> get(Bench bench, String path) throws Exception {
    return HttpClient.newHttpClient()
        .send(
            HttpRequest.newBuilder(bench.address().resolve(path)).build(),
            HttpResponse.BodyHandlers.ofString());
  }
}
