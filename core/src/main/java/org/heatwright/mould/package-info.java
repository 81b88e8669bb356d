/**
 * What the inside of a mould is doing while the kiln heats it.
 *
 * <p><b>Units:</b> SI inside. <b>Threads:</b> values are immutable. <b>Depends on:</b> {@code
 * material}, {@code kiln} (it implements {@link org.heatwright.kiln.Load}), {@code numerics}.
 * <b>Sources:</b> at each model and in {@code docs/models/mould.md}.
 */
@NullMarked
package org.heatwright.mould;

import org.jspecify.annotations.NullMarked;
