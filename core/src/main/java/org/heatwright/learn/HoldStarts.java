package org.heatwright.learn;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.heatwright.kiln.Control;
import org.heatwright.kiln.FiringConditions.Disturbance;
import org.heatwright.kiln.FiringRun;
import org.heatwright.kiln.FiringSimulation;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.KilnQuantity;
import org.heatwright.schedule.AtEnd;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;

/**
 * When the clocks of a logged program's holds began, as far as its display tells: where it came
 * near the target, or, to some seconds, a hold's length before it left the target for the next one.
 *
 * <p>A simulation that fits a log goes on when the log did. Left to its own display it would begin
 * a hold at another time, and all that comes after would move by that: a fit then ends wherever it
 * first has one hold right. What it misses an arrival by is counted in kelvins instead, which
 * change evenly with the kiln.
 */
final class HoldStarts {

  /** Where a relay's ripple may touch the limit, beside the limit itself, K. */
  private static final double RIPPLE_KELVINS = 12;

  /** Readings further apart do not tell when a display arrived, s. */
  private static final double WIDEST_GAP_SECONDS = 60;

  /** A display that comes slowly is read over so long to either side, s. */
  private static final double SMOOTH_SECONDS = 40;

  /** A rate at which it comes is taken over so long to either side, s. */
  private static final double RATE_SECONDS = 240;

  // How sure an arrival is: a breath, and what so many kelvins are worth. Our estimates.
  private static final double ARRIVED_SECONDS = 10;
  private static final double ARRIVED_KELVINS = 0.8;
  private static final double LEAST_SURE_SECONDS = 600;

  /** How sure it is where the hold's end was seen, s. Our estimate. */
  private static final double LEFT_SECONDS = 15;

  /** A shorter hold may end while its display still settles, s. */
  private static final double SETTLED_SECONDS = 240;

  /** A slower ramp is not seen to begin, K/s. */
  private static final double SLOW_KELVINS_PER_SECOND = 0.05;

  /** How long after an arrival that looks late a hold's end is looked for, s. */
  private static final double LATER_SECONDS = 300;

  // A display has left where it moves by so much in a minute and goes on, K. Our estimates.
  private static final double LEAVES_KELVINS = 5;
  private static final double GOES_ON_KELVINS = 10;
  private static final double FIRST_KELVINS = 2.5;

  /** So long elements and sensor take to answer, s. Our estimate. */
  private static final double ANSWER_SECONDS = 20;

  // Where a display goes so far to and fro about its line so often, it swings; K. Our estimates.
  private static final double SWINGING_KELVINS = 2.5;
  private static final int SWINGS = 3;

  /** A display that comes so long after its setpoint came with it, s. */
  private static final double ON_TIME_SECONDS = 15;

  /** One that follows a ramp comes up to so long after it, s. Our estimate. */
  private static final double FOLLOWED_SECONDS = 120;

  /** So near something else that happened a display does not tell, s. */
  private static final double DISTURBED_SECONDS = 150;

  // How well an arrival is simulated: so many kelvins, and seconds of its rate. Our estimates.
  private static final double MISS_KELVINS = 0.7;
  private static final double MISS_SECONDS = 5;

  /** The same of a display that swings then, K. Our estimate. */
  private static final double SWINGING_MISS_KELVINS = 1.5;

  private final Schedule schedule;
  private final double withinKelvins;
  private final double[] seconds;
  private final double[] spread;

  /** Whether a hold is told by where the display left it. */
  private final boolean[] left;

  /** Whether the display swung as the hold began. */
  private final boolean[] swings;

  /** When each setpoint came to its target, s. */
  private final double[] set;

  private HoldStarts(Schedule schedule, double withinKelvins) {
    int n = schedule.segments().size();
    this.schedule = schedule;
    this.withinKelvins = withinKelvins;
    this.seconds = new double[n];
    this.spread = new double[n];
    this.left = new boolean[n];
    this.swings = new boolean[n];
    this.set = new double[n];
    Arrays.fill(seconds, Double.NaN);
  }

  /** Nothing told of any hold. */
  static HoldStarts untold(Schedule schedule) {
    return new HoldStarts(schedule, 0);
  }

