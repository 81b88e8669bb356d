package org.heatwright.app.web;

/** The bench cannot start; the message says why and what to do. */
public final class BenchException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  BenchException(String message, Throwable cause) {
    super(message, cause);
  }
}
