/**
 * Heat treatment of metals: what the sources say of each metal, how a piece warms and cools, how
 * much copper sterling silver dissolves, how hard it may become.
 *
 * <p><b>Units:</b> SI inside, said in the names; hardness is Vickers (HV). <b>Threads:</b>
 * immutable. <b>Depends on:</b> {@code units}, {@code material}. <b>Errors:</b> what cannot be is
 * refused in one sentence ({@code IllegalArgumentException}). <b>Sources:</b> at each number, told
 * together in {@code docs/models/heat-treatment.md}.
 */
@NullMarked
package org.heatwright.work.heattreat;

import org.jspecify.annotations.NullMarked;
