package org.heatwright.app.web;

import org.heatwright.forecast.EnsembleProgress;

/** How far an ensemble is, in words. */
final class HowFar {

  private HowFar() {}

  static String sentence(EnsembleProgress.Part part, int done, int of) {
    return switch (part) {
      case KILNS ->
          "The firing is tried in kilns like this one: %d of %d are done.".formatted(done, of);
      case MOULDS ->
          "What happens inside the moulds is worked out: %d of %d parts are done."
              .formatted(done, of);
      case PIECES ->
          "What happens in the pieces is worked out: %d of %d parts are done.".formatted(done, of);
    };
  }
}
