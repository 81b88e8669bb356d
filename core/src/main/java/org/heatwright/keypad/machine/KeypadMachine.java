package org.heatwright.keypad.machine;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.heatwright.keypad.Entry;
import org.heatwright.keypad.Gesture;
import org.heatwright.keypad.Key;
import org.heatwright.keypad.KeyedValue;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.Keypad.UnitSetting.ShownAt;
import org.heatwright.keypad.Place;
import org.heatwright.keypad.Scale;
import org.heatwright.keypad.Special;
import org.heatwright.units.TemperatureUnit;

/**
 * Interprets a keypad's description: which state a key leads to, and what the display then shows.
 *
 * <p>What is not accepted is not stored: a value that was changed but not accepted is dropped by
 * saving, leaving or going back. What cannot be typed into a field is refused, and the field shows
 * what it held. A slot that was never written is blank. Used by one thread.
 */
public final class KeypadMachine {

  /** What the display shows while nothing is keyed. */
  public static final String IDLE_WORDS = "idle: the kiln's temperature";

  /** What it shows while a slot is chosen. */
  public static final String SLOT_WORDS = "a slot number";

  private static final Place UNIT = new Place(0, KeyedValue.Kind.UNIT);

  private final Keypad keypad;
  private final List<Place> places;
  private final Map<TemperatureUnit, Map<KeyedValue.Kind, Scale>> scales = new HashMap<>();
  private final Map<TemperatureUnit, Contents> blanks = new HashMap<>();
  private final Scale slotNumbers;
  private final List<Lead> whenIdle;
  private final List<Lead> whenChoosing;
  private final List<Lead> atValue;
  private final List<Lead> atSavedValue;
  private final List<Lead> inReview;
  private final List<Lead> whenRunning;

  public KeypadMachine(Keypad keypad) {
    this.keypad = keypad;
    this.places = keypad.places();
    this.slotNumbers = Scale.numbers(keypad.slots());
    Keypad.Gestures gestures = keypad.gestures();
    this.whenIdle =
        told(
            List.of(
                new Lead(gestures.open(), Does.KEYING),
                new Lead(gestures.review(), Does.REVIEW),
                new Lead(gestures.start(), Does.CHOOSE_AND_START),
                new Lead(gestures.switchUnit(), Does.SWITCH_UNIT)));
    this.whenChoosing = told(List.of(new Lead(gestures.leave(), Does.LEAVE)));
    this.atValue = leadsAtValue(false);
    this.atSavedValue = leadsAtValue(true);
    this.inReview =
        told(
            List.of(
                new Lead(gestures.leave(), Does.LEAVE),
                new Lead(gestures.previous(), Does.PREVIOUS)));
    this.whenRunning = told(List.of(new Lead(gestures.stop(), Does.LEAVE)));
  }

  public Keypad keypad() {
    return keypad;
  }

  /**
   * Idle, with these slots written.
   *
   * @param slots by number; those not named are blank
   * @param unit the unit in force
   */
  public MachineState idle(Map<Integer, Contents> slots, TemperatureUnit unit) {
    return new MachineState(new Where.Idle(""), 1, slots, Optional.empty(), false, unit, List.of());
  }

  /** What a slot holds. */
  public Contents contents(MachineState state, int slot) {
    Contents contents = state.slots().get(slot);
    return contents == null ? blank(state.unit()) : contents;
  }

  /** A slot with nothing in it: least values, and the end mark in every segment. */
  public Contents blank(TemperatureUnit unit) {
    return blanks.computeIfAbsent(
        unit,
        u -> {
          List<String> texts = new ArrayList<>();
          for (Place place : places) {
            Scale scale = scale(place, u);
            if (place.kind() == KeyedValue.Kind.UNIT) {
              texts.add(keypad.units().asked().orElseThrow().text(u));
              continue;
            }
            boolean marked = place.segment() > 0 && place.kind() == keypad.markField();
            texts.add(
                keypad
                    .end()
                    .mark()
                    .filter(m -> marked)
                    .map(Special::shows)
                    .orElseGet(() -> scale.text(scale.leastNumber())));
          }
          return new Contents(texts);
        });
  }

