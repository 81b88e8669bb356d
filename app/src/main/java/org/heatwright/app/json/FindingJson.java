package org.heatwright.app.json;

import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import org.heatwright.inspect.Finding;

/** A finding: severity is stop, warn or note. */
public record FindingJson(
    String severity, String code, OptionalInt segment, String message, String origin) {

  static List<FindingJson> of(List<Finding> findings) {
    return findings.stream()
        .map(
            f ->
                new FindingJson(
                    f.severity().name().toLowerCase(Locale.ROOT),
                    f.code(),
                    f.segment(),
                    f.message(),
                    f.origin().words()))
        .toList();
  }
}
