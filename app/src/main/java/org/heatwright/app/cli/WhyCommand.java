package org.heatwright.app.cli;

import java.nio.file.Path;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.heatwright.app.api.Answers;
import org.heatwright.app.causes.FiringFacts;
import org.heatwright.app.files.InputException;
import org.heatwright.app.json.WhyJson;
import org.heatwright.app.plot.WatchedFiring;
import org.heatwright.app.report.KilnOnKeypad;
import org.heatwright.forecast.Charge;
import org.heatwright.keypad.Keypad;
import org.heatwright.kiln.Control;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.Kiln;
import org.heatwright.learn.LogAlignment;
import org.heatwright.learn.LoggedFiring;
import org.heatwright.learn.Readings;
import org.heatwright.schedule.Schedule;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.Composer;
import org.heatwright.work.Composition;
import org.heatwright.work.Found;
import org.heatwright.work.Work;
import org.heatwright.work.causes.CauseBook;
import org.heatwright.work.causes.Clue;
import org.heatwright.work.causes.DisplayFacts;
import org.heatwright.work.causes.Facts;
import org.heatwright.work.causes.Ranking;
import org.heatwright.work.causes.Ranking.Ranked;
import org.heatwright.work.causes.Ranking.Standing;
import org.heatwright.work.causes.Trial;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

@Answers(WhyJson.class)
@Command(
    name = "why",
    description = {
      "From how a firing came out to what may be behind it: causes ranked by what is known, a test for each that a person can do, and one change to try.",
      "What is not known is asked for; answer with --told. Exit code 1: the likeliest cause can hurt; see to it before the next firing."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  heatwright why --kind burnout --found carbon --told air-shut=yes",
      "  heatwright why --work work.yaml --kiln anchor.yaml --found under-fired \\",
      "      --log firing.csv --keyed held.yaml",
      "  heatwright why --kind kiln --found stays-cold --told clicks=yes"
    })
final class WhyCommand implements Callable<Integer> {

  private static final int SHOWN = 5;

  @Option(
      names = "--found",
      required = true,
      paramLabel = "CODE",
      description = "How it came out, by its code, such as carbon or under-fired.")
  private String found;

  @Option(
      names = "--kind",
      paramLabel = "KIND",
      description = "Kind of work: burnout, enamel, sinter, heat-treat, glass, any; or kiln.")
  private Optional<String> kindWord;

  @Option(names = "--work", paramLabel = "W", description = "Work file; it says its kind.")
  private Optional<Path> workPath;

  @Option(names = "--kiln", paramLabel = "K", description = "Kiln file.")
  private Optional<Path> kilnPath;

  @Option(names = "--keypad", paramLabel = "P", description = "Keypad file.")
  private Optional<Path> keypadPath;

  @Option(
      names = "--schedule",
      paramLabel = "S",
      description = "What was planned; composed from work and kiln if left out.")
  private Optional<Path> schedulePath;

  @Option(names = "--keyed", paramLabel = "S", description = "What the slot held, if known.")
  private Optional<Path> keyedPath;

  @Option(names = "--log", paramLabel = "L", description = "Log of the firing (CSV).")
  private Optional<Path> logPath;

  @Option(
      names = "--seen",
      paramLabel = "TIME=T",
      description = "What the display said when; may be repeated. Needs --start.")
  private List<String> seen = new ArrayList<>();

  @Option(
      names = "--start",
      paramLabel = "TIME",
      description = "When the first segment began, such as 2026-12-02T18:40.")
  private Optional<String> startText;

  @Option(
      names = "--highest",
      paramLabel = "T",
      description = "The highest that the display showed, in the schedule's unit.")
  private Optional<Double> highest;

  @Option(
      names = "--told",
      paramLabel = "CLUE=YES",
      description = "What is so or not, such as damp=yes or reads-low=no; may be repeated.")
  private List<String> told = new ArrayList<>();

  @Mixin private Answer answer;

  private final Surroundings surroundings;

  WhyCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    Optional<Work> work = workPath.map(Input::work);
    String kind = kind(work);
    Found fault = fault(kind);
    FiringFacts.Found found = found(work);
    Facts facts = told(found.facts());
    Ranking ranking = CauseBook.rank(kind, fault.code(), facts);
    answer.give(
        surroundings,
        WhyJson.of(kind, fault.code(), facts, ranking, found.strange()),
        page(kind, fault, ranking, found.strange()));
    boolean hurts =
        ranking.causes().stream()
            .findFirst()
            .filter(r -> r.standing() == Standing.LIKELY)
            .filter(r -> r.cause().caution().isPresent())
            .isPresent();
    return hurts ? Answer.STOP : Answer.DONE;
  }

  // ---- what is asked

  private String kind(Optional<Work> work) {
    if (kindWord.isPresent()) {
      String word = kindWord.get();
      if (!CauseBook.kinds().contains(word)) {
        throw InputException.in(
            "--kind",
            "\"%s\" is none; expected one of %s."
                .formatted(word, String.join(", ", CauseBook.kinds())));
      }
      if (work.isPresent() && !word.equals(CauseBook.KILN) && !word.equals(work.get().kind())) {
        throw InputException.in(
            "--kind",
            "is %s, but the work is of kind %s; leave --kind out."
                .formatted(word, work.get().kind()));
      }
      return word;
    }
    return work.map(Work::kind)
        .orElseThrow(
            () ->
                InputException.in(
                    "--kind",
                    "neither this nor --work is given; expected one of the two, such as --kind burnout."));
  }

  private Found fault(String kind) {
    return CauseBook.faults(kind).stream()
        .filter(f -> f.code().equals(found))
        .findFirst()
        .orElseThrow(
            () ->
                InputException.in(
                    "--found",
                    "\"%s\" is no fault of %s; expected one of %s."
                        .formatted(
                            found,
                            CauseBook.words(kind),
                            CauseBook.faults(kind).stream()
                                .map(Found::code)
                                .collect(Collectors.joining(", ")))));
  }

  private FiringFacts.Found found(Optional<Work> work) {
    Optional<Keypad> keypad = keypadPath.map(Input::keypad);
    Optional<Kiln> kiln = kilnPath.map(p -> KilnOnKeypad.of(Input.kiln(p).kiln(), keypad));
    Optional<Composition> composition =
        work.flatMap(w -> kiln.map(k -> Composer.compose(w, k, keypad)));
    Optional<Schedule> planned =
        schedulePath.map(Input::schedule).or(() -> composition.map(Composition::schedule));
    Optional<Schedule> keyed = keyedPath.map(Input::schedule);
    requirePlan("--keyed", keyedPath.isPresent(), planned);
    requirePlan("--highest", highest.isPresent(), planned);
    requirePlan("--seen", !seen.isEmpty(), planned);
    requirePlan("--log", logPath.isPresent(), planned);
    Optional<Readings> readings = readings(planned, keyed, kiln, composition);
    FiringFacts.Found known = new FiringFacts(planned, keyed, kiln, keypad, work, readings).find();
    return highest
        .map(
            value ->
                DisplayFacts.highest(
                    planned.orElseThrow(),
                    celsius(value, planned.orElseThrow().unit()),
                    kiln.map(k -> k.control().kind() == Control.Kind.ON_OFF).orElse(false)))
        .map(shown -> new FiringFacts.Found(shown.or(known.facts()), known.strange()))
        .orElse(known);
  }

  private static double celsius(double value, TemperatureUnit unit) {
    if (!(value > -60 && value < 3000)) {
      throw InputException.in(
          "--highest",
          "%s is nothing a kiln's display shows; expected a number such as 732.".formatted(value));
    }
    return unit.temperature(value).celsius();
  }

  private static void requirePlan(String option, boolean given, Optional<Schedule> planned) {
    if (given && planned.isEmpty()) {
      throw InputException.in(
          option, "says nothing without what was planned; give --schedule, or --work and --kiln.");
    }
  }

  private Optional<Readings> readings(
      Optional<Schedule> planned,
      Optional<Schedule> keyed,
      Optional<Kiln> kiln,
      Optional<Composition> composition) {
    if (logPath.isPresent() && !seen.isEmpty()) {
      throw InputException.in("--seen", "--log is given too; keep one of the two.");
    }
    if (logPath.isPresent()) {
      Readings rows = WatchedFiring.readings(Input.log(logPath.get()));
      return Optional.of(
          kiln.map(
                  k ->
                      LogAlignment.of(
                              k,
                              new LoggedFiring(
                                  logPath.get().toString(),
                                  keyed.orElse(planned.orElseThrow()),
                                  FiringConditions.usual(),
                                  composition.map(Composition::charge).orElse(Charge.empty()),
                                  rows))
                          .firing()
                          .readings())
              .orElse(rows));
    }
    if (seen.isEmpty()) {
      return Optional.empty();
    }
    ZonedDateTime now = ZonedDateTime.now(surroundings.clock());
    Optional<ZonedDateTime> start =
        startText.map(text -> moment("--start", text, kiln, now.minusHours(24), now, now));
    return Optional.of(
        Seen.parse(
            seen,
            planned.orElseThrow().unit(),
            start,
            now,
            text ->
                moment(
                    "--seen",
                    text,
                    kiln,
                    start.orElse(now).minusMinutes(1),
                    Seen.latest(start.orElse(now), now),
                    now)));
  }

  private static ZonedDateTime moment(
      String option,
      String text,
      Optional<Kiln> kiln,
      ZonedDateTime from,
      ZonedDateTime until,
      ZonedDateTime now) {
    return When.exactly(
        option,
        text,
        kiln.flatMap(Kiln::timeZone).or(() -> Optional.of(now.getZone())),
        "the kiln file",
        from,
        until,
        now);
  }

  private Facts told(Facts known) {
    Facts facts = known;
    for (String text : told) {
      String[] parts = text.split("=", -1);
      Optional<Clue> clue = Clue.ofCode(parts[0].strip());
      if (parts.length != 2 || clue.isEmpty() || !parts[1].matches("yes|no")) {
        throw InputException.in(
            "--told",
            "\"%s\" tells nothing; expected a clue that was asked for and yes or no, such as damp=yes."
                .formatted(text));
      }
      facts = facts.told(clue.get(), parts[1].equals("yes"));
    }
    return facts;
  }

  // ---- for people

  private static Page page(String kind, Found fault, Ranking ranking, Optional<String> strange) {
    Page page = new Page();
    page.line("What may be behind “%s” (%s):".formatted(fault.words(), CauseBook.words(kind)));
    strange.ifPresent(why -> page.hanging("note  ", why));
    int number = 0;
    for (Ranked ranked : ranking.causes()) {
      number++;
      if (number > SHOWN) {
        page.blank()
            .line(
                "%d more are less likely; --json lists them."
                    .formatted(ranking.causes().size() - SHOWN));
        break;
      }
      page.blank()
          .hanging(
              "%2d  ".formatted(number),
              "%s: %s".formatted(ranked.standing().words(), ranked.cause().words()));
      ranked.why().forEach(why -> page.hanging("    for: ", why));
      ranked.against().forEach(why -> page.hanging("    against: ", why));
      for (Trial trial : ranked.cause().trials()) {
        page.hanging("    test, %s: ".formatted(trial.effort().words()), trial.words());
      }
      ranked.cause().caution().ifPresent(caution -> page.hanging("    caution: ", caution));
      page.hanging("    source: ", ranked.cause().origin().words());
    }
    page.blank();
    ranking
        .proposed()
        .ifPresentOrElse(
            ranked -> {
              page.hanging("One change to try: ", ranked.cause().change().words());
              if (ranked.standing() != Standing.LIKELY) {
                page.line("It is only possible yet: its test comes first.");
              }
            },
            () ->
                page.line("No change is proposed yet: do the first test, or tell what is asked."));
    if (!ranking.dismissed().isEmpty()) {
      page.blank().line("Contradicted by what is known:");
      ranking.dismissed().forEach(d -> page.hanging("  - ", d.cause().words() + " " + d.because()));
    }
    if (!ranking.questions().isEmpty()) {
      page.blank().line("Not known, and it would change the order:");
      ranking
          .questions()
          .forEach(clue -> page.hanging("  %s: ".formatted(clue.code()), clue.question()));
    }
    return page;
  }
}
