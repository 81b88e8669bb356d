package org.heatwright.learn;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.heatwright.forecast.Charge;
import org.heatwright.kiln.Control;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.FiringConditions.Disturbance;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.Learned;
import org.heatwright.reference.DrawnFiring;
import org.heatwright.reference.Fault;
import org.heatwright.reference.RichFiring;
import org.heatwright.reference.RichKiln;
import org.heatwright.reference.SchedulePopulation;
import org.heatwright.schedule.Schedule;

/**
 * Faults in random firings of random kilns that the product does not know, and what it makes of
 * them. The rules were set before a result was seen:
 *
 * <ul>
 *   <li>a fault <i>can be seen</i> from the moment the display's mean over five minutes (a quarter
 *       of an hour for an on-off kiln, whose swing is chance) has departed by {@link
 *       #VISIBLE_KELVINS} from the same firing, with the same chance, without it, if that is within
 *       {@link #WITHIN_SECONDS} of its beginning; what shows later (a door ajar in a hold, when the
 *       kiln cools at the end) is counted apart;
 *   <li>it is <i>found in time</i> if the log up to {@link #DELAY_SECONDS} after that moment (a
 *       door ajar: {@link #DOOR_DELAY_SECONDS}) is enough to name it, alone or as one of two kinds
 *       that the display cannot tell apart, with a beginning within {@link #ONSET_SECONDS} of the
 *       true one;
 *   <li>a <i>false alarm</i> is any fault found in a clean firing, logged throughout or not.
 * </ul>
 */
final class AnomalyStudy {

  static final double VISIBLE_KELVINS = 6;
  static final double DELAY_SECONDS = 900;

  /** A door ajar works slowly: what it takes from the kiln must add up. */
  static final double DOOR_DELAY_SECONDS = 1800;

  static final double ONSET_SECONDS = 600;
  static final double WITHIN_SECONDS = 3600;

  /** No time at all, s. */
  private static final double[] NOTHING = {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY};

  private AnomalyStudy() {}

  /** What the product knew of the kiln. */
  enum Known {
    /** An earlier clean firing at full power. */
    LEARNED,
    /** The nameplate. */
    NAMEPLATE
  }

  /** What went wrong; a mains cut stops most loggers, but not all. */
  enum Case {
    CLEAN(null),
    ELEMENT_OPEN(Disturbance.Kind.ELEMENT_OPEN),
    TIP_OUT(Disturbance.Kind.TIP_OUT),
    RELAY_ON(Disturbance.Kind.RELAY_ON),
    RELAY_OFF(Disturbance.Kind.RELAY_OFF),
    DOOR_AJAR(Disturbance.Kind.DOOR_AJAR),
    MAINS_GAP(Disturbance.Kind.MAINS_OFF),
    MAINS_LOGGED(Disturbance.Kind.MAINS_OFF),
    /** Nothing, but the logger stops for 2 to 25 min. */
    LOGGER_STOPS(null);

    /** Null where nothing goes wrong. */
    final Disturbance.Kind kind;

    Case(Disturbance.Kind kind) {
      this.kind = kind;
    }

    boolean clean() {
      return kind == null;
    }
  }

  /**
   * One case.
   *
   * @param departedKelvins the most by which the display departed
   * @param visibleSeconds when it could be seen; infinite: never
   * @param early what was found by the delay after that
   * @param late what was found in the whole log
   */
  record Outcome(
      long seed,
      Case what,
      Known known,
      boolean onOff,
      double onsetSeconds,
      double departedKelvins,
      double visibleSeconds,
      Optional<Anomaly> early,
      Optional<Anomaly> late,
      double searchSeconds) {

    boolean visible() {
      return visibleSeconds <= onsetSeconds + WITHIN_SECONDS;
    }

    boolean named(Optional<Anomaly> found) {
      return found
          .filter(a -> a.names(what.kind))
          .filter(a -> Math.abs(a.beganSeconds() - onsetSeconds) <= ONSET_SECONDS)
          .isPresent();
    }
  }

  private static double end(DrawnFiring drawn, RichFiring firing) {
    double end = firing.programEndSeconds();
    return Double.isFinite(end) ? end : drawn.until() - 3600;
  }

