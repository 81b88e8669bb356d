/**
 * A flat piece of work or a packed box followed through a firing: what the piece does, not the
 * chamber.
 *
 * <p><b>Units:</b> SI inside. <b>Threads:</b> values are immutable. <b>Depends on:</b> {@code
 * material}, {@code kiln} (it implements {@link org.heatwright.kiln.Load}), {@code mould} (its
 * surroundings), {@code numerics}. <b>Sources:</b> at each model and in {@code
 * docs/models/piece.md}.
 */
@NullMarked
package org.heatwright.piece;

import org.jspecify.annotations.NullMarked;
