/**
 * The quantities whose ambiguity hurts: a point on the temperature scale, a difference, a rate, and
 * the unit a person types and reads.
 *
 * <p><b>Units:</b> everything is stored in degrees Celsius or kelvins; conversion happens here and
 * nowhere else. <b>Threads:</b> immutable, safe to share. <b>Depends on:</b> nothing.
 * <b>Errors:</b> constructors throw {@code IllegalArgumentException} for impossible values.
 * <b>Sources:</b> definitions of the scales (exact).
 */
@NullMarked
package org.heatwright.units;

import org.jspecify.annotations.NullMarked;
