/**
 * Is a schedule safe for work, kiln and keypad: findings with place, severity and cure.
 *
 * <p><b>Units:</b> value types. <b>Threads:</b> immutable. <b>Depends on:</b> {@code schedule},
 * {@code kiln}, {@code keypad}, {@code forecast}. <b>Errors:</b> none for what a person typed: bad
 * schedules are data. <b>Sources:</b> at each rule.
 */
@NullMarked
package org.heatwright.inspect;

import org.jspecify.annotations.NullMarked;
