package org.heatwright.app.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

class LatelyTest {

  private final AtomicInteger worked = new AtomicInteger();
  private final Lately<Integer, String> lately = new Lately<>(2);

  private String of(int key) {
    return lately.of(
        key,
        k -> {
          worked.incrementAndGet();
          return "made of " + k;
        });
  }

  @Test
  void theSameIsWorkedOutOnceAndTheOldestIsForgotten() {
    assertThat(List.of(of(1), of(1), of(2))).containsExactly("made of 1", "made of 1", "made of 2");
    assertThat(worked).hasValue(2);
    of(1);
    of(3); // 2 was asked for longest ago
    of(1);
    assertThat(worked).hasValue(3);
    of(2);
    assertThat(worked).hasValue(4);
  }

  @Test
  void whoAsksMeanwhileWaitsForTheFirst() throws Exception {
    CountDownLatch begun = new CountDownLatch(1);
    CountDownLatch go = new CountDownLatch(1);
    ExecutorService threads = Executors.newFixedThreadPool(3);
    try {
      Future<String> first =
          threads.submit(
              () ->
                  lately.of(
                      7,
                      k -> {
                        begun.countDown();
                        await(go);
                        return "slow";
                      }));
      assertThat(begun.await(10, TimeUnit.SECONDS)).isTrue();
      List<Future<String>> others = new ArrayList<>();
      others.add(threads.submit(() -> of(7)));
      others.add(threads.submit(() -> of(7)));
      go.countDown();
      assertThat(first.get(10, TimeUnit.SECONDS)).isEqualTo("slow");
      for (Future<String> other : others) {
        assertThat(other.get(10, TimeUnit.SECONDS)).isEqualTo("slow");
      }
      assertThat(worked).hasValue(0);
    } finally {
      threads.shutdownNow();
    }
  }

  private static void await(CountDownLatch latch) {
    try {
      latch.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  @Test
  void whatFailedIsAskedAgain() {
    assertThatThrownBy(
            () ->
                lately.of(
                    5,
                    k -> {
                      throw new IllegalStateException("no luck");
                    }))
        .isInstanceOf(IllegalStateException.class)
        .hasMessage("no luck");
    assertThat(of(5)).isEqualTo("made of 5");
  }
}
