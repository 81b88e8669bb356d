package org.heatwright.keypad;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;

/**
 * The quickest way to a value: for keys that step, a search over holding and tapping, from below,
 * from above or around the end; for a knob the same over spinning and clicking; for digits, typing.
 * A hold or spin costs getting ready for it and the steps by which a person usually misses, so it
 * is used only where it saves time in spite of that.
 *
 * <p>Used for one scale, by one thread.
 */
final class Moves {

  private final Entry entry;
  private final Scale scale;
  private final KeyingTimes times;

  Moves(Entry entry, Scale scale, KeyingTimes times) {
    this.entry = entry;
    this.scale = scale;
    this.times = times;
  }

  /**
   * @param words what to press, without the accepting key
   * @param seconds about how long
   */
  record Move(String words, double seconds) {}

  /** Typing a value, whatever stood there. */
  static Move typing(List<String> keys, KeyingTimes times) {
    return new Move("type " + String.join(" ", keys), times.seconds(keys.size(), 0));
  }

  /** The quickest way from one position to another. */
  Move between(int from, int to) {
    if (from == to) {
      return new Move("", 0);
    }
    return new Search(to).best(from);
  }

  /** The way to a value from an unknown one: its time is that from the middle of the scale. */
  Move fromUnknown(int to) {
    String shows = scale.text(to);
    double seconds = between(scale.size() / 2, to).seconds();
    if (entry instanceof Entry.Knob) {
      return new Move("turn the knob until it shows " + shows, seconds);
    }
    return new Move("hold or tap up or down until it shows " + shows, seconds);
  }

  /** Where and when a repeating motion stands. */
  private record Tick(double seconds, int position, double scatterSteps, boolean stopped) {}

  private final class Search {

    private final int to;
    private final Map<Integer, Plan> oneRun = new HashMap<>();

    Search(int to) {
      this.to = to;
    }

    Move best(int from) {
      // A knob that is spun and spun back again is nobody's way.
      Plan plan = plan(from, !(entry instanceof Entry.Knob));
      return new Move(plan.words().get(), plan.seconds());
    }

    /** Without a run: taps or clicks only. {@code about} stands before their number. */
    private Plan taps(int from, String about) {
      int size = scale.size();
      int up = to - from;
      if (up < 0 && wrapsUp()) {
        up += size;
      }
      int down = from - to;
      if (down < 0 && wrapsDown()) {
        down += size;
      }
      boolean goUp = down < 0 || (up >= 0 && up <= down);
      int steps = goUp ? up : down;
      if (steps == 0) {
        return new Plan(0, 0, () -> "");
      }
      String direction =
          entry instanceof Entry.Knob
              ? (goUp ? "click right " : "click left ")
              : (goUp ? "tap up " : "tap down ");
      String around = goUp == (to > from) ? "" : ", around the end";
      return new Plan(steps * stepSeconds(), 0, () -> direction + about + times(steps) + around);
    }

    /** With at most one more run, or at most two. */
    private Plan plan(int from, boolean two) {
      Plan best = taps(from, "");
      for (int direction : new int[] {1, -1}) {
        for (Tick tick : run(from, direction, best.seconds())) {
          Plan rest =
              two
                  ? oneRun.computeIfAbsent(tick.position(), p -> plan(p, false))
                  : taps(tick.position(), "");
          double seconds =
              tick.seconds()
                  + times.mentalSeconds()
                  + tick.scatterSteps() * stepSeconds()
                  + rest.seconds();
          if (seconds < best.seconds()) {
            best = new Plan(seconds, rest.runs() + 1, () -> words(tick, direction, rest));
          }
        }
      }
      return best;
    }

    private String words(Tick tick, int direction, Plan rest) {
      String there = scale.text(tick.position());
      String run =
          entry instanceof Entry.Knob knob
              ? "spin %s %s"
                  .formatted(
                      direction > 0 ? "right" : "left",
                      turns(tick.seconds() / KeyingTimes.SPUN_TURN_SECONDS))
              : "hold %s about %s s"
                  .formatted(
                      direction > 0 ? "up" : "down",
                      Words.number(Math.round(tick.seconds() * 10) / 10.0));
      run += tick.stopped() ? ", until it stops at " + there : "";
      boolean exact = tick.scatterSteps() < 0.5;
      if (!tick.stopped() && tick.position() != to) {
        run += (exact ? ", to " : ", to about ") + there;
      }
      String goal = ", until it shows " + scale.text(to);
      String finger = entry instanceof Entry.Knob ? "click" : "tap";
      if (rest.runs() > 0) {
        return run + ", then " + rest.words().get();
      }
      int steps = (int) Math.round(rest.seconds() / stepSeconds());
      if (exact) {
        return steps > 0
            ? run + ", then " + rest.words().get()
            : run + (tick.stopped() ? "" : goal);
      }
      // After an inexact run the count is a guess, so the goal is what matters.
      return steps > 2
          ? run + ", then " + taps(tick.position(), "about ").words().get() + goal
          : run + ", then " + finger + goal;
    }

