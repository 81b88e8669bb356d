package org.heatwright.keypad.keying;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.PriorityQueue;
import org.heatwright.keypad.Entry;
import org.heatwright.keypad.Key;
import org.heatwright.keypad.Scale;
import org.heatwright.keypad.Words;
import org.heatwright.keypad.machine.KeyAction;
import org.heatwright.keypad.machine.Motion;

/**
 * The quickest way to a value: for keys that step, a search over holding and tapping, from below,
 * from above or around the end; for a knob the same over spinning and clicking; for digits, typing.
 * A hold or spin costs getting ready for it and the steps by which a person usually misses, so it
 * is used only where it saves time in spite of that.
 *
 * <p>The search is a shortest path over all positions of the scale (A* with a bound that is never
 * above the time that is left), so no sequence of these moves takes less by these times. Used for
 * one scale, by one thread.
 */
final class Moves {

  /** A finger is kept on a key no longer, s: ours. */
  private static final double LONGEST_RUN_SECONDS = 55;

  private final Entry entry;
  private final Scale scale;
  private final KeyingTimes times;
  private final Motion motion;

  /**
   * What a run does away from the ends, tick by tick of a key kept down, or quarter by quarter of a
   * spun knob: how long it lasts by then, from the press, by how many steps this one moves, and by
   * how many steps it misses.
   */
  private final double[] runSeconds;

  private final int[] runSteps;
  private final double[] runScatter;
  private final double[] least;
  private final double[] leastToAnEnd;
  private final Map<Integer, Move> fromUnknown = new HashMap<>();

  Moves(Entry entry, Scale scale, KeyingTimes times) {
    this.entry = entry;
    this.scale = scale;
    this.times = times;
    this.motion = new Motion(entry, scale.size());
    if (entry instanceof Entry.Knob knob) {
      int quarter = quarter(knob);
      this.runSeconds = new double[scale.size() / knob.fastSteps() / quarter + 1];
      Arrays.setAll(runSeconds, k -> (k + 1) * quarter * spunClickSeconds(knob));
      this.runSteps = new int[runSeconds.length];
      Arrays.fill(runSteps, quarter * knob.fastSteps());
      this.runScatter = new double[runSeconds.length];
      Arrays.fill(runScatter, KeyingTimes.SPIN_SCATTER_CLICKS * knob.fastSteps());
    } else {
      List<Motion.Tick> ticks =
          new Motion(entry, Integer.MAX_VALUE / 2).held(0, 1, LONGEST_RUN_SECONDS);
      this.runSeconds = ticks.stream().mapToDouble(Motion.Tick::seconds).toArray();
      this.runSteps = ticks.stream().mapToInt(Motion.Tick::stepsPerTick).toArray();
      this.runScatter = ticks.stream().mapToDouble(Moves::scatterSteps).toArray();
    }
    this.least = leastSeconds(true);
    boolean ends = !(motion.wraps(true) && motion.wraps(false));
    this.leastToAnEnd = ends ? leastSeconds(false) : new double[0];
  }

  /** By how many steps a key that is let go at a tick usually misses. */
  private static double scatterSteps(Motion.Tick tick) {
    return tick.stepsPerTick() * tick.ticksPerSecond() * KeyingTimes.RELEASE_SCATTER_SECONDS;
  }

  /** Everything that the value can be. */
  Scale scale() {
    return scale;
  }

  /**
   * For each distance a time that no way takes less than, as if the scale had no ends; with or
   * without the steps by which a run misses (a run into an end misses nothing).
   */
  private double[] leastSeconds(boolean misses) {
    double[] bound = new double[scale.size()];
    double perStep = stepSeconds();
    double[] until = new double[runSeconds.length];
    double[] with = new double[runSeconds.length];
    int[] travelled = new int[runSeconds.length];
    // The press itself is a step of a key; a knob has none.
    int steps = entry instanceof Entry.Knob ? 0 : 1;
    for (int k = 0; k < runSeconds.length; k++) {
      steps += runSteps[k];
      travelled[k] = steps;
      until[k] = times.mentalSeconds() + runSeconds[k];
      with[k] = until[k] + (misses ? runScatter[k] * perStep : 0);
    }
    for (int d = 1; d < bound.length; d++) {
      double best = bound[d - 1] + perStep;
      for (int k = 0; k < until.length && until[k] < best; k++) {
        int left = Math.abs(d - travelled[k]);
        best = Math.min(best, with[k] + (left < d ? bound[left] : 0));
      }
      bound[d] = best;
    }
    return bound;
  }

