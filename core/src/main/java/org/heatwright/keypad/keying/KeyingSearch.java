package org.heatwright.keypad.keying;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.PriorityQueue;
import java.util.Set;
import org.heatwright.keypad.Entry;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.Gesture;
import org.heatwright.keypad.Key;
import org.heatwright.keypad.KeyedValue;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.Place;
import org.heatwright.keypad.Scale;
import org.heatwright.keypad.Special;
import org.heatwright.keypad.machine.Contents;
import org.heatwright.keypad.machine.KeyAction;
import org.heatwright.keypad.machine.KeypadMachine;
import org.heatwright.keypad.machine.MachineState;
import org.heatwright.keypad.machine.Where;

/**
 * The least time from the first value of a slot to the program stored and the keypad idle (or,
 * where only starting stores, started): a shortest path over the interpreter's states.
 *
 * <p>At a value that is not the program's the only way on is to make it so: it must be made once,
 * making it costs the same whenever one stands there, and having it made never lengthens what is
 * left. A test compares this with an exhaustive search over single keys. Times: a key and a moment
 * of getting ready for every key or gesture that leads somewhere ({@link KeyingTimes}), one key for
 * each step along a list, the {@link Moves} for values. Used once, by one thread.
 */
final class KeyingSearch {

  private final FittedProgram program;
  private final Keypad keypad;
  private final Hand hand;
  private final KeyingTimes times;
  private final Known known;
  private final KeypadMachine machine;
  private final List<Place> places;
  private final Map<Integer, KeyedValue> wanted = new HashMap<>();
  private final Map<String, Moves.Move> made = new HashMap<>();

  KeyingSearch(FittedProgram program, Hand hand, Known known) {
    this.program = program;
    this.hand = hand;
    this.machine = hand.machine();
    this.keypad = machine.keypad();
    this.times = hand.times();
    this.known = known;
    this.places = keypad.places();
    program.values().forEach(v -> wanted.put(places.indexOf(Place.of(v, keypad)), v));
  }

  /** What one edge of the way is about. */
  enum About {
    /** A value is made, or taken as it stands. */
    VALUE,
    /** One value back, or along a list. */
    WALK,
    SAVE,
    LEAVE,
    /** Starting, where only that stores. */
    START,
    STOP
  }

  /**
   * One edge of the way.
   *
   * @param about what it does
   * @param place index of the value it is about, if it is about one
   * @param before what the display shows before; empty if that is not known
   * @param move how the value is made; empty if it stands there
   * @param go the keys that lead on
   * @param seconds about how long
   */
  record Edge(
      About about,
      OptionalInt place,
      Optional<String> before,
      Optional<Moves.Move> move,
      List<KeyAction> go,
      double seconds) {}

  /** A state and which wanted values are still unknown in it. */
  private record Node(MachineState state, Set<Integer> unknown) {}

  /** What an edge leads to. */
  private record Next(Edge edge, Node node) {}

  /** The quickest way to a node that is known so far. */
  private record Way(Optional<Way> before, Optional<Edge> edge, Node node, double seconds) {}

  /** The edges of a quickest way, in order, from the first value on. */
  List<Edge> quickest() {
    Set<Integer> unknown = new HashSet<>(wanted.keySet());
    unknown.removeAll(known.places());
    MachineState idle = machine.idle(Map.of(1, known.contents()), program.unit());
    Node start = new Node(first(idle), Set.copyOf(unknown));
    Map<Node, Way> ways = new HashMap<>();
    PriorityQueue<Way> open =
        new PriorityQueue<>((a, b) -> Double.compare(a.seconds(), b.seconds()));
    open.add(new Way(Optional.empty(), Optional.empty(), start, 0));
    ways.put(start, open.element());
    while (!open.isEmpty()) {
      Way way = open.poll();
      if (way.seconds() > Objects.requireNonNull(ways.get(way.node())).seconds()) {
        continue; // A quicker one was found since.
      }
      if (isDone(way.node())) {
        return edges(way);
      }
      for (Next next : onward(way.node())) {
        double there = way.seconds() + next.edge().seconds();
        Way before = ways.get(next.node());
        if (before == null || there < before.seconds() - 1e-12) {
          Way onward = new Way(Optional.of(way), Optional.of(next.edge()), next.node(), there);
          ways.put(next.node(), onward);
          open.add(onward);
        }
      }
    }
    throw new IllegalArgumentException(
        "By this description nothing stores the program and leads out of programming on %s; look at commits, leave and after-last again."
            .formatted(keypad.name()));
  }

