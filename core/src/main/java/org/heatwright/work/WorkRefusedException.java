package org.heatwright.work;

/** Heatwright will not plan this work; the message says why in one sentence, for a person. */
public final class WorkRefusedException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  public WorkRefusedException(String message) {
    super(message);
  }
}
