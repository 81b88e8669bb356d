package org.heatwright.numerics;

/** A numerical method failed: the message says where and with which value. */
public final class NumericsException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  public NumericsException(String message) {
    super(message);
  }
}
