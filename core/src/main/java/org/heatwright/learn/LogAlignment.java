package org.heatwright.learn;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.FiringRun;
import org.heatwright.kiln.FiringSimulation;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.KilnParameters;
import org.heatwright.material.HeatCurves;
import org.heatwright.schedule.HourMinute;
import org.heatwright.units.Temperature;

/**
 * Puts a log's clock right before anything is learned from it: finds the delay between the log's
 * zero and the program's start, and leaps of the clock on the way, by the simulation of likely
 * kilns that what was seen fits best. Only what is certain is corrected, and each correction is
 * told. What it takes for certain: the display fits less than half as badly, and better by several
 * kelvins.
 *
 * @param firing the firing with its times counted from the program's start
 * @param startSeconds time of the log at which the program began, s
 * @param told what was corrected, one sentence each; empty: nothing
 */
public record LogAlignment(LoggedFiring firing, double startSeconds, List<String> told) {

  private static final int KILNS = 40;
  private static final long SEED = 1;

  /** Shifts and curves are on this grid, s. */
  private static final int GRID_SECONDS = 60;

  private static final int MOST_POINTS = 400;

  /** A miss counts up to this, K: another stretch may be missed by any amount. */
  private static final double MOST_MISSED_KELVINS = 120;

  /** So much of the log must lie in the simulated time. */
  private static final double FEWEST_SHARE = 0.5;

  /** A correction must better the mean miss by this, K, and to less than half. */
  private static final double BETTER_KELVINS = 6;

  /** Less than this is left to the fit, s. */
  private static final double SMALLEST_SHIFT_SECONDS = 180;

  /** The same where the rise was not seen, s. */
  private static final double SMALLEST_UNSEEN_SECONDS = 900;

  /** How far a shift may be off where the rise was seen, standard deviation, s. */
  private static final double RISE_SECONDS = 60;

  /** The same where it follows from the course of the display alone, s. */
  private static final double COURSE_SECONDS = 240;

  /** By how much a fit must be more probable with the shift than without, chi-squared. */
  private static final double CERTAIN = 25;

  /** Places that little less probable are as likely, chi-squared. */
  private static final double AS_LIKELY = 6;

  /** A leap of the clock is at least this, s. */
  private static final double SMALLEST_LEAP_SECONDS = 900;

  private static final int MOST_LEAPS = 3;

  /** A display that goes on where it was, within this, K. */
  private static final double CONTINUOUS_KELVINS = 10;

  /** How long a start may lie before what is simulated of the cooling ends, s. */
  private static final double LONGEST_COOLING_SECONDS = 12 * 3600;

  private static final double RISEN_KELVINS = 25;
  private static final double FLAT_KELVINS = 3;

  private static final FiringSimulation.Accuracy ACCURACY =
      new FiringSimulation.Accuracy(0.3, 0.001, 1.6);

  public LogAlignment {
    told = List.copyOf(told);
  }

  /**
   * Aligns a log.
   *
   * @param kiln with what is believed of it
   * @param firing as the log has it
   */
  public static LogAlignment of(Kiln kiln, LoggedFiring firing) {
    return new Search(kiln, firing).best();
  }

  /** One search for one log. */
  private static final class Search {

    private final Kiln kiln;
    private final LoggedFiring logged;
    private final Readings clean;
    private final List<String> told = new ArrayList<>();
    private DoorSession session;

    /** Displays on the grid from the program's start on, of kilns that start as the log does. */
    private final List<double[]> fromFirst;

    /** The same of kilns that start where the log's first clear rise begins. */
    private final List<double[]> fromOnset;

    /** The same of kilns whose start nobody saw. */
    private final List<double[]> unseen;

