/**
 * What a firing is meant to do: ordered segments of ramp, target and hold. A schedule means nothing
 * until a kiln runs it.
 *
 * <p><b>Units:</b> {@code Temperature}, {@code HeatingRate}, {@code Duration}. <b>Threads:</b>
 * immutable. <b>Depends on:</b> {@code units}. <b>Errors:</b> constructors throw {@code
 * IllegalArgumentException} for impossible values; unwise ones are {@code inspect}'s business.
 * <b>Sources:</b> none here.
 */
@NullMarked
package org.heatwright.schedule;

import org.jspecify.annotations.NullMarked;
