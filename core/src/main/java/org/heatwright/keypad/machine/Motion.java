package org.heatwright.keypad.machine;

import java.util.ArrayList;
import java.util.List;
import org.heatwright.keypad.Entry;

/**
 * How a value moves along its scale under the keys.
 *
 * @param entry how values are made
 * @param size positions of the scale
 */
public record Motion(Entry entry, int size) {

  /**
   * Where a repeating key stands at one of its ticks.
   *
   * @param seconds from the press, s
   * @param position on the scale
   * @param stepsPerTick how far the last tick moved it
   * @param ticksPerSecond how fast ticks come
   * @param stopped whether it can move no farther
   */
  public record Tick(
      double seconds, int position, int stepsPerTick, double ticksPerSecond, boolean stopped) {}

  /**
   * One motion of several steps; beyond an end it stops there, or from the end lands on the other.
   */
  public int step(int position, int steps) {
    int next = position + steps;
    if (next >= size) {
      return wraps(true) && position == size - 1 ? 0 : size - 1;
    }
    if (next < 0) {
      return wraps(false) && position == 0 ? size - 1 : 0;
    }
    return next;
  }

  /** Whether a step up from the greatest, or down from the least, lands on the other end. */
  public boolean wraps(boolean up) {
    Entry.AtLimit limit = Entry.AtLimit.STOP;
    if (entry instanceof Entry.StepKeys keys) {
      limit = up ? keys.atGreatest() : keys.atLeast();
    } else if (entry instanceof Entry.Knob knob) {
      limit = up ? knob.atGreatest() : knob.atLeast();
    }
    return limit == Entry.AtLimit.WRAP;
  }

  /**
   * The ticks of a key kept down, without the step of the press itself; ends where nothing moves
   * any more.
   *
   * @param from where the value stood before the press
   * @param direction 1 up, -1 down
   * @param withinSeconds ticks later than this are left out
   */
  public List<Tick> held(int from, int direction, double withinSeconds) {
    List<Tick> ticks = new ArrayList<>();
    if (!(entry instanceof Entry.StepKeys keys) || keys.repeat().isEmpty()) {
      return ticks;
    }
    int position = step(from, direction);
    int stage = 0;
    double seconds = keys.repeat().get(0).afterSeconds();
    while (seconds <= withinSeconds) {
      Entry.RepeatStage now = keys.repeat().get(stage);
      int next = step(position, direction * now.stepsPerTick());
      boolean atEnd = next == (direction > 0 ? size - 1 : 0);
      boolean stopped = next == position || (atEnd && !wraps(direction > 0));
      position = next;
      ticks.add(new Tick(seconds, position, now.stepsPerTick(), now.ticksPerSecond(), stopped));
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

  /** Where a key kept down so long leaves the value. */
  public int afterHolding(int from, int direction, double seconds) {
    List<Tick> ticks = held(from, direction, seconds);
    return ticks.isEmpty() ? step(from, direction) : ticks.get(ticks.size() - 1).position();
  }

  /** Where a knob leaves the value. */
  public int afterTurning(int from, int clicks, boolean spun) {
    int steps = spun && entry instanceof Entry.Knob knob ? knob.fastSteps() : 1;
    int position = from;
    for (int click = 0; click < Math.abs(clicks); click++) {
      int next = step(position, Integer.signum(clicks) * steps);
      if (next == position) {
        break;
      }
      position = next;
    }
    return position;
  }
}
