/**
 * What a kiln can do: the nameplate, the thermal network behind it, the control loop, and the
 * simulation of a schedule.
 *
 * <p><b>Units:</b> SI inside; {@code Temperature} and {@code Duration} at the seam. <b>Threads:</b>
 * values are immutable; a simulation belongs to one thread. <b>Depends on:</b> {@code units},
 * {@code material}, {@code schedule}, {@code numerics}. It sees its load only as {@link
 * org.heatwright.kiln.Load}. <b>Errors:</b> impossible nameplates are refused; a diverged
 * integration throws {@code NumericsException}. <b>Sources:</b> at each model and in {@code
 * docs/models/kiln.md}.
 */
@NullMarked
package org.heatwright.kiln;

import org.jspecify.annotations.NullMarked;
