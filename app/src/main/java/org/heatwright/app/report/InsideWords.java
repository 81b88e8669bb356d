package org.heatwright.app.report;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.InsideForecast;
import org.heatwright.mould.BurnoutMeasures;
import org.heatwright.mould.Investment;
import org.heatwright.mould.Mould;
import org.heatwright.mould.PourWindow;
import org.heatwright.schedule.HourMinute;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;
import org.heatwright.units.TemperatureUnit;

/**
 * Says what happens inside the moulds of one kind, one idea a sentence.
 *
 * @param inside what the draws say
 * @param mould the kind
 * @param unit degrees people read
 * @param when says moments
 */
public record InsideWords(
    InsideForecast inside, Mould mould, TemperatureUnit unit, WhenWords when) {

  /** A pattern's place has lost this much when it is told, K. Our choice. */
  public static final double FALLS_KELVINS = 25;

  private static final double GRAMS_A_MINUTE = 60_000;
  private static final double PASCALS = 1e6;
  private static final double LEAST_TOLD_PASCALS = 0.05e6;
  private static final double LONGEST_TOLD_SECONDS = 48 * 3600;
  private static final double DRY_AT_MOST = 0.005;

  /** "Mould 1, 63 x 90 mm, 2 of this kind". */
  public String name() {
    String many = mould.count() == 1 ? "" : ", %d of this kind".formatted(mould.count());
    return "Mould %d, %.0f x %.0f mm%s"
        .formatted(
            inside.mould(), mould.diameterMetres() * 1000, mould.heightMetres() * 1000, many);
  }

  /**
   * The sentences about the firing.
   *
   * @param at the moment whose temperatures are wanted, s
   */
  public List<String> sentences(double at) {
    List<BurnoutMeasures> measures = inside.measures();
    List<String> lines = new ArrayList<>();
    if (inside.draws().get(0).waterShare(0) > 0) {
      lines.addAll(water(measures));
    }
    lines.add(melting(measures));
    lines.add(burning(measures));
    lines.addAll(unevenness(measures));
    lines.add(at(at));
    return lines;
  }

  private List<String> water(List<BurnoutMeasures> measures) {
    List<String> lines = new ArrayList<>();
    lines.add(
        band(measures, BurnoutMeasures::boilBeginsSeconds)
            .map(b -> "The core begins to boil at %s.".formatted(moment(b)))
            .orElse("The core does not come to the boil in every case."));
    lines.add(
        band(measures, BurnoutMeasures::drySeconds)
            .map(b -> "It is dry at %s.".formatted(moment(b)))
            .orElseGet(
                () ->
                    "It is not dry in every case: at the end %.0f %% of the free water is left."
                        .formatted(100 * leftAtEnd())));
    double most =
        band(measures, BurnoutMeasures::steamKilogramsPerSecond).map(Band::median).orElse(0.0);
    if (most > 0) {
      lines.add(
          "Most steam: %.1f g a minute from one mould, at about %s."
              .formatted(
                  most * GRAMS_A_MINUTE,
                  when.full(
                      band(measures, BurnoutMeasures::steamSeconds)
                          .map(Band::median)
                          .orElse(0.0))));
    }
    return lines;
  }

  private double leftAtEnd() {
    double end = inside.draws().get(0).second(inside.draws().get(0).rows() - 1);
    return Math.max(DRY_AT_MOST, inside.band(d -> d.waterShareAt(end)).median());
  }

  private String melting(List<BurnoutMeasures> measures) {
    String hot = "%.0f %s".formatted(value(BurnoutMeasures.MELTED_CELSIUS), unit.symbol());
    return band(measures, BurnoutMeasures::meltedSeconds)
        .map(b -> "All of it is past %s, where wax has run, at %s.".formatted(hot, moment(b)))
        .orElse("Not all of it gets to %s, where wax has run, in every case.".formatted(hot));
  }

  private String burning(List<BurnoutMeasures> measures) {
    Band peak = band(measures, BurnoutMeasures::coldestPeakCelsius).orElseThrow();
    Band burnt = band(measures, BurnoutMeasures::burnSeconds).orElseThrow();
    String reaches = "The coldest place gets to %s".formatted(degrees(peak));
    if (burnt.high() < 60) {
      return reaches + ", where nothing of a pattern's carbon burns to speak of.";
    }
    if (burnt.low() > LONGEST_TOLD_SECONDS) {
      return reaches
          + " and burns as more than 48 h at %.0f %s would."
              .formatted(unit.value(BurnoutMeasures.BURN_REFERENCE), unit.symbol());
    }
    return reaches
        + " and burns as %s at %.0f %s would (%s to %s)."
            .formatted(
                length(burnt.median()),
                unit.value(BurnoutMeasures.BURN_REFERENCE),
                unit.symbol(),
                length(burnt.low()),
                length(burnt.high()));
  }

  private List<String> unevenness(List<BurnoutMeasures> measures) {
    List<String> lines = new ArrayList<>();
    if (inside.draws().get(0).waterShare(0) > 0) {
      apart(measures, BurnoutMeasures::boilingKelvins, "water boils").ifPresent(lines::add);
    }
    apart(measures, BurnoutMeasures::cristobaliteKelvins, "cristobalite turns")
        .ifPresent(lines::add);
    apart(measures, BurnoutMeasures::quartzKelvins, "quartz turns").ifPresent(lines::add);
    double tension = band(measures, BurnoutMeasures::tensionPascals).map(Band::median).orElse(0.0);
    if (tension > LEAST_TOLD_PASCALS) {
      lines.add(
          "Apart from that, unevenness pulls at its coldest place by about %.1f MPa (elastic, an estimate within a factor of three; inspect compares it with practice)."
              .formatted(tension / PASCALS));
    }
    return lines;
  }

  private Optional<String> apart(
      List<BurnoutMeasures> measures, ToDoubleFunction<BurnoutMeasures> kelvins, String happens) {
    return band(measures, kelvins)
        .map(Band::median)
        .filter(most -> most > 0)
        .map(
            most ->
                "While %s, two places inside are up to %s apart."
                    .formatted(happens, difference(most)));
  }

  private String at(double second) {
    Band cold = inside.band(d -> d.coldestCelsiusAt(second));
    Band hot = inside.band(d -> d.hottestCelsiusAt(second));
    return "At %s the core is at %s; the whole inside is between %.0f and %.0f %s."
        .formatted(
            when.full(second),
            degrees(inside.centreCelsiusAt(second)),
            value(cold.low()),
            value(hot.high()),
            unit.symbol());
  }

  /**
   * What the outermost pattern's place loses after the mould has left the kiln.
   *
   * @param startCelsius what the mould is all through when it leaves, °C
   * @param airSeconds until it is {@link #FALLS_KELVINS} lower in the air, s; may be infinite
   * @param cradleSeconds the same in a casting machine's cradle
   */
  public record Pour(
      double startCelsius, double patternDepthMetres, double airSeconds, double cradleSeconds) {}

  /**
   * Solves the cooling.
   *
   * @return empty where the mould is wet or too near to the room's temperature to fall so far
   * @throws IllegalArgumentException if the pattern lies outside the mould
   */
  public Optional<Pour> pour(Investment investment, Temperature room, double at, double depth) {
    double start = inside.band(d -> mean(d, at)).median();
    double[] seconds = new double[2];
    boolean wet = inside.band(d -> d.waterShareAt(at)).median() > DRY_AT_MOST;
    if (wet || start - room.celsius() < 2 * FALLS_KELVINS) {
      return Optional.empty();
    }
    Temperature hot = Temperature.ofCelsius(start);
    for (PourWindow.Place place : PourWindow.Place.values()) {
      PourWindow window =
          PourWindow.of(new PourWindow.Setting(mould, investment, hot, room, place, depth));
      seconds[place.ordinal()] =
          window.patternFallsBelowSeconds(Temperature.ofCelsius(start - FALLS_KELVINS));
    }
    return Optional.of(new Pour(start, depth, seconds[0], seconds[1]));
  }

  private static double mean(org.heatwright.mould.MouldFiring draw, double second) {
    return (draw.coldestCelsiusAt(second) + draw.hottestCelsiusAt(second)) / 2;
  }

  /** One sentence on it. */
  public String words(Pour pour) {
    return "Out of the kiln then, a pattern %.0f mm from the investment's face is %s cooler after %s in the air, %s in a casting machine's cradle."
        .formatted(
            pour.patternDepthMetres() * 1000,
            difference(FALLS_KELVINS),
            seconds(pour.airSeconds()),
            seconds(pour.cradleSeconds()));
  }

  private static String seconds(double value) {
    return !Double.isFinite(value)
        ? "more than an hour"
        : value < 120 ? "%.0f s".formatted(value) : "%.0f min".formatted(value / 60);
  }

  private static Optional<Band> band(
      List<BurnoutMeasures> measures, ToDoubleFunction<BurnoutMeasures> value) {
    return InsideForecast.band(measures, value);
  }

  private String moment(Band seconds) {
    return "%s (%s)".formatted(when.full(seconds.median()), when.band(seconds));
  }

  private String degrees(Band celsius) {
    return "%.0f %s (%.0f to %.0f)"
        .formatted(
            value(celsius.median()), unit.symbol(), value(celsius.low()), value(celsius.high()));
  }

  private String difference(double kelvins) {
    return "%.0f %s"
        .formatted(unit.value(TemperatureChange.ofKelvins(kelvins)), unit.differenceSymbol());
  }

  private double value(double celsius) {
    return unit.value(Temperature.ofCelsius(celsius));
  }

  private static String length(double seconds) {
    return HourMinute.words(Duration.ofMinutes(Math.round(seconds / 60)));
  }
}
