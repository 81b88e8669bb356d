package org.heatwright.app.web;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.KeypadFile;
import org.heatwright.app.files.KilnFile;
import org.heatwright.app.report.RegisterSheet;
import org.heatwright.app.slots.SlotBook;
import org.heatwright.app.slots.SlotWords;
import org.heatwright.app.store.Document;
import org.heatwright.app.store.Kind;
import org.heatwright.app.store.Store;
import org.heatwright.forecast.ClockWords;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.ReadbackQuestion;
import org.heatwright.keypad.ReviewReading;
import org.heatwright.keypad.Shown;
import org.heatwright.keypad.register.Evidence;
import org.heatwright.keypad.register.Holding;
import org.heatwright.keypad.register.Proof;
import org.heatwright.keypad.register.Role;
import org.heatwright.keypad.register.Rules;
import org.heatwright.keypad.register.SlotEvent;
import org.heatwright.keypad.register.SlotRegister;
import org.heatwright.keypad.register.SlotState;
import org.heatwright.keypad.register.SlotWarning;
import org.heatwright.keypad.register.Standing;
import org.heatwright.schedule.Schedule;
import org.heatwright.units.TemperatureUnit;

/** What is in the program slots of a kiln's keypad, and what people tell of them. */
final class SlotsDesk {

  private static final int RECENT = 12;
  private static final int LONGEST_NEED = 120;

  private final Store store;
  private final Clock clock;
  private final SlotBook book;

  SlotsDesk(Store store, Clock clock) {
    this.store = store;
    this.clock = clock;
    this.book = new SlotBook(store, clock);
  }

  /** Address of a keypad's slots. */
  static String address(String kiln, String keypad) {
    return "/slots?" + key(kiln, keypad);
  }

  private static String key(String kiln, String keypad) {
    return "kiln=%s&keypad=%s".formatted(encoded(kiln), encoded(keypad));
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }

  static List<String> roles() {
    return Arrays.stream(Role.values()).map(Role::word).toList();
  }

  /** A kiln's keypad on the shelf. */
  record At(String kiln, String keypad, Keypad described, ZoneId zone) {}

  /**
   * @param kiln name on the shelf; the first if empty
   * @param keypad name on the shelf; if empty the kiln's last, or the first
   * @return empty if there is no such kiln or keypad
   * @throws InputException if what is on the shelf cannot be read
   */
  Optional<At> at(String kiln, String keypad) {
    Optional<Document> chosenKiln = chosen(Kind.KILN, kiln);
    Optional<Document> chosenKeypad =
        chosen(
            Kind.KEYPAD,
            keypad.isEmpty()
                ? chosenKiln.flatMap(k -> store.keypadOf(k.name())).orElse("")
                : keypad);
    if (chosenKiln.isEmpty() || chosenKeypad.isEmpty()) {
      return Optional.empty();
    }
    Document kilnText = chosenKiln.get();
    Document keypadText = chosenKeypad.get();
    return Optional.of(
        new At(
            kilnText.name(),
            keypadText.name(),
            KeypadFile.read(keypadText.text(), keypadText.name()),
            KilnFile.read(kilnText.text(), kilnText.name()).timeZone().orElse(clock.getZone())));
  }

  private Optional<Document> chosen(Kind kind, String name) {
    return name.isEmpty() ? store.all(kind).stream().findFirst() : store.find(kind, name);
  }

  // ---- the page

  SlotsPage page(At at, String error) {
    SlotRegister register = register(at);
    Instant now = book.now();
    List<SlotEvent> newest = new ArrayList<>(register.history());
    Collections.reverse(newest);
    return new SlotsPage(
        ClockWords.stamp(now.atZone(at.zone())),
        at.kiln(),
        at.keypad(),
        key(at.kiln(), at.keypad()),
        options(Kind.KILN, at.kiln()),
        options(Kind.KEYPAD, at.keypad()),
        roles(),
        SlotWords.rules(register.rules()),
        Integer.toString(register.rules().goodForDays()),
        register.rules().keepsPrograms(),
        error,
        register.slots().stream().map(s -> slot(s, register, now, at)).toList(),
        newest.stream()
            .filter(e -> e instanceof SlotEvent.OfAll)
            .limit(RECENT)
            .map(e -> told(e, at))
            .toList());
  }

  private List<Page.Option> options(Kind kind, String chosen) {
    return store.all(kind).stream()
        .map(d -> new Page.Option(d.name(), d.name().equals(chosen)))
        .toList();
  }

