package org.heatwright.app.api;

/** What was asked cannot be answered; its message is one sentence for who asked. */
final class ApiException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  private final int status;

  ApiException(int status, String sentence) {
    super(sentence);
    this.status = status;
  }

  /** HTTP status. */
  int status() {
    return status;
  }
}