  private static Optional<Fault> fault(Case what, SplittableRandom chance, double end) {
    double onset = 600 + Math.rint(chance.nextDouble() * (end - 1200));
    double edge = 0.5 + 0.5 * chance.nextDouble();
    double cut = 120 + Math.rint(chance.nextDouble() * 1380);
    return switch (what) {
      case CLEAN, LOGGER_STOPS -> Optional.empty();
      case ELEMENT_OPEN -> Optional.of(Fault.elementOpen(onset));
      case TIP_OUT -> Optional.of(Fault.tipOut(onset));
      case RELAY_ON -> Optional.of(Fault.relayStuckOn(onset));
      case RELAY_OFF -> Optional.of(Fault.relayStuckOff(onset));
      case DOOR_AJAR -> Optional.of(Fault.doorAjar(onset, Double.POSITIVE_INFINITY, edge));
      case MAINS_GAP, MAINS_LOGGED -> Optional.of(Fault.mainsCut(onset, cut));
    };
  }

  static Kiln learned(RichKiln rich, long seed) {
    Schedule schedule =
        SchedulePopulation.draw(SchedulePopulation.Family.SATURATED, rich, seed + 10_000);
    FiringConditions day = SchedulePopulation.conditions(seed + 10_000);
    RichFiring log =
        rich.fire(
            schedule,
            day,
            0,
            Optional.empty(),
            seed + 3,
            SchedulePopulation.untilSecond(schedule, rich));
    Lesson lesson =
        KilnLearner.learn(
            rich.nameplate(),
            List.of(
                new LoggedFiring(
                    "seen", schedule, day, Charge.empty(), readings(log, Double.MAX_VALUE, true))));
    return rich.nameplate()
        .withLearned(new Learned(LocalDate.of(2026, 11, 1), 1, Learned.ENGINE, lesson.beliefs()));
  }

  /**
   * @param wholeLogs whether logs with a fault are searched to their end too; clean ones always are
   */
  static List<Outcome> of(long seed, List<Case> cases, List<Known> situations, boolean wholeLogs) {
    DrawnFiring setting = DrawnFiring.of(seed);
    Kiln plate = setting.rich().nameplate();
    boolean onOff = plate.control().kind() == Control.Kind.ON_OFF;
    Kiln known = situations.contains(Known.LEARNED) ? learned(setting.rich(), seed) : plate;
    List<Outcome> all = new ArrayList<>();
    for (Case what : cases) {
      SplittableRandom chance = new SplittableRandom(seed * 77 + what.ordinal());
      Optional<Fault> fault = fault(what, chance, end(setting, setting.clean()));
      RichFiring log = fault.map(setting::with).orElse(setting.clean());
      double stop = Math.min(setting.until(), end(setting, log) + 3600);
      double silent = 600 + chance.nextDouble() * (end(setting, log) - 1200);
      double[] without =
          what == Case.LOGGER_STOPS
              ? new double[] {silent, silent + 120 + chance.nextDouble() * 1380}
              : NOTHING;
      double[] departed =
          departure(log, setting.clean(), stop, onOff ? 90 : 30, what != Case.MAINS_LOGGED);
      for (Known situation : situations) {
        Kiln kiln = situation == Known.LEARNED ? known : plate;
        boolean gap = what != Case.MAINS_LOGGED;
        long began = System.nanoTime();
        Optional<Anomaly> whole =
            wholeLogs || what.clean()
                ? look(kiln, setting, log, stop, gap, without)
                : Optional.empty();
        double took = (System.nanoTime() - began) / 1e9;
        double cut = departed[1] + (what == Case.DOOR_AJAR ? DOOR_DELAY_SECONDS : DELAY_SECONDS);
        Optional<Anomaly> early =
            departed[1] > fault.map(Fault::onsetSeconds).orElse(0.0) + WITHIN_SECONDS
                ? Optional.empty()
                : cut >= stop && wholeLogs ? whole : look(kiln, setting, log, cut, gap, without);
        all.add(
            new Outcome(
                seed,
                what,
                situation,
                onOff,
                fault.map(Fault::onsetSeconds).orElse(Double.NaN),
                departed[0],
                departed[1],
                early,
                whole,
                took));
      }
    }
    return all;
  }

  private static Optional<Anomaly> look(
      Kiln kiln, DrawnFiring setting, RichFiring log, double stop, boolean gap, double[] without) {
    Readings readings = readings(log, stop, gap).without(without[0], without[1]);
    return KilnLearner.look(
        kiln, new LoggedFiring("x", setting.schedule(), setting.day(), Charge.empty(), readings));
  }

