package org.heatwright.app.describe;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.heatwright.app.files.YamlText;
import org.heatwright.app.files.YamlValue;
import org.heatwright.keypad.Entry;
import org.heatwright.keypad.Gesture;
import org.heatwright.keypad.Key;
import org.heatwright.keypad.KeyedValue;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.Special;
import org.heatwright.keypad.machine.Display;
import org.heatwright.keypad.machine.KeyAction;
import org.heatwright.keypad.machine.KeypadMachine;
import org.heatwright.keypad.machine.MachineState;
import org.heatwright.keypad.machine.Where;
import org.heatwright.schedule.AtEnd;
import org.heatwright.schedule.HourMinute;

/**
 * A description read back in plain words: what it holds, and what each key does in each state. What
 * keys do is found by pressing them on the interpreter that keying sheets use, not by a second
 * reading of the description.
 */
public final class KeypadWords {

  /** Longer than any repeat needs to begin. */
  private static final double LONG_SECONDS = 5;

  private KeypadWords() {}

  /**
   * One state.
   *
   * @param state in words, e.g. "while a value is keyed"
   * @param keys what each key does there
   */
  public record Section(String state, List<Line> keys) {}

  /** A key and what it does. */
  public record Line(String key, String does) {}

  /** What the description holds, a sentence each. */
  public static List<String> facts(Keypad keypad) {
    List<String> facts = new ArrayList<>();
    facts.add(
        "%s stores %d programs of up to %d segments; the display has %d digits."
            .formatted(keypad.name(), keypad.slots(), keypad.segments(), keypad.displayDigits()));
    facts.add(unit(keypad));
    facts.add(entry(keypad.entry()));
    facts.add(
        "A value comes up %s; %s takes it."
            .formatted(
                keypad.starts() == Keypad.FieldStart.STORED
                    ? "as the program holds it"
                    : "at its own start value",
                keypad.accept().word()));
    facts.add("A segment is keyed in this order: %s.".formatted(words(keypad.order())));
    Keypad.RateField rate = keypad.rate();
    facts.add(
        "%s; %s; %s."
            .formatted(
                rate.time()
                    .map(
                        form ->
                            "Time to get to the target%s: written as %s, %s to %s"
                                .formatted(
                                    label(rate.label()),
                                    form.word(),
                                    rate.text(rate.range(), rate.range().min()),
                                    rate.text(rate.range(), rate.range().greatest())))
                    .orElseGet(
                        () ->
                            "Rate%s: %s degrees %s"
                                .formatted(
                                    label(rate.label()),
                                    range(rate.range()),
                                    rate.per() == Keypad.RateField.Per.HOUR
                                        ? "an hour"
                                        : "a minute")),
                special(rate.fastest(), "full speed"),
                switch (rate.cooling()) {
                  case IMPLIED -> "down follows from a lower target";
                  case NEGATIVE -> "down has a minus sign";
                  case NOT_CONTROLLED -> "it cannot cool at a rate";
                }));
    facts.add(
        "Target%s: %s.".formatted(label(keypad.target().label()), range(keypad.target().range())));
    Keypad.HoldField hold = keypad.hold();
    facts.add(
        "Hold%s: written as %s, up to %s, by %s min; %s."
            .formatted(
                label(hold.label()),
                hold.form().word(),
                HourMinute.format(hold.max()),
                YamlText.number(hold.stepMinutes().doubleValue()),
                special(hold.endless(), "until a person stops it")));
    facts.add(
        keypad
            .delay()
            .map(
                d ->
                    "Start delay%s: keyed %s, written as %s, up to %s."
                        .formatted(
                            label(d.label()),
                            YamlValue.word(d.position()),
                            d.form().word(),
                            HourMinute.format(
                                java.time.Duration.ofMinutes(d.range().greatest().longValue()))))
            .orElse("It cannot wait before it starts."));
    facts.add(end(keypad));
    facts.add(
        switch (keypad.programming().commits()) {
          case ACCEPTING -> "Each value is kept as it is taken.";
          case GESTURE ->
              "Nothing is kept until it is saved: %s%s."
                  .formatted(
                      keypad.gestures().commit().words(),
                      keypad.gestures().committed().map(s -> "; then it shows " + s).orElse(""));
          case START -> "A program is kept only when it is started.";
        });
    keypad
        .gestures()
        .discardsAfterSeconds()
        .ifPresent(
            s -> facts.add("Left untouched for %d s it throws away what was keyed.".formatted(s)));
    facts.add(review(keypad));
    facts.add(
        switch (keypad.afterPowerCut()) {
          case RESUMES -> "After a power cut a running program goes on.";
          case RESTARTS -> "After a power cut a running program begins again from its start.";
          case STOPS -> "After a power cut a running program stays off.";
          case UNKNOWN -> "What follows a power cut is not known.";
        });
    return facts;
  }

