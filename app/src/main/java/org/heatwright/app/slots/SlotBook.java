package org.heatwright.app.slots;

import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.BiFunction;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.KeypadFile;
import org.heatwright.app.files.ScheduleFile;
import org.heatwright.app.files.ShownFile;
import org.heatwright.app.store.SlotEntry;
import org.heatwright.app.store.Store;
import org.heatwright.app.store.StoreException;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.UnitCheck;
import org.heatwright.keypad.register.Evidence;
import org.heatwright.keypad.register.Role;
import org.heatwright.keypad.register.Rules;
import org.heatwright.keypad.register.SlotEvent;
import org.heatwright.keypad.register.SlotRegister;
import org.heatwright.schedule.Schedule;

/** Reads and adds to the slot registers in a store. Safe for use from several threads. */
public final class SlotBook {

  private final Store store;
  private final Clock clock;

  public SlotBook(Store store, Clock clock) {
    this.store = store;
    this.clock = clock;
  }

  /** The moment, as the store can keep it. */
  public Instant now() {
    return Instant.ofEpochMilli(clock.millis());
  }

  /**
   * @param kiln name on the shelf; likewise {@code keypad}
   * @param described the keypad as it is described now
   */
  public SlotRegister register(String kiln, String keypad, Keypad described) {
    List<SlotEvent> events = new ArrayList<>();
    for (SlotEntry entry : store.slotsTold(kiln, keypad)) {
      events.add(event(entry));
    }
    return SlotRegister.of(described, events);
  }

  /**
   * Adds what happened.
   *
   * @param kiln name on the shelf; likewise {@code keypad}
   */
  public void tell(String kiln, String keypad, SlotEvent event) {
    store.tellSlot(kiln, keypad, entry(event));
  }

  static SlotEntry entry(SlotEvent event) {
    Kind kind = Kind.of(event);
    int slot = event instanceof SlotEvent.OfSlot of ? of.slot() : 0;
    Entry entry = new Entry(slot, kind, event);
    if (event instanceof SlotEvent.Keyed keyed) {
      return entry.with(ScheduleFile.write(keyed.program()), "", "", "", "");
    } else if (event instanceof SlotEvent.Learned learned) {
      return entry.with(
          ScheduleFile.write(learned.program()), "", "", "", String.join("\n", learned.notShown()));
    } else if (event instanceof SlotEvent.ReadBack read) {
      Evidence evidence = read.evidence();
      return entry.with(
          ScheduleFile.write(evidence.planned()),
          KeypadFile.write(evidence.keypad()),
          ShownFile.write(evidence.shown()),
          evidence.unitCheck().map(c -> c.verdict().name() + "\n" + c.why()).orElse(""),
          "");
    } else if (event instanceof SlotEvent.Protected wanted) {
      return entry.with("", "", "", "", wanted.what());
    }
    return entry.with("", "", "", "", "");
  }

  /** What every line has. */
  private record Entry(int slot, Kind kind, SlotEvent event) {
    SlotEntry with(String program, String keypad, String shown, String unitCheck, String note) {
      Optional<Rules> rules =
          event instanceof SlotEvent.RulesSet set ? Optional.of(set.rules()) : Optional.empty();
      return new SlotEntry(
          slot,
          kind.word(),
          event.by().word(),
          program,
          keypad,
          shown,
          unitCheck,
          note,
          event instanceof SlotEvent.Protected wanted ? wanted.until() : Optional.empty(),
          rules.map(r -> OptionalInt.of(r.goodForDays())).orElse(OptionalInt.empty()),
          rules.map(Rules::keepsPrograms),
          event.at());
    }
  }

  static SlotEvent event(SlotEntry entry) {
    Instant at = entry.told();
    Role by = Role.ofWord(entry.role()).orElse(Role.OTHER);
    int slot = entry.slot();
    return switch (Kind.ofWord(entry.kind())) {
      case KEYED -> new SlotEvent.Keyed(at, by, slot, program(entry));
      case LEARNED ->
          new SlotEvent.Learned(at, by, slot, program(entry), entry.note().lines().toList());
      case READ_BACK ->
          new SlotEvent.ReadBack(
              at,
              by,
              new Evidence(
                  program(entry),
                  read(entry, entry.keypad(), KeypadFile::read),
                  slot,
                  read(entry, entry.shown(), ShownFile::read),
                  unitCheck(entry)));
      case EDITED -> new SlotEvent.Edited(at, by, slot);
      case RAN -> new SlotEvent.Ran(at, by, slot);
      case PROTECTED -> new SlotEvent.Protected(at, by, slot, entry.note(), entry.untilDay());
      case RELEASED -> new SlotEvent.Released(at, by, slot);
      case UNIT_SWITCHED -> new SlotEvent.UnitSwitched(at, by);
      case POWER_CUT -> new SlotEvent.PowerCut(at, by);
      case FIRED_BY_OTHER -> new SlotEvent.FiredByOther(at, by);
      case RESET -> new SlotEvent.Reset(at, by);
      case RULES ->
          new SlotEvent.RulesSet(
              at,
              by,
              new Rules(
                  entry.goodForDays().orElse(Rules.USUAL.goodForDays()),
                  entry.keepsPrograms().orElse(Rules.USUAL.keepsPrograms())));
    };
  }

  private static Schedule program(SlotEntry entry) {
    return read(entry, entry.program(), ScheduleFile::read);
  }

  private static Optional<UnitCheck.Result> unitCheck(SlotEntry entry) {
    int end = entry.unitCheck().indexOf('\n');
    return end < 0
        ? Optional.empty()
        : Optional.of(
            new UnitCheck.Result(
                UnitCheck.Verdict.valueOf(entry.unitCheck().substring(0, end)),
                entry.unitCheck().substring(end + 1)));
  }

  /** What the store holds was written by us; if it cannot be read, the store is at fault. */
  private static <T> T read(SlotEntry entry, String text, BiFunction<String, String, T> reader) {
    try {
      return reader.apply(text, "slot %d of the register".formatted(entry.slot()));
    } catch (InputException e) {
      throw new StoreException(
          "The store's slot register holds a line that this Heatwright cannot read: "
              + Objects.requireNonNull(e.getMessage()),
          e);
    }
  }

  /** The words that the store keeps for the kinds of events. */
  enum Kind {
    KEYED(SlotEvent.Keyed.class),
    LEARNED(SlotEvent.Learned.class),
    READ_BACK(SlotEvent.ReadBack.class),
    EDITED(SlotEvent.Edited.class),
    RAN(SlotEvent.Ran.class),
    PROTECTED(SlotEvent.Protected.class),
    RELEASED(SlotEvent.Released.class),
    UNIT_SWITCHED(SlotEvent.UnitSwitched.class),
    POWER_CUT(SlotEvent.PowerCut.class),
    FIRED_BY_OTHER(SlotEvent.FiredByOther.class),
    RESET(SlotEvent.Reset.class),
    RULES(SlotEvent.RulesSet.class);

    private final Class<? extends SlotEvent> type;

    Kind(Class<? extends SlotEvent> type) {
      this.type = type;
    }

    static Kind of(SlotEvent event) {
      for (Kind kind : values()) {
        if (kind.type.isInstance(event)) {
          return kind;
        }
      }
      throw new IllegalArgumentException("There is no word for this event.");
    }

    static Kind ofWord(String word) {
      for (Kind kind : values()) {
        if (kind.word().equals(word)) {
          return kind;
        }
      }
      throw new StoreException(
          "The store's slot register holds an event “%s” that this Heatwright does not know."
              .formatted(word),
          new IllegalArgumentException(word));
    }

    String word() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }
}
