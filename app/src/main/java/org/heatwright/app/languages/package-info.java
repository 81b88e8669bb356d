/**
 * Other languages for the bench: the English sentence is the key. A finished page, a message or a
 * script's words go through a {@link org.heatwright.app.languages.Phrasebook}, which is read from
 * text files that a translator can work on; numbers and dates take the locale's form. English
 * passes by untouched.
 */
@NullMarked
package org.heatwright.app.languages;

import org.jspecify.annotations.NullMarked;
