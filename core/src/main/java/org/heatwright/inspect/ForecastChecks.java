package org.heatwright.inspect;

import static org.heatwright.inspect.Walk.finding;

import java.time.Duration;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.ClockWords;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.Forecaster;
import org.heatwright.forecast.SegmentForecast;
import org.heatwright.forecast.WorkForecast;
import org.heatwright.kiln.Kiln;
import org.heatwright.material.Origin;
import org.heatwright.schedule.HourMinute;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;

/** What the forecast says against a schedule: targets not reached, rates not followed. */
final class ForecastChecks {

  /** A kiln this little behind is on time, s. {@code estimate:} */
  private static final double ON_TIME_SECONDS = 600;

  /** So is one that is behind by this share of the ramp. {@code estimate:} */
  private static final double ON_TIME_SHARE = 0.1;

  /** A hold that loses more than this share to heating is not the hold that was meant. */
  private static final double MOST_OF_HOLD = 0.4;

  /** A display this near the target has arrived, K. */
  private static final double NEAR_KELVINS = 10;

  private static final Origin FORECAST = Origin.derived("the forecast for this kiln and load");

  private ForecastChecks() {}

  static List<Finding> find(Forecast forecast, Optional<Kiln> kiln, Walk walk) {
    List<Finding> findings = new ArrayList<>();
    double soFar = 1;
    for (SegmentForecast segment : forecast.segments()) {
      Walk.Step step = walk.steps().get(segment.index() - 1);
      if (segment.reachedShare() < soFar) {
        // A segment after one that was not reached is not to blame.
        soFar = segment.reachedShare();
        findings.add(notReached(segment, step, walk));
      } else if (segment.reachedShare() == 1) {
        behind(segment, kiln, step, walk).ifPresent(findings::add);
        goesOnWithout(forecast, segment, step, walk)
            .or(() -> holdCountsWhileHeating(forecast, segment, kiln, step, walk))
            .ifPresent(findings::add);
      }
    }
    if (soFar == 1) {
      work(forecast, walk, findings);
    }
    return findings;
  }

  /** See {@link Inspector#noStart}. */
  static Finding noStart(Forecast forecast, ZonedDateTime readyBy) {
    double hundredths = Math.floor(forecast.endsShare() * 100);
    String by = ClockWords.moment(readyBy);
    return finding(
        Severity.STOP,
        "no-start",
        hundredths < 1
            ? "No start can be reckoned for ready by %s: the kiln gets there in hardly any likely case."
                .formatted(by)
            : "No start can be reckoned for ready by %s: the kiln gets there in %.0f of 100 likely cases only."
                .formatted(by, hundredths),
        FORECAST);
  }

  /** Work that is not dry, or not at its temperature, when the program ends. */
  private static void work(Forecast forecast, Walk walk, List<Finding> findings) {
    Walk.Step last = walk.steps().get(walk.steps().size() - 1);
    for (WorkForecast place : forecast.work()) {
      if (place.drySeconds().isEmpty()) {
        findings.add(
            finding(
                Severity.STOP,
                "work-not-dry",
                last,
                "Mould %d may still hold water inside when the program ends: molten metal on water explodes. Dry longer or go hotter."
                    .formatted(place.mould()),
                FORECAST));
      } else if (place.readySeconds().isEmpty()) {
        findings.add(
            finding(
                Severity.WARN,
                "work-not-ready",
                last,
                "When the program ends, the core of mould %d may be anything from %s to %s, more than %.0f K from the last target. Make the last hold longer."
                    .formatted(
                        place.mould(),
                        celsius(place.atEndCelsius().low(), walk),
                        celsius(place.atEndCelsius().high(), walk),
                        Forecaster.READY_WITHIN_KELVINS),
                FORECAST));
      }
    }
  }

  private static String celsius(double value, Walk walk) {
    return Wording.of(Temperature.ofCelsius(Math.rint(value)), walk.unit());
  }

  private static Finding notReached(SegmentForecast segment, Walk.Step step, Walk walk) {
    double hundredths = Math.floor(segment.reachedShare() * 100);
    String cases =
        hundredths < 1
            ? "In hardly any likely case"
            : "In only %.0f of 100 likely cases".formatted(hundredths);
    return finding(
        segment.reachedShare() < 0.5 ? Severity.STOP : Severity.WARN,
        "target-not-reached",
        step,
        step.rises()
            ? "%s does the kiln reach %s: else it stays at full power and the program never goes on. Lower the target or the load, or check the elements."
                .formatted(cases, walk.target(step))
            : "%s does the kiln cool to %s in time. Allow more time, or open the vent if the work stands it."
                .formatted(cases, walk.target(step)),
        FORECAST);
  }

