package org.heatwright.app.json;

import java.util.List;
import java.util.Optional;
import org.heatwright.app.enamel.LoggedSession;
import org.heatwright.app.enamel.PieceHistory;
import org.heatwright.app.files.YamlValue;
import org.heatwright.work.EnamelOutlook;
import org.heatwright.work.Outcome;
import org.heatwright.work.enamel.LoggedPieces;
import org.heatwright.work.enamel.PullWindow;
import org.heatwright.work.enamel.Range;

/**
 * What {@code pieces --json} prints: what to expect of a piece, the firings of each log, and the
 * history of named pieces.
 */
public record PiecesJson(
    ExpectedJson expected,
    List<OutcomeJson> outcomes,
    List<SessionJson> sessions,
    List<HistoryJson> pieces) {

  /** The window, s from the door's shutting: null where it is not reached; the piece's curve. */
  public record ExpectedJson(
      double workingCelsius,
      Optional<Double> earliestSeconds,
      Optional<Double> likelySeconds,
      Optional<Double> latestSeconds,
      Optional<Double> overFiredSeconds,
      BandJson piecesAnHour,
      List<CurveJson> curve) {}

  /** One moment of a piece, nine times in ten between low and high. */
  public record CurveJson(
      double seconds,
      double lowCelsius,
      double medianCelsius,
      double highCelsius,
      double chamberCelsius) {}

  /** One log; {@code backSeconds} only where the display came back. */
  public record SessionJson(
      String log,
      double workingCelsius,
      BandJson fallKelvins,
      Optional<BandJson> backSeconds,
      List<FiringJson> firings) {}

  /** One firing; {@code flowDecades} is log10 of its flow over what gloss usually needs. */
  public record FiringJson(
      int number,
      String name,
      double inSeconds,
      double outSeconds,
      double staySeconds,
      double doorOpenSeconds,
      double fallKelvins,
      Optional<Double> backSeconds,
      boolean pulledBeforeRecovery,
      double hottestCelsius,
      double heatSeconds,
      double flowDecades,
      String look) {}

  /** One piece over all logs. */
  public record HistoryJson(
      String name, double heatSeconds, int usualMostFirings, List<FiredJson> firings) {}

  /** One of its firings: {@code number} counts in that log. */
  public record FiredJson(String log, int number, Optional<Integer> coat, String place) {}

  /** The record. */
  public static PiecesJson of(
      EnamelOutlook outlook,
      List<Outcome> outcomes,
      List<LoggedSession> sessions,
      List<PieceHistory> histories) {
    return new PiecesJson(
        expected(outlook),
        OutcomeJson.of(outcomes),
        sessions.stream().map(PiecesJson::session).toList(),
        histories.stream()
            .map(
                h ->
                    new HistoryJson(
                        h.name(),
                        h.heatSeconds(),
                        h.usualMost(),
                        h.firings().stream()
                            .map(
                                f ->
                                    new FiredJson(
                                        f.log(),
                                        f.firing().number(),
                                        f.coat().isPresent()
                                            ? Optional.of(f.coat().getAsInt())
                                            : Optional.empty(),
                                        f.place()))
                            .toList()))
            .toList());
  }

  private static ExpectedJson expected(EnamelOutlook outlook) {
    PullWindow window = outlook.window();
    return new ExpectedJson(
        outlook.working().celsius(),
        finite(window.earliestSeconds()),
        finite(window.likelySeconds()),
        finite(window.latestSeconds()),
        finite(window.overFiredSeconds()),
        band(outlook.piecesAnHour()),
        outlook.curve().rows().stream()
            .map(
                row ->
                    new CurveJson(
                        row.seconds(),
                        row.lowCelsius(),
                        row.medianCelsius(),
                        row.highCelsius(),
                        row.chamberCelsius()))
            .toList());
  }

  private static Optional<Double> finite(double seconds) {
    return Double.isFinite(seconds) ? Optional.of(seconds) : Optional.empty();
  }

  private static SessionJson session(LoggedSession session) {
    return new SessionJson(
        session.name(),
        session.workingCelsius(),
        band(session.pieces().fallKelvins()),
        session.pieces().backSeconds().map(PiecesJson::band),
        session.pieces().firings().stream().map(PiecesJson::firing).toList());
  }

  private static FiringJson firing(LoggedPieces.Firing firing) {
    return new FiringJson(
        firing.number(),
        firing.name(),
        firing.inSeconds(),
        firing.outSeconds(),
        firing.staySeconds(),
        firing.openSeconds(),
        firing.fallKelvins(),
        firing.backSeconds().isPresent()
            ? Optional.of(firing.backSeconds().getAsDouble())
            : Optional.empty(),
        firing.beforeRecovery(),
        firing.hottestCelsius(),
        firing.heatSeconds(),
        firing.fromGlossDecades(),
        YamlValue.word(firing.look()));
  }

  private static BandJson band(Range range) {
    return new BandJson(range.low(), range.median(), range.high());
  }
}
