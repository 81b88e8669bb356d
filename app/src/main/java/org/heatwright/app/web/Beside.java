package org.heatwright.app.web;

import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Supplier;

/**
 * What was worked out lately, or is being worked out beside the pages because it takes longer than
 * a page may. Safe for use from several threads; the same question is worked out once.
 */
final class Beside<K, V> {

  private final Map<K, CompletableFuture<V>> kept;

  /**
   * @param most how many are kept: those that were asked for last
   */
  Beside(int most) {
    kept =
        new LinkedHashMap<>(most, 0.75f, true) {
          private static final long serialVersionUID = 1L;

          @Override
          protected boolean removeEldestEntry(Map.Entry<K, CompletableFuture<V>> eldest) {
            return size() > most;
          }
        };
  }

  /**
   * The answer, or nothing if it takes longer than that; it goes on being worked out then.
   *
   * @param make works it out; what it throws is thrown, and nothing is kept
   */
  Optional<V> within(K question, Supplier<V> make, Duration patience) {
    CompletableFuture<V> answer;
    synchronized (kept) {
      answer = kept.computeIfAbsent(question, asked -> CompletableFuture.supplyAsync(make));
    }
    try {
      return Optional.of(answer.get(patience.toMillis(), TimeUnit.MILLISECONDS));
    } catch (TimeoutException e) {
      return Optional.empty();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return Optional.empty();
    } catch (ExecutionException e) {
      synchronized (kept) {
        kept.remove(question, answer);
      }
      if (e.getCause() instanceof RuntimeException said) {
        throw said;
      }
      throw new IllegalStateException("What was worked out beside a page failed.", e.getCause());
    }
  }
}