  /**
   * What a log tells of a kiln with a proportional controller whose holds wait for the display;
   * nothing of any other.
   */
  static HoldStarts of(Kiln kiln, LoggedFiring firing) {
    Control control = kiln.control();
    boolean waits = control.kind() == Control.Kind.PID && control.holdWaitsWithin().isPresent();
    HoldStarts starts =
        new HoldStarts(
            firing.schedule(),
            control.holdWaitsWithin().map(within -> within.kelvins()).orElse(0.0));
    // Where nobody saw the start, the setpoint began nobody knows where.
    boolean begun =
        firing.conditions().start().isPresent()
            || firing.readings().second(0) <= Evidence.FIRST_READING_SECONDS;
    if (waits && begun && !firing.readings().toTheMinute()) {
      starts.read(firing);
    }
    return starts;
  }

  private void read(LoggedFiring firing) {
    Readings readings = firing.readings();
    double cut =
        firing.happenings().stream()
            .filter(event -> event.kind() == Disturbance.Kind.MAINS_OFF)
            .mapToDouble(Disturbance::atSeconds)
            .min()
            .orElse(Double.POSITIVE_INFINITY);
    double from = 0;
    double before =
        firing.conditions().start().map(start -> start.celsius()).orElse(readings.celsius(0));
    for (int s = 0; s < seconds.length; s++) {
      Segment segment = schedule.segments().get(s);
      double way = Math.abs(segment.target().celsius() - before);
      set[s] = from + segment.ramp().rate().map(r -> way / r.kelvinsPerHour() * 3600).orElse(0.0);
      double began = began(firing, s);
      double end = began + segment.hold().toSeconds();
      if (!(end < cut)) {
        spread[s] = 0;
        return;
      }
      swings[s] = swings(readings, began);
      if (swings[s] && !left[s]) {
        spread[s] = 0;
        return;
      }
      seconds[s] = began;
      from = end;
      before = segment.target().celsius();
    }
  }

  /** When the hold of a segment began, and how sure that is; not a number if nothing tells. */
  private double began(LoggedFiring firing, int segment) {
    Readings readings = firing.readings();
    double hold = schedule.segments().get(segment).hold().toSeconds();
    double came = firstNear(readings, segment, usualKelvins(), SMOOTH_SECONDS);
    double earliest = firstNear(readings, segment, usualKelvins() + RIPPLE_KELVINS, 0);
    if (leavesAtOnce(segment) && hold >= SETTLED_SECONDS && !Double.isNaN(earliest)) {
      double latest = Double.isNaN(came) ? readings.lastSecond() : came + LATER_SECONDS;
      double leaves = left(firing, goesOn(segment), earliest + hold, latest + hold);
      if (!Double.isNaN(leaves)) {
        left[segment] = true;
        spread[segment] = LEFT_SECONDS;
        return Math.max(set[segment], leaves - hold);
      }
    }
    if (came > set[segment] + ON_TIME_SECONDS) {
      double rate =
          Math.abs(
                  mean(readings, came, came + RATE_SECONDS)
                      - mean(readings, came - RATE_SECONDS, came))
              / RATE_SECONDS;
      spread[segment] =
          rate > 0
              ? Math.min(LEAST_SURE_SECONDS, Math.hypot(ARRIVED_SECONDS, ARRIVED_KELVINS / rate))
              : LEAST_SURE_SECONDS;
    }
    return came;
  }

  /** How near a target the line of a display usually is when a hold's clock begins, K. */
  private double usualKelvins() {
    return FiringSimulation.nearKelvins(withinKelvins, KilnQuantity.CREST.value(0), 0);
  }

  /** When a display first was near a segment's target after its setpoint came there. */
  private double firstNear(Readings readings, int segment, double kelvins, double smooth) {
    double target = schedule.segments().get(segment).target().celsius();
    for (int i = readings.firstFrom(set[segment]); i < readings.size(); i++) {
      double second = readings.second(i);
      double shown = mean(readings, second - smooth, second + smooth);
      if (Math.abs(shown - target) <= kelvins) {
        boolean seen = i == 0 || second - readings.second(i - 1) <= WIDEST_GAP_SECONDS;
        return seen ? second : Double.NaN;
      }
    }
    return Double.NaN;
  }

