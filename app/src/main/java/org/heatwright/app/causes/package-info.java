/**
 * What the records say of a fault: the facts of one firing, the firings before it beside it, and
 * the edit of a plan that a cause suggests.
 *
 * <p><b>Threads:</b> immutable. <b>Depends on:</b> {@code core}, {@code files}, {@code firings},
 * {@code store}, {@code json}. <b>Errors:</b> texts that cannot be read throw {@link
 * org.heatwright.app.files.InputException}.
 */
@NullMarked
package org.heatwright.app.causes;

import org.jspecify.annotations.NullMarked;