  private static Optional<Finding> behind(
      SegmentForecast segment, Optional<Kiln> kiln, Walk.Step step, Walk walk) {
    Optional<Duration> paper = step.segment().ramp().rate().map(r -> r.timeFor(change(step)));
    if (paper.isEmpty()) {
      return Optional.empty();
    }
    double paperSeconds = paper.get().toMillis() / 1000.0;
    double behind = segment.behindSeconds();
    if (behind <= Math.max(ON_TIME_SECONDS, ON_TIME_SHARE * paperSeconds)) {
      return Optional.empty();
    }
    boolean holdWaits = kiln.map(ForecastChecks::holdWaits).orElse(false);
    HeatingRate possible =
        HeatingRate.ofKelvinsPerHour(Math.abs(step.wayKelvins()) / (paperSeconds + behind) * 3600);
    String asked = Wording.of(step.segment().ramp(), walk.unit());
    String follows = "about " + Wording.of(possible, walk.unit());
    String effect =
        holdWaits
            ? "everything after it comes %s later than on paper".formatted(minutes(behind))
            : "its hold begins on the clock, so %s of it is lost".formatted(minutes(behind));
    return Optional.of(
        finding(
            holdWaits ? Severity.NOTE : Severity.WARN,
            step.rises() ? "kiln-falls-behind" : "kiln-cools-slower",
            step,
            step.rises()
                ? "The kiln cannot climb to %s at %s (%s at full power, %s): %s. Ask for a slower ramp%s."
                    .formatted(
                        walk.target(step),
                        asked,
                        minutes(segment.saturatedSeconds()),
                        follows,
                        effect,
                        holdWaits ? " or plan for it" : " or a longer hold")
                : "The closed kiln cannot cool to %s at %s (%s): %s. Ask for a slower ramp%s."
                    .formatted(
                        walk.target(step),
                        asked,
                        follows,
                        effect,
                        holdWaits ? " or plan for it" : " or a longer hold"),
            FORECAST));
  }

  /** A program that runs by the clock goes on, wherever the kiln is. */
  private static Optional<Finding> goesOnWithout(
      Forecast forecast, SegmentForecast segment, Walk.Step step, Walk walk) {
    boolean noneMeant = !step.rises() && step.segment().hold().isZero();
    if (segment.arrivedSeconds().isPresent() || noneMeant) {
      return Optional.empty();
    }
    Band display = forecast.trace().displayCelsiusAt(segment.endSeconds().median());
    double target = step.segment().target().celsius();
    double likelyShort = step.rises() ? target - display.median() : display.median() - target;
    double mostShort = step.rises() ? target - display.low() : display.high() - target;
    if (mostShort <= NEAR_KELVINS) {
      return Optional.empty();
    }
    return Optional.of(
        finding(
            step.rises() && likelyShort > NEAR_KELVINS ? Severity.STOP : Severity.WARN,
            "goes-on-without-target",
            step,
            "The program runs by the clock and goes on before the kiln is at %s: when segment %d ends, the display says %s to %s. Ask for a slower ramp or a longer hold%s."
                .formatted(
                    walk.target(step),
                    segment.index(),
                    Wording.number(Math.rint(walk.unit().value(new Temperature(display.low())))),
                    Wording.of(
                        walk.unit()
                            .temperature(
                                Math.rint(walk.unit().value(new Temperature(display.high())))),
                        walk.unit()),
                    step.rises() ? ", lower the target, or check the elements" : ""),
            FORECAST));
  }

  /** On a fastest ramp with a hold that does not wait, the hold's clock runs at once. */
  private static Optional<Finding> holdCountsWhileHeating(
      Forecast forecast, SegmentForecast segment, Optional<Kiln> kiln, Walk.Step step, Walk walk) {
    if (step.segment().ramp().rate().isPresent()
        || !step.rises()
        || step.segment().hold().isZero()
        || kiln.map(ForecastChecks::holdWaits).orElse(true)) {
      return Optional.empty();
    }
    double holdSeconds = step.segment().hold().toSeconds();
    double heating = heatingSeconds(forecast, segment, step);
    if (heating <= ON_TIME_SECONDS) {
      return Optional.empty();
    }
    return Optional.of(
        finding(
            heating > MOST_OF_HOLD * holdSeconds ? Severity.WARN : Severity.NOTE,
            "hold-counts-while-heating",
            step,
            "The hold of %s at %s counts from the start of the ramp here, and the kiln needs about %s of it to get there: %s are left. If that is too short, make the hold longer."
                .formatted(
                    HourMinute.words(step.segment().hold()),
                    walk.target(step),
                    minutes(heating),
                    minutes(Math.max(0, holdSeconds - heating))),
            FORECAST));
  }

  /** From the start of the segment until the median display is near the target. */
  private static double heatingSeconds(Forecast forecast, SegmentForecast segment, Walk.Step step) {
    double begins =
        segment.index() == 1
            ? 0
            : forecast.segments().get(segment.index() - 2).endSeconds().median();
    double[] seconds = forecast.trace().seconds();
    double[] display = forecast.trace().medianCelsius();
    double near = step.segment().target().celsius() - NEAR_KELVINS;
    for (int i = 0; i < seconds.length; i++) {
      if (seconds[i] >= begins && display[i] >= near) {
        return seconds[i] - begins;
      }
    }
    return segment.endSeconds().median() - begins;
  }

  private static boolean holdWaits(Kiln kiln) {
    return kiln.control().holdWaitsWithin().isPresent();
  }

  private static TemperatureChange change(Walk.Step step) {
    return step.segment().target().minus(step.from());
  }

  private static String minutes(double seconds) {
    return HourMinute.words(Duration.ofSeconds(Math.round(seconds)));
  }
}
