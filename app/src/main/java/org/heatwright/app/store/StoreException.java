package org.heatwright.app.store;

/** The store cannot be opened, read or written; the message says which file and what to do. */
public final class StoreException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  public StoreException(String message, Throwable cause) {
    super(message, cause);
  }
}