  /** People turn by quarters; finer than that they cannot tell. */
  private static int quarter(Entry.Knob knob) {
    return Math.max(1, knob.clicksPerTurn() / 4);
  }

  /**
   * @param words what to press, without the accepting key
   * @param actions the same, key by key
   * @param seconds about how long
   */
  record Move(String words, List<KeyAction> actions, double seconds) {}

  /** Typing a value, whatever stood there. */
  static Move typing(String keys, KeyingTimes times) {
    List<KeyAction> actions = new ArrayList<>();
    List<String> words = new ArrayList<>();
    for (char c : keys.toCharArray()) {
      Key sign = c == '-' ? Key.MINUS : Key.POINT;
      boolean digit = Character.isDigit(c);
      actions.add(digit ? new KeyAction.Digit(c - '0') : new KeyAction.Tap(sign));
      words.add(digit ? String.valueOf(c) : sign.word());
    }
    return new Move("type " + String.join(" ", words), actions, times.seconds(actions.size(), 0));
  }

  /** The way to a value from an unknown one: its time is that from the middle of the scale. */
  Move fromUnknown(int to) {
    return fromUnknown.computeIfAbsent(to, this::newFromUnknown);
  }

  private Move newFromUnknown(int to) {
    String shows = scale.text(to);
    double seconds = between(scale.size() / 2, to).seconds();
    String words =
        entry instanceof Entry.Knob
            ? "turn the knob until it shows " + shows
            : "hold or tap up or down until it shows " + shows;
    return new Move(words, List.of(), seconds);
  }

  /**
   * One leg of a way.
   *
   * @param from where it begins
   * @param to where it ends
   * @param direction 1 up, -1 down
   * @param run whether the key is kept down or the knob is spun; else it is one step
   * @param tickSeconds when the last tick came, s; zero for a step
   * @param action the key action
   * @param costSeconds its time with getting ready and correcting, s
   * @param scatterSteps by how many steps a person usually misses
   * @param stopped whether it ran into an end
   */
  private record Leg(
      int from,
      int to,
      int direction,
      boolean run,
      double tickSeconds,
      KeyAction action,
      double costSeconds,
      double scatterSteps,
      boolean stopped) {}

  /** The quickest way from one position to another. */
  Move between(int from, int to) {
    if (from == to) {
      return new Move("", List.of(), 0);
    }
    Search search = new Search(to);
    search.from(from);
    Deque<Leg> way = new ArrayDeque<>();
    double seconds = 0;
    for (int at = to; at != from; at = way.getFirst().from()) {
      Leg leg = search.into(at);
      way.addFirst(leg);
      seconds += leg.costSeconds();
    }
    List<Leg> legs = runFirst(new ArrayList<>(way), to, seconds);
    return new Move(words(legs, to), legs.stream().map(Leg::action).toList(), seconds);
  }

  /**
   * Steps before a run might as well come after it, where one sees what is left; so they do if that
   * takes no longer.
   */
  private List<Leg> runFirst(List<Leg> legs, int to, double seconds) {
    Optional<Leg> run = legs.stream().filter(Leg::run).findFirst();
    if (legs.get(0).run() || run.isEmpty()) {
      return legs;
    }
    int from = legs.get(0).from();
    for (Leg first : runs(from, run.get().direction(), run.get().tickSeconds() + 1e-9)) {
      if (first.tickSeconds() < run.get().tickSeconds() - 1e-9) {
        continue;
      }
      List<Leg> way = new ArrayList<>(List.of(first));
      int direction = direction(first.to(), to);
      double cost = first.costSeconds();
      for (int at = first.to(); at != to && cost <= seconds + 1e-9; ) {
        int next = motion.step(at, direction);
        way.add(step(at, next, direction));
        cost += stepSeconds();
        at = next;
      }
      if (cost <= seconds + 1e-9) {
        return way;
      }
    }
    return legs;
  }

