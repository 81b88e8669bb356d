/**
 * The files people and other programs write: schedules, kilns, work, firings, what a keypad showed,
 * logs. Reading gives core values; writing gives text that reads back to the same value.
 *
 * <p><b>Units:</b> every key of a file carries its unit; everything behind it is SI or a value
 * type. <b>Threads:</b> static readers and writers without state. <b>Depends on:</b> {@code core},
 * snakeyaml-engine (YAML 1.2), fastcsv. <b>Errors:</b> {@link
 * org.heatwright.app.files.InputException}, one sentence that names file, line, field, what was
 * found and what was expected. <b>Sources:</b> none; the shapes are in {@code docs/schema}.
 */
@NullMarked
package org.heatwright.app.files;

import org.jspecify.annotations.NullMarked;
