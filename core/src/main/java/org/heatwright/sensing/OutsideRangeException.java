package org.heatwright.sensing;

/** A published function or table does not reach the value asked for. The message is a sentence. */
public final class OutsideRangeException extends IllegalArgumentException {

  private static final long serialVersionUID = 1L;

  OutsideRangeException(String sentence) {
    super(sentence);
  }
}
