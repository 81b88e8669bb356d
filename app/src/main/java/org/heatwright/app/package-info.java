/** The thin rim: it parses, calls the core, shows, stores and prints. */
@NullMarked
package org.heatwright.app;

import org.jspecify.annotations.NullMarked;
