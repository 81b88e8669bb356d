package org.heatwright.app.web;

import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Supplier;
import org.heatwright.app.causes.FiringFacts;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.KeypadFile;
import org.heatwright.app.files.KilnFile;
import org.heatwright.app.firings.FiringRecord;
import org.heatwright.app.report.KilnOnKeypad;
import org.heatwright.app.store.Document;
import org.heatwright.app.store.Kind;
import org.heatwright.app.store.Store;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.inspect.Finding;
import org.heatwright.inspect.Severity;
import org.heatwright.inspect.Wording;
import org.heatwright.keypad.Keypad;
import org.heatwright.kiln.Control;
import org.heatwright.kiln.Kiln;
import org.heatwright.schedule.HourMinute;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.Found;
import org.heatwright.work.Work;
import org.heatwright.work.causes.CauseBook;
import org.heatwright.work.causes.Clue;
import org.heatwright.work.causes.DisplayFacts;
import org.heatwright.work.causes.Facts;
import org.heatwright.work.causes.Ranking;
import org.heatwright.work.causes.Suspect;

/**
 * Five questions in plain words, each of which may stay open; the answers stand in the address, so
 * that it can be sent. They end in a checked plan or in causes with a test for each.
 */
final class AskDesk {

  private static final int LONGEST = 200;
  private static final int FIRINGS_SHOWN = 30;
  private static final String CLUE = "c.";

  private final Store store;
  private final FiringPlanner planner;
  private final FiringDesk firings;

  AskDesk(Store store, FiringPlanner planner, FiringDesk firings) {
    this.store = store;
    this.planner = planner;
    this.firings = firings;
  }

  AskPage page(Map<String, String> asked, String clock) {
    return new Attempt(asked, clock).page();
  }

  /** A fault of a kind of work, as the address has it: "burnout/carbon". */
  private record Fault(String kind, Found found) {
    static Optional<Fault> of(String text) {
      String[] parts = text.split("/", -1);
      return parts.length != 2 || !CauseBook.kinds().contains(parts[0])
          ? Optional.empty()
          : CauseBook.faults(parts[0]).stream()
              .filter(found -> found.code().equals(parts[1]))
              .map(found -> new Fault(parts[0], found))
              .findFirst();
    }
  }

  /** One page; gathers errors and notes on the way. */
  private final class Attempt {

    private final Map<String, String> typed = new LinkedHashMap<>();
    private final String clock;
    private final Map<String, String> errors = new LinkedHashMap<>();
    private final List<String> notes = new ArrayList<>();

    Attempt(Map<String, String> asked, String clock) {
      asked.forEach(
          (name, value) -> {
            String text = value.strip();
            if (!text.isEmpty()) {
              typed.put(name, text.length() > LONGEST ? text.substring(0, LONGEST) : text);
            }
          });
      this.clock = clock;
    }

    private String text(String name) {
      return typed.getOrDefault(name, "");
    }

    AskPage page() {
      Optional<FiringRecord> firing = firing();
      Optional<Fault> fault = fault(firing);
      boolean card = text("want").equals("card");
      Optional<AskPage.Checked> checked = card ? Optional.of(checked()) : Optional.empty();
      Optional<PlanResult> meant = card || firing.isPresent() ? Optional.empty() : meant();
      Facts facts = told(facts(firing, meant));
      Optional<Ranking> ranking = fault.map(f -> CauseBook.rank(f.kind(), f.found().code(), facts));
      Optional<CausesView> view = ranking.map(r -> view(r, firing, meant));
      return new AskPage(
          clock,
          headline(fault, checked, ranking),
          !typed.isEmpty(),
          said(firing, fault),
          notes,
          came(),
          names(Kind.WORK),
          names(Kind.KILN),
          names(Kind.KEYPAD),
          firings.pressed().stream()
              .limit(FIRINGS_SHOWN)
              .map(f -> new AskPage.Choice(f.id(), f.words()))
              .toList(),
          clues(fault, ranking),
          typed,
          errors,
          view,
          checked,
          firing.flatMap(f -> behind(f)));
    }

    private Optional<BehindPage.Compared> behind(FiringRecord firing) {
      return firings.causes().compared(firing, firings::outcome);
    }

    // ---- what is known

    private Optional<FiringRecord> firing() {
      if (text("firing").isEmpty()) {
        return Optional.empty();
      }
      Optional<FiringRecord> found = firings.find(text("firing"));
      if (found.isEmpty()) {
        errors.put("firing", "There is no such firing in the book: choose another, or none.");
      }
      return found;
    }