  private static SlotsPage.Slot slot(SlotState state, SlotRegister register, Instant now, At at) {
    Holding contents = state.contents();
    Standing standing = register.standing(state, now);
    Optional<Proof> good = standing.ended().isEmpty() ? standing.proof() : Optional.empty();
    boolean unknown = contents.program().isEmpty();
    List<SlotsPage.Told> history = new ArrayList<>();
    for (SlotEvent event : state.history()) {
      history.add(0, told(event, at));
    }
    return new SlotsPage.Slot(
        state.slot(),
        SlotWords.program(contents),
        contents.program().map(p -> SlotWords.values(p, at.described())).orElse(""),
        SlotWords.since(contents, at.zone()),
        unknown ? "unknown" : standing.kind().name().toLowerCase(Locale.ROOT),
        unknown
            ? "Nobody has told what it holds. Read it once to learn it."
            : standing.sentence(now, at.zone()),
        good.map(p -> "In %s: %s.".formatted(p.unit().symbol(), p.unitGround().words())).orElse(""),
        good.map(Proof::covers).orElse(List.of()),
        good.map(Proof::unproven).orElse(contents.notShown()),
        state.need().map(SlotWords::need).orElse(""),
        history);
  }

  private static SlotsPage.Told told(SlotEvent event, At at) {
    return new SlotsPage.Told(
        SlotWords.moment(event.at(), at.zone()), event.by().word(), SlotWords.what(event));
  }

  RegisterSheet sheet(At at) {
    return RegisterSheet.of(at.kiln(), at.keypad(), register(at), book.now(), at.zone());
  }

  SlotRegister register(At at) {
    return book.register(at.kiln(), at.keypad(), at.described());
  }

  // ---- what people tell

  /**
   * @return why it was not taken, one sentence; empty if it was
   */
  String tell(At at, Map<String, String> form) {
    Optional<Role> by = Role.ofWord(form.getOrDefault("role", ""));
    if (by.isEmpty()) {
      return "Choose who tells it: a role.";
    }
    try {
      book.tell(at.kiln(), at.keypad(), event(at, by.get(), form));
      return "";
    } catch (IllegalArgumentException e) {
      return Objects.requireNonNull(e.getMessage());
    }
  }

  private SlotEvent event(At at, Role by, Map<String, String> form) {
    Instant now = book.now();
    return switch (form.getOrDefault("event", "")) {
      case "power-cut" -> new SlotEvent.PowerCut(now, by);
      case "fired-by-other" -> new SlotEvent.FiredByOther(now, by);
      case "unit-switched" -> new SlotEvent.UnitSwitched(now, by);
      case "reset" -> new SlotEvent.Reset(now, by);
      case "rules" ->
          new SlotEvent.RulesSet(now, by, new Rules(days(form), form.containsKey("keeps")));
      case "edited" -> new SlotEvent.Edited(now, by, slot(at, form));
      case "ran" -> new SlotEvent.Ran(now, by, slot(at, form));
      case "needed" -> new SlotEvent.Protected(now, by, slot(at, form), what(form), until(form));
      case "released" -> new SlotEvent.Released(now, by, slot(at, form));
      default -> throw new IllegalArgumentException("What happened? Use one of the buttons.");
    };
  }

  private static int days(Map<String, String> form) {
    String days = form.getOrDefault("days", "").strip();
    if (!days.matches("\\d{1,3}")) {
      throw new IllegalArgumentException("A proof is good for 1 to 366 days; type the number.");
    }
    return Integer.parseInt(days);
  }

  private static int slot(At at, Map<String, String> form) {
    int slot = number(form.getOrDefault("slot", "")).orElse(0);
    if (slot < 1 || slot > at.described().slots()) {
      throw new IllegalArgumentException(
          "%s has program slots 1 to %d.".formatted(at.keypad(), at.described().slots()));
    }
    return slot;
  }

  private static OptionalInt number(String text) {
    return text.strip().matches("\\d{1,3}")
        ? OptionalInt.of(Integer.parseInt(text.strip()))
        : OptionalInt.empty();
  }

  private static String what(Map<String, String> form) {
    String what = form.getOrDefault("what", "").strip().replaceAll("\\s+", " ");
    if (what.length() > LONGEST_NEED) {
      throw new IllegalArgumentException(
          "Say in %d letters or fewer what it is needed for.".formatted(LONGEST_NEED));
    }
    return what;
  }

  private static Optional<LocalDate> until(Map<String, String> form) {
    String until = form.getOrDefault("until", "").strip();
    try {
      return until.isEmpty() ? Optional.empty() : Optional.of(LocalDate.parse(until));
    } catch (DateTimeException e) {
      throw new IllegalArgumentException(
          "“%s” is no date; write it like 2026-12-24.".formatted(until), e);
    }
  }

  // ---- at a planned firing

  private static At at(Firing firing) {
    return new At(
        firing.choices().kiln(),
        firing.choices().keypad(),
        firing.keypad(),
        firing.press().getZone());
  }

  /** The register of a firing's keypad. */
  SlotRegister register(Firing firing) {
    return register(at(firing));
  }

  List<SlotWarning> warnings(Firing firing, SlotRegister register) {
    return register.beforeKeying(
        firing.slot(),
        firing.program(),
        firing.choices().work(),
        book.now(),
        firing.press().getZone());
  }

