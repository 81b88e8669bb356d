package org.heatwright.sensing;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.heatwright.material.Origin;
import org.heatwright.units.Temperature;

/**
 * How far new wire may be from its reference function. Used wire drifts further; no class says how
 * far.
 *
 * <p>Source: IEC 60584-1 and ASTM E230 as sensor makers' pages print them; the standards' own texts
 * were not read. Whichever is larger, the fixed or the proportional value, applies.
 */
public enum ToleranceClass {
  CLASS_1("1", "class 1", "IEC 60584-1"),
  CLASS_2("2", "class 2", "IEC 60584-1"),
  CLASS_3("3", "class 3", "IEC 60584-1"),
  STANDARD("standard", "standard class", "ASTM E230"),
  SPECIAL("special", "special class", "ASTM E230");

  private static final List<Row> ROWS =
      List.of(
          new Row(CLASS_1, "T", -40, 350, larger(0.5, 0.004)),
          new Row(CLASS_2, "T", -40, 350, larger(1.0, 0.0075)),
          new Row(CLASS_3, "T", -200, 40, larger(1.0, 0.015)),
          new Row(CLASS_1, "E", -40, 800, larger(1.5, 0.004)),
          new Row(CLASS_2, "E", -40, 900, larger(2.5, 0.0075)),
          new Row(CLASS_3, "E", -200, 40, larger(2.5, 0.015)),
          new Row(CLASS_1, "J", -40, 750, larger(1.5, 0.004)),
          new Row(CLASS_2, "J", -40, 750, larger(2.5, 0.0075)),
          new Row(CLASS_1, "KN", -40, 1000, larger(1.5, 0.004)),
          new Row(CLASS_2, "KN", -40, 1200, larger(2.5, 0.0075)),
          new Row(CLASS_3, "KN", -200, 40, larger(2.5, 0.015)),
          new Row(CLASS_1, "RS", 0, 1600, celsius -> 1 + 0.003 * Math.max(0, celsius - 1100)),
          new Row(CLASS_2, "RS", 0, 1600, larger(1.5, 0.0025)),
          new Row(CLASS_2, "B", 600, 1700, larger(0, 0.0025)),
          new Row(CLASS_3, "B", 600, 1700, larger(4.0, 0.005)),
          new Row(STANDARD, "T", -200, 0, larger(1.0, 0.015)),
          new Row(STANDARD, "T", 0, 370, larger(1.0, 0.0075)),
          new Row(SPECIAL, "T", 0, 370, larger(0.5, 0.004)),
          new Row(STANDARD, "J", 0, 760, larger(2.2, 0.0075)),
          new Row(SPECIAL, "J", 0, 760, larger(1.1, 0.004)),
          new Row(STANDARD, "E", -200, 0, larger(1.7, 0.01)),
          new Row(STANDARD, "E", 0, 870, larger(1.7, 0.005)),
          new Row(SPECIAL, "E", 0, 870, larger(1.0, 0.004)),
          new Row(STANDARD, "K", -200, 0, larger(2.2, 0.02)),
          new Row(STANDARD, "KN", 0, 1260, larger(2.2, 0.0075)),
          new Row(SPECIAL, "KN", 0, 1260, larger(1.1, 0.004)),
          new Row(STANDARD, "RS", 0, 1480, larger(1.5, 0.0025)),
          new Row(SPECIAL, "RS", 0, 1480, larger(0.6, 0.001)),
          new Row(STANDARD, "B", 870, 1700, larger(0, 0.005)),
          new Row(SPECIAL, "B", 870, 1700, larger(0, 0.0025)));

  private final String word;
  private final String words;
  private final String standard;

  ToleranceClass(String word, String words, String standard) {
    this.word = word;
    this.words = words;
    this.standard = standard;
  }

  /** "1", "2", "3", "standard" or "special", as people type it. */
  public String word() {
    return word;
  }

  /** "class 2", "special class". */
  public String words() {
    return words;
  }

  /** The standard that the class belongs to. */
  public String standard() {
    return standard;
  }

  /** The class a word names, in either case. */
  public static Optional<ToleranceClass> ofWord(String word) {
    for (ToleranceClass each : values()) {
      if (each.word.equals(word.toLowerCase(Locale.ROOT))) {
        return Optional.of(each);
      }
    }
    return Optional.empty();
  }

  /** Where the numbers come from. */
  public Origin origin() {
    return Origin.read(standard + " as sensor makers print it; the standard itself was not read");
  }

  /** The classes that have anything to say about a type. */
  public static List<ToleranceClass> of(ThermocoupleType type) {
    List<ToleranceClass> classes = new ArrayList<>(List.of(values()));
    classes.removeIf(each -> each.rows(type).isEmpty());
    return List.copyOf(classes);
  }

  /**
   * How far a new couple may read from the truth, either way.
   *
   * @return K, above zero; empty where the class says nothing about that type or temperature
   */
  public static OptionalDouble toleranceKelvin(
      ThermocoupleType type, ToleranceClass toleranceClass, Temperature junction) {
    double celsius = junction.celsius();
    return toleranceClass.rows(type).stream()
        .filter(row -> celsius >= row.fromCelsius && celsius <= row.toCelsius)
        .mapToDouble(row -> row.kelvins.applyAsDouble(celsius))
        .max();
  }

  /** Where the class applies to a type: "-40 °C to 1200 °C"; empty if nowhere. */
  public Optional<String> reach(ThermocoupleType type) {
    List<Row> rows = rows(type);
    return rows.isEmpty()
        ? Optional.empty()
        : Optional.of(
            "%s °C to %s °C"
                .formatted(
                    Words.oneDecimal(
                        rows.stream().mapToDouble(Row::fromCelsius).min().getAsDouble()),
                    Words.oneDecimal(
                        rows.stream().mapToDouble(Row::toCelsius).max().getAsDouble())));
  }

  private List<Row> rows(ThermocoupleType type) {
    return ROWS.stream()
        .filter(row -> row.toleranceClass == this && row.types.contains(type.name()))
        .toList();
  }

  private static DoubleUnaryOperator larger(double kelvins, double kelvinsPerCelsius) {
    return celsius -> Math.max(kelvins, kelvinsPerCelsius * Math.abs(celsius));
  }

  /**
   * @param types letters
   * @param kelvins tolerance over °C
   */
  private record Row(
      ToleranceClass toleranceClass,
      String types,
      double fromCelsius,
      double toCelsius,
      DoubleUnaryOperator kelvins) {}
}
