/**
 * How likely it is that a slip of a person's hand or eye survives, from published rates. An
 * estimate for people to weigh, never a promise.
 */
@NullMarked
package org.heatwright.keypad.human;

import org.jspecify.annotations.NullMarked;
