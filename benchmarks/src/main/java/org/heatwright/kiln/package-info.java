/** Yardsticks that need the kiln's own equations. */
@NullMarked
package org.heatwright.kiln;

import org.jspecify.annotations.NullMarked;
