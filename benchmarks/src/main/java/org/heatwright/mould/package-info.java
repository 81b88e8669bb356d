/** Yardsticks that need a body's own equations. */
@NullMarked
package org.heatwright.mould;

import org.jspecify.annotations.NullMarked;
