package org.heatwright.app.json;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.heatwright.kiln.Kiln;
import org.heatwright.material.Origin;
import org.heatwright.sensing.DisplayCheck;
import org.heatwright.sensing.MeltCheck;
import org.heatwright.sensing.OffsetCorrection;
import org.heatwright.sensing.ThermocoupleType;
import org.heatwright.sensing.WrongType.Comparison;
import org.heatwright.sensing.WrongType.Suspect;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;

/**
 * What {@code offset --json} prints. An offset is what the display shows above the truth. {@code
 * work} is null and {@code shows} empty where something else is wrong than an offset.
 */
public record OffsetJson(
    Optional<MeltJson> melt,
    List<ComparisonJson> comparisons,
    Optional<String> type,
    Optional<Double> coldJunctionCelsius,
    List<SuspectJson> suspects,
    Optional<KilnJson> kiln,
    Optional<ShownJson> work,
    List<ShownJson> shows,
    List<String> notes,
    List<String> cautions,
    List<String> origins) {

  private static final double DECIMALS = 1e6;

  /** What the wire said; between the low and the high offset anything is possible. */
  public record MeltJson(
      double lastWholeCelsius,
      double firstMeltedCelsius,
      String surroundings,
      double mostBehindKelvins,
      double shownCelsius,
      double offsetKelvins,
      double lowOffsetKelvins,
      double highOffsetKelvins) {

    static MeltJson of(MeltCheck melt) {
      MeltCheck.Correction correction = melt.correction();
      return new MeltJson(
          round(melt.lastWhole()),
          round(melt.firstMelted()),
          melt.surroundings() == MeltCheck.Surroundings.BARE_IN_AIR ? "in-air" : "charcoal",
          round(melt.mostBehind()),
          round(correction.shown()),
          round(correction.offset()),
          round(correction.lowOffset()),
          round(correction.highOffset()));
    }
  }

  /** A reading beside a trusted thermometer. */
  public record ComparisonJson(double shownCelsius, double trueCelsius, double offsetKelvins) {
    static ComparisonJson of(Comparison seen) {
      return new ComparisonJson(
          round(seen.shown()), round(seen.truth()), round(seen.shown().minus(seen.truth())));
    }
  }

  /** Another couple, or swapped leads, that would explain what was seen. */
  public record SuspectJson(String type, boolean leadsReversed, double largestMisfitKelvins) {
    static SuspectJson of(Suspect suspect) {
      return new SuspectJson(
          suspect.sensor().name(), suspect.leadsReversed(), round(suspect.largestMisfit()));
    }
  }

  /** What the kiln's file counts on. */
  public record KilnJson(String name, double offsetKelvins) {
    static KilnJson of(Kiln kiln) {
      return new KilnJson(kiln.name(), kiln.thermocouple().offset().kelvins());
    }
  }

  /** What the display shows at a true temperature; standing is seen, between or first-guess. */
  public record ShownJson(
      double trueCelsius, double shownCelsius, double offsetKelvins, String standing) {
    static ShownJson of(DisplayCheck check, OffsetCorrection correction, Temperature truth) {
      Temperature shown = correction.shown(truth);
      return new ShownJson(
          round(truth),
          round(shown),
          round(shown.minus(truth)),
          check.standing(truth).name().toLowerCase(Locale.ROOT).replace('_', '-'));
    }
  }

  /**
   * The answer.
   *
   * @param correction empty where something else is wrong than an offset
   * @param work the true temperature that is worked at
   * @param table the true temperatures of {@code shows}
   */
  public static OffsetJson of(
      DisplayCheck check,
      List<Suspect> suspects,
      Optional<Kiln> kiln,
      Optional<OffsetCorrection> correction,
      Temperature work,
      List<Temperature> table,
      List<String> notes,
      List<String> cautions) {
    return new OffsetJson(
        check.melt().map(MeltJson::of),
        check.comparisons().stream().map(ComparisonJson::of).toList(),
        check.setTo().map(ThermocoupleType::name),
        check.coldJunction().map(OffsetJson::round),
        suspects.stream().map(SuspectJson::of).toList(),
        kiln.map(KilnJson::of),
        correction.map(c -> ShownJson.of(check, c, work)),
        correction
            .map(c -> table.stream().map(truth -> ShownJson.of(check, c, truth)).toList())
            .orElse(List.of()),
        notes,
        cautions,
        check.origins().stream().map(Origin::words).toList());
  }

  private static double round(Temperature temperature) {
    return round(temperature.celsius());
  }

  private static double round(TemperatureChange change) {
    return round(change.kelvins());
  }

  private static double round(double value) {
    return Math.rint(value * DECIMALS) / DECIMALS + 0.0;
  }
}
