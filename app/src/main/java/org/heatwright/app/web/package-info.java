/**
 * The bench: one page in the browser that walks from the work to the card, served on loopback only.
 *
 * <p>The server draws everything, the curve included; the script asks it again when a value is
 * edited and swaps in what comes back. Nothing here computes a firing: the walk calls the core and
 * gathers what the page shows.
 */
@NullMarked
package org.heatwright.app.web;

import org.jspecify.annotations.NullMarked;
