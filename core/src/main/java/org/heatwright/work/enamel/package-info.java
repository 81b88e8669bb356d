/**
 * What happens to enamel on metal: expansion of the glass from its oxides, stress and bow of the
 * fired piece, how a piece heats after the door is shut, when the enamel has flowed, what test
 * tiles say about it, and the pieces in a log with door dips.
 *
 * <p><b>Units:</b> SI inside, said in the names. <b>Threads:</b> immutable. <b>Depends on:</b>
 * {@code units}, {@code material}, {@code numerics}, {@code mould} for the surroundings.
 * <b>Errors:</b> what cannot be is refused in one sentence ({@code IllegalArgumentException}).
 * <b>Sources:</b> at each number, told together in {@code docs/models/enamel.md}.
 */
@NullMarked
package org.heatwright.work.enamel;

import org.jspecify.annotations.NullMarked;