    Search(Kiln kiln, LoggedFiring logged) {
      this.kiln = kiln;
      this.logged = logged;
      this.session = logged.session();
      this.clean = logged.readings().withoutSlips();
      FiringConditions day = logged.conditions();
      List<KilnParameters> kilns = kiln.beliefs().ensemble(kiln, KILNS, SEED);
      boolean stated = day.start().isPresent();
      HeatCurves curves = new HeatCurves();
      double first = clean.celsius(0);
      this.fromFirst =
          kilns.parallelStream()
              .map(k -> display(k, stated ? day : starting(day, first), curves))
              .toList();
      double onset = onset(points(clean));
      this.fromOnset =
          stated || Math.abs(onset - first) < FLAT_KELVINS
              ? fromFirst
              : kilns.parallelStream().map(k -> display(k, starting(day, onset), curves)).toList();
      this.unseen =
          stated
              ? fromFirst
              : IntStream.range(0, KILNS)
                  .parallel()
                  .mapToObj(
                      i ->
                          display(
                              kilns.get(i),
                              // from the room's to a hot kiln, in turn
                              Evidence.warmer(kiln, day, -1 + 3.5 * (i * 7 % KILNS) / KILNS),
                              curves))
                  .toList();
    }

    private static FiringConditions starting(FiringConditions day, double celsius) {
      return day.starting(Temperature.ofCelsius(celsius));
    }

    private double[] display(KilnParameters parameters, FiringConditions day, HeatCurves curves) {
      FiringSimulation simulation =
          new FiringSimulation(
              kiln, parameters, day, logged.charge().loads(), logged.schedule(), ACCURACY, curves);
      simulation.runProgram();
      double log = clean.lastSecond() - clean.second(0);
      simulation.coastUntil(simulation.elapsedSeconds() + Math.min(LONGEST_COOLING_SECONDS, log));
      FiringRun run = simulation.run();
      int n = (int) (run.lastSecond() / GRID_SECONDS) + 1;
      double[] celsius = new double[n];
      for (int i = 0; i < n; i++) {
        celsius[i] = run.readingCelsiusAt(i * (double) GRID_SECONDS);
      }
      return celsius;
    }

    LogAlignment best() {
      Readings readings = withoutLeaps(logged.readings());
      Readings seen = points(readings.withoutSlips());
      Placed plain = at(seen, 0);
      LoggedFiring asIs = logged.with(readings).with(session);
      List<Placed> all = places(seen);
      List<Placed> places =
          all.stream()
              .filter(p -> Math.abs(p.shift) >= smallest(seen, p) && somewhatBetter(p, plain))
              .toList();
      if (places.isEmpty()) {
        return unmoved(asIs);
      }
      if (all.size() == 1 && clearlyBetter(all.get(0), plain)) {
        return shifted(asIs, all.get(0).shift);
      }
      double[] misfit =
          places.stream().mapToDouble(place -> misfit(moved(asIs, place.shift))).toArray();
      int best =
          IntStream.range(0, misfit.length)
              .boxed()
              .min(Comparator.comparingDouble(i -> misfit[i]))
              .orElseThrow();
      double shift = places.get(best).shift;
      if (misfit(asIs) - misfit[best] < CERTAIN) {
        return unmoved(asIs);
      }
      double spread =
          IntStream.range(0, misfit.length)
              .filter(i -> misfit[i] < misfit[best] + AS_LIKELY)
              .mapToDouble(i -> Math.abs(places.get(i).shift - shift))
              .max()
              .orElse(0);
      LoggedFiring firing = shifted(asIs, shift).firing;
      return new LogAlignment(
          firing.clockWithin(Math.max(firing.clockSeconds(), spread / 2)), shift, told);
    }

    /** A shift below this cannot be told at a place, s. */
    private static double smallest(Readings seen, Placed place) {
      boolean riseSeen = place.shift >= seen.second(0) - Evidence.FIRST_READING_SECONDS;
      return riseSeen ? SMALLEST_SHIFT_SECONDS : SMALLEST_UNSEEN_SECONDS;
    }

    /** How badly the best fit of a firing fits, and how unlikely a start as hot as it says is. */
    private double misfit(LoggedFiring firing) {
      double fit = KilnLearner.misfit(kiln, firing);
      Readings slipless = firing.readings().withoutSlips();
      boolean told =
          logged.conditions().start().isEmpty()
              && slipless.second(0) <= Evidence.FIRST_READING_SECONDS;
      double hot = told ? Evidence.startScore(kiln, firing.conditions(), slipless.celsius(0)) : 0;
      return fit + hot * hot;
    }

