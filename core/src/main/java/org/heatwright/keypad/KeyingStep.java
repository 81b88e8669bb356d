package org.heatwright.keypad;

/**
 * One prompt of a keying sheet.
 *
 * @param number 1-based
 * @param prompt what it is about: "segment 2 target"
 * @param showsBefore what the display shows before
 * @param press what to press
 * @param showsAfter what it must show after
 * @param meaning of the value, in words
 */
public record KeyingStep(
    int number,
    String prompt,
    String showsBefore,
    String press,
    String showsAfter,
    String meaning) {}
