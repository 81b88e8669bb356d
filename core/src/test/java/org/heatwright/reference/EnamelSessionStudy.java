package org.heatwright.reference;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.Charge;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.forecast.Forecaster;
import org.heatwright.kiln.Control;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.KilnQuantity;
import org.heatwright.learn.KilnLearner;
import org.heatwright.learn.Lesson;
import org.heatwright.learn.LoggedFiring;
import org.heatwright.schedule.Schedule;

/**
 * What enamelling sessions of random kilns teach, and whether faults are told of them. A session is
 * logged every ten seconds; the openings are told by the log or left to be read off it.
 */
final class EnamelSessionStudy {

  private EnamelSessionStudy() {}

  /** How long after the third opening's beginning the element opens, s. */
  private static final double ONSET_SECONDS = 30;

  /**
   * One session learned from.
   *
   * @param told whether the log says when the door was opened
   * @param fault what went wrong
   * @param found openings that were taken into account
   */
  record Outcome(
      EnamelSession session, boolean told, Optional<Fault> fault, int found, Lesson lesson) {

    boolean onOff() {
      return session.kiln().nameplate().control().kind() == Control.Kind.ON_OFF;
    }

    /** Whether the element that opened is told, as itself or as one of those it looks like. */
    boolean named() {
      return lesson.happened().stream()
          .anyMatch(
              one ->
                  one.what()
                      .names(org.heatwright.kiln.FiringConditions.Disturbance.Kind.ELEMENT_OPEN));
    }

    boolean taught() {
      return !lesson.firings().isEmpty();
    }
  }

  /** Sessions of as many kilns as asked for, from a seed on. */
  static List<EnamelSession> sessions(long from, int count) {
    List<EnamelSession> all = new ArrayList<>();
    for (long seed = from; all.size() < count; seed++) {
      EnamelSession session = EnamelSession.draw(seed);
      if (session.possible()) {
        all.add(session);
      }
    }
    return all;
  }

  static Outcome of(EnamelSession session, boolean told, boolean element) {
    Optional<Fault> fault =
        element
            ? Optional.of(Fault.elementOpen(session.openings().get(2)[0] + ONSET_SECONDS))
            : Optional.empty();
    LoggedFiring log = session.logged(session.fire(fault), told);
    return new Outcome(
        session,
        told,
        fault,
        log.session().openings().size(),
        KilnLearner.learn(session.kiln().nameplate(), List.of(log)));
  }

  /** Another firing in the same kiln, empty: by the nameplate, and by what a session taught. */
  static List<ForecastStudy.Outcome> forecasts(EnamelSession session, Lesson lesson) {
    long seed = session.seed();
    Kiln kiln = session.kiln().nameplate();
    Schedule next =
        SchedulePopulation.draw(SchedulePopulation.Family.SATURATED, session.kiln(), seed + 2000);
    FiringConditions day = SchedulePopulation.conditions(seed + 2000);
    double until =
        1.2
                * Forecaster.forecast(
                        ForecastRequest.of(next, kiln, Charge.empty())
                            .withConditions(day)
                            .withDraws(16))
                    .endSeconds()
                    .high()
            + 3600;
    RichFiring truth = session.kiln().fire(next, day, 0, Optional.empty(), seed + 7, until);
    if (!Double.isFinite(truth.programEndSeconds())) {
      return List.of(); // a target the kiln never reaches
    }
    List<RichFiring> repeats =
        List.of(
            session.kiln().fire(next, day, 0, Optional.empty(), seed + 100, until),
            session.kiln().fire(next, day, 0, Optional.empty(), seed + 101, until));
    List<ForecastStudy.Outcome> all = new ArrayList<>();
    for (Kiln one : List.of(kiln, kiln.withLearned(ForecastStudy.learned(lesson)))) {
      all.add(
          ForecastStudy.outcome(
              seed,
              one,
              !all.isEmpty(),
              SchedulePopulation.Family.SATURATED,
              next,
              day,
              truth,
              repeats));
    }
    return all;
  }

  /**
   * Prints a line a session. Arguments: first seed, how many; and any word to see what another
   * firing's forecast gains.
   */
  public static void main(String[] arguments) {
    Locale.setDefault(Locale.ROOT);
    for (EnamelSession session :
        sessions(Long.parseLong(arguments[0]), Integer.parseInt(arguments[1]))) {
      for (int kind = 0; kind < 4; kind++) {
        Outcome one = of(session, kind % 2 == 0, kind >= 2);
        Lesson lesson = one.lesson();
        Optional<Band> cold =
            lesson.openings().stream().flatMap(o -> o.coldKilojoules().stream()).findFirst();
        double heat = session.joulesPerKelvin() * 0.8;
        System.out.printf(
            "S %d %s %s %s openings %d of %d, fit %.1f K, faults %s, door %.2f sd %.2f piece %s true %.0f kJ%s%n",
            session.seed(),
            one.onOff() ? "on-off" : "pid",
            one.told() ? "told" : "read",
            one.fault().map(f -> "ELEMENT@%.0f".formatted(f.onsetSeconds() / 60)).orElse("clean"),
            one.found(),
            session.openings().size(),
            one.taught() ? lesson.misfitKelvins(0) : Double.NaN,
            lesson.happened().stream()
                .map(
                    h ->
                        "%s%s@%.1f gain %.0f"
                            .formatted(
                                h.what().kind(),
                                h.what().alternatives(),
                                h.what().beganSeconds() / 60,
                                2 * h.what().logOddsFactor()))
                .toList(),
            KilnQuantity.DOOR.value(lesson.beliefs().score(KilnQuantity.DOOR)),
            lesson.beliefs().ignoranceFactor(KilnQuantity.DOOR),
            cold.map(b -> "%.0f (%.0f to %.0f)".formatted(b.median(), b.low(), b.high()))
                .orElse("-"),
            heat,
            cold.map(b -> b.contains(heat) ? " in" : " OUT").orElse(""));
        if (kind < 2 && arguments.length > 2) {
          for (ForecastStudy.Outcome o : forecasts(session, lesson)) {
            System.out.printf(
                "F %d %s %s end %s %s miss %.1f %% width %.0f s, error %.1f K, arrivals in %d of %d%n",
                session.seed(),
                one.told() ? "told" : "read",
                o.learned() ? "learned" : "nameplate",
                new ForecastStudy.Timed(o.endSeconds(), o.end(), 0).inside() ? "in" : "OUT",
                one.onOff() ? "on-off" : "pid",
                100 * Math.abs(o.end().median() / o.endSeconds() - 1),
                o.end().high() - o.end().low(),
                o.rmseKelvins(),
                o.arrivals().stream().filter(ForecastStudy.Timed::inside).count(),
                o.arrivals().size());
          }
        }
      }
    }
  }
}
