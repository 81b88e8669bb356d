package org.heatwright.app.json;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.heatwright.kiln.Kiln;
import org.heatwright.learn.KilnHealth;

/**
 * What {@code health --json} prints. {@code relative} is over the value of the firing on {@code
 * since}, 1 for the same; {@code told} is false where the firings say no more of it than time does.
 */
public record HealthJson(
    String kiln,
    List<FindingJson> findings,
    List<PointJson> points,
    Optional<RiseJson> rise,
    List<String> notes,
    Optional<String> plot) {

  /** One aspect now: power, loss or lag; concern: none, changed, warning or replace. */
  public record FindingJson(String aspect, String concern, String sentence) {}

  /** One aspect at one firing. */
  public record PointJson(
      String date, String log, String aspect, String since, BandJson relative, boolean told) {}

  /** A rise at full power from cold, empty, as it was and as it is. */
  public record RiseJson(double targetCelsius, BandJson thenSeconds, BandJson nowSeconds) {}

  public static HealthJson of(
      Kiln kiln, KilnHealth health, List<String> notes, Optional<String> plot) {
    return new HealthJson(
        kiln.name(),
        health.findings().stream()
            .map(f -> new FindingJson(word(f.aspect()), word(f.concern()), f.sentence()))
            .toList(),
        health.points().stream()
            .map(
                p ->
                    new PointJson(
                        p.date().toString(),
                        p.firing(),
                        word(p.aspect()),
                        p.since().toString(),
                        BandJson.of(p.relative()),
                        p.told()))
            .toList(),
        health
            .rise()
            .map(
                r ->
                    new RiseJson(
                        r.target().celsius(),
                        BandJson.of(r.thenSeconds()),
                        BandJson.of(r.nowSeconds()))),
        notes,
        plot);
  }

  private static String word(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT);
  }
}
