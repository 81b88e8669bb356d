package org.heatwright.app.store;

import java.time.Instant;

/**
 * A card that was made; its PDF is fetched by {@link Store#cardPdf}.
 *
 * @param id UUID as text
 * @param name what people call it
 * @param madeFrom what went into it, as text (files and choices), so that it can be made again
 * @param made when
 */
public record CardEntry(String id, String name, String madeFrom, Instant made) {}
