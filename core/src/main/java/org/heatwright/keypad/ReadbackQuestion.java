package org.heatwright.keypad;

/**
 * One blind question: where to look, never what should be there.
 *
 * @param position 1-based, in display order
 * @param label what the display marks the value with; our words if it marks nothing
 * @param words our words for it: "segment 2 target"
 * @param digits whether this keypad can show nothing there but digits and a point or colon between
 *     them, so that digits are all that needs typing
 */
public record ReadbackQuestion(int position, String label, String words, boolean digits) {}