  /** In which direction the fewest steps lead. */
  private int direction(int from, int to) {
    int up = to - from;
    if (up < 0) {
      up = motion.wraps(true) ? up + scale.size() : Integer.MAX_VALUE;
    }
    int down = from - to;
    if (down < 0) {
      down = motion.wraps(false) ? down + scale.size() : Integer.MAX_VALUE;
    }
    return up <= down ? 1 : -1;
  }

  private record Open(double boundSeconds, double seconds, int position) {}

  /**
   * One search; for each position the last leg of the quickest way there, as far as it is needed.
   */
  private final class Search {

    private final int to;
    private final int[] cameFrom = new int[scale.size()];
    private final int[] direction = new int[scale.size()];

    /** Which tick or click of a run ended there; -1 for a step. */
    private final int[] tick = new int[scale.size()];

    private final double[] seconds = new double[scale.size()];
    private final boolean[] settled = new boolean[scale.size()];
    private final PriorityQueue<Open> open =
        new PriorityQueue<>((a, b) -> Double.compare(a.boundSeconds(), b.boundSeconds()));
    private double most;

    Search(int to) {
      this.to = to;
      Arrays.fill(seconds, Double.POSITIVE_INFINITY);
    }

    void from(int from) {
      seconds[from] = 0;
      most = reachable(from, to);
      open.add(new Open(leastSeconds(from, to), 0, from));
      while (!settled[to]) {
        int at = Objects.requireNonNull(open.poll(), "every value can be reached").position();
        if (settled[at]) {
          continue;
        }
        settled[at] = true;
        for (int way : new int[] {1, -1}) {
          int next = motion.step(at, way);
          if (next != at) {
            reach(at, next, way, -1, stepSeconds());
          }
          if (entry instanceof Entry.StepKeys) {
            hold(at, way);
          } else {
            for (Leg leg : runs(at, way, most - seconds[at] - times.mentalSeconds())) {
              int click = Math.abs(((KeyAction.Turn) leg.action()).clicks());
              reach(at, leg.to(), way, click, leg.costSeconds());
            }
          }
        }
      }
    }

    private void hold(int at, int way) {
      int position = motion.step(at, way);
      int end = way > 0 ? scale.size() - 1 : 0;
      boolean wraps = motion.wraps(way > 0);
      double within = most - seconds[at] - times.mentalSeconds();
      for (int k = 0; k < runSeconds.length && runSeconds[k] <= within; k++) {
        int next = motion.step(position, way * runSteps[k]);
        boolean stopped = next == position || (next == end && !wraps);
        position = next;
        double scatter = stopped ? 0 : runScatter[k] * stepSeconds();
        reach(at, position, way, k, times.mentalSeconds() + runSeconds[k] + scatter);
        if (stopped) {
          return;
        }
      }
    }

    private void reach(int at, int next, int way, int k, double cost) {
      double there = seconds[at] + cost;
      if (settled[next] || there >= seconds[next]) {
        return;
      }
      double bound = there + leastSeconds(next, to);
      if (bound > most) {
        return;
      }
      if (next == to) {
        most = there;
      }
      seconds[next] = there;
      cameFrom[next] = at;
      direction[next] = way;
      tick[next] = k;
      open.add(new Open(bound, there, next));
    }

