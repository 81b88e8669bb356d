/**
 * Describing an unknown keypad by answering questions, and reading a description back in words. One
 * list of questions; the command line and the bench both ask it.
 *
 * <p><b>Units:</b> as people say them at the controller. <b>Threads:</b> values and functions
 * without state. <b>Depends on:</b> {@code core} and {@code files}. <b>Errors:</b> a wrong answer
 * is asked again with one sentence. <b>Sources:</b> none.
 */
@NullMarked
package org.heatwright.app.describe;

import org.jspecify.annotations.NullMarked;