  /** Everything a place can read. */
  public Scale scale(Place place, TemperatureUnit unit) {
    return scales
        .computeIfAbsent(unit, u -> new HashMap<>())
        .computeIfAbsent(place.kind(), k -> Scale.of(keypad, k, unit));
  }

  // ---- keys

  /** The state after one action; the same state if the action means nothing in it. */
  public MachineState press(MachineState state, KeyAction action) {
    List<Lead> leads = leads(state);
    List<Gesture.Press> presses = new ArrayList<>(state.begun());
    presses.add(action.press());
    for (Lead lead : leads) {
      if (isMade(lead.gesture(), presses)) {
        return led(state, lead.to());
      }
    }
    for (Lead lead : leads) {
      if (isBegun(lead.gesture(), presses)) {
        return state.begun(presses);
      }
    }
    if (!state.begun().isEmpty()) {
      return press(state.begun(List.of()), action);
    }
    return plain(state, action);
  }

  /** Whether presses are a whole gesture. */
  private static boolean isMade(Gesture gesture, List<Gesture.Press> presses) {
    return gesture.presses().size() == presses.size() && isAlong(gesture, presses);
  }

  private static boolean isBegun(Gesture gesture, List<Gesture.Press> presses) {
    return gesture.presses().size() > presses.size() && isAlong(gesture, presses);
  }

  private static boolean isAlong(Gesture gesture, List<Gesture.Press> presses) {
    for (int i = 0; i < presses.size(); i++) {
      Gesture.Press wanted = gesture.presses().get(i);
      if (!wanted.isLike(presses.get(i)) || presses.get(i).holdSeconds() < wanted.holdSeconds()) {
        return false;
      }
    }
    return true;
  }

  /** What a gesture does. */
  private enum Does {
    KEYING,
    REVIEW,
    CHOOSE_AND_START,
    SWITCH_UNIT,
    COMMIT,
    LEAVE,
    PREVIOUS,
    STORE_AND_START
  }

  private record Lead(Gesture gesture, Does to) {}

  private MachineState led(MachineState state, Does to) {
    return switch (to) {
      case KEYING -> choose(state, Where.Then.KEYING);
      case REVIEW -> choose(state, Where.Then.REVIEW);
      case CHOOSE_AND_START -> choose(state, Where.Then.START);
      case SWITCH_UNIT -> switched(state);
      case COMMIT -> committed(state);
      case LEAVE -> idle(state);
      case PREVIOUS ->
          state.where() instanceof Where.Review ? previousItem(state) : previous(state);
      case STORE_AND_START ->
          state
              .stored(state.draft().orElseThrow())
              .withDraft(Optional.empty())
              .at(new Where.Running());
    };
  }

  /** The gestures that mean something in a state; of two alike the first counts. */
  private List<Lead> leads(MachineState state) {
    if (state.where() instanceof Where.Value) {
      return state.saved() ? atSavedValue : atValue;
    }
    if (state.where() instanceof Where.Choosing) {
      return whenChoosing;
    }
    if (state.where() instanceof Where.Review) {
      return inReview;
    }
    return state.where() instanceof Where.Running ? whenRunning : whenIdle;
  }

  private List<Lead> leadsAtValue(boolean saved) {
    Keypad.Gestures gestures = keypad.gestures();
    List<Lead> leads = new ArrayList<>();
    if (!saved) {
      leads.add(new Lead(gestures.commit(), Does.COMMIT));
    }
    if (saved || !gestures.leave().equals(gestures.commit())) {
      leads.add(new Lead(gestures.leave(), Does.LEAVE));
    }
    leads.add(new Lead(gestures.previous(), Does.PREVIOUS));
    if (keypad.programming().commits() == Keypad.Commits.START) {
      leads.add(new Lead(gestures.start(), Does.STORE_AND_START));
    }
    return told(leads);
  }

  /** Those that the keypad has. */
  private static List<Lead> told(List<Lead> leads) {
    return leads.stream().filter(lead -> !lead.gesture().isEmpty()).toList();
  }

  private MachineState idle(MachineState state) {
    return inUnitOf(
        state.withDraft(Optional.empty()).at(new Where.Idle("")), contents(state, state.slot()));
  }

