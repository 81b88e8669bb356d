/**
 * What one self-contained page needs of the core: the keypad, its rehearsal and the blind
 * read-back, as texts in and texts out. The build compiles these classes, and those of the core
 * they use, to JavaScript; the same classes run on the server and in tests, so there is one
 * interpreter and one comparison.
 */
@NullMarked
package org.heatwright.pocket;

import org.jspecify.annotations.NullMarked;
