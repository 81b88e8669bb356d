package org.heatwright.app.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.heatwright.app.api.Answers;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.YamlText;
import org.heatwright.app.json.HeatworkJson;
import org.heatwright.app.json.HeatworkJson.CaseJson;
import org.heatwright.app.report.HeatworkCurves;
import org.heatwright.app.report.HeatworkWords;
import org.heatwright.inspect.Wording;
import org.heatwright.kiln.Kiln;
import org.heatwright.material.HeatWork.Weighting;
import org.heatwright.schedule.Schedule;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.GlassWork;
import org.heatwright.work.Work;
import org.heatwright.work.glass.Glass;
import org.heatwright.work.glass.Glass.Viscosities;
import org.heatwright.work.heatwork.Equivalence;
import org.heatwright.work.heatwork.HeatWorkComparison;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Answers(HeatworkJson.class)
@Command(
    name = "heatwork",
    description = {
      "Compares two schedules by what time and temperature do together: each as time at one temperature, and the hold that makes the second do what the first does."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  heatwright heatwork old.yaml new.yaml --activation 185",
      "  heatwright heatwork old.yaml new.yaml --activation 185 --at 780 \\",
      "      --weighting sintering --kiln anchor.yaml",
      "  heatwright heatwork old.yaml new.yaml --glass soft-art --at 740 --fastest 400"
    })
final class HeatworkCommand implements Callable<Integer> {

  @Parameters(index = "0", paramLabel = "A", description = "Schedule file.")
  private Path firstPath;

  @Parameters(index = "1", paramLabel = "B", description = "Schedule file to compare with it.")
  private Path secondPath;

  @Option(
      names = "--activation",
      paramLabel = "KJ",
      description = "Activation energy, kJ/mol: 100 to 500 for metals and glasses.")
  private Optional<Double> kilojoules;

  @Option(
      names = "--glass",
      paramLabel = "G",
      description =
          "Instead: the flow of a glass: float, soft-art, unknown, or a work file of kind glass.")
  private Optional<String> glassWord;

  @Option(
      names = "--at",
      paramLabel = "T",
      description = "Temperature to tell the time at, °C; the top of A if left out.")
  private Optional<Double> atCelsius;

  @Option(
      names = "--weighting",
      paramLabel = "W",
      description = "plain, or sintering (with 1/T, as the master sintering curve).")
  private Optional<String> weightingWord;

  @Option(
      names = "--kiln",
      paramLabel = "K",
      description = "Kiln file: compare what the empty kiln's display will do, not the paper.")
  private Optional<Path> kilnPath;

  @Option(
      names = "--fastest",
      paramLabel = "KH",
      description = "On paper: what \"fastest\" comes to, K/h.")
  private Optional<Double> fastestKelvinsPerHour;

  @Option(
      names = "--from",
      paramLabel = "T",
      description = "On paper: where both begin, °C; 20 if left out.")
  private Optional<Double> fromCelsius;

  @Mixin private Answer answer;

  private final Surroundings surroundings;

  HeatworkCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    requireOneLaw();
    Schedule first = Input.schedule(firstPath);
    Schedule second = Input.schedule(secondPath);
    Temperature reference =
        atCelsius.map(c -> temperature("--at", c, 100, 1800)).orElse(first.peak());
    Map<String, Equivalence> laws = laws(reference);
    Optional<Kiln> kiln = kilnPath.map(p -> Input.kiln(p).kiln());
    HeatworkCurves one = curves(first, kiln);
    HeatworkCurves two = curves(second, kiln);
    Map<String, HeatWorkComparison> cases = new LinkedHashMap<>();
    laws.forEach(
        (name, law) ->
            cases.put(name, HeatWorkComparison.of(law, one.likely(), two.likely(), second)));
    List<String> notes = notes(kiln, laws, one, two);
    answer.give(
        surroundings,
        new HeatworkJson(
            first.name(),
            second.name(),
            reference.celsius(),
            glassWord.isPresent()
                ? "glass"
                : weighting() == Weighting.PLAIN ? "plain" : "sintering",
            kiln.isPresent() ? "kiln" : "paper",
            cases.entrySet().stream().map(e -> CaseJson.of(e.getKey(), e.getValue())).toList(),
            notes),
        page(first, second, reference, cases, notes));
    return Answer.DONE;
  }

  // ---- what is asked

  private void requireOneLaw() {
    if (kilojoules.isPresent() == glassWord.isPresent()) {
      throw InputException.in(
          "--activation",
          kilojoules.isPresent()
              ? "--glass is given too; keep one of the two."
              : "neither this nor --glass is given; expected one of the two.");
    }
    if (glassWord.isPresent() && weightingWord.isPresent()) {
      throw InputException.in("--weighting", "a glass flows by its viscosity; leave this out.");
    }
    kilojoules.ifPresent(q -> requireBetween("--activation", q, 20, 1000, "kJ/mol"));
    fastestKelvinsPerHour.ifPresent(r -> requireBetween("--fastest", r, 1, 100_000, "K/h"));
    if (kilnPath.isPresent()) {
      refuseBesideKiln("--fastest", fastestKelvinsPerHour.isPresent());
      refuseBesideKiln("--from", fromCelsius.isPresent());
    }
  }

  private static void refuseBesideKiln(String option, boolean given) {
    if (given) {
      throw InputException.in(option, "the kiln knows that; leave it out beside --kiln.");
    }
  }

  private static void requireBetween(
      String option, double value, double low, double high, String unit) {
    if (!(value >= low && value <= high)) {
      throw InputException.in(
          option,
          "%s is not a number from %s to %s (%s)."
              .formatted(
                  YamlText.number(value), YamlText.number(low), YamlText.number(high), unit));
    }
  }

  private static Temperature temperature(String option, double celsius, double low, double high) {
    requireBetween(option, celsius, low, high, "°C");
    return Temperature.ofCelsius(celsius);
  }

  private Weighting weighting() {
    String word = weightingWord.orElse("plain");
    return switch (word) {
      case "plain" -> Weighting.PLAIN;
      case "sintering" -> Weighting.MASTER_SINTERING;
      default ->
          throw InputException.in(
              "--weighting", "\"%s\" is not known; expected plain or sintering.".formatted(word));
    };
  }

  /** What is asked first, then how far it may be off. */
  private Map<String, Equivalence> laws(Temperature reference) {
    Map<String, Equivalence> laws = new LinkedHashMap<>();
    if (glassWord.isPresent()) {
      Viscosities glass = glass(glassWord.get()).viscosities();
      try {
        laws.put("this glass", Equivalence.flow(glass.usual(), reference));
        laws.put("if it is softer", Equivalence.flow(glass.soft(), reference));
        laws.put("if it is stiffer", Equivalence.flow(glass.stiff(), reference));
      } catch (IllegalArgumentException e) {
        throw InputException.in("--at", String.valueOf(e.getMessage()));
      }
      return laws;
    }
    return HeatworkWords.laws(kilojoules.orElseThrow(), reference, weighting());
  }

  private static Glass glass(String word) {
    for (Glass.Family family : Glass.Family.values()) {
      if (family.name().toLowerCase(Locale.ROOT).replace('_', '-').equals(word)) {
        return Glass.of(family);
      }
    }
    if (!word.endsWith(".yaml") && !word.endsWith(".yml")) {
      throw InputException.in(
          "--glass",
          "\"%s\" is not known; expected float, soft-art, unknown or a work file (.yaml)."
              .formatted(word));
    }
    Work work = Input.work(Path.of(word));
    if (work instanceof GlassWork glass) {
      return glass.glass();
    }
    throw InputException.in(
        "--glass", "%s is of kind %s; expected glass.".formatted(word, work.kind()));
  }

  private HeatworkCurves curves(Schedule schedule, Optional<Kiln> kiln) {
    if (kiln.isPresent()) {
      return HeatworkCurves.inKiln(schedule, kiln.get());
    }
    Temperature start =
        fromCelsius.map(c -> temperature("--from", c, -50, 1800)).orElse(Temperature.ofCelsius(20));
    try {
      return HeatworkCurves.onPaper(
          schedule, start, fastestKelvinsPerHour.map(HeatingRate::ofKelvinsPerHour));
    } catch (IllegalArgumentException e) {
      throw InputException.in(
          "--fastest", "%s Say what it comes to, or give --kiln.".formatted(e.getMessage()));
    }
  }

  // ---- the answer

  private List<String> notes(
      Optional<Kiln> kiln, Map<String, Equivalence> laws, HeatworkCurves one, HeatworkCurves two) {
    List<String> notes = new ArrayList<>();
    Equivalence law = laws.values().iterator().next();
    kiln.flatMap(k -> HeatworkWords.byDisplay(k.name(), law, one, two)).ifPresent(notes::add);
    notes.add(HeatworkWords.counted(kiln.isPresent()));
    notes.add(HeatworkWords.ONE_LAW);
    return notes;
  }

  private Page page(
      Schedule first,
      Schedule second,
      Temperature reference,
      Map<String, HeatWorkComparison> cases,
      List<String> notes) {
    Page page = new Page();
    String at =
        Wording.of(reference, atCelsius.isPresent() ? TemperatureUnit.CELSIUS : first.unit());
    HeatWorkComparison likely = cases.values().iterator().next();
    page.line(
        "Heat-work as time at %s, by %s."
            .formatted(
                at,
                glassWord.isPresent()
                    ? "the flow of the glass (about Q %.0f kJ/mol there)"
                        .formatted(likely.activationJoulesPerMole() / 1000)
                    : "Q %s kJ/mol%s"
                        .formatted(
                            Wording.number(likely.activationJoulesPerMole() / 1000),
                            weighting() == Weighting.PLAIN ? "" : ", with 1/T")));
    page.blank();
    page.hanging("  A  ", HeatworkWords.line(first, likely.firstSeconds()));
    page.hanging("  B  ", HeatworkWords.line(second, likely.secondSeconds()));
    page.blank();
    page.line(HeatworkWords.verdict(likely));
    page.line(HeatworkWords.hold(likely, second, second.unit()));
    page.blank().line("How far that depends on what is assumed:");
    HeatworkWords.cases(cases, second, second.unit()).forEach(line -> page.hanging("  - ", line));
    page.blank();
    for (String note : notes) {
      page.line(note);
    }
    return page;
  }
}