  /** With a program's own unit in force, where programs ask it. */
  private MachineState inUnitOf(MachineState state, Contents contents) {
    return keypad
        .units()
        .asked()
        .flatMap(a -> a.unit(contents.texts().get(places.indexOf(UNIT))))
        .map(state::withUnit)
        .orElse(state);
  }

  /** With another text in one place; another unit may convert the program's numbers. */
  private Contents changed(Contents contents, int place, String text) {
    Contents changed = contents.with(place, text);
    if (!places.get(place).equals(UNIT)
        || keypad.units().switchingConverts() != Keypad.UnitSetting.SwitchingConverts.YES) {
      return changed;
    }
    Keypad.UnitPrompt asked = keypad.units().asked().orElseThrow();
    Optional<TemperatureUnit> from = asked.unit(contents.texts().get(place));
    Optional<TemperatureUnit> to = asked.unit(text);
    return from.isPresent() && to.isPresent() && from.get() != to.get()
        ? converted(changed, from.get(), to.get())
        : changed;
  }

  private MachineState switched(MachineState state) {
    TemperatureUnit to = state.unit().other();
    MachineState switched = state.withUnit(to).at(new Where.Idle(""));
    if (keypad.units().switchingConverts() != Keypad.UnitSetting.SwitchingConverts.YES) {
      return switched;
    }
    Map<Integer, Contents> converted = new HashMap<>();
    state.slots().forEach((slot, c) -> converted.put(slot, converted(c, state.unit(), to)));
    return new MachineState(
        switched.where(), state.slot(), converted, Optional.empty(), false, to, List.of());
  }

  private Contents converted(Contents contents, TemperatureUnit from, TemperatureUnit to) {
    Contents result = contents;
    for (int i = 0; i < places.size(); i++) {
      KeyedValue.Kind kind = places.get(i).kind();
      if ((kind != KeyedValue.Kind.TARGET && kind != KeyedValue.Kind.RATE)
          || isSpecial(kind, contents.texts().get(i))) {
        continue;
      }
      Keypad.Range range =
          kind == KeyedValue.Kind.TARGET ? keypad.targetRange(to) : keypad.rateRange(to);
      Optional<String> text =
          ConvertedText.of(contents.texts().get(i), kind == KeyedValue.Kind.TARGET, from, range);
      if (text.isPresent()) {
        result = result.with(i, text.get());
      }
    }
    return result;
  }

  /**
   * Whether a text is the end of the program or the fastest rate, which are the same in any unit.
   */
  private boolean isSpecial(KeyedValue.Kind kind, String text) {
    Optional<Special> mark = keypad.end().mark().filter(m -> kind == keypad.markField());
    Optional<Special> fastest =
        kind == KeyedValue.Kind.RATE ? keypad.rate().fastest() : Optional.empty();
    return mark.filter(m -> m.shows().equals(text)).isPresent()
        || fastest.filter(f -> f.shows().equals(text)).isPresent();
  }

  private MachineState choose(MachineState state, Where.Then then) {
    return keypad.slots() == 1
        ? chosen(state.withSlot(1), then)
        : state.at(new Where.Choosing(then, state.slot(), ""));
  }

  private MachineState chosen(MachineState state, Where.Then then) {
    Contents contents = contents(state, state.slot());
    MachineState chosen = inUnitOf(state, contents);
    return switch (then) {
      case KEYING -> arrive(chosen.withDraft(Optional.of(contents)), 0);
      case REVIEW -> items(chosen).isEmpty() ? idle(chosen) : chosen.at(new Where.Review(0));
      case START -> chosen.at(new Where.Running());
    };
  }

  private MachineState committed(MachineState state) {
    MachineState stored = state.stored(state.draft().orElseThrow());
    return keypad.gestures().leave().isEmpty()
        ? stored
            .withDraft(Optional.empty())
            .at(new Where.Idle(keypad.gestures().committed().orElse("")))
        : stored.savedNow();
  }

  // ---- values