    Leg into(int at) {
      int from = cameFrom[at];
      if (tick[at] < 0) {
        return step(from, at, direction[at]);
      }
      if (entry instanceof Entry.StepKeys) {
        return runs(from, direction[at], runSeconds[tick[at]] + 1e-9).get(tick[at]);
      }
      return runs(from, direction[at], Double.MAX_VALUE).stream()
          .filter(l -> Math.abs(((KeyAction.Turn) l.action()).clicks()) == tick[at])
          .findFirst()
          .orElseThrow();
    }
  }

  /** A time in which the goal is surely reached: by steps, or by one run and steps. */
  private double reachable(int from, int to) {
    double enough = fewestSteps(from, to) * stepSeconds();
    for (int direction : new int[] {1, -1}) {
      for (Leg leg : runs(from, direction, enough - times.mentalSeconds())) {
        enough = Math.min(enough, leg.costSeconds() + fewestSteps(leg.to(), to) * stepSeconds());
      }
    }
    return enough + 1e-9;
  }

  private int fewestSteps(int from, int to) {
    int steps = Math.abs(to - from);
    if (motion.wraps(true)) {
      steps = Math.min(steps, Math.floorMod(to - from, scale.size()));
    }
    if (motion.wraps(false)) {
      steps = Math.min(steps, Math.floorMod(from - to, scale.size()));
    }
    return steps;
  }

  /** No way takes less: past no end, or by running into one that stops and on from there. */
  private double leastSeconds(int from, int to) {
    double bound = least[fewestSteps(from, to)];
    int greatest = scale.size() - 1;
    if (!motion.wraps(true)) {
      bound =
          Math.min(
              bound, leastToAnEnd[fewestSteps(from, greatest)] + least[fewestSteps(greatest, to)]);
    }
    if (!motion.wraps(false)) {
      bound = Math.min(bound, leastToAnEnd[fewestSteps(from, 0)] + least[fewestSteps(0, to)]);
    }
    return bound;
  }

  private Leg step(int from, int to, int direction) {
    KeyAction action =
        entry instanceof Entry.Knob
            ? new KeyAction.Turn(direction, false)
            : new KeyAction.Tap(direction > 0 ? Key.UP : Key.DOWN);
    return new Leg(from, to, direction, false, 0, action, stepSeconds(), 0, false);
  }

  private List<Leg> runs(int from, int direction, double withinSeconds) {
    List<Leg> legs = new ArrayList<>();
    if (withinSeconds <= 0) {
      return legs;
    }
    if (entry instanceof Entry.StepKeys) {
      List<Motion.Tick> ticks =
          motion.held(from, direction, Math.min(withinSeconds, LONGEST_RUN_SECONDS));
      for (int k = 0; k < ticks.size(); k++) {
        Motion.Tick tick = ticks.get(k);
        double scatter = tick.stopped() ? 0 : scatterSteps(tick);
        // Half way to the next tick, which a faster stage may bring sooner.
        double letGo =
            k + 1 < runSeconds.length
                ? (tick.seconds() + runSeconds[k + 1]) / 2
                : tick.seconds() + 0.5 / tick.ticksPerSecond();
        legs.add(
            run(
                from,
                tick.position(),
                direction,
                tick.seconds(),
                new KeyAction.Hold(direction > 0 ? Key.UP : Key.DOWN, letGo),
                scatter,
                tick.stopped()));
      }
    } else if (entry instanceof Entry.Knob knob) {
      spins(knob, from, direction, withinSeconds, legs);
    }
    return legs;
  }

  private void spins(
      Entry.Knob knob, int from, int direction, double withinSeconds, List<Leg> legs) {
    int position = from;
    int quarter = quarter(knob);
    int most = scale.size() / knob.fastSteps() + quarter;
    for (int click = 1; click <= most; click++) {
      double seconds = click * spunClickSeconds(knob);
      if (seconds > withinSeconds) {
        return;
      }
      int next = motion.step(position, direction * knob.fastSteps());
      boolean atEnd = next == (direction > 0 ? scale.size() - 1 : 0);
      boolean stopped = atEnd && !motion.wraps(direction > 0);
      position = next;
      if ((stopped && click >= quarter) || click % quarter == 0) {
        double scatter = stopped ? 0 : KeyingTimes.SPIN_SCATTER_CLICKS * knob.fastSteps();
        legs.add(
            run(
                from,
                position,
                direction,
                seconds,
                new KeyAction.Turn(direction * click, true),
                scatter,
                stopped));
      }
      if (stopped && click >= quarter) {
        return;
      }
    }
  }

