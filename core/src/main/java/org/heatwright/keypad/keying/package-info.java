/**
 * How to key a program with the least time, prompt by prompt, planned on the interpreter of the
 * keypad; and the rehearsal that follows it key by key.
 *
 * <p><b>Units:</b> seconds. <b>Threads:</b> results are immutable. <b>Errors:</b> what does not fit
 * the keypad is refused. <b>Sources:</b> keying times at {@code KeyingTimes}.
 */
@NullMarked
package org.heatwright.keypad.keying;

import org.jspecify.annotations.NullMarked;
