/**
 * A keypad at work: one interpreter of its description, key by key. The keying sheet is planned on
 * it, the rehearsal is driven by it, and the page that is sent runs it compiled.
 *
 * <p><b>Units:</b> the keypad's own unit for what is shown; seconds for held keys. <b>Threads:</b>
 * states are immutable; a machine is used by one thread. <b>Errors:</b> a key that means nothing
 * leaves the state as it is. <b>Sources:</b> none; the rules are those of the description.
 */
@NullMarked
package org.heatwright.keypad.machine;

import org.jspecify.annotations.NullMarked;
