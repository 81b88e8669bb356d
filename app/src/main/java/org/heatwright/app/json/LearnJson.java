package org.heatwright.app.json;

import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.heatwright.kiln.FiringConditions.Disturbance;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.KilnBeliefs;
import org.heatwright.kiln.KilnQuantity;
import org.heatwright.learn.Anomaly;
import org.heatwright.learn.Lesson;
import org.heatwright.learn.Unseen;
import org.heatwright.units.TemperatureUnit;

/**
 * What {@code learn --json} prints. A quantity's name carries its unit; {@code before} and {@code
 * after} are medians with the 5th and 95th percentile; {@code told} is false where the firings
 * could not tell it and it is still the nameplate's; {@code anomalies} are what went wrong in the
 * firings and was kept out; {@code notShown} is what a firing's display could not have shown, found
 * by simulating it; {@code stillNameplate} says why, a sentence each; {@code plots} are the files
 * drawn.
 */
public record LearnJson(
    String kiln,
    List<FiringJson> firings,
    List<FiringJson> leftOut,
    List<AnomalyJson> anomalies,
    List<UnseenJson> notShown,
    List<QuantityJson> quantities,
    List<String> stillNameplate,
    List<String> notes,
    List<String> plots) {

  /** A firing and how far the fit misses its display, root mean square. */
  public record FiringJson(String log, double misfitKelvin) {}

  /**
   * Something that went wrong in a firing. {@code kind} and {@code orElse} are words such as "mains
   * off"; the latter are kinds that would explain the display as well. {@code lengthS} is left out
   * where it went on to the end.
   */
  public record AnomalyJson(
      String log,
      String kind,
      List<String> orElse,
      double beganS,
      Optional<Double> lengthS,
      double sizeShare,
      String sentence,
      String check) {
    static AnomalyJson of(Lesson.Happened happened, Optional<ZonedDateTime> started) {
      Anomaly what = happened.what();
      return new AnomalyJson(
          happened.firing(),
          what.kind().words(),
          what.alternatives().stream().map(Disturbance.Kind::words).toList(),
          what.beganSeconds(),
          what.lengthSeconds().isPresent()
              ? Optional.of(what.lengthSeconds().getAsDouble())
              : Optional.empty(),
          what.likeliest().sizeShare(),
          what.happened(started),
          what.check());
    }
  }

  /** What could have gone wrong unseen in a firing; {@code kind} as in {@link AnomalyJson}. */
  public record UnseenJson(String log, String kind, List<StretchJson> stretches, String sentence) {
    static UnseenJson of(String log, Unseen unseen) {
      return new UnseenJson(
          log,
          unseen.kind().words(),
          unseen.stretches().stream()
              .map(s -> new StretchJson(s.fromSeconds(), s.toSeconds()))
              .toList(),
          unseen.words());
    }
  }

  /** From when to when, s from the program's start. */
  public record StretchJson(double fromS, double toS) {}

  /** One quantity, before and after. */
  public record QuantityJson(String name, BandJson before, BandJson after, boolean told) {}

  /**
   * @param unseen what each firing's display could not have shown, by its log's name
   * @param started when a firing's program started by the kiln's clock, by its log's name, where
   *     known
   */
  public static LearnJson of(
      Kiln kiln,
      Lesson lesson,
      TemperatureUnit unit,
      Map<String, ZonedDateTime> started,
      Map<String, List<Unseen>> unseen,
      List<String> notes,
      List<String> plots) {
    List<FiringJson> firings = new ArrayList<>();
    for (int i = 0; i < lesson.firings().size(); i++) {
      firings.add(new FiringJson(lesson.firings().get(i), lesson.misfitKelvins(i)));
    }
    return new LearnJson(
        kiln.name(),
        firings,
        lesson.leftOut().stream()
            .map(left -> new FiringJson(left.firing(), left.misfitKelvins()))
            .toList(),
        lesson.happened().stream()
            .map(one -> AnomalyJson.of(one, Optional.ofNullable(started.get(one.firing()))))
            .toList(),
        lesson.firings().stream()
            .flatMap(
                log ->
                    unseen.getOrDefault(log, List.of()).stream()
                        .map(one -> UnseenJson.of(log, one)))
            .toList(),
        Arrays.stream(KilnQuantity.values())
            .filter(KilnQuantity::learnable)
            .map(
                quantity ->
                    new QuantityJson(
                        quantity.fileName(),
                        band(KilnBeliefs.prior(), quantity),
                        band(lesson.beliefs(), quantity),
                        !lesson.untold().contains(quantity)))
            .toList(),
        lesson.stillNameplate(unit),
        notes,
        plots);
  }

  private static BandJson band(KilnBeliefs beliefs, KilnQuantity quantity) {
    return new BandJson(beliefs.low(quantity), beliefs.median(quantity), beliefs.high(quantity));
  }
}
