/**
 * From what a thermocouple gives to what is true: reference functions, cold junction, tolerance
 * classes, a wrong type setting, offsets and the melt check that finds one.
 *
 * <p><b>Units:</b> temperatures and differences are types of {@code units}; emf in millivolts.
 * <b>Threads:</b> immutable. <b>Depends on:</b> {@code units}, {@code schedule}, {@code material}
 * (origins), {@code numerics}. <b>Errors:</b> {@link org.heatwright.sensing.OutsideRangeException}
 * with one sentence where a published function ends; constructors refuse impossible values.
 * <b>Sources:</b> NIST Monograph 175 (1993), IEC 60584-1, ASTM E230, ITS-90; see {@code
 * docs/models/sensing.md} for what was read and what is from memory.
 */
@NullMarked
package org.heatwright.sensing;

import org.jspecify.annotations.NullMarked;
