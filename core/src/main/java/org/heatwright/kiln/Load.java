package org.heatwright.kiln;

/** Placeholder for the seam; see the kiln network. */
public interface Load {}