  /** How far a display departs from another, K, and when by enough, s. */
  private static double[] departure(
      RichFiring with, RichFiring without, double stop, int rows, boolean gap) {
    int last = Math.min(with.rowAt(stop), without.rows() - 1);
    double most = 0;
    double when = Double.POSITIVE_INFINITY;
    double sum = 0;
    for (int i = 0; i <= last; i++) {
      sum += with.displayCelsius()[i] - without.displayCelsius()[i];
      if (i >= rows) {
        sum -= with.displayCelsius()[i - rows] - without.displayCelsius()[i - rows];
        double mean = Math.abs(sum / rows);
        most = Math.max(most, mean);
        if (mean >= VISIBLE_KELVINS && Double.isInfinite(when) && (!gap || with.powered()[i])) {
          when = with.secondsAt(i);
        }
      }
    }
    return new double[] {most, when};
  }

  static Readings readings(RichFiring firing, double stop, boolean gap) {
    int[] rows =
        IntStream.rangeClosed(0, firing.rowAt(Math.min(stop, 1e9)))
            .filter(i -> !gap || firing.powered()[i])
            .toArray();
    return Readings.of(
        IntStream.of(rows).mapToDouble(firing::secondsAt).toArray(),
        IntStream.of(rows).mapToDouble(i -> firing.displayCelsius()[i]).toArray());
  }

  private static String words(Optional<Anomaly> found) {
    return found
        .map(a -> "%s%s@%.1f".formatted(a.kind(), a.alternatives(), a.beganSeconds() / 60))
        .orElse("-");
  }

  /**
   * Prints one line a case and a table. Arguments: first seed, one after the last, cases, known,
   * any.
   */
  public static void main(String[] arguments) {
    Locale.setDefault(Locale.ROOT);
    long from = Long.parseLong(arguments[0]);
    long to = Long.parseLong(arguments[1]);
    List<Case> cases =
        arguments.length > 2
            ? java.util.Arrays.stream(arguments[2].split(",", -1)).map(Case::valueOf).toList()
            : List.of(Case.values());
    List<Known> situations =
        arguments.length > 3 ? List.of(Known.valueOf(arguments[3])) : List.of(Known.values());
    List<Outcome> all = new ArrayList<>();
    for (long seed = from; seed < to; seed++) {
      for (Outcome o : of(seed, cases, situations, arguments.length > 4)) {
        all.add(o);
        System.out.printf(
            "R %d %s %s %s onset %.1f departs %.0f visible %.1f %s %s | early %s late %s (%.1f s) gain %.0f%n",
            o.seed,
            o.what,
            o.known,
            o.onOff ? "on-off" : "pid",
            o.onsetSeconds / 60,
            o.departedKelvins,
            o.visibleSeconds / 60,
            o.what.clean()
                ? o.late.isPresent() ? "FALSE" : "clean"
                : !o.visible() ? "hidden" : o.named(o.early) ? "EARLY" : "early-missed",
            o.what.clean() || !o.visible() ? "" : o.named(o.late) ? "LATE" : "late-missed",
            words(o.early),
            words(o.late),
            o.searchSeconds,
            o.late.map(a -> 2 * a.logOddsFactor()).orElse(0.0));
      }
    }
    for (Known situation : situations) {
      for (Case what : cases) {
        List<Outcome> these =
            all.stream().filter(o -> o.what == what && o.known == situation).toList();
        if (what.clean()) {
          System.out.printf(
              "T %s %s: %d firings, %d false alarms%n",
              situation,
              what,
              these.size(),
              these.stream().filter(o -> o.late.isPresent()).count());
          continue;
        }
        List<Outcome> seen = these.stream().filter(Outcome::visible).toList();
        double[] off =
            seen.stream()
                .filter(o -> o.named(o.late))
                .mapToDouble(o -> Math.abs(o.late.get().beganSeconds() - o.onsetSeconds) / 60)
                .sorted()
                .toArray();
        System.out.printf(
            "T %s %s: %d, shows later %d, can be seen %d, found in time %d, in whole log %d, begins within %.1f / %.1f min (half / 95 of 100)%n",
            situation,
            what,
            these.size(),
            these.stream().filter(o -> !o.visible() && Double.isFinite(o.visibleSeconds)).count(),
            seen.size(),
            seen.stream().filter(o -> o.named(o.early)).count(),
            off.length,
            off.length > 0 ? off[off.length / 2] : Double.NaN,
            off.length > 0 ? off[Math.min(off.length - 1, off.length * 95 / 100)] : Double.NaN);
      }
    }
  }
}
