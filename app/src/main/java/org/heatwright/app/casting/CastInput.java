package org.heatwright.app.casting;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.TypedNumber;
import org.heatwright.app.files.YamlText;
import org.heatwright.material.Origin;
import org.heatwright.mould.Investment.Binder;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.casting.CastingAlloy;
import org.heatwright.work.casting.CastingAlloys;
import org.heatwright.work.casting.Fineness;
import org.heatwright.work.casting.Metal;
import org.heatwright.work.casting.Mix;
import org.heatwright.work.casting.PouringMethod;

/**
 * Reads what a person gives. What is wrong is blamed on the option it stands in, as the command
 * line names it.
 */
public final class CastInput {

  /** A day; our estimate. */
  private static final double MOST_MINUTES = 1440;

  private CastInput() {}

  /** The one option that was given of several, none or too many being told. */
  public static Map.Entry<String, Double> oneOf(Map<String, Optional<Double>> options) {
    List<Map.Entry<String, Double>> given = new ArrayList<>();
    options.forEach((name, value) -> value.ifPresent(v -> given.add(Map.entry(name, v))));
    if (given.isEmpty()) {
      throw InputException.in(
          options.keySet().iterator().next(),
          "not given; expected one of %s.".formatted(String.join(", ", options.keySet())));
    }
    if (given.size() > 1) {
      throw InputException.in(
          given.get(1).getKey(),
          "%s is given too; keep one of the two.".formatted(given.get(0).getKey()));
    }
    positive(given.get(0).getKey(), given.get(0).getValue());
    return given.get(0);
  }

  public static Map<String, Optional<Double>> options() {
    return new LinkedHashMap<>();
  }

  public static double positive(String option, double value) {
    if (!(value > 0 && value < Double.POSITIVE_INFINITY)) {
      throw InputException.in(
          option, "\"%s\" is not possible; expected a number above zero.".formatted(typed(value)));
    }
    return value;
  }

  public static double percent(String option, double percent) {
    if (!(percent >= 0 && percent <= 100)) {
      throw InputException.in(
          option, "\"%s\" is not possible; expected 0 to 100 percent.".formatted(typed(percent)));
    }
    return percent / 100;
  }

  public static double notNegative(String option, double value) {
    if (!(value >= 0 && value < Double.POSITIVE_INFINITY)) {
      throw InputException.in(
          option, "\"%s\" is not possible; expected zero or more.".formatted(typed(value)));
    }
    return value;
  }

  /** Minutes of one step at the kiln: zero to a day. */
  public static double minutes(String option, double value) {
    if (!(value >= 0 && value <= MOST_MINUTES)) {
      throw InputException.in(
          option, "\"%s\" is not possible; expected 0 to 1440 (a day).".formatted(typed(value)));
    }
    return value;
  }

  /** As a person would write it. */
  public static String typed(double value) {
    return Double.isFinite(value) ? YamlText.number(value) : String.valueOf(value);
  }

  /** What the arithmetic refuses is blamed on the option it came from. */
  public static <T> T blaming(String option, Supplier<T> arithmetic) {
    try {
      return arithmetic.get();
    } catch (IllegalArgumentException e) {
      throw InputException.in(option, String.valueOf(e.getMessage()));
    }
  }

  public static CastingAlloy alloy(String option, String name) {
    return CastingAlloys.find(name)
        .orElseThrow(
            () ->
                InputException.in(
                    option,
                    "\"%s\" is not known; expected one of %s."
                        .formatted(name, CastingAlloys.names())));
  }

  /** "Au=750,Ag=125,Cu=125": parts in any unit. */
  public static Mix mix(String option, String text) {
    Map<Metal, Double> parts = new EnumMap<>(Metal.class);
    for (String part : text.split(",", -1)) {
      String[] sides = part.split("=", -1);
      Optional<Metal> metal = Metal.of(sides[0].strip());
      Optional<Double> number = sides.length == 2 ? number(sides[1]) : Optional.empty();
      if (metal.isEmpty() || number.isEmpty() || !(number.get() > 0)) {
        throw InputException.in(
            option,
            "\"%s\" is no part of a mix; expected metals of Au, Ag, Cu, Zn, Sn, Ni, Pd, Pt with"
                    .formatted(part.strip())
                + " their parts, e.g. Au=750,Ag=125,Cu=125.");
      }
      if (parts.put(metal.get(), number.get()) != null) {
        throw InputException.in(option, "%s is named twice.".formatted(metal.get().symbol()));
      }
    }
    return blaming(option, () -> Mix.ofParts(parts, Origin.own("")));
  }

  public static PouringMethod method(String option, String word) {
    return PouringMethod.ofWord(word)
        .orElseThrow(
            () ->
                InputException.in(
                    option,
                    "\"%s\" is not known; expected vacuum, centrifugal or gravity."
                        .formatted(word)));
  }

  /** What binds the mould: "gypsum", "phosphate" or "unknown". */
  public static Binder binder(String option, String word) {
    return switch (word.toLowerCase(Locale.ROOT)) {
      case "gypsum" -> Binder.GYPSUM;
      case "phosphate" -> Binder.PHOSPHATE;
      case "unknown" -> Binder.UNKNOWN;
      default ->
          throw InputException.in(
              option,
              "\"%s\" is not known; expected gypsum, phosphate or unknown.".formatted(word));
    };
  }

  public static TemperatureUnit unit(String option, String letter) {
    return TemperatureUnit.ofLetter(letter)
        .orElseThrow(
            () ->
                InputException.in(
                    option, "\"%s\" is not known; expected C or F.".formatted(letter)));
  }

  /** A temperature of mould or metal, 20 to 2000 °C. */
  public static Temperature temperature(String option, double value, TemperatureUnit unit) {
    if (!(value >= unit.value(Temperature.ofCelsius(20))
        && value <= unit.value(Temperature.ofCelsius(2000)))) {
      throw InputException.in(
          option,
          "\"%s\" is not possible; expected %s to %s %s."
              .formatted(
                  typed(value),
                  YamlText.number(unit.value(Temperature.ofCelsius(20))),
                  YamlText.number(unit.value(Temperature.ofCelsius(2000))),
                  unit.symbol()));
    }
    return unit.temperature(value);
  }

  /** "18k", "750" or "0.75". */
  public static Fineness fineness(String option, String text) {
    String plain = text.strip().toLowerCase(Locale.ROOT);
    String karats = plain.replaceFirst("\\s*(k|kt|ct)$", "");
    Optional<Double> number = number(karats);
    if (number.isEmpty() || !(number.get() >= 0)) {
      throw notFineness(option, text);
    }
    double value = number.get();
    if (!karats.equals(plain)) {
      return blaming(option, () -> Fineness.ofKarats(value));
    }
    if (value > 1 && value < 100) {
      throw InputException.in(
          option,
          "\"%s\" may be karats or percent; expected such as 18k, 750 or 0.75.".formatted(text));
    }
    return blaming(option, () -> value <= 1 ? new Fineness(value) : Fineness.ofThousandths(value));
  }

  private static InputException notFineness(String option, String text) {
    return InputException.in(
        option, "\"%s\" is no fineness; expected such as 18k, 750 or 0.75.".formatted(text));
  }

  private static Optional<Double> number(String text) {
    return TypedNumber.bare(text).stream().boxed().findFirst();
  }
}
