package org.heatwright.forecast;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.FiringRun;
import org.heatwright.kiln.KilnParameters;
import org.heatwright.kiln.StemLoss;
import org.heatwright.mould.BodySolver;
import org.heatwright.mould.MouldFiring;
import org.heatwright.mould.Surroundings;
import org.heatwright.piece.FollowedPiece;
import org.heatwright.piece.SlabHistory;
import org.heatwright.schedule.Segment;
import org.heatwright.units.Temperature;

/**
 * Solves the inside of every kind of mould, and every followed piece, in simulated kilns, driven by
 * what surrounds the load in them, with the stem of the thermocouple as uncertain as it is ({@link
 * StemLoss}).
 */
final class InsideSolver {

  /** In so many draws: each takes as long as several kilns. */
  static final int DRAWS = 16;

  private static final double SAMPLE_SECONDS = 60;
  private static final double LEAST_SAMPLE_SECONDS = 2;

  /** Surroundings are kept where they bend by this, K. */
  private static final double BEND_KELVINS = 0.4;

  private InsideSolver() {}

  /**
   * What happens in the work.
   *
   * @param moulds one entry a kind of mould
   * @param pieces one entry a followed piece
   */
  record Inside(List<InsideForecast> moulds, List<PieceForecast> pieces) {}

  /** In kilns that do as they were simulated. */
  static Inside solve(
      ForecastRequest request,
      List<KilnParameters> draws,
      List<FiringRun> runs,
      double horizonSeconds,
      BodySolver.Accuracy accuracy,
      EnsembleProgress progress) {
    return solve(
        request,
        draws,
        runs,
        Collections.nCopies(draws.size(), second -> 0),
        horizonSeconds,
        accuracy,
        progress);
  }

  /**
   * In kilns that did otherwise.
   *
   * @param request the firing
   * @param draws one kiln a draw
   * @param runs the run of each
   * @param beyond by how much the real display was above the run's, K, over seconds, one a draw
   * @param horizonSeconds how far to solve, s
   * @param accuracy of the moulds' section
   * @param progress is told of each mould and piece in each kiln
   */
  static Inside solve(
      ForecastRequest request,
      List<KilnParameters> draws,
      List<FiringRun> runs,
      List<DoubleUnaryOperator> beyond,
      double horizonSeconds,
      BodySolver.Accuracy accuracy,
      EnsembleProgress progress) {
    if (request.charge().moulds().isEmpty() && request.charge().followed().isEmpty()) {
      return new Inside(List.of(), List.of());
    }
    Temperature room = request.conditions().room().orElse(request.kiln().room());
    List<Segment> segments = request.schedule().segments();
    double target = segments.get(segments.size() - 1).target().celsius();
    List<InsideForecast.Day> days =
        IntStream.range(0, draws.size())
            .mapToObj(
                d ->
                    new InsideForecast.Day(
                        runs.get(d).endSeconds(), StemLoss.draw(d).kelvins(target, room.celsius())))
            .toList();
    double step = sampleSeconds(request.conditions());
    List<Surroundings> around =
        IntStream.range(0, draws.size())
            .parallel()
            .mapToObj(
                d ->
                    around(
                        runs.get(d),
                        beyond.get(d),
                        StemLoss.draw(d),
                        room.celsius(),
                        horizonSeconds,
                        step))
            .toList();
    Temperature start = request.conditions().start().orElse(room);
    List<List<MouldFiring>> firings =
        inEach(
            request.charge().moulds(),
            draws.size(),
            progress,
            EnsembleProgress.Part.MOULDS,
            (mould, d) ->
                MouldFiring.of(
                    MouldFiring.Setting.of(
                        mould, request.charge().investment().orElseThrow(), draws.get(d), d),
                    start,
                    around.get(d),
                    accuracy));
    List<InsideForecast> moulds = new ArrayList<>();
    for (List<MouldFiring> of : firings) {
      moulds.add(new InsideForecast(moulds.size() + 1, of, days));
    }
    List<FollowedPiece> followed = request.charge().followed();
    List<List<SlabHistory>> histories =
        inEach(
            followed,
            draws.size(),
            progress,
            EnsembleProgress.Part.PIECES,
            (piece, d) ->
                SlabHistory.of(piece.drawn(draws.get(d), d), around.get(d), start, horizonSeconds));
    List<PieceForecast> pieces =
        IntStream.range(0, followed.size())
            .mapToObj(i -> new PieceForecast(followed.get(i), histories.get(i), days))
            .toList();
    return new Inside(moulds, pieces);
  }

  /** Every one of them in every draw, side by side: by what it is of, then by draw. */
  private static <W, R> List<List<R>> inEach(
      List<W> works,
      int draws,
      EnsembleProgress progress,
      EnsembleProgress.Part part,
      OneDraw<W, R> solved) {
    EnsembleCount count = new EnsembleCount(progress, part, works.size() * draws);
    List<R> flat =
        IntStream.range(0, works.size() * draws)
            .parallel()
            .mapToObj(i -> count.one(solved.of(works.get(i / draws), i % draws)))
            .toList();
    return IntStream.range(0, works.size())
        .mapToObj(w -> flat.subList(w * draws, (w + 1) * draws))
        .toList();
  }

  /** Something of the work in one draw. */
  private interface OneDraw<W, R> {
    R of(W work, int draw);
  }

  private static Surroundings around(
      FiringRun run,
      DoubleUnaryOperator beyond,
      StemLoss stem,
      double roomCelsius,
      double horizonSeconds,
      double stepSeconds) {
    DoubleUnaryOperator more =
        second -> {
          double off = beyond.applyAsDouble(second);
          return off + stem.kelvins(run.readingCelsiusAt(second) + off, roomCelsius);
        };
    return Surroundings.sampled(
            horizonSeconds,
            stepSeconds,
            second -> run.airCelsiusAt(second) + more.applyAsDouble(second),
            second -> run.radiantCelsiusAt(second) + more.applyAsDouble(second))
        .thinned(BEND_KELVINS);
  }

  /** Fine enough for the shortest thing that happens to the kiln. */
  private static double sampleSeconds(FiringConditions conditions) {
    double shortest =
        conditions.disturbances().stream()
            .mapToDouble(FiringConditions.Disturbance::lengthSeconds)
            .min()
            .orElse(Double.POSITIVE_INFINITY);
    return Math.max(LEAST_SAMPLE_SECONDS, Math.min(SAMPLE_SECONDS, shortest / 4));
  }
}