  private MachineState plain(MachineState state, KeyAction action) {
    if (state.where() instanceof Where.Choosing choosing) {
      return choosing(state, choosing, action);
    }
    if (state.where() instanceof Where.Value value) {
      return value(state, value, action);
    }
    if (state.where() instanceof Where.Review review) {
      return review(state, review, action);
    }
    // Any key takes a message away.
    return state.where() instanceof Where.Idle idle && !idle.message().isEmpty()
        ? state.at(new Where.Idle(""))
        : state;
  }

  private boolean accepts(KeyAction action) {
    return action.press().key() == keypad.accept();
  }

  private MachineState choosing(MachineState state, Where.Choosing choosing, KeyAction action) {
    if (accepts(action)) {
      Optional<String> made =
          choosing.typed().isEmpty()
              ? Optional.of(Integer.toString(choosing.number()))
              : slotNumbers.ofTyped(choosing.typed(), pointKey());
      return made.isPresent()
          ? chosen(state.withSlot(Integer.parseInt(made.get())), choosing.then())
          : state.at(new Where.Choosing(choosing.then(), choosing.number(), ""));
    }
    if (keypad.entry() instanceof Entry.DigitKeys) {
      String typed = typed(choosing.typed(), slotNumbers, action);
      return typed.equals(choosing.typed())
          ? state
          : state.at(new Where.Choosing(choosing.then(), choosing.number(), typed));
    }
    int to = moved(slotNumbers, choosing.number() - 1, action);
    return to == choosing.number() - 1
        ? state
        : state.at(new Where.Choosing(choosing.then(), to + 1, ""));
  }

  private MachineState value(MachineState state, Where.Value value, KeyAction action) {
    boolean list = keypad.programming().navigation() == Keypad.Navigation.LIST;
    if (!value.open()) {
      return accepts(action)
          ? state.at(opened(state, value.place()))
          : walked(state, value.place(), action);
    }
    Scale scale = scale(places.get(value.place()), state.unit());
    if (accepts(action)) {
      Optional<String> made =
          value.typed().isEmpty()
              ? Optional.of(value.text())
              : scale.ofTyped(value.typed(), pointKey());
      if (made.isEmpty()) {
        return state.at(new Where.Value(value.place(), value.text(), "", true));
      }
      MachineState taken = taken(state, value.place(), made.get());
      return list ? arrive(taken, value.place()) : onward(taken, value.place());
    }
    if (keypad.entry() instanceof Entry.DigitKeys) {
      String typed = typed(value.typed(), scale, action);
      return typed.equals(value.typed())
          ? state
          : state.at(new Where.Value(value.place(), value.text(), typed, true));
    }
    int from = scale.positionOf(value.text()).orElse(scale.leastNumber());
    int to = moved(scale, from, action);
    return to == from && scale.positionOf(value.text()).isPresent()
        ? state
        : state.at(new Where.Value(value.place(), scale.text(to), "", true));
  }

  /** With another text at the value that is open, as if keys had made it. */
  public MachineState showing(MachineState state, String text) {
    if (!(state.where() instanceof Where.Value value) || !value.open()) {
      throw new IllegalArgumentException("No value is open that could be made.");
    }
    return state.at(new Where.Value(value.place(), text, "", true));
  }

  private boolean pointKey() {
    return keypad.entry() instanceof Entry.DigitKeys digits && digits.pointKey();
  }

  private static String typed(String typed, Scale scale, KeyAction action) {
    if (action instanceof KeyAction.Digit digit) {
      String longer = typed + digit.digit();
      int most = scale.text(scale.size() - 1).length();
      return longer.length() > most + 1 ? longer.substring(1) : longer;
    }
    return switch (action.press().key()) {
      case POINT -> typed.contains(".") ? typed : typed + ".";
      case MINUS -> typed.startsWith("-") ? typed.substring(1) : "-" + typed;
      case CLEAR -> "";
      default -> typed;
    };
  }

  private int moved(Scale scale, int from, KeyAction action) {
    Motion motion = new Motion(keypad.entry(), scale.size());
    if (keypad.entry() instanceof Entry.StepKeys) {
      int direction =
          action.press().key() == Key.UP ? 1 : action.press().key() == Key.DOWN ? -1 : 0;
      if (direction == 0) {
        return from;
      }
      return action instanceof KeyAction.Hold hold
          ? motion.afterHolding(from, direction, hold.seconds())
          : motion.step(from, direction);
    }
    return action instanceof KeyAction.Turn turn
        ? motion.afterTurning(from, turn.clicks(), turn.spun())
        : from;
  }

