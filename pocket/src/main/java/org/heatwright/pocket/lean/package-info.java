/**
 * Small stand-ins for classes of Java's library, for the page alone; on the server nobody uses
 * them.
 */
@NullMarked
package org.heatwright.pocket.lean;

import org.jspecify.annotations.NullMarked;
