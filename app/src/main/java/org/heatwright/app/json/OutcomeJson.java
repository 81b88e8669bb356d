package org.heatwright.app.json;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.heatwright.work.Outcome;

/** What a firing does to the piece: {@code severity} is null where there is nothing to act on. */
public record OutcomeJson(
    String code,
    String what,
    String value,
    String meaning,
    Optional<String> severity,
    String source) {

  static List<OutcomeJson> of(List<Outcome> outcomes) {
    return outcomes.stream()
        .map(
            outcome ->
                new OutcomeJson(
                    outcome.code(),
                    outcome.what(),
                    outcome.value(),
                    outcome.meaning(),
                    outcome.severity().map(grave -> grave.name().toLowerCase(Locale.ROOT)),
                    outcome.origin().words()))
        .toList();
  }
}
