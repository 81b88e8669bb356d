package org.heatwright.app.json;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.heatwright.app.plot.LogAgainstForecast;
import org.heatwright.app.report.Ending;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.CostEstimate;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.SegmentForecast;
import org.heatwright.forecast.StartPlan;
import org.heatwright.inspect.Finding;
import org.heatwright.learn.RunningFiring;
import org.heatwright.work.Outcome;

/**
 * What {@code forecast --json} prints. Seconds count from the start of the program, after any
 * delay. {@code endSeconds} is null where in most cases a target is never reached and the program
 * does not end.
 */
public record ForecastJson(
    String schedule,
    String kiln,
    List<SegmentJson> segments,
    Optional<BandJson> endSeconds,
    BandJson energyKilowattHours,
    Optional<CostJson> cost,
    List<WorkJson> work,
    List<PieceJson> pieces,
    List<OutcomeJson> outcomes,
    List<OutcomeJson> outcomesByLog,
    Optional<StartJson> start,
    List<FindingJson> findings,
    Optional<SeenJson> seen,
    Optional<LogJson> log,
    Optional<String> plot) {

  /**
   * How the forecast held against a log, over the readings that fall into it: the share inside the
   * band, 0 to 1, and the root mean square of seen minus the median.
   */
  public record LogJson(int readings, double insideShare, double missedKelvin) {}

  /** What the display said so far: {@code verdict} is normal, behind, ahead, not-heating or odd. */
  public record SeenJson(String verdict, List<ReadingJson> readings) {}

  /** One reading and what was expected before it. */
  public record ReadingJson(
      double seconds, double celsius, BandJson expectedCelsius, boolean inside) {}

  /** The same with a log held against it. */
  public ForecastJson withLog(Optional<LogAgainstForecast> compared) {
    return with(
        outcomes,
        outcomesByLog,
        seen,
        compared.map(
            c -> new LogJson(c.differences().size(), c.insideShare(), c.rootMeanSquareKelvins())),
        plot);
  }

  /** The same with the file that a plot was written to. */
  public ForecastJson withPlot(Optional<String> path) {
    return with(outcomes, outcomesByLog, seen, log, path);
  }

  /**
   * The same with what happens to the pieces.
   *
   * @param forecast by the forecast
   * @param byLog by a log
   */
  public ForecastJson withOutcomes(List<Outcome> forecast, List<Outcome> byLog) {
    return with(OutcomeJson.of(forecast), OutcomeJson.of(byLog), seen, log, plot);
  }

  /** The same with what the display said. */
  public ForecastJson withSeen(Optional<RunningFiring.Update> update) {
    return with(outcomes, outcomesByLog, update.map(ForecastJson::seen), log, plot);
  }

  /** The same forecast with another of what was made of it later. */
  private ForecastJson with(
      List<OutcomeJson> outcomes,
      List<OutcomeJson> outcomesByLog,
      Optional<SeenJson> seen,
      Optional<LogJson> log,
      Optional<String> plot) {
    return new ForecastJson(
        schedule,
        kiln,
        segments,
        endSeconds,
        energyKilowattHours,
        cost,
        work,
        pieces,
        outcomes,
        outcomesByLog,
        start,
        findings,
        seen,
        log,
        plot);
  }

  private static SeenJson seen(RunningFiring.Update update) {
    return new SeenJson(
        update.verdict().name().toLowerCase(Locale.ROOT).replace('_', '-'),
        update.readings().stream()
            .map(
                r ->
                    new ReadingJson(
                        r.seconds(), r.celsius(), BandJson.of(r.expectedCelsius()), r.inside()))
            .toList());
  }

  /**
   * {@code reachedShare}: how much of the ensemble reaches the target, 0 to 1; {@code
   * arrivedSeconds}: when the display is there, null where it is not in every case; {@code
   * reachedSeconds} and {@code endSeconds}: null where {@code reachedShare} is below 0.5; below
   * 0.95 their high is when the simulation gave up.
   */
  public record SegmentJson(
      int index,
      Optional<BandJson> reachedSeconds,
      Optional<BandJson> arrivedSeconds,
      Optional<BandJson> endSeconds,
      double saturatedSeconds,
      double behindSeconds,
      double reachedShare) {}

  /** In the currency's unit; {@code shares} splits the median by price. */
  public record CostJson(
      String currency, double low, double median, double high, List<ShareJson> shares) {}

  /** Energy bought at one price. */
  public record ShareJson(double pricePerKilowattHour, double kilowattHours) {}

  /** {@code drySeconds} and {@code readySeconds} are null where not every case gets there. */
  public record WorkJson(
      int mould,
      String probe,
      Optional<BandJson> drySeconds,
      Optional<BandJson> readySeconds,
      BandJson atEndCelsius) {}

  /** The record of a forecast and what was made of it. */
  public static ForecastJson of(
      Forecast forecast,
      Optional<CostEstimate> cost,
      Optional<StartPlan> start,
      List<Finding> findings) {
    Ending ending = Ending.of(forecast);
    return new ForecastJson(
        forecast.schedule(),
        forecast.kiln(),
        forecast.segments().stream()
            .map(
                s ->
                    new SegmentJson(
                        s.index(),
                        told(s, s.reachedSeconds()),
                        s.arrivedSeconds().map(BandJson::of),
                        told(s, s.endSeconds()),
                        s.saturatedSeconds(),
                        s.behindSeconds(),
                        s.reachedShare()))
            .toList(),
        ending.hasMedian() ? Optional.of(BandJson.of(ending.seconds())) : Optional.empty(),
        BandJson.of(forecast.energyKilowattHours()),
        cost.map(ForecastJson::cost),
        forecast.work().stream()
            .map(
                w ->
                    new WorkJson(
                        w.mould(),
                        w.probe(),
                        w.drySeconds().map(BandJson::of),
                        w.readySeconds().map(BandJson::of),
                        BandJson.of(w.atEndCelsius())))
            .toList(),
        PieceJson.of(forecast.pieces()),
        List.of(),
        List.of(),
        start.map(s -> StartJson.of(s, ending)),
        FindingJson.of(findings),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  private static Optional<BandJson> told(SegmentForecast segment, Band seconds) {
    return Ending.hasMedian(segment) ? Optional.of(BandJson.of(seconds)) : Optional.empty();
  }

  private static CostJson cost(CostEstimate cost) {
    return new CostJson(
        cost.currency(),
        cost.cost().low(),
        cost.cost().median(),
        cost.cost().high(),
        cost.shares().stream()
            .map(s -> new ShareJson(s.pricePerKilowattHour(), s.kilowattHours()))
            .toList());
  }
}
