package org.heatwright.app.web;

import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/** Waits for what is worked out beside the pages, but not for long. */
final class Awaited {

  private Awaited() {}

  /**
   * The answer, or nothing if it is not there within that time; it goes on being worked out then.
   *
   * @throws java.util.concurrent.CancellationException if it was stopped
   * @throws IllegalStateException if it failed; its cause says why
   */
  static <T> Optional<T> within(CompletableFuture<T> answer, Duration patience) {
    try {
      return Optional.of(answer.get(patience.toMillis(), TimeUnit.MILLISECONDS));
    } catch (TimeoutException e) {
      return Optional.empty();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return Optional.empty();
    } catch (ExecutionException e) {
      throw new IllegalStateException(
          "What was worked out in the background failed.", e.getCause());
    }
  }
}
