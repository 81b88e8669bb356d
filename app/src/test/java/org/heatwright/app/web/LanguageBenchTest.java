package org.heatwright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.OptionalInt;
import org.heatwright.app.demo.DemoStudio;
import org.heatwright.app.store.Kind;
import org.heatwright.app.store.Store;
import org.junit.jupiter.api.Test;

/** German pages of a bench on whose shelf an entry cannot be read. */
class LanguageBenchTest {

  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-12-02T15:00:00Z"), ZoneOffset.UTC);

  @Test
  void anEntryThatCannotBeReadSpoilsNoGermanPage() throws Exception {
    try (Store store = Store.temporary(CLOCK)) {
      DemoStudio.fill(store);
      store.keep(Kind.KILN, "Heat it", store.find(Kind.KILN, "Capstan").orElseThrow().text());
      store.keepLog("Heat it", "Evening firing", LocalDate.of(2026, 12, 1), "a", "b", "");
      try (Connection other = DriverManager.getConnection("jdbc:sqlite:" + store.file());
          Statement change = other.createStatement()) {
        assertThat(change.executeUpdate("update firing_log set fired_on = 'yesterday'"))
            .isPositive();
      }
      Bench bench = Bench.start(new BenchSettings(store, CLOCK, OptionalInt.of(0)));
      try {
        HttpResponse<String> page =
            HttpClient.newHttpClient()
                .send(
                    HttpRequest.newBuilder(URI.create(bench.address().toString()).resolve("/help"))
                        .header("Cookie", "language=de")
                        .build(),
                    HttpResponse.BodyHandlers.ofString());
        assertThat(page.statusCode()).isEqualTo(200);
        assertThat(page.body()).contains("lang=\"de\"");
      } finally {
        bench.close();
      }
      assertThat(store.names()).contains("Capstan", "Heat it", "Evening firing");
    }
  }
}
