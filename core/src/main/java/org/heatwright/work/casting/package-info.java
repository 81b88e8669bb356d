/**
 * Casting arithmetic and the plan of a pour: metal from a pattern, powder and water for moulds,
 * alloying to a fineness, sizes and shrinkage, temperatures of mould and metal, clocks.
 *
 * <p><b>Units:</b> SI inside, said in the names. <b>Threads:</b> immutable. <b>Depends on:</b>
 * {@code units}, {@code material}, {@code mould}, {@code inspect}. <b>Errors:</b> what cannot be is
 * refused in one sentence ({@code IllegalArgumentException}). <b>Sources:</b> at each number, told
 * together in {@code docs/models/casting.md}.
 */
@NullMarked
package org.heatwright.work.casting;

import org.jspecify.annotations.NullMarked;
