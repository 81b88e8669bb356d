package org.heatwright.app.web;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.heatwright.app.json.ForecastJson;

/**
 * What {@code POST /plan} answers, to the page's script and to any other program.
 *
 * @param errors field name to one sentence
 * @param refusal why there is no plan, one sentence
 * @param query the choices as a deep link, with what was left open filled in
 * @param of the composition that edits belong to; sent back with them
 * @param notes what was put aside or taken as usual
 * @param draws size of the ensemble behind the answer
 * @param forecast as {@code forecast --json} prints it
 * @param parts element id to the inside of that part of the page; empty where a field is wrong
 */
record PlanAnswer(
    Map<String, String> errors,
    Optional<String> refusal,
    String query,
    String of,
    List<String> notes,
    int draws,
    Optional<ForecastJson> forecast,
    Map<String, String> parts) {}
