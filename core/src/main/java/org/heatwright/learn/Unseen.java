package org.heatwright.learn;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.heatwright.kiln.Control;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.FiringConditions.Disturbance;
import org.heatwright.kiln.FiringConditions.Disturbance.Kind;
import org.heatwright.kiln.FiringRun;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.KilnBeliefs;
import org.heatwright.kiln.KilnQuantity;
import org.heatwright.material.HeatCurves;
import org.heatwright.schedule.HourMinute;

/**
 * A fault that the display of one firing could not have shown, and when: found by simulating it
 * from many moments on, on the kiln as it is known.
 *
 * @param kind what it would have been, of its kind's usual size; a relay sticks for {@link
 *     #STUCK_SECONDS}
 * @param stretches when it could have begun unseen, in order
 */
public record Unseen(Kind kind, List<Stretch> stretches) {

  public Unseen {
    stretches = List.copyOf(stretches);
  }

  /**
   * A time in which a fault could have begun unseen.
   *
   * @param fromSeconds s from the program's start
   * @param toSeconds s from the program's start
   * @param power what was asked of the elements then
   */
  public record Stretch(double fromSeconds, double toSeconds, Power power) {}

  /** What the controller asks of the elements. */
  public enum Power {
    FULL("full power was asked for anyway"),
    SOME("the controller had power to spare and made up for it"),
    NONE("no power was asked for");

    private final String words;

    Power(String words) {
      this.words = words;
    }
  }

  /** How long a relay sticks, s. */
  static final double STUCK_SECONDS = 300;

  // What can be seen: the same rule as in the study of docs/models/anomalies.md.
  private static final double VISIBLE_KELVINS = 6;
  private static final double MEAN_SECONDS = 300;
  private static final double SWINGING_MEAN_SECONDS = 900;
  private static final double WITHIN_SECONDS = 3600;

  private static final int MOST_BEGINNINGS = 36;
  private static final double LEAST_STEP_SECONDS = 600;

  /** What begins so late has no time to show, s. */
  private static final double LATEST_SECONDS = 900;

  private static final double FULL_SHARE = 0.97;
  private static final double OFF_SHARE = 0.03;

  private static final List<Kind> KINDS =
      List.of(Kind.ELEMENT_OPEN, Kind.TIP_OUT, Kind.RELAY_ON, Kind.RELAY_OFF, Kind.DOOR_AJAR);

  /**
   * What a firing's display could not have shown.
   *
   * @param kiln what is known of it counts
   * @param firing logged
   * @return one a kind that could have passed unseen at some time
   */
  public static List<Unseen> in(Kiln kiln, LoggedFiring firing) {
    Kiln smooth = AnomalySearch.smoothed(kiln);
    KilnBeliefs beliefs = AnomalySearch.smoothed(kiln, kiln.beliefs());
    double[] scores = Arrays.stream(KilnQuantity.values()).mapToDouble(beliefs::score).toArray();
    Evidence evidence = Evidence.byItself(smooth, firing, new HeatCurves());
    FiringConditions day = evidence.conditions(new double[Evidence.DAY]);
    FiringRun as = evidence.run(scores, 0, day);
    double last = firing.readings().lastSecond();
    double step = Math.max(LEAST_STEP_SECONDS, last / MOST_BEGINNINGS);
    double mean =
        kiln.control().kind() == Control.Kind.ON_OFF ? SWINGING_MEAN_SECONDS : MEAN_SECONDS;
    double full = 0;
    for (double t = 0; t < last; t += 60) {
      full = Math.max(full, as.wattsAt(t));
    }
    List<Unseen> all = new ArrayList<>();
    for (Kind kind : KINDS) {
      boolean sticks = kind == Kind.RELAY_ON || kind == Kind.RELAY_OFF;
      List<Stretch> stretches = new ArrayList<>();
      for (double at = step / 2; at < last - LATEST_SECONDS; at += step) {
        Disturbance fault =
            new Disturbance(kind, at, sticks ? STUCK_SECONDS : Double.POSITIVE_INFINITY);
        FiringRun with = evidence.run(scores, 0, day.with(fault));
        if (shows(as, with, at, last, mean)) {
          continue;
        }
        double share = (as.joulesAt(at + STUCK_SECONDS) - as.joulesAt(at)) / STUCK_SECONDS / full;
        Power power = share > FULL_SHARE ? Power.FULL : share < OFF_SHARE ? Power.NONE : Power.SOME;
        int before = stretches.size() - 1;
        if (before >= 0
            && stretches.get(before).power() == power
            && stretches.get(before).toSeconds() > at - 0.6 * step) {
          stretches.set(
              before, new Stretch(stretches.get(before).fromSeconds(), at + step / 2, power));
        } else {
          stretches.add(new Stretch(at - step / 2, at + step / 2, power));
        }
      }
      if (!stretches.isEmpty()) {
        all.add(new Unseen(kind, stretches));
      }
    }
    return all;
  }

  /** Whether the display departs by enough soon enough. */
  private static boolean shows(FiringRun as, FiringRun with, double at, double last, double mean) {
    double until = Math.min(last, at + WITHIN_SECONDS);
    for (double t = at; t + mean <= until; t += 60) {
      double sum = 0;
      for (double s = 15; s < mean; s += 30) {
        sum += with.readingCelsiusAt(t + s) - as.readingCelsiusAt(t + s);
      }
      if (Math.abs(sum) * 30 / mean >= VISIBLE_KELVINS) {
        return true;
      }
    }
    return false;
  }

  /**
   * In a sentence, e.g. "A relay stuck on for 5 min would not have shown from +0:20 to +1:10 (full
   * power was asked for anyway): a current meter tells."
   */
  public String words() {
    List<String> when =
        stretches.stream()
            .map(
                s ->
                    "from %s to %s (%s)"
                        .formatted(clock(s.fromSeconds()), clock(s.toSeconds()), s.power().words))
            .toList();
    return "%s would not have shown on this display %s: %s."
        .formatted(subject(kind), String.join(", ", when), teller(kind));
  }

  private static String clock(double seconds) {
    return "+" + HourMinute.format(Duration.ofMinutes(Math.round(seconds / 60)));
  }

  private static String subject(Kind kind) {
    return switch (kind) {
      case ELEMENT_OPEN -> "One of two elements that opens";
      case TIP_OUT -> "A thermocouple that slips out a little";
      case RELAY_ON -> "A relay stuck on for 5 min";
      case RELAY_OFF -> "A relay stuck off for 5 min";
      case DOOR_AJAR -> "A door that begins to stand ajar";
      case DOOR_OPEN -> "A door that is opened";
      case MAINS_OFF -> "A mains cut";
    };
  }

  private static String teller(Kind kind) {
    return switch (kind) {
      case ELEMENT_OPEN, RELAY_ON, RELAY_OFF -> "a current meter tells";
      case DOOR_AJAR, DOOR_OPEN -> "a look at the door tells";
      case TIP_OUT -> "a look at the tip in the cold kiln tells";
      case MAINS_OFF -> "a clock on the same supply tells";
    };
  }
}
