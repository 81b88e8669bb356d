package org.heatwright.app.web;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Function;

/**
 * What was worked out lately, so that the next request for the same does not work it out again.
 * Safe for use from several threads; two that ask for the same one at once may both work.
 */
final class Lately<K, V> {

  private final Map<K, V> kept;

  /**
   * @param most how many are kept: those that were asked for last
   */
  Lately(int most) {
    kept =
        new LinkedHashMap<>(most, 0.75f, true) {
          private static final long serialVersionUID = 1L;

          @Override
          protected boolean removeEldestEntry(Map.Entry<K, V> eldest) {
            return size() > most;
          }
        };
  }

  /**
   * @param make works it out; what it throws is thrown, and nothing is kept
   */
  V of(K key, Function<K, V> make) {
    synchronized (kept) {
      V known = kept.get(key);
      if (known != null) {
        return known;
      }
    }
    V made = make.apply(key);
    synchronized (kept) {
      kept.put(key, made);
    }
    return made;
  }
}
