/**
 * From the work in hand to a schedule: rules of practice, each number with its reason.
 *
 * <p><b>Units:</b> value types. <b>Threads:</b> immutable. <b>Depends on:</b> everything below it.
 * <b>Errors:</b> work that is not served yet is refused in one sentence ({@code
 * WorkRefusedException}). <b>Sources:</b> at each rule and in {@code docs/models}.
 */
@NullMarked
package org.heatwright.work;

import org.jspecify.annotations.NullMarked;
