package org.heatwright.forecast;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.heatwright.kiln.FiringConditions.Disturbance;
import org.heatwright.kiln.FiringRun;
import org.heatwright.kiln.FiringSimulation;
import org.heatwright.kiln.KilnParameters;
import org.heatwright.mould.MouldFiring;

/**
 * What an open door costs the moulds that stay in the kiln, and its display: the same kilns through
 * the same firing, with the door opened once and without.
 *
 * <p>Limits: the mould that is drawn stays in the simulated kiln; the door is a black hole to the
 * room with a share of the air exchange, and the elements are off while it is open.
 *
 * @param atSeconds when the door opens, s from the program's start
 * @param openSeconds how long it stays open, s
 * @param displayFallKelvins by how much the display falls at most below what a switch lets it fall
 *     to, K
 * @param displayBackSeconds from the opening until the display is back, s; empty if it is not in
 *     every draw before the program ends
 * @param moulds one entry a kind
 */
public record DoorCost(
    double atSeconds,
    double openSeconds,
    Band displayFallKelvins,
    Optional<Band> displayBackSeconds,
    List<Mould> moulds) {

  /**
   * What one kind of mould feels.
   *
   * @param mould 1-based position in the list of moulds
   * @param faceFallKelvins by how much the outer face falls at most, at mid height, K
   * @param coreFallKelvins by how much the core falls at most before the program ends, K
   * @param evenSeconds from the opening until the whole inside is within {@link
   *     Forecaster#READY_WITHIN_KELVINS} of the chamber at the last target again, to the end, s: 0
   *     where it always is; empty if it is not in every draw
   */
  public record Mould(
      int mould, Band faceFallKelvins, Band coreFallKelvins, Optional<Band> evenSeconds) {}

  /** A display is back this near to what it would have said, K. Our choice. */
  private static final double BACK_KELVINS = 3;

  private static final double LOOK_SECONDS = 5;

  public DoorCost {
    moulds = List.copyOf(moulds);
  }

  /**
   * Simulates it.
   *
   * @param asked the firing
   * @param atSeconds when the door opens, s; before the program ends in every draw
   * @param openSeconds how long, s, above zero
   * @throws IllegalArgumentException if the program may be over while the door is open
   */
  public static DoorCost of(ForecastRequest asked, double atSeconds, double openSeconds) {
    // One more opening brings no piece, and does not make a session of two looks.
    ForecastRequest request =
        asked.withConditions(SessionPieces.stated(asked.conditions(), asked.charge()));
    ForecastRequest opened =
        request.withConditions(
            request
                .conditions()
                .with(new Disturbance(Disturbance.Kind.DOOR_OPEN, atSeconds, openSeconds)));
    List<KilnParameters> draws =
        request
            .kiln()
            .beliefs()
            .ensemble(
                request.kiln(), Math.min(InsideSolver.DRAWS, request.draws()), request.seed());
    List<FiringRun> shut = runs(request, draws);
    List<FiringRun> open = runs(opened, draws);
    double end =
        IntStream.range(0, draws.size())
            .mapToDouble(d -> Math.min(shut.get(d).endSeconds(), open.get(d).endSeconds()))
            .min()
            .orElseThrow();
    if (!(atSeconds >= 0 && atSeconds + openSeconds < end)) {
      throw new IllegalArgumentException(
          "The door is open from %s s for %s s, but the program may end at %s s."
              .formatted(atSeconds, openSeconds, end));
    }
    double[] falls = new double[draws.size()];
    double[] back = new double[draws.size()];
    for (int d = 0; d < falls.length; d++) {
      display(shut.get(d), open.get(d), atSeconds, end, d, falls, back);
    }
    List<InsideForecast> insideShut =
        InsideSolver.solve(request, draws, shut, end, MouldFiring.QUICK, EnsembleProgress.UNTOLD)
            .moulds();
    List<InsideForecast> insideOpen =
        InsideSolver.solve(opened, draws, open, end, MouldFiring.QUICK, EnsembleProgress.UNTOLD)
            .moulds();
    double target =
        request
            .schedule()
            .segments()
            .get(request.schedule().segments().size() - 1)
            .target()
            .celsius();
    List<Mould> moulds = new ArrayList<>();
    for (int m = 0; m < insideShut.size(); m++) {
      moulds.add(mould(insideShut.get(m), insideOpen.get(m), target, atSeconds, end));
    }
    return new DoorCost(atSeconds, openSeconds, Band.of(falls), Band.ofFinite(back), moulds);
  }

  private static List<FiringRun> runs(ForecastRequest request, List<KilnParameters> draws) {
    return EnsembleRuns.through(request, draws, EnsembleProgress.UNTOLD).stream()
        .map(FiringSimulation::run)
        .toList();
  }

  private static void display(
      FiringRun shut,
      FiringRun open,
      double atSeconds,
      double end,
      int draw,
      double[] falls,
      double[] back) {
    double[] floor = floor(shut, atSeconds, end);
    double fall = 0;
    double since = 0;
    for (int i = 0; i < floor.length; i++) {
      double second = atSeconds + i * LOOK_SECONDS;
      double lower = floor[i] - open.readingCelsiusAt(second);
      fall = Math.max(fall, lower);
      if (lower > BACK_KELVINS) {
        since = second + LOOK_SECONDS - atSeconds;
      }
    }
    falls[draw] = fall;
    back[draw] = atSeconds + since > end ? Double.POSITIVE_INFINITY : since;
  }

  /**
   * How low the display may be without the door, by the looks from its opening on, °C. A switch
   * makes it fall by itself, and the door changes when: so in a hold it is the lowest that the
   * display comes to later, or came to since it was at the target.
   */
  private static double[] floor(FiringRun shut, double atSeconds, double end) {
    double[] floor = new double[(int) ((end - atSeconds) / LOOK_SECONDS) + 1];
    double[] setpoint = new double[floor.length];
    for (int i = 0; i < floor.length; i++) {
      double second = atSeconds + i * LOOK_SECONDS;
      floor[i] = shut.lowestReadingCelsius(second, second);
      setpoint[i] = shut.setpointCelsiusAt(second);
    }
    double[] before = new double[floor.length];
    boolean reached = false;
    for (int i = 0; i < floor.length; i++) {
      boolean held = i > 0 && setpoint[i] == setpoint[i - 1];
      reached = held && reached || floor[i] >= setpoint[i];
      before[i] = held && reached ? Math.min(before[i - 1], floor[i]) : floor[i];
    }
    for (int i = floor.length - 2; i >= 0; i--) {
      if (setpoint[i] == setpoint[i + 1]) {
        floor[i] = Math.min(floor[i], floor[i + 1]);
      }
    }
    for (int i = 0; i < floor.length; i++) {
      floor[i] = Math.min(floor[i], before[i]);
    }
    return floor;
  }

  private static Mould mould(
      InsideForecast shut, InsideForecast open, double target, double atSeconds, double end) {
    int n = shut.draws().size();
    double[] face = new double[n];
    double[] core = new double[n];
    double[] even = new double[n];
    for (int d = 0; d < n; d++) {
      MouldFiring without = shut.draws().get(d);
      MouldFiring with = open.draws().get(d);
      for (double second = atSeconds; second <= end; second += LOOK_SECONDS) {
        face[d] =
            Math.max(face[d], without.surfaceCelsiusAt(second) - with.surfaceCelsiusAt(second));
        core[d] = Math.max(core[d], without.centreCelsiusAt(second) - with.centreCelsiusAt(second));
      }
      double chamber = target + open.days().get(d).aboveDisplayKelvins();
      double since =
          with.staysWithinSeconds(
              chamber - Forecaster.READY_WITHIN_KELVINS,
              chamber + Forecaster.READY_WITHIN_KELVINS,
              end);
      even[d] = Math.max(0, since - atSeconds);
    }
    return new Mould(shut.mould(), Band.of(face), Band.of(core), Band.ofFinite(even));
  }
}
