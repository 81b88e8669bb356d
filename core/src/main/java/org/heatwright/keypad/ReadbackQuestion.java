package org.heatwright.keypad;

/**
 * One blind question: where to look, never what should be there.
 *
 * @param position 1-based, in display order
 * @param label what the display marks the value with; our words if it marks nothing
 * @param words our words for it: "segment 2 target"
 */
public record ReadbackQuestion(int position, String label, String words) {}
