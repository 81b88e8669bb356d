/**
 * The casting bench's questions as people ask them, and its answers in words: the command line and
 * the web pages share both.
 *
 * <p><b>Units:</b> those in the names, as typed; SI beyond this package. <b>Threads:</b> immutable
 * records. <b>Depends on:</b> {@code core} and {@code files}; knows neither door. <b>Errors:</b>
 * {@code InputException} that names the option, one sentence. <b>Sources:</b> none here; they come
 * with the numbers from {@code core}.
 */
@NullMarked
package org.heatwright.app.casting;

import org.jspecify.annotations.NullMarked;
