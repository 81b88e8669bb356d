/**
 * What a person takes to the kiln: the one-page firing card and the calendar file.
 *
 * <p><b>Units:</b> seconds from the program's start and °C inside; the schedule's own unit on
 * paper. <b>Threads:</b> records are immutable, the writers keep no state. <b>Depends on:</b>
 * {@code core}, PDFBox, and {@code files} and {@code qr} for the code on the card; no disk, no
 * clock, no fonts of the machine (the font lies in the jar). <b>Errors:</b> {@code
 * IllegalArgumentException} for a card that one page cannot hold. <b>Sources:</b> none here;
 * numbers and their origins come from {@code core}.
 */
@NullMarked
package org.heatwright.app.report;

import org.jspecify.annotations.NullMarked;
