package org.heatwright.forecast;

import java.util.Optional;

/**
 * What one place inside the work does.
 *
 * @param mould 1-based position in the list of moulds
 * @param probe which place, e.g. "centre"
 * @param drySeconds when the last free water has left the mould; empty if it does not in every draw
 * @param readySeconds when the whole inside is within {@link Forecaster#READY_WITHIN_KELVINS} of
 *     the chamber at the last target, and stays so to the end; empty if it is not in every draw
 * @param atEndCelsius temperature when the program ends
 */
public record WorkForecast(
    int mould,
    String probe,
    Optional<Band> drySeconds,
    Optional<Band> readySeconds,
    Band atEndCelsius) {}
