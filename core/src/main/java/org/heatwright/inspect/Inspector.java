package org.heatwright.inspect;

import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.heatwright.forecast.Forecast;

/**
 * Looks a schedule over before the heat: what would happen, and what to do about it.
 *
 * <p>It judges the schedule on paper and by the forecast it is given; what the inside of the work
 * does is the forecast's business.
 */
public final class Inspector {

  private static final Comparator<Finding> GRAVEST_FIRST =
      Comparator.comparing(Finding::severity).thenComparingInt(f -> f.segment().orElse(0));

  private Inspector() {}

  /**
   * All findings, the gravest first, then by segment. Never throws for what a person typed.
   *
   * @param inspection the schedule and what is known about where it runs
   */
  public static List<Finding> inspect(Inspection inspection) {
    Walk walk = new Walk(inspection);
    List<Finding> findings = new ArrayList<>(UnitMistake.find(inspection, walk));
    inspection
        .kiln()
        .ifPresent(k -> findings.addAll(KilnChecks.find(k, walk, inspection.schedule())));
    inspection
        .demands()
        .ifPresent(d -> findings.addAll(WorkChecks.find(walk, inspection.schedule(), d)));
    inspection.keypad().ifPresent(k -> findings.addAll(KilnChecks.find(k, inspection.schedule())));
    findings.addAll(ScheduleChecks.find(walk, inspection.keypad().map(k -> k.hold().max())));
    inspection
        .forecast()
        .ifPresent(f -> findings.addAll(ForecastChecks.find(f, inspection.kiln(), walk)));
    inspection
        .forecast()
        .filter(Forecast::reachesEveryTarget)
        .ifPresent(
            f ->
                inspection
                    .demands()
                    .ifPresent(
                        d -> {
                          findings.addAll(InsideChecks.find(f, d.cores(), walk));
                          findings.addAll(
                              WindowChecks.find(f, d.windows(), inspection.kiln(), walk));
                        }));
    inspection.kiln().ifPresent(k -> findings.add(CoupleChecks.find(k, inspection.schedule())));
    findings.replaceAll(finding -> isAboutUnits(finding) ? finding : finding.in(walk.unit()));
    findings.sort(GRAVEST_FIRST);
    return List.copyOf(findings);
  }

  /**
   * What stops a firing that is to be ready by a time and for which {@link
   * org.heatwright.forecast.StartPlanner#readyBy} has no start.
   */
  public static Finding noStart(Forecast forecast, ZonedDateTime readyBy) {
    return ForecastChecks.noStart(forecast, readyBy);
  }

  /** What must be told in both units, or in the keypad's. */
  private static boolean isAboutUnits(Finding finding) {
    return finding.code().startsWith("unit-") || finding.code().startsWith("keypad-");
  }
}
