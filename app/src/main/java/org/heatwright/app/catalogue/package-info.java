/**
 * Every value of a material that the core rests on, as rows for people, each with its source.
 *
 * <p><b>Units:</b> in the texts, temperatures in the unit asked for. <b>Threads:</b> immutable.
 * <b>Depends on:</b> the core and {@code files}. <b>Sources:</b> those of the values themselves.
 */
@NullMarked
package org.heatwright.app.catalogue;

import org.jspecify.annotations.NullMarked;