  private MachineState taken(MachineState state, int place, String text) {
    Contents draft = changed(state.draft().orElseThrow(), place, text);
    MachineState taken = inUnitOf(state.withDraft(Optional.of(draft)), draft);
    return keypad.programming().commits() == Keypad.Commits.ACCEPTING ? taken.stored(draft) : taken;
  }

  /** At a place, as it is shown when one comes to it. */
  private MachineState arrive(MachineState state, int place) {
    boolean list = keypad.programming().navigation() == Keypad.Navigation.LIST;
    return state.at(
        list
            ? new Where.Value(place, state.draft().orElseThrow().texts().get(place), "", false)
            : opened(state, place));
  }

  private Where.Value opened(MachineState state, int place) {
    return new Where.Value(
        place,
        keypad.starts() == Keypad.FieldStart.STORED
            ? state.draft().orElseThrow().texts().get(place)
            : startText(place, state.unit()),
        "",
        true);
  }

  /** Where a field starts that does not start from what is stored. */
  public String startText(int index, TemperatureUnit unit) {
    Place place = places.get(index);
    Scale scale = scale(place, unit);
    Optional<String> start =
        switch (place.kind()) {
          case RATE, TIME ->
              keypad.rate().start().map(s -> keypad.rate().text(keypad.rateRange(unit), s));
          case TARGET -> keypad.target().start().map(keypad.targetRange(unit)::text);
          case HOLD -> keypad.hold().startText();
          case DELAY -> keypad.delay().flatMap(Keypad.DelayField::startText);
          case UNIT, END -> Optional.empty();
        };
    return start.orElseGet(() -> scale.text(scale.leastNumber()));
  }

  // ---- from place to place

  private MachineState onward(MachineState state, int place) {
    int next = next(state.draft().orElseThrow(), place);
    if (next < places.size()) {
      return arrive(state, next);
    }
    return switch (keypad.programming().afterLast()) {
      case FIRST -> arrive(state, 0);
      case STAYS -> arrive(state, place);
      case IDLE -> idle(state);
    };
  }

  /** The place that follows in this program; the number of places if none does. */
  private int next(Contents contents, int index) {
    Place place = places.get(index);
    if (place.segment() == 0) {
      return index + 1;
    }
    int first = firstField(place.segment());
    boolean unused = isMark(contents, place.segment()) && index == markPlace(place.segment());
    int count = keypad.order().size();
    if (unused && keypad.end().by() == Keypad.EndRule.By.MARK) {
      return afterSegments();
    }
    if (unused) {
      return first + count;
    }
    boolean lastField = index == first + count - 1;
    if (lastField
        && keypad.end().by() == Keypad.EndRule.By.COUNT
        && place.segment() >= counted(contents)) {
      return afterSegments();
    }
    return index + 1;
  }

  private int firstField(int segment) {
    int first = 0;
    while (places.get(first).segment() == 0) {
      first++;
    }
    return first + (segment - 1) * keypad.order().size();
  }

  private int afterSegments() {
    return firstField(keypad.segments()) + keypad.order().size();
  }

  private boolean isMark(Contents contents, int segment) {
    return keypad
        .end()
        .mark()
        .filter(m -> m.shows().equals(contents.texts().get(markPlace(segment))))
        .isPresent();
  }

  /** Where the mark of an unused segment stands. */
  private int markPlace(int segment) {
    return firstField(segment) + keypad.order().indexOf(keypad.markField());
  }

  private int counted(Contents contents) {
    int index = places.indexOf(new Place(0, KeyedValue.Kind.END));
    return Integer.parseInt(contents.texts().get(index));
  }

  private MachineState previous(MachineState state) {
    Where.Value value = (Where.Value) state.where();
    if (keypad.programming().navigation() == Keypad.Navigation.LIST) {
      return value.open() ? arrive(state, value.place()) : state;
    }
    Contents draft = state.draft().orElseThrow();
    for (int before = value.place() - 1; before >= 0; before--) {
      if (isReached(draft, before) && next(draft, before) == value.place()) {
        return arrive(state, before);
      }
    }
    return state;
  }