  /** Whether the display leaves a target quickly when its hold is over. */
  private boolean leavesAtOnce(int segment) {
    List<Segment> segments = schedule.segments();
    if (segment == segments.size() - 1) {
      return schedule.atEnd() == AtEnd.OFF;
    }
    return segments
        .get(segment + 1)
        .ramp()
        .rate()
        .map(rate -> Math.abs(rate.kelvinsPerHour()) / 3600 > SLOW_KELVINS_PER_SECOND)
        .orElse(true);
  }

  /** Where the display goes then: 1 up, -1 down. */
  private double goesOn(int segment) {
    List<Segment> segments = schedule.segments();
    if (segment == segments.size() - 1) {
      return -1;
    }
    return Math.signum(
        segments.get(segment + 1).target().celsius() - segments.get(segment).target().celsius());
  }

  /** When the display left a target for good; not a number if that is not seen. */
  private static double left(LoggedFiring firing, double side, double from, double to) {
    Readings readings = firing.readings();
    for (int i = readings.firstFrom(from - 60);
        i < readings.size() && readings.second(i) <= to;
        i++) {
      double second = readings.second(i);
      Trend hold = Trend.before(readings, second - 30);
      if (!disturbed(firing, second)
          && side * hold.above(readings, second + 30, second + 60) >= LEAVES_KELVINS
          && side * hold.above(readings, second + 90, second + 150) >= GOES_ON_KELVINS) {
        double ripple = hold.ripple(readings);
        double first = hold.passedBy(readings, second - 30, side * (ripple + FIRST_KELVINS));
        double next = hold.passedBy(readings, first, side * (ripple + 3 * FIRST_KELVINS));
        int row = readings.firstFrom(first);
        boolean seen = row > 0 && first - readings.second(row - 1) <= WIDEST_GAP_SECONDS;
        double began = Math.max(first - 90, first - (next - first) / 2);
        return seen ? began - ANSWER_SECONDS : Double.NaN;
      }
    }
    return Double.NaN;
  }

  /**
   * Whether a display swings about a second. What it touches then is chance: only where it leaves
   * tells of its hold.
   */
  private static boolean swings(Readings readings, double second) {
    double sooner = mean(readings, second - Trend.SPAN_SECONDS, second);
    double later = mean(readings, second, second + Trend.SPAN_SECONDS);
    Trend line = new Trend(second, (sooner + later) / 2, (later - sooner) / Trend.SPAN_SECONDS);
    double side = 0;
    int turns = 0;
    for (int i = readings.firstFrom(second - Trend.SPAN_SECONDS);
        i < readings.size() && readings.second(i) <= second + Trend.SPAN_SECONDS;
        i++) {
      double off = readings.celsius(i) - line.at(readings.second(i));
      if (Math.abs(off) > SWINGING_KELVINS) {
        turns += side * off < 0 ? 1 : 0;
        side = off;
      }
    }
    return turns >= SWINGS;
  }

  /** Whether something else moves the display there. */
  private static boolean disturbed(LoggedFiring firing, double second) {
    return firing.happenings().stream()
        .anyMatch(
            event ->
                event.atSeconds() < second + DISTURBED_SECONDS
                    && event.atSeconds() + event.lengthSeconds() > second - 2 * DISTURBED_SECONDS);
  }

  /**
   * The straight line that a display followed up to a second.
   *
   * @param second in the middle of it, s
   * @param celsius there
   * @param rate K/s
   */
  private record Trend(double second, double celsius, double rate) {

    private static final double SPAN_SECONDS = 120;

    static Trend before(Readings readings, double until) {
      double later = mean(readings, until - SPAN_SECONDS, until);
      double sooner = mean(readings, until - 2.25 * SPAN_SECONDS, until - 1.25 * SPAN_SECONDS);
      return new Trend(until - SPAN_SECONDS / 2, later, (later - sooner) / (1.25 * SPAN_SECONDS));
    }

