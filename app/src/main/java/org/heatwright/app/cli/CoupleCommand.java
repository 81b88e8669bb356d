package org.heatwright.app.cli;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.heatwright.app.api.Answers;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.YamlText;
import org.heatwright.app.json.CoupleJson;
import org.heatwright.sensing.OutsideRangeException;
import org.heatwright.sensing.ThermocoupleType;
import org.heatwright.sensing.ToleranceClass;
import org.heatwright.units.Temperature;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

@Answers(CoupleJson.class)
@Command(
    name = "couple",
    description = {
      "Turns a thermocouple's temperature into millivolts and back (ITS-90).",
      "Says how far a new one may be off, too."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  heatwright couple --type K --celsius 800",
      "  heatwright couple --type K --millivolt 33.275",
      "  heatwright couple --type S --millivolt 7.202 --cold-junction 25 --class 1"
    })
final class CoupleCommand implements Callable<Integer> {

  @Option(names = "--type", required = true, paramLabel = "T", description = "B E J K N R S or T.")
  private String typeLetter;

  @Option(names = "--celsius", paramLabel = "C", description = "Temperature of the junction, °C.")
  private Optional<Double> celsius;

  @Option(names = "--millivolt", paramLabel = "MV", description = "Emf at the terminals, mV.")
  private Optional<Double> millivolt;

  @Option(
      names = "--cold-junction",
      paramLabel = "C",
      defaultValue = "0",
      description = "Temperature of the terminals, °C (0, as in the printed tables).")
  private double coldJunctionCelsius;

  @Option(
      names = "--class",
      paramLabel = "N",
      defaultValue = "2",
      description = "Tolerance class: 1, 2 or 3 (IEC 60584-1), standard or special (ASTM E230).")
  private String classWord;

  @Mixin private Answer answer;

  private final Surroundings surroundings;

  CoupleCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    ThermocoupleType type =
        ThermocoupleType.ofLetter(typeLetter)
            .orElseThrow(() -> unknown("--type", typeLetter, "B, E, J, K, N, R, S or T"));
    ToleranceClass toleranceClass = toleranceClass(type);
    Temperature coldJunction = temperature("--cold-junction", coldJunctionCelsius);
    if (celsius.isPresent() == millivolt.isPresent()) {
      throw InputException.in(
          celsius.isPresent() ? "--millivolt" : "--celsius",
          celsius.isPresent()
              ? "--celsius is given too; keep one of the two."
              : "neither this nor --millivolt is given; expected one of the two.");
    }
    // Said first, so that the right option is blamed.
    within("--cold-junction", () -> type.millivolts(Temperature.ofCelsius(0), coldJunction));
    Temperature junction =
        celsius
            .map(value -> temperature("--celsius", value))
            .orElseGet(
                () ->
                    within(
                        "--millivolt",
                        () -> type.temperature(millivolt.orElseThrow(), coldJunction)));
    double terminalMillivolts =
        millivolt.orElseGet(
            () -> within("--celsius", () -> type.millivolts(junction, coldJunction)));
    OptionalDouble tolerance = ToleranceClass.toleranceKelvin(type, toleranceClass, junction);
    String note = note(type, toleranceClass, tolerance);
    Page page = new Page();
    String degrees = rounded(junction.celsius(), 100) + " °C";
    String emf = rounded(terminalMillivolts, 1000) + " mV";
    page.line(
        "Type %s, terminals at %s °C: %s."
            .formatted(
                type,
                YamlText.number(coldJunction.celsius()),
                celsius.isPresent() ? degrees + " gives " + emf : emf + " means " + degrees));
    page.line(note);
    answer.give(
        surroundings,
        CoupleJson.of(
            type,
            junction,
            terminalMillivolts,
            tolerance.isPresent() ? Optional.of(tolerance.getAsDouble()) : Optional.empty(),
            coldJunction,
            toleranceClass,
            List.of(note)),
        page);
    return Answer.DONE;
  }

  private ToleranceClass toleranceClass(ThermocoupleType type) {
    ToleranceClass named =
        ToleranceClass.ofWord(classWord)
            .orElseThrow(
                () -> unknown("--class", classWord, words(List.of(ToleranceClass.values()))));
    List<ToleranceClass> possible = ToleranceClass.of(type);
    if (!possible.contains(named)) {
      throw InputException.in(
          "--class",
          "type %s has no %s; expected one of %s.".formatted(type, named.words(), words(possible)));
    }
    return named;
  }

  private static String note(
      ThermocoupleType type, ToleranceClass toleranceClass, OptionalDouble tolerance) {
    String name = toleranceClass.words() + " (" + toleranceClass.standard() + ")";
    return tolerance.isPresent()
        ? "New wire of %s may be off by %s K either way there; used wire may be further off."
            .formatted(name, rounded(tolerance.getAsDouble(), 100))
        : "No tolerance: %s covers type %s from %s only."
            .formatted(name, type, toleranceClass.reach(type).orElseThrow());
  }

  private static InputException unknown(String option, String found, String expected) {
    return InputException.in(
        option, "\"%s\" is not known; expected %s.".formatted(found, expected));
  }

  private static String words(List<ToleranceClass> classes) {
    return classes.stream().map(ToleranceClass::word).collect(Collectors.joining(", "));
  }

  private static Temperature temperature(String option, double celsius) {
    try {
      return Temperature.ofCelsius(celsius);
    } catch (IllegalArgumentException e) {
      throw InputException.in(option, String.valueOf(e.getMessage()));
    }
  }

  private static <T> T within(String option, Supplier<T> conversion) {
    try {
      return conversion.get();
    } catch (OutsideRangeException e) {
      throw InputException.in(option, String.valueOf(e.getMessage()));
    }
  }

  private static String rounded(double value, double perUnit) {
    return YamlText.number(Math.rint(value * perUnit) / perUnit);
  }
}
