package org.heatwright.app.store;

import java.time.Instant;

/**
 * One stored text.
 *
 * @param id UUID as text
 * @param kind what the text describes
 * @param name its name on the shelf, unique within its kind
 * @param text the file as its owner wrote it, YAML
 * @param created when it was first kept, to the millisecond
 * @param changed when its text last changed, to the millisecond
 */
public record Document(
    String id, Kind kind, String name, String text, Instant created, Instant changed) {}
