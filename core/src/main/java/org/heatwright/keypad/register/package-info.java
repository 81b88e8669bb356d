/**
 * What stands in which program slot of a kiln's keypad, and whether that is proven. A register is
 * its events in the order they were told; nothing is deleted, and every state follows from them. A
 * proof follows from what a display showed, never from a word that says so.
 */
@NullMarked
package org.heatwright.keypad.register;

import org.jspecify.annotations.NullMarked;