    private Optional<Fault> fault(Optional<FiringRecord> firing) {
      if (!text("came").isEmpty()) {
        Optional<Fault> told = Fault.of(text("came"));
        if (told.isEmpty()) {
          errors.put("came", "That is nothing that can be told here: choose from the list.");
        }
        return told;
      }
      Optional<Fault> booked =
          firing.flatMap(
              f -> f.result().flatMap(r -> Fault.of(f.entry().kind() + "/" + r.outcome())));
      booked.ifPresent(f -> typed.put("came", f.kind() + "/" + f.found().code()));
      return booked;
    }

    private Optional<Kiln> kiln() {
      return document(Kind.KILN, "kiln")
          .flatMap(d -> readable("kiln", () -> KilnFile.read(d.text(), d.name())))
          .map(k -> KilnOnKeypad.of(k, keypad()));
    }

    private Optional<Keypad> keypad() {
      return document(Kind.KEYPAD, "keypad")
          .flatMap(d -> readable("keypad", () -> KeypadFile.read(d.text(), d.name())));
    }

    private Optional<Document> document(Kind kind, String field) {
      if (text(field).isEmpty()) {
        return Optional.empty();
      }
      Optional<Document> found = store.find(kind, text(field));
      if (found.isEmpty()) {
        errors.put(field, "That is not on the shelf: choose another, or none.");
      }
      return found;
    }

    private <T> Optional<T> readable(String field, Supplier<T> read) {
      try {
        return Optional.of(read.get());
      } catch (InputException e) {
        errors.put(field, Objects.requireNonNull(e.getMessage()));
        return Optional.empty();
      }
    }

    /** The plan of work, kiln and keypad, where all three were chosen. */
    private Optional<PlanResult> meant() {
      if (text("work").isEmpty() || text("kiln").isEmpty() || text("keypad").isEmpty()) {
        return Optional.empty();
      }
      return Optional.of(planner.sketch(choices()));
    }

    private Choices choices() {
      return Choices.of(
          Map.of(
              "work", text("work"),
              "kiln", text("kiln"),
              "keypad", text("keypad"),
              "by", "start"));
    }

    private Optional<TemperatureUnit> unit(String field) {
      return TemperatureUnit.ofLetter(text(field));
    }

    private Facts facts(Optional<FiringRecord> firing, Optional<PlanResult> meant) {
      Facts facts = Facts.none();
      Optional<Schedule> planned = Optional.empty();
      Optional<Kiln> kiln = Optional.empty();
      if (firing.isPresent()) {
        Optional<CausesDesk.Known> booked =
            readable("firing", () -> firings.causes().known(firing.get()));
        booked
            .flatMap(CausesDesk.Known::reading)
            .map(
                "The log “%s” of that day is still being read; ask again in a little while."
                    ::formatted)
            .ifPresent(notes::add);
        facts = booked.map(CausesDesk.Known::facts).orElse(facts);
        planned = readable("firing", firing.get()::planned);
        kiln = readable("firing", firing.get()::kiln);
      } else {
        kiln = kiln();
        Optional<Firing> made = meant.flatMap(PlanResult::firing);
        planned = made.map(f -> f.program().expressible()).or(this::asTold);
        Optional<Work> work = made.map(Firing::work);
        facts =
            new FiringFacts(planned, Optional.empty(), kiln, keypad(), work, Optional.empty())
                .find()
                .facts();
      }
      Facts looked = highest(planned, kiln);
      return units(planned).or(looked).or(facts);
    }

    /** What it should have been, as one ramp and hold. */
    private Optional<Schedule> asTold() {
      Optional<Double> top = number("top");
      if (top.isEmpty()) {
        return Optional.empty();
      }
      TemperatureUnit unit = unit("meant").orElse(TemperatureUnit.CELSIUS);
      double celsius = unit.temperature(top.get()).celsius();
      if (!(celsius >= 30 && celsius <= 1500)) {
        errors.put("top", "A kiln is fired to something between 30 and 1500 °C, not to that.");
        return Optional.empty();
      }
      return Optional.of(
          Schedule.of(
              "as told",
              unit,
              List.of(
                  new Segment(
                      Ramp.fastest(), unit.temperature(top.get()), hold().orElse(Duration.ZERO)))));
    }

