/**
 * Metal clay: rules of practice for each clay, the master sintering curve and what a person's own
 * shrinkage tests teach of it, sizes before and after, and the heat that must get through a box of
 * carbon.
 *
 * <p><b>Units:</b> SI inside, said in the names. <b>Threads:</b> immutable. <b>Depends on:</b>
 * {@code units}, {@code material}, {@code numerics}, {@code mould}, {@code piece}. <b>Errors:</b>
 * what cannot be is refused in one sentence ({@code IllegalArgumentException}). <b>Sources:</b> at
 * each number, told together in {@code docs/models/sintering.md}.
 */
@NullMarked
package org.heatwright.work.sinter;

import org.jspecify.annotations.NullMarked;
