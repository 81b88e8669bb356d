package org.heatwright.app.web;

/**
 * What stands where the bench does not answer: a list of what the browser kept.
 *
 * @param clock the time at the bench; empty: none is known then
 */
public record OfflinePage(String clock) {}
