package org.heatwright.app.web;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What came of some choices.
 *
 * @param choices with what was left open filled in
 * @param errors field name to one sentence
 * @param refusal why there is no firing, one sentence
 * @param notes what was put aside or taken as usual
 * @param firing the firing, where there is one
 */
record PlanResult(
    Choices choices,
    Map<String, String> errors,
    Optional<String> refusal,
    List<String> notes,
    Optional<Firing> firing) {}
