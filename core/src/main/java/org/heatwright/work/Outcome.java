package org.heatwright.work;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.heatwright.inspect.Finding;
import org.heatwright.inspect.Severity;
import org.heatwright.inspect.Wording;
import org.heatwright.material.Origin;
import org.heatwright.units.TemperatureUnit;

/**
 * One thing that a firing does to the piece, for a person: by a forecast, or by a log.
 *
 * @param code short stable name in kebab-case, e.g. "density"
 * @param what what it is about, short: "density when it is done"
 * @param value the number as a range with its unit, or a short word: "93 to 97 %"
 * @param meaning what it means and what to do, one or two plain sentences; where data are thin, how
 *     thin and which test narrows it
 * @param severity how bad, if it is
 * @param origin where the rule or the model comes from
 */
public record Outcome(
    String code,
    String what,
    String value,
    String meaning,
    Optional<Severity> severity,
    Origin origin) {

  public Outcome {
    Objects.requireNonNull(code, "code");
    if (what.isBlank()) {
      throw new IllegalArgumentException(
          "The outcome '%s' must say what it is about.".formatted(code));
    }
    Objects.requireNonNull(value, "value");
    Objects.requireNonNull(meaning, "meaning");
    Objects.requireNonNull(severity, "severity");
    Objects.requireNonNull(origin, "origin");
  }

  /** What a person must not overlook, as a finding; empty where there is nothing to act on. */
  public Optional<Finding> finding() {
    return severity.map(
        grave ->
            new Finding(
                grave,
                code,
                OptionalInt.empty(),
                "%s: %s. %s"
                    .formatted(
                        what.substring(0, 1).toUpperCase(Locale.ROOT) + what.substring(1),
                        value,
                        meaning),
                origin));
  }

  /**
   * What an inspection found, and what a firing does to the pieces where that is to be acted on.
   * Gravest first.
   */
  public static List<Finding> among(List<Finding> inspected, List<Outcome> outcomes) {
    return Stream.concat(
            inspected.stream(), outcomes.stream().flatMap(outcome -> outcome.finding().stream()))
        .sorted(Comparator.comparing(Finding::severity))
        .toList();
  }

  /** Something that is as it should be, or only to know. */
  public static Outcome of(String code, String what, String value, String meaning, Origin origin) {
    return new Outcome(code, what, value, meaning, Optional.empty(), origin);
  }

  /** Something to act on. */
  public static Outcome of(
      String code, String what, String value, String meaning, Severity severity, Origin origin) {
    return new Outcome(code, what, value, meaning, Optional.of(severity), origin);
  }

  /** The same in another unit; its source is told in its own. */
  public Outcome in(TemperatureUnit unit) {
    return new Outcome(
        code, what, Wording.in(value, unit), Wording.in(meaning, unit), severity, origin);
  }
}
