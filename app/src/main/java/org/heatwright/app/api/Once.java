package org.heatwright.app.api;

import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** Works something out when it is first asked for. Safe for use from several threads. */
final class Once<T> implements Supplier<T> {

  private final Supplier<T> how;
  private @Nullable T known;

  private Once(Supplier<T> how) {
    this.how = how;
  }

  static <T> Once<T> of(Supplier<T> how) {
    return new Once<>(how);
  }

  @Override
  public synchronized T get() {
    T value = known;
    if (value == null) {
      value = how.get();
      known = value;
    }
    return value;
  }
}