  private static String unit(Keypad keypad) {
    Keypad.UnitSetting units = keypad.units();
    String shown =
        units.shownAt().isEmpty()
            ? "nowhere shown"
            : "shown: "
                + units.shownAt().stream()
                    .sorted()
                    .map(YamlValue::word)
                    .collect(Collectors.joining(", "));
    if (!units.switchable()) {
      return "It works in %s; the unit is %s.".formatted(units.rangesIn().symbol(), shown);
    }
    if (units.asked().isPresent()) {
      Keypad.UnitPrompt asked = units.asked().orElseThrow();
      return "Each program asks its unit first%s: %s for °C, %s for °F (ranges here are in %s); the unit is %s; choosing another %s; read back it is %s."
          .formatted(
              label(asked.label()),
              asked.celsius(),
              asked.fahrenheit(),
              units.rangesIn().symbol(),
              shown,
              switch (units.switchingConverts()) {
                case YES -> "converts the program's numbers";
                case NO -> "leaves the program's numbers as they are";
                case UNKNOWN -> "may or may not convert the program's numbers";
              },
              switch (asked.review()) {
                case FIRST -> "shown first";
                case LAST -> "shown last";
                case HIDDEN -> "not shown";
              });
    }
    return "It can be switched between °C and °F (ranges here are in %s); the unit is %s; switching %s."
        .formatted(
            units.rangesIn().symbol(),
            shown,
            switch (units.switchingConverts()) {
              case YES -> "converts stored programs";
              case NO -> "leaves stored numbers as they are";
              case UNKNOWN -> "may or may not convert stored programs";
            });
  }

  private static String entry(Entry entry) {
    if (entry instanceof Entry.StepKeys steps) {
      String held =
          steps.repeat().isEmpty()
              ? "held, they do not run"
              : steps.repeat().stream()
                  .map(
                      s ->
                          "after %s s by %d, %s times a second"
                              .formatted(
                                  YamlText.number(s.afterSeconds()),
                                  s.stepsPerTick(),
                                  YamlText.number(s.ticksPerSecond())))
                  .collect(Collectors.joining("; ", "held, they run: ", ""));
      return "Up and down change a number by one step a tap; %s; %s."
          .formatted(held, limits(steps.atLeast(), steps.atGreatest()));
    }
    if (entry instanceof Entry.Knob knob) {
      return "The knob changes a number by one step a click, %d a turn%s; %s."
          .formatted(
              knob.clicksPerTurn(),
              knob.fastSteps() > 1 ? ", spun by %d a click".formatted(knob.fastSteps()) : "",
              limits(knob.atLeast(), knob.atGreatest()));
    }
    return ((Entry.DigitKeys) entry).pointKey()
        ? "Digits are typed, the point too."
        : "Digits are typed; the point stands still.";
  }

  private static String limits(Entry.AtLimit least, Entry.AtLimit greatest) {
    return "below the smallest it %s, above the largest it %s"
        .formatted(
            least == Entry.AtLimit.WRAP ? "jumps to the largest" : "stays",
            greatest == Entry.AtLimit.WRAP ? "jumps to the smallest" : "stays");
  }

  private static String label(Optional<String> label) {
    return label.map(l -> " (" + l + ")").orElse("");
  }

  private static String range(Keypad.Range range) {
    return "%s to %s by %s"
        .formatted(
            range.text(range.min()), range.text(range.greatest()), range.step().toPlainString());
  }

  private static String special(Optional<Special> special, String what) {
    return special
        .map(
            s ->
                "%s shows %s, %s%s"
                    .formatted(
                        what,
                        s.shows(),
                        s.place() == Special.Place.BELOW_LEAST
                            ? "below the smallest"
                            : "above the largest",
                        s.typed().map(t -> " (typed " + t + ")").orElse("")))
        .orElse("no value for " + what);
  }