  /** Somebody says that they keyed it. */
  void keyed(Firing firing, Role by) {
    At at = at(firing);
    book.tell(
        at.kiln(),
        at.keypad(),
        new SlotEvent.Keyed(book.now(), by, firing.slot(), program(firing)));
  }

  /** What is keyed, by the name that people know the work by. */
  private static Schedule program(Firing firing) {
    return firing.program().expressible().withName(firing.choices().work());
  }

  /**
   * Keeps a read-back with its slot, if it was of that slot.
   *
   * @return where it stands now; empty if it was not kept
   */
  Optional<String> keep(Firing firing, ReadbackDesk.Answered answered, Role by) {
    Evidence evidence =
        new Evidence(
            program(firing),
            firing.keypad(),
            firing.slot(),
            answered.shown(),
            answered.unitCheck());
    if (!evidence.ofItsSlot()) {
      return Optional.empty();
    }
    At at = at(firing);
    SlotEvent.ReadBack told = new SlotEvent.ReadBack(book.now(), by, evidence);
    List<SlotEvent> before = register(at).slot(firing.slot()).history();
    boolean again =
        !before.isEmpty()
            && before.get(before.size() - 1) instanceof SlotEvent.ReadBack last
            && last.evidence().equals(evidence)
            && last.by() == by
            && last.at().plusSeconds(600).isAfter(told.at());
    if (!again) {
      book.tell(at.kiln(), at.keypad(), told);
    }
    return Optional.of(
        "Kept with slot %d: %s"
            .formatted(
                firing.slot(),
                register(at).standing(firing.slot(), book.now()).sentence(book.now(), at.zone())));
  }

  // ---- a slot that nobody knows

  SlotsPage.Unknown unknown(At at, int slot, Map<String, String> typed, String error) {
    Keypad keypad = at.described();
    return new SlotsPage.Unknown(
        ClockWords.stamp(book.now().atZone(at.zone())),
        at.kiln(),
        at.keypad(),
        key(at.kiln(), at.keypad()),
        slot,
        typed.getOrDefault("name", ""),
        keypad.units().switchable() && !isUnitShown(keypad)
            ? Optional.of(typed.getOrDefault("shown-sign", ""))
            : Optional.empty(),
        ReviewReading.questions(keypad).stream()
            .map(
                q ->
                    new Page.Ask(
                        field(q),
                        q.label().equals(q.words()) ? q.words() : q.label() + ", " + q.words(),
                        typed.getOrDefault(field(q), ""),
                        "",
                        "",
                        q.digits()))
            .toList(),
        roles(),
        error);
  }

  /** Whether a program's unit is one of the values that its review shows. */
  private static boolean isUnitShown(Keypad keypad) {
    return keypad.units().asked().filter(a -> a.review() != Keypad.Position.HIDDEN).isPresent();
  }

  /** Whether there is such a slot. */
  static OptionalInt slot(At at, String text) {
    OptionalInt slot = number(text);
    return slot.isPresent() && slot.getAsInt() >= 1 && slot.getAsInt() <= at.described().slots()
        ? slot
        : OptionalInt.empty();
  }

  /**
   * Learns what a slot holds from what its review shows.
   *
   * @return why it could not be understood, one sentence; empty if it was
   */
  String learn(At at, int slot, Map<String, String> typed) {
    Keypad keypad = at.described();
    Optional<Role> by = Role.ofWord(typed.getOrDefault("role", ""));
    if (by.isEmpty()) {
      return "Choose who reads it: a role.";
    }
    Optional<TemperatureUnit> sign = TemperatureUnit.ofLetter(typed.getOrDefault("shown-sign", ""));
    if (keypad.units().switchable() && !isUnitShown(keypad) && sign.isEmpty()) {
      return "Say in which unit the keypad is: without it these numbers mean nothing.";
    }
    List<Shown.Value> values = new ArrayList<>();
    for (ReadbackQuestion question : ReviewReading.questions(keypad)) {
      values.add(
          new Shown.Value(
              Integer.toString(question.position()), typed.getOrDefault(field(question), "")));
    }
    String name = typed.getOrDefault("name", "").strip();
    Shown shown = new Shown(OptionalInt.of(slot), Optional.empty(), values);
    ReviewReading.Result result =
        ReviewReading.read(
            keypad,
            shown,
            keypad.unitFor(
                ReviewReading.unitShown(keypad, shown)
                    .or(() -> sign)
                    .orElse(TemperatureUnit.CELSIUS)),
            name.isEmpty() ? "Found in slot " + slot : name);
    if (result.program().isPresent()) {
      book.tell(
          at.kiln(),
          at.keypad(),
          new SlotEvent.Learned(
              book.now(), by.get(), slot, result.program().get(), result.notShown()));
    }
    return result.problem().orElse("");
  }

  private static String field(ReadbackQuestion question) {
    return "shown" + question.position();
  }
}
