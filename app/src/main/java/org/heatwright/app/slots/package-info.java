/**
 * The slot registers of a studio: between what the store keeps as texts and the core's register.
 */
@NullMarked
package org.heatwright.app.slots;

import org.jspecify.annotations.NullMarked;
