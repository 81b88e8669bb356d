/**
 * What the bench remembers: kilns, keypads, works and schedules as the text their owner wrote, and
 * the cards that were made.
 *
 * <p>The YAML text is the truth; this package does not parse it. Times come from the clock that is
 * passed in. The store may be used from several threads and processes at once; a write waits up to
 * five seconds for another.
 */
@NullMarked
package org.heatwright.app.store;

import org.jspecify.annotations.NullMarked;
