package org.heatwright.app.cli;

import java.util.List;
import java.util.Locale;
import org.heatwright.work.Outcome;

/** What a firing does to the piece, on the page. */
final class OutcomeWords {

  private OutcomeWords() {}

  static void print(String heading, List<Outcome> outcomes, Page page) {
    if (outcomes.isEmpty()) {
      return;
    }
    page.blank().line(heading);
    for (Outcome outcome : outcomes) {
      page.hanging(
          "  ",
          outcome
              .severity()
              // What to do about it stands in the inspection.
              .map(
                  grave ->
                      "%s: %s: %s."
                          .formatted(
                              grave.name().toLowerCase(Locale.ROOT),
                              outcome.what(),
                              outcome.value()))
              .orElseGet(
                  () ->
                      "%s: %s. %s (%s)"
                          .formatted(
                              outcome.what(),
                              outcome.value(),
                              outcome.meaning(),
                              outcome.origin().words())));
    }
  }
}
