/**
 * What things are made of, and from where every number comes.
 *
 * <p><b>Units:</b> SI with the unit in the name; tables run over degrees Celsius. <b>Threads:</b>
 * immutable. <b>Depends on:</b> {@code numerics}, {@code units}. <b>Errors:</b> constructors refuse
 * impossible values. <b>Sources:</b> beside each number, as an {@link
 * org.heatwright.material.Origin}.
 */
@NullMarked
package org.heatwright.material;

import org.jspecify.annotations.NullMarked;