  /** Whether one comes to a place by accepting from the first. */
  private boolean isReached(Contents contents, int place) {
    int at = 0;
    while (at < place) {
      at = next(contents, at);
    }
    return at == place;
  }

  /** Along the list: down and right lead to the next value, up and left to the one before. */
  private MachineState walked(MachineState state, int place, KeyAction action) {
    int steps =
        action instanceof KeyAction.Turn turn
            ? (keypad.entry() instanceof Entry.Knob ? turn.clicks() : 0)
            : switch (action.press().key()) {
              case DOWN -> 1;
              case UP -> -1;
              default -> 0;
            };
    if (steps == 0) {
      return state;
    }
    int to = place + steps;
    return switch (keypad.programming().afterLast()) {
      case FIRST -> arrive(state, Math.floorMod(to, places.size()));
      case STAYS -> {
        int within = Math.max(0, Math.min(places.size() - 1, to));
        yield within == place ? state : arrive(state, within);
      }
      case IDLE -> to >= places.size() ? idle(state) : to < 0 ? state : arrive(state, to);
    };
  }

  // ---- review

  /** What the review of the chosen slot shows, in order. */
  public List<Item> items(MachineState state) {
    Contents contents = contents(state, state.slot());
    Keypad.Review review = keypad.review();
    List<Item> items = new ArrayList<>();
    if (isUnitShown(Keypad.Position.FIRST)) {
      items.add(item(contents, UNIT));
    }
    if (review.delay() == Keypad.Position.FIRST && keypad.delay().isPresent()) {
      items.add(item(contents, new Place(0, KeyedValue.Kind.DELAY)));
    }
    boolean counts = keypad.end().by() == Keypad.EndRule.By.COUNT;
    if (counts) {
      items.add(item(contents, new Place(0, KeyedValue.Kind.END)));
    }
    boolean over = false;
    for (int segment = 1; segment <= keypad.segments() && !over; segment++) {
      if (counts && segment > counted(contents)) {
        over = true;
      } else if (!counts && isMark(contents, segment)) {
        if (review.unused()) {
          unused(items, contents, segment);
        }
        over = keypad.end().by() == Keypad.EndRule.By.MARK;
      } else {
        for (KeyedValue.Kind kind : review.order()) {
          items.add(item(contents, new Place(segment, kind)));
        }
      }
    }
    if (review.delay() == Keypad.Position.LAST && keypad.delay().isPresent()) {
      items.add(item(contents, new Place(0, KeyedValue.Kind.DELAY)));
    }
    if (isUnitShown(Keypad.Position.LAST)) {
      items.add(item(contents, UNIT));
    }
    return items;
  }

  private boolean isUnitShown(Keypad.Position position) {
    return keypad.units().asked().filter(a -> a.review() == position).isPresent();
  }

  /** An unused segment: its mark in the first value shown, or what stands there up to the mark. */
  private void unused(List<Item> items, Contents contents, int segment) {
    List<KeyedValue.Kind> order = keypad.review().order();
    if (keypad.markField() == keypad.order().get(0)) {
      items.add(
          new Item(
              new Place(segment, order.get(0)),
              markPlace(segment),
              keypad.end().mark().map(Special::shows).orElseThrow()));
      return;
    }
    for (KeyedValue.Kind kind : order.subList(0, order.indexOf(keypad.markField()) + 1)) {
      items.add(item(contents, new Place(segment, kind)));
    }
  }

  private Item item(Contents contents, Place place) {
    int index = places.indexOf(place);
    return new Item(place, index, contents.texts().get(index));
  }

  /**
   * A value that the review shows.
   *
   * @param place where it says it stands
   * @param index of the place whose text it is
   * @param text what it reads
   */
  public record Item(Place place, int index, String text) {}

