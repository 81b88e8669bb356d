package org.heatwright.app.web;

/**
 * An address that has no page, or a page that could not be made.
 *
 * @param clock the time at the bench
 * @param place the nearest
 * @param head what it is, in a few words
 * @param sentence what is wrong
 * @param back the page that led here; empty if none did
 */
public record TroublePage(String clock, Place place, String head, String sentence, String back) {}
