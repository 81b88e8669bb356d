package org.heatwright.app.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Clock;
import java.time.Duration;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** Work beside the pages. */
class LongWorkTest {

  private static final Duration LONG = Duration.ofSeconds(10);

  private final LongWork work = new LongWork(Clock.systemUTC());

  @AfterEach
  void close() {
    work.close();
  }

  @Test
  void leadsSomewhere() {
    LongWork.Piece piece =
        work.begin("Counting", Place.KILNS, "/from", p -> LongWork.Answer.at("/there"));
    assertThat(work.within(piece, LONG).orElseThrow().address()).isEqualTo("/there");
    assertThat(work.find(piece.id())).contains(piece);
  }

  @Test
  void saysWhatItIsAtAndStopsBeforeItsNextStep() throws Exception {
    CountDownLatch begun = new CountDownLatch(1);
    CountDownLatch goOn = new CountDownLatch(1);
    AtomicInteger steps = new AtomicInteger();
    LongWork.Piece piece =
        work.begin(
            "Counting",
            Place.KILNS,
            "/from",
            p -> {
              p.at("One.");
              steps.incrementAndGet();
              begun.countDown();
              await(goOn);
              p.at("Two.");
              steps.incrementAndGet();
              return LongWork.Answer.at("/there");
            });
    assertThat(begun.await(10, TimeUnit.SECONDS)).isTrue();
    assertThat(piece.step()).isEqualTo("One.");
    assertThat(work.within(piece, Duration.ofMillis(20))).isEmpty();
    work.stop(piece);
    goOn.countDown();
    assertThatThrownBy(() -> work.within(piece, LONG)).isInstanceOf(CancellationException.class);
    assertThat(steps).hasValue(1);
  }

  @Test
  void waitsInLineAndMayBeStoppedThere() throws Exception {
    CountDownLatch goOn = new CountDownLatch(1);
    LongWork.Piece first =
        work.begin(
            "First",
            Place.KILNS,
            "/from",
            p -> {
              p.at("Going.");
              await(goOn);
              return LongWork.Answer.at("/first");
            });
    AtomicInteger second = new AtomicInteger();
    LongWork.Piece waiting =
        work.begin(
            "Second",
            Place.KILNS,
            "/from",
            p -> {
              second.incrementAndGet();
              return LongWork.Answer.at("/second");
            });
    assertThat(waiting.step()).isEmpty();
    work.stop(waiting);
    goOn.countDown();
    assertThat(work.within(first, LONG)).isPresent();
    assertThatThrownBy(() -> work.within(waiting, LONG)).isInstanceOf(CancellationException.class);
    assertThat(second).hasValue(0);
  }

  @Test
  void whatTakesSecondsDoesNotStandInLineAndSetsFreeWhoStopsIt() throws Exception {
    CountDownLatch goOn = new CountDownLatch(1);
    LongWork.Piece minutes =
        work.begin(
            "Minutes",
            Place.KILNS,
            "/from",
            p -> {
              await(goOn);
              return LongWork.Answer.at("/minutes");
            });
    LongWork.Piece seconds =
        work.beginAtOnce("Seconds", Place.PLAN, "/from", p -> LongWork.Answer.at("/seconds"));
    assertThat(work.within(seconds, LONG).orElseThrow().address()).isEqualTo("/seconds");
    CountDownLatch begun = new CountDownLatch(1);
    LongWork.Piece stopped =
        work.beginAtOnce(
            "Stopped",
            Place.PLAN,
            "/from",
            p -> {
              p.at("One.");
              begun.countDown();
              await(goOn);
              return LongWork.Answer.at("/stopped");
            });
    assertThat(begun.await(10, TimeUnit.SECONDS)).isTrue();
    work.stop(stopped);
    assertThatThrownBy(() -> work.within(stopped, LONG)).isInstanceOf(CancellationException.class);
    goOn.countDown();
    assertThat(work.within(minutes, LONG)).isPresent();
  }

  @Test
  void whatFailsIsTold() {
    LongWork.Piece piece =
        work.begin(
            "Failing",
            Place.KILNS,
            "/from",
            p -> {
              throw new ArithmeticException("by zero");
            });
    assertThatThrownBy(() -> work.within(piece, LONG))
        .isInstanceOf(IllegalStateException.class)
        .hasRootCauseInstanceOf(ArithmeticException.class);
  }

  private static void await(CountDownLatch latch) {
    try {
      assertThat(latch.await(10, TimeUnit.SECONDS)).isTrue();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
