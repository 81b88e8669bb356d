/**
 * The book of records: firings as planned, as keyed and as measured, and the ones that run now.
 *
 * <p><b>Units:</b> seconds from the program's start, °C, instants. <b>Threads:</b> records are
 * immutable; the book and the watch are safe to share. <b>Depends on:</b> the core, {@code files},
 * {@code report}, {@code store}. <b>Errors:</b> what a person told wrong is an {@code
 * InputException} whose file is the field.
 */
@NullMarked
package org.heatwright.app.firings;

import org.jspecify.annotations.NullMarked;
