/**
 * Small solvers that know no kiln: tables, root finding, stiff integration, seeded draws.
 *
 * <p><b>Units:</b> whatever the caller uses, consistently. <b>Threads:</b> values are immutable;
 * solvers with work arrays say so and belong to one thread. <b>Depends on:</b> nothing.
 * <b>Errors:</b> a diverged solver throws {@link org.heatwright.numerics.NumericsException} with
 * the time and the value. <b>Sources:</b> named at each method.
 */
@NullMarked
package org.heatwright.numerics;

import org.jspecify.annotations.NullMarked;
