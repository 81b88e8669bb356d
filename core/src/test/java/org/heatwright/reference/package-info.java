/**
 * A rich reference kiln for tests, written apart from the product's model: it shares with the
 * product only the nameplate, the material tables, the schedule and the units. Its physics is the
 * implementers' sheet (section A: box factors, outer film, door flow, sensor lag, element
 * resistance) and common heat transfer.
 *
 * <p>Every range and every constant in here is our estimate unless a source is named beside it.
 * Nothing in here was fitted to the product, and the product must not be tuned to it number by
 * number: draw fresh seeds for scoring.
 */
@NullMarked
package org.heatwright.reference;

import org.jspecify.annotations.NullMarked;
