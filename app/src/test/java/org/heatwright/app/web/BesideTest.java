package org.heatwright.app.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

/** What is worked out beside the pages: nobody waits for it, and it is worked out once. */
class BesideTest {

  private static final Duration SHORT = Duration.ofMillis(20);
  private static final Duration LONG = Duration.ofMinutes(1);

  private final Beside<String, Integer> beside = new Beside<>(2);
  private final AtomicInteger made = new AtomicInteger();

  @Test
  void whatTakesLongerIsThereLater() {
    CountDownLatch go = new CountDownLatch(1);
    assertThat(beside.within("a", () -> after(go), SHORT)).isEmpty();
    assertThat(beside.within("a", () -> after(go), SHORT)).isEmpty();
    go.countDown();
    assertThat(beside.within("a", () -> after(go), LONG)).contains(1);
    assertThat(beside.within("a", () -> after(go), LONG)).contains(1);
    assertThat(made).hasValue(1);
  }

  @Test
  void whatIsThrownIsThrownAndNotKept() {
    assertThatThrownBy(
            () ->
                beside.within(
                    "a",
                    () -> {
                      throw new IllegalArgumentException("No.");
                    },
                    LONG))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("No.");
    assertThat(beside.within("a", made::incrementAndGet, LONG)).contains(1);
  }

  private int after(CountDownLatch go) {
    try {
      go.await();
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
    return made.incrementAndGet();
  }
}
