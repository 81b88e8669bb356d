/**
 * Logs of any logger: what a file of rows is made of is recognised, told decision by decision with
 * how sure it is and what would fit too, corrected by hand where it is wrong, and turned into a log
 * of ours.
 *
 * <p><b>Units:</b> what a file is in is decided here; what comes out is s, °C and W.
 * <b>Threads:</b> values and static readers without state. <b>I/O:</b> none: bytes and corrections
 * in, a reading out. <b>Errors:</b> {@link org.heatwright.app.files.InputException}, one sentence
 * that names file, line, column, what was found and what would be right. <b>Sources:</b> the forms
 * are common practice of loggers and spreadsheets, no source; RFC 4180 for quotation marks, ISO
 * 8601 for dates with the year first.
 */
@NullMarked
package org.heatwright.app.logs;

import org.jspecify.annotations.NullMarked;