  private MachineState review(MachineState state, Where.Review review, KeyAction action) {
    List<Item> items = items(state);
    if (accepts(action)) {
      return review.item() + 1 < items.size()
          ? state.at(new Where.Review(review.item() + 1))
          : idle(state);
    }
    if (!keypad.review().keysEdit() || keypad.entry() instanceof Entry.DigitKeys) {
      return state;
    }
    Item item = items.get(review.item());
    Scale scale = scale(places.get(item.index()), state.unit());
    int from = scale.positionOf(item.text()).orElse(scale.leastNumber());
    int to = moved(scale, from, action);
    if (to == from) {
      return state;
    }
    Contents edited = changed(contents(state, state.slot()), item.index(), scale.text(to));
    return inUnitOf(state.stored(edited), edited);
  }

  private MachineState previousItem(MachineState state) {
    Where.Review review = (Where.Review) state.where();
    return review.item() == 0 ? state : state.at(new Where.Review(review.item() - 1));
  }

  // ---- what happens without keys

  /** After so long without a key, s. */
  public MachineState untouched(MachineState state, double seconds) {
    boolean keying =
        state.where() instanceof Where.Value || state.where() instanceof Where.Choosing;
    boolean discards =
        keypad.gestures().discardsAfterSeconds().isPresent()
            && seconds >= keypad.gestures().discardsAfterSeconds().getAsInt();
    return keying && discards ? idle(state) : state;
  }

  /** After the power was cut and came back. What was not stored is lost. */
  public MachineState powerCut(MachineState state) {
    boolean goesOn =
        state.where() instanceof Where.Running
            && (keypad.afterPowerCut() == Keypad.PowerCut.RESUMES
                || keypad.afterPowerCut() == Keypad.PowerCut.RESTARTS);
    return goesOn ? state : idle(state);
  }

  // ---- display

  /** What the display shows. */
  public Display display(MachineState state) {
    if (state.where() instanceof Where.Choosing choosing) {
      String number =
          choosing.typed().isEmpty() ? Integer.toString(choosing.number()) : choosing.typed();
      return new Display("", number, sign(state, ShownAt.ENTRY), SLOT_WORDS);
    }
    if (state.where() instanceof Where.Value value) {
      Place place = places.get(value.place());
      String text =
          state.saved() && keypad.gestures().committed().isPresent()
              ? keypad.gestures().committed().get()
              : value.typed().isEmpty()
                  ? value.text()
                  : filled(value.typed(), scale(place, state.unit()));
      return new Display(marked(place), text, sign(state, ShownAt.ENTRY), place.words());
    }
    if (state.where() instanceof Where.Review review) {
      Item item = items(state).get(review.item());
      return new Display(
          marked(item.place()), item.text(), sign(state, ShownAt.REVIEW), item.place().words());
    }
    if (state.where() instanceof Where.Running) {
      return new Display(
          "", "", sign(state, ShownAt.IDLE), "running: the kiln's temperature or the delay");
    }
    return new Display(
        "", ((Where.Idle) state.where()).message(), sign(state, ShownAt.IDLE), IDLE_WORDS);
  }

  /** The display's mark of a place; empty if it marks nothing. */
  private String marked(Place place) {
    String label = keypad.label(place.segment(), place.kind());
    return label.equals(place.words()) ? "" : label;
  }

  private Optional<TemperatureUnit> sign(MachineState state, ShownAt at) {
    return keypad.units().shownAt().contains(at) ? Optional.of(state.unit()) : Optional.empty();
  }

  /** Typed digits as they stand on the display: without a point key they fill up from the right. */
  private String filled(String typed, Scale scale) {
    String mask = scale.text(scale.leastNumber());
    if (pointKey() || (mask.indexOf('.') < 0 && mask.indexOf(':') < 0)) {
      return typed;
    }
    String sign = typed.startsWith("-") ? "-" : "";
    String digits = typed.substring(sign.length());
    StringBuilder out = new StringBuilder();
    int at = digits.length() - 1;
    for (int i = mask.length() - 1; i >= 0; i--) {
      char c = mask.charAt(i);
      out.append(Character.isDigit(c) ? (at >= 0 ? digits.charAt(at--) : '0') : c);
    }
    while (at >= 0) {
      out.append(digits.charAt(at--));
    }
    return sign + out.reverse();
  }
}