    private Optional<Duration> hold() {
      if (text("hold").isEmpty()) {
        return Optional.empty();
      }
      Optional<Duration> hold = HourMinute.parse(text("hold"));
      if (hold.isEmpty()) {
        errors.put("hold", "Write a hold as hours and minutes, such as 2:30.");
      }
      return hold;
    }

    private Optional<Double> number(String field) {
      String plain = text(field).replace(',', '.').strip();
      if (plain.isEmpty()) {
        return Optional.empty();
      }
      if (!plain.matches("-?\\d{1,4}(\\.\\d{1,2})?")) {
        errors.put(field, "Write the number alone, such as 732; its unit is asked for apart.");
        return Optional.empty();
      }
      return Optional.of(Double.parseDouble(plain));
    }

    /** The highest that was read, in the display's unit; in the plan's where that is not known. */
    private Facts highest(Optional<Schedule> planned, Optional<Kiln> kiln) {
      Optional<Double> high = number("high");
      if (high.isEmpty() || planned.isEmpty()) {
        if (high.isPresent() && errors.isEmpty()) {
          notes.add(
              "The highest reading says more beside what it should have been: tell that under 5, or choose work, kiln and keypad.");
        }
        return Facts.none();
      }
      TemperatureUnit unit = shownUnit().orElse(planned.get().unit());
      if (shownUnit().isEmpty()) {
        notes.add(
            "The unit of the display is not known; the reading was taken as %s."
                .formatted(unit.symbol()));
      }
      return DisplayFacts.highest(
          planned.get(),
          unit.temperature(high.get()).celsius(),
          kiln.map(k -> k.control().kind() == Control.Kind.ON_OFF).orElse(false));
    }

    /** Told, or by what the cold kiln shows: about 20 is °C, about 68 is °F. */
    private Optional<TemperatureUnit> shownUnit() {
      return unit("unit")
          .or(
              () ->
                  number("now")
                      .flatMap(
                          now ->
                              now >= 5 && now <= 38
                                  ? Optional.of(TemperatureUnit.CELSIUS)
                                  : now >= 45 && now <= 100
                                      ? Optional.of(TemperatureUnit.FAHRENHEIT)
                                      : Optional.empty()));
    }

    /** Whether the keypad's unit is the one in which the numbers were meant. */
    private Facts units(Optional<Schedule> planned) {
      Optional<TemperatureUnit> keypad = shownUnit();
      Optional<TemperatureUnit> meant = unit("meant");
      if (keypad.isEmpty() || meant.isEmpty()) {
        return Facts.none();
      }
      String words =
          "The numbers were meant in %s; the display is in %s%s."
              .formatted(
                  meant.get().symbol(),
                  keypad.get().symbol(),
                  unit("unit").isPresent()
                      ? ""
                      : ", as the cold kiln's %s shows".formatted(text("now")));
      boolean same = keypad.equals(meant);
      return Facts.none()
          .with(Clue.UNIT_HOT, !same && meant.get() == TemperatureUnit.FAHRENHEIT, words)
          .with(Clue.UNIT_COLD, !same && meant.get() == TemperatureUnit.CELSIUS, words);
    }

    private Facts told(Facts known) {
      Facts facts = known;
      for (Map.Entry<String, String> entry : typed.entrySet()) {
        if (entry.getKey().startsWith(CLUE) && entry.getValue().matches("yes|no")) {
          Optional<Clue> clue = Clue.ofCode(entry.getKey().substring(CLUE.length()));
          if (clue.isPresent()) {
            facts = facts.told(clue.get(), entry.getValue().equals("yes"));
          }
        }
      }
      return facts;
    }

    // ---- what comes of it

    private CausesView view(
        Ranking ranking, Optional<FiringRecord> firing, Optional<PlanResult> meant) {
      Optional<CauseWords.Plan> plan =
          firing.isPresent()
              ? readable("firing", () -> firings.causes().plan(firing.get())).flatMap(p -> p)
              : meant
                  .flatMap(PlanResult::firing)
                  .map(
                      f ->
                          new CauseWords.Plan(
                              f.choices(),
                              f.program().expressible(),
                              Optional.of(f.composition().demands())));
      return CauseWords.view(
          ranking, (clue, yes) -> CausesDesk.ask(typed, clue, yes), plan, List.of());
    }