    private LogAlignment unmoved(LoggedFiring asIs) {
      return new LogAlignment(asIs, 0, told);
    }

    private LogAlignment shifted(LoggedFiring asIs, double shift) {
      tellShift(asIs.readings().second(0), shift);
      return new LogAlignment(moved(asIs, shift), shift, told);
    }

    private void tellShift(double first, double shift) {
      String size = words(Math.abs(shift));
      if (first < shift - SMALLEST_SHIFT_SECONDS && Math.abs(first) < SMALLEST_SHIFT_SECONDS) {
        told.add(
            "The log starts about %s before the program; its times were counted from the rise."
                .formatted(size));
      } else if (shift > 0) {
        told.add(
            "The log's clock is about %s ahead of the program; its times were counted from the rise."
                .formatted(size));
      } else {
        told.add(
            ("The log's clock is about %s behind the program, by the course of its display; its times were"
                    + " taken as that much later.")
                .formatted(size));
      }
    }

    /** The firing as it is if the program began {@code shift} s after the log's zero. */
    private static LoggedFiring moved(LoggedFiring firing, double shift) {
      Readings shifted = firing.readings().shifted(-shift);
      FiringConditions day = firing.conditions();
      if (day.start().isEmpty() && shifted.second(0) < 0) {
        Readings before = shifted.withoutSlips().before(0);
        day = starting(day, before.celsius(before.size() - 1));
      }
      return firing
          .with(shifted.from(0).orElse(shifted))
          .with(firing.session().shifted(-shift))
          .with(day)
          .clockWithin(shifted.second(0) <= 0 ? RISE_SECONDS : COURSE_SECONDS);
    }

    // ---- leaps of the clock

    /** The readings without leaps of the clock: gaps that the display and the program deny. */
    private Readings withoutLeaps(Readings readings) {
      List<Double> leaps = new ArrayList<>();
      for (int i = 1; i < readings.size(); i++) {
        if (readings.second(i) - readings.second(i - 1) >= SMALLEST_LEAP_SECONDS) {
          leaps.add(readings.second(i));
        }
      }
      if (leaps.isEmpty() || leaps.size() > MOST_LEAPS) {
        return readings;
      }
      Readings now = readings;
      double usual = readings.usualStepSeconds();
      // From the last to the first, so that the times before stay as they are.
      for (int l = leaps.size() - 1; l >= 0; l--) {
        double at = leaps.get(l);
        double gap = at - now.before(at).lastSecond();
        if (!continuous(now, at)) {
          continue;
        }
        Readings closed = now.shiftedFrom(at, usual - gap);
        if (better(anywhere(points(closed.withoutSlips())), anywhere(points(now.withoutSlips())))) {
          now = closed;
          session = session.shiftedFrom(at, usual - gap);
          told.add(
              ("After %s the log's clock leaps forward by %s while the display goes on; the times"
                      + " from there on were taken back by that.")
                  .formatted(words(at - gap), words(gap - usual)));
        }
      }
      return now;
    }

    /** Whether the display goes on over a gap as if there were none. */
    private static boolean continuous(Readings readings, double at) {
      Readings before = readings.before(at).withoutSlips();
      Readings after = readings.from(at).orElseThrow().withoutSlips();
      if (before.size() < FEWEST_ABOUT_LEAP || after.size() < FEWEST_ABOUT_LEAP) {
        return false;
      }
      double step = after.celsius(0) - before.celsius(before.size() - 1);
      double climbing =
          Math.abs(
              before.celsius(before.size() - 1)
                  - before.celsius(before.size() - FEWEST_ABOUT_LEAP));
      return Math.abs(step) <= CONTINUOUS_KELVINS + climbing;
    }

    private static final int FEWEST_ABOUT_LEAP = 3;

    // ---- where the log lies in the program

    /**
     * A place of the log and how well it fits there.
     *
     * @param shift time of the log at which the program began, s
     * @param missed mean miss, K
     */
    private record Placed(double shift, double missed) {}

    private static boolean somewhatBetter(Placed one, Placed other) {
      return one.missed < 0.8 * other.missed && one.missed + 2 < other.missed;
    }

