/** Sessions of enamelling as their logs tell them. */
@NullMarked
package org.heatwright.app.enamel;

import org.jspecify.annotations.NullMarked;
