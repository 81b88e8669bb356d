package org.heatwright.app.store;

import java.time.Instant;

/**
 * A text that was replaced by a newer one.
 *
 * @param text the file as it was
 * @param kept since when it was the valid one
 * @param replaced until when
 */
public record EarlierText(String text, Instant kept, Instant replaced) {}