    private static boolean better(Placed one, Placed other) {
      return one.missed < 0.5 * other.missed && one.missed + BETTER_KELVINS < other.missed;
    }

    private static boolean clearlyBetter(Placed one, Placed other) {
      return one.missed < 0.33 * other.missed && one.missed + 20 < other.missed;
    }

    private Placed anywhere(Readings seen) {
      return places(seen).get(0);
    }

    /** The best places, none near a better one; the best first. */
    private List<Placed> places(Readings seen) {
      double longest =
          fromFirst.stream().mapToInt(celsius -> celsius.length).max().orElseThrow()
              * (double) GRID_SECONDS;
      int from = (int) Math.floor((seen.second(0) - longest) / GRID_SECONDS);
      int to = (int) Math.ceil(seen.lastSecond() / GRID_SECONDS);
      List<Placed> all =
          IntStream.rangeClosed(from, to)
              .parallel()
              .mapToObj(i -> at(seen, i * (double) GRID_SECONDS))
              .sorted(Comparator.comparingDouble(Placed::missed))
              .toList();
      List<Placed> best = new ArrayList<>();
      double most = RIVAL_SHARE * all.get(0).missed + 1;
      for (Placed place : all) {
        if (place.missed > most || best.size() == MOST_RIVALS) {
          break;
        }
        if (best.stream().noneMatch(b -> Math.abs(b.shift - place.shift) < APART_SECONDS)) {
          best.add(place);
        }
      }
      return best;
    }

    private static final double RIVAL_SHARE = 1.5;
    private static final int MOST_RIVALS = 3;
    private static final double APART_SECONDS = 480;

    private Placed at(Readings seen, double shift) {
      double later = shift - seen.second(0);
      List<double[]> like =
          later < -Evidence.FIRST_READING_SECONDS
              ? unseen
              : later < SMALLEST_SHIFT_SECONDS ? fromFirst : fromOnset;
      double best = Double.POSITIVE_INFINITY;
      for (double[] celsius : like) {
        best = Math.min(best, missed(seen, shift, celsius, best));
      }
      return new Placed(shift, best);
    }

    private double missed(Readings seen, double shift, double[] celsius, double enough) {
      double sum = 0;
      int inside = 0;
      int compared = 0;
      int n = seen.size();
      for (int i = 0; i < n; i++) {
        double place = (seen.second(i) - shift) / GRID_SECONDS;
        double shown;
        if (place <= 0) {
          shown = celsius[0];
        } else if (place >= celsius.length - 1) {
          continue;
        } else {
          int low = (int) place;
          shown = celsius[low] + (place - low) * (celsius[low + 1] - celsius[low]);
          inside++;
        }
        compared++;
        sum += Math.min(MOST_MISSED_KELVINS, Math.abs(shown - seen.celsius(i)));
        if (sum > enough * n) {
          return Double.POSITIVE_INFINITY;
        }
      }
      return inside < FEWEST_SHARE * reachable(seen, shift) || inside == 0
          ? Double.POSITIVE_INFINITY
          : sum / compared;
    }

    /** Rows that are not before the program: of those, most must be compared. */
    private static int reachable(Readings seen, double shift) {
      int before = 0;
      while (before < seen.size() && seen.second(before) <= shift) {
        before++;
      }
      return Math.max(seen.size() / 5, seen.size() - before);
    }

    // ---- the log

    private static Readings points(Readings readings) {
      double span =
          Math.max(
              GRID_SECONDS, Math.ceil((readings.lastSecond() - readings.second(0)) / MOST_POINTS));
      return readings.averaged(span);
    }

    /** Where the display was before its first clear rise, °C. */
    private static double onset(Readings seen) {
      double low = Double.POSITIVE_INFINITY;
      int at = 0;
      for (int i = 0; i < seen.size(); i++) {
        if (seen.celsius(i) > low + RISEN_KELVINS) {
          break;
        }
        low = Math.min(low, seen.celsius(i));
        if (seen.celsius(i) <= low + FLAT_KELVINS) {
          at = i;
        }
      }
      return seen.celsius(at);
    }

    private static String words(double seconds) {
      return HourMinute.words(Duration.ofMinutes(Math.round(seconds / 60)));
    }
  }
}
