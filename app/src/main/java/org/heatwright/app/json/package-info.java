/**
 * The shapes other programs read: the records that {@code --json} prints and an HTTP API may send,
 * and how they become text.
 *
 * <p><b>Units:</b> every number's name carries its unit. <b>Threads:</b> records; {@link
 * org.heatwright.app.json.Json} may be used from several threads. <b>Depends on:</b> {@code core},
 * Jackson. <b>Errors:</b> none for valid core values. <b>Rule:</b> a key is always there; what is
 * not known is {@code null}. Keys may be added, never renamed or removed.
 */
@NullMarked
package org.heatwright.app.json;

import org.jspecify.annotations.NullMarked;
