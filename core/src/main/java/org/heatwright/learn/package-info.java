/**
 * What logs say about a kiln: a fit of its beliefs to what its display showed, with what became
 * known and what did not, in words.
 *
 * <p><b>Units:</b> seconds from the program's start, °C. <b>Threads:</b> immutable results.
 * <b>Depends on:</b> {@code kiln}, {@code forecast} and what they use. <b>Errors:</b> logs that
 * cannot be used are told and left out. <b>Sources:</b> {@code docs/models/learning.md}.
 */
@NullMarked
package org.heatwright.learn;

import org.jspecify.annotations.NullMarked;
