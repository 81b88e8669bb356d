/**
 * Glass in a kiln: what it is made of as far as heat and stress go, how slowly it must cool, how
 * fast it may be heated, how far it flows, and what stress stays in it.
 *
 * <p><b>Units:</b> SI inside, said in the names. <b>Threads:</b> immutable. <b>Depends on:</b>
 * {@code units}, {@code material}. <b>Errors:</b> what cannot be is refused in one sentence ({@code
 * IllegalArgumentException}). <b>Sources:</b> at each number, told together in {@code
 * docs/models/glass.md}.
 */
@NullMarked
package org.heatwright.work.glass;

import org.jspecify.annotations.NullMarked;