    private double at(double when) {
      return celsius + rate * (when - second);
    }

    /** By how much the readings of a while are above it, K. */
    double above(Readings readings, double from, double to) {
      return mean(readings, from, to) - at((from + to) / 2);
    }

    /** How far readings were off it at the most, K. */
    double ripple(Readings readings) {
      double most = 0;
      for (int i = readings.firstFrom(second - SPAN_SECONDS / 2);
          i < readings.size() && readings.second(i) <= second + SPAN_SECONDS / 2;
          i++) {
        most = Math.max(most, Math.abs(readings.celsius(i) - at(readings.second(i))));
      }
      return most;
    }

    /** When a reading is first that far above it, or below it for one under zero, s. */
    double passedBy(Readings readings, double from, double kelvins) {
      int i = readings.firstFrom(from);
      while (i < readings.size() - 1
          && Math.signum(kelvins) * (readings.celsius(i) - at(readings.second(i)))
              < Math.abs(kelvins)) {
        i++;
      }
      return readings.second(Math.min(i, readings.size() - 1));
    }
  }

  /** Mean of the readings from one second to another; the next one where there is none. */
  private static double mean(Readings readings, double from, double to) {
    double sum = 0;
    int count = 0;
    int first = readings.firstFrom(from);
    for (int i = first; i < readings.size() && readings.second(i) <= to; i++) {
      sum += readings.celsius(i);
      count++;
    }
    return count > 0 ? sum / count : readings.celsius(Math.min(first, readings.size() - 1));
  }

  /**
   * When the holds began by the program's clock, s; not a number where nothing tells.
   *
   * @param ahead of the log's, s
   */
  double[] seconds(double ahead) {
    return Arrays.stream(seconds).map(second -> second + ahead).toArray();
  }

  /** Whether the log tells when any hold began. */
  boolean any() {
    return !Double.isNaN(seconds[0]);
  }

  /** Whether the log tells when every hold began. */
  boolean all() {
    return Arrays.stream(seconds).noneMatch(Double::isNaN);
  }

  /** Whether any hold waited for its display long: what comes then can be followed closely. */
  boolean waited() {
    return IntStream.range(0, seconds.length).anyMatch(this::waited);
  }

  private boolean waited(int segment) {
    return seconds[segment] > set[segment] + FOLLOWED_SECONDS;
  }

  /** How sure each of them is, standard deviation, s; zero where nothing is left to chance. */
  double[] spreads() {
    return spread.clone();
  }

  /** How many residuals there are. */
  int size() {
    return any() ? seconds.length : 0;
  }

  /**
   * By how much a simulated display was not yet, or already, where its hold's clock begins when the
   * log's began: one residual a hold.
   *
   * @param crestKelvins how far the crests that the controller sees stand above the display's line
   */
  void residuals(FiringRun run, double ahead, double crestKelvins, double[] into, int at) {
    for (int s = 0; s < size(); s++) {
      // Where only the display told that it had come, it came as near as was taken for that.
      double near =
          left[s] ? FiringSimulation.nearKelvins(withinKelvins, crestKelvins, 0) : usualKelvins();
      into[at + s] = waited(s) ? miss(run, s, seconds[s] + ahead, near) : 0;
    }
  }

  private double miss(FiringRun run, int segment, double began, double near) {
    double target = schedule.segments().get(segment).target().celsius();
    double came = run.arrivalSeconds(segment, target, near, began);
    double now = run.readingCelsiusAt(began);
    double rate =
        Math.abs(run.readingCelsiusAt(began + 15) - run.readingCelsiusAt(began - 15)) / 30;
    double kelvins =
        Double.isFinite(came)
            ? comesFrom(segment) * (now - run.readingCelsiusAt(came))
            : comesFrom(segment) * (now - target) + near;
    double still = swings[segment] ? SWINGING_MISS_KELVINS : MISS_KELVINS;
    return kelvins / Math.hypot(still, MISS_SECONDS * rate);
  }

  /** From where the display comes to a target: 1 from below, -1 from above. */
  private double comesFrom(int segment) {
    return segment == 0 ? 1 : goesOn(segment - 1);
  }
}
