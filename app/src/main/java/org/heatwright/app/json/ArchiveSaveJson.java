package org.heatwright.app.json;

/** What {@code archive save --json} prints. */
public record ArchiveSaveJson(String file, long bytes) {}