    private AskPage.Checked checked() {
      if (text("work").isEmpty() || text("kiln").isEmpty() || text("keypad").isEmpty()) {
        return new AskPage.Checked(
            false,
            "For a card choose the work, the kiln and its keypad. What is not on the shelf yet can be described or brought under Plan.",
            "/plan",
            List.of());
      }
      PlanResult plan = planner.plan(choices(), ForecastRequest.USUAL_DRAWS);
      String address = "/plan?" + plan.choices().query();
      if (plan.firing().isEmpty()) {
        return new AskPage.Checked(
            false,
            plan.refusal()
                .orElseGet(() -> plan.errors().values().stream().findFirst().orElse("No plan.")),
            address,
            List.of());
      }
      Firing made = plan.firing().get();
      List<String> heavy =
          made.findings().stream()
              .filter(f -> f.severity() != Severity.NOTE)
              .map(Attempt::line)
              .toList();
      boolean clean = heavy.isEmpty() && made.program().fits();
      return new AskPage.Checked(
          clean,
          clean
              ? "Checked: nothing says stop or warn for this work in %s on %s. The card is on the plan's last step."
                  .formatted(text("kiln"), text("keypad"))
              : made.program().fits()
                  ? "There is a plan, with something to settle first:"
                  : made.program().refusals().get(0).message(),
          address + "#taking",
          heavy);
    }

    private static String line(Finding finding) {
      return finding.severity().name().toLowerCase(java.util.Locale.ROOT)
          + ": "
          + finding.message();
    }

    private String headline(
        Optional<Fault> fault, Optional<AskPage.Checked> checked, Optional<Ranking> ranking) {
      if (checked.isPresent()) {
        return checked.get().clean() ? "A checked plan" : "Not a checked plan yet";
      }
      if (fault.isEmpty() || ranking.isEmpty()) {
        return "Five questions";
      }
      String words = Wording.capital(fault.get().found().words());
      int many = ranking.get().causes().size();
      return many == 0
          ? "%s: what is known contradicts every cause that is known here".formatted(words)
          : "%s: %d causes, the likeliest first".formatted(words, many);
    }

    private List<Page.Fact> said(Optional<FiringRecord> firing, Optional<Fault> fault) {
      List<Page.Fact> said = new ArrayList<>();
      fault.ifPresent(
          f ->
              said.add(
                  new Page.Fact(
                      "Came out",
                      "%s (%s)".formatted(f.found().words(), CauseBook.words(f.kind())))));
      firing.ifPresent(
          f ->
              said.add(
                  new Page.Fact(
                      "Firing", "%s in %s".formatted(f.entry().job(), f.entry().kiln()))));
      add(said, "Work", "work");
      add(said, "Kiln", "kiln");
      add(said, "Keypad", "keypad");
      add(said, "Highest", "high");
      add(said, "Cold now", "now");
      add(said, "Unit", "unit");
      add(said, "When", "when");
      add(said, "Meant", "top");
      add(said, "Meant in", "meant");
      add(said, "Hold", "hold");
      return said;
    }

    private void add(List<Page.Fact> said, String label, String field) {
      if (!text(field).isEmpty()) {
        boolean letter = field.equals("unit") || field.equals("meant");
        said.add(new Page.Fact(label, letter ? "°" + text(field) : text(field)));
      }
    }

    private List<AskPage.Group> came() {
      return CauseBook.kinds().stream()
          .map(
              kind ->
                  new AskPage.Group(
                      Wording.capital(CauseBook.words(kind)),
                      CauseBook.faults(kind).stream()
                          .map(f -> new AskPage.Choice(kind + "/" + f.code(), f.words()))
                          .toList()))
          .toList();
    }

    /** Those that were answered stay; then what would change the order. */
    private List<AskPage.Asked> clues(Optional<Fault> fault, Optional<Ranking> ranking) {
      if (fault.isEmpty() || ranking.isEmpty()) {
        return List.of();
      }
      List<Clue> answered = new ArrayList<>();
      Map<Clue, String> values = new TreeMap<>();
      for (Suspect suspect : CauseBook.suspects(fault.get().kind(), fault.get().found().code())) {
        suspect
            .cause()
            .indications()
            .forEach(
                i -> {
                  String value = text(CLUE + i.clue().code());
                  if (value.matches("yes|no") && !answered.contains(i.clue())) {
                    answered.add(i.clue());
                    values.put(i.clue(), value);
                  }
                });
      }
      return CauseWords.asked(answered, ranking.get().questions()).stream()
          .map(
              clue ->
                  new AskPage.Asked(
                      CLUE + clue.code(), clue.question(), values.getOrDefault(clue, "")))
          .toList();
    }

    private List<String> names(Kind kind) {
      return store.all(kind).stream().map(Document::name).toList();
    }
  }
}
