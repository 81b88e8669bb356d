package org.heatwright.app.store;

/**
 * A file that was brought is no archive that this version can read; the message is one sentence.
 */
public final class ArchiveException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  ArchiveException(String sentence) {
    super(sentence);
  }
}
