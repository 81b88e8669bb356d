package org.heatwright.app.web;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.function.Function;

/**
 * What was worked out lately, so that the next request for the same does not work it out again.
 * Safe for use from several threads: the first who asks works, the others wait for it.
 */
final class Lately<K, V> {

  private final Map<K, CompletableFuture<V>> kept;

  /**
   * @param most how many are kept: those that were asked for last
   */
  Lately(int most) {
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
   * @param make works it out, and does not ask for the same again; what it throws is thrown to all
   *     who wait for it, and nothing is kept
   */
  V of(K key, Function<K, V> make) {
    CompletableFuture<V> mine = new CompletableFuture<>();
    CompletableFuture<V> known;
    synchronized (kept) {
      known = kept.get(key);
      if (known == null) {
        kept.put(key, mine);
      }
    }
    return known == null ? made(key, make, mine) : waited(known);
  }

  private V made(K key, Function<K, V> make, CompletableFuture<V> mine) {
    try {
      V value = make.apply(key);
      mine.complete(value);
      return value;
    } catch (RuntimeException | Error e) {
      synchronized (kept) {
        kept.remove(key, mine);
      }
      mine.completeExceptionally(e);
      throw e;
    }
  }

  private V waited(CompletableFuture<V> known) {
    try {
      return known.join();
    } catch (CompletionException failed) {
      if (failed.getCause() instanceof RuntimeException said) {
        throw said;
      } else if (failed.getCause() instanceof Error broken) {
        throw broken;
      }
      throw failed;
    }
  }
}
