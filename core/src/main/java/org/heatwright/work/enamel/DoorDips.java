package org.heatwright.work.enamel;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * The openings of the door in a log of an enamelling session, from the reading itself or from what
 * the log says happened.
 *
 * <p>By the reading: a fall of {@link #LEAST_FALL_KELVINS} within {@link #FALL_WITHIN_SECONDS} that
 * turns round again, and stands out of the swing of a switch. A fall that goes on is the end of the
 * session. What a thermocouple shows comes later and is less than what the chamber does, by its
 * lag.
 *
 * @param dips in order
 * @param endSeconds when the working heat ended: at the fall that does not turn round, or at the
 *     log's end, s
 */
public record DoorDips(List<Dip> dips, double endSeconds) {

  /** A fall of the reading that counts, K: more than the swing of a usual switch. Estimate. */
  public static final double LEAST_FALL_KELVINS = 12;

  static final double FALL_WITHIN_SECONDS = 240;

  /** So much up from the bottom, and the door is shut, K. Estimate. */
  private static final double TURN_KELVINS = 3;

  /** A display is back this near to where it was before a piece went in, K. Our choice. */
  public static final double BACK_KELVINS = 5;

  /** Only at a heat at which enamel may be fired is a dip a firing, °C. */
  static final double LEAST_WORKING_CELSIUS = 550;

  /**
   * One opening.
   *
   * @param openSeconds when it opened, s
   * @param shutSeconds when it was shut: told, or the bottom of the reading, s
   * @param levelCelsius what the display showed before, where the kiln was settled
   * @param beforeCelsius what it showed when the door opened
   * @param lowCelsius the bottom
   * @param backSeconds from the shutting until the display was back, s; empty if it was not before
   *     the next opening or the end
   * @param told whether the log says so itself
   * @param what what the log says of it, or empty
   */
  public record Dip(
      double openSeconds,
      double shutSeconds,
      double levelCelsius,
      double beforeCelsius,
      double lowCelsius,
      OptionalDouble backSeconds,
      boolean told,
      String what) {

    /** How far the display fell. */
    public double fallKelvins() {
      return beforeCelsius - lowCelsius;
    }
  }

  public DoorDips {
    dips = List.copyOf(dips);
  }

  /**
   * Finds them.
   *
   * @param seconds rising, s
   * @param celsius the reading at each
   * @param setpoint the setpoint at each, or NaN where there is none
   * @param events what happened at each, or empty: "door-open", "door-shut", or with a piece's name
   *     after it
   */
  public static DoorDips find(
      double[] seconds, double[] celsius, double[] setpoint, List<Optional<String>> events) {
    return find(seconds, celsius, setpoint, events, true);
  }

  /**
   * Every dip: without an end, for a session that something went wrong with counts, too, and with
   * the swing of a switch.
   */
  static DoorDips everywhere(
      double[] seconds, double[] celsius, double[] setpoint, List<Optional<String>> events) {
    return find(seconds, celsius, setpoint, events, false);
  }

  private static DoorDips find(
      double[] seconds,
      double[] celsius,
      double[] setpoint,
      List<Optional<String>> events,
      boolean ends) {
    if (seconds.length != celsius.length
        || seconds.length != setpoint.length
        || seconds.length != events.size()) {
      throw new IllegalArgumentException(
          "A log needs as many readings (%d), setpoints (%d) and events (%d) as times (%d)."
              .formatted(celsius.length, setpoint.length, events.size(), seconds.length));
    }
    boolean told = events.stream().anyMatch(e -> e.filter(DoorDips::opens).isPresent());
    List<Rough> rough = told ? told(seconds, celsius, events) : read(seconds, celsius, setpoint);
    if (!ends) {
      double end = Double.POSITIVE_INFINITY;
      return new DoorDips(finished(seconds, celsius, rough, end, told), end);
    }
    double end = end(seconds, celsius, setpoint, rough);
    List<Rough> within = rough.stream().filter(r -> seconds[r.open] < end).toList();
    List<Rough> opened = told ? within : withoutSwing(seconds, celsius, within, end);
    return new DoorDips(finished(seconds, celsius, opened, end, told), end);
  }

  /** Openings without the swing of a switch, where both are there and can be told apart. */
  private static List<Rough> withoutSwing(
      double[] seconds, double[] celsius, List<Rough> rough, double end) {
    List<Dip> dips = finished(seconds, celsius, rough, end, false);
    double[] least = SwitchSwing.least(dips, seconds, celsius);
    return IntStream.range(0, dips.size())
        .filter(
            i ->
                Double.isInfinite(least[i])
                    || SwitchSwing.steepest(dips.get(i), seconds, celsius) >= least[i])
        .mapToObj(rough::get)
        .toList();
  }

  private static boolean opens(String event) {
    String word = event.toLowerCase(Locale.ROOT);
    return word.startsWith("door-open") || word.startsWith("door open");
  }

  static boolean shuts(String event) {
    String word = event.toLowerCase(Locale.ROOT);
    return word.startsWith("door-shut")
        || word.startsWith("door shut")
        || word.startsWith("door-closed");
  }

  /** Rows of an opening. */
  private record Rough(int open, int shut, String what) {}

  private static List<Rough> told(
      double[] seconds, double[] celsius, List<Optional<String>> events) {
    List<Rough> found = new ArrayList<>();
    for (int i = 0; i < seconds.length; i++) {
      if (events.get(i).filter(DoorDips::opens).isEmpty()) {
        continue;
      }
      int shut = -1;
      int last = seconds.length - 1;
      for (int j = i + 1; j < seconds.length; j++) {
        if (events.get(j).filter(DoorDips::opens).isPresent()) {
          last = j - 1;
          break;
        }
        if (events.get(j).filter(DoorDips::shuts).isPresent()) {
          shut = j;
          break;
        }
      }
      found.add(
          new Rough(
              i,
              shut >= 0 ? shut : bottom(seconds, celsius, i, last),
              name(events.get(i).orElse(""))));
    }
    return found;
  }

  /** What follows the first word: "door-open brooch 3" tells the piece. */
  private static String name(String event) {
    return event.replaceFirst("(?i)^door[- ]open[:,;]?\\s*", "").strip();
  }

  /** The lowest row before the reading has turned. */
  private static int bottom(double[] seconds, double[] celsius, int from, int to) {
    int low = from;
    for (int i = from; i <= to && seconds[i] - seconds[from] <= FALL_WITHIN_SECONDS; i++) {
      if (celsius[i] < celsius[low]) {
        low = i;
      } else if (celsius[i] > celsius[low] + TURN_KELVINS) {
        break;
      }
    }
    return low;
  }

  private static List<Rough> read(double[] seconds, double[] celsius, double[] setpoint) {
    List<Rough> found = new ArrayList<>();
    int high = 0;
    int i = 1;
    while (i < seconds.length) {
      // The highest reading that is near enough in time to fall from.
      while (seconds[i] - seconds[high] > FALL_WITHIN_SECONDS && high < i) {
        high++;
        for (int j = high; j < i; j++) {
          high = celsius[j] >= celsius[high] ? j : high;
        }
      }
      if (celsius[i] >= celsius[high]) {
        high = i;
      }
      boolean falls =
          celsius[high] >= LEAST_WORKING_CELSIUS
              && celsius[high] - celsius[i] >= LEAST_FALL_KELVINS
              && !asked(setpoint, high, i);
      if (!falls) {
        i++;
        continue;
      }
      int low = i;
      int j = i;
      while (j < seconds.length && celsius[j] <= celsius[low] + TURN_KELVINS) {
        low = celsius[j] < celsius[low] ? j : low;
        j++;
      }
      if (j >= seconds.length) {
        break;
      }
      found.add(new Rough(high, low, ""));
      high = j;
      i = j + 1;
    }
    return found;
  }

  /** Whether the program itself went down. */
  private static boolean asked(double[] setpoint, int from, int to) {
    return setpoint[from] - setpoint[to] > LEAST_FALL_KELVINS / 2;
  }

  private static double end(
      double[] seconds, double[] celsius, double[] setpoint, List<Rough> rough) {
    int last = seconds.length - 1;
    double working =
        rough.isEmpty() ? Arrays.stream(celsius).max().orElse(0) : celsius[rough.get(0).open];
    // From the last row that is within a dip's reach of the working heat, back to its last high.
    int hot = last;
    while (hot > 0 && celsius[hot] < working - 150) {
      hot--;
    }
    if (hot == last) {
      return seconds[last];
    }
    int start = hot;
    for (int i = hot; i > 0 && celsius[i - 1] >= celsius[i] - 0.5; i--) {
      start = i - 1;
    }
    return seconds[start];
  }

  private static List<Dip> finished(
      double[] seconds, double[] celsius, List<Rough> rough, double end, boolean told) {
    List<Dip> dips = new ArrayList<>();
    double level = Double.NaN;
    for (int d = 0; d < rough.size(); d++) {
      Rough dip = rough.get(d);
      boolean recovered = dips.isEmpty() || dips.get(dips.size() - 1).backSeconds().isPresent();
      if (recovered) {
        level = levelBefore(seconds, celsius, dip.open);
      }
      int low = dip.open;
      double until = d + 1 < rough.size() ? seconds[rough.get(d + 1).open] : end;
      for (int i = dip.open; i < seconds.length && seconds[i] <= until; i++) {
        if (celsius[i] < celsius[low]) {
          low = i;
        } else if (i > dip.shut && celsius[i] > celsius[low] + TURN_KELVINS) {
          break;
        }
      }
      OptionalDouble back = OptionalDouble.empty();
      for (int i = Math.max(low, dip.shut); i < seconds.length && seconds[i] <= until; i++) {
        if (celsius[i] >= level - BACK_KELVINS) {
          back = OptionalDouble.of(Math.max(0, seconds[i] - seconds[dip.shut]));
          break;
        }
      }
      dips.add(
          new Dip(
              seconds[dip.open],
              seconds[dip.shut],
              level,
              celsius[dip.open],
              celsius[low],
              back,
              told,
              dip.what));
    }
    return dips;
  }

  /** The median of the two minutes before. */
  private static double levelBefore(double[] seconds, double[] celsius, int row) {
    int from = row;
    while (from > 0 && seconds[row] - seconds[from - 1] <= 120) {
      from--;
    }
    double[] before = Arrays.copyOfRange(celsius, from, row + 1);
    Arrays.sort(before);
    return before[before.length / 2];
  }
}
