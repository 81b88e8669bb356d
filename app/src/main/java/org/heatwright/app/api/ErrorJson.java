package org.heatwright.app.api;

/**
 * Why something was not answered.
 *
 * @param error one sentence: what is wrong and what would be right
 */
record ErrorJson(String error) {}