  private static List<Edge> edges(Way goal) {
    List<Edge> edges = new ArrayList<>();
    for (Optional<Way> at = Optional.of(goal); at.isPresent(); at = at.get().before()) {
      at.get().edge().ifPresent(edges::add);
    }
    Collections.reverse(edges);
    return edges;
  }

  /** At the first value, past the slot number. */
  private MachineState first(MachineState idle) {
    MachineState state = idle;
    for (KeyAction action : actions(keypad.gestures().open())) {
      state = machine.press(state, action);
    }
    return keypad.slots() == 1 ? state : machine.press(state, actions(accept()).get(0));
  }

  private Gesture accept() {
    return Gesture.of(keypad.accept());
  }

  /** The actions of a gesture. */
  static List<KeyAction> actions(Gesture gesture) {
    return gesture.presses().stream()
        .map(
            press ->
                press.holdSeconds() > 0
                    ? (KeyAction) new KeyAction.Hold(press.key(), press.holdSeconds())
                    : new KeyAction.Tap(press.key()))
        .toList();
  }

  private double seconds(Gesture gesture) {
    return times.seconds(gesture.presses().size(), 1)
        + gesture.presses().stream().mapToDouble(Gesture.Press::holdSeconds).sum();
  }

  private boolean isDone(Node node) {
    boolean out =
        node.state().where() instanceof Where.Idle || node.state().where() instanceof Where.Running;
    boolean stopped =
        !(node.state().where() instanceof Where.Running) || keypad.gestures().stop().isEmpty();
    return out && stopped && node.unknown().isEmpty() && isStored(node.state());
  }

  private boolean isStored(MachineState state) {
    return holds(machine.contents(state, state.slot()));
  }

  private boolean holds(Contents contents) {
    return wanted.entrySet().stream()
        .allMatch(w -> contents.texts().get(w.getKey()).equals(w.getValue().digits()));
  }

  private List<Next> onward(Node node) {
    List<Next> next = new ArrayList<>();
    MachineState state = node.state();
    if (state.where() instanceof Where.Running) {
      lead(next, node, About.STOP, keypad.gestures().stop());
      return next;
    }
    if (!(state.where() instanceof Where.Value value)) {
      return next;
    }
    boolean list = keypad.programming().navigation() == Keypad.Navigation.LIST;
    KeyedValue want = wanted.get(value.place());
    String shown = value.text();
    boolean isUnknown = node.unknown().contains(value.place());
    if (!state.saved() && want != null && (isUnknown || !shown.equals(want.digits()))) {
      make(next, node, value, want, isUnknown ? Optional.empty() : Optional.of(shown), list);
      return next;
    }
    if (node.unknown().isEmpty() && state.draft().filter(this::holds).isPresent()) {
      if (!state.saved()) {
        lead(next, node, About.SAVE, keypad.gestures().commit());
      }
      if (keypad.programming().commits() == Keypad.Commits.START) {
        lead(next, node, About.START, keypad.gestures().start());
      } else {
        lead(next, node, About.LEAVE, keypad.gestures().leave());
      }
    }
    if (list) {
      walk(next, node, value, 1);
      walk(next, node, value, -1);
    } else {
      take(next, node, value, shown);
      if (!keypad.gestures().previous().isEmpty()) {
        add(
            next,
            node,
            new Edge(
                About.WALK,
                OptionalInt.of(value.place()),
                Optional.empty(),
                Optional.empty(),
                actions(keypad.gestures().previous()),
                seconds(keypad.gestures().previous())),
            node.unknown());
      }
    }
    return next;
  }

