package org.heatwright.keypad.keying;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.heatwright.keypad.Entry;
import org.heatwright.keypad.KeyedValue;
import org.heatwright.keypad.Scale;
import org.heatwright.keypad.TestKeypads;
import org.heatwright.keypad.machine.Motion;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class MovesTest {

  private static final Entry.StepKeys STOPPING =
      new Entry.StepKeys(
          List.of(new Entry.RepeatStage(0.6, 1, 6), new Entry.RepeatStage(3, 10, 5)),
          Entry.AtLimit.STOP,
          Entry.AtLimit.STOP);

  private static Moves moves(Entry entry, int positions) {
    return new Moves(entry, Scale.numbers(positions), KeyingTimes.OCCASIONAL);
  }

  /**
   * Outside check: the worked estimate of 48 digits, 15 confirmations and 15 prompts by the
   * keystroke-level operators K and M of Card, Moran and Newell (1980, 1983): 38 s, 52 s, 68 s and
   * 96 s at K 0.28, 0.50, 0.75 and 1.20.
   */
  @Tag("published")
  @Test
  void typingTimesFollowTheKeystrokeLevelFigures() {
    assertThat(new KeyingTimes(0.28, 1.35).seconds(63, 15)).isCloseTo(38, within(0.5));
    assertThat(new KeyingTimes(0.50, 1.35).seconds(63, 15)).isCloseTo(52, within(0.5));
    assertThat(new KeyingTimes(0.75, 1.35).seconds(63, 15)).isCloseTo(68, within(0.5));
    assertThat(new KeyingTimes(1.20, 1.35).seconds(63, 15)).isCloseTo(96, within(0.5));
  }

  @Test
  void fewStepsAreTapped() {
    Moves.Move move = moves(STOPPING, 1000).between(99, 102);
    assertThat(move.words()).isEqualTo("tap up 3 times");
    assertThat(move.seconds()).isCloseTo(3 * 0.28, within(1e-9));
    assertThat(moves(STOPPING, 1000).between(102, 101).words()).isEqualTo("tap down once");
    assertThat(moves(STOPPING, 1000).between(7, 7).words()).isEmpty();
  }

  @Test
  void manyStepsAreHeldAndThenTapped() {
    Moves.Move move = moves(STOPPING, 1000).between(19, 731);
    assertThat(move.words()).startsWith("hold up about 1").contains("until it shows 732");
    // 712 steps: by tapping 199 s. Held, 17 steps come in the first 3 s and 50 a second after it.
    assertThat(move.seconds()).isBetween(3 + (712 - 60) / 50.0 - 1, 25.0);
  }

  @Test
  void anEndThatStopsIsHeldInto() {
    assertThat(moves(STOPPING, 60).between(30, 59).words()).contains("until it stops at 60");
  }

  @Test
  void theWayAroundTheEndIsTakenWhereItIsShorter() {
    Entry.StepKeys wrapping =
        new Entry.StepKeys(STOPPING.repeat(), Entry.AtLimit.WRAP, Entry.AtLimit.WRAP);
    assertThat(moves(wrapping, 1000).between(0, 998).words())
        .isEqualTo("tap down twice, around the end");
    assertThat(moves(wrapping, 1000).between(999, 1).words())
        .isEqualTo("tap up twice, around the end");
    assertThat(moves(STOPPING, 1000).between(0, 998).words()).doesNotContain("around");
  }

  @Test
  void keysThatDoNotRepeatAreTappedAllTheWay() {
    Entry.StepKeys taps = new Entry.StepKeys(List.of(), Entry.AtLimit.STOP, Entry.AtLimit.STOP);
    assertThat(moves(taps, 100).between(0, 80).words()).isEqualTo("tap up 80 times");
  }

  @Test
  void aKnobIsSpunAndThenClicked() {
    Entry.Knob knob = new Entry.Knob(24, 10, Entry.AtLimit.STOP, Entry.AtLimit.STOP);
    assertThat(moves(knob, 1000).between(100, 104).words()).isEqualTo("click right 4 times");
    Moves.Move far = moves(knob, 1000).between(100, 704);
    assertThat(far.words()).startsWith("spin right about 2.5 turns").contains("until it shows 705");
    assertThat(far.seconds()).isLessThan(604 * KeyingTimes.CLICK_SECONDS / 5);
  }

  /** The search's time is never worse than tapping. */
  @Tag("property")
  @Test
  void noWayIsSlowerThanTapping() {
    Moves moves = moves(STOPPING, 400);
    for (int from = 0; from < 400; from += 37) {
      for (int to = 0; to < 400; to += 23) {
        Moves.Move move = moves.between(from, to);
        assertThat(move.seconds()).isLessThanOrEqualTo(Math.abs(to - from) * 0.28 + 1e-9);
        assertThat(move.words().isEmpty()).isEqualTo(from == to);
      }
    }
  }

  /**
   * The words are carried out on a second, independent model of a repeating key: the holds land
   * where the sheet says (to a tick, as it gives tenths of a second), and the taps end at the goal.
   */
  @Tag("property")
  @Test
  void carryingOutTheWordsReachesTheValue() {
    Random random = new Random(11);
    int holds = 0;
    for (Entry.AtLimit limit : Entry.AtLimit.values()) {
      Entry.StepKeys keys = new Entry.StepKeys(STOPPING.repeat(), limit, limit);
      for (int run = 0; run < 150; run++) {
        int size = 20 + random.nextInt(1200);
        int from = random.nextInt(size);
        int to = random.nextInt(size);
        String words = moves(keys, size).between(from, to).words();
        int position = from;
        for (String phrase :
            words.isEmpty() ? List.<String>of() : List.of(words.split(", then "))) {
          Matcher hold = HOLD.matcher(phrase);
          Matcher tap = TAP.matcher(phrase);
          if (hold.find()) {
            holds++;
            int direction = hold.group(1).equals("up") ? 1 : -1;
            int landed = held(position, direction, Double.parseDouble(hold.group(2)), size, limit);
            int said = hold.group(3) == null ? to : Integer.parseInt(hold.group(3)) - 1;
            assertThat(Math.abs(landed - said)).as(words).isLessThanOrEqualTo(10);
            position = said;
          } else if (tap.find()) {
            int count =
                tap.group(2).equals("once")
                    ? 1
                    : tap.group(2).equals("twice") ? 2 : Integer.parseInt(tap.group(3));
            for (int i = 0; i < count; i++) {
              position = pressed(position, tap.group(1).equals("up") ? 1 : -1, size, limit);
            }
          } else {
            // "tap, until it shows …": within reach of what a person misses by.
            assertThat(phrase).startsWith("tap, until it shows ");
            assertThat(Math.abs(position - to)).as(words).isLessThanOrEqualTo(10);
            position = to;
          }
        }
        assertThat(position).as("%d to %d of %d: %s", from, to, size, words).isEqualTo(to);
      }
    }
    assertThat(holds).isGreaterThan(200);
  }

  private static final Pattern HOLD =
      Pattern.compile(
          "hold (up|down) about ([\\d.]+) s(?:, (?:to about|to|until it stops at) (\\d+))?");
  private static final Pattern TAP =
      Pattern.compile("tap (up|down) (?:about )?(once|twice|(\\d+) times)");

  private static int pressed(int position, int steps, int size, Entry.AtLimit limit) {
    int end = steps > 0 ? size - 1 : 0;
    if (position == end) {
      return limit == Entry.AtLimit.WRAP ? size - 1 - end : end;
    }
    return Math.max(0, Math.min(size - 1, position + steps));
  }

  /** One step at once, six single steps a second from 0.6 s, five tens a second from 3 s. */
  private static int held(int from, int direction, double seconds, int size, Entry.AtLimit limit) {
    int position = pressed(from, direction, size, limit);
    for (int tick = 0; 0.6 + tick / 6.0 < 3 - 1e-9 && 0.6 + tick / 6.0 <= seconds + 0.051; tick++) {
      position = pressed(position, direction, size, limit);
    }
    for (int tick = 0; 3 + tick / 5.0 <= seconds + 0.051; tick++) {
      position = pressed(position, 10 * direction, size, limit);
    }
    return position;
  }

  @Test
  void aStepBeyondAnEndStopsThereFirst() {
    Entry.StepKeys wrapping =
        new Entry.StepKeys(STOPPING.repeat(), Entry.AtLimit.WRAP, Entry.AtLimit.WRAP);
    assertThat(new Motion(wrapping, 100).step(95, 10)).isEqualTo(99);
    assertThat(new Motion(wrapping, 100).step(99, 10)).isZero();
    assertThat(new Motion(wrapping, 100).step(3, -10)).isZero();
    assertThat(new Motion(wrapping, 100).step(0, -1)).isEqualTo(99);
    assertThat(new Motion(STOPPING, 100).step(99, 1)).isEqualTo(99);
  }

  @Test
  void aSignedScaleRunsThroughItsLeastValues() {
    Scale scale = Scale.of(TestKeypads.knob(), KeyedValue.Kind.RATE, TemperatureUnit.CELSIUS);
    int zero = scale.positionOf("0.0").orElseThrow();
    assertThat(scale.text(zero - 1)).isEqualTo("-0.1");
    assertThat(scale.text(zero + 1)).isEqualTo("0.1");
    assertThat(scale.text(0)).isEqualTo("-30.0");
    assertThat(scale.text(scale.size() - 1)).isEqualTo("----");
    assertThat(scale.text(scale.leastNumber())).isEqualTo("0.1");
  }
}