  private static String end(Keypad keypad) {
    Keypad.EndRule end = keypad.end();
    String where =
        keypad.markField() == keypad.order().get(0)
            ? ""
            : " as the " + keypad.markField().word() + ", whatever stands before it,";
    String mark = end.mark().map(Special::shows).orElse("");
    String after =
        end.afterwards() == AtEnd.OFF ? "the elements go off" : "the last target is kept";
    return switch (end.by()) {
      case COUNT ->
          "The number of segments is keyed first; after the last one %s.".formatted(after);
      case MARK ->
          "%s%s in the first unused segment ends a program; then %s.".formatted(mark, where, after);
      case EVERY_UNUSED ->
          "Every segment runs: each unused one must read %s%s; then %s."
              .formatted(mark, where, after);
    };
  }

  private static String review(Keypad keypad) {
    Keypad.Review review = keypad.review();
    List<String> hidden =
        keypad.hiddenInReview().stream().sorted().map(KeyedValue.Kind::word).toList();
    return "Read back it shows %s%s%s%s."
        .formatted(
            review.order().isEmpty() ? "no value of a segment" : words(review.order()),
            review.unused() ? ", and the first unused segment" : "",
            hidden.isEmpty() ? "" : "; not shown, so never proven: " + String.join(", ", hidden),
            review.keysEdit() ? "; keys that make values change them there" : "");
  }

  private static String words(List<KeyedValue.Kind> kinds) {
    return kinds.stream().map(KeyedValue.Kind::word).collect(Collectors.joining(", "));
  }

  // ---- keys

  /** What each key does in each state, found by pressing it. */
  public static List<Section> keys(Keypad keypad) {
    KeypadMachine machine = new KeypadMachine(keypad);
    Presser presser = new Presser(machine, actions(keypad));
    MachineState idle = machine.idle(Map.of(), keypad.units().rangesIn());
    List<Section> sections = new ArrayList<>();
    sections.add(presser.section("On the idle display", idle));
    MachineState choosing = presser.after(idle, keypad.gestures().open());
    MachineState value = choosing;
    if (choosing.where() instanceof Where.Choosing) {
      sections.add(presser.section("While a program is chosen", choosing));
      value = machine.press(choosing, new KeyAction.Tap(keypad.accept()));
    }
    if (value.where() instanceof Where.Value shown && !shown.open()) {
      sections.add(presser.section("In the list of values", value));
      value = machine.press(value, new KeyAction.Tap(keypad.accept()));
    }
    if (value.where() instanceof Where.Value first) {
      sections.add(presser.section("While a value is keyed", value));
      int last = keypad.places().size() - 1;
      if (last > 0) {
        sections.add(
            presser.section(
                "At the last value",
                new MachineState(
                    new Where.Value(
                        last, value.draft().orElseThrow().texts().get(last), "", first.open()),
                    value.slot(),
                    value.slots(),
                    value.draft(),
                    false,
                    value.unit(),
                    List.of())));
      }
    }
    MachineState review = presser.after(idle, keypad.gestures().review());
    if (review.where() instanceof Where.Choosing) {
      review = machine.press(review, new KeyAction.Tap(keypad.accept()));
    }
    if (review.where() instanceof Where.Review) {
      sections.add(presser.section("While a program is read back", review));
    }
    if (!keypad.gestures().start().isEmpty()) {
      sections.add(
          presser.section(
              "While a program runs",
              new MachineState(
                  new Where.Running(),
                  1,
                  Map.of(),
                  Optional.empty(),
                  false,
                  keypad.units().rangesIn(),
                  List.of())));
    }
    return sections;
  }

  /** Every key once, and every hold that means something. */
  private static Set<KeyAction> actions(Keypad keypad) {
    Set<KeyAction> actions = new LinkedHashSet<>();
    for (Key key : keypad.keys().stream().sorted().toList()) {
      switch (key) {
        case DIGITS -> actions.add(new KeyAction.Digit(1));
        case TURN -> actions.add(new KeyAction.Turn(1, false));
        default -> actions.add(new KeyAction.Tap(key));
      }
    }
    if (keypad.entry() instanceof Entry.StepKeys steps && !steps.repeat().isEmpty()) {
      actions.add(new KeyAction.Hold(Key.UP, LONG_SECONDS));
      actions.add(new KeyAction.Hold(Key.DOWN, LONG_SECONDS));
    }
    Keypad.Gestures all = keypad.gestures();
    for (Gesture gesture :
        List.of(
            all.open(),
            all.commit(),
            all.leave(),
            all.previous(),
            all.review(),
            all.start(),
            all.stop(),
            all.switchUnit())) {
      for (Gesture.Press press : gesture.presses()) {
        if (press.holdSeconds() > 0) {
          actions.add(new KeyAction.Hold(press.key(), press.holdSeconds()));
        }
      }
    }
    return actions;
  }

