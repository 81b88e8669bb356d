package org.heatwright.app.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.stream.Collectors;
import org.heatwright.app.demo.DemoStudio;
import org.heatwright.app.store.FiringLog;
import org.heatwright.app.store.Kind;
import org.heatwright.app.store.Store;
import org.junit.jupiter.api.Test;

/** Learning says how far it is, and can be stopped without a trace. */
class LearningToldTest {

  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-12-02T12:00:00Z"), ZoneOffset.UTC);

  @Test
  void saysWhatItIsAtAndLeavesNothingWhenItIsStopped() {
    try (Store store = Store.temporary(CLOCK)) {
      DemoStudio.fill(store);
      KilnDesk desk = new KilnDesk(store, CLOCK);
      List<FiringLog> logs = store.logs("Anchor");
      Set<String> two = Set.of(logs.get(0).id(), logs.get(1).id());
      String before = store.find(Kind.KILN, "Anchor").orElseThrow().text();

      List<String> said = new ArrayList<>();
      assertThatThrownBy(
              () ->
                  desk.learn(
                      "Anchor",
                      two,
                      sentence -> {
                        said.add(sentence);
                        if (sentence.contains("searched")) {
                          throw new CancellationException();
                        }
                      }))
          .isInstanceOf(CancellationException.class);
      assertThat(store.find(Kind.KILN, "Anchor").orElseThrow().text()).isEqualTo(before);
      assertThat(store.logs("Anchor")).isEqualTo(logs);

      assertThat(desk.learn("Anchor", two, said::add)).isEmpty();
      assertThat(said.stream().collect(Collectors.toSet()))
          .contains(
              "“%s” is put on its program’s clock.".formatted(logs.get(0).name()),
              "The kiln is fitted to all of the logs.",
              "What the display of “%s” could not have shown.".formatted(logs.get(0).name()));
      assertThat(said).anyMatch(sentence -> sentence.endsWith("is searched for what went wrong."));
      assertThat(said)
          .noneMatch(s -> s.startsWith("What the display of") && s.contains(logs.get(2).name()));
      assertThat(store.find(Kind.KILN, "Anchor").orElseThrow().text()).isNotEqualTo(before);
    }
  }
}
