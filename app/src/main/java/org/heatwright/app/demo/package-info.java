/**
 * The ready-made studio: the Quayside Bench with its kilns, keypads and works, kept in a store that
 * is gone when the bench closes.
 */
@NullMarked
package org.heatwright.app.demo;

import org.jspecify.annotations.NullMarked;
