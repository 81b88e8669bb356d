/**
 * Plots of what was measured beside what was forecast: a log and its band, what is left between
 * them, what logs have taught, how a kiln ages. One model ({@link org.heatwright.app.plot.Figure}),
 * laid out once, drawn as SVG or PNG.
 *
 * <p>Predicted is a soft band with a fine line, measured a firm line; they differ without colour
 * too. Everything here is immutable and does no I/O beyond reading its own font.
 */
@NullMarked
package org.heatwright.app.plot;

import org.jspecify.annotations.NullMarked;
