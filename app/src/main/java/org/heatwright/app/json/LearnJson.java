package org.heatwright.app.json;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.KilnBeliefs;
import org.heatwright.kiln.KilnQuantity;
import org.heatwright.learn.Lesson;
import org.heatwright.units.TemperatureUnit;

/**
 * What {@code learn --json} prints. A quantity's name carries its unit; {@code before} and {@code
 * after} are medians with the 5th and 95th percentile; {@code told} is false where the firings
 * could not tell it and it is still the nameplate's; {@code stillNameplate} says why, a sentence
 * each; {@code plots} are the files drawn.
 */
public record LearnJson(
    String kiln,
    List<FiringJson> firings,
    List<FiringJson> leftOut,
    List<QuantityJson> quantities,
    List<String> stillNameplate,
    List<String> notes,
    List<String> plots) {

  /** A firing and how far the fit misses its display, root mean square. */
  public record FiringJson(String log, double misfitKelvin) {}

  /** One quantity, before and after. */
  public record QuantityJson(String name, BandJson before, BandJson after, boolean told) {}

  public static LearnJson of(
      Kiln kiln, Lesson lesson, TemperatureUnit unit, List<String> notes, List<String> plots) {
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
