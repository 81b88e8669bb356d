package org.heatwright.app.web;

import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.Supplier;

/**
 * What was worked out lately beside the pages, or is being worked out: it takes longer than a page
 * may. Safe for use from several threads; the same question is worked out once, and what failed is
 * asked again.
 */
final class Beside<K, V> {

  /**
   * Threads of its own: on the one that all share, work that is itself done side by side would be
   * done on that one alone.
   */
  private static final ExecutorService THREADS =
      Executors.newCachedThreadPool(
          task -> {
            Thread thread = new Thread(task, "beside");
            thread.setDaemon(true);
            return thread;
          });

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
   * @param question the same one has the same answer
   * @throws RuntimeException what it has thrown
   */
  Optional<V> within(K question, Supplier<V> work, Duration patience) {
    try {
      return Awaited.within(begun(question, work), patience);
    } catch (IllegalStateException failed) {
      throw failed.getCause() instanceof RuntimeException said ? said : failed;
    }
  }

  /**
   * The answer, however long it takes.
   *
   * @throws RuntimeException what it has thrown
   */
  V of(K question, Supplier<V> work) {
    try {
      return begun(question, work).join();
    } catch (CompletionException failed) {
      throw failed.getCause() instanceof RuntimeException said ? said : failed;
    }
  }

  private CompletableFuture<V> begun(K question, Supplier<V> work) {
    synchronized (kept) {
      CompletableFuture<V> known = kept.get(question);
      CompletableFuture<V> answer =
          known == null || known.isCompletedExceptionally()
              ? CompletableFuture.supplyAsync(work, THREADS)
              : known;
      kept.put(question, answer);
      return answer;
    }
  }
}
