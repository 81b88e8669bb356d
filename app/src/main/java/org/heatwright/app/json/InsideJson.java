package org.heatwright.app.json;

import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.heatwright.app.report.InsideWords;
import org.heatwright.forecast.DoorCost;
import org.heatwright.forecast.InsideForecast;
import org.heatwright.mould.BurnoutMeasures;
import org.heatwright.mould.Mould;

/**
 * What {@code inside --json} prints. Seconds count from the start of the program; a moment that
 * does not come in every case is null.
 *
 * @param source "forecast" or "log"
 * @param atSeconds the moment whose temperatures are told
 * @param door null from a log, with a single mould, or where no moment is known at which all are
 *     ready
 */
public record InsideJson(
    String schedule,
    String kiln,
    String source,
    double atSeconds,
    List<MouldJson> moulds,
    Optional<DoorJson> door,
    List<String> notes,
    List<String> written) {

  /** What the open door costs the moulds that stay; seconds count from its opening. */
  public record DoorJson(
      double atSeconds,
      double openSeconds,
      BandJson displayFallKelvin,
      Optional<BandJson> displayBackSeconds,
      List<StaysJson> stays) {

    public static DoorJson of(DoorCost cost) {
      return new DoorJson(
          cost.atSeconds(),
          cost.openSeconds(),
          BandJson.of(cost.displayFallKelvins()),
          cost.displayBackSeconds().map(BandJson::of),
          cost.moulds().stream()
              .map(
                  m ->
                      new StaysJson(
                          m.mould(),
                          BandJson.of(m.faceFallKelvins()),
                          BandJson.of(m.coreFallKelvins()),
                          m.evenSeconds().map(BandJson::of)))
              .toList());
    }
  }

  /** One kind of mould that stays. */
  public record StaysJson(
      int mould,
      BandJson faceFallKelvin,
      BandJson coreFallKelvin,
      Optional<BandJson> evenSeconds) {}

  /** One kind of mould. */
  public record MouldJson(
      int mould,
      int count,
      double diameterMm,
      double heightMm,
      Optional<BandJson> boilBeginsSeconds,
      Optional<BandJson> boilEndsSeconds,
      Optional<BandJson> drySeconds,
      BandJson steamGramsPerMinute,
      BandJson steamSeconds,
      Optional<BandJson> meltedSeconds,
      double meltedCelsius,
      BandJson burnSeconds,
      double burnReferenceCelsius,
      BandJson coldestPeakCelsius,
      BandJson hottestPeakCelsius,
      BandJson boilingKelvin,
      BandJson cristobaliteKelvin,
      BandJson quartzKelvin,
      BandJson tensionMegapascals,
      BandJson coreCelsius,
      BandJson coldestCelsius,
      BandJson hottestCelsius,
      Optional<PourJson> pour) {}

  /** Out of the kiln: until the pattern's place is so much cooler; null where more than an hour. */
  public record PourJson(
      double startCelsius,
      double patternMm,
      double fallsKelvin,
      Optional<Double> airSeconds,
      Optional<Double> cradleSeconds) {}

  /** One kind of mould at a moment. */
  public static MouldJson of(
      InsideForecast inside, Mould mould, double at, Optional<InsideWords.Pour> pour) {
    List<BurnoutMeasures> measures = inside.measures();
    return new MouldJson(
        inside.mould(),
        mould.count(),
        mould.diameterMetres() * 1000,
        mould.heightMetres() * 1000,
        band(measures, BurnoutMeasures::boilBeginsSeconds),
        band(measures, BurnoutMeasures::boilEndsSeconds),
        band(measures, BurnoutMeasures::drySeconds),
        band(measures, m -> m.steamKilogramsPerSecond() * 60_000).orElseThrow(),
        band(measures, BurnoutMeasures::steamSeconds).orElseThrow(),
        band(measures, BurnoutMeasures::meltedSeconds),
        BurnoutMeasures.MELTED_CELSIUS,
        band(measures, BurnoutMeasures::burnSeconds).orElseThrow(),
        BurnoutMeasures.BURN_REFERENCE.celsius(),
        band(measures, BurnoutMeasures::coldestPeakCelsius).orElseThrow(),
        band(measures, BurnoutMeasures::hottestPeakCelsius).orElseThrow(),
        band(measures, BurnoutMeasures::boilingKelvins).orElseThrow(),
        band(measures, BurnoutMeasures::cristobaliteKelvins).orElseThrow(),
        band(measures, BurnoutMeasures::quartzKelvins).orElseThrow(),
        band(measures, m -> m.tensionPascals() / 1e6).orElseThrow(),
        BandJson.of(inside.centreCelsiusAt(at)),
        BandJson.of(inside.band(d -> d.coldestCelsiusAt(at))),
        BandJson.of(inside.band(d -> d.hottestCelsiusAt(at))),
        pour.map(
            p ->
                new PourJson(
                    p.startCelsius(),
                    p.patternDepthMetres() * 1000,
                    InsideWords.FALLS_KELVINS,
                    finite(p.airSeconds()),
                    finite(p.cradleSeconds()))));
  }

  private static Optional<Double> finite(double value) {
    return Double.isFinite(value) ? Optional.of(value) : Optional.empty();
  }

  private static Optional<BandJson> band(
      List<BurnoutMeasures> measures, ToDoubleFunction<BurnoutMeasures> value) {
    return InsideForecast.band(measures, value).map(BandJson::of);
  }
}
