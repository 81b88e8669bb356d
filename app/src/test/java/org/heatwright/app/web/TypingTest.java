package org.heatwright.app.web;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.concurrent.CancellationException;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.heatwright.forecast.EnsembleProgress;
import org.junit.jupiter.api.Test;

class TypingTest {

  private final Typing typing = new Typing();

  @Test
  void whatWasTypedOverIsNotWantedAnyMoreOnThatPage() {
    EnsembleProgress first = typing.typed("here", 1);
    EnsembleProgress elsewhere = typing.typed("there", 1);
    assertThatCode(goingOn(first)).doesNotThrowAnyException();
    EnsembleProgress second = typing.typed("here", 2);
    assertThatThrownBy(goingOn(first)).isInstanceOf(CancellationException.class);
    assertThatCode(goingOn(second)).doesNotThrowAnyException();
    assertThatCode(goingOn(elsewhere)).doesNotThrowAnyException();
  }

  @Test
  void bandAndWholeOfOneValueAreBothWanted() {
    EnsembleProgress band = typing.typed("here", 3);
    EnsembleProgress whole = typing.typed("here", 3);
    assertThatCode(goingOn(band)).doesNotThrowAnyException();
    assertThatCode(goingOn(whole)).doesNotThrowAnyException();
  }

  @Test
  void whatComesLateAndIsOlderEndsItselfAlone() {
    EnsembleProgress newer = typing.typed("here", 5);
    EnsembleProgress late = typing.typed("here", 4);
    assertThatThrownBy(goingOn(late)).isInstanceOf(CancellationException.class);
    assertThatCode(goingOn(newer)).doesNotThrowAnyException();
  }

  private static ThrowingCallable goingOn(EnsembleProgress progress) {
    return () -> progress.done(EnsembleProgress.Part.KILNS, 1, 64);
  }
}
