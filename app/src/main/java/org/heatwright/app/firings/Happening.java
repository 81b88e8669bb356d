package org.heatwright.app.firings;

import java.util.Locale;

/** What can be told of a firing. */
public enum Happening {
  /** Somebody pressed start. */
  PRESSED,
  /** What the slot then held, by the register of slots: a schedule file, headed by how sure. */
  KEYED,
  /** What the display said. */
  SHOWN,
  /** A piece came out of the hot kiln: at is when the door shut behind it, the text its seconds. */
  PIECE,
  /** Something worth knowing later. */
  NOTE,
  /** How it came out. */
  RESULT,
  /** The work is out, or the firing was stopped. */
  OUT,
  /** A picture, with what it shows. */
  PHOTO;

  /** As the store keeps it. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
