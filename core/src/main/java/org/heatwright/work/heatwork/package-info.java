/**
 * What two firings do to the same work, told as time at one temperature.
 *
 * <p><b>Units:</b> SI inside, said in the names. <b>Threads:</b> immutable. <b>Depends on:</b>
 * {@code units}, {@code material}, {@code schedule}. <b>Errors:</b> what cannot be is refused in
 * one sentence ({@code IllegalArgumentException}). <b>Sources:</b> {@code
 * docs/models/heat-work.md}.
 */
@NullMarked
package org.heatwright.work.heatwork;

import org.jspecify.annotations.NullMarked;