  private void make(
      List<Next> next,
      Node node,
      Where.Value value,
      KeyedValue want,
      Optional<String> before,
      boolean list) {
    Optional<String> startsAt =
        list && keypad.starts() == Keypad.FieldStart.DEFAULT
            ? Optional.of(machine.startText(value.place(), program.unit()))
            : before;
    Moves.Move move = move(value.place(), want, startsAt);
    List<KeyAction> go = actions(accept());
    double seconds = move.seconds() + times.seconds(1, 1) * (list ? 2 : 1);
    Set<Integer> unknown = new HashSet<>(node.unknown());
    unknown.remove(value.place());
    Edge edge =
        new Edge(
            About.VALUE, OptionalInt.of(value.place()), before, Optional.of(move), go, seconds);
    MachineState made = node.state();
    if (list) {
      made = machine.press(made, go.get(0));
    }
    if (move.actions().isEmpty()) {
      // What stands there is not known, so neither are the keys; the goal is.
      made = machine.showing(made, want.digits());
    }
    for (KeyAction action : move.actions()) {
      made = machine.press(made, action);
    }
    next.add(new Next(edge, new Node(machine.press(made, go.get(0)), Set.copyOf(unknown))));
  }

  private void take(List<Next> next, Node node, Where.Value value, String shown) {
    add(
        next,
        node,
        new Edge(
            About.VALUE,
            OptionalInt.of(value.place()),
            node.unknown().contains(value.place()) || !isKnown(value.place())
                ? Optional.empty()
                : Optional.of(shown),
            Optional.empty(),
            actions(accept()),
            times.seconds(1, 1)),
        node.unknown());
  }

  private boolean isKnown(int place) {
    return keypad.starts() == Keypad.FieldStart.DEFAULT
        || known.places().contains(place)
        || wanted.containsKey(place);
  }

  private void walk(List<Next> next, Node node, Where.Value value, int steps) {
    boolean knob = keypad.entry() instanceof Entry.Knob;
    KeyAction action =
        knob ? new KeyAction.Turn(steps, false) : new KeyAction.Tap(steps > 0 ? Key.DOWN : Key.UP);
    add(
        next,
        node,
        new Edge(
            About.WALK,
            OptionalInt.of(value.place()),
            Optional.empty(),
            Optional.empty(),
            List.of(action),
            knob ? KeyingTimes.CLICK_SECONDS : times.keySeconds()),
        node.unknown());
  }

  private void lead(List<Next> next, Node node, About about, Gesture gesture) {
    if (!gesture.isEmpty()) {
      add(
          next,
          node,
          new Edge(
              about,
              OptionalInt.empty(),
              Optional.empty(),
              Optional.empty(),
              actions(gesture),
              seconds(gesture)),
          node.unknown());
    }
  }

  private void add(List<Next> next, Node node, Edge edge, Set<Integer> unknown) {
    MachineState state = node.state();
    for (KeyAction action : edge.go()) {
      state = machine.press(state, action);
    }
    if (!state.equals(node.state())) {
      next.add(new Next(edge, new Node(state, unknown)));
    }
  }

  private Moves.Move move(int place, KeyedValue want, Optional<String> before) {
    String key = places.get(place).kind() + " " + before.orElse("?") + " " + want.digits();
    return made.computeIfAbsent(key, k -> newMove(place, want, before));
  }

  private Moves.Move newMove(int place, KeyedValue want, Optional<String> before) {
    if (keypad.entry() instanceof Entry.DigitKeys digits) {
      String typed =
          special(want)
              .flatMap(Special::typed)
              .orElseGet(() -> Scale.typed(want.digits(), digits.pointKey()));
      return Moves.typing(typed, times);
    }
    Scale scale = machine.scale(places.get(place), program.unit());
    int to =
        scale
            .positionOf(want.digits())
            .orElseThrow(
                () ->
                    new IllegalArgumentException(
                        "The value %s is not one this keypad can make; fit the schedule to this keypad."
                            .formatted(want.digits())));
    Moves quickest = hand.at(places.get(place), program.unit());
    OptionalInt from = before.map(scale::positionOf).orElseGet(OptionalInt::empty);
    return from.isPresent() ? quickest.between(from.getAsInt(), to) : quickest.fromUnknown(to);
  }

  /** The special value that a keyed value is, if it is one. */
  private Optional<Special> special(KeyedValue value) {
    Optional<Special> candidate =
        switch (value.kind()) {
          case RATE, TIME -> keypad.rate().fastest();
          case HOLD -> keypad.hold().endless();
          case END -> keypad.end().mark();
          default -> Optional.empty();
        };
    return candidate.filter(s -> s.shows().equals(value.digits()));
  }
}
