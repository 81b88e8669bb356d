package org.heatwright.kiln;

/** The faces of a chamber that may have layers of their own. */
public enum Face {
  ROOF,
  WALLS,
  FLOOR,
  /** The door, or the lid of a top loader. */
  DOOR
}