    private List<Tick> run(int from, int direction, double withinSeconds) {
      if (entry instanceof Entry.StepKeys keys) {
        return held(keys, from, direction, withinSeconds);
      }
      if (entry instanceof Entry.Knob knob) {
        return spun(knob, from, direction, withinSeconds);
      }
      return List.of();
    }

    private List<Tick> held(Entry.StepKeys keys, int from, int direction, double withinSeconds) {
      List<Tick> ticks = new ArrayList<>();
      if (keys.repeat().isEmpty()) {
        return ticks;
      }
      int position = step(from, direction);
      int travelled = 1;
      int stage = 0;
      double seconds = keys.repeat().get(0).afterSeconds();
      while (seconds < withinSeconds && travelled < scale.size()) {
        Entry.RepeatStage now = keys.repeat().get(stage);
        int next = step(position, direction * now.stepsPerTick());
        boolean stopped = next == position || (atEnd(next, direction) && stops(direction));
        position = next;
        travelled += now.stepsPerTick();
        double scatter =
            stopped
                ? 0
                : now.stepsPerTick() * now.ticksPerSecond() * KeyingTimes.RELEASE_SCATTER_SECONDS;
        ticks.add(new Tick(seconds, position, scatter, stopped));
        if (stopped) {
          break;
        }
        seconds += 1 / now.ticksPerSecond();
        if (stage + 1 < keys.repeat().size()
            && seconds >= keys.repeat().get(stage + 1).afterSeconds()) {
          stage++;
          seconds = keys.repeat().get(stage).afterSeconds();
        }
      }
      return ticks;
    }

    private List<Tick> spun(Entry.Knob knob, int from, int direction, double withinSeconds) {
      List<Tick> ticks = new ArrayList<>();
      int position = from;
      int travelled = 0;
      double clickSeconds = KeyingTimes.SPUN_TURN_SECONDS / knob.clicksPerTurn();
      for (int click = 1;
          click * clickSeconds < withinSeconds && travelled < scale.size();
          click++) {
        int next = step(position, direction * knob.fastSteps());
        boolean stopped = atEnd(next, direction) && stops(direction);
        position = next;
        travelled += knob.fastSteps();
        // People turn by quarters; finer than that they cannot tell.
        int quarter = Math.max(1, knob.clicksPerTurn() / 4);
        if ((stopped && click >= quarter) || click % quarter == 0) {
          double scatter = stopped ? 0 : KeyingTimes.SPIN_SCATTER_CLICKS * knob.fastSteps();
          ticks.add(new Tick(click * clickSeconds, position, scatter, stopped));
        }
        if (stopped) {
          break;
        }
      }
      return ticks;
    }
  }

  /** A way; its words are made only if it is the one taken. */
  private record Plan(double seconds, int runs, Supplier<String> words) {}

  /** One motion of several steps; beyond an end it stops there or lands on the other end. */
  int step(int position, int steps) {
    int next = position + steps;
    if (next >= scale.size()) {
      return wrapsUp() ? (position == scale.size() - 1 ? 0 : scale.size() - 1) : scale.size() - 1;
    }
    if (next < 0) {
      return wrapsDown() ? (position == 0 ? scale.size() - 1 : 0) : 0;
    }
    return next;
  }

  private boolean atEnd(int position, int direction) {
    return position == (direction > 0 ? scale.size() - 1 : 0);
  }

  private boolean stops(int direction) {
    return direction > 0 ? !wrapsUp() : !wrapsDown();
  }

  private boolean wrapsUp() {
    return limit(true) == Entry.AtLimit.WRAP;
  }

  private boolean wrapsDown() {
    return limit(false) == Entry.AtLimit.WRAP;
  }

  private Entry.AtLimit limit(boolean greatest) {
    if (entry instanceof Entry.StepKeys keys) {
      return greatest ? keys.atGreatest() : keys.atLeast();
    }
    if (entry instanceof Entry.Knob knob) {
      return greatest ? knob.atGreatest() : knob.atLeast();
    }
    return Entry.AtLimit.STOP;
  }

  private double stepSeconds() {
    return entry instanceof Entry.Knob ? KeyingTimes.CLICK_SECONDS : times.keySeconds();
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