  /** Presses keys and says what came of it. */
  private record Presser(KeypadMachine machine, Set<KeyAction> actions) {

    MachineState after(MachineState state, Gesture gesture) {
      MachineState at = state;
      for (Gesture.Press press : gesture.presses()) {
        at = machine.press(at, action(press));
      }
      return at;
    }

    private static KeyAction action(Gesture.Press press) {
      if (press.key() == Key.TURN) {
        return new KeyAction.Turn(1, false);
      }
      if (press.key() == Key.DIGITS) {
        return new KeyAction.Digit(1);
      }
      return press.holdSeconds() > 0
          ? new KeyAction.Hold(press.key(), press.holdSeconds())
          : new KeyAction.Tap(press.key());
    }

    Section section(String state, MachineState from) {
      List<Line> lines = new ArrayList<>();
      for (KeyAction action : actions) {
        boolean takes = action.press().key() == machine.keypad().accept();
        lines.add(new Line(name(action), does(from, machine.press(from, action), takes)));
      }
      return new Section(state, lines);
    }

    private static String name(KeyAction action) {
      if (action instanceof KeyAction.Digit) {
        return "a digit";
      }
      if (action instanceof KeyAction.Turn) {
        return "turn right";
      }
      String key = action.press().key() == Key.PUSH ? "push" : action.press().key().word();
      return action instanceof KeyAction.Hold hold
          ? "hold %s %s s".formatted(key, YamlText.number(hold.seconds()))
          : key;
    }

    private String does(MachineState from, MachineState to, boolean takes) {
      if (!to.begun().isEmpty()) {
        return "the first of several presses";
      }
      if (to.unit() != from.unit()) {
        return "switches the unit to " + to.unit().symbol();
      }
      if (to.where() instanceof Where.Running && !(from.where() instanceof Where.Running)) {
        return kept(from, to) + "STARTS THE PROGRAM: heat";
      }
      if (to.equals(from)) {
        return "nothing";
      }
      String kept = kept(from, to);
      if (to.where() instanceof Where.Idle) {
        return from.where() instanceof Where.Running
            ? "stops the program"
            : kept + "out, to the idle display";
      }
      if (to.where() instanceof Where.Choosing choosing) {
        if (from.where() instanceof Where.Choosing) {
          return "changes the program's number: " + shown(from) + " to " + shown(to);
        }
        return switch (choosing.then()) {
          case KEYING -> "asks which program to key";
          case REVIEW -> "asks which program to read back";
          case START -> "asks which program to start";
        };
      }
      if (to.where() instanceof Where.Review) {
        return from.where() instanceof Where.Review
            ? changed(from, to)
            : "reads the program back, from " + machine.display(to).words();
      }
      if (to.where() instanceof Where.Value now && from.where() instanceof Where.Value before) {
        return kept + moved(from, to, before, now, takes);
      }
      return kept + "goes to " + machine.display(to).words();
    }

    private String moved(
        MachineState from, MachineState to, Where.Value before, Where.Value now, boolean takes) {
      if (now.place() != before.place()) {
        String value =
            !before.open() ? "" : takes ? "takes the value and " : "drops the value and ";
        return value + "goes to " + machine.display(to).words();
      }
      if (now.open() != before.open()) {
        return now.open()
            ? "opens the value"
            : takes ? "takes the value and closes it" : "closes the value unchanged";
      }
      if (!now.text().equals(before.text()) || !now.typed().equals(before.typed())) {
        return "changes the value: " + shown(from) + " to " + shown(to);
      }
      return to.saved() && !from.saved() ? "stays here" : "takes the value and stays";
    }

    private String changed(MachineState from, MachineState to) {
      Where.Review before = (Where.Review) from.where();
      Where.Review now = (Where.Review) to.where();
      return before.item() == now.item()
          ? "CHANGES THE STORED VALUE: " + shown(from) + " to " + shown(to)
          : "goes to " + machine.display(to).words();
    }

    private String shown(MachineState state) {
      Display display = machine.display(state);
      return display.value().isEmpty() ? "blank" : display.value();
    }

    private static String kept(MachineState from, MachineState to) {
      boolean written = !to.slots().equals(from.slots());
      boolean saved = to.saved() && !from.saved();
      return written || saved ? "SAVES; " : "";
    }
  }
}
