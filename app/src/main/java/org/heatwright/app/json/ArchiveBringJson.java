package org.heatwright.app.json;

/** What {@code archive bring --json} prints: how many of each are new. */
public record ArchiveBringJson(int texts, int logs, int firings, int cards, int pieces) {}
