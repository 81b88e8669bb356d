package org.heatwright.app.files;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.function.Function;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;

/** Small tools of the tests that hand in bad files. */
final class Inputs {

  private Inputs() {}

  /** Asserts that reading is refused with exactly this sentence. */
  static void refused(ThrowingCallable reading, String message) {
    assertThatThrownBy(reading).isInstanceOf(InputException.class).hasMessage(message);
  }

  /** Asserts that {@code good} is read, and refused with that sentence once a part is replaced. */
  static void refused(
      Function<String, ?> read, String good, String part, String replacement, String message) {
    if (!good.contains(part)) {
      throw new IllegalArgumentException("The good file has no part " + part);
    }
    read.apply(good);
    refused(() -> read.apply(good.replace(part, replacement)), message);
  }
}
