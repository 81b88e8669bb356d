package org.heatwright.app.web;

import java.util.Map;
import java.util.Optional;

/**
 * What {@code POST /plan/curve} answers while a plan is edited: only what can be told at once.
 *
 * @param errors field name to one sentence
 * @param answer the inside of the page's answer; empty where only the curves are told
 * @param curve empty where there is no firing
 */
record CurveAnswer(
    Map<String, String> errors, Optional<String> answer, Optional<CurveJson> curve) {}
