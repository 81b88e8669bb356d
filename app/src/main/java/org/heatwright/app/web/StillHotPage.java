package org.heatwright.app.web;

import java.util.Map;

/**
 * Asked before a kiln is started of which a firing is under way.
 *
 * @param clock the time at the bench
 * @param id of the firing that is under way
 * @param kiln in which
 * @param sentence what the book says of it
 * @param address where the new start was told
 * @param fields what was told with it
 */
public record StillHotPage(
    String clock,
    String id,
    String kiln,
    String sentence,
    String address,
    Map<String, String> fields) {}
