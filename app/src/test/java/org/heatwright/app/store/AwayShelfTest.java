package org.heatwright.app.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.LocalDate;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Nothing on the shelf is lost by putting it away. */
class AwayShelfTest {

  @Test
  void aTextIsPutAwayAndBackWithItsHistoryAndItsNameIsFreeMeanwhile() {
    try (Store store = Store.temporary(Clock.systemUTC())) {
      store.keep(Kind.KILN, "Dock", "first");
      Document dock = store.keep(Kind.KILN, "Dock", "second");
      store.keepLog("Dock", "a log", LocalDate.of(2026, 11, 1), "csv", "schedule", "");
      assertThat(store.away().putAway("kiln", dock.id())).isTrue();
      assertThat(store.away().putAway("kiln", dock.id())).as("once is enough").isFalse();
      assertThat(store.all(Kind.KILN)).isEmpty();
      assertThat(store.find(Kind.KILN, "Dock")).isEmpty();
      assertThat(store.logs("Dock")).isEmpty();
      assertThat(store.away().all()).extracting(AwayShelf.Away::name).containsExactly("Dock");

      store.keep(Kind.KILN, "Dock", "another");
      assertThat(store.earlier(Kind.KILN, "Dock")).as("no history of the other").isEmpty();
      assertThat(store.away().free(Kind.KILN, "Dock")).isEqualTo("Dock 2");
      assertThat(store.away().putBack(dock.id())).contains("Dock 2");
      assertThat(store.find(Kind.KILN, "Dock 2").orElseThrow().text()).isEqualTo("second");
      assertThat(store.earlier(Kind.KILN, "Dock 2"))
          .extracting(EarlierText::text)
          .containsExactly("first");
      assertThat(store.logs("Dock 2")).hasSize(1);
      assertThat(store.find(Kind.KILN, "Dock").orElseThrow().text()).isEqualTo("another");
      assertThat(store.away().all()).isEmpty();
      assertThat(store.away().putBack(dock.id())).isEmpty();
    }
  }

  @Test
  void cardsAndLogsArePutAwayAndBack() {
    try (Store store = Store.temporary(Clock.systemUTC())) {
      CardEntry card = store.keepCard("a card", "work=a", new byte[] {1});
      store.keep(Kind.KILN, "Dock", "text");
      FiringLog log = store.keepLog("Dock", "a log", LocalDate.of(2026, 11, 1), "c", "s", "");
      assertThat(store.away().putAway("card", card.id())).isTrue();
      assertThat(store.away().putAway("log", log.id())).isTrue();
      assertThat(store.newestCards(9)).isEmpty();
      assertThat(store.cardPdf(card.id())).isEmpty();
      assertThat(store.logs("Dock")).isEmpty();
      assertThat(store.away().all())
          .extracting(AwayShelf.Away::what)
          .containsExactlyInAnyOrder("card", "log");
      assertThat(store.away().putBack(card.id())).contains("a card");
      assertThat(store.away().putBack(log.id())).contains("a log");
      assertThat(store.cardPdf(card.id())).isPresent();
      assertThat(store.logs("Dock")).hasSize(1);
    }
  }

  @Test
  void answersAreKeptOneByOneAndForgotten() {
    try (Store store = Store.temporary(Clock.systemUTC())) {
      store.start().keep(Map.of("what", "enamel", "kiln-name", "Dock"));
      store.start().keep(Map.of("what", "glass"));
      assertThat(store.start().answers()).isEqualTo(Map.of("what", "glass", "kiln-name", "Dock"));
      store.interview().replace(Map.of("what", "a knob", "keys", "two"));
      store.interview().replace(Map.of("what", "digits"));
      assertThat(store.interview().answers()).isEqualTo(Map.of("what", "digits"));
      store.start().clear();
      assertThat(store.interview().answers()).hasSize(1);
      assertThat(store.start().answers()).isEmpty();
    }
  }
}