  private Leg run(
      int from,
      int to,
      int direction,
      double seconds,
      KeyAction action,
      double scatterSteps,
      boolean stopped) {
    double cost = times.mentalSeconds() + seconds + scatterSteps * stepSeconds();
    return new Leg(from, to, direction, true, seconds, action, cost, scatterSteps, stopped);
  }

  private static double spunClickSeconds(Entry.Knob knob) {
    return KeyingTimes.SPUN_TURN_SECONDS / knob.clicksPerTurn();
  }

  private double stepSeconds() {
    return entry instanceof Entry.Knob ? KeyingTimes.CLICK_SECONDS : times.keySeconds();
  }

  // ---- words

  private String words(List<Leg> legs, int goal) {
    List<String> phrases = new ArrayList<>();
    boolean guess = false;
    int i = 0;
    while (i < legs.size()) {
      Leg leg = legs.get(i);
      if (leg.run()) {
        guess = leg.scatterSteps() >= 0.5;
        phrases.add(runWords(leg, goal, guess));
        i++;
        continue;
      }
      int first = i;
      while (i < legs.size() && !legs.get(i).run() && legs.get(i).direction() == leg.direction()) {
        i++;
      }
      phrases.add(stepWords(legs.subList(first, i), guess && i == legs.size(), goal));
      guess = guess && i < legs.size();
    }
    if (guess) {
      phrases.add((entry instanceof Entry.Knob ? "click" : "tap") + untilShows(goal));
    }
    return String.join(", then ", phrases);
  }

  private String runWords(Leg leg, int goal, boolean guess) {
    String run =
        entry instanceof Entry.Knob
            ? "spin %s %s"
                .formatted(
                    leg.direction() > 0 ? "right" : "left",
                    turns(leg.tickSeconds() / KeyingTimes.SPUN_TURN_SECONDS))
            : "hold %s about %s s"
                .formatted(
                    leg.direction() > 0 ? "up" : "down",
                    Words.number(Math.round(leg.tickSeconds() * 10) / 10.0));
    String there = scale.text(leg.to());
    if (leg.stopped()) {
      return run + ", until it stops at " + there;
    }
    if (leg.to() == goal) {
      return guess ? run : run + untilShows(goal);
    }
    return run + (guess ? ", to about " : ", to ") + there;
  }

  private String stepWords(List<Leg> steps, boolean guess, int goal) {
    int direction = steps.get(0).direction();
    String finger =
        entry instanceof Entry.Knob
            ? (direction > 0 ? "click right " : "click left ")
            : (direction > 0 ? "tap up " : "tap down ");
    boolean around = steps.stream().anyMatch(s -> (s.to() > s.from()) != (direction > 0));
    if (!guess) {
      return finger + times(steps.size()) + (around ? ", around the end" : "");
    }
    // After an inexact run the count is a guess, so the goal is what matters.
    return steps.size() > 2
        ? finger + "about " + times(steps.size()) + untilShows(goal)
        : (entry instanceof Entry.Knob ? "click" : "tap") + untilShows(goal);
  }

  private String untilShows(int goal) {
    return ", until it shows " + scale.text(goal);
  }

  private static String turns(double turns) {
    long quarters = Math.max(1, Math.round(turns * 4));
    return quarters == 1
        ? "a quarter turn"
        : "about %s turns".formatted(Words.number(quarters / 4.0));
  }

  private static String times(int steps) {
    return steps == 1 ? "once" : steps == 2 ? "twice" : steps + " times";
  }
}
