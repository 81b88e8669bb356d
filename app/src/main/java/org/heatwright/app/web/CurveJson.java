package org.heatwright.app.web;

import java.time.Instant;
import java.time.ZonedDateTime;
import java.time.zone.ZoneOffsetTransition;
import java.time.zone.ZoneRules;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * {@link CurveData} as the page's script takes it: words for kinds, and the clock as offsets, so
 * that the script shows the kiln's clock whatever clock the browser has.
 *
 * @param unit "C" or "F"
 */
record CurveJson(
    String name,
    String summary,
    String unit,
    Optional<Clock> clock,
    boolean brief,
    double lengthSeconds,
    double bottomCelsius,
    double topCelsius,
    Optional<CurveData.Band> band,
    List<Line> lines,
    List<Stretch> stretches,
    List<CurveData.Limit> limits,
    List<CurveData.Part> segments,
    List<Corner> corners,
    Optional<Double> nowSeconds,
    boolean sketch) {

  private static final long DAY_SECONDS = 86_400;

  /**
   * The clock on the wall.
   *
   * @param startMillis second 0, ms since 1970
   * @param offsets from UTC, the earliest first; the second begins with daylight saving, and so on
   */
  record Clock(long startMillis, List<Offset> offsets) {

    static Clock of(ZonedDateTime start, double lengthSeconds) {
      ZoneRules rules = start.getZone().getRules();
      Instant from = start.toInstant().minusSeconds(DAY_SECONDS);
      Instant to = start.toInstant().plusSeconds((long) lengthSeconds + DAY_SECONDS);
      List<Offset> offsets = new ArrayList<>();
      offsets.add(new Offset(-DAY_SECONDS, rules.getOffset(from).getTotalSeconds()));
      ZoneOffsetTransition next = rules.nextTransition(from);
      while (next != null && next.getInstant().isBefore(to)) {
        offsets.add(
            new Offset(
                next.toEpochSecond() - start.toInstant().toEpochMilli() / 1000.0,
                next.getOffsetAfter().getTotalSeconds()));
        next = rules.nextTransition(next.getInstant());
      }
      return new Clock(start.toInstant().toEpochMilli(), offsets);
    }
  }

  /** From when which offset from UTC is in force. */
  record Offset(double fromSeconds, double offsetSeconds) {}

  /** A line. */
  record Line(String role, String name, String says, List<Double> seconds, List<Double> celsius) {}

  /** A stretch of time. */
  record Stretch(String during, String label, double fromSeconds, double toSeconds) {}

  /** Two corners of a segment. */
  record Corner(
      int segment,
      double fromSeconds,
      double reachedSeconds,
      double endSeconds,
      double fromCelsius,
      double targetCelsius,
      String unit,
      double targetStep,
      Optional<Double> rateStep,
      Optional<Double> rampStepMinutes,
      double holdStepMinutes) {}

  /**
   * @param summary the curves in words
   */
  static CurveJson of(CurveData data, String summary) {
    return new CurveJson(
        data.name(),
        summary,
        String.valueOf(data.unit().letter()),
        data.start().map(s -> Clock.of(s, data.lengthSeconds())),
        data.brief(),
        data.lengthSeconds(),
        data.bottomCelsius(),
        data.topCelsius(),
        data.band(),
        data.lines().stream()
            .map(l -> new Line(l.role().word(), l.name(), l.says(), l.seconds(), l.celsius()))
            .toList(),
        data.stretches().stream()
            .map(s -> new Stretch(s.during().word(), s.label(), s.fromSeconds(), s.toSeconds()))
            .toList(),
        data.limits(),
        data.segments(),
        data.corners().stream()
            .map(
                c ->
                    new Corner(
                        c.segment(),
                        c.fromSeconds(),
                        c.reachedSeconds(),
                        c.endSeconds(),
                        c.fromCelsius(),
                        c.targetCelsius(),
                        String.valueOf(c.unit().letter()),
                        c.targetStep().doubleValue(),
                        c.rateStep().map(Number::doubleValue),
                        c.rampStepMinutes().map(Number::doubleValue),
                        c.holdStepMinutes().doubleValue()))
            .toList(),
        data.nowSeconds(),
        data.sketch());
  }
}
