/**
 * Which keys, in what order, and was it keyed right: a keypad is data.
 *
 * <p><b>Units:</b> the keypad's own unit for what is keyed and shown; value types elsewhere.
 * <b>Threads:</b> immutable. <b>Depends on:</b> {@code units}, {@code schedule}, {@code material}.
 * <b>Errors:</b> impossible descriptions are refused; what a keypad cannot express is told, never
 * silently changed. <b>Sources:</b> keying times at {@code KeyingTimes}.
 */
@NullMarked
package org.heatwright.keypad;

import org.jspecify.annotations.NullMarked;
