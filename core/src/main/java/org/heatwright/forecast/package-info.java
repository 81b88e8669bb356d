/**
 * When is what ready, how sure is that, and what does it cost: ensembles of simulated firings, told
 * as a median and a band.
 *
 * <p><b>Units:</b> seconds from the start of the program, after any delay; °C; kWh. <b>Threads:</b>
 * immutable. <b>Depends on:</b> {@code kiln}, {@code mould} and what they use. <b>Errors:</b> see
 * {@link org.heatwright.forecast.Forecaster}. <b>Sources:</b> the prior's spreads are named in
 * {@link org.heatwright.kiln.KilnQuantity}.
 */
@NullMarked
package org.heatwright.forecast;

import org.jspecify.annotations.NullMarked;
