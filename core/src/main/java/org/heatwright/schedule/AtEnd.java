package org.heatwright.schedule;

/** What the controller does after the last segment. */
public enum AtEnd {
  /** The elements go off and the kiln cools by itself. */
  OFF,
  /** The last target is kept until a person stops it. */
  KEEP
}
