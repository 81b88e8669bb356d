package org.heatwright.inspect;

import static org.heatwright.inspect.Walk.finding;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.Overshoot;
import org.heatwright.forecast.SegmentForecast;
import org.heatwright.inspect.Demands.Window;
import org.heatwright.kiln.Kiln;
import org.heatwright.material.Origin;

/** Holds that must stay within a window, against how far the kiln overshoots. */
final class WindowChecks {

  /**
   * A kiln that overshoots by more than a third of its target is not fit for so low a heat. {@code
   * practice:} most small kilns overshoot badly at low targets; the third is an estimate.
   */
  private static final double OVERSHOOTS_A_TARGET = 3;

  /** A kiln that likely swings less is even enough for anything, K. */
  private static final double EVEN_KELVINS = 3;

  private WindowChecks() {}

  static List<Finding> find(
      Forecast forecast, List<Window> windows, Optional<Kiln> kiln, Walk walk) {
    List<Finding> findings = new ArrayList<>();
    for (SegmentForecast segment : forecast.segments()) {
      Walk.Step step = walk.steps().get(segment.index() - 1);
      for (Window window : windows) {
        if (segment.overshoot().isPresent() && window.range().contains(step.segment().target())) {
          find(segment.overshoot().get(), window, kiln, step, walk, findings);
        }
      }
    }
    return findings;
  }

  private static void find(
      Overshoot overshoot,
      Window window,
      Optional<Kiln> kiln,
      Walk.Step step,
      Walk walk,
      List<Finding> findings) {
    double target = step.segment().target().celsius();
    double above = Math.max(0, overshoot.above().high());
    double below = Math.max(0, overshoot.below().high());
    double width = window.range().to().celsius() - window.range().from().celsius();
    double roomAbove = window.range().to().celsius() - target;
    double roomBelow = target - window.range().from().celsius();
    String range =
        "%s to %s of %s"
            .formatted(
                Wording.of(window.range().from(), walk.unit()),
                Wording.of(window.range().to(), walk.unit()),
                window.what());
    if (above > Math.max(width, EVEN_KELVINS)) {
      findings.add(
          finding(
              Severity.WARN,
              "overshoot-over-window",
              step,
              "%s may overshoot %s by %s on its display, more than the window %s is wide: %s. Put the work on a heavy block, or use another kiln."
                  .formatted(
                      name(kiln), walk.target(step), kelvins(above, walk), range, window.beyond()),
              origin(kiln, window)));
    } else if (above > Math.max(roomAbove, EVEN_KELVINS)) {
      findings.add(
          finding(
              Severity.WARN,
              "overshoot-out-of-window",
              step,
              "%s may overshoot %s by %s on its display, beyond the window %s: %s. Aim lower, put the work on a heavy block, or load it once the display is steady."
                  .formatted(
                      name(kiln), walk.target(step), kelvins(above, walk), range, window.beyond()),
              origin(kiln, window)));
    } else if (below > Math.max(roomBelow, EVEN_KELVINS)) {
      findings.add(
          finding(
              Severity.NOTE,
              "swings-below-window",
              step,
              "%s may fall %s under %s on its display, below the window %s: %s."
                  .formatted(
                      name(kiln), kelvins(below, walk), walk.target(step), range, window.below()),
              origin(kiln, window)));
    }
    double rise = target - step.from().celsius();
    if (above > EVEN_KELVINS && step.rises() && rise < OVERSHOOTS_A_TARGET * above) {
      findings.add(
          finding(
              Severity.WARN,
              "target-too-low-for-kiln",
              step,
              "%s is only %s above the start, less than three times the %s by which %s may overshoot: it is not fit for so low a heat. A heavy block evens it out, an oven does it better."
                  .formatted(
                      walk.target(step), kelvins(rise, walk), kelvins(above, walk), name(kiln)),
              origin(kiln, window)));
    }
  }

  private static String name(Optional<Kiln> kiln) {
    return kiln.map(Kiln::name).orElse("The kiln");
  }

  private static Origin origin(Optional<Kiln> kiln, Window window) {
    boolean learned = kiln.flatMap(Kiln::learned).isPresent();
    return Origin.derived(
        "the forecast of a kiln %s; window: %s"
            .formatted(
                learned ? "learned from its logs" : "known by its nameplate alone",
                window.origin().words()));
  }

  private static String kelvins(double kelvins, Walk walk) {
    return Wording.differenceUp(kelvins, walk.unit());
  }
}
